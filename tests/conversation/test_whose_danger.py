"""Danger in three tiers, and whose it is: a stranger's, a helper's or the writer's is no alarm about her, nor how she is."""

from __future__ import annotations

from dataclasses import replace
from datetime import timedelta

import pytest

from server.conversation.understanding import Acknowledged, AskBack, Context, Danger, Kept, read
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


@pytest.mark.parametrize("ctx", [CREW, replace(CREW, parts=frozenset({PartKind.PACER}))])
@pytest.mark.parametrize(
    "words",
    [
        "at lathe now. one of the marshals has collapsed, he's not responding", "a marshal has collapsed here",
        "der streckenposten hier ist zusammengebrochen", "un bénévole s'est effondré ici",
        "not maren!! a marshal. ambulance is on its way", "maren ist es nicht, ein Ordner ist zusammengebrochen",
    ],
)  # fmt: skip
def test_a_helper_who_collapses_is_no_alarm_about_her(words: str, ctx: Context) -> None:
    """Whoever writes it, on the course too; the number stands first."""
    found = read(words, ctx)
    assert found.danger is Danger.ASK
    # Where the writer stands is kept; 'at the lathe now' of a pacer says where both are.
    kinds = {(r.kind, r.point) for r in reports_in(found.meant)}
    here = Kind.IN if PartKind.PACER in ctx.parts else Kind.CREW_THERE
    assert kinds == ({(here, "lathe")} if words.startswith("at lathe") else set())


@pytest.mark.parametrize(
    "words",
    ["marshal at lathe says she has gone down", "der posten am lathe sagt sie ist zusammengebrochen",
     "le commissaire à lathe dit qu'elle s'est effondrée", "another runner has collapsed, need help"],
)  # fmt: skip
def test_what_a_helper_says_of_her_is(words: str) -> None:
    """And so is a cry of who runs, whoever lies there."""
    assert read(words, RUNNER if "another" in words else CREW).danger is Danger.ALARM


def test_to_go_down_to_a_place_is_no_danger() -> None:
    """Only to go down."""
    assert read("she has gone down to the lathe", CREW).danger is not Danger.ALARM


@pytest.mark.parametrize(
    "words",
    ["she rang and said goodbye, then it cut off", "sie hat angerufen, nur geweint, dann war die leitung tot",
     "elle m'a appelé, elle a dit qu'elle n'en peut plus et puis ça a coupé",
     "she just called, couldn't understand a word, then nothing"],
)  # fmt: skip
def test_a_call_of_hers_that_broke_off_is_how_she_is(words: str) -> None:
    """And no question of the cut-off, nor that she has come; the number first."""
    found = read(words, CREW)
    assert found.danger is Danger.ASK
    assert [(r.kind, r.words) for r in reports_in(found.meant)] == [(Kind.HOW_SHE_IS, words)]


@pytest.mark.parametrize(
    "words",
    ["I'm done, knee, she goes on alone", "je m'arrête ici, le genou, elle continue seule",
     "j'abandonne, mon genou, elle continue sans moi", "ich muss aufhören, sie läuft alleine weiter",
     "tomas is done, he stops here, she carries on alone", "tomas hört hier auf, sie läuft alleine weiter"],
)  # fmt: skip
def test_a_pacer_who_stops_ends_no_race_of_hers(words: str) -> None:
    """Said by the pacer or of one: who will not come."""
    ctx = CREW if "tomas" in words else replace(CREW, parts=frozenset({PartKind.PACER}))
    (one,) = reports_in(read(words, ctx).meant)
    assert (one.kind, one.person) == (Kind.CANNOT_COME, "tomas" if "tomas" in words else None)


def test_a_pacer_who_gives_up_is_asked_whether_she_does() -> None:
    """Where nothing is said of her."""
    meant = read("j'abandonne", replace(CREW, parts=frozenset({PartKind.PACER}))).meant
    assert isinstance(meant, AskBack)
    assert [c.label for c in meant.choices] == ["retired", "cant_come"]


def test_beside_a_helper_who_stops_she_is_in() -> None:
    """'Done' is his, and neither her end nor the finish."""
    told = reports_in(read("she's in 1455, tomas is done and stops here", CREW).meant)
    assert [(r.kind, r.point) for r in told if r.kind is not Kind.NOTE] == [(Kind.IN, "lathe")]


@pytest.mark.parametrize(
    "words",
    ["pulling out, told the marshal", "steig aus, posten weiß bescheid", "ich steig aus, hab's dem streckenposten gesagt"],
)  # fmt: skip
def test_who_runs_and_told_an_official_that_she_stops_has_retired(words: str) -> None:
    """She need not say it twice; 'not pulling out' is no such thing."""
    (one,) = reports_in(read(words, RUNNER).meant)
    assert (one.kind, one.guessed) == (Kind.RETIRED, False)
    assert not any(
        r.kind is Kind.RETIRED
        for r in reports_in(read("told the marshal I'm fine, not pulling out", RUNNER).meant)
    )
