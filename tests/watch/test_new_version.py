"""A new version of the event file during the race: who hears what of it, once."""

from __future__ import annotations

from dataclasses import replace
from typing import Any

import pytest

from server.event.model import KitItem
from server.facts.entry import Kind
from server.watch.evaluate import evaluate_event
from server.watch.new_version import changed_for
from server.watch.notice import Made, NoticeKind
from server.watch.situation import Loaded


def with_meeting(event: Any, meeting: str, **changes: Any) -> Any:
    """The event with something else at a meeting."""
    return replace(
        event,
        meetings=tuple(replace(m, **changes) if m.id == meeting else m for m in event.meetings),
        version=2,
    )


@pytest.mark.parametrize(
    ("meeting", "changes", "hear"),
    [
        ("mill-maren", {"kit": (KitItem("poles"), KitItem("gloves"))}, {"ana", "jonas", "maren"}),
        ("moss-maren", {"crew": ("jonas",)}, {"vera", "jonas", "tomas", "maren"}),
        ("moss-maren", {"pacer_joins": None}, {"vera", "tomas", "maren"}),
        ("barn-maren", {"car": "red"}, {"ana", "jonas", "maren"}),
    ],
)
def test_whose_it_changed_hear_it_and_nobody_else(
    night: Any, meeting: str, changes: Any, hear: set[str]
) -> None:
    """Those who went, those who go now, and she."""
    new = with_meeting(night.event, meeting, **changes)
    assert {p.id for p in new.people if tuple(changed_for(night.event, new, p.id))} == hear


def test_old_and_new_in_one_message_once_and_only_after_a_report(night: Any, at: Any) -> None:
    """Two changes are one message; before the first report nobody is told; the second look tells nothing."""
    old = night.event
    new = with_meeting(with_meeting(old, "mill-maren", food="tea"), "chapel-maren", kit=())
    night.event = new
    loaded = Loaded(at("16:30"), old)
    quiet = replace(night.situation(at("16:31")), loaded=loaded)
    assert [n for n in evaluate_event(quiet, at("16:31")).owed if n.key.kind is NoticeKind.NEW_VERSION] == []
    night.report(Kind.IN, "16:20", point="mill")
    heard = replace(night.situation(at("16:31")), loaded=loaded)
    owed = [n for n in evaluate_event(heard, at("16:31")).owed if n.key.kind is NoticeKind.NEW_VERSION]
    assert sorted(n.key.person for n in owed) == ["ana", "jonas", "maren"]
    items = [(i.what, i.point, i.was, i.now) for i in owed[0].values.items]
    assert items == [("food", "mill", "soup", "tea"), ("kit", "chapel", "head torch", "")]
    told = replace(heard, made=tuple(Made(n, 1, at("16:31")) for n in owed))
    assert [n for n in evaluate_event(told, at("16:40")).owed if n.key.kind is NoticeKind.NEW_VERSION] == []
