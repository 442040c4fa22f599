"""Who goes in which car from where to which meeting: the plan walked through in order, places followed, no times.

A car takes those who are where it is; somebody who is elsewhere with a car of their own brings it. A pacer or relay
runner on foot is in no car until she comes to where they leave her.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass, field, replace

from server.event.model import Event, KitWeight, MeetingPlan, PointKind, Share
from server.plan.kit import must
from server.plan.movements.names import ON_THEIR_OWN, car_name, person_name, place_name
from server.plan.movements.roads import Roads
from server.plan.movements.values import MovementTrouble, Role, TroubleKind
from server.plan.notes import Saying, saying


@dataclass(frozen=True, slots=True)
class CarTrip:
    """One car to one meeting: riders as they sit in it, where it stands before, by way of where, after what.

    `via` is where they go first and from where they then come: a leave-by is the time to leave it.
    """

    key: str
    car: str | None
    riders: tuple[str, ...]
    driver: str | None
    from_place: str | None
    via: str | None
    after: str | None
    stays: bool

    @property
    def sets_out(self) -> CarTrip:
        """The part of it that a leave-by counts: from `via`, else the whole."""
        return self if self.via is None else replace(self, from_place=self.via, via=None, after=None)


@dataclass(frozen=True, slots=True)
class Trip:
    """Everything about getting to one meeting. `goes` who is to be there, `joins` who sets off with her on foot
    (pacer, relay runner), `leaves` who comes off the course."""

    plan: MeetingPlan
    legs: tuple[CarTrip, ...]
    goes: tuple[str, ...]
    joins: tuple[str, ...] = ()
    leaves: tuple[str, ...] = ()
    roles: Mapping[str, Role] = field(default_factory=dict)


@dataclass(slots=True)
class _World:
    """Where everybody is, as far as the plan has been walked."""

    event: Event
    roads: Roads
    car_at: dict[str, str | None] = field(default_factory=dict)
    person_at: dict[str, str | None] = field(default_factory=dict)
    with_car: dict[str, str] = field(default_factory=dict)
    on_foot: dict[str, str] = field(default_factory=dict)
    last: dict[str, str] = field(default_factory=dict)
    troubles: list[MovementTrouble] = field(default_factory=list)

    def trouble(
        self,
        kind: TroubleKind,
        plan: MeetingPlan,
        said: Saying,
        *,
        person: str | None = None,
        car: str | None = None,
    ) -> None:
        self.troubles.append(MovementTrouble(kind, plan.id, said, person=person, car=car))


def trips_of(
    event: Event,
    roads: Roads,
    ordered: Sequence[MeetingPlan],
    over: frozenset[str] = frozenset(),
    seen_at: Mapping[str, str] | None = None,
) -> tuple[tuple[Trip, ...], tuple[MovementTrouble, ...]]:
    """The trips to `ordered` meetings (all of the event, in order of time), and what is wrong with who is where.

    `over`: ids of meetings behind them, the first ones; they are walked, so that everybody stands where they left
    them, and not returned. `seen_at`: where people are known to be now, by person; it goes before what was planned.
    """
    world = _World(event, roads)
    _begin(world, ordered)
    for plan in ordered:
        if plan.id in over:
            _trip(world, plan)
    world.troubles.clear()
    for person, place in (seen_at or {}).items():
        _put(world, person, place)
    trips = tuple(_trip(world, plan) for plan in ordered if plan.id not in over)
    _left_over(world, ordered)
    still = {t.plan.id for t in trips}
    return trips, tuple(t for t in world.troubles if t.meeting in still)


def relay_at(event: Event, runner: str, point: str) -> tuple[tuple[Share, ...], tuple[Share, ...]]:
    """Shares of a team that begin at a point (not those from the start) and that end at it."""
    first = event.course_of(runner).points[0].id
    mine = [s for s in event.shares if s.runner == runner]
    begin = tuple(s for s in mine if s.from_point == point and point != first)
    return begin, tuple(s for s in mine if s.to_point == point)


def goes_to(event: Event, plan: MeetingPlan) -> tuple[str, ...]:
    """Who has to be brought to a meeting: crew, the pacer who joins, the relay runner who takes over."""
    joins = () if plan.pacer_joins is None else (plan.pacer_joins,)
    begin, _ = relay_at(event, plan.runner, plan.point)
    return tuple(dict.fromkeys((*plan.crew, *joins, *(s.person for s in begin))))


def car_of(event: Event, plan: MeetingPlan) -> str:
    """The car a meeting is to be reached in; a name of their own where none is said."""
    if plan.car is not None:
        return plan.car
    cars = [p.car for who in plan.crew for p in event.parts_of(who) if p.car is not None]
    crew = plan.crew[0] if plan.crew else plan.id
    return next(iter(cars), f"{ON_THEIR_OWN}{crew}")


def drivers_of(event: Event) -> frozenset[str]:
    """Who is said to drive."""
    return event.drivers


def _begin(world: _World, ordered: Sequence[MeetingPlan]) -> None:
    """Cars where they start; people with their own car, or with the first one they go in."""
    world.car_at = {c.id: c.starts_at for c in world.event.cars}
    for person in world.event.people:
        own = next((p.car for p in world.event.parts_of(person.id) if p.car is not None), None)
        if own is not None:
            world.with_car[person.id] = own
            world.person_at[person.id] = world.car_at.get(own)
    for share in world.event.shares:
        if share.from_point == world.event.course_of(share.runner).points[0].id:
            world.on_foot[share.person] = share.runner
    for plan in ordered:
        key = car_of(world.event, plan)
        world.car_at.setdefault(key, None)
        for who in goes_to(world.event, plan):
            if who not in world.with_car:
                world.with_car[who] = key
                world.person_at[who] = world.car_at.get(key)


def _put(world: _World, person: str, place: str) -> None:
    """A person seen at a place: whatever they came in stands there too."""
    world.person_at[person] = place
    car = world.with_car.get(person)
    if car is not None:
        world.car_at[car] = place
        for other, ride in world.with_car.items():
            if ride == car:
                world.person_at[other] = place


def _trip(world: _World, plan: MeetingPlan) -> Trip:
    event = world.event
    begin, end = relay_at(event, plan.runner, plan.point)
    goes = goes_to(event, plan)
    joins = tuple(
        dict.fromkeys((*((plan.pacer_joins,) if plan.pacer_joins else ()), *(s.person for s in begin)))
    )
    cars = _boarding(world, plan, goes)
    legs = tuple(_leg(world, plan, key, riders) for key, riders in cars.items())
    _seats(world, plan, legs)
    _arrive(world, plan, legs)
    due = ((plan.pacer_leaves,) if plan.pacer_leaves else ()) + tuple(share.person for share in end)
    # Who never set off with her, because they could not get there, does not come off here either.
    leaves = tuple(w for w in dict.fromkeys(due) if w in world.on_foot)
    for who in leaves:
        world.on_foot.pop(who, None)
        _meets_car(world, who, plan, legs)
    came = {who for leg in legs for who in leg.riders}
    for who in joins:
        if who in came:
            world.on_foot[who] = plan.runner
            world.with_car.pop(who, None)
            world.person_at[who] = None
    return Trip(plan, legs, goes, joins, leaves, _roles(plan, legs, goes, begin))


def _boarding(world: _World, plan: MeetingPlan, goes: Sequence[str]) -> dict[str, list[str]]:
    """Car by car who gets in, the meeting's own car first; those who can't are noted."""
    main = car_of(world.event, plan)
    if world.car_at.get(main) is None:
        # A car of which nobody said where it is can only be set out in from where its people are.
        places = [world.person_at.get(w) for w in goes if w not in world.on_foot]
        world.car_at[main] = next((p for p in places if p is not None), None)
    cars: dict[str, list[str]] = {main: []}
    for who in goes:
        if who in world.on_foot:
            her = world.event.runner(world.on_foot[who]).name
            said = saying("move-on-foot", person=person_name(world.event, who), runner=her)
            world.trouble(TroubleKind.ON_FOOT, plan, said, person=who)
            continue
        own = world.with_car.get(who)
        in_own = own != main and _drives_own(world, plan, who, own)
        if own == main or (_beside(world, who, main) and not in_own):
            cars[main].append(who)
        elif own is not None and own in world.car_at and (in_own or _can_bring(world, own, main, goes)):
            cars.setdefault(own, []).append(who)
        else:
            said = saying(
                "move-stranded",
                person=person_name(world.event, who),
                place=place_name(world.event, world.person_at.get(who)),
                car=car_name(world.event, main),
                origin=place_name(world.event, world.car_at.get(main)),
            )
            world.trouble(TroubleKind.STRANDED, plan, said, person=who, car=main)
    for key, riders in cars.items():
        riders += [
            w for w, car in world.with_car.items() if car == key and w not in goes and w not in world.on_foot
        ]
    return {key: riders for key, riders in cars.items() if riders} or {main: []}


def _drives_own(world: _World, plan: MeetingPlan, who: str, own: str | None) -> bool:
    """Whether somebody comes in the car that is theirs to drive, though the meeting's other car stands beside it: where no
    car is named and two may come, nobody leaves theirs behind."""
    theirs = any(p.drives and p.car == own for p in world.event.parts_of(who)) if own is not None else False
    access = world.event.course_of(plan.runner).point(plan.point).access
    most = (world.event.rules.vehicles_max, access.cars_max if access is not None else None)
    return theirs and plan.car is None and all(m is None or m > 1 for m in most)


def _beside(world: _World, who: str, car: str) -> bool:
    here, there = world.person_at.get(who), world.car_at.get(car)
    return here is None or there is None or world.roads.same(here, there)


def _can_bring(world: _World, own: str, main: str, goes: Sequence[str]) -> bool:
    """Whether the car that somebody is with can come as well: one of those in it who go drives."""
    drivers = drivers_of(world.event)
    company = [w for w in goes if world.with_car.get(w) == own and not _beside(world, w, main)]
    return own != main and (not drivers or any(w in drivers for w in company))


def _leg(world: _World, plan: MeetingPlan, key: str, riders: Sequence[str]) -> CarTrip:
    drivers = drivers_of(world.event)
    usual = [w for w in riders if any(p.car == key and p.drives for p in world.event.parts_of(w))]
    joins = {plan.pacer_joins}
    able = [
        *usual,
        *(w for w in riders if w in drivers and w not in joins),
        *(w for w in riders if w in drivers),
    ]
    driver = next(iter(able), None)
    if driver is None and not drivers and riders:
        driver = riders[0]
    start = world.car_at.get(key)
    main = key == car_of(world.event, plan)
    via = plan.from_place if main else None
    if start is None:
        start, via = via, None
    elif via is not None and (world.roads.same(via, start) or world.roads.same(via, plan.point)):
        via = None
    stays = start is not None and via is None and world.roads.same(start, plan.point)
    if driver is None and not stays:
        said = saying("move-no-driver", car=car_name(world.event, key))
        world.trouble(TroubleKind.NO_DRIVER, plan, said, car=key)
    car = None if key.startswith(ON_THEIR_OWN) else key
    return CarTrip(key, car, tuple(riders), driver, start, via, world.last.get(key), stays)


def _seats(world: _World, plan: MeetingPlan, legs: Sequence[CarTrip]) -> None:
    seats = {c.id: c.seats for c in world.event.cars}
    for leg in legs:
        if leg.car in seats and not leg.stays and len(leg.riders) > seats[leg.car]:
            said = saying(
                "move-seats",
                car=car_name(world.event, leg.car),
                people=len(leg.riders),
                seats=seats[leg.car],
            )
            world.trouble(TroubleKind.NO_SEAT, plan, said, car=leg.car)


def _arrive(world: _World, plan: MeetingPlan, legs: Sequence[CarTrip]) -> None:
    for leg in (x for x in legs if x.riders):
        world.car_at[leg.key] = plan.point
        world.last[leg.key] = plan.id
        for who in leg.riders:
            world.person_at[who] = plan.point
            world.with_car[who] = leg.key


def _meets_car(world: _World, who: str, plan: MeetingPlan, legs: Sequence[CarTrip]) -> None:
    """Who comes off the course gets into a car that is there, if one is; else they stand at the roadside."""
    world.person_at[who] = plan.point
    came = next((leg.key for leg in legs if leg.riders), None)
    if came is not None:
        world.with_car[who] = came
        return
    world.with_car.pop(who, None)
    place = place_name(world.event, plan.point)
    said = saying("move-no-car-there", person=person_name(world.event, who), place=place)
    world.trouble(TroubleKind.FETCH, plan, said, person=who)


def _left_over(world: _World, ordered: Sequence[MeetingPlan]) -> None:
    """Hand-overs nobody drives to; pacers and relay runners nobody fetches."""
    met = {(p.runner, p.point) for p in ordered}
    for share in world.event.shares:
        course = world.event.course_of(share.runner)
        name = person_name(world.event, share.person)
        later = [p for p in ordered if p.runner == share.runner]
        if not later:
            continue
        if share.from_point != course.points[0].id and (share.runner, share.from_point) not in met:
            place = place_name(world.event, share.from_point)
            said = saying("move-hand-over", person=name, place=place)
            world.trouble(TroubleKind.HAND_OVER, later[0], said, person=share.person)
        if not course.point(share.to_point).finish and (share.runner, share.to_point) not in met:
            place = place_name(world.event, share.to_point)
            said = saying("move-not-fetched", person=name, place=place)
            world.trouble(TroubleKind.FETCH, later[0], said, person=share.person)
    for who, plan in _joined(ordered):
        if who in world.on_foot and not _at_finish(world, plan, met):
            said = saying("move-pacer-not-fetched", person=person_name(world.event, who))
            world.trouble(TroubleKind.FETCH, plan, said, person=who)


def _joined(ordered: Sequence[MeetingPlan]) -> Iterator[tuple[str, MeetingPlan]]:
    last = {p.pacer_joins: p for p in ordered if p.pacer_joins is not None}
    yield from last.items()


def _at_finish(world: _World, plan: MeetingPlan, met: set[tuple[str, str]]) -> bool:
    points = world.event.course_of(plan.runner).points
    return any(PointKind.FINISH in p.kinds and (plan.runner, p.id) in met for p in points)


def _roles(
    plan: MeetingPlan, legs: Sequence[CarTrip], goes: Sequence[str], begin: Sequence[Share]
) -> dict[str, Role]:
    runs = {s.person for s in begin}
    found: dict[str, Role] = {}
    for leg in legs:
        for who in leg.riders:
            if who == leg.driver and not leg.stays:
                found[who] = Role.DRIVES
            elif who in runs:
                found[who] = Role.RUNS
            elif who == plan.pacer_joins:
                found[who] = Role.PACES
            else:
                found[who] = Role.RIDES if who in goes else Role.WITH_CAR
    return found


def is_safety(event: Event, plan: MeetingPlan) -> bool:
    """Whether torch, warm layer, a pacer or a hand-over hangs on a meeting: then it is promised at 99%."""
    begin, _ = relay_at(event, plan.runner, plan.point)
    # From the finish she does not go on: there only what is written down as such counts.
    finish = event.course_of(plan.runner).point(plan.point).finish
    kit = any(k.weight is KitWeight.SAFETY or (must(k) and not finish) for k in plan.kit)
    return kit or plan.pacer_joins is not None or bool(begin)
