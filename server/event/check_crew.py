"""Cross checks on people, cars, drives and meetings: who is told, who goes where, what the rules allow."""

from __future__ import annotations

from collections.abc import Collection, Mapping

from geopy.distance import geodesic

from server.event.check_moves import ONE_SITE_M, check_moves, spots_of
from server.event.context import At
from server.event.lines import Path
from server.event.model import Car, MeetingPlan, Part, PartKind, Person, Point
from server.event.parse_state import Draft
from server.event.table_reader import did_you_mean, nearest

_CREW = frozenset({PartKind.CREW, PartKind.PACER, PartKind.ORGANISER})


def check_crew(draft: Draft) -> None:
    """Note every mistake about who does what."""
    _parts(draft)
    if any(p.path[:1] == ("people",) for p in draft.people):
        _alarm_people(draft)
    else:
        what = "no people are named: a plan can be made, but nobody is told anything"
        draft.report.warn((), what, "Add [[people]] with their parts, one with ladder = 1.")
    _same_names(draft)
    _drives(draft)
    _meetings(draft)
    _car_ways(draft)
    _permits(draft)
    check_moves(draft)


def _parts(draft: Draft) -> None:
    seen: set[tuple[str, PartKind, str | None, str | None]] = set()
    for part in draft.parts:
        p = part.value
        if p.kind is PartKind.RUNNER and p.ladder is not None:
            what = "a runner can't answer an alarm about herself"
            draft.report.error((*part.path, "ladder"), what, "Put the ladder on another person.")
        same = (p.person, p.kind, p.runner, p.point)
        if same in seen:
            draft.report.error(part.path, f"the part '{p.kind.value}' is given twice", "Keep one of the two.")
        seen.add(same)


def _alarm_people(draft: Draft) -> None:
    people = {p.value.id: p for p in draft.people}
    # A part whose runner's id is mistyped may be the very one that seems to be missing: that mistake is told, once.
    astray = bool(draft.runners_astray()) or any(p.path in draft.astray for p in draft.parts)
    for r in draft.runners:
        mine = draft.parts_about(r.value.id)
        ladder = [p for p in mine if p.value.ladder is not None]
        name = r.value.name
        if not ladder and not astray:
            what = f"an alarm about {name} would reach nobody: the ladder is empty"
            draft.report.error(r.path, what, "Give somebody's part ladder = 1.")
        if not astray and all(p.value.kind is not PartKind.SAFETY_CONTACT for p in mine):
            remedy = 'Give one person the part { kind = "safety contact", ladder = 1 }.'
            draft.report.error(r.path, f"{name} has no safety contact", remedy)
        steps: dict[int, Part] = {}
        for p in ladder:
            assert p.value.ladder is not None
            other = steps.setdefault(p.value.ladder, p.value)
            if other.person != p.value.person:
                what = f"step {p.value.ladder} of the ladder for {name} is also that of '{other.person}'"
                draft.report.warn(
                    (*p.path, "ladder"), what, "Both are told at once; number them if not meant."
                )
            if p.value.person in people:
                _reachable(draft, people[p.value.person])
    callers = [p for p in draft.parts if p.value.calls_race_control]
    if not callers:
        remedy = "Give exactly one person's part calls_race_control = true."
        draft.report.error(("people",), "nobody is to call race control", remedy)
    for p in callers:
        if p.value.person != callers[0].value.person:
            what = f"'{callers[0].value.person}' and '{p.value.person}' are both to call race control"
            draft.report.error((*p.path, "calls_race_control"), what, "Keep one person.")
    for p in callers[:1]:
        if p.value.person in people and not people[p.value.person].value.phone:
            what = f"{people[p.value.person].value.name} is to call race control, but has no telephone number"
            draft.report.warn(p.path, what, "Add phone.")


def _reachable(draft: Draft, person: At[Person]) -> None:
    p = person.value
    if not (p.phone or p.email or p.webhook or p.channels):
        what = f"{p.name} is on the ladder, but there is no way to reach them"
        draft.report.error(person.path, what, "Add phone, email or channels.")
    elif not p.phone:
        what = f"{p.name} is on the ladder, but others can't telephone them"
        draft.report.warn(person.path, what, "Add phone.")


def _same_names(draft: Draft) -> None:
    for kind, named in (("person", draft.people), ("car", draft.cars)):
        seen: dict[str, str] = {}
        for thing in named:
            name = thing.value.name.casefold()
            if name in seen:
                what = f"the {kind} '{thing.value.name}' has the name of '{seen[name]}'"
                draft.report.warn((*thing.path, "name"), what, "People could mix them up: make them differ.")
            seen.setdefault(name, thing.value.id)


def _drives(draft: Draft) -> None:
    seen: set[tuple[str, str]] = set()
    for d in draft.drives:
        v = d.value
        way = (v.from_place, v.to_place)
        if v.from_place == v.to_place and v.from_place:
            draft.report.error(
                d.path, f"the drive goes from '{v.from_place}' to itself", "Correct from or to."
            )
        elif way in seen:
            draft.report.error(d.path, f"the drive from '{way[0]}' to '{way[1]}' is given twice", "Keep one.")
        seen.add(way)
        for key, place in (("from", v.from_place), ("to", v.to_place)):
            _place_name(draft, (*d.path, key), place, free=True)
        if v.minutes is None:
            what = f"how long the drive from '{way[0]}' to '{way[1]}' takes is not said"
            draft.report.warn(d.path, what, "Add minutes = 35; without it there is no leave-by.")
        elif v.confirmed_by is None:
            what = f"nobody has confirmed the drive from '{way[0]}' to '{way[1]}'"
            remedy = 'Add confirmed_by = "..." once a person has checked it; until then there is no leave-by.'
            draft.report.warn(d.path, what, remedy)
    for c in draft.cars:
        _place_name(draft, (*c.path, "starts_at"), c.value.starts_at)


def _place_name(draft: Draft, path: Path, place: str | None, *, free: bool = False) -> None:
    """A place is a point's id or a free name that drives use; a point's name in place of its id, or a near
    miss of one, is pointed out."""
    ids = [p.value.id for p in draft.points] + [p.value.id for p in draft.places]
    if not place or place in ids:
        return
    for p in draft.points:
        if place.casefold() in {n.casefold() for n in (p.value.name, *p.value.also)}:
            what = f"'{place}' is the name of the point '{p.value.id}'"
            draft.report.error(path, what, f"Write its id: '{p.value.id}'.")
            return
    near = nearest(place, ids, 80.0)
    driven = {x for d in draft.drives for x in (d.value.from_place, d.value.to_place)}
    if near is not None:
        draft.report.warn(
            path, f"'{place}' is no point or place, but much like '{near}'", f"Did you mean '{near}'?"
        )
    elif not free and place not in driven:
        what = f"no drive leads from or to '{place}'"
        draft.report.warn(path, what, "Add it under [[drives]], or write the id of a point or place.")


def _meetings(draft: Draft) -> None:
    points = {p.value.id: p.value for p in draft.points}
    people, cars = {p.value.id for p in draft.people}, {c.value.id: c.value for c in draft.cars}
    seen: set[tuple[str, str]] = set()
    for m in draft.meetings:
        if (m.value.point, m.value.runner) in seen:
            what = f"'{m.value.runner}' is met twice at '{m.value.point}'"
            draft.report.error(m.path, what, "Put both into one meeting.")
        seen.add((m.value.point, m.value.runner))
        astray = any(p.path in draft.astray for p in draft.points if p.value.id == m.value.point)
        if m.value.point in points and not astray:
            _access(draft, m, points[m.value.point])
        _who(draft, m, people)
        _what(draft, m, cars)
    _vehicles(draft)


def _access(draft: Draft, m: At[MeetingPlan], point: Point) -> None:
    if point.access is None:
        only = draft.rules.outside_help_only_at_crew_points
        what = f"crew have no access to '{point.name}'"
        if only:
            what += ", and the rules allow help at crew points only"
        draft.report.error(
            (*m.path, "point"), what, "Choose another point, or add crew = { ... } to this one."
        )
        return
    most = point.access.people_max
    if most is not None and len(m.value.crew) > most:
        what = f"{len(m.value.crew)} people are to meet her at '{point.name}', where {most} are allowed"
        draft.report.error((*m.path, "crew"), what, "Name fewer people.")


def _who(draft: Draft, m: At[MeetingPlan], people: Collection[str]) -> None:
    for i, person in enumerate(m.value.crew):
        path = (*m.path, "crew", i)
        if person in people:
            kinds = {p.value.kind for p in draft.parts_of(person)}
            if not kinds & _CREW and not draft.may_be(person):
                what = f"'{person}' is to meet her, but has no part as crew or pacer"
                draft.report.warn(path, what, 'Add { kind = "crew" } to their parts.')
    most = draft.rules.crew_people_max
    if most is not None and len(m.value.crew) > most:
        what = f"{len(m.value.crew)} people are to meet her, the rules allow {most}"
        draft.report.error((*m.path, "crew"), what, "Name fewer people.")
    if not m.value.crew:
        draft.report.warn(m.path, "nobody is named to go to this meeting", 'Add crew = ["..."].')
    for key in ("pacer_joins", "pacer_leaves"):
        person = getattr(m.value, key)
        if person in people:
            kinds = {p.value.kind for p in draft.parts_of(person)}
            if PartKind.PACER not in kinds and not draft.may_be(person):
                what = f"'{person}' has no part as pacer"
                draft.report.error((*m.path, key), what, 'Add { kind = "pacer" } to their parts.')


def _what(draft: Draft, m: At[MeetingPlan], cars: Mapping[str, Car]) -> None:
    _place_name(draft, (*m.path, "from"), m.value.from_place)
    there: set[str | None] = {m.value.car} if m.value.car is not None else set()
    if m.value.car is None:
        there |= {p.value.car for who in m.value.crew for p in draft.parts_of(who)}
    for i, item in enumerate(m.value.kit):
        path = (*m.path, "kit", i, "car")
        if item.car in cars and item.car not in there:
            what = f"'{item.name}' travels in '{item.car}', which does not go to this meeting"
            draft.report.error(path, what, "Put it into a car that goes there.")
    car = cars.get(m.value.car or "")
    if car is not None and len(m.value.crew) > car.seats:
        what = f"{len(m.value.crew)} people go in '{car.id}', which seats {car.seats}"
        draft.report.warn((*m.path, "crew"), what, "Check the seats, or name a second car.")


def _vehicles(draft: Draft) -> None:
    most = draft.rules.vehicles_max
    for r in draft.runners:
        mine = draft.meetings_with(r.value.id)
        cars: list[str] = []
        for m in mine:
            if m.value.car is not None and m.value.car not in cars:
                cars.append(m.value.car)
                if most is not None and len(cars) > most:
                    what = f"{len(cars)} cars are used for {r.value.name} ({', '.join(cars)}), the rules allow {most}"
                    draft.report.error((*m.path, "car"), what, "Use fewer cars.")


def _permits(draft: Draft) -> None:
    """A permit that a meeting needs and nobody is said to hold, and one held that no point asks for."""
    asked = {p.value.access.permit for p in draft.points if p.value.access and p.value.access.permit}
    plain = {_plain(a) for a in asked}
    held = [(c.path, x) for c in draft.cars for x in c.value.permits]
    held += [(p.path, x) for p in draft.parts for x in p.value.permits]
    for path, name in held:
        if _plain(name) not in plain:
            what = f"no point asks for the permit '{name}'"
            known = ", ".join(sorted(asked))
            else_say = (
                f"Permits asked for: {known}."
                if known
                else 'Add permit = "..." to crew = { ... } of a point.'
            )
            draft.report.warn((*path, "permits"), what, did_you_mean(name, asked, else_say))
    names = {_plain(x) for _, x in held}
    points = {p.value.id: p.value for p in draft.points}
    for m in draft.meetings:
        point = points.get(m.value.point)
        permit = point.access.permit if point is not None and point.access is not None else ""
        if point is not None and permit and _plain(permit) not in names:
            what = f"crew need the permit '{permit}' at '{point.name}', and nobody says who has it"
            remedy = (
                f'Ask the race, then write permits = ["{permit}"] at the car, or at the part of who holds it.'
            )
            draft.report.warn((*m.path, "point"), what, remedy)


def _plain(permit: str) -> str:
    return permit.casefold().strip()


def _one_site(draft: Draft, one: str, other: str) -> bool:
    """Whether two points or places are one car park: by id, by the place or waypoint they share, or by where they lie."""
    sites: dict[str, set[str]] = {}
    for p in draft.points:
        access = p.value.access
        shared = {access.place} if access is not None and access.place else set()
        shared |= {f"waypoint {p.value.waypoint.casefold()}"} if p.value.waypoint else set()
        sites[p.value.id] = shared | {p.value.id}
    spots = spots_of(draft)
    near = one in spots and other in spots and geodesic(spots[one], spots[other]).m <= ONE_SITE_M
    return near or bool(sites.get(one, {one}) & sites.get(other, {other}))


def _car_ways(draft: Draft) -> None:
    """Each car from meeting to meeting in running order: a way without a drive has no leave-by.

    A car that somebody may bring beside a meeting's own is then perhaps there, perhaps where it was: the plan knows
    which, so here only a way that is missing from both is told.
    """
    ways = {(d.value.from_place, d.value.to_place) for d in draft.drives}
    order = {p.value.id: i for i, p in enumerate(draft.points)}
    reached = _meetings_by_car(draft, order)
    for car in draft.cars:
        main, perhaps = reached[car.value.id]
        if len({m.value.runner for m in main}) > 1:
            # Which of two runners comes first is not known here: the plan says which drives are missing.
            continue
        stands = {car.value.starts_at} - {None}
        for m in sorted((*main, *perhaps), key=lambda m: order[m.value.point]):
            here = m.value.point
            if m in perhaps:
                stands.add(here)
                continue
            came_from = [m.value.from_place] if m.value.from_place else sorted(x for x in stands if x)
            stands = {here}
            if not came_from:
                what = f"where '{car.value.id}' comes from is not said, so there is no leave-by"
                draft.report.warn(m.path, what, "Add from = ... here or starts_at = ... to the car.")
            elif not any(_one_site(draft, x, here) or (x, here) in ways for x in came_from):
                what = f"there is no drive from '{came_from[0]}' to '{here}', so '{car.value.id}' has no leave-by"
                draft.report.warn(m.path, what, "Add it under [[drives]].")


def _meetings_by_car(
    draft: Draft, order: Mapping[str, int]
) -> Mapping[str, tuple[list[At[MeetingPlan]], list[At[MeetingPlan]]]]:
    """Of each car the meetings that are reached in it, and those to which one of its people may bring it beside another."""
    own: dict[str, str] = {}
    for p in draft.parts:
        if p.value.car is not None:
            own.setdefault(p.value.person, p.value.car)
    theirs: dict[str, set[str]] = {c.value.id: set() for c in draft.cars}
    for who, car in own.items():
        theirs.setdefault(car, set()).add(who)
    main: dict[str | None, list[At[MeetingPlan]]] = {}
    comes: dict[str | None, list[At[MeetingPlan]]] = {}
    for m in draft.meetings:
        v = m.value
        if v.car is not None:
            theirs.setdefault(v.car, set()).update(who for who in v.crew if who not in own)
        if v.point not in order:
            continue
        main.setdefault(v.car or next((own[who] for who in v.crew if who in own), None), []).append(m)
        for person in {*v.crew, v.pacer_joins}:
            comes.setdefault(person, []).append(m)
    found = {}
    for car, people in theirs.items():
        mine = main.get(car, [])
        beside = {m.path: m for who in people for m in comes.get(who, ())}
        for m in mine:
            beside.pop(m.path, None)
        found[car] = (mine, [m for _, m in sorted(beside.items(), key=lambda item: item[0])])
    return found
