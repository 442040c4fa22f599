"""What a person has been told of a meeting is not told again: kit, food, what if missed; then only what changed.

A list read six times is read no more. It counts as told once a channel has taken it, or while it is on its way.
"""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass, replace
from datetime import datetime, timedelta

from server.event.model import Event
from server.watch.crew_routes import members
from server.watch.notice import BriefValues, Made, MeetingValues, NoticeKind, SightingValues, Values

__all__ = ["LISTING", "once_only"]

ON_ITS_WAY = timedelta(minutes=10)
"""A notice that no channel has taken after so long has told nobody anything."""
LISTING = frozenset(
    {
        NoticeKind.LEAVE_SOON,
        NoticeKind.LEAVE_NOW,
        NoticeKind.BE_THERE,
        NoticeKind.WAKE_UP,
        NoticeKind.BRIEF,
        NoticeKind.ARRIVED,
        NoticeKind.LEFT,
    }
)
"""Kinds whose message lists what to bring to a meeting, or to have ready."""


@dataclass(frozen=True, slots=True)
class _Listed:
    """What was listed of one meeting."""

    kit: frozenset[str] = frozenset()
    back: frozenset[str] = frozenset()
    words: frozenset[str] = frozenset()

    def plus(self, other: _Listed) -> _Listed:
        return _Listed(self.kit | other.kit, self.back | other.back, self.words | other.words)


def once_only(
    event: Event, runner: str, who: str, kind: NoticeKind, values: Values, made: Iterable[Made], now: datetime
) -> Values:
    """The values without what the person has been told of the same meeting before; themselves for other kinds."""
    if kind not in LISTING:
        return values
    told: dict[str, _Listed] = {}
    for m in made:
        key = m.notice.key
        heard = m.sent_at is not None or (not m.failed and now - m.made_at < ON_ITS_WAY)
        if key.person == who and key.runner == runner and key.kind in LISTING and heard:
            for meeting, listed in _lists(event, runner, who, key.kind, m.notice.values):
                told[meeting] = told.get(meeting, _Listed()).plus(listed)
    match values:
        case MeetingValues():
            return _meeting(values, told)
        case BriefValues(meetings=several):
            return replace(values, meetings=tuple(_meeting(m, told) for m in several))
        case SightingValues():
            known = told.get(_meeting_of(event, runner, who, kind, values), _Listed())
            return replace(
                values,
                kit=_new(values.kit, known.kit),
                take_back=_new(values.take_back, known.back),
                food="" if values.food in known.words else values.food,
            )
        case _:
            return values


def _meeting(m: MeetingValues, told: dict[str, _Listed]) -> MeetingValues:
    known = told.get(m.meeting, _Listed())
    return replace(
        m,
        kit=_new(m.kit, known.kit),
        take_back=_new(m.take_back, known.back),
        food="" if m.food in known.words else m.food,
        if_missed="" if m.if_missed in known.words else m.if_missed,
    )


def _new(items: tuple[str, ...], told: frozenset[str]) -> tuple[str, ...]:
    return tuple(i for i in items if i not in told)


def _lists(
    event: Event, runner: str, who: str, kind: NoticeKind, values: Values
) -> Iterable[tuple[str, _Listed]]:
    """What a notice lists, meeting by meeting."""
    match values:
        case MeetingValues():
            yield values.meeting, _listed(values)
        case BriefValues(meetings=several):
            # A brief names kit and no food.
            yield from ((m.meeting, replace(_listed(m), words=frozenset())) for m in several)
        case SightingValues():
            kit, back = frozenset(values.kit), frozenset(values.take_back)
            yield _meeting_of(event, runner, who, kind, values), _Listed(kit, back, frozenset({values.food}))
        case _:
            pass


def _listed(m: MeetingValues) -> _Listed:
    return _Listed(frozenset(m.kit), frozenset(m.take_back), frozenset({m.food, m.if_missed}))


def _meeting_of(event: Event, runner: str, who: str, kind: NoticeKind, values: SightingValues) -> str:
    """The meeting whose kit a sighting lists: where she is in, that very one; out of a point, the person's next."""
    if kind is NoticeKind.LEFT:
        return "" if values.next_meeting is None else values.next_meeting.meeting
    here = (m for m in event.meetings_of(runner) if m.point == values.point)
    return next((m.id for m in here if who in members(event, m)), "")
