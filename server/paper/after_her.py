"""Crew who come straight from one meeting with her to the next leave when she has left: when that is, as crews say it."""

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
    planned, by goal; until when they stay if she has not come."""

    place: str
    point: str
    latest: timedelta | None
    leaves: tuple[tuple[Goal, datetime], ...]
    until: datetime


def after_her(before: BeforeStart, runner: str, m: MeetingValues) -> AfterHer | None:
    """What holds for this way to a meeting; None where its crew come from no meeting with her."""
    mine = [p for p in before.meetings(runner) if p.point == m.drive_from and set(p.crew) & set(m.crew)]
    if not mine or m.leave_by is None or m.drive == timedelta(0):
        return None
    last, table = mine[-1], before.timetable(runner)
    row = table.row(last.point)
    leaves = tuple((g, planned(table.start + row.leave[g], g)) for g in Goal)
    return AfterHer(
        place_name(before.event, last.point), last.point, _latest(before, runner, m, last.point), leaves, last.wait_until
    )  # fmt: skip


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
        "paper-after-her",
        runner=name,
        place=found.place,
        after=_length(say, found),
        times=say.all(_times(say, found)),
        until=say.when(found.until, day=True),
    )


def after_below(say: Say, found: AfterHer) -> str:
    """The same below a cell: how long after at the latest, and when that is by each goal."""
    return say.s("paper-cell-after", after=_length(say, found), times=say.all(_times(say, found)))


def _length(say: Say, found: AfterHer) -> str:
    return "none" if found.latest is None else say.length(found.latest)


def _times(say: Say, found: AfterHer) -> Iterator[str]:
    for goal, at in found.leaves:
        yield say.s("paper-after-goal", goal=goal.value, when=say.when(at, day=goal is Goal.A))
