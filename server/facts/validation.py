"""What can't be right about a report: it is then kept as unconfirmed and asked about, never thrown away.

`doubt` looks at one entry beside what is fact already. It gives the first reason found, the plainest first.
A request for help is never doubted, and what is only unlikely is no reason: the forecast weighs that.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from datetime import datetime, timedelta
from enum import StrEnum
from typing import NamedTuple

from pyproj import Geod

from server.course import Course, PlacedPosition, PositionPrior, place_position
from server.event.model import CourseDef, Event, PointKind
from server.facts.entry import Entry, Fix, Kind, Retired, Source
from server.facts.hearsay import only_heard
from server.facts.state import RaceState, RunnerState

__all__ = ["Doubt", "Reason", "doubt", "drives_begin"]


class Reason(StrEnum):
    """Why a report is doubted; `doubt-<reason>` is its sentence in `conversation.telling`."""

    FUTURE = "future"
    UNKNOWN_RUNNER = "unknown-runner"
    UNKNOWN_POINT = "unknown-point"
    BEFORE_START = "before-start"
    RETIRED = "retired"
    FINISHED = "finished"
    OUT_BEFORE_IN = "out-before-in"
    BEHIND = "behind"
    TOO_FAST = "too-fast"
    CLOSED = "closed"
    OFF_COURSE = "off-course"
    VEHICLE = "vehicle"
    PARKED = "parked"
    SUPPORTER = "supporter"
    HEARSAY = "hearsay"


@dataclass(frozen=True, slots=True)
class Doubt:
    """A reason and what it rests on: the point and moment of the fact it clashes with, the speed (km/h) or
    distance (km) that can't be."""

    reason: Reason
    point: str | None = None
    at: datetime | None = None
    kmh: float | None = None
    km: float | None = None


CLOCKS_DIFFER = timedelta(minutes=2)
"""Two people's watches, and times said to the minute, differ by this much (common practice, no source)."""

LEFT_LONG_AGO = timedelta(minutes=15)
"""Who is known to have left a point does not go through it so much later; less may be two people's times of one moment, of
which the more trusted counts (own choice)."""

EARLY_START = timedelta(minutes=10)
"""How long before her start 'out of the start' is believed: a wave sent off early (own choice)."""

FASTEST_KMH = ((0.0, 23.0), (42.195, 21.1), (50.0, 19.0), (100.0, 16.5), (160.9, 14.9))
"""Nobody runs so far (km) faster than that (km/h): world bests over 10,000 m, marathon, 50 km, 100 km and
100 miles, men, road or track, rounded up (from memory). No hill makes a leg of 5 km faster than 23 km/h."""

SLOWEST_KMH = FASTEST_KMH[-1][1]
HOUR = timedelta(hours=1)
ROAD_KMH = 25.0
"""Positions that move on faster than this for a minute or more are in a vehicle (common practice)."""

FAR_OFF_KM = 30.0
"""Farther off the course than this it is another tracker, or a wrong number (own choice; nearer she may
be lost, which must not be doubted away)."""

LINE_M, PARK_M, BEHIND_KM = 75.0, 100.0, 1.0
_GEOD = Geod(ellps="WGS84")
_AT_POINTS = frozenset({Kind.IN, Kind.OUT, Kind.THROUGH})
_ON_THE_WAY = frozenset({*_AT_POINTS, Kind.RESTING, Kind.MOVING_AGAIN})
_POINT_KINDS = frozenset(
    {*_AT_POINTS, Kind.NOT_HERE_YET, Kind.SWEEP_THROUGH, Kind.CREW_THERE, Kind.CREW_LEFT}
)


def doubt(
    entry: Entry, state: RaceState, event: Event, now: datetime, course: Course | None = None
) -> Doubt | None:
    """The first reason why `entry` can't be right, or None.

    state: the fold without this entry, at `now`. course: her course, needed to judge positions.
    """
    if entry.kind is Kind.ASKED_FOR_HELP:
        return None
    if entry.seen_at > now + CLOCKS_DIFFER:
        return Doubt(Reason.FUTURE, at=entry.seen_at)
    if entry.kind is Kind.CREW_LEFT and entry.point in drives_begin(event):
        return None
    if entry.runner is None:
        return _unknown_point(entry, event.courses)
    if all(r.id != entry.runner for r in event.runners):
        return Doubt(Reason.UNKNOWN_RUNNER)
    runner, mine = event.runner(entry.runner), state.runner(entry.runner)
    definition = event.course(runner.course)
    found = (
        _unknown_point(entry, (definition,)) or _before_start(entry, mine, definition) or _ended(entry, mine)
    )
    if found is None and entry.kind in _POINT_KINDS and entry.point is not None:
        found = _at_point(entry, mine, definition, state)
    if found is None and entry.kind is Kind.POSITION and entry.fix is not None and course is not None:
        found = _position(entry, entry.fix, mine, definition, course)
    if found is None and entry.source is Source.SUPPORTER and entry.kind in {*_ON_THE_WAY, Kind.RETIRED}:
        found = Doubt(Reason.SUPPORTER)
    if found is None and only_heard(entry, mine, state):
        found = Doubt(Reason.HEARSAY, entry.point)
    return found


def fastest_kmh(distance_km: float) -> float:
    """The speed nobody exceeds over `distance_km`, by FASTEST_KMH."""
    return next(kmh for km, kmh in reversed(FASTEST_KMH) if max(distance_km, 0.0) >= km)


def drives_begin(event: Event) -> frozenset[str]:
    """Where crew set out from that need be no point of the course: a hotel, home, a field."""
    begin = {p.id for p in event.places} | {d.from_place for d in event.drives}
    begin |= {m.from_place for m in event.meetings if m.from_place}
    return frozenset(begin | {c.starts_at for c in event.cars if c.starts_at})


def _unknown_point(entry: Entry, courses: tuple[CourseDef, ...]) -> Doubt | None:
    if entry.point is None or any(p.id == entry.point for c in courses for p in c.points):
        return None
    # A retirement may name a place in words.
    return None if entry.kind not in _POINT_KINDS else Doubt(Reason.UNKNOWN_POINT, entry.point)


def _before_start(entry: Entry, mine: RunnerState, course: CourseDef) -> Doubt | None:
    if entry.kind not in _ON_THE_WAY:
        return None
    start = next((p.id for p in course.points if PointKind.START in p.kinds), course.points[0].id)
    if entry.point == start:
        early = entry.kind is not Kind.IN and entry.seen_at < mine.start - EARLY_START
    else:
        early = entry.seen_at < mine.start
    return Doubt(Reason.BEFORE_START, start, mine.start) if early else None


def _ended(entry: Entry, mine: RunnerState) -> Doubt | None:
    """Going on after the end: was it taken back? An 'in' of a retired runner is no doubt: she was brought. Nor is
    anything after 'did not start': seen on the course she did, and it is that report which is refused."""
    if not mine.going.race_over:
        return None
    if mine.finished is not None:
        times = mine.at_point(entry.point) if entry.point is not None else None
        again = times is not None and times.arrived == mine.finished
        after = entry.seen_at > mine.finished.at
        if after and not again and entry.kind in {*_AT_POINTS, Kind.RETIRED}:
            return Doubt(Reason.FINISHED, at=mine.finished.at)
        return None
    ended = mine.retirement
    goes_on = entry.kind in {Kind.OUT, Kind.THROUGH, Kind.MOVING_AGAIN}
    started = ended is not None and ended.how is not Retired.DID_NOT_START
    if ended is not None and started and goes_on and entry.seen_at > ended.stamp.at:
        return Doubt(Reason.RETIRED, ended.point, ended.stamp.at)
    return None


def _at_point(entry: Entry, mine: RunnerState, course: CourseDef, state: RaceState) -> Doubt | None:
    assert entry.point is not None
    if entry.source is Source.CREW and entry.point in state.access_closed:
        return Doubt(Reason.CLOSED, entry.point)
    km = course.point(entry.point).km
    if entry.kind is Kind.NOT_HERE_YET and km is not None:
        return _behind(mine, course, km, entry.seen_at, entry.point, later_too=False)
    if entry.kind not in _AT_POINTS:
        return None
    times = mine.at_point(entry.point)
    if times is not None:
        if entry.kind is Kind.OUT and times.arrived and entry.seen_at < times.arrived.at - CLOCKS_DIFFER:
            return Doubt(Reason.OUT_BEFORE_IN, entry.point, times.arrived.at)
        if entry.kind is Kind.IN and times.left and entry.seen_at > times.left.at + CLOCKS_DIFFER:
            return Doubt(Reason.OUT_BEFORE_IN, entry.point, times.left.at)
        if entry.kind is Kind.THROUGH and times.left and entry.seen_at > times.left.at + LEFT_LONG_AGO:
            return Doubt(Reason.OUT_BEFORE_IN, entry.point, times.left.at)
    if km is None:
        return None
    found = _behind(mine, course, km, entry.seen_at, entry.point, later_too=True)
    return found or _too_fast(mine, course, km, entry.seen_at, entry.point)


class _Seen(NamedTuple):
    """A fact to compare with: where, when, at which point if at one."""

    km: float
    at: datetime
    point: str | None


def _facts(mine: RunnerState, course: CourseDef) -> Iterator[_Seen]:
    yield _Seen(0.0, mine.start, None)
    for t in mine.times:
        km = course.point(t.point).km
        for s in (t.arrived, t.left):
            if s is not None and km is not None:
                yield _Seen(km, s.at, t.point)
    for p in mine.positions:
        if p.km is not None and not p.ambiguous and p.off_m <= LINE_M:
            yield _Seen(p.km, p.stamp.at, None)


def _behind(
    mine: RunnerState, course: CourseDef, km: float, at: datetime, point: str | None, *, later_too: bool
) -> Doubt | None:
    """Behind where she was before, or ahead of where she was after."""
    slack = 0.0 if point is not None else BEHIND_KM
    for f in _facts(mine, course):
        if f.point is not None and f.point == point:
            if not later_too and f.at <= at:
                return Doubt(Reason.BEHIND, f.point, f.at)
            continue
        gap = slack if f.point is not None else BEHIND_KM
        if f.km > km + gap and f.at < at - CLOCKS_DIFFER:
            return Doubt(Reason.BEHIND, f.point, f.at, km=f.km)
        if later_too and f.km < km - gap and f.at > at + CLOCKS_DIFFER:
            return Doubt(Reason.BEHIND, f.point, f.at, km=f.km)
    return None


def _too_fast(
    mine: RunnerState, course: CourseDef, km: float, at: datetime, point: str | None
) -> Doubt | None:
    """From any fact before, or to any fact after, faster than anyone runs."""
    for f in _facts(mine, course):
        ahead, apart = f.at < at, abs(at - f.at)
        distance = km - f.km if ahead else f.km - km
        if apart <= CLOCKS_DIFFER:
            distance = abs(distance)  # which came first is not known
        if distance <= BEHIND_KM or (f.point is not None and f.point == point):
            continue
        kmh = distance / ((apart + CLOCKS_DIFFER) / HOUR)
        if kmh > SLOWEST_KMH and kmh > fastest_kmh(distance):
            return Doubt(Reason.TOO_FAST, f.point, f.at, kmh=kmh, km=distance)
    return None


def _position(
    entry: Entry, fix: Fix, mine: RunnerState, definition: CourseDef, course: Course
) -> Doubt | None:
    """Before her start nothing is asked of a position: the tracker may well ride in the car."""
    if entry.seen_at < mine.start or mine.going.race_over:
        return None
    placed = _placed(entry, fix, mine, course)
    off_m, accuracy_m = placed.nearest_offset_m, fix.accuracy_m or 0.0
    if off_m > FAR_OFF_KM * 1000:
        return Doubt(Reason.OFF_COURSE, km=off_m / 1000)
    kmh = _road_speed(entry, fix, mine)
    if kmh is not None:
        return Doubt(Reason.VEHICLE, kmh=kmh)
    if off_m > LINE_M + accuracy_m:
        return _parked(fix, definition, PARK_M + accuracy_m)
    if placed.ambiguous and not placed.off_course:
        return None
    km = placed.nearest_km if placed.off_course else placed.km
    found = _behind(mine, definition, km, entry.seen_at, None, later_too=False)
    return found or _too_fast(mine, definition, km, entry.seen_at, None)


def _placed(entry: Entry, fix: Fix, mine: RunnerState, course: Course) -> PlacedPosition:
    last = mine.last_known
    prior = None
    if last is not None and last.km is not None and mine.start <= last.at <= entry.seen_at:
        prior = PositionPrior.since(last.km, entry.seen_at - last.at, 2.0, 16.0)
    return place_position(course, fix.lat, fix.lon, fix.accuracy_m, prior)


def _road_speed(entry: Entry, fix: Fix, mine: RunnerState) -> float | None:
    """Speed from the position before, one to thirty minutes ago and half a kilometre away at least; or what
    the device says, when it said so twice."""
    before = [p for p in mine.positions if p.stamp.at < entry.seen_at]
    if not before:
        return None
    last = before[-1]
    both = (fix.speed_m_s or 0.0, last.fix.speed_m_s or 0.0)
    if min(both) * 3.6 > ROAD_KMH:
        return min(both) * 3.6
    hours = (entry.seen_at - last.stamp.at) / timedelta(hours=1)
    metres = _apart_m(fix, last.fix.lat, last.fix.lon)
    slack_m = (fix.accuracy_m or 0.0) + (last.fix.accuracy_m or 0.0)
    if not 1 / 60 <= hours <= 0.5 or metres - slack_m < 500:
        return None
    kmh = (metres - slack_m) / 1000 / hours
    return kmh if kmh > ROAD_KMH else None


def _parked(fix: Fix, definition: CourseDef, reach_m: float) -> Doubt | None:
    for p in definition.points:
        a = p.access
        if (
            a is not None
            and a.lat is not None
            and a.lon is not None
            and _apart_m(fix, a.lat, a.lon) <= reach_m
        ):
            return Doubt(Reason.PARKED, p.id)
    return None


def _apart_m(fix: Fix, lat: float, lon: float) -> float:
    return float(_GEOD.inv(fix.lon, fix.lat, lon, lat)[2])
