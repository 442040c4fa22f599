"""What the plan's tests share: the demo's course, a plain event on it, terrain made to measure."""

from __future__ import annotations

from collections.abc import Callable
from datetime import UTC, datetime, timedelta
from pathlib import Path

import numpy as np
import pytest

from server.course import Course, build_course, read_gpx
from server.event.model import (
    Contact,
    CourseDef,
    Event,
    Point,
    PointKind,
    Rules,
    Runner,
    Stretch,
    Target,
)
from server.plan.light import Sky, sky_over
from server.plan.pace import Terrain

ROOT = Path(__file__).resolve().parents[2]
START = datetime(2027, 6, 19, 4, 30, tzinfo=UTC)
KM = (0.0, 10.5, 21.0, 35.0, 45.0, 61.0, 74.0, 87.0, 100.5, 114.0, 128.0, 144.5, 161.0)


def gpx(points: list[tuple[float, float, float | None]]) -> bytes:
    """A track of (lat, lon, height or None)."""
    rows = "".join(
        f'<trkpt lat="{a:.7f}" lon="{o:.7f}">' + (f"<ele>{h:.2f}</ele>" if h is not None else "") + "</trkpt>"
        for a, o, h in points
    )
    return (
        '<gpx version="1.1" creator="t" xmlns="http://www.topografix.com/GPX/1/1"><trk><trkseg>'
        f"{rows}</trkseg></trk></gpx>"
    ).encode()


@pytest.fixture(scope="session")
def demo_course() -> Course:
    """The demo's 161 km over hills."""
    return build_course(read_gpx((ROOT / "demo_event/route.gpx").read_bytes(), "route.gpx"), stated_km=161.0)


@pytest.fixture(scope="session")
def level_course() -> Course:
    """50 km due north at one height."""
    points = [(50.0 + k * 0.0045, 10.0, 100.0) for k in range(100)]
    return build_course(read_gpx(gpx(points), "level.gpx"), stated_km=50.0)


@pytest.fixture(scope="session")
def bare_course() -> Course:
    """The same line without heights."""
    points = [(50.0 + k * 0.0045, 10.0, None) for k in range(100)]
    return build_course(read_gpx(gpx(points), "bare.gpx"), stated_km=50.0)


def make_points(km: tuple[float, ...], stop_minutes: float = 6.0) -> tuple[Point, ...]:
    """Points p0, p1 .. at km, start and finish marked."""
    last = len(km) - 1
    kinds = {0: PointKind.START, last: PointKind.FINISH}
    return tuple(
        Point(
            f"p{k}",
            f"Point {k}",
            at,
            frozenset({kinds.get(k, PointKind.AID_STATION)}),
            planned_stop=timedelta(minutes=stop_minutes if 0 < k < last else 0),
        )
        for k, at in enumerate(km)
    )


EventMaker = Callable[..., Event]


@pytest.fixture(scope="session")
def make_event() -> EventMaker:
    """An event with one runner 'maren': target, points, stretches and limits by keyword."""

    def make(
        target: Target,
        *,
        points: tuple[Point, ...] = make_points(KM),
        stretches: tuple[Stretch, ...] = (),
        limit: timedelta | None = timedelta(hours=36),
        start: datetime = START,
        **own: float,
    ) -> Event:
        runner = Runner("maren", "maren", "Maren", "214", "main", start, target, **own)
        course = CourseDef("main", "route.gpx", points, stretches)
        return Event(
            "e",
            "The Long Stile Hundred",
            "Europe/London",
            start,
            Rules(),
            (course,),
            (runner,),
            (),
            (),
            Contact("Race control", "+44 1632 960001"),
            "112",
            limit=limit,
        )

    return make


@pytest.fixture(scope="session")
def points_at() -> Callable[..., tuple[Point, ...]]:
    """`make_points`, for tests that need other points."""
    return make_points


@pytest.fixture(scope="session")
def terrain_of() -> Callable[..., Terrain]:
    """A terrain of given gradients, each step `step_m` long."""

    def make(gradients: list[float], step_m: float = 250.0, downhill_m_s: float = 20.0) -> Terrain:
        n = len(gradients)
        km = np.arange(n + 1) * step_m / 1000.0
        return Terrain(
            km,
            np.full(n, step_m),
            np.asarray(gradients, dtype=np.float64),
            np.full(n, downhill_m_s),
            np.zeros(n, dtype=np.bool_),
        )

    return make


@pytest.fixture(scope="session")
def long_day() -> Sky:
    """A sky without night for 40 h: far north at midsummer."""
    return sky_over(
        np.array([0.0, 200.0]), np.array([70.0, 70.0]), np.array([25.0, 25.0]), START, 40 * 3600.0
    )
