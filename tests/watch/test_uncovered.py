"""A driver, a car or a pacer falls out: who hears at once, who could go, who goes, what she will lack."""

from __future__ import annotations

from dataclasses import replace
from typing import Any

import pytest

from server.event.model import Drive
from server.facts.entry import Kind, Why
from server.watch.covering import covered
from server.watch.meetings import LOST_UNCOVERED
from server.watch.notice import Answer, Ear, MeetingValues, NoticeKind, UncoveredValues
from server.watch.told_times import meetings_as_told, sight_of

K = NoticeKind


@pytest.fixture
def hour_away(night: Any) -> Any:
    """Vera's red car is an hour from Mill and from Chapel, and she stands by it."""
    more = (
        Drive("hotel", "mill", 60, "vera"),
        Drive("hotel", "chapel", 60, "vera"),
        Drive("mill", "moss", 60, "vera"),
    )
    night.event = replace(night.event, drives=(*night.event.drives, *more))
    night.tick("13:00")
    return night


def open_to(night: Any, kind: NoticeKind = K.UNCOVERED) -> dict[tuple[str, str], UncoveredValues]:
    """What each person was last told of each point."""
    return {(m.notice.key.person, m.notice.key.point): m.notice.values for m in night.got(kind)}


def meeting(night: Any, at: Any, point: str, now: str) -> MeetingValues:
    """A meeting as it is answered."""
    situation = covered(night.situation(at(now)))
    return next(m for m in meetings_as_told(sight_of(situation, "maren", at(now))) if m.point == point)


def test_the_others_hear_at_once_who_could_go_and_by_when(hour_away: Any, at: Any) -> None:
    """The van breaks down: nobody goes to Mill; Vera could, an hour's drive and ten minutes on foot before 'be there'."""
    hour_away.report(Kind.CANNOT_COME, "14:30", "ana", why=Why.CAR, words="the van broke down")
    owed = [n for n in hour_away.tick("14:30") if n.key.kind is K.UNCOVERED]
    assert {n.key.person for n in owed} == {"vera", "jonas", "tomas", "sasha"}
    told = open_to(hour_away)
    assert {p for _, p in told} == {"mill"}, "the later ones are named in the same message"
    vera = told["vera", "mill"]
    (could,) = vera.stand_ins
    assert (could.person, could.drive_from, could.drive_confirmed) == ("vera", "hotel", True)
    be_there = meeting(hour_away, at, "mill", "14:30").be_there
    assert could.leave_by == be_there - (at("15:10") - at("14:00"))
    assert [p for p, _ in vera.also] == ["chapel", "barn", "finish"]
    assert vera.missing == ("poles",)
    asked = {n.key.person: n.buttons for n in owed}
    assert asked == {"vera": (Answer.I_GO.value, Answer.CANNOT.value), "jonas": (), "tomas": (), "sasha": ()}


def test_who_takes_it_over_is_sent_and_who_fell_out_is_not(hour_away: Any) -> None:
    """One word takes it: all hear who goes, she is told to leave, the others get no leave-now."""
    hour_away.report(Kind.CANNOT_COME, "14:30", "ana", why=Why.CAR)
    hour_away.tick("14:30")
    hour_away.report(Kind.TAKES_OVER, "14:33", "vera", about="mill-maren")
    hour_away.tick("14:33")
    covered_ = open_to(hour_away, K.COVERED)
    assert {who for who, p in covered_ if p == "mill"} >= {"vera", "ana", "jonas", "tomas", "sasha", "maren"}
    own = covered_["vera", "mill"]
    assert own.meeting_now is not None
    assert own.meeting_now.leave_by is not None
    hour_away.run("14:34", "17:00")
    assert {m.notice.key.person for m in hour_away.got(K.LEAVE_NOW)} == {"vera"}


def test_the_first_who_takes_it_holds_it(hour_away: Any, at: Any) -> None:
    """Two say 'I go': the first does, whatever order the entries come in."""
    hour_away.report(Kind.CANNOT_COME, "14:30", "ana", why=Why.CAR)
    hour_away.report(Kind.TAKES_OVER, "14:36", "jonas", about="mill-maren")
    hour_away.report(Kind.TAKES_OVER, "14:33", "vera", about="mill-maren")
    assert meeting(hour_away, at, "mill", "14:40").crew == ("vera",)


def test_taken_back_it_is_as_planned_and_whoever_stood_in_need_not_go(hour_away: Any, at: Any) -> None:
    """'Got it started again': Ana goes, Vera is told that she need not, and a second word changes nothing."""
    hour_away.report(Kind.CANNOT_COME, "14:30", "ana", why=Why.CAR)
    hour_away.tick("14:30")
    hour_away.report(Kind.TAKES_OVER, "14:33", "vera", about="mill-maren")
    hour_away.tick("14:33")
    hour_away.report(Kind.CAN_COME, "14:50", "ana")
    owed = [n for n in hour_away.tick("14:50") if n.key.kind is K.COVERED]
    assert all(n.values.back for n in owed)
    assert "vera" in {n.key.person for n in owed}
    assert "ana" not in {n.key.person for n in owed}
    assert meeting(hour_away, at, "mill", "14:50").crew == ("ana", "jonas")
    assert [n for n in hour_away.tick("14:51") if n.key.kind in (K.COVERED, K.UNCOVERED)] == []


def test_nobody_takes_it_and_after_ten_minutes_she_home_and_organisers_hear(hour_away: Any) -> None:
    """Not before: nobody is worried who need not be. Then she hears what will not be there, once."""
    hour_away.report(Kind.CANNOT_COME, "14:30", "ana", why=Why.CAR)
    log = hour_away.run("14:30", "14:39")
    assert not [n for _, n in log if n.key.person in ("maren", "olga")]
    hour_away.tick("14:40")
    her = open_to(hour_away)["maren", "mill"]
    assert (her.ear, her.missing) == (Ear.HER, ("poles",))
    assert {m.notice.key.person for m in hour_away.got(K.UNCOVERED) if m.notice.values.again} == {
        "vera",
        "sasha",
        "olga",
    }
    hour_away.run("14:41", "15:00")
    assert len([m for m in hour_away.got(K.UNCOVERED, "maren") if m.notice.key.point == "mill"]) == 1


def test_another_driver_in_the_car_drives_and_nobody_else_hears(night: Any) -> None:
    """Ana is too tired; Jonas drives as well: he is told, and the meeting is as it was."""
    parts = tuple(replace(p, drives=True) if p.person == "jonas" else p for p in night.event.parts)
    night.event = replace(night.event, parts=parts)
    night.report(Kind.CANNOT_COME, "14:30", "ana", why=Why.DRIVER, words="too tired to drive")
    owed = [n for n in night.tick("14:30") if n.key.kind is K.UNCOVERED]
    assert [(n.key.person, n.values.driver, n.values.ear) for n in owed] == [("jonas", "jonas", Ear.GOES)]


def test_said_by_another_the_person_hears_and_may_say_that_it_is_wrong(hour_away: Any) -> None:
    """Jonas says that Ana can't: Ana is told and asked, like the others."""
    hour_away.report(Kind.CANNOT_COME, "14:30", "jonas", person="ana", why=Why.DRIVER)
    owed = {n.key.person: n for n in hour_away.tick("14:30") if n.key.kind is K.UNCOVERED}
    assert owed["ana"].values.ear is Ear.FALLEN
    assert owed["ana"].buttons == (Answer.I_GO.value,)
    assert "jonas" not in owed


def test_the_same_said_twice_is_told_once(hour_away: Any) -> None:
    """A second word of the same person changes nothing."""
    hour_away.report(Kind.CANNOT_COME, "14:30", "ana", why=Why.CAR)
    first = [n for n in hour_away.tick("14:30") if n.key.kind is K.UNCOVERED]
    hour_away.report(Kind.CANNOT_COME, "14:32", "ana", why=Why.CAR)
    hour_away.report(Kind.CANNOT_COME, "14:33", "ana", why=Why.NOT_SAID, about="mill-maren")
    assert first
    assert not [n for n in hour_away.tick("14:33") if n.key.kind is K.UNCOVERED]


def test_a_pacer_falls_out_and_she_and_those_before_hear_it(night: Any) -> None:
    """Nobody else paces: she hears at once, those who meet her before are to say it, and who meets her there goes on."""
    night.tick("13:00")
    night.report(Kind.CANNOT_COME, "19:00", "tomas", why=Why.PACER, words="twisted my ankle")
    night.tick("19:00")
    told = open_to(night)
    assert told["maren", "moss"].pacer == "tomas"
    assert told["ana", "moss"].ear is Ear.MEETS_HER
    assert told["sasha", "moss"].pacer == "tomas"
    assert not {p for _, p in told} - {"moss"}


def test_who_rides_in_the_broken_car_is_not_asked_to_drive(hour_away: Any) -> None:
    """Jonas drives as well, but the van is what does not run."""
    parts = tuple(replace(p, drives=True) if p.person == "jonas" else p for p in hour_away.event.parts)
    hour_away.event = replace(hour_away.event, parts=parts)
    hour_away.report(Kind.CANNOT_COME, "14:30", "ana", why=Why.CAR)
    hour_away.tick("14:30")
    assert [s.person for s in open_to(hour_away)["vera", "mill"].stand_ins] == ["vera"]


def test_an_open_meeting_is_answered_as_such(hour_away: Any, at: Any) -> None:
    """Nobody who asks is told that crew will be there."""
    hour_away.report(Kind.CANNOT_COME, "14:30", "ana", why=Why.CAR)
    m = meeting(hour_away, at, "mill", "14:31")
    assert (m.lost, m.crew) == (LOST_UNCOVERED, ())


@pytest.mark.parametrize(("left", "first"), [(False, "chapel"), (True, "mill")])
def test_a_car_that_breaks_down_where_it_is_needed_still_meets_her_there(
    night: Any, left: bool, first: str
) -> None:
    """Ana stands at Mill, which needs no drive; had she left it again, Mill would be open."""
    night.report(Kind.CREW_THERE, "15:50", "ana", runner=None, point="mill")
    if left:
        night.report(Kind.CREW_LEFT, "16:00", "ana", runner=None, point="mill")
    night.report(Kind.CANNOT_COME, "16:10", "ana", why=Why.CAR)
    night.tick("16:10")
    points = [m.notice.key.point for m in night.got(K.UNCOVERED, "vera")]
    assert points[0] == first
    assert left == ("mill" in points)


def test_of_two_people_said_by_one_both_are_out(hour_away: Any, at: Any) -> None:
    """Sasha says it of Ana and of Vera: nobody is left."""
    hour_away.report(Kind.CANNOT_COME, "14:30", "sasha", person="ana", why=Why.DRIVER)
    hour_away.report(Kind.CANNOT_COME, "14:31", "sasha", person="vera", why=Why.DRIVER)
    hour_away.tick("14:31")
    assert open_to(hour_away)["jonas", "mill"].stand_ins == ()
    assert {f.person for f in hour_away.situation(at("14:31")).state.fallen} == {"ana", "vera"}
