"""What to carry on each leg: energy, fluid, salt and bottles, held against published ranges.

To plan with, never advice to treat, and never a target for drinking: fluid is warned about above the range
only, below it bottles are planned so that there is enough to drink to thirst.
"""

from __future__ import annotations

import math
from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from datetime import timedelta
from typing import Final

import numpy as np

from server.event.model import FuelPlan, Goal, Point, PointKind, Runner
from server.plan.errors import PlanError
from server.plan.notes import Note, PlanDoubt, note
from server.plan.timetable import Timetable
from server.sentences import say

BOTTLE_ML: Final = 500
ISSN: Final = "Tiller et al. 2019, J Int Soc Sports Nutr 16:50"
COSTA: Final = "Costa et al. 2019, Int J Sport Nutr Exerc Metab 29:130"
HYPONATRAEMIA: Final = "Hew-Butler et al. 2015, Br J Sports Med 49:1432"
SODIUM_MG_PER_L: Final = 575
"""Above which sodium in drink or food may be needed on long hot days. Source: ISSN."""
EFSA: Final = "EFSA 2015, EFSA Journal 13(5):4102"
"""For adults who are not pregnant: said wherever its figures are."""
CAFFEINE_DOSE_MG: Final = 200.0
CAFFEINE_DAY_MG: Final = 400.0
HOURLY: Final = (
    "carbohydrate_g_per_h",
    "fluid_ml_per_h",
    "sodium_mg_per_h",
    "caffeine_mg_per_h",
    "kcal_per_h",
)
BOTTLES: Final = 4
"""Of half a litre, which somebody carries who does not say otherwise (common practice, no source)."""
APART: Final = 0.2
"""What she eats and the figure for it may differ by so much before it is said (own choice)."""
CAUTIONS: Final = (note("caution-thirst"), note("caution-danger"), note("caution-pills"))


@dataclass(frozen=True, slots=True)
class Intake:
    """A published range an hour, of which `warn_above` or `warn_below` may be None: nothing is said on that
    side."""

    name: str
    low: float
    high: float
    warn_below: float | None
    warn_above: float | None
    unit: str
    source: str


RANGES: Final = (
    Intake("kcal_per_h", 150, 400, 150, 400, "kcal/h", ISSN),
    # Between 50 and 90 g/h is done with mixed sugars by those who have trained it.
    Intake("carbohydrate_g_per_h", 30, 50, 30, 90, "g/h", f"{ISSN}; {COSTA}"),
    Intake("fluid_ml_per_h", 450, 750, None, 750, "ml/h", f"{ISSN}; {HYPONATRAEMIA}"),
)


@dataclass(frozen=True, slots=True)
class Carry:
    """What she carries out of one point: to the next where she can refill, by goal B, bottles by goal C.

    Amounts are None where her plan says nothing about them, rounded up as bottles of half a litre are; `hourly` are those an
    hour, in the order of HOURLY.
    """

    from_point: str
    to_point: str
    takes: timedelta
    takes_at_most: timedelta
    words: str
    kcal: int | None
    carbohydrate_g: int | None
    fluid_ml: int | None
    sodium_mg: int | None
    bottles: int | None
    caffeine_mg: int | None = None
    things: tuple[tuple[str, int], ...] = ()
    hourly: tuple[float | None, ...] = ()


@dataclass(frozen=True, slots=True)
class Bag:
    """What must be in the drop bag (or with the crew) at a point, to last until the next such point on a slow day (goal
    C); `things`: how many of each."""

    point: str
    kcal: int | None
    carbohydrate_g: int | None
    sodium_mg: int | None
    words: tuple[str, ...]
    things: tuple[tuple[str, int], ...] = ()


@dataclass(frozen=True, slots=True)
class FuelTable:
    """All of it: per leg, per bag, warnings about figures outside the published ranges, and the cautions."""

    carry: tuple[Carry, ...]
    bags: tuple[Bag, ...]
    warnings: tuple[Note, ...]
    cautions: tuple[Note, ...] = CAUTIONS


@dataclass(frozen=True, slots=True)
class _Leg:
    hours: float
    hours_at_most: float
    plan: FuelPlan | None


def fuel_of(runner: Runner, points: Sequence[Point], timetable: Timetable) -> FuelTable:
    """The same of a runner, by what she can carry and what her stomach was trained on."""
    trained = runner.trained_carbohydrate_g_per_h
    return fuel_table(
        runner.fuel, points, timetable, bottles=runner.bottles or BOTTLES, trained_g_per_h=trained
    )


def fuel_table(
    fuel: Sequence[FuelPlan],
    points: Sequence[Point],
    timetable: Timetable,
    *,
    bottles: int = BOTTLES,
    trained_g_per_h: float | None = None,
) -> FuelTable:
    """What to carry where. `fuel` holds from each `from_point` until the next one named; points in running
    order. bottles: how many of half a litre she can carry; trained_g_per_h: carbohydrate that she has taken in training.

    Errors: PlanError for a point that is not on the course.
    """
    by_point = _checked(fuel, points)
    legs = _legs(by_point, timetable)
    kinds_refill = {PointKind.AID_STATION, PointKind.WATER, PointKind.START}
    refills = [k for k, p in enumerate(points) if k == 0 or p.kinds & kinds_refill or p.crew_access]
    bags = [k for k, p in enumerate(points) if k == 0 or PointKind.DROP_BAG in p.kinds or p.crew_access]
    last = len(points) - 1
    carry = [_carry(points, legs, a, b) for a, b in _spans(refills, last)]
    packed = [_bag(points, legs, a, b) for a, b in _spans(bags, last)]
    warned = (
        *_warnings(fuel, points),
        *_untrained(fuel, points, trained_g_per_h),
        *_caffeine(fuel, points, legs, timetable),
        *_dry(carry, points, bottles),
    )
    return FuelTable(tuple(carry), tuple(packed), warned)


def fuel_told(runner: Runner, points: Sequence[Point], timetable: Timetable) -> tuple[PlanDoubt, ...]:
    """What of her plan is outside the published ranges, her training or her bottles, each with what to do about it."""
    found = fuel_of(runner, points, timetable).warnings if runner.fuel else ()
    most = max((n.number("count") for n in found if n.kind == "fuel-dry"), default=0)
    return tuple(PlanDoubt(n, note(n.kind.replace("fuel-", "fuel-do-", 1), count=most)) for n in found)


def _checked(fuel: Sequence[FuelPlan], points: Sequence[Point]) -> dict[str, FuelPlan]:
    known = {p.id for p in points}
    for k, plan in enumerate(fuel):
        if plan.from_point not in known:
            raise PlanError(
                say("wrong-no-point-on-course", point=plan.from_point),
                field=f"runners.fuel[{k}].from",
                remedy=say("do-use", known=", ".join(p.id for p in points)),
            )
    return {plan.from_point: plan for plan in fuel}


def _legs(by_point: dict[str, FuelPlan], timetable: Timetable) -> list[_Leg]:
    """One leg a point but the last: hours out of it until in at the next, and the plan that holds there."""
    legs: list[_Leg] = []
    plan: FuelPlan | None = None
    for here, there in zip(timetable.rows, timetable.rows[1:], strict=False):
        plan = by_point.get(here.point, plan)
        hours, most = ((there.arrive[g] - here.leave[g]).total_seconds() / 3600.0 for g in (Goal.B, Goal.C))
        legs.append(_Leg(hours, most, plan))
    return legs


def _spans(stops: list[int], last: int) -> list[tuple[int, int]]:
    ends = [*(k for k in stops if 0 < k < last), last]
    starts = [k for k in stops if k < last]
    return list(zip(starts, ends, strict=True))


def _sum(legs: list[_Leg], name: str, *, at_most: bool = False) -> float | None:
    """Amount over some legs, None where no plan there says anything about it."""
    said = [
        value * (leg.hours_at_most if at_most else leg.hours)
        for leg in legs
        if leg.plan is not None and (value := leg.plan.rate(name)) is not None
    ]
    return sum(said) if said else None


def _things(legs: list[_Leg]) -> tuple[tuple[str, int], ...]:
    """How many of each she eats over some legs of a slow day, rounded up."""
    found: dict[str, float] = {}
    for leg in legs:
        for e in leg.plan.eats if leg.plan is not None else ():
            found[e.name] = found.get(e.name, 0.0) + e.per_h * leg.hours_at_most
    return tuple((name, math.ceil(count - 1e-9)) for name, count in found.items())


def _whole(value: float | None) -> int | None:
    return None if value is None else math.ceil(value - 1e-9)


def _carry(points: Sequence[Point], legs: list[_Leg], a: int, b: int) -> Carry:
    part = legs[a:b]
    most = _sum(part, "fluid_ml_per_h", at_most=True)
    words = dict.fromkeys(leg.plan.words for leg in part if leg.plan is not None and leg.plan.words)
    return Carry(
        points[a].id,
        points[b].id,
        timedelta(hours=sum(leg.hours for leg in part)),
        timedelta(hours=sum(leg.hours_at_most for leg in part)),
        "; ".join(words),
        _whole(_sum(part, "kcal_per_h")),
        _whole(_sum(part, "carbohydrate_g_per_h")),
        _whole(_sum(part, "fluid_ml_per_h")),
        _whole(_sum(part, "sodium_mg_per_h")),
        None if most is None else math.ceil(most / BOTTLE_ML - 1e-9),
        _whole(_sum(part, "caffeine_mg_per_h")),
        _things(part),
        tuple(_per_hour(part, name) for name in HOURLY),
    )


def _per_hour(part: list[_Leg], name: str) -> float | None:
    amount, hours = _sum(part, name), sum(leg.hours for leg in part)
    return amount / hours if amount is not None and hours else None


def _bag(points: Sequence[Point], legs: list[_Leg], a: int, b: int) -> Bag:
    part = legs[a:b]
    words = dict.fromkeys(leg.plan.words for leg in part if leg.plan is not None and leg.plan.words)
    kcal, carbohydrate, sodium = (
        _whole(_sum(part, n, at_most=True)) for n in ("kcal_per_h", "carbohydrate_g_per_h", "sodium_mg_per_h")
    )
    return Bag(points[a].id, kcal, carbohydrate, sodium, tuple(words), _things(part))


def _warnings(fuel: Sequence[FuelPlan], points: Sequence[Point]) -> tuple[Note, ...]:
    names = {p.id: p.name for p in points}
    out: list[Note] = []
    for plan in fuel:
        for r in RANGES:
            value = plan.rate(r.name)
            above = value is not None and r.warn_above is not None and value > r.warn_above
            below = value is not None and r.warn_below is not None and value < r.warn_below
            if value is None or not (above or below):
                continue
            kind, place = f"fuel-{'above' if above else 'below'}", names[plan.from_point]
            words = {"place": place, "unit": r.unit, "source": r.source}
            out.append(note(kind, **words, amount=value, low=r.low, high=r.high))
    return tuple(out)


def _untrained(fuel: Sequence[FuelPlan], points: Sequence[Point], trained: float | None) -> Iterator[Note]:
    """More carbohydrate than her stomach has taken in training; and things eaten that make another figure than the one
    given."""
    names = {p.id: p.name for p in points}
    for plan in fuel:
        value, made = plan.rate("carbohydrate_g_per_h"), plan.made("carbohydrate_g_per_h")
        place = names[plan.from_point]
        if value is not None and trained is not None and value > trained:
            yield note("fuel-untrained", place=place, amount=round(value), trained=round(trained))
        if value and made is not None and abs(made - value) > APART * value:
            yield note("fuel-apart", place=place, amount=round(value), made=round(made))


def _caffeine(
    fuel: Sequence[FuelPlan], points: Sequence[Point], legs: list[_Leg], timetable: Timetable
) -> Iterator[Note]:
    """A single dose, or 24 hours of goal B, above the published amounts; of the second on which leg that comes."""
    names = {p.id: p.name for p in points}
    for plan in fuel:
        for e in plan.eats:
            if e.caffeine_mg is not None and e.caffeine_mg > CAFFEINE_DOSE_MG:
                about = {"place": names[plan.from_point], "thing": e.name, "source": EFSA}
                yield note("fuel-caffeine-dose", **about, amount=round(e.caffeine_mg), most=CAFFEINE_DOSE_MG)
    taken = [(leg.plan.rate("caffeine_mg_per_h") or 0.0) * leg.hours if leg.plan else 0.0 for leg in legs]
    clock, gone = [0.0], [0.0]
    for here, there, amount in zip(timetable.rows, timetable.rows[1:], taken, strict=False):
        clock += [t.total_seconds() / 3600.0 for t in (here.leave[Goal.B], there.arrive[Goal.B])]
        gone += [gone[-1], gone[-1] + amount]
    now = np.union1d(np.arange(0.0, clock[-1], 1.0 / 60.0), clock)
    day = np.interp(now, clock, gone) - np.interp(now - 24.0, clock, gone)
    if day.max() > CAFFEINE_DAY_MG:
        leg = int(np.searchsorted(clock[2::2], now[np.argmax(day > CAFFEINE_DAY_MG)]))
        places = {"place": names[timetable.rows[leg].point], "next": names[timetable.rows[leg + 1].point]}
        amount = round(float(day.max()))
        yield note("fuel-caffeine-day", source=EFSA, amount=amount, most=CAFFEINE_DAY_MG, **places)


def _dry(carry: Sequence[Carry], points: Sequence[Point], bottles: int) -> Iterator[Note]:
    """Where her bottles do not last to the next water: it has to be found on the way."""
    names = {p.id: p.name for p in points}
    for c in carry:
        if c.bottles is not None and c.bottles > bottles:
            about = {"place": names[c.from_point], "next": names[c.to_point]}
            yield note(
                "fuel-dry",
                **about,
                takes_length_s=c.takes_at_most.total_seconds(),
                count=c.bottles,
                has=bottles,
            )
