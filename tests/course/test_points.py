"""Points stand on the line in running order, also where it crosses or repeats itself."""

from __future__ import annotations

import time
from collections.abc import Callable
from typing import Any

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from server.course import Course, WantedPoint, build_course, place_points, read_gpx
from server.course.passes import passes

Make = Callable[..., Course]
Straight = Callable[..., list[tuple[float, float]]]
Line = list[tuple[float, float]]


def at(*names: str) -> list[WantedPoint]:
    """Points given by waypoints of the same name, in order."""
    return [WantedPoint(name, waypoint=name) for name in names]


def kms(course: Course, wanted: list[WantedPoint]) -> list[float]:
    """The km of the placed points; fails with the mistakes where there are any."""
    placing = place_points(course, wanted)
    assert placing.mistakes == ()
    return [point.km for point in placing.points]


@pytest.fixture(scope="module")
def out_and_back(make_course: Make, straight: Straight) -> Course:
    """10 km east and the same way back, with waypoints a little beside the path."""
    return make_course(
        straight([(0, 0), (10_000, 0), (0, 0)]),
        waypoints={"Base": (0, 20), "Mill": (3_000, 30), "Barn": (7_000, -25), "Turn": (10_010, 5)},
    )


@pytest.fixture(scope="module")
def eight(make_course: Make, straight: Straight) -> Course:
    """A figure of eight: both loops 8 km, the crossing at km 0, 8 and 16, going different ways."""
    corners = [
        (0, 0),
        (2_000, 0),
        (2_000, 2_000),
        (0, 2_000),
        (0, -2_000),
        (-2_000, -2_000),
        (-2_000, 0),
        (0, 0),
    ]
    return make_course(
        straight(corners), waypoints={"Cross": (10, 10), "North": (2_000, 2_010), "South": (-2_000, -1_990)}
    )


def test_out_and_back_by_order_alone(out_and_back: Course) -> None:
    """Each place of an out-and-back named twice is first on the way out, then on the way back."""
    found = kms(out_and_back, at("Base", "Mill", "Barn", "Turn", "Barn", "Mill", "Base"))
    assert found == pytest.approx([0, 3, 7, 10, 13, 17, 20], abs=0.03)


@pytest.mark.parametrize(
    ("names", "expected"),
    [
        (("Mill", "Turn", "Barn"), [3, 10, 13]),
        (("Turn", "Mill"), [10, 17]),
        (("Barn", "Mill", "Turn"), None),
        (("Barn", "Mill"), None),
    ],
)
def test_neighbours_settle_the_pass_or_the_file_must(
    out_and_back: Course, names: tuple[str, ...], expected: list[float] | None
) -> None:
    """A place named once is where its neighbours leave room for it; where they leave none or two, it is a
    mistake."""
    placing = place_points(out_and_back, at(*names))
    if expected is None:
        assert placing.points == ()
        assert placing.mistakes
    else:
        assert [point.km for point in placing.points] == pytest.approx(expected, abs=0.03)


def test_a_pass_in_doubt_is_asked_for(out_and_back: Course) -> None:
    """Where two passes fit alike the mistake names both km and what to add; the km then settles it."""
    start, finish = WantedPoint("Start", end="start"), WantedPoint("Finish", end="finish")
    (mistake,) = place_points(out_and_back, [start, *at("Mill"), finish]).mistakes
    assert (mistake.index, mistake.field) == (1, "waypoint")
    assert str(mistake.what) == "the course comes by waypoint 'Mill' at km 3.0, 17.0"
    assert str(mistake.remedy) == "Add km = ... to say which pass is meant"
    for km in (3.4, 16.5):
        found = kms(out_and_back, [start, WantedPoint("Mill", km=km, waypoint="Mill"), finish])
        assert found[1] == pytest.approx(3 if km < 10 else 17, abs=0.03)


def test_a_crossing_is_passed_each_time(eight: Course) -> None:
    """The crossing of a figure of eight is start, middle and finish, by order alone."""
    found = kms(eight, at("Cross", "North", "Cross", "South", "Cross"))
    assert found == pytest.approx([0, 4, 8, 12, 16], abs=0.05)


def test_start_and_finish_are_the_ends(eight: Course) -> None:
    """Start and finish need no km, take a waypoint or a rounded km, and are the ends exactly."""
    for start, finish in (
        (WantedPoint("S", end="start"), WantedPoint("F", end="finish")),
        (WantedPoint("S", waypoint="Cross", end="start"), WantedPoint("F", waypoint="cross ", end="finish")),
        (WantedPoint("S", km=0, end="start"), WantedPoint("F", km=16.1, end="finish")),
    ):
        assert kms(eight, [start, *at("North"), finish])[::2] == [0.0, eight.length_km]


def test_two_tracks_side_by_side_are_told_apart_by_distance_only_if_clear(
    make_course: Make, straight: Straight
) -> None:
    """A place on one of two paths 150 m apart is on that one; half-way between it must be said."""
    course = make_course(
        straight([(0, 0), (5_000, 0), (5_000, 150), (0, 150)]),
        waypoints={"On": (2_000, 5), "Mid": (2_000, 75)},
    )
    assert kms(course, at("On")) == pytest.approx([2.0], abs=0.02)
    assert len(place_points(course, at("Mid")).mistakes) == 1


def test_many_waypoints_of_one_name(make_course: Make, straight: Straight) -> None:
    """Four places all called Water are taken in the order they are run."""
    text = straight([(0, 0), (9_000, 0)])
    course = make_course(text, waypoints={f"Water{n}": (2_000 * n, 0) for n in (3, 1, 4, 2)})
    waypoints = course.track.waypoints
    named = [place_points(course, at(waypoint.name)).points[0].km for waypoint in waypoints]
    assert named == pytest.approx([6, 2, 8, 4], abs=0.02)


def test_waypoints_that_share_a_name(write_gpx: Any, straight: Straight) -> None:
    """Places that share a name in the file are told apart by order."""
    data = write_gpx(straight([(0, 0), (9_000, 0)]), None, {"Water1": (6_000, 0), "Water2": (2_000, 0)})
    course = build_course(read_gpx(data.replace(b"Water1", b"Water").replace(b"Water2", b"Water"), "w.gpx"))
    assert kms(course, at("Water", "Water")) == pytest.approx([2, 6], abs=0.02)


@settings(deadline=None, max_examples=30)
@given(laps=st.integers(1, 5), places=st.lists(st.integers(1, 7), min_size=1, max_size=4, unique=True))
def test_laps_of_a_loop(make_course: Make, straight: Straight, laps: int, places: list[int]) -> None:
    """On any number of laps, the places of each lap named in order are at that lap's km."""
    corners: Line = [(0, 0)] + [(2_000, 0), (2_000, 2_000), (0, 2_000), (0, 0)] * laps
    spots = {f"P{place}": place for place in sorted(places)}

    def on_loop(km: int) -> tuple[float, float]:
        side, rest = divmod(km * 1_000, 2_000)
        return [(rest, 0), (2_000, rest), (2_000 - rest, 2_000), (0, 2_000 - rest)][side]  # type: ignore[return-value]

    course = make_course(straight(corners), waypoints={name: on_loop(km) for name, km in spots.items()})
    wanted = at(*(name for _ in range(laps) for name in spots))
    expected = [lap * 8 + km for lap in range(laps) for km in spots.values()]
    assert kms(course, wanted) == pytest.approx(expected, abs=0.06)


@settings(deadline=None, max_examples=60)
@given(data=st.data())
def test_points_rise_or_are_mistakes(demo_course: Course, data: st.DataObject) -> None:
    """Whatever is asked for, the answer is every point in strictly rising order, or mistakes with a
    remedy."""
    names = [waypoint.name for waypoint in demo_course.track.waypoints]
    wanted = data.draw(
        st.lists(
            st.builds(
                WantedPoint,
                name=st.just("x"),
                km=st.none() | st.floats(-10, 200) | st.just(float("nan")),
                waypoint=st.none() | st.sampled_from(names),
                end=st.sampled_from([None, None, "start", "finish"]),
            ),
            max_size=8,
        )
    )
    placing = place_points(demo_course, wanted)
    if placing.mistakes:
        assert placing.points == ()
        assert all(m.what and m.remedy and 0 <= m.index < len(wanted) for m in placing.mistakes)
    else:
        assert len(placing.points) == len(wanted)
        assert (np.diff([point.km for point in placing.points]) > 0).all()


MISTAKES = {
    "no such waypoint": (
        at("Mil"),
        "waypoint",
        "shape.gpx has no waypoint 'Mil'",
        "The nearest names are 'Mill'",
    ),
    "neither": ([WantedPoint("x")], "km", "neither km nor waypoint is given", "km = 21.3"),
    "beyond the finish": (
        [WantedPoint("x", km=25)],
        "km",
        "km 25 is not on the course, which is 20.0 km",
        "stated_km",
    ),
    "before the start": ([WantedPoint("x", km=-1)], "km", "km -1 is not on the course", "Correct the km"),
    "no number": ([WantedPoint("x", km=float("nan"))], "km", "km nan is not on the course", "Correct the km"),
    "km and waypoint apart": (
        [WantedPoint("x", km=9, waypoint="Mill")],
        "km",
        "km 9 is given, but waypoint 'Mill' is at km 3.0, 17.0",
        "leave it out",
    ),
    "wrong order by km": (
        [WantedPoint("a", km=5), WantedPoint("b", km=4)],
        "km",
        "'b' is at km 4.0, but 'a', which stands before it, is not before km 5.0",
        "running order",
    ),
    "the same km twice": (
        [WantedPoint("a", km=5), WantedPoint("b", km=5)],
        "km",
        "'b' is at km 5.0",
        "running order",
    ),
    "finish in the middle": (
        [WantedPoint("f", km=10, end="finish")],
        "km",
        "the finish is given as km 10",
        "Correct",
    ),
    "start elsewhere": (
        [WantedPoint("s", waypoint="Barn", end="start")],
        "waypoint",
        "waypoint 'Barn' is 7.0 km from the start of the line",
        "that has the start of the race",
    ),
    "unknown waypoint for the start": (
        [WantedPoint("s", waypoint="Nowhere", end="start")],
        "waypoint",
        "no waypoint 'Nowhere'",
        "The nearest names",
    ),
}


@pytest.mark.parametrize(("wanted", "field", "what", "remedy"), MISTAKES.values(), ids=MISTAKES)
def test_mistakes_say_what_and_what_to_do(
    out_and_back: Course, wanted: list[WantedPoint], field: str, what: str, remedy: str
) -> None:
    """Each wrong point gets the mistake that helps, at its field."""
    placing = place_points(out_and_back, wanted)
    mistake = placing.mistakes[-1]
    assert mistake.field == field
    assert what in str(mistake.what)
    assert remedy in str(mistake.remedy)


def test_a_place_off_the_course_says_how_far(make_course: Make, straight: Straight) -> None:
    """299 m beside the line is on the course, 301 m is not, and 2.5 km says so."""
    course = make_course(
        straight([(0, 0), (9_000, 0)]),
        waypoints={"In": (4_000, 299), "Out": (4_000, 301), "Far": (4_000, -2_500)},
    )
    assert kms(course, at("In")) == pytest.approx([4.0], abs=0.01)
    (out,) = place_points(course, at("Out")).mistakes
    assert (
        str(out.what)
        == "waypoint 'Out' is 301 m from the course, nearest at km 4.0; at most 300 m are allowed"
    )
    (far,) = place_points(course, at("Far")).mistakes
    assert "is 2.5 km from the course" in str(far.what)


def test_a_file_without_waypoints_says_so(make_course: Make, straight: Straight) -> None:
    """Where there are no names to choose from, km is the way."""
    (mistake,) = place_points(make_course(straight([(0, 0), (5_000, 0)])), at("Mill")).mistakes
    assert str(mistake.remedy) == "The file has no named waypoints: give the point's km instead"


def test_all_mistakes_come_at_once(out_and_back: Course) -> None:
    """Every wrong point is named, in the order of the file, and doubts wait until the rest is right."""
    wanted = [*at("Mil", "Mill"), WantedPoint("x", km=99), WantedPoint("y")]
    assert [mistake.index for mistake in place_points(out_and_back, wanted).mistakes] == [0, 2, 3]


def test_official_km_are_km_of_the_course(make_course: Make, straight: Straight) -> None:
    """Where the organiser counts 10.5 km, his km 5.25 is the middle."""
    course = make_course(straight([(0, 0), (10_000, 0)]), waypoints={"Mid": (5_000, 0)}, stated_km=10.5)
    assert kms(course, at("Mid")) == pytest.approx([5.25], abs=0.01)


def test_the_demo_places_its_fourteen_points(demo_course: Course) -> None:
    """The demo's points, one place twice and the start being the finish, fall where the ground was made."""
    once = [waypoint.name for waypoint in demo_course.track.waypoints]
    names = [*once[:5], "Long Stile", *once[5:], "Harrow Fold"]
    true = [0, 10.5, 21, 29.52, 38.04, 46.56, 61, 74, 87, 100.5, 114, 128, 144.5, 160.93]
    assert kms(demo_course, at(*names)) == pytest.approx(true, abs=0.2)


@pytest.mark.parametrize(
    ("east", "north", "expected"),
    [
        (3_000, 0, [3, 17]),
        (3_000, 250, [3, 17]),
        (9_990, 0, [9.99]),
        (12_000, 0, [10]),
        (-500, 0, [0, 20]),
    ],
)
def test_passes_of_a_place(
    out_and_back: Course, on_ground: Any, east: float, north: float, expected: list[float]
) -> None:
    """Every pass is found once, near the turn there is one, and offsets are the distance on the ground."""
    found = passes(out_and_back, *on_ground(east, north))
    assert [one.km for one in found] == pytest.approx(expected, abs=0.02)
    beyond = max(0, east - 10_000, -east)
    assert [one.offset_m for one in found] == pytest.approx([np.hypot(beyond, north)] * len(found), abs=1.5)
    assert found[0].first == 0
    assert found[-1].last == len(out_and_back.km) - 1


@pytest.mark.parametrize(("lat", "lon"), [(91, 0), (0, 181), (float("nan"), 0), (0, float("inf"))])
def test_no_place_is_refused(out_and_back: Course, lat: float, lon: float) -> None:
    """Coordinates that are none are an error, never a place."""
    with pytest.raises(ValueError, match="is no place"):
        passes(out_and_back, lat, lon)


def test_a_name_shared_by_hundreds_is_refused(write_gpx: Any, straight: Straight) -> None:
    """A name that a file gives to more places than a race has points cannot say which is meant."""
    names = {f"W{n:03d}": (10.0 * n, 0.0) for n in range(101)}
    data = write_gpx(straight([(0, 0), (9_000, 0)]), None, names)
    for name in names:
        data = data.replace(name.encode(), b"Water")
    (mistake,) = place_points(build_course(read_gpx(data, "w.gpx")), at("Water")).mistakes
    assert str(mistake.what) == "101 waypoints of w.gpx are named 'Water'"


def test_hundreds_of_laps_are_placed_in_seconds(make_course: Make, straight: Straight) -> None:
    """A day on a 400 m round: 250 laps, the same place named on each, each on its own lap."""
    corners: Line = [(0, 0)] + [(100, 0), (100, 100), (0, 100), (0, 0)] * 250
    course = make_course(straight(corners, 20.0), waypoints={"Table": (50, -5)})
    begun = time.process_time()
    ends = WantedPoint("Start", end="start"), WantedPoint("Finish", end="finish")
    found = kms(course, [ends[0], *at(*["Table"] * 250), ends[1]])[1:-1]
    assert time.process_time() - begun < 60
    assert found == pytest.approx(np.linspace(found[0], found[-1], 250), abs=0.02)


@settings(deadline=None, max_examples=30)
@given(places=st.lists(st.floats(0, 161), min_size=1, max_size=8, unique_by=lambda km: round(km, 1)))
def test_placing_again_changes_nothing(demo_course: Course, places: list[float]) -> None:
    """What was placed and written down with its km is placed there again, so that export and load agree."""
    wanted = [
        WantedPoint("Start", end="start"),
        *at("Corrie Chapel", "Long Stile"),
        WantedPoint("End", end="finish"),
    ]
    wanted += [WantedPoint(f"by {km}", km=km) for km in places]
    first = place_points(demo_course, sorted(wanted, key=lambda one: _guess(demo_course, one)))
    if first.mistakes:
        return
    again = place_points(
        demo_course,
        [
            WantedPoint(
                point.name,
                point.km,
                point.name if point.name in ("Corrie Chapel", "Long Stile") else None,
                {"Start": "start", "End": "finish"}.get(point.name),  # type: ignore[arg-type]
            )
            for point in first.points
        ],
    )
    assert again == first


def _guess(course: Course, point: WantedPoint) -> float:
    known = {"Start": -1.0, "Corrie Chapel": 38.06, "Long Stile": 46.59, "End": course.length_km + 1}
    return known[point.name] if point.km is None else point.km
