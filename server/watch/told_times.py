"""Her meetings as people are told of them: an answer or a board must not contradict the notice that went before.

The meetings of `meetings` hold what the forecast says; that a drive takes longer than is left, or that she has most
likely gone on from where she was last seen, is judged with the notices and the roads at hand, as the rules do it.
"""

from __future__ import annotations

from dataclasses import replace
from datetime import datetime

from server.watch.circle import share_of
from server.watch.crew_whereabouts import is_there
from server.watch.leaving import GONE_ON, p_gone_on, too_late
from server.watch.meetings import LOST_TOO_LATE, meetings
from server.watch.notice import MeetingValues, together
from server.watch.runner_context import Sight
from server.watch.situation import Situation
from server.watch.staying import as_missed

__all__ = ["meetings_as_told", "sight_of"]


def sight_of(situation: Situation, runner_id: str, now: datetime) -> Sight:
    """What the rules look at of one runner; KeyError for one the event does not have."""
    situation = share_of(situation, runner_id)
    sight = Sight(
        situation=situation,
        now=now,
        runner=situation.event.runner(runner_id),
        state=situation.state.runner(runner_id),
        meetings=meetings(situation, runner_id, now),
        made=situation.made_about(runner_id),
    )
    return replace(sight, meetings=as_missed(sight), memo={})


def meetings_as_told(sight: Sight) -> tuple[MeetingValues, ...]:
    """Her meetings still to come in running order, `lost` also where the crew can't get there in time.

    One where she was seen in and has most likely gone on unseen since the wait was over is left out.
    """
    return tuple(_judged(sight, m) for m in sight.meetings if not _gone_on(sight, m))


def _judged(sight: Sight, m: MeetingValues) -> MeetingValues:
    return together([_judged_of(sight, mine) for mine in m.parties()], m.crew)


def _judged_of(sight: Sight, m: MeetingValues) -> MeetingValues:
    """The same of those who come in one car."""
    plan = sight.plan(m.meeting)
    late = not m.lost and not is_there(sight, plan, m.crew) and too_late(sight, plan, m)
    return replace(m, lost=LOST_TOO_LATE) if late else m


def _gone_on(sight: Sight, m: MeetingValues) -> bool:
    if sight.now < m.wait_until or is_there(sight, sight.plan(m.meeting)):
        return False
    return p_gone_on(sight, m.point) >= GONE_ON
