"""One meeting as paper says it: a line each for calendar and terminal, or four times and what goes with them."""

from __future__ import annotations

from collections.abc import Iterator
from datetime import datetime, timedelta
from zoneinfo import ZoneInfo

from server.conversation.telling.say import SURELY_COME, Say, slug
from server.conversation.telling.times import clock, edges, floor_to, own_clock, planned
from server.event.model import CrewAccess, Event, Goal, MeetingPlan
from server.paper.after_her import after_below, after_her, after_line, once
from server.paper.before import BeforeStart
from server.paper.document import Cell, Met
from server.paper.meeting_facts import meeting_facts
from server.plan.fuel import fuel_of
from server.plan.kit import must
from server.plan.movements.names import car_name, person_name, place_name
from server.plan.movements.rules import same_permit
from server.plan.movements.trips import car_of, goes_to
from server.watch.notice import MeetingValues


def meeting_lines(
    before: BeforeStart, runner: str, m: MeetingValues, say: Say, *, own: bool = False
) -> tuple[str, ...]:
    """Everything about a meeting, a line each: leave by, be there from, when she comes, wait until, what to have. `own`:
    for the runner herself, who has no leave-by and no drive."""
    event = before.event
    name = event.runner(runner).name
    row = before.timetable(runner).row(m.point)
    meant = planned(before.timetable(runner).start + row.arrive[Goal.B], Goal.B)
    said = (
        _lost(m, say),
        "" if own else _after_her(before, runner, m, say) or _leave_line(event, m, say),
        "" if own else say.s("paper-be-there", be_there=say.when(floor_to(m.be_there), day=True)),
        say.s("paper-expected", runner=name, window=say.window(m.window)),
        say.s(
            "paper-planned",
            when=say.when(meant, day=True),
            length=say.length(row.stop) if row.stop else "none",
        ),
        say.until("paper-wait", "paper-wait-short", say.when(m.wait_until, day=True), name, m.p_comes),
        say.s("paper-drive", length=say.length(m.drive)) if m.drive and not own else "",
        *_to_have(before, runner, m, say),
        _missed(m, say),
    )
    return tuple(x for x in said if x)


def _stays(m: MeetingValues) -> bool:
    """Whether crew are at that car park already, from the meeting before."""
    return m.drive == timedelta(0)


def _leave_line(event: Event, m: MeetingValues, say: Say) -> str:
    if _stays(m):
        return say.s(
            "paper-stay", place=place_name(event, m.drive_from) if m.drive_from != m.point else "none"
        )
    if m.leave_by is None:
        return _no_leave(event, m, say)
    origin = "none" if m.drive_from is None else place_name(event, m.drive_from)
    return say.s("paper-leave", leave_by=say.when(floor_to(m.leave_by), day=True), **{"from": origin})


def _no_leave(event: Event, m: MeetingValues, say: Say) -> str:
    """Why there is no leave-by: a drive that nobody stands by, one that is not written down, or no place that it begins."""
    if m.drive is None:
        origin = "none" if m.drive_from is None else place_name(event, m.drive_from)
        return say.s("paper-no-drive", place=place_name(event, m.point), **{"from": origin})
    return say.s("paper-no-leave")


def _other_cars(before: BeforeStart, runner: str, m: MeetingValues, say: Say) -> Iterator[str]:
    """For those who watch over all: when the other cars leave, by the clock or once she has left where they are."""
    event = before.event
    for w in m.parties()[1:]:
        crew = say.all(person_name(event, p) for p in w.crew)
        car = next((c.name for c in event.cars if c.id == w.car), "none")
        origin = "none" if w.drive_from is None else place_name(event, w.drive_from)
        after = after_her(before, runner, w)
        if _stays(w):
            yield say.s("other-car-stays", crew=crew, car=car, place=origin)
        elif w.leave_by is None:
            yield say.s("other-car-unknown", crew=crew, car=car, **{"from": origin})
        elif after is not None:
            whom = after.other or "none"
            yield say.s("paper-other-car-once", crew=crew, car=car, place=after.place, runner=whom)
        else:
            leave_by = say.when(floor_to(w.leave_by), day=True)
            yield say.s("other-car", crew=crew, car=car, leave_by=leave_by, **{"from": origin})


def _cut_short(event: Event, runner: str, m: MeetingValues, say: Say) -> Iterator[str]:
    """Where the wait ends for the next meeting's sake: the odds that she has come by then."""
    if m.p_comes is not None and m.p_comes < SURELY_COME:
        name, until = event.runner(runner).name, say.when(m.wait_until, day=True)
        yield say.until("paper-wait", "paper-wait-short", until, name, m.p_comes)


def _after_her(before: BeforeStart, runner: str, m: MeetingValues, say: Say) -> str:
    """Crew who come straight from another meeting leave when she has left it: a leave-by by the clock is for the earliest
    she may come, and would take them away before."""
    found = after_her(before, runner, m)
    return after_line(say, found, before.event.runner(runner).name) if found is not None else ""


def glove_meeting(
    before: BeforeStart, runner: str, m: MeetingValues, say: Say, *, own: bool = False, watched: bool = False
) -> Met:
    """The same for one look at 3 a.m.: the times side by side, what to know, kit to tick, the rest below. `own`: for the
    runner herself, who has no leave-by, but a plan and a stop. `watched`: for who watches over all and does not go: whose
    times they are."""
    event, plan = before.event, before.plan_of(m.meeting)
    point = event.course_of(runner).point(m.point)
    cells = _her_cells(before, runner, m, say) if own else _crew_cells(before, runner, m, say)
    others = () if own else (
        *_other_cars(before, runner, m, say), *_cut_short(event, runner, m, say), _for_the_way(before, runner, m, say)
    )  # fmt: skip
    going = _going(before, m, say) if watched else ""
    lines = (_lost(m, say), going, *others, *_around(before, runner, m, say))
    must, kit = (_ticks(event, plan, say, safety=x) for x in (True, False))
    blanks = () if own or watched else tuple(say.s(f"paper-blank-{b}") for b in BLANKS)
    about = f"{event.runner(runner).name}, {say.km(point.km or 0.0)}"
    facts = meeting_facts(before, runner, m.point, say, crew=not own)
    return Met(
        point.name, about, cells, facts, must, kit, tuple(x for x in lines if x), _missed(m, say), blanks
    )


BLANKS = ("in", "out", "ate", "drank", "peed")
"""What crew write down at a stop."""


def _ticks(event: Event, plan: MeetingPlan, say: Say, *, safety: bool) -> tuple[str, ...]:
    """Kit to tick; which car it lies in, where it is not one car for all: else each crew think that the other has it."""
    told = [k for k in plan.kit if not k.take_back]
    cars = {k.car for k in told if k.car} - {car_of(event, plan)}
    return tuple(
        say.s("paper-kit-in-car", thing=k.name, car=car_name(event, k.car)) if cars and k.car else k.name
        for k in told
        if must(k) is safety
    )


def _going(before: BeforeStart, m: MeetingValues, say: Say) -> str:
    """Who the times of the first car are for: on the sheet of somebody else they would read as an order to go."""
    first = m.parties()[0]
    plan = before.plan_of(m.meeting)
    car = first.car or car_of(before.event, plan)
    known = next((c.name for c in before.event.cars if c.id == car), "none")
    crew = say.all(person_name(before.event, p) for p in first.crew)
    return say.s("meeting-who", crew=crew, car=known) if crew else ""


def _cell(name: str, at: datetime, say: Say, below: str = "") -> Cell:
    """A time large, on the point's clock; the reader's own clock, where it differs, small below it."""
    there, here = (at.astimezone(ZoneInfo(z)) for z in (say.reader.event_time_zone, say.reader.time_zone))
    own = own_clock(at, say.reader, say.now, day=there.date() != here.date())
    under = (say.s("paper-cell-own", here=own) if own else "", below)
    return Cell(name, clock(at, say.reader, say.now, day=True), " · ".join(x for x in under if x))


def _comes(name: str, m: MeetingValues, say: Say) -> Cell:
    early, likely, late = edges(m.window)
    zone = ZoneInfo(say.reader.event_time_zone)
    low = clock(early, say.reader, say.now, day=True)
    same = early.astimezone(zone).date() == late.astimezone(zone).date()
    high = clock(late, say.reader, say.now, day=not same)
    return _cell(name, likely, say, say.s("paper-cell-between", early=low, late=high))


def _her_cells(before: BeforeStart, runner: str, m: MeetingValues, say: Say) -> tuple[Cell, ...]:
    table = before.timetable(runner)
    row = table.row(m.point)
    return (
        _cell(say.s("paper-cell-planned"), planned(table.start + row.arrive[Goal.B], Goal.B), say),
        Cell(say.s("paper-stop"), say.length(row.stop) if row.stop else "–"),
        _comes(say.s("paper-cell-likely"), m, say),
        _cell(say.s("paper-cell-crew-until"), m.wait_until, say),
    )


def _crew_cells(before: BeforeStart, runner: str, m: MeetingValues, say: Say) -> tuple[Cell, ...]:
    event, after = before.event, after_her(before, runner, m)
    origin = say.s("paper-cell-from", place=place_name(event, m.drive_from)) if m.drive_from else ""
    leave = say.s("paper-cell-leave")
    unknown = " · ".join(x for x in (origin, _no_leave(event, m, say)) if x)
    if _stays(m):
        first = Cell(leave, say.s("paper-cell-stay"), say.s("paper-there-already"))
    elif m.leave_by is None:
        first = Cell(leave, "?", unknown)
    elif after is not None:
        first = Cell(say.s("paper-cell-leave-once"), once(say, after), after_below(say, after))
    else:
        first = _cell(leave, floor_to(m.leave_by), say, origin)
    return (
        first,
        _cell(say.s("paper-cell-there"), floor_to(m.be_there), say),
        _comes(say.s("paper-cell-comes"), m, say),
        _cell(say.s("paper-cell-wait"), m.wait_until, say),
    )


def _missed(m: MeetingValues, say: Say) -> str:
    return say.s("paper-if-missed", text=m.if_missed) if m.if_missed else ""


def _lost(m: MeetingValues, say: Say) -> str:
    return say.s("paper-lost", why=say.s(f"lost-{slug(m.lost)}")) if m.lost else ""


def _to_have(before: BeforeStart, runner: str, m: MeetingValues, say: Say) -> tuple[str, ...]:
    """What to bring, where to park, who joins."""
    event, plan = before.event, before.plan_of(m.meeting)
    safety = [k.name for k in plan.kit if not k.take_back and must(k)]
    brought = [k.name for k in plan.kit if not k.take_back and not must(k)]
    return (
        say.s("paper-kit-safety", kit=say.things(safety)) if safety else "",
        say.s("paper-kit", kit=say.things(brought)) if brought else "",
        *_packed(event, plan, say),
        *_around(before, runner, m, say),
    )


def _around(before: BeforeStart, runner: str, m: MeetingValues, say: Say) -> tuple[str, ...]:
    """What else than kit: what to take back, food, who joins, where to park, what the race allows."""
    event, plan = before.event, before.plan_of(m.meeting)
    point = event.course_of(runner).point(m.point)
    access = point.access
    taken = [k.name for k in plan.kit if k.take_back]
    return (
        say.s("take-back", place=point.name, kit=say.things(taken)) if taken else "",
        say.s("paper-food", food=m.food) if m.food else "",
        say.s("paper-pacer-joins", who=person_name(event, plan.pacer_joins)) if plan.pacer_joins else "",
        say.s("paper-pacer-leaves", who=person_name(event, plan.pacer_leaves)) if plan.pacer_leaves else "",
        say.s("paper-parking", parking=access.parking) if access and access.parking else "",
        *(_access(event, plan, access, say) if access is not None else ()),
        say.s("paper-no-signal") if m.no_signal else "",
    )


def _for_the_way(before: BeforeStart, runner: str, m: MeetingValues, say: Say) -> str:
    """What her fuel plan asks of crew there; nothing where a bag of hers has it."""
    r = before.event.runner(runner)
    if any(b.point == m.point for b in r.drop_bags):
        return ""
    bags = fuel_of(r, before.event.course_of(runner).points, before.timetable(runner)).bags if r.fuel else ()
    things = [f"{count} {name}" for b in bags if b.point == m.point for name, count in b.things]
    return say.s("paper-give-for-the-way", things=say.things(things)) if things else ""


def _packed(event: Event, plan: MeetingPlan, say: Say) -> Iterator[str]:
    """Which car what lies in, where it is not one car for all: else each crew think that the other has it."""
    by_car: dict[str, list[str]] = {}
    for k in plan.kit:
        if not k.take_back and k.car:
            by_car.setdefault(k.car, []).append(k.name)
    if set(by_car) - {car_of(event, plan)}:
        for car, things in by_car.items():
            yield say.s("bring-car", car=car_name(event, car), items=say.things(things))


def _access(event: Event, plan: MeetingPlan, access: CrewAccess, say: Say) -> tuple[str, ...]:
    """What the race allows there: permit and who has it, hours, how many people and cars."""
    opens = _later(access.opens, event.rules.crew_not_before)
    hours = {
        "from": say.when(opens, day=True) if opens is not None else "none",
        "to": say.when(access.closes, day=True) if access.closes is not None else "none",
    }
    allowed = [
        say.s("paper-people-max", count=access.people_max) if access.people_max is not None else "",
        say.s("paper-cars-max", count=access.cars_max) if access.cars_max is not None else "",
    ]
    return (
        say.s("paper-permit", permit=access.permit, who=_holders(event, plan, access.permit, say))
        if access.permit
        else "",
        say.s("paper-hours", **hours) if set(hours.values()) != {"none"} else "",
        say.s("paper-allowed", what=say.all(allowed)) if any(allowed) else "",
    )


def _later(one: datetime | None, other: datetime | None) -> datetime | None:
    return max((t for t in (one, other) if t is not None), default=None)


def _holders(event: Event, plan: MeetingPlan, permit: str, say: Say) -> str:
    car = car_of(event, plan)
    cars = [car_name(event, c.id) for c in event.cars if c.id == car and same_permit(permit, c.permits)]
    goes = goes_to(event, plan)
    people = [
        person_name(event, p.person)
        for p in event.parts
        if p.person in goes and same_permit(permit, p.permits)
    ]
    return say.all([*cars, *people]) or "none"
