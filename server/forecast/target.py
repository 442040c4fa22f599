"""What a runner's own target says beside all that is seen of her: a look at her whole time, as sure as the plan is.

The further she is, the less it says of the way that is left, and where her times speak against it, it is doubted.
"""

import numpy as np

from server.forecast.condition import Totals
from server.forecast.constants import WILD_LEVEL_SD
from server.forecast.correct import spread
from server.forecast.margins import KNOT_Z
from server.forecast.values import FloatArray

USUAL_SD = 0.15
"""How far runners end from their own target (log) where no plan says. Assumed: the tables hold no targets."""
LEAST_SD = 0.03
"""However sure a plan is of her whole time, she has another level when she has one (own choice)."""
MOST_SD = 0.5
DOUBTED_DF = 4.0
"""Targets miss as a t distribution with so many degrees of freedom does: who is far off is not held to hers (own choice)."""
ROUNDS = 3
_TENTH, _MIDDLE, _NINTH = 1, 3, 5


def aimed(
    found: Totals, curves: FloatArray, spent_s: FloatArray, target_s: FloatArray, sd: float | None
) -> tuple[Totals, FloatArray]:
    """Totals and curves (B, m, 8) of a runner who aims at a whole time of target_s (B,), give or take sd (log).

    found, curves: without the target; the curves' own medians and widths are what it is weighed against, and their
    shapes stay. spent_s (B,): seconds from the start to the last fact.
    """
    sure = float(np.clip(USUAL_SD if sd is None else sd, LEAST_SD, MOST_SD))
    plain_sd = spread(found)
    wide = plain_sd * (curves[..., _NINTH] - curves[..., _TENTH]) / (KNOT_Z[_NINTH] - KNOT_Z[_TENTH])
    centre = found.mean + plain_sd * curves[..., _MIDDLE]
    stretch = wide / plain_sd
    cov = found.cov * stretch[..., :, None] * stretch[..., None, :]
    left = np.exp(centre[..., -1])
    part = left / (spent_s + left)
    # Of her whole time only the rest is open: an error of the target counts for the more, the shorter that is.
    miss = np.log(target_s / (spent_s + left)) / part
    # What is assumed of somebody of whom nothing is known is no second opinion.
    own = 1.0 / ((part / sure) ** 2 - (part / WILD_LEVEL_SD) ** 2)
    doubt = np.ones_like(own)
    for _ in range(ROUNDS):
        share = own * doubt / (cov[..., -1, -1] + own * doubt)
        doubt = np.maximum((DOUBTED_DF + (share * miss) ** 2 / own) / (DOUBTED_DF + 1.0), 1.0)
    gain = cov[..., -1] / (cov[..., -1, -1] + own * doubt)[..., None]
    after = cov - gain[..., :, None] * cov[..., -1][..., None, :]
    totals = Totals(centre + gain * miss[..., None], after)
    shape = (curves - curves[..., _MIDDLE, None]) / stretch[..., None]
    return totals, shape
