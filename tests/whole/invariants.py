"""What holds on every night, whatever happens: checked after each story. Each gives its faults in words."""

from __future__ import annotations

import re
from collections.abc import Callable, Iterator
from datetime import datetime, timedelta

from server.facts.entry import Kind
from server.watch.crew_whereabouts import AWAKE_FOR
from server.watch.escalation_state import open_alarms
from server.watch.notice import (
    BriefValues,
    Made,
    MeetingValues,
    NoticeKind,
    RetiredValues,
    SightingValues,
    Urgency,
    Waits,
)
from server.watch.once import LISTING
from server.watch.quiet import quiet_since
from server.watch.table import row
from tests.whole.night import Night

__all__ = ["ALL"]

K = NoticeKind
MINUTE = timedelta(minutes=1)
MOST_LINES = {Urgency.ALARM: 10, Urgency.ACTION: 14, Urgency.NEWS: 14}
"""A notice fits a phone."""
APART = {NoticeKind.ALARM_KNOWN: 28, NoticeKind.READ_OUT: 14}
"""What goes with an alarm in messages of its own may be longer."""
NOT_SAID = re.compile(r"\b(hurry|passed|dead)\b", re.IGNORECASE)
_OF_HER = {Kind.IN: K.ARRIVED, Kind.OUT: K.LEFT, Kind.RETIRED: K.RETIRED, Kind.CONDITION: K.WORD_OF_HER}


def no_leave_by_in_the_past(n: Night) -> Iterator[str]:
    """A notice that sends somebody off names no time to leave by that was over when it was made; but leave now, which then
    says so, where what made it due has only just come."""
    for m in _told_of(n, K.LEAVE_SOON, K.LEAVE_NOW, K.WINDOW_MOVED, K.BRIEF, K.WAKE_UP):
        if m.notice.key.kind is K.LEAVE_NOW and any(e.received_at == m.made_at for e in n.entries):
            continue
        for meeting in _meetings(m):
            if meeting.leave_by is not None and not meeting.lost and meeting.leave_by < m.made_at - MINUTE:
                yield f"{_name(n, m)}: leave by {n.wall(meeting.leave_by)}"


def wait_until_not_before_likely(n: Night) -> Iterator[str]:
    """Nobody is told to wait until a time before the one at which she is likely to come."""
    for m in n.made:
        for meeting in _meetings(m):
            if not meeting.lost and meeting.wait_until < meeting.window.likely - MINUTE:
                waits, likely = n.wall(meeting.wait_until), n.wall(meeting.window.likely)
                yield f"{_name(n, m)}: wait until {waits}, likely {likely}"


def no_message_too_long(n: Night) -> Iterator[str]:
    """No notice has more lines than fit a phone."""
    urgency = {m.short: m.notice.urgency for m in n.made}
    for t in n.told:
        most = APART.get(K(t.kind), MOST_LINES[urgency[t.short]]) if t.kind else None
        if most is not None and len(t.text.splitlines()) > most:
            yield f"{len(t.text.splitlines())} lines, not {most}: {t}"


def words_not_said(n: Night) -> Iterator[str]:
    """Nothing says hurry, passed or dead."""
    yield from (f"'{found[0]}' in: {t}" for t in n.told if (found := NOT_SAID.search(t.text)))


def every_alarm_ended(n: Night) -> Iterator[str]:
    """When the story is over no alarm is open."""
    for runner in n.built.event.runners:
        hers = tuple(m for m in n.made if m.notice.key.runner == runner.id)
        yield from (f"{runner.id}: {alarm} is open at the end" for alarm in open_alarms(hers))


def sleep_kept(n: Night) -> Iterator[str]:
    """In somebody's sleep there come only alarms and their own duties, unless they are up and write."""
    for m in n.made:
        key, event = m.notice.key, n.built.event
        if m.notice.urgency is Urgency.ALARM or key.person not in {p.id for p in event.people}:
            continue
        since = quiet_since(event.person(key.person), event, m.made_at)
        if since is None or row(key.kind).own or m.notice.urgency is Urgency.ACTION:
            continue
        wrote = any(
            m.made_at - AWAKE_FOR <= t.at <= m.made_at and t.who == key.person and t.to for t in n.told
        )
        if not wrote:
            yield f"asleep since {n.wall(since)}: {_name(n, m)}"


def nobody_told_their_own_report(n: Night) -> Iterator[str]:
    """Whoever reported a fact is not told it; of her leaving only what it says of their own next meeting, of her retiring
    what they are asked and who fetches her."""
    entries = {e.id: e for e in n.entries}
    for m in n.made:
        key = m.notice.key
        own = [e for f in m.notice.facts if (e := entries.get(f)) is not None and e.by == key.person]
        for e in own:
            moves = isinstance(m.notice.values, SightingValues) and m.notice.values.next_meeting is not None
            asks = isinstance(m.notice.values, RetiredValues) and (
                m.notice.needs_answer or m.notice.values.waits is not Waits.NEWS
            )
            if _OF_HER.get(e.kind) is key.kind and not asks and not (key.kind is K.LEFT and moves):
                yield f"{_name(n, m)}, who reported '{e.kind.value}' {n.wall(e.seen_at)}"


def kit_once(n: Night) -> Iterator[str]:
    """What to bring to a meeting is listed to each person once, and then only what is new."""
    seen: dict[tuple[str, str, str, str], datetime] = {}
    for m in _told_of(n, *LISTING):
        key, values = m.notice.key, m.notice.values
        listed = [(v.point, item) for v in _meetings(m) for item in v.kit]
        if isinstance(values, SightingValues):
            ahead = values.next_meeting.point if key.kind is K.LEFT and values.next_meeting else values.point
            listed = [(ahead, item) for item in values.kit]
        for point, item in listed:
            before = seen.setdefault((key.person, key.runner, point, item), m.made_at)
            if before != m.made_at:
                yield f"{_name(n, m)}: '{item}', as at {n.wall(before)}"


def nothing_word_for_word_twice(n: Night) -> Iterator[str]:
    """No routine notice comes twice to one person with the very same words."""
    seen: dict[tuple[str, str], datetime] = {}
    for t in n.told:
        if t.kind and not t.urgent and not row(K(t.kind)).needs_answer:
            before = seen.setdefault((t.who, t.text), t.at)
            if before != t.at:
                yield f"as at {n.wall(before)}: {t}"


ALL: dict[str, Callable[[Night], Iterator[str]]] = {
    f.__name__: f
    for f in (
        no_leave_by_in_the_past,
        wait_until_not_before_likely,
        no_message_too_long,
        words_not_said,
        every_alarm_ended,
        sleep_kept,
        nobody_told_their_own_report,
        kit_once,
        nothing_word_for_word_twice,
    )
}


def _told_of(n: Night, *kinds: NoticeKind) -> Iterator[Made]:
    return (m for m in n.made if m.notice.key.kind in kinds)


def _meetings(m: Made) -> tuple[MeetingValues, ...]:
    match m.notice.values:
        case MeetingValues() as one:
            return (one,)
        case BriefValues(meetings=several):
            return several
        case SightingValues(next_meeting=MeetingValues() as ahead):
            return (ahead,)
        case _:
            return ()


def _name(n: Night, m: Made) -> str:
    key = m.notice.key
    return f"{n.wall(m.made_at)} {key.person}: {key.kind.value}" + (f" at {key.point}" if key.point else "")
