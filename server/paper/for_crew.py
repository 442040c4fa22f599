"""The sheet of crew and pacers: meetings with all that is done there; then the car, and who watches over all of them."""

from __future__ import annotations

from collections.abc import Collection, Iterator, Sequence

from server.conversation.telling.movements import trouble_lines
from server.conversation.telling.planned import say_planned
from server.conversation.telling.things import part_words
from server.conversation.telling.times import floor_to, planned
from server.event.model import Drive, Goal, PartKind, Point, Signal
from server.paper.bad_moments import bad_moments
from server.paper.document import Block, Grid, Head, Lines, Look, Met, Page, page
from server.paper.emergency import MANY, stretches
from server.paper.meeting import glove_meeting
from server.paper.moves import COLUMNS, move_rows
from server.paper.rules import rules_lines
from server.paper.table import kit_lines
from server.paper.writing import Writing, grid_ref, spot_of
from server.plan.movements import APART, MeetingMovement, Ride
from server.plan.movements.names import car_name, person_name, place_name
from server.watch.notice import MeetingValues

Met_ = tuple[str, MeetingValues]
CAR_PARKS = ("point", "parking-head", "grid-ref", "know")
DRIVES = ("from", "to", "takes", "directions")


def meetings_of(w: Writing, *, everything: bool = False) -> tuple[Met_, ...]:
    """(runner, meeting) of the person's own meetings, or of all of their runners, by the clock: who meets two runners drives
    from the one to the other."""
    found = (
        (r, m.own(w.person))
        for r in w.runners
        for m in w.before.meetings(r)
        if everything or w.person in m.crew or w.person == w.event.runner(r).person
    )
    return tuple(sorted(found, key=lambda f: f[1].window.likely))


def met_block(w: Writing, runner: str, m: MeetingValues) -> Met:
    """A meeting as the person reads it."""
    own = w.person == w.event.runner(runner).person
    return glove_meeting(w.before, runner, m, w.say, own=own, watched=not own and w.person not in m.crew)


def crew_page(w: Writing) -> Page:
    """What they do: every meeting with its times, what to know, what to bring, and room to write in what she did."""
    mine = meetings_of(w)
    kit = tuple(x for r in w.runners for x in kit_lines(w.say, w.before, r)) if w.sees_numbers else ()
    trouble = trouble_lines(w.say.reader, w.event, w.moves, w.person) if w.moves is not None else ()
    return page(
        Lines(w.aid(), Look.DANGER),
        Lines((*_paces(w), *_rides_along(w))),
        *(met_block(w, r, m) for r, m in mine),
        None if mine else Lines((w.s("paper-no-meetings"),)),
        Lines((*kit, *trouble), Look.FRAME),
        Lines((*_who(w), *rules_lines(w), f"{w.s('paper-head-glove')}." if mine else ""), Look.SMALL),
    )


def _rides_along(w: Writing) -> Iterator[str]:
    """Ways on which they sit in a car to a meeting that is none of theirs: who is not in it has no way to their own."""
    mine = {m.meeting for _, m in meetings_of(w)}
    visits = w.moves.visits if w.moves is not None else ()
    along: list[tuple[Ride, MeetingMovement]] = []
    for v in visits:
        ride = next((r for r in v.rides if w.person in r.riders), None)
        if v.meeting in mine and along:
            yield _ride_along(w, along)
            along = []
        if v.meeting not in mine and ride is not None and ride.car is not None and ride.last.ways:
            along.append((ride, v))


def _ride_along(w: Writing, along: Sequence[tuple[Ride, MeetingMovement]]) -> str:
    """All ways before their next own meeting: which car, from where and when, by way of where."""
    first, visit = along[0]
    told = next((m for m in w.before.meetings(visit.runner) if m.meeting == visit.meeting), None)
    by = None if told is None else told.own(first.driver or w.person).leave_by
    came = (
        next((v for v in w.moves.visits if v.meeting == first.after), None) if w.moves is not None else None
    )
    at = None if by is None else w.say.when(floor_to(by), day=True)
    origin = first.leave_from if came is None or came.point != first.leave_from else None
    return w.s(
        "paper-rides-along",
        car=car_name(w.event, first.car or ""),
        driver="none" if first.driver is None else person_name(w.event, first.driver),
        origin="none" if origin is None else place_name(w.event, origin),
        leave="after" if came is not None else "none" if at is None else "at",
        at=at or "",
        before="" if came is None else place_name(w.event, came.point),
        places=w.say.all(place_name(w.event, v.point) for _, v in along),
    )


def _paces(w: Writing) -> Iterator[str]:
    """For a pacer: from where to where they run with whom, by her plan, and what is theirs to bring."""
    for p in w.event.parts_of(w.person):
        for r in w.runners if p.kind is PartKind.PACER and p.pace_from and p.pace_to else ():
            if p.runner in (None, r):
                table, course = w.before.timetable(r), w.event.course_of(r)
                first, last = table.row(p.pace_from or ""), table.row(p.pace_to or "")
                sign_in = w.event.rules.pacer_sign_in
                yield w.s(
                    "paper-pacer-way",
                    runner=w.event.runner(r).name,
                    to=course.point(last.point).name,
                    length=w.say.km(last.km - first.km),
                    start=w.say.when(planned(table.start + first.leave[Goal.B], Goal.B), day=True),
                    end=w.say.when(planned(table.start + last.arrive[Goal.B], Goal.B), day=True),
                    before=w.say.length(sign_in) if sign_in else "none",
                    **{"from": course.point(first.point).name},
                )


def _who(w: Writing) -> Iterator[str]:
    """Whom to look out for, where they are few."""
    if len(w.runners) <= MANY:
        yield from (w.named(w.event.runner(r)) for r in w.runners)


def stays(w: Writing) -> str:
    """What the times mean and since when they stand."""
    return " ".join(
        (w.s("paper-window-how"), w.s("paper-odds-if"), w.s("paper-stays", when=w.before.made(w.say.reader)))
    )


def watched_page(w: Writing) -> Page:
    """Every meeting, for those who are asked about all of them: on their own sheet nobody's order to go."""
    mine = {m.meeting for _, m in meetings_of(w)} if w.kinds & {PartKind.CREW, PartKind.PACER} else set()
    met = [(r, m) for r, m in meetings_of(w, everything=True) if m.meeting not in mine]
    shown = (met_block(w, r, m) for r, m in met)
    return page(
        Head(w.s("paper-head-meetings")),
        *shown,
        None if met or mine else Lines((w.s("paper-no-meetings"),)),
        *_how(w, {m.meeting for _, m in met}),
        Lines((stays(w),), Look.SMALL),
    )


def car_page(w: Writing) -> Page:
    """The car: runners, numbers, the race's rules, car parks, ways, where there is no signal, bags, her own words."""
    mine = meetings_of(w)
    return page(
        Lines((stays(w),), Look.SMALL),
        Head(w.s("paper-head-phones")),
        Lines(phones(w), Look.COLUMNS),
        Head(w.s("paper-head-parking")),
        _car_parks(w, mine),
        *_how(w, {m.meeting for _, m in mine}),
        _directions(w, mine),
        *_ground(w),
        *(b for r in w.runners for b in bad_moments(w, r)),
    )


def phones(w: Writing) -> tuple[str, ...]:
    """Everybody else's number with what they are here."""
    names = {r.id: r.name for r in w.event.runners}
    return tuple(
        w.s("paper-phone", name=p.name, parts=part_words(w.say, w.event.parts_of(p.id), names), phone=p.phone)
        for p in w.event.people
        if p.id != w.person and p.phone and w.event.parts_of(p.id)
    )


def _car_parks(w: Writing, met: Collection[Met_]) -> Grid:
    rows = {}
    for runner, m in met:
        point = w.event.course_of(runner).point(m.point)
        if point.access is not None:
            rows[point.id] = (point.name, point.access.parking, _where(w, runner, point), _know(w, point))
    return Grid(w.heads(CAR_PARKS), tuple(rows.values()), shares=(1.4, 2.0, 1.8, 2.4))


def _where(w: Writing, runner: str, point: Point) -> str:
    """The car park's place; that of the point on the course, marked so, where the file has none."""
    assert point.access is not None
    given = spot_of(w.event, point.access)
    if given is not None:
        return grid_ref(*given)
    spot = w.before.course(runner).at(point.km or 0.0)
    return f"{grid_ref(spot.lat_deg, spot.lon_deg)}\n{w.s('paper-not-the-car-park')}"


def _know(w: Writing, point: Point) -> str:
    assert point.access is not None
    told = (
        w.s("paper-fact-walk", length=w.say.length(point.access.walk_in)) if point.access.walk_in else "",
        "" if point.signal is Signal.GOOD else w.s(f"paper-signal-{point.signal.value}"),
        point.note,
    )
    return "\n".join(x for x in told if x)


def _how(w: Writing, meetings: Collection[str]) -> Iterator[Block]:
    rows = move_rows(w.event, w.moves, w.say) if w.moves is not None else ()
    shown = tuple(r.cells for r in rows if r.meeting in meetings)
    if not shown:
        return
    yield Head(w.s("paper-head-how"))
    yield Grid(tuple(w.s(c) for c in COLUMNS), shown, shares=(1.0, 1.6, 1.4, 1.4, 2.6, 1.2))
    names = {event_runner for m in w.event.meetings if m.id in meetings for event_runner in (m.runner,)}
    notes = w.moves.notes if w.moves is not None else ()
    if len(names) > 1:
        yield Lines(tuple(f"{say_planned(w.say.reader, n)}." for n in notes if n.kind == APART))


def _directions(w: Writing, met: Collection[Met_]) -> Grid:
    """The drives to these points as the file gives them: how long, who stands by that, which way."""
    points = {m.point for _, m in met}
    return Grid(
        w.heads(DRIVES),
        tuple(_drive(w, d) for d in w.event.drives if d.to_place in points),
        shares=(1.2, 1.2, 1.6, 3.0),
    )


def _drive(w: Writing, d: Drive) -> tuple[str, ...]:
    known = "?" if d.minutes is None else f"{d.minutes:g} min"
    by = "none" if d.confirmed_by is None else person_name(w.event, d.confirmed_by)
    return (
        place_name(w.event, d.from_place),
        place_name(w.event, d.to_place),
        w.s("paper-stands-by", length=known, who=by),
        d.note,
    )


def _ground(w: Writing) -> Iterator[Block]:
    """What several runners have in common stands there once; a bag says whose it is where there are several."""
    yield Head(w.s("paper-head-ground"))
    ways = dict.fromkeys(line for r in w.runners for line in stretches(w, r).lines)
    yield Lines(tuple(ways), Look.LIST)
    yield Head(w.s("paper-head-bags"))
    yield Lines(tuple(_bags(w)), Look.LIST)


def _bags(w: Writing) -> Iterator[str]:
    for r in (w.event.runner(x) for x in w.runners):
        course = w.event.course_of(r.id)
        whose = r.name if len(w.runners) > 1 else "none"
        for b in r.drop_bags:
            things = w.say.things(k.name for k in b.kit)
            yield w.s("paper-bag", place=course.point(b.point).name, things=things, runner=whose)
