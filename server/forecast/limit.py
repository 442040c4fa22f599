"""What a time limit says about somebody who gets to the finish: a cut-off normal, soft at its edge."""

import numpy as np
from scipy.special import log_ndtr, ndtr

from server.forecast.condition import Totals
from server.forecast.values import FloatArray

SOFT_EDGE = 0.02
HOPELESS_Z = -2.0
HOPE_WIDTH = 0.4
"""Policy: somebody this many spreads past the limit is beyond its reach, and it no longer pulls her window in."""


def told(plain: Totals, left_s: FloatArray) -> Totals:
    """Totals of those who make the limit. left_s: (B,) seconds from the last fact to the limit.

    With z = (log left - mean) / sd at the finish, conditioning a Gaussian on being below z moves every mean by
    -cov * lambda / sd and shrinks the covariance, lambda = phi(z) / Phi(z).
    """
    var = plain.cov[..., -1, -1] + SOFT_EDGE**2
    z = (np.log(np.maximum(left_s, 60.0)) - plain.mean[..., -1]) / np.sqrt(var)
    hope = ndtr((z - HOPELESS_Z) / HOPE_WIDTH)
    z = np.maximum(z, HOPELESS_Z)
    ratio = hope * np.exp(-0.5 * z * z - 0.9189385332046727 - log_ndtr(z))
    gain = plain.cov[..., -1] / np.sqrt(var)[..., None]
    shrink = ratio * np.maximum(ratio + z, 0.0)
    return Totals(
        plain.mean - gain * ratio[..., None],
        plain.cov - gain[..., :, None] * gain[..., None, :] * shrink[..., None, None],
    )
