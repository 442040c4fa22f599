"""The values of one event: points, people, runners, rules, meetings. Frozen; ids are stable slugs.

All datetimes are aware and in UTC; `Event.time_zone` says how to show them. Distances along the course
are km from the start of the course, durations are `timedelta`. Words are those of the glossary.
"""

from __future__ import annotations

from dataclasses import dataclass, field
from datetime import datetime, timedelta
from enum import StrEnum


class PointKind(StrEnum):
    """What a point is; one point may be several things."""

    START = "start"
    AID_STATION = "aid station"
    CREW_ACCESS = "crew access"
    WATER = "water"
    CUT_OFF = "cut-off"
    DROP_BAG = "drop bag"
    FINISH = "finish"


class Edge(StrEnum):
    """Which moment at a point is meant: arriving or leaving."""

    IN = "in"
    OUT = "out"


class Signal(StrEnum):
    """How phones work at a point."""

    GOOD = "good"
    PATCHY = "patchy"
    NONE = "none"


class ReporterKind(StrEnum):
    """Who sends check-ins from a point."""

    TIMING_MAT = "timing mat"
    VOLUNTEER = "volunteer"
    CREW = "crew"
    RUNNER = "runner"
    TRACKER = "tracker"
    NOBODY = "nobody"


class PartKind(StrEnum):
    """What a person is in an event."""

    RUNNER = "runner"
    CREW = "crew"
    PACER = "pacer"
    SAFETY_CONTACT = "safety contact"
    ORGANISER = "organiser"
    VOLUNTEER = "volunteer"
    SUPPORTER = "supporter"


class Goal(StrEnum):
    """A runner's three intended timetables; B is the target, A its 10% and C its 90% side."""

    A = "A"
    B = "B"
    C = "C"


class KitWeight(StrEnum):
    """How bad it is when an item is not there: safety items are planned for at 99%, others at 97%."""

    SAFETY = "safety"
    NORMAL = "normal"


class NoticeChoice(StrEnum):
    """How much a person wants to be told; never holds back an alarm nor a person's own leave-now."""

    ALL = "all"
    MINE = "only mine"
    ALARMS = "only alarms"


@dataclass(frozen=True, slots=True)
class CutOff:
    """A time by which a runner must be in, or out of, a point. Exactly one of `clock`, `elapsed` is set.

    `clock` is an instant; `elapsed` counts from the runner's own start (her wave).
    """

    edge: Edge
    clock: datetime | None = None
    elapsed: timedelta | None = None

    def at(self, start: datetime) -> datetime:
        """The instant for a runner who started at `start`."""
        if self.clock is not None:
            return self.clock
        assert self.elapsed is not None
        return start + self.elapsed


@dataclass(frozen=True, slots=True)
class ReportsThere:
    """Who reports at a point, with what chance (0..1] that a runner there is reported, and how late."""

    by: ReporterKind
    chance: float
    delay: timedelta


@dataclass(frozen=True, slots=True)
class CrewAccess:
    """How crew get to a point: where to park, how long on foot, when it is open, how many people and cars.

    `permit` names the permit that a car, or somebody of the crew, needs there ('' for none); `cars_max` is how many cars
    of one runner may come. `place` is the id of a `Place`: points that name the same one (a loop come round again) are
    one car park.
    """

    parking: str = ""
    walk_in: timedelta = timedelta(0)
    unloading: timedelta = timedelta(minutes=5)
    opens: datetime | None = None
    closes: datetime | None = None
    people_max: int | None = None
    lat: float | None = None
    lon: float | None = None
    permit: str = ""
    place: str = ""
    cars_max: int | None = None


@dataclass(frozen=True, slots=True)
class Point:
    """A named place on the course. One place passed twice is two points. `km` is None until placed
    when only `waypoint` (a name in the route file) is given; a loaded event has every km."""

    id: str
    name: str
    km: float | None
    kinds: frozenset[PointKind]
    also: tuple[str, ...] = ()
    waypoint: str | None = None
    cut_offs: tuple[CutOff, ...] = ()
    access: CrewAccess | None = None
    reports: tuple[ReportsThere, ...] = ()
    signal: Signal = Signal.GOOD
    planned_stop: timedelta = timedelta(0)
    note: str = ""

    @property
    def crew_access(self) -> bool:
        """Whether crew may meet a runner here."""
        return self.access is not None

    @property
    def finish(self) -> bool:
        """Whether this is the end of the course."""
        return PointKind.FINISH in self.kinds


@dataclass(frozen=True, slots=True)
class Stretch:
    """A part of the course with something in common: surface, shade, no signal, an escape route.

    `factor` multiplies her time there (1.10 = a tenth slower); `names` what it stands for.
    """

    from_km: float
    to_km: float
    name: str = ""
    surface: str = ""
    forest_or_gorge: bool = False
    no_signal: bool = False
    factor: float = 1.0
    factor_for: str = ""
    escape_route: str = ""


class GroundState(StrEnum):
    """What the weather makes of the ground for a while."""

    MUD = "mud"
    SNOW = "snow"


@dataclass(frozen=True, slots=True)
class WeatherSpell:
    """Weather to plan with, for some hours or a part of a course. Ends that are None are open.

    `temperature_c` is the air's, `humidity` in % (50 where a temperature stands alone); `ground` what is
    underfoot then. `course` None: wherever the hours fit; with km it names the course they are on.
    """

    from_at: datetime | None = None
    to_at: datetime | None = None
    temperature_c: float | None = None
    humidity: float | None = None
    ground: GroundState | None = None
    from_km: float | None = None
    to_km: float | None = None
    course: str | None = None
    note: str = ""


@dataclass(frozen=True, slots=True)
class PastRace:
    """A race a runner ran: distance, ascent, time with all stops, and what it was."""

    name: str
    km: float
    ascent_m: float
    time: timedelta


@dataclass(frozen=True, slots=True)
class CourseDef:
    """One line on the ground: the route file's name and its points in running order.

    `results` names a CSV file of others' split times on this course, '' for none.
    """

    id: str
    route: str
    points: tuple[Point, ...]
    stretches: tuple[Stretch, ...] = ()
    stated_km: float | None = None
    results: str = ""

    def point(self, point_id: str) -> Point:
        """The point of that id; KeyError if the course has none."""
        for p in self.points:
            if p.id == point_id:
                return p
        raise KeyError(point_id)


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
class Target:
    """What she means to do; one form: finish time; pace all in (stops included); easy training pace plus a
    margin. Paces are per km. None of them: the plan takes it from her past race or her own runs."""

    finish: timedelta | None = None
    pace_all_in: timedelta | None = None
    easy_pace: timedelta | None = None
    margin: timedelta | None = None


@dataclass(frozen=True, slots=True)
class Runner:
    """A runner in the event. `person` is the global person id; `start` already holds her wave.

    `own_runs` names files of her own runs (GPX, FIT, TCX) that stand beside the event file.
    """

    id: str
    person: str
    name: str
    bib: str
    course: str
    start: datetime
    target: Target
    wave: str = ""
    clothing: str = ""
    torch: str = ""
    medical_note: str = ""
    fuel: tuple[FuelPlan, ...] = ()
    climb_rate_m_per_h: float | None = None
    walk_kmh: float | None = None
    downhill_kmh: float | None = None
    own_runs: tuple[str, ...] = ()
    past_races: tuple[PastRace, ...] = ()


@dataclass(frozen=True, slots=True)
class FuelPlan:
    """What she means to take in from a point onward until the next: plain words plus the figures."""

    from_point: str
    words: str
    kcal_per_h: float | None = None
    carbohydrate_g_per_h: float | None = None
    fluid_ml_per_h: float | None = None
    sodium_mg_per_h: float | None = None


@dataclass(frozen=True, slots=True)
class Person:
    """Somebody, whatever the event. `channels` is the order in which to try to reach them."""

    id: str
    name: str
    phone: str = ""
    email: str = ""
    webhook: str = ""
    language: str = "en"
    time_zone: str | None = None
    miles: bool = False
    clock_12h: bool = False
    channels: tuple[str, ...] = ()
    notices: NoticeChoice = NoticeChoice.ALL
    quiet_from: str | None = None
    quiet_to: str | None = None


@dataclass(frozen=True, slots=True)
class Sleep:
    """A sleep that a person means to have, from `start` to `end`."""

    start: datetime
    end: datetime


@dataclass(frozen=True, slots=True)
class Part:
    """What a person is in this event, and for which runner (None = for all).

    `ladder` is the step on which an alarm reaches them (1 = first). `point` is where a volunteer stands. `permits` are
    those they hold in person (a pass, an armband).
    """

    person: str
    kind: PartKind
    runner: str | None = None
    ladder: int | None = None
    calls_race_control: bool = False
    can_telephone: bool = False
    point: str | None = None
    car: str | None = None
    drives: bool = False
    awake_since: datetime | None = None
    pace_from: str | None = None
    pace_to: str | None = None
    sleeps: tuple[Sleep, ...] = ()
    permits: tuple[str, ...] = ()


@dataclass(frozen=True, slots=True)
class Car:
    """A vehicle: where it stands before the first meeting, how many it seats, the permits it carries."""

    id: str
    name: str
    seats: int = 5
    starts_at: str | None = None
    permits: tuple[str, ...] = ()


@dataclass(frozen=True, slots=True)
class Drive:
    """The way by car from one place to another. Places are point ids or free names ('home', 'hotel').

    Never sets a leave-by before `confirmed_by` names the person who says it is right. Minutes given by hand
    are the whole drive; without them it can be estimated, and `traffic`, `fuel_stop` come on top of that.
    """

    from_place: str
    to_place: str
    minutes: float | None = None
    confirmed_by: str | None = None
    note: str = ""
    traffic: timedelta = timedelta(0)
    fuel_stop: timedelta = timedelta(0)


@dataclass(frozen=True, slots=True)
class Place:
    """Somewhere crew drive from or to that is no point of the course: a hotel, home, a field."""

    id: str
    name: str = ""
    lat: float | None = None
    lon: float | None = None


@dataclass(frozen=True, slots=True)
class Driving:
    """What a drive is estimated from, where nobody gave its minutes: the line between two places times
    `road_factor`, at `speed_kmh`; in the dark `night_factor` times as long; `full_car_park` to find a space.

    Common practice, no source: roads are 1.3 to 1.4 times the line in open country, more among hills.
    """

    road_factor: float = 1.4
    speed_kmh: float = 45.0
    night_factor: float = 1.15
    full_car_park: timedelta = timedelta(minutes=5)


@dataclass(frozen=True, slots=True)
class Share:
    """A relay runner's part of a team's race: `person` runs for `runner` from one point to another."""

    runner: str
    person: str
    from_point: str
    to_point: str


@dataclass(frozen=True, slots=True)
class KitItem:
    """One thing to have ready; `car` says where it travels, `take_back` that crew take it away."""

    name: str
    weight: KitWeight = KitWeight.NORMAL
    car: str | None = None
    take_back: bool = False


@dataclass(frozen=True, slots=True)
class MeetingPlan:
    """Crew, point, runner: who goes with what. Times are never stored here: the watch derives them."""

    id: str
    point: str
    runner: str
    crew: tuple[str, ...]
    car: str | None = None
    from_place: str | None = None
    kit: tuple[KitItem, ...] = ()
    food: str = ""
    if_missed: str = ""
    pacer_joins: str | None = None
    pacer_leaves: str | None = None


@dataclass(frozen=True, slots=True)
class IfThenCard:
    """A prepared answer to trouble."""

    id: str
    trouble: str
    try_first: tuple[str, ...]
    call: str = ""
    red_flags: tuple[str, ...] = ()


@dataclass(frozen=True, slots=True)
class AlarmRule:
    """When silence becomes an alarm: P(not heard by now, still going) under `line`, and `grace` over."""

    line: float = 0.005
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
