"""Words for others, a meeting to be taken over, quiet, reminders: who is owed what, and when."""

from __future__ import annotations

from dataclasses import replace
from typing import Any

from server.event.model import PartKind, Sleep
from server.facts.entry import EVERYBODY, Kind
from server.watch.notice import Answer, NoticeKind, PassedOnValues, SwapValues, Urgency

K = NoticeKind


def wish(night: Any, kind: Kind, seen: str, by: str = "ana", **more: Any) -> str:
    """A wish is about no runner."""
    name: str = night.report(kind, seen, by, runner=None, **more)
    return name


def heard(owed: list[Any], kind: NoticeKind) -> set[str]:
    """Who was told that kind."""
    return {n.key.person for n in owed if n.key.kind is kind}


def asleep(night: Any, who: str, start: Any, end: Any) -> None:
    """Somebody means to sleep then."""
    parts = tuple(
        replace(p, sleeps=(Sleep(start, end),)) if p.person == who else p for p in night.event.parts
    )
    night.event = replace(night.event, parts=parts)


def test_words_for_one_go_to_them_once_word_for_word(night: Any, at: Any) -> None:
    """Nothing about her is changed by them."""
    before = night.situation(at("13:30")).state.runner("maren")
    wish(night, Kind.PASSED_ON, "13:00", to="jonas", words="bring socks")
    owed = [n for n in night.tick("13:00") if n.key.kind is K.PASSED_ON]
    assert [(n.key.person, n.urgency, n.values.by, n.values.words) for n in owed] == [
        ("jonas", Urgency.NEWS, "ana", "bring socks")
    ]
    assert heard(night.tick("13:05"), K.PASSED_ON) == set()
    assert night.situation(at("13:30")).state.runner("maren") == before


def test_for_all_no_supporter_and_not_who_wrote_it(night: Any) -> None:
    """Those of the writer's runners."""
    wish(night, Kind.PASSED_ON, "13:00", to=EVERYBODY, words="upper car park")
    told = heard(night.tick("13:00"), K.PASSED_ON)
    kinds = {p.kind for p in night.event.parts if p.person in told}
    assert "ana" not in told
    assert {"jonas", "maren"} <= told
    assert not kinds & {PartKind.SUPPORTER, PartKind.ORGANISER}


def test_a_sleeper_is_woken_by_words_only_where_they_set_out_soon(night: Any, at: Any) -> None:
    """Jonas sleeps through the afternoon: far from his meeting words wait, an hour before it they do not."""
    asleep(night, "ana", at("12:30"), at("16:00"))
    wish(night, Kind.PASSED_ON, "12:40", "jonas", to="ana", words="no hurry, bring tea")
    assert heard(night.tick("12:40"), K.PASSED_ON) == set()
    assert night.ask_again is not None
    log = night.run("12:41", "16:00", lazily=True)
    (when,) = [t for t, n in log if n.key.kind is K.PASSED_ON]
    assert at("12:41") < when < at("16:00"), "before they set out, and before they would wake"


def test_taken_back_whoever_read_it_hears_so(night: Any) -> None:
    """Once."""
    words = wish(night, Kind.PASSED_ON, "13:00", to="jonas", words="bring socks")
    night.tick("13:00")
    wish(night, Kind.TAKEN_BACK, "13:02", about=words)
    (back,) = [n for n in night.tick("13:02") if n.key.kind is K.PASSED_ON]
    assert isinstance(back.values, PassedOnValues)
    assert (back.key.person, back.values.taken_back) == ("jonas", True)
    assert heard(night.tick("13:03"), K.PASSED_ON) == set()


def test_quiet_holds_news_back_and_no_duty_of_ones_own(night: Any, at: Any) -> None:
    """News comes once it is over; leave-now and alarms come all the same."""
    wish(night, Kind.QUIET, "13:00", "ana", until=at("17:00"))
    wish(night, Kind.PASSED_ON, "13:01", "jonas", to="ana", words="hello")
    log = [(t, n) for t, n in night.run("13:01", "17:01") if n.key.person == "ana"]
    assert [t for t, n in log if n.key.kind is K.PASSED_ON] == [at("17:00")]
    assert {K.LEAVE_NOW, K.BE_THERE} & {n.key.kind for t, n in log if t < at("17:00")}
    early = [n.key.kind for t, n in log if t < at("17:00") and n.urgency is Urgency.NEWS]
    assert early == []


def test_a_reminder_comes_at_its_time_also_in_sleep_and_not_hours_late(night: Any, at: Any) -> None:
    """In the writer's words, to them alone."""
    asleep(night, "jonas", at("12:30"), at("20:00"))
    wish(night, Kind.REMIND, "13:00", "jonas", until=at("14:00"), words="fill the bottles")
    assert heard(night.tick("13:30"), K.REMINDER) == set()
    assert heard(night.tick("14:00"), K.REMINDER) == {"jonas"}
    wish(night, Kind.REMIND, "14:01", "jonas", until=at("14:30"), words="eat")
    assert heard(night.tick("17:00"), K.REMINDER) == set()


def test_asked_to_swap_it_stays_the_writers_until_it_is_taken(night: Any, at: Any) -> None:
    """The other hears when it is, and what they answer; taken, all who must know are told."""
    wish(night, Kind.ASKED_TO_SWAP, "13:00", "ana", to="vera", about="mill-maren", words="can vera go?")
    (asked,) = [n for n in night.tick("13:00") if n.key.kind is K.SWAP]
    assert isinstance(asked.values, SwapValues)
    assert asked.key.person == "vera"
    assert asked.buttons == (Answer.I_GO.value, Answer.CANNOT.value)
    assert asked.values.be_there is not None
    assert night.situation(at("13:01")).state.fallen == ()
    night.report(Kind.TAKES_OVER, "13:05", "vera", runner=None, about="mill-maren")
    state = night.situation(at("13:05")).state
    assert [(f.person, f.meeting) for f in state.fallen] == [("ana", "mill-maren")]
    assert [(t.person, t.meeting) for t in state.taken] == [("vera", "mill-maren")]
    assert {"ana", "vera"} <= heard(night.tick("13:05"), K.COVERED)


def test_taken_by_somebody_who_was_not_asked_nobody_has_fallen_out(night: Any, at: Any) -> None:
    """Only the one who was asked takes it from who asked."""
    wish(night, Kind.ASKED_TO_SWAP, "13:00", "ana", to="vera", about="mill-maren", words="can vera go?")
    night.report(Kind.TAKES_OVER, "13:05", "jonas", runner=None, about="mill-maren")
    assert night.situation(at("13:05")).state.fallen == ()


def test_refused_who_asked_hears_that_it_stays_with_them(night: Any, at: Any) -> None:
    """Once, and nobody has fallen out."""
    wish(night, Kind.ASKED_TO_SWAP, "13:00", "ana", to="vera", about="mill-maren", words="can vera go?")
    night.tick("13:00")
    night.made = [
        replace(m, answered_at=at("13:03"), answer=Answer.CANNOT.value) if m.notice.key.kind is K.SWAP else m
        for m in night.made
    ]
    (no,) = [n for n in night.tick("13:03") if n.key.kind is K.SWAP]
    assert (no.key.person, no.needs_answer, no.values.refused) == ("ana", False, True)
    assert [n for n in night.tick("13:04") if n.key.kind is K.SWAP] == []
    assert night.situation(at("13:05")).state.fallen == ()


def test_a_meeting_elsewhere_is_told_to_its_people_and_stays_where_it_is(night: Any) -> None:
    """She hears it too."""
    plans = night.event.meetings
    wish(
        night, Kind.MEET_ELSEWHERE, "13:00", "ana", about="mill-maren", words="by the red barn", to=EVERYBODY
    )
    told = heard(night.tick("13:00"), K.PASSED_ON)
    mill = next(m for m in plans if m.id == "mill-maren")
    assert told == {*mill.crew, "maren"} - {"ana"}
    assert night.event.meetings == plans
