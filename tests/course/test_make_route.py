"""The demo's route is the one its script makes, and is what the demo needs."""

from __future__ import annotations

from pathlib import Path

import numpy as np
import pytest

from demo_event.make_route import ASCENT_M, LENGTH_M, make, places
from server.course import Track, read_gpx


def test_the_file_is_what_the_script_makes(demo_track: Track) -> None:
    """route.gpx comes from make_route.py: places within 10 cm, heights within 20 cm, on any machine."""
    _, text = make()
    made = read_gpx(text.encode(), "made.gpx")
    np.testing.assert_allclose(made.lat_deg, demo_track.lat_deg, atol=1e-6)
    np.testing.assert_allclose(made.lon_deg, demo_track.lon_deg, atol=1.5e-6)
    np.testing.assert_allclose(made.height_m, demo_track.height_m, atol=0.2)
    assert [w.name for w in made.waypoints] == [w.name for w in demo_track.waypoints]


def test_the_ground_is_a_hundred_miles_of_hills() -> None:
    """The true line is 100 miles within 20 m, climbs what it says, and nowhere steeper than a path can be."""
    ground, _ = make()
    assert ground.along_m[-1] == pytest.approx(LENGTH_M, abs=20)
    assert ground.ascent_m == pytest.approx(ASCENT_M, abs=1)
    assert np.abs(np.diff(ground.height_m) / np.diff(ground.along_m)).max() < 0.4
    assert len(places(ground)) == 12


def test_both_passes_of_the_spur_are_one_path() -> None:
    """The way to Corrie Chapel and back is the same ground: places and heights mirror about the turn."""
    ground, _ = make()
    before = np.arange(ground.stile_m + 100, ground.chapel_m - 100, 50)
    after = 2 * ground.chapel_m - before
    for values in (ground.east_m, ground.north_m, ground.height_m):
        there = np.interp(before, ground.along_m, values)
        back = np.interp(after, ground.along_m, values)
        np.testing.assert_allclose(there, back, atol=5.0)


def test_the_file_is_of_the_promised_size() -> None:
    """About 5,000 points, in a file that a repository can hold."""
    path = Path(__file__).parents[2] / "demo_event" / "route.gpx"
    assert path.stat().st_size < 500_000
    assert len(read_gpx(path.read_bytes(), "route.gpx").lat_deg) == 5_000
