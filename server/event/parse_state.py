"""What has been read of an event file so far: values with the place each stands at, for the cross checks."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass, field
from datetime import datetime
from typing import Any

from server.event.context import At, ReadSoFar
from server.event.lines import Path
from server.event.model import (
    Car,
    CourseDef,
    Drive,
    Event,
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
from server.event.problem import Problem, Severity

DEFAULT_COURSE = "main"


@dataclass(slots=True)
class ParseState(ReadSoFar):
    """Everything read."""

    keep_until: datetime | None = None
    rules: Rules = field(default_factory=Rules)
    courses: list[At[CourseDef]] = field(default_factory=list)
    points: list[At[Point]] = field(default_factory=list)
    stretches: list[At[Stretch]] = field(default_factory=list)
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
    _grouped: dict[tuple[str, str, int], dict[str | None, list[Any]]] = field(default_factory=dict)

    def parts_of(self, person: str) -> Sequence[At[Part]]:
        """Every part of a person, in the order of the file."""
        return self._group("parts", "person").get(person, ())

    def parts_about(self, runner: str) -> Sequence[At[Part]]:
        """Every part that concerns a runner: hers, then those for all runners."""
        about = self._group("parts", "runner")
        return (*about.get(runner, ()), *about.get(None, ()))

    def meetings_with(self, runner: str) -> Sequence[At[MeetingPlan]]:
        """Every meeting with a runner, in the order of the file."""
        return self._group("meetings", "runner").get(runner, ())

    def shares_with(self, runner: str) -> Sequence[At[Share]]:
        """Every share of a team, in the order of the file."""
        return self._group("shares", "runner").get(runner, ())

    def _group(self, things: str, by: str) -> dict[str | None, list[Any]]:
        """By what they have of that name; anew where more have been read since."""
        listed: list[At[Any]] = getattr(self, things)
        found = self._grouped.get((things, by, len(listed)))
        if found is None:
            found = self._grouped[things, by, len(listed)] = {}
            for x in listed:
                found.setdefault(getattr(x.value, by), []).append(x)
        return found

    def points_of(self, course: str) -> list[At[Point]]:
        """The points of one course, in the order of the file."""
        return [p for p in self.points if self.course_of[p.path] == course]

    def runners_astray(self) -> frozenset[str]:
        """Ids that parts give for a runner and that no runner has: mistyped here or there."""
        ids = {r.value.id for r in self.runners}
        return frozenset(p.value.runner for p in self.parts if p.value.runner and p.value.runner not in ids)

    def may_be(self, person: str) -> bool:
        """Whether a part of that person has a kind that nobody knows: it may be any."""
        return any(p.path in self.astray for p in self.parts_of(person))


@dataclass(frozen=True, slots=True)
class Parsed:
    """The event, or None when any problem is an error; and every problem, in the order of the file.

    `lines` and `paths` say where things stand, for checks made later (see `place`).
    """

    event: Event | None
    problems: tuple[Problem, ...]
    lines: Mapping[Path, int] = field(default_factory=dict)
    paths: Mapping[tuple[str, str], Path] = field(default_factory=dict)

    @property
    def errors(self) -> tuple[Problem, ...]:
        """The problems that stand in the way."""
        return tuple(p for p in self.problems if p.severity is Severity.ERROR)
