"""How long the course room takes, each as a ratio to a baseline in the same run.

Run `.venv/bin/python tests/bench/bench_course.py`. Ends with 1 where loading 100,000 points costs more than LIMIT
bare expat passes over the same bytes: machines differ, the ratio hardly does.
"""

from __future__ import annotations

import sys
import time
import tracemalloc
from collections.abc import Callable
from datetime import timedelta
from pathlib import Path
from xml.parsers import expat

import numpy as np

sys.path.insert(0, str(Path(__file__).parents[2]))

from server.course import (
    PositionPrior,
    WantedPoint,
    build_course,
    outline,
    place_points,
    place_position,
    profile,
    read_gpx,
)

POINTS = 100_000
LIMIT = 6.0


def recording(points: int) -> bytes:
    """A GPX file of a winding, hilly line recorded each second, with times and noise."""
    rng = np.random.default_rng(7)
    turn = np.linspace(0, 40 * np.pi, points)
    lat = 54.9 + 0.1 * np.sin(turn / 7) + 0.02 * np.sin(turn) + rng.normal(0, 8e-6, points)
    lon = -2.6 + 0.3 * np.cos(turn / 20) + 0.02 * np.cos(turn) + rng.normal(0, 8e-6, points)
    height = 400 + 250 * np.sin(turn) + rng.normal(0, 0.7, points)
    body = "\n".join(
        f'<trkpt lat="{a:.7f}" lon="{b:.7f}"><ele>{h:.1f}</ele><time>2026-06-20T05:00:00Z</time></trkpt>'
        for a, b, h in zip(lat, lon, height, strict=True)
    )
    head = '<gpx version="1.1" xmlns="http://www.topografix.com/GPX/1/1"><trk><trkseg>'
    return f"{head}\n{body}\n</trkseg></trk></gpx>".encode()


def best_s(work: Callable[[], object], times: int = 5) -> float:
    """The shortest of several runs, in seconds: the one least disturbed."""
    taken = []
    for _ in range(times):
        begun = time.perf_counter()
        work()
        taken.append(time.perf_counter() - begun)
    return min(taken)


def bare_expat(data: bytes) -> None:
    """The baseline: expat with handlers that do nothing."""
    parser = expat.ParserCreate()
    parser.buffer_text = True
    parser.StartElementHandler = parser.EndElementHandler = parser.CharacterDataHandler = lambda *_: None
    parser.Parse(data, True)


def peak_mb(work: Callable[[], object]) -> float:
    """The most memory Python and numpy held at once while working, in MB."""
    tracemalloc.start()
    work()
    _, peak = tracemalloc.get_traced_memory()
    tracemalloc.stop()
    return peak / 1e6


def main() -> int:
    """Prints the table; 0 if loading is within LIMIT."""
    data = recording(POINTS)
    baseline = best_s(lambda: bare_expat(data))
    print(f"baseline: bare expat over {len(data) / 1e6:.1f} MB, {POINTS:,} points: {baseline * 1000:.0f} ms")
    track = read_gpx(data, "bench.gpx")
    course = build_course(track)
    spot = course.at(course.length_km / 2)
    prior = PositionPrior.since(spot.km - 3, timedelta(minutes=30), 4, 9)
    wanted = [WantedPoint(str(n), km=course.length_km * n / 14) for n in range(14)]
    rows: dict[str, Callable[[], object]] = {
        "GPX load (read)": lambda: read_gpx(data, "bench.gpx"),
        "GPX load (read and build)": lambda: build_course(read_gpx(data, "bench.gpx")),
        "build alone": lambda: build_course(track),
        "place 14 points": lambda: place_points(course, wanted),
        "place one position": lambda: place_position(course, spot.lat_deg, spot.lon_deg, 10, prior),
        "outline and profile": lambda: (outline(course), profile(course)),
    }
    ratios = {}
    for name, work in rows.items():
        taken = best_s(work)
        ratios[name] = taken / baseline
        print(f"{name:28s} {taken * 1000:9.2f} ms   {ratios[name]:8.3f} x baseline   {peak_mb(work):6.1f} MB")
    return 0 if ratios["GPX load (read and build)"] <= LIMIT else 1


if __name__ == "__main__":
    sys.exit(main())
