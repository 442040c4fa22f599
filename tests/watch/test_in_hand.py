"""Somebody has her with no retirement and no alarm: home and the crew elsewhere hear it once, calmly; nobody is asked."""

from __future__ import annotations

from typing import Any

from server.conversation.telling.notices import say_notice
from server.conversation.telling.reader import Reader
from server.facts.entry import Kind, Retired
from server.watch.notice import InHandValues, NoticeKind, StandDownValues, Urgency
from server.watch.runner_context import with_us
from server.watch.told_times import sight_of

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
    log = [n for _, n in night.run("16:41", "17:19")]
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


def test_whoever_has_her_is_asked_before_their_word_is_too_old(night: Any, at: Any) -> None:
    """Ana took her in after a call for help: forty minutes on she is asked, with what she may press, and nobody else; said
    again it holds for an hour from then, and she is asked again."""
    night.report(Kind.ASKED_FOR_HELP, "16:30", "maren")
    night.tick("16:30")
    night.report(Kind.IN_HAND, "16:40", "ana")
    log = night.run("16:40", "17:25")
    (asked,) = [(t, n) for t, n in log if n.key.kind is K.IN_HAND]
    assert asked[0] == at("17:20")
    assert (asked[1].key.person, asked[1].needs_answer) == ("ana", True)
    assert asked[1].buttons == ("in hand", "goes on", "race over")
    night.report(Kind.IN_HAND, "17:26", "ana")
    assert with_us(sight_of(night.situation(at("18:25")), "maren", at("18:25")))
    assert not with_us(sight_of(night.situation(at("18:26")), "maren", at("18:26")))
    assert [(t, n.key.person) for t, n in night.run("17:26", "18:30") if n.key.kind is K.IN_HAND] == [
        (at("18:06"), "ana")
    ]
    text = say_notice(asked[1], night.event, Reader("en", "UTC", "UTC"), at("17:20")).text
    assert text.startswith("Is Maren still with you? Your last word of it is of 16:40")
    assert "watched from 17:40" in text


def test_who_goes_on_or_has_retired_is_asked_after_no_more(night: Any) -> None:
    """Either says what was to be found out; and a word taken back asks nothing."""
    for then, more in ((Kind.MOVING_AGAIN, {}), (Kind.RETIRED, {"how": Retired.OWN_CHOICE})):
        one = type(night)()
        one.report(Kind.IN_HAND, "16:40", "ana")
        one.report(then, "17:00", "ana", **more)
        assert not [n for _, n in one.run("17:01", "18:00") if n.key.kind is K.IN_HAND and n.needs_answer]
