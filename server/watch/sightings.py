"""In, out and finished, told to those whom it concerns with what to have ready; and corrections of it.

Only the latest fact is ever told: one that a later fact has overtaken goes out no more, so that after an hour
without us people get where she is, marked delayed, and not a list of where she was.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import replace
from datetime import timedelta

from server.event.model import MeetingPlan, PartKind, Signal
from server.facts.state import Going, PointTimes, Stamp
from server.watch.crew_whereabouts import company, is_there, plans_of, set_out, set_out_at, there_at
from server.watch.leaving import next_of
from server.watch.meetings import brought, members, taken_back
from server.watch.notice import Answer, CorrectionValues, Made, NoticeKind, SightingValues, Urgency
from server.watch.runner_context import Draft, Rule, Sight, Wake, heard_at
from server.watch.timed_out import goes_no_further

__all__ = ["RULES"]

STALE = timedelta(hours=6)
"""A sighting longer ago is no news (own choice)."""
ASKS_FOR_HER = 3
"""How often crew are asked whether they have her after the finish."""


def latest(sight: Sight) -> tuple[PointTimes, Stamp, bool] | None:
    """The last point she was reported at, the stamp that counts and whether it is a departure."""
    for times in reversed(sight.state.times):
        if times.left is not None:
            return times, times.left, True
        if times.arrived is not None:
            return times, times.arrived, False
    return None


def sighting(sight: Sight) -> Iterator[Draft | Wake]:
    """In to those whose meeting it is; out to those whose meeting is next."""
    found = latest(sight)
    if found is None or sight.now - found[1].at > STALE:
        return
    times, stamp, out = found
    kind = NoticeKind.LEFT if out else NoticeKind.ARRIVED
    for who, plan in _concerned(sight, times.point, out):
        if _knows(sight, who, times.point, stamp) or (out and _left_since(sight, plan, who, stamp)):
            continue
        awaits = there_at(sight, times.point, who) is not None
        yield Draft(
            kind,
            who,
            times.point,
            _occasion(sight, kind, who, times.point, stamp),
            heard_at(sight, stamp),
            _values(sight, who, plan, times, stamp),
            (stamp.entry,),
            # Whoever sleeps in the car beside the point is there for this very moment.
            urgency=Urgency.ACTION if awaits and not out else None,
            mine=True,
            lasting=not out,
        )


def _concerned(sight: Sight, point: str, out: bool) -> Iterator[tuple[str, MeetingPlan]]:
    """Who is told, and the meeting that the message has kit for.

    In: those whose meeting it is. Out: those who wait there and may go now, and those who are on the way to her next
    point or wait at it; whoever has yet to leave hears what it changes for them as moved times, and half an hour before
    they leave. Neither goes to those who are where no message reaches them: they see her.
    """
    points = sight.event.course_of(sight.runner.id).points
    order = [p.id for p in points]
    after = order[order.index(point) + 1] if out and point in order[:-1] else None
    for plan in plans_of(sight):
        if plan.point not in (point, after):
            continue
        deaf = plan.point == point and points[order.index(point)].signal is Signal.NONE
        for who in members(sight.event, plan):
            on_it = _on_it(sight, plan, who)
            if (on_it or not out) and not (on_it and deaf):
                yield who, plan


def _left_since(sight: Sight, plan: MeetingPlan, who: str, stamp: Stamp) -> bool:
    """Whether they set out once it was known: then they knew it."""
    begun = set_out_at(sight, plan, company(sight, plan, who))
    sent = (m.made_at for m in sight.told(NoticeKind.BE_THERE, who, plan.point))
    since = min((t for t in (begun, *sent) if t is not None), default=None)
    return since is not None and since >= heard_at(sight, stamp) and not is_there(sight, plan, (who,))


def _on_it(sight: Sight, plan: MeetingPlan, who: str) -> bool:
    """Whether somebody is at the point of a meeting of theirs, or on the way there."""
    people = company(sight, plan, who)
    sent = any(True for _ in sight.told(NoticeKind.BE_THERE, who, plan.point))
    return sent or is_there(sight, plan, people) or set_out(sight, plan, people)


def _knows(sight: Sight, who: str, point: str, stamp: Stamp) -> bool:
    """Whoever reported her knows it, and so do those who meet her there with them."""
    if stamp.by == who:
        return True
    here = [p for p in plans_of(sight) if p.point == point and stamp.by in members(sight.event, p)]
    beside = any(who in members(sight.event, p) for p in here) and there_at(sight, point, who) is not None
    return beside or any(who in company(sight, p, stamp.by) for p in here)


def _values(sight: Sight, who: str, plan: MeetingPlan, times: PointTimes, stamp: Stamp) -> SightingValues:
    ahead = next_of(sight, who)
    if ahead is not None and ahead.point == times.point:
        mine = [m.own(who) for m in sight.meetings if who in m.crew and m.point != times.point]
        ahead = next((m for m in mine if not m.lost), None)
    if ahead is not None and goes_no_further(sight, ahead.point):
        ahead = None
    stop = sight.event.course_of(sight.runner.id).point(times.point).planned_stop
    if times.left is not None and ahead is not None:
        plan = sight.plan(ahead.meeting)
    # What was for the point she has left is nothing that they still bring: a pacer who joined there has no next.
    over = times.left is not None and plan.point == times.point
    return SightingValues(
        point=times.point,
        at=stamp.at,
        told_by=stamp.by,
        through=times.through,
        kit=() if over else brought(plan),
        take_back=() if over else taken_back(plan),
        food="" if over else plan.food,
        planned_stop=stop if times.left is None else None,
        next_window=None if ahead is None else ahead.window,
        next_meeting=ahead,
    )


def _takes_back(correction: Made, kind: NoticeKind) -> bool:
    values = correction.notice.values
    return isinstance(values, CorrectionValues) and values.was_kind == kind.value and values.taken_back


def _occasion(sight: Sight, kind: NoticeKind, who: str, point: str, stamp: Stamp) -> str:
    """One sighting is told once, whichever report of it counts; told again only after it was taken back."""
    told = list(sight.told(kind, who, point))
    if not told:
        return stamp.entry
    back = [m for m in sight.told(NoticeKind.CORRECTION, who, point) if _takes_back(m, kind)]
    if back and max(m.made_at for m in back) >= max(m.made_at for m in told):
        return stamp.entry if all(m.notice.occasion != stamp.entry for m in told) else f"{stamp.entry}:again"
    return told[-1].notice.occasion


def finished(sight: Sight) -> Iterator[Draft | Wake]:
    """In at the finish: everybody who follows her hears; crew are asked until they have her."""
    stamp = sight.state.finished
    if stamp is None:
        return
    order = sight.event.course_of(sight.runner.id).points
    point = next((p.id for p in order if p.finish), order[-1].id)
    fetch = [w for p in plans_of(sight) if p.point == point for w in members(sight.event, p)]
    crew = dict.fromkeys(fetch or sight.people(PartKind.CREW))
    values = SightingValues(point=point, at=stamp.at, told_by=stamp.by)
    have = sight.state.crew_has_her is not None or sight.state.going is Going.CLOSED
    for who in dict.fromkeys((*crew, *sight.people(*_FOLLOWS))):
        number = sum(1 for _ in sight.told(NoticeKind.FINISHED, who, point))
        asks = who in crew and not have
        draft = Draft(
            NoticeKind.FINISHED,
            who,
            point,
            stamp.entry,
            heard_at(sight, stamp),
            values,
            (stamp.entry,),
            needs_answer=asks,
            buttons=(Answer.IN_HAND,) if asks else (),
            mine=who in crew or who in sight.people(PartKind.SAFETY_CONTACT),
        )
        if asks or who != stamp.by:
            yield draft
        if asks and 0 < number < ASKS_FOR_HER:
            again = (
                max(m.made_at for m in sight.told(NoticeKind.FINISHED, who, point))
                + sight.event.alarm.look_again
            )
            yield Wake(again)
            if sight.now >= again:
                yield replace(
                    draft, occasion=f"{stamp.entry}:{number}", owed_at=again, urgency=Urgency.ACTION
                )


_FOLLOWS = (PartKind.CREW, PartKind.PACER, PartKind.SAFETY_CONTACT, PartKind.SUPPORTER)

RULES: tuple[Rule, ...] = (finished, sighting)
