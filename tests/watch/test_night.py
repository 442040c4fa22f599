"""One whole night, minute by minute: who is told what, when; how many messages that is; nothing missing."""

from __future__ import annotations

from collections import Counter
from collections.abc import Callable
from datetime import datetime
from typing import Any

import pytest

from server.facts.entry import Kind, Source
from server.watch.notice import Notice, NoticeKind, Urgency

K = NoticeKind

NIGHT = (
    ("14:35", "ana", "leave soon", "mill"),
    ("14:35", "jonas", "leave soon", "mill"),
    ("15:00", "ana", "leave now", "mill"),
    ("15:00", "jonas", "leave now", "mill"),
    ("16:44", "ana", "window moved", "chapel"),
    ("16:44", "jonas", "window moved", "chapel"),
    ("17:15", "ana", "leave soon", "chapel"),
    ("17:15", "jonas", "leave soon", "chapel"),
    ("17:40", "ana", "leave now", "chapel"),
    ("17:40", "jonas", "leave now", "chapel"),
    ("18:50", "vera", "be there from", "moss"),
    ("18:50", "tomas", "be there from", "moss"),
    ("19:50", "ana", "window moved", "barn"),
    ("19:50", "jonas", "window moved", "barn"),
    ("19:52", "vera", "left", "chapel"),
    ("19:52", "tomas", "left", "chapel"),
    ("22:46", "vera", "arrived", "moss"),
    ("22:46", "tomas", "arrived", "moss"),
    ("22:46", "ana", "window moved", "barn"),
    ("22:46", "jonas", "window moved", "barn"),
)


def says(kind: Kind, by: str, **more: Any) -> Callable[[str], Callable[[Any], object]]:
    """A report at the script's minute."""
    return lambda t: lambda night: night.report(kind, t, by, **more)


def answers(kind: NoticeKind, by: str, words: str) -> Callable[[str], Callable[[Any], object]]:
    """An answer at the script's minute."""
    return lambda t: lambda night: night.answer(kind, by, words, t)


LENA = {"source": Source.VOLUNTEER, "point": "moss"}
SCRIPT: dict[str, Callable[[str], Callable[[Any], object]]] = {
    "15:03": answers(K.LEAVE_NOW, "ana", "on our way"),
    "15:45": says(Kind.CREW_THERE, "ana", runner=None, point="mill"),
    "16:36": says(Kind.IN, "ana", point="mill"),
    "16:44": says(Kind.OUT, "ana", point="mill"),
    "17:43": answers(K.LEAVE_NOW, "jonas", "on our way"),
    "18:40": says(Kind.CREW_THERE, "ana", runner=None, point="chapel"),
    "19:40": says(Kind.IN, "ana", point="chapel"),
    "19:52": says(Kind.OUT, "ana", point="chapel"),
    "22:46": says(Kind.IN, "lena", **LENA),
    "23:10": says(Kind.OUT, "lena", **LENA),
    # An hour is lost between Moss and Ridge, with nobody hearing of her.
    "25:42": answers(K.LEAVE_NOW, "ana", "on our way"),
    "26:53": answers(K.OVERDUE, "sasha", "i have it"),
    "27:05": says(Kind.IN, "piet", point="ridge", source=Source.SUPPORTER, unconfirmed=True, doubt="guessed"),
    "27:10": says(Kind.CONFIRMED, "olga", about="e9"),
    "27:20": says(Kind.OUT, "lena", point="ridge", source=Source.VOLUNTEER),
    "30:10": says(Kind.IN, "ana", point="barn"),
    "30:20": says(Kind.OUT, "ana", point="barn"),
    "31:37": answers(K.LEAVE_NOW, "jonas", "on our way"),
    "33:40": says(Kind.IN, "mat", point="finish", source=Source.TIMING_MAT),
    "33:50": says(Kind.IN_HAND, "ana"),
}


@pytest.fixture(scope="module")
def played(new_night: Any) -> tuple[Any, list[tuple[datetime, Notice]]]:
    """The night, asked only when the watch says so."""
    night = new_night()
    script = {t: act(t) for t, act in SCRIPT.items()}
    return night, night.run("14:30", "34:30", script, lazily=True)


def clock_of(when: datetime, start: datetime) -> str:
    minutes = int((when - start).total_seconds()) // 60
    return f"{minutes // 60}:{minutes % 60:02d}"


def told_lines(log: list[tuple[datetime, Notice]], at: Any) -> list[tuple[str, str, str, str]]:
    """The log as lines: minute, person, kind, point."""
    return [(clock_of(t, at("0:00")), n.key.person, n.key.kind.value, n.key.point) for t, n in log]


def test_until_midnight_line_by_line(played: Any, at: Any) -> None:
    """Every message until half past eleven, in order, and no other."""
    lines = [line for line in told_lines(played[1], at) if at(line[0]) < at("23:00")]
    assert tuple(lines) == NIGHT


def test_the_lost_hour(played: Any, at: Any) -> None:
    """Ana is at the wheel, so the others are asked. Late comes before overdue; the alarm is acknowledged; a
    walker's guess ends nothing, its confirmation stands everybody down who was told, and nobody else."""
    night, log = played
    late = min(t for t, n in log if n.key.kind is K.LATE)
    assert {n.key.person for t, n in log if n.key.kind is K.LATE and t == late} == {"jonas", "tomas"}
    raised = [(t, n.key.person) for t, n in log if n.key.kind is K.OVERDUE]
    assert [p for _, p in raised] == ["sasha"]
    assert late < raised[0][0]
    down = [(clock_of(t, at("0:00")), n.key.person) for t, n in log if n.key.kind is K.STAND_DOWN]
    told = (m.notice for m in night.made)
    alarmed = {n.key.person for n in told if n.urgency is Urgency.ALARM or n.key.kind is K.ALARM_NEWS}
    assert {p for _, p in down} == alarmed
    assert {t for t, _ in down} == {"27:10"}


def test_nothing_about_her_once_she_is_in_hand(played: Any, at: Any) -> None:
    """Finished and with her crew: the watch has nothing more to say, and nothing to wake for."""
    night, log = played
    assert max(t for t, _ in log) <= at("33:40")
    assert night.verdict("34:30").owed == ()


def test_messages_per_person(played: Any) -> None:
    """About three a meeting for crew, outside alarms, race changes and questions about a silence (the figures
    are printed); runner and volunteer get none."""
    counts: Counter[str] = Counter()
    for _, n in played[1]:
        if n.urgency is not Urgency.ALARM and n.key.kind not in (
            K.RACE_CHANGE,
            K.LATE,
            K.UNCONFIRMED,
            K.ALARM_NEWS,
            K.STAND_DOWN,
        ):
            counts[n.key.person] += 1
    meetings = {"ana": 4, "jonas": 4, "vera": 1, "tomas": 1}
    print({who: (counts[who], meetings[who]) for who in meetings})
    for who in ("ana", "jonas"):
        assert counts[who] <= 3.5 * meetings[who]
    assert counts["vera"] <= 6
    assert counts["maren"] == counts["lena"] == 0
