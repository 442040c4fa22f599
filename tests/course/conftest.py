"""Courses made of simple shapes, so that a test can say in metres what must come out."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from pathlib import Path
from typing import Any

import numpy as np
import pytest
from pyproj import Proj

from server.course import Course, Track, build_course, read_gpx

ROOT = Path(__file__).parents[2]
LAT, LON = 50.0, 10.0


@pytest.fixture(scope="session")
def write_gpx() -> Callable[..., bytes]:
    """A writer of GPX 1.1: metres east and north of 50 N 10 E, heights or None, waypoints by name."""
    to_lonlat = Proj(proj="aeqd", lat_0=LAT, lon_0=LON, datum="WGS84")

    def degrees(east_m: float, north_m: float) -> str:
        lon, lat = to_lonlat(east_m, north_m, inverse=True)
        return f'lat="{lat:.8f}" lon="{lon:.8f}"'

    def write(
        xy: Sequence[tuple[float, float]],
        heights: Sequence[float] | None = None,
        waypoints: dict[str, tuple[float, float]] | None = None,
        breaks: dict[int, str] | None = None,
    ) -> bytes:
        tall = [""] * len(xy) if heights is None else [f"<ele>{height:.3f}</ele>" for height in heights]
        places = [f"<wpt {degrees(*at)}><name>{name}</name></wpt>" for name, at in (waypoints or {}).items()]
        points = [f"<trkpt {degrees(*at)}>{ele}</trkpt>" for at, ele in zip(xy, tall, strict=True)]
        for index, tags in (breaks or {}).items():
            points[index] = tags + points[index]
        return (
            '<gpx version="1.1" xmlns="http://www.topografix.com/GPX/1/1">\n'
            + "\n".join([*places, "<trk><trkseg>", *points, "</trkseg></trk></gpx>"])
        ).encode()

    return write


@pytest.fixture(scope="session")
def make_course(write_gpx: Callable[..., bytes]) -> Callable[..., Course]:
    """A maker of courses from the same things as write_gpx, with build_course's options."""

    def make(xy: Any, heights: Any = None, waypoints: Any = None, **options: Any) -> Course:
        return build_course(read_gpx(write_gpx(xy, heights, waypoints), "shape.gpx"), **options)

    return make


@pytest.fixture(scope="session")
def on_ground() -> Callable[[float, float], tuple[float, float]]:
    """Latitude and longitude of a place in metres east and north of the middle of the shapes."""
    to_lonlat = Proj(proj="aeqd", lat_0=LAT, lon_0=LON, datum="WGS84")

    def place(east_m: float, north_m: float) -> tuple[float, float]:
        lon, lat = to_lonlat(east_m, north_m, inverse=True)
        return float(lat), float(lon)

    return place


@pytest.fixture(scope="session")
def straight() -> Callable[..., list[tuple[float, float]]]:
    """A polyline through corners with a point every step_m metres and at each corner."""

    def line(corners: Sequence[tuple[float, float]], step_m: float = 50.0) -> list[tuple[float, float]]:
        xy = np.asarray(corners, dtype=float)
        along = np.concatenate([[0.0], np.cumsum(np.hypot(*np.diff(xy, axis=0).T))])
        at = np.unique(np.concatenate([np.arange(0.0, along[-1], step_m), along]))
        return list(zip(np.interp(at, along, xy[:, 0]), np.interp(at, along, xy[:, 1]), strict=True))

    return line


@pytest.fixture(scope="session")
def demo_track() -> Track:
    """The demo's route as it is in the project."""
    return read_gpx((ROOT / "demo_event" / "route.gpx").read_bytes(), "route.gpx")


@pytest.fixture(scope="session")
def demo_course(demo_track: Track) -> Course:
    """The demo's course."""
    return build_course(demo_track)
