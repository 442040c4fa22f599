"""The day as others' times show it, from the event to the engine: who is taken, seconds after their starts.

Strangers are taken as they have been read so far; others who are followed here as their times stood when she was last seen,
so that one report does not have everybody's forecast worked out anew. Nothing is taken before she has been seen at a point,
nor on a course with nights on it, of which others' rests are not known.
"""

from __future__ import annotations

from collections.abc import Collection, Iterable, Mapping, Sequence
from dataclasses import dataclass, field
from datetime import datetime

import numpy as np

from server.course import Course
from server.event.model import Event, Goal
from server.facts.passages import Passage
from server.facts.state import Interval, RunnerState
from server.forecast import kinds
from server.forecast.bridge import reference_of
from server.forecast.others import FEWEST, factors, nearest
from server.forecast.outlook import DayLegs
from server.forecast.planned import Plan
from server.forecast.values import FloatArray

__all__ = ["NOBODY", "Followed", "Strangers", "day_of", "seen_at", "seen_of_others"]


@dataclass(frozen=True, slots=True, eq=False)
class Strangers:
    """Arrivals by bib (rows) and point (columns), POSIX seconds, nan where not known."""

    points: Mapping[str, int]
    at: FloatArray

    @staticmethod
    def of(passages: Iterable[Passage], followed: Collection[str] = ()) -> Strangers:
        """Of passages, one a bib and point; bibs of runners who are followed by now are theirs, and left out."""
        known = [(p.bib, p.point, p.at) for p in passages if p.at is not None and p.bib not in followed]
        points = {p: n for n, p in enumerate(sorted({point for _, point, _ in known}))}
        bibs = {b: n for n, b in enumerate(sorted({bib for bib, _, _ in known}))}
        at = np.full((len(bibs), len(points)), np.nan)
        for bib, point, when in known:
            at[bibs[bib], points[point]] = when.timestamp()
        return Strangers(points, at)

    def at_point(self, point: str) -> FloatArray:
        """(bibs,) arrivals there."""
        column = self.points.get(point)
        return np.full(len(self.at), np.nan) if column is None else self.at[:, column]


NOBODY = Strangers({}, np.zeros((0, 0)))


def seen_at(me: RunnerState) -> dict[str, float]:
    """By point when she was first seen there, POSIX seconds: in, or where nobody saw that, out."""
    first = ((t.point, t.arrived or t.left) for t in me.times)
    return {point: stamp.at.timestamp() for point, stamp in first if stamp is not None}


@dataclass(slots=True)
class Followed:
    """Arrivals of an event's own runners, grown with the fold: only rows of those whose state has changed are made anew."""

    event: Event
    changes: list[float] = field(default_factory=list)
    """Of each change the earliest moment (POSIX seconds) that it bears on."""
    _states: list[RunnerState | None] = field(default_factory=list)
    _points: dict[str, int] = field(default_factory=dict)
    _at: FloatArray = field(default_factory=lambda: np.zeros((0, 0)))
    _start: FloatArray = field(default_factory=lambda: np.zeros(0))

    def take(self, runners: Sequence[RunnerState]) -> None:
        """Take in a state of all runners, the same ones each time. Fewer than there have to be are not looked at."""
        if len(runners) <= FEWEST:
            return
        if not self._states:
            ids = dict.fromkeys(p.id for c in self.event.courses for p in c.points)
            self._points = {p: n for n, p in enumerate(ids)}
            self._states = [None] * len(runners)
            self._at = np.full((len(runners), len(ids)), np.nan)
            self._start = np.full(len(runners), np.nan)
        for row, (before, now) in enumerate(zip(self._states, runners, strict=True)):
            if before is now:
                continue
            was, at = np.append(self._at[row], self._start[row]), np.full(self._at.shape[1] + 1, np.nan)
            at[-1] = now.start.timestamp()
            for point, when in seen_at(now).items():
                if point in self._points:
                    at[self._points[point]] = when
            differ = ~((was == at) | (np.isnan(was) & np.isnan(at)))
            if differ.any():
                self.changes.append(float(np.nanmin([was[differ], at[differ]])))
            self._states[row], self._at[row], self._start[row] = now, at[:-1], at[-1]

    def ahead_of(
        self, me: RunnerState, ids: Sequence[str], last: int, seen: float
    ) -> tuple[FloatArray, FloatArray]:
        """Arrivals (k, n) at her points up to when she was last seen, and starts (k,), of those seen there and
        past it by then: whoever came later is none of them, whenever this is asked."""
        if not self._states or any(p not in self._points for p in ids):
            return np.zeros((0, len(ids))), np.zeros(0)
        at = self._at[:, [self._points[p] for p in ids]]
        at = np.where(at <= seen, at, np.nan)
        past = np.isfinite(at[:, last]) & np.isfinite(at[:, last + 1 :]).any(axis=1)
        past &= [s is not None and s.runner != me.runner for s in self._states]
        return at[past], self._start[past]


def seen_of_others(
    strangers: Strangers,
    followed: Followed,
    me: RunnerState,
    plan: Plan,
    starts: frozenset[datetime],
    held: Sequence[Interval],
) -> FloatArray | None:
    """(k, n) arrivals, seconds after their starts, of the others who say something of her legs; None where too few do.

    `starts`: when runners of the event start; where that is several, a stranger who was not seen at the start is taken to
    have come to the first point they were seen at as long after their start as she. `held`: when all were.
    """
    ids = [r.point for r in plan.rows[1:]]
    seen = seen_at(me)
    reached = [n for n, p in enumerate(ids) if p in seen]
    if not reached or reached[-1] == len(ids) - 1:
        return None
    last, begin = reached[-1], me.start.timestamp()
    own = np.array([seen.get(p, np.nan) for p in ids]) - begin
    if not own[last] > 0:
        return None
    theirs, their_starts = followed.ahead_of(me, ids, last, seen[ids[last]])
    at = np.column_stack([strangers.at_point(p) for p in (plan.rows[0].point, *ids)])
    at = at[np.isfinite(at[:, last + 2 :]).any(axis=1)]
    left, at = at[:, 0], at[:, 1:]
    if len(at) + len(theirs) < FEWEST:
        return None
    unsaid = ~np.isfinite(left)
    if len(starts) == 1:
        left[unsaid] = begin
    elif unsaid.any():
        planned = np.array([r.arrive[Goal.B].total_seconds() for r in plan.rows[1:]])
        came = np.where(np.isfinite(own), own, planned * own[last] / planned[last])
        first = np.isfinite(at[unsaid]).argmax(axis=1)
        left[unsaid] = at[unsaid, first] - came[first]
    every = np.concatenate([at, theirs])
    after = _running(every, np.concatenate([left, their_starts]), held)
    own_s = float(_running(np.array([[seen[ids[last]]]]), np.array([begin]), me.held)[0, 0])
    found = nearest(after, last, own_s)
    return found if len(found) >= FEWEST else None


def _running(at: FloatArray, start: FloatArray, held: Sequence[Interval]) -> FloatArray:
    """Seconds after their starts at which they came, without the time for which they were held."""
    begin = start[:, None]
    after = at - begin
    for h in held:
        low = np.maximum(h.start.timestamp(), begin)
        high = at if h.end is None else np.minimum(h.end.timestamp(), at)
        after = after - np.maximum(high - low, 0.0)
    return np.asarray(after)


def day_of(others_s: FloatArray, event: Event, me: RunnerState, plan: Plan, course: Course) -> DayLegs | None:
    """What those others' times say of her legs; None on a course with nights."""
    if any(p.next_stage is not None for p in event.course_of(me.runner).points):
        return None
    reference = reference_of(plan, course)
    logs = factors(kinds.of(reference), reference, others_s)
    return DayLegs(tuple(r.point for r in plan.rows[1:]), tuple(logs.tolist()), len(others_s))
