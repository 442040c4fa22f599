"""What bad nights taught, rule by rule: who has her, who can't, who does not answer, who is where, what may wait."""

from __future__ import annotations

from datetime import timedelta
from typing import Any

import pytest

from server.facts.entry import Kind, Source, Why
from server.watch.notice import AlarmValues, NoticeKind
from server.watch.waiting import waiting

K = NoticeKind
LENA = {"by": "lena", "source": Source.VOLUNTEER}
MINUTE = timedelta(minutes=1)


def kinds(log: list[tuple[Any, Any]], who: str) -> list[NoticeKind]:
    """What somebody is told, in order."""
    return [n.key.kind for _, n in log if n.key.person == who]


def first(log: list[tuple[Any, Any]], kind: NoticeKind, who: str) -> Any:
    """When somebody is first told a kind, None for never."""
    return next((t for t, n in log if n.key.kind is kind and n.key.person == who), None)


def alarm(night: Any, kind: NoticeKind, who: str) -> AlarmValues:
    """What the newest alarm of that kind to somebody is worded from."""
    values = night.got(kind, who)[-1].notice.values
    assert isinstance(values, AlarmValues)
    return values


def late_at_chapel(night: Any, *, until: str = "20:30") -> list[tuple[Any, Any]]:
    """Out of Mill at 16:45; nobody sees her at Chapel, where she is likely at 19:35."""
    night.report(Kind.OUT, "16:45", point="mill", **LENA)
    log: list[tuple[Any, Any]] = night.run("16:46", until)
    return log


def test_half_an_hour_ahead_asks_nothing_and_may_be_answered(night: Any) -> None:
    """'Get ready' has its buttons, an answer is still about it, and nobody is sent after who gives none."""
    log = night.run("12:30", "16:00")
    soon = next(m for m in night.made if m.notice.key.kind is K.LEAVE_SOON and m.notice.key.person == "ana")
    assert not soon.notice.needs_answer
    assert soon.notice.buttons == ("on our way", "cannot")
    assert soon.short in waiting(night.made, soon.made_at)
    after = {n.values.notice_kind for _, n in log if n.key.kind is K.UNREACHED}
    assert after & {K.LEAVE_NOW.value, K.LEAVE_SOON.value} == {K.LEAVE_NOW.value}


@pytest.mark.parametrize("grave", [False, True])
def test_words_that_are_only_news_go_with_the_rest(new_night: Any, grave: bool) -> None:
    """Written twenty minutes before 'get ready' they come with it; words that say she may be in danger come at once."""
    plain = new_night()
    soon = first(plain.run("12:30", "15:30"), K.LEAVE_SOON, "ana")
    night = new_night(grave=frozenset({"word"}) if grave else frozenset())
    night.report(
        Kind.HOW_SHE_IS, soon - 20 * MINUTE, "maren", id="word", words="shoes wet", source=Source.RUNNER
    )
    log = night.run("12:30", "15:30")
    assert first(log, K.WORD_OF_HER, "ana") == (soon - 20 * MINUTE if grave else soon)


def test_the_other_in_the_car_is_asked_where_one_has_answered(night: Any) -> None:
    """Ana said 'not yet' and will see her: the next question goes to Jonas beside her, and not to her as well."""
    asked = first(late_at_chapel(night), K.LATE, "ana")
    assert asked is not None
    night.made = [m for m in night.made if m.made_at <= asked]
    night.answer(K.LATE, "ana", "not yet", asked + MINUTE)
    night.report(Kind.NOT_HERE_YET, asked + MINUTE, "ana", point="chapel")
    log = []
    now = asked + 2 * MINUTE
    while now < asked + 62 * MINUTE:
        log += [(now, n) for n in night.tick(now)]
        now += MINUTE
    again = [(t, n.key.person) for t, n in log if n.key.kind is K.LATE]
    jonas = next(t for t, who in again if who == "jonas")
    assert jonas - asked >= 20 * MINUTE
    assert "ana" not in {who for _, who in again}


def test_who_was_to_call_and_cannot_is_replaced(night: Any) -> None:
    """Sasha can't: Ana is asked at once and told that nobody calls yet; once she has it she is asked to call."""
    late_at_chapel(night, until="23:00")
    raised = night.got(K.OVERDUE, "sasha")[0].made_at
    night.made = [m for m in night.made if m.made_at <= raised]
    night.answer(K.OVERDUE, "sasha", "cannot", raised + MINUTE)
    night.tick(raised + MINUTE)
    assert alarm(night, K.HANDED_ON, "ana").caller is None
    night.answer(K.HANDED_ON, "ana", "i have it", raised + 2 * MINUTE)
    night.tick(raised + 2 * MINUTE)
    assert alarm(night, K.HANDED_ON, "ana").caller == "ana"
    assert night.got(K.HANDED_ON, "ana")[-1].notice.buttons == ("race control told", "cannot")
    assert alarm(night, K.HANDED_ON, "sasha").holder == "ana"


def test_who_had_it_and_does_not_answer_is_named_and_holds_it_no_more(night: Any) -> None:
    """Sasha took it and sleeps: those asked next read that she had it, and that it is free to take."""
    late_at_chapel(night, until="23:00")
    raised = night.got(K.OVERDUE, "sasha")[0].made_at
    night.made = [m for m in night.made if m.made_at <= raised]
    night.answer(K.OVERDUE, "sasha", "i have it", raised + MINUTE)
    for minute in range(2, 40):
        night.tick(raised + minute * MINUTE)
    assert night.got(K.LOOK_AGAIN, "sasha")
    handed = [m for m in night.got(K.HANDED_ON, "ana") if m.notice.needs_answer]
    values = handed[0].notice.values
    assert isinstance(values, AlarmValues)
    assert (values.holder, values.silent) == (None, "sasha")


def test_while_somebody_has_her_nobody_is_asked_or_sent(night: Any) -> None:
    """Ana has her short of Chapel: home and Vera hear it, Jonas in Ana's car does not; for an hour nothing is asked but of
    Ana, whether she still has her, nobody is sent; then she is missed as before."""
    night.report(Kind.OUT, "16:45", point="mill", **LENA)
    night.run("16:46", "19:20")
    night.report(Kind.IN_HAND, "19:20", "ana", words="in the van")
    log = night.run("19:20", "20:19")
    told = {(n.key.person, n.needs_answer) for _, n in log if n.key.kind is K.IN_HAND}
    assert told == {("sasha", False), ("vera", False), ("tomas", False), ("ana", True)}
    assert not {
        K.LATE,
        K.LATE_HOME,
        K.OVERDUE,
        K.LEAVE_SOON,
        K.LEAVE_NOW,
        K.WINDOW_MOVED,
        K.MOVE_ON,
        K.STAY,
    } & {n.key.kind for _, n in log}
    after = night.run("20:20", "21:30")
    assert K.LATE in {n.key.kind for _, n in after} or K.OVERDUE in {n.key.kind for _, n in after}


def test_an_alarm_says_that_a_cut_off_is_missed(night: Any) -> None:
    """Not in at Chapel ten minutes after it closed at 21:00: whoever looks for her asks race control first."""
    night.report(Kind.OUT, "17:20", point="mill", **LENA)
    night.run("17:21", "21:09")
    night.report(Kind.NOT_HERE_YET, "21:10", "ana", point="chapel")
    night.run("21:10", "22:30")
    past = alarm(night, K.OVERDUE, "sasha").past
    assert past is not None
    assert (past.point, past.how) == ("chapel", "not in by it")


def test_who_was_sent_on_is_not_told_to_stay_where_they_were(night: Any) -> None:
    """Ana said that she is at Mill, was told to leave for Chapel and did not answer: she stays at Chapel, not at Mill."""
    night.report(Kind.CREW_THERE, "16:00", "ana", point="mill")
    log = late_at_chapel(night, until="21:30")
    assert K.LEAVE_NOW in kinds(log, "ana")
    stays = {n.key.point for _, n in log if n.key.kind is K.STAY and n.key.person == "ana"}
    assert "mill" not in stays


def test_who_said_that_they_are_too_tired_is_left_to_sleep(night: Any) -> None:
    """Ana waits at Chapel and has said that she falls asleep at the wheel: Jonas is asked, and not she."""
    night.report(Kind.CREW_THERE, "18:00", "ana", point="chapel")
    night.report(Kind.CREW_THERE, "18:00", "jonas", point="chapel")
    night.report(
        Kind.CANNOT_COME, "19:00", "ana", runner=None, why=Why.DRIVER, words="falling asleep at the wheel"
    )
    asked = {n.key.person for _, n in late_at_chapel(night) if n.key.kind is K.LATE}
    assert "jonas" in asked
    assert "ana" not in asked
