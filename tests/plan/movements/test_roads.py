"""Drives given by hand, confirmed later, or estimated: what they are made of, and which may set a leave-by."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import replace
from datetime import UTC, datetime, timedelta
from typing import Any

import pytest
from pyproj import Geod

from server.event.model import CourseDef, CrewAccess, Drive, Driving, Event, Place
from server.facts.entry import Entry, Kind, Source
from server.plan.movements import Roads

MINUTE = timedelta(minutes=1)
NOON = datetime(2027, 6, 19, 12, 0, tzinfo=UTC)
NIGHT = datetime(2027, 12, 19, 23, 0, tzinfo=UTC)
INN, YARD = (54.0, -2.0), (54.2, -2.3)


def with_access(event: Event, **access: CrewAccess) -> Event:
    """The event with other car parks."""
    course = event.courses[0]
    points = tuple(replace(p, access=access.get(p.id, p.access)) for p in course.points)
    return replace(event, courses=(replace(course, points=points),))


@pytest.fixture
def far(event_of: Callable[..., Event]) -> Event:
    """An inn and a yard with coordinates, at no listed drive."""
    event = event_of(drives=(), places=(Place("inn", "Inn", *INN), Place("yard", "Yard", *YARD)))
    return replace(event, driving=Driving(1.5, 40.0, 1.2, 4 * MINUTE))


def said(point: str, about: str | None, amount: timedelta | None) -> Entry:
    """A person confirms a drive."""
    return Entry(
        "e1", "stile", None, Kind.DRIVE_CONFIRMED, NOON, NOON, NOON, "vera", Source.CREW, "vera", "k1",
        point=point, about=about, amount=amount,
    )  # fmt: skip


def test_an_estimate_is_line_times_road_factor_at_the_stated_speed(far: Event) -> None:
    """Geodesic by another library (PROJ) times 1.5 at 40 km/h, up to the minute, and the full car park."""
    way = Roads(far).way("inn", "yard", NOON)
    line_km = Geod(ellps="WGS84").inv(INN[1], INN[0], YARD[1], YARD[0])[2] / 1000.0
    assert way.km == pytest.approx(line_km * 1.5, rel=1e-6)
    minutes = {a.name: a.time / MINUTE for a in way.addends}
    assert set(minutes) == {"road", "full car park"}
    assert 0 <= minutes["road"] - line_km * 1.5 / 40 * 60 < 1
    assert way.drive == sum((a.time for a in way.addends), timedelta(0))
    assert not way.confirmed


def test_night_traffic_and_fuel_are_addends_of_their_own(far: Event) -> None:
    """In the dark a fifth more of the road; traffic and fuel as listed; every addend named, adding up to the drive."""
    listed = replace(far, drives=(Drive("inn", "yard", None, None, "", 7 * MINUTE, 12 * MINUTE),))
    day, night = Roads(listed).way("inn", "yard", NOON), Roads(listed).way("inn", "yard", NIGHT)
    minutes = {a.name: a.time / MINUTE for a in night.addends}
    assert minutes["traffic"] == 7
    assert minutes["fuel"] == 12
    assert minutes["full car park"] == 4
    assert minutes["road"] * 0.2 <= minutes["night"] < minutes["road"] * 0.2 + 1
    assert night.drive is not None
    assert day.drive is not None
    assert night.drive - day.drive == minutes["night"] * MINUTE
    assert night.drive == sum((a.time for a in night.addends), timedelta(0))


@pytest.mark.parametrize(
    ("entry", "minutes", "confirmed"),
    [
        (None, None, False),
        (said("yard", "inn", None), None, True),
        (said("yard", None, 50 * MINUTE), 50, True),
        (said("yard", "start", 50 * MINUTE), None, False),
        (said("inn", "yard", 50 * MINUTE), None, False),
    ],
)
def test_only_a_persons_word_confirms(far: Event, entry: Any, minutes: float | None, confirmed: bool) -> None:
    """An estimate counts once a person says so, with their own minutes if given; a word about another way doesn't."""
    way = Roads(far, () if entry is None else (entry,)).way("inn", "yard", NOON)
    guess = Roads(far).way("inn", "yard", NOON).drive
    assert way.confirmed is confirmed
    assert way.drive == (guess if minutes is None else minutes * MINUTE)


def test_minutes_by_hand_are_the_whole_drive(far: Event) -> None:
    """Nothing is added to what a person wrote, by night neither."""
    event = replace(far, drives=(Drive("inn", "yard", 33, "ana"),))
    way = Roads(event).way("inn", "yard", NIGHT)
    assert (way.drive, way.confirmed, way.by) == (33 * MINUTE, True, "ana")


def test_the_way_back_is_an_estimate_only(far: Event) -> None:
    """A confirmed drive the other way round gives the minutes, with the full car park, and confirms nothing."""
    event = replace(far, drives=(Drive("yard", "inn", 33, "ana"),))
    way = Roads(event).way("inn", "yard", NOON)
    assert (way.drive, way.confirmed) == (37 * MINUTE, False)


def test_without_coordinates_nothing_is_known(event_of: Callable[..., Event]) -> None:
    """A place that is only a name can't be estimated; coordinates from the course help."""
    event = event_of(drives=())
    assert Roads(event).way("home", "mill").drive is None
    spots = {"mill": INN, "chapel": YARD}
    assert Roads(event, (), spots).way("mill", "chapel").drive is not None


@pytest.mark.parametrize(
    ("one", "other", "same"),
    [
        (CrewAccess(lat=54.0, lon=-2.0), CrewAccess(lat=54.001, lon=-2.0), True),  # 111 m
        (CrewAccess(lat=54.0, lon=-2.0), CrewAccess(lat=54.002, lon=-2.0), False),  # 223 m
        (CrewAccess(place="yard"), CrewAccess(place="yard"), True),
        (CrewAccess(place="yard"), CrewAccess(lat=YARD[0], lon=YARD[1]), True),
        (CrewAccess(place="yard"), CrewAccess(place="inn"), False),
        (CrewAccess(), CrewAccess(), False),
    ],
)
def test_one_car_park(far: Event, one: CrewAccess, other: CrewAccess, same: bool) -> None:
    """Points that share a place, or lie within 150 m, are one site, and the way between them is nothing."""
    roads = Roads(with_access(far, mill=one, chapel=other))
    assert roads.same("mill", "chapel") is same
    assert (roads.way("mill", "chapel").drive == timedelta(0)) is same


def test_one_waypoint_is_one_site(event_of: Callable[..., Event]) -> None:
    """A loop that comes back to the same waypoint is the same car park; a drive to one is a drive to the other."""
    event = event_of(drives=(Drive("start", "mill", 12, "ana"),))
    course = event.courses[0]
    points = tuple(replace(p, waypoint="Field") if p.id in ("mill", "moss") else p for p in course.points)
    roads = Roads(replace(event, courses=(CourseDef("main", "r.gpx", points),)))
    assert roads.same("mill", "moss")
    assert roads.way("start", "moss").drive == 12 * MINUTE
    assert roads.way("start", "moss").confirmed
