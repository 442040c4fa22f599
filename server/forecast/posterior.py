"""The forecast after a set of facts: what changes only when something is heard. `Posterior.view` then asks at a moment."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from dataclasses import dataclass
from functools import cache

import numpy as np
from scipy.special import log_ndtr

from server.forecast import flags, kinds, stopping, stops
from server.forecast.condition import Legs, StretchesAhead, StretchesRun, Totals, legs_ahead, totals
from server.forecast.constants import FLAGGING
from server.forecast.correct import correct, inputs, spread, trust_in_nets, with_mishaps
from server.forecast.limit import told
from server.forecast.margins import (
    LEAST_LEG,
    Margins,
    carried,
    in_order,
    joint_scores,
    kept_in_order,
    truncated_above,
)
from server.forecast.target import aimed
from server.forecast.tempered import contrast, over, tempered
from server.forecast.timeline import Progress, build
from server.forecast.values import DEFAULT, Fact, Fineness, FloatArray, Reference, WhoseTarget
from server.forecast.view import Posterior

CARRIED_PART = 0.5
"""Of what ordinary delays carry over to later legs, the part a long one does: mishaps end. Runners of the tables who
were half an hour past their median lost later 0.5 (flat) and 0.4 (hill) of what the paths' own regression says."""


def posterior(
    reference: Reference,
    facts: Sequence[Fact] = (),
    limit_s: float | None = None,
    settings: Fineness = DEFAULT,
) -> Posterior:
    """Forecast one runner. limit_s: the race's time limit at the finish, seconds after her start, if known.

    The same facts in any order give the same posterior to the last bit; nothing random, no clock.
    Raises ValueError for a point the reference does not have.
    """
    return with_constants(kinds.of(reference), reference, facts, limit_s, settings)


def with_constants(
    kind: kinds.ReferenceKind,
    reference: Reference,
    facts: Sequence[Fact],
    limit_s: float | None,
    settings: Fineness = DEFAULT,
) -> Posterior:
    """`posterior` with constants other than the fitted ones: for scoring years that those were fitted on."""
    reference = tempered(reference, kind.prior.contrast)
    track = build(reference, facts)
    if track.first >= reference.n:
        return _finished(reference, track, settings, kind.push)
    shapes = _shapes(kind, reference, track, limit_s)
    least = LEAST_LEG * track.ahead_ref_s * np.exp(np.minimum(shapes.legs.mean[0], 0.5))
    sd = spread(shapes.window)[0]
    scores, weights = joint_scores(shapes.window.cov[0] / np.outer(sd, sd), settings.paths)

    def paths(of: Totals, curve: FloatArray) -> tuple[FloatArray, float]:
        margins = Margins(of.mean[0], spread(of)[0], curve, kind.tail[2])
        times, evidence = _not_yet(track, margins, in_order(margins.at_z(scores), least), weights, least)
        # Points are asked for one by one: the paths of each lie together.
        return np.asfortranarray(_stays(track, times) + track.origin.at_s), evidence

    found = paths(shapes.window, shapes.curve)

    @cache
    def unlimited() -> tuple[FloatArray, float]:
        return found if limit_s is None else paths(shapes.plain, shapes.plain_curve())

    survival = stopping.survival(kind.hazard, shapes.seen, shapes.ahead, shapes.legs)[0]
    return Posterior(
        reference,
        track,
        found[0],
        lambda: unlimited()[0],
        stops.rest_scores(settings.paths),
        weights,
        survival,
        _flagged_survival(survival, shapes, track, limit_s),
        unlimited()[1] if track.not_yet else 0.0,
        kind.push,
    )


def flagged(
    kind: kinds.ReferenceKind,
    reference: Reference,
    facts: Sequence[Fact],
    lines: FloatArray,
    limit_s: float | None,
) -> FloatArray:
    """(lines,) seconds after the start at which she is flagged at the next point if nobody hears of her (`flags`).

    lines: falling false-flag rates a leg. Everybody is reported at once here. inf once she has finished.
    """
    reference = tempered(reference, kind.prior.contrast)
    track = build(reference, facts)
    if track.first >= reference.n:
        return np.full(lines.size, np.inf)
    shapes = _shapes(kind, reference, track, limit_s)
    spent = np.array([track.origin.at_s])
    chance = _stops_next(shapes, track, limit_s)
    next_s = np.exp(shapes.window.mean[:, :1] + spread(shapes.window)[:, :1] * shapes.curve[:1])
    whole = spent + np.exp(shapes.plain.mean[:, -1])
    after = flags.times(FLAGGING, limit_s is not None, lines, chance, next_s, whole, kind.tail[2])[0]
    return track.clock.real(spent + after)


def _stops_next(shapes: _Shapes, track: Progress, limit_s: float | None) -> FloatArray:
    """(1,) probability that her race ends on the next leg (`flags`)."""
    a, b = shapes.ahead.a[:, 0], shapes.ahead.b[:, 0]
    limit = None if limit_s is None else np.array([track.clock.running(limit_s)])
    spent = np.array([track.origin.at_s])
    x = flags.inputs(shapes.seen, (a + b) / 2.0, shapes.legs, shapes.plain, spent, limit)
    return flags.stops(FLAGGING.untold if limit is None else FLAGGING.told, x, b - a)


def _flagged_survival(
    survival: FloatArray, shapes: _Shapes, track: Progress, limit_s: float | None
) -> FloatArray:
    """survival (m,) with the next leg's by the odds of flags, which are fitted from the second leg seen on. They find more
    who may have stopped; a limit she is well within is no reason to look for anybody later."""
    if track.seen_y.size < flags.LEAST_SEEN:
        return survival
    ends = np.maximum(1.0 - survival[0], _stops_next(shapes, track, limit_s))
    return np.asarray(survival / survival[0] * (1.0 - ends))


@dataclass(frozen=True, slots=True, eq=False)
class _Shapes:
    """One runner as a batch of one; window is plain with the limit told, curves (m, 8) are theirs."""

    seen: StretchesRun
    ahead: StretchesAhead
    legs: Legs
    plain: Totals
    window: Totals
    curve: FloatArray
    plain_curve: Callable[[], FloatArray]


def _shapes(
    kind: kinds.ReferenceKind, reference: Reference, track: Progress, limit_s: float | None
) -> _Shapes:
    seen, ahead, legs = _legs(kind, reference, track)
    found = totals(legs, track.ahead_ref_s[None, :])
    spent = np.array([track.origin.at_s])
    limit = None if limit_s is None else np.array([track.clock.running(limit_s)])
    nets = kind.nets if track.seen_y.size else ()

    def bent(of: Totals, lim: FloatArray | None) -> tuple[Totals, FloatArray]:
        x = inputs(seen, ahead, legs, of, found, track.ahead_ref_s[None, :], spent, lim)
        curves = correct(nets, x, trust_in_nets(kind.years, seen), kind.widen)
        if reference.target is not WhoseTarget.HERS:
            return of, curves
        # What she aims at, with what the crew says of the way ahead.
        target = np.array([track.origin.ref_s + track.ahead_ref_s.sum()])
        return aimed(of, curves, spent, target, reference.spread)

    without = cache(lambda: bent(found, None))
    plain = without()[0] if reference.target is WhoseTarget.HERS else found

    def mishaps(of: Totals, curves: FloatArray) -> FloatArray:
        bent_on = with_mishaps(curves, of, plain, spent, kind.tail) if track.seen_y.size else curves
        return np.asarray(bent_on[0])

    window, curves = without() if limit is None else bent(told(found, limit - spent), limit)
    return _Shapes(seen, ahead, legs, plain, window, mishaps(window, curves), lambda: mishaps(*without()))


def _legs(
    kind: kinds.ReferenceKind, reference: Reference, track: Progress
) -> tuple[StretchesRun, StretchesAhead, Legs]:
    """Conditioned legs of one runner, as a batch of one."""
    point = kind.prior.point_sd**2
    finish = reference.elapsed_s[-1]

    def hills(a: FloatArray, b: FloatArray) -> tuple[FloatArray, ...]:
        return () if kind.prior.contrast_sd == 0.0 else (over(edges, planned, a, b)[None],)

    edges = np.concatenate([[0.0], reference.elapsed_s / finish])
    planned = contrast(reference.km, reference.elapsed_s, reference.stop_s)
    ends = np.concatenate([[track.origin.ref_s], reference.elapsed_s[track.first :]]) / finish
    seen = StretchesRun(
        track.seen_a[None],
        track.seen_b[None],
        track.seen_y[None],
        (track.seen_va + point * (track.seen_a > 0))[None],
        (track.seen_vb + point)[None],
        np.ones((1, track.seen_y.size)),
        track.seen_own[None],
        *hills(track.seen_a, track.seen_b),
    )
    a, b = ends[:-1], ends[1:]
    var_a = np.full(a.size, point)
    var_a[0] = track.origin.var_s2 / finish**2 + point * (track.origin.ref_s > 0)
    ahead = StretchesAhead(a[None], b[None], var_a[None], np.full((1, a.size), point), *hills(a, b))
    legs = legs_ahead(kind.prior, seen, ahead, kind.level_sd**2)
    cov = legs.cov + track.ahead_cov
    origin = track.origin
    if origin.ref_s > 0 and origin.arrives < 0 and origin.leaves < 0:
        cov = _rest_of_leg(cov)
    return seen, ahead, Legs(legs.mean, cov, legs.surprise, legs.level)


def _rest_of_leg(cov: FloatArray) -> FloatArray:
    """Covariance (1, m, m) with the first stretch, from a position to the next point, as wide in logs as it is in time.

    What a short stretch has of its own, and where its ends really lie, are relative variances. On whole legs they are as
    good as variances of the log; 400 m before a point they pass 1, and taken for logs they let her be hours late from
    there, and put off the question and the alarm. A lognormal of relative variance r has log(1 + r) (matched moments).
    """
    own = cov[:, :1, 0]
    shrunk = np.sqrt(np.log1p(own) / np.maximum(own, 1e-12))
    out = np.array(cov)
    out[:, 0, :] *= shrunk
    out[:, :, 0] *= shrunk
    return out


def _not_yet(
    track: Progress, margins: Margins, times: FloatArray, weights: FloatArray, least: FloatArray
) -> tuple[FloatArray, float]:
    """Carry every path past each 'not here yet', never to an earlier time at any point, and the facts' log chance.

    Each later point takes its own part of the delay, which alone would carry some paths past the next point: those get
    legs of at least least (m,), s.
    """
    evidence = 0.0
    base = times
    for point, at in track.not_yet:
        j = point - track.first
        floor = float(margins.z_of(j, np.array(at - track.origin.at_s)))
        if floor == -np.inf:
            continue
        evidence += float(log_ndtr(-floor))
        old = times[:, j]
        moved = margins.at_z(truncated_above(margins.z_of(j, old), floor)[:, None])[:, j]
        factor = np.maximum(moved, old) / old
        after = times[:, j + 1 :] - old[:, None]
        shared = CARRIED_PART * carried(base[:, j], base[:, j + 1 :] - base[:, j : j + 1], weights)
        before, here = times[:, :j] * factor[:, None], (old * factor)[:, None]
        later = kept_in_order(after * factor[:, None] ** shared, least[j + 1 :])
        times = np.column_stack([before, here, here + later])
    return times, evidence


def _stays(track: Progress, times: FloatArray) -> FloatArray:
    """Delay everything after a point she is known to stay at until a time."""
    for point, until in track.stays:
        j = point - track.first
        wait = np.maximum(until - track.origin.at_s - times[:, j], 0.0)
        times = np.column_stack([times[:, : j + 1], times[:, j + 1 :] + wait[:, None]])
    return times


def _finished(
    reference: Reference, track: Progress, settings: Fineness, push: tuple[float, float, float]
) -> Posterior:
    none = np.zeros((settings.paths, 0))
    weights = np.full(settings.paths, 1.0 / settings.paths)
    rest = stops.rest_scores(settings.paths)
    return Posterior(reference, track, none, lambda: none, rest, weights, np.zeros(0), np.zeros(0), 0.0, push)
