"""What has been read of an event file so far: values with the place each stands at, for the cross checks."""

from __future__ import annotations

from dataclasses import dataclass, field
from datetime import UTC, date, datetime, time, timedelta
from typing import Generic, TypeVar
from zoneinfo import ZoneInfo

from server.event.lines import Path
from server.event.model import (
    Car,
    Drive,
    IfThenCard,
    MeetingPlan,
    Part,
    Person,
    Place,
    Point,
    Rules,
    Runner,
    Share,
    Stretch,
    WeatherSpell,
)
from server.event.plainly import as_moment
from server.event.section import Report, Section
from server.event.times import read_clock, read_moment, to_utc

T = TypeVar("T")
DEFAULT_COURSE = "main"
FIRST_YEAR, LAST_YEAR = 2000, 2100


@dataclass(frozen=True, slots=True)
class At(Generic[T]):
    """A value and where in the file it stands."""

    value: T
    path: Path


@dataclass(frozen=True, slots=True)
class CourseHead:
    """A course before its points: id, route file, stated length."""

    id: str
    route: str
    stated_km: float | None
    results: str = ""
    stated_ascent_m: float | None = None


@dataclass(slots=True)
class Draft:
    """Everything read. `starts_known` is false when the start could not be read: then no time is checked."""

    report: Report
    zone: str = "UTC"
    starts: datetime = datetime(2000, 1, 1, tzinfo=UTC)
    starts_known: bool = False
    limit: timedelta | None = None
    keep_until: datetime | None = None
    rules: Rules = field(default_factory=Rules)
    courses: list[At[CourseHead]] = field(default_factory=list)
    points: list[At[Point]] = field(default_factory=list)
    course_of: dict[Path, str] = field(default_factory=dict)
    stretches: list[At[Stretch]] = field(default_factory=list)
    waves: dict[str, datetime] = field(default_factory=dict)
    runners: list[At[Runner]] = field(default_factory=list)
    people: list[At[Person]] = field(default_factory=list)
    parts: list[At[Part]] = field(default_factory=list)
    cars: list[At[Car]] = field(default_factory=list)
    drives: list[At[Drive]] = field(default_factory=list)
    meetings: list[At[MeetingPlan]] = field(default_factory=list)
    cards: list[At[IfThenCard]] = field(default_factory=list)
    places: list[At[Place]] = field(default_factory=list)
    shares: list[At[Share]] = field(default_factory=list)
    weather: list[At[WeatherSpell]] = field(default_factory=list)
    astray: set[Path] = field(default_factory=set)
    """Points and parts that name a kind there is none of: what would be missing by that is not told besides."""

    def points_of(self, course: str) -> list[At[Point]]:
        """The points of one course, in the order of the file."""
        return [p for p in self.points if self.course_of[p.path] == course]

    def runners_astray(self) -> frozenset[str]:
        """Ids that parts give for a runner and that no runner has: mistyped here or there."""
        ids = {r.value.id for r in self.runners}
        return frozenset(p.value.runner for p in self.parts if p.value.runner and p.value.runner not in ids)

    def may_be(self, person: str) -> bool:
        """Whether a part of that person has a kind that nobody knows: it may be any."""
        return any(p.path in self.astray for p in self.parts if p.value.person == person)

    def local_start(self) -> datetime:
        """The start as naive wall time."""
        return self.starts.astimezone(ZoneInfo(self.zone)).replace(tzinfo=None)

    def moment(
        self,
        section: Section,
        key: str,
        not_before: datetime | None = None,
        example: str = "2027-06-19T05:00",
    ) -> datetime | None:
        """A key that holds a moment, in UTC. With `not_before` (naive local) also '11:30' and 'Sun 11:30'."""
        short = f"; or a time of day with or without weekday, as in {example}" if not_before else ""
        section.expect(key, f"date and time without quotes, as in 2027-06-19T05:00{short}")
        value = section.raw(key)
        if value is None:
            return None
        local = self._local(section, key, value, not_before)
        if local is None:
            meant = as_moment(str(value)) if isinstance(value, str) else ""
            remedy = (
                f"Write {key} = {meant}, without quotes."
                if "T" in meant
                else f"Write date and time without quotes, as in {key} = {example}."
            )
            if isinstance(value, date):
                remedy = f"Add the time of day: {key} = {value}T05:00 is five in the morning."
            section.error(key, f"{value} is no date and time", remedy)
            return None
        if not FIRST_YEAR <= local.year <= LAST_YEAR:
            section.error(key, f"the year {local.year} can't be right", "Check the year.")
            return None
        found = section.timed(key, lambda: to_utc(local, self.zone))
        if found is None:
            return None
        at, warning = found
        if warning:
            offset = local.replace(tzinfo=ZoneInfo(self.zone), fold=1).isoformat()
            self.report.warn(section.at(key), warning, f"If the second is meant, write {key} = {offset}.")
        return at

    def _local(
        self, section: Section, key: str, value: object, not_before: datetime | None
    ) -> datetime | None:
        if isinstance(value, datetime):
            return value
        if not_before is None or isinstance(value, date):
            return None
        text = value.isoformat() if isinstance(value, time) else value
        if not isinstance(text, str):
            return None
        after = not_before
        found = section.timed(key, lambda: read_moment(text, after))
        # The mistake is noted; a harmless moment keeps the caller from noting it twice.
        return found if found is not None else after

    def clock(self, section: Section, key: str) -> str | None:
        """A key that holds a time of day, as text 'HH:MM'."""
        section.expect(key, 'time of day in quotes, as in "22:00"')
        value = section.raw(key)
        if value is None:
            return None
        text = value.isoformat() if isinstance(value, time) else value
        if not isinstance(text, str):
            section.error(key, f"{value} is no time of day", f'Write {key} = "22:00".')
            return None
        found = section.timed(key, lambda: read_clock(text))
        return None if found is None else f"{found:%H:%M}"
