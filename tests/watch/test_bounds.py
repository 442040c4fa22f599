"""Where rules of the watch begin and end: the moment, the person, the state at which each of them turns."""

from __future__ import annotations

from dataclasses import replace
from datetime import timedelta
from typing import Any

import pytest

from server.event.model import CutOff, Edge, MeetingPlan
from server.facts.entry import Kind, Source
from server.watch.crew_whereabouts import on_road_until, set_out
from server.watch.escalation import steps_of
from server.watch.no_word import no_word
from server.watch.notice import NoticeKind, WhyNow
from server.watch.pick_up import fetchers
from server.watch.runner_context import Sight
from server.watch.silence import overdue
from server.watch.timed_out import goes_no_further, missed
from server.watch.told_times import sight_of
from tests.watch.test_crew import told, with_person
from tests.watch.test_timed_out import out_limit

K = NoticeKind
LENA: dict[str, Any] = {"by": "lena", "source": Source.VOLUNTEER}


def sight(night: Any, when: Any) -> Sight:
    """What the rules look at."""
    return sight_of(night.situation(when), "maren", when)


def test_told_missing_still_waits_the_grace_after_she_was_late(night: Any, at: Any) -> None:
    """Ana says 'not here yet' when she almost surely would have been there: the agreed grace holds for that too."""
    grace = timedelta(hours=3)
    night.event = replace(night.event, alarm=replace(night.event.alarm, grace=grace))
    night.report(Kind.OUT, "16:40", point="mill", **LENA)
    before = sight(night, at("16:41"))
    assert before.outlook is not None
    assert before.seen_view is not None
    late = before.outlook.late_time()
    assert late is not None
    said = before.seen_view.arrival(late[0], 1.0 - night.event.alarm.line) + timedelta(minutes=1)
    night.report(Kind.NOT_HERE_YET, said, "ana", point=late[0])
    due = overdue(sight(night, said + timedelta(minutes=1)))
    assert due is not None
    assert due.at == late[1] + grace


@pytest.mark.parametrize(("limit", "cut_off", "over"), [(12, None, 12), (12, 10, 10), (10, 12, 10)])
def test_the_race_s_time_for_her_ends_a_silence_that_nobody_would_break(
    night: Any, at: Any, limit: float, cut_off: float | None, over: float
) -> None:
    """Nobody reports from anywhere: the limit or the cut-off of the finish, whichever is first, and the grace."""
    night.reported = ()
    night.event = replace(night.event, limit=timedelta(hours=limit))
    if cut_off is not None:
        course = night.event.courses[0]
        ends = replace(course.points[-1], cut_offs=(CutOff(Edge.IN, elapsed=timedelta(hours=cut_off)),))
        night.event = replace(night.event, courses=(replace(course, points=(*course.points[:-1], ends)),))
    due = overdue(sight(night, at("17:00")))
    assert due is not None
    assert due.why is WhyNow.LIMIT
    assert due.at == night.event.starts + timedelta(hours=over) + night.event.alarm.grace


@pytest.mark.parametrize(("marked", "on_the_road"), [(True, ["ana"]), (False, ["ana", "jonas"])])
def test_where_nobody_is_marked_as_driver_whoever_sets_out_is_at_the_wheel(
    night: Any, at: Any, *, marked: bool, on_the_road: list[str]
) -> None:
    """Nobody on the road is asked anything; a passenger may be, where somebody else is known to drive."""
    if not marked:
        night.event = replace(night.event, parts=tuple(replace(p, drives=False) for p in night.event.parts))
    for who in ("ana", "jonas"):
        night.report(Kind.CREW_LEFT, "15:05", who, runner=None, point="start")
    seen = sight(night, at("15:10"))
    assert [w for w in ("ana", "jonas") if on_road_until(seen, w) is not None] == on_the_road


def test_a_driver_counts_as_on_the_road_a_quarter_longer_than_the_drive(night: Any, at: Any) -> None:
    """40 minutes to the mill, 5 on foot, 5 to unload: a slow road is no reason to ring somebody at the wheel."""
    night.report(Kind.CREW_LEFT, "15:05", "ana", runner=None, point="start")
    seen = sight(night, at("15:10"))
    assert on_road_until(seen, "ana") == at("15:05") + timedelta(minutes=50) * 1.25


@pytest.mark.parametrize(("left", "for_it"), [("08:20", False), ("08:50", True)])
def test_a_departure_of_long_ago_was_for_something_else(
    night: Any, at: Any, left: str, *, for_it: bool
) -> None:
    """More than six hours: whoever went from there in the morning has not set out for her."""
    night.report(Kind.CREW_LEFT, left, "ana", runner=None, point="start")
    seen = sight(night, at("14:30"))
    assert set_out(seen, seen.plan("mill-maren"), ("ana", "jonas")) is for_it


def test_a_meeting_lost_waits_for_a_sleeper(night: Any) -> None:
    """Nothing is to be done about it before they are up; who is awake hears at once."""
    with_person(night, "vera", quiet_from="15:00", quiet_to="20:00")
    night.report(Kind.ACCESS_CLOSED, "15:00", "olga", runner=None, point="moss", source=Source.VOLUNTEER)
    assert told(night.tick("15:00"), K.MEETING_LOST) == ["tomas"]
    assert told(night.tick("19:05"), K.MEETING_LOST) == ["vera"]


def test_home_is_asked_first_also_without_a_step_of_their_own(night: Any, at: Any) -> None:
    """The file gives Ana the first step and those at home none: they are asked with her, not after everybody."""
    night.event = replace(
        night.event,
        parts=tuple(replace(p, ladder=None) if p.person == "sasha" else p for p in night.event.parts),
    )
    assert steps_of(sight(night, at("15:00")), K.OVERDUE)[0] == ("sasha", "ana")


@pytest.mark.parametrize(("also_meets", "first"), [(False, "ana"), (True, "vera")])
def test_who_is_bound_for_another_runner_is_asked_to_fetch_her_last(
    night: Any, at: Any, *, also_meets: bool, first: str
) -> None:
    """Ana stands where she has retired, but would not be back in time for Nils: Vera first, however far."""
    maren = night.event.runners[0]
    nils = replace(maren, id="nils", person="nils", name="Nils", bib="215")
    person = replace(night.event.people[0], id="nils", name="Nils")
    night.event = replace(night.event, runners=(maren, nils), people=(*night.event.people, person))
    if also_meets:
        meets = MeetingPlan("chapel-nils", "chapel", "nils", ("ana",), "van")
        night.event = replace(night.event, meetings=(*night.event.meetings, meets))
    night.report(Kind.CREW_THERE, "18:40", "ana", runner=None, point="chapel")
    night.report(Kind.RETIRED, "19:00", "ana", point="chapel")
    seen = sight(night, at("19:01"))
    assert seen.state.retirement is not None
    found = fetchers(seen, seen.state.retirement)
    assert found[0].person == first
    assert {f.person: f.busy for f in found}["ana"] == ("chapel" if also_meets else "")


@pytest.mark.parametrize(("came", "no_further"), [("16:34", False), ("16:40", True)])
def test_that_nobody_reported_her_out_sends_nobody_away(
    night: Any, at: Any, came: str, *, no_further: bool
) -> None:
    """In before the mill closes, and not reported out: asked about, but her meetings stand; in after it they do not."""
    out_limit(night, "mill", hours=2.6)
    night.report(Kind.IN, came, "ana", point="mill")
    seen = sight(night, at("16:50"))
    assert missed(seen) is not None
    assert goes_no_further(seen, "chapel") is no_further


def test_one_word_from_a_car_is_that_of_all_in_it(night: Any, at: Any) -> None:
    """Ana writes 'not yet', Jonas sits beside her: home is not told that he does not answer."""
    night.report(Kind.OUT, "16:40", point="mill", **LENA)
    for who in ("ana", "jonas"):
        night.report(Kind.CREW_THERE, "19:00", who, runner=None, point="chapel")
    outlook = sight(night, at("19:01")).outlook
    assert outlook is not None
    late = outlook.late_time()
    assert late is not None
    assert told(night.tick(late[1]), K.LATE) == ["ana", "jonas"]
    waiting = sight(night, late[1] + timedelta(minutes=1))
    assert [w.who for w in no_word(waiting)] == ["ana", "jonas"]
    night.report(Kind.NOT_HERE_YET, late[1] + timedelta(minutes=2), "ana", point="chapel")
    assert no_word(sight(night, late[1] + timedelta(minutes=3))) == ()
