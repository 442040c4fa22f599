"""Noise makes no ascent, and what is ascent stays."""

from __future__ import annotations

from collections.abc import Callable
from itertools import pairwise
from typing import Any

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from hypothesis.extra import numpy as hnp

from server.course import Course
from server.course.heights import (
    LEAST_TURN_M,
    clean,
    monotone_between,
    noise_m,
    turning_points,
    without_spikes,
)

Make = Callable[..., Course]


def hill(x: Any, top_m: float = 300.0, length_m: float = 6_000.0) -> Any:
    """One hill: up to top_m in the middle, as the square of a sine."""
    return top_m * np.sin(np.pi * np.asarray(x) / length_m) ** 2


@settings(max_examples=25, deadline=None)
@given(seed=st.integers(0, 2**32 - 1), top_m=st.floats(120, 500), noise=st.floats(0, 1.5))
def test_a_hill_recorded_each_second_climbs_as_one_drawn_with_twenty_points(
    make_course: Make, seed: int, top_m: float, noise: float
) -> None:
    """The same hill as a noisy recording of thousands of points and as 20 points differs by 4% at most."""
    rng = np.random.default_rng(seed)
    drawn_x = np.linspace(0, 6_000, 20)
    drawn = make_course([(x, 0.0) for x in drawn_x], hill(drawn_x, top_m))
    # 1.7 m a second along the way, 2 m a second of wobble that GPS forgets in about half a minute.
    x = np.arange(0, 6_000, 1.7)
    wobble = np.zeros((len(x), 2))
    kicks = rng.normal(0, 2.0 * np.sqrt(1 - np.exp(-2 / 30)), (len(x), 2))
    for index in range(1, len(x)):
        wobble[index] = np.exp(-1 / 30) * wobble[index - 1] + kicks[index]
    heights = hill(x, top_m) + rng.normal(0, noise, len(x))
    recorded = make_course(list(zip(x + wobble[:, 0], wobble[:, 1], strict=True)), heights)
    assert recorded.measured_km == pytest.approx(drawn.measured_km, rel=0.03)
    assert recorded.ascent_m == pytest.approx(drawn.ascent_m, rel=0.04)
    assert recorded.descent_m == pytest.approx(drawn.descent_m, rel=0.04)
    assert drawn.ascent_m == pytest.approx(top_m, rel=0.04)


@settings(max_examples=25, deadline=None)
@given(
    seed=st.integers(0, 2**32 - 1), step_m=st.sampled_from([2.0, 5.0, 12.0, 30.0]), noise=st.floats(0, 1.0)
)
def test_flat_ground_stays_flat(make_course: Make, seed: int, step_m: float, noise: float) -> None:
    """Ten kilometres of level path recorded with noise climb less than one contour line."""
    x = np.arange(0, 10_000, step_m)
    heights = 80 + np.random.default_rng(seed).normal(0, noise, len(x))
    course = make_course([(at, 0.0) for at in x], heights)
    assert course.ascent_m is not None
    assert course.ascent_m < 5
    assert np.abs(course.step_gradient).max() < 0.06


@pytest.mark.parametrize("spacing_m", [3, 25, 100])
def test_rolling_ground_keeps_its_ascent(make_course: Make, spacing_m: int) -> None:
    """Five rises of 40 m come to 200 m within 3%, whatever the spacing of points."""
    x = np.arange(0, 10_000 + spacing_m, spacing_m, dtype=float)
    course = make_course([(at, 0.0) for at in x], 100 + 20 * np.sin(2 * np.pi * x / 2_000))
    assert course.ascent_m == pytest.approx(200, rel=0.03)


def test_an_even_slope_has_its_gradient_everywhere(make_course: Make) -> None:
    """Up at 12% for 3 km is 0.12 at every step, at the ends too: smoothing bends no slope."""
    x = np.arange(0, 3_001, 30.0)
    course = make_course([(at, 0.0) for at in x], 0.12 * x)
    np.testing.assert_allclose(course.step_gradient, 0.12, atol=1e-3)
    assert course.ascent_m == pytest.approx(360, abs=0.5)
    assert course.descent_m == 0.0


SPIKES: dict[str, tuple[dict[int, float], int]] = {
    "one sample up": ({50: 60.0}, 1),
    "one sample down": ({50: -40.0}, 1),
    "three samples": ({50: 30.0, 51: 31.0, 52: 29.0}, 1),
    "two apart": ({20: 60.0, 70: -60.0}, 2),
    "two side by side, opposite": ({50: 60.0, 51: -60.0}, 1),
    "small, left to smoothing": ({50: 5.0}, 0),
}


@pytest.mark.parametrize(("added", "count"), SPIKES.values(), ids=SPIKES)
def test_spikes_are_bridged(added: dict[int, float], count: int) -> None:
    """A jump that no ground makes and that comes back is bridged and counted; anything else is left."""
    along = np.arange(100) * 10.0
    ground = 0.05 * along
    heights = ground.copy()
    for index, size in added.items():
        heights[index] += size
    cleaned, spikes = without_spikes(along, heights)
    assert spikes == count
    np.testing.assert_allclose(cleaned, ground if count else heights, atol=0.6)


def test_a_step_that_stays_is_no_spike() -> None:
    """A barometer set anew steps once: that is not bridged, since nobody knows which side is right."""
    along = np.arange(100) * 10.0
    heights = np.where(along < 500, 100.0, 130.0)
    cleaned, spikes = without_spikes(along, heights)
    assert spikes == 0
    assert np.array_equal(cleaned, heights)


def test_a_coarse_summit_is_no_spike() -> None:
    """A summit drawn with three points half a kilometre apart stays."""
    along = np.array([0.0, 500.0, 1_000.0])
    heights = np.array([0.0, 400.0, 0.0])
    assert without_spikes(along, heights)[1] == 0


def test_spikes_while_standing_still_are_bridged_flat() -> None:
    """Where no way was made, a spike is replaced by the height before it."""
    along = np.array([0.0, 10.0, 10.0, 10.0, 20.0])
    cleaned, spikes = without_spikes(along, np.array([5.0, 5.0, 95.0, 5.0, 5.0]))
    assert (cleaned.tolist(), spikes) == ([5.0] * 5, 1)


def test_noise_is_measured_and_a_drawn_line_has_none() -> None:
    """White noise of 1 m a point at 25 m shows as its second difference, root 6; a drawn hill as next to
    none."""
    along = np.arange(0, 100_000, 25.0)
    white = np.random.default_rng(1).normal(0, 1.0, len(along))
    assert noise_m(along, white) == pytest.approx(np.sqrt(6), rel=0.05)
    assert noise_m(along, hill(along, 300, 10_000)) < 0.2


walks = hnp.arrays(np.float64, st.integers(2, 200), elements=st.floats(-100, 100))


@given(heights=walks, least=st.floats(0.5, 50))
def test_between_turning_points_no_reversal_counts(heights: Any, least: float) -> None:
    """Between neighbours among the turning points nothing turns by least_m or more; the ends belong to
    them."""
    turns = turning_points(heights, least)
    assert turns[0] == 0
    assert turns[-1] == len(heights) - 1
    assert all(before < after for before, after in pairwise(turns))
    for before, after in pairwise(turns):
        piece = heights[before : after + 1]
        if piece[-1] < piece[0]:
            piece = -piece
        assert (np.maximum.accumulate(piece) - piece).max() < least + 1e-9


@given(heights=walks, least=st.floats(0.5, 50))
def test_made_monotone_heights_keep_turning_points_and_never_climb_more(heights: Any, least: float) -> None:
    """Each piece rises or falls throughout, turning points within stay, and ascent only shrinks."""
    turns = turning_points(heights, least)
    result = monotone_between(heights, turns)
    np.testing.assert_array_equal(result[turns[1:-1]], heights[turns[1:-1]])
    for before, after in pairwise(turns):
        steps = np.diff(result[before : after + 1])
        assert (steps >= -1e-6).all() or (steps <= 1e-6).all()
    assert np.clip(np.diff(result), 0, None).sum() <= np.clip(np.diff(heights), 0, None).sum() + 1e-6


def test_reversals_below_the_least_make_no_ascent() -> None:
    """A wave lower than the least turn disappears from a slope, one higher stays."""
    along = np.arange(0, 6_000, 10.0)
    grid = np.arange(0, 5_976, 25.0)
    below = clean(along, 0.05 * along + 1.2 * np.sin(2 * np.pi * along / 400), grid)
    assert (np.diff(below) >= 0).all()
    above = clean(along, 3 * LEAST_TURN_M * np.sin(2 * np.pi * along / 1_000), grid)
    assert np.clip(np.diff(above), 0, None).sum() == pytest.approx(6 * 6 * LEAST_TURN_M, rel=0.06)
