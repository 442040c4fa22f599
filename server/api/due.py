"""Who has to be judged: whom something that came in concerns, and whose time to be asked again has come.

A verdict about a runner rests on her circle (server/watch/circle.py), on race-level facts and on the time; the watch says
when time alone may change it. So between two looks only those are judged of whom one of these has changed, however large
the field. What drifts with silence may come a little before a rule asks to be asked again: everybody has their turn besides.
"""

from __future__ import annotations

import heapq
from collections import defaultdict
from collections.abc import Iterable, Iterator
from dataclasses import dataclass, field, replace
from datetime import datetime, timedelta
from itertools import islice

from server.api.snapshot import Picture, number_of
from server.event.model import Event
from server.facts.entry import Entry
from server.facts.state import RaceState
from server.forecast.day import Strangers
from server.watch.circle import circle_of, runners_of
from server.watch.escalation_state import open_alarms
from server.watch.notice import AlarmValues, Made, StandDownValues

__all__ = ["Dues"]

CLOCK_BACK = timedelta(minutes=1)
"""Looks at one moment do not end in the order of their times; a clock that has been put back goes farther."""
FEW = 25
"""So many runners are all judged at every tick: what drifts with silence need not wait for the rule's own grid. Of a larger
field so many, the longest left first, every `ROUND`, so that no tick takes long for it (own choice)."""
ROUND = timedelta(seconds=30)
MOVED = timedelta(minutes=2)
"""In a field of more than `FEW`, one of whom only another place on her way has come in is judged so long after the last
time: a tracker's fixes more often than that say nothing new of the legs ahead (own choice; `forecast.bridge.THIN` is three
minutes). Whoever has been said not to be there yet, or about whom an alarm is open, is judged at once."""


@dataclass(frozen=True, slots=True)
class _Looked:
    """What of a picture the next one is held against."""

    now: datetime
    number: int
    stage: tuple[object, ...]
    event: Event
    state: RaceState
    made: tuple[Made, ...]
    strangers: Strangers


@dataclass(slots=True)
class Dues:
    """Of one event who has to be judged, and when. `facts`: because of what was reported; `notices`: because of what became
    of a notice, which can wait for the next tick; `moved`: because she has moved on, or others' passages came, which can
    wait for `MOVED`; each with the number of the look that found it."""

    facts: dict[str, int] = field(default_factory=dict)
    notices: dict[str, int] = field(default_factory=dict)
    moved: dict[str, int] = field(default_factory=dict)
    failing: dict[str, Exception] = field(default_factory=dict)
    _looks: int = 0
    _last: _Looked | None = None
    _due: dict[str, datetime] = field(default_factory=dict)
    _heap: list[tuple[datetime, str]] = field(default_factory=list)
    _judged: dict[str, datetime] = field(default_factory=dict)
    _own: set[int] = field(default_factory=set)
    _round: datetime | None = None

    def look_at(self, picture: Picture) -> int:
        """Take in what a picture shows that the last one did not; the number of the look, 0 of a picture that is older than
        the last: others look at the same time, and a verdict that rests on it knows less than has been found."""
        new, last = _looked(picture), self._last
        back = last is not None and new.now < last.now - CLOCK_BACK
        if last is not None and new.number < last.number and not back:
            return 0
        self._last = new
        self._looks += 1
        if last is None or last.stage != new.stage or back:
            self.facts = dict.fromkeys((r.id for r in picture.event.runners), self._looks)
            return self._looks
        concerned = _concerned(last, new)
        moved = {r for r in concerned if _only_moved(last, new, r)} if len(new.state.runners) > FEW else set()
        for runner in sorted(concerned - moved):
            self.facts |= dict.fromkeys(sorted(circle_of(picture.situation, runner)), self._looks)
        alarmed = _alarmed(new.made) if moved else frozenset()
        for near in sorted({r for runner in moved for r in circle_of(picture.situation, runner)}):
            if near in alarmed or new.state.runner(near).not_yet:
                self.facts[near] = self._looks
            else:
                self._has_moved(near, new.now)
        if new.strangers is not last.strangers and len(new.state.runners) > FEW:
            self._day_has_changed(new)
        for made in _changed(last.made, new.made):
            if not self._is_own(made):
                mine = circle_of(picture.situation, made.notice.key.runner)
                self.notices |= dict.fromkeys(mine, self._looks)
        return self._looks

    def _has_moved(self, runner: str, now: datetime) -> None:
        last = self._judged.get(runner)
        if last is None or not timedelta(0) <= now - last < MOVED:
            self.facts[runner] = self._looks
            return
        self.moved[runner] = self._looks
        self._ask(runner, min(self._due.get(runner, last + MOVED), last + MOVED))

    def _day_has_changed(self, new: _Looked) -> None:
        """Of a large field any forecast may be another by others' passages: all on course are judged within `MOVED`, the
        longest left first, and nobody for it more often than that."""
        on_course = {r.runner for r in new.state.runners if r.going.on_course}
        left = [r for r in self._judged if r in on_course]
        for n, runner in enumerate(left, 1):
            if runner not in self.moved:
                at = max(new.now + MOVED * n / len(left), self._judged[runner] + MOVED)
                self._ask(runner, min(self._due.get(runner, at), at))
            self.moved[runner] = self._looks

    def _ask(self, runner: str, at: datetime) -> None:
        self._due[runner] = at
        heapq.heappush(self._heap, (at, runner))

    def _is_own(self, made: Made) -> bool:
        """Whether a notice is one that we made, of which nothing has become yet: its verdict knew it."""
        own = made.short in self._own
        self._own.discard(made.short)
        return own and not made.failed and made.sent_at is None and not made.answers

    def to_judge(self, now: datetime, *, tick: bool) -> list[str]:
        """Whom to judge now; on a tick also those whom time, or what became of a notice, makes due."""
        known = () if self._last is None else self._last.state.runners
        found = dict.fromkeys(self.facts)
        if tick:
            found |= dict.fromkeys((*self.notices, *self._whose_time_has_come(now), *self._left_long(now)))
            found |= dict.fromkeys(r.runner for r in known if len(known) <= FEW)
        ids = {r.runner for r in known}
        return [r for r in found if r in ids]

    def _whose_time_has_come(self, now: datetime) -> Iterator[str]:
        while self._heap and self._heap[0][0] <= now:
            at, runner = heapq.heappop(self._heap)
            if self._due.get(runner) == at:
                yield runner

    def _left_long(self, now: datetime) -> list[str]:
        if self._round is not None and timedelta(0) <= now - self._round < ROUND:
            return []
        self._round = now
        return list(islice(self._judged, FEW))  # kept in the order in which they were judged

    def judged(
        self, runner: str, look: int, ask_again: datetime | None, now: datetime, made: Iterable[Made]
    ) -> None:
        """She has been judged on the picture of that look; ask again then."""
        for found in (self.facts, self.notices, self.moved):
            if found.get(runner, look + 1) <= look:
                del found[runner]
        if runner in self.moved:  # while this was worked out
            ask_again = min(ask_again or now + MOVED, now + MOVED)
        self._own |= {m.short for m in made}
        self._judged.pop(runner, None)
        self._judged[runner] = now
        self._due.pop(runner, None)
        if ask_again is not None:
            self._ask(runner, ask_again)

    def next(self) -> datetime | None:
        """When the next one's time comes."""
        while self._heap and self._due.get(self._heap[0][1]) != self._heap[0][0]:
            heapq.heappop(self._heap)
        return self._heap[0][0] if self._heap else None


def _looked(picture: Picture) -> _Looked:
    s = picture.situation
    stage = (picture.built, s.hearing, s.downs, s.groups, s.watching_since, s.loaded, *_of_all(s.state))
    return _Looked(picture.now, number_of(picture.head), stage, s.event, s.state, s.made, picture.strangers)


def _of_all(race: RaceState) -> tuple[object, ...]:
    """The race-level facts that bear on everybody."""
    moved = (race.cut_offs_moved, race.access_closed, race.rerouted, race.drives_confirmed)
    return (race.held, race.ended_early, *moved, race.stand_downs, race.calls, race.taken_back, race.holds)


def _concerned(last: _Looked, now: _Looked) -> set[str]:
    """Runners about whom, or about whose people, something has been said."""
    one, other = last.state, now.state
    if one is other:
        return set()
    found = {b.runner for a, b in zip(one.runners, other.runners, strict=True) if a is not b}
    people: set[str] = set()
    for before, after in (
        (one.crew_there, other.crew_there),
        (one.crew_left, other.crew_left),
        (one.awake, other.awake),
        (one.fallen, other.fallen),
        (one.taken, other.taken),
        (one.requests, other.requests),
        (one.answers, other.answers),
    ):
        if before != after:
            for item in set(before) ^ set(after):
                people |= set(_people_in(item))
                found |= {item.runner} if isinstance(item, Entry) and item.runner else set()
    known = {r.id for r in now.event.runners}
    for event in (last.event, now.event):
        found |= {r for who in people for r in runners_of(event, who)}
    return found & known


def _only_moved(last: _Looked, now: _Looked, runner: str) -> bool:
    """Whether all that is new of her is where she is on her way."""
    one, other = last.state.runner(runner), now.state.runner(runner)
    place = {name: getattr(other, name) for name in ("positions", "last_known", "last_heard", "folded")}
    return one.positions is not other.positions and replace(one, **place) == other


def _alarmed(made: tuple[Made, ...]) -> frozenset[str]:
    """The runners about whom an alarm is open."""
    raised = defaultdict[str, list[Made]](list)
    for m in made:
        if isinstance(m.notice.values, AlarmValues | StandDownValues):
            raised[m.notice.key.runner].append(m)
    return frozenset(runner for runner, alarms in raised.items() if open_alarms(alarms))


def _people_in(item: object) -> Iterator[str]:
    match item:
        case Entry():
            yield from (who for who in (item.by, item.person, item.to) if who)
        case (str(), str(), _) | (str(), _):
            yield from (x for x in item if isinstance(x, str))
        case _:
            yield str(getattr(item, "person", ""))


def _changed(before: tuple[Made, ...], after: tuple[Made, ...]) -> Iterator[Made]:
    known = {m.short: m for m in before}
    for m in after:
        was = known.get(m.short)
        if was is not m and was != m:
            yield m
