"""Leave now, wake-up, brief, move on, lost: before, at and after the moment, and who is asked next."""

from __future__ import annotations

from dataclasses import replace
from datetime import timedelta
from typing import Any

import pytest

from server.event.model import Drive, NoticeChoice
from server.facts.entry import Kind, Source
from server.watch.notice import BriefValues, MeetingValues, NoticeKind

K = NoticeKind


def told(owed: list[Any], kind: NoticeKind) -> list[str]:
    """Who is owed that kind."""
    return sorted(n.key.person for n in owed if n.key.kind is kind)


def with_person(night: Any, who: str, **changes: Any) -> None:
    """Changes a person."""
    people = tuple(replace(p, **changes) if p.id == who else p for p in night.event.people)
    night.event = replace(night.event, people=people)


@pytest.mark.parametrize(("clock", "owed"), [("14:59:59", False), ("15:00", True), ("15:01", True)])
def test_leave_now_comes_five_minutes_before_the_leave_by(
    night: Any, at: Any, clock: str, owed: bool
) -> None:
    """Before, at and after; to both who go, with the time, to be answered."""
    found = [n for n in night.tick(clock) if n.key.kind is K.LEAVE_NOW]
    assert [n.key.person for n in found] == (["ana", "jonas"] if owed else [])
    for n in found:
        assert isinstance(n.values, MeetingValues)
        assert n.values.leave_by == at("15:05")
        assert n.needs_answer
        assert n.buttons == ("on our way", "cannot")


def test_no_answer_goes_to_the_other_crew_then_to_who_can_telephone(night: Any) -> None:
    """Five minutes each: other crew, then the telephone, and then the organiser hears that nobody did."""
    night.tick("15:05")
    assert told(night.tick("15:09"), K.UNREACHED) == []
    second = night.tick("15:10")
    assert told(second, K.UNREACHED) == ["vera"]
    assert second[0].values.person == "ana"
    assert told(night.tick("15:15"), K.UNREACHED) == ["sasha"]
    assert told(night.tick("15:20"), K.UNREACHED) == ["olga"]
    assert night.tick("15:40") == []


@pytest.mark.parametrize("how", ["answer", "left", "there"])
def test_one_answer_or_fact_is_enough(night: Any, how: str) -> None:
    """Answered by either, or known to have left or to be there: nobody else is troubled."""
    night.tick("15:05")
    if how == "answer":
        night.answer(K.LEAVE_NOW, "jonas", "on our way", "15:07")
    else:
        kind = Kind.CREW_LEFT if how == "left" else Kind.CREW_THERE
        night.report(kind, "15:07", "ana", runner=None, point="mill")
    assert night.tick("15:10") == []


def test_both_cannot_moves_on_at_once(night: Any) -> None:
    """Neither can go: the other crew hear it in the same minute, not after five."""
    night.tick("15:05")
    night.answer(K.LEAVE_NOW, "ana", "cannot", "15:06")
    assert night.tick("15:06") == []
    night.answer(K.LEAVE_NOW, "jonas", "cannot", "15:07")
    assert told(night.tick("15:07"), K.UNREACHED) == ["vera"]


def test_without_a_confirmed_drive_there_is_no_leave_now(night: Any, at: Any) -> None:
    """Moss: 'be there from' comes an hour and the estimated drive ahead, and asks for nothing."""
    owed = [n for now in ("18:44", "18:50", "18:55") for n in night.tick(now) if n.key.point == "moss"]
    assert {n.key.kind for n in owed} == {K.BE_THERE}
    assert sorted(n.key.person for n in owed) == ["tomas", "vera"]
    assert not any(n.needs_answer for n in owed)


@pytest.mark.parametrize("choice", NoticeChoice)
def test_neither_choice_nor_quiet_hours_hold_back_leave_now(night: Any, choice: NoticeChoice) -> None:
    """A person's own leave-now goes through whatever they chose, asleep or not."""
    with_person(night, "ana", notices=choice, quiet_from="14:00", quiet_to="20:00")
    assert "ana" in told(night.tick("15:05"), K.LEAVE_NOW)


@pytest.mark.parametrize(("clock", "woken"), [("14:29", False), ("14:30", True)])
def test_a_sleeper_is_woken_half_an_hour_before(night: Any, clock: str, woken: bool) -> None:
    """Quiet hours over the leave-by: a wake-up with time to wake, pack and drive; the other is not woken."""
    with_person(night, "ana", quiet_from="14:00", quiet_to="20:00")
    owed = night.tick(clock)
    assert told(owed, K.WAKE_UP) == (["ana"] if woken else [])
    if woken:
        assert owed[-1].buttons == ("awake", "cannot")


def test_who_is_awake_is_not_woken(night: Any) -> None:
    """Said to be awake since the quiet hours began: no wake-up."""
    with_person(night, "ana", quiet_from="14:00", quiet_to="20:00")
    night.report(Kind.AWAKE, "14:20", "ana", runner=None)
    assert told(night.tick("14:35"), K.WAKE_UP) == []


def test_quiet_hours_are_in_the_persons_own_zone(night: Any) -> None:
    """'15:00' in London in June is 14:00 UTC: the same wall time is another moment in Berlin."""
    with_person(night, "ana", quiet_from="15:30", quiet_to="21:00", time_zone="Europe/Berlin")
    assert told(night.tick("14:35"), K.WAKE_UP) == ["ana"]
    other = type(night)()
    with_person(other, "ana", quiet_from="15:40", quiet_to="21:00")
    assert told(other.tick("14:35"), K.WAKE_UP) == []


def to_barn(night: Any) -> Any:
    """Out of Chapel on plan; Ana and Jonas have Barn next, where phones fail."""
    night.report(Kind.CREW_THERE, "18:30", "ana", runner=None, point="chapel")
    night.report(Kind.IN, "19:20", "ana", point="chapel")
    night.report(Kind.OUT, "19:25", "ana", point="chapel")
    night.tick("19:25")
    return next(m for m in night.made if m.notice.key.kind is K.LEFT).notice.values.next_meeting


def test_a_brief_before_they_leave_signal(night: Any) -> None:
    """Fifteen minutes before the leave-by to Barn: the next two meetings, and where signal is back."""
    leave_by = to_barn(night).leave_by
    assert told(night.tick(leave_by - timedelta(minutes=16)), K.BRIEF) == []
    owed = night.tick(leave_by - timedelta(minutes=15))
    assert told(owed, K.BRIEF) == ["ana", "jonas"]
    values = owed[0].values
    assert isinstance(values, BriefValues)
    assert [m.point for m in values.meetings] == ["barn", "finish"]
    assert values.signal_back_at == "finish"


def test_window_moved_only_if_it_changes_what_they_do(night: Any, at: Any) -> None:
    """Told at Chapel when to leave for Barn; a time put right by three minutes changes nothing, an hour lost
    at Moss does; the message says what it was."""
    first = to_barn(night)
    small, big = type(night)(), type(night)()
    to_barn(small)
    small.report(
        Kind.OUT, "19:28", "ana", point="chapel", received=at("21:00"), replaces=small.entries[-1].id
    )
    assert told(small.tick("21:00"), K.WINDOW_MOVED) == []
    to_barn(big)
    big.report(Kind.OUT, "23:15", "lena", point="moss", source=Source.VOLUNTEER)
    owed = big.tick("23:15")
    assert told(owed, K.WINDOW_MOVED) == ["ana", "jonas"]
    values = next(n.values for n in owed if n.key.kind is K.WINDOW_MOVED)
    assert values.was_leave_by == first.leave_by
    assert values.leave_by - first.leave_by >= timedelta(minutes=15)
    assert told(big.tick("23:16"), K.WINDOW_MOVED) == []


def test_no_window_moved_for_those_on_the_way(night: Any) -> None:
    """They have left for Barn: a moved window is nothing they can use at the wheel."""
    leave_by = to_barn(night).leave_by
    night.tick(leave_by)
    night.answer(K.LEAVE_NOW, "ana", "on our way", leave_by)
    night.report(Kind.OUT, leave_by + timedelta(minutes=5), "lena", point="moss", source=Source.VOLUNTEER)
    assert told(night.tick(leave_by + timedelta(minutes=5)), K.WINDOW_MOVED) == []


@pytest.mark.parametrize(
    ("minutes", "answer", "owed"), [(-1, True, False), (0, True, True), (0, False, False)]
)
def test_move_on_when_the_wait_is_over(night: Any, minutes: int, answer: bool, owed: bool) -> None:
    """Not seen at Mill by 'wait until': those there are told, with what to do instead; but nobody who has been asked
    about her is sent off before they have answered."""
    night.tick("15:05")
    night.report(Kind.CREW_THERE, "15:50", "ana", runner=None, point="mill")
    wait = night.got(K.LEAVE_NOW)[0].notice.values.wait_until
    night.tick(wait - timedelta(minutes=2))
    if answer:
        night.answer(K.LATE, "ana", "nobody there", wait - timedelta(minutes=2))
    found = night.tick(wait + timedelta(minutes=minutes))
    assert told(found, K.MOVE_ON) == (["ana", "jonas"] if owed else [])


def test_nobody_moves_on_while_runners_are_held(night: Any) -> None:
    """Held at the start line of a storm: the wait is not over."""
    night.report(Kind.CREW_THERE, "15:50", "ana", runner=None, point="mill")
    night.report(Kind.HELD, "16:00", "olga", runner=None)
    assert told(night.tick("17:30"), K.MOVE_ON) == []


def test_a_meeting_missed_is_said_plainly(night: Any) -> None:
    """She left Mill while they were still driving: lost, with what to do if missed; and never 'hurry'."""
    night.tick("15:05")
    night.report(Kind.CREW_LEFT, "16:10", "ana", runner=None, point="mill")
    night.report(Kind.OUT, "16:25", "lena", point="mill", source=Source.VOLUNTEER)
    owed = night.tick("16:25")
    assert told(owed, K.MEETING_LOST) == ["ana", "jonas"]
    values = next(n.values for n in owed if n.key.kind is K.MEETING_LOST)
    assert (values.lost, values.if_missed) == ("she has left", "drive on to Chapel")


def test_no_meeting_is_called_lost_on_a_guess(night: Any) -> None:
    """Told to leave, no answer, nothing known of them: they may be driving, so they are not turned round;
    and crew who reported her were there."""
    night.tick("15:05")
    for clock in ("16:30", "16:50"):
        assert told(night.tick(clock), K.MEETING_LOST) == []
    night.report(Kind.IN, "16:55", "ana", point="mill")
    night.report(Kind.OUT, "17:00", "lena", point="mill", source=Source.VOLUNTEER)
    assert told(night.tick("17:00"), K.MEETING_LOST) == []


def test_crew_who_left_too_late_are_told(night: Any) -> None:
    """They set out so late that she will have left before they are there: said while they drive, no answer
    asked."""
    drives = tuple(replace(d, minutes=150) if d.to_place == "mill" else d for d in night.event.drives)
    night.event = replace(night.event, drives=drives)
    night.report(Kind.CREW_LEFT, "14:55", "ana", runner=None, point="mill")
    owed = night.tick("14:55")
    assert told(owed, K.MEETING_LOST) == ["ana", "jonas"]
    assert not any(n.needs_answer for n in owed if n.key.kind is K.MEETING_LOST)


def test_nobody_is_sent_on_while_they_still_wait(night: Any) -> None:
    """At Mill, not seen yet: Chapel's leave-by goes by without a leave-now, since she must come here first."""
    night.report(Kind.CREW_THERE, "15:50", "ana", runner=None, point="mill")
    night.event = replace(
        night.event,
        drives=(
            *(d for d in night.event.drives if d.to_place != "chapel"),
            Drive("mill", "chapel", 100, "ana"),
        ),
    )
    assert "chapel" not in {n.key.point for n in night.tick("16:50")}
