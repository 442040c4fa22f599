"""What changes for a crew on its way or waiting: window moved, move on, a meeting that can't be made.

A meeting that can't be made is said plainly, with what to do instead; nobody is ever told to hurry.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import replace
from datetime import datetime, timedelta

from server.event.model import MeetingPlan
from server.facts.entry import Source
from server.facts.state import PointTimes, Stamp
from server.forecast.outlook import Window
from server.watch.crew_routes import Party
from server.watch.crew_whereabouts import (
    is_there,
    left_again,
    parties_to,
    plans_of,
    reported_her,
    set_out,
    set_out_at,
)
from server.watch.escalation_state import open_alarms
from server.watch.leaving import next_of, told_ahead, too_late
from server.watch.meetings import LOST_GONE, LOST_TOO_LATE, brought, members, taken_back
from server.watch.notice import MeetingValues, NoticeKind
from server.watch.runner_context import Draft, Rule, Sight, Wake, last_told, on_grid, with_us
from server.watch.silence import hold_ends
from server.watch.staying import may_go, waited_out

__all__ = ["RULES"]

MOVED = timedelta(minutes=15)
"""A leave-by or be-there moved by less changes nothing that crew do (own choice: three grid steps)."""
SHARE = 0.3
"""One moved later by less than this share of the time that was left when it was heard changes nothing yet either: every
fact moves it, and half an hour before they leave they hear where it stands (own choice). One moved earlier always does."""
SOON_TOLD = timedelta(minutes=30)
"""What they will be told with all the rest within this is not told before (own choice)."""
GONE_FOR = timedelta(hours=2)
"""A meeting missed longer ago than this is history."""


def window_moved(sight: Sight) -> Iterator[Draft | Wake]:
    """A fact moved the next meeting of somebody who has not left, by enough to matter, since they were last told; before
    that, since the plan. Not while she is missed: then her later times are nobody's guess."""
    if missed(sight):
        return
    for m in _by_car(sight):
        plan = sight.plan(m.meeting)
        gone = is_there(sight, plan, m.crew) or set_out(sight, plan, m.crew)
        if sight.state.at_point(m.point) is not None or gone:
            continue
        at = m.leave_by or m.be_there
        for who in m.crew:
            last, ahead = knows_of(sight, who, m.meeting), next_of(sight, who)
            if last is None or sight.now >= at or not ahead or ahead.meeting != m.meeting:
                continue
            if not _differs(last, m, heard=sight.fact_at) or _told_soon(sight, who, m):
                continue
            if m.leave_by is None and m.be_there > last.be_there and not _been_sent(sight, who, m):
                continue  # 'be there from' comes with the time as it then is, and nobody sets out before
            values = replace(m, was=last.window, was_leave_by=last.leave_by, was_be_there=last.be_there)
            occasion = f"{m.meeting}:{at.isoformat()}"
            yield Draft(
                NoticeKind.WINDOW_MOVED, who, m.point, occasion, sight.now, values, _facts(sight), mine=True
            )


def knows_of(sight: Sight, who: str, meeting: str) -> MeetingValues | None:
    """A meeting as a person was last told of it; as the plan has it where nobody has told them since."""
    told = last_told(sight, who, meeting)
    if told is not None:
        return told
    sheet = sight.situation.sheet.get(sight.runner.id, ())
    return next((m.own(who) for m in sheet if m.meeting == meeting), None)


def missed(sight: Sight) -> bool:
    """Whether somebody has her, she is looked for, or later than 9 in 10 would be since she was last seen."""
    if with_us(sight):
        return True
    late = None if sight.seen_outlook is None else sight.seen_outlook.late_time()
    return bool(open_alarms(sight.made)) or (late is not None and sight.now >= late[1])


def _been_sent(sight: Sight, who: str, m: MeetingValues) -> bool:
    return any(True for _ in sight.told(NoticeKind.BE_THERE, who, m.point))


def _told_soon(sight: Sight, who: str, m: MeetingValues) -> bool:
    """Whether they are about to be told all of this meeting for the first time."""
    kinds = (NoticeKind.LEAVE_SOON, NoticeKind.LEAVE_NOW, NoticeKind.BRIEF, NoticeKind.WAKE_UP)
    told = any(True for k in kinds for _ in sight.told(k, who, m.point))
    return not told and sight.now >= told_ahead(m) - SOON_TOLD


def _by_car(sight: Sight) -> Iterator[MeetingValues]:
    """Her meetings as they are for those of each car."""
    for m in sight.meetings:
        yield from m.parties()


def _differs(told: MeetingValues, m: MeetingValues, heard: datetime) -> bool:
    """Whether what changed since matters to who goes; `heard`: when the last fact was seen."""
    # Who will be there already, for another runner, leaves for nothing.
    by_leaving = told.leave_by is not None and m.leave_by is not None and not m.on_the_spot
    was, at = (told.leave_by, m.leave_by) if by_leaving else (told.be_there, m.be_there)
    assert was is not None
    assert at is not None
    if at < was:
        return was - at >= MOVED
    return at - was >= max(MOVED, SHARE * (at - heard))


def _facts(sight: Sight) -> tuple[str, ...]:
    return () if sight.state.last_known is None else (sight.state.last_known.entry,)


def move_on(sight: Sight) -> Iterator[Draft | Wake]:
    """Waiting is over (`waited_out` in staying.py): only for those who have somewhere to be, or must leave the place."""
    for m in _by_car(sight):
        plan = sight.plan(m.meeting)
        if sight.state.at_point(m.point) is not None or m.lost:
            continue
        point = sight.event.course_of(sight.runner.id).point(m.point)
        closes = point.access.closes if point.access is not None else None
        closing = closes is not None and m.wait_until >= closes
        if m.next_meeting is None and not closing:
            continue
        if sight.now < m.be_there:
            yield Wake(m.be_there)
            continue
        if closes is not None:
            yield Wake(closes)
        if set(m.crew) <= set(may_go(sight, m.meeting)):
            continue  # told with who stays (staying.py)
        if not waited_out(sight, m) or left_again(sight, m.point, m.crew) or too_late(sight, plan, m):
            yield from hold_ends(sight)
            yield on_grid(sight.now)[1]
            continue
        for who in m.crew:
            yield Draft(NoticeKind.MOVE_ON, who, m.point, plan.id, sight.now, m, _facts(sight), mine=True)


def meeting_lost(sight: Sight) -> Iterator[Draft | Wake]:
    """Each way in which a meeting can't be made, once."""
    for m in _by_car(sight):
        plan = sight.plan(m.meeting)
        lost = m.lost or (LOST_TOO_LATE if too_late(sight, plan, m) else "")
        if lost and not is_there(sight, plan, m.crew):
            yield from _lost(sight, plan, replace(m, lost=lost), sight.now)
    for plan in plans_of(sight):
        times = sight.state.at_point(plan.point)
        gone = None if times is None else (times.left or (times.arrived if times.through else None))
        if times is None or gone is None or sight.now - gone.at > GONE_FOR:
            continue
        for party in parties_to(sight, plan):
            if _missed_her(sight, plan, party, times, gone):
                yield from _lost(sight, plan, _gone_values(sight, plan, party, gone), gone.at, (gone.entry,))


def _lost(
    sight: Sight, plan: MeetingPlan, m: MeetingValues, at: datetime, facts: tuple[str, ...] = ()
) -> Iterator[Draft]:
    for who in m.crew:
        yield Draft(
            NoticeKind.MEETING_LOST,
            who,
            m.point,
            f"{plan.id}:{m.lost}",
            at,
            m,
            facts or _facts(sight),
            mine=True,
        )


def _missed_her(sight: Sight, plan: MeetingPlan, party: Party, times: PointTimes, gone: Stamp) -> bool:
    """Whether the crew of one car can't have been there when she left; never on a guess about the drive.

    Crew who reported her, or said that they were there, were there; who stays from a meeting before has nowhere to set out
    from. Otherwise it goes by when they set out, or were told to; crew never told to leave for her have not been there in
    time.
    """
    reports = (times.arrived, times.left, *times.also_arrived, *times.also_left)
    mine = reported_her(sight, plan) or any(s is not None and s.source is Source.CREW for s in reports)
    there = [s.at for p, w, s in sight.race.crew_there if p == plan.point and w in members(sight.event, plan)]
    way = party.way
    if mine or any(at <= gone.at for at in there) or not way.confirmed or not way.drive:
        return False
    begun = set_out_at(sight, plan, party.people)
    if begun is None:
        kinds = (NoticeKind.LEAVE_NOW, NoticeKind.MOVE_ON)
        notices = (n for k in kinds for n in sight.told(k, point=plan.point))
        told = [n.made_at for n in notices if n.notice.key.person in party.people]
        begun = min(told, default=sight.now)
    return begun + way.drive > gone.at


def _gone_values(sight: Sight, plan: MeetingPlan, party: Party, gone: Stamp) -> MeetingValues:
    later = [m for m in sight.meetings if set(m.crew) & set(plan.crew) & set(party.people)]
    way = party.way
    return MeetingValues(
        meeting=plan.id,
        point=plan.point,
        window=Window(plan.point, gone.at, gone.at, gone.at),
        leave_by=None,
        be_there=gone.at,
        wait_until=gone.at,
        drive=way.drive,
        kit=brought(plan),
        take_back=taken_back(plan),
        food=plan.food,
        if_missed=plan.if_missed,
        no_signal=False,
        next_meeting=later[0].meeting if later else None,
        drive_confirmed=way.confirmed,
        drive_from=way.from_place,
        crew=party.people,
        lost=LOST_GONE,
        car=party.car,
    )


RULES: tuple[Rule, ...] = (meeting_lost, window_moved, move_on)
