"""Calendar, GPX, CSV, JSON, table, picture and sheet: read back by other programs' parsers."""

from __future__ import annotations

import csv
import io
import json
import re
from dataclasses import replace
from datetime import UTC, datetime, timedelta

import gpxpy
import icalendar
import lxml.html
import pytest

from server.conversation.telling.reader import Reader
from server.conversation.telling.say import Say
from server.conversation.telling.times import floor_to
from server.course import read_gpx
from server.event.model import (
    Car,
    CrewAccess,
    CutOff,
    Drive,
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
from server.paper.before import BEFORE, before_start
from server.paper.calendar import Appointment, appointments_of, calendar
from server.paper.files import gpx_with_points, to_csv, to_json
from server.paper.picture import plan_figure, plan_picture
from server.paper.sheet import crew_sheets
from server.paper.table import note_lines, print_fuel, print_plan
from server.plan import make_timetable
from server.plan.light import HORIZON_DEG, sun_elevation_deg
from server.watch.meetings import meetings
from tests.paper.printing import printed

STAMP = datetime(2027, 1, 1, 12, 0, tzinfo=UTC)
READER = Reader("en", "Europe/London", "Europe/London")
SAY = Say(READER, STAMP)
GERMAN = Say(Reader("de", "Europe/London", "Europe/London"), STAMP)


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
    people = tuple(
        Person(i, i.title(), language="de" if i == "ines" else "en")
        for i in ("maren", "ana", "tomas", "ines", "office")
    )
    parts = (
        Part("maren", PartKind.RUNNER, "maren"),
        Part("ana", PartKind.CREW, "maren"),
        Part("tomas", PartKind.PACER, "maren", pace_from="p8", pace_to="p11"),
        Part("ines", PartKind.VOLUNTEER, point="p4"),
    )
    meeting = MeetingPlan(
        "m6",
        "p6",
        "maren",
        ("ana",),
        "van",
        kit=(KitItem("head torch"), KitItem("poles; spare")),
        food="soup, tea",
    )
    return replace(
        base,
        drives=(Drive("start", "p6", 40.0, "ana"),),
        cars=(Car("van", "blue van", 4, "start"),),
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


@pytest.fixture(scope="module")
def before(event, table, demo_course):
    """The situation before the start."""
    return before_start(event, {"maren": table}, {"main": demo_course}, STAMP)


class TestCalendar:
    """RFC 5545."""

    def test_read_back(self, event, before) -> None:
        """The calendar parses, its entry has UID, SEQUENCE, UTC times and the text with its commas and semicolons."""
        data = calendar(event, appointments_of(before, "ana", SAY), STAMP)
        parsed = icalendar.Calendar.from_ical(data)
        assert str(parsed["version"]) == "2.0"
        (entry,) = parsed.walk("VEVENT")
        assert str(entry["uid"]) == "e.meeting-m6@stilepost"
        assert int(entry["sequence"]) == 3
        assert entry.decoded("dtstamp") == STAMP
        assert "MUST be there: head torch.\nBring: poles; spare." in str(entry["description"])
        assert not parsed.errors

    def test_the_times_are_those_of_the_watch(self, before) -> None:
        """Leave-by and wait-until in the calendar are what the watch's own function says before the start."""
        (watched,) = meetings(before.situation, "maren", before.at)
        (entry,) = appointments_of(before, "ana", SAY)
        assert watched.leave_by is not None
        assert timedelta(0) <= watched.leave_by - entry.start < timedelta(minutes=5)
        assert entry.end == watched.wait_until
        assert entry.start < watched.be_there < watched.window.likely < entry.end

    def test_her_own_calendar_sends_her_nowhere(self, before) -> None:
        """Hers has when crew wait for her and what they bring, and no leave-by and no drive: those are for the crew."""
        mine = next(a for a in appointments_of(before, "maren", SAY) if a.id == "meeting-m6")
        assert "Wait until" in mine.words
        assert not any(x in mine.words for x in ("Leave by", "Be there from", "Drive"))
        assert all(t.timestamp() % 300 == 0 for t in (mine.start, mine.end))

    def test_crew_are_rung_before_they_leave_and_when(self, event, before) -> None:
        """A VALARM half an hour before the leave-by and one at it, in the entry's own words; her own calendar, which sends
        her nowhere, is still."""
        (entry,) = icalendar.Calendar.from_ical(
            calendar(event, appointments_of(before, "ana", SAY), STAMP)
        ).walk("VEVENT")
        rings = entry.walk("VALARM")
        assert [a["trigger"].dt for a in rings] == [-timedelta(minutes=30), timedelta(0)]
        assert all((a["action"], a["description"]) == ("DISPLAY", entry["summary"]) for a in rings)
        assert b"VALARM" not in calendar(event, appointments_of(before, "maren", SAY), STAMP)

    def test_without_a_confirmed_drive_nobody_is_told_to_leave(self, event, table, demo_course) -> None:
        """An estimated drive gives a meeting that begins at be-there-from, and says why there is no leave-by."""
        loose = replace(event, drives=(Drive("start", "p6", 40.0),))
        found = before_start(loose, {"maren": table}, {"main": demo_course}, STAMP)
        (entry,) = appointments_of(found, "ana", SAY)
        (watched,) = found.meetings("maren")
        assert watched.leave_by is None
        assert timedelta(0) <= watched.be_there - entry.start < timedelta(minutes=5)
        assert "No leave-by: nobody stands by the drive yet." in entry.words

    def test_lines_are_folded_and_end_rightly(self, event, before) -> None:
        """RFC 5545 3.1: lines end with CRLF and hold at most 75 octets."""
        data = calendar(event, appointments_of(before, "maren", GERMAN), STAMP)
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
            tables = {"maren": make_timetable(e, "maren", demo_course)}
            found = appointments_of(before_start(e, tables, {"main": demo_course}, STAMP), "ana", SAY)
            entries.append(icalendar.Calendar.from_ical(calendar(e, found, STAMP)).walk("VEVENT")[0])
        assert entries[0]["uid"] == entries[1]["uid"]
        assert entries[0]["sequence"] < entries[1]["sequence"]
        assert entries[0].decoded("dtstart") < entries[1].decoded("dtstart")

    @pytest.mark.parametrize(
        ("person", "titles"),
        [
            ("maren", ["The Long Stile Hundred: start", "Your crew at Point 6"]),
            ("ana", ["Leave by 10:20 for Point 6: Maren"]),
            ("tomas", ["Pace Maren, Point 8 to Point 11"]),
            ("ines", ["Maren at Point 4"]),
            ("office", []),
        ],
    )
    def test_each_person_gets_their_own(self, before, person: str, titles: list[str]) -> None:
        """A person's calendar holds what they do and nothing else."""
        found = [
            re.sub(r"by \w+ \d\d:\d\d", "by 10:20", a.title) for a in appointments_of(before, person, SAY)
        ]
        assert sorted(found) == titles

    def test_it_is_in_the_person_s_language(self, before) -> None:
        """Titles and texts come from `conversation.telling`: German reads German."""
        (entry,) = appointments_of(before, "ana", GERMAN)
        assert re.fullmatch(r"Losfahren bis \w+ \d\d:\d\d nach Point 6: Maren", entry.title)
        assert "Warten bis" in entry.words

    def test_one_id_twice_is_refused(self, event) -> None:
        """Two appointments of one id would hide each other."""
        one = Appointment("a", STAMP, STAMP, "x")
        with pytest.raises(ValueError, match="two appointments"):
            calendar(event, (one, one), STAMP)

    def test_made_twice_it_is_the_same(self, event, before) -> None:
        """The same event and stamp give the same bytes."""
        found = appointments_of(before, "maren", SAY)
        assert calendar(event, found, STAMP) == calendar(event, tuple(reversed(found)), STAMP)


class TestGpx:
    """For phones and watches."""

    def test_read_back(self, event, table, demo_course) -> None:
        """gpxpy and our own reader find a waypoint for each point, in order, with local time in its name."""
        data = gpx_with_points(event, table, demo_course, SAY)
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
            event, make_timetable(event, "maren", bare_course), bare_course, SAY, with_line=False
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
            assert abs(timedelta(hours=h, minutes=m, seconds=s) - row.arrive[Goal.B]) <= timedelta(seconds=30)
            assert s == 0
        assert rows[-1]["B in clock"] == "2027-06-20 10:30:00"

    def test_csv_runs_no_formula(self, event, table) -> None:
        """A point named like a formula is text to a spreadsheet."""
        course = event.courses[0]
        named = replace(course, points=(replace(course.points[0], name="=1+1"), *course.points[1:]))
        first = list(csv.reader(io.StringIO(to_csv(replace(event, courses=(named,)), table))))[1][0]
        assert first == "'=1+1"

    def test_json(self, event, table) -> None:
        """JSON reads back to the same seconds."""
        read = json.loads(to_json(event, table, SAY))
        assert read["version"] == 3
        assert [p["in_s"]["B"] for p in read["points"]] == [
            r.arrive[Goal.B].total_seconds() for r in table.rows
        ]
        assert datetime.fromisoformat(read["start"]) == table.start

    def test_text(self, event, table, before) -> None:
        """The terminal's table holds every point, cut-off and odds, light, torch, change-over and the notes."""
        text = printed(print_plan, before, "maren", SAY)
        for row in table.rows:
            assert event.courses[0].point(row.point).name in text
        assert re.search(r"in Sat 22:30", text)
        assert re.search(r"sunset Sat 21:\d\d \(at \d+\.\d km\)", text)
        assert "Torch from" in text
        assert re.search(
            r"Cut-off in at Point 6 by Sat 22:30: (about|over|under) \d+ in \d+ to be in time if she goes on",
            text,
        )
        assert re.search(r"For 9 chances in 10, if she goes on: out of Point 1 by Sat \d\d:\d\d", text)
        assert re.search(r"Point 6: A until \w+ \d\d:\d\d, B until", text)
        notes = note_lines(SAY, table)
        assert any("walking costs no time on" in n for n in notes)
        for note in notes:
            assert note[:40] in text

    def test_fuel_text(self, event, table) -> None:
        """The fuel table names each refill, and ends with the cautions; a figure above its range is warned about."""
        fuel = (FuelPlan("p0", "bars", 250.0, 45.0, 900.0, 400.0),)
        fed = replace(event, runners=(replace(event.runners[0], fuel=fuel),))
        text = printed(print_fuel, fed, table, SAY)
        assert "Point 3" in text
        assert "900 ml/h is above" in text
        assert "Drink to thirst" in text

    def test_text_fits_its_width(self, before) -> None:
        """No line is wider than the terminal."""
        for width in (120, 160):
            assert (
                max(len(line) for line in printed(print_plan, before, "maren", SAY, width=width).splitlines())
                <= width
            )

    def test_german_text(self, before) -> None:
        """The same table in German has no English heading or note left."""
        text = printed(print_plan, before, "maren", GERMAN)
        assert "Sonnenuntergang" in text
        assert "Gehen kostet keine Zeit" in text
        for word in ("cut-off", "sunset", "walking", "Goals"):
            assert word not in text


def test_picture(event, table, demo_course) -> None:
    """The picture is a PNG of its stated size with more in it than paper, made the same twice."""
    first = plan_picture(event, table, demo_course, READER, dpi=60)
    assert first[:8] == b"\x89PNG\r\n\x1a\n"
    width, height = int.from_bytes(first[16:20]), int.from_bytes(first[20:24])
    assert (width, height) == (660, 450)
    assert len(first) > 15_000
    assert first == plan_picture(event, table, demo_course, READER, dpi=60)


def test_cut_offs_lie_in_the_picture_and_its_days_are_german(event, table, demo_course) -> None:
    """A cut-off later than goal C stands within the frame; days are as the reader says them."""
    reader = Reader("de", event.time_zone, event.time_zone)
    _upper, lower = plan_figure(event, table, demo_course, reader).axes
    low, high = lower.get_ylim()
    marks = [float(y) for line in lower.lines if line.get_marker() == "v" for y in line.get_ydata()]
    assert len(marks) >= 2
    assert max(marks) > max(t.total_seconds() for t in table.rows[-1].arrive.values()) / 3600
    assert all(low <= y <= high for y in marks)
    days = {t.get_text().split()[0] for t in lower.get_yticklabels() if " " in t.get_text()}
    assert days <= {"Mo", "Di", "Mi", "Do", "Fr", "Sa", "So"}
    assert days


def test_the_night_goes_on_over_the_whole_axis(make_event, points_at, demo_course) -> None:
    """Goal B is in at dusk, the limit is at dawn: every hour at which the sun is down at the finish lies in a band."""
    base = make_event(Target(finish=timedelta(hours=16)), points=points_at((0.0, 25.0, 50.0)))
    event = replace(base, limit=timedelta(hours=23, minutes=30))
    table = make_timetable(event, "maren", demo_course)
    _upper, lower = plan_figure(event, table, demo_course, READER).axes
    bands = [p.get_extents().transformed(lower.transData.inverted()) for p in lower.patches]
    end = lower.get_ylim()[1]
    assert end > 23.5
    place = demo_course.at(table.rows[-1].km)
    night = 0
    for quarter in range(int(4 * end)):
        hour = quarter / 4
        if hour <= table.rows[-1].arrive[Goal.B].total_seconds() / 3600.0:
            continue
        sun = sun_elevation_deg(place.lat_deg, place.lon_deg, table.start + timedelta(hours=hour))
        drawn = any(b.y0 - 0.1 <= hour <= b.y1 + 0.1 for b in bands)
        if sun < HORIZON_DEG - 1.0:
            night += 1
            assert drawn, hour
        elif sun > HORIZON_DEG + 1.0:
            assert not any(b.y0 + 0.1 <= hour <= b.y1 - 0.1 for b in bands), hour
    assert night > 8


def test_picture_without_heights(make_event, points_at, bare_course) -> None:
    """A route without heights still has its picture of times."""
    event = make_event(Target(finish=timedelta(hours=6)), points=points_at((0.0, 25.0, 50.0)))
    assert (
        plan_picture(event, make_timetable(event, "maren", bare_course), bare_course, READER, dpi=40)[:4]
        == b"\x89PNG"
    )


class TestSheet:
    """Paper that stays in the car."""

    def test_a_person_s_sheet_has_what_must_work_without_a_signal(self, before) -> None:
        """Numbers, meeting with leave-by, her plan, light, cards with red flags, in one document without outside parts."""
        html = crew_sheets(before, ["ana"], "sheet")
        (watched,) = before.meetings("maren")
        root = lxml.html.fromstring(html)
        text = " ".join(root.text_content().split())
        assert "112" in text
        assert "+44 1632 960001" in text
        glove = " ".join(root.xpath("//*[@class='glove']")[0].itertext())
        for needed in (
            "Leave by", SAY.when(floor_to(watched.leave_by), day=True),
            "Be there from", SAY.when(floor_to(watched.be_there), day=True),
            "Wait until", SAY.when(watched.wait_until, day=True),
            "head torch", "poles; spare", "112", "+44 1632 960001",
        ):  # fmt: skip
            assert needed in glove, needed
        assert "Torch from" in text
        assert "nausea, vomiting, nothing stays down" in text
        assert "she does not leave until the medic has said she may" in text
        assert not root.xpath("//script | //link | //img | //@src | //@href")

    def test_one_part_a_person(self, before) -> None:
        """Everybody's sheets in one file, each in their own language."""
        root = lxml.html.fromstring(crew_sheets(before, ["ana", "ines"], "sheets"))
        english, german = root.xpath("//section")
        assert (english.get("lang"), german.get("lang")) == ("en", "de")
        assert "Notfallkarte" in german.text_content()
        assert "Was ist geschehen" in german.text_content()

    def test_names_are_text_not_markup(self, event, table, demo_course) -> None:
        """A name with angle brackets in it is shown, never run."""
        bad = replace(event, name="<script>alert(1)</script>")
        html = crew_sheets(before_start(bad, {"maren": table}, {"main": demo_course}, STAMP), ["ana"], "x")
        assert "<script>" not in html
        assert "&lt;script&gt;" in html


def test_paper_is_made_for_the_time_before_the_start(event, table, demo_course) -> None:
    """Asked for after the race began, paper still says what was planned, as of an hour before the start."""
    late = before_start(event, {"maren": table}, {"main": demo_course}, table.start + timedelta(hours=50))
    early = before_start(event, {"maren": table}, {"main": demo_course}, STAMP)
    assert late.at == table.start - BEFORE
    assert [m.leave_by for m in late.meetings("maren")] == [m.leave_by for m in early.meetings("maren")]
