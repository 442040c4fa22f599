"""Whoever reported a fact needs no notice that repeats it, unless it changes what they do."""

from __future__ import annotations

from dataclasses import replace
from typing import Any

import pytest

from server.event.model import KitItem, Part, PartKind
from server.facts.entry import Kind, Source
from server.watch.notice import NoticeKind

K = NoticeKind
LENA = {"by": "lena", "source": Source.VOLUNTEER}


def told(owed: Any, kind: NoticeKind) -> list[str]:
    """Who is told that kind."""
    return sorted(n.key.person for n in owed if n.key.kind is kind)


def test_out_is_not_told_to_its_reporter(night: Any) -> None:
    """Ana reports her out of Mill: neither she nor Jonas beside her hears it back; the answer says what follows."""
    night.report(Kind.IN, "16:30", "ana", point="mill")
    night.tick("16:30")
    night.report(Kind.OUT, "16:40", "ana", point="mill")
    owed = night.tick("16:40")
    assert told(owed, K.LEFT) == []


def test_out_repeats_nothing_to_those_who_know_their_next_meeting(night: Any) -> None:
    """Vera, told to leave for Moss long ago, reports her out of Chapel where she stopped on the way: nothing comes
    back to her, while the same by Ana is told to her."""
    for by, heard in (("vera", []), ("ana", ["tomas", "vera"])):
        one = type(night)()
        one.report(Kind.IN, "19:20", "ana", point="chapel")
        one.tick("19:20")
        one.run("19:21", "20:10")
        assert one.got(K.BE_THERE, "vera")
        one.report(Kind.OUT, "20:11", by, point="chapel")
        assert [p for p in told(one.tick("20:11"), K.LEFT) if p in ("tomas", "vera")] == (
            heard if by == "ana" else ["tomas"]
        )


def test_a_finish_is_not_told_to_its_reporter_unless_asked(night: Any) -> None:
    """Sasha waits at the finish and reports it: the others hear; the crew who report it are asked whether they
    have her."""
    night.report(Kind.OUT, "27:10", "lena", point="barn", source=Source.VOLUNTEER)
    night.report(Kind.IN, "29:40", "sasha", point="finish")
    assert told(night.tick("29:40"), K.FINISHED) == ["ana", "jonas", "piet", "tomas", "vera"]
    other = type(night)()
    other.report(Kind.IN, "29:40", "ana", point="finish")
    owed = other.tick("29:40")
    assert [(n.key.person, n.needs_answer) for n in owed if n.key.person == "ana"] == [("ana", True)]


def test_a_correction_is_not_told_to_who_made_it(night: Any) -> None:
    """Vera puts Ana's time right: Ana and Jonas were told another, Vera needs no word of it."""
    night.report(Kind.CREW_THERE, "19:00", "vera", runner=None, point="moss")
    first = night.report(Kind.OUT, "19:25", "lena", point="chapel")
    assert set(told(night.tick("19:25"), K.LEFT)) >= {"vera"}
    night.report(Kind.OUT, "19:05", "vera", point="chapel", replaces=first, received=night.made[-1].made_at)
    owed = night.tick("19:26")
    assert "vera" not in told(owed, K.CORRECTION)
    assert "tomas" in told(owed, K.CORRECTION)


def test_a_change_of_the_race_is_not_told_to_who_entered_it(night: Any) -> None:
    """An organiser who is also crew entered the new route: the others hear."""
    night.event = replace(night.event, parts=(*night.event.parts, Part("ana", PartKind.ORGANISER)))
    night.report(Kind.REROUTED, "15:00", "ana", runner=None, words="by the lower path")
    heard = told(night.tick("15:00"), K.RACE_CHANGE)
    assert "ana" not in heard
    assert {"jonas", "maren", "sasha", "vera"} <= set(heard)


@pytest.mark.parametrize("kind", [K.LEAVE_SOON, K.ARRIVED])
def test_what_is_brought_and_what_is_taken_back_are_apart(night: Any, kind: NoticeKind) -> None:
    """Once, in whatever comes first. Crew read 'bring poles', never 'bring the wet shoes' that they are to take away."""
    plans = [
        replace(m, kit=(*m.kit, KitItem("wet shoes", take_back=True))) if m.point == "mill" else m
        for m in night.event.meetings
    ]
    night.event = replace(night.event, meetings=tuple(plans))
    owed = [n for _, n in night.run("14:00", "16:20")] if kind is K.LEAVE_SOON else []
    night.report(Kind.IN, "16:25", "lena", point="mill", source=Source.VOLUNTEER)
    owed += night.tick("16:25")
    values = [n.values for n in owed if n.key.kind is kind and n.key.point == "mill"]
    assert values
    assert {(v.kit, v.take_back) for v in values} == {(("poles",), ("wet shoes",))}
