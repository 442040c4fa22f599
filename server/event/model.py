"""The values of one event: points, people, runners, rules, meetings. Frozen; ids are stable slugs.

All datetimes are aware and in UTC; `Event.time_zone` says how to show them. Distances along the course
are km from the start of the course, durations are `timedelta`. Words are those of the glossary.
"""

from __future__ import annotations

from collections.abc import Callable, Iterable
from dataclasses import dataclass, field
from datetime import datetime, timedelta
from typing import Any, TypeVar, cast

from server.event.crew import (
    Car,
    Drive,
    Driving,
    DropBag,
    IfThenCard,
    KitItem,
    KitWeight,
    MeetingPlan,
    NoticeChoice,
    Part,
    PartKind,
    Person,
    Place,
    Prepare,
    Share,
    Sleep,
)
from server.event.ground import (
    CourseDef,
    CrewAccess,
    CutOff,
    Edge,
    GroundState,
    Point,
    PointKind,
    ReporterKind,
    ReportsThere,
    Signal,
    Stretch,
    WeatherSpell,
)
from server.event.running import Eaten, FuelPlan, Goal, PastRace, Prompt, Runner, Target

__all__ = [
    "AlarmRule",
    "Brief",
    "Car",
    "Contact",
    "CourseDef",
    "CrewAccess",
    "CutOff",
    "Drive",
    "Driving",
    "DropBag",
    "Eaten",
    "Edge",
    "Event",
    "FuelPlan",
    "Goal",
    "GroundState",
    "IfThenCard",
    "KitItem",
    "KitWeight",
    "MeetingPlan",
    "NoticeChoice",
    "Part",
    "PartKind",
    "PastRace",
    "Person",
    "Place",
    "Point",
    "PointKind",
    "Prepare",
    "Prompt",
    "ReporterKind",
    "ReportsThere",
    "Rules",
    "Runner",
    "Share",
    "Signal",
    "Sleep",
    "Stretch",
    "Target",
    "WeatherSpell",
]

T = TypeVar("T")
K = TypeVar("K")


@dataclass(frozen=True, slots=True)
class Rules:
    """The race's rules on outside help, as far as a plan can break them. None = no such rule.

    `crew_not_before`: no crew at any point before then. `pacer_sign_in`: how long before she comes a pacer
    has to be there to sign in. `required_kit`: what every runner must have on her.
    """

    vehicles_max: int | None = None
    crew_people_max: int | None = None
    pacer_from_km: float | None = None
    pacers_at_once: int = 1
    outside_help_only_at_crew_points: bool = True
    note: str = ""
    crew_not_before: datetime | None = None
    pacer_sign_in: timedelta = timedelta(0)
    required_kit: tuple[str, ...] = ()


@dataclass(frozen=True, slots=True)
class AlarmRule:
    """When silence becomes an alarm: P(not heard by now, still going) under `line`, and `grace` over.

    The line is chosen from the alarm tables of the forecast's docs: at 0.005 every seventh to ninth race has a false
    alarm where reports never fail, at 0.002 every eleventh to thirteenth, and the alarm comes 20 to 30 minutes later.
    """

    line: float = 0.002
    grace: timedelta = timedelta(minutes=15)
    look_again: timedelta = timedelta(minutes=20)
    answer_within: timedelta = timedelta(minutes=5)


@dataclass(frozen=True, slots=True)
class Brief:
    """What crew read before they travel, in the file's own words: how each gets there, where they sleep, how the race is
    entered (numbers, car stickers, hours), and anything else."""

    travel: tuple[str, ...] = ()
    beds: tuple[str, ...] = ()
    entry: tuple[str, ...] = ()
    also: tuple[str, ...] = ()


@dataclass(frozen=True, slots=True)
class Contact:
    """A telephone number with a name: race control, mountain rescue."""

    name: str
    phone: str


@dataclass(frozen=True, slots=True)
class Event:
    """One race on given dates. `version` is the numbered version it was loaded as (0 = not stored). `whole`: of a share of
    an event, with some of its runners and their people, the event itself, where others are looked up."""

    id: str
    name: str
    time_zone: str
    starts: datetime
    rules: Rules
    courses: tuple[CourseDef, ...]
    runners: tuple[Runner, ...]
    people: tuple[Person, ...]
    parts: tuple[Part, ...]
    race_control: Contact
    emergency_number: str
    limit: timedelta | None = None
    cars: tuple[Car, ...] = ()
    drives: tuple[Drive, ...] = ()
    meetings: tuple[MeetingPlan, ...] = ()
    cards: tuple[IfThenCard, ...] = ()
    alarm: AlarmRule = field(default_factory=AlarmRule)
    rescue: Contact | None = None
    grid: str = "UTM"
    keep_until: datetime | None = None
    version: int = 0
    places: tuple[Place, ...] = ()
    driving: Driving = field(default_factory=Driving)
    shares: tuple[Share, ...] = ()
    weather: tuple[WeatherSpell, ...] = ()
    transport: str = ""
    exercise: bool = False
    brief: Brief = field(default_factory=Brief)
    whole: Event | None = field(default=None, compare=False, repr=False)
    _found: dict[str, Any] = field(default_factory=dict, init=False, compare=False, repr=False)

    def once(self, name: str, find: Callable[[], T]) -> T:
        """What `find` finds in this event, found once."""
        if name not in self._found:
            self._found[name] = find()
        return cast(T, self._found[name])

    def files(self) -> tuple[str, ...]:
        """The names of every file that the event file speaks of, each once: routes, results, own runs."""
        named = [n for c in self.courses for n in (c.route, c.results)]
        named += [n for r in self.runners for n in r.own_runs]
        return tuple(dict.fromkeys(n for n in named if n))

    def runner(self, runner_id: str) -> Runner:
        """The runner of that id; KeyError if there is none."""
        known = self.once("runners", lambda: {r.id: r for r in reversed(self.runners)})
        if runner_id not in known and self.whole is not None:
            return self.whole.runner(runner_id)
        return known[runner_id]

    def person(self, person_id: str) -> Person:
        """The person of that id; KeyError if there is none."""
        known = self.once("people", lambda: {p.id: p for p in reversed(self.people)})
        if person_id not in known and self.whole is not None:
            return self.whole.person(person_id)
        return known[person_id]

    def is_race_control(self, person_id: str) -> bool:
        """Whether a person answers race control's own number: then nobody is to tell them to ring it."""
        number = "".join(self.race_control.phone.split())
        mine = next((p.phone for p in self.people if p.id == person_id), "") or ""
        return number != "" and "".join(mine.split()) == number

    def course(self, course_id: str) -> CourseDef:
        """The course of that id; KeyError if there is none."""
        return self.once("courses", lambda: {c.id: c for c in reversed(self.courses)})[course_id]

    def course_of(self, runner_id: str) -> CourseDef:
        """The course a runner is on."""
        return self.course(self.runner(runner_id).course)

    def parts_of(self, person_id: str) -> tuple[Part, ...]:
        """Every part a person has in this event."""
        return self.once("parts", lambda: _grouped(self.parts, lambda p: p.person)).get(person_id, ())

    def people_for(self, runner_id: str, *kinds: PartKind) -> tuple[Part, ...]:
        """The parts of those kinds that concern a runner (their own, or for all runners), in the event's order."""
        return tuple(p for p in self._parts_for(runner_id) if p.kind in kinds)

    def _parts_for(self, runner_id: str) -> tuple[Part, ...]:
        def find() -> dict[str | None, tuple[tuple[int, Part], ...]]:
            return _grouped(tuple(enumerate(self.parts)), lambda p: p[1].runner)

        by_runner = self.once("parts by runner", find)
        both = sorted((*by_runner.get(runner_id, ()), *by_runner.get(None, ())), key=lambda p: p[0])
        return tuple(p for _, p in both)

    def meetings_of(self, runner_id: str) -> tuple[MeetingPlan, ...]:
        """Every meeting with a runner, in the event's order."""
        return self.once("meetings", lambda: _grouped(self.meetings, lambda m: m.runner)).get(runner_id, ())

    def meeting(self, meeting_id: str) -> MeetingPlan:
        """The meeting of that id; KeyError if there is none."""
        return self.once("by id", lambda: {m.id: m for m in reversed(self.meetings)})[meeting_id]

    @property
    def drivers(self) -> frozenset[str]:
        """Who is said to drive, in the whole event."""
        if self.whole is not None:
            return self.whole.drivers
        return self.once("drivers", lambda: frozenset(p.person for p in self.parts if p.drives))


def _grouped(items: Iterable[T], key: Callable[[T], K]) -> dict[K, tuple[T, ...]]:
    found: dict[K, list[T]] = {}
    for item in items:
        found.setdefault(key(item), []).append(item)
    return {k: tuple(v) for k, v in found.items()}
