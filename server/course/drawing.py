"""The course as a picture wants it: few corners, on flat paper, and the heights as a profile."""

from __future__ import annotations

import math
from dataclasses import dataclass

import numpy as np
import numpy.typing as npt

from server.course.line import Course

Floats = npt.NDArray[np.float64]


@dataclass(frozen=True, slots=True)
class Corner:
    """A corner of the line on paper: km east and north of the middle of the course, and its km along it.

    north_km grows upwards; SVG's y grows downwards.
    """

    east_km: float
    north_km: float
    km: float


@dataclass(frozen=True, slots=True)
class ProfilePoint:
    """A corner of the profile: km along the course, height in metres."""

    km: float
    height_m: float


EARTH_KM = 6378.137
"""Semi-major axis of WGS 84, which Web Mercator takes for the radius of a sphere (EPSG:3857)."""


@dataclass(frozen=True, slots=True)
class Paper:
    """A flat map round one place, by Web Mercator, so that the tiles of any map server lie under it: angles are true, and
    so is the scale at the middle (50 km north or south of it, at 55° latitude, within 1.2%). Latitudes within 85°."""

    lat_deg: float
    lon_deg: float

    @classmethod
    def of(cls, course: Course) -> Paper:
        """The paper whose middle is the middle of the course."""
        lat, lon = course.lat_deg, course.lon_deg
        return cls(float(lat.min() + lat.max()) / 2, float(lon.min() + lon.max()) / 2)

    @property
    def scale_km(self) -> float:
        """km on the ground, at the middle, of one radian of longitude."""
        return EARTH_KM * math.cos(math.radians(self.lat_deg))

    def place(self, lat_deg: float, lon_deg: float) -> tuple[float, float]:
        """km east and km north of the middle, for a place given in degrees."""
        xy = self.places(np.array([lat_deg]), np.array([lon_deg]))[0]
        return float(xy[0]), float(xy[1])

    def places(self, lat_deg: Floats, lon_deg: Floats) -> Floats:
        """The same (n, 2) for many places (n,); longitudes on the side of the date line that is nearer to the middle."""
        lon = (lon_deg - self.lon_deg + 180.0) % 360.0 - 180.0
        north = np.arcsinh(np.tan(np.radians(lat_deg))) - math.asinh(math.tan(math.radians(self.lat_deg)))
        return self.scale_km * np.column_stack([np.radians(lon), north])


def outline(course: Course, tolerance_m: float = 30.0) -> tuple[Corner, ...]:
    """The line on Paper.of(course) with as few corners as keep it within tolerance_m, from start to finish.

    tolerance_m: more than 0. A pass of the way out and one of the way back stay two lines.
    """
    xy = Paper.of(course).places(course.lat_deg, course.lon_deg)
    return tuple(
        Corner(float(xy[i, 0]), float(xy[i, 1]), float(course.km[i]))
        for i in simplify(xy, tolerance_m / 1000)
    )


def profile(course: Course, tolerance_m: float = 2.0) -> tuple[ProfilePoint, ...]:
    """Heights along the course with as few corners as keep them within tolerance_m; empty without heights."""
    if not course.has_heights:
        return ()
    kept = simplify(np.column_stack([course.km, course.height_m]), tolerance_m, upright=True)
    return tuple(ProfilePoint(float(course.km[i]), float(course.height_m[i])) for i in kept)


def simplify(xy: Floats, tolerance: float, *, upright: bool = False) -> list[int]:
    """Indices of the corners of a line (n, 2), n >= 2, that keep all others within tolerance of it, in order.

    upright: measure along y only, for a profile; x must then rise. Douglas and Peucker 1973, Cartographica
    10:112-122 (memory).
    """
    if not tolerance > 0:
        raise ValueError(f"tolerance {tolerance} is not above 0")
    keep = {0, len(xy) - 1}
    waiting = [(0, len(xy) - 1)]
    while waiting:
        first, last = waiting.pop()
        if last - first < 2:
            continue
        away = _from_chord(xy[first : last + 1], upright)
        worst = int(np.argmax(away))
        if away[worst] > tolerance:
            keep.add(first + worst)
            waiting += [(first, first + worst), (first + worst, last)]
    return sorted(keep)


def _from_chord(xy: Floats, upright: bool) -> Floats:
    """Distance of each vertex (n,) from the chord of first and last."""
    base, chord = xy[0], xy[-1] - xy[0]
    from_base = xy - base
    if upright:
        slope = chord[1] / chord[0] if chord[0] else 0.0
        return np.asarray(np.abs(from_base[:, 1] - slope * from_base[:, 0]), dtype=np.float64)
    square = float(chord @ chord)
    part = np.clip(from_base @ chord / square, 0.0, 1.0) if square > 0 else np.zeros(len(xy))
    return np.asarray(np.hypot(*(from_base - part[:, None] * chord).T), dtype=np.float64)
