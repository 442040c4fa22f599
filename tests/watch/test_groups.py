"""A crew's group chat hears what concerns all, besides each person, and nothing that is one person's."""

from __future__ import annotations

from dataclasses import replace
from datetime import timedelta
from typing import Any

import pytest

from server.event.model import Part, PartKind
from server.facts.entry import Kind, Retired, Source
from server.watch.evaluate import evaluate_runner
from server.watch.notice import Made, NoticeKind, SightingValues
from server.watch.situation import Group
from server.watch.table import TABLE

K = NoticeKind
CREW = "group:crew"
LENA = {"by": "lena", "source": Source.VOLUNTEER}


@pytest.fixture
def grouped(night: Any, at: Any) -> Any:
    """A night whose crew have a group since the morning."""
    night.groups = (Group(CREW, at("06:00")),)
    return night


def heard(night: Any) -> list[tuple[NoticeKind, str]]:
    """What the group was told, and the point of it."""
    return [(m.notice.key.kind, m.notice.key.point) for m in night.made if m.notice.key.person == CREW]


def test_a_change_of_the_race_is_told_to_the_group_and_to_each(grouped: Any) -> None:
    """Held: the group hears it once, and nobody of the crew is left out because the group did."""
    alone = type(grouped)()
    for night in (grouped, alone):
        night.report(Kind.HELD, "15:00", "olga", runner=None)
        night.tick("15:00")
        night.tick("15:10")
    assert heard(grouped) == [(K.RACE_CHANGE, "")]
    people = [m.notice.key for m in grouped.made if m.notice.key.person != CREW]
    assert people == [m.notice.key for m in alone.made]


def test_a_correction_follows(grouped: Any) -> None:
    """The hold was entered by mistake and is taken back: the group, which was told, is told."""
    held = grouped.report(Kind.HELD, "15:00", "olga", runner=None)
    grouped.tick("15:00")
    grouped.report(Kind.TAKEN_BACK, "15:05", "olga", runner=None, about=held)
    grouped.tick("15:05")
    assert [k for k, _ in heard(grouped)] == [K.RACE_CHANGE, K.CORRECTION]


def test_the_finish_without_what_is_for_the_crew_alone(grouped: Any, at: Any) -> None:
    """In at the finish, once, with no kit and no next meeting; that crew are asked again stays theirs."""
    grouped.report(Kind.OUT, "27:10", point="barn", **LENA)
    grouped.report(Kind.IN, "29:40", "lena", point="finish", source=Source.VOLUNTEER)
    grouped.run("29:40", "30:40")
    assert len(grouped.got(K.FINISHED, "ana")) > 1
    (told,) = grouped.got(K.FINISHED, CREW)
    assert told.notice.values == SightingValues("finish", at("29:40"), "lena")
    assert not told.notice.needs_answer
    assert told.notice.buttons == ()


def test_a_whole_night_tells_the_group_nothing_private(grouped: Any) -> None:
    """Arrivals, leave-nows, questions, an alarm climbing and its end: of all that the group hears the end alone."""
    grouped.report(Kind.IN, "16:35", "ana", point="mill")
    grouped.report(Kind.OUT, "16:44", "ana", point="mill")
    grouped.report(Kind.OUT, "19:30", point="chapel", **LENA)
    grouped.report(Kind.OUT, "22:10", point="moss", **LENA)
    log = grouped.run("14:00", "26:30")
    assert {n.key.kind for _, n in log} >= {K.LEFT, K.LEAVE_NOW, K.LATE, K.OVERDUE, K.HANDED_ON}
    assert heard(grouped) == []
    grouped.report(Kind.STAND_DOWN, "26:31", "sasha")
    grouped.tick("26:31")
    assert [k for k, _ in heard(grouped)] == [K.STAND_DOWN]


def test_retired_is_told_to_people_alone(grouped: Any) -> None:
    """How and where she retired, and who fetches her, is for those who follow her."""
    grouped.report(Kind.RETIRED, "18:00", how=Retired.OWN_CHOICE, point="mill", words="sick", **LENA)
    grouped.tick("18:00")
    assert grouped.got(K.RETIRED, "ana")
    assert heard(grouped) == []


def test_what_was_before_it_was_bound_is_not_told(grouped: Any, at: Any) -> None:
    """A group bound in the evening does not get the morning's news."""
    grouped.groups = (Group(CREW, at("15:30")),)
    grouped.report(Kind.REROUTED, "15:00", "olga", runner=None, words="by the lower path")
    grouped.tick("15:00")
    grouped.tick("15:40")
    assert heard(grouped) == []
    grouped.report(Kind.HELD, "15:45", "olga", runner=None)
    grouped.tick("15:45")
    assert heard(grouped) == [(K.RACE_CHANGE, "")]


def test_a_crew_of_two_runners_hears_once(grouped: Any, at: Any) -> None:
    """One hold holds both, who are judged one after the other as the server does: the group is told of it once."""
    second = replace(grouped.event.runners[0], id="tove", name="Tove")
    grouped.event = replace(
        grouped.event,
        runners=(*grouped.event.runners, second),
        parts=(*grouped.event.parts, Part("ana", PartKind.CREW, "tove")),
    )
    grouped.report(Kind.HELD, "15:00", "olga", runner=None)
    for now in (at("15:00"), at("15:01")):
        for runner in ("maren", "tove"):
            owed = evaluate_runner(grouped.situation(now), runner, now).owed
            grouped.made += [Made(n, len(grouped.made) + i, now, sent_at=now) for i, n in enumerate(owed, 1)]
    assert {m.notice.key.runner for m in grouped.got(K.RACE_CHANGE, "ana")} == {"maren", "tove"}
    assert heard(grouped) == [(K.RACE_CHANGE, "")]


def test_a_group_that_is_gone_makes_nobody_unreached(grouped: Any, at: Any) -> None:
    """The bot was removed from the group: that is no person whom the organiser should telephone."""
    grouped.report(Kind.HELD, "15:00", "olga", runner=None)
    grouped.tick("15:00")
    grouped.made = [replace(m, failed=m.notice.key.person == CREW) for m in grouped.made]
    owed = grouped.tick(at("15:00") + timedelta(minutes=1))
    assert [n for n in owed if n.key.kind is K.UNREACHED] == []


def test_no_kind_for_groups_holds_what_is_one_persons() -> None:
    """The table gives groups no alarm that is open and no meeting, but that nobody goes to one, and who does now."""
    kinds = {k for k, row in TABLE.items() if row.group}
    assert kinds == {K.RACE_CHANGE, K.STAND_DOWN, K.FINISHED, K.CORRECTION, K.UNCOVERED, K.COVERED}
