"""Crew who come from one meeting with her to the next: leave once she has left, on sheet and in calendar alike."""

from __future__ import annotations

import re
from datetime import timedelta
from pathlib import Path

import icalendar
import pytest

from server.api.building import build
from server.conversation.telling.reader import Reader
from server.conversation.telling.say import Say
from server.event.model import Goal
from server.paper.after_her import after_her
from server.paper.before import BeforeStart, before_start
from server.paper.calendar import appointments_of, calendar
from server.paper.meeting import glove_meeting, meeting_lines


@pytest.fixture(scope="module")
def before() -> BeforeStart:
    """The demo's race before its start."""
    folder = Path(__file__).resolve().parents[2] / "demo_event"
    built = build(
        (folder / "event.toml").read_text("utf-8"), {"route.gpx": (folder / "route.gpx").read_bytes()}
    )
    start = min(t.start for t in built.timetables.values())
    return before_start(built.event, built.timetables, built.courses, start - timedelta(hours=12))


@pytest.fixture(scope="module")
def say(before: BeforeStart) -> Say:
    """In English, on the event's clock."""
    return Say(Reader("en", before.event.time_zone, before.event.time_zone), before.at)


def to(before: BeforeStart, point: str):
    """Her meeting there."""
    return next(m for m in before.meetings("maren") if m.point == point)


def test_not_by_the_clock_while_she_is_at_the_meeting_before(before, say) -> None:
    """Ana comes to Brindle Gate from Skelter Mill: once she has left it, with the times of A, B and C; no leave-by."""
    said = "\n".join(meeting_lines(before, "maren", to(before, "brindle"), say))
    assert "Leave once Maren has left Skelter Mill, at the latest" in said
    assert "not before" in said
    assert re.search(r"A Sat \d\d:\d\d, B \d\d:\d\d and C \d\d:\d\d", said)
    assert "Leave by" not in said
    cell = glove_meeting(before, "maren", to(before, "brindle"), say).cells[0]
    assert cell.time == "once she has left Skelter Mill"
    assert "at the latest" in cell.below


def test_the_first_meeting_of_a_car_has_its_leave_by(before, say) -> None:
    """From the start nobody waits for her: by the clock as ever."""
    assert after_her(before, "maren", to(before, "mill")) is None
    assert "Leave by Sat" in "\n".join(meeting_lines(before, "maren", to(before, "mill"), say))


def test_who_leaves_at_the_latest_is_there_before_her(before) -> None:
    """So long after she has left, and the way itself, is what only one time in thirty-three or a hundred she beats."""
    m = to(before, "brindle")
    found = after_her(before, "maren", m)
    assert found is not None
    assert found.latest is not None
    view = before.views["maren"]
    arrive, leave = view.paths()
    took = arrive[:, view.points.index("brindle")] - leave[:, view.points.index(found.point)]
    way = (found.latest + (m.be_there - m.leave_by)).total_seconds()
    assert float((took >= way).mean()) >= m.p_in_time - 0.005


def test_calendar_titles_say_it_and_begin_when_she_leaves(before, say) -> None:
    """No entry has a driver leave before she comes: it begins at her planned leaving, as its title says."""
    entries = icalendar.Calendar.from_ical(
        calendar(before.event, appointments_of(before, "ana", say), before.at)
    ).walk("VEVENT")
    (brindle,) = [e for e in entries if str(e["summary"]).startswith("For Brindle Gate")]
    assert str(brindle["summary"]) == "For Brindle Gate once Maren has left Skelter Mill"
    table = before.timetable("maren")
    planned = table.start + table.row("mill").leave[Goal.B]
    assert abs(brindle["dtstart"].dt - planned) < timedelta(minutes=1)
    (ring,) = brindle.walk("VALARM")
    assert ring["trigger"].dt == timedelta(0), "nobody is rung away before she is planned to have left"
