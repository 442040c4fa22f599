"""Who may be standing beside her while a call for help is open, who hears of it as its caller, and what has come in since.

Whoever called from out there is asked nothing that only others could do, and is told what to do at the scene.
"""

from __future__ import annotations

from datetime import timedelta
from math import cos, hypot, radians

from server.event.model import PartKind
from server.facts.entry import Entry, Fix, Kind
from server.facts.runner import MEANWHILE
from server.facts.state import Going
from server.watch.alarms import Alarm, calls_of
from server.watch.crew_whereabouts import there_at
from server.watch.escalation_state import Stand
from server.watch.notice import Answer, Heard, NoticeKind
from server.watch.runner_context import Sight
from server.watch.silence import with_her

__all__ = ["beside", "callers", "said_by_holder", "since_call", "words_since"]

_ELSEWHERE = frozenset({PartKind.SAFETY_CONTACT, PartKind.ORGANISER, PartKind.SUPPORTER})
"""Parts whose people are at home or at a desk."""

FAR_M = 300.0
"""A place shared again is of use once it is so far from the last one (own choice: GPS wanders less than that)."""
NOT_BEFORE = timedelta(minutes=5)
"""A live share that moves is passed on so often (own choice)."""


def callers(sight: Sight, alarm: Alarm) -> dict[str, Entry]:
    """The people whose calls this alarm is about, each with their first: the one that raised it and those that joined."""
    people = {p.id for p in sight.event.people}
    found: dict[str, Entry] = {}
    for e in sorted(calls_of(sight), key=lambda e: (e.received_at, e.id)):
        if e.by in people and (e.id == alarm.basis or e.received_at >= alarm.raised):
            found.setdefault(e.by, e)
    return found


def beside(sight: Sight, alarm: Alarm) -> tuple[str, ...]:
    """Who may be with her: whoever called from out there, a pacer who runs with her, crew at the point where she is in.
    () where nobody called for help."""
    if alarm.kind is not NoticeKind.ASKED_FOR_HELP:
        return ()
    called = [who for who in callers(sight, alarm) if who != sight.runner.person and _out_there(sight, who)]
    pacers = [p for p in sight.people(PartKind.PACER) if with_her(sight, p)]
    last = sight.state.last_known
    at = last.point if last is not None and sight.state.going is Going.AT_POINT else None
    crew = [p for p in sight.people(PartKind.CREW) if at is not None and there_at(sight, at, p) is not None]
    return tuple(dict.fromkeys((*called, *pacers, *crew)))


def _out_there(sight: Sight, who: str) -> bool:
    kinds = {p.kind for p in sight.event.parts_of(who) if p.runner in (None, sight.runner.id)}
    return not kinds or not kinds <= _ELSEWHERE


def since_call(sight: Sight, alarm: Alarm) -> tuple[Entry, ...]:
    """What has come in about her since the call that raised the alarm, in the order in which it came; of a place shared
    again and again only what moved."""
    if alarm.kind is not NoticeKind.ASKED_FOR_HELP:
        return ()
    doubted = (e for e in sight.state.unconfirmed if e.kind in MEANWHILE - {Kind.ASKED_FOR_HELP})
    both = sorted((*sight.state.meanwhile, *doubted), key=lambda e: (e.received_at, e.id))
    found: list[Entry] = []
    told: dict[str, Entry] = {}
    # One message may say where she is and how she is: its words go on once, with the place.
    placed = {(e.by, e.seen_at, e.words) for e in both if e.point and e.kind is not Kind.HOW_SHE_IS}
    for e in both:
        if e.id == alarm.basis or e.received_at < alarm.raised or (e.kind is Kind.NOTE and not e.words):
            continue
        if e.kind is Kind.HOW_SHE_IS and (e.by, e.seen_at, e.words) in placed:
            continue
        if e.kind is Kind.POSITION:
            before = told.get(e.by)
            if e.fix is None or (before is not None and not _moved(before, e)):
                continue
            told[e.by] = e
        found.append(e)
    return tuple(found)


def _moved(before: Entry, e: Entry) -> bool:
    if before.fix is None or e.fix is None:
        return True
    return e.received_at - before.received_at >= NOT_BEFORE and _apart_m(before.fix, e.fix) >= FAR_M


def _apart_m(a: Fix, b: Fix) -> float:
    """Metres between two places that lie near each other, on a sphere."""
    north = (b.lat - a.lat) * 111_195
    east = (b.lon - a.lon) * 111_195 * cos(radians(a.lat))
    return hypot(north, east)


def words_since(sight: Sight, alarm: Alarm) -> tuple[Heard, ...]:
    """The words among it."""
    return tuple(Heard(e.seen_at, e.by, e.words) for e in since_call(sight, alarm) if e.words)


_PLAIN = frozenset(a.value for a in Answer)


def said_by_holder(sight: Sight, alarm: Alarm, stand: Stand) -> Heard | None:
    """The newest words of whoever has it: round their answer, or written since they took it."""
    if stand.holder is None:
        return None
    mine = {m.notice.key.text() for m in alarm.notices if m.notice.key.person == stand.holder}
    found = [
        Heard(e.seen_at, e.by, w) for e in sight.race.answers if e.about in mine and (w := _round(e.words))
    ]
    took = min(
        (a.at for m in alarm.notices if m.notice.key.person == stand.holder for a in m.answers), default=None
    )
    if took is not None:
        written = (e for e in since_call(sight, alarm) if e.by == stand.holder and e.words)
        found += [Heard(e.seen_at, e.by, e.words) for e in written if e.seen_at >= took]
    return max(found, key=lambda h: h.at, default=None)


def _round(words: str) -> str:
    """What was said around an answer's own word ('i have it: driving now'); '' for nothing."""
    word, _, more = words.partition(": ")
    more = more.strip()
    return "" if word not in _PLAIN or more.lower().strip(" .!") in _PLAIN else more
