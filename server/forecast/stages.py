"""A race in stages: what the limit of each stage says about somebody who is in before the next one starts.

The limit of a whole race is told to the engine itself (`limit`); those of stages still ahead, with a night after each,
are told to its paths. As there, the windows use them and the odds never do.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, replace

import numpy as np
from scipy.special import ndtr

from server.forecast.limit import HOPE_WIDTH, HOPELESS_Z, SOFT_EDGE
from server.forecast.margins import carried, kept_in_order
from server.forecast.values import FloatArray
from server.forecast.view import Posterior

LEAST_PART = 0.25
"""A path that was held up before the stage is never made quicker on it than this part of its own time (own choice)."""


@dataclass(frozen=True, slots=True)
class StageEnd:
    """A stage ends at a point; `limit_s` is the time to be in by, real seconds after her start."""

    point: int
    limit_s: float


def within(posterior: Posterior, ends: Sequence[StageEnd]) -> Posterior:
    """The posterior of those who are in at each stage's end by its limit; the odds (`plain_s`) stay as they are.

    Ends at points she has reached say nothing. No time becomes later, and their order along the course stays.
    """
    track = posterior.track
    until = dict(track.stays)
    times, column = posterior.arrivals_s, 0
    begun = np.full(times.shape[0], track.origin.at_s)
    for end in sorted(ends, key=lambda e: e.point):
        j = end.point - track.first
        if j < column or j >= times.shape[1]:
            continue
        leaves = until.get(end.point, -np.inf)
        times = _told(times, posterior.weights, (column, j), begun, track.clock.running(end.limit_s), leaves)
        begun, column = np.maximum(times[:, j], leaves), j + 1
    if column == 0:
        return posterior
    return replace(posterior, arrivals_s=times)


def _told(
    times: FloatArray,
    weights: FloatArray,
    stage: tuple[int, int],
    begun: FloatArray,
    by_s: float,
    until: float,
) -> FloatArray:
    """Arrivals (paths, m) with the stage of those columns, begun at begun (paths,), ended by by_s."""
    first, last = stage
    took = np.maximum(times[:, last] - begun, 1.0)
    since = float(begun.min())
    if by_s <= since:
        return times
    ended = since + _shortened(times[:, last] - since, weights, by_s - since)
    factor = np.clip((ended - begun) / took, LEAST_PART, 1.0)
    now = begun[:, None] + (times[:, first : last + 1] - begun[:, None]) * factor[:, None]
    later = times[:, last + 1 :] - np.maximum(times[:, last], until)[:, None]
    share = carried(took, later, weights)
    # each later point takes its own part, which alone could carry one point past the next
    least = LEAST_PART * np.diff(later, axis=1, prepend=0.0)
    on = np.maximum(now[:, -1], until)[:, None] + kept_in_order(later * factor[:, None] ** share, least)
    return np.asarray(np.column_stack([times[:, :first], now, on]))


def _shortened(took: FloatArray, weights: FloatArray, left_s: float) -> FloatArray:
    """Times (paths,) of whoever makes left_s, none longer than before.

    Each keeps its rank: of the share p of paths within the limit (soft at its edge), the path at rank u becomes the one
    at rank u * p. Where the limit is beyond reach it no longer pulls, as with the limit of a whole race (`limit.told`).
    """
    order = np.argsort(took, kind="stable")
    sorted_s, w = np.maximum(took[order], 1.0), weights[order] / weights.sum()
    ranks = np.cumsum(w) - 0.5 * w
    logs = np.log(sorted_s)
    mean = float(np.dot(w, logs))
    sd = float(np.sqrt(np.dot(w, (logs - mean) ** 2) + SOFT_EDGE**2))
    edge = np.log(left_s)
    hope = float(ndtr(((edge - mean) / sd - HOPELESS_Z) / HOPE_WIDTH))
    p = max(float(np.dot(w, ndtr((edge - logs) / SOFT_EDGE))), float(ndtr(HOPELESS_Z)))
    told = np.minimum(np.interp(ranks * p, ranks, sorted_s), sorted_s)
    out = np.empty_like(took)
    out[order] = sorted_s + hope * (told - sorted_s)
    return out
