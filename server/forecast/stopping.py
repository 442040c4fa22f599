"""The odds that her race ends, and of making a cut-off: fitted on every row, those that end early included."""

import numpy as np
from scipy.special import ndtr, ndtri

from server.forecast.condition import Legs, StretchesAhead, StretchesRun
from server.forecast.values import FloatArray

FARTHEST = 3.0
HOPELESS_Z = -2.6
HOPELESS_WIDTH = 0.3
"""Policy: so many spreads past a cut-off nobody of the flat tables made it, though few were asked; hope ends there."""


def inputs(share: FloatArray, last_log: FloatArray, level: FloatArray, surprise: FloatArray) -> FloatArray:
    """(..., 6) what the hazard depends on: where on the course (three powers), and how she slows against her own level.

    The time limit is no input, so that no limit told pulls the odds; races that cut-offs ended are in the rows.
    """
    slowing = np.clip(last_log - level, -1.0, 1.0)
    late = np.maximum(share - 0.8, 0.0)
    return np.stack(
        [np.ones_like(share), share, share**2, late, slowing, np.clip(surprise, -FARTHEST, FARTHEST)], axis=-1
    )


def rate(hazard: tuple[float, ...], x: FloatArray) -> FloatArray:
    """Ends per share of the course, (...), for inputs (..., 6)."""
    return np.asarray(np.exp(np.clip(x @ np.array(hazard), -12.0, 4.0)))


def survival(hazard: tuple[float, ...], seen: StretchesRun, ahead: StretchesAhead, legs: Legs) -> FloatArray:
    """(B, m) probability of getting from the last fact to each later point, whatever else may end her race.

    What her last leg says counts in full on the next leg and fades along the course, halving every tenth of it.
    """
    middle = (ahead.a + ahead.b) / 2.0
    size = middle.shape
    if seen.y.shape[1] == 0:
        last, level, surprise = (np.zeros(size) for _ in range(3))
        fading = np.ones(size)
    else:
        newest = np.argmax(seen.counts * np.arange(1, seen.y.shape[1] + 1), axis=1)
        rows = np.arange(size[0])
        last, level, surprise = (
            np.broadcast_to(v[:, None], size)
            for v in (seen.y[rows, newest], legs.level, legs.surprise[rows, newest])
        )
        fading = 0.5 ** ((ahead.a - ahead.a[:, :1]) / 0.1)
    x = inputs(middle, level + (last - level) * fading, level, surprise * fading)
    return np.asarray(np.exp(-np.cumsum(rate(hazard, x) * (ahead.b - ahead.a), axis=-1)))


def made(push: tuple[float, float, float], in_time: float, way: float) -> float:
    """P(makes a cut-off | nothing ends her race before) from the share of her likely times that make it.

    way: how much of the way to the cut-off lies behind her, 0 to 1. Near a limit runners hurry, and those who do not
    are ended by it and so in the hazard: Phi(a + c way^2 + b z), z the normal score of in_time. On the first miles
    nobody hurries yet, and what is uncertain is how fast she is. push is (a, b, c), fitted at the finish of everybody's
    rows, finishers or not. Past hope it is 0.
    """
    if in_time <= 0.0 or in_time >= 1.0:
        return float(in_time >= 1.0)
    z = float(ndtri(in_time))
    hurry = push[0] + push[2] * way**2
    return float(ndtr(hurry + push[1] * z) * ndtr((z - HOPELESS_Z) / HOPELESS_WIDTH))
