"""Her recordings against the course: what is enough, what is missing, and by when."""

from __future__ import annotations

from dataclasses import replace
from datetime import UTC, datetime, timedelta

import numpy as np
import pytest

from server.course import Course
from server.event.model import Target
from server.plan import make_timetable
from server.plan.ready import Against, ReadyPart, past, ready
from server.plan.recordings import Recording
from tests.plan.synthetic import record


@pytest.fixture(scope="module")
def short() -> Recording:
    """20 km by day on gentle hills."""
    return record(np.random.default_rng(4), 20.0, 0.04, 9.0, name="short.gpx")


def against(event, course: Course, recordings: list[Recording]) -> dict[ReadyPart, Against]:
    """By part."""
    table = make_timetable(event, "maren", course)
    return {a.part: a for a in ready(event, table, course, recordings)}


def test_a_short_run_by_day_is_not_enough(demo_course, make_event, short: Recording) -> None:
    """161 km over a night: hours, and dark, are missing; each with a day before the start."""
    event = make_event(Target(finish=timedelta(hours=29)), limit=None)
    found = against(event, demo_course, [short])
    start = event.runners[0].start.date()
    assert found[ReadyPart.FEET].by == start - timedelta(days=21)
    assert found[ReadyPart.FEET].asked == 8.0
    assert found[ReadyPart.FEET].file == "short.gpx"
    assert found[ReadyPart.DARK].had == 0.0
    assert found[ReadyPart.DARK].by == start - timedelta(days=10)


def test_a_run_into_the_night_has_the_dark(demo_course, make_event, short: Recording) -> None:
    """The same run begun after sunset at 50 north in May."""
    event = make_event(Target(finish=timedelta(hours=29)), limit=None)
    late = replace(short, started=datetime(2026, 5, 1, 20, 30, tzinfo=UTC))
    dark = against(event, demo_course, [late])[ReadyPart.DARK]
    assert dark.had > 1.8
    assert (dark.by is None) == (dark.had >= dark.asked)


def test_a_level_day_race_asks_for_no_hills_or_dark(level_course, make_event, short: Recording) -> None:
    """50 km by day at one height: hours, and climb that anybody has; no steep ground, no dark."""
    event = make_event(Target(finish=timedelta(hours=7)), limit=None)
    km50 = tuple(p for p in event.courses[0].points if (p.km or 0) < 46)
    last = replace(event.courses[0].points[-1], km=50.0)
    event = replace(event, courses=(replace(event.courses[0], points=(*km50, last)),))
    found = against(event, level_course, [short])
    assert set(found) == {ReadyPart.FEET, ReadyPart.CLIMB}
    assert found[ReadyPart.CLIMB].by is None


def test_past() -> None:
    """The day itself still counts."""
    day = datetime(2027, 6, 1, 12, tzinfo=UTC)
    assert not past(day.date(), day)
    assert past(day.date() - timedelta(days=1), day)
