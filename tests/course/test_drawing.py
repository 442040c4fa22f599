"""Pictures have few corners and lie nowhere by more than they say."""

from __future__ import annotations

from collections.abc import Callable
from itertools import pairwise
from typing import Any

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st
from hypothesis.extra import numpy as hnp

from server.course import Course, Paper, outline, profile
from server.course.drawing import simplify

Make = Callable[..., Course]
Straight = Callable[..., list[tuple[float, float]]]


def test_a_square_has_five_corners(make_course: Make, straight: Straight) -> None:
    """A square is drawn with its corners, in km about its middle."""
    course = make_course(straight([(0, 0), (4_000, 0), (4_000, 4_000), (0, 4_000), (0, 0)], 10.0))
    corners = outline(course, 30.0)
    assert [(c.east_km, c.north_km) for c in corners] == [
        pytest.approx(place, abs=0.02) for place in [(-2, -2), (2, -2), (2, 2), (-2, 2), (-2, -2)]
    ]
    assert [c.km for c in corners] == pytest.approx([0, 4, 8, 12, 16], abs=0.03)


def test_positions_go_on_the_same_paper(demo_course: Course) -> None:
    """A place drawn by Paper lies on the outline where the course has it."""
    paper = Paper.of(demo_course)
    corner = outline(demo_course)[40]
    spot = demo_course.at(corner.km)
    assert paper.place(spot.lat_deg, spot.lon_deg) == pytest.approx(
        (corner.east_km, corner.north_km), abs=1e-3
    )


def test_the_demo_is_small_enough_for_a_page(demo_course: Course) -> None:
    """A hundred miles take a few hundred corners, ends included."""
    corners, heights = outline(demo_course), profile(demo_course, 5.0)
    assert 50 < len(corners) < 600
    assert 50 < len(heights) < 600
    assert corners[-1].km == heights[-1].km == demo_course.length_km


def test_the_profile_is_true_to_its_tolerance(demo_course: Course) -> None:
    """Nowhere is the drawn height further from the course's than the tolerance."""
    drawn = profile(demo_course, 4.0)
    heights = np.interp(demo_course.km, [p.km for p in drawn], [p.height_m for p in drawn])
    assert np.abs(heights - demo_course.height_m).max() <= 4.0


def test_no_heights_no_profile(make_course: Make, straight: Straight) -> None:
    """Without heights there is nothing to draw."""
    assert profile(make_course(straight([(0, 0), (5_000, 0)]))) == ()


@given(
    xy=hnp.arrays(np.float64, st.tuples(st.integers(2, 60), st.just(2)), elements=st.floats(-100, 100)),
    tolerance=st.floats(0.1, 50),
)
def test_every_vertex_left_out_is_near_its_chord(xy: Any, tolerance: float) -> None:
    """Whatever the line, the ends are kept, order is kept, and what is left out is within the tolerance."""
    kept = simplify(xy, tolerance)
    assert kept[0] == 0
    assert kept[-1] == len(xy) - 1
    assert kept == sorted(set(kept))
    for first, last in pairwise(kept):
        chord = xy[last] - xy[first]
        for vertex in xy[first + 1 : last]:
            square = float(chord @ chord)
            part = min(1.0, max(0.0, float((vertex - xy[first]) @ chord) / square)) if square else 0.0
            assert np.hypot(*(vertex - xy[first] - part * chord)) <= tolerance + 1e-9


@pytest.mark.parametrize("tolerance", [0.0, -1.0, float("nan")])
def test_a_tolerance_is_above_zero(tolerance: float) -> None:
    """No tolerance, no simplifying."""
    with pytest.raises(ValueError, match="is not above 0"):
        simplify(np.zeros((3, 2)), tolerance)
