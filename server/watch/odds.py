"""Cut-off odds that cross 80, 50 or 20%, with hysteresis, and only while something can still be done.

They go by the last sighting: silence alone moves them little until she is late, and then the question and the alarm say
that nothing has been heard better than odds do. Told are those who can still do something about it: who meets her before
the cut-off, is with her, or joins her by then.
"""

from __future__ import annotations

from collections.abc import Iterator
from datetime import datetime, timedelta

from server.event.model import Edge, PartKind, Point
from server.facts.cut_offs import cut_offs_at
from server.forecast.outlook import View
from server.plan.cutoffs import LEAST_PATHS, DueTime
from server.plan.cutoffs import cut_off_odds as plan_odds
from server.watch.crew_routes import members
from server.watch.crew_whereabouts import plans_of
from server.watch.notice import CutOffValues, Made, NoticeKind
from server.watch.runner_context import Draft, Rule, Sight, Wake
from server.watch.silence import late_at, with_her

__all__ = ["LEVELS", "RULES", "band", "latest_out"]

LEVELS = (0.8, 0.5, 0.2)
HYSTERESIS = 0.05
"""Odds must rise this far above a level before they count as above it again (own choice)."""
HOPELESS = 0.02
"""Under this nothing can be done any more, and saying so helps nobody."""
AHEAD = timedelta(hours=6)
"""A cut-off farther ahead than this is not yet news (own choice)."""
MAKES_IT = 0.9
"""'Latest out' of the point before holds this chance of the cut-off."""


def band(odds: float, was: int) -> int:
    """The band that odds lie in: 0 = 80% or more, 1, 2, 3 = under 20%; `was` the band last told.

    A band is left upwards only past the level and the hysteresis, downwards at the level.
    """
    down = sum(odds < level for level in LEVELS)
    up = sum(odds < round(level + HYSTERESIS, 9) for level in LEVELS)
    return down if down > was else min(was, up)


def cut_off_odds(sight: Sight) -> Iterator[Draft | Wake]:
    """Told to crew and pacers when the band changes from what they were last told."""
    late = late_at(sight)
    if sight.seen_outlook is None or (late is not None and sight.now >= late[1]):
        return
    seen = sight.seen_at
    for point in sight.event.course_of(sight.runner.id).points:
        for edge, when in cut_offs_at(sight.race, point, sight.state):
            if _done(sight, point, edge) or sight.now >= when:
                continue
            if sight.now < when - AHEAD:
                yield Wake(when - AHEAD)
                continue
            yield from _crossed(sight, sight.seen_outlook.at(seen), point, edge, when)


def _done(sight: Sight, point: Point, edge: Edge) -> bool:
    times = sight.state.at_point(point.id)
    if times is None:
        return sight.reached(point.id)
    return times.implied or times.left is not None or edge is Edge.IN


def _crossed(sight: Sight, view: View, point: Point, edge: Edge, when: datetime) -> Iterator[Draft]:
    odds = view.p_makes(point.id, when, edge is Edge.OUT)
    if odds < HOPELESS:
        return
    for who in _concerned(sight, point.id):
        told = [m for m in sight.told(NoticeKind.CUT_OFF_ODDS, who, point.id) if _same(m, edge, when)]
        was = _band_told(told)
        now = band(odds, was)
        if now == was:
            continue
        # Falling, the level just gone under; rising, the one just got over.
        level = LEVELS[now - 1] if now > was else LEVELS[now]
        before, out_by = latest_out(view, point, when, sight.state.start, edge)
        yield Draft(
            NoticeKind.CUT_OFF_ODDS,
            who,
            point.id,
            f"{edge.value}:{when.isoformat()}:{len(told)}",
            sight.now,
            CutOffValues(point.id, edge.value, when, odds, level, now > was, before, out_by),
            use_by=when,
        )


def _concerned(sight: Sight, point: str) -> tuple[str, ...]:
    """Who meets her up to that point, beginning with where she is, and a pacer with her. Where there is nobody before it,
    those of her next meeting."""
    order = [p.id for p in sight.event.course_of(sight.runner.id).points]
    here = next((t.point for t in reversed(sight.state.times) if t.left is None and not t.through), None)
    ahead = [m for m in plans_of(sight) if m.point == here or not sight.reached(m.point)]
    before = [m for m in ahead if order.index(m.point) <= order.index(point)]
    meet = [w for m in before or ahead[:1] for w in members(sight.event, m)]
    return tuple(dict.fromkeys((*meet, *(p for p in sight.people(PartKind.PACER) if with_her(sight, p)))))


def _same(m: Made, edge: Edge, when: datetime) -> bool:
    values = m.notice.values
    return isinstance(values, CutOffValues) and (values.edge, values.cut_off) == (edge.value, when)


def _band_told(told: list[Made]) -> int:
    if not told:
        return 0
    values = told[-1].notice.values
    assert isinstance(values, CutOffValues)
    return LEVELS.index(values.level) + (1 if values.falling else 0)


def latest_out(
    view: View, point: Point, when: datetime, start: datetime, edge: Edge = Edge.IN, p: float = MAKES_IT
) -> tuple[str | None, datetime | None]:
    """The point before and the latest time out of it from which she still makes `when` there, with probability `p`,
    given that she goes on (`server.plan.cutoffs.cut_off_odds`). Nothing where that point is behind her: then her leg
    has begun; or where the view has too few paths left to say."""
    points = view.points
    if point.id not in points or points.index(point.id) == 0 or len(view.paths()[0]) < LEAST_PATHS:
        return None, None
    (found,) = plan_odds(view, (DueTime(point.id, edge, when),), start, p)
    last = found.latest_out[-1]
    return last.point, None if last.at is None else last.at.replace(second=0, microsecond=0)


RULES: tuple[Rule, ...] = (cut_off_odds,)
