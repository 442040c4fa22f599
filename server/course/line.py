"""From a track to the course: distance on WGS 84, even steps along it, heights to reckon with."""

from __future__ import annotations

import math
from bisect import bisect_right
from dataclasses import dataclass
from typing import Final

import numpy as np
import numpy.typing as npt
from pyproj import Geod

from server.course import heights
from server.course.errors import CourseError
from server.course.track import Track
from server.sentences import Worded, say

Floats = npt.NDArray[np.float64]

STEP_M: Final = 25.0
# A recording standing still writes a nest of points; all within this of the first are one place.
SAME_PLACE_M: Final = 10.0
SHORTEST_M: Final = 100.0
LONGEST_M: Final = 6_000_000.0
# A measured line and an organiser's distance further apart than this are not the same course.
STATED_WITHIN: Final = 0.10
JUMP_M: Final = 1_000.0
HEIGHTS_MISSING_M: Final = 1_000.0

_WGS84 = Geod(ellps="WGS84")


@dataclass(frozen=True, slots=True)
class Spot:
    """A place on the course: km along it, degrees on WGS 84, height in metres or None, gradient dh/dx."""

    km: float
    lat_deg: float
    lon_deg: float
    height_m: float | None
    gradient: float


@dataclass(frozen=True, slots=True)
class Climb:
    """Metres up and metres down between two places, both zero or more."""

    up_m: float
    down_m: float


@dataclass(frozen=True, slots=True)
class Box:
    """The smallest box round the course, in degrees; east < west where it crosses the date line."""

    south_deg: float
    west_deg: float
    north_deg: float
    east_deg: float


@dataclass(frozen=True, slots=True, eq=False)
class Course:
    """The line on the ground, in n even steps of about STEP_M from start to finish.

    Arrays are read-only. km (n + 1,): km of each step's ends, 0 to length_km. lat_deg, lon_deg (n + 1,):
    there, on WGS 84; lon_deg is continuous, so may pass 180. height_m (n + 1,): cleaned, NaN throughout
    where has_heights is False. step_gradient (n,): dh/dx of each step, over true metres, zero without
    heights. up_m, down_m (n + 1,): ascent and descent so far. step_m: true metres of one step.

    km is the organiser's where the course has stated_km (the measured line stretched evenly), else measured;
    measured_km is the length of the line itself. warnings: sentences for the person who wrote the event. rides: where a
    stage begins elsewhere than the one before ended, as km of the course and straight km between; nobody runs those, so
    they count for nothing.
    """

    name: str
    km: Floats
    lat_deg: Floats
    lon_deg: Floats
    height_m: Floats
    step_gradient: Floats
    up_m: Floats
    down_m: Floats
    step_m: float
    measured_km: float
    stated_km: float | None
    has_heights: bool
    warnings: tuple[Worded, ...]
    track: Track
    rides: tuple[tuple[float, float], ...] = ()

    @property
    def length_km(self) -> float:
        """Length, as stated by the organiser or else as measured, in km."""
        return float(self.km[-1])

    @property
    def scale(self) -> float:
        """Stated km per measured km: 1.0 where no distance was stated."""
        return self.length_km / self.measured_km

    @property
    def ascent_m(self) -> float | None:
        """Metres of ascent from start to finish, or None without heights."""
        return float(self.up_m[-1]) if self.has_heights else None

    @property
    def risen_m(self) -> Floats:
        """Height (n + 1,) that was run up and down to there, from 0: where no stage begins elsewhere that of the ground."""
        return self.up_m - self.down_m

    @property
    def descent_m(self) -> float | None:
        """Metres of descent from start to finish, or None without heights."""
        return float(self.down_m[-1]) if self.has_heights else None

    def at(self, km: float) -> Spot:
        """The place at km, which is held within 0 and length_km. ValueError if km is not a number."""
        if math.isnan(km):
            raise ValueError("km is not a number")
        km = min(max(km, 0.0), self.length_km)
        index, part = self._step(km)
        height = self._between(self.height_m, index, part) if self.has_heights else None
        lat, lon = self._between(self.lat_deg, index, part), self._between(self.lon_deg, index, part)
        return Spot(km, lat, wrapped(lon), height, float(self.step_gradient[index]))

    def climb(self, from_km: float, to_km: float) -> Climb | None:
        """Metres up and down from from_km to to_km (the same or later), or None without heights."""
        if not from_km <= to_km:
            raise ValueError(f"from_km {from_km} is not before to_km {to_km}")
        if not self.has_heights:
            return None
        ends = np.clip([from_km, to_km], 0.0, self.length_km)
        up, down = (np.interp(ends, self.km, values) for values in (self.up_m, self.down_m))
        return Climb(float(up[1] - up[0]), float(down[1] - down[0]))

    def box(self) -> Box:
        """The box round the course."""
        return Box(
            float(self.lat_deg.min()),
            wrapped(float(self.lon_deg.min())),
            float(self.lat_deg.max()),
            wrapped(float(self.lon_deg.max())),
        )

    def stated(self, measured_km: float) -> float:
        """km of the course for a distance measured along the line."""
        return measured_km * self.scale

    def measured(self, km: float) -> float:
        """Distance measured along the line, in km, for a km of the course."""
        return km / self.scale

    def _step(self, km: float) -> tuple[int, float]:
        """The step that holds km, and how far into it (0 to 1)."""
        index = min(max(bisect_right(self.km, km) - 1, 0), len(self.step_gradient) - 1)
        start, end = float(self.km[index]), float(self.km[index + 1])
        return index, (km - start) / (end - start)

    @staticmethod
    def _between(values: Floats, index: int, part: float) -> float:
        return float(values[index] + part * (values[index + 1] - values[index]))


def build_course(track: Track, *, stated_km: float | None = None, step_m: float = STEP_M) -> Course:
    """The course of a track.

    stated_km: the organiser's distance, within STATED_WITHIN of the measured one; step_m: 5 to 200.
    Errors: CourseError for a line that is too short, too long, or another length than stated. Missing
    heights are no error.
    """
    if not 5.0 <= step_m <= 200.0:
        raise ValueError(f"step_m {step_m} is outside 5 to 200")
    lat, lon, height, ridden, warnings = _vertices(track)
    legs = np.diff(along_m(lat, lon))
    straight_km = legs[ridden - 1] / 1000
    legs[ridden - 1] = 0.0
    along = np.concatenate([[0.0], np.cumsum(legs)])
    length_m = float(along[-1])
    _refuse_length(track.file, length_m, stated_km)
    count = max(2, math.ceil(length_m / step_m))
    grid = np.linspace(0.0, length_m, count + 1)
    scale = stated_km * 1000 / length_m if stated_km else 1.0
    # The height between two stages' ends is no climb: reckoned on one line, and put back where it is a height.
    lifted = _lifted(height, ridden)
    has_heights, height, missing = _filled(track.file, along, height - lifted, scale)
    clean = heights.clean(along, height, grid) if has_heights else np.full(count + 1, np.nan)
    rise = np.diff(clean) if has_heights else np.zeros(count)
    parts = (
        grid * scale / 1000,
        np.interp(grid, along, lat),
        np.interp(grid, along, lon),
        clean + lifted[np.searchsorted(along, grid, side="right") - 1],
        rise * count / length_m,
        np.concatenate([[0.0], np.cumsum(np.clip(rise, 0, None))]),
        np.concatenate([[0.0], np.cumsum(np.clip(-rise, 0, None))]),
    )
    for values in parts:
        values.setflags(write=False)
    return Course(
        track.title or track.file,
        *parts,
        step_m=length_m / count,
        measured_km=length_m / 1000,
        stated_km=stated_km,
        has_heights=has_heights,
        warnings=(*track.warnings, *warnings, *_jumps(track, along, scale), *missing),
        track=track,
        rides=tuple(zip((along[ridden] * scale / 1000).tolist(), straight_km.tolist(), strict=True)),
    )


def along_m(lat_deg: Floats, lon_deg: Floats) -> Floats:
    """Metres along the line of vertices (n,), from 0: geodesics on WGS 84 (Karney 2013, J Geodesy 87:43)."""
    _, _, legs = _WGS84.inv(lon_deg[:-1], lat_deg[:-1], lon_deg[1:], lat_deg[1:])
    return np.concatenate([[0.0], np.cumsum(legs)])


def wrapped(lon_deg: float) -> float:
    """A longitude brought back to -180 to 180 degrees."""
    return lon_deg if -180.0 <= lon_deg <= 180.0 else (lon_deg + 180.0) % 360.0 - 180.0


def _vertices(track: Track) -> tuple[Floats, Floats, Floats, npt.NDArray[np.intp], list[Worded]]:
    """Latitudes, continuous longitudes, heights (NaN where missing) of a track, a place once; the indices of those to which
    nobody runs; warnings."""
    lon = np.unwrap(track.lon_deg, period=360.0)
    height, spikes = _despiked(track, lon)
    first = _group_starts(track.lat_deg, lon)
    size = np.diff(np.append(first, len(lon)))
    known = ~np.isnan(height)
    sums = np.add.reduceat(np.where(known, height, 0.0), first)
    number = np.add.reduceat(known.astype(np.float64), first)
    with np.errstate(invalid="ignore"):
        mean = sums / np.where(number > 0, number, np.nan)
    warnings = [say("wrong-height-spikes-bridged", file=track.file, spikes=spikes)] if spikes else []
    ridden = np.searchsorted(first, np.asarray(track.rides, dtype=np.intp))
    lat = np.add.reduceat(track.lat_deg, first) / size
    return lat, np.add.reduceat(lon, first) / size, mean, ridden, warnings


def _lifted(height: Floats, ridden: npt.NDArray[np.intp]) -> Floats:
    """How much higher each vertex (n,) lies than had every stage begun where the one before ended."""
    lifted = np.zeros(len(height))
    known = np.flatnonzero(~np.isnan(height))
    if len(known):
        at = np.interp(np.arange(len(height)), known, height[known])
        lifted[ridden] = at[ridden] - at[ridden - 1]
    return np.cumsum(lifted)


def _despiked(track: Track, lon_deg: Floats) -> tuple[Floats, int]:
    known = np.flatnonzero(~np.isnan(track.height_m))
    if len(known) < 4:
        return track.height_m, 0
    along = along_m(track.lat_deg, lon_deg)
    cleaned, spikes = heights.without_spikes(along[known], track.height_m[known])
    height = track.height_m.copy()
    height[known] = cleaned
    return height, spikes


def _group_starts(lat_deg: Floats, lon_deg: Floats) -> npt.NDArray[np.intp]:
    """Index of the first point of each place: a point further than SAME_PLACE_M from it begins the next."""
    # Plain metres do for 'within ten metres', and the loop is over up to 200,000 points.
    north = (lat_deg * 111_200.0).tolist()
    east_of = (111_300.0 * np.cos(np.radians(lat_deg))).tolist()
    degrees = lon_deg.tolist()
    limit = SAME_PLACE_M**2
    starts = [0]
    north_0, lon_0 = north[0], degrees[0]
    for index, (up, long, per_degree) in enumerate(zip(north, degrees, east_of, strict=True)):
        if (up - north_0) ** 2 + ((long - lon_0) * per_degree) ** 2 > limit:
            starts.append(index)
            north_0, lon_0 = up, long
    return np.asarray(starts, dtype=np.intp)


def _refuse_length(file: str, length_m: float, stated_km: float | None) -> None:
    if length_m < SHORTEST_M:
        raise CourseError(
            say("wrong-line-m-long", length_m=f"{length_m:.0f}"),
            file=file,
            remedy=say("do-use-file-holds-whole-course"),
        )
    if length_m > LONGEST_M:
        raise CourseError(
            say("wrong-line-km-long-when-points", length_km=f"{length_m / 1000:,.0f}"),
            file=file,
            remedy=say("do-look-route-map-export-again"),
        )
    if stated_km is None:
        return
    if not math.isfinite(stated_km) or abs(stated_km * 1000 / length_m - 1) > STATED_WITHIN:
        raise CourseError(
            say(
                "wrong-line-measures-km-but-km",
                length_km=f"{length_m / 1000:.1f}",
                stated_km=f"{stated_km:g}",
            ),
            file=file,
            remedy=say("do-correct-stated-km-use-route"),
        )


def _jumps(track: Track, along: Floats, scale: float) -> list[Worded]:
    """A warning where a densely recorded line has a hole."""
    legs = np.diff(along)
    if not len(legs) or float(np.median(legs)) > JUMP_M / 10:
        return []
    return [
        say(
            "wrong-straight-km-from-km-points",
            file=track.file,
            length_km=f"{legs[index] / 1000:.1f}",
            from_km=f"{along[index] * scale / 1000:.1f}",
        )
        for index in np.flatnonzero(legs > JUMP_M)[:5]
    ]


def _filled(file: str, along: Floats, height: Floats, scale: float) -> tuple[bool, Floats, list[Worded]]:
    """Whether the vertices have heights, the heights with gaps bridged, and what is missing."""
    known = np.flatnonzero(~np.isnan(height))
    lacking = say("wrong-gradient-ascent-unknown-so-plan")
    if not len(known):
        return False, height, [say("wrong-route-no-heights", file=file, lacking=lacking)]
    if not np.any(height[known]):
        return False, height, [say("wrong-every-height-0", file=file, lacking=lacking)]
    if len(known) < 2 or len(known) < 0.5 * len(height):
        share = len(known) / len(height)
        return (
            False,
            height,
            [say("wrong-only-points-heights", file=file, share=f"{share:.0%}", lacking=lacking)],
        )
    edges = np.concatenate([[0.0], along[known], [along[-1]]])
    gaps = np.flatnonzero(np.diff(edges) > np.maximum(HEIGHTS_MISSING_M, 3 * np.median(np.diff(along))))
    missing = [
        say(
            "wrong-no-heights-from-km-drawn",
            file=file,
            from_km=f"{edges[gap] * scale / 1000:.1f}",
            to_km=f"{edges[gap + 1] * scale / 1000:.1f}",
        )
        for gap in gaps[:5]
    ]
    return True, np.interp(along, along[known], height[known]), missing
