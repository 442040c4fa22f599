"""How long she stands still: departures from arrivals, and rests that have no end yet."""

from functools import lru_cache

import numpy as np
from scipy.special import ndtri

from server.forecast.constants import STOPS
from server.forecast.margins import truncated_above
from server.forecast.timeline import Progress
from server.forecast.values import FloatArray, Reference

STOP_LOG_SD = STOPS.log_sd
UNPLANNED_S_PER_FINISH = STOPS.unplanned_share
REST_MEDIAN_SHARE = STOPS.rest_share
REST_LOG_SD = STOPS.rest_log_sd
LARGEST_PART = 0.8


@lru_cache(maxsize=64)
def _scores(paths: int, columns: int) -> FloatArray:
    """Fixed stop scores: per column a fixed shuffle of even normal scores."""
    even = ndtri((np.arange(paths) + 0.5) / paths)
    draws = np.random.Generator(np.random.PCG64(29022024))
    return np.asarray(np.column_stack([draws.permutation(even) for _ in range(max(columns, 1))]))


def rest_scores(paths: int) -> FloatArray:
    """(paths,) fixed normal scores for the length of a rest that goes on."""
    return np.asarray(_scores(paths, 1)[:, 0])


def longest_s(finish_s: float, planned_s: float, share: float) -> float:
    """Seconds that a share of her stops stay under: a rest on the way, or what is planned there and a rest with it.

    finish_s: planned length of her race; planned_s: of the stop there, 0 between points; 0 < share < 1.
    """
    z = float(ndtri(share))
    rest = float(np.exp(np.log(REST_MEDIAN_SHARE * finish_s) + REST_LOG_SD * z))
    stop = max(planned_s, UNPLANNED_S_PER_FINISH * finish_s) * float(np.exp(STOP_LOG_SD * z))
    return max(rest, stop)


def departures(reference: Reference, track: Progress, arrivals_s: FloatArray) -> FloatArray:
    """(paths, m) times out, given times in: the stop is part of the way to the next arrival."""
    paths, m = arrivals_s.shape
    planned = np.maximum(
        reference.stop_s[track.first :], UNPLANNED_S_PER_FINISH * reference.elapsed_s[-1] * np.ones(m)
    )
    stop = planned * np.exp(STOP_LOG_SD * _scores(paths, m))
    stop[:, -1] = 0.0
    room = np.diff(arrivals_s, axis=1, append=np.inf)
    out = arrivals_s + np.minimum(stop, LARGEST_PART * room)
    for point, until in track.stays:
        j = point - track.first
        out[:, j] = np.maximum(out[:, j], until)
    return np.asarray(out, dtype=np.float64)


def leaving_here(reference: Reference, track: Progress, arrivals_s: FloatArray) -> FloatArray:
    """(paths,) running times out of the point she is at; the last fact's own time if she is between points."""
    paths = arrivals_s.shape[0]
    at = track.origin.at_s
    if track.at_point < 0 or track.origin.leaves >= 0 or arrivals_s.shape[1] == 0:
        return np.full(paths, at)
    planned = max(
        float(reference.stop_s[track.at_point]), UNPLANNED_S_PER_FINISH * float(reference.elapsed_s[-1])
    )
    stop = planned * np.exp(STOP_LOG_SD * _scores(paths, 1)[:, 0])
    return np.asarray(at + np.minimum(stop, LARGEST_PART * (arrivals_s[:, 0] - at)))


def rest_lengths(scores: FloatArray, finish_s: float, so_far_s: float) -> FloatArray:
    """(paths,) whole lengths of a rest that has lasted so_far_s and goes on; longer, never shorter, as it lasts."""
    median = np.log(REST_MEDIAN_SHARE * finish_s)
    floor = -np.inf if so_far_s <= 0 else (np.log(so_far_s) - median) / REST_LOG_SD
    return np.asarray(np.exp(median + REST_LOG_SD * truncated_above(scores, floor)))
