"""The room that understands from examples: what holds for every message, slots in three languages, danger in any words."""

from __future__ import annotations

import tomllib
from dataclasses import replace
from datetime import UTC, datetime
from pathlib import Path
from time import process_time
from zoneinfo import ZoneInfo

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from server.conversation.telling.answer import PointHere, RunnerHere
from server.conversation.understanding import (
    Asked,
    Context,
    Danger,
    Distress,
    Kept,
    Question,
    Reported,
    Requested,
    read,
)
from server.conversation.understanding.language import folders, lexicon
from server.conversation.understanding.model import model
from server.conversation.understanding.policy import policy
from server.conversation.understanding.sentence import read_sentence
from server.conversation.understanding.times import find_times
from server.event.model import PartKind
from server.facts.entry import Kind

LANGUAGES = Path(__file__).parents[2] / "server" / "conversation" / "languages"
NOW = datetime(2027, 6, 19, 14, 10, tzinfo=UTC)
ZONE = "Europe/London"
POINTS = (
    PointHere("start", "Tarn Head", 0.0),
    PointHere("mill", "Skelter Mill", 21.0, ("the mill",), crew_access=True),
    PointHere("lathe", "Wether Lathe", 42.0, crew_access=True),
    PointHere("end", "Harrow Fold", 61.0, finish=True),
)
HER = RunnerHere("maren", "Maren", "214", NOW, POINTS, reached="start")
CREW = Context(
    NOW, ZONE, (HER,), frozenset({PartKind.CREW}), ("maren",), (("jonas", "Jonas"), ("ana", "Ana"))
)
RUNNER = replace(CREW, parts=frozenset({PartKind.RUNNER}))
GROWTH_FOUR_TIMES_AS_LONG = 10.0
"""A message four times as long may cost this many times the CPU: 4 is in step with its length, 16 its square."""


@settings(deadline=None)
@given(st.text(max_size=300), st.sampled_from([CREW, RUNNER]))
def test_nothing_typed_makes_it_fail_and_it_says_the_same_again(text: str, ctx: Context) -> None:
    """Whatever is typed."""
    assert read(text, ctx) == read(text, ctx)


@pytest.mark.parametrize(
    "filler", ["so ok ", "she is ", "214 in 1450, ", "x" * 40, "sie ist ", "qu'elle ", "?!., "]
)
def test_nonsense_of_any_length_costs_little(filler: str) -> None:
    """3,900 signs, which is as much as a channel carries; two lengths in one run, so that a busy machine is none's fault."""

    def least(length: int) -> float:
        text = (filler * 4_000)[:length]
        read(text, CREW)
        spent = []
        for _ in range(5):
            began = process_time()
            read(text, CREW)
            spent.append(process_time() - began)
        return min(spent)

    assert least(3_900) < GROWTH_FOUR_TIMES_AS_LONG * max(least(975), 0.001)


SPOKEN = (
    ("in at quarter to three", "14:45"), ("lathe 1458", "14:58"), ("left 12 mins ago", "14:58"), ("at half two", "14:30"),
    ("sie ist um halb drei da", "14:30"), ("fünf vor halb drei", "14:25"), ("vor einer viertelstunde", "14:55"),
    ("um 14 Uhr 35", "14:35"), ("dreiviertel drei", "14:45"), ("il y a 20 minutes", "14:50"), ("à 14h35", "14:35"),
    ("à trois heures moins le quart", "14:45"), ("à deux heures et demie", "14:30"), ("il y a un quart d'heure", "14:55"),
)  # fmt: skip


@pytest.mark.parametrize(("said", "meant"), SPOKEN)
def test_times_in_every_language(said: str, meant: str) -> None:
    """One reader, the words of each language from its folder."""
    found = find_times(lexicon().words(said), NOW, ZONE)
    assert found, said
    assert found[0].at.astimezone(ZoneInfo(ZONE)).strftime("%H:%M") == meant


@pytest.mark.parametrize(
    ("said", "masked"),
    [
        ("Maren in at Wether Lathe 14:58", "<runner> in at <point> <time>"),
        ("tell Jonas she is at the mill", "tell <person> she is at <point>"),
        ("sie ist an der Mühle", "sie ist an der <point>"),
        ("elle est au moulin", "elle est au <point>"),
        ("weather lathe 1502", "<point> <time>"),
        ("she has started", "she has started"),
    ],
)
def test_names_and_times_are_masked(said: str, masked: str) -> None:
    """The model never learns a name or a time; the word 'weather' beside 'lathe' is a slip of a name."""
    points = (*POINTS[1:], PointHere("begin", "Start", 0.0))
    ctx = replace(CREW, runners=(replace(HER, points=points),))
    assert " ".join(read_sentence(said, ctx).masked) == masked


RED_FLAGS = (
    "her lips are blue and she is shaking", "shes grey in the face and wont talk", "keeps falling asleep standing up",
    "she sees things that are not there", "she doesnt know where she is", "shaking uncontrollably",
    "her face is swelling up", "wheezing badly", "stopped sweating and staggering", "she fell on her head",
    "cant keep anything down", "sie hat blaue lippen", "sie weiß nicht wo sie ist", "elle a les lèvres bleues",
    "elle ne sait plus où elle est",
)  # fmt: skip


@pytest.mark.parametrize("words", RED_FLAGS)
def test_what_the_cards_call_a_red_flag_is_heard(words: str) -> None:
    """By rule or by model, in any wording: at least the number and the question."""
    assert read(words, CREW).danger is not Danger.NONE


@pytest.mark.parametrize(
    "words", ["help", "i cant find the path", "hilfe", "au secours", "im hurt and cant walk"]
)
def test_her_own_cry_is_a_call_for_help(words: str) -> None:
    """Never argued with."""
    found = read(words, RUNNER)
    assert isinstance(found.meant, Distress)
    assert found.danger is Danger.ALARM


HARMLESS = (
    "she'll kill me if i forget the broth",
    "lost her torch at the mill",
    "im dying, this is so boring",
)


@pytest.mark.parametrize("words", HARMLESS)
def test_figures_of_speech_call_nobody(words: str) -> None:
    """What only sounds grave raises no alarm."""
    assert not isinstance(read(words, CREW).meant, Distress)


@pytest.mark.parametrize("words", ["im having a nap", "off to bed", "going to sleep now wake me"])
def test_the_first_person_is_the_writer(words: str) -> None:
    """A crew's nap is none of hers."""
    meant = read(words, CREW).meant
    kinds = {r.kind for r in meant.reports} if isinstance(meant, Reported) else set()
    assert not kinds & {Kind.RESTING, Kind.IN, Kind.OUT}


@pytest.mark.parametrize(
    "words",
    ["tell jonas to bring socks", "can you let ana know im late", "sag jonas er soll socken mitbringen"],
)
def test_a_message_for_somebody_is_no_question(words: str) -> None:
    """It is theirs, and asks for nothing of the plan."""
    assert not isinstance(read(words, CREW).meant, Asked)


@pytest.mark.parametrize(
    ("words", "question"),
    [
        ("when do we have to set off for the mill", Question.LEAVE),
        ("wann müssen wir los", Question.LEAVE),
        ("où est-elle maintenant", Question.WHERE),
        ("what place is she in", Question.RIVALS),
        ("will it rain tonight", Question.WEATHER),
    ],
)
def test_questions_in_every_language(words: str, question: Question) -> None:
    """Asked as people ask, of what is known and of what is not."""
    meant = read(words, CREW).meant
    assert isinstance(meant, Asked), meant
    assert meant.question is question


@pytest.mark.parametrize(
    "words", ["i hope shes in at the mill", "she should be in the mill by now", "hoffentlich ist sie bald da"]
)
def test_a_hope_records_nothing(words: str) -> None:
    """Not even to be confirmed."""
    meant = read(words, CREW).meant
    assert isinstance(meant, Kept | Requested | Asked), meant


def test_every_language_has_the_same_classes_and_another_needs_no_code() -> None:
    """A class that a language lacks would be a feature that only some can have; a folder is all that a language is."""
    files = {
        n: tomllib.loads((LANGUAGES / n / "lexicon.toml").read_text(encoding="utf-8")) for n in folders()
    }
    assert len(files) >= 3
    for table in ("classes", "read", "short", "danger"):
        keys = {n: set(f[table]) for n, f in files.items()}
        first = next(iter(keys.values()))
        assert all(k == first for k in keys.values()), (table, {n: k ^ first for n, k in keys.items()})


def test_the_model_is_small_and_knows_every_intent_of_the_policy() -> None:
    """What is not in the policy would be done at no threshold."""
    assert set(model().intents) == set(policy().tiers)
    path = LANGUAGES.parent / "understanding" / "model.npz"
    assert path.stat().st_size < 2_000_000
