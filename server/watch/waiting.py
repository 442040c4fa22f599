"""What still waits: crew for a runner who is missed, and notices for an answer nothing has overtaken.

'Leaving' said today must not be taken for the answer to yesterday's leave-now; a question about a point is over
when a newer one asks the same, and an alarm's question is over when the alarm is.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from datetime import datetime

from server.event.model import Point
from server.facts.state import RunnerState
from server.watch.climb import open_alarms
from server.watch.notice import AlarmValues, Answer, Made, NoticeKind, UnnamedHelpValues

__all__ = ["changeable", "missed_at", "waiting"]


def missed_at(point: Point, wait_until: datetime, state: RunnerState, made: Iterable[Made]) -> bool:
    """Whether crew stay at a point though their time to wait is over: she has not been seen there, and an alarm
    about her is open, somebody said 'not here yet' there, or those asked have not said that nobody is there to
    see. Not past the closing of the place."""
    if state.at_point(point.id) is not None:
        return False
    closes = point.access.closes if point.access is not None else None
    if closes is not None and wait_until >= closes:
        return False
    hers = tuple(m for m in made if m.notice.key.runner == state.runner)
    asked = [m for m in hers if _asks_about(m, point.id)]
    # 'Yes' and 'not yet' come before the reports they stand for: only 'nobody there to see' lets crew go.
    about_her = bool(asked) and all(m.answer != Answer.NOBODY.value for m in asked)
    return about_her or any(n.point == point.id for n in state.not_yet) or bool(open_alarms(hers))


def _asks_about(m: Made, point: str) -> bool:
    return m.notice.key.kind is NoticeKind.LATE and m.notice.key.point == point


def waiting(made: Iterable[Made], now: datetime) -> frozenset[int]:
    """Short numbers of the notices of one event that an answer would still be about at `now`."""
    return frozenset(m.short for m in _open(made, now) if m.answered_at is None)


def changeable(made: Iterable[Made], now: datetime) -> frozenset[int]:
    """Short numbers of the notices answered already at which another answer would still change something: 'can't' may
    become 'I have it' while an alarm is open, and the other way round."""
    return frozenset(m.short for m in _open(made, now) if m.answered_at is not None)


def _open(made: Iterable[Made], now: datetime) -> Iterator[Made]:
    everything = tuple(made)
    still = set(open_alarms(everything))
    said = {v.call for m in everything if isinstance(v := m.notice.values, UnnamedHelpValues) and v.over}
    newest = {_occasion(m): m.short for m in sorted(everything, key=lambda m: m.short)}
    for m in everything:
        values = m.notice.values
        over = isinstance(values, AlarmValues) and values.alarm not in still
        over = over or (isinstance(values, UnnamedHelpValues) and values.call in said)
        late = m.notice.use_by is not None and now > m.notice.use_by
        if m.notice.needs_answer and newest[_occasion(m)] == m.short and not over and not late:
            yield m


def _occasion(m: Made) -> tuple[str, str, str, str]:
    """What a later notice must share with this one to take its place."""
    key = m.notice.key
    return key.runner, key.person, key.kind.value, key.point
