"""The timetable of one runner: for each point and goal the time in and out, as elapsed from her start."""

from __future__ import annotations

from dataclasses import dataclass
from datetime import datetime, timedelta

from server.event.model import Goal


@dataclass(frozen=True, slots=True)
class Row:
    """One point: km on the line, climb of the leg before it, planned stop, in and out per goal."""

    point: str
    km: float
    leg_km: float
    leg_ascent_m: float
    leg_descent_m: float
    stop: timedelta
    arrive: dict[Goal, timedelta]
    leave: dict[Goal, timedelta]
    factors: tuple[tuple[str, timedelta], ...] = ()


@dataclass(frozen=True, slots=True)
class Timetable:
    """All rows in running order, the first the start (0), the last the finish.

    `source` says what the pace came from; `notes` what the planner wants said (walking costs no time on …).
    `quality` is the word the forecast needs: 'distance only', 'cost model', 'own data', 'past results'.
    """

    runner: str
    start: datetime
    rows: tuple[Row, ...]
    source: str
    quality: str
    notes: tuple[str, ...] = ()

    def row(self, point: str) -> Row:
        """The row of that point; KeyError if there is none."""
        for r in self.rows:
            if r.point == point:
                return r
        raise KeyError(point)
