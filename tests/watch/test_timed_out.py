"""A cut-off missed: who is told, who is asked, what is held back meanwhile, and how it ends."""

from __future__ import annotations

from dataclasses import replace
from datetime import timedelta
from typing import Any

import pytest

from server.event.model import CutOff, Edge
from server.facts.entry import Kind, Retired, Source
from server.watch.notice import NoticeKind, PastCutOffValues
from server.watch.table import row
from tests.watch.conftest import clock

K = NoticeKind
LENA = {"by": "lena", "source": Source.VOLUNTEER}
EVERYBODY = ["ana", "jonas", "maren", "olga", "sasha", "tomas", "vera"]


def told(owed: list[Any], kind: NoticeKind = K.PAST_CUT_OFF) -> list[str]:
    """Who is owed that kind."""
    return sorted(n.key.person for n in owed if n.key.kind is kind)


def asked(owed: list[Any]) -> list[str]:
    """Who is asked what race control says."""
    return sorted(n.key.person for n in owed if n.key.kind is K.PAST_CUT_OFF and n.needs_answer)


def of(owed: list[Any], who: str) -> PastCutOffValues:
    """What a person reads of it."""
    (found,) = (n.values for n in owed if n.key.kind is K.PAST_CUT_OFF and n.key.person == who)
    assert isinstance(found, PastCutOffValues)
    return found


def out_limit(night: Any, point: str = "chapel", hours: float = 7.5) -> None:
    """That point must also be left so many hours after the start."""
    course = night.event.courses[0]
    cut = CutOff(Edge.OUT, elapsed=timedelta(hours=hours))
    points = tuple(replace(p, cut_offs=(*p.cut_offs, cut)) if p.id == point else p for p in course.points)
    night.event = replace(night.event, courses=(replace(course, points=points),))


def comes_in_late(night: Any) -> list[Any]:
    """Out of the mill 16:40, Ana at the chapel writes her in at 21:08; the cut-off there was in by 21:00."""
    night.report(Kind.OUT, "16:40", point="mill", **LENA)
    night.report(Kind.CREW_THERE, "20:00", "ana", runner=None, point="chapel")
    night.run("16:40", "21:07", lazily=True)
    night.report(Kind.IN, "21:08", "ana", point="chapel")
    owed: list[Any] = night.tick("21:08")
    return owed


def test_everybody_who_would_act_on_it_is_told_and_those_who_can_find_out_are_asked(night: Any) -> None:
    """Crew, pacer, home, organiser, herself; Ana stands with her, Olga decides, Sasha rings race control."""
    owed = comes_in_late(night)
    assert told(owed) == EVERYBODY
    assert asked(owed) == ["ana", "olga", "sasha"]
    assert {n.buttons for n in owed if n.key.kind is K.PAST_CUT_OFF and n.needs_answer} == {
        ("goes on", "race over")
    }
    assert (of(owed, "ana").here, of(owed, "vera").here) == (True, False)
    assert told(night.tick("21:09")) == []


def test_who_finds_out_is_asked_three_times_until_they_answer(night: Any) -> None:
    """Every look-again time; who has answered is asked no more."""
    comes_in_late(night)
    night.answer(K.PAST_CUT_OFF, "olga", "ok", "21:10")
    assert told(night.tick("21:27")) == []
    assert told(night.tick("21:28")) == ["ana", "sasha"]
    assert told(night.tick("21:48")) == ["ana", "sasha"]
    assert told(night.tick("22:10")) == []


def test_nobody_is_sent_on_meanwhile_and_she_stays_watched(night: Any) -> None:
    """No leave-now, window or move-on for a later point, only to stay; her silence still becomes an alarm."""
    comes_in_late(night)
    later = [n for _, n in night.run("21:09", "36:00", lazily=True)]
    sent_on = [n.key.kind for n in later if row(n.key.kind).racing and n.key.kind is not K.STAY]
    assert sent_on == []
    assert "sasha" in told(later, K.OVERDUE)


def test_should_she_go_on_nobody_reads_a_leave_by_that_is_over(night: Any) -> None:
    """Ana reads by when she would leave for Barn; hours later, with that past, she is asked without it."""
    comes_in_late(night)

    def anew(when: str) -> PastCutOffValues:
        night.made = [m for m in night.made if m.notice.key.kind is not K.PAST_CUT_OFF]
        return of(night.tick(when), "ana")

    early, late = anew("22:29"), anew("25:46")
    assert (early.next_point, early.leave_by) == ("barn", clock("25:45"))
    assert (late.next_point, late.leave_by) == (None, None)


def test_without_a_missed_cut_off_they_are_sent_on(night: Any) -> None:
    """The same night, in at 20:50: what the test before holds back does go out."""
    night.report(Kind.OUT, "16:40", point="mill", **LENA)
    night.report(Kind.IN, "20:50", "ana", point="chapel")
    later = [n for _, n in night.run("20:50", "30:00", lazily=True)]
    assert [n for n in later if row(n.key.kind).racing]


def test_she_goes_on_says_one_and_the_others_hear(night: Any) -> None:
    """Ana presses what race control says: all others are told by whom, and are sent on again."""
    comes_in_late(night)
    night.answer(K.PAST_CUT_OFF, "ana", "goes on", "21:15")
    owed = night.tick("21:15")
    assert told(owed) == [w for w in EVERYBODY if w != "ana"]
    assert (of(owed, "sasha").over, of(owed, "sasha").told_by) == ("goes on", "ana")
    night.report(Kind.OUT, "21:20", "ana", point="chapel")
    later = [n for _, n in night.run("21:16", "30:00", lazily=True)]
    assert told(later) == []
    assert [n for n in later if row(n.key.kind).racing]


def test_seen_farther_on_it_is_over(night: Any) -> None:
    """In at Moss at night: she was let go on, whoever forgot to say so."""
    comes_in_late(night)
    night.report(Kind.IN, "25:00", point="moss", **LENA)
    owed = night.tick("25:00")
    assert told(owed) == EVERYBODY
    assert (of(owed, "sasha").over, of(owed, "sasha").seen_at) == ("goes on", "moss")
    assert told(night.tick("25:01")) == []


def test_more_time_by_the_organiser_or_a_corrected_report_takes_it_back(new_night: Any, at: Any) -> None:
    """Those told hear why it holds no more."""
    night = new_night()
    comes_in_late(night)
    more = {"runner": None, "source": Source.VOLUNTEER, "point": "chapel", "edge": "in", "until": at("21:30")}
    night.report(Kind.CUT_OFF_MOVED, "21:12", "olga", **more)
    assert of(night.tick("21:12"), "sasha").over == "moved"
    night = new_night()
    comes_in_late(night)
    night.report(Kind.IN, "20:58", "ana", point="chapel", replaces=night.entries[-1].id, received=at("21:12"))
    assert of(night.tick("21:12"), "sasha").over == "wrong"


def test_retired_after_it_is_told_as_that(night: Any) -> None:
    """No word that the cut-off is over: everybody hears that she has retired."""
    comes_in_late(night)
    night.report(Kind.RETIRED, "21:20", "ana", how=Retired.TIMED_OUT, point="chapel")
    owed = night.tick("21:20")
    assert told(owed) == []
    assert "sasha" in told(owed, K.RETIRED)


def test_out_after_it_is_told_again(night: Any) -> None:
    """She has left after it, whoever let her: the crew ahead have to know that she is on the course."""
    comes_in_late(night)
    night.report(Kind.OUT, "21:25", "ana", point="chapel")
    owed = night.tick("21:25")
    assert told(owed) == EVERYBODY
    assert of(owed, "vera").how == "out after it"


@pytest.mark.parametrize(("came", "is_asked"), [("21:28", True), ("18:40", False)])
def test_not_reported_out_is_asked_only_where_she_may_still_be_there(
    night: Any, came: str, *, is_asked: bool
) -> None:
    """People forget 'out': nobody is asked where she will have left long before; the report is given ten minutes."""
    out_limit(night)
    night.event = replace(night.event, courses=tuple(
        replace(c, points=tuple(replace(p, cut_offs=p.cut_offs[1:]) for p in c.points)) for c in night.event.courses
    ))  # fmt: skip
    night.report(Kind.IN, came, "ana", point="chapel")
    assert [n for _, n in night.run(came, "21:39", lazily=True) if n.key.kind is K.PAST_CUT_OFF] == []
    owed = night.tick("21:40")
    assert told(owed) == (EVERYBODY if is_asked else [])
