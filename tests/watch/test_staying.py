"""Nobody is sent away from a runner who is missed: who stays, who may go on, and when waiting is over."""

from __future__ import annotations

from dataclasses import replace
from datetime import datetime, timedelta
from typing import Any

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from server.conversation.telling.notices import say_notice
from server.conversation.telling.reader import Reader
from server.event.model import CrewAccess, CutOff, Drive, Edge
from server.facts.entry import Kind, Source
from server.watch.late_values import StayValues
from server.watch.leaving import next_of
from server.watch.notice import MeetingValues, NoticeKind
from server.watch.staying import gone_by, missed_since
from server.watch.told_times import meetings_as_told, sight_of
from tests.watch.conftest import Night, clock

K = NoticeKind
MINUTE = timedelta(minutes=1)
LENA = {"by": "lena", "source": Source.VOLUNTEER}
SENDING = {K.LEAVE_NOW, K.BE_THERE, K.WAKE_UP, K.MOVE_ON}


def late_at(night: Any, when: str) -> datetime:
    """When she is late by what was known then."""
    at: datetime = night.situation(clock(when)).outlooks["maren"].late_time()[1]
    return at


def told(owed: list[Any], kind: NoticeKind, point: str | None = None) -> list[str]:
    """Who is owed that kind."""
    return sorted(n.key.person for n in owed if n.key.kind is kind and point in (None, n.key.point))


def at_mill(night: Any) -> Any:
    """Ana and Jonas wait at Mill, in good time; nobody has seen her since the start."""
    night.tick("15:05")
    night.report(Kind.CREW_THERE, "15:50", "ana", runner=None, point="mill")
    return night


def test_crew_who_wait_for_a_late_runner_are_sent_nowhere(night: Any) -> None:
    """Chapel's leave-by comes and goes: they stay at Mill, are told so once, and that Chapel has to wait."""
    at_mill(night)
    log = night.run("15:51", "21:00")
    assert not [n for _, n in log if n.key.kind in SENDING and n.key.person in ("ana", "jonas")]
    stays = [n for _, n in log if n.key.kind is K.STAY]
    assert sorted(n.key.person for n in stays) == ["ana", "jonas"]
    values = stays[0].values
    assert isinstance(values, StayValues)
    assert (values.point, values.keep, values.go, values.next_point) == (
        "mill",
        ("ana", "jonas"),
        (),
        "chapel",
    )


def test_where_they_stand_already_is_no_place_to_go_to(night: Any) -> None:
    """Mill and Chapel are one camp between two loops: 'do not leave' names Barn."""
    course = night.event.courses[0]
    points = tuple(
        replace(p, access=replace(p.access, place="camp")) if p.id in ("mill", "chapel") else p
        for p in course.points
    )
    night.event = replace(night.event, courses=(replace(course, points=points),))
    at_mill(night)
    stays = [n.values for _, n in night.run("15:51", "19:00") if n.key.kind is K.STAY]
    assert [(v.point, v.next_point) for v in stays] == [("mill", "barn")] * 2


def test_crew_who_never_said_that_they_are_there_are_not_sent_on(night: Any) -> None:
    """No word of their arrival, no answer: they may well be standing there."""
    log = night.run("15:00", "21:00")
    assert not [
        n for _, n in log if n.key.kind in SENDING and n.key.point == "chapel" and n.key.person == "ana"
    ]
    assert [n.key.person for _, n in log if n.key.kind is K.STAY] == ["ana", "jonas"]


def test_who_has_left_by_themselves_is_held_to_it_no_more(night: Any) -> None:
    """They know why they went: Chapel is their next meeting then, not Mill, and they hear no 'stay'."""
    at_mill(night)
    night.run("15:51", "16:50")

    def ahead(now: str) -> str:
        found = next_of(sight_of(night.situation(clock(now)), "maren", clock(now)), "ana")
        return "" if found is None else found.point

    assert ahead("16:58") == "mill"
    night.report(Kind.CREW_LEFT, "16:50", "ana", runner=None, point="mill")
    assert ahead("16:58") == "chapel"
    assert not [n for _, n in night.run("16:51", "19:00") if n.key.kind is K.STAY and n.key.point == "mill"]


def test_who_stands_where_she_was_last_seen_stays_there(night: Any) -> None:
    """Out of Chapel 19:25 and missed at Moss: Ana and Jonas at Chapel are nearest behind her, and no leave-now for Barn
    reaches them until she is heard of."""
    night.report(Kind.CREW_THERE, "18:30", "ana", runner=None, point="chapel")
    night.report(Kind.OUT, "19:25", "ana", point="chapel")
    log = night.run("19:26", "26:30")
    stays = [n for _, n in log if n.key.kind is K.STAY and n.key.point == "chapel"]
    assert sorted(n.key.person for n in stays) == ["ana", "jonas"]
    assert (stays[0].values.keep, stays[0].values.next_point) == (("ana", "jonas"), "barn")
    assert not [n for _, n in log if n.key.kind is K.LEAVE_NOW and n.key.point == "barn"]
    night.report(Kind.OUT, "26:31", "lena", point="moss", source=Source.VOLUNTEER)
    assert [n for _, n in night.run("26:31", "30:00") if n.key.kind is K.LEAVE_NOW and n.key.point == "barn"]


def unwatched(night: Any) -> Any:
    """Nobody reports from Mill: she may go by there unseen, and is late first at Chapel."""
    night.reported = ("chapel", "moss", "ridge", "finish")
    return night


def gone_at(night: Any, m: MeetingValues) -> datetime:
    """The first five minutes at which she has very likely gone by."""
    outlook = night.situation(clock("15:00")).outlooks["maren"]
    grid = [clock("15:00") + 5 * k * MINUTE for k in range(72)]
    return next(t for t in grid if outlook.at(t).p_out_by(m.point, t) >= 0.9)


def test_move_on_comes_once_she_has_very_likely_gone_by(night: Any) -> None:
    """Crew of whom nothing was heard, where nobody reports: not five minutes sooner, whatever the time to wait was."""
    unwatched(night)
    (mill, *_) = meetings_as_told(sight_of(night.situation(clock("15:00")), "maren", clock("15:00")))
    due = gone_at(night, mill)
    assert due < late_at(night, "15:00")
    night.tick("15:05")
    assert told(night.tick(due - MINUTE), K.MOVE_ON) == []
    assert told(night.tick(due), K.MOVE_ON) == ["ana", "jonas"]


def test_those_who_stood_there_in_time_are_not_told_that_she_has_gone_by(night: Any) -> None:
    """They would have seen her."""
    unwatched(night)
    (mill, *_) = meetings_as_told(sight_of(night.situation(clock("15:00")), "maren", clock("15:00")))
    at_mill(night)
    due = gone_at(night, mill)
    assert told(night.tick(due), K.MOVE_ON) == []
    sight = sight_of(night.situation(due), "maren", due)
    assert not gone_by(sight, sight.meetings[0].own("ana"))


def test_nobody_moves_on_while_she_is_looked_for(night: Any) -> None:
    """She may have gone by, but an alarm is open: they stay, and hear at once that they do."""
    unwatched(night)
    night.tick("15:05")
    night.report(Kind.SWEEP_THROUGH, "16:20", "olga", runner=None, point="mill")
    owed = night.tick("16:20")
    assert told(owed, K.STAY) == ["ana", "jonas"]
    assert next(n.values.sought for n in owed if n.key.kind is K.STAY)
    (mill, *_) = meetings_as_told(sight_of(night.situation(clock("16:20")), "maren", clock("16:20")))
    assert mill.stay
    assert not [n for _, n in night.run("16:21", "19:00") if n.key.kind is K.MOVE_ON]


def test_no_meeting_is_too_late_for_one_who_is_missed(night: Any) -> None:
    """Nobody told them to leave, as they wait in a camp, and she would have gone by now: nobody has seen that she has."""
    when = late_at(night, "15:00") + 90 * MINUTE
    owed = night.tick(when)
    assert told(owed, K.MEETING_LOST, "mill") == []
    (mill, *_) = meetings_as_told(sight_of(night.situation(when), "maren", when))
    assert (mill.point, mill.lost) == ("mill", "")


def test_where_the_place_closes_they_leave(night: Any) -> None:
    """Missed or not: at the closing, not before."""
    closes = clock("17:20")
    points = tuple(
        replace(p, access=replace(p.access, closes=closes)) if p.id == "mill" else p
        for p in night.event.courses[0].points
    )
    night.event = replace(night.event, courses=(replace(night.event.courses[0], points=points),))
    at_mill(night)
    log = night.run("15:51", "17:20")
    assert [t for t, n in log if n.key.kind is K.MOVE_ON and n.key.person == "ana"] == [closes]
    said = next(n for _, n in log if n.key.kind is K.MOVE_ON)
    text = say_notice(said, night.event, Reader("en", "UTC", "UTC"), closes).text
    assert text.startswith("Leave Mill: crew access closes at 17:20.")


def two_cars(night: Any) -> Any:
    """Vera comes to Chapel too, in the red car, and goes on to Moss; Ana and Jonas go on to Barn. Both are there."""
    plans = tuple(
        replace(m, crew=(*m.crew, "vera")) if m.id == "chapel-maren" else m for m in night.event.meetings
    )
    drives = (*night.event.drives, Drive("hotel", "chapel", 30, "vera"))
    night.event = replace(night.event, meetings=plans, drives=drives)
    night.report(Kind.OUT, "16:44", "ana", point="mill")
    for who in ("ana", "vera"):
        night.report(Kind.CREW_THERE, "18:30", who, runner=None, point="chapel")
    return night


def test_of_two_cars_one_stays_and_the_other_may_go(night: Any) -> None:
    """Nobody has timed the way from Chapel to Moss, so that Vera has no leave-by, and stays; each hears both."""
    two_cars(night)
    log = night.run("18:31", "21:30")
    stays = {n.key.person: n for _, n in log if n.key.kind is K.STAY}
    assert set(stays) == {"ana", "jonas", "vera"}
    values = stays["ana"].values
    assert isinstance(values, StayValues)
    assert (values.keep, values.go) == (("vera",), ("ana", "jonas"))
    reader = Reader("en", "UTC", "UTC")
    to_ana, to_vera = (
        say_notice(stays[w], night.event, reader, clock("20:30")).text for w in ("ana", "vera")
    )
    assert to_vera.startswith("Stay at Chapel: nobody has seen Maren since 16:44")
    assert "Ana and Jonas may go on to Barn." in to_vera
    assert to_ana.startswith("You may go on to Barn: Vera stays at Chapel for Maren.")
    assert not [n for _, n in log if n.key.kind is K.MOVE_ON]


def test_where_one_car_has_not_said_that_it_is_there_nobody_may_go(night: Any) -> None:
    """Vera may be anywhere: Ana and Jonas are all there is, as far as anybody knows."""
    two_cars(night)
    night.entries = [e for e in night.entries if not (e.kind is Kind.CREW_THERE and e.by == "vera")]
    stays = [n for _, n in night.run("18:31", "21:00") if n.key.kind is K.STAY]
    assert stays
    assert all(n.values.go == () for n in stays)


@pytest.mark.parametrize("language", ["en", "de"])
def test_whoever_is_sent_hears_since_when_nobody_has_seen_her(night: Any, language: str) -> None:
    """Out of Moss 23:10 and missed since: the leave-now for Barn says so; before she is late it says nothing of it."""
    night.report(Kind.OUT, "23:10", "lena", point="moss", source=Source.VOLUNTEER)
    (barn,) = [
        m
        for m in meetings_as_told(sight_of(night.situation(clock("23:11")), "maren", clock("23:11")))
        if m.point == "barn"
    ]
    assert barn.unseen is None
    late = late_at(night, "23:11")
    now = late + 5 * MINUTE
    (barn,) = [m for m in meetings_as_told(sight_of(night.situation(now), "maren", now)) if m.point == "barn"]
    assert barn.unseen == clock("23:10")
    due, reader = barn.leave_by - 5 * MINUTE, Reader(language, "UTC", "UTC")
    (sent, *_) = [n for n in night.tick(due) if n.key.kind is K.LEAVE_NOW]
    early = say_notice(sent, night.event, reader, due).text
    night.made = [m for m in night.made if m.notice.key.kind is not K.LEAVE_NOW]
    (sent, *_) = [n for n in night.tick(now) if n.key.kind is K.LEAVE_NOW]
    late_text = say_notice(sent, night.event, reader, now).text
    words = {"en": "Nobody has seen Maren since Sat 23:10", "de": "Niemand hat Maren seit Sa 23:10"}[language]
    assert words not in early
    assert words in late_text


def test_a_runner_who_is_held_is_not_missed(night: Any) -> None:
    """The race waits."""
    at_mill(night)
    night.report(Kind.HELD, "16:00", "olga", runner=None)
    when = clock("18:00")
    assert missed_since(sight_of(night.situation(when), "maren", when)) is None


TIMES = st.integers(0, 20 * 60).map(lambda m: clock("14:00") + m * MINUTE)


@st.composite
def situations(draw: st.DrawFn) -> tuple[Night, datetime]:
    """A night at a random moment: seen up to some point or not, with openings, closings, cut-offs, a limit and drives
    drawn at will."""
    night = Night()
    night.reported = tuple(draw(st.sets(st.sampled_from(["mill", "chapel", "moss", "ridge", "finish"]))))
    points = []
    for p in night.event.courses[0].points:
        opens, closes = draw(st.none() | TIMES), draw(st.none() | TIMES)
        cut = draw(st.none() | st.integers(30, 20 * 60))
        access = None if p.access is None else CrewAccess(opens=opens, closes=closes, walk_in=5 * MINUTE)
        cuts = () if cut is None else (CutOff(Edge.IN, elapsed=cut * MINUTE),)
        points.append(replace(p, access=access, cut_offs=cuts))
    limit = draw(st.none() | st.integers(5 * 60, 20 * 60))
    longer = draw(st.integers(1, 300))
    drives = tuple(replace(d, minutes=longer) if d.to_place == "chapel" else d for d in night.event.drives)
    night.event = replace(
        night.event,
        courses=(replace(night.event.courses[0], points=tuple(points)),),
        limit=None if limit is None else limit * MINUTE,
        drives=drives,
    )
    now = draw(TIMES)
    at = clock("14:00")
    for point in ("mill", "chapel", "moss")[: draw(st.integers(0, 3))]:
        at += draw(st.integers(60, 240)) * MINUTE
        if at <= now:
            night.report(
                draw(st.sampled_from([Kind.IN, Kind.OUT, Kind.NOT_HERE_YET])), at, "lena", point=point
            )
    return night, now


@settings(max_examples=60, deadline=None)
@given(situations())
def test_nobody_waits_only_until_before_she_is_likely_there(drawn: tuple[Night, datetime]) -> None:
    """In any situation: a meeting that can be made is waited at until she is likely there, or later, and for longer than
    no time at all; never past a closing."""
    night, now = drawn
    for whole in meetings_as_told(sight_of(night.situation(now), "maren", now)):
        closes = night.event.course_of("maren").point(whole.point).access
        for m in whole.parties():
            if m.lost:
                continue
            assert m.wait_until >= m.window.likely, m
            assert m.wait_until > m.be_there or night.situation(now).state.runner("maren").at_point(
                m.point
            ), m
            assert (
                closes is None or closes.closes is None or m.wait_until <= max(closes.closes, m.be_there)
            ), m
