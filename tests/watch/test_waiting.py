"""What still waits: notices nothing has overtaken."""

from __future__ import annotations

from datetime import UTC, datetime, timedelta

from server.forecast.outlook import Window
from server.watch.notice import (
    AlarmValues,
    LateValues,
    Made,
    Notice,
    NoticeKey,
    NoticeKind,
    StandDownValues,
    Urgency,
    Values,
)
from server.watch.waiting import changeable, waiting

START = datetime(2027, 6, 19, 12, tzinfo=UTC)
HOUR = timedelta(hours=1)
LATE = LateValues("mill", Window("mill", START, START, START), None)


def made(
    short: int,
    kind: NoticeKind = NoticeKind.LEAVE_NOW,
    *,
    values: Values = LATE,
    point: str = "mill",
    person: str = "ana",
    use_by: datetime | None = None,
    answered: bool = False,
    asks: bool = True,
) -> Made:
    """A notice in the database."""
    key = NoticeKey("e", "maren", person, kind, point, short)
    notice = Notice(key, Urgency.ACTION, START, use_by, asks, values)
    return Made(notice, short, START, answered_at=START if answered else None)


def alarm(of: str) -> AlarmValues:
    """An overdue alarm's values."""
    return AlarmValues(of, "overdue", "mill", None, None, None, None, (), (), None, None, 1)


def test_a_newer_one_of_the_same_takes_its_place() -> None:
    """A leave-now for the same meeting made anew leaves the first one nothing to wait for, answered or not."""
    assert waiting([made(1), made(2)], START) == {2}
    assert waiting([made(1), made(2, answered=True)], START) == frozenset()
    assert waiting([made(1), made(2, point="ridge"), made(3, person="jonas")], START) == {1, 2, 3}


def test_past_its_use_by_nothing_waits() -> None:
    """At the use-by an answer still counts; a second later 'leaving' is about something else."""
    old = [made(1, use_by=START + HOUR)]
    assert waiting(old, START + HOUR) == {1}
    assert waiting(old, START + HOUR + timedelta(seconds=1)) == frozenset()


def test_an_alarms_question_ends_with_the_alarm() -> None:
    """Stood down, nobody owes it an answer; another alarm still does wait."""
    first = made(1, NoticeKind.OVERDUE, values=alarm("a1"))
    second = made(2, NoticeKind.OVERDUE, values=alarm("a2"), point="ridge")
    over = made(
        3, NoticeKind.STAND_DOWN, values=StandDownValues("a1", "overdue", "seen", "ana", START), asks=False
    )
    assert waiting([first, second], START) == {1, 2}
    assert waiting([first, second, over], START) == {2}


def test_what_asks_nothing_or_is_answered_does_not_wait() -> None:
    """News waits for nobody."""
    assert waiting([made(1, asks=False), made(2, answered=True, point="ridge")], START) == frozenset()


ENDED = made(
    2, NoticeKind.STAND_DOWN, values=StandDownValues("a1", "overdue", "seen", "ana", START), asks=False
)


def test_another_answer_changes_something_while_the_alarm_is_open() -> None:
    """Answered ones may be answered anew until the alarm is over or a newer notice asks the same."""
    alarm_of = made(1, NoticeKind.OVERDUE, values=alarm("a1"), answered=True)
    assert waiting([alarm_of], START) == frozenset()
    assert changeable([alarm_of], START) == {1}
    again = made(3, NoticeKind.OVERDUE, values=alarm("a1"))
    assert changeable([alarm_of, again], START) == frozenset()
    assert changeable([alarm_of, ENDED], START) == frozenset()
    assert changeable([made(4, answered=True, use_by=START)], START + HOUR) == frozenset()
