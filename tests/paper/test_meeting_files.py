"""Meetings in CSV and JSON, read back: every car of each meeting, with the times that the notices give."""

from __future__ import annotations

import csv
import io
import json
from dataclasses import replace
from datetime import UTC, datetime, timedelta
from pathlib import Path
from zoneinfo import ZoneInfo

import pytest

from server.api.building import build
from server.conversation.telling.reader import Reader
from server.conversation.telling.say import Say
from server.conversation.telling.times import floor_to
from server.event.model import Drive
from server.paper.after_her import after_her
from server.paper.before import BeforeStart, before_start
from server.paper.files import to_json
from server.paper.meeting import meeting_lines
from server.paper.meeting_files import CSV_COLUMNS, meetings_csv, meetings_json
from server.paper.moves import move_rows
from server.plan.movements import CrewPlan, course_spots, crew_plan

DEMO = Path(__file__).parents[2] / "demo_event"
STAMP = datetime(2027, 1, 1, 12, 0, tzinfo=UTC)
LONDON = ZoneInfo("Europe/London")


@pytest.fixture(scope="module")
def demo() -> tuple[BeforeStart, CrewPlan]:
    """The demo before its start: two cars come to the finish, one of them on a drive nobody stands by."""
    files = {"route.gpx": (DEMO / "route.gpx").read_bytes()}
    built = build((DEMO / "event.toml").read_text(encoding="utf-8"), files)
    before = before_start(built.event, built.timetables, built.courses, STAMP)
    spots = course_spots(built.event, built.courses)
    return before, crew_plan(built.event, built.timetables, before.views, spots=spots)


def rows_of(before: BeforeStart, moves: CrewPlan) -> list[dict[str, str]]:
    """The CSV as another program reads it."""
    return list(csv.DictReader(io.StringIO(meetings_csv(before, ["maren"], moves))))


def test_csv_has_a_row_for_each_car_with_the_watch_s_times(demo) -> None:
    """Whoever sits in a car stands in its row, with the leave-by, be-there-from and wait-until of their notices."""
    rows, met = rows_of(*demo), demo[0].meetings("maren")
    say = Say(Reader("en", "Europe/London", "Europe/London"), STAMP)
    cars = [m for meeting in met for m in meeting.parties()]
    assert [r["meeting"] for r in rows] == [m.meeting for m in cars]
    assert len(rows) == len(met) + 1
    for row, m in zip(rows, cars, strict=True):
        leave = datetime.fromisoformat(row["leave by"]).replace(tzinfo=LONDON) if row["leave by"] else None
        after = after_her(demo[0], "maren", m)
        assert leave == (floor_to(m.leave_by) if m.leave_by and after is None else None)
        assert row["leave once she has left"] == (after.place if after else "")
        if leave is not None:
            told = meeting_lines(demo[0], "maren", m, say)
            assert any(x.startswith(f"Leave by {leave:%a %H:%M}") for x in told), told
        assert datetime.fromisoformat(row["be there from"]).replace(tzinfo=LONDON) == m.be_there
        assert datetime.fromisoformat(row["wait until"]).replace(tzinfo=LONDON) == m.wait_until
        assert (row["drive confirmed"] == "yes") == m.drive_confirmed
        assert row["if missed"] == m.if_missed
        assert None not in row


def test_the_second_car_has_its_own_row(demo) -> None:
    """The finish: Jonas from Ravel Dod with a leave-by; Ana from Ember Quarry, unconfirmed and so without one."""
    jonas, ana = (r for r in rows_of(*demo) if r["id"] == "finish")
    assert (jonas["who"], jonas["driver"], jonas["car"], jonas["from"]) == (
        "Jonas",
        "Jonas",
        "grey estate",
        "Ravel Dod",
    )
    assert (jonas["leave by"], jonas["leave once she has left"]) == ("", "Ravel Dod")
    assert jonas["at the latest after"]
    assert (ana["who"], ana["from"], ana["drive confirmed"], ana["leave by"]) == (
        "Ana",
        "Ember Quarry",
        "no",
        "",
    )
    assert ana["promised"] == "no"


def test_json_reads_back_to_the_same_moments(demo) -> None:
    """Instants in UTC, lengths in seconds, null where nothing is known; and they stand in the whole plan."""
    before, moves = demo
    say = Say(Reader("en", "Europe/London", "Europe/London"), STAMP)
    whole = to_json(before.event, before.timetable("maren"), say, meetings_json(before, "maren", moves))
    read = json.loads(whole)["meetings"]
    met = before.meetings("maren")
    assert [m["id"] for m in read] == [m.meeting for m in met]
    for one, m in zip(read, met, strict=True):
        assert abs(datetime.fromisoformat(one["likely"]) - m.window.likely) < timedelta(seconds=1)
        assert datetime.fromisoformat(one["be_there"]) == m.be_there
        assert one["p_first"] == round(moves.visit(m.meeting).p_first, 4)
        assert {who for r in one["rides"] for who in r["who"]} == set(m.crew)
        for ride in one["rides"]:
            mine = m.own(ride["who"][0])
            leave = None if ride["leave_by"] is None else datetime.fromisoformat(ride["leave_by"])
            assert leave == (floor_to(mine.leave_by) if mine.leave_by else None)
            assert ride["drive_s"] == (mine.drive.total_seconds() if mine.drive is not None else None)
            assert (leave is None) == (not ride["confirmed"])


def test_a_cell_is_never_a_formula_and_empty_stays_empty(demo) -> None:
    """What begins like a formula is quoted, nothing else is."""
    before, moves = demo
    plans = tuple(replace(m, food="=1+1", if_missed="") for m in before.event.meetings)
    event = replace(before.event, meetings=plans)
    changed = replace(before, situation=replace(before.situation, event=event))
    rows = rows_of(changed, moves)
    assert {r["food"] for r in rows} == {"'=1+1"}
    assert {r["if missed"] for r in rows} == {""}
    assert tuple(rows[0]) == CSV_COLUMNS


def test_a_place_on_the_way_is_the_same_on_every_paper(demo) -> None:
    """Ana sleeps at home between Mill and Brindle Gate: CSV, calendar line and the rows of drives all leave from home,
    and the drive there is a row of its own."""
    before, _ = demo
    meetings = (replace(m, from_place="home") if m.point == "brindle" else m for m in before.event.meetings)
    more = (Drive("mill", "home", 20, "ana"), Drive("home", "brindle", 35, "ana"))
    event = replace(before.event, meetings=tuple(meetings), drives=(*before.event.drives, *more))
    before = before_start(
        event, before.situation.timetables, before.situation.courses, before.situation.event.starts
    )
    moves = crew_plan(event, before.situation.timetables, before.views)
    (row,) = (r for r in rows_of(before, moves) if r["id"] == "brindle")
    m = next(m for m in before.meetings("maren") if m.point == "brindle")
    (ride,) = moves.visit(m.meeting).rides
    assert (row["from"], row["drive"]) == ("home", "0:35:00")
    assert m.leave_by is not None
    assert ride.leave_by is not None
    assert m.be_there - m.leave_by == moves.visit(m.meeting).be_there - ride.leave_by
    say = Say(Reader("en", "Europe/London", "Europe/London"), STAMP)
    assert any("from home" in line for line in meeting_lines(before, "maren", m, say))
    drives = [(r.origin, r.place, r.made_of) for r in move_rows(event, moves, say) if r.meeting == m.meeting]
    assert drives[0][:2] == ("Skelter Mill", "home")
    assert drives[1][:2] == ("home", "Brindle Gate")
    assert "35 min" in drives[1][2]
    assert "20 min" in drives[0][2]
    assert "20 min" not in drives[1][2]
    # The way home and on counts when it is asked how long Ana may wait at Mill.
    mill = next(m for m in before.meetings("maren") if m.point == "mill")
    assert mill.p_both is not None
