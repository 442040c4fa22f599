"""The printed crew sheet: one part a person, HTML made for printing, with everything that must work without a signal."""

from __future__ import annotations

from collections import Counter
from collections.abc import Collection, Sequence
from dataclasses import dataclass, field
from datetime import datetime, timedelta

from jinja2 import Environment, PackageLoader, StrictUndefined, select_autoescape

from server.conversation.telling.cards import built_in_cards, red_flag_line
from server.conversation.telling.planned import say_planned
from server.conversation.telling.reader import reader_in
from server.conversation.telling.say import Say
from server.conversation.telling.sentences import fallback
from server.conversation.telling.things import part_words
from server.conversation.telling.times import clock, own_clock, planned
from server.event.model import Event, Goal, IfThenCard, PartKind, Rules
from server.paper.before import BeforeStart
from server.paper.meeting import GloveMeeting, glove_meeting
from server.paper.moves import COLUMNS, move_rows
from server.paper.silences import silence_columns, silence_notes, silence_rows
from server.paper.table import (
    bag_lines,
    costs,
    cut_off_lines,
    fuel_notes,
    goals_line,
    kit_lines,
    light_lines,
    stage_lines,
    to_minute,
)
from server.plan.cards import cards_of
from server.plan.cutoffs import due_times
from server.plan.movements import APART, CrewPlan
from server.plan.notes import saying
from server.watch.notice import MeetingValues

UNNAMED = "Race control"
"""What the reader of event files calls a race control that was given no name."""
ALL_MEETINGS = frozenset({PartKind.SAFETY_CONTACT, PartKind.ORGANISER})
"""Who has every meeting on their sheet, since they are asked about all of them."""


@dataclass(frozen=True, slots=True)
class _PlanRow:
    cells: tuple[str, ...]
    crew: bool


@dataclass(frozen=True, slots=True)
class _Plan:
    head: str
    goals: str
    columns: tuple[str, ...]
    rows: tuple[_PlanRow, ...]
    light: tuple[str, ...]
    kit: tuple[str, ...]
    cut_offs: tuple[str, ...]
    fuel: tuple[str, ...]


@dataclass(frozen=True, slots=True)
class _How:
    """What the ways to a person's meetings are made of: heads and rows, and what to know of their odds."""

    columns: tuple[str, ...]
    rows: tuple[tuple[str, ...], ...]
    notes: tuple[str, ...] = ()


@dataclass(frozen=True, slots=True)
class _Silences:
    """For those at home: when silence after each point would be asked about, told and an alarm."""

    head: str
    columns: tuple[str, ...]
    rows: tuple[tuple[str, ...], ...]
    notes: tuple[str, ...]


@dataclass(frozen=True, slots=True)
class _Card:
    trouble: str
    life: tuple[str, ...]
    red: str
    steps: tuple[str, ...]
    call: str


@dataclass(frozen=True, slots=True)
class _Page:
    language: str
    name: str
    event: str
    parts: str
    stays: str
    aid: str
    rescue: str
    rules: tuple[str, ...]
    runners: tuple[str, ...]
    meetings: tuple[GloveMeeting, ...]
    phones: tuple[str, ...]
    how: _How
    silences: tuple[_Silences, ...]
    plans: tuple[_Plan, ...]
    red_line: str
    box: tuple[str, ...]
    cards: tuple[_Card, ...]
    heads: dict[str, str] = field(default_factory=dict)

    @property
    def mark(self) -> str:
        """Name and event for the foot of every page, as a CSS string holds them: nothing but letters, digits and escapes."""
        words = f"{self.name} - {self.event} - "
        return "".join(c if c.isascii() and c.isalnum() else f"\\{ord(c):x} " for c in words)


def crew_sheets(before: BeforeStart, people: Sequence[str], title: str, moves: CrewPlan | None = None) -> str:
    """One HTML document, a part of it for each person: a page for the glove box, then the details on further ones.

    `moves`: the crew's movements, for what each way is made of. Errors: KeyError for a person who is not in the event.
    """
    pages = [_page(before, p, moves) for p in people]
    language = pages[0].language if pages else fallback()
    return _templates().get_template("sheet.html").render(pages=pages, title=title, language=language)


def _templates() -> Environment:
    return Environment(
        loader=PackageLoader("server.paper", "templates"),
        autoescape=select_autoescape(default=True),
        undefined=StrictUndefined,
        trim_blocks=True,
    )


def _page(before: BeforeStart, person: str, moves: CrewPlan | None) -> _Page:
    event = before.event
    someone = event.person(person)
    say = Say(reader_in(event, person), before.at)
    parts = event.parts_of(person)
    runners = [
        r.id
        for r in event.runners
        if r.id in before.situation.timetables and any(p.runner in (None, r.id) for p in parts)
    ]
    control, names = event.race_control, {r.id: r.name for r in event.runners}
    named = "none" if control.name == UNNAMED else control.name
    numbers = {"name": named, "phone": control.phone or "?", "emergency": event.emergency_number}
    everything = any(p.kind in ALL_MEETINGS for p in parts)
    met = [
        (r, m.own(person))
        for r in runners
        for m in before.meetings(r)
        if _concerns(event, r, m, person, everything)
    ]
    built_in = built_in_cards(control.phone, event.emergency_number, say.reader.language)
    cards = cards_of(event, built_in)
    common = _common(cards)
    rescue = event.rescue
    return _Page(
        language=say.reader.language,
        name=someone.name,
        event=event.name,
        parts=part_words(say, parts, names),
        stays=" ".join((say.s("paper-window-how"), say.s("paper-stays", when=before.made(say.reader)))),
        aid=say.s("paper-aid", **numbers),
        rescue=say.s("paper-rescue", name=rescue.name, phone=rescue.phone) if rescue else "",
        rules=_rules(say, event.rules),
        runners=tuple(_runner(say, event, r) for r in runners),
        meetings=tuple(_met(before, r, m, say, person) for r, m in met),
        phones=_phones(say, event, person, names),
        how=_how(event, say, moves, {m.meeting for _, m in met}),
        silences=tuple(_silence(before, say, r) for r in runners) if everything else (),
        plans=tuple(_plan(before, say, r) for r in runners),
        red_line=" ".join(
            (
                red_flag_line(control.phone, event.emergency_number, say.reader.language),
                say.s("cards-medical"),
            )
        ),
        box=common,
        cards=tuple(_card(say, c, common) for c in cards),
        heads={
            key: say.s(f"paper-head-{key}")
            for key in ("meetings", "plan", "cards", "light", "fuel", "glove", "phones", "how")
        }
        | {
            "cut_offs": say.s("paper-head-cut-offs"),
            "none": say.s("paper-no-meetings"),
            "medical": say.s("cards-medical"),
        },
    )


def _common(cards: tuple[IfThenCard, ...]) -> tuple[str, ...]:
    """The flags that stand in the one box over all cards: those of more than one of them."""
    counts = Counter(f for c in cards for f in c.life_flags)
    return tuple(f for f, n in counts.items() if n > 1)


def _card(say: Say, card: IfThenCard, common: tuple[str, ...]) -> _Card:
    own = tuple(f for f in card.life_flags if f not in common)
    red = "; ".join(card.red_flags)
    return _Card(
        card.trouble,
        own,
        say.s("paper-card-red", flags=red) if red else "",
        card.try_first,
        say.s("card-call", call=card.call) if card.call else "",
    )


def _silence(before: BeforeStart, say: Say, runner: str) -> _Silences:
    head = say.s("paper-head-silences", runner=before.event.runner(runner).name)
    rows, notes = silence_rows(before, runner, say), silence_notes(before, runner, say)
    return _Silences(head, silence_columns(say), rows, notes)


def _met(before: BeforeStart, runner: str, m: MeetingValues, say: Say, person: str) -> GloveMeeting:
    own = person == before.event.runner(runner).person
    return glove_meeting(before, runner, m, say, own=own, watched=not own and person not in m.crew)


def _concerns(event: Event, runner: str, m: MeetingValues, person: str, everything: bool) -> bool:
    return everything or person in m.crew or person == event.runner(runner).person


def _rules(say: Say, rules: Rules) -> tuple[str, ...]:
    """What the race allows everywhere, and its note."""
    found = [
        saying("rule-vehicles", count=rules.vehicles_max) if rules.vehicles_max is not None else None,
        saying("rule-people", count=rules.crew_people_max) if rules.crew_people_max is not None else None,
        saying("rule-help") if rules.outside_help_only_at_crew_points else None,
        saying("rule-crew-not-before", opens_at=rules.crew_not_before.timestamp())
        if rules.crew_not_before is not None
        else None,
        saying("rule-pacer-from", from_km=rules.pacer_from_km) if rules.pacer_from_km is not None else None,
    ]
    said = "; ".join(say_planned(say.reader, x) for x in found if x is not None)
    return (
        *((say.s("paper-allowed-by", rules=said),) if said else ()),
        *((say.s("paper-rules", rules=rules.note),) if rules.note else ()),
    )


def _runner(say: Say, event: Event, runner: str) -> str:
    r = event.runner(runner)
    return say.s(
        "paper-runner",
        name=r.name,
        bib=r.bib or "none",
        clothing="; ".join(x for x in (r.clothing, r.torch) if x),
    )


def _there(say: Say, at: datetime) -> str:
    """The point's clock alone: both clocks in every cell would push the table off the paper."""
    return clock(at, say.reader, say.now, day=True)


def _how(event: Event, say: Say, moves: CrewPlan | None, mine: Collection[str]) -> _How:
    rows = move_rows(event, moves, say) if moves is not None else ()
    shown = tuple(r.cells for r in rows if r.meeting in mine)
    notes = [
        say_planned(say.reader, n) for n in (moves.notes if moves is not None else ()) if n.kind == APART
    ]
    names = {event.runner(m.runner).name for m in event.meetings if m.id in mine}
    return _How(tuple(say.s(c) for c in COLUMNS), shown, tuple(notes) if len(names) > 1 else ())


def _plan(before: BeforeStart, say: Say, runner: str) -> _Plan:
    event, table = before.event, before.timetable(runner)
    course, due = event.course_of(runner), due_times(event, runner)
    rows = []
    for row in table.rows:
        point = course.point(row.point)
        rules = [
            say.s("paper-due", edge=say.s(f"edge-{d.edge.value}"), when=_there(say, d.at))
            for d in due
            if d.point == row.point
        ]
        clocks = [_there(say, planned(table.start + row.arrive[g], g)) for g in (Goal.A, Goal.B, Goal.C)]
        stop = to_minute(row.stop) if row.stop > timedelta(0) else ""
        cells = (point.name, say.km(row.km), *clocks, stop, ", ".join(rules), costs(say, row))
        rows.append(_PlanRow(cells, point.crew_access))
    heads = (say.s("paper-point"), "", *(say.s("paper-in", goal=g.value) for g in (Goal.A, Goal.B, Goal.C)))
    more = (say.s("paper-stop"), say.s("paper-cut-off"), say.s("paper-minutes-for"))
    fed = event.runner(runner).fuel
    return _Plan(
        head=f"{say.s('paper-head-plan')}: {event.runner(runner).name}",
        goals=" ".join(
            (
                goals_line(say, event, table),
                *((say.s("paper-race-clock"),) if own_clock(table.start, say.reader, say.now) else ()),
            )
        ),
        columns=(*heads, *more),
        rows=tuple(rows),
        light=light_lines(say, before, runner),
        kit=kit_lines(say, before, runner),
        cut_offs=(
            *(x.strip() for x in cut_off_lines(say, before, runner, crew_points=True)),
            *stage_lines(say, before, runner),
        ),
        fuel=(*bag_lines(say, event, table), *fuel_notes(say, event, table)) if fed else (),
    )


def _phones(say: Say, event: Event, person: str, names: dict[str, str]) -> tuple[str, ...]:
    return tuple(
        say.s("paper-phone", name=p.name, parts=part_words(say, event.parts_of(p.id), names), phone=p.phone)
        for p in event.people
        if p.id != person and p.phone and event.parts_of(p.id)
    )
