"""Who could still take over a meeting that somebody fell out of, by when they would have to leave, and what they would miss.

Each is tried as if they had said so: the times are those they would be told, by the crew movements, from where they said
they are, over drives confirmed or estimated.
"""

from __future__ import annotations

from collections.abc import Iterator
from datetime import datetime, timedelta

from server.event.model import MeetingPlan, PartKind
from server.facts.entry import Why
from server.watch.covering import covered_by
from server.watch.crew_routes import parties_of
from server.watch.meetings import meetings
from server.watch.notice import MeetingValues
from server.watch.runner_context import Sight
from server.watch.situation import Situation
from server.watch.uncovered_values import StandIn, Uncovered

__all__ = ["stand_ins"]

COULD = 0.2
"""With smaller odds to find her still there nobody is sent on a drive (own choice)."""
BOTH = 0.5
"""A meeting that is made with smaller odds than this counts as given up (own choice)."""


def stand_ins(sight: Sight, u: Uncovered) -> tuple[StandIn, ...]:
    """Those who could come, the surest first, and of those the ones who give up least."""
    return sight.once(("stand-ins", u.plan.id, u.stand), lambda: _stand_ins(sight, u))


def _stand_ins(sight: Sight, u: Uncovered) -> tuple[StandIn, ...]:
    found = [s for who in _free(sight, u) if (s := _tried(sight, u, who)) is not None]
    found.sort(
        key=lambda s: (s.drive is None, len(s.gives_up), -round(s.p_meets, 1), s.drive or timedelta(0))
    )
    return tuple(found)


def _free(sight: Sight, u: Uncovered) -> Iterator[str]:
    """Drivers, or for a pacer the other pacers, who are neither out themselves nor with her on foot by then."""
    event, race = sight.event, sight.race
    unfit = {f.person for f in race.fallen if f.meeting in (None, u.plan.id) and f.why is not Why.PACER}
    pacing = u.no_pacer is not None and bool(u.goes)
    out = {*unfit, *u.out, *(() if pacing else u.goes)}
    for p in sight.parts(PartKind.PACER) if pacing else sight.parts(*PartKind):
        able = pacing or p.drives or (not event.drivers and p.kind is PartKind.CREW)
        hurt = pacing and any(f.person == p.person for f in race.fallen if f.why is Why.PACER)
        if able and not hurt and p.person not in out and not _on_foot(sight, u.plan, p.person):
            yield p.person


def _on_foot(sight: Sight, plan: MeetingPlan, who: str) -> bool:
    """Whether somebody is with her on foot when she comes to a meeting."""
    order = [p.id for p in sight.event.course_of(sight.runner.id).points]
    with_her = False
    mine = sorted(sight.event.meetings_of(plan.runner), key=lambda m: order.index(m.point))
    for m in mine:
        if m.pacer_leaves == who:
            with_her = False
        if m.point == plan.point:
            return with_her
        if m.pacer_joins == who:
            with_her = True
    return with_her


def _tried(sight: Sight, u: Uncovered, who: str) -> StandIn | None:
    would = covered_by(sight.situation, u.plan.id, who)
    hers = meetings(would, sight.runner.id, sight.now)
    m = next((x.own(who) for x in hers if x.meeting == u.plan.id), None)
    if m is None or who not in m.crew or m.lost:
        return None
    party = next((p for p in parties_of(would)[u.plan.id] if who in p.people), None)
    whole = None if party is None else party.way.whole
    before = next((x.own(who) for x in hers if x.own(who).next_meeting == m.meeting and who in x.crew), None)
    there = None if whole is None or before is not None else sight.now + whole
    if before is not None:
        p = 1.0 if before.p_both is None else before.p_both
    else:
        p = 0.0 if there is None else 1.0 - _p_left(sight, u.plan.point, there)
    if whole is not None and p < COULD:
        return None
    return StandIn(
        who,
        m.leave_by,
        there,
        m.drive,
        m.drive_confirmed,
        m.drive_from,
        p,
        tuple(_given_up(sight, would, who, m)),
    )


def _p_left(sight: Sight, point: str, when: datetime) -> float:
    """P(she has left a point by then, if she gets there)."""
    view = sight.fact_view
    if view is None:
        return 0.0
    try:
        comes = view.p_gets_there(point)
        return min(1.0, view.p_out_by(point, when) / comes) if comes > 0 else 0.0
    except KeyError:
        return 0.0


def _given_up(sight: Sight, would: Situation, who: str, taken: MeetingValues) -> Iterator[str]:
    """Their own meetings, with any runner, that they would no longer make."""
    lost_now = {m.meeting for m in sight.meetings if m.own(who).lost}
    for r in sight.event.runners:
        now = lost_now if r.id == sight.runner.id else _lost(sight.situation, r.id, who, sight.now)
        for m in meetings(would, r.id, sight.now):
            mine = m.own(who)
            if who in m.crew and m.meeting != taken.meeting and mine.lost and m.meeting not in now:
                yield m.meeting
    if taken.next_meeting is not None and taken.p_both is not None and taken.p_both < BOTH:
        yield taken.next_meeting


def _lost(situation: Situation, runner: str, who: str, now: datetime) -> set[str]:
    return {m.meeting for m in meetings(situation, runner, now) if m.own(who).lost}
