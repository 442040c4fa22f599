"""What a race that was held says: her fade is found again, stops and intake with their sides."""

from __future__ import annotations

from dataclasses import replace
from datetime import UTC, datetime, timedelta

import pytest

from server.event.model import Goal, Target
from server.facts.entry import Entry, Kind, Source
from server.facts.stop_log import Item, Logged
from server.plan import make_timetable
from server.plan.held import Figure, Passed, drawn_fade, drawn_stops, fade_of, intake_of

START = datetime(2027, 6, 19, 4, tzinfo=UTC)


@pytest.mark.parametrize("strength", [0.6, 1.7])
def test_the_fade_of_a_race_is_found_again(demo_course, make_event, strength: float) -> None:
    """A race run as the model has it with that fade, told only by its times at the points."""
    event = make_event(Target(finish=timedelta(hours=28)), limit=None)
    fades = replace(event, runners=(replace(event.runners[0], fade=strength),))
    rows = make_timetable(fades, "maren", demo_course).rows
    passed = {
        r.point: Passed(r.arrive[Goal.B].total_seconds(), r.leave[Goal.B].total_seconds()) for r in rows
    }
    found = fade_of(event, "maren", demo_course, passed)
    assert found is not None
    assert found.value == pytest.approx(strength, abs=0.1)
    assert found.low < strength < found.high


def test_without_a_finish_nothing_is_said(demo_course, make_event) -> None:
    """Half a race has no halves."""
    event = make_event(Target(finish=timedelta(hours=28)), limit=None)
    passed = {f"p{k}": Passed(3600.0 * 2 * k, None) for k in range(5)}
    assert fade_of(event, "maren", demo_course, passed) is None


def test_one_race_is_drawn_to_what_is_usual() -> None:
    """A fade of 2 from one race is written as less, from three races as nearer to it and surer."""
    one, three = drawn_fade([Figure(2.0, 1.3, 2.7)]), drawn_fade([Figure(2.0, 1.3, 2.7)] * 3)
    assert one is not None
    assert three is not None
    assert 1.2 < one.value < three.value < 2.0
    assert three.high / three.low < one.high / one.low
    assert drawn_fade([]) is None


def test_stops() -> None:
    """Twice as long as planned at eight stops is nearly twice; two stops say nothing."""
    found = drawn_stops([(600.0, 1200.0)] * 8)
    assert found is not None
    assert 1.6 < found.value < 2.0
    assert drawn_stops([(600.0, 1200.0)] * 2) is None


def _log(hours: float, grams: float) -> Entry:
    at = START + timedelta(hours=hours)
    return Entry("", "e", "maren", Kind.LOG, at, at, at, "ana", Source.CREW, "ana", str(hours),
                 logged=(Logged(Item.ATE, grams),))  # fmt: skip


def test_intake_an_hour() -> None:
    """40 g an hour in the first half, 20 in the second; too few entries say nothing."""
    log = [_log(1, 80), _log(3, 120), _log(7, 100)]
    found = intake_of(log, Item.ATE, START, START + timedelta(hours=10))
    assert found == Figure(30.0, 20.0, 40.0, 3)
    assert intake_of(log[:2], Item.ATE, START, START + timedelta(hours=10)) is None
