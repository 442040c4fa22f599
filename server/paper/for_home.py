"""The sheet of who is at home: what an alarm asks of them, the ladder, when each silence is asked about, told, an alarm."""

from __future__ import annotations

from collections.abc import Iterator

from server.conversation.telling.times import own_clock
from server.event.model import Part, PartKind
from server.paper.document import Block, Grid, Head, Lines, Look, Page, page
from server.paper.for_crew import phones
from server.paper.rules import rules_lines
from server.paper.silences import silence_columns, silence_notes, silence_rows
from server.paper.writing import Writing
from server.plan.cutoffs import due_times

LADDER = ("step", "who", "asked-after", "phone-head", "know")


def home_page(w: Writing) -> Page:
    """What they do, who is asked after whom, silences, numbers."""
    return page(
        Lines(w.aid(), Look.DANGER),
        Head(w.s("paper-head-do")),
        Lines(tuple(_steps(w)), Look.STEPS),
        *(b for r in w.runners for b in _ladder(w, r)),
        Head(w.s("paper-head-phones")),
        Lines(phones(w), Look.COLUMNS),
        Lines(rules_lines(w)),
        *(b for r in w.runners for b in _silence(w, r)),
    )


def _steps(w: Writing) -> Iterator[str]:
    rule, control = w.event.alarm, w.control()
    calls = next((p.person for p in w.event.parts if p.calls_race_control), None)
    tables = [w.before.timetable(r) for r in w.runners]
    if tables:
        first = min(t.start for t in tables)
        # Nobody knows yet how slow a day it is: until the race is over, where that has an end.
        ends = [d.at for t in tables for d in due_times(w.event, t.runner)[-1:]]
        last = max([*ends, *(t.start + max(t.rows[-1].leave.values()) for t in tables)])
        yield w.s("paper-home-reach", **{"from": w.say.when(first, day=True)}, to=w.say.when(last, day=True))
    yield w.s("paper-home-late")
    yield w.s("paper-home-alarm", length=w.say.length(rule.answer_within))
    if calls is not None:
        mine = "yes" if calls == w.person else "no"
        yield w.s(
            "paper-home-calls",
            mine=mine,
            who=w.event.person(calls).name,
            name=control["name"],
            phone=control["phone"],
        )
    yield w.s("paper-home-again", length=w.say.length(rule.look_again))
    yield w.s("paper-home-ends")


def _ladder(w: Writing, runner: str) -> Iterator[Block]:
    parts = sorted(
        (p for p in w.event.parts if p.ladder is not None and p.runner in (None, runner)),
        key=lambda p: p.ladder or 0,
    )
    steps = sorted({p.ladder or 0 for p in parts})
    yield Head(w.s("paper-head-ladder", runner=w.event.runner(runner).name))
    yield Grid(
        w.heads(LADDER),
        tuple(_step(w, p, steps.index(p.ladder or 0)) for p in parts),
        shares=(0.6, 1.2, 1.2, 2.0, 4.0),
    )


def _step(w: Writing, p: Part, nth: int) -> tuple[str, ...]:
    person = w.event.person(p.person)
    after = w.s("paper-at-once") if nth == 0 else w.say.length(nth * w.event.alarm.answer_within)
    sleeps = (
        w.s("paper-sleeps", **{"from": w.say.when(s.start, day=True)}, to=w.say.when(s.end, day=True))
        for s in p.sleeps
    )
    know = (w.s("paper-calls-control") if p.calls_race_control else "", *sleeps)
    return (str(p.ladder), person.name, after, person.phone or "?", " ".join(x for x in know if x))


def _silence(w: Writing, runner: str) -> Iterator[Block]:
    yield Head(w.s("paper-head-silences", runner=w.event.runner(runner).name))
    yield Grid(
        silence_columns(w.say), silence_rows(w.before, runner, w.say), shares=(1.2, 1.4, 1.4, 1.4, 1.4)
    )
    start = w.before.timetable(runner).start
    if own_clock(start, w.say.reader, w.say.now):
        yield Lines((w.s("paper-silence-clock", when=w.say.when(start, day=True)),))
    if PartKind.ORGANISER in w.kinds:
        # What one reporter more would do is for who can find one, not for who waits at home by night.
        yield Lines(silence_notes(w.before, runner, w.say), Look.SMALL)
