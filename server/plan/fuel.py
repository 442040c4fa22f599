"""What to carry on each leg: energy, fluid, salt and bottles, held against published ranges.

To plan with, never advice to treat, and never a target for drinking: fluid is warned about above the range
only, below it bottles are planned so that there is enough to drink to thirst.
"""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import dataclass
from datetime import timedelta
from typing import Final

from server.event.model import FuelPlan, Goal, Point, PointKind
from server.plan.errors import PlanError
from server.plan.notes import Note, note
from server.plan.timetable import Timetable

BOTTLE_ML: Final = 500
ISSN: Final = "Tiller et al. 2019, J Int Soc Sports Nutr 16:50"
COSTA: Final = "Costa et al. 2019, Int J Sport Nutr Exerc Metab 29:130"
HYPONATRAEMIA: Final = "Hew-Butler et al. 2015 consensus (from memory)"
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
    Intake("carbohydrate_g_per_h", 30, 50, 30, 90, "g/h", f"{ISSN}; upper {COSTA}"),
    Intake("fluid_ml_per_h", 450, 750, None, 750, "ml/h", f"{ISSN}; too much {HYPONATRAEMIA}"),
)
SODIUM_MG_PER_L: Final = 575
"""Above which sodium in drink or food may be needed on long hot days. Source: ISSN."""
SENSELESS: Final = {
    "kcal_per_h": 1500.0,
    "carbohydrate_g_per_h": 250.0,
    "fluid_ml_per_h": 3000.0,
    "sodium_mg_per_h": 5000.0,
}


@dataclass(frozen=True, slots=True)
class Carry:
    """What she carries out of one point: to the next where she can refill, by goal B, bottles by goal C.

    Amounts are None where her plan says nothing about them; bottles are of half a litre, rounded up.
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


@dataclass(frozen=True, slots=True)
class Bag:
    """What must be in the drop bag (or with the crew) at a point, to last until the next such point."""

    point: str
    kcal: int | None
    carbohydrate_g: int | None
    sodium_mg: int | None
    words: tuple[str, ...]


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


def fuel_table(fuel: Sequence[FuelPlan], points: Sequence[Point], timetable: Timetable) -> FuelTable:
    """What to carry where. `fuel` holds from each `from_point` until the next one named; points in running
    order.

    Errors: PlanError for a point that is not on the course or an amount that nobody takes.
    """
    by_point = _checked(fuel, points)
    legs = _legs(by_point, timetable)
    kinds_refill = {PointKind.AID_STATION, PointKind.WATER, PointKind.START}
    refills = [k for k, p in enumerate(points) if k == 0 or p.kinds & kinds_refill or p.crew_access]
    bags = [k for k, p in enumerate(points) if k == 0 or PointKind.DROP_BAG in p.kinds or p.crew_access]
    last = len(points) - 1
    carry = [_carry(points, legs, a, b) for a, b in _spans(refills, last)]
    packed = [_bag(points, legs, a, b) for a, b in _spans(bags, last)]
    return FuelTable(tuple(carry), tuple(packed), _warnings(fuel, points))


def _checked(fuel: Sequence[FuelPlan], points: Sequence[Point]) -> dict[str, FuelPlan]:
    known = {p.id for p in points}
    for k, plan in enumerate(fuel):
        if plan.from_point not in known:
            raise PlanError(
                f"there is no point '{plan.from_point}' on this course",
                field=f"runners.fuel[{k}].from",
                remedy=f"Use one of: {', '.join(p.id for p in points)}",
            )
        for name, most in SENSELESS.items():
            value = getattr(plan, name)
            if value is not None and not 0.0 <= value <= most:
                raise PlanError(
                    f"{name} = {value:g} is outside 0 to {most:g}",
                    field=f"runners.fuel[{k}].{name}",
                    remedy="Give the amount for one hour",
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
        getattr(leg.plan, name) * (leg.hours_at_most if at_most else leg.hours)
        for leg in legs
        if leg.plan is not None and getattr(leg.plan, name) is not None
    ]
    return sum(said) if said else None


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
    )


def _bag(points: Sequence[Point], legs: list[_Leg], a: int, b: int) -> Bag:
    part = legs[a:b]
    words = dict.fromkeys(leg.plan.words for leg in part if leg.plan is not None and leg.plan.words)
    kcal, carbohydrate, sodium = (
        _whole(_sum(part, n)) for n in ("kcal_per_h", "carbohydrate_g_per_h", "sodium_mg_per_h")
    )
    return Bag(points[a].id, kcal, carbohydrate, sodium, tuple(words))


def _warnings(fuel: Sequence[FuelPlan], points: Sequence[Point]) -> tuple[Note, ...]:
    names = {p.id: p.name for p in points}
    out: list[Note] = []
    for plan in fuel:
        for r in RANGES:
            value = getattr(plan, r.name)
            above = value is not None and r.warn_above is not None and value > r.warn_above
            below = value is not None and r.warn_below is not None and value < r.warn_below
            if not (above or below):
                continue
            kind, place = f"fuel-{'above' if above else 'below'}", names[plan.from_point]
            words = {"place": place, "unit": r.unit, "source": r.source}
            out.append(note(kind, **words, amount=value, low=r.low, high=r.high))
    return tuple(out)
