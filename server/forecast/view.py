"""A forecast after a set of facts (`Posterior`), and as seen at a moment (`EngineView`): windows, odds, places, silence.

A view is cheap: silence only reweights.
"""

from __future__ import annotations

import math
from collections.abc import Callable, Sequence
from dataclasses import dataclass, field
from functools import cache, cached_property

import numpy as np
from scipy.optimize import brentq
from scipy.special import ndtr

from server.forecast import stops
from server.forecast.margins import Steps, weighted_quantiles
from server.forecast.stopping import made
from server.forecast.timeline import Progress
from server.forecast.timeline import departures as planned_departures
from server.forecast.values import NO_SILENCE, FloatArray, Reference, Silence, Watcher

FAINTEST = 1e-280
"""Odds smaller than this are none."""
HIGH = 0.95
"""Nobody is taken to have stopped before so many of those like her would have been there (`flags`)."""
NEAR_S = 0.25
"""How near a crossing is looked for before it is asked on both sides of it."""


@dataclass(frozen=True, eq=False)
class Posterior:
    """A runner's forecast, independent of now. Columns of paths are the points from track.first on.

    arrivals_s, departures_s: (paths, m) running times given that she gets there (the limit told counts).
    plain_s, plain_out_s: the same without the limit, for the odds; like the departures they are worked out once somebody
    asks (unlimited: how). weights: (paths,), sum 1.
    survival: (m,) probability of getting from the last fact to each point, stopping included, cut-offs ignored.
    flagged: (m,) the same by the odds that flags are made with: the limit told is one of the things they depend on.
    log_evidence: log probability of the 'not here yet' facts, if she is still going.
    push: how much more often than her times alone would say a cut-off is made (`stopping.made`).
    firsts: the moments looked for so far, by what was asked: the watch asks the same at every look until a fact comes.
    """

    reference: Reference
    track: Progress
    arrivals_s: FloatArray
    unlimited: Callable[[], FloatArray] = field(repr=False)
    rest_scores: FloatArray
    weights: FloatArray
    survival: FloatArray
    flagged: FloatArray
    log_evidence: float
    push: tuple[float, float, float]
    firsts: dict[tuple[object, ...], float | None] = field(default_factory=dict, repr=False)

    @cached_property
    def departures_s(self) -> FloatArray:
        return stops.departures(self.reference, self.track, self.arrivals_s)

    @cached_property
    def plain_s(self) -> FloatArray:
        return self.unlimited()

    @cached_property
    def plain_out_s(self) -> FloatArray:
        return stops.departures(self.reference, self.track, self.plain_s)

    @property
    def last_fact_s(self) -> float:
        """Seconds since the start of the last fact that says where she is; 0 before any."""
        return self.track.last_fact_s

    def view(self, now_s: float, silence: Silence = NO_SILENCE) -> EngineView:
        """The forecast as seen at now_s, when nothing but the facts has been heard. Cheap."""
        return EngineView(self, now_s, silence)

    def late_after_s(self, point: int) -> float:
        """The 90% time of a point to come as it stood at the last fact heard: past it she is late. inf if retired."""
        return float(self.view(self.last_fact_s).quantiles(point, np.array([0.9]))[0])

    def unheard_falls_under(self, line: float, after_s: float, silence: Silence) -> float | None:
        """First second not before after_s at which P(not heard | still going) is under line; None if never.

        P(not heard) never rises with time, so there is one crossing to look for.
        """
        return self._falls_under(line, EngineView.probability_unheard, silence, after_s)

    def ended_rather_s(self, going: float, after_s: float, silence: Silence) -> float | None:
        """First second not before after_s from which P(still going | nothing heard) is under `going`, by the odds of having
        stopped that flags are made with (`flags`); not before her 95% time, as it stood at the last fact, at the next point
        that somebody reports from.

        Where a reporter fails 3 times in 100 the silence of one point never gets under a line of 1 in 500. But as races
        end more often than reports fail, the same silence may still say that hers rather has, and the sooner the likelier
        she is to have stopped. Several silent reporters multiply. None if it never says so much, or nobody reports. The
        odds are taken to fall with time: paths that ended unseen stay, those that go on would have been reported.
        """
        watched = [w.point for w in silence.watchers if w.point >= self.track.first]
        if not watched or self.track.retired is not None:
            return None
        there = float(self.view(self.last_fact_s).quantiles(min(watched), np.array([HIGH]))[0])
        return self._falls_under(going, EngineView.probability_going, silence, max(after_s, there))

    def _falls_under(
        self, line: float, odds: Callable[[EngineView], float], silence: Silence, after_s: float
    ) -> float | None:
        key = (odds.__name__, line, silence, after_s)
        if key not in self.firsts:
            self.firsts[key] = self._found_under(line, lambda t: odds(self.view(t, silence)), after_s)
        return self.firsts[key]

    def _found_under(self, line: float, odds: Callable[[float], float], after_s: float) -> float | None:
        """First second not before after_s at which odds that only fall are under a line; None if never. By halving the time
        left; where that would ask far from the crossing, which its slope finds in a third of the tries, it is not asked."""
        asked = cache(lambda t: math.log(max(odds(t), FAINTEST) / line))
        whole = float(self.reference.elapsed_s[-1])
        late = max(after_s, float(self.plain_s.max(initial=0.0))) + 10.0 * whole
        if asked(after_s) < 0.0:
            return after_s
        by = next((t for t in (min(after_s + whole / 2.0, late), late) if asked(t) < 0.0), None)
        if by is None:
            return None
        early, near = after_s, brentq(asked, after_s, by, xtol=NEAR_S)
        while late - early > 1.0:
            middle = (early + late) / 2.0
            under = asked(middle) < 0.0 if abs(middle - near) <= 2.0 * NEAR_S else middle > near
            early, late = (early, middle) if under else (middle, late)
        return late


class EngineView:
    """What can be asked of a forecast at now_s (seconds since the runner's start).

    Points are numbered as in the reference. Points already reached have a window of no width: the time seen, or,
    where she was seen farther on, nan. Probabilities include stopping; windows are given that she gets there.
    """

    def __init__(self, posterior: Posterior, now_s: float, silence: Silence) -> None:
        self.posterior = posterior
        self.now_s = now_s
        self.silence = silence
        self._track = posterior.track
        self._steps: dict[tuple[str, int], Steps] = {}

    # ---- windows: given that she gets there

    def quantiles(self, point: int, probs: FloatArray) -> FloatArray:
        """Arrival times (q,) at a point for probabilities (q,)."""
        return self._quantiles(point, probs, "arrivals_s", self._track.arrived_s)

    def out_quantiles(self, point: int, probs: FloatArray) -> FloatArray:
        """Times out (q,) of a point, also of the one she is at now."""
        if point == self._track.at_point and np.isnan(self._track.left_s[point]):
            return weighted_quantiles(self.here_out_s, self.weights, np.asarray(probs, dtype=np.float64))
        return self._quantiles(point, probs, "departures_s", self._track.left_s)

    def _quantiles(self, point: int, probs: FloatArray, of: str, known: FloatArray) -> FloatArray:
        probs = np.asarray(probs, dtype=np.float64)
        if point < self._track.first:
            return np.full(probs.shape, known[point])
        if self._track.retired is not None:
            return np.full(probs.shape, np.inf)
        key = (of, point)
        if key not in self._steps:  # of one point several are asked for: the window, the wait, the leave-by
            self._steps[key] = Steps.of(getattr(self, of)[:, point - self._track.first], self.weights)
        return self._steps[key].quantiles(probs)

    @cached_property
    def arrivals_s(self) -> FloatArray:
        """(paths, m) joint arrival times at the points to come, in order; their weighted margins are the windows."""
        return self._real(self.posterior.arrivals_s)

    @cached_property
    def departures_s(self) -> FloatArray:
        """(paths, m) times out of the points to come, on the same paths."""
        return self._real(self.posterior.departures_s)

    @cached_property
    def here_out_s(self) -> FloatArray:
        """(paths,) times out of the point she is at now; of the place she was last seen if she is between points."""
        return self._real(
            stops.leaving_here(self.posterior.reference, self._track, self.posterior.arrivals_s)
        )

    @cached_property
    def weights(self) -> FloatArray:
        """(paths,) how much each path counts now, sum 1."""
        w = self.posterior.weights * self._unheard(self.arrivals_s)
        total = float(w.sum())
        return np.asarray(w / total) if total > 0 else self.posterior.weights

    def _real(self, running_s: FloatArray) -> FloatArray:
        """Real times of running times of the paths, with a rest or a hold that still goes on added at its start.

        A rest lasts as long as rests do from the last thing heard of her: that nobody has reported her moving again
        says nothing, for nobody may be there to see it, and would put off the question and the alarm for ever.
        """
        track = self._track
        extra = np.zeros(running_s.shape[0])
        if track.resting_since_s is not None and track.at_point < 0:
            so_far = max(track.resting_heard_s - track.resting_since_s, 0.0)
            finish = float(self.posterior.reference.elapsed_s[-1])
            extra = stops.rest_lengths(self.posterior.rest_scores, finish, so_far)
        column = (slice(None),) + (None,) * (running_s.ndim - 1)
        real = track.clock.real(running_s + extra[column])
        since = track.held_since_s
        if since is not None and self.now_s > since:
            real = np.where(real > since, real + (self.now_s - since), real)
        return real

    # ---- odds: stopping included, the limit not used

    @cached_property
    def _plain(self) -> FloatArray:
        return self._real(self.posterior.plain_s)

    @cached_property
    def _plain_out(self) -> FloatArray:
        return self._real(self.posterior.plain_out_s)

    @cached_property
    def _ways(self) -> tuple[FloatArray, FloatArray]:
        return self._ways_by(self._plain, self.posterior.survival)

    def _ways_by(self, times: FloatArray, survival: FloatArray) -> tuple[FloatArray, FloatArray]:
        """Joint weights, not yet normalised, of going on to the finish or ending on the way to each point.

        times (paths, m) of arrivals, survival (m,) to each point.
        stays (paths, m): retires on the way to point i, nothing heard since; goes (paths,): never retires.
        """
        post = self.posterior
        gets_there = np.concatenate([[1.0], survival])
        m = times.shape[1]
        unheard = self._unheard_upto(times)
        ends = post.weights[:, None] * (gets_there[:-1] - gets_there[1:]) * unheard[:, :-1]
        if self._track.not_yet:
            ends *= np.array([self._ended_unseen(i) for i in range(m)])
        goes = post.weights * gets_there[-1] * unheard[:, -1] * np.exp(post.log_evidence)
        return ends, goes

    def _ended_unseen(self, i: int) -> float:
        """Chance of the 'not here yet' facts if she retires on the way to column i; those beyond it say nothing."""
        inside = [p for p, _ in self._track.not_yet if p - self._track.first < i]
        return float(np.exp(self.posterior.log_evidence)) if inside else 1.0

    @cached_property
    def _mass(self) -> float:
        ends, goes = self._ways
        return float(ends.sum() + goes.sum())

    def probability_arrives(self, point: int) -> float:
        """Probability that she gets to the point at all, cut-offs ignored."""
        return self.probability_by(point, np.inf)

    def probability_by(self, point: int, t_s: float) -> float:
        """Probability that she arrives by t_s, stopping included."""
        return self._probability(point, t_s, self._plain, self._track.arrived_s)

    def probability_out_by(self, point: int, t_s: float) -> float:
        """Probability that she has left by t_s, stopping included."""
        if (
            point == self._track.at_point
            and np.isnan(self._track.left_s[point])
            and self._track.retired is None
        ):
            return float(np.dot(self.posterior.weights, self.here_out_s <= t_s))
        return self._probability(point, t_s, self._plain_out, self._track.left_s)

    def probability_cutoff(self, point: int, t_s: float, leaving: bool) -> float:
        """Probability that she makes a cut-off at t_s, to be in by (or out by, if leaving), stopping included.

        Not quite that of being in by t_s: near a cut-off she knows of, a runner hurries (`stopping.made`).
        """
        ask = self.probability_out_by if leaving else self.probability_by
        ever = ask(point, np.inf)
        if point < self._track.first and not (leaving and point == self._track.at_point):
            return ask(point, t_s)
        if ever <= 0:
            return 0.0
        way = min(self._track.origin.ref_s / float(self.posterior.reference.elapsed_s[point]), 1.0)
        return ever * made(self.posterior.push, ask(point, t_s) / ever, way)

    def _probability(self, point: int, t_s: float, paths: FloatArray, known: FloatArray) -> float:
        column = point - self._track.first
        if column < 0:
            return 1.0 if not known[point] > t_s else 0.0
        if self._track.retired is not None or self._mass <= 0:
            return 0.0
        ends, goes = self._ways
        there = goes + ends[:, column + 1 :].sum(axis=1)
        return float(np.dot(there, paths[:, column] <= t_s) / self._mass)

    def probability_going(self) -> float:
        """Probability that her race has not ended unnoticed by now (1 once she is known to have finished), by the odds of
        having stopped that flags are made with (`flags`)."""
        if self._track.retired is not None or self._track.first >= self.posterior.reference.n:
            return float(self._track.retired is None)
        ends, goes = self._ways_by(self.arrivals_s, self.posterior.flagged)
        mass = float(ends.sum() + goes.sum())
        on = float(goes.sum() + (ends * (1.0 - self._part_of_leg(self.arrivals_s))).sum())
        return on / mass if mass > 0 else 1.0

    def _part_of_leg(self, times: FloatArray) -> FloatArray:
        """(paths, m) how much of each leg lies behind her at now, on each path of arrivals."""
        begin = np.empty_like(times)
        begin[:, 0], begin[:, 1:] = self._origin_s, times[:, :-1]
        return np.asarray(np.clip((self.now_s - begin) / np.maximum(times - begin, 1.0), 0.0, 1.0))

    @property
    def _origin_s(self) -> float:
        return float(self._track.clock.real(np.array(self._track.origin.at_s)))

    # ---- silence

    def probability_unheard(self) -> float:
        """P(not heard by now | still going): what is held against the alarm line; 1 where silence says nothing."""
        if self._track.first >= self.posterior.reference.n or self._track.retired is not None:
            return 1.0
        times = self._plain
        evidence = float(np.exp(self.posterior.log_evidence))
        return float(np.dot(self.posterior.weights, self._unheard(times))) * evidence

    def _unheard(self, times: FloatArray) -> FloatArray:
        """(paths,) chance that nobody has reported an arrival at any point to come."""
        out = np.ones(times.shape[0])
        for _, chance in self._told(times):
            out *= 1.0 - chance
        out[out < FAINTEST] = 0.0
        return out

    def _unheard_upto(self, times: FloatArray) -> FloatArray:
        """(paths, m + 1) the same for no point, the first, the first two, and so on."""
        out = np.empty(
            (times.shape[1] + 1, times.shape[0])
        )  # a row a point: each is worked out from the one before
        out[0], done = 1.0, 0
        for point, chance in self._told(times):
            out[done + 1 : point + 2] = out[done]
            done = point + 1
            out[done] *= 1.0 - chance
        out[done + 1 :] = out[done]
        # What is too small to be kept to all its digits takes a hundred times as long.
        out[out < FAINTEST] = 0.0
        return out.T

    def _told(self, times: FloatArray) -> list[tuple[int, FloatArray]]:
        """Of each who could have reported an arrival by now, in order of their points: which of those to come, and their
        chance (paths,) that they would have."""
        first = self._track.first
        asked = (*self.silence.watchers, *self.silence.beside)
        # Whoever could have reported no arrival yet, on any path, says nothing yet.
        begun = (times.min(axis=0, initial=np.inf) < self.now_s).tolist()
        ahead = [w for w in asked if 0 <= w.point - first < times.shape[1] and begun[w.point - first]]
        always = [w for w in ahead if w.covered_s is None]
        found = _reported_always(always, times.T[[w.point - first for w in always]], self.now_s)
        told = [(w.point - first, w.chance * found[n]) for n, w in enumerate(always)]
        told += [
            (w.point - first, w.chance * reported(w, times[:, w.point - first], w.covered_s, self.now_s))
            for w in ahead
            if w.covered_s is not None
        ]
        return sorted(told, key=lambda t: t[0])

    # ---- whereabouts

    def place_km(self, probs: FloatArray) -> FloatArray:
        """Where she may be now, km along the course (q,), for probabilities (q,): if still going; not seen."""
        return weighted_quantiles(self._places, self.weights, np.asarray(probs, dtype=np.float64))

    def whereabouts_km(self, probs: FloatArray) -> FloatArray:
        """Where she may be now, km (q,), going on or not: whoever has ended unnoticed on a leg is somewhere along it.

        Late and unheard of, most of the odds are on a leg she has not finished, and not beyond the silent point.
        """
        if (
            self._track.first >= self.posterior.reference.n
            or self._track.retired is not None
            or self._mass <= 0
        ):
            return self.place_km(probs)
        ends, goes = self._ways
        part = self._part_of_leg(self._plain)
        km = np.concatenate([[self._origin_km()], self.posterior.reference.km[self._track.first :]])
        on = goes + np.sum(ends * (1.0 - part), axis=1)
        values, weights = [self._places], [on]
        for share in (0.125, 0.375, 0.625, 0.875):
            values.append((km[:-1] + share * part * np.diff(km)).ravel())
            weights.append((ends * part / 4.0).ravel())
        return weighted_quantiles(
            np.concatenate(values), np.concatenate(weights), np.asarray(probs, dtype=np.float64)
        )

    @cached_property
    def _places(self) -> FloatArray:
        track, reference = self._track, self.posterior.reference
        if track.first >= reference.n:
            return np.full(self.posterior.weights.shape, reference.km[-1])
        start_km = self._origin_km()
        if track.retired is not None:
            return np.full(
                self.posterior.weights.shape, start_km if track.retired.km is None else track.retired.km
            )
        arrive, leave = self.arrivals_s, self.departures_s
        origin = np.full((arrive.shape[0], 1), self._origin_s)
        here = self.here_out_s[:, None] if track.at_point >= 0 else origin
        begin = np.column_stack([here, leave[:, :-1]])
        part = np.clip((self.now_s - begin) / np.maximum(arrive - begin, 1.0), 0.0, 1.0)
        km = np.concatenate([[start_km], reference.km[track.first :]])
        return np.asarray(start_km + part @ np.diff(km))

    def _origin_km(self) -> float:
        reference, ref_s = self.posterior.reference, self._track.origin.ref_s
        at = np.concatenate(
            [[0.0], np.column_stack([reference.elapsed_s, planned_departures(reference)]).ravel()]
        )
        km = np.concatenate([[0.0], np.repeat(reference.km, 2)])
        return float(np.interp(ref_s, at, km))


def reported(
    watcher: Watcher, arrivals_s: FloatArray, covered_s: Sequence[tuple[float, float]], now_s: float
) -> FloatArray:
    """(paths,) chance that an arrival's report would have come by now, if it comes at all: lognormal delay in covered
    time."""
    spent = np.zeros_like(arrivals_s)
    for start, end in covered_s:
        spent += np.maximum(min(end, now_s) - np.maximum(arrivals_s, start), 0.0)
    return _told_within(spent, np.log(watcher.delay_median_s), watcher.delay_spread)


def _reported_always(watchers: Sequence[Watcher], arrivals_s: FloatArray, now_s: float) -> FloatArray:
    """(w, paths) the same for watchers who could always report, each with a row of arrivals, in one go."""
    medians = np.log(np.array([w.delay_median_s for w in watchers]))
    spreads = np.array([w.delay_spread for w in watchers])
    spent = np.maximum(now_s - arrivals_s, 0.0)
    return _told_within(spent, medians.reshape(-1, 1), spreads.reshape(-1, 1))


def _told_within(
    spent_s: FloatArray, log_median: FloatArray | float, spread: FloatArray | float
) -> FloatArray:
    z = (np.log(np.maximum(spent_s, 1e-9)) - log_median) / spread
    return np.asarray(np.where(spent_s > 0, ndtr(z), 0.0))
