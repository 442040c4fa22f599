"""Choices and sleep: what may wait for a person's morning, and when that morning is.

Neither ever holds back an alarm, nor a person's own leave-now and what belongs to it (`Row.own`).
"""

from __future__ import annotations

from collections.abc import Iterator
from datetime import datetime, time, timedelta
from zoneinfo import ZoneInfo

from server.event.model import Event, NoticeChoice, Person
from server.watch.notice import Urgency

__all__ = ["asleep_until", "chosen", "quiet_since"]


def chosen(person: Person, urgency: Urgency, *, own: bool, mine: bool) -> bool:
    """Whether a person's choice lets a notice of this kind through. `mine` as in `Draft`."""
    if urgency is Urgency.ALARM or own:
        return True
    if person.notices is NoticeChoice.MINE:
        return mine
    return person.notices is NoticeChoice.ALL


def asleep_until(person: Person, event: Event, now: datetime) -> datetime | None:
    """The end of the sleep that `now` lies in: quiet hours in the person's own zone, or a sleep they mean to have in
    this event; None outside."""
    return max((end for _, end in _spans(person, event, now)), default=None)


def quiet_since(person: Person, event: Event, now: datetime) -> datetime | None:
    """The beginning of the sleep that `now` lies in; None outside."""
    return min((start for start, _ in _spans(person, event, now)), default=None)


def _spans(person: Person, event: Event, now: datetime) -> Iterator[tuple[datetime, datetime]]:
    for part in event.parts_of(person.id):
        yield from ((s.start, s.end) for s in part.sleeps if s.start <= now < s.end)
    quiet = _quiet(person, event, now)
    if quiet is not None:
        yield quiet


def _quiet(person: Person, event: Event, now: datetime) -> tuple[datetime, datetime] | None:
    if not person.quiet_from or not person.quiet_to or person.quiet_from == person.quiet_to:
        return None
    zone = ZoneInfo(person.time_zone or event.time_zone)
    begins, ends = time.fromisoformat(person.quiet_from), time.fromisoformat(person.quiet_to)
    today = now.astimezone(zone).date()
    for day in (today - timedelta(days=1), today):
        start = datetime.combine(day, begins, zone)
        end = datetime.combine(day if begins < ends else day + timedelta(days=1), ends, zone)
        # Compared as instants: on the night the clocks change, wall time alone would be an hour out.
        if start.timestamp() <= now.timestamp() < end.timestamp():
            return start.astimezone(now.tzinfo), end.astimezone(now.tzinfo)
    return None
