"""The rules of the race held against a crew's movements: a plan that breaks one is refused, and the rule is named.

What an event file can break by itself is refused when it is read; here are those that need times or cars as they go.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from datetime import datetime

from server.event.model import Event
from server.plan.movements.trips import Trip
from server.plan.movements.values import Broken


def broken_rules(event: Event, trips: Sequence[Trip], early: Mapping[str, datetime]) -> tuple[Broken, ...]:
    """Every rule that the trips break. `early`: by meeting, the 10% time of her arrival, where it is to come."""
    found = [b for t in trips for b in _at_meeting(event, t, early.get(t.plan.id))]
    return (*found, *_vehicles(event, trips), *_pacers(event, trips))


def opens_at(event: Event, runner: str, point: str) -> datetime | None:
    """The first moment at which crew may be at a point: its own hours and the race's 'no crew before'."""
    access = event.course_of(runner).point(point).access
    times = [t for t in (event.rules.crew_not_before, access.opens if access else None) if t is not None]
    return max(times, default=None)


def _at_meeting(event: Event, trip: Trip, early: datetime | None) -> Iterator[Broken]:
    plan, rules = trip.plan, event.rules
    point = event.course_of(plan.runner).point(plan.point)
    access = point.access
    if access is None:
        if rules.outside_help_only_at_crew_points:
            yield Broken(
                "outside help at crew points only",
                plan.id,
                f"crew have no access to '{point.name}'",
                "Meet her at a point with crew access",
            )
        return
    if access.people_max is not None and len(plan.crew) > access.people_max:
        what = f"{len(plan.crew)} people are to meet her at '{point.name}', where {access.people_max} are allowed"
        yield Broken(f"{access.people_max} people at '{point.name}'", plan.id, what, "Name fewer people")
    most = rules.crew_people_max
    if most is not None and len(plan.crew) > most:
        what = f"{len(plan.crew)} people are to meet her at '{point.name}', the rules allow {most}"
        yield Broken(f"{most} crew at most", plan.id, what, "Name fewer people")
    opens = opens_at(event, plan.runner, plan.point)
    if access.closes is not None and opens is not None and access.closes <= opens:
        what = f"'{point.name}' closes before the rules allow crew"
        yield Broken("no crew before its time", plan.id, what, "Leave this meeting out")
    elif access.closes is not None and early is not None and early >= access.closes:
        what = f"crew access at '{point.name}' is over before she is likely to come"
        yield Broken(
            "hours of crew access", plan.id, what, "Meet her at another point, or plan to be there earlier"
        )


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
                    what = f"{len(cars)} cars come to meet {runner.name} ({', '.join(cars)}), the rules allow {most}"
                    yield Broken(f"{most} vehicles at most", t.plan.id, what, "Use fewer cars")


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
                what = f"a pacer joins at km {km:g}, the rules allow pacers from km {rules.pacer_from_km:g}"
                rule = f"pacers from km {rules.pacer_from_km:g}"
                yield Broken(rule, t.plan.id, what, "Let the pacer join later")
            if len(with_her) > rules.pacers_at_once:
                what = f"{len(with_her)} pacers would be with her, the rules allow {rules.pacers_at_once}"
                rule = f"{rules.pacers_at_once} pacers at once"
                yield Broken(rule, t.plan.id, what, "Say where the one before leaves: pacer_leaves")
