"""What others' times of the day say of the legs of a reference: by how much each takes longer than planned is shared.

The log factors of the legs are one Gaussian for the race, with what a plan's contrast may be off and a part of each leg's
own noise; every other runner is seen through a level, slope and patches of their own (the prior). Their posterior mean bends
the reference; her widths stay. A feed may be wild (wrong day, a clock that is off): see `FEWEST`, `JUMP`, `CLIP`, `MOST`.
"""

from dataclasses import replace

import numpy as np

from server.forecast.kinds import ReferenceKind
from server.forecast.prior import covariance, edge_noise, leg_noise, mean
from server.forecast.tempered import contrast, tempered
from server.forecast.values import FloatArray, Reference

SHARED = 0.3
"""Of a leg's own noise the part that all runners of a day have alike (what was tried: tests/research/NOTEBOOK.md)."""
NEAREST = 50
"""So many others are taken, those nearest in pace: the fast go down hills in another way."""
FEWEST = 5
"""Fewer others say nothing (own choice: one gains hardly anything, five do)."""
JUMP = 0.35
"""A point to which all take longer by this and from which they take less by it (log, medians) has a clock that is off: it is
left out (own choice; in no table read here has a point both)."""
CLIP = 3.0
"""One runner's leg counts as no farther from their others than so many standard deviations of the prior."""
MOST = 0.2
"""No leg's factor is farther from 1 than by this (log): so far, whatever is fed in, a window or an alarm can be moved."""


def nearest(arrivals_s: FloatArray, last: int, own_s: float) -> FloatArray:
    """(k, n) of the arrivals (m, n) those of at most NEAREST others who have been seen past point `last`, nearest in pace to
    her who was there own_s after her start; who has no time there comes after all who have. nan: not known."""
    ahead = np.flatnonzero(np.isfinite(arrivals_s[:, last + 1 :]).any(axis=1))
    with np.errstate(divide="ignore", invalid="ignore"):
        apart = np.abs(np.log(arrivals_s[ahead, last] / own_s))
    return arrivals_s[ahead[np.argsort(apart, kind="stable")[:NEAREST]]]


def factors(kind: ReferenceKind, reference: Reference, others_s: FloatArray) -> FloatArray:
    """(n,) log factors of the day's legs against the reference, from others' arrivals (runners, n), seconds after their
    starts, nan where not known; zeros where fewer than FEWEST can be used."""
    prior = kind.prior
    plan = tempered(reference, prior.contrast)
    others_s = _sound(plan.elapsed_s, others_s)
    if len(others_s) < FEWEST:
        return np.zeros(plan.n)
    share = plan.elapsed_s / plan.elapsed_s[-1]
    a, b = np.concatenate([[0.0], share[:-1]]), share
    planned = contrast(plan.km, plan.elapsed_s, plan.stop_s)
    shared = np.diag(SHARED * leg_noise(prior, a, b)) + prior.contrast_sd**2 * np.outer(planned, planned)
    legs = covariance(prior, a, b, a, b, kind.level_sd**2)
    known, pull = np.zeros_like(shared), np.zeros(share.size)
    # Who was seen at the same points is seen through the same noise: one inverse for all of them.
    patterns, which = np.unique(np.isfinite(others_s), axis=0, return_inverse=True)
    for number, pattern in enumerate(patterns):
        seen = np.flatnonzero(pattern)
        times = others_s[which.reshape(-1) == number][:, seen]
        end = share[seen]
        begin = np.concatenate([[0.0], end[:-1]])
        over = np.minimum(end[:, None], b) - np.maximum(begin[:, None], a)
        over = np.maximum(over, 0.0) / (end - begin)[:, None]
        edge = np.full(end.size, prior.point_sd**2)
        own = over @ legs @ over.T + edge_noise(begin, end, begin, end, edge * (begin > 0), edge)
        own += np.diag((1.0 - SHARED) * leg_noise(prior, begin, end))
        y = np.log(np.diff(times, prepend=0.0, axis=1) / ((end - begin) * plan.elapsed_s[-1]))
        y -= mean(prior, begin, end)
        most = CLIP * np.sqrt(np.diag(own + over @ shared @ over.T) - kind.level_sd**2)
        level = np.median(y, axis=1, keepdims=True)
        y = level + np.clip(y - level, -most, most)
        sees = np.linalg.solve(own, np.column_stack([over, y.sum(axis=0)]))
        known += len(y) * (over.T @ sees[:, :-1])
        pull += over.T @ sees[:, -1]
    logs = shared @ np.linalg.solve(np.eye(share.size) + known @ shared, pull)
    return np.asarray(np.clip(logs, -MOST, MOST))


def bent(reference: Reference, logs: FloatArray) -> Reference:
    """The reference with exp(logs) times the moving time of its legs; stops stay."""
    before = np.concatenate([[0.0], reference.stop_s[:-1]])
    moving = np.diff(reference.elapsed_s, prepend=0.0) - before
    return replace(reference, elapsed_s=np.cumsum(moving * np.exp(logs) + before))


def _sound(planned_s: FloatArray, others_s: FloatArray) -> FloatArray:
    """(k, n) of the arrivals (m, n) those that can be right: times that rise, no point with a clock that is off; who is left
    with none is left out."""
    found = others_s.copy()
    found[found <= 0.0] = np.nan
    for row in found:
        while (falls := np.flatnonzero(np.diff(row[seen := np.flatnonzero(np.isfinite(row))]) <= 0.0)).size:
            row[seen[np.concatenate([falls, falls + 1])]] = np.nan  # which of the two is wrong is not known
    found[:, _off(planned_s, found)] = np.nan
    return found[np.isfinite(found).any(axis=1)]


def _off(planned_s: FloatArray, times: FloatArray) -> list[int]:
    """The points to which most take far longer, or far less, than by their own level, and from which the other way round."""
    legs = np.diff(planned_s, prepend=0.0)
    y = np.log(np.diff(times, prepend=0.0, axis=1) / legs)
    rows = np.isfinite(y).any(axis=1)
    if not rows.any():
        return []
    y = y[rows]
    ordered, known = np.sort(y, axis=1), np.isfinite(y).sum(axis=1)  # what is not known comes last
    row = np.arange(len(y))
    y = y - (ordered[row, (known - 1) // 2] + ordered[row, known // 2])[:, None] / 2.0
    out = []
    for point in range(times.shape[1] - 1):
        both = y[np.isfinite(y[:, point]) & np.isfinite(y[:, point + 1])][:, point : point + 2]
        if len(both):
            to, on = np.median(both, axis=0)
            if min(abs(to), abs(on)) > JUMP and to * on < 0:
                out.append(point)
    return out
