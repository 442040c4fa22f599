"""Danger in three tiers, and whose it is: a stranger's, a helper's or the writer's is no alarm about her, nor how she is."""

from __future__ import annotations

from dataclasses import replace
from datetime import timedelta

import pytest

from server.conversation.understanding import Acknowledged, Danger, Kept, read
from server.event.model import PartKind
from server.facts.entry import Kind
from tests.bot import world
from tests.bot.world import reports_in

CREW = replace(world.crew_of_maren(), runners=(world.MAREN,))
RUNNER = replace(CREW, parts=frozenset({PartKind.RUNNER}))


@pytest.mark.parametrize(
    "words",
    [
        "oh no another runner is down at the stile, bib 88", "some lad has collapsed by the gate, not ours",
        "there's a lass bleeding badly, number 305", "one of the other runners cant breathe, the medic is with him",
        "a woman has collapsed and she is not breathing", "a marshal has fainted, he is unconscious",
        "88 has chest pain", "Nummer 305 blutet stark", "ein Mann ist zusammengebrochen, keiner von uns",
        "un autre coureur est par terre, dossard 88", "le 305 saigne beaucoup",
        "jonas has collapsed", "tomas ist umgekippt", "jonas est tombé dans les pommes",
        "pete's car has gone off the road", "jonas is in the ditch with the car, he is hurt",
        "la voiture de jonas est au fossé",
        "ive cut my hand on a tin and its bleeding a lot", "i feel faint and my chest hurts", "ich habe brustschmerzen",
        "i passed out for a moment at the car", "je suis tombée et je saigne beaucoup",
    ],
)  # fmt: skip
def test_anothers_danger_is_asked_about_and_is_none_of_hers(words: str) -> None:
    """The number first; the words are kept as the writer's."""
    found = read(words, CREW)
    assert found.danger is Danger.ASK
    assert isinstance(found.meant, Kept)
    assert not found.meant.of_her


@pytest.mark.parametrize(
    "words",
    [
        "another runner says she is down, bleeding badly", "a walker found her unconscious",
        "a marshal told us she has collapsed", "jonas found maren unconscious", "collapsed", "bleeding badly",
        "another runner is down, maren has collapsed too", "ein anderer Läufer sagt, sie ist bewusstlos",
        "un randonneur l'a trouvée inconsciente", "marshal just radioed, runner unconscious at ravel",
        "marshal doing cpr on him", "steward carried him out, unconscious", "marshal there, unconscious, not breathing",
        "ordner ruft krankenwagen, bewusstlos",
    ],
)  # fmt: skip
def test_who_only_tells_of_her_takes_no_alarm_from_her(words: str) -> None:
    """Nor do words of nobody."""
    assert read(words, CREW).danger is Danger.ALARM


@pytest.mark.parametrize(
    "words", ["tomas has cut his hand badly", "a marshal has collapsed", "runner 301 fell hard at the ford"]
)
def test_anothers_danger_is_no_report(words: str) -> None:
    """Of any kind, whatever the words sound like besides."""
    assert not reports_in(read(words, CREW).meant)


RED_FLAGS = (
    "we can barely rouse her", "she asked me what race this is", "sees two of everything", "getting drowsier and drowsier",
    "sick again, fifth time", "no wee since noon", "hit her noggin on a rock but says shes fine", "foot wont take weight",
    "rash all over since the wasp", "sugar is 2.4", "sees things that are not there", "cant remember falling",
    "sie wacht kaum auf", "glühend heiss und redet quatsch", "übergibt sich zum fünften mal", "seit mittag nicht gepinkelt",
    "elle ne se réveille pas bien", "elle demande quelle course c'est", "urine comme du coca",
    "elle vomit pour la cinquième fois",
)  # fmt: skip


@pytest.mark.parametrize("words", RED_FLAGS)
def test_a_red_flag_of_the_cards_has_the_number_first(words: str) -> None:
    """In other words than theirs."""
    assert read(words, CREW).danger.grave


@pytest.mark.parametrize(
    "words", ["I'm dying, so boring", "emergency: no biscuits left", "mayday mayday we are out of biscuits"]
)
def test_what_is_said_of_other_things_as_well_is_talk(words: str) -> None:
    """Where nothing else says that it is meant."""
    assert not read(words, CREW).danger.grave


@pytest.mark.parametrize("words", ["sos 🆘", "notarzt bitte"])
def test_a_cry_is_never_talk(words: str) -> None:
    """One or two words alone."""
    assert read(words, CREW).danger.grave


def test_the_model_alone_wakes_nobody_without_a_red_flag() -> None:
    """Of who runs: it is asked."""
    assert read("show me the whole timing", RUNNER).danger is not Danger.ALARM
    assert read("my chest is tight", RUNNER).danger is Danger.ALARM


@pytest.mark.parametrize(
    ("words", "minutes"),
    [
        ("off to bed", None), ("im turning in now", None), ("nap for 20 min", 20), ("getting my head down for an hour", 60),
        ("kipping in the back", None), ("ich mach mal 20 min die augen zu", 20), ("je fais une sieste de 20 min", 20),
    ],
)  # fmt: skip
def test_crew_who_go_to_sleep_speak_of_themselves(words: str, minutes: int | None) -> None:
    """Quiet for as long as they say; it is none of her rests."""
    meant = read(words, CREW).meant
    assert isinstance(meant, Acknowledged)
    assert meant.answer == "to bed"
    assert meant.at == (None if minutes is None else CREW.now + timedelta(minutes=minutes))


@pytest.mark.parametrize(
    "words", ["she is having a nap", "nap 20 min at the lathe", "maren sleeps for 20 min"]
)
def test_her_nap_is_a_rest(words: str) -> None:
    """Where the words name her, or the place."""
    assert [r.kind for r in reports_in(read(words, CREW).meant)] == [Kind.RESTING]


@pytest.mark.parametrize(
    "words",
    [
        "woke up on the rumble strip",
        "bin auf dem randstreifen aufgewacht",
        "je me suis réveillé sur la bande d'arrêt",
    ],
)
def test_who_fell_asleep_at_the_wheel_is_the_driver(words: str) -> None:
    """The number and the question, and nothing of it is hers: she neither woke nor moved."""
    found = read(words, CREW)
    assert found.danger is Danger.ASK
    assert isinstance(found.meant, Kept)
    assert not found.meant.of_her
