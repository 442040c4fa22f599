"""Where the person who writes stands, and where a runner is due: what 'she is just in' means from them.

A place is known by what people said of themselves ('we are at Mill'), by those who share their meeting there (a car
arrives with all its people), by what they reported of her from there, and by the drive to it that they said they began,
once it is over. It holds until they say that they left or set out for another, or until she has been out of it for so
long that they will have left too.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from datetime import datetime, timedelta

from geopy.distance import geodesic

from server.api.snapshot import Picture
from server.event.model import Event
from server.facts.entry import Entry, Fix, Kind
from server.plan.movements.roads import course_spots
from server.watch.circle import share_of
from server.watch.crew_routes import Party, parties_of
from server.watch.crew_whereabouts import company, plans_of, set_out_at, way_of
from server.watch.leaving import next_of
from server.watch.meetings import members

HOLDS = timedelta(hours=12)
"""What was said of a place longer ago says nothing of now (own choice)."""
PACKED_UP = timedelta(minutes=15)
"""So long after she is out of a point, crew have left it too (own choice)."""
AT_A_POINT_M = 300.0
"""A phone so near to a point or its car park is there (own choice: car parks lie some way off the line)."""
SOON = timedelta(minutes=10)
"""She is due at a point whose window begins by then."""

Parties = Mapping[str, tuple[Party, ...]]
"""Car by car who comes to each meeting, by its id."""

_SEEN_FROM = frozenset({Kind.IN, Kind.OUT, Kind.THROUGH, Kind.NOT_HERE_YET, Kind.SWEEP_THROUGH})


def stands_at(picture: Picture, person: str) -> str | None:
    """The point where a person stands, as far as is known; None where nothing says so."""
    return picture.once(("stands", person), lambda: _stands_at(picture, person))


def _stands_at(picture: Picture, person: str) -> str | None:
    parties, trips = _parties(picture, person), tuple(_trips(picture, person))
    arrived = ((t.ends, t.point) for t in trips if t.ends is not None and t.ends <= picture.now)
    said = max((*_said(picture, parties, person), *arrived), default=None)
    if said is None or picture.now - said[0] > HOLDS:
        return None
    at, point = said
    beside = _with(picture, parties, person, point)
    left = [s.at for p, who, s in picture.state.crew_left if p == point and who in beside]
    gone_on = any(t.point != point and t.begun > at for t in trips)
    return None if gone_on or any(t >= at for t in left) or _packed_up(picture, person, point, at) else point


@dataclass(frozen=True, slots=True)
class _Trip:
    """A drive to a meeting's point that a person said they began; `ends`: once it is over, None where nobody timed it or
    they said since that they can't come."""

    begun: datetime
    ends: datetime | None
    point: str


def _trips(picture: Picture, person: str) -> Iterator[_Trip]:
    event = picture.event
    given_up = max((f.stamp.at for f in picture.state.fallen if f.person == person), default=None)
    for runner in event.once("met by", lambda: _met_by(event)).get(person, ()):
        sight = picture.sight(runner)
        for plan in plans_of(sight, runner):
            if person not in members(event, plan):
                continue
            begun = set_out_at(sight, plan, company(sight, plan, person) or (person,))
            if begun is not None and begun <= picture.now:
                lasts = way_of(sight, plan, person).whole
                lost = lasts is None or (given_up is not None and given_up >= begun)
                yield _Trip(begun, None if lost or lasts is None else begun + lasts, plan.point)


def waits_at(picture: Picture, runner: str, person: str) -> str | None:
    """The point of her course where a person stands by their own word and where she may still come or be: what they ask
    and report without naming a place is about it, whatever the plan has. None where nothing says so."""
    here = stands_at(picture, person)
    order = [p.id for p in picture.event.course_of(runner).points]
    if here is None or here not in order:
        return None
    state = picture.state.runner(runner)
    times = state.at_point(here)
    gone = times is not None and (times.left is not None or times.through or times.implied)
    later = any(order.index(p) > order.index(here) for p in state.reached if p in order)
    return None if gone or later else here


def place_of_a_phone(picture: Picture, runner: str, fix: Fix) -> str | None:
    """The point of her course by whose car park, or place on the line, a phone is; None for none."""
    spots = course_spots(picture.event, {picture.event.runner(runner).course: picture.course(runner)})
    found: list[tuple[float, str]] = []
    for p in picture.event.course_of(runner).points:
        a = p.access
        own = (a.lat, a.lon) if a is not None and a.lat is not None and a.lon is not None else None
        for lat, lon in (s for s in (own, spots.get(p.id)) if s is not None):
            found.append((geodesic((lat, lon), (fix.lat, fix.lon)).m, p.id))
    near = min(found, default=None)
    return near[1] if near is not None and near[0] <= AT_A_POINT_M + (fix.accuracy_m or 0.0) else None


def due_at(picture: Picture, runner: str, person: str) -> str | None:
    """The point where this person would see her next: where they say they are, while she has not been out of it, else of
    their own next meeting, else the farthest she may have reached by the forecast; None where she has no forecast."""
    view = picture.views.get(runner)
    if view is None:
        return None
    here = waits_at(picture, runner, person)
    if here is not None and here in view.points:
        return here
    mine = next_of(picture.sight(runner), person)
    if mine is not None:
        return mine.point
    near = [p for p in view.points if view.window(p).early <= picture.now + SOON]
    return next(iter(near[::-1] or view.points), None)


def own_by_now(picture: Picture, runner: str, person: str) -> str | None:
    """The point of this person's own next meeting with her, once they are to be there or soon will be; else None.

    Who waits there means that point, also while nobody has reported her out of the one before.
    """
    view = picture.views.get(runner)
    if view is None:
        return None
    mine = next_of(picture.sight(runner), person)
    if mine is None or mine.point not in view.points:
        return None
    return mine.point if min(mine.be_there, view.window(mine.point).early) <= picture.now + SOON else None


def _parties(picture: Picture, person: str) -> Parties:
    """Of the meetings that a person goes to."""
    event = picture.event
    found: dict[str, tuple[Party, ...]] = {}
    for runner in event.once("met by", lambda: _met_by(event)).get(person, ()):
        found |= parties_of(share_of(picture.situation, runner))
    return {m: cars for m, cars in found.items() if any(person in p.people for p in cars)}


def _met_by(event: Event) -> Mapping[str, tuple[str, ...]]:
    """By person the runners whom they meet."""
    found: dict[str, dict[str, None]] = {}
    for m in event.meetings:
        for who in members(event, m):
            found.setdefault(who, {})[m.runner] = None
    return {who: tuple(runners) for who, runners in found.items()}


def _with(picture: Picture, parties: Parties, person: str, point: str) -> set[str]:
    """The person, and whoever comes to a meeting at that point in one car with them."""
    here = (cars for m, cars in parties.items() if picture.event.meeting(m).point == point)
    return {person}.union(*(p.people for cars in here for p in cars if person in p.people))


def _said(picture: Picture, parties: Parties, person: str) -> Iterator[tuple[datetime, str]]:
    for point, who, stamp in picture.state.crew_there:
        if who in _with(picture, parties, person, point):
            yield stamp.at, point
    company = {person}.union(*(p.people for cars in parties.values() for p in cars if person in p.people))
    for e in picture.entries:
        if e.by in company and _from_there(picture, parties, e, person) and e.point is not None:
            yield e.seen_at, e.point


def _from_there(picture: Picture, parties: Parties, e: Entry, person: str) -> bool:
    """Whether an entry tells that its sender stood at its point when it was seen: a report that counts."""
    if e.point is None or e.kind not in _SEEN_FROM or e.seen_at > picture.now:
        return False
    return e.by in _with(picture, parties, person, e.point) and e.id in picture.once(
        "counting", lambda: _counting(picture)
    )


def _counting(picture: Picture) -> set[str]:
    counted: set[str] = set()
    for r in picture.state.runners:
        for t in r.times:
            counted |= {s.entry for s in (t.arrived, t.left, *t.also_arrived, *t.also_left) if s is not None}
        counted |= {n.stamp.entry for n in r.not_yet}
    return counted


def _packed_up(picture: Picture, person: str, point: str, at: datetime) -> bool:
    """Whether every runner this person meets there has been out of it for a while."""
    event = picture.event
    runners = {m.runner for m in event.meetings if m.point == point and person in members(event, m)}
    if not runners:
        return False
    for runner in runners:
        times = picture.state.runner(runner).at_point(point)
        gone = None if times is None else times.left or (times.arrived if times.through else None)
        if gone is None or picture.now - max(gone.at, at) < PACKED_UP:
            return False
    return True
