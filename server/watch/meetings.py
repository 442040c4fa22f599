"""The times of every meeting still to come: be there from, leave by, wait until. Answers and notices share them.

Be there from and leave-by hold a promise: with 97% (99% where a safety item or a pacer hangs on it) the crew
is there before she is. They rest on the forecast as it stood at the last fact, so that silence never moves
them: only a fact or a person does. An estimated drive sets no leave-by.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, replace
from datetime import datetime, timedelta

import numpy as np
import numpy.typing as npt

from server.event.model import CourseDef, Edge, Event, KitWeight, MeetingPlan, Point, Signal
from server.facts.state import Going, RaceState, RunnerState
from server.forecast.outlook import View, Window
from server.watch.notice import MeetingValues
from server.watch.sight import GRID, ceil_to, fact_at, floor_to
from server.watch.situation import Situation

__all__ = ["Way", "meetings", "members", "way_to"]

SURE = 0.97
SURER = 0.99
LATE_SIDE = 0.97
"""'Wait until' is the 97% time of her arrival: longer waits rarely see her come."""
EARLY_SIDE = 0.1
"""An access that closes before her 10% time is closed for this meeting: fewer than 1 in 10 come so early."""
BOTH_HOPELESS = 0.1
"""Two meetings of one crew with odds under this can't both be made, and are told so."""
PATHS_MIN = 30
"""Fewer joint paths than this under a condition say nothing."""

LOST_ACCESS = "access closed"
LOST_BOTH = "not both"
LOST_TOO_LATE = "too late"
LOST_GONE = "she has left"


@dataclass(frozen=True, slots=True)
class Way:
    """How a crew gets to a meeting: from where, the drive (None = unknown), whether a person stands by it,
    and the minutes from the car to her: walk-in and unloading."""

    from_place: str | None
    drive: timedelta | None
    confirmed: bool
    on_foot: timedelta

    @property
    def whole(self) -> timedelta | None:
        """Door to meeting, or None where the drive is not known."""
        return None if self.drive is None else self.drive + self.on_foot


def members(plan: MeetingPlan) -> tuple[str, ...]:
    """Who goes to a meeting: its crew, and the pacer who joins there."""
    joins = () if plan.pacer_joins is None else (plan.pacer_joins,)
    return tuple(dict.fromkeys((*plan.crew, *joins)))


def plans_in_order(event: Event, runner_id: str) -> tuple[MeetingPlan, ...]:
    """A runner's meetings in running order of their points; those at unknown points are left out."""
    order = {p.id: i for i, p in enumerate(event.course_of(runner_id).points)}
    mine = [m for m in event.meetings if m.runner == runner_id and m.point in order]
    return tuple(sorted(mine, key=lambda m: order[m.point]))


def way_to(event: Event, race: RaceState, plan: MeetingPlan) -> Way:
    """The way to a meeting. A drive counts as confirmed by the event file or by a person's later word.

    A 'drive confirmed' entry names the place driven to as its point and may name the place driven from
    as `about`; its `amount`, if any, is the time that the person stands by.
    """
    point = event.course_of(plan.runner).point(plan.point)
    access = point.access
    on_foot = (access.walk_in + access.unloading) if access is not None else timedelta(0)
    start = plan.from_place or _came_from(event, plan)
    said = [e for e in race.drives_confirmed if e.point == plan.point and e.about in (None, "", start)]
    known = next((d for d in event.drives if (d.from_place, d.to_place) == (start, plan.point)), None)
    drive = None if known is None or known.minutes is None else timedelta(minutes=known.minutes)
    confirmed = known is not None and known.confirmed_by is not None
    if said:
        drive = said[-1].amount or drive
        confirmed = True
    return Way(start, drive, confirmed and drive is not None, on_foot)


def _came_from(event: Event, plan: MeetingPlan) -> str | None:
    """Where this car (or, without one, this crew) was last to meet her; else where the car starts."""
    before: str | None = None
    for other in plans_in_order(event, plan.runner):
        if other.id == plan.id:
            break
        if (plan.car and other.car == plan.car) or (not plan.car and set(other.crew) & set(plan.crew)):
            before = other.point
    if before is not None:
        return before
    return next((c.starts_at for c in event.cars if c.id == plan.car), None)


def meetings(situation: Situation, runner_id: str, now: datetime) -> tuple[MeetingValues, ...]:
    """Every meeting of a runner still to come, in running order; the one she is at now included.

    () when she has no forecast, or her race is over. `lost` says why one can't be made: its access is
    closed or closes first; the same crew has a meeting before it and both can't be had.
    """
    outlook = situation.outlooks.get(runner_id)
    state = situation.state.runner(runner_id)
    if outlook is None or state.going in (Going.RETIRED, Going.IN_HAND, Going.FINISHED, Going.CLOSED):
        return ()
    views = _Views(outlook.at(fact_at(state)), outlook.at(max(now, fact_at(state))))
    event, race = situation.event, situation.state
    open_plans = [m for m in plans_in_order(event, runner_id) if _to_come(views, state, m.point)]
    values = [_values(event, race, state, views, m) for m in open_plans]
    return tuple(_joined(event, race, views, open_plans, values))


@dataclass(frozen=True, slots=True)
class _Views:
    """The forecast as it stood at the last fact, and as it stands now."""

    fact: View
    now: View


def _to_come(views: _Views, state: RunnerState, point: str) -> bool:
    times = state.at_point(point)
    here = times is not None and times.arrived is not None and times.left is None and not times.through
    return point in views.fact.points or (here and _last_point(state) == point)


def _last_point(state: RunnerState) -> str | None:
    return state.times[-1].point if state.times else None


def _values(
    event: Event, race: RaceState, state: RunnerState, views: _Views, plan: MeetingPlan
) -> MeetingValues:
    course = event.course_of(plan.runner)
    point = course.point(plan.point)
    way = way_to(event, race, plan)
    safety = plan.pacer_joins is not None or any(k.weight is KitWeight.SAFETY for k in plan.kit)
    sure = SURER if safety else SURE
    window = _window(views.now, state, plan.point)
    aim = _arrival(views.fact, state, plan.point, 1.0 - sure)
    be_there = floor_to(aim)
    early = _arrival(views.fact, state, plan.point, EARLY_SIDE)
    opens, closes = (None, None) if point.access is None else (point.access.opens, point.access.closes)
    if opens is not None and be_there < opens:
        be_there = opens
    whole = way.whole if way.confirmed else None
    late = _late_side(views.fact, state, plan.point)
    bounds = [b for b in (closes, _last_cut_off(race, point, state)) if b is not None]
    wait_until = max(be_there, min([ceil_to(late), *bounds]))
    lost = ""
    if plan.point in race.access_closed or (closes is not None and early >= closes):
        lost = LOST_ACCESS
    return MeetingValues(
        meeting=plan.id,
        point=plan.point,
        window=window,
        leave_by=None if whole is None else be_there - whole,
        be_there=be_there,
        wait_until=wait_until,
        drive=way.drive,
        kit=tuple(k.name for k in plan.kit),
        food=plan.food,
        if_missed=plan.if_missed,
        no_signal=_no_signal(course, point),
        drive_confirmed=way.confirmed,
        drive_from=way.from_place,
        crew=members(plan),
        p_in_time=sure,
        lost=lost,
    )


def _window(view: View, state: RunnerState, point: str) -> Window:
    times = state.at_point(point)
    if times is not None and times.arrived is not None:
        at = times.arrived.at
        return Window(point, at, at, at)
    return view.window(point)


def _arrival(view: View, state: RunnerState, point: str, p: float) -> datetime:
    times = state.at_point(point)
    if times is not None and times.arrived is not None:
        return times.arrived.at
    return view.arrival(point, p)


def _late_side(view: View, state: RunnerState, point: str) -> datetime:
    """Her 97% arrival; once she is in, the time by which she has left."""
    times = state.at_point(point)
    if times is None or times.arrived is None:
        return view.arrival(point, LATE_SIDE)
    try:
        return view.leaving(point, LATE_SIDE)
    except KeyError:
        return times.arrived.at


def _no_signal(course: CourseDef, point: Point) -> bool:
    """Whether phones fail at the point, by its own word or that of the stretch it lies in."""
    km = point.km
    in_stretch = any(s.no_signal and km is not None and s.from_km <= km <= s.to_km for s in course.stretches)
    return point.signal is Signal.NONE or in_stretch


def cut_offs_at(race: RaceState, point: Point, state: RunnerState) -> tuple[tuple[Edge, datetime], ...]:
    """The cut-offs of a point as they stand now, the moved ones at their new time."""
    times = {c.edge: c.at(state.start) for c in point.cut_offs}
    times |= {Edge(edge): when for p, edge, when in race.cut_offs_moved if p == point.id}
    return tuple((edge, times[edge]) for edge in Edge if edge in times)


def _last_cut_off(race: RaceState, point: Point, state: RunnerState) -> datetime | None:
    return max((when for _, when in cut_offs_at(race, point, state)), default=None)


def _joined(
    event: Event,
    race: RaceState,
    views: _Views,
    plans: Sequence[MeetingPlan],
    values: Sequence[MeetingValues],
) -> list[MeetingValues]:
    """Tie each meeting to the next one of the same crew: odds of both, how long they may wait."""
    out = list(values)
    for i, plan in enumerate(plans):
        j = next((k for k in range(i + 1, len(plans)) if set(plans[k].crew) & set(plan.crew)), None)
        if j is None:
            continue
        way = way_to(event, race, plans[j])
        from_here = way.from_place in (plan.point, None) and way.confirmed
        whole = way.whole if from_here else None
        tie = None if whole is None else _tie(views.fact, out[i], out[j], whole)
        out[i] = replace(out[i], next_meeting=plans[j].id, p_both=None if tie is None else tie.p_both)
        if tie is None:
            continue
        if tie.bound is not None and tie.bound < out[i].wait_until:
            out[i] = replace(out[i], wait_until=max(out[i].be_there, tie.bound))
        if tie.p_both <= BOTH_HOPELESS and not out[j].lost and not out[i].lost:
            out[j] = replace(out[j], lost=LOST_BOTH)
    return out


@dataclass(frozen=True, slots=True)
class _Tie:
    """Two meetings of one crew: the odds of both, and until when waiting at the first, with nothing seen
    of her, still leaves the second safe (None = it bounds nothing)."""

    p_both: float
    bound: datetime | None


def _tie(view: View, here: MeetingValues, there: MeetingValues, whole: timedelta) -> _Tie | None:
    """From joint paths: margins alone would have a crew leave before she can possibly have come, since a
    late runner is late at both points."""
    points = view.points
    if here.point not in points or there.point not in points:
        return None
    arrive, leave = view.paths()
    a, out, b = (_column(arrive, points, here), _column(leave, points, here), _column(arrive, points, there))
    fine = np.isfinite(a) & np.isfinite(out) & np.isfinite(b)
    if int(fine.sum()) < PATHS_MIN:
        return None
    a, out, b = a[fine], out[fine], b[fine]
    drive_s = whole.total_seconds()
    p_both = float(np.mean(b >= out + drive_s))
    if p_both >= there.p_in_time:
        return _Tie(p_both, None)
    bound: datetime | None = None
    when = here.be_there
    while when <= here.wait_until:
        t = when.timestamp()
        still = a > t
        if int(still.sum()) < PATHS_MIN:
            break
        if float(np.mean(b[still] >= t + drive_s)) < there.p_in_time:
            return _Tie(p_both, bound)
        bound = when
        when += GRID
    return _Tie(p_both, None)


def _column(
    paths: npt.NDArray[np.float64], points: Sequence[str], m: MeetingValues
) -> npt.NDArray[np.float64]:
    return np.asarray(paths[:, points.index(m.point)], dtype=np.float64)
