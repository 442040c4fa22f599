"""Late, told home: the safety contact hears that she is late before any alarm, once a silence, as news.

Crew are asked at the 90% time; half an hour on without word of her those at home are told what is known and where to
look: the race's own results and race control may know what none of ours does.
"""

from __future__ import annotations

from collections.abc import Iterator
from datetime import datetime, timedelta

from server.event.model import PartKind
from server.watch.escalation_state import open_alarms
from server.watch.late_values import LateHomeValues
from server.watch.no_word import no_word, not_there, tracker_says
from server.watch.notice import NoticeKind
from server.watch.runner_context import Draft, Rule, Sight, Wake, with_us
from server.watch.silence import blind, hold_ends, overdue_at

__all__ = ["RULES", "told_home_at"]

AFTER_LATE = timedelta(minutes=30)
"""So long past the 90% time home is told."""
BEFORE_ALARM = timedelta(minutes=15)
"""Where the alarm comes sooner than that, home hears so long before it that she is late (own choice)."""


def told_home_at(late: datetime, alarm: datetime | None) -> datetime:
    """When home is told of a runner late at `late` whose silence becomes an alarm at `alarm`; never before `late`."""
    due = late + AFTER_LATE
    return due if alarm is None else max(late, min(due, alarm - BEFORE_ALARM))


def late_home(sight: Sight) -> Iterator[Draft | Wake]:
    """Once a silence: a 'not here yet' is no word of her, and begins no new one."""
    outlook, view = sight.seen_outlook, sight.seen_view
    late = None if outlook is None else outlook.late_time()
    if late is None or view is None or late[0] not in view.points:
        return
    point, late_by = late[0], max(late[1], sight.state.start)
    if sight.now < late_by:
        yield Wake(late_by)
        return
    alarm = overdue_at(sight)
    due = told_home_at(late_by, alarm)
    if sight.now < due:
        yield Wake(due)
        return
    if blind(sight) or sight.held() or with_us(sight) or open_alarms(sight.made):
        yield from hold_ends(sight)
        return
    last = sight.state.last_known
    values = LateHomeValues(
        point, view.window(point), last, not_there(sight), no_word(sight), alarm, tracker_says(sight)
    )
    facts = () if last is None else (last.entry,)
    for who in sight.people(PartKind.SAFETY_CONTACT):
        occasion = sight.seen_at.isoformat()
        yield Draft(NoticeKind.LATE_HOME, who, point, occasion, due, values, facts, mine=True)


RULES: tuple[Rule, ...] = (late_home,)
