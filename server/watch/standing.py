"""A tracker that stays at one spot longer than runners stop: somebody is asked about it, then those at home are told.

By the distribution of stops and rests that the forecast knows. Not where somebody has said that she rests or has her, nor
while she is known to be at that point, nor once a person has seen her elsewhere since: that is a disagreement, and shown as
one. A tracker that sends nothing more stands nowhere (server/facts/trackers.py).
"""

from __future__ import annotations

from collections.abc import Iterator
from datetime import timedelta

from server.event.model import Goal, PartKind, Point
from server.facts.state import Going
from server.facts.trackers import Spell, disagree, fixes_of, spell
from server.forecast.stops import longest_s
from server.watch.crew_routes import members
from server.watch.crew_whereabouts import may_be_asked, plans_of
from server.watch.escalation_state import open_alarms
from server.watch.late_values import StandsValues
from server.watch.notice import NoticeKind
from server.watch.runner_context import Draft, Rule, Sight, Wake
from server.watch.silence import blind, with_her

__all__ = ["RULES", "stands"]

ASKED, TOLD = 0.9, 0.99
"""Crew are asked about a stop longer than so many of all, those at home told of one longer than so many."""
AT_POINT_KM = 0.5
"""A spot so near a point is that point."""


def stands(sight: Sight) -> Spell | None:
    """The spot where her tracker stands, where that is nobody's business yet: not a rest that was told, nor her stay at a
    point she is known to be at, nor where people have her or saw her since."""
    state, found = sight.state, spell(sight.state)
    if found is None or state.going not in (Going.MOVING, Going.AT_POINT):
        return None
    if state.in_hand is not None or disagree(sight.event.course_of(sight.runner.id), state) is not None:
        return None
    near = near_point(sight, found)
    last = state.times[-1] if state.times else None
    known_here = last is not None and near is not None and last.point == near.id and last.left is None
    return None if known_here else found


def near_point(sight: Sight, found: Spell) -> Point | None:
    """The point at which it stands; None where it stands between points."""
    points = sight.event.course_of(sight.runner.id).points
    near = (
        p for p in points if found.km is not None and p.km is not None and abs(p.km - found.km) <= AT_POINT_KM
    )
    return next(near, None)


def longer_than(sight: Sight, found: Spell, share: float) -> timedelta | None:
    """The length that a share of stops at that place stay under; None without a plan."""
    table = sight.situation.timetables.get(sight.runner.id)
    if table is None:
        return None
    near = near_point(sight, found)
    planned = 0.0 if near is None else near.planned_stop.total_seconds()
    finish = table.rows[-1].arrive[Goal.B].total_seconds()
    return timedelta(seconds=longest_s(finish, planned, share))


def standing(sight: Sight) -> Iterator[Draft | Wake]:
    """Crew who may know are asked once a spot, those at home told once."""
    found = stands(sight)
    if found is None or blind(sight) or sight.held() or open_alarms(sight.made):
        return
    ask, tell = (longer_than(sight, found, share) for share in (ASKED, TOLD))
    if ask is None or tell is None or found.length < ask:
        return
    last = fixes_of(sight.state)[-1]
    near = near_point(sight, found)
    values = StandsValues(
        found.since, found.until, found.km, (found.fix.lat, found.fix.lon), near.id if near else None
    )
    occasion, point = found.since.isoformat(), near.id if near else ""
    for who in _asked(sight):
        yield Draft(
            NoticeKind.STANDS, who, point, occasion, found.until, values, (last.stamp.entry,), mine=True
        )
    if found.length >= tell:
        for who in sight.people(PartKind.SAFETY_CONTACT):
            yield Draft(
                NoticeKind.STANDS, who, point, occasion, found.until, values, (last.stamp.entry,), mine=True
            )


def _asked(sight: Sight) -> tuple[str, ...]:
    """A pacer with her, and the crew of her next meeting; none of them known, all of the crew."""
    ahead = [m for m in plans_of(sight) if not sight.reached(m.point)]
    crew = [w for m in ahead[:1] for w in members(sight.event, m)] or list(sight.people(PartKind.CREW))
    pacers = [p for p in sight.people(PartKind.PACER) if with_her(sight, p)]
    return tuple(dict.fromkeys(w for w in (*pacers, *crew) if may_be_asked(sight, w)))


RULES: tuple[Rule, ...] = (standing,)
