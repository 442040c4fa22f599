"""Reports that name no place are of one that she can have come to; and words far from danger are not asked about it."""

from __future__ import annotations

from dataclasses import replace
from datetime import timedelta
from typing import Any

import pytest

from server.conversation.understanding import (
    AskBack,
    Asked,
    Context,
    Danger,
    Distress,
    Need,
    Question,
    Report,
    Reported,
    Requested,
    read,
)
from server.event.model import PartKind
from server.facts.entry import Kind
from tests.bot import world

AT_STILE = replace(world.MAREN, reached="stile-back", known_at=world.NOW - timedelta(minutes=30))


def _crew(point: str | None = None, **of_her: Any) -> Context:
    her = replace(AT_STILE, **of_her)
    return replace(world.crew_of_maren(), runners=(her, world.TOVE), point=point)


def _one(text: str, ctx: Context) -> Report:
    meant = read(text, ctx).meant
    assert isinstance(meant, Reported), meant
    return meant.reports[0]


@pytest.mark.parametrize("words", ["she's in", "she has left", "sie ist da", "elle est repartie"])
def test_nobody_is_where_she_can_not_have_come_to(words: str) -> None:
    """Half an hour ago at 46 km: not in, and not out of, the writer's own next meeting at 100 km."""
    ctx = _crew(own="ravel", due="ravel")
    meant = read(words, ctx).meant
    places: set[str | None] = set()
    if isinstance(meant, Reported):
        places = {r.point for r in meant.reports}
    elif isinstance(meant, AskBack) and meant.need is Need.POINT:
        places = {c.label for c in meant.choices}
    assert places
    assert places <= {"stile-back", "lathe"}


def test_in_time_the_writers_place_is_meant() -> None:
    """Eight hours later she may be there: people forget to report."""
    ctx = _crew(own="ravel", due="ravel", known_at=world.NOW - timedelta(hours=8))
    assert _one("she's in", ctx).point == "ravel"


def test_off_at_the_start_is_out_of_the_start() -> None:
    """Also once somebody has said so already."""
    her = replace(world.MAREN, reached="start", known_at=world.START)
    ctx = replace(world.crew_of_maren(world.START + timedelta(minutes=4)), runners=(her, world.TOVE))
    assert _one("she's off", ctx).point == "start"


def test_a_post_says_where_it_stands() -> None:
    """'Kettle Howe here' is no arrival of hers."""
    ctx = replace(_crew(known_at=world.NOW - timedelta(hours=5)), parts=frozenset({PartKind.ORGANISER}))
    meant = read("Kettle Howe here. Runner 214 left at 14:49.", ctx).meant
    assert isinstance(meant, Reported)
    assert [(r.kind, r.point) for r in meant.reports] == [(Kind.OUT, "kettle")]
    assert meant.reports[0].words == "Kettle Howe here. Runner 214 left at 14:49."


def test_who_did_not_rest_goes_out_of_where_she_was() -> None:
    """'Repartie' of somebody at a point is a departure; of one who rests she moves again."""
    at: dict[str, Any] = {"reached": "mill", "at": "mill", "known_at": world.NOW - timedelta(minutes=10)}
    assert _one("repartie à 15h08", _crew(**at, going="at a point")).kind is Kind.OUT


def test_done_near_the_end_is_the_finish() -> None:
    """Asked, since it may be the other thing."""
    found = _one("shes done 15:01", world.near_the_end())
    assert (found.kind, found.point, found.guessed) == (Kind.IN, "finish", True)


def test_of_two_passes_that_with_crew_is_meant_for_what_crew_bring() -> None:
    """The other can't be a meeting."""
    points = tuple(replace(p, crew_access=p.id != "stile-out") for p in world.POINTS)
    ctx = _crew(points=points, reached="pell")
    meant = read("what do I bring to Long Stile", ctx).meant
    assert isinstance(meant, Asked)
    assert meant.point == "stile-back"


@pytest.mark.parametrize(
    "words",
    [
        "she came in laughing and ate all the rice",
        "chap next to me saw her eating crisps about an hour back",
        "sie hat den ganzen Reis gegessen",
    ],
)
def test_words_far_from_danger_are_not_asked_about_it(words: str) -> None:
    """Whoever is asked each time does not read it the time it matters."""
    assert read(words, world.crew_of_maren()).calm


@pytest.mark.parametrize("words", ["her lips are blue", "she is talking rubbish", "sie redet wirr"])
def test_words_like_danger_are_never_calm(words: str) -> None:
    """Nor what a rule finds."""
    assert not read(words, world.crew_of_maren()).calm


@pytest.mark.parametrize(
    "words",
    [
        "Blood everywhere in the van. Blackberry jam, relax. Tell Jonas not to buy more",
        "This is a drill: runner unconscious at the ford, no real incident",
    ],
)
def test_a_drill_a_joke_or_another_year_wakes_nobody(words: str) -> None:
    """The number and the question stand in the reply all the same."""
    found = read(words, world.crew_of_maren())
    assert not isinstance(found.meant, Distress)
    assert found.danger is Danger.ASK


def test_another_year_before_a_question_is_answered_as_the_question() -> None:
    """With no number and no alarm: it is asked how she is now."""
    words = "Last year she fell and broke her wrist in this race. How is she this time?"
    found = read(words, world.crew_of_maren())
    assert isinstance(found.meant, Asked)
    assert found.danger is Danger.NONE


@pytest.mark.parametrize(
    "words",
    [
        "My mate is running too, bib 88. Has he gone through Long Stile?",
        "Mein Schwager läuft mit der 77. Wo ist er?",
        "Mon cousin a le 56. Il est où ?",
    ],
)
def test_where_somebody_else_is_nobody_here_knows(words: str) -> None:
    """Never her place as if it were his."""
    meant = read(words, world.crew_of_maren()).meant
    assert isinstance(meant, Asked)
    assert meant.question is Question.RIVALS


def test_another_bib_ends_no_race_of_hers() -> None:
    """'He' behind a number that nobody here has is whoever has it."""
    meant = read("have you got a 301 on your list, he's dropped out here", world.volunteer_at("lathe")).meant
    told = meant.reports if isinstance(meant, Reported) else ()
    assert not [r for r in told if r.kind is Kind.RETIRED]


def test_who_lies_down_in_grave_words_does_not_rest() -> None:
    """Also where a place is named: a rest quiets the watch."""
    found = read("Sie liegt hinter der Mühle und macht die Augen nicht auf", world.crew_of_maren())
    assert found.danger is not Danger.NONE
    told = found.meant.reports if isinstance(found.meant, Reported) else ()
    assert not [r for r in told if r.kind is Kind.RESTING]


@pytest.mark.parametrize(
    "words", ["Unfall am Staudamm. eingeklemmt. Bein", "accident au barrage, je suis coincé"]
)
def test_a_drivers_accident_has_the_number(words: str) -> None:
    """In words of nobody, too."""
    assert read(words, world.crew_of_maren()).danger is not Danger.NONE


@pytest.mark.parametrize(
    "words",
    [
        "if she collapses on me at the moss i am not carrying her",
        "she's lost it with me over the wrong socks",
    ],
)
def test_what_is_only_supposed_or_an_idiom_is_no_call(words: str) -> None:
    """Nobody is woken for it."""
    assert not isinstance(read(words, world.crew_of_maren()).meant, Distress)


def test_an_article_before_a_name_is_not_everybody() -> None:
    """'Richte der Ana aus' is for Ana."""
    meant = read("richte der ana aus ich sitz schon im bus", world.crew_of_maren()).meant
    assert isinstance(meant, Requested)
    assert meant.to == "ana"


def test_what_she_wants_at_a_place_is_one_answer() -> None:
    """What to bring says her food too: no question which of the two."""
    meant = read("what does she want at the mill again", world.crew_of_maren()).meant
    assert isinstance(meant, Asked)
    assert meant.question in (Question.BRING, Question.FOOD)
