"""Joint paths of runners, and what they say of two meetings of one crew: odds of both, how long to wait at the first.

Margins alone would have a crew leave before she can possibly have come: a late runner is late at both points.
"""

from __future__ import annotations

import math
import zlib
from dataclasses import dataclass
from datetime import UTC, datetime, timedelta
from typing import Final

import numpy as np
import numpy.typing as npt

from server.event.model import Goal
from server.forecast.outlook import View
from server.plan.timetable import Timetable

Floats = npt.NDArray[np.float64]

PATHS: Final = 2000
GRID_S: Final = 300.0
LEAST_PATHS: Final = 30
"""Fewer joint paths than this under a condition say nothing."""
Z_SIDE: Final = 1.2815515655446004
"""Goals A and C are the 10% and 90% sides."""
COMMON: Final = 0.8
"""Before there is a forecast, this share of the variance holds for the whole race, the rest wanders (own choice)."""
LEAST_LEG: Final = 0.4
"""No leg is run in less than this share of its plan (own choice)."""


@dataclass(frozen=True, slots=True, eq=False)
class Paths:
    """Equally likely ways a runner's race may go. arrive_s, leave_s (PATHS, n), POSIX seconds; n = len(points).

    Rows of two runners with one index belong together by chance only, so their races are independent.
    """

    runner: str
    points: tuple[str, ...]
    arrive_s: Floats
    leave_s: Floats

    def at(self, point: str) -> tuple[Floats, Floats] | None:
        """(arrive, leave) at a point, each (PATHS,); None where it is behind her."""
        if point not in self.points:
            return None
        k = self.points.index(point)
        return self.arrive_s[:, k], self.leave_s[:, k]


def of_view(runner: str, view: View, here: tuple[str, datetime] | None = None) -> Paths:
    """The paths of a forecast. `here`: the point she is at now and when she came, for a meeting that is on."""
    arrive, leave = (np.asarray(x, dtype=np.float64) for x in view.paths())
    points = view.points
    if here is not None:
        out = _here_out(view, here[0], arrive)
        arrive = np.column_stack([np.full(len(out), here[1].timestamp()), arrive])
        leave = np.column_stack([out, leave])
        points = (here[0], *points)
    fine = np.flatnonzero(np.isfinite(arrive).all(axis=1) & np.isfinite(leave).all(axis=1))
    if not points or not len(fine):
        none = np.zeros((PATHS, 0))
        return Paths(runner, (), none, none)
    even = fine[((np.arange(PATHS) + 0.5) / PATHS * len(fine)).astype(np.intp)]
    # A forecast may number its paths from slow to fast: two such runners would seem to be slow together.
    pick = _random(runner).permutation(even)
    return Paths(runner, points, arrive[pick], np.maximum(leave[pick], arrive[pick]))


def _here_out(view: View, point: str, arrive: Floats) -> Floats:
    """When she leaves the point she is at, later on the paths on which she is later at the next."""
    count = arrive.shape[0]
    probs = (np.arange(count) + 0.5) / count
    edges = np.linspace(0.005, 0.995, 100)
    times = np.array([view.leaving(point, float(p)).timestamp() for p in edges])
    out: Floats = np.interp(probs, edges, times)
    if not arrive.shape[1]:
        return out
    rank = np.empty(count, dtype=np.intp)
    rank[np.argsort(arrive[:, 0], kind="stable")] = np.arange(count)
    return np.asarray(np.minimum(out[rank], arrive[:, 0]))


def of_timetable(table: Timetable) -> Paths:
    """Paths about the plan, before there is a forecast: goal B, its sides A and C, the start left out.

    Logarithms are normal with the plan's own spread at each point, most of it common to the whole race.
    """
    rows = table.rows[1:]
    rng = _random(table.runner)
    arrive, leave = np.empty((PATHS, len(rows))), np.empty((PATHS, len(rows)))
    common, wander = rng.standard_normal(PATHS), rng.standard_normal(PATHS)
    before = np.zeros(PATHS)
    was_s = out_s = 0.0
    for k, row in enumerate(rows):
        a, b, c = (row.arrive[g].total_seconds() for g in (Goal.A, Goal.B, Goal.C))
        if k and b > 0:
            kept = was_s / b
            wander = kept * wander + math.sqrt(max(0.0, 1.0 - kept * kept)) * rng.standard_normal(PATHS)
        z = math.sqrt(COMMON) * common + math.sqrt(1.0 - COMMON) * wander
        side = (
            np.where(z < 0, math.log(max(b / max(a, 1.0), 1.0)), math.log(max(c / max(b, 1.0), 1.0))) / Z_SIDE
        )
        arrive[:, k] = np.maximum(b * np.exp(z * side), before + LEAST_LEG * (b - out_s))
        leave[:, k] = arrive[:, k] + (row.leave[Goal.B] - row.arrive[Goal.B]).total_seconds()
        if row.arrive[Goal.A] < row.arrive[Goal.C] and row.leave[Goal.A] == row.leave[Goal.C]:
            # A stage ends here: everybody who has come leaves when the next one starts.
            leave[:, k] = np.maximum(arrive[:, k], row.leave[Goal.B].total_seconds())
        before, was_s, out_s = leave[:, k], b, row.leave[Goal.B].total_seconds()
    start = table.start.timestamp()
    return Paths(table.runner, tuple(r.point for r in rows), arrive + start, leave + start)


def _random(runner: str) -> np.random.Generator:
    """The same for the same runner, always: a plan asked for twice is the same plan."""
    return np.random.default_rng(zlib.crc32(runner.encode()))


def moment(seconds: float) -> datetime:
    """An instant from POSIX seconds."""
    return datetime.fromtimestamp(seconds, UTC)


def quantile(times: Floats, p: float) -> float:
    """The time by which a share `p` of the paths (m,) has come, never between two of them: `p` is held exactly."""
    return float(np.quantile(times, p, method="lower"))


def floor_grid(seconds: float) -> float:
    """Down to five minutes."""
    return math.floor(seconds / GRID_S) * GRID_S


def ceil_grid(seconds: float) -> float:
    """Up to five minutes."""
    return math.ceil(seconds / GRID_S) * GRID_S


@dataclass(frozen=True, slots=True)
class Tie:
    """Two meetings of one crew. `p_both`: odds of being at the second first, having stayed at the first until she
    left. `bound_s`: until when waiting at the first, with nothing seen, leaves the second safe; None bounds nothing.
    `p_by`: odds that she has come to the first by then."""

    p_both: float
    bound_s: float | None
    p_by: float = 1.0


def tie(
    arrive_s: Floats,
    leave_s: Floats,
    next_s: Floats,
    travel_s: float,
    sure: float,
    from_s: float,
    until_s: float,
) -> Tie | None:
    """How a meeting hangs together with the crew's next one, from joint paths, each (m,) POSIX seconds.

    arrive_s, leave_s: she at the first; next_s: the same or another runner at the second; travel_s: from the one to
    the other; from_s, until_s: when the crew are to be at the first, and how long they would wait. None: too few
    paths. Going to the first at all may already endanger the second: then the wait is not cut for it.
    """
    fine = np.isfinite(arrive_s) & np.isfinite(leave_s) & np.isfinite(next_s)
    if int(fine.sum()) < LEAST_PATHS:
        return None
    a, out, b = arrive_s[fine], leave_s[fine], next_s[fine]
    p_both = float(np.mean(b >= out + travel_s))
    if p_both >= sure:
        return Tie(p_both, None)
    bound: float | None = None
    t = from_s
    while t <= until_s:
        still = a > t
        if int(still.sum()) < LEAST_PATHS:
            break
        if float(np.mean(b[still] >= t + travel_s)) < sure:
            return Tie(p_both, bound, 1.0 if bound is None else float(np.mean(a <= bound)))
        bound = t
        t += GRID_S
    return Tie(p_both, None)


def leave_by(
    arrive_s: Floats,
    sure: float,
    travel: timedelta,
    *,
    opens: datetime | None = None,
) -> tuple[datetime, datetime]:
    """(leave by, be there from) for a first meeting: with probability `sure` all are there before she is.

    arrive_s: (m,) her arrivals, POSIX seconds. Be there from is on whole five minutes, not before `opens`.
    """
    be_there = moment(floor_grid(quantile(arrive_s, 1.0 - sure)))
    if opens is not None and be_there < opens:
        be_there = opens
    return be_there - travel, be_there
