"""The table of a night that was played: who was told what by when, on what fact, and where the longest wait was.

A notice is owed from the moment at which the fact it rests on was handed in; what time alone made due (a leave-by, a
silence) waits for nobody and shows no fact.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Mapping, Sequence
from dataclasses import dataclass
from datetime import datetime, timedelta
from zoneinfo import ZoneInfo

from server.event.model import Event
from server.facts.entry import Entry
from server.watch.notice import Made, NoticeKind

__all__ = ["Row", "longest", "rows", "table"]

OF_FACTS = frozenset(
    {
        NoticeKind.ARRIVED,
        NoticeKind.LEFT,
        NoticeKind.WINDOW_MOVED,
        NoticeKind.MEETING_LOST,
        NoticeKind.ASKED_FOR_HELP,
        NoticeKind.CALL_BACK,
        NoticeKind.ALARM_NEWS,
        NoticeKind.STAND_DOWN,
        NoticeKind.RETIRED,
        NoticeKind.FINISHED,
        NoticeKind.RACE_CHANGE,
        NoticeKind.WORD_OF_HER,
        NoticeKind.PAST_CUT_OFF,
        NoticeKind.UNCOVERED,
        NoticeKind.COVERED,
        NoticeKind.CORRECTION,
    }
)
"""Kinds that a fact makes due, and not the clock."""


@dataclass(frozen=True, slots=True)
class Row:
    """One notice: when it reached its person (None = it did not), what it was, the newest fact it rests on with the time
    that fact was handed in, and how long the person waited for it (None where time made it due)."""

    told: datetime | None
    made: datetime
    person: str
    kind: str
    point: str
    fact: str
    heard: datetime | None

    @property
    def waited(self) -> timedelta | None:
        """From the fact to the person."""
        return None if self.told is None or self.heard is None else self.told - self.heard


def rows(made: Iterable[Made], entries: Iterable[Entry]) -> tuple[Row, ...]:
    """A row for each notice to a person, in the order in which they were told."""
    known = {e.id: e for e in entries}
    found = [_row(m, known) for m in made]
    return tuple(sorted(found, key=lambda r: (r.told or r.made, r.person)))


def _row(m: Made, known: Mapping[str, Entry]) -> Row:
    key = m.notice.key
    facts = [known[f] for f in m.notice.facts if f in known] if key.kind in OF_FACTS else []
    newest = max(facts, key=lambda e: e.received_at, default=None)
    return Row(
        m.sent_at,
        m.made_at,
        key.person,
        key.kind.value,
        key.point,
        "" if newest is None else newest.kind.value,
        None if newest is None else newest.received_at,
    )


def longest(found: Sequence[Row]) -> Row | None:
    """The row whose person waited longest for a fact; of equals the first. What is asked again was told before."""
    first: dict[tuple[object, ...], Row] = {}
    for r in found:
        first.setdefault((r.person, r.kind, r.point, r.heard), r)
    waits = [r for r in first.values() if r.waited is not None]
    return max(waits, key=lambda r: r.waited or timedelta(0), default=None)


def table(event: Event, found: Sequence[Row]) -> Iterator[str]:
    """The table in lines for a terminal, and below it the longest wait and who was not reached."""
    zone = ZoneInfo(event.time_zone)
    names = {p.id: p.name for p in event.people}

    def clock(at: datetime | None) -> str:
        return "not told " if at is None else at.astimezone(zone).strftime("%a %H:%M")

    yield f"{'told':9}  {'who':14}  {'what':34}  on the fact (after)"
    for r in found:
        what = r.kind + (f", {_place(event, r.point)}" if r.point else "")
        waited = "" if r.waited is None else f" ({_minutes(r.waited)} min)"
        yield f"{clock(r.told):9}  {names.get(r.person, r.person):14}  {what:34}  {r.fact}{waited}".rstrip()
    most = longest(found)
    if most is not None and most.waited is not None:
        who, at = names.get(most.person, most.person), _minutes(most.waited)
        yield f"Longest from a fact to who needed it: {at} min ({most.fact}: {most.kind} to {who}, {clock(most.told)})."
    missed = sorted({names.get(r.person, r.person) for r in found if r.told is None})
    yield f"Not reached: {', '.join(missed)}." if missed else "Everybody was reached."


def _place(event: Event, point: str) -> str:
    return next((p.name for c in event.courses for p in c.points if p.id == point), point)


def _minutes(span: timedelta) -> int:
    return round(span.total_seconds() / 60)
