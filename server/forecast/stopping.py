"""The odds that she retires: a hazard along the course, fitted on every row, those that end early included."""

import numpy as np

from server.forecast.condition import Ahead, Legs, Seen
from server.forecast.kinds import Kind
from server.forecast.values import FloatArray


def survival(kind: Kind, seen: Seen, ahead: Ahead, legs: Legs) -> FloatArray:
    """(B, m) probability of getting from the last fact to each later point, cut-offs ignored."""
    return np.asarray(np.exp(-np.cumsum(0.25 * (ahead.b - ahead.a), axis=-1)))
