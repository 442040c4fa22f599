"""Crew who come straight from one meeting to the next leave when that runner has left: when that is, as crews say it."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from datetime import datetime, timedelta

import numpy as np

from server.conversation.telling.say import Say
from server.conversation.telling.times import planned
from server.event.model import Goal
from server.paper.before import BeforeStart
from server.plan.movements.names import place_name
from server.watch.notice import MeetingValues

STEP = timedelta(minutes=5)


@dataclass(frozen=True, slots=True)
class AfterHer:
    """`place` she has to have left, `point` its id; `latest` how long after that they leave at the latest, so that they are
    at the next one before her as surely as is promised (None: even at once is too late for that); when she leaves it as
    planned, by goal; until when they stay if she has not come. `other`: who that is, where they go on to another runner,
    who waits for nobody: then they leave by `until`, whether or not the first has come."""

    place: str
    point: str
    latest: timedelta | None
    leaves: tuple[tuple[Goal, datetime], ...]
    until: datetime
    no_signal: bool
    other: str = ""


def after_her(before: BeforeStart, runner: str, m: MeetingValues) -> AfterHer | None:
    """What holds for this way to a meeting; None where its crew come from no meeting with her or with another of theirs."""
    if m.leave_by is None or m.drive == timedelta(0):
        return None
    found = _before(before, m)
    if found is None:
        return None
    whose, last = found
    table = before.timetable(whose)
    leaves = tuple((g, planned(table.start + table.row(last.point).leave[g], g)) for g in Goal)
    return AfterHer(
        place_name(before.event, last.point),
        last.point,
        _latest(before, runner, m, last.point) if whose == runner else None,
        leaves,
        last.wait_until,
        last.no_signal,
        "" if whose == runner else before.event.runner(whose).name,
    )


def _before(before: BeforeStart, m: MeetingValues) -> tuple[str, MeetingValues] | None:
    """The last meeting that these crew have at the place they come from, and with whom."""
    found = [
        (p.window.likely, r.id, p)
        for r in before.event.runners
        if r.id in before.situation.timetables
        for p in before.meetings(r.id)
        if p.point == m.drive_from and set(p.crew) & set(m.crew) and p.window.likely < m.window.likely
    ]
    return max(found, key=lambda f: f[0])[1:] if found else None


def _latest(before: BeforeStart, runner: str, m: MeetingValues, left: str) -> timedelta | None:
    """How long after she has left the point before they may leave: what she takes at least, less their own way."""
    view = before.views[runner]
    assert m.leave_by is not None
    if left not in view.points or m.point not in view.points:
        return None
    arrive, leave = view.paths()
    i, j = view.points.index(left), view.points.index(m.point)
    least = timedelta(seconds=float(np.quantile(arrive[:, j] - leave[:, i], 1.0 - m.p_in_time)))
    spare = least - (m.be_there - m.leave_by)
    return None if spare < STEP else spare - spare % STEP


def after_line(say: Say, found: AfterHer, name: str) -> str:
    """'Leave once Maren has left Mill, at the latest 2 h 5 min after; not before …'"""
    return say.s(
        "paper-after-other" if found.other else "paper-after-her",
        runner=found.other or name,
        place=found.place,
        after=_length(say, found),
        times=say.all(_times(say, found)),
        until=say.when(found.until, day=True),
        signal="none" if found.no_signal else "some",
    )


def once(say: Say, found: AfterHer) -> str:
    """'once she has left Mill', large in a cell."""
    return say.s("paper-cell-once", place=found.place, runner=found.other or "none")


def after_below(say: Say, found: AfterHer) -> str:
    """The same below a cell: how long after at the latest, and when that is by each goal."""
    if found.other:
        until = say.when(found.until, day=True)
        return say.s("paper-cell-after-other", until=until, times=say.all(_times(say, found)))
    return say.s("paper-cell-after", after=_length(say, found), times=say.all(_times(say, found)))


def _length(say: Say, found: AfterHer) -> str:
    return "none" if found.latest is None else say.length(found.latest)


def _times(say: Say, found: AfterHer) -> Iterator[str]:
    """When she leaves by each goal; once, where a stage ends there and all start together."""
    if len({at for _, at in found.leaves}) == 1:
        yield say.when(found.leaves[0][1], day=True)
        return
    for goal, at in found.leaves:
        yield say.s("paper-after-goal", goal=goal.value, when=say.when(at, day=goal is Goal.A))
