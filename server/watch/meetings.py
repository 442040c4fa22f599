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

from server.event.model import CourseDef, Event, MeetingPlan, Point, Signal
from server.facts.cut_offs import cut_offs_at
from server.facts.state import RaceState, RunnerState
from server.forecast.outlook import View, Window
from server.plan.movements.joint import Floats, Paths, moment, of_view, tie
from server.plan.movements.rules import opens_at
from server.plan.movements.trips import is_safety
from server.watch.crew_routes import (
    CrewRoute,
    Party,
    in_time,
    members,
    parties_of,
    plans_in_order,
    roads_of,
    shared,
    way_to,
)
from server.watch.notice import MeetingValues, together
from server.watch.runner_context import ceil_to, fact_at, floor_to
from server.watch.situation import Situation

__all__ = ["CrewRoute", "brought", "meetings", "members", "plans_in_order", "taken_back", "way_to"]

SURE = 0.97
SURER = 0.99
LATE_SIDE = 0.97
"""'Wait until' is the 97% time of her arrival: longer waits rarely see her come."""
LEAST_WAIT = timedelta(minutes=5)
"""Crew wait at least so long from 'be there from' on: a time to be there and to be gone are never the same."""
BOTH_HOPELESS = 0.1
"""Two meetings of one crew with odds under this can't both be made, and are told so."""

LOST_ACCESS = "access closed"
LOST_BOTH = "not both"
LOST_TOO_LATE = "too late"
LOST_GONE = "she has left"
LOST_UNCOVERED = "uncovered"


def meetings(situation: Situation, runner_id: str, now: datetime) -> tuple[MeetingValues, ...]:
    """Every meeting of a runner still to come, in running order; the one she is at now included.

    () when she has no forecast, or her race is over. `lost` says why one can't be made: its access is
    closed or closes first; the same crew has a meeting before it and both can't be had; nobody goes who could.
    """
    outlook = situation.outlooks.get(runner_id)
    state = situation.state.runner(runner_id)
    if outlook is None or state.going.race_over:
        return ()
    views = _Views(outlook.at(fact_at(state)), outlook.at(max(now, fact_at(state))))
    event = situation.event
    known = _known(situation)
    coming = [m for m in plans_in_order(event, runner_id) if _to_come(views, state, m.point)]
    plans = [m for m in coming for _ in known.parties_to(m)]
    values = [_values(known, state, views, m, p) for m in coming for p in known.parties_to(m)]
    done = _across(known, plans, _joined(known, views, plans, values))
    nobody = {u.plan.id for u in situation.uncovered if not u.held}
    done = [replace(m, lost=LOST_UNCOVERED) if m.meeting in nobody and not m.lost else m for m in done]
    return tuple(together([m for m in done if m.meeting == plan.id], members(event, plan)) for plan in coming)


@dataclass(frozen=True, slots=True)
class _Known:
    """What every meeting's times rest on: the situation, all runners' meetings in order of time, who comes to each in
    which car."""

    situation: Situation
    ordered: tuple[MeetingPlan, ...]
    parties: Mapping[str, tuple[Party, ...]]
    index: _Index

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
        return (
            Party(
                members(self.event, plan),
                way_to(self.event, plan, roads_of(self.event, self.race), self.ordered),
            ),
        )

    def party(self, plan: MeetingPlan, people: Sequence[str]) -> Party:
        """The car in which any of those people come to a meeting; its first where none of them does."""
        found = self.parties_to(plan)
        return next((p for p in found if set(p.people) & set(people)), found[0])

    def beside(self, plan: MeetingPlan) -> tuple[tuple[int, ...], int | None]:
        """Where in the order of time those meetings stand to which one of its people or its car goes too, and where it
        stands itself; None where it is not among them."""
        people, place = self.index
        keys = (*members(self.event, plan), *plan.crew, _car(plan))
        found = {i for k in keys if k is not None for i in people.get(k, ())}
        return tuple(sorted(found)), place.get(plan.id)


def _car(plan: MeetingPlan) -> tuple[str] | None:
    return None if plan.car is None else (plan.car,)


_Index = tuple[Mapping[object, Sequence[int]], Mapping[str, int]]


def _index(event: Event, ordered: Sequence[MeetingPlan]) -> _Index:
    """Of each person, and each car, the places in that order of the meetings they go to; the place of each meeting."""
    found: dict[object, list[int]] = {}
    for i, m in enumerate(ordered):
        for key in {*members(event, m), *m.crew, _car(m)} - {None}:
            found.setdefault(key, []).append(i)
    return found, {m.id: i for i, m in reversed(list(enumerate(ordered)))}


def _known(situation: Situation) -> _Known:
    ordered = in_time(situation)
    index = situation.once("index of meetings", lambda: _index(situation.event, ordered))
    return _Known(situation, ordered, parties_of(situation), index)


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
    opens, closes = opens_at(event, plan.runner, plan.point), point.access.closes if point.access else None
    if opens is not None and be_there < opens:
        be_there = opens
    whole = way.whole if way.confirmed else None
    wait_until, lost = _waits(race, point, state, views, be_there, closes, race_ends(event, state))
    if plan.point in race.access_closed:
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


def _waits(
    race: RaceState,
    point: Point,
    state: RunnerState,
    views: _Views,
    be_there: datetime,
    closes: datetime | None,
    ends: datetime | None,
) -> tuple[datetime, str]:
    """How long crew wait for her at a meeting, and why they would do so in vain ('' = they would not).

    Her 97% time; not past the last cut-off or the race's limit, unless she is likely to come only after: then she may be
    let go on, or has to be fetched. Never before she is likely to come, as silence has it too: where the place closes
    before that the meeting is lost.
    """
    likely = ceil_to(max(_arrival(v, state, point.id, 0.5) for v in (views.fact, views.now)))
    limits = [b for b in (_last_cut_off(race, point, state), ends) if b is not None]
    wait = max(
        likely, min([ceil_to(_late_side(views.fact, state, point.id)), *limits]), be_there + LEAST_WAIT
    )
    if closes is None or closes >= wait:
        return wait, ""
    seen = state.at_point(point.id) is not None
    return max(closes, be_there), "" if seen or closes >= max(likely, be_there + LEAST_WAIT) else LOST_ACCESS


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
    """Two meetings of one crew: the odds of both, and until when waiting at the first, with nothing seen of her, still
    leaves the second safe (None = it bounds nothing), but never before she is likely there; with the odds that she has come
    by then."""

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
    if found.bound_s is None:
        return _Tie(found.p_both, None, found.p_by)
    bound = max(moment(found.bound_s), ceil_to(here.window.likely), here.be_there + LEAST_WAIT)
    return _Tie(found.p_both, bound, float(np.mean(a[np.isfinite(a)] <= bound.timestamp())))


def _bounded(m: MeetingValues, tie: _Tie) -> MeetingValues:
    if tie.bound is None or tie.bound >= m.wait_until:
        return m
    return replace(m, wait_until=tie.bound, p_comes=tie.p_by)


def _across(
    known: _Known, plans: Sequence[MeetingPlan], values: Sequence[MeetingValues]
) -> list[MeetingValues]:
    """Tie the meetings of a crew that also meets another runner: whichever comes next, or came before, counts."""
    out = list(values)
    if len(known.event.runners) < 2:
        return out
    for i, plan in enumerate(plans):
        after = _beside(known, plan, out[i], after=True)
        if after is not None and after.runner != plan.runner:
            both = _tie_across(known, plan, after, out[i], out[i].crew)
            out[i] = replace(out[i], next_meeting=after.id, p_both=None if both is None else both.p_both)
            out[i] = out[i] if both is None else _bounded(out[i], both)
        before = _beside(known, plan, out[i], after=False)
        if before is not None and before.runner != plan.runner and not out[i].lost:
            both = _tie_across(known, before, plan, out[i], out[i].crew)
            if both is not None and both.p_both <= BOTH_HOPELESS:
                out[i] = replace(out[i], lost=LOST_BOTH)
    return out


def _beside(known: _Known, plan: MeetingPlan, mine: MeetingValues, *, after: bool) -> MeetingPlan | None:
    """The next meeting after `plan` in time, or the last before it, that its crew or car, as far as they are in `mine`, go
    to as well."""
    event = known.event
    places, place = known.beside(plan)
    if place is None:
        return None
    alone = len(known.parties_to(plan)) == 1
    ahead = (i for i in places if i > place) if after else (i for i in reversed(places) if i < place)
    return next(
        (
            m
            for m in (known.ordered[i] for i in ahead)
            if (shared(event, m, plan) if alone else bool(set(members(event, m)) & set(mine.crew)))
        ),
        None,
    )


def _tie_across(
    known: _Known, first: MeetingPlan, second: MeetingPlan, here: MeetingValues, people: Sequence[str]
) -> _Tie | None:
    """Two runners' races are independent: their joint paths are laid side by side by chance. None where both are met at one
    place: nobody has to go on from the one to the other."""
    if first.point == second.point:
        return None
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
