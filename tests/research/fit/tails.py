"""How far beyond the next arrival's median the 99.5% time lies: set where a flag costs least, on all who were out."""

from collections.abc import Sequence

import numpy as np

from server.forecast.correct import spread, tail_reach
from server.forecast.fitted import Net
from server.forecast.prior import Prior
from server.forecast.values import FloatArray
from tests.research.fit.curves import ask, bent
from tests.research.fit.tables import Race, batch

ONE_IN = 200
POWERS = (0.25, 0.375, 0.5, 0.625, 0.75, 1.0)


def fit_tail(
    races: Sequence[Race], prior: Prior, nets: tuple[Net, ...], level_sd: float, trusted: int | None = None
) -> tuple[float, float, float]:
    """(factor, power) of `with_mishaps`, and the power of `margins.later`.

    For each power the factor is such that one leg in 200 that was made is later than the 99.5% time; of these the
    pair is taken whose flag is earliest, after arrivals and after due for those who went no further taken together.
    The last is the Hill estimate (B. M. Hill, Annals of Statistics 3, 1975) of how the legs beyond that time fall off.
    trusted: for how many years the nets are, where not for as many as there are races.
    """
    legs = np.concatenate(
        [
            _legs(race, k, prior, nets, level_sd, len(races) if trusted is None else trusted)
            for race in races
            for k in range(2, race.ref_s.size)
        ]
    )
    took, width, whole = legs.T
    made = ~np.isnan(took)
    best = (np.inf, 1.0, 1.0)
    for power in POWERS:
        reach = tail_reach(width, whole, power)
        factor = float(np.quantile((took / reach)[made], 1.0 - 1.0 / ONE_IN))
        cost = float((factor * reach - took)[made].mean() + (factor * reach)[~made].mean())
        best = min(best, (cost, factor, power))
    beyond = (took / (best[1] * tail_reach(width, whole, best[2])))[made]
    beyond = beyond[beyond > 1.0]
    return best[1], best[2], float(1.0 / np.log(beyond).mean())


def _legs(race: Race, k: int, prior: Prior, nets: tuple[Net, ...], level_sd: float, years: int) -> FloatArray:
    """(r, 3) for everybody: seconds the arrival came after its median (nan: went no further), width, whole time."""
    b = batch(race, k, prior)
    a = ask(b, prior, level_sd, True)
    curves = bent(a, nets, years)[:, 0]
    times = np.exp(a.used.mean[:, :1] + spread(a.used)[:, :1] * curves)
    ahead = b.truth_s - b.spent_s[:, None]
    gone = np.isnan(ahead).all(axis=1)
    known = gone | ~np.isnan(ahead[:, 0])
    whole = b.spent_s + np.exp(a.plain.mean[:, -1])
    return np.column_stack([ahead[:, 0] - times[:, 3], times[:, 7] - times[:, 3], whole])[known]
