"""From legs seen to legs ahead: exact Gaussian conditioning, robust to one bad patch, for many runners at once."""

from dataclasses import dataclass

import numpy as np

from server.forecast.prior import Prior, covariance, edge_noise, leg_noise, mean
from server.forecast.values import FloatArray

ROBUST_ROUNDS = 3
UNSEEN_VAR = 1e8


@dataclass(frozen=True, slots=True, eq=False)
class StretchesRun:
    """Stretches run: share edges a, b (B, k), log ratio y (B, k), edge variances (B, k), which of them count (B, k).

    contrast (B, k): of their planned pace (`tempered`); None where it plays no part.
    """

    a: FloatArray
    b: FloatArray
    y: FloatArray
    var_a: FloatArray
    var_b: FloatArray
    counts: FloatArray
    own: FloatArray
    contrast: FloatArray | None = None


@dataclass(frozen=True, slots=True, eq=False)
class StretchesAhead:
    """Stretches to come: edges a, b (B, m) and the variance of their first edge (B, m), zero but for the first.

    contrast (B, m): as in `StretchesRun`.
    """

    a: FloatArray
    b: FloatArray
    var_a: FloatArray
    var_b: FloatArray
    contrast: FloatArray | None = None


@dataclass(frozen=True, slots=True, eq=False)
class Legs:
    """Log ratios of the stretches ahead: mean (B, m), covariance (B, m, m); surprise (B, k): standardised residuals."""

    mean: FloatArray
    cov: FloatArray
    surprise: FloatArray
    level: FloatArray


def _solve(k: FloatArray, rhs: FloatArray) -> FloatArray:
    return np.asarray(np.linalg.solve(k, rhs))


def _both(prior: Prior, one: FloatArray, other: FloatArray) -> FloatArray:
    """Covariance (..., k, m) from not knowing how much of the planned contrast is kept."""
    return np.asarray(prior.contrast_sd**2 * one[..., :, None] * other[..., None, :])


def legs_ahead(prior: Prior, seen: StretchesRun, ahead: StretchesAhead, level_var: float) -> Legs:
    """Condition on what was seen. With k = 0 stretches seen it is the prior itself."""
    k = seen.y.shape[-1]
    a, b, var_a, var_b = (
        np.concatenate([one, other], axis=-1)
        for one, other in (
            (seen.a, ahead.a),
            (seen.b, ahead.b),
            (seen.var_a, ahead.var_a),
            (seen.var_b, ahead.var_b),
        )
    )
    together = covariance(prior, a, b, a, b, level_var) + edge_noise(a, b, a, b, var_a, var_b)
    if ahead.contrast is not None:
        hills = ahead.contrast
        if seen.contrast is not None:
            hills = np.concatenate([seen.contrast, hills], axis=-1)
        together = together + _both(prior, hills, hills)
    own = leg_noise(prior, a, b)
    m_ahead = mean(prior, ahead.a, ahead.b)
    k_ahead = together[..., k:, k:] + own[..., k:, None] * np.eye(ahead.a.shape[-1])
    if k == 0:
        return Legs(m_ahead, k_ahead, np.zeros_like(seen.y), np.zeros(seen.y.shape[0]))
    base, noise = together[..., :k, :k], own[..., :k] + seen.own
    cross = together[..., k:, :k] * seen.counts[..., None, :]
    resid = np.where(seen.counts > 0, seen.y - mean(prior, seen.a, seen.b), 0.0)
    ignore = UNSEEN_VAR * (1.0 - seen.counts)
    weight = np.ones_like(noise)
    eye = np.eye(noise.shape[-1])
    for _ in range(ROBUST_ROUNDS):
        k_seen = base + (noise / weight + ignore)[..., None] * eye
        pull = _solve(k_seen, resid[..., None])[..., 0]
        # what a leg shows that neither its neighbours nor the prior explain, against its own noise
        own_part = noise / weight * pull
        weight = (prior.robust_df + 1.0) / (prior.robust_df + own_part**2 / noise)
        weight = np.clip(weight, 0.05, 1.5)
    k_seen = base + (noise / weight + ignore)[..., None] * eye
    both = _solve(k_seen, np.concatenate([resid[..., None], np.swapaxes(cross, -1, -2)], axis=-1))
    pull, gain = both[..., 0], both[..., 1:]
    mean_out = m_ahead + (cross @ pull[..., None])[..., 0]
    cov_out = k_ahead - cross @ gain
    cov_out = 0.5 * (cov_out + np.swapaxes(cov_out, -1, -2))
    surprise = np.sqrt(noise) * pull
    level = np.sum(seen.counts * seen.y * (seen.b - seen.a), -1) / np.maximum(
        np.sum(seen.counts * (seen.b - seen.a), -1), 1e-9
    )
    return Legs(mean_out, cov_out, surprise, level)


@dataclass(frozen=True, slots=True, eq=False)
class Totals:
    """Log of the time from the last fact to each later point: mean (B, m), covariance (B, m, m)."""

    mean: FloatArray
    cov: FloatArray


def totals(legs: Legs, reference_legs_s: FloatArray) -> Totals:
    """Sums of lognormal legs, matched by their first two moments. reference_legs_s: (B, m) seconds."""
    var = np.diagonal(legs.cov, axis1=-2, axis2=-1)
    expected = reference_legs_s * np.exp(np.minimum(legs.mean + var / 2, 6.0))
    shared = np.expm1(np.clip(legs.cov, -2.0, 3.0))
    second = expected[..., :, None] * expected[..., None, :] * shared
    until = np.cumsum(expected, -1)
    second = np.cumsum(np.cumsum(second, -1), -2)
    cov = np.log1p(np.maximum(second / (until[..., :, None] * until[..., None, :]), -0.5))
    spread = np.diagonal(cov, axis1=-2, axis2=-1)
    return Totals(np.log(until) - spread / 2, cov)
