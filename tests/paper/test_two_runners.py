"""Two runners, one driver: sheet and calendar by the clock, and when to leave the one for the other."""

from __future__ import annotations

from dataclasses import replace
from datetime import UTC, datetime
from functools import cache

import icalendar
import pytest

from server.api.building import Built, build
from server.event.model import DropBag, KitItem, Signal
from server.paper.before import BeforeStart, before_start
from server.paper.calendar import appointments_of, calendar
from server.paper.document import Met
from server.paper.sheet import sheets_of
from server.paper.writing import Writing
from server.plan.movements import course_spots, crew_plan
from tests.paper.test_parts import text
from tests.paper.three_races import DAY

OLIVE = """
[[runners]]
id = "olive"
name = "Olive"
target = { finish = "9:40" }

[[people]]
id = "olive"
name = "Olive"
parts = [{ kind = "runner", runner = "olive" }]
"""
BOTH = DAY.but(
    ('[[meetings]]\npoint = "tarn"', '[[meetings]]\nrunner = "olive"\npoint = "tarn"'),
    ('[[meetings]]\npoint = "farm"', '[[meetings]]\nrunner = "iona"\npoint = "farm"'),
    ('[[meetings]]\npoint = "finish"', '[[meetings]]\nrunner = "olive"\npoint = "finish"'),
    ('runner = "iona", ladder = 2', "ladder = 2"),
    ('runner = "iona", ladder = 1', "ladder = 1"),
).and_also(OLIVE)
"""Bea meets Olive at the tarn, then Iona at the farm, then Olive again."""


@cache
def planned() -> tuple[Built, BeforeStart]:
    """The race and the situation before its start."""
    built = build(BOTH.event_text(), BOTH.files)
    now = datetime(2027, 1, 1, 12, 0, tzinfo=UTC)
    return built, before_start(built.event, built.timetables, built.courses, now)


@pytest.fixture
def sheet():
    """Bea's."""
    built, before = planned()
    moves = crew_plan(
        built.event, built.timetables, before.views, spots=course_spots(built.event, built.courses)
    )
    (found,) = sheets_of(before, ["bea"], moves)
    return found


def test_meetings_in_the_order_of_the_clock(sheet) -> None:
    """Not runner by runner: she drives from the one to the other."""
    met = [b for b in sheet.pages[0].blocks if isinstance(b, Met)]
    assert [m.about.split(",")[0] for m in met] == ["Olive", "Iona", "Olive"]
    assert [m.place for m in met] == ["Stone Tarn", "Howe Farm", "Larch green"]


def test_the_one_is_left_for_the_other_by_the_time_that_ends_the_wait(sheet) -> None:
    """To the farm once Olive has left the tarn, and never told to leave before the wait there is over."""
    _, before = planned()
    tarn, farm = (b for b in sheet.pages[0].blocks if isinstance(b, Met) and b.place != "Larch green")
    (wait,) = [c.time for c in tarn.cells if c.name == "Wait until"]
    assert farm.cells[0].time == "once Olive has left Stone Tarn"
    assert f"by {wait} at the latest" in farm.cells[0].below
    entries = icalendar.Calendar.from_ical(
        calendar(before.event, appointments_of(before, "bea", Writing(before, "bea", None).say), before.at)
    ).walk("VEVENT")
    assert "For Howe Farm once Olive has left Stone Tarn" in [str(e["summary"]) for e in entries]


def test_what_both_share_stands_there_once_and_a_bag_says_whose_it_is(sheet) -> None:
    """The stretch without signal once; no heading over own words that nobody wrote."""
    built, before = planned()
    words = text(sheet)
    car = " ".join(text(replace(sheet, pages=(p,))) for p in sheet.pages[1:2])
    assert car.count("Nick side") == 1
    assert "For bad moments, in Olive’s own words" not in words
    runners = tuple(
        replace(r, drop_bags=(DropBag("tarn", (KitItem("dry socks"),)),)) for r in built.event.runners
    )
    bagged = replace(before, situation=replace(before.situation, event=replace(built.event, runners=runners)))
    (other,) = sheets_of(bagged, ["bea"], None)
    assert "To be had at Stone Tarn for Olive: dry socks" in text(other)


def test_new_times_reach_nobody_without_signal() -> None:
    """Where there is none the sheet says from where on new times come."""
    silent = BOTH.but(
        ("stop_minutes = 8\nnote", 'stop_minutes = 8\nsignal = "none"\nnote'),
        ('runner = "iona"\npoint = "farm"', 'runner = "olive"\npoint = "farm"'),
    )
    built = build(silent.event_text(), silent.files)
    assert built.event.course_of("olive").point("tarn").signal is Signal.NONE
    before = before_start(built.event, built.timetables, built.courses, datetime(2027, 1, 1, tzinfo=UTC))
    say = Writing(before, "bea", None).say
    words = [a.words for a in appointments_of(before, "bea", say)]
    assert sum("new times come by message once you are where there is signal" in w for w in words) == 1
