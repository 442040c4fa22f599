"""How likely a target is, by a time predicted for her or by the power of her own runs; and her time by them."""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import dataclass
from datetime import timedelta
from typing import Final

import numpy as np

from server.plan.notes import Note, Saying, note

Z90: Final = 1.2815515655446004
"""Standard normal score of 90%."""
UNLIKELY: Final = 0.20
"""Odds under which a target is called unlikely."""
POWER_FALLS: Final = -0.07
"""First power she can mean to hold goes with the hours of a run to this power, a little steeper than Riegel's times
make it (0.06 / 1.06). Common practice, no source."""
PER_DOUBLING: Final = 0.04


@dataclass(frozen=True, slots=True)
class Estimate:
    """A whole time with its spread (standard deviation of its logarithm), and what it came from."""

    total: timedelta
    spread: float
    source: Saying
    notes: tuple[Note, ...] = ()

    @property
    def sides(self) -> tuple[timedelta, timedelta]:
        """The 10% and the 90% side."""
        seconds = self.total.total_seconds()
        low, high = (seconds * math.exp(z * self.spread) for z in (-Z90, Z90))
        return timedelta(seconds=round(low)), timedelta(seconds=round(high))


@dataclass(frozen=True, slots=True)
class RunPower:
    """The power of one of her runs, W/kg fresh, and how many hours it was held."""

    file: str
    w_kg: float
    hours: float


def odds_of(estimate: Estimate, target: timedelta) -> float:
    """Probability that she is as fast as `target` or faster, by an estimate."""
    return _normal(math.log(target.total_seconds() / estimate.total.total_seconds()) / estimate.spread)


def odds_by_power(runs: Sequence[RunPower], needs_w_kg: float, target: timedelta, spread: float) -> float:
    """Probability that she holds needs_w_kg (fresh) over `target`, by the power of her runs.

    Each run is carried to the target's hours; the best third counts as what she can do when she means it. `spread`
    as of a plan on these runs; it grows with how far the hours are carried. At least one run.
    """
    able, carried = able_w_kg(runs, target.total_seconds() / 3600.0, spread)
    return _normal(math.log(able / needs_w_kg) / carried)


def able_w_kg(runs: Sequence[RunPower], hours: float, spread: float) -> tuple[float, float]:
    """The power (W/kg fresh) that her runs make of so many hours, and the spread of its logarithm there."""
    carried = sorted(((r.w_kg * (hours / r.hours) ** POWER_FALLS, r.hours) for r in runs), reverse=True)
    best = carried[: max(1, len(carried) // 3)]
    able = float(np.mean([w for w, _ in best]))
    doublings = float(np.mean([abs(math.log2(hours / h)) for _, h in best]))
    return able, math.hypot(spread, PER_DOUBLING * doublings)


def verdict(odds: float, target: timedelta, source: Saying) -> Note | None:
    """What to say of a target with such odds: nothing unless it is unlikely."""
    if odds >= UNLIKELY:
        return None
    target_s = target.total_seconds()
    if odds <= 0.005:
        return note("unlikely-very", source, target_s=target_s)
    return note("unlikely", source, target_s=target_s, one_in=round(1 / odds))


def predicted(estimate: Estimate, beside: bool = False) -> Note:
    """The time that an estimate gives, with its 10% and 90% sides, and what it used; beside: the plan rests on another."""
    # outward to the minute, as the goals are shown
    low, high = (side.total_seconds() / 60.0 for side in estimate.sides)
    low, high = math.floor(low) * 60.0, math.ceil(high) * 60.0
    likely = round(estimate.total.total_seconds() / 60.0) * 60.0
    kind = "predicted-beside" if beside else "predicted"
    return note(kind, estimate.source, likely_s=likely, low_s=low, high_s=high)


def _normal(z: float) -> float:
    return 0.5 * math.erfc(-z / math.sqrt(2.0))
