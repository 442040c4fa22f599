"""The door: an event, her timetable or forecast, and perhaps the facts, to every movement of cars and people."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass, replace
from datetime import datetime

import numpy as np

from server.event.model import Event, MeetingPlan
from server.facts.state import RaceState, RunnerState
from server.forecast.outlook import View
from server.plan.movements.awake import needed, tired, wheels
from server.plan.movements.joint import Paths, moment, of_timetable, of_view, quantile
from server.plan.movements.names import car_name, place_name
from server.plan.movements.roads import Roads, Spot
from server.plan.movements.rules import broken_rules, opens_at, permit_troubles
from server.plan.movements.times import Clockwork, TimedTrip, timed
from server.plan.movements.trips import Trip, trips_of
from server.plan.movements.values import (
    APART,
    Broken,
    CarRow,
    CrewPlan,
    MeetingMovement,
    MovementTrouble,
    Offer,
    OfferKind,
    PersonRow,
    Ride,
    Role,
    TroubleKind,
    part_of,
)
from server.plan.notes import Saying, note, saying
from server.plan.timetable import Timetable

CANNOT = frozenset(
    {
        TroubleKind.STRANDED,
        TroubleKind.ON_FOOT,
        TroubleKind.NO_DRIVER,
        TroubleKind.NO_SEAT,
        TroubleKind.RULE,
        TroubleKind.PERMIT,
    }
)
"""Troubles with which a meeting is not promised, whatever the odds."""


SEEN = 0.9
"""Crew who see her less surely than this, because they go on, are not promised (own choice)."""


HOPELESS = 0.5
"""A meeting with less odds than this is offered to be left out (own choice)."""


@dataclass(frozen=True, slots=True, eq=False)
class Moves:
    """Everything computed on the way to a `CrewPlan`: for the offers, which change the plan and look again."""

    event: Event
    roads: Roads
    paths: Mapping[str, Paths]
    trips: tuple[Trip, ...]
    timed: tuple[TimedTrip, ...]
    structural: tuple[MovementTrouble, ...]
    now: datetime | None
    race: RaceState | None
    over: frozenset[str]


def moves_of(
    event: Event,
    timetables: Mapping[str, Timetable],
    views: Mapping[str, View] | None = None,
    *,
    now: datetime | None = None,
    race: RaceState | None = None,
    spots: Mapping[str, Spot] | None = None,
) -> Moves:
    """The trips of a crew and their times; see `crew_plan` for what goes in."""
    paths = _paths(event, timetables, views or {}, race)
    roads = Roads(event, race.drives_confirmed if race is not None else (), spots or {})
    return walked(event, roads, paths, timetables, now, race)


def walked(
    event: Event,
    roads: Roads,
    paths: Mapping[str, Paths],
    timetables: Mapping[str, Timetable],
    now: datetime | None,
    race: RaceState | None,
) -> Moves:
    """The same from paths already made."""
    ordered, over = _ordered(event, paths, timetables)
    trips, structural = trips_of(event, roads, ordered, over, _seen_at(race, ordered, over))
    times = timed(Clockwork(event, roads, paths, race, now), trips)
    return Moves(event, roads, paths, trips, times, structural, now, race, over)


def plan_of(moves: Moves) -> CrewPlan:
    """Rows, troubles and broken rules of the moves; the offers but for other cars."""
    closed = moves.race.access_closed if moves.race is not None else ()
    arrives = {
        t.trip.plan.id: (moment(quantile(t.arrive_s, 0.5)), moment(quantile(t.out_s, 0.9)))
        for t in moves.timed
    }
    broken = broken_rules(moves.event, moves.trips, arrives)
    troubles = [*moves.structural, *_rule_troubles(broken), *permit_troubles(moves.event, moves.trips)]
    for i, t in enumerate(moves.timed):
        troubles += _troubles(moves.event, t, moves.timed[:i], closed)
        troubles += _leaves_early(moves.event, t, moves.timed[i + 1 :])
    weary, rest, notes = tired(moves.event, wheels(moves.event, moves.timed))
    troubles += weary
    barred = {x.meeting for x in troubles if x.kind in CANNOT}
    visits = tuple(_visit(t, barred) for t in moves.timed)
    offers = (*_confirm(moves.event, moves.timed), *_hopeless(moves.event, moves.timed), *rest)
    people = tuple(row for v, t in zip(visits, moves.timed, strict=True) for row in _person_rows(v, t))
    cars = tuple(row for v in visits for row in _car_rows(v))
    apart = tuple(dict.fromkeys(_apart(moves.event, moves.trips)))
    return CrewPlan(visits, people, cars, broken, tuple(troubles), offers, (*apart, *notes))


def _apart(event: Event, trips: Sequence[Trip]) -> Iterator[Saying]:
    """Whose races the odds take as having nothing in common, where one car goes from the one to the other."""
    runner = {t.plan.id: t.plan.runner for t in trips}
    for trip in trips:
        for leg in trip.legs:
            before = runner.get(leg.after or "", trip.plan.runner)
            if before != trip.plan.runner:
                both = sorted((before, trip.plan.runner))
                names = [event.runner(r).name for r in both]
                yield saying(APART, runner=names[0], other=names[1])


def _paths(
    event: Event, timetables: Mapping[str, Timetable], views: Mapping[str, View], race: RaceState | None
) -> dict[str, Paths]:
    found: dict[str, Paths] = {}
    for runner in (event.runner(r) for r in dict.fromkeys(m.runner for m in event.meetings)):
        state = race.runner(runner.id) if race is not None else None
        if state is not None and state.going.race_over:
            continue
        if runner.id in views:
            found[runner.id] = of_view(runner.id, views[runner.id], _here(state))
        elif runner.id in timetables:
            found[runner.id] = of_timetable(timetables[runner.id])
    return found


def _here(state: RunnerState | None) -> tuple[str, datetime] | None:
    """The point she is at now, and since when."""
    last = state.times[-1] if state is not None and state.times else None
    if last is None or last.arrived is None or last.left is not None or last.through:
        return None
    return last.point, last.arrived.at


def _ordered(
    event: Event, paths: Mapping[str, Paths], timetables: Mapping[str, Timetable]
) -> tuple[list[MeetingPlan], frozenset[str]]:
    """Meetings in order of time, those behind them first; two at one moment in the order of the file."""
    over: list[tuple[datetime, int, MeetingPlan]] = []
    ahead: list[tuple[float, int, MeetingPlan]] = []
    for i, plan in enumerate(event.meetings):
        order = [p.id for p in event.course_of(plan.runner).points]
        if plan.point not in order:
            continue
        found = paths[plan.runner].at(plan.point) if plan.runner in paths else None
        if found is not None:
            ahead.append((float(np.median(found[0])), i, plan))
        else:
            over.append((_planned(event, plan, timetables), order.index(plan.point), plan))
    over.sort(key=lambda x: x[:2])
    ahead.sort(key=lambda x: x[:2])
    return [p for *_, p in (*over, *ahead)], frozenset(p.id for *_, p in over)


def _planned(event: Event, plan: MeetingPlan, timetables: Mapping[str, Timetable]) -> datetime:
    table = timetables.get(plan.runner)
    start = event.runner(plan.runner).start
    rows = [] if table is None else [r for r in table.rows if r.point == plan.point]
    return start + (max(rows[0].arrive.values()) if rows else start - start)


def _seen_at(race: RaceState | None, ordered: Sequence[MeetingPlan], over: frozenset[str]) -> dict[str, str]:
    """Where people said they were, unless a meeting behind them is later than that."""
    found: dict[str, str] = {}
    if race is None:
        return found
    for person in dict.fromkeys(who for _, who, _ in race.crew_there):
        point, stamp = max(((p, s) for p, who, s in race.crew_there if who == person), key=lambda x: x[1].at)
        left = any(p == point and who == person and s.at > stamp.at for p, who, s in race.crew_left)
        mine = [m.point for m in ordered if m.id in over and person in m.crew]
        if not left and (point not in mine or mine[-1] == point):
            found[person] = point
    return found


def _rule_troubles(broken: Sequence[Broken]) -> list[MovementTrouble]:
    return [MovementTrouble(TroubleKind.RULE, b.meeting, b.said) for b in broken if b.meeting is not None]


def _troubles(
    event: Event, t: TimedTrip, before: Sequence[TimedTrip], closed: Sequence[str]
) -> Iterator[MovementTrouble]:
    plan = t.trip.plan
    name = event.course_of(plan.runner).point(plan.point).name
    if plan.point in closed:
        yield MovementTrouble(TroubleKind.RULE, plan.id, saying("move-closed", place=name))
    for leg in t.trip.legs:
        journey = t.journeys[leg.key]
        if journey.drive is None:
            origin = place_name(event, leg.from_place)
            said = saying("move-no-way", car=car_name(event, leg.key), origin=origin, place=name)
            yield MovementTrouble(TroubleKind.NO_WAY, plan.id, said, car=leg.car)
        for way in journey.ways:
            if way.drive is not None and not way.confirmed:
                said = saying(
                    "move-estimated",
                    drive_length_s=way.drive.total_seconds(),
                    origin=place_name(event, way.from_place),
                    place=place_name(event, way.to_place),
                )
                yield MovementTrouble(TroubleKind.ESTIMATED, plan.id, said, car=leg.car)
    if t.p_first >= t.sure:
        return
    sure = round(100 * t.sure)
    opens = opens_at(event, plan.runner, plan.point)
    if opens is not None and float(np.mean(t.arrive_s >= opens.timestamp())) < t.sure:
        said = saying("move-opens", place=name, opens_at=opens.timestamp(), p_odds=t.p_first)
        yield MovementTrouble(TroubleKind.SHORT, plan.id, said, odds=t.p_first)
        return
    other = next((b for leg in t.trip.legs for b in before if b.trip.plan.id == leg.after), None)
    if other is None:
        said = saying("move-short", place=name, p_odds=t.p_first, sure=sure)
        yield MovementTrouble(TroubleKind.SHORT, plan.id, said, odds=t.p_first)
        return
    first = event.course_of(other.trip.plan.runner).point(other.trip.plan.point).name
    both = float(np.mean(t.first & other.first))
    said = saying("move-clash", first=first, place=name, p_odds=both, sure=sure)
    yield MovementTrouble(TroubleKind.CLASH, plan.id, said, other=other.trip.plan.id, odds=both)


def _leaves_early(event: Event, t: TimedTrip, later: Sequence[TimedTrip]) -> Iterator[MovementTrouble]:
    """Crew who are there in time, but go on to their next meeting before she is likely to have come."""
    if t.p_meets >= SEEN or t.p_first < t.sure:
        return
    after = next((x for x in later for leg in x.trip.legs if leg.after == t.trip.plan.id), None)
    if after is None:
        return
    place = event.course_of(t.trip.plan.runner).point(t.trip.plan.point).name
    following = event.course_of(after.trip.plan.runner).point(after.trip.plan.point).name
    said = saying(
        "move-leaves-early", place=place, following=following, wait_at=t.wait_until_s, p_odds=t.p_meets
    )
    yield MovementTrouble(TroubleKind.CLASH, t.trip.plan.id, said, other=after.trip.plan.id, odds=t.p_meets)


def _confirm(event: Event, timed: Sequence[TimedTrip]) -> Iterator[Offer]:
    asked: set[tuple[str, str]] = set()
    for t in timed:
        for journey in t.journeys.values():
            for way in journey.ways:
                key = (way.from_place, way.to_place)
                if way.drive is not None and not way.confirmed and key not in asked:
                    asked.add(key)
                    origin, place = (place_name(event, p) for p in key)
                    said = note("move-confirm", *map(part_of, way.addends), origin=origin, place=place)
                    yield Offer(OfferKind.CONFIRM, t.trip.plan.id, said)


def _hopeless(event: Event, timed: Sequence[TimedTrip]) -> Iterator[Offer]:
    """Meetings that are rather missed than made after the one before, and on which nothing hangs."""
    for t in timed:
        plan, after = t.trip.plan, any(leg.after for leg in t.trip.legs)
        if after and t.p_first < HOPELESS and not needed(event, t):
            yield Offer(OfferKind.SKIP, plan.id, saying("move-skip"), car=plan.car)


def _visit(t: TimedTrip, barred: set[str]) -> MeetingMovement:
    plan = t.trip.plan
    rides = tuple(
        Ride(
            leg.car,
            leg.driver,
            leg.riders,
            leg.from_place,
            t.journeys[leg.key],
            leg.after,
            None if (s := t.leave_s[leg.key]) is None else moment(s),
            moment(quantile(t.there_by[leg.key], 0.5)),
            moment(quantile(t.gone_by[leg.key], 0.5)),
            t.p_car(leg.key),
            leg.sets_out.from_place,
            t.last[leg.key],
            t.to_via.get(leg.key),
        )
        for leg in t.trip.legs
    )
    promised = (
        t.confirmed
        and t.p_first >= t.sure
        and t.p_meets >= SEEN
        and plan.id not in barred
        and bool(t.trip.goes)
    )
    return MeetingMovement(
        meeting=plan.id,
        runner=plan.runner,
        point=plan.point,
        early=moment(quantile(t.arrive_s, 0.1)),
        likely=moment(quantile(t.arrive_s, 0.5)),
        late=moment(quantile(t.arrive_s, 0.9)),
        be_there=moment(t.be_there_s),
        wait_until=moment(t.wait_until_s),
        there=moment(quantile(t.there_s, 0.5)),
        gone=moment(quantile(t.gone_s, 0.5)),
        rides=rides,
        crew=t.trip.goes,
        sure=t.sure,
        p_first=t.p_first,
        p_meets=t.p_meets,
        promised=promised,
        if_missed=plan.if_missed,
    )


def _person_rows(v: MeetingMovement, t: TimedTrip) -> Iterator[PersonRow]:
    for ride in v.rides:
        for who in ride.riders:
            yield PersonRow(
                person=who,
                meeting=v.meeting,
                runner=v.runner,
                point=v.point,
                role=t.trip.roles.get(who, Role.RIDES),
                car=ride.car,
                from_place=ride.from_place,
                leave_by=ride.leave_by,
                be_there=v.be_there,
                wait_until=v.wait_until,
                there=ride.there,
                gone=ride.gone,
                promised=v.promised,
                if_missed=v.if_missed,
            )


def _car_rows(v: MeetingMovement) -> Iterator[CarRow]:
    for r in v.rides:
        if r.car is not None:
            yield CarRow(
                r.car, v.meeting, v.point, r.driver, r.riders, r.from_place, r.journey, r.leave_by, v.be_there, r.there,
                r.gone,
            )  # fmt: skip


def with_offers(plan: CrewPlan, more: Sequence[Offer]) -> CrewPlan:
    """The plan with other offers put first."""
    return replace(plan, offers=(*more, *plan.offers))
