"""What words say of the stop log, and that no log says nothing."""

from __future__ import annotations

from datetime import UTC, datetime

import pytest

from server.conversation.telling.reader import Reader
from server.conversation.telling.say import Say
from server.conversation.telling.stop_log import say_since
from server.conversation.understanding.logged import (
    amount_of,
    asks_for_log,
    logged_in,
    only_of_the_log,
    says_medic,
)
from server.facts.stop_log import Item, Level, Logged, LogSince


@pytest.mark.parametrize(
    ("text", "whole", "found"),
    [
        ("drank 500 ml", True, [Logged(Item.DRANK, 500.0)]),
        ("drank 2 bottles", True, [Logged(Item.DRANK, words="2 bottles")]),
        ("0,5 l getrunken und nichts gegessen", True,
         [Logged(Item.DRANK, 500.0), Logged(Item.ATE, level=Level.NONE)]),
        ("rien mangé, pas uriné", True,
         [Logged(Item.ATE, level=Level.NONE), Logged(Item.PEED, level=Level.NONE)]),
        ("took ibuprofen 400 mg", True, [Logged(Item.PAINKILLER, words="ibuprofen 400 mg")]),
        ("slept 20 min, changed socks", True, [Logged(Item.SLEPT, 20.0), Logged(Item.CHANGED, words="socks")]),
        ("she wants to eat", False, []),
        ("should she take ibuprofen?", False, []),
        ("food is ready", False, []),
        ("drank 700 coke", True, [Logged(Item.DRANK, 700.0, words="coke")]),
        ("hat 500 getrunken", True, [Logged(Item.DRANK, 500.0)]),
        ("drank 500 at 1430", True, [Logged(Item.DRANK, 500.0, words="at 1430")]),
        ("drank at 1430", True, [Logged(Item.DRANK, words="at 1430")]),
        ("drank 200 kcal", True, [Logged(Item.DRANK, words="200 kcal")]),
        ("214 drank 500", True, [Logged(Item.DRANK, 500.0)]),
        ("maren ate half a banana and 2 gels", True, [Logged(Item.ATE, words="half banana + 2 gels")]),
        ("ate soup and left", False, [Logged(Item.ATE, words="soup")]),
        ("ate soup and 15 min rest", False, [Logged(Item.ATE, words="soup")]),
        ("drank 500 not peed", False, []),
        ("did maren pee", False, []),
        ("didnt pee", True, [Logged(Item.PEED, level=Level.NONE)]),
        ("gegessen: halbe Banane", True, [Logged(Item.ATE, words="halbe banane")]),
        ("drank 500, nobody has seen her since", False, [Logged(Item.DRANK, 500.0)]),
    ],
)  # fmt: skip
def test_words(text: str, whole: bool, found: list[Logged]) -> None:
    """What is said of the log, and whether anything else is."""
    assert logged_in(text, ("Maren", "214")) == (tuple(found), whole)


@pytest.mark.parametrize(
    ("text", "plain"),
    [
        ("500 getrunken", True),
        ("500 bu", True),
        ("pas uriné", True),
        ("nix gegessen, 250 getrunken", True),
        ("Ibuprofen 400", True),
        ("drank 500, ate half a banana, no ibuprofen", True),
        ("drunk", False),
        ("took 10 ibuprofen", False),
        ("ibuprofen 4000", False),
        ("ibuprofen 400 + 400", False),
        ("peed dark", False),
        ("nothing eaten collapsed", False),
        ("hat eine Wespe gegessen", False),
    ],
)
def test_what_is_only_for_the_log(text: str, plain: bool) -> None:
    """Nothing but the log's words, numbers and food, and nothing bad, is no call for help; all else may be one."""
    assert only_of_the_log(text) is plain


def test_who_says_that_they_are_a_medic() -> None:
    """In few words and of themselves."""
    assert says_medic("ich bin Sanitäterin")
    assert says_medic("I'm a medic, what has she taken")
    assert not says_medic("the medic is with her")


def test_amounts_and_asking() -> None:
    """A small bare number is bottles, not millilitres; a log may be a tree."""
    assert amount_of("500", Item.DRANK) == 500
    assert amount_of("2", Item.DRANK) is None
    assert amount_of("30 g", Item.ATE) == 30
    assert amount_of("9000", Item.DRANK) is None
    assert asks_for_log("log")
    assert asks_for_log("Handover")
    assert asks_for_log("Übergabe")
    assert not asks_for_log("im at the handover and shes not here")
    assert asks_for_log("I'm the medic, what has she taken")
    assert asks_for_log("when did she last pee")
    assert not asks_for_log("how do i treat a blister")
    assert not asks_for_log("she sits on the log at the bridge")


def test_nothing_logged_says_nothing(say_now: Say) -> None:
    """No line in a notice where there is no log."""
    assert say_since(say_now, None) == ""


def test_what_nothing_is_logged_of_is_said(say_now: Say) -> None:
    """At a change of crew: how much she drank, that nobody logged any food, and no painkiller; never that there was none."""
    at = datetime(2027, 6, 19, 8, tzinfo=UTC)
    assert "drank 500 ml; no food logged; no painkiller logged" in say_since(
        say_now, LogSince(at, drank_ml=500.0)
    )
    assert "no drink logged; nothing eaten; no painkiller logged" in say_since(
        say_now, LogSince(at, ate_g=0.0)
    )


@pytest.fixture
def say_now() -> Say:
    """Sentences in English."""
    return Say(Reader("en", "UTC", "UTC"), datetime(2027, 6, 19, 9, tzinfo=UTC))
