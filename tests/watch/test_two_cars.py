"""Two cars come to one meeting, from home and from the last point: each has its own leave-by, reminder and fate."""

from __future__ import annotations

from dataclasses import replace
from datetime import timedelta
from typing import Any

import pytest

from server.event.model import Drive
from server.facts.entry import Kind
from server.journal.codec import dump_values, load_values
from server.plan.movements import crew_plan
from server.watch.notice import MeetingValues, NoticeKind
from server.watch.told_times import meetings_as_told, sight_of

MINUTES = timedelta(minutes=1)


@pytest.fixture
def two(night: Any) -> Any:
    """Vera comes to Chapel as well, in the red car from the hotel, half an hour away; Ana and Jonas from Mill."""
    plans = tuple(
        replace(m, crew=(*m.crew, "vera")) if m.id == "chapel-maren" else m for m in night.event.meetings
    )
    drives = (*night.event.drives, Drive("hotel", "chapel", 30, "vera"))
    night.event = replace(night.event, meetings=plans, drives=drives)
    return night


def chapel(night: Any, now: Any) -> MeetingValues:
    """The meeting at Chapel."""
    return next(
        m for m in meetings_as_told(sight_of(night.situation(now), "maren", now)) if m.point == "chapel"
    )


def unreached(night: Any) -> list[Any]:
    """Who was asked to reach somebody that did not answer a leave-now for Chapel."""
    asked = [m for m in night.got(NoticeKind.UNREACHED) if m.notice.key.point == "chapel"]
    return [m for m in asked if m.notice.values.notice_kind == "leave now"]


def test_each_has_the_way_of_their_own_car(two: Any, at: Any) -> None:
    """Ana from Mill (5 min out, 50 min drive, 10 min on foot), Vera from the hotel (30 min, 10 min)."""
    m = chapel(two, at("14:00"))
    ana, vera = m.own("ana"), m.own("vera")
    assert (ana.drive_from, vera.drive_from) == ("mill", "hotel")
    assert ana.leave_by == m.be_there - 65 * MINUTES
    assert vera.leave_by == m.be_there - 40 * MINUTES
    assert (ana.crew, vera.crew) == (("ana", "jonas"), ("vera",))
    assert m.crew == ("ana", "jonas", "vera")
    assert (ana.next_meeting, vera.next_meeting) == ("barn-maren", "moss-maren")


def test_live_and_plan_know_the_same_cars(two: Any, at: Any) -> None:
    """Every ride of the crew movements is the way of those who sit in it, to each meeting."""
    now = at("14:00")
    situation = two.situation(now)
    views = {r: o.at(now) for r, o in situation.outlooks.items()}
    plan = crew_plan(two.event, {}, views, other_cars=False)
    seen = 0
    for m in meetings_as_told(sight_of(situation, "maren", now)):
        for ride in plan.visit(m.meeting).rides:
            for who in (w for w in ride.riders if w in m.crew):
                seen += 1
                mine = m.own(who)
                assert (mine.drive_from, mine.drive) == (ride.leave_from, ride.last.drive)
                ahead = None if ride.leave_by is None else plan.visit(m.meeting).be_there - ride.leave_by
                assert ahead == (None if mine.leave_by is None else m.be_there - mine.leave_by)
    assert seen == 11, seen


def test_each_car_is_told_at_its_own_time(two: Any, at: Any) -> None:
    """Leave now five minutes before each one's own leave-by; answering for one car says nothing for the other."""
    two.report(Kind.CREW_THERE, "16:00", "ana", runner=None, point="mill")
    two.report(Kind.IN, "16:30", point="mill")
    two.report(Kind.OUT, "16:40", point="mill")
    m = chapel(two, at("16:41"))
    log = two.run("16:41", "21:00")
    told = {
        n.key.person: (when, n.values)
        for when, n in log
        if n.key.kind is NoticeKind.LEAVE_NOW and n.key.point == "chapel"
    }
    assert set(told) == {"ana", "jonas", "vera"}
    for who, (when, values) in told.items():
        assert when == m.own(who).leave_by - 5 * MINUTES
        assert values.drive_from == m.own(who).drive_from
    assert told["ana"][0] < told["vera"][0]


def test_one_car_on_the_way_or_there_does_not_stand_for_the_other(two: Any, at: Any) -> None:
    """Vera sets out early and is there: Ana and Jonas are reminded all the same, and climb their own ladder."""
    two.report(Kind.CREW_THERE, "16:00", "ana", runner=None, point="mill")
    two.report(Kind.OUT, "16:40", point="mill")
    two.report(Kind.CREW_LEFT, "16:45", "vera", runner=None, point="chapel")
    two.report(Kind.CREW_THERE, "17:20", "vera", runner=None, point="chapel")
    two.run("16:41", "21:00")
    assert [m.notice.key.person for m in two.got(NoticeKind.LEAVE_NOW) if m.notice.key.point == "chapel"] == [
        "ana",
        "jonas",
    ]
    asked = unreached(two)
    assert {m.notice.values.person for m in asked} == {"ana"}
    assert "vera" in {m.notice.key.person for m in asked}


def test_an_answer_of_one_car_leaves_the_other_asked(two: Any, at: Any) -> None:
    """Ana answers that they are leaving; Vera, who does not answer, is telephoned."""
    two.report(Kind.CREW_THERE, "16:00", "ana", runner=None, point="mill")
    two.report(Kind.OUT, "16:40", point="mill")
    first = chapel(two, at("16:41"))
    when = first.own("ana").leave_by
    two.run(
        "16:41",
        "23:00",
        {
            f"{when.hour}:{when.minute:02}": lambda n: n.answer(
                NoticeKind.LEAVE_NOW, "ana", "on our way", when
            )
        },
    )
    assert {m.notice.values.person for m in unreached(two)} == {"vera"}


def test_a_car_that_can_not_make_it_loses_nothing_for_the_other(two: Any, at: Any) -> None:
    """Mill to Chapel takes 300 minutes: lost for Ana and Jonas, who are told; the meeting stands, by Vera's car."""
    drives = tuple(d for d in two.event.drives if (d.from_place, d.to_place) != ("mill", "chapel"))
    two.event = replace(two.event, drives=(*drives, Drive("mill", "chapel", 300, "ana")))
    m = chapel(two, at("14:00"))
    assert m.lost == ""
    assert m.own("vera").lost == ""
    assert m.own("ana").lost == "not both"
    assert m.leave_by == m.own("vera").leave_by
    two.run("14:00", "14:05")
    lost = [x.notice.key.person for x in two.got(NoticeKind.MEETING_LOST) if x.notice.key.point == "chapel"]
    assert lost == ["ana", "jonas"]


def test_whoever_is_not_there_hears_from_the_other_car(two: Any, at: Any) -> None:
    """Vera reports her in at Chapel: Ana, still on the road, is told; once Ana is there too she knows it herself."""
    two.report(Kind.CREW_THERE, "16:00", "ana", runner=None, point="mill")
    two.report(Kind.OUT, "16:40", point="mill")
    two.report(Kind.CREW_THERE, "17:20", "vera", runner=None, point="chapel")
    two.report(Kind.IN, "19:20", "vera", point="chapel")
    two.tick("19:21")
    assert [m.notice.key.person for m in two.got(NoticeKind.ARRIVED)] == ["ana", "jonas"]


def test_values_with_several_cars_are_kept(two: Any, at: Any) -> None:
    """What the database keeps of a meeting of two cars is what comes back."""
    m = chapel(two, at("14:00"))
    assert m.ways
    assert load_values(dump_values(m)) == m


def test_who_can_not_get_to_the_car_is_given_no_time_of_it(night: Any, at: Any) -> None:
    """Vera, whose red car stands at the hotel and who is not said to drive, is to come to Chapel in the van, which is at
    Mill then: the van's leave-by from Mill is not hers, and she is told that no drive of hers is known."""
    plans = tuple(
        replace(m, crew=(*m.crew, "vera")) if m.id == "chapel-maren" else m for m in night.event.meetings
    )
    parts = tuple(replace(p, drives=False) if p.person == "vera" else p for p in night.event.parts)
    night.event = replace(night.event, meetings=plans, parts=parts)
    m = chapel(night, at("14:00"))
    assert m.own("ana").leave_by == m.be_there - 65 * MINUTES
    assert (m.own("vera").leave_by, m.own("vera").drive_from) == (None, None)
    assert m.crew == ("ana", "jonas", "vera")
