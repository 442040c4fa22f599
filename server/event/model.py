"""The values of one event: points, people, runners, rules, meetings. Frozen; ids are stable slugs.

All datetimes are aware and in UTC; `Event.time_zone` says how to show them. Distances along the course
are km from the start of the course, durations are `timedelta`. Words are those of the glossary.
"""

from __future__ import annotations

from dataclasses import dataclass, field
from datetime import datetime, timedelta

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
from server.event.running import FuelPlan, Goal, PastRace, Prompt, Runner, Target

__all__ = [
    "AlarmRule",
    "Car",
    "Contact",
    "CourseDef",
    "CrewAccess",
    "CutOff",
    "Drive",
    "Driving",
    "DropBag",
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


@dataclass(frozen=True, slots=True)
class Rules:
    """The race's rules on outside help, as far as a plan can break them. None = no such rule.

    `crew_not_before`: no crew at any point before then. `pacer_sign_in`: how long before she comes a pacer
    has to be there to sign in.
    """

    vehicles_max: int | None = None
    crew_people_max: int | None = None
    pacer_from_km: float | None = None
    pacers_at_once: int = 1
    outside_help_only_at_crew_points: bool = True
    note: str = ""
    crew_not_before: datetime | None = None
    pacer_sign_in: timedelta = timedelta(0)


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
class Contact:
    """A telephone number with a name: race control, mountain rescue."""

    name: str
    phone: str


@dataclass(frozen=True, slots=True)
class Event:
    """One race on given dates. `version` is the numbered version it was loaded as (0 = not stored)."""

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

    def files(self) -> tuple[str, ...]:
        """The names of every file that the event file speaks of, each once: routes, results, own runs."""
        named = [n for c in self.courses for n in (c.route, c.results)]
        named += [n for r in self.runners for n in r.own_runs]
        return tuple(dict.fromkeys(n for n in named if n))

    def runner(self, runner_id: str) -> Runner:
        """The runner of that id; KeyError if there is none."""
        for r in self.runners:
            if r.id == runner_id:
                return r
        raise KeyError(runner_id)

    def person(self, person_id: str) -> Person:
        """The person of that id; KeyError if there is none."""
        for p in self.people:
            if p.id == person_id:
                return p
        raise KeyError(person_id)

    def is_race_control(self, person_id: str) -> bool:
        """Whether a person answers race control's own number: then nobody is to tell them to ring it."""
        number = "".join(self.race_control.phone.split())
        mine = next((p.phone for p in self.people if p.id == person_id), "") or ""
        return number != "" and "".join(mine.split()) == number

    def course(self, course_id: str) -> CourseDef:
        """The course of that id; KeyError if there is none."""
        for c in self.courses:
            if c.id == course_id:
                return c
        raise KeyError(course_id)

    def course_of(self, runner_id: str) -> CourseDef:
        """The course a runner is on."""
        return self.course(self.runner(runner_id).course)

    def parts_of(self, person_id: str) -> tuple[Part, ...]:
        """Every part a person has in this event."""
        return tuple(p for p in self.parts if p.person == person_id)

    def people_for(self, runner_id: str, *kinds: PartKind) -> tuple[Part, ...]:
        """The parts of those kinds that concern a runner (their own, or for all runners)."""
        return tuple(p for p in self.parts if p.kind in kinds and p.runner in (None, runner_id))
