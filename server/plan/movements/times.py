"""The trips put into time: on every joint path when the crew are free, there and gone.

A crew stay at a meeting until she has left, or until 'wait until' if she has not come; then they walk out, drive, walk
in and unload. All of it happens on each path at once, so that a late runner is late everywhere.
"""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass, field
from datetime import datetime, timedelta
from itertools import pairwise

import numpy as np

from server.event.model import Edge, Event, MeetingPlan, Point, ReporterKind
from server.facts.state import RaceState
from server.plan.movements.joint import (
    GRID_S,
    PATHS,
    Floats,
    Paths,
    ceil_grid,
    floor_grid,
    quantile,
    tie,
)
from server.plan.movements.roads import Roads
from server.plan.movements.rules import opens_at
from server.plan.movements.trips import CarTrip, Trip, is_safety
from server.plan.movements.values import Addend, CarWay, Journey

SURE, SURER = 0.97, 0.99
LATE_SIDE = 0.97
"""'Wait until' is the 97% time of her arrival: longer waits rarely see her come."""
NEVER = -np.inf
TELLS = frozenset({ReporterKind.TIMING_MAT, ReporterKind.VOLUNTEER})
"""Crew who come too late hear so where somebody of the race reports; elsewhere they wait in vain."""


@dataclass(frozen=True, slots=True, eq=False)
class TimedTrip:
    """One trip in time. Arrays (PATHS,) in POSIX seconds: she in and out, the crew there and gone.

    `there_by`, `gone_by` by leg key: the same of one car, which waits for no other. `journeys` by leg key: the whole way
    from where the car stands; `last` what of it a leave-by counts; `to_via` what comes before that, where they go by way
    of a place. `leave_s` by leg key: the leave-by, None without a confirmed drive. `first`, `met` (PATHS,) whether the
    crew are there before she is, and before she has left.
    """

    trip: Trip
    arrive_s: Floats
    out_s: Floats
    there_s: Floats
    gone_s: Floats
    journeys: Mapping[str, Journey]
    last: Mapping[str, Journey]
    to_via: Mapping[str, Journey]
    leave_s: Mapping[str, float | None]
    be_there_s: float
    wait_until_s: float
    sure: float
    first: np.ndarray[tuple[int], np.dtype[np.bool_]]
    met: np.ndarray[tuple[int], np.dtype[np.bool_]]
    there_by: Mapping[str, Floats]
    gone_by: Mapping[str, Floats]

    def p_car(self, key: str) -> float:
        """Odds that one car is there before she is."""
        return float(np.mean(self.there_by[key] <= self.arrive_s))

    @property
    def p_first(self) -> float:
        """Odds of being there before she is."""
        return float(np.mean(self.first))

    @property
    def p_meets(self) -> float:
        """Odds of seeing her there."""
        return float(np.mean(self.met))

    @property
    def confirmed(self) -> bool:
        """Whether people stand by every drive."""
        return bool(self.journeys) and all(j.confirmed for j in self.journeys.values())


@dataclass(slots=True)
class Clockwork:
    """What the walk through the trips needs and keeps: since when each car and person is free, and there."""

    event: Event
    roads: Roads
    paths: Mapping[str, Paths]
    race: RaceState | None = None
    now: datetime | None = None
    free_s: dict[str, Floats] = field(default_factory=dict)
    there_s: dict[str, Floats] = field(default_factory=dict)

    def free(self, names: Sequence[str]) -> Floats:
        """When all of them are free, (PATHS,): from the beginning, or from now on."""
        begin = NEVER if self.now is None else self.now.timestamp()
        out = np.full(PATHS, begin)
        for name in names:
            if name in self.free_s:
                out = np.maximum(out, self.free_s[name])
        return out


def timed(clock: Clockwork, trips: Sequence[Trip]) -> tuple[TimedTrip, ...]:
    """Every trip in time, in the order given; those whose runner has no paths there are left out."""
    out: list[TimedTrip] = []
    for i, trip in enumerate(trips):
        found = clock.paths[trip.plan.runner].at(trip.plan.point) if trip.plan.runner in clock.paths else None
        if found is not None:
            out.append(_one(clock, trip, trips[i + 1 :], found[0], found[1]))
    return tuple(out)


def sure_of(event: Event, plan: MeetingPlan) -> float:
    """The probability a meeting is promised with."""
    return SURER if is_safety(event, plan) else SURE


def journey_of(event: Event, roads: Roads, plan: MeetingPlan, leg: CarTrip, at: datetime | None) -> Journey:
    """A leg with its ways and what is on foot; for a car that is there from a meeting already nothing but a pacer's
    signing in. What notices, sheets and plan count a leave-by from."""
    sign_in = _sign_in(event, plan)
    if leg.stays and leg.after is not None:
        return Journey((), sign_in)
    point = event.course_of(plan.runner).point(plan.point)
    access = point.access
    foot = [Addend("walk-out", _walk_out(event, leg))]
    if access is not None:
        foot += [Addend("walk-in", access.walk_in), Addend("unloading", access.unloading)]
    foot += sign_in
    on_foot = tuple(a for a in foot if a.time > timedelta(0))
    if leg.from_place is None:
        return Journey((), on_foot, known=False)
    stops = [leg.from_place, *([leg.via] if leg.via is not None else []), plan.point]
    ways = (roads.way(a, b, at) for a, b in pairwise(stops))
    kept: tuple[CarWay, ...] = tuple(w for w in ways if w.drive != timedelta(0))
    return Journey(kept, on_foot)


def way_before(event: Event, roads: Roads, leg: CarTrip, at: datetime | None) -> Journey | None:
    """The part of a leg to the place that they go by way of; None without one."""
    if leg.via is None or leg.from_place is None:
        return None
    out = _walk_out(event, leg)
    foot = (Addend("walk-out", out),) if out > timedelta(0) else ()
    return Journey((roads.way(leg.from_place, leg.via, at),), foot)


def _sign_in(event: Event, plan: MeetingPlan) -> tuple[Addend, ...]:
    rule = event.rules.pacer_sign_in
    return (Addend("pacer signs in", rule),) if plan.pacer_joins is not None and rule > timedelta(0) else ()


def _walk_out(event: Event, leg: CarTrip) -> timedelta:
    """Back to the car from the meeting before, where the car stands there."""
    before = next((m for m in event.meetings if m.id == leg.after), None)
    if before is None or before.point != leg.from_place:
        return timedelta(0)
    access = event.course_of(before.runner).point(before.point).access
    return timedelta(0) if access is None else access.walk_in


def _one(clock: Clockwork, trip: Trip, later: Sequence[Trip], a: Floats, out: Floats) -> TimedTrip:
    event, plan = clock.event, trip.plan
    sure = sure_of(event, plan)
    at = datetime.fromtimestamp(float(np.median(a)), tz=event.starts.tzinfo)
    journeys = {leg.key: journey_of(event, clock.roads, plan, leg, at) for leg in trip.legs}
    opens = opens_at(event, plan.runner, plan.point)
    be_there = floor_grid(quantile(a, 1.0 - sure))
    if opens is not None:
        be_there = max(be_there, opens.timestamp())
    cars = {key: np.maximum(came, be_there) for key, came in _there(clock, trip, journeys).items()}
    there = np.max([np.full(PATHS, be_there), *cars.values()], axis=0)
    closes = _closes(event, plan)
    wait_until = _wait_until(clock, trip, later, a, out, be_there)
    first = np.asarray((there <= a) & (a <= closes))
    met = np.asarray((there <= out) & (a <= closes) & (a <= np.maximum(wait_until, there)))
    left = {key: _gone(event, plan, a, out, came, wait_until, closes) for key, came in cars.items()}
    gone = _gone(event, plan, a, out, there, wait_until, closes)
    last = {leg.key: journey_of(event, clock.roads, plan, leg.sets_out, at) for leg in trip.legs}
    before = {leg.key: way_before(event, clock.roads, leg, at) for leg in trip.legs}
    to_via = {key: way for key, way in before.items() if way is not None}
    leave = {key: leave_by_s(be_there, journey) for key, journey in last.items()}
    _keep(clock, trip, cars, left, gone)
    return TimedTrip(
        trip, a, out, there, gone, journeys, last, to_via, leave, be_there, wait_until, sure, first, met, cars, left
    )  # fmt: skip


def _there(clock: Clockwork, trip: Trip, journeys: Mapping[str, Journey]) -> dict[str, Floats]:
    """The earliest at which each car is there, by leg key; an unknown drive is taken as none, and never promised on."""
    found: dict[str, Floats] = {}
    for leg in trip.legs:
        whole = journeys[leg.key].whole
        seconds = 0.0 if whole is None else whole.total_seconds()
        if leg.stays:
            came = clock.there_s.get(leg.key, np.full(PATHS, NEVER)) + seconds
            for who in leg.riders if leg.key in clock.there_s else ():
                # Who has come off the course since, or in another car, is there since then.
                since = clock.there_s.get(who, clock.free_s.get(who))
                if who in trip.goes and since is not None:
                    came = np.maximum(came, since + seconds)
        else:
            came = clock.free([leg.key, *leg.riders]) + seconds
        found[leg.key] = np.asarray(came)
    return found


def _closes(event: Event, plan: MeetingPlan) -> float:
    access = event.course_of(plan.runner).point(plan.point).access
    return np.inf if access is None or access.closes is None else access.closes.timestamp()


def _wait_until(
    clock: Clockwork, trip: Trip, later: Sequence[Trip], a: Floats, out: Floats, be_there: float
) -> float:
    """Her 97% time, not past cut-off and the race's limit, nor past what makes this car's next meeting unsafe; but never
    before she is likely to come, and not past closing (a place that closes before that breaks a rule)."""
    event, plan = clock.event, trip.plan
    bounds = [ceil_grid(quantile(a, LATE_SIDE))]
    bounds += [t for t in (_last_cut_off(clock, plan), _race_ends(clock, plan)) if t is not None]
    least, closes = max(ceil_grid(quantile(a, 0.5)), be_there + GRID_S), _closes(event, plan)
    wait = max(be_there, min(closes, max(least, min(bounds))))
    for after in later:
        for leg in after.legs:
            found = (
                clock.paths[after.plan.runner].at(after.plan.point)
                if after.plan.runner in clock.paths
                else None
            )
            if leg.after != plan.id or leg.stays or found is None:
                continue
            journey = journey_of(event, clock.roads, after.plan, leg, None)
            whole = journey.whole if journey.confirmed else None
            if whole is None:
                continue
            bound = tie(a, out, found[0], whole.total_seconds(), sure_of(event, after.plan), be_there, wait)
            if bound is not None and bound.bound_s is not None:
                wait = max(be_there, min(wait, max(least, bound.bound_s)))
    return wait


def _last_cut_off(clock: Clockwork, plan: MeetingPlan) -> float | None:
    runner = clock.event.runner(plan.runner)
    point = clock.event.course_of(plan.runner).point(plan.point)
    start = runner.start if clock.race is None else clock.race.runner(runner.id).start
    times = {c.edge: c.at(start) for c in point.cut_offs}
    for where, edge, when in clock.race.cut_offs_moved if clock.race is not None else ():
        if where == point.id:
            times[Edge(edge)] = when
    return max((t.timestamp() for t in times.values()), default=None)


def _race_ends(clock: Clockwork, plan: MeetingPlan) -> float | None:
    """The race's limit, later by as much as her start was put off."""
    event, runner = clock.event, clock.event.runner(plan.runner)
    if event.limit is None:
        return None
    start = runner.start if clock.race is None else clock.race.runner(runner.id).start
    return (event.starts + event.limit + max(start - runner.start, timedelta(0))).timestamp()


def _gone(
    event: Event, plan: MeetingPlan, a: Floats, out: Floats, there: Floats, wait: float, closes: float
) -> Floats:
    """When the crew leave: with her, or when waiting is over; nobody stays past closing."""
    told = _somebody_tells(event.course_of(plan.runner).point(plan.point))
    missed = there if told else np.maximum(there, wait)
    gone = np.where(out < there, missed, np.where(a <= wait, out, wait))
    return np.maximum(np.minimum(gone, closes), there)


def _somebody_tells(point: Point) -> bool:
    return any(r.by in TELLS for r in point.reports)


def leave_by_s(be_there_s: float, journey: Journey) -> float | None:
    """When to set out on a journey so as to be there from 'be there from'; None without a confirmed drive."""
    whole = journey.whole if journey.confirmed else None
    return None if whole is None else be_there_s - whole.total_seconds()


def _keep(
    clock: Clockwork, trip: Trip, cars: Mapping[str, Floats], left: Mapping[str, Floats], gone: Floats
) -> None:
    """Cars and people are free when they go, whatever keeps another car; who goes on with her on foot is not, until the
    meeting they leave at."""
    for leg in trip.legs:
        there, off = cars[leg.key], left[leg.key]
        if not leg.stays or leg.key not in clock.there_s:
            clock.there_s[leg.key] = there
        was = clock.free_s.get(leg.key) if leg.stays else None
        clock.free_s[leg.key] = off if was is None else np.maximum(was, off)
        for who in leg.riders:
            if not leg.stays or who not in clock.there_s:
                clock.there_s[who] = there
            clock.free_s[who] = clock.free_s[leg.key]
    for who in trip.joins:
        clock.there_s.pop(who, None)
    for who in trip.leaves:
        # On paths on which a pacer came too late to set off with her, they are free no earlier than there.
        clock.free_s[who] = np.maximum(gone, clock.free_s.get(who, gone))
        clock.there_s.pop(who, None)
