"""A cut-off that she has missed, as far as facts say so: what the rule says, never what race control decides.

Facts only. A cut-off that she will hardly make is the forecast's business (server/watch/odds.py), and one that she was
let go on from is behind her as soon as she is seen at a later point.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from datetime import datetime
from enum import StrEnum

from server.event.model import CourseDef, Edge, Event, Point
from server.facts.entry import Source
from server.facts.runner import WELL_PAST_KM
from server.facts.state import Going, LastKnown, RaceState, RunnerState, Stamp

__all__ = ["Past", "PastCutOff", "cut_offs_at", "past_cut_off"]


class Past(StrEnum):
    """How a cut-off is known to be missed. NO_OUT: she was in, the time to be out is over and nobody has said that she
    left; people forget 'out', so that alone is a question."""

    IN_AFTER = "in after it"
    OUT_AFTER = "out after it"
    STILL_THERE = "there after it"
    NOT_IN = "not in by it"
    NO_OUT = "not reported out"


@dataclass(frozen=True, slots=True)
class PastCutOff:
    """The cut-off missed: `edge` of `point` at `cut_off`, and the fact that says so: when it was seen, by whom, its entry.

    `seen_at` is the point where that fact saw her; other than `point` only where she was seen elsewhere when it closed.
    """

    point: str
    edge: Edge
    cut_off: datetime
    how: Past
    at: datetime
    by: str
    entry: str
    seen_at: str | None = None


def cut_offs_at(race: RaceState, point: Point, state: RunnerState) -> tuple[tuple[Edge, datetime], ...]:
    """The cut-offs of a point as they stand now, the moved ones at their new time."""
    times = {c.edge: c.at(state.start) for c in point.cut_offs}
    times |= {Edge(edge): when for p, edge, when in race.cut_offs_moved if p == point.id}
    return tuple((edge, times[edge]) for edge in Edge if edge in times)


def past_cut_off(event: Event, race: RaceState, mine: RunnerState, now: datetime) -> PastCutOff | None:
    """The cut-off that `mine` has missed by what is fact at `now`; None for none, or once her race is over.

    First where she was last known to be, then the points after it in running order.
    """
    if not mine.going.on_course:
        return None
    course = event.course_of(mine.runner)
    order = {p.id: n for n, p in enumerate(course.points)}
    last = max((order[t.point] for t in mine.times if t.point in order), default=-1)
    if last >= 0:
        found = next(_here(race, course.points[last], mine, now), None)
        if found is not None:
            return found
    return next(_ahead(race, course, mine, last), None)


def _here(race: RaceState, point: Point, mine: RunnerState, now: datetime) -> Iterator[PastCutOff]:
    """At the point reached last. A time that is known to some minutes only must be past with all of them."""
    times = mine.at_point(point.id)
    if times is None:
        return
    arrived, left = times.arrived, times.left
    for edge, limit in cut_offs_at(race, point, mine):
        late = arrived is not None and _surely_after(arrived, limit)
        if left is not None and not times.through and _surely_after(left, limit):
            if late or edge is Edge.OUT:
                yield _missed(point, edge, limit, Past.OUT_AFTER, left)
        elif late and arrived is not None:
            yield _missed(point, edge, limit, Past.IN_AFTER, arrived)
        elif edge is Edge.OUT and left is None and arrived is not None and now > limit:
            yield from _not_out(point, limit, mine, arrived)


def _not_out(point: Point, out: datetime, mine: RunnerState, arrived: Stamp) -> Iterator[PastCutOff]:
    last = mine.last_known
    if last is not None and last.point == point.id and last.at > out:
        yield PastCutOff(point.id, Edge.OUT, out, Past.STILL_THERE, last.at, last.by, last.entry, point.id)
    elif mine.going is not Going.MOVING:
        yield _missed(point, Edge.OUT, out, Past.NO_OUT, arrived)


def _ahead(race: RaceState, course: CourseDef, mine: RunnerState, last: int) -> Iterator[PastCutOff]:
    """The points after it: she was seen short of one, or said not to be there, when it had closed."""
    for point in course.points[last + 1 :]:
        for edge, limit in cut_offs_at(race, point, mine):
            known = mine.last_known
            if known is not None and known.at > limit and _short_of(point, mine, known):
                at = (known.at, known.by, known.entry, known.point)
                yield PastCutOff(point.id, edge, limit, Past.NOT_IN, *at)
            missed = [n.stamp for n in mine.not_yet if n.point == point.id and n.stamp.at > limit]
            if missed:
                first = min(missed, key=lambda s: s.at)
                yield _missed(point, edge, limit, Past.NOT_IN, first)


def _short_of(point: Point, mine: RunnerState, known: LastKnown) -> bool:
    """Whether somebody saw her well before a point. A tracker says where the tracker is: it may lie beside the path."""
    if known.km is None or point.km is None or known.km > point.km - WELL_PAST_KM:
        return False
    return all(p.stamp.entry != known.entry or p.stamp.source is not Source.TRACKER for p in mine.positions)


def _surely_after(stamp: Stamp, limit: datetime) -> bool:
    return stamp.at - stamp.spread > limit


def _missed(point: Point, edge: Edge, limit: datetime, how: Past, stamp: Stamp) -> PastCutOff:
    seen = None if how is Past.NOT_IN else point.id
    return PastCutOff(point.id, edge, limit, how, stamp.at, stamp.by, stamp.entry, seen)
