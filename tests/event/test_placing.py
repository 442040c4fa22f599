"""Points get their km from the course, mistakes their line."""

from __future__ import annotations

from zoneinfo import ZoneInfo

import pytest

from server.course import Course, build_course, read_gpx
from server.event import parse_event, place

KM_PER_DEGREE = 110.574  # a degree of latitude at the equator, WGS 84


@pytest.fixture(scope="module")
def north() -> Course:
    """161 km due north from 0 N 0 E, with a waypoint at km 66."""
    rows = "".join(f'<trkpt lat="{i * 0.1 / KM_PER_DEGREE:.8f}" lon="0"/>' for i in range(1611))
    mark = f'<wpt lat="{66 / KM_PER_DEGREE:.8f}" lon="0"><name>Moss Edge</name></wpt>'
    gpx = f'<gpx version="1.1" xmlns="http://www.topografix.com/GPX/1/1">{mark}<trk><trkseg>{rows}</trkseg></trk></gpx>'
    return build_course(read_gpx(gpx.encode(), "north.gpx"), stated_km=161.0)


def test_a_waypoint_gives_the_km_and_a_km_stays(good, north) -> None:
    """The point named by waypoint is put on the line; those given by km keep theirs to the digit."""
    parsed = parse_event(good.replace("km = 66", 'waypoint = "Moss Edge"'))
    placed = place(parsed.event, {"main": north}, parsed=parsed)
    assert placed.problems == ()
    assert [p.km for p in placed.event.courses[0].points] == pytest.approx([0, 21.3, 66, 90, 161], abs=0.1)
    assert placed.event.courses[0].points[1].km == 21.3


@pytest.mark.parametrize(
    ("old", "new", "row", "words"),
    [
        ("km = 66", 'waypoint = "Mos Edge"', "waypoint", "Moss Edge"),
        ("km = 66", 'waypoint = "Nowhere at all"', "waypoint", "Nowhere at all"),
        ("km = 161", "km = 190", "km = 190", "190"),
        ("km = 90", 'waypoint = "Moss Edge"', "waypoint", "Moss Edge"),
        ("pacer_from_km = 60", "pacer_from_km = 66.5", "parts = [ { kind = \"pacer\"", "rules allow pacers"),
    ],
)  # fmt: skip
def test_what_the_course_contradicts(good, north, old, new, row, words) -> None:
    """A wrong waypoint, a km past the end, two points on one place, a rule broken: line and remedy."""
    text = good.replace("km = 66", 'waypoint = "Moss Edge"').replace(
        old if old != "km = 66" else 'waypoint = "Moss Edge"', new, 1
    )
    parsed = parse_event(text)
    assert parsed.event is not None, [str(p) for p in parsed.errors]
    placed = place(parsed.event, {"main": north}, "my.toml", parsed)
    assert placed.event is None
    found = [p for p in placed.problems if words in str(p)]
    assert found, [str(p) for p in placed.problems]
    assert row in text.split("\n")[found[0].line - 1]
    assert found[0].remedy


@pytest.mark.parametrize(("stage", "told"), [(("90", "Sun 07:00"), 0), (("66", "Sat 20:00"), 1)])
def test_a_break_in_the_line_is_told_where_no_stage_ends(good, stage, told) -> None:
    """Nobody runs it; where the stage ends elsewhere, the file lacks a part of the course."""
    rows = [f'<trkpt lat="{i * 0.1 / KM_PER_DEGREE:.8f}" lon="{0.1 * (i > 900)}"/>' for i in range(1611)]
    rows.insert(901, "</trkseg><trkseg>")
    gpx = f'<gpx version="1.1" xmlns="http://www.topografix.com/GPX/1/1"><trk><trkseg>{"".join(rows)}</trkseg></trk></gpx>'
    course = build_course(read_gpx(gpx.encode(), "north.gpx", stages=True), stated_km=161.0)
    km, clock = stage
    parsed = parse_event(good.replace(f"km = {km}", f'km = {km}\nnext_stage = "{clock}"'))
    problems = place(parsed.event, {"main": course}, parsed=parsed).problems
    broken = [p for p in problems if p.what.code == "wrong-broken-where-no-stage"]
    assert len(broken) == told, [str(p) for p in problems]
    assert all("11.1 km away" in str(p) and "next_stage" in str(p.remedy) for p in broken)


def test_without_the_reading_there_is_still_a_field(good, north) -> None:
    """An event from the store is placed too; a mistake then names the point, no line."""
    event = parse_event(good.replace("km = 66", 'waypoint = "Mos"')).event
    (problem, *_) = place(event, {"main": north}).problems
    assert (problem.line, problem.field) == (None, "points.moss.waypoint")


@pytest.mark.parametrize(
    ("zone", "hours"),
    [
        ("America/New_York", "4 hours"),
        ("Australia/Sydney", "10 hours"),
        ("Europe/Berlin", ""),
        ("Europe/London", ""),
    ],
)
def test_a_time_zone_an_ocean_away(good, north, zone: str, hours: str) -> None:
    """The line lies at 0 E: a zone more than four hours from the sun's time there is warned of, with its line."""
    moved = build_course(
        read_gpx(_at_longitude(5.0 if zone == "America/New_York" else 0.0), "line.gpx"), stated_km=161.0
    )
    parsed = parse_event(good.replace("Europe/London", zone))
    placed = place(parsed.event, {"main": moved}, parsed=parsed)
    said = [p for p in placed.problems if "time zone" in str(p.what)]
    assert [hours in str(p.what) for p in said] == ([True] if hours else [])
    assert all(p.line == parsed.lines["event", "time_zone"] for p in said)


def _at_longitude(lon: float) -> bytes:
    rows = "".join(f'<trkpt lat="{i * 0.1 / KM_PER_DEGREE:.8f}" lon="{lon}"/>' for i in range(1611))
    return f'<gpx version="1.1" xmlns="http://www.topografix.com/GPX/1/1"><trk><trkseg>{rows}</trkseg></trk></gpx>'.encode()


@pytest.mark.parametrize(
    ("typed", "begins"),
    [
        ("Fri 22:00", "2027-06-18T22:00"),
        ("Sat 01:00", "2027-06-19T01:00"),
        ("Sun 01:00", "2027-06-20T01:00"),
        ("01:00", "2027-06-20T01:00"),
    ],
)
def test_the_sleep_before_the_start_is_the_night_before(good, typed, begins) -> None:
    """The race starts on Saturday at five: 'Sat 01:00' was a week later, and whoever slept then was awake all the same."""
    text = good.replace("drives = true", f'drives = true, sleeps = [{{ from = "{typed}", to = "04:30" }}]', 1)
    parsed = parse_event(text)
    assert parsed.event is not None, [str(p) for p in parsed.errors]
    (sleep,) = next(p.sleeps for p in parsed.event.parts if p.sleeps)
    assert f"{sleep.start.astimezone(ZoneInfo('Europe/London')):%Y-%m-%dT%H:%M}" == begins
