"""What is recorded only where the words surely say it: a time put right in one message, who will not come, whose pain."""

from __future__ import annotations

from dataclasses import replace
from datetime import UTC, datetime

import pytest

from server.conversation.understanding import (
    AskBack,
    Context,
    Danger,
    Kept,
    Need,
    read,
)
from server.conversation.understanding.meaning import Acknowledged, Small, Undo
from server.conversation.understanding.sentence import read_sentence
from server.event.model import PartKind
from server.facts.entry import Kind
from tests.bot import world
from tests.bot.world import reports_in

HOME = replace(world.crew_of_maren(), parts=frozenset({PartKind.SAFETY_CONTACT}))
PACER = replace(world.crew_of_maren(), parts=frozenset({PartKind.PACER}))
DESK = replace(
    world.crew_of_maren(), parts=frozenset({PartKind.ORGANISER}), own_runners=(), runners=(world.MAREN,)
)


def _at(hour: int, minute: int) -> datetime:
    return world.NOW.replace(hour=hour - 1, minute=minute)  # British Summer Time


@pytest.mark.parametrize(
    "words",
    [
        "in 14.50, sorry, 14.40", "14:50 she was in. no wait, 14:40", "in at 14:50, make that 14:40",
        "14:50 drin. nee, 14:40", "um 14:50 rein, quatsch, um 14:40", "entrée 14h50. non, 14h40 pardon",
        "arrivée à 14h50, enfin 14h40", "arrivée à 14h40 et pas 14h50", "in at 14:40 and not 14:50",
    ],
)  # fmt: skip
def test_a_time_put_right_in_the_same_message_is_the_later_one(words: str) -> None:
    """The one before it counts nowhere, and the words are kept as they were written."""
    told = reports_in(read(words, world.at_the_lathe()).meant)
    assert {r.seen_at for r in told} == {_at(14, 40)}
    assert all(r.words in words for r in told)


def test_two_bibs_with_their_times_put_nothing_right() -> None:
    """'no' may be short for number."""
    told = reports_in(read("lathe: 301 14.50, no 214 14.52, no 305 14.55", DESK).meant)
    assert [(r.runner, r.seen_at) for r in told] == [("maren", _at(14, 52))]


@pytest.mark.parametrize("words", ["she is in, 14:58", "Sie ist da, 14:58.", "elle est là, 14h58"])
def test_a_time_behind_a_comma_is_of_what_stands_before_it(words: str) -> None:
    """And not the time of writing."""
    assert {r.seen_at for r in reports_in(read(words, world.at_the_lathe()).meant)} == {_at(14, 58)}


def test_a_time_in_another_clause_is_asked_about() -> None:
    """A report as of now beside the one time that is said is no sure report."""
    told = reports_in(
        read("by the big clock it is 14:58 minus a bit, anyway shes in", world.crew_of_maren()).meant
    )
    assert [(r.kind, r.seen_at, r.guessed) for r in told] == [(Kind.IN, _at(14, 58), True)]


@pytest.mark.parametrize("words", ["Schlussläufer um 22:40 hier durch", "um 22:40 hier rein"])
def test_german_hier_is_not_french_yesterday(words: str) -> None:
    """Five minutes ago, not a day before."""
    now = datetime(2027, 6, 19, 21, 45, tzinfo=UTC)
    assert [t.at for t in read_sentence(words, replace(DESK, now=now)).times] == [now.replace(minute=40)]


@pytest.mark.parametrize(
    "words",
    [
        "another puncture, love my life. anyway it is patched, still fine for the lathe",
        "can't come to terms with how long this takes haha, it is a beautiful day",
        "so nervous that I feel sick, lol, what a day this is for all of us",
    ],
)
def test_who_may_come_all_the_same_is_asked(words: str) -> None:
    """Nobody is taken not to come by a sigh or a joke."""
    meant = read(words, world.crew_of_maren()).meant
    assert not [r for r in reports_in(read(words, world.crew_of_maren()).meant) if r.kind is Kind.CANNOT_COME]
    if isinstance(meant, AskBack):
        assert (meant.need, len(meant.choices)) == (Need.MEANING, 2)


@pytest.mark.parametrize(
    "words",
    [
        "my car broke down", "flat tyre on the pass road and no spare with me, so count me out for the lathe",
        "auto kaputt", "mein Kind hat Fieber, ich kann heute Abend nicht zum Tor kommen",
        "je viendrai pas, la voiture démarre plus",
    ],
)  # fmt: skip
def test_who_says_so_does_not_come(words: str) -> None:
    """A reason alone, or the plain word."""
    assert Kind.CANNOT_COME in [r.kind for r in reports_in(read(words, world.crew_of_maren()).meant)]


@pytest.mark.parametrize(
    ("words", "ctx"),
    [
        ("there is a pain behind my breastbone that goes into my jaw", HOME),
        ("can't feel my fingers and keep walking into the wall, she's fine, it's me", PACER),
        ("un randonneur a trouvé son sac près de l'eau, pas elle", HOME),
        ("her phone was handed in at the inn. she is not with it", HOME),
        ("ihr Rucksack wurde am Bach gefunden, sie aber nicht", HOME),
    ],
)
def test_a_grave_word_is_asked_about_and_kept(words: str, ctx: Context) -> None:
    """The number first; nothing is taken back, answered or thanked for by it."""
    found = read(words, ctx)
    assert found.danger is not Danger.NONE
    assert not isinstance(found.meant, Undo | Acknowledged | Small)


@pytest.mark.parametrize(
    "words",
    [
        "some bloke has gone over on the stones, bone sticking out of his shin",
        "bin in den Graben gerutscht, Kopf brummt, Scheibe hin",
        "Läufer vor mir einfach umgekippt, reagiert nicht",
        "the last two are down in the yard by now, that is your lot",
        "this is a radio drill: runner down at the ford, no real incident",
        "Übung: die Bergwacht übt hier mit einer Puppe, die blutet, bitte keine Panik",
    ],
)
def test_another_or_the_writer_is_not_how_she_is(words: str) -> None:
    """It is kept, and not as a word of her."""
    found = read(words, world.crew_of_maren())
    assert isinstance(found.meant, Kept)
    assert not found.meant.of_her
    assert found.danger is not Danger.ALARM


def test_a_pacers_own_trouble_beside_her_name_is_not_how_she_is() -> None:
    """'She's fine, it's me'."""
    words = "can't feel my fingers and keep walking into the wall, she's fine, it's me"
    assert not reports_in(read(words, PACER).meant)


def test_an_if_of_a_pacer_raises_no_alarm() -> None:
    """What has happened is told to everybody at once."""
    assert (
        read("if she collapses on me at the moss i am not carrying her ha", PACER).danger is not Danger.ALARM
    )
    assert read("she has collapsed", PACER).danger is Danger.ALARM


def test_grave_words_do_not_say_that_she_is_not_here_yet() -> None:
    """'Nothing stays down' is no word of waiting; an hour's waiting is."""
    grave = "sie behält nichts drin, redet komisch und will schlafen, hier auf dem moos"
    assert not [r for r in reports_in(read(grave, PACER).meant) if r.kind is Kind.NOT_HERE_YET]
    waits = "not seen her nobody has seen her and its been an hour"
    assert [r.kind for r in reports_in(read(waits, world.at_night()).meant)] == [Kind.NOT_HERE_YET]


@pytest.mark.parametrize("words", ["elle a plus envie, elle veut rentrer", "sie will heim, sagt sie dauernd"])
def test_a_wish_ends_no_race(words: str) -> None:
    """Not even as a question whether it is over."""
    meant = read(words, PACER).meant
    assert not (isinstance(meant, AskBack) and meant.need is Need.DROPPED)


def test_a_list_is_of_the_place_at_its_head() -> None:
    """A kettle that is on is no Kettle Howe."""
    meant = read("mill: 301 14.50, 214 14.52, kettle is on", DESK).meant
    assert isinstance(meant, AskBack)
    assert [(r.point, r.seen_at) for r in meant.also] == [("mill", _at(14, 52))]
