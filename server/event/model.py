"""The values of one event: points, people, runners, rules, meetings. Frozen; ids are stable slugs.

All datetimes are aware and in UTC; `Event.time_zone` says how to show them. Distances along the course
are km from the start of the course, durations are `timedelta`. Words are those of the glossary.
"""

from __future__ import annotations

from collections.abc import Callable, Iterable
from dataclasses import dataclass, field, replace
from datetime import datetime, timedelta
from typing import Any, ClassVar, TypeVar, cast

from server.event.context import ReadSoFar
from server.event.course_model import (
    KM_MAX,
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
from server.event.crew import (
    Car,
    Drive,
    Driving,
    IfThenCard,
    MeetingPlan,
    NoticeChoice,
    Part,
    PartKind,
    Person,
    Place,
    Share,
    Sleep,
)
from server.event.forms import (
    WORDS_MAX,
    Id,
    Minutes,
    Number,
    OneOf,
    Phone,
    Text,
    Texts,
    Values,
    Whole,
    Yes,
    Zone,
)
from server.event.forms_of_time import Moment, span
from server.event.kit import DropBag, KitItem, KitWeight, Prepare
from server.event.running import Eaten, FuelPlan, Goal, PastRace, Prompt, Runner, Target
from server.event.table import Table, apart, key, keys_of
from server.event.table_reader import Section
from server.sentences import say

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
class Rules(Table):
    """What the race allows crews and pacers. A plan that breaks a rule is refused. Leave out what is no rule.

    The rules on outside help, as far as a plan can break them. None = no such rule. `crew_not_before`: no crew at any point
    before then. `pacer_sign_in`: how long before she comes a pacer has to be there to sign in. `required_kit`: what every
    runner must have on her.
    """

    vehicles_max: int | None = key(Whole(0, 50), "how many cars may come to one runner's meetings", "2")
    crew_people_max: int | None = key(
        Whole(0, 100), "how many of the crew may meet her at once (pacers not counted)", "4"
    )
    pacer_from_km: float | None = key(Number(0, KM_MAX), "from which km a pacer may be with her", "10")
    pacers_at_once: int = key(Whole(0, 10), "how many pacers may be with her at once", "1", default=1)
    outside_help_only_at_crew_points: bool = key(OneOf({"crew points only": True, "anywhere": False}),
        "whether she may be helped anywhere, or only where crew have access", '"crew points only"',
        name="outside_help", default=True)  # fmt: skip
    note: str = key(Text(WORDS_MAX), "other rules, in the race's own words: printed on every sheet",
        '"No cars past the dam."')  # fmt: skip
    crew_not_before: datetime | None = key(
        Moment("the day", example='"09:00"'), "no crew at any point before then", '"06:00"'
    )
    pacer_sign_in: timedelta = key(
        Minutes(), "how long before her a pacer must be there to sign in", "15", name="pacer_sign_in_minutes"
    )
    required_kit: tuple[str, ...] = key(
        Texts(), "what every runner must have on her: ticked off against her lists", '["rain jacket"]'
    )


@dataclass(frozen=True, slots=True)
class AlarmRule(Table):
    """When the safety contact is called. Best left as it is.

    Silence becomes an alarm once P(not heard by now | still going) is under `line`, or her race has rather ended than not
    (`server.forecast.outlook.RATHER`), and `grace` is over since she was late. By the line alone, where reports never fail,
    every seventh to ninth race has a false alarm at 0.005, every eleventh to thirteenth at 0.002, and 20 to 30 minutes
    later (tests/research/NOTEBOOK.md).
    """

    line: float = key(Number(1e-6, 0.2), "how rare a silence must be, were all well, for an alarm at the latest",
        "0.002", default=0.002)  # fmt: skip
    grace: timedelta = key(Minutes(), "how long she is late, at the least, before anybody is called", "15",
        name="grace_minutes", default=timedelta(minutes=15))  # fmt: skip
    look_again: timedelta = key(Minutes(), "how long whoever answered has before they are asked again", "20",
        name="look_again_minutes", default=timedelta(minutes=20))  # fmt: skip
    answer_within: timedelta = key(Minutes(), "how long somebody has to answer before the next is called",
        "5", name="answer_within_minutes", default=timedelta(minutes=5))  # fmt: skip


@dataclass(frozen=True, slots=True)
class Brief(Table):
    """What crew read before they travel: printed in brief.pdf beside roles, rules, drives and her own words."""

    travel: tuple[str, ...] = key(
        Texts(WORDS_MAX), "how each gets there", '["Ana and Tomas: train, Friday 14:10"]'
    )
    beds: tuple[str, ...] = key(
        Texts(WORDS_MAX), "where who sleeps, before and after", '["Inn at the bridge, two rooms, late key"]'
    )
    entry: tuple[str, ...] = key(Texts(WORDS_MAX), "numbers, stickers, hours of the race office",
        '["number and car sticker: hall, Friday to 21:00"]')  # fmt: skip
    also: tuple[str, ...] = key(Texts(WORDS_MAX), "anything else", '["cash for the car park"]')


@dataclass(frozen=True, slots=True)
class Contact(Table):
    """Whom to call: race control, needed as soon as anybody is to be alarmed; and rescue on the hill or at sea, for the
    sheets (the emergency number comes first)."""

    name: str = key(Text(), "who answers there", '"Race control, the hall"', must=True)
    phone: str = key(Phone(short=True), "their number", '"+44 1632 960100"', must=True)

    @staticmethod
    def look(s: Section, v: Values, d: ReadSoFar) -> None:
        """A number is needed; a name follows from what it is."""
        table = str(s.path[-1])
        v["name"] = v["name"] or table.replace("_", " ").capitalize()
        if s.raw("phone") in (None, ""):
            s.missing("phone", say("do-give-telephone-number", table=table))


@dataclass(frozen=True, slots=True)
class Event(Table):
    """The race: name, place in time, route. Every file begins with it.

    One race on given dates. `version` is the numbered version it was loaded as (0 = not stored). `whole`: of a share of an
    event, with some of its runners and their people, the event itself, where others are looked up.
    """

    id: str = key(Id("name"), "what the event is called in commands and addresses", '"harrow-round"')
    name: str = key(Text(), "the race's name as people read it", '"Harrow Round 100"',
        need=say("do-give-race-name-name-long"))  # fmt: skip
    time_zone: str = key(Zone(), "where the race is; every time in the file is on this clock",
        '"Europe/London"', need=say("do-say-where-race-time-zone"), default="UTC")  # fmt: skip
    starts: datetime = key(Moment(), "the start, as the clock at the race shows it", "2027-09-11T05:00",
        need=say("do-say-when-starts-2027-06"))  # fmt: skip
    rules: Rules = apart()
    courses: tuple[CourseDef, ...] = apart()
    runners: tuple[Runner, ...] = apart()
    people: tuple[Person, ...] = apart()
    parts: tuple[Part, ...] = apart()
    race_control: Contact = apart()
    emergency_number: str = key(Phone(short=True),
        "the number to call in danger of life where the race is; 112 without it", '"112"', must=True)  # fmt: skip
    limit: timedelta | None = key(span(timedelta(minutes=30), timedelta(days=14)),
        "the race's time limit, counted from its start", '"34:00"')  # fmt: skip
    cars: tuple[Car, ...] = ()
    drives: tuple[Drive, ...] = ()
    meetings: tuple[MeetingPlan, ...] = ()
    cards: tuple[IfThenCard, ...] = ()
    alarm: AlarmRule = field(default_factory=AlarmRule)
    rescue: Contact | None = None
    grid: str = key(Text(), "the grid in which positions are told to rescuers", '"UTM"', default="UTM")
    keep_until: datetime | None = key(Moment(example="2027-09-30", day=True),
        "the day after which positions, words and pictures of people are blanked", "2027-12-31")  # fmt: skip
    version: int = 0
    places: tuple[Place, ...] = ()
    driving: Driving = field(default_factory=Driving)
    shares: tuple[Share, ...] = ()
    weather: tuple[WeatherSpell, ...] = ()
    transport: str = key(Text(WORDS_MAX), "how the race takes away whoever retires; a point may say its own",
        '"sweep bus from every aid station to the finish, on the hour"')  # fmt: skip
    exercise: bool = key(Yes(), "played to practise: every notice and the board are marked so", "true")
    brief: Brief = field(default_factory=Brief)
    whole: Event | None = field(default=None, compare=False, repr=False)
    MORE: ClassVar = tuple(replace(k, need=None) for k in keys_of(CourseDef) if k.name != "id")
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
