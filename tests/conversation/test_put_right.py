"""Times of earlier reports that words put right with no word of a time beside them: which digits are read, and which are
no time at all."""

from __future__ import annotations

from dataclasses import replace
from datetime import UTC, datetime

import pytest

from server.conversation.understanding.afterthought import Digits, puts_right
from server.facts.entry import Kind
from tests.bot import world

CTX = world.at_the_lathe()


@pytest.mark.parametrize(
    ("words", "right", "wrong"),
    [
        ("sorry 40 not 41 when she left", (None, 40), (None, 41)),
        ("she went at 43, not 41", (None, 43), (None, 41)),
        ("not 41 but 43", (None, 43), (None, 41)),
        ("raus um 35, nicht 36", (None, 35), (None, 36)),
        ("c'était 12, pas 14", (None, 12), (None, 14)),
        ("in at 14:52 instead of 14:55", (14, 52), (14, 55)),
        ("drin um 14:52 statt 14:55", (14, 52), (14, 55)),
        ("214 was in at 14:52, the 14:55 was somebody elses", (14, 52), (14, 55)),
        ("she left at 1502 actually", (15, 2), None),
    ],
)
def test_the_time_that_holds_and_the_one_that_does_not(
    words: str, right: tuple[int | None, int], wrong: tuple[int, int] | None
) -> None:
    """In any language, by minutes alone too."""
    found = puts_right(words, CTX)
    assert found is not None
    assert (found.right, found.wrong) == (Digits(*right), Digits(*wrong) if wrong else None)


@pytest.mark.parametrize(
    "words",
    [
        "she left with 12 not 24 bars",
        "it took 20 min, not 12",
        "the walk is 20 min pas 12",
        "was it 43 or 41?",
        "is it 43 not 41",
        "22 gels not 24",
        "14:52 at the wall",
        "it was 241 not 214",
        "not Maren, 43 not 41",
    ],
)
def test_counts_and_questions_put_nothing_right(words: str) -> None:
    """Nor does a number that counts something, or another bib."""
    assert puts_right(words, CTX) is None


def test_the_words_say_of_which_report() -> None:
    """By place and kind, as far as they say either."""
    out = puts_right("out of the mill 43 not 41", CTX)
    assert out is not None
    assert out.points == ("mill",)
    assert out.kinds == {Kind.OUT, Kind.THROUGH}
    bare = puts_right("43 not 41", CTX)
    assert bare is not None
    assert (bare.points, bare.kinds) == ((), frozenset())


def test_minutes_are_those_nearest_to_the_wrong_time() -> None:
    """58 in the place of 11:02 is 10:58; an hour up to twelve may be of the afternoon."""
    at = datetime(2027, 6, 19, 10, 2, tzinfo=UTC)  # 11:02 in Britain
    assert Digits(None, 58).nearest(at, world.ZONE) == at.replace(hour=9, minute=58)
    assert Digits(11, 4).nearest(at, world.ZONE) == at.replace(minute=4)
    late = at.replace(hour=15, minute=7)
    assert Digits(4, 7).is_of(late, world.ZONE)
    assert Digits(4, 5).nearest(late, world.ZONE) == late.replace(minute=5)


def test_a_runner_is_named_or_open() -> None:
    """Whose time it is stays open where nobody is named."""
    two = replace(CTX, own_runners=())
    named = puts_right("tove left at 43 not 41", two)
    assert named is not None
    assert named.runner == "tove"
    open_ = puts_right("left at 43 not 41", two)
    assert open_ is not None
    assert open_.runner is None
