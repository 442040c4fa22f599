"""What a tracker says beside what people say: where it stood still, when it went quiet, where the two disagree.

A tracker says where the tracker is. Standing still is told only by fixes that keep coming from one spot: one that went quiet
stands nowhere, and of her it says nothing.
"""

from __future__ import annotations

import math
from collections.abc import Iterator
from dataclasses import dataclass
from datetime import datetime, timedelta
from itertools import pairwise
from operator import attrgetter
from statistics import median

from server.event.model import CourseDef
from server.facts.entry import Fix, Source
from server.facts.state import PlacedFix, RunnerState, Stamp

__all__ = ["Disagree", "Spell", "disagree", "fixes_of", "quiet_since", "spell"]

SPOT_M = 150.0
"""Fixes within so many metres of the last are from one spot: a telephone's own scatter in a wood (own choice)."""
LEAST_FIXES = 3
"""Fewer fixes than this make no tracker that would go on sending (own choice)."""
QUIET_LEAST = timedelta(minutes=30)
QUIET_GAPS = 5
"""Quiet is a tracker that has sent nothing for so long, and for so many of its usual gaps (own choice)."""
APART_KM = 1.0
"""A person's word and a fix that lie this far from what could be are no scatter of the line (own choice)."""
FASTEST_KMH = 20.0
"""Nobody goes farther than so many km along a course in an hour (own choice, downhill)."""
EARTH_M = 6_371_000.0
_HERS = (Source.TRACKER, Source.RUNNER)
_MOMENT = attrgetter("stamp.at", "stamp.entry")


@dataclass(frozen=True, slots=True)
class Spell:
    """A tracker at one spot: its fixes from `since` to `until`, how many, where."""

    since: datetime
    until: datetime
    fixes: int
    km: float | None
    fix: Fix

    @property
    def length(self) -> timedelta:
        """How long it is known to have been there."""
        return self.until - self.since


@dataclass(frozen=True, slots=True)
class Disagree:
    """Where a person saw her and where her tracker was can't both be: the newest of each."""

    point: str
    seen: Stamp
    km: float
    at: datetime


def fixes_of(state: RunnerState) -> tuple[PlacedFix, ...]:
    """What her tracker sent, or her own telephone while it shares its place, in order of time."""
    found = (p for p in state.positions if p.stamp.source in _HERS)
    return tuple(sorted(found, key=_MOMENT))


def spell(state: RunnerState) -> Spell | None:
    """The spot from which the newest fixes come; None without two of them."""
    fixes = fixes_of(state)
    if len(fixes) < 2:
        return None
    last, here = fixes[-1], [fixes[-1]]
    for fix in reversed(fixes[:-1]):
        if _apart_m(fix.fix, last.fix) > SPOT_M:
            break
        here.append(fix)
    if len(here) < 2:
        return None
    return Spell(here[-1].stamp.at, last.stamp.at, len(here), last.km, last.fix)


def quiet_since(state: RunnerState, now: datetime) -> datetime | None:
    """Since when a tracker that used to send has sent nothing; None where it sends, or never did so regularly, or was
    ended on purpose."""
    at = [f.stamp.at for f in fixes_of(state)]
    if len(at) < LEAST_FIXES or (state.contact_lost is not None and state.contact_lost.at >= at[-1]):
        return None
    usual = timedelta(seconds=median((b - a).total_seconds() for a, b in pairwise(at)))
    return at[-1] if now - at[-1] >= max(QUIET_LEAST, QUIET_GAPS * usual) else None


def disagree(course: CourseDef, state: RunnerState) -> Disagree | None:
    """A person's newest word of where she was and the tracker's newest fix, where no way leads from the one to the other."""
    fixes = [f for f in fixes_of(state) if f.km is not None and not f.ambiguous]
    seen = max(_seen(course, state), key=lambda s: s[1].at, default=None)
    if not fixes or seen is None:
        return None
    (point, stamp, km), last = seen, fixes[-1]
    assert last.km is not None
    hours = abs((last.stamp.at - stamp.at).total_seconds()) / 3600.0
    first, then = (km, last.km) if stamp.at <= last.stamp.at else (last.km, km)
    ahead = then - first
    if ahead >= -APART_KM and ahead <= FASTEST_KMH * hours + APART_KM:
        return None
    return Disagree(point, stamp, last.km, last.stamp.at)


def _seen(course: CourseDef, state: RunnerState) -> Iterator[tuple[str, Stamp, float]]:
    km = {p.id: p.km for p in course.points}
    for t in state.times:
        for stamp in (t.arrived, t.left):
            where = km.get(t.point)
            if stamp is not None and where is not None and stamp.source is not Source.TRACKER:
                yield t.point, stamp, where


def _apart_m(one: Fix, other: Fix) -> float:
    """Metres between two fixes a few km apart at most, on a sphere flattened to their latitude."""
    lat = math.radians((one.lat + other.lat) / 2.0)
    north = math.radians(one.lat - other.lat)
    east = math.radians(one.lon - other.lon) * math.cos(lat)
    return EARTH_M * math.hypot(north, east)
