"""How crews get to meetings, live: walks, sign-in, one car park, estimates, and one crew for two runners."""

from __future__ import annotations

from dataclasses import replace
from datetime import timedelta
from typing import Any

import pytest

from server.event.model import CrewAccess, Drive, Event, MeetingPlan, Rules, Runner, Share, Target
from server.facts.entry import Kind, Source
from server.plan.movements.roads import Roads
from server.watch.crew import meeting_lost
from server.watch.crew_routes import in_time, members, parties, parties_of, roads_in, way_to
from server.watch.meetings import meetings
from server.watch.notice import MeetingValues
from server.watch.runner_context import Draft
from server.watch.told_times import sight_of

MINUTES = timedelta(minutes=1)


def of(night: Any, now: Any, meeting: str, runner: str = "maren") -> MeetingValues:
    """The values of a meeting."""
    return next(m for m in meetings(night.situation(now), runner, now) if m.meeting == meeting)


def access(night: Any, **changes: Any) -> None:
    """Changes the crew access of points."""
    course = night.event.courses[0]
    points = tuple(
        replace(p, access=replace(p.access, **changes[p.id])) if p.id in changes and p.access else p
        for p in course.points
    )
    night.event = replace(night.event, courses=(replace(course, points=points),))


def test_the_way_from_a_meeting_begins_with_the_walk_out(night: Any, at: Any) -> None:
    """From Mill: 5 min back to the car, 50 min drive, 5 walk-in, 5 unloading; from the start nobody walks out."""
    chapel, mill = of(night, at("14:00"), "chapel-maren"), of(night, at("14:00"), "mill-maren")
    assert chapel.leave_by == chapel.be_there - 65 * MINUTES
    assert mill.leave_by == mill.be_there - 50 * MINUTES


def test_a_pacer_signs_in(night: Any, at: Any) -> None:
    """Sign-in of 20 minutes comes on top where a pacer joins, and nowhere else."""
    plain = of(night, at("14:00"), "mill-maren")
    night.event = replace(night.event, rules=Rules(pacer_sign_in=20 * MINUTES))
    assert of(night, at("14:00"), "mill-maren").leave_by == plain.leave_by
    plans = tuple(replace(m, pacer_joins="tomas") if m.point == "mill" else m for m in night.event.meetings)
    night.event = replace(night.event, meetings=plans)
    mill = of(night, at("14:00"), "mill-maren")
    assert mill.leave_by == mill.be_there - 70 * MINUTES


def test_no_crew_before_its_time(night: Any, at: Any) -> None:
    """The race's 'no crew before' holds at every point, as an access's own opening does."""
    night.event = replace(night.event, rules=Rules(crew_not_before=at("16:25")))
    assert of(night, at("14:00"), "mill-maren").be_there == at("16:25")


def test_one_car_park_needs_no_drive(night: Any, at: Any) -> None:
    """Mill and Chapel are one field: the van stays, whatever drives are listed."""
    access(night, mill={"place": "field"}, chapel={"place": "field"})
    chapel = of(night, at("14:00"), "chapel-maren")
    assert chapel.drive == timedelta(0)
    assert chapel.leave_by == chapel.be_there


def test_an_estimate_is_shown_and_sets_no_leave_by(night: Any, at: Any) -> None:
    """Without a listed drive, coordinates give one to show; only a person's word makes it count."""
    access(night, mill={"lat": 54.0, "lon": -2.0}, chapel={"lat": 54.1, "lon": -2.0})
    night.event = replace(night.event, drives=tuple(d for d in night.event.drives if d.to_place != "chapel"))
    chapel = of(night, at("14:00"), "chapel-maren")
    assert chapel.leave_by is None
    assert chapel.drive is not None
    assert not chapel.drive_confirmed
    night.report(Kind.DRIVE_CONFIRMED, "13:00", "ana", runner=None, point="chapel", about="mill")
    assert of(night, at("14:00"), "chapel-maren").leave_by is not None


def test_the_next_relay_runner_goes_too(night: Any) -> None:
    """Who takes over at Chapel has to be brought there, and is among those told."""
    night.event = replace(
        night.event,
        shares=(Share("maren", "maren", "start", "chapel"), Share("maren", "piet", "chapel", "finish")),
    )
    assert members(night.event, night.event.meetings[1]) == ("ana", "jonas", "piet")


def with_jo(event: Event, start: Any, point: str, drives: tuple[Drive, ...]) -> Event:
    """Jo runs the same course from `start`; Ana in the van meets her once, at `point`."""
    jo = Runner("jo", "lena", "Jo", "215", "main", start, Target(finish=timedelta(hours=16)))
    plan = MeetingPlan("jo-meeting", point, "jo", ("ana",), "van")
    return replace(
        event, runners=(*event.runners, jo), meetings=(*event.meetings, plan), drives=(*event.drives, *drives)
    )


def test_one_crew_for_two_runners_in_order_of_time(night: Any, at: Any) -> None:
    """Jo comes to Mill between Maren's Mill and Chapel: from Mill to Mill no drive, to Chapel from there."""
    night.event = with_jo(night.event, at("14:40"), "mill", ())
    ordered = in_time(night.situation(at("14:00")))
    assert [m.id for m in ordered][:3] == ["mill-maren", "jo-meeting", "chapel-maren"]
    assert of(night, at("14:00"), "mill-maren").next_meeting == "jo-meeting"
    jo = of(night, at("14:00"), "jo-meeting", "jo")
    assert (jo.drive, jo.next_meeting) == (timedelta(0), "chapel-maren")
    assert way_to(night.event, night.event.meetings[1], Roads(night.event), ordered).from_place


def test_who_stays_for_the_second_runner_has_missed_nobody(night: Any, at: Any) -> None:
    """Told to leave for Maren at Mill and silent since, as where there is no signal: Jo comes and goes, and nobody is told
    that Jo can't be met any more."""
    night.event = replace(night.event, meetings=night.event.meetings[:1])
    night.event = with_jo(night.event, at("14:00"), "mill", ())
    jo = of(night, at("14:00"), "jo-meeting", "jo")
    assert jo.drive == timedelta(0)
    night.tick("15:05")
    for runner, came, left in (("maren", "16:20", "16:28"), ("jo", "17:20", "17:30")):
        night.report(Kind.IN, came, "lena", runner=runner, point="mill", source=Source.VOLUNTEER)
        night.report(Kind.OUT, left, "lena", runner=runner, point="mill", source=Source.VOLUNTEER)
    lost = meeting_lost(sight_of(night.situation(at("17:32")), "jo", at("17:32")))
    assert [d.person for d in lost if isinstance(d, Draft)] == []


@pytest.mark.parametrize(("minutes", "lost"), [(20, ""), (400, "not both")])
def test_two_runners_who_can_not_both_be_met(night: Any, at: Any, minutes: int, lost: str) -> None:
    """Jo at Chapel soon after Maren at Mill: made with a short drive, said to be lost with a hopeless one; the
    odds of both are told at the first."""
    night.event = with_jo(night.event, at("12:30"), "chapel", ())
    drives = tuple(d for d in night.event.drives if d.to_place != "chapel")
    night.event = replace(night.event, drives=(*drives, Drive("mill", "chapel", minutes, "ana")))
    now = at("14:00")
    assert [m.id for m in in_time(night.situation(now))][:2] == ["mill-maren", "jo-meeting"]
    mill, jo = of(night, now, "mill-maren"), of(night, now, "jo-meeting", "jo")
    assert jo.lost == lost
    assert mill.p_both is not None
    assert (mill.p_both > 0.5) is (lost == "")


def test_a_runner_out_of_the_race_no_longer_counts(night: Any, at: Any) -> None:
    """Jo has retired before Mill: the crew's next meeting is Maren's again."""
    night.event = with_jo(night.event, at("14:40"), "mill", ())
    night.report(Kind.RETIRED, "15:30", runner="jo")
    assert of(night, at("15:31"), "mill-maren").next_meeting == "chapel-maren"


def test_who_comes_in_which_car_follows_the_order_of_the_moment(night: Any, at: Any) -> None:
    """What was found of an event stands only as long as the order and the drives: Jo is seen to come first, then out."""
    night.event = with_jo(night.event, at("14:40"), "mill", ())
    seen = []
    for clock, report in (
        ("14:00", None),
        ("15:10", {"kind": Kind.IN, "clock": "15:05", "point": "mill", "source": Source.VOLUNTEER}),
        ("15:31", {"kind": Kind.RETIRED, "clock": "15:30"}),
    ):
        if report is not None:
            night.report(report.pop("kind"), report.pop("clock"), "lena", runner="jo", **report)
        situation = night.situation(at(clock))
        found = parties_of(situation)
        assert found == parties(night.event, roads_in(situation), in_time(situation))
        seen.append([*found])
    assert seen[0] != seen[1]


def test_crew_access_is_found_without_one(night: Any, at: Any) -> None:
    """A meeting at a point without access (help anywhere) has no walk and no unloading."""
    course = night.event.courses[0]
    points = tuple(replace(p, access=None) if p.id == "mill" else p for p in course.points)
    night.event = replace(night.event, courses=(replace(course, points=points),))
    assert CrewAccess().unloading > timedelta(0)
    mill = of(night, at("14:00"), "mill-maren")
    assert mill.leave_by == mill.be_there - 40 * MINUTES


def test_a_wait_cut_short_says_the_odds_that_she_has_come(night: Any, at: Any) -> None:
    """Jo, independent of Maren, is due at Chapel: the wait for Maren at Mill ends where Jo's meeting would be in danger,
    and with it stand the odds that Maren has come by then; an uncut wait has none."""
    night.event = with_jo(night.event, at("13:00"), "chapel", ())
    drives = tuple(d for d in night.event.drives if d.to_place != "chapel")
    night.event = replace(night.event, drives=(*drives, Drive("mill", "chapel", 20, "ana")))
    mill, barn = of(night, at("14:00"), "mill-maren"), of(night, at("14:00"), "barn-maren")
    view = night.situation(at("14:00")).outlooks["maren"].at(at("14:00"))
    came = view.arrivals[:, view.points.index("mill")] <= mill.wait_until.timestamp()
    assert mill.p_comes == pytest.approx(float(came.mean()))
    assert 0.3 < mill.p_comes < 0.9  # type: ignore[operator]
    assert barn.p_comes is None


def test_nobody_waits_past_the_end_of_the_race(night: Any, at: Any) -> None:
    """With a limit of 16 h nobody waits at the finish after 30:00; a start put off by an hour puts that off too."""
    plain = of(night, at("14:00"), "finish-maren")
    assert plain.wait_until > at("30:00")
    night.event = replace(night.event, limit=timedelta(hours=16))
    assert of(night, at("14:00"), "finish-maren").wait_until == at("30:00")
    night.report(Kind.START_DELAYED, "13:00", "olga", runner=None, amount=60 * MINUTES)
    assert of(night, at("13:30"), "finish-maren").wait_until == at("31:00")
