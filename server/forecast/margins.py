"""How long until each later point: corrected quantile curves, and joint paths that have exactly these margins."""

from __future__ import annotations

from dataclasses import dataclass
from functools import lru_cache

import numpy as np
from scipy.special import log_ndtr, ndtri, ndtri_exp

from server.forecast.values import FloatArray

KNOT_P = np.array([0.05, 0.1, 0.25, 0.5, 0.75, 0.9, 0.95, 0.995])
KNOT_Z = np.asarray(ndtri(KNOT_P))
_MIDDLE, _HIGH, _LAST = 3, 6, 7
_RARE_HIGH, _RARE_LAST = (float(-np.log1p(-KNOT_P[k])) for k in (_HIGH, _LAST))
LEAST_LEG = 0.25
STEP_HALF = 0.004


@dataclass(frozen=True, slots=True, eq=False)
class Margins:
    """Time (s, from the last fact) to each later point as exp(centre + spread * g(z)), z standard normal.

    centre, spread: (..., m). curve: (..., m, 8), rising, g at KNOT_Z; straight below the outermost knot. Beyond the
    95% time what she is late by falls off as a power (`later`), tail its power beyond the 99.5% time: who is very
    late has met with something, and the longer it has lasted the longer it may still last.
    """

    centre: FloatArray
    spread: FloatArray
    curve: FloatArray
    tail: float

    def at_z(self, z: FloatArray) -> FloatArray:
        """z (p, m) or (p, 1) -> times (p, m); for unbatched margins."""
        z = np.broadcast_to(z, (z.shape[0], self.centre.shape[-1]))
        i = np.clip(np.searchsorted(KNOT_Z, z, side="right") - 1, 0, KNOT_Z.size - 2)
        column = np.arange(z.shape[1])
        low, high = self.curve[column, i], self.curve[column, i + 1]
        g = low + (z - KNOT_Z[i]) * (high - low) / (KNOT_Z[i + 1] - KNOT_Z[i])
        times = np.exp(np.minimum(self.centre + self.spread * g, 25.0))
        rows, columns = np.nonzero(z > KNOT_Z[_HIGH])
        middle, high_s, last_s = (self._at_knot(k)[columns] for k in (_MIDDLE, _HIGH, _LAST))
        times[rows, columns] = middle + later(
            high_s - middle, last_s - middle, -log_ndtr(-z[rows, columns]), self.tail
        )
        return np.asarray(times)

    def _at_knot(self, k: int) -> FloatArray:
        """(m,) seconds at a knot."""
        return np.asarray(np.exp(np.minimum(self.centre + self.spread * self.curve[..., k], 25.0)))

    def z_of(self, column: int, after_s: FloatArray) -> FloatArray:
        """Standard normal score of times (any shape) at one later point; -inf at or before the last fact."""
        after = np.asarray(after_s, dtype=np.float64)
        g = (np.log(np.maximum(after, 1e-9)) - self.centre[column]) / self.spread[column]
        curve = self.curve[column]
        i = np.clip(np.searchsorted(curve, g, side="right") - 1, 0, KNOT_Z.size - 2)
        z = KNOT_Z[i] + (g - curve[i]) * (KNOT_Z[i + 1] - KNOT_Z[i]) / (curve[i + 1] - curve[i])
        middle, high, last = (float(self._at_knot(k)[column]) for k in (_MIDDLE, _HIGH, _LAST))
        rarity = later_than(high - middle, last - middle, np.maximum(after, high) - middle, self.tail)
        z = np.where(after > high, -ndtri_exp(-rarity), z)
        return np.asarray(np.where(after > 0, z, -np.inf))


def later(high_s: FloatArray, last_s: FloatArray, rarity: FloatArray, power: float) -> FloatArray:
    """Seconds after the median at which P(later) = exp(-rarity), rarity past that of the 95% time.

    high_s, last_s: seconds after the median of the 95% and 99.5% times, 0 < high_s < last_s. Between the two, and
    beyond with `power`, P(later than x) goes as a power of x (Pareto).
    """
    part = (rarity - _RARE_HIGH) / (_RARE_LAST - _RARE_HIGH)
    inner = high_s * (last_s / high_s) ** np.minimum(part, 1.0)
    return np.asarray(inner * np.exp(np.minimum(np.maximum(rarity - _RARE_LAST, 0.0) / power, 25.0)))


def later_than(high_s: float, last_s: float, after_s: FloatArray, power: float) -> FloatArray:
    """-log P(later than after_s past the median), after_s >= high_s: `later` turned round."""
    inner = np.log(np.minimum(after_s, last_s) / high_s) / np.log(last_s / high_s)
    outer = power * np.log(np.maximum(after_s, last_s) / last_s)
    return np.asarray(_RARE_HIGH + inner * (_RARE_LAST - _RARE_HIGH) + outer)


def times_at(
    centre: FloatArray, sd: FloatArray, curves: FloatArray, probs: FloatArray, tail: float
) -> FloatArray:
    """Times (B, m, q) at probabilities (q,) for centre and sd (B, m) and curves (B, m, 8): `Margins` for a field."""
    z = np.asarray(ndtri(probs))
    i = np.clip(np.searchsorted(KNOT_Z, z, side="right") - 1, 0, KNOT_Z.size - 2)
    part = (z - KNOT_Z[i]) / (KNOT_Z[i + 1] - KNOT_Z[i])
    g = curves[..., i] * (1.0 - part) + curves[..., i + 1] * part
    times = np.exp(np.minimum(centre[..., None] + sd[..., None] * g, 25.0))
    rare = np.flatnonzero(z > KNOT_Z[_HIGH])
    if rare.size:
        middle, high, last = (
            np.exp(np.minimum(centre + sd * curves[..., k], 25.0))[..., None] for k in (_MIDDLE, _HIGH, _LAST)
        )
        times[..., rare] = middle + later(high - middle, last - middle, -log_ndtr(-z[rare]), tail)
    return np.asarray(times)


def truncated_above(z: FloatArray, z_floor: float) -> FloatArray:
    """Carry standard normal scores over to the same normal known to exceed z_floor; rising in both."""
    if z_floor == -np.inf:
        return z
    return np.asarray(-ndtri_exp(log_ndtr(-z_floor) + log_ndtr(-z)))


@lru_cache(maxsize=64)
def base_draws(paths: int, dims: int) -> tuple[FloatArray, FloatArray]:
    """Fixed scores (paths, dims) and weights (paths,): the first column stratified with a fine late tail.

    The other columns are fixed pseudo-random normals made exactly centred and uncorrelated.
    """
    tail = paths // 4
    body = paths - tail
    edges = np.concatenate(
        [np.linspace(0.0, 0.9, body + 1), 1.0 - 0.1 * np.geomspace(1.0, 1e-5, tail + 1)[1:]]
    )
    edges[-1] = 1.0
    weights = np.diff(edges)
    first = ndtri(np.clip((edges[1:] + edges[:-1]) / 2, 1e-9, 1 - 1e-9))
    draws = np.random.Generator(np.random.PCG64(20240229)).standard_normal((paths, dims))
    draws[:, 0] = first
    for j in range(1, dims):
        before = np.column_stack([np.ones(paths), draws[:, :j]])
        if before.shape[1] < paths // 2:
            w = np.sqrt(weights)[:, None]
            fit, *_ = np.linalg.lstsq(before * w, draws[:, j] * w[:, 0], rcond=None)
            draws[:, j] -= before @ fit
        draws[:, j] /= np.sqrt(np.dot(weights, draws[:, j] ** 2))
    draws.flags.writeable = False
    weights.flags.writeable = False
    return draws, weights


def joint_scores(correlation: FloatArray, paths: int) -> tuple[FloatArray, FloatArray]:
    """Scores (paths, m) with the correlation (m, m) whose weighted margins are standard normal; weights (paths,)."""
    m = correlation.shape[0]
    draws, weights = base_draws(paths, m)
    raw = draws @ _root(correlation).T
    order = np.argsort(raw, axis=0, kind="stable")
    sorted_weights = weights[order]
    upto = np.cumsum(sorted_weights, axis=0)
    scores = np.empty_like(raw)
    np.put_along_axis(scores, order, ndtri(np.clip(upto - sorted_weights / 2, 1e-12, 1 - 1e-12)), axis=0)
    return scores, weights


def _root(correlation: FloatArray) -> FloatArray:
    """The lower triangular root (m, m) of a correlation, or of the nearest that can be one.

    Correlations of sums of lognormals matched by moments may pass 1 where the first leg is short and ill known, as by a
    position just before a point: that must cost a little truth in how the points hang together, never the forecast.
    """
    little = 1e-9 * np.eye(correlation.shape[0])
    try:
        return np.asarray(np.linalg.cholesky(correlation + little))
    except np.linalg.LinAlgError:
        values, vectors = np.linalg.eigh(correlation)
        root = vectors * np.sqrt(np.maximum(values, 0.0))
        root = root / np.linalg.norm(root, axis=1, keepdims=True)
        return np.asarray(np.linalg.cholesky(root @ root.T + little))


def in_order(times: FloatArray, least_legs: FloatArray) -> FloatArray:
    """Lift times (..., m) so that along the course each comes at least a small leg after the one before."""
    least = np.cumsum(least_legs, axis=-1)
    return np.asarray(np.maximum.accumulate(np.maximum(times - least, 0.0), axis=-1) + least)


def kept_in_order(times: FloatArray, least_legs: FloatArray) -> FloatArray:
    """`in_order` of those paths (p, m) alone that cross, by least_legs (m,) or (p, m); the others stay to the last bit."""
    crossed = np.any(np.diff(times, axis=-1, prepend=0.0) <= 0.0, axis=-1)
    return np.where(crossed[:, None], in_order(times, least_legs), times) if crossed.any() else times


def carried(delayed: FloatArray, later: FloatArray, weights: FloatArray) -> FloatArray:
    """How much of a log delay of times delayed (p,) is repeated in each of later (p, m), s: (m,), 0 to 1, from the paths."""
    x, y = np.log(delayed), np.log(np.maximum(later, 1.0))
    x, y = x - np.dot(weights, x), y - weights @ y
    return np.asarray(np.clip((weights * x) @ y / max(float(np.dot(weights, x * x)), 1e-12), 0.0, 1.0))


def weighted_quantiles(values: FloatArray, weights: FloatArray, probs: FloatArray) -> FloatArray:
    """Quantiles (q,) of values (p,) with weights (p,); see `Steps`."""
    return Steps.of(values, weights).quantiles(probs)


@dataclass(frozen=True, slots=True, eq=False)
class Steps:
    """A stepped inverse distribution: up to which probability (p + 1,), and the area under it so far (p + 1,).

    A quantile is its mean over a narrow stretch about the probability. A mean of steps never falls when any value
    rises, whatever the weights; interpolating between weighted middles would.
    """

    upto: FloatArray
    area: FloatArray

    @staticmethod
    def of(values: FloatArray, weights: FloatArray) -> Steps:
        """That of values (p,) with weights (p,)."""
        order = np.argsort(values, kind="stable")
        w = weights[order] / weights.sum()
        upto = np.concatenate([[0.0], np.cumsum(w)])
        upto[-1] = 1.0
        return Steps(upto, np.concatenate([[0.0], np.cumsum(w * values[order])]))

    def quantiles(self, probs: FloatArray) -> FloatArray:
        """Quantiles (q,) for probabilities (q,)."""
        p = np.asarray(probs, dtype=np.float64)
        half = np.maximum(np.minimum(STEP_HALF, 0.2 * np.minimum(p, 1.0 - p)), 1e-9)
        areas = np.interp(np.concatenate([p + half, p - half]), self.upto, self.area)
        return np.asarray((areas[: p.size] - areas[p.size :]) / (2.0 * half))
