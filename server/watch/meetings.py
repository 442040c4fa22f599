"""The times of every meeting still to come: be there from, leave by, wait until. Answers and notices share them.

Be there from and leave-by hold a promise: with 97% (99% where a safety item or a pacer hangs on it) the crew
is there before she is. They rest on the forecast as it stood at the last fact, so that silence never moves
them: only a fact or a person does. An estimated drive sets no leave-by.
"""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass, replace
from datetime import datetime, timedelta

import numpy as np
import numpy.typing as npt

from server.event.model import CourseDef, Edge, Event, MeetingPlan, Point, Signal
from server.facts.state import Going, RaceState, RunnerState
from server.forecast.outlook import View, Window
from server.plan.movements.joint import Floats, Paths, moment, of_view, tie
from server.plan.movements.rules import opens_at
from server.plan.movements.trips import is_safety
from server.watch.notice import MeetingValues, together
from server.watch.sight import ceil_to, fact_at, floor_to
from server.watch.situation import Situation
from server.watch.waiting import missed_at
from server.watch.ways import Party, Way, in_time, members, parties, plans_in_order, roads_of, shared, way_to

__all__ = ["Way", "brought", "meetings", "members", "plans_in_order", "taken_back", "way_to"]

SURE = 0.97
SURER = 0.99
LATE_SIDE = 0.97
"""'Wait until' is the 97% time of her arrival: longer waits rarely see her come."""
EARLY_SIDE = 0.1
"""An access that closes before her 10% time is closed for this meeting: fewer than 1 in 10 come so early."""
BOTH_HOPELESS = 0.1
"""Two meetings of one crew with odds under this can't both be made, and are told so."""

LOST_ACCESS = "access closed"
LOST_BOTH = "not both"
LOST_TOO_LATE = "too late"
LOST_GONE = "she has left"


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
    event = situation.event
    known = _known(situation)
    course = event.course_of(runner_id)
    coming = [m for m in plans_in_order(event, runner_id) if _to_come(views, state, m.point)]
    plans = [m for m in coming for _ in known.parties_to(m)]
    values = [_values(known, state, views, m, p) for m in coming for p in known.parties_to(m)]
    done = [
        replace(
            m,
            stay=now >= m.wait_until
            and missed_at(course.point(m.point), m.wait_until, state, situation.made),
        )
        for m in _across(known, plans, _joined(known, views, plans, values))
    ]
    return tuple(together([m for m in done if m.meeting == plan.id], members(event, plan)) for plan in coming)


@dataclass(frozen=True, slots=True)
class _Known:
    """What every meeting's times rest on: the situation, all runners' meetings in order of time, who comes to each in
    which car."""

    situation: Situation
    ordered: tuple[MeetingPlan, ...]
    parties: Mapping[str, tuple[Party, ...]]

    @property
    def event(self) -> Event:
        return self.situation.event

    @property
    def race(self) -> RaceState:
        return self.situation.state

    def parties_to(self, plan: MeetingPlan) -> tuple[Party, ...]:
        """Car by car; a meeting that is not among the ordered ones is gone to in its own."""
        if plan.id in self.parties:
            return self.parties[plan.id]
        return (Party(members(self.event, plan), way_to(self.event, self.race, plan, None, self.ordered)),)

    def party(self, plan: MeetingPlan, people: Sequence[str]) -> Party:
        """The car in which any of those people come to a meeting; its first where none of them does."""
        found = self.parties_to(plan)
        return next((p for p in found if set(p.people) & set(people)), found[0])


def _known(situation: Situation) -> _Known:
    event, race, ordered = situation.event, situation.state, in_time(situation)
    return _Known(situation, ordered, parties(event, race, roads_of(event, race), ordered))


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
    known: _Known, state: RunnerState, views: _Views, plan: MeetingPlan, party: Party
) -> MeetingValues:
    event, race = known.event, known.race
    course = event.course_of(plan.runner)
    point = course.point(plan.point)
    way = party.way
    sure = SURER if is_safety(event, plan) else SURE
    window = _window(views.now, state, plan.point)
    aim = _arrival(views.fact, state, plan.point, 1.0 - sure)
    be_there = floor_to(aim)
    early = _arrival(views.fact, state, plan.point, EARLY_SIDE)
    opens, closes = opens_at(event, plan.runner, plan.point), point.access.closes if point.access else None
    if opens is not None and be_there < opens:
        be_there = opens
    whole = way.whole if way.confirmed else None
    late = _late_side(views.fact, state, plan.point)
    bounds = [
        b for b in (closes, _last_cut_off(race, point, state), race_ends(event, state)) if b is not None
    ]
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
        kit=brought(plan),
        take_back=taken_back(plan),
        food=plan.food,
        if_missed=plan.if_missed,
        no_signal=_no_signal(course, point),
        drive_confirmed=way.confirmed,
        drive_from=way.from_place,
        crew=party.people,
        p_in_time=sure,
        lost=lost,
        car=party.car,
    )


def brought(plan: MeetingPlan) -> tuple[str, ...]:
    """What crew bring to a meeting."""
    return tuple(k.name for k in plan.kit if not k.take_back)


def taken_back(plan: MeetingPlan) -> tuple[str, ...]:
    """What crew take away from it."""
    return tuple(k.name for k in plan.kit if k.take_back)


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


def race_ends(event: Event, state: RunnerState) -> datetime | None:
    """When the race's limit is over for her: later by as much as her start was put off; None without a limit."""
    if event.limit is None:
        return None
    return event.starts + event.limit + max(state.start - event.runner(state.runner).start, timedelta(0))


def _joined(
    known: _Known, views: _Views, plans: Sequence[MeetingPlan], values: Sequence[MeetingValues]
) -> list[MeetingValues]:
    """Tie each meeting to the next one of the same people: odds of both, how long they may wait. One item a car."""
    out = list(values)
    for i, plan in enumerate(plans):
        mine = set(plan.crew) & set(out[i].crew)
        later = (k for k in range(i + 1, len(plans)) if plans[k].id != plan.id)
        j = next((k for k in later if mine & set(plans[k].crew) & set(out[k].crew)), None)
        if j is None:
            continue
        way = known.party(plans[j], out[j].crew).way
        whole = way.through if way.stands in (plan.point, None) else None
        tie = None if whole is None else _tie(views.fact, out[i], out[j], whole)
        out[i] = replace(out[i], next_meeting=plans[j].id, p_both=None if tie is None else tie.p_both)
        if tie is None:
            continue
        out[i] = _bounded(out[i], tie)
        if tie.p_both <= BOTH_HOPELESS and not out[j].lost and not out[i].lost:
            out[j] = replace(out[j], lost=LOST_BOTH)
    return out


@dataclass(frozen=True, slots=True)
class _Tie:
    """Two meetings of one crew: the odds of both, and until when waiting at the first, with nothing seen
    of her, still leaves the second safe (None = it bounds nothing), with the odds that she has come by then."""

    p_both: float
    bound: datetime | None
    p_by: float = 1.0


def _tie(view: View, here: MeetingValues, there: MeetingValues, whole: timedelta) -> _Tie | None:
    """From joint paths: margins alone would have a crew leave before she can possibly have come, since a
    late runner is late at both points."""
    points = view.points
    if here.point not in points or there.point not in points:
        return None
    arrive, leave = view.paths()
    a, out, b = (_column(arrive, points, here), _column(leave, points, here), _column(arrive, points, there))
    return _counted(here, a, out, b, whole, there.p_in_time)


def _counted(
    here: MeetingValues, a: Floats, out: Floats, b: Floats, whole: timedelta, sure: float
) -> _Tie | None:
    begin, end = here.be_there.timestamp(), here.wait_until.timestamp()
    found = tie(a, out, b, whole.total_seconds(), sure, begin, end)
    if found is None:
        return None
    return _Tie(found.p_both, None if found.bound_s is None else moment(found.bound_s), found.p_by)


def _bounded(m: MeetingValues, tie: _Tie) -> MeetingValues:
    if tie.bound is None or tie.bound >= m.wait_until:
        return m
    return replace(m, wait_until=max(m.be_there, tie.bound), p_comes=tie.p_by)


def _across(
    known: _Known, plans: Sequence[MeetingPlan], values: Sequence[MeetingValues]
) -> list[MeetingValues]:
    """Tie the meetings of a crew that also meets another runner: whichever comes next, or came before, counts."""
    out = list(values)
    if len({m.runner for m in known.ordered}) < 2:
        return out
    for i, plan in enumerate(plans):
        after = _beside(known, plan, known.ordered, out[i])
        if after is not None and after.runner != plan.runner:
            both = _tie_across(known, plan, after, out[i], out[i].crew)
            out[i] = replace(out[i], next_meeting=after.id, p_both=None if both is None else both.p_both)
            out[i] = out[i] if both is None else _bounded(out[i], both)
        before = _beside(known, plan, known.ordered[::-1], out[i])
        if before is not None and before.runner != plan.runner and not out[i].lost:
            both = _tie_across(known, before, plan, out[i], out[i].crew)
            if both is not None and both.p_both <= BOTH_HOPELESS:
                out[i] = replace(out[i], lost=LOST_BOTH)
    return out


def _beside(
    known: _Known, plan: MeetingPlan, ordered: Sequence[MeetingPlan], mine: MeetingValues
) -> MeetingPlan | None:
    """The next meeting after `plan` in that order that its crew or car, as far as they are in `mine`, go to as well."""
    event = known.event
    place = next((i for i, m in enumerate(ordered) if m.id == plan.id), len(ordered))
    alone = len(known.parties_to(plan)) == 1
    return next(
        (
            m
            for m in ordered[place + 1 :]
            if (shared(event, m, plan) if alone else bool(set(members(event, m)) & set(mine.crew)))
        ),
        None,
    )


def _tie_across(
    known: _Known, first: MeetingPlan, second: MeetingPlan, here: MeetingValues, people: Sequence[str]
) -> _Tie | None:
    """Two runners' races are independent: their joint paths are laid side by side by chance."""
    way = known.party(second, people).way
    if way.through is None or way.stands not in (first.point, None):
        return None
    paths = [_paths(known.situation, m.runner) for m in (first, second)]
    if paths[0] is None or paths[1] is None:
        return None
    one, two = paths[0].at(first.point), paths[1].at(second.point)
    if one is None or two is None:
        return None
    sure = SURER if is_safety(known.event, second) else SURE
    return _counted(here, one[0], one[1], two[0], way.through, sure)


def _paths(situation: Situation, runner: str) -> Paths | None:
    outlook = situation.outlooks.get(runner)
    if outlook is None:
        return None
    return of_view(runner, outlook.at(fact_at(situation.state.runner(runner))))


def _column(
    paths: npt.NDArray[np.float64], points: Sequence[str], m: MeetingValues
) -> npt.NDArray[np.float64]:
    return np.asarray(paths[:, points.index(m.point)], dtype=np.float64)
