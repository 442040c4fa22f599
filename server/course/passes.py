"""Where the course passes a place: every time, in running order, not only where it comes nearest."""

from __future__ import annotations

import math
from dataclasses import dataclass
from itertools import pairwise
from typing import Final

import numpy as np
import numpy.typing as npt

from server.course.heights import turning_points
from server.course.line import Course

Floats = npt.NDArray[np.float64]

# Between two passes of a place the line must lead away from it by this, else it is one pass that wavers.
APART_M: Final = 30.0

_SEMI_MAJOR_M: Final = 6_378_137.0
_ECCENTRICITY_2: Final = 0.00669437999014


@dataclass(frozen=True, slots=True)
class Pass:
    """One time the course comes by a place: km there, metres off, and the part of the line it stands for.

    first, last: indices into Course.km, both included; the passes of a place share out the whole line.
    """

    km: float
    offset_m: float
    first: int
    last: int


def offsets_m(course: Course, lat_deg: float, lon_deg: float) -> Floats:
    """Metres from a place to each step's end (n + 1,), on a plane that touches the ellipsoid at the place.

    Good to 0.1% within 30 km, which is further than anything here is decided by.
    """
    east, north = _from(course, lat_deg, lon_deg)
    return np.hypot(east, north)


def passes(course: Course, lat_deg: float, lon_deg: float) -> tuple[Pass, ...]:
    """Every pass of the course by a place, in running order, however far off; at least one.

    lat_deg -90 to 90, lon_deg -180 to 180. Errors: ValueError for a place that is none.
    """
    if not (abs(lat_deg) <= 90 and abs(lon_deg) <= 180):
        raise ValueError(f"latitude {lat_deg}, longitude {lon_deg} is no place")
    east, north = _from(course, lat_deg, lon_deg)
    away = np.hypot(east, north)
    turns = turning_points(away, APART_M)
    low = [
        index
        for index, turn in enumerate(turns)
        if (index == 0 or away[turn] <= away[turns[index - 1]])
        and (index == len(turns) - 1 or away[turn] < away[turns[index + 1]])
    ]
    edges = [0]
    for before, after in pairwise(low):
        edges.append(max(turns[before : after + 1], key=lambda turn: float(away[turn])))
    edges.append(len(away) - 1)
    return tuple(_nearest(course, east, north, first, last) for first, last in pairwise(edges))


def _from(course: Course, lat_deg: float, lon_deg: float) -> tuple[Floats, Floats]:
    """Metres east and north of a place, of each step's end. Radii of curvature: any geodesy text (memory)."""
    sin_2 = math.sin(math.radians(lat_deg)) ** 2
    across = _SEMI_MAJOR_M / math.sqrt(1 - _ECCENTRICITY_2 * sin_2)
    along = across * (1 - _ECCENTRICITY_2) / (1 - _ECCENTRICITY_2 * sin_2)
    east = (course.lon_deg - lon_deg + 180.0) % 360.0 - 180.0
    # The mean of both latitudes keeps the width of a degree right for places tens of km apart.
    middle = np.radians((course.lat_deg + lat_deg) / 2)
    return np.radians(east) * across * np.cos(middle), np.radians(course.lat_deg - lat_deg) * along


def _nearest(course: Course, east: Floats, north: Floats, first: int, last: int) -> Pass:
    """The pass between two step ends: the foot of the perpendicular from the origin."""
    x, y = east[first : last + 1], north[first : last + 1]
    dx, dy = np.diff(x), np.diff(y)
    square = dx**2 + dy**2
    part = np.clip(-(x[:-1] * dx + y[:-1] * dy) / np.where(square > 0, square, 1.0), 0.0, 1.0)
    off = np.hypot(x[:-1] + part * dx, y[:-1] + part * dy)
    best = int(np.argmin(off))
    start, end = course.km[first + best], course.km[first + best + 1]
    return Pass(float(start + part[best] * (end - start)), float(off[best]), first, last)
