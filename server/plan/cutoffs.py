"""The odds of each cut-off, the latest time out of each earlier point that still makes it, and when goals
change.

Pure functions over joint paths, (m, n): m ways the race may go, n points, seconds or POSIX seconds alike.
The odds of stopping come in from outside: paths are of runners who get there.
"""

from __future__ import annotations

import math
from collections.abc import Collection, Sequence
from dataclasses import dataclass, replace
from datetime import datetime, timedelta
from typing import Final

import numpy as np
import numpy.typing as npt

from server.event.model import CutOff, Edge, Event, Goal
from server.forecast.outlook import View
from server.plan.timetable import Timetable

Floats = npt.NDArray[np.float64]

SAFE_ODDS: Final = 0.9
EVEN_ODDS: Final = 0.5
LEAST_PATHS: Final = 20


@dataclass(frozen=True, slots=True)
class DueTime:
    """A cut-off as an instant: at which point, in or out."""

    point: str
    edge: Edge
    at: datetime


@dataclass(frozen=True, slots=True)
class LatestOut:
    """Out of `point` by `at`, and a later cut-off is still made with the odds asked for; None = at no
    time."""

    point: str
    at: datetime | None


@dataclass(frozen=True, slots=True)
class CutOffOdds:
    """One cut-off: the odds that it is made, stopping included, and the latest times out of earlier
    points. `going`: the odds that she gets there at all."""

    due: DueTime
    odds: float
    latest_out: tuple[LatestOut, ...]
    going: float = 1.0

    @property
    def if_going(self) -> float:
        """The odds that she is in time, given that she goes on to there."""
        return min(1.0, self.odds / max(self.going, 1e-9))


@dataclass(frozen=True, slots=True)
class ChangeOver:
    """Out of `point` later than `at`, goal `goal` has become less likely than not: the next one holds."""

    point: str
    goal: Goal
    at: datetime | None


def due_times(
    event: Event, runner_id: str, moved: Sequence[tuple[str, str, datetime]] = ()
) -> tuple[DueTime, ...]:
    """Every cut-off on a runner's course in running order, the race's limit at the finish among them.

    moved: (point, edge, at) of cut-offs that the organiser has moved, the last one for a point and edge
    counts.
    """
    runner, course = event.runner(runner_id), event.course_of(runner_id)
    rules = [(p.id, c) for p in course.points for c in p.cut_offs]
    if event.limit is not None:
        rules.append((course.points[-1].id, CutOff(Edge.IN, clock=event.starts + event.limit)))
    now_at = {(point, edge): at for point, edge, at in moved}
    order = {p.id: k for k, p in enumerate(course.points)}
    found: dict[tuple[str, Edge], datetime] = {}
    for point, rule in rules:
        key = (point, rule.edge)
        at = now_at.get((point, rule.edge.value), rule.at(runner.start))
        found[key] = min(at, found.get(key, at))
    for point, edge, at in moved:
        if point in order:
            found.setdefault((point, Edge(edge)), at)
    return tuple(
        DueTime(p, e, at) for (p, e), at in sorted(found.items(), key=lambda i: (order[i[0][0]], i[1]))
    )


@dataclass(frozen=True, slots=True)
class _Between:
    """The time between two moments on each path: log seconds `rest` (m,), rising, + `slope` times the log of the first
    moment, which is taken to be no earlier than `first` (log seconds): nobody is quicker than from the earliest of them."""

    rest: Floats
    slope: float
    first: float

    @classmethod
    def of(cls, out_s: Floats, later_s: Floats) -> _Between:
        x, y = np.log(out_s), np.log(later_s - out_s)
        spread = float(x.var())
        shared = float(((x - x.mean()) * (y - y.mean())).mean())
        # Nobody is quicker to the next point for being late at this one; beyond 1.5 a line is fitted to noise.
        slope = float(np.clip(shared / spread, 0.0, 1.5)) if spread > 1e-10 else 0.0
        return cls(np.sort(y - slope * x), slope, float(x.min()))

    def later_by(self, at_s: float) -> float:
        """What is added to `rest` of whoever leaves at that moment."""
        return self.slope * max(math.log(at_s), self.first)


def odds_out_at(out_s: Floats, later_s: Floats, at_s: float, by_s: float) -> float:
    """P(she is at a later moment by by_s, given that she leaves an earlier point at at_s), she getting there.

    out_s, later_s: (m,) the two moments on each path, seconds since her start, 0 < out_s < later_s. The time
    between them is taken as growing with how late she is, as it does over the paths (a line through
    logarithms), with the paths' own scatter.
    """
    between = _Between.of(out_s, later_s)
    return float((at_s + np.exp(between.rest + between.later_by(at_s)) <= by_s).mean())


def latest_out(
    out_s: Floats, later_s: Floats, by_s: float, *, odds: float = SAFE_ODDS, gets_there: float = 1.0
) -> float | None:
    """The latest moment out of an earlier point with which a later one is still made by by_s with those odds
    (`odds_out_at`).

    All in seconds since her start: out_s, later_s (m,), m >= 20, 0 < out_s < later_s. gets_there:
    probability that she gets from one to the other at all. None where no moment is early enough. Exact to a
    second.
    """
    m = len(out_s)
    if m < LEAST_PATHS or m != len(later_s):
        raise ValueError(f"latest_out needs {LEAST_PATHS} paths or more of one length, not {m}")
    if not (np.all(out_s > 0) and np.all(later_s > out_s)):
        raise ValueError("latest_out needs paths in seconds since her start, later ones later")
    low, high = 1.0, by_s
    # Whenever she leaves, the paths are in time in the same order: the last that is needed decides for all.
    needed = math.ceil(odds * m / gets_there - 1e-9) if gets_there > 0.0 else m + 1
    if by_s <= low or needed > m:
        return None
    between = _Between.of(out_s, later_s)
    rest = float(between.rest[max(needed, 1) - 1])

    def in_time(at_s: float) -> bool:
        return at_s + math.exp(rest + between.later_by(at_s)) <= by_s

    if not in_time(low):
        return None
    while high - low > 0.5:
        middle = (low + high) / 2.0
        low, high = (middle, high) if in_time(middle) else (low, middle)
    return low


def cut_off_odds(
    view: View,
    due: Sequence[DueTime],
    start: datetime,
    odds: float = SAFE_ODDS,
    *,
    counting_stops: bool = False,
    stage_ends: Collection[str] = (),
) -> tuple[CutOffOdds, ...]:
    """The odds of every cut-off still to come, and the latest time out of each point before it for `odds`.

    start: her own start. A point she has left is none of the view's and so none of these. The odds include
    stopping; the latest times out are given that she goes on, unless counting_stops: early in a long race so
    many stop that no time whatever would give 90 %, which helps nobody decide. stage_ends: points at which a stage ends;
    the hour out of a point before one says nothing of a cut-off after the night.
    """
    points = view.points
    arrive, leave = (paths - start.timestamp() for paths in view.paths())
    found: list[CutOffOdds] = []
    for d in due:
        if d.point not in points:
            continue
        k = points.index(d.point)
        p = view.p_makes(d.point, d.at, d.edge is Edge.OUT)
        later = arrive[:, k] if d.edge is Edge.IN else leave[:, k]
        there, by_s = view.p_gets_there(d.point), (d.at - start).total_seconds()
        before = []
        last = max((j for j in range(k) if points[j] in stage_ends), default=0)
        # A view of somebody hours overdue may have too few paths left to say: the odds stand, the times out do not.
        for j in range(last, k if len(later) >= LEAST_PATHS else last):
            share = min(1.0, there / max(view.p_gets_there(points[j]), 1e-9)) if counting_stops else 1.0
            # Of a runner hours overdue single paths may cross, each margin being bent for itself: nobody is there
            # before she has left the point before.
            out_s = np.maximum(leave[:, j], 1.0)
            at = latest_out(out_s, np.maximum(later, out_s + 1.0), by_s, odds=odds, gets_there=share)
            before.append(LatestOut(points[j], _instant(start, at)))
        found.append(CutOffOdds(d, p, tuple(before), there))
    return tuple(found)


def one_latest(found: Sequence[CutOffOdds]) -> tuple[CutOffOdds, ...]:
    """The same with one latest time out of each point: the earliest that any cut-off asks for, told with that one; none
    where the point's own cut-off is earlier still."""
    own = {c.due.point: c.due.at for c in reversed(found)}
    least: dict[str, tuple[datetime, int]] = {}
    for k, c in enumerate(found):
        for out in c.latest_out:
            if out.at is not None and (out.point not in least or out.at < least[out.point][0]):
                least[out.point] = (out.at, k)

    def stays(out: LatestOut, k: int) -> bool:
        if out.at is None:
            return True
        return least[out.point][1] == k and not (out.point in own and own[out.point] <= out.at)

    return tuple(
        replace(c, latest_out=tuple(o for o in c.latest_out if stays(o, k))) for k, c in enumerate(found)
    )


def goal_changes(
    points: Sequence[str], leave_s: Floats, finish_s: Floats, timetable: Timetable
) -> tuple[ChangeOver, ...]:
    """For each point but the finish and goals A, B, C: out later than that, and the goal is less likely
    than not. Never before the goal's own time out: who keeps to its timetable is still after that goal, though most
    who have gone so fast fade.

    leave_s (m, n) and finish_s (m,) in seconds since her start; `points` names the n columns.
    """
    last = timetable.rows[-1]
    return tuple(
        ChangeOver(
            point,
            goal,
            _on_schedule(
                _instant(
                    timetable.start,
                    latest_out(leave_s[:, j], finish_s, last.arrive[goal].total_seconds(), odds=EVEN_ODDS),
                ),
                timetable.start + timetable.row(point).leave[goal],
            ),
        )
        for j, point in enumerate(points)
        if point != last.point and not _all_leave_at_once(timetable, point)
        for goal in Goal
    )


def _all_leave_at_once(timetable: Timetable, point: str) -> bool:
    """Whether a stage ends there: when the next one starts says nothing of a goal."""
    row = timetable.row(point)
    return row.leave[Goal.A] == row.leave[Goal.C] and row.arrive[Goal.A] < row.arrive[Goal.C]


def _on_schedule(found: datetime | None, planned: datetime) -> datetime | None:
    return None if found is None else max(found, planned)


def _instant(start: datetime, seconds: float | None) -> datetime | None:
    return None if seconds is None else start + timedelta(seconds=math.floor(seconds))
