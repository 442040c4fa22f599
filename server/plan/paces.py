"""Goals A, B, C and the pace that is just in by the time limit, each as her way through time and place."""

from __future__ import annotations

from dataclasses import dataclass
from datetime import datetime
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

    def ticks(self) -> tuple[Floats, Floats, Bools]:
        """Each minute of it: seconds, km, and whether she is up (no night's rest), each (m,)."""
        gone = np.append(np.arange(0.0, float(self.elapsed_s[-1]), TICK_S), float(self.elapsed_s[-1]))
        up = np.ones(len(gone), dtype=np.bool_)
        rests = (np.diff(self.km) <= 0) & (np.diff(self.elapsed_s) >= RESTS_FROM_S)
        for i in np.flatnonzero(rests):
            up &= ~((gone > self.elapsed_s[i]) & (gone < self.elapsed_s[i + 1]))
        return gone, np.interp(gone, self.elapsed_s, self.km), up


def paces_of(event: Event, timetable: Timetable) -> tuple[GoalPace, ...]:
    """A, B, C, and the limit where one is later than C; none for a race in stages, each with a limit of its own."""
    rows = timetable.rows
    km = np.repeat([r.km for r in rows], 2)
    found = []
    for goal in Goal:
        times = [t.total_seconds() for r in rows for t in (r.arrive[goal], r.leave[goal])]
        found.append(GoalPace(goal.value, np.maximum.accumulate(np.array(times)), km))
    last = _at_limit(event, timetable)
    return (*found, last) if last is not None else tuple(found)


def _at_limit(event: Event, timetable: Timetable) -> GoalPace | None:
    """Goal C drawn out until it is just in by every cut-off."""
    if any(p.next_stage is not None for p in event.course_of(timetable.runner).points):
        return None
    rows = timetable.rows
    order = {r.point: k for k, r in enumerate(rows)}
    arrive = np.array([r.arrive[Goal.C].total_seconds() for r in rows])
    stops = np.array([r.leave[Goal.C].total_seconds() for r in rows]) - arrive
    by = np.full(len(rows), np.inf)
    for due in due_times(event, timetable.runner):
        if due.point in order:
            k = order[due.point]
            allowed = (due.at - timetable.start).total_seconds() - (stops[k] if due.edge is Edge.OUT else 0.0)
            by[k] = min(by[k], allowed)
    known = np.flatnonzero(np.isfinite(by[1:])) + 1
    if not known.size:
        return None
    last = int(known[-1])
    late = arrive * max(1.0, float(by[last] / arrive[last]))
    for k in range(len(rows) - 1, -1, -1):
        late[k] = min(late[k], by[k])
        if k + 1 < len(rows):
            late[k] = min(late[k], late[k + 1] - (arrive[k + 1] - arrive[k]))
    late = np.maximum(late, arrive)
    if np.all(late <= arrive * SLOWER):
        return None
    times = np.column_stack([late, late + stops]).ravel()
    return GoalPace(LIMIT, np.maximum.accumulate(times), np.repeat([r.km for r in rows], 2))


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
        gone, km, up = p.ticks()
        parts = dark_kit(sky, gone, km, shaded_at(definition, km))
        awake = [
            d
            for d in parts
            if np.any(up & (gone >= d.from_elapsed.total_seconds()) & (gone <= d.to_elapsed.total_seconds()))
        ]
        found.append((p.name, tuple(awake)))
    return tuple(found)
