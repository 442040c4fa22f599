"""Wishes to hear of her as soon as she is in, or out: what has come of each, and which are still open."""

from __future__ import annotations

from typing import Any

import pytest

from server.facts.awaiting import Came, awaited, came, is_wish
from server.facts.entry import Kind, Retired
from server.facts.fold import fold

K = Kind
ORDER = ("start", "mill", "chapel", "moss", "finish")


def wish(make: Any, point: str = "chapel", edge: str = "in", **more: Any) -> Any:
    """Ana wants to hear of maren."""
    return make(
        K.REMIND,
        more.pop("clock", "5:00"),
        runner=None,
        about=more.pop("about", "maren"),
        point=point,
        edge=edge,
        **more,
    )


@pytest.mark.parametrize(
    ("facts", "point", "edge", "what", "shown"),
    [
        ([], "chapel", "in", None, None),
        ([(K.IN, "9:30", "chapel")], "chapel", "in", Came.YES, "9:30"),
        ([(K.IN, "9:30", "chapel")], "chapel", "out", None, None),
        ([(K.IN, "9:30", "chapel"), (K.OUT, "9:40", "chapel")], "chapel", "out", Came.YES, "9:40"),
        ([(K.OUT, "9:40", "chapel")], "chapel", "in", Came.YES, "9:40"),
        ([(K.THROUGH, "9:45", "chapel")], "chapel", "out", Came.YES, "9:45"),
        ([(K.IN, "11:50", "moss")], "chapel", "in", Came.UNSEEN, "11:50"),
        ([(K.OUT, "11:55", "moss")], "chapel", "in", Came.UNSEEN, "11:55"),
        ([(K.IN, "6:00", "mill")], "chapel", "in", None, None),
        ([(K.IN, "11:58", "finish")], "finish", "in", Came.YES, "11:58"),
        ([(K.IN, "11:58", "finish")], "finish", "out", Came.YES, "11:58"),
        ([(K.IN, "11:58", "finish")], "chapel", "in", Came.UNSEEN, "11:58"),
    ],
)
def test_what_came_of_a_wish(
    entry: Any, event: Any, clock: Any, facts: Any, point: str, edge: str, what: Any, shown: Any
) -> None:
    """She was there; she was seen farther on and never there; or she is still to come: with the report that shows it."""
    now = clock("12:00")
    state = fold([entry(k, when, point=p) for k, when, p in facts], event, now).runner("maren")
    found = came(wish(entry, point, edge), state, ORDER)
    assert (None if found is None else found[0]) is what
    assert (None if found is None or found[1] is None else found[1].at) == (
        None if shown is None else clock(shown)
    )


def test_a_race_that_is_over_ends_the_waiting(entry: Any, event: Any, clock: Any) -> None:
    """With the word that ended it; at a point she had passed before it is 'yes' all the same."""
    now = clock("12:00")
    gone = entry(K.RETIRED, "10:00", how=Retired.OWN_CHOICE, point="chapel", id="gone")
    state = fold([entry(K.IN, "6:00", point="mill"), gone], event, now).runner("maren")
    over = came(wish(entry, "moss"), state, ORDER)
    assert over is not None
    assert over[0] is Came.OVER
    assert over[1] is not None
    assert over[1].entry == "gone"
    before = came(wish(entry, "mill"), state, ORDER)
    assert before is not None
    assert before[0] is Came.YES


@pytest.mark.parametrize(
    ("kind", "about", "point", "edge", "is_one"),
    [
        (K.REMIND, "maren", "mill", "in", True),
        (K.REMIND, None, "mill", "in", False),
        (K.REMIND, "maren", None, "in", False),
        (K.REMIND, "maren", "mill", None, False),
        (K.QUIET, "maren", "mill", "in", False),
    ],
)
def test_what_a_wish_names(entry: Any, kind: Kind, about: Any, point: Any, edge: Any, is_one: bool) -> None:
    """Whom, where and whether in or out: a reminder by the clock names none of these."""
    assert is_wish(entry(kind, "5:00", runner=None, about=about, point=point, edge=edge)) is is_one


def test_a_persons_open_wishes(entry: Any, event: Any, clock: Any) -> None:
    """Theirs alone, of runners there are, said already and not fulfilled: with whose, where, and of which edge."""
    now = clock("12:00")
    open_one = wish(entry, "moss", "out", id="open")
    entries = [
        entry(K.IN, "6:00", point="mill"),
        open_one,
        wish(entry, "mill", id="done"),
        wish(entry, "moss", id="of another", by="jonas"),
        wish(entry, "moss", id="of nobody", about="nobody"),
        wish(entry, "moss", id="to come", clock="12:01"),
        wish(entry, "moss", id="of ines", about="ines"),
    ]
    race = fold(entries, event, now)
    found = awaited(race, event, "ana", now)
    assert [(a.entry, a.runner, a.point, a.edge) for a in found] == [
        ("of ines", "ines", "moss", "in"),
        ("open", "maren", "moss", "out"),
    ]
