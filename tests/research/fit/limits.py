"""How often runners make a limit against what their times alone would say: on everybody, finishers or not."""

from collections.abc import Sequence

import numpy as np
from scipy.optimize import minimize
from scipy.special import ndtr

from server.forecast.correct import spread
from server.forecast.fitted import Net
from server.forecast.margins import Margins
from server.forecast.prior import Prior
from server.forecast.stopping import HOPELESS_WIDTH, HOPELESS_Z, survival
from server.forecast.values import FloatArray
from tests.research.fit.curves import ask, bent
from tests.research.fit.tables import Race, batch

LEAST, MOST = 1e-5, 1.0 - 1e-5
FARTHEST_Z = 6.0
PLAIN_TAIL = 3.0
"""Of `margins.later`; who is that late has missed the limit whatever it is."""


def fit_push(
    races: Sequence[Race], prior: Prior, nets: tuple[Net, ...], hazard: tuple[float, ...], level_sd: float
) -> tuple[float, float, float]:
    """(a, b, c) of `stopping.made` by greatest likelihood of who finished within the limit, asked at every point.

    The limit is told to nobody: it is only what is asked about.
    """
    z, alive, made, way = np.concatenate(
        [
            _asked(race, k, prior, nets, hazard, level_sd, len(races))
            for race in races
            for k in range(1, race.ref_s.size)
        ]
    ).T
    hope = ndtr((z - HOPELESS_Z) / HOPELESS_WIDTH)

    def loss(w: FloatArray) -> float:
        p = np.clip(alive * ndtr(w[0] + w[2] * way**2 + np.exp(w[1]) * z) * hope, LEAST, MOST)
        return float(-np.where(made > 0, np.log(p), np.log1p(-p)).mean())

    found = minimize(loss, np.zeros(3), method="Nelder-Mead")
    return float(found.x[0]), float(np.exp(found.x[1])), float(found.x[2])


def _asked(
    race: Race,
    k: int,
    prior: Prior,
    nets: tuple[Net, ...],
    hazard: tuple[float, ...],
    level_sd: float,
    years: int,
) -> FloatArray:
    """(r, 4): score of the limit among her likely finish times, odds of getting there at all, made it, share done."""
    b = batch(race, k, prior)
    a = ask(b, prior, level_sd, False)
    curves = bent(a, nets, years)
    left = np.maximum(race.limit_s - b.spent_s, 1.0)
    columns = zip(a.used.mean[:, -1:], spread(a.used)[:, -1:], curves[:, -1:], strict=True)
    z = np.array(
        [
            Margins(c, s, v, PLAIN_TAIL).z_of(0, np.array(t))
            for (c, s, v), t in zip(columns, left, strict=True)
        ]
    )
    made = b.finished & (np.nan_to_num(b.truth_s[:, -1], nan=np.inf) <= race.limit_s)
    alive = survival(hazard, b.seen, b.ahead, a.legs)[:, -1]
    way = np.full(z.size, race.share[k - 1])
    return np.column_stack([np.clip(z, -FARTHEST_Z, FARTHEST_Z), alive, made, way])
