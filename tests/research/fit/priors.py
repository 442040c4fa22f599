"""Prior constants by greatest likelihood of every recorded leg, those of runners who retired included."""

from collections.abc import Sequence
from dataclasses import replace
from typing import TypeAlias

import numpy as np
from scipy.optimize import minimize
from scipy.special import gammaln

from server.forecast.prior import MEAN_POWERS, Prior, covariance, edge_noise, leg_noise, mean
from server.forecast.tempered import contrast
from server.forecast.values import FloatArray
from tests.research.fit.tables import BASIS_S, Race

SIZES = (
    "slope_sd",
    "curve_sd",
    "wander",
    "wander_power",
    "patch_sd",
    "patch_length",
    "leg_sd",
    "leg_per_share",
    "point_sd",
)
START = np.concatenate(
    [[0.3, 0.1, 0.0, 0.0], np.log([0.3, 0.5, 0.01, 2.0, 0.05, 0.1, 0.06, 2e-4, 2e-3]), [0.0, 1.0, 0.5]]
)
TAIL_DF = 30.0
ROBUST_DF = 3.0
HOLD = 0.25
NOTHING_LOG = -14.0
REACH_LOG = 2.5
"""Sizes may end within this log distance of their start, so that no part of the model runs away with the rest."""
WILD_LEVEL_SD = 1.0


def unpack(x: FloatArray) -> Prior:
    """Free numbers -> prior."""
    m = len(MEAN_POWERS)
    sizes = {name: float(np.exp(v)) for name, v in zip(SIZES, x[m : m + len(SIZES)], strict=True)}
    cross, patch_growth, leg_growth = x[m + len(SIZES) :]
    return Prior(
        mean=tuple(float(v) for v in x[:m]),
        slope_curve=float(np.tanh(cross)),
        patch_growth=float(patch_growth),
        leg_growth=float(leg_growth),
        robust_df=ROBUST_DF,
        **sizes,
    )


Group: TypeAlias = tuple[FloatArray, FloatArray, FloatArray, list[tuple[int, FloatArray]]]


def _groups(races: Sequence[Race], contrast_sd: float) -> list[Group]:
    """Per race: edges, what is unsure of its legs' contrast (log), and runners without gaps by how many legs they have."""
    out = []
    for race in races:
        there = ~np.isnan(race.elapsed_s)
        ends = there.shape[1] - np.argmax(there[:, ::-1], axis=1)
        whole = there.cumprod(axis=1).sum(axis=1) == ends
        legs = np.diff(race.elapsed_s, prepend=0.0, axis=1)
        y = np.log(legs / np.diff(race.ref_s, prepend=0.0))
        sets = [(int(n), y[whole & (ends == n), :n]) for n in np.unique(ends[whole]) if n > 1]
        planned = np.zeros(race.ref_s.size) if race.km is None else contrast(race.km, race.ref_s)
        out.append((np.concatenate([[0.0], race.share[:-1]]), race.share, contrast_sd * planned, sets))
    return out


def _loss(x: FloatArray, groups: list[Group]) -> float:
    """Negative log likelihood a leg, multivariate t so that odd runners weigh less, held near the start's sizes."""
    prior = unpack(x)
    total, count, nu = 0.0, 0, TAIL_DF
    for a, b, hills, sets in groups:
        edge = np.full(a.size, prior.point_sd**2)
        first = edge * (a > 0)
        k = covariance(prior, a, b, a, b, WILD_LEVEL_SD**2) + edge_noise(a, b, a, b, first, edge)
        k = k + np.diag(leg_noise(prior, a, b)) + hills[:, None] * hills[None, :]
        try:
            root = np.linalg.cholesky(k)
        except np.linalg.LinAlgError:
            return 1e9
        middle = mean(prior, a, b)
        half_logs = np.cumsum(np.log(np.diagonal(root)))
        for n, y in sets:
            z = np.linalg.solve(root[:n, :n], (y - middle[:n]).T)
            far = np.log1p((z * z).sum(axis=0) / (nu - 2.0)).sum() * (nu + n) / 2.0
            same = half_logs[n - 1] - gammaln((nu + n) / 2.0) + gammaln(nu / 2.0) + n / 2.0 * np.log(nu - 2.0)
            total += far + y.shape[0] * same
            count += y.size
    held = HOLD * float(((x[len(MEAN_POWERS) :] - START[len(MEAN_POWERS) :]) ** 2).sum())
    return float((total + held) / count)


def fit_prior(
    races: Sequence[Race],
    rounds: int = 60,
    fixed_mean: tuple[float, ...] | None = None,
    without: frozenset[str] = frozenset(),
    contrast_sd: float = 0.0,
    free_mean: bool = False,
) -> Prior:
    """The prior under which these races' legs are likeliest; its mean shape may be given, sizes may be left out.

    contrast_sd: as in `Prior`; the races are tempered already.
    A reference made of results holds the usual fade already: where all races have one, no mean shape is fitted.
    """
    m = len(MEAN_POWERS)
    if fixed_mean is None and not free_mean and not any(race.free_level for race in races):
        fixed_mean = (0.0,) * m
    free: list[tuple[float | None, float | None]] = [(None, None)] * m
    start = START.copy()
    if fixed_mean is not None:
        start[:m] = fixed_mean
        free = [(v, v) for v in fixed_mean]
    free += [(v - REACH_LOG, v + REACH_LOG) for v in START[m : m + len(SIZES)]]
    free[m + SIZES.index("wander_power")] = (0.0, float(np.log(3.0)))
    for size in without:
        start[m + SIZES.index(size)] = NOTHING_LOG
        free[m + SIZES.index(size)] = (NOTHING_LOG, NOTHING_LOG)
    free += [(-2.5, 2.5), (-1.0, 3.0), (-1.0, 3.0)]
    found = minimize(
        _loss,
        start,
        args=(_groups(races, contrast_sd),),
        method="L-BFGS-B",
        bounds=free,
        options={"maxiter": rounds},
    )
    return replace(unpack(np.asarray(found.x)), contrast_sd=contrast_sd)


__all__ = ["BASIS_S", "WILD_LEVEL_SD", "fit_prior", "unpack"]
