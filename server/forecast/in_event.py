"""The engine's answers in the event's own terms: `Outlook` and `View` over point ids and aware datetimes."""

from __future__ import annotations

import math
from collections.abc import Callable
from dataclasses import dataclass
from datetime import UTC, datetime, timedelta

import numpy as np

from server.forecast.outlook import DayLegs, Whereabouts, Window
from server.forecast.values import FloatArray, Silence
from server.forecast.view import EngineView as EngineView
from server.forecast.view import Posterior

FAR_S = 1e8
"""Some three years: no race's time lies farther from its start."""
_Ask = Callable[[int], float]


@dataclass(frozen=True, slots=True, eq=False)
class EventOutlook:
    """An `Outlook` on the engine's posterior. `ids` are the points after the start, in running order."""

    start: datetime
    ids: tuple[str, ...]
    posterior: Posterior
    silence: Silence
    without: Callable[[], EventOutlook] | None = None
    """How the outlook without anybody's 'not here yet' is made; only where there is one."""
    day: DayLegs | None = None

    def at(self, now: datetime) -> EventView:
        return EventView(self, self.posterior.view(_since(self.start, now), self.silence), now)

    def _first(self) -> int:
        track = self.posterior.track
        return len(self.ids) if track.retired is not None else track.first

    def late_time(self) -> tuple[str, datetime] | None:
        watched = sorted({w.point for w in self.silence.watchers if w.point >= self._first()})
        if not watched and self._first() >= len(self.ids):
            return None
        # Where nobody is said to report from anywhere ahead, somebody still knows whether she has come home.
        point = watched[0] if watched else len(self.ids) - 1
        return self.ids[point], self._when(self.posterior.late_after_s(point))

    def unheard_falls_under(self, line: float, after: datetime) -> datetime | None:
        if self._first() >= len(self.ids):
            return None
        found = self.posterior.unheard_falls_under(line, _since(self.start, after), self.silence)
        return None if found is None else max(after, self._when(found))

    def ended_rather(self, going: float, after: datetime) -> datetime | None:
        if self._first() >= len(self.ids):
            return None
        found = self.posterior.ended_rather_s(going, _since(self.start, after), self.silence)
        return None if found is None else max(after, self._when(found))

    def untold(self) -> EventOutlook | None:
        return None if self.without is None else self.without()

    def _when(self, seconds: float) -> datetime:
        # No calendar holds what a slip of a date can make of a time: it stays a time, far off.
        return self.start + timedelta(seconds=round(min(max(seconds, -FAR_S), FAR_S), 3))


@dataclass(frozen=True, slots=True, eq=False)
class EventView:
    """A `View` on the engine's view. Points reached, and every point once she has retired, have no window."""

    outlook: EventOutlook
    engine: EngineView
    now: datetime

    @property
    def points(self) -> tuple[str, ...]:
        return self.outlook.ids[self.outlook._first() :]

    def _index(self, point: str) -> int:
        return self.outlook.ids.index(point) if point in self.outlook.ids else -1

    def _to_come(self, point: str) -> int:
        i = self._index(point)
        if i < self.outlook._first():
            raise KeyError(point)
        return i

    def window(self, point: str) -> Window:
        times = self.engine.quantiles(self._to_come(point), np.array([0.1, 0.5, 0.9]))
        early, likely, late = (self.outlook._when(float(t)) for t in times)
        return Window(point, early, likely, late)

    def arrival(self, point: str, p: float) -> datetime:
        return self.outlook._when(float(self.engine.quantiles(self._to_come(point), np.array([p]))[0]))

    def leaving(self, point: str, p: float) -> datetime:
        i = self._index(point)
        if i < 0 or (i < self.outlook._first() and i != self.engine.posterior.track.at_point):
            raise KeyError(point)
        when = float(self.engine.out_quantiles(i, np.array([p]))[0])
        if not math.isfinite(when):
            raise KeyError(point)
        return self.outlook._when(when)

    def p_gets_there(self, point: str) -> float:
        return self._odds(point, self.engine.probability_arrives)

    def p_in_by(self, point: str, when: datetime) -> float:
        return self._odds(point, lambda i: self.engine.probability_by(i, _since(self.outlook.start, when)))

    def p_out_by(self, point: str, when: datetime) -> float:
        return self._odds(
            point, lambda i: self.engine.probability_out_by(i, _since(self.outlook.start, when))
        )

    def p_makes(self, point: str, when: datetime, out: bool) -> float:
        at = _since(self.outlook.start, when)
        return self._odds(point, lambda i: self.engine.probability_cutoff(i, at, leaving=out))

    def _odds(self, point: str, ask: _Ask) -> float:
        i = self._index(point)
        if i < 0:
            return 1.0
        return min(1.0, max(0.0, float(ask(i))))

    def p_unheard(self) -> float:
        return float(self.engine.probability_unheard())

    def where(self) -> Whereabouts:
        low, likely, high = self.engine.whereabouts_km(np.array([0.1, 0.5, 0.9]))
        return Whereabouts(float(low), float(likely), float(high))

    def paths(self) -> tuple[FloatArray, FloatArray]:
        """Equally likely paths: the engine's weighted ones, drawn again at even steps of weight."""
        weights = np.cumsum(self.engine.weights)
        count = weights.size
        pick = np.minimum(np.searchsorted(weights, (np.arange(count) + 0.5) / count * weights[-1]), count - 1)
        begin = self.outlook.start.astimezone(UTC).timestamp()
        if not self.points:
            none = np.zeros((count, 0))
            return none, none
        return self.engine.arrivals_s[pick] + begin, self.engine.departures_s[pick] + begin


def _since(start: datetime, at: datetime) -> float:
    return (at - start).total_seconds()
