"""Goals A, B, C and the pace that is just in by the time limit, each as her way through time and place."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass, replace
from datetime import datetime, timedelta
from itertools import pairwise
from typing import Final

import numpy as np
import numpy.typing as npt

from server.course import Course
from server.event.model import CourseDef, Edge, Event, Goal
from server.plan.cutoffs import due_times
from server.plan.light import DarkKit, Sky, dark_kit, sky_over
from server.plan.pace import RESTS_FROM_S
from server.plan.timetable import Timetable

Floats = npt.NDArray[np.float64]
Bools = npt.NDArray[np.bool_]

LIMIT: Final = "limit"
"""The name of the slowest pace that the race's limit and its cut-offs allow."""
TICK_S: Final = 60.0
SLOWER: Final = 1.01
"""The limit is a pace of its own only where it is later than goal C by more than this."""


@dataclass(frozen=True, slots=True, eq=False)
class GoalPace:
    """One way to run it: `name` A, B, C or limit; seconds from her start and km (n,), rising, stops as standing still;
    between two points she is taken to go evenly."""

    name: str
    elapsed_s: Floats
    km: Floats

    def at(self, km: float) -> float:
        """Seconds from her start at which she comes to a km."""
        k = int(np.searchsorted(self.km, km - 1e-9))
        # At a stop the moment of coming in, which interpolation would make that of leaving.
        if k < len(self.km) and abs(float(self.km[k]) - km) < 1e-6:
            return float(self.elapsed_s[k])
        return float(np.interp(km, self.km, self.elapsed_s))

    def rests(self) -> list[tuple[float, float]]:
        """Each night's rest: from and to, seconds from her start."""
        found = np.flatnonzero((np.diff(self.km) <= 0) & (np.diff(self.elapsed_s) >= RESTS_FROM_S))
        return [(float(self.elapsed_s[i]), float(self.elapsed_s[i + 1])) for i in found]

    def ticks(self) -> tuple[Floats, Floats, Bools]:
        """Each minute of it: seconds, km, and whether she is up (no night's rest), each (m,)."""
        gone = np.append(np.arange(0.0, float(self.elapsed_s[-1]), TICK_S), float(self.elapsed_s[-1]))
        up = np.ones(len(gone), dtype=np.bool_)
        for begins, ends in self.rests():
            up &= ~((gone > begins) & (gone < ends))
        return gone, np.interp(gone, self.elapsed_s, self.km), up


def paces_of(event: Event, timetable: Timetable) -> tuple[GoalPace, ...]:
    """A, B, C, and the limit where one is later than C, of each stage by itself."""
    rows = timetable.rows
    km = np.repeat([r.km for r in rows], 2)
    found = []
    for goal in Goal:
        times = [t.total_seconds() for r in rows for t in (r.arrive[goal], r.leave[goal])]
        found.append(GoalPace(goal.value, np.maximum.accumulate(np.array(times)), km))
    last = _at_limit(event, timetable)
    return (*found, last) if last is not None else tuple(found)


def _at_limit(event: Event, timetable: Timetable) -> GoalPace | None:
    """Goal C drawn out until it is just in by every cut-off, in each stage from its own start on."""
    rows = timetable.rows
    order = {r.point: k for k, r in enumerate(rows)}
    arrive, leave = (
        np.array([t[Goal.C].total_seconds() for t in times])
        for times in ([r.arrive for r in rows], [r.leave for r in rows])
    )
    stops = leave - arrive
    by = np.full(len(rows), np.inf)
    for due in due_times(event, timetable.runner):
        if due.point in order:
            k = order[due.point]
            allowed = (due.at - timetable.start).total_seconds() - (stops[k] if due.edge is Edge.OUT else 0.0)
            by[k] = min(by[k], allowed)
    points = event.course_of(timetable.runner).points
    nights = [order[p.id] for p in points if p.next_stage is not None and p.id in order]
    late = arrive.copy()
    for first, last in pairwise([0, *nights, len(rows) - 1]):
        begins, stage = leave[first], slice(first + 1, last + 1)
        late[stage] = begins + _drawn_out(arrive[stage] - begins, by[stage] - begins)
    if np.all(late <= arrive * SLOWER):
        return None
    out = late + stops
    out[nights] = leave[nights]
    times = np.column_stack([late, out]).ravel()
    return GoalPace(LIMIT, np.maximum.accumulate(times), np.repeat([r.km for r in rows], 2))


def _drawn_out(arrive: Floats, by: Floats) -> Floats:
    """Seconds from a start at which she comes to each point (n,), just in by the cut-offs `by` (inf = none there), never
    earlier than `arrive`."""
    known = np.flatnonzero(np.isfinite(by))
    if not known.size:
        return arrive
    last = int(known[-1])
    late = arrive * max(1.0, float(by[last] / arrive[last]))
    for k in range(len(arrive) - 1, -1, -1):
        late[k] = min(late[k], by[k])
        if k + 1 < len(arrive):
            late[k] = min(late[k], late[k + 1] - (arrive[k + 1] - arrive[k]))
    return np.maximum(late, arrive)


def sky_of(paces: tuple[GoalPace, ...], course: Course, start: datetime) -> Sky:
    """The sky over all of them."""
    lasts = max(float(p.elapsed_s[-1]) for p in paces)
    return sky_over(course.km, course.lat_deg, course.lon_deg, start, lasts)


def shaded_at(definition: CourseDef, km: Floats) -> Bools:
    """Whether each km (n,) lies in forest or gorge."""
    shaded = np.zeros(len(km), dtype=np.bool_)
    for s in definition.stretches:
        if s.forest_or_gorge:
            shaded |= (km >= s.from_km) & (km < s.to_km)
    return shaded


def dark_by_pace(
    event: Event, timetable: Timetable, course: Course
) -> tuple[tuple[str, tuple[DarkKit, ...]], ...]:
    """By the name of each pace the parts for which she needs a light."""
    paces = paces_of(event, timetable)
    sky = sky_of(paces, course, timetable.start)
    definition = event.course_of(timetable.runner)
    found = []
    for p in paces:
        gone, km, _ = p.ticks()
        parts = dark_kit(sky, gone, km, shaded_at(definition, km))
        for begins, ends in p.rests():
            parts = tuple(x for d in parts for x in _without(d, timetable.start, begins, ends))
        found.append((p.name, parts))
    return tuple(found)


def _without(part: DarkKit, start: datetime, begins_s: float, ends_s: float) -> Iterator[DarkKit]:
    """What of a part lies outside a rest, in which she stands still."""
    begins, ends = timedelta(seconds=begins_s), timedelta(seconds=ends_s)
    if part.to_elapsed <= begins or part.from_elapsed >= ends:
        yield part
        return
    if part.from_elapsed < begins:
        yield replace(part, to_elapsed=begins, to_at=start + begins)
    if part.to_elapsed > ends:
        yield replace(part, from_elapsed=ends, from_at=start + ends)
