"""Which entries count: doubled keys, conflicts, corrections, things taken back, and confirmations.

An entry counts when it is not cancelled (taken back or replaced) by an entry that itself counts and, if
it is unconfirmed, when an entry that counts confirms it. So undoing an undo brings back what was undone.
Nothing here depends on the order of entries, only on what they say.
"""

from __future__ import annotations

from collections import defaultdict
from collections.abc import Iterable
from dataclasses import dataclass
from datetime import datetime

from server.facts.entry import Entry, Kind, Source

TRUST = {source: rank for rank, source in enumerate(Source)}
"""Rank of trust of a source, 0 the most trusted."""


@dataclass(frozen=True, slots=True)
class Counted:
    """What counts and what does not. Each tuple is in seen order.

    `counts` is to be folded; `future` is seen after `now`; `unconfirmed` waits for somebody's word;
    `conflicts` holds pairs of ids (the one kept, the other). Cancelled entries are in none of them.
    """

    counts: tuple[Entry, ...]
    future: tuple[Entry, ...]
    unconfirmed: tuple[Entry, ...]
    conflicts: tuple[tuple[str, str], ...]


Told = tuple[datetime, datetime, tuple[tuple[int, str], ...], str]


def told_order(entry: Entry) -> Told:
    """The order in which people said things: by when it was sent, then received; of several that one message made
    (keys `m`, `m.1`, `m.2`) as they stood in it; the id last, so that there always is an order."""
    parts = (p for p in entry.key.split("."))
    number = tuple((int(p), "") if p.isdecimal() and len(p) <= 18 else (-1, p) for p in parts)
    return (entry.sent_at, entry.received_at, number, entry.id)


def seen_order(entry: Entry) -> tuple[datetime, int, Told]:
    """By seen time; at the same moment the more trusted source first, then as told: so that of two things one person
    said of one minute the later said holds."""
    return (entry.seen_at, TRUST[entry.source], told_order(entry))


def counted(entries: Iterable[Entry], now: datetime) -> Counted:
    """Sort out which of `entries` count at `now`."""
    kept, alias, conflicts = _once_per_key(entries)
    live, waiting = _settle(kept, alias, now)
    ordered = sorted(kept, key=seen_order)
    return Counted(
        counts=tuple(e for e in ordered if e.id in live and _has_been(e, now)),
        future=tuple(e for e in ordered if not _has_been(e, now) and (e.id in live or e.id in waiting)),
        unconfirmed=tuple(e for e in ordered if e.seen_at <= now and e.id in waiting),
        conflicts=conflicts,
    )


def _has_been(e: Entry, now: datetime) -> bool:
    """Whether its time has come. A call for help waits for no clock, hers or ours, to be put right."""
    return e.seen_at <= now or e.kind is Kind.ASKED_FOR_HELP


def same_content(one: Entry, other: Entry) -> bool:
    """Whether two entries say the same. Times of sending and receiving, and the mark of doubt, which is
    ours and not the sender's, are left out: a message sent again is the same message."""
    return _content(one) == _content(other)


def _content(e: Entry) -> tuple[object, ...]:
    said = (e.event, e.runner, e.kind, e.seen_at, e.by, e.source, e.point, e.replaces, e.about, e.how)
    more = (
        e.fix,
        e.until,
        e.amount,
        e.factor,
        e.edge,
        e.person,
        e.words,
        e.seen_spread,
        e.wave,
        e.why,
        e.logged,
    )
    return said + more


def _once_per_key(
    entries: Iterable[Entry],
) -> tuple[list[Entry], dict[str, str], tuple[tuple[str, str], ...]]:
    """One entry per sender and key, the first received; ids of repeats lead to the one kept."""
    by_key: dict[tuple[str, str], list[Entry]] = defaultdict(list)
    for e in set(entries):
        by_key[(e.sender, e.key or e.id)].append(e)
    kept: list[Entry] = []
    alias: dict[str, str] = {}
    conflicts: list[tuple[str, str]] = []
    for group in by_key.values():
        group.sort(key=lambda e: (e.received_at, e.id, seen_order(e)))
        first = group[0]
        kept.append(first)
        for other in group[1:]:
            if same_content(first, other):
                alias[other.id] = first.id
            else:
                conflicts.append((first.id, other.id))
    return kept, alias, tuple(sorted(set(conflicts)))


@dataclass(slots=True)
class _Links:
    """Who cancels and who confirms whom, by entry id."""

    cancelled_by: dict[str, list[str]]
    confirmed_by: dict[str, list[str]]


def _links(kept: list[Entry], alias: dict[str, str], now: datetime) -> _Links:
    ids = {e.id for e in kept}
    keys = {(e.sender, e.key): e.id for e in kept if e.key}
    links = _Links(defaultdict(list), defaultdict(list))
    instead_of: dict[str, str] = {}
    for e in kept:
        if e.seen_at > now:
            continue  # what has not happened yet cancels and confirms nothing yet
        if e.kind in (Kind.TAKEN_BACK, Kind.CONFIRMED) and e.about is not None:
            about = alias.get(e.about, e.about)
            if about in ids and about != e.id:
                table = links.cancelled_by if e.kind is Kind.TAKEN_BACK else links.confirmed_by
                table[about].append(e.id)
        if e.replaces is not None:
            target = alias.get(e.replaces, e.replaces)
            target = target if target in ids else keys.get((e.sender, e.replaces), "")
            if target and target != e.id:
                instead_of[e.id] = target
    for one in instead_of:
        # Instead of what was instead of another it is instead of both: a second correction brings back no first report.
        target, walked = instead_of[one], {one}
        while target not in walked:
            links.cancelled_by[target].append(one)
            walked.add(target)
            target = instead_of.get(target, one)
    return links


def _settle(kept: list[Entry], alias: dict[str, str], now: datetime) -> tuple[set[str], set[str]]:
    """Ids of entries that count, and of those that only wait to be confirmed.

    Entries that cancel each other in a ring have no answer of their own: the one sent last has the last
    word. A ring of entries that confirm only each other confirms nothing.
    """
    links = _links(kept, alias, now)
    by_id = {e.id: e for e in kept}
    counts: dict[str, bool] = {}
    open_ids = []
    for e in kept:
        if e.id in links.cancelled_by or e.id in links.confirmed_by:
            open_ids.append(e.id)
        else:
            counts[e.id] = not _needs_word(e)
    open_ids.sort(key=lambda i: (by_id[i].sent_at, by_id[i].received_at, i), reverse=True)
    while open_ids:
        decided = {i: v for i in open_ids if (v := _verdict(by_id[i], links, counts)) is not None}
        if not decided:
            last = open_ids[0]
            decided = {last: not _needs_word(by_id[last])}
        counts.update(decided)
        open_ids = [i for i in open_ids if i not in decided]
    waiting = {
        i
        for i, yes in counts.items()
        if not yes and _needs_word(by_id[i]) and not any(counts[c] for c in links.cancelled_by.get(i, ()))
    }
    return {i for i, yes in counts.items() if yes}, waiting


def _verdict(e: Entry, links: _Links, counts: dict[str, bool]) -> bool | None:
    """Whether `e` counts, or None while what it hangs on is open."""
    cancels = [counts.get(i) for i in links.cancelled_by.get(e.id, ())]
    if True in cancels:
        return False
    confirms = [counts.get(i) for i in links.confirmed_by.get(e.id, ())]
    worded = True if not _needs_word(e) or True in confirms else (None if None in confirms else False)
    if worded is False:
        return False
    return None if worded is None or None in cancels else True


def _needs_word(e: Entry) -> bool:
    """A request for help never waits for a confirming tap."""
    return e.unconfirmed and e.kind is not Kind.ASKED_FOR_HELP
