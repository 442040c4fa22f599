"""Retired: told once to each, one person tells race control, and who sits at home hears when somebody has her."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import replace
from datetime import timedelta
from typing import Any

import pytest

from server.event.model import Drive, PartKind
from server.facts.entry import Kind, Retired, Source
from server.watch.notice import NoticeKind, RetiredValues, Urgency, Waits

K = NoticeKind
LENA = {"by": "lena", "source": Source.VOLUNTEER}
EVERYBODY = ["ana", "jonas", "maren", "olga", "piet", "sasha", "tomas", "vera"]


def told(owed: list[Any], kind: NoticeKind = K.RETIRED) -> list[str]:
    """Who is owed that kind."""
    return sorted(n.key.person for n in owed if n.key.kind is kind)


def of(owed: list[Any], who: str) -> Any:
    """The one notice about it that a person is owed."""
    (found,) = (n for n in owed if n.key.kind is K.RETIRED and n.key.person == who)
    return found


def retires(night: Any, at: str = "18:00", **more: Any) -> str:
    """A volunteer at the mill reports it: Ana's car is the nearest, Vera's comes after it; Sasha calls race control."""
    entry: str = night.report(Kind.RETIRED, at, **{"how": Retired.OWN_CHOICE, "point": "mill"} | LENA | more)
    return entry


def change_parts(night: Any, change: Callable[[Any], Any]) -> None:
    """The event with other parts."""
    night.event = replace(night.event, parts=tuple(change(p) for p in night.event.parts))


def test_each_is_told_once_and_the_caller_is_asked_with_it(night: Any) -> None:
    """One message each: the nearest driver is asked to fetch her, the caller for race control, with her words."""
    retires(night, words="my knee")
    owed = night.tick("18:00")
    assert told(owed) == EVERYBODY
    asked = {n.key.person: n.buttons for n in owed if n.needs_answer}
    assert asked == {
        "ana": ("i go", "in hand", "cannot"),
        "sasha": ("race control told",),
    }
    values = {n.key.person: n.values for n in owed}
    assert {v.pick_up_by for v in values.values()} == {("ana",)}
    assert {(v.caller, v.waits, v.words) for v in values.values()} == {("sasha", Waits.NEWS, "my knee")}
    assert night.tick("18:01") == []
    assert told(night.tick("18:04")) == []


def test_reminders_keep_to_what_still_waits(night: Any) -> None:
    """Who goes is asked again once they would be there, the caller for race control alone; both done, nothing more."""
    retires(night)
    night.tick("18:00")
    night.answer(K.RETIRED, "sasha", "ok", "18:03")
    night.answer(K.RETIRED, "ana", "i go", "18:04")
    owed = night.tick("18:04")
    assert told(owed) == ["jonas", "maren", "sasha", "tomas", "vera"]
    assert {n.values.waits for n in owed} == {"goes"}
    assert of(owed, "maren").values.fetch.there_by == night.made[0].made_at.replace(hour=18, minute=44)
    assert told(night.tick("18:24")) == ["sasha"]
    assert told(night.tick("18:43")) == []
    owed = night.tick("18:44")
    assert told(owed) == ["ana", "sasha"]
    assert (of(owed, "ana").values.waits, of(owed, "sasha").values.waits) == ("hand", "race control")
    night.report(Kind.IN_HAND, "18:50", "ana")
    assert told(night.tick("18:50")) == ["jonas", "sasha", "tomas", "vera"]
    night.report(Kind.RACE_CONTROL_TOLD, "18:55", "sasha")
    assert told(night.tick("21:00")) == []


def test_one_after_the_other_is_asked_to_fetch_her(night: Any) -> None:
    """Ana does not answer in her five minutes: it is Vera's turn, once; who says that they can't is done with at once."""
    retires(night)
    night.tick("18:00")
    assert told(night.tick("18:04")) == []
    owed = night.tick("18:05")
    assert told(owed) == ["vera"]
    assert (of(owed, "vera").buttons, of(owed, "vera").values.pick_up_by) == (
        ("i go", "in hand", "cannot"),
        ("vera",),
    )
    assert told(night.tick("18:06")) == []
    night.answer(K.RETIRED, "vera", "cannot", "18:07")
    assert told(night.tick("18:07")) == []
    owed = night.tick("18:20")
    assert {"ana", "sasha"} <= set(told(owed))
    assert of(owed, "ana").values.fetch.fetcher is None


def test_who_can_t_is_done_with_at_once(night: Any) -> None:
    """Ana can't: the next is asked the same minute, not once her five minutes are over."""
    retires(night)
    night.tick("18:00")
    night.answer(K.RETIRED, "ana", "cannot", "18:02")
    owed = night.tick("18:02")
    assert told(owed) == ["vera"]
    assert "i go" in of(owed, "vera").buttons


def test_whoever_takes_it_late_has_it(night: Any) -> None:
    """It is Vera's turn when Ana answers: Ana goes, and Vera hears so."""
    retires(night)
    night.tick("18:00")
    night.tick("18:05")
    night.answer(K.RETIRED, "ana", "i go", "18:09")
    owed = night.tick("18:09")
    assert "vera" in told(owed)
    assert (of(owed, "vera").values.waits, of(owed, "vera").values.pick_up_by) == ("goes", ("ana",))


@pytest.mark.parametrize(("minutes", "first"), [({"vera": 10}, "vera"), ({"vera": 60}, "ana"), ({}, "ana")])
def test_the_nearest_car_is_asked_first(night: Any, minutes: dict[str, int], first: str) -> None:
    """By the drive from where they are; a drive that nobody knows comes last."""
    more = tuple(Drive("hotel", "mill", m, who) for who, m in minutes.items())
    night.event = replace(night.event, drives=(*night.event.drives, *more))
    retires(night)
    assert of(night.tick("18:00"), "olga").values.pick_up_by == (first,)


def test_where_they_said_they_are_counts_and_not_the_plan(night: Any) -> None:
    """Vera says she is at the mill: she is there, Ana by the plan forty minutes away."""
    night.report(Kind.CREW_THERE, "17:30", "vera", runner=None, point="mill")
    retires(night)
    fetch = of(night.tick("18:00"), "vera").values.fetch
    assert (fetch.fetcher.person, fetch.fetcher.stands, fetch.fetcher.said) == ("vera", "mill", True)
    assert fetch.fetcher.drive == timedelta(0)


def test_no_car_comes_to_where_she_is(night: Any) -> None:
    """Retired at the ridge (74 km), where no crew may come: of moss (58) and barn (90) the first that is as near."""
    retires(night, point="ridge")
    assert of(night.tick("18:00"), "ana").values.fetch.to == "moss"


def test_the_race_s_own_transport_is_said(night: Any) -> None:
    """The point's own before that of the whole race."""
    night.event = replace(night.event, transport="bus on the hour")
    retires(night)
    assert of(night.tick("18:00"), "ana").values.fetch.transport == "bus on the hour"
    course = night.event.courses[0]
    points = tuple(replace(p, transport="van at seven") if p.id == "mill" else p for p in course.points)
    night.event = replace(night.event, courses=(replace(course, points=points),))
    assert of(night.tick("18:05"), "vera").values.fetch.transport == "van at seven"


def test_nobody_has_her_by_then_and_home_hears_it_as_an_alarm(new_night: Any) -> None:
    """An hour after she retired; where somebody drives to her, a look-again time after they should be there."""
    night = new_night()
    retires(night)
    loud = [
        (t, n)
        for t, n in night.run("18:00", "19:30", lazily=True)
        if n.key.person == "sasha" and n.urgency is Urgency.ALARM
    ]
    assert [f"{t:%H:%M}" for t, _ in loud][:1] == ["19:00"]
    night = new_night()
    retires(night)
    goes = {"18:03": lambda n: n.answer(K.RETIRED, "ana", "i go", "18:03")}
    loud = [
        (t, n)
        for t, n in night.run("18:00", "19:30", goes, lazily=True)
        if n.key.person == "sasha" and n.urgency is Urgency.ALARM
    ]
    assert [f"{t:%H:%M}" for t, _ in loud][:1] == ["19:03"]


def test_home_hears_at_once_that_somebody_has_her(night: Any, at: Any) -> None:
    """'We have her in the car': who sits at home reads it the same minute, by whom and when, with what still waits."""
    retires(night)
    night.tick("18:00")
    night.report(Kind.IN_HAND, "18:04", "ana")
    owed = night.tick("18:04")
    assert told(owed) == ["jonas", "sasha", "tomas", "vera"]
    home, car = of(owed, "sasha"), of(owed, "jonas")
    assert (home.values.waits, home.values.in_hand_by, home.values.in_hand_at) == (
        "in hand",
        "ana",
        at("18:04"),
    )
    assert (home.needs_answer, home.buttons) == (True, ("race control told",))
    assert (car.needs_answer, car.buttons) == (False, ())
    assert night.tick("18:05") == []


def test_home_hears_it_though_race_control_knew_before(night: Any) -> None:
    """Both done with that one word, and still home is told; asleep or not."""
    night.event = replace(
        night.event,
        people=tuple(
            replace(p, quiet_from="18:01", quiet_to="23:00", time_zone="UTC") if p.id == "sasha" else p
            for p in night.event.people
        ),
    )
    retires(night)
    night.tick("18:00")
    night.report(Kind.RACE_CONTROL_TOLD, "18:02", "sasha")
    assert told(night.tick("18:02")) == []
    night.report(Kind.IN_HAND, "18:10", "ana")
    owed = night.tick("18:10")
    assert told(owed) == ["jonas", "sasha", "tomas", "vera"]
    assert not of(owed, "sasha").needs_answer


def test_retired_and_in_hand_in_one_breath_is_told_once(night: Any) -> None:
    """'She has dropped, we have her in the car': one message says both."""
    retires(night, by="ana", source=Source.CREW)
    night.report(Kind.IN_HAND, "18:00", "ana")
    owed = night.tick("18:00")
    assert told(owed) == EVERYBODY
    assert all(n.values.in_hand for n in owed if n.key.kind is K.RETIRED)
    assert {n.key.person for n in owed if n.needs_answer} == {"sasha"}
    assert night.tick("18:01") == []


def test_in_hand_taken_back_is_told_and_she_is_sought_again(night: Any) -> None:
    """It was somebody else in the car: those told so hear it, once; found after all, they hear that too."""
    retires(night)
    night.tick("18:00")
    wrong = night.report(Kind.IN_HAND, "18:04", "ana")
    night.tick("18:04")
    night.report(Kind.TAKEN_BACK, "18:06", "ana", about=wrong)
    owed = night.tick("18:06")
    assert told(owed, K.CORRECTION) == ["jonas", "sasha", "tomas", "vera"]
    assert told(owed) == ["vera"], "Ana has had her time: it is Vera's turn to fetch her"
    assert night.tick("18:07") == []
    assert "ana" in told(night.tick("18:26"))
    night.report(Kind.IN_HAND, "18:30", "jonas")
    assert {"ana", "sasha"} <= set(told(night.tick("18:30")))
    assert night.tick("18:31") == []


@pytest.mark.parametrize("how", ["silent", "no channel"])
def test_race_control_does_not_hang_on_one_person(night: Any, how: str) -> None:
    """The caller does not answer in the look-again time, or can't be reached at all: the next who can telephone is
    asked, then the organiser; who answers is the one, and the others are told so."""
    retires(night)
    night.tick("18:00")
    if how == "no channel":
        night.made = [replace(m, failed=True) if m.notice.key.person == "sasha" else m for m in night.made]
        owed = night.tick("18:01")
        assert told(owed) == ["vera"]
    else:
        night.answer(K.RETIRED, "ana", "i go", "18:01")
        night.tick("18:01")
        assert told(night.tick("18:19")) == []
        owed = night.tick("18:20")
        assert told(owed) == ["vera"]
    asked = of(owed, "vera")
    assert (asked.values.waits, asked.values.caller, asked.buttons) == (
        "race control",
        "vera",
        ("race control told",),
    )
    night.answer(K.RETIRED, "vera", "ok", "18:25")
    owed = night.tick("18:45")
    assert "olga" not in told(owed)
    assert "vera" in told(owed)


def test_nobody_answers_for_race_control(night: Any) -> None:
    """After the last who could, all are told again that race control has to know."""
    retires(night)
    for clock in ("18:00", "18:20", "18:40"):
        owed = night.tick(clock)
    assert "olga" in told(owed)
    assert of(owed, "ana").values.caller == "olga"
    assert of(night.tick("19:00"), "ana").values.caller is None


def test_race_control_is_never_asked_to_ring_itself(night: Any) -> None:
    """Olga answers race control's own number: after Sasha and Vera nobody is left to ring it, and she is not asked."""
    number = night.event.race_control.phone
    night.event = replace(
        night.event,
        people=tuple(replace(p, phone=number) if p.id == "olga" else p for p in night.event.people),
    )
    retires(night)
    for clock in ("18:00", "18:20", "18:40", "19:00"):
        mine = [n for n in night.tick(clock) if n.key.person == "olga" and n.key.kind is K.RETIRED]
        assert not [n for n in mine if "race control told" in n.buttons], clock


def test_who_is_newly_asked_for_race_control_reads_that_first(night: Any) -> None:
    """She is in hand already when the organiser's turn comes: it is race control that waits, not the news of that."""
    retires(night)
    night.tick("18:00")
    night.tick("18:20")
    night.report(Kind.IN_HAND, "18:30", "ana")
    assert told(night.tick("18:30")) == ["jonas", "sasha", "tomas", "vera"]
    owed = night.tick("18:40")
    assert told(owed) == ["olga"]
    assert (of(owed, "olga").values.waits, of(owed, "olga").delayed) == (Waits.RACE_CONTROL, False)


def test_a_caller_at_the_wheel_is_not_asked(night: Any) -> None:
    """Ana calls race control and drives: she reads the news and is asked nothing; who can telephone is asked."""
    change_parts(
        night,
        lambda p: replace(p, calls_race_control=p.person == "ana" and p.kind is PartKind.CREW),
    )
    night.report(Kind.CREW_THERE, "17:50", "ana", runner=None, point="mill")
    night.report(Kind.CREW_LEFT, "17:55", "ana", runner=None, point="mill")
    retires(night)
    owed = night.tick("18:00")
    assert told(owed) == EVERYBODY
    assert [n.key.person for n in owed if "race control told" in n.buttons] == ["sasha"]
    assert (of(owed, "ana").needs_answer, of(owed, "ana").values.caller) == (False, "sasha")
    night.report(Kind.CREW_THERE, "18:30", "ana", runner=None, point="chapel")
    asked = [n for n in night.tick("18:30") if n.key.person == "ana" and "race control told" in n.buttons]
    assert [n.values.caller for n in asked] == ["ana"]


def test_who_fetches_her_and_tells_race_control_is_asked_for_both_at_once(night: Any) -> None:
    """Ana does both: one message, one reminder; having her in hand, what is left is race control."""
    change_parts(night, lambda p: replace(p, calls_race_control=p.person == "ana"))
    retires(night)
    owed = night.tick("18:00")
    assert told(owed) == EVERYBODY
    both = ("i go", "in hand", "cannot", "race control told")
    assert of(owed, "ana").buttons == both
    night.answer(K.RETIRED, "ana", "i go", "18:02")
    owed = night.tick("18:02")
    assert told(owed) == ["jonas", "maren", "sasha", "tomas", "vera"], "Ana drives: Sasha rings race control"
    assert of(owed, "sasha").buttons == ("race control told",)
    assert "ana" not in told(night.tick("18:30"))
    night.report(Kind.IN_HAND, "18:40", "ana")
    owed = night.tick("18:40")
    assert (of(owed, "ana").values.waits, of(owed, "ana").buttons) == ("race control", ("race control told",))


def test_race_control_told_is_no_word_that_one_goes(night: Any) -> None:
    """Who answers for race control has not said that they fetch her: the next is asked."""
    change_parts(night, lambda p: replace(p, calls_race_control=p.person == "ana"))
    retires(night)
    night.tick("18:00")
    night.answer(K.RETIRED, "ana", "race control told", "18:02")
    night.report(Kind.RACE_CONTROL_TOLD, "18:02", "ana")
    owed = night.tick("18:22")
    assert told(owed) == ["vera"]
    assert "i go" in of(owed, "vera").buttons


def test_with_no_caller_named_all_are_told_to(night: Any) -> None:
    """No one is named: nobody is told to keep from ringing, nobody is asked for it alone."""
    change_parts(night, lambda p: replace(p, calls_race_control=False))
    retires(night)
    owed = night.tick("18:00")
    assert told(owed) == EVERYBODY
    assert {n.values.caller for n in owed if isinstance(n.values, RetiredValues)} == {None}


def test_a_caller_who_may_not_hear_of_it_calls_nobody(night: Any) -> None:
    """A volunteer is told nothing of it, so the others must not lean on them."""
    change_parts(night, lambda p: replace(p, calls_race_control=p.person == "lena"))
    retires(night, by="ana", source=Source.CREW)
    assert {n.values.caller for n in night.tick("18:00") if n.key.kind is K.RETIRED} == {None}


def test_the_caller_who_reported_it_is_asked_what_is_left(night: Any) -> None:
    """Sasha wrote it herself: she reads no news of it, only that race control has to know."""
    retires(night, by="sasha", source=Source.CREW)
    owed = night.tick("18:00")
    assert told(owed) == EVERYBODY
    assert of(owed, "sasha").values.waits == "race control"


# --- 'did not start' that was wrong -------------------------------------------------------------------------


def not_started(night: Any) -> None:
    """Jonas can't find her at the start; race control is told so, and nobody looks for her any more."""
    night.report(Kind.RETIRED, "14:20", "jonas", how=Retired.DID_NOT_START, point="start")
    night.tick("14:20")
    night.report(Kind.RACE_CONTROL_TOLD, "14:25", "sasha")
    assert night.run("14:25", "14:30") == []


def test_seen_after_did_not_start_brings_the_watch_back(night: Any) -> None:
    """Lena writes her in at Moss: whoever heard that she did not start hears that it is wrong, and her silence after it
    becomes an alarm as anybody's."""
    not_started(night)
    night.report(Kind.IN, "22:00", point="moss", **LENA)
    owed = night.tick("22:00")
    assert {"ana", "sasha", "vera", "olga", "piet", "tomas"} <= set(told(owed, K.CORRECTION))
    assert all(n.values.taken_back for n in owed if n.key.kind is K.CORRECTION)
    night.report(Kind.OUT, "22:05", point="moss", **LENA)
    later = [n for _, n in night.run("22:01", "31:00", lazily=True)]
    assert "did not start" not in {n.values.how for n in later if n.key.kind is K.RETIRED}
    assert "sasha" in told(later, K.OVERDUE)


def test_a_doubtful_sighting_after_did_not_start_is_asked_of_all_at_once(night: Any) -> None:
    """A guess does not bring the watch back by itself; it is put to everybody in the same minute, home too."""
    not_started(night)
    night.report(Kind.IN, "22:00", "vera", point="moss", unconfirmed=True, doubt="guessed")
    owed = night.tick("22:00")
    assert {"ana", "jonas", "olga", "sasha"} <= set(told(owed, K.UNCONFIRMED))
    assert {n.urgency for n in owed if n.key.kind is K.UNCONFIRMED} == {Urgency.ACTION}


def test_her_call_for_help_is_heard_after_did_not_start(night: Any) -> None:
    """Whatever was said of her before."""
    not_started(night)
    night.report(Kind.ASKED_FOR_HELP, "19:00", "maren")
    assert "sasha" in told(night.tick("19:00"), K.ASKED_FOR_HELP)
