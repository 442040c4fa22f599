"""Before the race: after each point, when crew would be asked, home told and the alarm raised, if nothing more were heard.

For each goal and each point that somebody reports from she is taken to leave it as planned, and then to be heard of no more.
The moments are those of the live rules (silence.py, told_home.py), on the forecast made of the facts so far. Where the alarm
would come long after the likely time, it is said why, and what would shorten it: worked out anew with one reporter more.
"""

from __future__ import annotations

import math
from collections.abc import Iterator, Sequence
from dataclasses import dataclass, replace
from datetime import datetime, timedelta
from enum import StrEnum

from server.course import Course
from server.event.model import Event, Goal, Point, ReporterKind, ReportsThere
from server.facts.entry import Entry, Kind, Source
from server.facts.fold import fold
from server.forecast.bridge import outlook
from server.forecast.watchers import OWN_MEANS, has_signal
from server.plan.timetable import Timetable
from server.watch.late_values import WhyNow
from server.watch.runner_context import Sight
from server.watch.silence import late_at, overdue
from server.watch.situation import Situation
from server.watch.told_home import told_home_at

__all__ = ["FAR", "Because", "LegSilence", "Shorter", "silences"]

FAR = timedelta(hours=2)
"""An alarm so long after the likely time is explained."""
WIDE = timedelta(hours=1)
"""Her 90% time so long after the likely one is a reason by itself (own choice)."""
GAINS = timedelta(minutes=15)
"""A reporter who brings the alarm forward by less is not named (own choice)."""
SECOND = ReportsThere(ReporterKind.VOLUNTEER, 0.95, timedelta(minutes=5))
"""One reporter more, who writes by means of the race's own."""


class Because(StrEnum):
    """Why an alarm would come long after the likely time."""

    NOBODY = "nobody reports"
    """Nobody reports from the points before the one at which she is asked about."""
    MISSED = "may be missed"
    """Those who report there miss her more often than the alarm line allows."""
    WIDE = "uncertain"
    """Her time there is uncertain by itself."""


@dataclass(frozen=True, slots=True)
class Shorter:
    """What would bring the alarm forward, to `alarm`: somebody more who reports from `point`."""

    point: str
    alarm: datetime


@dataclass(frozen=True, slots=True)
class LegSilence:
    """Nothing heard after she left `point` at `left` by `goal`.

    `next_point`: where she is asked about, `likely` her time there; `asked`, `home`, `alarm`: when crew are asked, home is
    told, the alarm comes (None: silence alone never does it), and `why` then; `told`: when it comes if crew there, asked,
    say 'not yet'. `misses`: the odds that those who report from `next_point` all miss her; `quiet`: points before it that
    nobody reports from. `because`, `shorter`: of an alarm that comes more than `FAR` after the likely time.
    """

    goal: Goal
    point: str
    left: datetime
    next_point: str
    likely: datetime
    asked: datetime
    home: datetime
    alarm: datetime | None
    why: WhyNow | None
    told: datetime | None = None
    misses: float = 0.0
    quiet: tuple[str, ...] = ()
    because: tuple[Because, ...] = ()
    shorter: Shorter | None = None

    @property
    def after(self) -> timedelta | None:
        """How long after the likely time the alarm comes."""
        return None if self.alarm is None else self.alarm - self.likely

    @property
    def far(self) -> bool:
        """Whether it comes so late that it has to be explained."""
        return self.after is None or self.after > FAR


def silences(event: Event, runner: str, timetable: Timetable, course: Course) -> tuple[LegSilence, ...]:
    """A row for each goal and each point but the finish from which she would be known to have left, in running order.

    The time grows with points times points: some 50 ms a row.
    """
    points = [p for p in event.course_of(runner).points if not p.finish]
    out: list[LegSilence] = []
    for n, point in enumerate(points):
        if n and not _reported(event, runner, point):
            continue
        for goal in (Goal.A, Goal.B, Goal.C):
            found = _one(event, runner, timetable, course, points[: n + 1], goal)
            if found is not None:
                out.append(_explained(event, runner, timetable, course, points[: n + 1], found))
    return tuple(out)


def _reported(event: Event, runner: str, point: Point) -> bool:
    return bool(_able(event, runner, point.id))


def _able(event: Event, runner: str, point: str) -> list[ReportsThere]:
    """Those who report from a point of hers and can do so from there."""
    course = event.course_of(runner)
    there = course.point(point)
    able = (r for r in there.reports if r.by is not ReporterKind.NOBODY)
    return [r for r in able if r.by in OWN_MEANS or has_signal(course, there)]


def _sight(
    event: Event, runner: str, timetable: Timetable, course: Course, been: Sequence[Point], goal: Goal
) -> Sight:
    """She has just left the last of these points, and was seen at each of them that is reported from."""
    start = event.runner(runner).start
    left = [
        (p.id, start + timetable.row(p.id).leave[goal])
        for p in been
        if p is been[-1] or _reported(event, runner, p)
    ]
    # A night leaves nothing of the day before in the time she sets out: when she came in is known too.
    came = [
        (p.id, start + timetable.row(p.id).arrive[goal])
        for p in been
        if p.next_stage is not None and _reported(event, runner, p)
    ]
    entries = [
        Entry(
            f"{kind} {p}",
            event.id,
            runner,
            kind,
            at,
            at,
            at,
            "",
            Source.VOLUNTEER,
            "",
            f"{kind} {p}",
            point=p,
        )
        for kind, times in ((Kind.IN, came), (Kind.OUT, left))
        for p, at in times
    ]
    now = left[-1][1]
    state = fold(entries, event, now)
    mine = state.runner(runner)
    found = outlook(event, mine, state, timetable, course)
    situation = Situation(event, state, {runner: found}, {runner: timetable}, {}, (), ())
    return Sight(situation, now, event.runner(runner), mine, (), ())


def _one(
    event: Event, runner: str, timetable: Timetable, course: Course, been: Sequence[Point], goal: Goal
) -> LegSilence | None:
    sight = _sight(event, runner, timetable, course, been, goal)
    late, view, due = late_at(sight), sight.fact_view, overdue(sight)
    if late is None or view is None or late[0] not in view.points:
        return None
    alarm = None if due is None else due.at
    course_points = [p.id for p in event.course_of(runner).points]
    first, last = course_points.index(been[-1].id) + 1, course_points.index(late[0])
    return LegSilence(
        goal,
        been[-1].id,
        sight.now,
        late[0],
        view.window(late[0]).likely,
        late[1],
        told_home_at(late[1], alarm),
        alarm,
        None if due is None else due.why,
        _told(event, runner, late[0], late[1], view.arrival(late[0], 1.0 - event.alarm.line)),
        math.prod(1.0 - r.chance for r in _able(event, runner, late[0])),
        tuple(course_points[first:last]),
    )


def _told(event: Event, runner: str, point: str, late: datetime, surely: datetime) -> datetime | None:
    """When a 'not yet' of crew who are to be there raises the alarm; None where none come, or can write from there."""
    course = event.course_of(runner)
    comes = any(m.runner == runner and m.point == point and m.crew for m in event.meetings)
    return (
        max(surely, late + event.alarm.grace) if comes and has_signal(course, course.point(point)) else None
    )


def _explained(
    event: Event, runner: str, timetable: Timetable, course: Course, been: Sequence[Point], row: LegSilence
) -> LegSilence:
    if not row.far:
        return row
    because = tuple(_because(event, row))
    if row.goal is not Goal.B:
        return replace(row, because=because)
    best: Shorter | None = None
    for place in dict.fromkeys((row.next_point, *row.quiet[:1])):
        more = _one(_with_one_more(event, runner, place), runner, timetable, course, been, row.goal)
        if more is not None and more.alarm is not None and (best is None or more.alarm < best.alarm):
            best = Shorter(place, more.alarm)
    gains = best is not None and (row.alarm is None or best.alarm <= row.alarm - GAINS)
    return replace(row, because=because, shorter=best if gains else None)


def _because(event: Event, row: LegSilence) -> Iterator[Because]:
    if row.quiet:
        yield Because.NOBODY
    if row.misses > event.alarm.line:
        yield Because.MISSED
    if row.asked - row.likely >= WIDE:
        yield Because.WIDE


def _with_one_more(event: Event, runner: str, place: str) -> Event:
    """The event with somebody more who reports from a point of hers."""
    mine = event.course_of(runner)
    points = tuple(replace(p, reports=(*p.reports, SECOND)) if p.id == place else p for p in mine.points)
    courses = tuple(replace(c, points=points) if c.id == mine.id else c for c in event.courses)
    return replace(event, courses=courses)
