"""An alarm of somebody of whom crew have said 'not here yet': it says so, and does not end with one sleeping person."""

from __future__ import annotations

from dataclasses import replace
from datetime import timedelta
from typing import Any

import pytest

from server.conversation.telling.notices import say_notice
from server.conversation.telling.reader import Reader
from server.facts.entry import Kind
from server.watch.notice import AlarmValues, NoticeKind
from tests.watch.test_alarms import alarmed, gone_quiet, lines_of, told

K = NoticeKind


def _said(night: Any, at: Any, language: str, kind: NoticeKind = K.OVERDUE) -> str:
    night = type(night)()
    gone_quiet(night)
    late, overdue = lines_of(night, at)
    night.report(Kind.NOT_HERE_YET, late + timedelta(minutes=1), "ana", point="ridge")
    night.tick(late + timedelta(minutes=1))
    owed = night.tick(overdue + timedelta(minutes=1))
    (raised,) = [n for n in owed if n.key.kind is kind]
    assert isinstance(raised.values, AlarmValues)
    return say_notice(
        raised, night.event, Reader(language, "UTC", "UTC"), overdue + timedelta(minutes=1)
    ).text


@pytest.mark.parametrize(
    ("language", "fact", "spoken", "unreported"),
    [
        ("en", "FACT: not at Ridge yet", "Ana sent word that she was not at Ridge yet.", "not every runner is caught"),
        ("de", "TATSACHE: noch nicht in Ridge", "dass sie in Ridge noch nicht da war.", "nicht jeder wird erfasst"),
    ],
)  # fmt: skip
def test_the_alarm_says_who_waits_for_her_in_vain(
    night: Any, at: Any, language: str, fact: str, spoken: str, unreported: str
) -> None:
    """With their number; and no longer that she may have come through unreported."""
    text = _said(night, at, language)
    assert fact in text
    assert "+44 1632 960000" in text.split(fact)[1].splitlines()[0]
    assert spoken in _said(night, at, language, K.READ_OUT)
    assert unreported not in _said(night, at, language, K.ALARM_KNOWN)


def test_one_safety_contact_who_sleeps_is_not_the_last(night: Any, at: Any) -> None:
    """Nobody else has a step, nobody is down to telephone, there is no organiser: the crew are asked next."""
    parts = tuple(
        replace(p, ladder=1 if p.person == "sasha" else None, can_telephone=False)
        for p in night.event.parts
        if p.person != "olga"
    )
    night.event = replace(night.event, parts=parts)
    start = alarmed(night, at)
    assert told(night.tick(start + timedelta(minutes=5)), K.HANDED_ON) == ["ana", "jonas", "vera"]
