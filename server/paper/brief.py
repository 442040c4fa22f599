"""The brief: one document that crew read before they travel. Who does what, by which rules, how they get there, what she
wants to hear, who drives where, what is still to be tried, the cards."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from server.conversation.telling.movements import plan_remarks
from server.conversation.telling.reader import reader_in
from server.conversation.telling.things import part_words
from server.event.model import PartKind
from server.paper.bad_moments import bad_moments
from server.paper.before import BeforeStart
from server.paper.document import Block, Grid, Head, Lines, Look, Page, Sheet, page
from server.paper.emergency import cards_page
from server.paper.lists import sleeps
from server.paper.moves import COLUMNS, move_rows
from server.paper.rules import rules_lines
from server.paper.table import goals_line, kit_lines, to_minute
from server.paper.writing import Writing
from server.plan.movements import CarWay, CrewPlan
from server.plan.movements.names import car_name, person_name, place_name

READERS = (PartKind.CREW, PartKind.PACER, PartKind.SAFETY_CONTACT)
WHO = ("who", "part", "car", "phone-head")
RECCE = ("from", "to", "takes", "stands-by-head", "driven-at", "measured")
HOUSE = ("time", "hurry", "cant", "tired", "seen", "help")


def briefs_of(before: BeforeStart, moves: CrewPlan | None = None) -> tuple[Sheet, ...]:
    """One in each language that those who read it have; none for a race without crew."""
    first: dict[str, str] = {}
    for person in dict.fromkeys(p.person for kind in READERS for p in before.event.parts if p.kind is kind):
        first.setdefault(reader_in(before.event, person).language, person)
    return tuple(_brief(Writing(before, person, moves)) for person in first.values())


def _brief(w: Writing) -> Sheet:
    pages = (_people(w), _drives(w), cards_page(w))
    return Sheet(w.say.reader.language, w.s("paper-brief"), w.event.name, w.s("paper-brief-about"), pages)


def _people(w: Writing) -> Page:
    runners = [r.id for r in w.event.runners if r.id in w.before.situation.timetables]
    mine = {m.runner for m in w.event.meetings}
    met = [r for r in runners if r in mine]
    brief = w.event.brief
    named = ((w.s(f"paper-head-{k}"), getattr(brief, k)) for k in ("travel", "beds", "entry", "also"))
    return page(
        Lines(w.aid(), Look.DANGER),
        *(b for r in met for b in _runner(w, r)),
        Head(w.s("paper-head-who")),
        Grid(w.heads(WHO), tuple(_who(w)), shares=(1.0, 2.4, 1.0, 1.4)),
        Head(w.s("paper-head-house")),
        Lines(tuple(w.s(f"paper-house-{h}", emergency=w.event.emergency_number) for h in HOUSE), Look.STEPS),
        *(b for head, lines in named for b in (Head(head), Lines(lines, Look.LIST))),
        Head(w.s("paper-head-rules")),
        Lines(rules_lines(w)),
    )


def _runner(w: Writing, runner: str) -> Iterator[Block]:
    yield Lines((w.named(w.event.runner(runner)), goals_line(w.say, w.event, w.before.timetable(runner))))
    yield from bad_moments(w, runner)
    yield Lines(kit_lines(w.say, w.before, runner), Look.FRAME)


def _who(w: Writing) -> Iterator[tuple[str, ...]]:
    names = {r.id: r.name for r in w.event.runners}
    for p in w.event.people:
        parts = w.event.parts_of(p.id)
        if parts:
            cars = w.say.all(dict.fromkeys(car_name(w.event, x.car) for x in parts if x.car))
            yield (p.name, part_words(w.say, parts, names), cars, p.phone)


def _drives(w: Writing) -> Page:
    rows = tuple(r.cells for r in move_rows(w.event, w.moves, w.say)) if w.moves is not None else ()
    still = plan_remarks(w.say.reader, w.event, w.moves) if w.moves is not None else ()
    asleep = dict.fromkeys(x for r in w.event.runners for x in sleeps(w, r))
    return page(
        Head(w.s("paper-head-drives")),
        Grid(tuple(w.s(c) for c in COLUMNS), rows, shares=(1.0, 1.6, 1.4, 1.4, 2.6, 1.2)),
        Lines(tuple(f"{x.rstrip('.')}." for x in still), Look.FRAME),
        Head(w.s("paper-head-recce")),
        Lines((w.s("paper-recce"),)),
        Grid(w.heads(RECCE), tuple(_recce(w)), shares=(1.5, 1.5, 0.8, 1.6, 1.2, 1.2)),
        Head(w.s("paper-head-sleeps")),
        Lines(tuple(asleep), Look.LIST),
    )


def _recce(w: Writing) -> Iterator[tuple[str, ...]]:
    """Each way once, those that nobody stands by first."""
    found: dict[tuple[str, str], tuple[CarWay, str]] = {}
    for visit in w.moves.visits if w.moves is not None else ():
        for ride in visit.rides:
            for way in ride.journey.ways:
                found.setdefault((way.from_place, way.to_place), (way, w.say.when(ride.there, day=True)))
    for way, when in sorted(found.values(), key=lambda x: x[0].confirmed):
        by = person_name(w.event, way.by) if way.confirmed and way.by else w.s("paper-nobody-yet")
        length = "?" if way.drive is None else to_minute(way.drive)
        yield (place_name(w.event, way.from_place), place_name(w.event, way.to_place), length, by, when, "")


def file_names(sheets: Sequence[Sheet]) -> tuple[str, ...]:
    """A name for each: 'brief', with the language where there are several."""
    return tuple(f"brief-{s.language}" if len(sheets) > 1 else "brief" for s in sheets)
