"""Sunrise, sunset and twilight where she is when she is there: dark for kit and dark for pace.

For kit, dark begins at sunset, 30 min earlier in forest or gorge, and ends at sunrise; for pace it lasts from
civil dusk to civil dawn. Both are asked of the sun's elevation at a place and an aware time, never of a day's
'dusk', which after midnight belongs to the day before and in the far north may not exist.
"""

from __future__ import annotations

from dataclasses import dataclass
from datetime import UTC, datetime, timedelta
from enum import StrEnum
from functools import lru_cache
from itertools import pairwise
from typing import Final

import numpy as np
import numpy.typing as npt
from astral import Observer
from astral.sun import elevation

Floats = npt.NDArray[np.float64]
Bools = npt.NDArray[np.bool_]

HORIZON_DEG: Final = -0.833
"""Elevation of the sun's centre at rise and set: refraction 34' and half the disc 16' (the usual
convention)."""
CIVIL_DEG: Final = -6.0
SHADE: Final = timedelta(minutes=30)
GRID_S: Final = 600.0
PLACES: Final = 9


class SunEvent(StrEnum):
    """The four moments of a day's light."""

    DAWN = "civil dawn"
    SUNRISE = "sunrise"
    SUNSET = "sunset"
    DUSK = "civil dusk"


@dataclass(frozen=True, slots=True)
class LightMoment:
    """One such moment as she lives it: elapsed from her start, the instant, and where she is expected
    then."""

    event: SunEvent
    elapsed: timedelta
    at: datetime
    km: float


@dataclass(frozen=True, slots=True)
class DarkKit:
    """A part of her race for which she needs a light: from and to, elapsed, instant and km."""

    from_elapsed: timedelta
    to_elapsed: timedelta
    from_at: datetime
    to_at: datetime
    from_km: float
    to_km: float


def sun_elevation_deg(lat_deg: float, lon_deg: float, at: datetime) -> float:
    """The sun's true elevation, degrees, without refraction. `at` aware. Source: astral (NOAA's
    equations)."""
    if at.tzinfo is None:
        raise ValueError("the sun needs an aware time: one with its offset from UTC")
    return float(elevation(Observer(lat_deg, lon_deg, 0.0), at, with_refraction=False))


@dataclass(frozen=True, slots=True, eq=False)
class Sky:
    """The sun's elevation over a course for the length of a race: a table, so that a plan can ask it often.

    elapsed_s (t,) every 10 min from her start, km (k,) places along the course, table_deg (t, k).
    """

    start: datetime
    elapsed_s: Floats
    km: Floats
    table_deg: Floats

    def elevation_deg(self, elapsed_s: Floats, km: Floats) -> Floats:
        """Elevation, degrees, at times and places (n,) of one length, to about 0.02 degrees; past the
        table's end its last value."""
        t = np.clip(elapsed_s / GRID_S, 0.0, len(self.elapsed_s) - 1.000001)
        row = t.astype(np.intp)
        part = t - row
        column = np.clip(np.searchsorted(self.km, km, side="right") - 1, 0, len(self.km) - 2)
        left, right = self.km[column], self.km[column + 1]
        along = np.clip((km - left) / (right - left), 0.0, 1.0)
        before = self.table_deg[row, column] * (1 - along) + self.table_deg[row, column + 1] * along
        after = self.table_deg[row + 1, column] * (1 - along) + self.table_deg[row + 1, column + 1] * along
        return np.asarray(before * (1 - part) + after * part)

    def dark_for_pace(self, elapsed_s: Floats, km: Floats) -> Bools:
        """Whether the sun is lower than at civil dusk, for times and places (n,)."""
        return np.asarray(self.elevation_deg(elapsed_s, km) < CIVIL_DEG)

    def dark_for_kit(self, elapsed_s: Floats, km: Floats, shaded: Bools) -> Bools:
        """Whether she needs a light, for times and places (n,); shaded: forest or gorge there."""
        now = self.elevation_deg(elapsed_s, km) < HORIZON_DEG
        soon = self.elevation_deg(elapsed_s + SHADE.total_seconds(), km) < HORIZON_DEG
        late = self.elevation_deg(np.maximum(elapsed_s - SHADE.total_seconds(), 0.0), km) < HORIZON_DEG
        return np.asarray(now | (shaded & (soon | late)))


def sky_over(km: Floats, lat_deg: Floats, lon_deg: Floats, start: datetime, lasts_s: float) -> Sky:
    """The sky over a line km (n,), rising, at lat_deg, lon_deg (n,), from aware `start` for lasts_s
    seconds."""
    if start.tzinfo is None:
        raise ValueError("the sun needs an aware start: one with its offset from UTC")
    # Adding hours to a local time would step over a change of the clocks unseen.
    start = start.astimezone(UTC)
    count = PLACES if lasts_s < 5 * 86_400 else 3
    places = np.linspace(float(km[0]), float(km[-1]), count)
    lat, lon = np.interp(places, km, lat_deg), np.interp(places, km, lon_deg)
    times = np.arange(0.0, lasts_s + 2 * GRID_S, GRID_S)
    # The ground a race covers is small beside the globe, so most places share a sun to a tenth of a degree.
    if float(np.ptp(lat)) < 0.05 and float(np.ptp(lon)) < 0.05:
        one = _column(float(lat.mean()), float(lon.mean()), start, times)
        return Sky(start, times, places, np.repeat(one[:, None], count, axis=1))
    columns = [_column(float(a), float(b), start, times) for a, b in zip(lat, lon, strict=True)]
    return Sky(start, times, places, np.column_stack(columns))


def _column(lat_deg: float, lon_deg: float, start: datetime, times_s: Floats) -> Floats:
    lon = (lon_deg + 180.0) % 360.0 - 180.0
    return np.array([_kept_elevation_deg(lat_deg, lon, start + timedelta(seconds=float(t))) for t in times_s])


@lru_cache(maxsize=40_000)
def _kept_elevation_deg(lat_deg: float, lon_deg: float, at: datetime) -> float:
    """The same sun is asked for by every runner of a course, and again for each goal of a plan."""
    return sun_elevation_deg(lat_deg, lon_deg, at)


def down_before(lat_deg: float, lon_deg: float, start: datetime, most: timedelta) -> timedelta:
    """For how long the sun has been below the horizon there at `start`, at the most `most`, to the table's steps."""
    lon, gone = (lon_deg + 180.0) % 360.0 - 180.0, timedelta(0)
    while gone < most and _kept_elevation_deg(lat_deg, lon, start.astimezone(UTC) - gone) < HORIZON_DEG:
        gone += timedelta(seconds=GRID_S)
    return gone


def light_moments(sky: Sky, elapsed_s: Floats, km: Floats) -> tuple[LightMoment, ...]:
    """Every dawn, sunrise, sunset and dusk of her race, where she is then, in order.

    elapsed_s, km (n,): her expected time at each place, rising, standing still allowed (a stop).
    """
    ticks = np.arange(0.0, float(elapsed_s[-1]), 30.0)
    where = np.interp(ticks, elapsed_s, km)
    height = sky.elevation_deg(ticks, where)
    found: list[LightMoment] = []
    for level, up, down in (
        (CIVIL_DEG, SunEvent.DAWN, SunEvent.DUSK),
        (HORIZON_DEG, SunEvent.SUNRISE, SunEvent.SUNSET),
    ):
        above = height >= level
        for index in np.flatnonzero(above[1:] != above[:-1]):
            share = (level - height[index]) / (height[index + 1] - height[index])
            at_s = float(ticks[index] + share * 30.0)
            place = float(np.interp(at_s, elapsed_s, km))
            gone = timedelta(seconds=round(at_s))
            found.append(LightMoment(up if above[index + 1] else down, gone, sky.start + gone, place))
    return tuple(sorted(found, key=lambda m: m.elapsed))


def dark_kit(sky: Sky, elapsed_s: Floats, km: Floats, shaded: Bools) -> tuple[DarkKit, ...]:
    """The parts of her race for which she needs a light.

    elapsed_s, km, shaded (n,): expected time at each place, rising, and whether it is forest or gorge.
    A gap of light under 20 min between two such parts is closed: nobody packs a torch away for that.
    """
    # The last look is at the finish itself, never after it.
    ticks = np.minimum(np.arange(0.0, float(elapsed_s[-1]) + 60.0, 60.0), float(elapsed_s[-1]))

    def at(gone_s: Floats) -> tuple[Floats, Bools]:
        where = np.interp(gone_s, elapsed_s, km)
        shade = shaded[np.clip(np.searchsorted(km, where, side="right") - 1, 0, len(shaded) - 1)]
        return where, sky.dark_for_kit(gone_s, where, shade)

    def part(first: int, last: int) -> DarkKit:
        ends = ((first - 1, first), (last + 1, last))
        found = [float(ticks[d]) if not 0 <= n < len(ticks) else edge(n, d) for n, d in ends]
        a, b = (timedelta(seconds=x) for x in found)
        from_km, to_km = np.interp(found, elapsed_s, km)
        return DarkKit(a, b, sky.start + a, sky.start + b, float(from_km), float(to_km))

    def edge(light: int, dark: int) -> float:
        # To the second: a page that has the sunset at 18:24 and the torch from 18:25 says one thing in two ways.
        seconds = np.linspace(float(ticks[light]), float(ticks[dark]), 61)
        return float(seconds[max(int(np.argmax(at(seconds)[1])) - 1, 0)])

    _, dark = at(ticks)
    edges = [0, *(np.flatnonzero(dark[1:] != dark[:-1]) + 1).tolist(), len(dark)]
    spans = [[int(a), int(b) - 1] for a, b in pairwise(edges) if dark[a]]
    joined: list[list[int]] = []
    for span in spans:
        if joined and span[0] - joined[-1][1] < 20:
            joined[-1][1] = span[1]
        else:
            joined.append(span)
    return tuple(part(a, b) for a, b in joined)
