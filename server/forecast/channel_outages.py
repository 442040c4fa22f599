"""When whom could not have reached us: our own outages, channel by channel and person by person. Pure.

Silence counts only as far as it would have been broken, so a channel's outage makes those deaf to us who use it, and
nobody else: a timing mat talks to the server itself, and a bot that is down takes nothing from its silence. A
person is taken to write where they are first reached: over another channel they could, but nobody tells them to.
"""

from __future__ import annotations

from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass, field
from datetime import datetime

from server.facts.state import Interval

__all__ = ["LISTENS", "SERVER", "Down", "Hearing", "both", "deaf_now", "hearing_of", "nobody_since"]

SERVER, LISTENS = "server", "channel:"
"""Components as the heartbeats name them: the server with its database; a channel over which people write. Any other
('outgoing:email') only sends: its outage makes nobody's silence count less."""
PAGES = "web"
"""The server's own pages: up whenever the server is."""


@dataclass(frozen=True, slots=True)
class Down:
    """A time in which a component of ours was down; `end` is None while it still is."""

    component: str
    start: datetime
    end: datetime | None


@dataclass(frozen=True, slots=True)
class Hearing:
    """Times in which somebody could not have reached us, each list in order and without overlaps.

    `nobody`: the server itself was down. `unknown`: not over any channel, for somebody whose channel is not known.
    `people`: by person id, those whose channel is known. All of them include `nobody`.
    """

    nobody: tuple[Interval, ...] = ()
    unknown: tuple[Interval, ...] = ()
    people: Mapping[str, tuple[Interval, ...]] = field(default_factory=dict)

    def deaf_to(self, person: str) -> tuple[Interval, ...]:
        """When this person could not have reached us."""
        return self.people.get(person, self.unknown)

    def deaf_to_all(self, people: Sequence[str]) -> tuple[Interval, ...]:
        """When none of them could have; for no people, as for one whose channel is not known."""
        found = [self.deaf_to(p) for p in people] or [self.unknown]
        shared = found[0]
        for other in found[1:]:
            shared = both(shared, other)
        return shared


def hearing_of(
    downs: Iterable[Down], listening: Iterable[str], channels: Mapping[str, Sequence[str]]
) -> Hearing:
    """What outages mean for people. `listening`: names of the channels over which people write to us;
    `channels`: by person id, their channels in the order in which they are tried."""
    downs = tuple(downs)
    nobody = _of(downs, SERVER)
    by_name = {name: _joined([*nobody, *_of(downs, LISTENS + name)]) for name in listening}
    unknown = nobody
    if by_name:
        first, *others = by_name.values()
        unknown = first
        for other in others:
            unknown = both(unknown, other)
    people: dict[str, tuple[Interval, ...]] = {}
    for person, theirs in channels.items():
        writes = next((c for c in theirs if c in by_name or c == PAGES), None)
        if writes is not None:
            people[person] = by_name.get(writes, nobody)
    return Hearing(nobody, unknown, people)


def nobody_since(downs: Iterable[Down]) -> datetime | None:
    """Since when something over which people reach us is down now; None where nothing is."""
    return min((d.start for d in downs if _listens(d) and d.end is None), default=None)


def deaf_now(downs: Iterable[Down]) -> tuple[str, ...]:
    """The names of what people reach us over and is down now ('telegram'), the longest down first, each once."""
    ours = sorted((d for d in downs if _listens(d) and d.end is None), key=lambda d: (d.start, d.component))
    return tuple(dict.fromkeys(d.component.removeprefix(LISTENS) for d in ours))


def _listens(down: Down) -> bool:
    return down.component == SERVER or down.component.startswith(LISTENS)


def _of(downs: Iterable[Down], component: str) -> tuple[Interval, ...]:
    return _joined([Interval(d.start, d.end) for d in downs if d.component == component])


def _joined(spans: Iterable[Interval]) -> tuple[Interval, ...]:
    out: list[Interval] = []
    for span in sorted(spans, key=lambda s: s.start):
        last = out[-1] if out else None
        if last is None or (last.end is not None and span.start > last.end):
            out.append(span)
        elif last.end is not None and (span.end is None or span.end > last.end):
            out[-1] = Interval(last.start, span.end)
    return tuple(out)


def both(one: Iterable[Interval], other: Iterable[Interval]) -> tuple[Interval, ...]:
    """The times that lie in both lists."""
    theirs = tuple(other)
    found = [
        Interval(max(a.start, b.start), _sooner(a.end, b.end))
        for a in one
        for b in theirs
        if (b.end is None or a.start < b.end) and (a.end is None or b.start < a.end)
    ]
    return _joined(found)


def _sooner(one: datetime | None, other: datetime | None) -> datetime | None:
    return min((t for t in (one, other) if t is not None), default=None)
