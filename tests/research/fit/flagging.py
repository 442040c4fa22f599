"""Fits `flags`: the odds of stopping on a leg, and the density lines by false flags a leg. On every row of every course."""

from collections.abc import Sequence
from dataclasses import dataclass, replace

import numpy as np
from scipy.optimize import minimize

from server.forecast import flags
from server.forecast.correct import spread, with_mishaps
from server.forecast.fitted import Flagging, Ground
from server.forecast.prior import Prior
from server.forecast.values import FloatArray
from tests.research.fit.curves import ask, bent
from tests.research.fit.tables import Race, batch

HOLD = 1.0
"""Against large weights, of inputs scaled to a spread of one."""
RATES = (0.04, 0.02, 0.01, 0.005, 0.0025, 0.00125, 0.0006)
LOG_LINES = (-15.0, 15.0)
EVERY = 2
"""Of the runners: what is fitted is a dozen numbers."""


@dataclass(frozen=True, slots=True, eq=False)
class Legs:
    """One row a runner and leg: inputs, the leg's share, seconds it took (nan: went no further), her next arrival at the
    knots (r, 8), her whole time, and the power of its tail."""

    x: FloatArray
    length: FloatArray
    took_s: FloatArray
    next_s: FloatArray
    whole_s: FloatArray
    power: float


def legs_of(races: Sequence[Race], prior: Prior, ground: Ground, level_sd: float, limit: bool) -> Legs:
    """Everybody asked from the second point on; a leg whose end was not recorded counts for nothing."""
    parts: list[tuple[FloatArray, ...]] = []
    for race in (replace(r, elapsed_s=r.elapsed_s[::EVERY]) for r in races):
        for k in range(2, race.ref_s.size):
            b = batch(race, k, prior)
            a = ask(b, prior, level_sd, limit)
            curve = with_mishaps(bent(a, ground.nets, ground.years), a.used, a.plain, b.spent_s, ground.tail)
            ahead = b.truth_s - b.spent_s[:, None]
            gone = np.isnan(ahead).all(axis=1)
            rows = np.flatnonzero(gone | ~np.isnan(ahead[:, 0]))
            begin, end = b.ahead.a[:, 0], b.ahead.b[:, 0]
            limit_s = np.full(b.spent_s.shape, race.limit_s) if limit else None
            x = flags.inputs(b.seen, (begin + end) / 2.0, a.legs, a.plain, b.spent_s, limit_s)
            next_s = np.exp(a.used.mean[:, :1] + spread(a.used)[:, :1] * curve[:, 0])
            whole = b.spent_s + np.exp(a.plain.mean[:, -1])
            parts.append(tuple(v[rows] for v in (x, end - begin, ahead[:, 0], next_s, whole)))
    x, length, took, next_s, whole = (np.concatenate(p) for p in zip(*parts, strict=True))
    return Legs(x, length, took, next_s, whole, ground.tail[2])


def fit_odds(found: Sequence[Legs]) -> tuple[float, ...]:
    """Weights by greatest likelihood of who was seen again and who was not."""
    x, length, took = (np.concatenate([getattr(f, n) for f in found]) for n in ("x", "length", "took_s"))
    middle, scale = x.mean(axis=0), x.std(axis=0) + 1e-9
    middle[0], scale[0] = 0.0, 1.0
    scaled, gone = (x - middle) / scale, np.isnan(took)

    def loss(w: FloatArray) -> float:
        risk = np.maximum(np.exp(np.clip(scaled @ w, -14.0, 5.0)) * length, 1e-12)
        return float(-np.where(gone, np.log(-np.expm1(-risk)), -risk).sum() + HOLD * (w[1:] @ w[1:]))

    start = np.zeros(x.shape[1])
    start[0] = -1.0
    w = np.asarray(minimize(loss, start, method="L-BFGS-B").x) / scale
    w[0] -= float(w[1:] @ middle[1:])
    return tuple(float(v) for v in w)


def fit_lines(found: Sequence[Legs], weights: tuple[float, ...]) -> tuple[float, ...]:
    """Log density lines at RATES, the mean over courses: at each so many of the legs that were made are flagged."""
    each = []
    for f in found:
        made = ~np.isnan(f.took_s)
        chance = flags.stops(weights, f.x[made], f.length[made])
        each.append([_line(f, made, chance, rate) for rate in RATES])
    return tuple(float(v) for v in np.mean(each, axis=0))


def _line(f: Legs, made: FloatArray, chance: FloatArray, rate: float) -> float:
    low, high = LOG_LINES
    for _ in range(40):
        middle = (low + high) / 2.0
        one = Flagging((), (), (0.5, 0.1), (middle, middle), (middle, middle))
        at = flags.times(one, True, np.array([0.1]), chance, f.next_s[made], f.whole_s[made], f.power)[:, 0]
        low, high = (middle, high) if np.mean(f.took_s[made] > at) < rate else (low, middle)
    return low


def fit_flags(told: Sequence[Legs], untold: Sequence[Legs]) -> Flagging:
    """One set of constants for all courses."""
    weights, without = fit_odds(told), fit_odds(untold)
    return Flagging(weights, without, RATES, fit_lines(told, weights), fit_lines(untold, without))
