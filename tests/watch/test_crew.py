"""Leave now, wake-up, brief, move on, lost: before, at and after the moment, and who is asked next."""

from __future__ import annotations

from dataclasses import replace
from datetime import UTC, datetime, timedelta
from typing import Any

import pytest

from server.event.model import Drive, NoticeChoice, Sleep
from server.facts.entry import Kind, Source
from server.watch.meetings import meetings
from server.watch.notice import BriefValues, MeetingValues, NoticeKind
from tests.watch.conftest import FakeView

K = NoticeKind
START = datetime(2027, 6, 19, 14, 0, tzinfo=UTC)


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
    """Five minutes each: one of the other crew, then one with a telephone; nobody after two, for it is no alarm."""
    night.tick("15:05")
    assert told(night.tick("15:09"), K.UNREACHED) == []
    second = night.tick("15:10")
    assert told(second, K.UNREACHED) == ["vera"]
    assert second[0].values.person == "ana"
    assert told(night.tick("15:15"), K.UNREACHED) == ["sasha"]
    assert told(night.tick("15:20"), K.UNREACHED) == []
    assert night.tick("15:40") == []


def test_the_organiser_hears_where_a_torch_hangs_on_it(night: Any) -> None:
    """To Chapel they bring her torch: two were asked in vain to reach them, so the organiser hears that nobody did."""
    to_chapel(night)
    leave_by = chapel(night).leave_by
    for minutes in (-5, 0, 5, 10):
        night.tick(leave_by + timedelta(minutes=minutes))
    assert [m.notice.key.person for m in night.got(K.UNREACHED)] == ["vera", "sasha", "olga"]


def test_who_sleeps_is_asked_to_reach_somebody_only_after_who_is_up(night: Any) -> None:
    """Vera sleeps: Sasha is asked first."""
    with_person(night, "vera", quiet_from="14:00", quiet_to="20:00")
    night.tick("15:05")
    assert told(night.tick("15:10"), K.UNREACHED) == ["sasha"]


@pytest.mark.parametrize(
    ("clock", "owed"), [("14:34", False), ("14:35", True), ("14:59", True), ("15:00", False)]
)
def test_half_an_hour_ahead_they_hear_all_they_need(night: Any, clock: str, owed: bool) -> None:
    """Kit, food and times, with a button to say that they go; leave-now then repeats none of the kit."""
    assert told(night.tick(clock), K.LEAVE_SOON) == (["ana", "jonas"] if owed else [])
    if owed:
        soon = night.got(K.LEAVE_SOON)[0].notice
        assert (soon.values.kit, soon.buttons) == (("poles",), ("on our way", "cannot"))
        now = next(n for n in night.tick("15:00") if n.key.kind is K.LEAVE_NOW)
        assert (now.values.kit, now.values.food, now.values.if_missed) == ((), "", "")


@pytest.mark.parametrize(("words", "gone"), [("on our way", True), ("got it", False), ("cannot", False)])
def test_only_the_words_themselves_say_that_they_go_half_an_hour_ahead(
    night: Any, words: str, gone: bool
) -> None:
    """'Got it' answers that it was read: leave-now comes all the same."""
    night.tick("14:35")
    for who in ("ana", "jonas"):
        night.answer(K.LEAVE_SOON, who, words, "14:40")
    assert bool(told(night.tick("15:00"), K.LEAVE_NOW)) is not gone


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
    return meeting(night, "barn", "19:25")


def past_moss(night: Any) -> Any:
    """On by Moss, the last place before Barn that reports: not late there, so nobody is told to stay."""
    to_barn(night)
    for kind, when in ((Kind.IN, "22:00"), (Kind.OUT, "22:05")):
        night.report(kind, when, "lena", point="moss", source=Source.VOLUNTEER)
    night.tick("22:05")
    return meeting(night, "barn", "22:05")


def meeting(night: Any, point: str, at: str) -> Any:
    """A meeting of Ana's as it stands."""
    hours, minutes = map(int, at.split(":"))
    now = START.replace(hour=0) + timedelta(hours=hours, minutes=minutes)
    return next(m for m in meetings(night.situation(now), "maren", now) if m.point == point)


def to_chapel(night: Any) -> None:
    """Out of Mill on plan; Ana and Jonas have Chapel next."""
    night.report(Kind.CREW_THERE, "15:50", "ana", runner=None, point="mill")
    night.report(Kind.IN, "16:30", "ana", point="mill")
    night.report(Kind.OUT, "16:35", "ana", point="mill")
    night.tick("16:35")


def chapel(night: Any) -> Any:
    """The meeting at Chapel as it stands then."""
    return meeting(night, "chapel", "16:35")


def test_a_brief_before_they_leave_signal(night: Any) -> None:
    """Half an hour before the leave-by to Barn: the next two meetings, and where signal is back."""
    leave_by = past_moss(night).leave_by
    assert told(night.tick(leave_by - timedelta(minutes=31)), K.BRIEF) == []
    owed = night.tick(leave_by - timedelta(minutes=30))
    assert told(owed, K.BRIEF) == ["ana", "jonas"]
    values = next(n.values for n in owed if n.key.kind is K.BRIEF)
    assert isinstance(values, BriefValues)
    assert [m.point for m in values.meetings] == ["barn", "finish"]
    assert values.signal_back_at == "finish"


def test_who_leaves_early_for_a_point_without_signal_is_briefed_as_they_go(night: Any) -> None:
    """An hour before their leave-by: before they are out of signal, once."""
    early = to_barn(night).leave_by - timedelta(minutes=60)
    assert told(night.tick(early), K.BRIEF) == []
    night.report(Kind.CREW_LEFT, early, "ana", runner=None, point="chapel")
    assert told(night.tick(early), K.BRIEF) == ["ana", "jonas"]
    assert told(night.tick(early + timedelta(minutes=35)), K.BRIEF) == []


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


def test_a_window_that_moved_from_the_plan_is_told_though_nobody_told_the_plan(night: Any) -> None:
    """She is out of Chapel an hour and a half late: Ana has Barn from the sheet, and hears what it was."""
    night.report(Kind.CREW_THERE, "18:30", "ana", runner=None, point="chapel")
    night.report(Kind.IN, "21:00", "ana", point="chapel")
    night.report(Kind.OUT, "21:05", "ana", point="chapel")
    owed = night.tick("21:05")
    assert told(owed, K.WINDOW_MOVED) == ["ana", "jonas"]
    plan = next(m for m in night.situation(START).sheet["maren"] if m.point == "barn")
    values = next(n.values for n in owed if n.key.kind is K.WINDOW_MOVED)
    assert values.was_leave_by == plan.leave_by < values.leave_by


def test_a_moved_window_waits_for_the_morning(night: Any) -> None:
    """Ana sleeps with time to spare: she hears it when she means to be up; Jonas at once."""
    sleep = Sleep(START + timedelta(hours=6), START + timedelta(hours=9))
    parts = tuple(replace(p, sleeps=(sleep,)) if p.person == "ana" else p for p in night.event.parts)
    night.event = replace(night.event, parts=parts)
    to_barn(night)
    night.report(Kind.OUT, "22:50", "lena", point="moss", source=Source.VOLUNTEER)
    assert told(night.tick("22:50"), K.WINDOW_MOVED) == ["jonas"]
    assert told(night.tick("23:00"), K.WINDOW_MOVED) == ["ana"]


def test_no_window_moved_for_those_on_the_way(night: Any) -> None:
    """They have left for Barn: a moved window is nothing they can use at the wheel."""
    leave_by = past_moss(night).leave_by
    night.tick(leave_by)
    night.answer(K.LEAVE_NOW, "ana", "on our way", leave_by)
    night.report(Kind.IN, leave_by + timedelta(minutes=5), "lena", point="ridge", source=Source.VOLUNTEER)
    assert told(night.tick(leave_by + timedelta(minutes=5)), K.WINDOW_MOVED) == []


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


def test_what_was_called_lost_is_not_sent_off_to(night: Any, monkeypatch: pytest.MonkeyPatch) -> None:
    """Told not to try Mill, as the drive is longer than is left; then she is in there, and may rest for long: nobody is told
    to leave for it after all. She is in late, and they would be there before she is likely to go: then they are."""
    drives = tuple(replace(d, minutes=150) if d.to_place == "mill" else d for d in night.event.drives)
    night.event = replace(night.event, drives=drives)
    leaving = FakeView.leaving
    rests = timedelta(0)

    def long_tail(view: FakeView, point: str, p: float) -> datetime:
        return leaving(view, point, p) + (rests if p <= 0.5 else timedelta(hours=5))

    assert told(night.tick("15:30"), K.MEETING_LOST)
    monkeypatch.setattr(FakeView, "leaving", long_tail)
    night.report(Kind.IN, "16:40", "lena", point="mill", source=Source.VOLUNTEER)
    assert "mill" not in {n.key.point for n in night.tick("16:40") if n.key.kind is K.LEAVE_NOW}
    rests = timedelta(hours=5)
    assert "mill" in {n.key.point for n in night.tick("16:50") if n.key.kind is K.LEAVE_NOW}


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
