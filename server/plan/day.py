"""What depends on the hour: the sky, and the weather to plan with, by hours and by place on the course."""

from __future__ import annotations

from dataclasses import dataclass
from datetime import datetime
from typing import Final

import numpy as np
import numpy.typing as npt

from server.event.model import Event, GroundState, WeatherSpell
from server.plan.heat import heat_slows
from server.plan.light import Sky

Floats = npt.NDArray[np.float64]
Bools = npt.NDArray[np.bool_]

HUMIDITY: Final = 50.0
"""Of the air, where only its temperature is given."""
UNDERFOOT: Final = {GroundState.MUD: 1.30, GroundState.SNOW: 1.35}
"""By what time is multiplied there, as for a surface of that name; snow: Pandolf, Haisman, Goldman 1976
(from memory); mud: common practice, no source."""

RUNS_DOWN_M_S: Final = {GroundState.MUD: 3.2, GroundState.SNOW: 2.5}
"""The fastest anybody runs down there, as for a surface of that name; common practice, no source."""


@dataclass(frozen=True, slots=True)
class Weather:
    """Air temperature (deg C) and humidity (%) expected from one instant to another, or what is underfoot then.

    Ends that are None are open; km along the course.
    """

    from_at: datetime | None
    to_at: datetime | None
    temperature_c: float | None = None
    humidity: float | None = None
    ground: GroundState | None = None
    from_km: float | None = None
    to_km: float | None = None


def weather_of(event: Event, course: str) -> tuple[Weather, ...]:
    """The weather that an event file gives for one of its courses."""
    return tuple(_weather(w) for w in event.weather if w.course in (None, course))


def _weather(w: WeatherSpell) -> Weather:
    return Weather(w.from_at, w.to_at, w.temperature_c, w.humidity, w.ground, w.from_km, w.to_km)


@dataclass(frozen=True, slots=True, eq=False)
class Day:
    """What depends on the hour: the sky, and the weather if any was given. A later spell goes before an earlier."""

    sky: Sky
    weather: tuple[Weather, ...] = ()

    def heat(self, elapsed_s: Floats, km: Floats) -> Floats:
        """By what heat multiplies her time at each moment and place (n,)."""
        out = np.ones_like(elapsed_s)
        for w in self.weather:
            if w.temperature_c is not None:
                humidity = HUMIDITY if w.humidity is None else w.humidity
                out[self._within(w, elapsed_s, km)] = heat_slows(w.temperature_c, humidity)
        return out

    def underfoot(self, elapsed_s: Floats, km: Floats, firm: Floats) -> tuple[tuple[str, Floats], ...]:
        """(name, factor (n,)) of mud and snow that the weather brings. firm (n,): what the surface costs already;
        a bog does not become slower than mud by rain."""
        found: dict[str, Floats] = {}
        for w in self.weather:
            if w.ground is not None:
                here = found.setdefault(w.ground.value, np.ones_like(elapsed_s))
                within = self._within(w, elapsed_s, km)
                here[within] = np.maximum(UNDERFOOT[w.ground] / firm[within], 1.0)
        return tuple(found.items())

    def downhill(self, elapsed_s: Floats, km: Floats) -> tuple[tuple[str, Floats], ...]:
        """(name, the fastest anybody runs down there (n,), m/s) of mud and snow that the weather brings; inf elsewhere."""
        found: dict[str, Floats] = {}
        for w in self.weather:
            if w.ground is not None:
                here = found.setdefault(w.ground.value, np.full(len(elapsed_s), np.inf))
                here[self._within(w, elapsed_s, km)] = RUNS_DOWN_M_S[w.ground]
        return tuple(found.items())

    def _within(self, w: Weather, elapsed_s: Floats, km: Floats) -> Bools:
        a, b = (None if t is None else (t - self.sky.start).total_seconds() for t in (w.from_at, w.to_at))
        inside = np.ones(len(elapsed_s), dtype=np.bool_)
        for value, low, high in ((elapsed_s, a, b), (km, w.from_km, w.to_km)):
            if low is not None:
                inside &= value >= low
            if high is not None:
                inside &= value < high
        return inside
