"""What is believed before anything is seen: log(actual / reference) of any stretch of the course, as a Gaussian.

A stretch runs from share a to share b of the reference's whole time, 0 <= a < b <= 1. Its log ratio is the sum of
a mean fade shape, a personal level, a personal slope and curvature, a slow wander that grows late (Brownian motion in
warped share), a wander that comes back (Ornstein-Uhlenbeck: bad patches that end), leg noise with a constant and a
per-length part, and noise in where a point really stands, which moves time from one leg to the next.
All of it is in shares and logs: nothing knows hours or kilometres.
"""

from dataclasses import dataclass

import numpy as np

from server.forecast.values import FloatArray

MEAN_POWERS = (1, 2, 3, 4)


@dataclass(frozen=True, slots=True)
class Prior:
    """Constants of one kind of reference on one kind of ground. sd: log units; shares of the course unless said.

    contrast: by what part of its planned contrast a leg takes longer (`tempered`); contrast_sd: how unsure that is.
    """

    mean: tuple[float, ...]
    slope_sd: float
    curve_sd: float
    slope_curve: float
    wander: float
    wander_power: float
    patch_sd: float
    patch_length: float
    patch_growth: float
    leg_sd: float
    leg_per_share: float
    leg_growth: float
    point_sd: float
    robust_df: float
    contrast: float = 0.0
    contrast_sd: float = 0.0


def _average_power(a: FloatArray, b: FloatArray, power: float) -> FloatArray:
    """Mean of s ** power over [a, b]."""
    return np.asarray((b ** (power + 1) - a ** (power + 1)) / ((power + 1) * np.maximum(b - a, 1e-9)))


def mean(prior: Prior, a: FloatArray, b: FloatArray) -> FloatArray:
    """Mean log ratio of stretches [a, b] of any shape; zero on average over the whole course."""
    out = np.zeros(np.broadcast(a, b).shape)
    for power, weight in zip(MEAN_POWERS, prior.mean, strict=True):
        out += weight * (_average_power(a, b, power) - 1.0 / (power + 1))
    return out


def _warp(prior: Prior, s: FloatArray) -> FloatArray:
    return np.asarray(prior.wander * s**prior.wander_power)


def covariance(
    prior: Prior, a1: FloatArray, b1: FloatArray, a2: FloatArray, b2: FloatArray, level_var: float
) -> FloatArray:
    """Covariance of log ratios between stretches (..., k) and (..., m), without leg or point noise: (..., k, m)."""
    p1, p2 = a1[..., :, None], a2[..., None, :]
    q1, q2 = b1[..., :, None], b2[..., None, :]
    f1, f2 = (p1 + q1) / 2 - 0.5, (p2 + q2) / 2 - 0.5
    g1 = _average_power(a1, b1, 2)[..., :, None] - (p1 + q1) / 2 + 1.0 / 6.0
    g2 = _average_power(a2, b2, 2)[..., None, :] - (p2 + q2) / 2 + 1.0 / 6.0
    s, c = prior.slope_sd, prior.curve_sd
    out = level_var + s * s * f1 * f2 + c * c * g1 * g2 + prior.slope_curve * s * c * (f1 * g2 + g1 * f2)
    same = (np.abs(p1 - p2) < 1e-12) & (np.abs(q1 - q2) < 1e-12)
    first_a, first_b = np.minimum(p1, p2), np.minimum(q1, q2)
    ta, tb = _warp(prior, first_a), _warp(prior, first_b)
    out = out + np.where(same, ta + (tb - ta) / 3.0, (ta + tb) / 2.0)
    if prior.patch_sd > 0:
        size = prior.patch_sd**2 * np.exp(prior.patch_growth * (f1 + f2))
        far = np.maximum(np.maximum(p1, p2) - first_b, 0.0) / prior.patch_length
        l1, l2 = (q1 - p1) / prior.patch_length, (q2 - p2) / prior.patch_length
        apart = np.exp(-far) * -np.expm1(-l1) * -np.expm1(-l2) / np.maximum(l1 * l2, 1e-12)
        alone = 2.0 * (l1 + np.expm1(-l1)) / np.maximum(l1 * l1, 1e-12)
        out = out + size * np.where(same, alone, apart)
    return np.asarray(out)


def leg_noise(prior: Prior, a: FloatArray, b: FloatArray) -> FloatArray:
    """Variance of what a stretch has of its own, (..., k); it shrinks with length."""
    late = np.exp(prior.leg_growth * ((a + b) / 2.0 - 0.5))
    return np.asarray(late * (prior.leg_sd**2 + prior.leg_per_share / np.maximum(b - a, 1e-4)))


def edge_noise(
    a1: FloatArray, b1: FloatArray, a2: FloatArray, b2: FloatArray, var_a1: FloatArray, var_b1: FloatArray
) -> FloatArray:
    """Covariance from timing or placing edges wrongly: the edge shared by two stretches gives to one what it takes.

    var_a1, var_b1: variance (share of the course, squared) of the first set's edges, (..., k). Result (..., k, m).
    """
    l1, l2 = np.maximum(b1 - a1, 2e-3)[..., :, None], np.maximum(b2 - a2, 2e-3)[..., None, :]
    p1, p2, q1, q2 = a1[..., :, None], a2[..., None, :], b1[..., :, None], b2[..., None, :]
    va, vb = var_a1[..., :, None], var_b1[..., :, None]
    eps = 1e-12
    total = (
        va * (np.abs(p1 - p2) < eps)
        + vb * (np.abs(q1 - q2) < eps)
        - va * (np.abs(p1 - q2) < eps)
        - vb * (np.abs(q1 - p2) < eps)
    )
    return np.asarray(total / (l1 * l2))
