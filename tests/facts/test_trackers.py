"""What a tracker says: still is fixes from one spot, quiet is none; and where it and a person can not both be right."""

from __future__ import annotations

from dataclasses import replace
from datetime import datetime, timedelta

import pytest

from server.event.model import CourseDef, Point
from server.facts.entry import Fix, Source
from server.facts.state import Going, PlacedFix, PointTimes, RunnerState, Stamp
from server.facts.trackers import disagree, fixes_of, quiet_since, spell

START = datetime.fromisoformat("2027-06-19T04:00+00:00")
MINUTE = timedelta(minutes=1)
COURSE = CourseDef(
    "main", "x.gpx", tuple(Point(p, p, km, frozenset()) for p, km in (("mill", 20.0), ("moss", 58.0)))
)
M = 1.0 / 111_195.0
"""Degrees of latitude in a metre."""


def stamp(minutes: float, source: Source = Source.TRACKER, by: str = "phone") -> Stamp:
    return Stamp(START + minutes * MINUTE, timedelta(0), f"e{minutes}-{by}", by, source)


def fix(minutes: float, metres: float, km: float | None = 30.0, source: Source = Source.TRACKER) -> PlacedFix:
    return PlacedFix(Fix(54.0 + metres * M, -2.0), stamp(minutes, source), km, 5.0)


def state(*fixes: PlacedFix, **more: object) -> RunnerState:
    return RunnerState("maren", START, Going.MOVING, (), positions=fixes, **more)  # type: ignore[arg-type]


def seen(point: str, minutes: float) -> tuple[PointTimes, ...]:
    return (PointTimes(point, arrived=stamp(minutes, Source.CREW, "ana")),)


def test_a_spell_is_the_fixes_from_the_newest_spot() -> None:
    """Scatter of 100 m is one spot, 200 m is a walk; how long is from its first fix to its last, never to now."""
    walks = [fix(m, 200.0 * m) for m in range(5)]
    stays = [fix(m, 800.0 + 100.0 * (m % 2)) for m in range(5, 60, 5)]
    found = spell(state(*walks, *stays))
    assert found is not None
    assert (found.since, found.until, found.fixes) == (START + 4 * MINUTE, START + 55 * MINUTE, 12)
    assert found.length == 51 * MINUTE
    assert spell(state(*walks)) is None
    assert spell(state(fix(0, 0))) is None
    two = spell(state(fix(0, 0), fix(5, 0)))
    assert two is not None
    assert (two.since, two.until, two.fixes, two.km) == (START, START + 5 * MINUTE, 2, 30.0)
    assert spell(state()) is None


def test_what_other_people_share_is_no_tracker() -> None:
    """A place her crew shared says where they are; her own telephone is as good as a tracker."""
    assert fixes_of(state(fix(0, 0, source=Source.CREW), fix(5, 0, source=Source.SUPPORTER))) == ()
    assert len(fixes_of(state(fix(0, 0), fix(5, 0, source=Source.RUNNER)))) == 2


@pytest.mark.parametrize(
    ("gap", "after", "quiet"), [(5, 29, False), (5, 30, True), (10, 49, False), (10, 50, True)]
)
def test_quiet_is_long_for_that_tracker(gap: int, after: int, quiet: bool) -> None:
    """Half an hour, and five of its usual gaps."""
    fixes = [fix(gap * k, 300.0 * k) for k in range(4)]
    last = START + 3 * gap * MINUTE
    found = quiet_since(state(*fixes), last + after * MINUTE)
    assert found == (last if quiet else None)


def test_one_that_hardly_sent_or_was_ended_is_not_quiet() -> None:
    """Two fixes promise no third; a share that she ended has not gone quiet."""
    now = START + 300 * MINUTE
    assert quiet_since(state(fix(0, 0), fix(5, 300)), now) is None
    three = (fix(0, 0), fix(5, 300), fix(10, 600))
    assert quiet_since(state(*three), now) is not None
    assert quiet_since(state(*three, contact_lost=stamp(11, Source.SERVER, "")), now) is None


@pytest.mark.parametrize(
    ("person", "tracker", "apart"),
    [
        (("moss", 100), (105, 45.0), True),  # the tracker lies 13 km behind where she was seen
        (("moss", 100), (105, 57.5), False),  # scatter about the point
        (("moss", 100), (160, 66.0), False),  # gone on
        (("moss", 100), (105, 66.0), True),  # 8 km in 5 minutes
        (("mill", 100), (40, 45.0), True),  # the tracker was beyond Mill an hour before she was seen in there
        (("mill", 100), (40, 12.0), False),
    ],
)
def test_where_no_way_leads_from_one_to_the_other_they_disagree(
    person: tuple[str, int], tracker: tuple[int, float], apart: bool
) -> None:
    """Both are given, neither is judged."""
    found = disagree(COURSE, replace(state(fix(tracker[0], 0, tracker[1])), times=seen(*person)))
    assert (found is not None) is apart
    if found is not None:
        assert (found.point, found.seen.by, found.km) == (person[0], "ana", tracker[1])


def test_with_one_of_them_missing_nothing_disagrees() -> None:
    """No fix on the line, or nobody who saw her."""
    assert disagree(COURSE, state(fix(5, 0, 45.0))) is None
    assert disagree(COURSE, replace(state(fix(105, 0, None)), times=seen("moss", 100))) is None
