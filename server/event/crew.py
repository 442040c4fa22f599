"""The values of an event about people, cars, drives, meetings and cards. Frozen; ids are stable slugs."""

from __future__ import annotations

from dataclasses import dataclass
from datetime import datetime, timedelta
from enum import StrEnum


class PartKind(StrEnum):
    """What a person is in an event."""

    RUNNER = "runner"
    CREW = "crew"
    PACER = "pacer"
    SAFETY_CONTACT = "safety contact"
    ORGANISER = "organiser"
    VOLUNTEER = "volunteer"
    SUPPORTER = "supporter"


class KitWeight(StrEnum):
    """How bad it is when an item is not there: safety items are planned for at 99%, others at 97%."""

    SAFETY = "safety"
    NORMAL = "normal"


class Prepare(StrEnum):
    """What is to be done with a thing before the race."""

    BUY = "buy"
    CHARGE = "charge"
    TEST = "test"


class NoticeChoice(StrEnum):
    """How much a person wants to be told; never holds back an alarm nor a person's own leave-now."""

    ALL = "all"
    MINE = "only mine"
    ALARMS = "only alarms"


@dataclass(frozen=True, slots=True)
class Person:
    """Somebody, whatever the event. `channels` is the order in which to try to reach them."""

    id: str
    name: str
    phone: str = ""
    email: str = ""
    webhook: str = ""
    language: str = ""
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
    """One thing to have ready; `car` says where it travels, `take_back` that crew take it away, `hours` how long a torch
    or battery lasts, `grams` what it weighs (None = not said), `prepare` what is to be done with it before."""

    name: str
    weight: KitWeight = KitWeight.NORMAL
    car: str | None = None
    take_back: bool = False
    hours: float | None = None
    grams: float | None = None
    prepare: tuple[Prepare, ...] = ()


@dataclass(frozen=True, slots=True)
class DropBag:
    """What the race takes to a point for her."""

    point: str
    kit: tuple[KitItem, ...]


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
    """A prepared answer to trouble. `red_flags`: a medic is fetched; `life_flags`: the emergency number is called first (of
    the built-in cards; one of the event's own with a built-in's id keeps them)."""

    id: str
    trouble: str
    try_first: tuple[str, ...]
    call: str = ""
    red_flags: tuple[str, ...] = ()
    life_flags: tuple[str, ...] = ()
