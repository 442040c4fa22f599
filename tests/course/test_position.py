"""A position is placed by what is known of the runner, and doubt is kept."""

from __future__ import annotations

import math
from collections.abc import Callable
from datetime import timedelta
from typing import Any

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from server.course import Course, PositionPrior, needed_kmh, place_position

Make = Callable[..., Course]
Straight = Callable[..., list[tuple[float, float]]]
HOUR = timedelta(hours=1)


@pytest.fixture(scope="module")
def out_and_back(make_course: Make, straight: Straight) -> Course:
    """10 km east and the same way back."""
    return make_course(straight([(0, 0), (10_000, 0), (0, 0)]))


@pytest.mark.parametrize(
    ("last_km", "hours", "expected"),
    [(0, 0.5, 4.0), (2, 0.3, 4.0), (9, 1.2, 16.0), (10, 1.0, 16.0), (15, 0.2, 16.0)],
)
def test_out_or_back_by_what_is_known(
    out_and_back: Course, on_ground: Any, last_km: float, hours: float, expected: float
) -> None:
    """4 km east of the start is km 4 or 16: when she was last where decides, with next to no doubt."""
    prior = PositionPrior.since(last_km, hours * HOUR, 4, 9)
    placed = place_position(out_and_back, *on_ground(4_000, 8), 10, prior)
    assert placed.km == pytest.approx(expected, abs=0.03)
    assert placed.weight > 0.95
    assert not placed.ambiguous


def test_even_against_the_nearer_pass(make_course: Make, straight: Straight, on_ground: Any) -> None:
    """Two passes 40 m apart: a fix nearer to the wrong one is still placed where she can be."""
    course = make_course(straight([(0, 0), (10_000, 0), (10_000, 40), (0, 40)]))
    placed = place_position(course, *on_ground(4_000, 30), 20, PositionPrior.since(0, 0.6 * HOUR, 5, 9))
    assert placed.km == pytest.approx(4.0, abs=0.05)
    assert placed.nearest_km == pytest.approx(16.04, abs=0.05)
    assert placed.offset_m == pytest.approx(30, abs=1)
    assert placed.nearest_offset_m == pytest.approx(10, abs=1)


def test_a_clear_fix_beats_what_was_thought(make_course: Make, straight: Straight, on_ground: Any) -> None:
    """400 m from where she should be and on the other path, a sharp fix wins: what was thought was wrong."""
    course = make_course(straight([(0, 0), (10_000, 0), (10_000, 400), (0, 400)]))
    placed = place_position(course, *on_ground(4_000, 400), 10, PositionPrior.since(0, 0.6 * HOUR, 5, 9))
    assert placed.km == pytest.approx(16.4, abs=0.05)
    assert not placed.ambiguous


def test_nothing_known_keeps_both(out_and_back: Course, on_ground: Any) -> None:
    """Without anything known of her both passes are listed with half the weight, and it is called
    ambiguous."""
    placed = place_position(out_and_back, *on_ground(4_000, 0), 10)
    (other,) = placed.alternatives
    assert placed.ambiguous
    assert sorted([placed.km, other.km]) == pytest.approx([4, 16], abs=0.03)
    assert placed.weight + other.weight == pytest.approx(1.0)
    assert placed.weight == pytest.approx(0.5, abs=0.02)


def test_a_hairpin_is_one_place(make_course: Make, straight: Straight, on_ground: Any) -> None:
    """Two legs of a zigzag 60 m apart and 160 m along are no ambiguity."""
    course = make_course(straight([(0, 0), (3_000, 0), (3_000, 60), (0, 60)], 20))
    placed = place_position(course, *on_ground(2_950, 30), 20)
    assert not placed.ambiguous
    assert placed.km == pytest.approx(3.0, abs=0.12)


@pytest.mark.parametrize(
    ("beside_m", "accuracy_m", "off"), [(60, 10, False), (90, 10, True), (90, 50, False)]
)
def test_off_course_is_beyond_accuracy_and_margin(
    out_and_back: Course, on_ground: Any, beside_m: float, accuracy_m: float, off: bool
) -> None:
    """Off course is said when no error of the fix explains the distance."""
    placed = place_position(
        out_and_back, *on_ground(4_000, beside_m), accuracy_m, PositionPrior.since(2, HOUR / 3, 4, 9)
    )
    assert placed.off_course is off
    assert placed.offset_m == pytest.approx(beside_m, abs=1)


def test_far_off_course_says_how_far_and_stays_open(out_and_back: Course, on_ground: Any) -> None:
    """3 km off the line where she left it is a guess: the spread says so, and the rest of what is known
    counts."""
    placed = place_position(
        out_and_back, *on_ground(6_000, 3_000), 10, PositionPrior.since(10, HOUR / 2, 4, 9)
    )
    assert placed.off_course
    assert placed.offset_m == pytest.approx(3_000, rel=0.01)
    assert placed.km == pytest.approx(13.5, abs=1.0)
    assert placed.spread_km > 0.5


def test_thirty_km_off_gives_the_numbers(out_and_back: Course, on_ground: Any) -> None:
    """A fix in another valley comes with its distance to the nearest part of the line."""
    placed = place_position(
        out_and_back, *on_ground(5_000, 30_000), 10, PositionPrior.since(2, HOUR / 3, 4, 9)
    )
    assert placed.off_course
    assert placed.nearest_offset_m == pytest.approx(30_000, rel=0.002)


def test_a_blurred_fix_moves_towards_what_is_known(out_and_back: Course, on_ground: Any) -> None:
    """With a fix good to 2 km, where she should be counts more than where the fix is, and the spread is
    wide."""
    prior = PositionPrior.since(2, HOUR / 2, 5, 7)
    sharp = place_position(out_and_back, *on_ground(7_000, 0), 10, prior)
    blurred = place_position(out_and_back, *on_ground(7_000, 0), 2_000, prior)
    assert sharp.km == pytest.approx(7.0, abs=0.03)
    assert 5.0 < blurred.km < 6.3
    assert blurred.spread_km > 0.3 > sharp.spread_km


def test_a_device_that_says_nothing_is_taken_as_fair(out_and_back: Course, on_ground: Any) -> None:
    """An unstated accuracy is 30 m."""
    fix = on_ground(4_000, 10)
    assert place_position(out_and_back, *fix) == place_position(out_and_back, *fix, 30.0)


@settings(max_examples=100, deadline=None)
@given(km=st.floats(0, 161), off=st.floats(0, 2 * math.pi), metres=st.floats(0, 60))
def test_a_runner_on_the_course_is_found_there(
    demo_course: Course, km: float, off: float, metres: float
) -> None:
    """Wherever on the demo she is, a fix and what was known half an hour before find her within 150 m.

    By the turn of the spur both ways can fit alike: then she is at one of the candidates, and where those are
    more than half a kilometre apart it is called ambiguous.
    """
    spot = demo_course.at(km)
    lat = spot.lat_deg + metres * math.sin(off) / 111_200
    lon = spot.lon_deg + metres * math.cos(off) / (111_300 * math.cos(math.radians(spot.lat_deg)))
    placed = place_position(demo_course, lat, lon, 30, PositionPrior.since(max(0.0, km - 3), HOUR / 2, 4, 9))
    assert not placed.off_course
    near_turn = 34 < spot.km < 42
    candidates = [placed.km, *(one.km for one in placed.alternatives)] if near_turn else [placed.km]
    assert min(abs(one - spot.km) for one in candidates) < 0.15
    assert placed.ambiguous <= near_turn
    assert placed.ambiguous or abs(placed.km - spot.km) < 0.65


@settings(max_examples=60, deadline=None)
@given(
    lat=st.floats(-90, 90),
    lon=st.floats(-180, 180),
    accuracy=st.floats(0, 1e6),
    knots=st.lists(st.floats(-50, 300), min_size=2, max_size=6, unique=True).map(sorted),
)
def test_any_fix_gets_sound_numbers(
    demo_course: Course, lat: float, lon: float, accuracy: float, knots: list[float]
) -> None:
    """Anywhere on earth, the answer's numbers are finite, weights make one, and km is on the course."""
    placed = place_position(demo_course, lat, lon, accuracy, PositionPrior(tuple(knots), (1.0,) * len(knots)))
    assert 0 <= placed.km <= demo_course.length_km
    assert math.isfinite(placed.offset_m)
    assert placed.offset_m >= placed.nearest_offset_m >= 0
    assert 0 < placed.weight + sum(one.weight for one in placed.alternatives) <= 1 + 1e-9
    assert all(one.weight <= placed.weight for one in placed.alternatives)


BAD_PRIORS = {
    "one knot": ((1.0,), (1.0,), "two at least"),
    "uneven": ((1.0, 2.0), (1.0,), "as many densities"),
    "falling": ((2.0, 1.0), (1.0, 1.0), "must rise"),
    "not a number": ((math.nan, 1.0), (1.0, 1.0), "must rise"),
    "negative": ((1.0, 2.0), (1.0, -1.0), "zero or more"),
    "all zero": ((1.0, 2.0), (0.0, 0.0), "not all zero"),
}


@pytest.mark.parametrize(("km", "density", "words"), BAD_PRIORS.values(), ids=BAD_PRIORS)
def test_a_prior_checks_itself(km: tuple[float, ...], density: tuple[float, ...], words: str) -> None:
    """A density that is none is refused when it is made."""
    with pytest.raises(ValueError, match=words):
        PositionPrior(km, density)


@pytest.mark.parametrize(
    ("elapsed", "slow", "fast"), [(-HOUR, 4, 9), (HOUR, 0, 9), (HOUR, 9, 4), (HOUR, 4, math.inf)]
)
def test_impossible_movement_is_refused(elapsed: timedelta, slow: float, fast: float) -> None:
    """Time must not run backwards, and speeds must be speeds."""
    with pytest.raises(ValueError, match="elapsed must not be negative"):
        PositionPrior.since(5, elapsed, slow, fast)


@pytest.mark.parametrize("accuracy", [-1.0, math.nan, math.inf])
def test_an_accuracy_that_is_none_is_refused(out_and_back: Course, accuracy: float) -> None:
    """An accuracy is a radius."""
    with pytest.raises(ValueError, match=r"accuracy .* is none"):
        place_position(out_and_back, 50, 10, accuracy)


@pytest.mark.parametrize(
    ("start", "end", "elapsed", "kmh"),
    [
        (10, 16, HOUR, 6.0),
        (16, 10, HOUR, -6.0),
        (10, 16, timedelta(0), math.inf),
        (10, 9, timedelta(0), -math.inf),
        (10, 10, timedelta(0), 0.0),
    ],
)
def test_needed_speed(start: float, end: float, elapsed: timedelta, kmh: float) -> None:
    """The speed a position implies, for whoever judges 'faster than anyone runs' and 'behind where she
    was'."""
    assert needed_kmh(start, end, elapsed) == kmh
