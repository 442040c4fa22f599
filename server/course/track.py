"""What a route file comes to: one line of places and heights, and its named waypoints."""

from __future__ import annotations

import math
from array import array
from dataclasses import dataclass, field
from itertools import accumulate, pairwise
from typing import Final, Literal

import numpy as np
import numpy.typing as npt

from server.course.errors import CourseError
from server.sentences import Worded, say

Floats = npt.NDArray[np.float64]

# Tracks of one file that begin within this of the end of the one before are days of one course.
JOIN_M: Final = 1_000.0


@dataclass(frozen=True, slots=True)
class Waypoint:
    """A named place of the file. Degrees on WGS 84; height in metres or None; line: 1-based, in the file."""

    name: str
    lat_deg: float
    lon_deg: float
    height_m: float | None
    line: int


@dataclass(frozen=True, slots=True, eq=False)
class Track:
    """One line as it stands in the file, segments joined.

    lat_deg, lon_deg, height_m: read-only arrays (n,), n >= 2, degrees on WGS 84 and metres; height NaN
    where the file has none. warnings: sentences for the person who wrote the event. rides: the indices of the points to
    which nobody runs, as the segment or track before ended elsewhere and a stage with it.
    """

    file: str
    title: str
    kind: Literal["track", "route"]
    lat_deg: Floats
    lon_deg: Floats
    height_m: Floats
    waypoints: tuple[Waypoint, ...]
    warnings: tuple[Worded, ...]
    rides: tuple[int, ...] = ()


@dataclass(slots=True)
class RawLine:
    """A track or route being read: coordinates as flat arrays of doubles, where it and each of its segments began."""

    kind: Literal["track", "route"]
    line: int
    title: str = ""
    lat: array[float] = field(default_factory=lambda: array("d"))
    lon: array[float] = field(default_factory=lambda: array("d"))
    height: array[float] = field(default_factory=lambda: array("d"))
    segments: list[int] = field(default_factory=list)


def choose(lines: list[RawLine], file: str) -> list[RawLine]:
    """The lines that make the course: tracks, else routes. Errors: CourseError where there are none."""
    usable = [line for line in lines if len(line.lat) >= 2]
    kept = [line for line in usable if line.kind == "track"] or usable
    if not kept:
        raise CourseError(
            say("wrong-file-no-track-no-route"),
            file=file,
            remedy=say("do-export-course-itself-not-only"),
        )
    return kept


def _titles(lines: list[RawLine], file: str) -> str:
    return ", ".join(repr(line.title) if line.title else f"{file}:{line.line}" for line in lines[:8])


def joined(
    lines: list[RawLine], file: str, waypoints: list[Waypoint], warnings: list[Worded], stages: bool
) -> Track:
    """One Track of the chosen lines, in the file's order; in a race in `stages` it may go on elsewhere. Errors: CourseError
    where the lines of any other lie apart."""
    for before, after in pairwise(lines):
        gap_m = rough_distance_m(before.lat[-1], before.lon[-1], after.lat[0], after.lon[0])
        if gap_m > JOIN_M and not stages:
            raise CourseError(
                say(
                    "wrong-file-holds-s-do-not",
                    count=len(lines),
                    kind=lines[0].kind,
                    lines=_titles(lines, file),
                    gap_km=f"{gap_m / 1000:.1f}",
                ),
                file=file,
                line=after.line,
                remedy=say("do-leave-only-line-that-is-course"),
            )
    lat, lon, height = (
        _frozen(np.concatenate([np.frombuffer(getattr(line, part)) for line in lines]))
        for part in ("lat", "lon", "height")
    )
    if len(lines) > 1:
        warnings = [
            *warnings,
            say(
                "wrong-s-joined", file=file, count=len(lines), kind=lines[0].kind, lines=_titles(lines, file)
            ),
        ]
    rides = _rides(lines, lat, lon) if stages else ()
    return Track(
        file, lines[0].title, lines[0].kind, lat, lon, height, tuple(waypoints), tuple(warnings), rides
    )


def _rides(lines: list[RawLine], lat: Floats, lon: Floats) -> tuple[int, ...]:
    before = accumulate((len(line.lat) for line in lines), initial=0)
    begun = {n + s for n, line in zip(before, lines, strict=False) for s in (0, *line.segments)} - {
        0,
        len(lat),
    }
    return tuple(
        i for i in sorted(begun) if rough_distance_m(lat[i - 1], lon[i - 1], lat[i], lon[i]) > JOIN_M
    )


def _frozen(values: Floats) -> Floats:
    values.setflags(write=False)
    return values


def rough_distance_m(lat1: float, lon1: float, lat2: float, lon2: float) -> float:
    """Great-circle distance in metres on a sphere, up to 0.6% off: for 'are these near', not for lengths."""
    a, b = math.radians(lat1), math.radians(lat2)
    half = (
        math.sin((b - a) / 2) ** 2 + math.cos(a) * math.cos(b) * math.sin(math.radians(lon2 - lon1) / 2) ** 2
    )
    return 2 * 6_371_008.8 * math.asin(math.sqrt(min(1.0, half)))
