"""Distance, height and gradient of the course, and what it says when something is missing."""

from __future__ import annotations

from collections.abc import Callable
from itertools import pairwise
from typing import Any

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from demo_event.make_route import make
from server.course import Course, CourseError, Track, build_course, read_gpx
from server.course.line import along_m, wrapped

Make = Callable[..., Course]
Straight = Callable[..., list[tuple[float, float]]]

GEODESICS = {
    # Karney 2013, J Geodesy 87:43, the near-antipodal example.
    "Karney 2013": ((-30.0, 0.0), (29.9, 179.8), 19_989_832.82761, 5e-6),
    # GeodTest.dat, first line (Karney 2010, doi 10.5281/zenodo.32156), to the digits the test set gives.
    "GeodTest line 1": (
        (36.530042355041, 0.0),
        (-48.164270779097769, 5.762344694676510),
        9_398_502.0434687,
        5e-8 * 10,
    ),
    # The metre's old meaning, for the eye: a quarter of the meridian on WGS 84 (memory).
    "equator to pole": ((0.0, 10.0), (90.0, 10.0), 10_001_965.729, 1e-3),
}


@pytest.mark.parametrize(("start", "end", "metres", "within"), GEODESICS.values(), ids=GEODESICS)
def test_distances_are_geodesics_on_wgs_84(
    start: tuple[float, float], end: tuple[float, float], metres: float, within: float
) -> None:
    """Distances agree with the published figures to their last digit."""
    lat, lon = np.array([start, end]).T
    assert along_m(lat, lon)[-1] == pytest.approx(metres, abs=within)


def test_the_line_is_as_long_as_the_ground(make_course: Make, straight: Straight) -> None:
    """A square of 2 km sides is 8 km round, in even steps, and km run from 0 to the end."""
    course = make_course(straight([(0, 0), (2_000, 0), (2_000, 2_000), (0, 2_000), (0, 0)]))
    assert course.length_km == pytest.approx(8.0, abs=0.002)
    assert course.km[0] == 0.0
    np.testing.assert_allclose(np.diff(course.km) * 1000, course.step_m)
    assert 24 < course.step_m <= 25


def test_standing_still_makes_no_distance(make_course: Make) -> None:
    """An hour at an aid station, recorded each second within a few metres, adds less than 100 m."""
    rng = np.random.default_rng(5)
    way = [(x, 0.0) for x in np.arange(0, 1_000, 3.0)]
    rest = [(1_000 + dx, dy) for dx, dy in rng.normal(0, 2.0, (3_600, 2))]
    back = [(1_000 + x, 0.0) for x in np.arange(0, 1_000, 3.0)]
    assert make_course(way + rest + back).measured_km == pytest.approx(2.0, abs=0.1)


def test_where_a_km_is(make_course: Make, straight: Straight, on_ground: Any) -> None:
    """at(km) gives place, height and gradient there, and holds km within the course."""
    xy = straight([(0, 0), (4_000, 0)], 20.0)
    course = make_course(xy, [0.1 * x for x, _ in xy])
    spot = course.at(1.5)
    assert (spot.lat_deg, spot.lon_deg) == pytest.approx(on_ground(1_500, 0), abs=1e-5)
    assert spot.height_m == pytest.approx(150, abs=1)
    assert spot.gradient == pytest.approx(0.1, abs=0.002)
    assert course.at(-3).km == 0.0
    assert course.at(99).km == course.length_km
    with pytest.raises(ValueError, match="km is not a number"):
        course.at(float("nan"))


@given(cuts=st.lists(st.floats(0, 161), min_size=1, max_size=6))
def test_climbs_of_parts_add_up(demo_course: Course, cuts: list[float]) -> None:
    """However the course is cut, its parts' ascent and descent add up to the whole and to the heights'
    difference."""
    edges = [0.0, *sorted(cuts), demo_course.length_km]
    parts = [demo_course.climb(a, b) for a, b in pairwise(edges)]
    up = sum(part.up_m for part in parts if part)
    down = sum(part.down_m for part in parts if part)
    assert up == pytest.approx(demo_course.ascent_m)
    assert down == pytest.approx(demo_course.descent_m)
    assert up - down == pytest.approx(demo_course.height_m[-1] - demo_course.height_m[0])
    assert all(part is not None and part.up_m >= 0 and part.down_m >= 0 for part in parts)


def test_a_climb_backwards_is_refused(demo_course: Course) -> None:
    """From must not lie behind to."""
    with pytest.raises(ValueError, match="from_km 5 is not before to_km 4"):
        demo_course.climb(5, 4)


def test_stated_km_stretches_the_line(make_course: Make, straight: Straight) -> None:
    """Where the organiser says 10.5 km of a line of 10, every km is the organiser's; gradients stay the
    ground's."""
    xy = straight([(0, 0), (10_000, 0)], 20.0)
    course = make_course(xy, [0.1 * x for x, _ in xy], stated_km=10.5)
    assert course.length_km == pytest.approx(10.5)
    assert course.measured_km == pytest.approx(10.0, abs=0.001)
    assert course.stated(5.0) == pytest.approx(5.25, abs=0.001)
    assert course.measured(5.25) == pytest.approx(5.0, abs=0.001)
    assert course.at(5.25).height_m == pytest.approx(500, abs=1)
    assert course.step_gradient.mean() == pytest.approx(0.1, abs=1e-3)
    assert course.ascent_m == pytest.approx(1_000, abs=1)


@pytest.mark.parametrize("stated", [0.0, -10.0, 8.9, 11.2, float("nan"), float("inf")])
def test_another_length_is_another_course(make_course: Make, straight: Straight, stated: float) -> None:
    """A stated distance far from the measured one is refused with both figures."""
    with pytest.raises(CourseError, match=r"the line measures 10\.0 km, but .* km are stated"):
        make_course(straight([(0, 0), (10_000, 0)]), stated_km=stated)


def test_without_heights_the_course_works_and_says_so(make_course: Make, straight: Straight) -> None:
    """Distance and places are there, gradients are flat, ascent is unknown rather than zero, and a warning
    says it."""
    course = make_course(straight([(0, 0), (5_000, 0)]))
    assert not course.has_heights
    assert (course.ascent_m, course.descent_m, course.climb(0, 2)) == (None, None, None)
    assert course.at(2).height_m is None
    assert not course.step_gradient.any()
    assert course.length_km == pytest.approx(5.0, abs=0.001)
    assert "the route has no heights: gradient and ascent are unknown" in str(course.warnings[0])


def test_heights_of_zero_are_no_heights(make_course: Make, straight: Straight) -> None:
    """A file that says 0 m everywhere has no heights, whatever it claims."""
    xy = straight([(0, 0), (5_000, 0)])
    course = make_course(xy, [0.0] * len(xy))
    assert not course.has_heights
    assert "every height is 0" in str(course.warnings[0])


def test_few_heights_are_none_and_a_gap_is_bridged(write_gpx: Any, straight: Straight) -> None:
    """With heights on a few points only there are none; a gap of 2 km is drawn straight, and both are
    said."""
    xy = straight([(0, 0), (10_000, 0)])
    lines = write_gpx(xy, [100 + 0.02 * x for x, _ in xy]).decode().split("\n")
    first = 2

    def without(gone: range) -> Course:
        text = [
            line.split("<ele>")[0] + "</trkpt>" if i - first in gone else line for i, line in enumerate(lines)
        ]
        return build_course(read_gpx("\n".join(text).encode(), "gaps.gpx"))

    few = without(range(10, len(xy)))
    assert not few.has_heights
    assert "only 5% of the points have heights" in str(few.warnings[0])
    gap = without(range(40, 81))
    assert gap.has_heights
    assert tuple(map(str, gap.warnings)) == ("gaps.gpx: no heights from km 1.9 to 4.0; drawn straight there",)
    assert gap.ascent_m == pytest.approx(200, abs=1)


def test_a_hole_in_a_dense_line_is_said(make_course: Make, straight: Straight) -> None:
    """Where a recording has a hole of kilometres the person is told at which km."""
    course = make_course(straight([(0, 0), (3_000, 0)]) + straight([(8_000, 0), (10_000, 0)]))
    assert "straight for 5.0 km from km 3.0; points are missing" in str(course.warnings[0])


SEGMENT, NEW_TRACK = "</trkseg><trkseg>", "</trkseg></trk><trk><trkseg>"


@pytest.mark.parametrize("tags", [SEGMENT, NEW_TRACK])
def test_the_way_to_the_next_stages_start_is_not_run(write_gpx: Any, straight: Straight, tags: str) -> None:
    """Two stages of 3 and 2 km that climb 30 and 20 m, 5 km and 400 m of height apart: 5 km and 50 m in all."""
    first, second = straight([(0, 0), (3_000, 0)]), straight([(8_000, 0), (10_000, 0)])
    heights = [*np.linspace(100, 130, len(first)), *np.linspace(530, 550, len(second))]
    data = write_gpx(first + second, heights, breaks={len(first): tags})
    course = build_course(read_gpx(data, "two.gpx", stages=True))
    assert course.length_km == pytest.approx(5.0, abs=0.01)
    assert course.rides == (pytest.approx((3.0, 5.0), abs=0.01),)
    climb = course.climb(0.0, 5.0)
    assert climb is not None
    assert (climb.up_m, climb.down_m) == (pytest.approx(50, abs=2), pytest.approx(0, abs=1))
    assert abs(course.step_gradient).max() < 0.02
    assert (course.at(2.9).height_m, course.at(3.1).height_m) == pytest.approx((129, 531), abs=2)
    assert not any("straight" in str(w) for w in course.warnings)


def test_without_stages_a_break_is_run_or_refused(write_gpx: Any, straight: Straight) -> None:
    """Segments of one track are one line, tracks that lie apart are none, and the remedy speaks of stages."""
    xy = straight([(0, 0), (3_000, 0)]) + straight([(8_000, 0), (10_000, 0)])
    at = next(n for n, (x, _) in enumerate(xy) if x == 8_000)
    course = build_course(read_gpx(write_gpx(xy, breaks={at: SEGMENT}), "two.gpx"))
    assert course.length_km == pytest.approx(10.0, abs=0.01)
    with pytest.raises(CourseError) as refused:
        read_gpx(write_gpx(xy, breaks={at: NEW_TRACK}), "two.gpx")
    assert "next_stage" in str(refused.value.remedy)


LENGTHS = {
    "one place": ([(0.0, 0.0), (3.0, 0.0)], "the line is 0 m long"),
    "short": ([(0.0, 0.0), (60.0, 0.0)], "the line is 60 m long"),
}


@pytest.mark.parametrize(("xy", "words"), LENGTHS.values(), ids=LENGTHS)
def test_a_line_too_short_is_refused(make_course: Make, xy: Any, words: str) -> None:
    """A line of metres is no course."""
    with pytest.raises(CourseError, match=words):
        make_course(xy)


def test_a_line_round_the_world_is_refused() -> None:
    """Points all over the earth are no course."""
    points = "".join(f'<trkpt lat="0" lon="{lon}"/>' for lon in (0, 90, 179, -90))
    data = f"<gpx><trk><trkseg>{points}</trkseg></trk></gpx>".encode()
    with pytest.raises(CourseError, match=r"km long, as when points stand in the wrong order"):
        build_course(read_gpx(data, "world.gpx"))


def test_the_date_line_is_no_edge() -> None:
    """A course across 180 degrees is as long as anywhere, and its places are in range."""
    lons = [179.95, 179.98, -179.99, -179.96]
    points = "".join(f'<trkpt lat="-17" lon="{lon}"/>' for lon in lons)
    data = f"<gpx><trk><trkseg>{points}</trkseg></trk></gpx>".encode()
    course = build_course(read_gpx(data, "fiji.gpx"))
    assert course.length_km == pytest.approx(0.09 * 111.32 * np.cos(np.radians(17)), rel=0.005)
    assert all(-180 <= course.at(km).lon_deg <= 180 for km in np.linspace(0, course.length_km, 20))
    box = course.box()
    assert (box.west_deg, box.east_deg) == pytest.approx((179.95, -179.96))


@given(lon=st.floats(-1000, 1000))
def test_wrapped_longitudes_are_in_range_and_the_same_place(lon: float) -> None:
    """Wrapping changes a longitude by whole turns only."""
    assert -180 <= wrapped(lon) <= 180
    assert (wrapped(lon) - lon) / 360 == pytest.approx(round((wrapped(lon) - lon) / 360), abs=1e-9)


def test_arrays_cannot_be_changed(demo_course: Course) -> None:
    """A course is a value."""
    with pytest.raises(ValueError, match="read-only"):
        demo_course.km[0] = 1.0


def test_step_out_of_range_is_refused(demo_track: Track) -> None:
    """Steps are 5 to 200 m."""
    with pytest.raises(ValueError, match="step_m 1 is outside 5 to 200"):
        build_course(demo_track, step_m=1)


def test_the_demo_course_is_the_ground_it_was_made_of(demo_course: Course) -> None:
    """The noisy recording of the demo gives the true length within 0.5%, ascent within 3%, heights within 5
    m."""
    ground, _ = make()
    assert demo_course.measured_km * 1000 == pytest.approx(ground.along_m[-1], rel=0.005)
    assert demo_course.ascent_m == pytest.approx(ground.ascent_m, rel=0.03)
    share = np.linspace(0, 1, len(demo_course.km))
    true = np.interp(share * ground.along_m[-1], ground.along_m, ground.height_m)
    assert np.sqrt(np.mean((demo_course.height_m - true) ** 2)) < 5


def test_the_step_hardly_matters(demo_track: Track, demo_course: Course) -> None:
    """Steps of 10 and 50 m give the ascent of 25 m within 2%."""
    for step_m in (10.0, 50.0):
        assert build_course(demo_track, step_m=step_m).ascent_m == pytest.approx(
            demo_course.ascent_m, rel=0.02
        )
