"""Somebody has her with no retirement and no alarm: home and the crew elsewhere hear it once, calmly; nobody is asked."""

from __future__ import annotations

from typing import Any

from server.facts.entry import Kind, Retired
from server.watch.notice import InHandValues, NoticeKind, StandDownValues, Urgency

K = NoticeKind


def told(owed: list[Any], kind: NoticeKind = K.IN_HAND) -> list[str]:
    """Who is owed that kind."""
    return sorted(n.key.person for n in owed if n.key.kind is kind)


def test_home_and_the_other_crew_are_told_once_what_where_and_by_whom(night: Any, at: Any) -> None:
    """'We have her at the mill': the same minute, with place, words and who says so; nothing to answer."""
    night.tick("14:30")
    night.report(Kind.IN_HAND, "16:40", "ana", point="mill", words="she is in our tent")
    owed = night.tick("16:40")
    assert told(owed) == ["sasha", "tomas", "vera"], "Jonas is in the car with Ana"
    notice = next(n for n in owed if n.key.kind is K.IN_HAND)
    assert notice.values == InHandValues(at("16:40"), "ana", "mill", 20.0, "she is in our tent")
    assert (notice.urgency, notice.needs_answer) == (Urgency.ACTION, False)
    log = [n for _, n in night.run("16:41", "17:30")]
    assert told(log) == []


def test_who_said_it_is_not_told(night: Any) -> None:
    """Sasha heard it on the telephone and reports it herself."""
    night.report(Kind.IN_HAND, "16:40", "sasha")
    assert "sasha" not in told(night.tick("16:40"))


def test_the_end_of_an_alarm_tells_it_already(night: Any) -> None:
    """She called for help, somebody has her: the stand-down says so, and no second message does."""
    night.report(Kind.ASKED_FOR_HELP, "16:30", "maren")
    night.tick("16:30")
    night.report(Kind.IN_HAND, "16:40", "ana")
    owed = night.tick("16:40")
    assert "sasha" in told(owed, K.STAND_DOWN)
    assert isinstance(next(n for n in owed if n.key.kind is K.STAND_DOWN).values, StandDownValues)
    assert told(owed) == told(night.tick("16:41")) == []


def test_a_retirement_tells_it_in_its_own_way(night: Any) -> None:
    """Retired and in hand in one breath: one message, that of the retirement."""
    night.report(Kind.RETIRED, "16:40", "ana", how=Retired.OWN_CHOICE, point="mill")
    night.report(Kind.IN_HAND, "16:40", "ana")
    assert told(night.tick("16:40")) == []


def test_taken_back_is_told_and_gone_on_is_not(night: Any) -> None:
    """It was somebody else in the tent: home hears it. That she goes on takes nothing back."""
    wrong = night.report(Kind.IN_HAND, "16:40", "ana")
    night.tick("16:40")
    night.report(Kind.TAKEN_BACK, "16:45", "ana", about=wrong)
    assert told(night.tick("16:45"), K.CORRECTION) == ["sasha", "tomas", "vera"]
    night.report(Kind.IN_HAND, "16:50", "ana")
    assert told(night.tick("16:50")) == ["sasha", "tomas", "vera"]
    night.report(Kind.MOVING_AGAIN, "17:00", "ana")
    owed = night.tick("17:00")
    assert told(owed, K.CORRECTION) == told(owed) == []
