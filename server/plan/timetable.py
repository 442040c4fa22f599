"""The timetable of one runner: for each point and goal the time in and out, as elapsed from her start."""

from __future__ import annotations

from dataclasses import dataclass
from datetime import datetime, timedelta

from server.event.model import Goal
from server.plan.light import DarkKit, LightMoment
from server.plan.notes import Note, Saying


@dataclass(frozen=True, slots=True)
class Row:
    """One point: km on the line, climb of the leg before it, planned stop, in and out per goal.

    `factors` says what the leg's moving time (goal B) is made of; they add up to it to within rounding.
    """

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

    `source` says what target and pace came from; `spread` is the standard deviation of log(actual / goal B);
    `notes` what the planner wants said (walking costs no time on …).
    `light` are sunrise, sunset and twilight where she is then, `dark` the parts for which she needs a
    light, both for goal B; `power_w_kg` is the running power, fresh, that goal B asks of her. `quality` is
    the word the forecast needs: 'distance only', 'cost model', 'own data', 'past results'.
    """

    runner: str
    start: datetime
    rows: tuple[Row, ...]
    source: tuple[Saying, ...]
    quality: str
    notes: tuple[Note, ...] = ()
    light: tuple[LightMoment, ...] = ()
    dark: tuple[DarkKit, ...] = ()
    power_w_kg: float = 0.0
    spread: float = 0.0

    def row(self, point: str) -> Row:
        """The row of that point; KeyError if there is none."""
        for r in self.rows:
            if r.point == point:
                return r
        raise KeyError(point)
