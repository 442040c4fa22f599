"""How widely her level is taken to lie before she starts, from how widely the plan says her whole time does."""

from __future__ import annotations

import numpy as np

from server.forecast.condition import Ahead, Seen, legs_ahead, totals
from server.forecast.prior import Prior
from server.forecast.values import FloatArray, Reference

LEAST_LEVEL_SD = 0.03
"""However sure a plan is of her whole time, she shows another level when she has one (own choice)."""


def level_sd(reference: Reference, prior: Prior, widen: float) -> float:
    """Level (log) that lets her whole time, before anything is seen, scatter as `reference.spread` says.

    What the course, her day and her fade add to it is taken out of the spread first, and so is the factor by which the
    windows are widened: the plan's range of the finish and the forecast's before the start are then the same.
    """
    assert reference.spread is not None
    wanted = (reference.spread / widen) ** 2
    return float(np.sqrt(max(wanted - _without_level(reference, prior), LEAST_LEVEL_SD**2)))


def _without_level(reference: Reference, prior: Prior) -> float:
    """Variance of the log of the whole time of a runner whose level is known."""
    ends = np.concatenate([[0.0], reference.elapsed_s])
    a, b = ends[None, :-1] / ends[-1], ends[None, 1:] / ends[-1]
    point = np.full(a.shape, prior.point_sd**2)
    first = point.copy()
    first[:, 0] = 0.0
    legs = legs_ahead(prior, _nothing_seen(), Ahead(a, b, first, point), 0.0)
    return float(totals(legs, np.diff(ends)[None, :]).cov[0, -1, -1])


def _nothing_seen() -> Seen:
    none: FloatArray = np.zeros((1, 0))
    return Seen(none, none, none, none, none, none, none)
