"""Cutting texts to Telegram's limits, which it counts in UTF-16 units."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from bot.channels.telegram.parcels import CAPTION_MAX, TEXT_MAX, cut, split, units

TEXTS = st.text(st.sampled_from("ab \n\N{MOUNTAIN}\N{FLEXED BICEPS}é"), max_size=300)


@given(TEXTS)
def test_units_are_those_of_utf_16(text: str) -> None:
    """Checked against Python's own encoder."""
    assert units(text) == len(text.encode("utf-16-le")) // 2


@given(TEXTS, st.integers(2, 40))
def test_no_part_is_too_long_and_no_word_is_lost(text: str, most: int) -> None:
    """The parts put together are the text, but for white space at the cuts."""
    parts = split(text, most)
    assert all(0 < units(p) <= most for p in parts)
    assert "".join("".join(parts).split()) == "".join(text.split())


@given(TEXTS, st.integers(12, 40))
def test_words_that_fit_stay_whole(text: str, most: int) -> None:
    """A word is cut only when it is longer than a message."""
    if all(units(w) <= most for w in text.split()):
        assert [w for p in split(text, most) for w in p.split()] == text.split()


def test_lines_stay_whole_where_they_can() -> None:
    """The cut is between lines rather than between words."""
    assert split("one two\nthree four\nfive", 18) == ("one two\nthree four", "five")


@pytest.mark.parametrize("text", ["", " ", "\n\n"])
def test_nothing_is_no_part(text: str) -> None:
    """Telegram refuses blank messages."""
    assert split(text) == ()


def test_a_text_of_exactly_the_limit_is_one_part() -> None:
    """And one more unit makes two."""
    assert len(split("x" * TEXT_MAX)) == 1
    assert len(split("x" * (TEXT_MAX + 1))) == 2
    assert len(split("\N{FLEXED BICEPS}" * (TEXT_MAX // 2))) == 1
    assert len(split("\N{FLEXED BICEPS}" * (TEXT_MAX // 2) + "x")) == 2


@given(TEXTS, st.integers(2, 40))
def test_a_cut_text_fits_and_says_that_it_is_cut(text: str, most: int) -> None:
    """It begins like the text and ends in dots where something is left out."""
    short = cut(text, most)
    assert units(short) <= most
    assert short == text or (short.endswith("…") and text.startswith(short[:-1]))


def test_a_caption_holds_1024() -> None:
    """Telegram's limit for words under a picture."""
    assert cut("x" * CAPTION_MAX) == "x" * 1024
    assert len(cut("x" * (CAPTION_MAX + 1))) == 1024
