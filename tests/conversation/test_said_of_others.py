"""Words about somebody who is lost, about others, and of times taken back: what of them is hers, and what is not."""

from __future__ import annotations

from dataclasses import replace
from datetime import datetime, timedelta

import pytest

from server.conversation.understanding import Acknowledged, AskBack, Danger, read
from server.conversation.understanding.meaning import Request, Requested
from server.event.model import PartKind
from server.facts.entry import Kind
from tests.bot import world
from tests.bot.world import reports_in

MOVES = {Kind.IN, Kind.OUT, Kind.THROUGH}
DESK = replace(
    world.crew_of_maren(), parts=frozenset({PartKind.ORGANISER}), own_runners=(), runners=(world.MAREN,)
)


def _at(hour: int, minute: int) -> datetime:
    return world.NOW.replace(hour=hour - 1, minute=minute)  # British Summer Time


@pytest.mark.parametrize(
    "words",
    [
        "Tove called in tears, she has no idea where she is and the line went dead",
        "I got a call, she was sobbing and then nothing. cant reach her now",
        "some man answered her phone, he found it next to the path",
        "walkers found Tove's phone on a wall, nobody around",
        "a man answered Tove's phone, he found it on a rock, no sign of her",
        "Tove hat angerufen und geweint, sie wusste nicht wo sie ist, dann war die Leitung tot",
        "Ein fremder Mann ging an ihr Handy, es lag im Gras",
        "Wanderer haben Toves Handy gefunden, sie war nicht da",
        "Tove a appelé, elle pleurait au téléphone et la ligne a coupé",
        "un inconnu a répondu, il a trouvé son téléphone sur un rocher",
    ],
)
def test_lost_or_a_phone_without_her_is_asked_about(words: str) -> None:
    """The number and the question at least, and never a plain answer to something else."""
    found = read(words, world.crew_of_maren())
    assert found.danger is not Danger.NONE
    assert not isinstance(found.meant, Acknowledged)
    assert not any(r.kind is Kind.NOT_HERE_YET for r in reports_in(found.meant))


@pytest.mark.parametrize(
    "words",
    [
        "mill: 301 10.02, 214 10.05, 305 10.09, rough times",
        "am Lathe: 301 um 10:02, 214 um 10:05, 305 um 10:09, alles ungefähr",
        "lathe 301 10h02, 214 10h05, beaucoup de monde",
    ],
)
def test_each_time_of_a_list_is_of_its_bib(words: str) -> None:
    """Hers gets hers, and no other bib's time is hers."""
    assert [(r.runner, r.seen_at) for r in reports_in(read(words, DESK).meant)] == [("maren", _at(10, 5))]


@pytest.mark.parametrize(
    "words",
    [
        "mill closed, last one in 14.28. thanks", "the leader through at 14:20", "last runner out 14:41, packing up",
        "Posten zu, die letzte kam um 14:28", "Letzter durch 14:41, wir bauen ab", "alle durch seit 14:20",
        "on ferme, le dernier arrivé à 14h28", "la première passée à 14h20", "tout le monde est passé à 14h30",
    ],
)  # fmt: skip
def test_the_last_and_the_first_are_never_her(words: str) -> None:
    """Whoever reports many runners."""
    assert [r for r in reports_in(read(words, DESK).meant) if r.kind in MOVES] == []


@pytest.mark.parametrize(
    "words", ["14h05 arrivée, elle veut du riz", "arrivée 14:05", "she finished 14:05", "im Ziel 14:05"]
)
def test_no_finish_that_she_can_not_have_reached(words: str) -> None:
    """Half an hour after the third of the way."""
    her = replace(world.MAREN, known_at=world.NOW - timedelta(minutes=30))
    meant = read(words, replace(world.crew_of_maren(), runners=(her, world.TOVE))).meant
    places = {r.point for r in reports_in(meant)}
    if isinstance(meant, AskBack):
        places |= {c.label for c in meant.choices}
    assert "finish" not in places


@pytest.mark.parametrize(
    "words",
    [
        "not 13:40 but 13:30 she came in", "she was in at 13:30 not 13:40", "nicht 13:40 sondern 13:30 war sie da",
        "nein, nicht um 13:40, um 13:30 war sie da", "pas à 13h40 mais à 13h30 elle est arrivée",
    ],
)  # fmt: skip
def test_the_time_taken_back_does_not_count(words: str) -> None:
    """'Not X but Y' is Y, in either order."""
    assert {r.seen_at for r in reports_in(read(words, world.at_the_lathe()).meant)} == {_at(13, 30)}


@pytest.mark.parametrize(
    "words", ["214 at 13:30 at the lathe, straight on", "214 um 13:30 an der Lathe, ohne Halt weiter"]
)
def test_straight_on_is_one_report(words: str) -> None:
    """With the time that is said."""
    told = reports_in(read(words, DESK).meant)
    assert [(r.kind, r.seen_at) for r in told] == [(Kind.THROUGH, _at(13, 30))]


@pytest.mark.parametrize(
    "words",
    [
        "I knocked someone down on the road, not moving",
        "j'ai renversé un cycliste il bouge plus",
        "ich hab jemanden angefahren, er bewegt sich nicht",
    ],
)
def test_somebody_else_who_is_down_is_not_how_she_is(words: str) -> None:
    """The number and the question stay."""
    found = read(words, world.crew_of_maren())
    assert found.danger is Danger.ASK
    assert [r for r in reports_in(found.meant) if r.kind is Kind.HOW_SHE_IS] == []


@pytest.mark.parametrize(
    "words",
    [
        "she wants to sit down all the time",
        "sie will sich dauernd hinlegen",
        "Sitze noch beim Frühstück",
        "elle veut s'asseoir sans arrêt",
    ],
)
def test_a_wish_and_the_writer_are_no_rest_of_hers(words: str) -> None:
    """Nothing of it is a rest."""
    assert [r for r in reports_in(read(words, world.crew_of_maren()).meant) if r.kind is Kind.RESTING] == []


@pytest.mark.parametrize(
    "words",
    [
        "lost a glove in the mud, she laughed so hard. all good",
        "passed an ambulance, nothing happening, so nobody panics",
    ],
)
def test_where_all_is_well_nobody_is_alarmed(words: str) -> None:
    """It is asked at most."""
    assert read(words, world.crew_of_maren()).danger is not Danger.ALARM


@pytest.mark.parametrize(
    "words", ["lost a glove in the mud, all good here", "lost my cap, she laughed so hard"]
)
def test_of_a_pacer_neither(words: str) -> None:
    """'Lost' of whoever runs is an alarm, unless the words say that all is well."""
    pacer = replace(world.crew_of_maren(), parts=frozenset({PartKind.PACER}))
    assert read(words, pacer).danger is not Danger.ALARM


@pytest.mark.parametrize(
    "words",
    [
        "is she ok she is shaking all over and her lips are blue",
        "was sick twice and now she will not wake up",
        "does she always do this, she does not know her own name",
    ],
)
def test_grave_words_are_grave_however_they_begin(words: str) -> None:
    """As a question of this or another language does: what a rule found is let off only for a question mark."""
    assert read(words, world.crew_of_maren()).danger is not Danger.NONE


@pytest.mark.parametrize(
    ("words", "left"),
    [
        ("gave her the spare torch, forgot the gels", False),
        ("Lampe mitgegeben, Gels vergessen", False),
        ("je lui ai donné la frontale, oublié les gels", False),
        ("she left without her torch", True),
        ("sie ist ohne Lampe los", True),
    ],
)
def test_a_torch_that_was_handed_over_is_not_left_behind(words: str, left: bool) -> None:
    """What is forgotten is the other thing."""
    meant = read(words, world.crew_of_maren()).meant
    assert (isinstance(meant, Requested) and meant.request is Request.LIGHT_LEFT) is left
