"""Calendar, GPX, CSV, JSON, table and picture: read back by other programs' parsers."""

from __future__ import annotations

import csv
import io
import json
import re
from dataclasses import replace
from datetime import UTC, datetime, timedelta

import gpxpy
import icalendar
import pytest

from server.course import read_gpx
from server.event.model import (
    CrewAccess,
    CutOff,
    Edge,
    FuelPlan,
    Goal,
    KitItem,
    MeetingPlan,
    Part,
    PartKind,
    Person,
    Target,
)
from server.plan import make_timetable
from server.plan.out import Appointment, appointments_of, calendar, gpx_with_points, to_csv, to_json
from server.plan.show import fuel_text, plan_picture, plan_text

STAMP = datetime(2027, 1, 1, 12, 0, tzinfo=UTC)


@pytest.fixture(scope="module")
def event(make_event):
    """Maren, Ana who meets her at p6, a pacer, a volunteer, and a stranger with no part."""
    base = make_event(Target(finish=timedelta(hours=29)))
    access = CrewAccess("field by the bridge", lat=54.91, lon=-2.55)
    points = tuple(
        replace(p, access=access, cut_offs=(CutOff(Edge.IN, elapsed=timedelta(hours=17)),))
        if p.id == "p6"
        else p
        for p in base.courses[0].points
    )
    people = tuple(Person(i, i.title()) for i in ("maren", "ana", "tomas", "ines", "office"))
    parts = (
        Part("maren", PartKind.RUNNER, "maren"),
        Part("ana", PartKind.CREW, "maren"),
        Part("tomas", PartKind.PACER, "maren", pace_from="p8", pace_to="p11"),
        Part("ines", PartKind.VOLUNTEER, point="p4"),
    )
    meeting = MeetingPlan(
        "m6", "p6", "maren", ("ana",), kit=(KitItem("head torch"), KitItem("poles; spare")), food="soup, tea"
    )
    return replace(
        base,
        version=3,
        courses=(replace(base.courses[0], points=points),),
        people=people,
        parts=parts,
        meetings=(meeting,),
    )


@pytest.fixture(scope="module")
def table(event, demo_course):
    """Her timetable."""
    return make_timetable(event, "maren", demo_course)


class TestCalendar:
    """RFC 5545."""

    def test_read_back(self, event, table) -> None:
        """The calendar parses, its entry has UID, SEQUENCE, UTC times and the text with its commas and semicolons."""
        data = calendar(event, appointments_of(event, "ana", {"maren": table}), STAMP)
        parsed = icalendar.Calendar.from_ical(data)
        assert str(parsed["version"]) == "2.0"
        (entry,) = parsed.walk("VEVENT")
        assert str(entry["uid"]) == "e.meeting-m6@stilepost"
        assert int(entry["sequence"]) == 3
        assert entry.decoded("dtstart") == table.start + table.row("p6").arrive[Goal.A]
        assert entry.decoded("dtend") == table.start + table.row("p6").leave[Goal.C]
        assert entry.decoded("dtstamp") == STAMP
        assert "head torch, poles; spare" in str(entry["description"])
        assert not parsed.errors

    def test_lines_are_folded_and_end_rightly(self, event, table) -> None:
        """RFC 5545 3.1: lines end with CRLF and hold at most 75 octets."""
        data = calendar(event, appointments_of(event, "maren", {"maren": table}), STAMP)
        lines = data.split(b"\r\n")
        assert b"\n" not in b"".join(lines)
        assert max(len(line) for line in lines) <= 75

    def test_a_new_version_moves_the_entry(self, event, demo_course) -> None:
        """With a later target the UID stays, the SEQUENCE rises and the time moves."""
        later = replace(
            event, version=4, runners=(replace(event.runners[0], target=Target(finish=timedelta(hours=31))),)
        )
        entries = []
        for e in (event, later):
            found = appointments_of(e, "ana", {"maren": make_timetable(e, "maren", demo_course)})
            entries.append(icalendar.Calendar.from_ical(calendar(e, found, STAMP)).walk("VEVENT")[0])
        assert entries[0]["uid"] == entries[1]["uid"]
        assert entries[0]["sequence"] < entries[1]["sequence"]
        assert entries[0].decoded("dtstart") < entries[1].decoded("dtstart")

    @pytest.mark.parametrize(
        ("person", "titles"),
        [
            ("maren", ["Maren at Point 6", "The Long Stile Hundred: start"]),
            ("ana", ["Maren at Point 6"]),
            ("tomas", ["Pace Maren, Point 8 to Point 11"]),
            ("ines", ["Maren at Point 4"]),
            ("office", []),
        ],
    )
    def test_each_person_gets_their_own(self, event, table, person: str, titles: list[str]) -> None:
        """A person's calendar holds what they do and nothing else."""
        assert sorted(a.title for a in appointments_of(event, person, {"maren": table})) == titles

    def test_one_id_twice_is_refused(self, event) -> None:
        """Two appointments of one id would hide each other."""
        one = Appointment("a", STAMP, STAMP, "x")
        with pytest.raises(ValueError, match="two appointments"):
            calendar(event, (one, one), STAMP)

    def test_made_twice_it_is_the_same(self, event, table) -> None:
        """The same event and stamp give the same bytes."""
        found = appointments_of(event, "ana", {"maren": table})
        assert calendar(event, found, STAMP) == calendar(event, tuple(reversed(found)), STAMP)


class TestGpx:
    """For phones and watches."""

    def test_read_back(self, event, table, demo_course) -> None:
        """gpxpy and our own reader find a waypoint for each point, in order, with local time in its name."""
        data = gpx_with_points(event, table, demo_course)
        parsed = gpxpy.parse(data.decode())
        assert len(parsed.waypoints) == len(table.rows)
        assert parsed.waypoints[0].name == "05:30 Point 0"
        assert parsed.waypoints[6].time == table.start + table.row("p6").arrive[Goal.B]
        assert "cut-off in" in (parsed.waypoints[6].description or "")
        again = read_gpx(data, "plan.gpx")
        assert len(again.lat_deg) == len(demo_course.km)
        assert [w.name for w in again.waypoints] == [w.name for w in parsed.waypoints]

    def test_without_line_and_heights(self, make_event, points_at, bare_course) -> None:
        """Points alone, from a route without heights, are a GPX file too."""
        event = make_event(Target(finish=timedelta(hours=6)), points=points_at((0.0, 25.0, 50.0)))
        data = gpx_with_points(
            event, make_timetable(event, "maren", bare_course), bare_course, with_line=False
        )
        parsed = gpxpy.parse(data.decode())
        assert len(parsed.tracks) == 0
        assert all(w.elevation is None for w in parsed.waypoints)


class TestTables:
    """CSV, JSON, text."""

    def test_csv(self, event, table) -> None:
        """Each row reads back to the timetable, in and out, for every goal."""
        rows = list(csv.DictReader(io.StringIO(to_csv(event, table))))
        assert len(rows) == len(table.rows)
        for read, row in zip(rows, table.rows, strict=True):
            h, m, s = (int(x) for x in read["B in"].split(":"))
            assert timedelta(hours=h, minutes=m, seconds=s) == row.arrive[Goal.B]
        assert rows[-1]["B in clock"] == "2027-06-20 10:30:00"

    def test_csv_runs_no_formula(self, event, table) -> None:
        """A point named like a formula is text to a spreadsheet."""
        course = event.courses[0]
        named = replace(course, points=(replace(course.points[0], name="=1+1"), *course.points[1:]))
        first = list(csv.reader(io.StringIO(to_csv(replace(event, courses=(named,)), table))))[1][0]
        assert first == "'=1+1"

    def test_json(self, event, table) -> None:
        """JSON reads back to the same seconds."""
        read = json.loads(to_json(event, table))
        assert read["version"] == 3
        assert [p["in_s"]["B"] for p in read["points"]] == [
            r.arrive[Goal.B].total_seconds() for r in table.rows
        ]
        assert datetime.fromisoformat(read["start"]) == table.start

    def test_text(self, event, table) -> None:
        """The terminal's table holds every point, the cut-off, the light, the torch and the notes."""
        text = plan_text(event, table)
        for row in table.rows:
            assert event.courses[0].point(row.point).name in text
        assert re.search(r"in Sat 22:30", text)
        assert "sunset Sat" in text
        assert "torch from km" in text
        for note in table.notes:
            assert note[:40] in text

    def test_fuel_text(self, event, table) -> None:
        """The fuel table names each refill, and ends with the cautions; a figure above its range is warned about."""
        fuel = (FuelPlan("p0", "bars", 250.0, 45.0, 900.0, 400.0),)
        fed = replace(event, runners=(replace(event.runners[0], fuel=fuel),))
        text = fuel_text(fed, table)
        assert "Point 3" in text
        assert "900 ml/h is above" in text
        assert "Drink to thirst" in text

    def test_text_fits_its_width(self, event, table) -> None:
        """No line is wider than the terminal."""
        for width in (120, 160):
            assert max(len(line) for line in plan_text(event, table, width).splitlines()) <= width


def test_picture(event, table, demo_course) -> None:
    """The picture is a PNG of its stated size with more in it than paper, made the same twice."""
    first = plan_picture(event, table, demo_course, dpi=60)
    assert first[:8] == b"\x89PNG\r\n\x1a\n"
    width, height = int.from_bytes(first[16:20]), int.from_bytes(first[20:24])
    assert (width, height) == (660, 450)
    assert len(first) > 15_000
    assert first == plan_picture(event, table, demo_course, dpi=60)


def test_picture_without_heights(make_event, points_at, bare_course) -> None:
    """A route without heights still has its picture of times."""
    event = make_event(Target(finish=timedelta(hours=6)), points=points_at((0.0, 25.0, 50.0)))
    assert (
        plan_picture(event, make_timetable(event, "maren", bare_course), bare_course, dpi=40)[:4]
        == b"\x89PNG"
    )
