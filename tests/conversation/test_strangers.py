"""Other bibs, and places that are none of the course's: never a passage of hers that counts."""

from __future__ import annotations

from dataclasses import replace

import pytest

from server.conversation.understanding import (
    AskBack,
    Kept,
    Need,
    Reported,
    Several,
    gates,
    read,
)
from server.conversation.understanding.sentence import read_sentence
from server.event.model import PartKind
from server.facts.entry import Kind
from tests.bot import world
from tests.bot.world import reports_in

POINTS = tuple(replace(p, beside=("Ember moss",)) for p in world.POINTS)
MAREN = replace(world.MAREN, points=POINTS)
DESK = replace(world.crew_of_maren(), parts=frozenset({PartKind.ORGANISER}), own_runners=(), runners=(MAREN,))
CREW = replace(world.crew_of_maren(), runners=(MAREN,))
SEEN = {Kind.IN, Kind.OUT, Kind.THROUGH}


@pytest.mark.parametrize(
    "words",
    [
        "the lathe marshal says 241 went through at 14:52", "lathe just had 124 through at 14:50",
        "Nummer 241 ist um 14:52 durch", "le 241 est passé à 14h52",
    ],
)  # fmt: skip
def test_a_bib_one_slip_away_is_asked_about(words: str) -> None:
    """Nobody here has it: was hers meant? Nothing is noted until that is said."""
    back = read(words, DESK).meant
    assert isinstance(back, AskBack)
    assert back.need is Need.BIB
    assert [c.label for c in back.choices] == ["maren"]


@pytest.mark.parametrize(
    "words",
    [
        "number 88 just went through, he says he passed her on the moss",
        "Nummer 88 ist gerade durch, der meint er hat sie im Moor überholt",
        "le 31 vient de passer, il dit qu'il l'a doublée dans la tourbière",
        "57 went through, says she overtook 214 a while back",
    ],
)
def test_another_bib_is_not_hers(words: str) -> None:
    """What its runner says of her is kept whole, and is no report of where she is."""
    assert not [r for r in reports_in(read(words, CREW).meant) if r.kind in SEEN]


def test_hers_beside_another_bib_is_told() -> None:
    """The clause that names her is read as it would be alone."""
    told = reports_in(read("number 88 went through at 14:40, maren in at the lathe 14:52", CREW).meant)
    assert [(r.kind, r.point) for r in told] == [(Kind.IN, "lathe")]


@pytest.mark.parametrize(
    "words",
    [
        "214 came through the second gate at 14:52", "she went by at a ford, 14:50, not one of ours",
        "Maren um 14:52 am zweiten Steinbruch vorbei", "elle est passée à 14h52 au troisième moulin",
        "radio from a marshal, 214 went by him at 14:50, the spot hasn't got a name",
    ],
)  # fmt: skip
def test_a_place_of_no_name_is_no_point(words: str) -> None:
    """A passage there is a sighting between points, which is asked for, or kept; never a check-in."""
    assert not [r for r in reports_in(read(words, DESK).meant) if r.kind in SEEN]


@pytest.mark.parametrize(
    ("words", "point"),
    [("maren in at the gate 14:52", "brindle"), ("maren in at the mill 14:52", "mill"),
     ("Maren drin, Steinbruch, 14:52", "ember")],
)  # fmt: skip
def test_the_one_point_of_a_kind_is_named_by_it(words: str, point: str) -> None:
    """With the article, or alone."""
    assert [r.point for r in reports_in(read(words, DESK).meant)] == [point]


def test_a_word_that_a_stretch_has_too_names_no_point_surely() -> None:
    """Where a stretch is called 'Ember moss', 'the moss' may be that."""
    told = reports_in(read("maren through the moss 14:52", DESK).meant)
    assert all(r.guessed for r in told if r.point == "candle")
    assert [r.point for r in reports_in(read("maren through Candle Moss 14:52", DESK).meant)] == ["candle"]


@pytest.mark.parametrize(
    "words",
    [
        "satnav's gone and died on me but we found the quarry anyway",
        "left the van up on the lane, walking in",
        "my legs are dead and i havent run a step yet",
    ],
)
def test_what_crew_tell_of_themselves_is_not_hers(words: str) -> None:
    """Nor is a thing left somewhere a leaving of theirs."""
    assert {r.kind for r in reports_in(read(words, CREW).meant)} <= {Kind.CREW_THERE, Kind.NOTE}


def test_a_thing_left_is_no_leaving() -> None:
    """Of crew who say where their car stands; without it they have left."""
    left, gone = (read_sentence(w, CREW) for w in ("left the van up on the lane", "left the mill just now"))
    assert not gates.may_be("crew_left", left, foot=False)
    assert gates.may_be("crew_left", gone, foot=False)


def test_every_clause_is_done_or_quoted() -> None:
    """Of a report with two clauses that nobody could make out, both are kept."""
    said = "maren out of the lathe 14:52, asked a medic about her knee but went on"
    meant = read(said, world.at_the_lathe()).meant
    parts = meant.parts if isinstance(meant, Several) else (meant,)
    kept = " ".join(p.words for p in parts if isinstance(p, Kept))
    told = " ".join(r.words for p in parts if isinstance(p, Reported) for r in p.reports)
    assert "asked a medic" in kept + told
