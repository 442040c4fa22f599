"""A fold that grows: entries are added as they come, and only those whom they concern are folded anew.

Entries fall into buckets, one a runner and one for those about none. What one bucket's entries say hangs on another's only
where an entry takes back, confirms or replaces one there, or shares its key: such buckets are tied, and sorted out together.
Race-level facts are few and folded anew when one of them changes; of each runner only what changes for her is.
"""

from __future__ import annotations

from bisect import insort
from collections.abc import Iterable, Iterator
from dataclasses import dataclass, field, replace
from datetime import UTC, datetime, timedelta

from server.event.model import Event, Runner
from server.facts.conflict_resolution import counted, seen_order
from server.facts.covering import fallen_and_taken
from server.facts.entry import Entry, Kind
from server.facts.placing import Placer
from server.facts.race import (
    RACE_WIDE,
    RaceFacts,
    held_intervals,
    race_facts,
    start_of,
    start_said,
)
from server.facts.runner import Settled, fold_runner
from server.facts.state import Hold, Interval, RaceState, Received, RunnerState

__all__ = ["Folding"]

CELL = timedelta(minutes=1)
"""Of plain positions of one sender the first of each such stretch is folded, and the newest: between them a tracker that
sends every few seconds says nothing that changes where she is (own choice; the forecast takes one in three minutes)."""
_EPOCH = datetime(2000, 1, 1, tzinfo=UTC)

_FOR_ALL = frozenset({Kind.CONDITION, Kind.SWEEP_THROUGH, Kind.STAND_DOWN})
"""Kinds that concern every runner when they name none."""
_LINKS = frozenset({Kind.TAKEN_BACK, Kind.CONFIRMED})
NOBODY = ""
"""The bucket of entries about no runner."""

_Name = tuple[str, ...]


@dataclass(slots=True, eq=False)
class _Group:
    """Buckets tied together, with their entries; plain positions apart, by id. `whole`: sort it out afresh; else only what
    is `fresh`, which nobody says more of, has come and what is `gone`, by id, is passed over now."""

    buckets: set[str]
    entries: list[Entry] = field(default_factory=list)
    positions: dict[str, Entry] = field(default_factory=dict)
    until: datetime | None = None
    whole: bool = True
    fresh: list[Entry] = field(default_factory=list)
    gone: set[str] = field(default_factory=set)


@dataclass(frozen=True, slots=True)
class _Sorted:
    """What of one bucket counts, is to come, or waits for somebody's word, each in seen order; when it was received."""

    counts: tuple[Entry, ...] = ()
    future: tuple[Entry, ...] = ()
    unconfirmed: tuple[Entry, ...] = ()
    race_wide: tuple[Entry, ...] = ()
    received: Received = field(default_factory=lambda: Received({}))


_NOTHING = _Sorted()


@dataclass(frozen=True, slots=True)
class _Rests:
    """What a runner's state rests on beside her own entries."""

    start: datetime
    for_all: tuple[Entry, ...]
    holds: tuple[Hold, ...]


@dataclass(slots=True)
class _Race:
    """The race-level facts as last folded, and what follows from them for all."""

    facts: RaceFacts
    rests: dict[str, _Rests]
    said: tuple[tuple[str, Entry], ...]


class Folding:
    """Entries of one event, and their state at any moment; see `server.facts.fold.fold`. Not for two threads at once.

    With `thin`, positions that change nothing are passed over for good: one that is taken back takes its minute with it.
    """

    def __init__(self, event: Event, place: Placer | None = None, *, thin: bool = False) -> None:
        self._event, self._place, self._thin = event, place, thin
        self._groups: dict[str, _Group] = {}
        self._named: dict[_Name, str] = {}
        self._waiting: dict[_Name, set[str]] = {}
        self._first: dict[tuple[str, str, int], Entry] = {}
        self._newest: dict[tuple[str, str], Entry] = {}
        self._dirty: dict[int, _Group] = {}
        self._to_come: dict[int, _Group] = {}
        self._sorted: dict[str, _Sorted] = {}
        self._clashes: dict[int, tuple[tuple[str, str], ...]] = {}
        self._states: dict[str, RunnerState] = {}
        self._settled: dict[str, Settled | None] = {}
        self._started: dict[str, bool] = {}
        self._next_start: datetime | None = None
        self._race: _Race | None = None
        self._state: RaceState | None = None
        self._now = _EPOCH

    def entries(self) -> tuple[Entry, ...]:
        """Those that are folded or could yet be; positions that were passed over are not among them."""
        groups = {id(g): g for g in self._groups.values()}
        return tuple(e for g in groups.values() for e in (*g.entries, *g.positions.values()))

    def add(self, entries: Iterable[Entry]) -> None:
        """Take more entries in, in any order; those of other events are passed over."""
        for e in entries:
            if e.event == self._event.id:
                self._add(e)

    def _add(self, e: Entry) -> None:
        bucket = e.runner or NOBODY
        if bucket not in self._groups:
            self._groups[bucket] = _Group({bucket})
        names, links = _names(e), tuple(_links(e))
        alone = not links and not any(n in self._waiting or n in self._named for n in names)
        if self._thin and alone and _plain(e):
            if not self._take_position(e, bucket):
                return
        else:
            self._groups[bucket].entries.append(e)
        if alone and not e.unconfirmed and e.id not in self._groups[bucket].gone:
            self._groups[bucket].fresh.append(e)
        else:
            self._groups[bucket].whole = True
        for name in names:
            self._tie(self._named.setdefault(name, bucket), bucket)
            for other in self._waiting.pop(name, ()):
                self._tie(other, bucket)
        for name in links:
            if name in self._named:
                self._tie(self._named[name], bucket)
            else:
                self._waiting.setdefault(name, set()).add(bucket)
        group = self._groups[bucket]
        self._dirty[id(group)] = group

    def _tie(self, one: str, other: str) -> None:
        into, group = self._groups[one], self._groups[other]
        if into is group:
            return
        into.whole = True
        into.buckets |= group.buckets
        into.entries += group.entries
        into.positions |= group.positions
        for bucket in group.buckets:
            self._groups[bucket] = into
        self._dirty.pop(id(group), None)
        self._to_come.pop(id(group), None)
        self._clashes.pop(id(group), None)
        self._dirty[id(into)] = into

    def _take_position(self, e: Entry, bucket: str) -> bool:
        """Keep a plain position if it is the first of its stretch or the newest; whether it is."""
        cell, sender = (bucket, e.sender, (e.seen_at - _EPOCH) // CELL), (bucket, e.sender)
        first, newest = self._first.get(cell), self._newest.get(sender)
        begins, ends = first is None or _before(e, first), newest is None or _before(newest, e)
        if begins:
            self._first[cell] = e
        if ends:
            self._newest[sender] = e
        if not (begins or ends):
            return False
        group = self._groups[bucket]
        kept = group.positions
        kept[e.id] = e
        for old in (first if begins else None, newest if ends else None):
            if old is not None and not self._still_kept(old, bucket):
                kept.pop(old.id, None)
                group.gone.add(old.id)
                for name in _names(old):
                    self._named.pop(name, None)
        return True

    def _still_kept(self, e: Entry, bucket: str) -> bool:
        cell = (bucket, e.sender, (e.seen_at - _EPOCH) // CELL)
        return self._first.get(cell) is e or self._newest.get((bucket, e.sender)) is e

    # -- the state ---------------------------------------------------------------------------------

    def at(self, now: datetime) -> RaceState:
        """What is fact at `now`; the same value again where nothing has changed, the same `RunnerState` of whom nothing
        concerned."""
        again = now < self._now
        if again:
            self._dirty = {id(g): g for g in self._groups.values()}
            for group in self._dirty.values():
                group.whole = True
        else:
            self._dirty |= {k: g for k, g in self._to_come.items() if g.until is not None and g.until <= now}
        before = self._race
        changed, race_too = self._sort_all(now)
        self._now = now
        race = self._fold_race() if before is None or race_too else before
        concerned = self._concerned(before, race, changed, now, again=again)
        for runner in concerned:
            self._fold_runner(runner, race, now)
        if self._state is None or changed or concerned:
            self._race, self._state = race, self._assemble(race)
        return self._state

    def changes_at(self) -> datetime | None:
        """When time alone changes the state next: an entry from the future comes true, a runner starts."""
        moments = [g.until for g in self._to_come.values() if g.until is not None]
        moments += [] if self._next_start is None else [self._next_start]
        return min(moments, default=None)

    def _sort_all(self, now: datetime) -> tuple[set[str], bool]:
        """The buckets for which what counts has changed; whether race-level facts may have."""
        changed, race_too = set[str](), False
        for group in self._dirty.values():
            for bucket, new in self._sort_out(group, now):
                old = self._sorted.get(bucket, _NOTHING)
                self._sorted[bucket] = new
                if old != new:
                    changed.add(bucket)
                    race_too = race_too or old.race_wide != new.race_wide
        self._dirty.clear()
        return changed, race_too

    def _sort_out(self, group: _Group, now: datetime) -> Iterator[tuple[str, _Sorted]]:
        """Sort out which entries of a group count, by bucket."""
        whole = group.whole or len(group.buckets) > 1 or group.until is not None
        if not whole and all(e.seen_at <= now for e in group.fresh):
            (bucket,) = group.buckets
            yield bucket, _more(self._sorted.get(bucket, _NOTHING), group.fresh, group.gone)
        else:
            yield from self._sort_out_whole(group, now)
        group.whole, group.fresh, group.gone = False, [], set()

    def _sort_out_whole(self, group: _Group, now: datetime) -> Iterator[tuple[str, _Sorted]]:
        entries = (*group.entries, *group.positions.values())
        found = counted(entries, now)
        group.until = min((e.seen_at for e in entries if e.seen_at > now), default=None)
        self._to_come.pop(id(group), None)
        if group.until is not None:
            self._to_come[id(group)] = group
        self._clashes.pop(id(group), None)
        if found.conflicts:
            self._clashes[id(group)] = found.conflicts
        came = _received(found.counts)
        for bucket in group.buckets:
            counts = _of(bucket, found.counts, group)
            yield (
                bucket,
                _Sorted(
                    counts,
                    _of(bucket, found.future, group),
                    _of(bucket, found.unconfirmed, group),
                    tuple(e for e in counts if e.kind in RACE_WIDE),
                    Received({e.id: came[e.id] for e in counts}),
                ),
            )

    def _fold_race(self) -> _Race:
        event = self._event
        entries = tuple(sorted((e for s in self._sorted.values() for e in s.race_wide), key=seen_order))
        facts = race_facts(entries, event)
        for_all = tuple(e for e in self._sorted.get(NOBODY, _NOTHING).counts if e.kind in _FOR_ALL)
        rests = {
            r.id: _Rests(
                start_of(r, facts, event), for_all, tuple(h for h in facts.holds if h.runner in (None, r.id))
            )
            for r in event.runners
        }
        starts = {f"start:{r.id}": e for r in event.runners if (e := start_said(r, facts)) is not None}
        return _Race(facts, rests, tuple(sorted({**facts.said, **starts}.items(), key=lambda pair: pair[0])))

    def _concerned(
        self, was: _Race | None, race: _Race, changed: set[str], now: datetime, *, again: bool
    ) -> list[Runner]:
        """The runners whose state has to be folded anew."""
        starts = again or (self._next_start is not None and self._next_start <= now)
        if was is race and not starts:
            return [self._event.runner(b) for b in changed if b in self._states]
        found = [
            r
            for r in self._event.runners
            if was is None
            or r.id in changed
            or race.rests[r.id] != was.rests[r.id]
            or self._started[r.id] != (now >= race.rests[r.id].start)
        ]
        to_come = (x.start for x in race.rests.values() if x.start > now)
        self._next_start = min(to_come, default=None)
        return found

    def _fold_runner(self, runner: Runner, race: _Race, now: datetime) -> None:
        hers, rests = self._sorted.get(runner.id, _NOTHING), race.rests[runner.id]
        mine = tuple(sorted((*hers.counts, *rests.for_all), key=seen_order)) if rests.for_all else hers.counts
        course = self._event.course_of(runner.id)
        state, self._settled[runner.id] = fold_runner(
            runner, course, rests.start, mine, now, self._place, self._settled.get(runner.id)
        )
        self._started[runner.id] = now >= rests.start
        self._states[runner.id] = replace(
            state,
            held=held_intervals(race.facts, runner.id, {t.point: t for t in state.times}),
            unconfirmed=hers.unconfirmed,
            future=hers.future,
        )

    def _assemble(self, race: _Race) -> RaceState:
        facts, event = race.facts, self._event
        fallen, taken = fallen_and_taken(facts.covering, event)
        none = [(b, s) for b, s in self._sorted.items() if b not in self._states]
        strange = [e for b, s in none if b != NOBODY for e in s.counts]
        about_none = self._groups.get(NOBODY)
        called = {e.id for e in about_none.entries if e.kind is Kind.ASKED_FOR_HELP} if about_none else set()
        return RaceState(
            runners=tuple(self._states[r.id] for r in event.runners),
            held=tuple(Interval(h.start, h.end) for h in facts.holds if h.point is None and h.runner is None),
            ended_early=facts.ended_early,
            cut_offs_moved=tuple((p, edge, at) for (p, edge), at in sorted(facts.cut_offs.items())),
            access_closed=tuple(sorted(p for p, closed in facts.closed.items() if closed)),
            rerouted=tuple(facts.rerouted),
            crew_there=tuple((p, who, s) for (p, who), s in sorted(facts.crew_there.items(), key=_first)),
            crew_left=tuple((p, who, s) for (p, who), s in sorted(facts.crew_left.items(), key=_first)),
            drives_confirmed=tuple(facts.drives),
            answers=tuple(facts.answers),
            stand_downs=tuple(facts.stand_downs),
            awake=tuple(sorted(facts.awake.items())),
            fallen=fallen,
            taken=taken,
            requests=tuple(facts.requests),
            calls=tuple(facts.calls),
            taken_back=tuple(e for e in facts.taken_back if e.about in called),
            conflicts=tuple(sorted({pair for pairs in self._clashes.values() for pair in pairs})),
            holds=tuple(facts.holds),
            future=_ordered(e for _, s in none for e in s.future),
            unconfirmed=_ordered(e for _, s in none for e in s.unconfirmed),
            refused=_ordered(strange),
            received={b: s.received for b, s in self._sorted.items()},
            said=race.said,
        )


def _more(known: _Sorted, fresh: list[Entry], gone: set[str]) -> _Sorted:
    """The same where entries have come of which nobody says more, and positions are passed over."""
    counts = [e for e in known.counts if e.id not in gone] if gone else list(known.counts)
    come = [e for e in fresh if e.id not in gone]
    for e in come:
        insort(counts, e, key=seen_order)
    race_wide = known.race_wide
    if any(e.kind in RACE_WIDE for e in come):
        race_wide = tuple(e for e in counts if e.kind in RACE_WIDE)
    received = {**known.received.of, **{e.id: e.received_at for e in come}}
    for gone_id in gone:
        received.pop(gone_id, None)
    return replace(known, counts=tuple(counts), race_wide=race_wide, received=Received(received))


def _names(e: Entry) -> tuple[_Name, ...]:
    """What other entries may call it by."""
    return (("id", e.id), ("key", e.sender, e.key or e.id))


def _links(e: Entry) -> Iterator[_Name]:
    """What it calls others by."""
    if e.kind in _LINKS and e.about is not None:
        yield ("id", e.about)
    if e.replaces is not None:
        yield ("id", e.replaces)
        yield ("key", e.sender, e.replaces)


def _plain(e: Entry) -> bool:
    """A position about which nobody has said or is to say more, from a clock that is not ahead."""
    alone = e.replaces is None and e.about is None and not e.unconfirmed
    return e.kind is Kind.POSITION and alone and e.seen_at <= e.received_at


def _before(one: Entry, other: Entry) -> bool:
    return (one.seen_at, one.id) < (other.seen_at, other.id)


def _of(bucket: str, entries: tuple[Entry, ...], group: _Group) -> tuple[Entry, ...]:
    if len(group.buckets) == 1:
        return entries
    return tuple(e for e in entries if (e.runner or NOBODY) == bucket)


def _ordered(entries: Iterable[Entry]) -> tuple[Entry, ...]:
    return tuple(sorted(entries, key=seen_order))


def _first(pair: tuple[tuple[str, str], object]) -> tuple[str, str]:
    return pair[0]


def _received(counts: Iterable[Entry]) -> dict[str, datetime]:
    """When each that counts came; one that waited for somebody's word when that came."""
    counts = tuple(counts)
    confirmed: dict[str, datetime] = {}
    for e in counts:
        if e.kind is Kind.CONFIRMED and e.about is not None:
            confirmed[e.about] = min(e.received_at, confirmed.get(e.about, e.received_at))
    return {
        e.id: max(e.received_at, confirmed.get(e.id, e.received_at)) if e.unconfirmed else e.received_at
        for e in counts
    }
