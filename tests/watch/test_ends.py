"""What ends an alarm and what does not: each report just before, at and just after what was known when it was raised."""

from __future__ import annotations

from typing import Any

import pytest

from server.facts.entry import Fix, Kind, Source
from server.watch.alarms import alarms, ended, overdue_again
from server.watch.notice import NoticeKind
from tests.watch.conftest import clock
from tests.watch.scenes import quietly_out
from tests.watch.test_bounds import sight

K = NoticeKind
RAISED = "26:51"
"""When she is overdue who went out of Moss at 23:10."""
LENA: dict[str, Any] = {"by": "lena", "source": Source.VOLUNTEER}


def sought(night: Any) -> Any:
    """Overdue, told to Sasha at 26:53; nobody has answered."""
    quietly_out(night, "moss", "23:10")
    night.run("26:16", "26:53", lazily=True)
    (alarm,) = [m for m in night.made if m.notice.key.kind is K.OVERDUE]
    assert alarm.notice.values.raised_at == clock(RAISED)
    return alarm


def why_over(night: Any, now: str = "26:58") -> str:
    """Why the alarm told is over by then; '' while it is open."""
    seen = sight(night, clock(now))
    (alarm,) = [a for a in alarms(seen) if a.notices]
    end = ended(seen, alarm)
    return "" if end is None else f"{end.reason} by {end.by}"


@pytest.mark.parametrize(
    ("seen", "received", "over"),
    [
        ("26:40", "26:50", False),
        ("26:40", "26:51", True),
        ("26:40", "26:55", True),
        ("26:50", "26:50", False),
        ("26:51", "26:51", True),
        ("26:55", "26:55", True),
    ],
)
def test_a_stand_down_ends_what_was_raised_when_it_came(
    night: Any, seen: str, received: str, *, over: bool
) -> None:
    """Sent before the alarm and read after it, it still ends it; one that was read before it is of an earlier silence."""
    sought(night)
    night.report(Kind.STAND_DOWN, seen, "sasha", received=clock(received))
    assert why_over(night) == ("stand-down by sasha" if over else "")


@pytest.mark.parametrize(
    ("about", "over"),
    [
        (None, True),
        ("", True),
        ("the alarm", True),
        ("its number", True),
        ("its notice", True),
        ("e1", True),
        ("999", False),
        ("e9", False),
    ],
)
def test_a_stand_down_ends_the_alarm_it_names(night: Any, about: str | None, *, over: bool) -> None:
    """By id, by short number, by the notice, by the entry it rests on, or by nothing, which means all."""
    alarm = sought(night)
    names = {
        "the alarm": alarm.notice.values.alarm,
        "its number": str(alarm.short),
        "its notice": alarm.notice.key.text(),
    }
    night.report(Kind.STAND_DOWN, "26:55", "sasha", about=names.get(about or "", about))
    assert why_over(night) == ("stand-down by sasha" if over else "")


@pytest.mark.parametrize(
    ("kind", "more", "over"),
    [
        (Kind.IN, {"point": "ridge"}, "seen by lena"),
        (Kind.OUT, {"point": "ridge"}, "seen by lena"),
        (Kind.THROUGH, {"point": "ridge"}, "seen by lena"),
        (Kind.IN, {"point": "ridge", "unconfirmed": True, "doubt": "guessed"}, ""),
        (Kind.IN, {"point": "ridge", "source": Source.TRACKER}, ""),
        (Kind.POSITION, {"fix": Fix(54.0, -2.0), "source": Source.TRACKER}, ""),
        (Kind.NOT_HERE_YET, {"point": "ridge"}, ""),
        (Kind.HOW_SHE_IS, {"words": "saw her light"}, ""),
        (Kind.RETIRED, {"point": "ridge"}, "retired by lena"),
        (Kind.IN_HAND, {}, "in hand by lena"),
        (Kind.IN, {"point": "finish"}, "finished by lena"),
        (Kind.RACE_CONTROL_TOLD, {}, ""),
        (Kind.CONTACT_LOST, {}, ""),
    ],
)
def test_only_what_a_person_saw_ends_her_being_sought(
    night: Any, kind: Kind, more: dict[str, Any], over: str
) -> None:
    """Seen, retired, finished or in hand; never a tracker, a guess, words, or somebody who misses her."""
    sought(night)
    night.report(kind, "26:56", **LENA | more)
    assert why_over(night) == over


@pytest.mark.parametrize(
    ("seen", "over"), [("23:05", ""), ("23:30", ""), ("26:20", "seen by vera"), ("26:50", "seen by vera")]
)
def test_a_late_report_ends_it_only_where_she_is_not_overdue_by_it(night: Any, seen: str, over: str) -> None:
    """Through Ridge at 26:20, said after it: she is due at the finish only. At 23:05 it was known better; and by 34:00
    she is overdue from Ridge too."""
    sought(night)
    night.report(Kind.THROUGH, seen, "vera", point="ridge", received=clock("26:56"))
    assert why_over(night, "34:00" if seen == "23:30" else "26:58") == over


@pytest.mark.parametrize(("now", "again"), [("27:54", False), ("27:55", True)])
def test_a_silence_that_was_stood_down_rests_for_an_hour(night: Any, now: str, *, again: bool) -> None:
    """Stood down at 26:55 with nothing heard of her: no new alarm until 27:55; from then on there is one."""
    sought(night)
    night.report(Kind.STAND_DOWN, "26:55", "sasha")
    night.tick("26:55")
    assert overdue_again(sight(night, clock("27:00"))) == clock("27:55")
    raised = [n for n in night.tick(now) if n.key.kind is K.OVERDUE]
    assert [n.values.alarm for n in raised] == (["overdue:e1:1"] if again else [])


def test_a_stand_down_that_ended_nothing_keeps_no_alarm_off(night: Any) -> None:
    """Said at 26:00, while nobody was looking for her: at her line she is looked for all the same."""
    quietly_out(night, "moss", "23:10")
    night.report(Kind.STAND_DOWN, "26:00", "sasha")
    night.tick("26:00")
    assert overdue_again(sight(night, clock("26:10"))) is None
    assert [n for n in night.tick("26:53") if n.key.kind is K.OVERDUE]
