"""The last correction of the quantile curves: small nets trained by quantile loss on plain scale-free inputs."""

import numpy as np
from numpy.typing import NDArray

from server.forecast.condition import Legs, StretchesAhead, StretchesRun, Totals
from server.forecast.fitted import Net
from server.forecast.margins import KNOT_Z
from server.forecast.values import FloatArray

INPUTS = (
    "share done",
    "share at the point",
    "log share between",
    "log spread",
    "log spread against no limit",
    "last surprise",
    "one before",
    "two before",
    "roughness",
    "first leg against level",
    "last leg against level",
    "next leg against level",
    "mean ahead against level",
    "last three legs against level",
    "last third of the way against level",
    "first third of the way against level",
    "trend of her legs",
    "latest of the last four surprises",
    "earliest of the last four surprises",
    "sum of the last four surprises",
    "latest surprise of all",
    "pull of the limit, in spreads",
    "limit: score at the finish",
    "limit: finish against limit",
    "limit: time used against share done",
    "limit: time at the point against its share",
    "limit: exp of minus the score",
    "limit: told",
)
LIMIT_INPUTS = 6
FARTHEST = 4.0
TREND_HOLD = 1e-3
"""Held against a trend that few close legs would seem to show (share of the course, squared)."""
# What a net was never shown may not blow a window up: e times the fitted gap is beyond anything in the tables.
WIDEST_STRETCH = 1.0
NEXT_WIDER = 1.04
"""Policy: the next arrival's curve is this much wider than the nets have it, as points of a year that they never saw
stand elsewhere: without it the 80% band held 75% of next arrivals in hill years with many points kept back."""
YEARS_HALF = 4.0 / 3.0
_GAPS = np.diff(KNOT_Z)
_MIDDLE = 3


def spread(totals: Totals) -> FloatArray:
    """(B, m) standard deviation of the log time to each point."""
    return np.asarray(np.sqrt(np.maximum(np.diagonal(totals.cov, axis1=-2, axis2=-1), 1e-10)))


def inputs(
    seen: StretchesRun,
    ahead: StretchesAhead,
    legs: Legs,
    used: Totals,
    plain: Totals,
    ahead_ref_s: FloatArray,
    spent_s: FloatArray,
    limit_s: FloatArray | None,
) -> FloatArray:
    """What the nets see, (B, m, f): shares, logs and standardised surprises; no hours, no kilometres.

    used: the totals to be corrected; plain: without the limit. ahead_ref_s (B, m) reference seconds of the legs ahead;
    spent_s (B,) seconds from the start to the last fact; limit_s (B,) the limit, or None when it was not told.
    """
    size = plain.mean.shape
    done, at = np.broadcast_to(ahead.a[:, :1], size), ahead.b
    sd, plain_sd = spread(used), spread(plain)
    lasts, rough, first, last, level = _run_so_far(seen, legs)
    ahead_level = plain.mean - np.log(np.cumsum(ahead_ref_s, axis=-1)) - level[:, None]
    columns = [done, at, np.log(at - done), np.log(sd), np.log(sd / plain_sd)]
    per_runner = [*lasts, rough, first - level, last - level, legs.mean[:, 0] - level]
    columns += [np.broadcast_to(v[:, None], size) for v in per_runner]
    columns.append(ahead_level)
    columns += [np.broadcast_to(v[:, None], size) for v in _shape_of_run(seen, legs, done[:, :1])]
    columns.append((used.mean - plain.mean) / plain_sd)
    if limit_s is None:
        columns += [np.zeros(size)] * LIMIT_INPUTS
    else:
        limit_s = np.maximum(limit_s, 60.0)
        z = (np.log(np.maximum(limit_s - spent_s, 60.0)) - plain.mean[:, -1]) / plain_sd[:, -1]
        z = np.clip(z, -3.0, 8.0)
        finish = np.log((spent_s + np.exp(plain.mean[:, -1])) / limit_s)
        ahead_of_share = np.log((spent_s[:, None] + np.exp(plain.mean)) / limit_s[:, None]) - np.log(at)
        pace = np.log(np.maximum(spent_s, 1.0) / limit_s) - np.log(np.maximum(done[:, 0], 1e-4))
        columns += [np.broadcast_to(v[:, None], size) for v in (z / 3.0, finish, pace)]
        columns += [ahead_of_share, np.broadcast_to(np.exp(-z)[:, None], size), np.ones(size)]
    return np.stack(columns, axis=-1)


def _run_so_far(
    seen: StretchesRun, legs: Legs
) -> tuple[list[FloatArray], FloatArray, FloatArray, FloatArray, FloatArray]:
    """(B,) each: the last three surprises, roughness, first and last log ratio, level."""
    batch, k = seen.y.shape
    if k == 0:
        none = np.zeros(batch)
        return [none] * 3, none, none, none, none
    count = seen.counts.sum(axis=1)
    surprise = legs.surprise * seen.counts
    newest = np.argsort(-seen.counts * np.arange(1, k + 1), axis=1, kind="stable")
    rows = np.arange(batch)
    lasts = [surprise[rows, newest[:, i]] * (count > i) if i < k else np.zeros(batch) for i in range(3)]
    rough = np.log(0.3 + np.sqrt((surprise**2).sum(axis=1) / np.maximum(count, 1.0))) * np.minimum(
        count / 5.0, 1.0
    )
    first = seen.y[rows, np.argmax(seen.counts > 0, axis=1)]
    return lasts, rough, first, seen.y[rows, newest[:, 0]], legs.level


def _shape_of_run(seen: StretchesRun, legs: Legs, done: FloatArray) -> list[FloatArray]:
    """(B,) each: how parts of the way so far, and her odd legs, stand against her level. done: (B, 1) share run."""
    batch, k = seen.y.shape
    if k == 0:
        return [np.zeros(batch)] * 8
    there = seen.counts > 0
    length = seen.counts * (seen.b - seen.a)
    middle = (seen.a + seen.b) / 2.0
    against = seen.y - legs.level[:, None]
    newness = np.cumsum(seen.counts[:, ::-1], axis=1)[:, ::-1]

    def part(which: NDArray[np.bool_]) -> FloatArray:
        weight = length * which
        return np.asarray((weight * against).sum(axis=1) / np.maximum(weight.sum(axis=1), 1e-9))

    parts = [part(newness <= 3), part(middle > done * (2.0 / 3.0)), part(middle < done / 3.0)]
    centre = (length * middle).sum(axis=1) / np.maximum(length.sum(axis=1), 1e-9)
    from_centre = middle - centre[:, None]
    tilt = (length * from_centre * against).sum(axis=1) / ((length * from_centre**2).sum(axis=1) + TREND_HOLD)
    odd = np.where(there, legs.surprise, 0.0)
    recent = odd * (newness <= 4)
    late, early = np.log1p(np.maximum(recent.max(axis=1), 0.0)), np.maximum(-recent.min(axis=1), 0.0)
    latest = np.log1p(np.maximum(odd.max(axis=1), 0.0))
    return [*parts, tilt, late, early, recent.sum(axis=1), latest]


def net_output(net: Net, x: FloatArray) -> FloatArray:
    """(..., 8) from inputs (..., f); inputs beyond FARTHEST standard deviations of what was fitted are held there."""
    scaled = np.clip((x - net.centre) / net.scale, -FARTHEST, FARTHEST)
    hidden = np.tanh(scaled @ net.inner + net.inner_bias)
    return np.asarray(hidden @ net.outer + net.outer_bias + scaled @ net.straight)


def curve(output: FloatArray) -> FloatArray:
    """Rising curve (..., 8) at KNOT_Z: the first number moves the median, the others stretch the gaps beside it."""
    gaps = _GAPS * np.exp(np.clip(output[..., 1:], -3.0, WIDEST_STRETCH))
    middle = output[..., :1]
    up = middle + np.cumsum(gaps[..., _MIDDLE:], axis=-1)
    down = middle - np.cumsum(gaps[..., _MIDDLE - 1 :: -1], axis=-1)[..., ::-1]
    return np.concatenate([down, middle, up], axis=-1)


def with_mishaps(
    curves: FloatArray, used: Totals, plain: Totals, spent_s: FloatArray, tail: tuple[float, float, float]
) -> FloatArray:
    """Curves (B, m, 8) with the 99.5% time of the next arrival set by mishaps, whose length no leg's spread foretells.

    Beyond its median it becomes tail[0] times a mean of two lengths: what the nets say, and her whole likely time
    (the latter to the power 1 - tail[1]: a mishap is no shorter on a short leg). Never less than a quarter beyond
    the 95% time.
    """
    centre, sd = used.mean[:, 0], spread(used)[:, 0]
    middle, high, last = (np.exp(centre + sd * curves[:, 0, i]) for i in (_MIDDLE, -2, -1))
    late = middle + tail[0] * tail_reach(last - middle, spent_s + np.exp(plain.mean[:, -1]), tail[1])
    late = np.maximum(late, high + 0.25 * (high - middle))
    out = np.array(curves)
    out[:, 0, -1] = (np.log(late) - centre) / sd
    return out


def tail_reach(width_s: FloatArray, whole_s: FloatArray, power: float) -> FloatArray:
    """Seconds (B,): width_s ** power * whole_s ** (1 - power); it scales with the hours of the race."""
    return np.asarray(np.maximum(width_s, 1e-6) ** power * whole_s ** (1.0 - power))


def trust_in_nets(years: float, seen: StretchesRun) -> FloatArray:
    """(B,) how far a correction is believed, 0 to 1: less if learned from few years, and from one point only.

    Policy, of the shape of a shrinkage estimate: a year's weather is common to all its runners, so it is years that
    count. Checked on years kept back, not fitted.
    """
    points = np.maximum(seen.counts.sum(axis=1), 1.0)
    return np.asarray(years / (years + YEARS_HALF) * (1.0 - 0.5 / points**2))


def correct(
    weighted_nets: tuple[tuple[float, Net], ...], x: FloatArray, trust: FloatArray, widen: float
) -> FloatArray:
    """Curves (B, m, 8) for Margins: the weighted mean of the nets' curves, widen times as wide about its middle.

    x (B, m, f); trust (B,): the rest is the plain normal curve.
    """
    out = np.zeros((*x.shape[:-1], KNOT_Z.size))
    if not weighted_nets:
        out += KNOT_Z
    else:
        for weight, net in weighted_nets:
            out += weight * curve(net_output(net, x))
        out = KNOT_Z + trust[:, None, None] * (out - KNOT_Z)
    middle = out[..., _MIDDLE : _MIDDLE + 1]
    wider = np.full((out.shape[-2], 1), widen)
    if weighted_nets:
        wider[:1] *= NEXT_WIDER
    return np.asarray(middle + wider * (out - middle))
