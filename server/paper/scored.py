"""How the windows did: what was said of each point when she was last heard of before it, against when she came."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass
from datetime import datetime, timedelta

from server.course import Course
from server.event.model import Event
from server.facts.entry import Entry
from server.facts.fold import fold
from server.facts.placing import Placer
from server.facts.state import PointTimes
from server.forecast.bridge import outlook
from server.forecast.outlook import Window
from server.plan.timetable import Timetable


@dataclass(frozen=True, slots=True)
class Scored:
    """A point she came to: the window as it stood at `told_at`, and when she came."""

    point: str
    told_at: datetime
    window: Window
    came: datetime

    @property
    def inside(self) -> bool:
        """Whether she came between its first and last time, as 8 in 10 should."""
        return self.window.early <= self.came <= self.window.late

    @property
    def off(self) -> timedelta:
        """How much later than likely she came."""
        return self.came - self.window.likely


def scored(
    event: Event,
    runner: str,
    timetable: Timetable,
    course: Course,
    entries: Sequence[Entry],
    placer: Placer | None,
) -> tuple[Scored, ...]:
    """Of each point where she was reported in, in running order. At each moment only what had come in by then counts."""
    end = max((e.received_at for e in entries), default=timetable.start)
    mine = fold(tuple(entries), event, end, placer).runner(runner)
    received = {e.id: e.received_at for e in entries}
    found = []
    for heard, point, came in _pairs(mine.times, received, mine.start, timetable.rows[0].point):
        known = tuple(e for e in entries if e.received_at <= heard)
        race = fold(known, event, heard, placer)
        view = outlook(event, race.runner(runner), race, timetable, course).at(heard)
        if point in view.points:
            found.append(Scored(point, heard, view.window(point), came))
    return tuple(found)


def _pairs(
    times: Sequence[PointTimes], received: Mapping[str, datetime], start: datetime, first: str
) -> Iterator[tuple[datetime, str, datetime]]:
    """(when the last report of her before she came there had come in, point, when she came)."""
    heard = [start]
    for t in times:
        came = t.arrived or t.left
        if t.point != first and came is not None and came.at > start:
            yield max(h for h in heard if h < came.at), t.point, came.at
        heard += [received[s.entry] for s in (t.arrived, t.left) if s is not None and s.entry in received]
