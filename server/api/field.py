"""The whole field for an organiser: who is late where, cut-offs, retired, not started, and the counts at each point.

What hangs on a forecast is what it said when she was last heard of, so it is worked out once a report and kept with the
forecast: at another look only those are worked out of whom something has come in.
"""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterator
from dataclasses import dataclass
from datetime import datetime

from server.api.answers import holds, point_name
from server.api.replies import FieldAnswer, FieldRunner, PointCounts
from server.api.snapshot import Picture
from server.event.model import CourseDef, Edge, Event, Runner
from server.facts.cut_offs import cut_offs_at, past_cut_off
from server.facts.entry import Retired
from server.facts.state import Going, RaceState, RunnerState
from server.forecast.outlook import Outlook
from server.watch.escalation_state import open_alarms

__all__ = ["IN_DANGER", "alarmed", "field_of"]

IN_DANGER = 0.5
"""Under such odds of making her next cut-off a runner stands before the others (own choice)."""
MAKES_IT = 0.95
"""Odds from which a cut-off is no matter yet, and the next is looked at (own choice)."""


def field_of(picture: Picture) -> FieldAnswer:
    """Every runner and every point, found once in a picture."""
    return picture.once("field", lambda: _field(picture))


def alarmed(picture: Picture) -> frozenset[str]:
    """The runners about whom an alarm is open."""
    return picture.once(
        "alarmed",
        lambda: frozenset(r for r, about in picture.made_about().items() if r and open_alarms(about)),
    )


@dataclass(frozen=True, slots=True)
class Ahead:
    """What was ahead of a runner when she was last heard of: the point where she is awaited and until when; the cut-off that
    may be missed (point, time) and the odds of making it."""

    late: tuple[str, datetime] | None
    cut_off: tuple[str, datetime] | None
    odds: float | None


def _field(picture: Picture) -> FieldAnswer:
    event = picture.event
    alarms = alarmed(picture)
    runners = [_runner(picture, r, alarm=r.id in alarms) for r in event.runners]
    points = tuple(p for course in event.courses for p in _counts(picture, course))
    return FieldAnswer(event.id, event.name, tuple(sorted(runners, key=_order)), points)


def _order(r: FieldRunner) -> tuple[object, ...]:
    danger = bool(r.missed) or (r.odds is not None and r.odds < IN_DANGER)
    number = int(r.bib) if r.bib.isdecimal() and len(r.bib) <= 18 else 0
    return (not r.alarm, r.late_since is None, not danger, number, r.bib, r.name)


def _runner(picture: Picture, runner: Runner, *, alarm: bool) -> FieldRunner:
    event, race, now = picture.event, picture.state, picture.now
    mine = race.runner(runner.id)
    last, going = mine.last_known, mine.going
    ahead = _ahead(picture, runner.id) if going.on_course else None
    late = ahead.late if ahead and ahead.late and _is_late(ahead.late[1], race, mine, now) else None
    cut = ahead.cut_off if ahead else None
    past = past_cut_off(event, race, mine, now)
    ended = mine.retirement
    return FieldRunner(
        id=runner.id,
        bib=runner.bib,
        name=runner.name,
        course=runner.course,
        going=going.value,
        alarm=alarm,
        started=_started(mine),
        last_name=point_name(event, runner.id, last.point) if last else "",
        last_at=last.at if last else None,
        late_at=point_name(event, runner.id, late[0]) if late else "",
        late_since=late[1] if late else None,
        cut_off_at=point_name(event, runner.id, cut[0]) if cut else "",
        cut_off=cut[1] if cut else None,
        odds=ahead.odds if ahead else None,
        missed=point_name(event, runner.id, past.point) if past else "",
        retired_how=ended.how.value if ended and going.race_over else "",
    )


def _started(mine: RunnerState) -> bool:
    """Whether she has been reported since the start, or at it."""
    if mine.retirement is not None and mine.retirement.how is Retired.DID_NOT_START:
        return False
    return mine.going is not Going.BEFORE_START and (mine.last_known is not None or bool(mine.times))


def _is_late(since: datetime, race: RaceState, mine: RunnerState, now: datetime) -> bool:
    """Past the time by which she should have been reported, and not kept from going on."""
    return now > since and not any(holds(h, now) for h in (*race.held, *mine.held))


def _ahead(picture: Picture, runner: str) -> Ahead | None:
    outlook = picture.situation.outlooks.get(runner)
    if outlook is None:
        return None
    known = picture.ahead.get(runner)
    if known is None or known[0] is not outlook:
        known = picture.ahead[runner] = (outlook, _looked_ahead(picture, runner, outlook))
    found = known[1]
    assert isinstance(found, Ahead)
    return found


def _looked_ahead(picture: Picture, runner: str, outlook: Outlook) -> Ahead:
    race, event = picture.state, picture.event
    mine = race.runner(runner)
    view = outlook.at(mine.last_known.at if mine.last_known else mine.start)
    cut, odds = None, None
    for point in event.course_of(runner).points:
        if point.id in view.points:
            for edge, at in cut_offs_at(race, point, mine):
                makes = view.p_makes(point.id, at, edge is Edge.OUT)
                if cut is None or makes < MAKES_IT:
                    cut, odds = (point.id, at), makes
                if makes < MAKES_IT:
                    return Ahead(outlook.late_time(), cut, odds)
    return Ahead(outlook.late_time(), cut, odds)


def _counts(picture: Picture, course: CourseDef) -> Iterator[PointCounts]:
    """The points of a course with what was reported there."""
    order = {p.id: n for n, p in enumerate(course.points)}
    came, left, here, to_come = Counter[str](), Counter[str](), Counter[str](), Counter[int]()
    for runner in _on(picture.event, course.id):
        mine = picture.state.runner(runner.id)
        for t in mine.times:
            came[t.point] += t.arrived is not None or t.left is not None or t.through
            left[t.point] += t.left is not None or t.through
        reached = max((order[t.point] for t in mine.times if t.point in order), default=-1)
        if mine.going is Going.AT_POINT and reached >= 0:
            here[course.points[reached].id] += 1
        if not mine.going.race_over:
            to_come[reached] += 1
    coming = 0
    expected = []
    for n in range(len(course.points)):
        coming += to_come[n - 1]
        expected.append(coming)
    for point, awaited in zip(course.points, expected, strict=True):
        yield PointCounts(
            course.id,
            point.id,
            point.name,
            point.km or 0.0,
            came[point.id],
            left[point.id],
            here[point.id],
            awaited,
        )


def _on(event: Event, course: str) -> Iterator[Runner]:
    return (r for r in event.runners if r.course == course)
