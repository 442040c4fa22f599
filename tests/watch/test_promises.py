"""The night's promises sentence by sentence: the ladder, quiet, the brief, the test alarm; each sentence is a test."""

from __future__ import annotations

import itertools
from dataclasses import replace
from datetime import timedelta
from typing import Any

import pytest

from server.event.model import NoticeChoice, Signal
from server.facts.entry import Kind, Source
from server.watch.notice import NoticeKind, Urgency

K = NoticeKind
MINUTE = timedelta(minutes=1)
LENA = {"by": "lena", "source": Source.VOLUNTEER}


def changed(night: Any, who: str, **changes: Any) -> None:
    """Somebody's own wishes."""
    people = tuple(replace(p, **changes) if p.id == who else p for p in night.event.people)
    night.event = replace(night.event, people=people)


def first(night: Any, start: str, end: str, kind: NoticeKind, who: str) -> Any:
    """When somebody is first told a kind in that time, and the notice."""
    return next((t, n) for t, n in night.run(start, end) if n.key.kind is kind and n.key.person == who)


@pytest.mark.parametrize("choice", NoticeChoice)
def test_choices_and_quiet_hours_hold_back_no_alarm_on_any_step(night: Any, choice: NoticeChoice) -> None:
    """Everybody on the ladder has chosen little and sleeps: each step is asked at its minute all the same."""
    for who in ("sasha", "ana", "vera", "olga"):
        changed(night, who, notices=choice, quiet_from="20:00", quiet_to="09:00")
    night.report(Kind.OUT, "22:10", point="moss", **LENA)
    log = [(t, n) for t, n in night.run("22:11", "27:00") if n.urgency is Urgency.ALARM and n.needs_answer]
    assert [n.key.person for _, n in log][:4] == ["sasha", "ana", "vera", "olga"]
    times = [t for t, _ in log][:4]
    assert [b - a for a, b in itertools.pairwise(times)] == [5 * MINUTE] * 3


def test_a_sleeper_is_woken_with_time_to_wake_pack_and_drive(night: Any) -> None:
    """Half an hour before leave now, which is five minutes before the leave-by; it asks for 'awake'; once answered
    nobody else is asked to reach him, and unanswered the others are in five minutes."""
    changed(night, "ana", quiet_from="13:00", quiet_to="20:00")
    changed(night, "jonas", quiet_from="13:00", quiet_to="20:00")
    at, woken = first(night, "13:00", "16:00", K.WAKE_UP, "ana")
    assert woken.values.leave_by - at == 35 * MINUTE
    assert woken.needs_answer
    assert "awake" in woken.buttons
    for answered in (True, False):
        one = type(night)()
        changed(one, "ana", quiet_from="13:00", quiet_to="20:00")
        changed(one, "jonas", quiet_from="13:00", quiet_to="20:00")
        log: list[Any] = []
        for i in range(180):
            now = at - 30 * MINUTE + i * MINUTE
            log += [(now, n) for n in one.tick(now)]
            if answered and now == at + MINUTE:
                one.answer(K.WAKE_UP, "ana", "awake", now)
        reach = [
            (t, n.key.person)
            for t, n in log
            if n.key.kind is K.UNREACHED and n.values.notice_kind == "wake-up"
        ]
        assert (reach == []) is answered
        if not answered:
            assert reach[0] == (at + 5 * MINUTE, "vera")


def test_the_brief_comes_before_signal_is_lost(night: Any) -> None:
    """Once to each who goes: the next two meetings with kit and 'move on at', and where signal is back; before the
    leave-now to the point without signal."""
    night.report(Kind.OUT, "22:10", point="moss", **LENA)
    log = night.run("22:11", "26:00")
    briefs = [(t, n) for t, n in log if n.key.kind is K.BRIEF]
    leave = {n.key.person: t for t, n in log if n.key.kind is K.LEAVE_NOW}
    assert sorted(n.key.person for _, n in briefs) == ["ana", "jonas"]
    for at, brief in briefs:
        assert at < leave[brief.key.person]
        here, then = brief.values.meetings
        assert (here.point, then.point) == ("barn", "finish")
        assert here.kit == ("warm layer",)
        assert here.wait_until > here.be_there
        assert brief.values.signal_back_at in (None, "finish")


def test_the_brief_names_where_signal_is_back(night: Any) -> None:
    """Only a point said to have good signal is promised."""
    course = night.event.courses[0]
    points = tuple(replace(p, signal=Signal.GOOD) if p.id == "finish" else p for p in course.points)
    night.event = replace(night.event, courses=(replace(course, points=points),))
    night.report(Kind.OUT, "22:10", point="moss", **LENA)
    _, brief = first(night, "22:11", "26:00", K.BRIEF, "ana")
    assert brief.values.signal_back_at == "finish"


def test_everybody_on_the_ladder_answers_a_test_alarm(night: Any) -> None:
    """It breaks through quiet hours as an alarm will, twelve hours before the start and two hours before to those who
    did not answer; one hour before it is over and the organiser hears who never did, since they were first asked."""
    changed(night, "sasha", quiet_from="20:00", quiet_to="09:00", notices=NoticeChoice.ALARMS)
    log = night.run("02:00", "02:00")
    assert sorted(n.key.person for _, n in log if n.key.kind is K.TEST_ALARM) == ["ana", "sasha"]
    assert {n.urgency for _, n in log if n.key.kind is K.TEST_ALARM} == {Urgency.ALARM}
    night.answer(K.TEST_ALARM, "ana", "i have it", "07:00")
    log = night.run("07:01", "13:30")
    assert [(t.hour, n.key.person) for t, n in log if n.key.kind is K.TEST_ALARM] == [(12, "sasha")]
    (told,) = [n for _, n in log if n.key.kind is K.UNREACHED]
    assert (told.key.person, told.values.person, told.values.since.hour) == ("olga", "sasha", 2)


def test_the_holder_is_asked_again_until_it_ends_and_all_told_are_stood_down(night: Any) -> None:
    """Every twenty minutes, for as long as nothing is known; race control's word ends it, for all who were told."""
    night.report(Kind.OUT, "22:10", point="moss", **LENA)
    now = night.entries[0].seen_at
    while not any(n.key.kind is K.OVERDUE for n in night.tick(now)):
        now += MINUTE
    night.answer(K.OVERDUE, "sasha", "i have it", now)
    asked = []
    for i in range(1, 64):
        owed = night.tick(now + i * MINUTE)
        if any(n.key.kind is K.LOOK_AGAIN for n in owed):
            asked.append(i)
            night.answer(K.LOOK_AGAIN, "sasha", "still missing", now + i * MINUTE)
    assert asked == [20, 40, 60]
    told = {
        m.notice.key.person
        for m in night.made
        if m.notice.key.kind in (K.OVERDUE, K.HANDED_ON, K.LOOK_AGAIN, K.ALARM_NEWS)
    }
    night.report(Kind.STAND_DOWN, now + 64 * MINUTE, "olga")
    over = {n.key.person for n in night.tick(now + 64 * MINUTE) if n.key.kind is K.STAND_DOWN}
    assert over == told
