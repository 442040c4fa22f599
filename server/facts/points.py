"""Which of several reports of one moment counts, and what is known of each point from them.

The rule. Every report is kept. For the time of an arrival (in, through) and of a departure (out, through)
the report of the most trusted source counts (order of `Source`: timing mat first, then volunteer, crew, the
runner herself, a tracker, a supporter); among equals the one sent first, then the one seen first, then the
one told first (conflict_resolution.py). The others stay beside it. Where the two that count contradict each other
(out before in), the
less trusted time gives way to the other, and the difference becomes its spread: that she was here and has
left are facts, and a stop is never negative. 'Through' means out at the moment of in.
"""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass, replace
from datetime import datetime, timedelta

from server.facts.conflict_resolution import TRUST, Told, told_order
from server.facts.entry import Entry, Kind
from server.facts.state import PointTimes, Stamp

ARRIVALS = frozenset({Kind.IN, Kind.THROUGH})
DEPARTURES = frozenset({Kind.OUT, Kind.THROUGH})


@dataclass(frozen=True, slots=True)
class PointReports:
    """The reports of one point sorted by the rule; the first of each counts."""

    point: str
    arrivals: tuple[Entry, ...]
    departures: tuple[Entry, ...]

    def times(self) -> PointTimes:
        """What these reports say of the point."""
        arrived = stamp(self.arrivals[0]) if self.arrivals else None
        left = stamp(self.departures[0]) if self.departures else None
        through = bool(self.departures) and self.departures[0].kind is Kind.THROUGH
        if arrived is not None and left is not None and left.at < arrived.at:
            arrived, left = self._agree(arrived, left)
        elif through and arrived is not None and left is not None:
            through = arrived.at == left.at
        return PointTimes(
            point=self.point,
            arrived=arrived,
            left=left,
            through=through,
            also_arrived=tuple(stamp(e) for e in self.arrivals[1:]),
            also_left=tuple(stamp(e) for e in self.departures[1:]),
        )

    def _agree(self, arrived: Stamp, left: Stamp) -> tuple[Stamp, Stamp]:
        gap = arrived.at - left.at
        if rank(self.arrivals[0]) <= rank(self.departures[0]):
            return arrived, replace(left, at=arrived.at, spread=max(left.spread, gap))
        return replace(arrived, at=left.at, spread=max(arrived.spread, gap)), left


def rank(entry: Entry) -> tuple[int, datetime, datetime, Told]:
    """The rule above as a sort key: the lowest counts."""
    return (TRUST[entry.source], entry.sent_at, entry.seen_at, told_order(entry))


def stamp(entry: Entry) -> Stamp:
    """The moment an entry speaks of."""
    return Stamp(entry.seen_at, max(entry.seen_spread, timedelta(0)), entry.id, entry.by, entry.source)


def visits(entries: Iterable[Entry]) -> dict[str, PointReports]:
    """Reports in, out and through, grouped by point and sorted by the rule. Others are passed over."""
    arrivals: dict[str, list[Entry]] = {}
    departures: dict[str, list[Entry]] = {}
    for e in entries:
        if e.point is None:
            continue
        if e.kind in ARRIVALS:
            arrivals.setdefault(e.point, []).append(e)
        if e.kind in DEPARTURES:
            departures.setdefault(e.point, []).append(e)
    return {
        p: PointReports(
            p, tuple(sorted(arrivals.get(p, ()), key=rank)), tuple(sorted(departures.get(p, ()), key=rank))
        )
        for p in arrivals.keys() | departures.keys()
    }
