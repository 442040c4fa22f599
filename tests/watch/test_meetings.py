"""Be there from, leave by, wait until: the promise of 97 and 99%, and what moves them."""

from __future__ import annotations

from dataclasses import replace
from datetime import timedelta
from typing import Any

import numpy as np
import pytest

from server.event.model import CrewAccess, CutOff, Drive, Edge, KitItem, KitWeight
from server.facts.entry import Kind
from server.watch.meetings import _tie, meetings
from server.watch.notice import MeetingValues

MINUTES = timedelta(minutes=1)


def of(night: Any, now: Any, point: str) -> MeetingValues:
    """The values of the meeting at a point."""
    return next(m for m in meetings(night.situation(now), "maren", now) if m.point == point)


def with_point(night: Any, pid: str, **changes: Any) -> None:
    """Changes a point of the course."""
    course = night.event.courses[0]
    points = tuple(replace(p, **changes) if p.id == pid else p for p in course.points)
    night.event = replace(night.event, courses=(replace(course, points=points),))


def with_meeting(night: Any, mid: str, **changes: Any) -> None:
    """Changes a planned meeting."""
    plans = tuple(replace(m, **changes) if m.id == mid else m for m in night.event.meetings)
    night.event = replace(night.event, meetings=plans)


@pytest.mark.parametrize(
    ("kit", "pacer", "sure"),
    [
        ((KitItem("poles"),), None, 0.97),
        ((), None, 0.97),
        ((KitItem("poles"), KitItem("head torch", KitWeight.SAFETY)), None, 0.99),
        ((KitItem("poles"),), "tomas", 0.99),
    ],
)
def test_the_crew_is_there_first_at_97_or_99(night: Any, at: Any, kit: Any, pacer: Any, sure: float) -> None:
    """P(crew there before she is), if they leave at the leave-by, is at least 97%; 99% where a safety item or
    a pacer hangs on it (DESIGN 4, Meetings); and the leave-by is not earlier than five minutes' rounding."""
    with_meeting(night, "mill-maren", kit=kit, pacer_joins=pacer)
    m = of(night, at("14:00"), "mill")
    assert m.leave_by is not None
    crew_there = m.leave_by + 40 * MINUTES + 10 * MINUTES
    view = night.situation(at("14:00")).outlooks["maren"].at(at("14:00"))
    arrivals = view.paths()[0][:, view.points.index("mill")]
    assert np.mean(arrivals >= crew_there.timestamp()) >= sure
    assert np.mean(arrivals >= (crew_there + 7 * MINUTES).timestamp()) < 1.0
    assert m.p_in_time == sure


def test_be_there_is_the_tenth_percentile_or_earlier_on_whole_five_minutes(night: Any, at: Any) -> None:
    """'Be there from' never comes after the early edge of the window shown, and is rounded outward."""
    for m in meetings(night.situation(at("14:00")), "maren", at("14:00")):
        assert m.be_there <= m.window.early
        assert m.be_there.minute % 5 == 0
        assert m.wait_until >= m.window.late


def test_an_estimated_drive_sets_no_leave_by(night: Any, at: Any) -> None:
    """The drive to Moss was never confirmed: there is a be-there, no leave-by, and the values say why."""
    m = of(night, at("14:00"), "moss")
    assert m.leave_by is None
    assert m.drive == 60 * MINUTES
    assert not m.drive_confirmed


@pytest.mark.parametrize(
    ("about", "amount", "leave_before"),
    [("hotel", None, 60), (None, None, 60), ("hotel", 75, 75), ("start", 75, None)],
)
def test_a_person_confirms_a_drive_later(
    night: Any, at: Any, about: str | None, amount: int | None, leave_before: int | None
) -> None:
    """An entry 'drive confirmed' sets the leave-by, with its own minutes if given; one about another way
    does not."""
    took = None if amount is None else amount * MINUTES
    night.report(Kind.DRIVE_CONFIRMED, "13:00", "vera", runner=None, point="moss", about=about, amount=took)
    m = of(night, at("14:00"), "moss")
    if leave_before is None:
        assert m.leave_by is None
    else:
        assert m.leave_by == m.be_there - (leave_before + 10) * MINUTES


def test_silence_moves_nothing_but_the_window(night: Any, at: Any) -> None:
    """With nothing heard, be-there, leave-by and wait-until stay as they stood at the last fact; the window
    shown follows what silence says."""
    night.report(Kind.OUT, "16:46", point="mill")
    first = of(night, at("17:00"), "chapel")
    later = of(night, at("20:30"), "chapel")
    assert (later.be_there, later.leave_by, later.wait_until) == (
        first.be_there,
        first.leave_by,
        first.wait_until,
    )
    assert later.window.likely > first.window.likely


def test_a_fact_moves_them(night: Any, at: Any) -> None:
    """An hour lost at Mill moves Chapel; so does an explicit 'not here yet', which counts in full."""
    before = of(night, at("16:00"), "chapel")
    night.report(Kind.OUT, "17:40", point="mill")
    after = of(night, at("17:40"), "chapel")
    assert after.leave_by > before.leave_by  # type: ignore[operator]
    night.report(Kind.NOT_HERE_YET, "20:20", point="chapel")
    told = of(night, at("20:21"), "chapel")
    assert told.be_there > after.be_there


def test_nobody_can_be_there_before_it_opens(night: Any, at: Any) -> None:
    """An access that opens later than 'be there from' moves it to the opening."""
    with_point(night, "mill", access=CrewAccess(opens=at("16:20")))
    assert of(night, at("14:00"), "mill").be_there == at("16:20")


@pytest.mark.parametrize(
    ("closes", "lost"), [("17:00", ""), ("16:35", ""), ("16:25", "access closed"), ("15:00", "access closed")]
)
def test_access_that_closes(night: Any, at: Any, closes: str, lost: str) -> None:
    """Wait until is never later than the closing; an access that closes before she is likely there is lost."""
    with_point(night, "mill", access=CrewAccess(closes=at(closes)))
    m = of(night, at("14:00"), "mill")
    assert m.lost == lost
    if not lost:
        assert m.wait_until == at(closes)


def test_access_closed_by_the_organiser(night: Any, at: Any) -> None:
    """A race-level 'access closed' loses the meeting, 'access opened' gives it back."""
    night.report(Kind.ACCESS_CLOSED, "13:00", "olga", runner=None, point="chapel")
    assert of(night, at("14:00"), "chapel").lost == "access closed"
    night.report(Kind.ACCESS_OPENED, "14:10", "olga", runner=None, point="chapel")
    assert of(night, at("14:20"), "chapel").lost == ""


def test_nobody_waits_past_the_cut_off(night: Any, at: Any) -> None:
    """Chapel closes seven hours after her start; a moved cut-off moves the wait with it."""
    with_point(night, "chapel", cut_offs=(CutOff(Edge.IN, elapsed=timedelta(hours=6)),))
    assert of(night, at("14:00"), "chapel").wait_until == at("20:00")
    night.report(
        Kind.CUT_OFF_MOVED, "14:10", "olga", runner=None, point="chapel", edge="in", until=at("20:20")
    )
    assert of(night, at("14:20"), "chapel").wait_until == at("20:20")


def test_a_late_runner_is_late_at_both(night: Any, at: Any) -> None:
    """Margins alone would pull the crew from Mill before she can have come (Chapel's leave-by comes early);
    on joint paths they may wait, since not seen at Mill she can't be near Chapel."""
    mill, chapel = of(night, at("14:00"), "mill"), of(night, at("14:00"), "chapel")
    assert chapel.leave_by is not None
    assert chapel.leave_by < mill.wait_until
    assert mill.wait_until >= mill.window.late
    assert mill.p_both == 1.0


def test_waiting_ends_while_the_next_meeting_is_still_safe(night: Any, at: Any) -> None:
    """Where her time at the next point hangs little on this one, waiting on with nothing seen costs it: the
    wait ends at the last five minutes from which the crew is still there first with 97%."""
    now = at("14:00")
    view = night.situation(now).outlooks["maren"].at(now)
    arrive = view.arrivals.copy()
    arrive[:, 1] = np.sort(arrive[:, 1])[np.arange(400) * 7 % 400]
    view = replace(view, arrivals=arrive, departures=arrive + 300.0)
    here, there = of(night, now, "mill"), replace(of(night, now, "chapel"), p_in_time=0.97)
    tie = _tie(view, here, there, 105 * MINUTES)
    assert tie is not None
    assert tie.bound is not None
    a, b = arrive[:, 0], arrive[:, 1]
    for when, safe in ((tie.bound, True), (tie.bound + 5 * MINUTES, False)):
        still = a > when.timestamp()
        assert (np.mean(b[still] >= when.timestamp() + 105 * 60) >= 0.97) is np.bool_(safe)


def test_a_drive_longer_than_her_leg_shows_the_odds(night: Any, at: Any) -> None:
    """Going to the first already endangers the second: the odds of both are said, and the wait at the first
    is not cut to nothing for it."""
    drives = tuple(d for d in night.event.drives if d.to_place != "chapel")
    night.event = replace(night.event, drives=(*drives, Drive("mill", "chapel", 178, "ana")))
    mill, chapel = of(night, at("14:00"), "mill"), of(night, at("14:00"), "chapel")
    assert mill.p_both is not None
    assert 0.1 < mill.p_both < 0.97
    assert mill.wait_until >= mill.window.late
    assert chapel.lost == ""


def test_two_meetings_that_cannot_both_be_made(night: Any, at: Any) -> None:
    """A drive far longer than her leg: the second is called lost while the first is still to come."""
    drives = tuple(d for d in night.event.drives if d.to_place != "chapel")
    night.event = replace(night.event, drives=(*drives, Drive("mill", "chapel", 300, "ana")))
    assert of(night, at("14:00"), "chapel").lost == "not both"
    assert of(night, at("14:00"), "mill").lost == ""


def test_the_way_starts_where_the_car_was_last(night: Any, at: Any) -> None:
    """Without a place given, the van comes from its meeting before, and first from where it starts."""
    places = {m.point: m.drive_from for m in meetings(night.situation(at("14:00")), "maren", at("14:00"))}
    assert places == {"mill": "start", "chapel": "mill", "moss": "hotel", "barn": "chapel", "finish": "barn"}


def test_next_meetings_and_no_signal(night: Any, at: Any) -> None:
    """Each meeting names the same crew's next one; Barn says that phones fail there."""
    values = {m.point: m for m in meetings(night.situation(at("14:00")), "maren", at("14:00"))}
    assert values["chapel"].next_meeting == "barn-maren"
    assert values["moss"].next_meeting is None
    assert [p for p, m in values.items() if m.no_signal] == ["barn"]


def test_while_she_is_there_and_once_she_has_gone(night: Any, at: Any) -> None:
    """Arrived: the meeting is on, its window the moment itself. Left: it is over."""
    night.report(Kind.IN, "16:40", point="mill")
    m = of(night, at("16:41"), "mill")
    assert m.window.early == m.window.late == at("16:40")
    night.report(Kind.OUT, "16:50", point="mill")
    assert "mill" not in {x.point for x in meetings(night.situation(at("16:51")), "maren", at("16:51"))}


@pytest.mark.parametrize("kind", [Kind.RETIRED])
def test_no_meetings_once_her_race_is_over(night: Any, at: Any, kind: Kind) -> None:
    """A retired runner has a pick-up, not the meetings of the plan."""
    night.report(kind, "18:00", point="mill")
    assert meetings(night.situation(at("18:01")), "maren", at("18:01")) == ()
