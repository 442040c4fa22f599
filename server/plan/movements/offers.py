"""What else the crew could do where meetings can't all be made: cars and people shared out anew, looked at again."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import replace
from datetime import datetime

import numpy as np

from server.event.model import Event, MeetingPlan, PartKind
from server.facts.state import RaceState
from server.forecast.outlook import View
from server.plan.movements.assign import (
    Assignment,
    Helper,
    NotFoundError,
    Task,
    ToAssign,
    Vehicle,
    best_assignment,
)
from server.plan.movements.joint import PATHS, Floats, ceil_grid, quantile
from server.plan.movements.names import car_name, person_name
from server.plan.movements.plan import Moves, moves_of, plan_of, walked, with_offers
from server.plan.movements.roads import Spot
from server.plan.movements.times import LATE_SIDE, TimedTrip, journey_of
from server.plan.movements.trips import CarTrip, drivers_of
from server.plan.movements.values import CrewPlan, Offer, OfferKind, TroubleKind
from server.plan.notes import note, saying
from server.plan.timetable import Timetable

SAFETY_WEIGHT = 2.0
"""A meeting on which torch, warm layer, pacer or hand-over hangs is worth two others (own choice)."""
WORTH_SAYING = 0.02
"""A gain in odds under this is not worth changing a plan for (own choice)."""
HELPED = frozenset({TroubleKind.CLASH, TroubleKind.SHORT, TroubleKind.STRANDED, TroubleKind.NO_DRIVER})


def crew_plan(
    event: Event,
    timetables: Mapping[str, Timetable],
    views: Mapping[str, View] | None = None,
    *,
    now: datetime | None = None,
    race: RaceState | None = None,
    spots: Mapping[str, Spot] | None = None,
    other_cars: bool = True,
) -> CrewPlan:
    """Every movement of cars and people, what breaks a rule, what will not work, and what would help.

    timetables, views: by runner id. A runner with a view is planned by its joint paths, else by the timetable; give
    views as they stood at the last fact, so that silence moves nothing. `now` and `race` once the race is on: meetings
    behind the crew are left out, nobody leaves before `now`. `spots`: (lat, lon) by point id, to estimate drives from
    where the event file has none (`course_spots`). `other_cars` False: no search for a better
    assignment, which takes some 0.1 s for three cars and twelve meetings, 0.2 to 2 s for eight; all else takes some
    20 ms. It ends after `SECONDS_MOST`; then a note says that what is offered may not be the best, or that nothing was
    found. But for that, the same arguments give the same plan.
    """
    moves = moves_of(event, timetables, views, now=now, race=race, spots=spots)
    plan = plan_of(moves)
    if not other_cars or not any(t.kind in HELPED for t in plan.troubles):
        return plan
    question = question_of(moves)
    if not question.vehicles or not question.tasks:
        return plan
    try:
        found = best_assignment(question)
    except NotFoundError:
        return replace(plan, notes=(*plan.notes, saying("move-not-searched")))
    notes = plan.notes if found.proven else (*plan.notes, saying("move-searched-in-part"))
    offers = list(_other_cars(moves, plan, timetables, question, found))
    return replace(with_offers(plan, offers), notes=notes)


def question_of(moves: Moves) -> ToAssign:
    """Who could serve what: every car, everybody of the crew, the odds from each meeting to each later one."""
    event = moves.event
    drivers = drivers_of(event)
    crew = [p.person for p in event.parts if p.kind is PartKind.CREW]
    going = [w for t in moves.trips for w in (*t.goes, *(r for leg in t.legs for r in leg.riders))]
    home = {p.person: p.car for p in event.parts if p.car is not None}
    home |= {w: leg.key for t in reversed(moves.trips) for leg in t.legs for w in leg.riders}
    live = moves.now is not None
    helpers = tuple(
        # On the night nobody changes cars at a distance, and who is nowhere known can't be sent; before it they may.
        Helper(w, not drivers or w in drivers, frozenset({home[w]}) if live else None, home.get(w))
        for w in dict.fromkeys((*going, *crew))
        if not live or w in home
    )
    vehicles = tuple(Vehicle(c.id, c.seats) for c in event.cars)
    tasks = tuple(_task(event, t, live) for t in moves.timed)
    return ToAssign(tasks, vehicles, helpers, _odds(moves), event.rules.vehicles_max)


def _task(event: Event, t: TimedTrip, live: bool) -> Task:
    plan = t.trip.plan
    access = event.course_of(plan.runner).point(plan.point).access
    most = [x for x in (access.people_max if access else None, event.rules.crew_people_max) if x is not None]
    packed = frozenset(k.car for k in plan.kit if k.car is not None)
    return Task(
        plan.id,
        plan.runner,
        SAFETY_WEIGHT if t.sure > 0.98 else 1.0,
        frozenset(t.trip.joins),
        packed if packed and live else None,
        min(most, default=None),
    )


def _odds(moves: Moves) -> dict[tuple[str, str | None, str], float]:
    found: dict[tuple[str, str | None, str], float] = {}
    begin = -np.inf if moves.now is None else moves.now.timestamp()
    places = {c.id: c.starts_at for c in moves.event.cars}
    for trip in reversed(moves.trips):
        places |= {leg.car: leg.from_place for leg in trip.legs if leg.car is not None}
    for j, t in enumerate(moves.timed):
        for car, place in places.items():
            p = _edge(moves, t, None, place, np.full(PATHS, begin))
            if p is not None:
                found[car, None, t.trip.plan.id] = p
            for before in moves.timed[:j]:
                p = _edge(moves, t, before.trip.plan, before.trip.plan.point, _free(before))
                if p is not None:
                    found[car, before.trip.plan.id, t.trip.plan.id] = p
    return found


def _free(t: TimedTrip) -> Floats:
    """When crew who were there in time go on: with her, or at her 97% time."""
    wait = ceil_grid(quantile(t.arrive_s, LATE_SIDE))
    return np.maximum(np.where(t.arrive_s <= wait, t.out_s, wait), t.be_there_s)


def _edge(
    moves: Moves, t: TimedTrip, before: MeetingPlan | None, place: str | None, free: Floats
) -> float | None:
    """Odds of being first at `t`, coming from `place`; None where no way is known. 0 is no way worth having."""
    plan = t.trip.plan
    if place is None:
        return None
    stays = moves.roads.same(place, plan.point)
    leg = CarTrip("", None, (), None, place, None, None if before is None else before.id, stays)
    at = datetime.fromtimestamp(float(np.median(t.arrive_s)), tz=moves.event.starts.tzinfo)
    whole = journey_of(moves.event, moves.roads, plan, leg, at).whole
    if whole is None:
        return None
    there = t.be_there_s if stays else np.maximum(free + whole.total_seconds(), t.be_there_s)
    access = moves.event.course_of(plan.runner).point(plan.point).access
    closes = np.inf if access is None or access.closes is None else access.closes.timestamp()
    odds = float(np.mean((there <= t.arrive_s) & (t.arrive_s <= closes)))
    return odds if odds > 0.0 else None


def reassigned(event: Event, moves: Moves, found: Assignment) -> Event:
    """The event with its meetings to come as the assignment has them; those that nobody serves are left out."""
    inside: dict[str, list[str]] = {}
    for who, own in found.people:
        inside.setdefault(own, []).append(who)
    joins = {t.trip.plan.id: t.trip.joins for t in moves.timed}
    meetings: list[MeetingPlan] = []
    for m in event.meetings:
        car = found.car_to(m.id)
        if m.id not in joins:
            meetings.append(m)
        elif car is not None:
            crew = tuple(w for w in inside.get(car, ()) if w not in joins[m.id])
            kept = tuple(w for w in m.crew if w in crew)
            new = kept if car == m.car and kept else crew
            kit = tuple(replace(k, car=car) if k.car is not None else k for k in m.kit)
            meetings.append(
                replace(m, car=car, crew=new, kit=kit, from_place=m.from_place if car == m.car else None)
            )
    return replace(event, meetings=tuple(meetings))


def _other_cars(
    moves: Moves, plan: CrewPlan, timetables: Mapping[str, Timetable], question: ToAssign, found: Assignment
) -> Iterator[Offer]:
    """Offers of an assignment, if on the joint paths the whole gains by it and no rule is broken."""
    event = reassigned(moves.event, moves, found)
    roads = replace(moves.roads, event=event)
    new = plan_of(walked(event, roads, moves.paths, timetables, moves.now, moves.race))
    weight = {t.id: t.weight for t in question.tasks}
    # A meeting with trouble that no odds cure (stranded, no driver) counts as not made.
    if _whole(new, weight) < _whole(plan, weight) + WORTH_SAYING or len(new.broken) > len(plan.broken):
        return
    odds = {v.meeting: v for v in new.visits}
    for m in (m for m in moves.event.meetings if m.id in weight):
        goes = found.car_to(m.id)
        if goes is None:
            yield Offer(OfferKind.SKIP, m.id, saying("move-skip-others"), car=m.car)
        elif m.id in odds and goes not in {r.car for r in plan.visit(m.id).rides}:
            visit = odds[m.id]
            driver = next((r.driver for r in visit.rides if r.car == goes), None)
            names = [saying("move-name", name=person_name(event, w)) for w in visit.crew]
            said = note("move-other-car", *names, car=car_name(event, goes), p_odds=visit.p_first)
            yield Offer(OfferKind.OTHER_CAR, m.id, said, person=driver, car=goes, odds=visit.p_first)


def _whole(plan: CrewPlan, weight: Mapping[str, float]) -> float:
    barred = {t.meeting for t in plan.troubles if t.kind in (TroubleKind.STRANDED, TroubleKind.NO_DRIVER)}
    seen = {v.meeting: min(v.p_first, v.p_meets) for v in plan.visits}
    return sum(weight[v.meeting] * (0.0 if v.meeting in barred else seen[v.meeting]) for v in plan.visits)
