"""Cross checks on people, cars, drives and meetings: who is told, who goes where, what the rules allow."""

from __future__ import annotations

from collections.abc import Collection, Mapping

from geopy.distance import geodesic

from server.event.check_moves import ONE_SITE_M, check_moves, spots_of
from server.event.context import At
from server.event.lines import Path
from server.event.model import Car, MeetingPlan, Part, PartKind, Person, Point
from server.event.parse_state import ParseState
from server.event.table_reader import did_you_mean, nearest
from server.sentences import say

_CREW = frozenset({PartKind.CREW, PartKind.PACER, PartKind.ORGANISER})


def check_crew(draft: ParseState) -> None:
    """Note every mistake about who does what."""
    _parts(draft)
    if any(p.path[:1] == ("people",) for p in draft.people):
        _alarm_people(draft)
    else:
        what = say("wrong-no-people-named-plan-can")
        draft.report.warn((), what, say("do-add-people-their-parts-ladder"))
    _same_names(draft)
    _drives(draft)
    _meetings(draft)
    _car_ways(draft)
    _permits(draft)
    check_moves(draft)


def _parts(draft: ParseState) -> None:
    seen: set[tuple[str, PartKind, str | None, str | None]] = set()
    for part in draft.parts:
        p = part.value
        if p.kind is PartKind.RUNNER and p.ladder is not None:
            what = say("wrong-runner-cannot-answer-alarm-about")
            draft.report.error((*part.path, "ladder"), what, say("do-put-ladder-another-person"))
        same = (p.person, p.kind, p.runner, p.point)
        if same in seen:
            draft.report.error(
                part.path, say("wrong-part-given-twice", value=p.kind.value), say("do-keep-two")
            )
        seen.add(same)


def _alarm_people(draft: ParseState) -> None:
    people = {p.value.id: p for p in draft.people}
    # A part whose runner's id is mistyped may be the very one that seems to be missing: that mistake is told, once.
    astray = bool(draft.runners_astray()) or any(p.path in draft.astray for p in draft.parts)
    for r in draft.runners:
        mine = draft.parts_about(r.value.id)
        ladder = [p for p in mine if p.value.ladder is not None]
        name = r.value.name
        if not ladder and not astray:
            what = say("wrong-alarm-about-would-reach-nobody", name=name)
            draft.report.error(r.path, what, say("do-give-somebodys-part-ladder-1"))
        if not astray and all(p.value.kind is not PartKind.SAFETY_CONTACT for p in mine):
            remedy = say("do-give-person-part-kind-safety")
            draft.report.error(r.path, say("wrong-no-safety-contact", name=name), remedy)
        steps: dict[int, Part] = {}
        for p in ladder:
            assert p.value.ladder is not None
            other = steps.setdefault(p.value.ladder, p.value)
            if other.person != p.value.person:
                what = say("wrong-step-ladder-also", ladder=p.value.ladder, name=name, person=other.person)
                draft.report.warn((*p.path, "ladder"), what, say("do-both-told-once-number-them"))
            if p.value.person in people:
                _reachable(draft, people[p.value.person])
    callers = [p for p in draft.parts if p.value.calls_race_control]
    if not callers:
        remedy = say("do-give-exactly-persons-part-calls")
        draft.report.error(("people",), say("wrong-nobody-call-race-control"), remedy)
    for p in callers:
        if p.value.person != callers[0].value.person:
            what = say("wrong-both-call-race-control", person=callers[0].value.person, person2=p.value.person)
            draft.report.error((*p.path, "calls_race_control"), what, say("do-keep-person"))
    for p in callers[:1]:
        if p.value.person in people and not people[p.value.person].value.phone:
            what = say("wrong-call-race-control-but-no", name=people[p.value.person].value.name)
            draft.report.warn(p.path, what, say("do-add-phone"))


def _reachable(draft: ParseState, person: At[Person]) -> None:
    p = person.value
    if not (p.phone or p.email or p.webhook or p.channels):
        what = say("wrong-ladder-but-no-way-reach", name=p.name)
        draft.report.error(person.path, what, say("do-add-phone-email-channels"))
    elif not p.phone:
        what = say("wrong-ladder-but-others-cannot-telephone", name=p.name)
        draft.report.warn(person.path, what, say("do-add-phone"))


def _same_names(draft: ParseState) -> None:
    for kind, named in (("person", draft.people), ("car", draft.cars)):
        seen: dict[str, str] = {}
        for thing in named:
            name = thing.value.name.casefold()
            if name in seen:
                what = say("wrong-name", kind=kind, name=thing.value.name, seen=seen[name])
                draft.report.warn((*thing.path, "name"), what, say("do-people-could-mix-them-up"))
            seen.setdefault(name, thing.value.id)


def _drives(draft: ParseState) -> None:
    seen: set[tuple[str, str]] = set()
    for d in draft.drives:
        v = d.value
        way = (v.from_place, v.to_place)
        if v.from_place == v.to_place and v.from_place:
            draft.report.error(
                d.path, say("wrong-drive-goes-from-itself", from_place=v.from_place), say("do-correct-from")
            )
        elif way in seen:
            draft.report.error(
                d.path,
                say("wrong-drive-from-given-twice", from_place=way[0], to_place=way[1]),
                say("do-keep"),
            )
        seen.add(way)
        for key, place in (("from", v.from_place), ("to", v.to_place)):
            _place_name(draft, (*d.path, key), place, free=True)
        if v.minutes is None and (*d.path, "minutes") in draft.report.lines:
            pass  # what is written there is wrong, and told so
        elif v.minutes is None:
            what = say("wrong-how-long-drive-from-takes", from_place=way[0], to_place=way[1])
            draft.report.warn(d.path, what, say("do-add-minutes-35-without-no"))
        elif v.confirmed_by is None:
            what = say("wrong-nobody-confirmed-drive-from", from_place=way[0], to_place=way[1])
            remedy = say("do-add-confirmed-once-person-checked")
            draft.report.warn(d.path, what, remedy)
    for c in draft.cars:
        _place_name(draft, (*c.path, "starts_at"), c.value.starts_at)


def _place_name(draft: ParseState, path: Path, place: str | None, *, free: bool = False) -> None:
    """A place is a point's id or a free name that drives use; a point's name in place of its id, or a near
    miss of one, is pointed out."""
    ids = [p.value.id for p in draft.points] + [p.value.id for p in draft.places]
    if not place or place in ids:
        return
    for p in draft.points:
        if place.casefold() in {n.casefold() for n in (p.value.name, *p.value.also)}:
            what = say("wrong-name-point", place=place, id=p.value.id)
            draft.report.error(path, what, say("do-write-id", id=p.value.id))
            return
    near = nearest(place, ids, 80.0)
    driven = {x for d in draft.drives for x in (d.value.from_place, d.value.to_place)}
    if near is not None:
        draft.report.warn(
            path, say("wrong-no-point-place-but-much", place=place, near=near), say("do-did-mean", near=near)
        )
    elif not free and place not in driven:
        what = say("wrong-no-drive-leads-from", place=place)
        draft.report.warn(path, what, say("do-add-under-drives-write-id"))


def _meetings(draft: ParseState) -> None:
    points = {p.value.id: p.value for p in draft.points}
    people, cars = {p.value.id for p in draft.people}, {c.value.id: c.value for c in draft.cars}
    seen: set[tuple[str, str]] = set()
    for m in draft.meetings:
        if (m.value.point, m.value.runner) in seen:
            what = say("wrong-met-twice", runner=m.value.runner, point=m.value.point)
            draft.report.error(m.path, what, say("do-put-both-into-meeting"))
        seen.add((m.value.point, m.value.runner))
        astray = any(p.path in draft.astray for p in draft.points if p.value.id == m.value.point)
        if m.value.point in points and not astray:
            _access(draft, m, points[m.value.point])
        _who(draft, m, people)
        _what(draft, m, cars)
    _vehicles(draft)


def _access(draft: ParseState, m: At[MeetingPlan], point: Point) -> None:
    if point.access is None:
        only = draft.rules.outside_help_only_at_crew_points
        what = say("wrong-crew-no-access-rules" if only else "wrong-crew-no-access", name=point.name)
        draft.report.error((*m.path, "point"), what, say("do-choose-another-point-add-crew"))
        return
    most = point.access.people_max
    if most is not None and len(m.value.crew) > most:
        what = say("wrong-people-meet-where-allowed", count=len(m.value.crew), name=point.name, most=most)
        draft.report.error((*m.path, "crew"), what, say("do-name-fewer-people"))


def _who(draft: ParseState, m: At[MeetingPlan], people: Collection[str]) -> None:
    for i, person in enumerate(m.value.crew):
        path = (*m.path, "crew", i)
        if person in people:
            kinds = {p.value.kind for p in draft.parts_of(person)}
            if not kinds & _CREW and not draft.may_be(person):
                what = say("wrong-meet-but-no-part-crew", person=person)
                draft.report.warn(path, what, say("do-add-kind-crew-their-parts"))
    most = draft.rules.crew_people_max
    if most is not None and len(m.value.crew) > most:
        what = say("wrong-people-meet-rules-allow", count=len(m.value.crew), most=most)
        draft.report.error((*m.path, "crew"), what, say("do-name-fewer-people"))
    if not m.value.crew:
        draft.report.warn(m.path, say("wrong-nobody-named-go-meeting"), say("do-add-crew"))
    for key in ("pacer_joins", "pacer_leaves"):
        person = getattr(m.value, key)
        if person in people:
            kinds = {p.value.kind for p in draft.parts_of(person)}
            if PartKind.PACER not in kinds and not draft.may_be(person):
                what = say("wrong-no-part-pacer", person=person)
                draft.report.error((*m.path, key), what, say("do-add-kind-pacer-their-parts"))


def _what(draft: ParseState, m: At[MeetingPlan], cars: Mapping[str, Car]) -> None:
    _place_name(draft, (*m.path, "from"), m.value.from_place)
    there: set[str | None] = {m.value.car} if m.value.car is not None else set()
    if m.value.car is None:
        there |= {p.value.car for who in m.value.crew for p in draft.parts_of(who)}
    for i, item in enumerate(m.value.kit):
        path = (*m.path, "kit", i, "car")
        if item.car in cars and item.car not in there:
            what = say("wrong-travels-does-not-go-meeting", name=item.name, car=item.car)
            draft.report.error(path, what, say("do-put-into-car-goes"))
    car = cars.get(m.value.car or "")
    if car is not None and len(m.value.crew) > car.seats:
        what = say("wrong-people-go-seats", count=len(m.value.crew), car=car.id, seats=car.seats)
        draft.report.warn((*m.path, "crew"), what, say("do-check-seats-name-second-car"))


def _vehicles(draft: ParseState) -> None:
    most = draft.rules.vehicles_max
    for r in draft.runners:
        mine = draft.meetings_with(r.value.id)
        cars: list[str] = []
        for m in mine:
            if m.value.car is not None and m.value.car not in cars:
                cars.append(m.value.car)
                if most is not None and len(cars) > most:
                    what = say(
                        "wrong-cars-used-rules-allow",
                        count=len(cars),
                        name=r.value.name,
                        cars=", ".join(cars),
                        most=most,
                    )
                    draft.report.error((*m.path, "car"), what, say("do-use-fewer-cars"))


def _permits(draft: ParseState) -> None:
    """A permit that a meeting needs and nobody is said to hold, and one held that no point asks for."""
    asked = {p.value.access.permit for p in draft.points if p.value.access and p.value.access.permit}
    plain = {_plain(a) for a in asked}
    held = [(c.path, x) for c in draft.cars for x in c.value.permits]
    held += [(p.path, x) for p in draft.parts for x in p.value.permits]
    for path, name in held:
        if _plain(name) not in plain:
            what = say("wrong-no-point-asks-permit", name=name)
            known = ", ".join(sorted(asked))
            else_say = say("do-permits-asked", known=known) if known else say("do-add-permit-crew-point")
            draft.report.warn((*path, "permits"), what, did_you_mean(name, asked, else_say))
    names = {_plain(x) for _, x in held}
    points = {p.value.id: p.value for p in draft.points}
    for m in draft.meetings:
        point = points.get(m.value.point)
        permit = point.access.permit if point is not None and point.access is not None else ""
        if point is not None and permit and _plain(permit) not in names:
            what = say("wrong-crew-need-permit-nobody-says", permit=permit, name=point.name)
            remedy = say("do-ask-race-then-write-permits", permit=permit)
            draft.report.warn((*m.path, "point"), what, remedy)


def _plain(permit: str) -> str:
    return permit.casefold().strip()


def _one_site(draft: ParseState, one: str, other: str) -> bool:
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


def _car_ways(draft: ParseState) -> None:
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
                what = say("wrong-where-comes-from-not-said", id=car.value.id)
                draft.report.warn(m.path, what, say("do-add-from-here-starts-car"))
            elif not any(_one_site(draft, x, here) or (x, here) in ways for x in came_from):
                what = say("wrong-no-drive-from-so-no", came_from=came_from[0], here=here, id=car.value.id)
                draft.report.warn(m.path, what, say("do-add-under-drives"))


def _meetings_by_car(
    draft: ParseState, order: Mapping[str, int]
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
