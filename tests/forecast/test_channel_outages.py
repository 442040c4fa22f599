"""Our outages mean silence only of those who write over what was down."""

from __future__ import annotations

from dataclasses import replace
from datetime import UTC, datetime, timedelta

import pytest
from hypothesis import given
from hypothesis import strategies as st

from server.facts.state import Interval
from server.forecast.channel_outages import Down, Hearing, both, deaf_now, hearing_of, nobody_since

T0 = datetime(2027, 6, 19, 4, 0, tzinfo=UTC)


def at(minutes: float) -> datetime:
    """So many minutes in."""
    return T0 + timedelta(minutes=minutes)


def span(start: float, end: float | None) -> Interval:
    """An interval in minutes."""
    return Interval(at(start), None if end is None else at(end))


def down(component: str, start: float, end: float | None) -> Down:
    """An outage in minutes."""
    return Down(component, at(start), None if end is None else at(end))


CHANNELS = {"ana": ("telegram", "text"), "jonas": ("text", "telegram"), "vera": ("email", "web")}


@pytest.mark.parametrize(
    ("downs", "who", "deaf"),
    [
        ((down("channel:telegram", 10, 20),), "ana", (span(10, 20),)),
        ((down("channel:telegram", 10, 20),), "jonas", ()),
        ((down("channel:text", 10, None),), "jonas", (span(10, None),)),
        ((down("channel:telegram", 10, 20),), "vera", ()),
        ((down("outgoing:email", 10, None),), "vera", ()),
        ((down("server", 10, 20),), "vera", (span(10, 20),)),
        ((down("server", 10, 20), down("channel:telegram", 15, 40)), "ana", (span(10, 40),)),
        ((down("channel:telegram", 10, 20),), "who", ()),
        ((down("channel:telegram", 10, 20), down("channel:text", 15, None)), "who", (span(15, 20),)),
    ],
)
def test_who_is_deaf(downs: tuple[Down, ...], who: str, deaf: tuple[Interval, ...]) -> None:
    """Whoever writes over what was down; one of whom we know no channel, when none worked; all, without us."""
    assert hearing_of(downs, ("telegram", "text"), CHANNELS).deaf_to(who) == deaf


def test_several_are_deaf_only_together() -> None:
    """As long as one of a crew can reach us, the crew can."""
    hearing = hearing_of(
        (down("channel:telegram", 10, 30), down("channel:text", 20, 40)), ("telegram", "text"), CHANNELS
    )
    assert hearing.deaf_to_all(["ana", "jonas"]) == (span(20, 30),)
    assert hearing.deaf_to_all(["ana"]) == (span(10, 30),)
    assert hearing.deaf_to_all([]) == hearing.unknown == (span(20, 30),)


def test_since_when_something_is_missing() -> None:
    """What only sends does not count, nor what is up again."""
    assert nobody_since((down("outgoing:email", 1, None), down("server", 2, 3))) is None
    assert nobody_since((down("channel:text", 9, None), down("channel:telegram", 7, None))) == at(7)
    both_down = (
        down("channel:text", 9, None),
        down("channel:telegram", 7, None),
        down("outgoing:email", 1, None),
    )
    assert deaf_now(both_down) == ("telegram", "text")
    assert deaf_now((down("server", 2, 3),)) == ()
    assert replace(Hearing(), nobody=(span(1, 2),)).deaf_to("ana") == ()


def spans() -> st.SearchStrategy[list[Interval]]:
    """A few intervals, some without an end."""
    one = st.builds(lambda a, n: span(a, None if n == 0 else a + n), st.integers(0, 60), st.integers(0, 20))
    return st.lists(one, max_size=5)


@given(spans(), spans(), st.integers(0, 120))
def test_both_holds_what_both_hold(one: list[Interval], other: list[Interval], minute: int) -> None:
    """A moment lies in the common times exactly if it lies in a span of either list (ends not included)."""

    def holds(spans: object, when: datetime) -> bool:
        return any(s.start <= when and (s.end is None or when < s.end) for s in spans)  # type: ignore[attr-defined]

    when = at(minute + 0.5)
    found = both(one, other)
    assert holds(found, when) == (holds(one, when) and holds(other, when))
    assert list(found) == sorted(found, key=lambda s: s.start)
