"""What of ours was down is told by name and for how long, and takes only the silence of those it makes deaf."""

from __future__ import annotations

from dataclasses import replace
from typing import Any

import pytest

from server.event.model import PartKind
from server.facts.entry import Kind
from server.facts.state import Interval
from server.forecast.channel_outages import Down, Hearing
from server.watch.notice import NoticeKind

K = NoticeKind


def outages(owed: Any) -> list[tuple[str, str, bool]]:
    """Whom an outage is told, of what, and whether it is over."""
    return [(n.key.person, n.values.what, n.values.end is not None) for n in owed if n.key.kind is K.OUTAGE]


@pytest.mark.parametrize("component", ["server", "channel:telegram", "channel:text", "outgoing:email"])
def test_an_outage_is_told_by_name_while_it_lasts_and_after(night: Any, at: Any, component: str) -> None:
    """Two minutes after it began the organiser hears that it lasts, once; and for how long it was when it is over."""
    night.downs = (Down(component, at("12:00"), None),)
    assert outages(night.tick("12:01")) == []
    assert night.ask_again <= at("12:02")
    assert outages(night.tick("12:02")) == [("olga", component, False)]
    assert outages(night.tick("12:20")) == []
    night.downs = (Down(component, at("12:00"), at("12:21")),)
    (told,) = [n for n in night.tick("12:21") if n.key.kind is K.OUTAGE]
    assert (told.values.start, told.values.end) == (at("12:00"), at("12:21"))
    assert outages(night.tick("12:30")) == []


def test_two_channels_down_are_two_outages(night: Any, at: Any) -> None:
    """Each by its own name: mail down does not hide that Telegram is."""
    night.downs = (Down("outgoing:email", at("12:00"), None), Down("channel:telegram", at("12:05"), None))
    found = outages(night.tick("12:10"))
    assert sorted(found) == [("olga", "channel:telegram", False), ("olga", "outgoing:email", False)]


def test_what_went_down_with_the_server_is_one_outage(night: Any, at: Any) -> None:
    """After an hour without us one message says so; the channel that does not come back is told by name."""
    server = Down("server", at("12:00"), at("13:00"))
    late, mail = Down("channel:telegram", at("12:00"), None), Down("outgoing:email", at("11:52"), at("13:01"))
    night.downs = (server, late, mail)
    assert outages(night.tick("13:00:30")) == [("olga", "server", True)]
    assert outages(night.tick("13:01:30")) == []
    assert outages(night.tick("13:02")) == [("olga", "channel:telegram", False)]
    night.downs = (server, replace(late, end=at("14:00")), mail)
    assert outages(night.tick("14:00")) == [("olga", "channel:telegram", True)]


def test_half_an_hour_deaf_is_told_at_home(night: Any, at: Any) -> None:
    """While she is out, the safety contact must know that a silent crew raises no alarm; and when that is over."""
    night.report(Kind.OUT, "14:00", "ana", point="start")
    night.downs = (Down("channel:telegram", at("15:00"), None), Down("outgoing:email", at("15:00"), None))
    night.tick("15:02")
    assert outages(night.tick("15:29")) == []
    assert outages(night.tick("15:30")) == [("sasha", "channel:telegram", False)]
    night.downs = tuple(replace(d, end=at("16:00")) for d in night.downs)
    assert sorted(outages(night.tick("16:00"))) == [
        ("olga", "channel:telegram", True),
        ("olga", "outgoing:email", True),
        ("sasha", "channel:telegram", True),
    ]


def test_before_the_start_home_is_left_alone(night: Any, at: Any) -> None:
    """Nobody is out, so the silence of nobody matters."""
    night.downs = (Down("channel:telegram", at("10:00"), None),)
    night.tick("10:02")
    assert outages(night.tick("11:00")) == []


def test_nobody_is_asked_over_a_channel_that_is_down(night: Any, at: Any) -> None:
    """A question whose answer can't reach us waits until it can; the others of the crew are asked."""
    night.report(Kind.OUT, "17:00", "ana", point="mill")
    deaf = Hearing(people={"ana": (Interval(at("17:00"), None),)})
    night.hearing = deaf
    log = night.run("17:05", "22:30")
    asked = [n.key.person for _, n in log if n.key.kind is K.LATE]
    assert asked
    assert "ana" not in asked
    assert [n.key.person for _, n in log if n.key.kind is K.OVERDUE] != [], "one channel down hides no alarm"


def test_without_an_organiser_and_safety_contact_nobody_is_told(night: Any, at: Any) -> None:
    """An event of two friends: nobody is told, and nothing breaks."""
    keep = (PartKind.RUNNER, PartKind.CREW)
    night.event = replace(night.event, parts=tuple(p for p in night.event.parts if p.kind in keep))
    night.downs = (Down("server", at("12:00"), at("13:00")),)
    assert outages(night.tick("13:00")) == []
