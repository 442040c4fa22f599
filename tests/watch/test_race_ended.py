"""The organiser ends the race: crew are told what to do, and nothing sends them to a meeting that is off."""

from __future__ import annotations

from typing import Any

import pytest

from server.facts.entry import Kind
from server.watch.notice import NoticeKind, RaceChangeValues, UnreachedValues
from server.watch.table import TABLE

K = NoticeKind
SENDING = {
    K.STAY,
    K.LEAVE_SOON,
    K.LEAVE_NOW,
    K.BE_THERE,
    K.WAKE_UP,
    K.BRIEF,
    K.MOVE_ON,
    K.WINDOW_MOVED,
    K.MEETING_LOST,
}


def sent(log: list[tuple[Any, Any]]) -> set[NoticeKind]:
    """Kinds of those that send somebody somewhere, and what asks others to reach them on that account."""
    about = (
        n.key.kind
        for _, n in log
        if not isinstance(n.values, UnreachedValues) or n.values.notice_kind == K.LEAVE_NOW.value
    )
    return {kind for kind in about if kind in SENDING | {K.UNREACHED}}


def test_no_leave_now_comes_after_the_end(night: Any) -> None:
    """The same night sends crew to Chapel, Moss and Barn; ended at 15:30 it sends nobody, nor looks for who was told
    to leave before; and she is still watched."""
    other = type(night)()
    assert sent(other.run("15:30", "23:00")) >= {K.LEAVE_NOW, K.UNREACHED}
    night.run("15:00", "15:29")
    assert night.got(K.LEAVE_NOW, "ana")
    night.report(Kind.RACE_ENDED_EARLY, "15:30", "olga", runner=None, words="storm, buses from Moss")
    log = night.run("15:30", "23:00")
    assert sent(log) == set()
    (told,) = {n.values for _, n in log if n.key.kind is K.RACE_CHANGE}
    assert isinstance(told, RaceChangeValues)
    assert (told.words, told.told_by) == ("storm, buses from Moss", "olga")
    assert K.OVERDUE in {n.key.kind for _, n in log}


def test_ended_from_a_point_on_the_meetings_before_it_hold(night: Any) -> None:
    """From Chapel on: crew still drive to the mill and to Chapel, and no farther."""
    night.report(Kind.RACE_ENDED_EARLY, "14:30", "olga", runner=None, point="chapel")
    log = night.run("14:30", "22:00")
    assert {n.key.point for _, n in log if n.key.kind in SENDING} <= {"mill", "chapel"}
    assert any(n.key.point == "mill" for _, n in log if n.key.kind is K.LEAVE_NOW)


def test_taken_back_the_meetings_hold_again(night: Any) -> None:
    """Ended by mistake: leave now comes as if nothing had been said."""
    wrong = night.report(Kind.RACE_ENDED_EARLY, "14:30", "olga", runner=None)
    night.run("14:30", "14:40")
    night.report(Kind.TAKEN_BACK, "14:41", "olga", runner=None, about=wrong)
    assert K.LEAVE_NOW in sent(night.run("14:41", "16:00"))


def test_what_serves_only_a_race_that_goes_on() -> None:
    """The table says so of each kind that sends somebody somewhere, of the odds, of her torch, and of nothing else."""
    assert {k for k, r in TABLE.items() if r.racing} == SENDING | {
        K.CUT_OFF_ODDS,
        K.BEFORE_DARK,
        K.UNCOVERED,
        K.COVERED,
    }


@pytest.mark.parametrize(
    ("kind", "more"),
    [
        (Kind.HELD, {}),
        (Kind.CUT_OFF_MOVED, {"point": "chapel", "edge": "in"}),
        (Kind.ACCESS_CLOSED, {"point": "barn"}),
        (Kind.RACE_ENDED_EARLY, {}),
        (Kind.START_DELAYED, {}),
    ],
)
def test_each_change_says_who_said_it_and_in_which_words(night: Any, at: Any, kind: Kind, more: Any) -> None:
    """Two organisers: the one who entered it is named, not the first in the file."""
    more = more | ({"until": at("21:30")} if kind in (Kind.CUT_OFF_MOVED, Kind.START_DELAYED) else {})
    night.report(kind, "13:55", "lena", runner=None, words="ice on the road", **more)
    found = {n.values for n in night.tick("13:55") if n.key.kind is K.RACE_CHANGE}
    assert {(v.told_by, v.words, v.edge) for v in found} == {
        ("lena", "ice on the road", more.get("edge", ""))
    }
