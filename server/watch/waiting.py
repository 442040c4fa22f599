"""What still waits: notices for an answer nothing has overtaken.

'Leaving' said today must not be taken for the answer to yesterday's leave-now; a question about a point is over
when a newer one asks the same, and an alarm's question is over when the alarm is.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from datetime import datetime

from server.watch.escalation_state import open_alarms
from server.watch.notice import AlarmValues, Made, NoticeKind, UnnamedHelpValues

__all__ = ["changeable", "waiting"]


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
        if _may_be_answered(m) and newest[_occasion(m)] == m.short and not over and not late:
            yield m


def _may_be_answered(m: Made) -> bool:
    """Whether it asks, or has answers under it; a doubtful report is settled by its own two, whatever the number."""
    return m.notice.needs_answer or (
        bool(m.notice.buttons) and m.notice.key.kind is not NoticeKind.UNCONFIRMED
    )


def _occasion(m: Made) -> tuple[str, str, str, str]:
    """What a later notice must share with this one to take its place."""
    key = m.notice.key
    return key.runner, key.person, key.kind.value, key.point
