"""No answer is the last: 'can't' may become 'I have it', and who holds an alarm may give it back."""

from __future__ import annotations

from datetime import timedelta
from typing import Any

import pytest

from server.facts.entry import Kind, Source
from server.watch.notice import NoticeKind

K = NoticeKind
ALARMS = (K.OVERDUE, K.HANDED_ON, K.LOOK_AGAIN, K.ASKED_FOR_HELP)


def asked(owed: Any) -> list[str]:
    """Who is asked by alarms."""
    return [n.key.person for n in owed if n.key.kind in ALARMS and n.needs_answer]


def told(owed: Any) -> list[str]:
    """Who is told of an alarm without being asked."""
    return [n.key.person for n in owed if n.key.kind in ALARMS and not n.needs_answer]


@pytest.fixture
def raised(night: Any, at: Any) -> Any:
    """Overdue at ten past midnight or so; the moment is `raised.at`."""
    night.report(Kind.OUT, "22:10", "lena", point="moss", source=Source.VOLUNTEER)
    now = at("22:30")
    while K.OVERDUE not in {n.key.kind for n in night.tick(now)}:
        now += timedelta(minutes=1)
    night.raised_at = now
    return night


def minutes(night: Any, n: float) -> Any:
    """So many minutes after the alarm."""
    return night.raised_at + timedelta(minutes=n)


def test_cannot_is_not_the_last_word(raised: Any) -> None:
    """Sasha says 'can't', the next is asked at once; then Sasha has it after all, and nobody further is asked."""
    raised.answer(K.OVERDUE, "sasha", "cannot", minutes(raised, 1))
    assert asked(raised.tick(minutes(raised, 1))) == ["ana"]
    raised.answer(K.OVERDUE, "sasha", "i have it", minutes(raised, 3))
    assert told(raised.tick(minutes(raised, 3))) == ["ana"]
    assert asked(raised.tick(minutes(raised, 10))) == [], "it is held"
    assert asked(raised.tick(minutes(raised, 23))) == ["sasha"], "looked at again by who holds it"


def test_the_holder_gives_it_back(raised: Any) -> None:
    """Who has it says 'can't': the next step is asked in the same minute, those told hear that nobody has it, and
    whoever takes it then holds it, also told to those who had heard of the first."""
    raised.answer(K.OVERDUE, "sasha", "i have it", minutes(raised, 1))
    raised.tick(minutes(raised, 1))
    raised.answer(K.OVERDUE, "sasha", "cannot", minutes(raised, 8))
    owed = raised.tick(minutes(raised, 8))
    assert asked(owed) == ["ana"]
    assert {n.values.gave_back for n in owed if n.key.kind in ALARMS} == {"sasha"}
    raised.answer(K.HANDED_ON, "ana", "i have it", minutes(raised, 10))
    owed = raised.tick(minutes(raised, 10))
    assert {n.values.holder for n in owed if n.key.kind in ALARMS} == {"ana"}
    raised.answer(K.HANDED_ON, "ana", "cannot", minutes(raised, 12))
    assert asked(raised.tick(minutes(raised, 12))) == ["vera"]
    raised.answer(K.OVERDUE, "sasha", "i have it", minutes(raised, 13))
    owed = raised.tick(minutes(raised, 13))
    assert {n.key.person for n in owed if n.values.holder == "sasha"} >= {"ana", "vera"}, "told a second time"


def test_given_back_at_the_end_of_the_ladder(raised: Any) -> None:
    """The last step gives it back: the first is asked again at once, not after a pause, and not the one who can't."""
    steps = ["sasha", "ana", "vera", "olga"]
    for i in range(4):
        raised.tick(minutes(raised, 5 * i))
    kind = K.HANDED_ON
    raised.answer(kind, "olga", "i have it", minutes(raised, 16))
    raised.tick(minutes(raised, 16))
    raised.answer(kind, "olga", "cannot", minutes(raised, 17))
    owed = raised.tick(minutes(raised, 17))
    assert asked(owed) == steps[:1]
    assert set(told(owed)) == {"ana", "vera"}


def test_help_given_back_goes_to_all_others(night: Any, at: Any) -> None:
    """Help has one step: everybody but the one who can't is asked again at once."""
    night.report(Kind.OUT, "22:10", "lena", point="moss", source=Source.VOLUNTEER)
    night.report(Kind.ASKED_FOR_HELP, "22:30", "maren", source=Source.RUNNER)
    first = set(asked(night.tick("22:30")))
    night.answer(K.ASKED_FOR_HELP, "ana", "i have it", "22:31")
    night.tick("22:31")
    night.answer(K.ASKED_FOR_HELP, "ana", "cannot", "22:33")
    assert set(asked(night.tick("22:33"))) == first - {"ana"}


def test_a_driver_who_left_and_then_cannot(night: Any, at: Any) -> None:
    """'On our way', then 'can't': the leave-now goes to the rest of the crew, as if it had not been answered."""
    due = at("14:00")
    while K.LEAVE_NOW not in {n.key.kind for n in night.tick(due)}:
        due += timedelta(minutes=1)
    night.answer(K.LEAVE_NOW, "ana", "on our way", due + timedelta(minutes=1))
    night.tick(due + timedelta(minutes=1))
    night.answer(K.LEAVE_NOW, "jonas", "cannot", due + timedelta(minutes=2))
    night.answer(K.LEAVE_NOW, "ana", "cannot", due + timedelta(minutes=3))
    owed = [n for n in night.tick(due + timedelta(minutes=3)) if n.key.kind is K.UNREACHED]
    assert [n.key.person for n in owed] == ["vera"]


def test_no_answer_since_the_asking(raised: Any) -> None:
    """'No answer since' names the moment at which that person was asked, not that of the alarm."""
    log = []
    for i in range(1, 40):
        log += [(i, n) for n in raised.tick(minutes(raised, i))]
    since = {n.values.person: n.values.since for _, n in log if n.key.kind is K.UNREACHED}
    assert since == {
        "sasha": minutes(raised, 0),
        "ana": minutes(raised, 5),
        "vera": minutes(raised, 10),
    }
    assert {n.values.channels for _, n in log if n.key.kind is K.UNREACHED} == {()}, "reached, but silent"
