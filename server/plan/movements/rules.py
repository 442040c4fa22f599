"""The rules of the race held against a crew's movements: a plan that breaks one is refused, and the rule is named.

What an event file can break by itself is refused when it is read; here are those that need times or cars as they go.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from datetime import datetime

from server.event.model import CrewAccess, Event, Point
from server.plan.movements.names import car_name
from server.plan.movements.trips import CarTrip, Trip
from server.plan.movements.values import Broken, MovementTrouble, TroubleKind
from server.plan.notes import Saying, note, saying

Side = tuple[datetime, datetime]
"""The likely time of an arrival and the 90% time of leaving."""


def broken_rules(event: Event, trips: Sequence[Trip], arrives: Mapping[str, Side]) -> tuple[Broken, ...]:
    """Every rule that the trips break. `arrives`: by meeting, from when to when she may be there, where it is to come."""
    found = [b for t in trips for b in _at_meeting(event, t, arrives.get(t.plan.id))]
    return (*found, *_vehicles(event, trips), *_pacers(event, trips))


def opens_at(event: Event, runner: str, point: str) -> datetime | None:
    """The first moment at which crew may be at a point: its own hours and the race's 'no crew before'."""
    access = event.course_of(runner).point(point).access
    times = [t for t in (event.rules.crew_not_before, access.opens if access else None) if t is not None]
    return max(times, default=None)


def _at_meeting(event: Event, trip: Trip, arrives: Side | None) -> Iterator[Broken]:
    plan, rules = trip.plan, event.rules
    point = event.course_of(plan.runner).point(plan.point)
    access = point.access
    if access is None:
        if rules.outside_help_only_at_crew_points:
            said = saying("move-no-access", place=point.name)
            yield Broken(saying("rule-help"), plan.id, said, saying("remedy-crew-point"))
        return
    here = access.people_max
    if here is not None and len(plan.crew) > here:
        rule = saying("rule-people-at", count=here, place=point.name)
        yield Broken(rule, plan.id, _crowd(point, trip), saying("remedy-fewer-people"))
    most = rules.crew_people_max
    if most is not None and len(plan.crew) > most:
        rule = saying("rule-people", count=most)
        yield Broken(rule, plan.id, _crowd(point, trip), saying("remedy-fewer-people"))
    yield from _hours(event, trip, point, access, arrives)
    yield from _cars_at(event, trip, point, access)
    yield from _permit_elsewhere(event, trip, point, access)


def _crowd(point: Point, trip: Trip) -> Saying:
    return saying("move-crowd", count=len(trip.plan.crew), place=point.name)


def _hours(
    event: Event, trip: Trip, point: Point, access: CrewAccess, arrives: Side | None
) -> Iterator[Broken]:
    """Crew who may come only when she is gone, or no longer when she comes."""
    plan, first = trip.plan, event.rules.crew_not_before
    opens = opens_at(event, plan.runner, plan.point)
    if access.closes is not None and opens is not None and access.closes <= opens:
        said = saying("move-closes-first", place=point.name)
        yield Broken(saying("rule-not-before"), plan.id, said, saying("remedy-leave-out"))
    elif access.closes is not None and arrives is not None and arrives[0] > access.closes:
        rule = saying("rule-closes", place=point.name, closes_at=access.closes.timestamp())
        said = saying("move-closed-before-her", place=point.name, likely_at=arrives[0].timestamp())
        yield Broken(rule, plan.id, said, saying("remedy-other-point"))
    elif opens is not None and arrives is not None and arrives[1] < opens:
        kind = "rule-crew-not-before" if opens == first else "rule-opens"
        rule = saying(kind, place=point.name, opens_at=opens.timestamp())
        said = saying("move-opens-after-her", place=point.name, late_at=arrives[1].timestamp())
        yield Broken(rule, plan.id, said, saying("remedy-other-point"))


def _cars_at(event: Event, trip: Trip, point: Point, access: CrewAccess) -> Iterator[Broken]:
    cars = [leg for leg in trip.legs if leg.riders]
    if access.cars_max is not None and len(cars) > access.cars_max:
        names = [saying("move-name", name=car_name(event, leg.key)) for leg in cars]
        rule = saying("rule-cars-at", count=access.cars_max, place=point.name)
        said = note("move-cars-at", *names, count=len(cars), place=point.name)
        yield Broken(rule, trip.plan.id, said, saying("remedy-fewer-cars"))


def _permit_elsewhere(event: Event, trip: Trip, point: Point, access: CrewAccess) -> Iterator[Broken]:
    """A permit that another car or person is said to hold: then those who come are known to have none."""
    if not access.permit or not trip.goes:
        return
    without = [leg for leg in trip.legs if leg.riders and not _holds(event, leg, access.permit)]
    holders = _holders(event, access.permit)
    if without and holders:
        names = [saying("move-name", name=car_name(event, leg.key)) for leg in without]
        rule = saying("rule-permit", permit=access.permit, place=point.name)
        said = note("move-permit-elsewhere", *names, permit=access.permit, holders=", ".join(holders))
        yield Broken(rule, trip.plan.id, said, saying("remedy-permit"))


def permit_troubles(event: Event, trips: Sequence[Trip]) -> Iterator[MovementTrouble]:
    """Meetings that need a permit of which nobody says that it is held: not refused, but never promised."""
    for trip in trips:
        point = event.course_of(trip.plan.runner).point(trip.plan.point)
        permit = "" if point.access is None else point.access.permit
        if permit and trip.goes and not _holders(event, permit):
            said = saying("move-permit-unsaid", permit=permit, place=point.name)
            yield MovementTrouble(TroubleKind.PERMIT, trip.plan.id, said)


def _holds(event: Event, leg: CarTrip, permit: str) -> bool:
    """Whether a car, or somebody in it, has a permit."""
    car = any(c.id == leg.key and same_permit(permit, c.permits) for c in event.cars)
    return car or any(same_permit(permit, p.permits) for p in event.parts if p.person in leg.riders)


def _holders(event: Event, permit: str) -> list[str]:
    """Of everybody, of whichever circle: one permit may be the whole race's."""
    everybody = event.whole or event

    def find() -> list[str]:
        cars = [c.name for c in everybody.cars if same_permit(permit, c.permits)]
        names = {p.id: p.name for p in everybody.people}
        people = [names.get(p.person, p.person) for p in everybody.parts if same_permit(permit, p.permits)]
        return list(dict.fromkeys((*cars, *people)))

    return everybody.once(f"permit {permit}", find)


def same_permit(permit: str, held: Sequence[str]) -> bool:
    """Whether a permit is among those held; how people wrote its name does not matter."""
    return permit.casefold().strip() in {h.casefold().strip() for h in held}


def _vehicles(event: Event, trips: Sequence[Trip]) -> Iterator[Broken]:
    """Cars that come to a runner's meetings, those brought by people who were elsewhere among them."""
    most = event.rules.vehicles_max
    for runner in event.runners if most is not None else ():
        cars: list[str] = []
        for t in trips:
            for leg in t.legs if t.plan.runner == runner.id else ():
                if leg.car is None or leg.car in cars:
                    continue
                cars.append(leg.car)
                if most is not None and len(cars) > most:
                    names = [saying("move-name", name=car_name(event, c)) for c in cars]
                    said = note("move-vehicles", *names, count=len(cars), runner=runner.name)
                    rule = saying("rule-vehicles", count=most)
                    yield Broken(rule, t.plan.id, said, saying("remedy-fewer-cars"))


def _pacers(event: Event, trips: Sequence[Trip]) -> Iterator[Broken]:
    rules = event.rules
    for runner in event.runners:
        order = {p.id: (i, p.km) for i, p in enumerate(event.course_of(runner.id).points)}
        mine = sorted((t for t in trips if t.plan.runner == runner.id), key=lambda t: order[t.plan.point][0])
        with_her: set[str] = set()
        for t in mine:
            with_her.discard(t.plan.pacer_leaves or "")
            if t.plan.pacer_joins is None:
                continue
            with_her.add(t.plan.pacer_joins)
            km = order[t.plan.point][1]
            if rules.pacer_from_km is not None and km is not None and km < rules.pacer_from_km:
                said = saying("move-pacer-early", here_km=km)
                rule = saying("rule-pacer-from", from_km=rules.pacer_from_km)
                yield Broken(rule, t.plan.id, said, saying("remedy-later"))
            if len(with_her) > rules.pacers_at_once:
                said = saying("move-pacers", count=len(with_her))
                rule = saying("rule-pacers", count=rules.pacers_at_once)
                yield Broken(rule, t.plan.id, said, saying("remedy-pacer-leaves"))
