"""A start that was put off: light and dark move to where she is by then."""

from __future__ import annotations

from dataclasses import replace
from datetime import timedelta

import pytest

from server.event.model import Goal, Stretch, Target
from server.plan import Timetable, make_timetable
from server.plan.delayed import started_at
from server.plan.light import SunEvent

HOUR = timedelta(hours=1)


@pytest.fixture(scope="module")
def table(make_event, demo_course) -> Timetable:
    """29 h round the demo's course from 04:30 UTC in June."""
    return make_timetable(make_event(Target(finish=29 * HOUR)), "maren", demo_course)


@pytest.fixture(scope="module")
def definition(make_event):
    """Its points."""
    return make_event(Target(finish=29 * HOUR)).courses[0]


def test_a_start_on_time_changes_nothing(table, definition, demo_course) -> None:
    """The plan itself, not something like it."""
    assert started_at(table, definition, demo_course, table.start) is table


def test_the_sun_does_not_wait(table, definition, demo_course) -> None:
    """Three hours later the sun sets at the same hour of the day (to a few minutes: she is elsewhere), three hours
    earlier in her race, and she needs her torch from an earlier km."""
    late = started_at(table, definition, demo_course, table.start + 3 * HOUR)
    was, now = (next(m for m in t.light if m.event is SunEvent.SUNSET) for t in (table, late))
    assert abs(now.at - was.at) < timedelta(minutes=5)
    assert abs(was.elapsed - now.elapsed - 3 * HOUR) < timedelta(minutes=5)
    assert now.km < was.km - 8
    assert late.dark[0].from_km < table.dark[0].from_km - 8
    assert late.start == table.start + 3 * HOUR
    assert late.rows == table.rows


def test_it_agrees_with_a_plan_made_for_that_start(make_event, table, definition, demo_course) -> None:
    """Within 12 minutes and 3 km of what the planner says for a runner who was to start then.
    It shifts her night minutes too."""
    start = table.start + 5 * HOUR
    event = make_event(Target(finish=29 * HOUR))
    runner = replace(event.runners[0], start=start)
    made = make_timetable(replace(event, starts=start, runners=(runner,)), "maren", demo_course)
    moved = started_at(table, definition, demo_course, start)
    assert [m.event for m in moved.light] == [m.event for m in made.light]
    for a, b in zip(moved.light, made.light, strict=True):
        assert abs(a.at - b.at) < timedelta(minutes=12)
        assert abs(a.km - b.km) < 3.0


def test_she_stands_still_at_a_stop(table, definition, demo_course) -> None:
    """A sun that sets while she sits at a point sets at that point's km."""
    k = next(i for i, r in enumerate(table.rows) if r.km > 100)
    rows = [
        replace(r, leave=r.leave | {Goal.B: r.leave[Goal.B] + 6 * HOUR}) if i == k
        else replace(
            r,
            arrive={g: t + 6 * HOUR for g, t in r.arrive.items()},
            leave={g: t + 6 * HOUR for g, t in r.leave.items()},
        ) if i > k else r
        for i, r in enumerate(table.rows)
    ]  # fmt: skip
    long_stop = replace(table, rows=tuple(rows))
    dusk = table.start + table.rows[k].arrive[Goal.B]
    sunset = next(m.at for m in table.light if m.event is SunEvent.SUNSET)
    moved = started_at(long_stop, definition, demo_course, table.start + (sunset - dusk) - HOUR)
    assert any(m.event is SunEvent.SUNSET and abs(m.km - table.rows[k].km) < 0.01 for m in moved.light)


def test_forest_is_dark_earlier_there_too(table, definition, demo_course) -> None:
    """Shade of the event file holds for the start put off as for the plan."""
    woods = replace(definition, stretches=(Stretch(0.0, 161.0, forest_or_gorge=True),))
    start = table.start + HOUR
    plain, dim = (started_at(table, d, demo_course, start).dark[0] for d in (definition, woods))
    assert timedelta(minutes=20) < plain.from_at - dim.from_at < timedelta(minutes=40)
