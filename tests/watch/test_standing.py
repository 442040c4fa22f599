"""A tracker at one spot longer than runners stop: who is asked, who is told, and when it is nobody's business."""

from __future__ import annotations

from dataclasses import replace
from datetime import datetime, timedelta
from typing import Any

import pytest

from server.conversation.telling.notices import say_notice
from server.conversation.telling.reader import Reader
from server.event.model import Goal
from server.facts.entry import Fix, Kind, Source
from server.forecast.stops import longest_s
from server.plan.timetable import Row, Timetable
from server.watch.evaluate import evaluate
from server.watch.notice import NoticeKind, StandsValues
from tests.watch.conftest import START, clock

K = NoticeKind
MINUTE = timedelta(minutes=1)
FINISH = timedelta(hours=16)
ASK, TELL = (timedelta(seconds=longest_s(FINISH.total_seconds(), 0.0, p)) for p in (0.9, 0.99))


def sends(night: Any, when: datetime, metres: float = 0.0) -> None:
    """Her tracker sends a fix so many metres north of a spot on the moor."""
    fix = Fix(54.0 + metres / 111_195.0, -2.0, accuracy_m=10.0)
    night.report(Kind.POSITION, when, "maren", fix=fix, source=Source.TRACKER, id=f"fix-{when:%H%M%S}")


def stood(night: Any, minutes: float) -> list[Any]:
    """Out of Mill, an hour's walk, then so many minutes at one spot with a fix every five: what is owed at the last."""
    night.report(Kind.OUT, "16:36", "ana", point="mill")
    begin = clock("17:40")
    for k in range(12):
        sends(night, clock("16:40") + 5 * k * MINUTE, 400.0 * (k - 12))
    end = begin + minutes * MINUTE
    at = begin
    while at < end:
        sends(night, at)
        at += 5 * MINUTE
    sends(night, end)
    return owed(night, end)


def owed(night: Any, now: datetime, km: float | None = None) -> list[Any]:
    """What is owed of her standing still, the spot being at `km` of the course."""
    rows = tuple(
        Row(p, km, km, 0, 0, timedelta(0), dict.fromkeys(Goal, t), dict.fromkeys(Goal, t))
        for p, km, t in (("start", 0.0, timedelta(0)), ("finish", 105.0, FINISH))
    )
    table = Timetable("maren", START, rows, (), "cost model")
    situation = replace(night.situation(now), timetables={"maren": table})
    hers = situation.state.runner("maren")
    placed = replace(hers, positions=tuple(replace(p, km=km) for p in hers.positions))
    runners = tuple(placed if r.runner == "maren" else r for r in situation.state.runners)
    situation = replace(situation, state=replace(situation.state, runners=runners))
    return [n for n in evaluate(situation, now).owed if n.key.kind is K.STANDS]


def test_the_limits_are_those_of_the_stops() -> None:
    """A 16 h race: nine rests in ten are under about 22 minutes, 99 in 100 under about 36 (half a lognormal by hand)."""
    assert timedelta(minutes=20) < ASK < timedelta(minutes=24)
    assert timedelta(minutes=33) < TELL < timedelta(minutes=39)


@pytest.mark.parametrize(
    ("minutes", "who"),
    [
        (ASK / MINUTE - 0.5, set()),
        (ASK / MINUTE + 0.5, {"ana", "jonas"}),
        (TELL / MINUTE - 0.5, {"ana", "jonas"}),
        (TELL / MINUTE + 0.5, {"ana", "jonas", "sasha"}),
        (70, {"ana", "jonas", "sasha"}),
    ],
)
def test_who_hears_of_it(night: Any, minutes: float, who: set[str]) -> None:
    """The crew of Chapel, where she is next met, past nine stops in ten; home past 99 in 100."""
    found = stood(night, minutes)
    assert {n.key.person for n in found} == who
    if found:
        values = found[0].values
        assert isinstance(values, StandsValues)
        assert values.until - values.since == minutes * MINUTE


@pytest.mark.parametrize(
    ("language", "words"), [("en", "has not moved for 1 h 10 min"), ("de", "nicht bewegt")]
)
def test_it_asks_and_says_that_the_tracker_may_lie_alone(night: Any, language: str, words: str) -> None:
    """A question with both things it may mean, and the place."""
    (found, *_) = stood(night, 70)
    text = say_notice(found, night.event, Reader(language, "UTC", "UTC"), clock("18:50")).text
    assert words in text.splitlines()[0]
    assert "54.0" in text or "54,0" in text


def test_one_that_went_quiet_does_not_stand_still(night: Any) -> None:
    """Two fixes at a spot, then nothing for two hours: that is no standing, however long ago."""
    stood(night, 6)
    assert owed(night, clock("20:00")) == []


def test_one_that_moves_again_is_asked_about_no_more(night: Any) -> None:
    """It walked on."""
    stood(night, 70)
    sends(night, clock("18:55"), 500.0)
    assert owed(night, clock("18:56")) == []


def test_a_rest_that_was_told_is_nobodys_business(night: Any) -> None:
    """She said that she rests."""
    night.report(Kind.RESTING, "17:45", "maren", source=Source.RUNNER)
    assert stood(night, 70) == []


def test_her_stay_where_she_is_known_to_be_is_no_news(night: Any) -> None:
    """The spot is at Chapel. Reported in there and not out, crew see her; out again, or never in, they are asked."""
    assert stood(night, 70)
    now = clock("18:50")
    assert {n.key.point for n in owed(night, now, km=40.2)} == {"chapel"}
    night.report(Kind.IN, "17:39", "ana", point="chapel")
    assert owed(night, now, km=40.2) == []
    night.report(Kind.OUT, "17:39:30", "ana", point="chapel")
    assert {n.key.point for n in owed(night, now, km=40.2)} == {"chapel"}


def test_where_a_person_saw_her_elsewhere_it_is_a_disagreement(night: Any) -> None:
    """Seen out of Chapel while the tracker lies 15 km before it: not a question of standing still."""
    assert stood(night, 70)
    night.report(Kind.OUT, "18:40", "ana", point="chapel")
    assert owed(night, clock("18:50"), km=25.0) == []


def test_nothing_is_asked_while_she_is_looked_for(night: Any) -> None:
    """An open alarm says more."""
    night.report(Kind.SWEEP_THROUGH, "18:40", "olga", runner=None, point="chapel")
    night.tick("18:40")
    assert stood(night, 70) == []
