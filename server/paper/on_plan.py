"""Her plan on a sheet: every point with its times, light, cut-offs, what she carries."""

from __future__ import annotations

from collections.abc import Iterator
from datetime import datetime, timedelta

from server.conversation.telling.times import clock, own_clock, planned
from server.event.model import Goal
from server.paper.document import Block, Grid, Head, Lines, Look, Page, page
from server.paper.table import (
    bag_lines,
    costs,
    cut_off_lines,
    fuel_notes,
    goals_line,
    light_lines,
    stage_lines,
    to_minute,
)
from server.paper.writing import Writing
from server.plan.cutoffs import due_times


def plan_page(w: Writing) -> Page:
    """The plans of those runners whom the person is there for."""
    return page(*(b for r in w.runners for b in _plan(w, r)))


def _plan(w: Writing, runner: str) -> Iterator[Block]:
    say, event, table = w.say, w.event, w.before.timetable(runner)
    yield Head(f"{say.s('paper-head-plan')}: {event.runner(runner).name}")
    yield Lines((goals_line(say, event, table),))
    if own_clock(table.start, say.reader, say.now):
        yield Lines((say.s("paper-race-clock"),))
    yield _timetable(w, runner)
    yield Head(say.s("paper-head-light"))
    yield Lines((" · ".join(light_lines(say, w.before, runner)),))
    yield Head(say.s("paper-head-cut-offs"))
    cut_offs = (x.strip() for x in cut_off_lines(say, w.before, runner, crew_points=True))
    yield Lines((*cut_offs, *stage_lines(say, w.before, runner)), Look.LIST)
    if event.runner(runner).fuel:
        yield Head(say.s("paper-head-fuel"))
        yield Lines((*bag_lines(say, event, table), *fuel_notes(say, event, table)), Look.SMALL)


def _timetable(w: Writing, runner: str) -> Grid:
    say, table = w.say, w.before.timetable(runner)
    course, due = w.event.course_of(runner), due_times(w.event, runner)
    rows = []
    for row in table.rows:
        rules = [
            say.s("paper-due", edge=say.s(f"edge-{d.edge.value}"), when=_there(w, d.at))
            for d in due
            if d.point == row.point
        ]
        clocks = [_there(w, planned(table.start + row.arrive[g], g)) for g in Goal]
        stop = to_minute(row.stop) if row.stop > timedelta(0) else ""
        name = course.point(row.point).name
        rows.append((name, say.km(row.km), *clocks, stop, ", ".join(rules), costs(say, row)))
    heads = (say.s("paper-point"), "", *(say.s("paper-in", goal=g.value) for g in Goal))
    more = (say.s("paper-stop"), say.s("paper-cut-off"), say.s("paper-minutes-for"))
    strong = tuple(i for i, row in enumerate(table.rows) if course.point(row.point).crew_access)
    return Grid((*heads, *more), tuple(rows), strong, numbers=True)


def _there(w: Writing, at: datetime) -> str:
    """The point's clock alone: both clocks in every cell would push the table off the paper."""
    return clock(at, w.say.reader, w.say.now, day=True)
