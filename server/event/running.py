"""The values of an event about a runner: what she means to do, has run, eats and drinks. Frozen."""

from __future__ import annotations

from dataclasses import dataclass
from datetime import datetime, timedelta
from enum import StrEnum

from server.event.crew import DropBag, KitItem


class Goal(StrEnum):
    """A runner's three intended timetables; B is the target, A its 10% and C its 90% side."""

    A = "A"
    B = "B"
    C = "C"


@dataclass(frozen=True, slots=True)
class PastRace:
    """A race a runner ran: distance, ascent, time with all stops, and what it was."""

    name: str
    km: float
    ascent_m: float
    time: timedelta


@dataclass(frozen=True, slots=True)
class Target:
    """What she means to do; one form: finish time; pace all in (stops included); easy training pace plus a
    margin. Paces are per km. None of them: the plan takes it from her past race or her own runs."""

    finish: timedelta | None = None
    pace_all_in: timedelta | None = None
    easy_pace: timedelta | None = None
    margin: timedelta | None = None


@dataclass(frozen=True, slots=True)
class Eaten:
    """A thing she eats or drinks so many of in an hour; what one of it holds, None where that is not said."""

    name: str
    per_h: float
    kcal: float | None = None
    carbohydrate_g: float | None = None
    sodium_mg: float | None = None
    caffeine_mg: float | None = None


@dataclass(frozen=True, slots=True)
class FuelPlan:
    """What she means to take in from a point onward until the next: plain words plus the figures, or the things from
    which the figures follow."""

    from_point: str
    words: str
    kcal_per_h: float | None = None
    carbohydrate_g_per_h: float | None = None
    fluid_ml_per_h: float | None = None
    sodium_mg_per_h: float | None = None
    caffeine_mg_per_h: float | None = None
    eats: tuple[Eaten, ...] = ()


@dataclass(frozen=True, slots=True)
class Prompt:
    """Her own words for a bad moment, for crew to say: `when` it is bad, and what."""

    when: str
    words: str


@dataclass(frozen=True, slots=True)
class Runner:
    """A runner in the event. `person` is the global person id; `start` already holds her wave.

    `own_runs` names files of her own runs (GPX, FIT, TCX) that stand beside the event file. `carries` is the kit that
    she has on her from the start, `drop_bags` what waits for her where no crew bring it. `bottles`: how many of half a
    litre she can carry; `trained_carbohydrate_g_per_h`: what her stomach has taken in training (None = not said).
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
    carries: tuple[KitItem, ...] = ()
    drop_bags: tuple[DropBag, ...] = ()
    prompts: tuple[Prompt, ...] = ()
    wants_to_hear: tuple[str, ...] = ()
    not_to_hear: tuple[str, ...] = ()
    bottles: int | None = None
    trained_carbohydrate_g_per_h: float | None = None
