"""Where she is is asked of those who could know; and whom quiet hours hold for asleep."""

from __future__ import annotations

from dataclasses import replace
from datetime import timedelta
from typing import Any

import pytest

from server.event.model import Edge, Part, PartKind
from server.facts.entry import Kind, Source
from server.plan.cutoffs import SAFE_ODDS, DueTime, cut_off_odds
from server.watch.notice import NoticeKind
from server.watch.odds import latest_out

K = NoticeKind
LENA = {"by": "lena", "source": Source.VOLUNTEER}


def asked(night: Any, start: str, end: str) -> set[tuple[str, str]]:
    """Who is asked of which point in that time."""
    return {(n.key.person, n.key.point) for _, n in night.run(start, end) if n.key.kind is K.LATE}


def out_of(night: Any, point: str, when: str) -> None:
    """Somebody of the race reports her out of a point."""
    night.report(Kind.OUT, when, point=point, **LENA)


def test_the_volunteers_of_the_point_are_asked(night: Any) -> None:
    """Late at Moss: Lena is posted there and could know, as could Vera and Tomas whose meeting it is; Ana and Jonas,
    bound for Barn, could not and are left in peace."""
    out_of(night, "chapel", "19:25")
    assert {p for p, point in asked(night, "19:26", "24:00") if point == "moss"} == {"lena", "vera", "tomas"}


def test_a_volunteer_elsewhere_is_not_asked(night: Any) -> None:
    """Lena at Moss knows nothing of Mill."""
    out_of(night, "start", "14:00")
    found = {p for p, point in asked(night, "14:01", "17:30") if point == "mill"}
    assert found <= {"ana", "jonas"}
    assert found


def test_crew_known_to_be_elsewhere_are_not_asked(night: Any) -> None:
    """Vera, who should be at Moss, said that she is at Chapel: she can't see Moss; whoever is there is asked."""
    out_of(night, "chapel", "19:25")
    night.report(Kind.CREW_THERE, "20:30", "vera", point="chapel")
    night.report(Kind.CREW_THERE, "20:31", "ana", point="moss")
    found = {p for p, point in asked(night, "20:32", "24:00") if point == "moss"}
    assert "vera" not in found
    assert {"ana", "lena"} <= found


def test_where_nobody_is_the_next_crew_are_asked(night: Any) -> None:
    """Late at Ridge, where nobody meets her: the crew of Barn, next ahead, and Tomas who runs with her."""
    out_of(night, "moss", "22:10")
    night.report(Kind.CREW_THERE, "24:00", "ana", point="barn")
    night.report(Kind.CREW_THERE, "24:00", "jonas", point="barn")
    assert {p for p, point in asked(night, "24:01", "27:00") if point == "ridge"} == {"ana", "jonas", "tomas"}


def test_one_question_is_for_all_of_a_car(night: Any) -> None:
    """Ana, who waits at Mill, says 'not yet'; Jonas beside her is asked next, and she not before an hour after that."""
    night.event = replace(night.event, alarm=replace(night.event.alarm, grace=timedelta(hours=3)))
    out_of(night, "start", "14:00")
    night.report(Kind.CREW_THERE, "15:50", "ana", runner=None, point="mill")
    first = next(at for at, n in night.run("15:51", "17:20") if n.key.kind is K.LATE)
    night.answer(K.LATE, "ana", "not yet", first + timedelta(minutes=2))
    night.report(Kind.NOT_HERE_YET, first + timedelta(minutes=2), "ana", point="mill")
    later = [(n.key.person, at) for at, n in night.run("17:21", "19:30") if n.key.kind is K.LATE]
    (jonas, then), (ana, again) = later
    assert (jonas, ana) == ("jonas", "ana")
    assert again - then == timedelta(hours=1)


def test_who_says_not_yet_in_words_has_answered_too(night: Any) -> None:
    """The question is not put again in the same minute, and nothing of it is called delayed."""
    night.event = replace(night.event, alarm=replace(night.event.alarm, grace=timedelta(hours=3)))
    out_of(night, "start", "14:00")
    first = next(
        at for at, n in night.run("15:51", "17:20") if n.key.kind is K.LATE and n.key.person == "ana"
    )
    said = first + timedelta(minutes=40)
    night.report(Kind.NOT_HERE_YET, said, "ana", point="mill")
    log = night.run(f"{said:%H:%M}", "20:00")
    later = [(at, n) for at, n in log if n.key.kind is K.LATE]
    assert min(at for at, n in later if n.key.person == "ana") >= said + timedelta(hours=1)
    assert not any(n.delayed for _, n in later)


def sleepy(night: Any, **quiet: str) -> None:
    """Jonas keeps quiet hours."""
    quiet = {"quiet_from": "17:00", "quiet_to": "08:00"} | quiet
    people = tuple(replace(p, **quiet) if p.id == "jonas" else p for p in night.event.people)
    night.event = replace(night.event, people=people)


@pytest.mark.parametrize(("heard", "woken"), [("18:00", True), ("21:50", False), ("16:30", True)])
def test_somebody_heard_long_ago_may_be_asleep_again(night: Any, heard: str, woken: bool) -> None:
    """A word in the evening does not keep the wake-up of the night away: only one within three hours does."""
    sleepy(night)
    out_of(night, "chapel", "19:25")
    night.report(Kind.AWAKE, heard, "jonas", person="jonas")
    wakes = [at for at, n in night.run("19:26", "27:00") if n.key.kind is K.WAKE_UP]
    assert bool(wakes) is woken or (not woken and wakes[0] - night.entries[-1].seen_at > timedelta(hours=3))


def test_who_does_not_wake_up_is_named_and_who_goes_with_them_is_asked_first(night: Any) -> None:
    """Jonas sleeps in the car, Ana beside him was asked nothing: she is to wake him, and nobody is sent to look for her."""
    sleepy(night)
    out_of(night, "chapel", "19:25")
    log = night.run("19:26", "27:00")
    assert {n.key.person for _, n in log if n.key.kind is K.WAKE_UP} == {"jonas"}
    asked_to = [n for _, n in log if n.key.kind is K.UNREACHED and n.values.notice_kind == K.WAKE_UP.value]
    assert (asked_to[0].key.person, asked_to[0].values.person) == ("ana", "jonas")
    assert {n.values.person for n in asked_to} == {"jonas"}


def test_only_who_can_have_her_with_them_is_asked_whether_she_is(night: Any) -> None:
    """In at Ridge, where nobody meets her, and not reported out: Ana, bound for Barn, is not asked if she is with her still;
    in at Chapel, where they met her, she is."""
    for point, seen, asks in (("ridge", "24:50", None), ("chapel", "19:20", "chapel")):
        one = type(night)()
        one.report(Kind.IN, seen, point=point, **LENA)
        sent = [n for _, n in one.run(seen, "29:00") if n.key.kind in (K.LEAVE_SOON, K.LEAVE_NOW)]
        assert {n.values.unreported_out for n in sent if n.key.person == "ana"} == {asks}


def test_news_comes_to_somebody_who_is_awake_in_quiet_hours(night: Any) -> None:
    """Driving at night, he hears that she is out of the point before his; asleep, he hears it in the morning."""
    for awake in (True, False):
        one = type(night)()
        sleepy(one)
        parts = tuple(p for p in one.event.parts if p.person != "lena")
        one.event = replace(one.event, parts=(*parts, Part("lena", PartKind.VOLUNTEER, point="moss")))
        one.report(Kind.OUT, "22:10", point="moss", **LENA)
        if awake:
            one.report(Kind.AWAKE, "22:30", "jonas", person="jonas")
        one.report(Kind.CREW_LEFT, "22:30", "ana", runner=None, point="barn")
        one.tick("24:00")
        one.report(Kind.OUT, "24:50", point="ridge", **LENA)
        owed = [n for n in one.tick("24:51") if n.key.person == "jonas" and n.key.kind is K.LEFT]
        assert bool(owed) is awake


def test_the_latest_time_out_is_that_of_the_plan(night: Any, at: Any) -> None:
    """Watch, answers and paper give one figure: the watch takes it from the plan's function."""
    out_of(night, "start", "14:00")
    outlook = night.situation(at("14:05")).outlooks["maren"]
    view, start = outlook.at(at("14:05")), at("14:00")
    point = night.event.courses[0].point("chapel")
    for when in (at("19:30"), at("21:00")):
        before, found = latest_out(view, point, when, start)
        (plan,) = cut_off_odds(view, (DueTime("chapel", Edge.IN, when),), start, SAFE_ODDS)
        last = plan.latest_out[-1]
        assert before == last.point == "mill"
        assert found == (None if last.at is None else last.at.replace(second=0, microsecond=0))
    assert latest_out(view, night.event.courses[0].point("mill"), at("18:00"), start) == (None, None)
