"""A call for help after her race: the alarm is that of the night, its end too; everything else stays closed."""

from __future__ import annotations

from datetime import timedelta
from typing import Any

import pytest

from server.facts.entry import Kind, Retired, Source
from server.facts.state import Going
from server.watch.notice import AlarmValues, NoticeKind, StandDownValues, UnreachedValues

K = NoticeKind
EVERYBODY = ["ana", "jonas", "olga", "sasha", "vera"]
HERSELF = {"by": "maren", "source": Source.RUNNER}


def told(owed: list[Any], kind: NoticeKind) -> list[str]:
    """Who is owed that kind; the pacer left out, who is told where he ran with her to the end."""
    return sorted(n.key.person for n in owed if n.key.kind is kind and n.key.person != "tomas")


def ends(owed: list[Any]) -> set[str]:
    """Why alarms are told to be over."""
    return {n.values.reason for n in owed if isinstance(n.values, StandDownValues)}


def closed(night: Any, at: Any, how: str) -> Any:
    """Her race is over at 30:00 (Barn or the finish), Ana has her at 30:05, race control knows at 30:10."""
    if how == "finished":
        night.report(Kind.IN, "30:00", "lena", point="finish", source=Source.VOLUNTEER)
    else:
        night.report(Kind.RETIRED, "30:00", "lena", point="barn", how=Retired.OWN_CHOICE)
    night.tick("30:00")
    night.report(Kind.IN_HAND, "30:05", "ana")
    night.tick("30:05")
    night.report(Kind.RACE_CONTROL_TOLD, "30:10", "sasha")
    night.tick("30:10")
    assert night.situation(at("30:11")).state.runner("maren").going is Going.CLOSED
    return night


@pytest.mark.parametrize("how", ["finished", "retired"])
def test_help_in_the_car_park_is_the_alarm_of_the_night(night: Any, at: Any, how: str) -> None:
    """Everybody at once with the words; nobody answers, round again in five minutes; answered, held, looked again."""
    closed(night, at, how)
    night.report(Kind.ASKED_FOR_HELP, "30:40", words="she collapsed in the car park", **HERSELF)
    owed = night.tick("30:40")
    assert told(owed, K.ASKED_FOR_HELP) == EVERYBODY
    (values,) = {n.values for n in owed if n.key.kind is K.ASKED_FOR_HELP}
    assert isinstance(values, AlarmValues)
    assert values.words == "she collapsed in the car park"
    assert (values.race_over, values.had_by, values.had_at) == (at("30:00"), "ana", at("30:05"))
    assert (values.where, values.where_fix, values.expected) == (None, None, None)
    owed = night.tick("30:45")
    assert told(owed, K.ASKED_FOR_HELP) == EVERYBODY
    assert {n.values.person for n in owed if isinstance(n.values, UnreachedValues)} >= {"ana", "sasha"}
    night.answer(K.ASKED_FOR_HELP, "vera", "i have it", "30:46")
    assert "ana" in told(night.tick("30:46"), K.HANDED_ON)
    again = at("30:46") + night.event.alarm.look_again
    assert told(night.tick(again), K.LOOK_AGAIN) == ["vera"]


@pytest.mark.parametrize("how", ["finished", "retired"])
@pytest.mark.parametrize(
    ("kind", "more", "why"),
    [(Kind.IN_HAND, {"by": "vera"}, "in hand"), (Kind.STAND_DOWN, {"by": "sasha"}, "stand-down")],
)
def test_it_ends_as_any_call_for_help(
    night: Any, at: Any, how: str, kind: Kind, more: dict[str, Any], why: str
) -> None:
    """The 'in hand' of before the call ends nothing, one after it does; so does a stand-down. Taken back, it is open
    again."""
    closed(night, at, how)
    night.report(Kind.ASKED_FOR_HELP, "30:40", **HERSELF)
    assert ends(night.tick("30:40")) == set()
    assert ends(night.tick("30:41")) == set()
    word = night.report(kind, "30:50", **more)
    owed = night.tick("30:50")
    assert (told(owed, K.STAND_DOWN), ends(owed)) == (EVERYBODY, {why})
    assert night.tick("31:30") == []
    night.report(Kind.TAKEN_BACK, "31:40", more["by"], about=word)
    assert told(night.tick("31:40"), K.ASKED_FOR_HELP) == EVERYBODY


def test_it_is_taken_back_and_that_is_taken_back(night: Any, at: Any) -> None:
    """'Undo' stands everybody down, and undoing the undo raises it again."""
    closed(night, at, "finished")
    call = night.report(Kind.ASKED_FOR_HELP, "30:40", **HERSELF)
    night.tick("30:40")
    undo = night.report(Kind.TAKEN_BACK, "30:42", "maren", about=call)
    owed = night.tick("30:42")
    assert (told(owed, K.STAND_DOWN), ends(owed)) == (EVERYBODY, {"taken back"})
    night.report(Kind.TAKEN_BACK, "30:44", "maren", about=undo)
    assert told(night.tick("30:44"), K.ASKED_FOR_HELP) == EVERYBODY


def test_a_second_call_after_it_was_ended_is_a_new_alarm(night: Any, at: Any) -> None:
    """The 'in hand' that answered the first call says nothing of the second."""
    closed(night, at, "finished")
    for call, hand in (("30:40", "30:50"), ("31:20", "31:30")):
        night.report(Kind.ASKED_FOR_HELP, call, **HERSELF)
        assert told(night.tick(call), K.ASKED_FOR_HELP) == EVERYBODY
        night.report(Kind.IN_HAND, hand, "ana")
        assert told(night.tick(hand), K.STAND_DOWN) == EVERYBODY


@pytest.mark.parametrize("race_control", [False, True])
def test_with_her_crew_she_calls_all_the_same(night: Any, race_control: bool) -> None:
    """Retired and in the car, not closed yet: the word that she is in hand is older than the call and ends nothing;
    nor does the race's being closed while the alarm is open."""
    night.report(Kind.RETIRED, "16:40", "ana", how=Retired.OWN_CHOICE, point="mill")
    night.report(Kind.IN_HAND, "16:45", "ana")
    night.tick("16:45")
    night.report(Kind.ASKED_FOR_HELP, "17:20", **HERSELF)
    owed = night.tick("17:20")
    assert (told(owed, K.ASKED_FOR_HELP), ends(owed)) == (EVERYBODY, set())
    if race_control:
        night.report(Kind.RACE_CONTROL_TOLD, "17:22", "sasha")
    owed = night.tick("17:25")
    assert (told(owed, K.ASKED_FOR_HELP), ends(owed)) == (EVERYBODY, set())


def test_what_is_heard_meanwhile_goes_to_those_who_look_for_her(night: Any, at: Any) -> None:
    """Words of how she is, to the holder and home; a doubtful report is asked about. Once it is over, neither."""
    closed(night, at, "finished")
    night.report(Kind.ASKED_FOR_HELP, "30:40", **HERSELF)
    night.tick("30:40")
    night.answer(K.ASKED_FOR_HELP, "vera", "i have it", "30:41")
    night.tick("30:41")
    night.report(Kind.HOW_SHE_IS, "30:44", "ana", words="she is by the red gate, awake")
    assert told(night.tick("30:44"), K.MEANWHILE) == ["jonas", "olga", "sasha", "vera"]
    night.report(Kind.RESTING, "30:46", "piet", unconfirmed=True, doubt="supporter")
    assert {"ana", "sasha", "vera"} <= set(told(night.tick("30:49"), K.UNCONFIRMED))
    night.report(Kind.STAND_DOWN, "30:50", "sasha")
    night.tick("30:50")
    night.report(Kind.HOW_SHE_IS, "30:55", "ana", words="drinking tea")
    night.report(Kind.IN, "30:55", "piet", point="barn", unconfirmed=True, doubt="supporter")
    assert night.tick("31:00") == []


@pytest.mark.parametrize("how", ["finished", "retired"])
def test_the_rest_of_the_watch_stays_closed(night: Any, at: Any, how: str) -> None:
    """Through a call and its end, and for a day: no window, no question, no overdue, no leave-now."""
    closed(night, at, how)
    night.report(Kind.ASKED_FOR_HELP, "30:40", **HERSELF)
    night.tick("30:40")
    night.report(Kind.IN_HAND, "30:50", "ana")
    log = night.run("30:41", "54:00", lazily=True)
    alarms = {K.ASKED_FOR_HELP, K.UNREACHED, K.STAND_DOWN, K.LOOK_AGAIN, K.HANDED_ON, K.CALL_BACK}
    # What is asked after every race is no watch.
    assert {n.key.kind for _, n in log} <= alarms | {K.LOOK_BACK}
    assert max(when for when, n in log if n.key.kind in alarms) <= at("30:50") + timedelta(minutes=1)
