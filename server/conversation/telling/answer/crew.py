"""What the server answers about what crew do: meetings, kit, people, cards."""

from __future__ import annotations

from dataclasses import dataclass
from datetime import datetime, timedelta

from server.conversation.telling.answer.race import Freshness
from server.event.model import Contact, FuelPlan, IfThenCard, KitItem
from server.forecast.outlook import Window
from server.watch.notice import MeetingValues


@dataclass(frozen=True, slots=True)
class OtherCar:
    """Those who come to a meeting in another car than the one its times are of: who, in what, from where, by when they
    leave (None: no drive of theirs is confirmed). `stays`: they are at that car park already."""

    people: tuple[str, ...]
    car: str
    drive_from: str
    leave_by: datetime | None
    stays: bool = False
    lost: str = ""


@dataclass(frozen=True, slots=True)
class MeetingAnswer:
    """One meeting with the names of those who go. `values` are by the car of the asker, `others` are those in other
    cars. `on_way_since`: when the asker said they had left for it; `there`: whether the asker is there, as far as is
    known."""

    values: MeetingValues
    name: str
    runner_name: str
    crew: tuple[str, ...] = ()
    car: str = ""
    parking: str = ""
    walk_in: timedelta | None = None
    opens: datetime | None = None
    closes: datetime | None = None
    mine: bool = True
    drive_confirmed: bool = False
    drive_from: str = ""
    on_way_since: datetime | None = None
    there: bool = False
    others: tuple[OtherCar, ...] = ()


@dataclass(frozen=True, slots=True)
class NextAnswer:
    """GET …/next: the next meeting and the one after; () when none is left."""

    runner: str
    runner_name: str
    meetings: tuple[MeetingAnswer, ...]
    fresh: Freshness


@dataclass(frozen=True, slots=True)
class CarryOut:
    """What she carries out of a point to the next where she can refill (`name`), by goal B; bottles by goal C."""

    name: str
    takes: timedelta
    kcal: int | None = None
    carbohydrate_g: int | None = None
    sodium_mg: int | None = None
    bottles: int | None = None


@dataclass(frozen=True, slots=True)
class KitAnswer:
    """GET …/kit: what to have ready at a point, food there, and what she takes in from there on."""

    runner: str
    runner_name: str
    point: str
    name: str
    kit: tuple[KitItem, ...]
    food: str = ""
    fuel: FuelPlan | None = None
    window: Window | None = None
    dark: bool | None = None
    cars: tuple[tuple[str, str], ...] = ()
    carry: CarryOut | None = None


@dataclass(frozen=True, slots=True)
class PersonThere:
    """Who does what now: the meeting a person is bound for, where they were last known to be, since when."""

    name: str
    part: str
    phone: str = ""
    at_name: str = ""
    since: datetime | None = None
    bound_for: str = ""
    be_there: datetime | None = None
    car: str = ""
    reachable: bool = True


@dataclass(frozen=True, slots=True)
class PeopleAnswer:
    """GET …/people: who is where, and the numbers."""

    people: tuple[PersonThere, ...]
    race_control: Contact
    emergency_number: str
    rescue: Contact | None = None


@dataclass(frozen=True, slots=True)
class CardsAnswer:
    """GET …/cards: the event's own and the built-in ones, in the asker's language; `red_line` says what a red flag
    means, with the numbers to call."""

    cards: tuple[IfThenCard, ...]
    red_line: str = ""
