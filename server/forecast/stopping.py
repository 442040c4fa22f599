"""The odds that she retires: a hazard along the course, fitted on every row, those that end early included."""

import numpy as np

from server.forecast.condition import Ahead, Legs, Seen
from server.forecast.values import FloatArray

FARTHEST = 3.0


def inputs(share: FloatArray, last_log: FloatArray, level: FloatArray, surprise: FloatArray) -> FloatArray:
    """(..., 6) what the hazard depends on: where on the course (three powers), and how she slows against her own level.

    The time limit is no input: what a cut-off ends is told by the cut-off odds, not twice.
    """
    slowing = np.clip(last_log - level, -1.0, 1.0)
    late = np.maximum(share - 0.8, 0.0)
    return np.stack(
        [np.ones_like(share), share, share**2, late, slowing, np.clip(surprise, -FARTHEST, FARTHEST)], axis=-1
    )


def rate(hazard: tuple[float, ...], x: FloatArray) -> FloatArray:
    """Retirements per share of the course, (...), for inputs (..., 6)."""
    return np.asarray(np.exp(np.clip(x @ np.array(hazard), -12.0, 4.0)))


def survival(hazard: tuple[float, ...], seen: Seen, ahead: Ahead, legs: Legs) -> FloatArray:
    """(B, m) probability of getting from the last fact to each later point, cut-offs ignored.

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
