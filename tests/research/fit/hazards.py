"""How runners give up: a hazard along the course, fitted on every row, those that end early included."""

from collections.abc import Sequence

import numpy as np
from scipy.optimize import minimize

from server.forecast.condition import legs_ahead
from server.forecast.prior import Prior
from server.forecast.stopping import inputs, rate
from server.forecast.values import FloatArray
from tests.research.fit.tables import Race, batch

HOLD = 1e-2


def exposures(
    races: Sequence[Race], prior: Prior, level_sd: float
) -> tuple[FloatArray, FloatArray, FloatArray]:
    """One row a runner and recorded point: inputs (r, 6), share of the next leg (r,), whether she was never seen again.

    Whatever ended a race counts, a cut-off too: a runner who was stopped at one is not still going.
    """
    parts: list[tuple[FloatArray, FloatArray, FloatArray]] = []
    for race in races:
        for k in range(1, race.ref_s.size):
            b = batch(race, k, prior)
            legs = legs_ahead(prior, b.seen, b.ahead, level_sd**2)
            middle = (b.ahead.a[:, 0] + b.ahead.b[:, 0]) / 2.0
            x = inputs(middle, b.seen.y[:, -1], legs.level, legs.surprise[:, -1])
            gone = np.asarray(np.isnan(b.truth_s).all(axis=1), dtype=np.float64)
            parts.append((x, b.ahead.b[:, 0] - b.ahead.a[:, 0], gone))
    x, length, gone = (np.concatenate(p) for p in zip(*parts, strict=True))
    return x, length, gone


def fit_hazard(races: Sequence[Race], prior: Prior, level_sd: float) -> tuple[float, ...]:
    """Coefficients by greatest likelihood of who was seen again and who was not."""
    x, length, gone = exposures(races, prior, level_sd)

    def loss(w: FloatArray) -> float:
        risk = rate(tuple(w), x) * length
        likely = np.where(gone > 0, np.log(-np.expm1(-np.maximum(risk, 1e-12))), -risk)
        return float(-likely.sum() + HOLD * float(w[1:] @ w[1:])) / gone.size

    found = minimize(loss, np.array([-1.0, 0, 0, 0, 0, 0]), method="L-BFGS-B")
    return tuple(float(v) for v in found.x)


def hazard_score(
    races: Sequence[Race], prior: Prior, level_sd: float, hazard: tuple[float, ...]
) -> tuple[float, ...]:
    """On races kept back: retirements foreseen and counted, and mean log score beside one rate for all."""
    x, length, gone = exposures(races, prior, level_sd)
    risk = rate(hazard, x) * length
    flat = gone.sum() / length.sum() * length

    def mean_log(r: FloatArray) -> float:
        return float(np.where(gone > 0, np.log(-np.expm1(-np.maximum(r, 1e-12))), -r).mean())

    return float(-np.expm1(-risk).sum()), float(gone.sum()), mean_log(risk), mean_log(flat)
