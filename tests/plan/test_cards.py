"""If-then cards: every trouble has one, red flags are never lost, and injuries are for medics."""

from __future__ import annotations

from dataclasses import replace
from datetime import timedelta

import pytest

from server.event.model import IfThenCard, Target
from server.plan import PlanError
from server.plan.cards import NEEDED, cards_of
from server.wording.cards import built_in_cards, red_flag_line

BUILT_IN = built_in_cards("+44 1632 960001", "112")


@pytest.fixture
def event(make_event):
    """An event without cards of its own."""
    return make_event(Target(finish=timedelta(hours=29)))


def test_every_trouble_has_a_card(event) -> None:
    """Feet, stomach, fall, wrong turn, weather, lost kit, cold and wanting to stop are all there, each once."""
    found = cards_of(event, BUILT_IN)
    assert tuple(c.id for c in found) == NEEDED


@pytest.mark.parametrize("card", BUILT_IN, ids=[c.id for c in BUILT_IN])
def test_each_card_is_whole(card: IfThenCard) -> None:
    """A card says what is tried first, whom to call with a number, and when a medic is fetched."""
    assert 3 <= len(card.try_first) <= 6
    assert "+44 1632 960001" in card.call
    assert len(card.red_flags) >= 2
    assert "{" not in card.call


def test_confusion_is_a_red_flag_wherever_a_body_is_in_trouble() -> None:
    """Every card about her body or mind lists confusion."""
    for card in BUILT_IN:
        if card.id != "lost-kit":
            assert any("confused" in f for f in card.red_flags), card.id


def test_a_red_flag_keeps_her_there() -> None:
    """The sentence over the flags: a medic is fetched, she does not leave; emergency number and race control in it."""
    line = red_flag_line("+44 1632 960001", "112")
    assert "does not leave" in line
    assert "medic" in line
    assert "112" in line
    assert "+44 1632 960001" in line


@pytest.mark.parametrize(
    "word", ["ibuprofen", "paracetamol", "aspirin", "dose", "tablet", "inject", "push the bone"]
)
def test_nothing_is_prescribed(word: str) -> None:
    """No card names a drug or a treatment that is a medic's to choose."""
    text = " ".join(" ".join((c.trouble, *c.try_first, *c.red_flags)) for c in BUILT_IN).lower()
    assert word not in text


def test_words_to_avoid() -> None:
    """No card uses the words that mislead at 3 a.m."""
    text = " ".join(" ".join((c.trouble, *c.try_first, *c.red_flags)) for c in BUILT_IN).lower()
    for word in ("she's out", "dead", "passed", "stopped"):
        assert word not in text


def test_an_own_card_keeps_the_built_in_red_flags(event) -> None:
    """A card of the event replaces the steps; the red flags of the built-in one stay."""
    own = IfThenCard("feet", "hot spot on a foot", ("stop at once, dry, tape",), "", ("bone shows",))
    found = cards_of(replace(event, cards=(own,)), BUILT_IN)
    feet = next(c for c in found if c.id == "feet")
    assert found[0] is feet
    assert feet.try_first == ("stop at once, dry, tape",)
    assert feet.red_flags[0] == "bone shows"
    assert set(BUILT_IN[0].red_flags) < set(feet.red_flags)
    assert feet.call == BUILT_IN[0].call
    assert len(found) == len(NEEDED)


def test_a_card_of_its_own_kind_is_added(event) -> None:
    """A trouble nobody foresaw comes first and takes nothing away."""
    own = IfThenCard("bull", "a bull in the field", ("round by the wall",), "crew", ())
    assert [c.id for c in cards_of(replace(event, cards=(own,)), BUILT_IN)] == ["bull", *NEEDED]


def test_a_card_with_nothing_to_try_is_refused(event) -> None:
    """An own card without steps is no card."""
    own = IfThenCard("bull", "a bull in the field", ())
    with pytest.raises(PlanError) as caught:
        cards_of(replace(event, cards=(own,)), BUILT_IN)
    assert caught.value.field == "if_then[0].try_first"


def test_missing_texts_are_refused(event) -> None:
    """A language without one of the needed cards is an error, not a gap."""
    with pytest.raises(PlanError, match="stomach"):
        cards_of(event, [c for c in BUILT_IN if c.id != "stomach"])


@pytest.mark.parametrize(
    ("language", "fall", "stomach", "weather", "cold"),
    [
        ("en", "Then she stays as she lies", "no pills for pain or salt unless the medics", "sweating or not", "no rubbing"),
        ("de", "Dann bleibt sie liegen", "keine Schmerz- oder Salztabletten", "ob sie schwitzt oder nicht", "nicht reiben"),
    ],
)  # fmt: skip
def test_what_a_medic_would_miss_is_there(
    language: str, fall: str, stomach: str, weather: str, cold: str
) -> None:
    """Common practice, no source: nobody with a hurt neck is sat up; no pain pills on a sick stomach; who has a heat
    stroke may still sweat; cold limbs are not rubbed."""
    cards = {c.id: c for c in built_in_cards("1", "112", language)}
    assert fall in cards["fall"].try_first[0]
    assert any(stomach in s for s in cards["stomach"].try_first)
    assert any(weather in f for f in cards["weather"].red_flags)
    assert any(cold in s for s in cards["cannot-get-warm"].try_first)


@pytest.mark.parametrize(
    ("language", "drink", "gently", "allergy", "on", "danger"),
    [
        ("en", "no more to drink", "move her gently", "tongue or face swell", "no red flag on any card", "do as they say"),
        ("de", "nichts mehr trinken", "sanft bewegen", "Zunge oder Gesicht", "kein Warnzeichen", "tun, was sie sagen"),
    ],
)  # fmt: skip
def test_a_red_flag_says_what_must_not_be_done_meanwhile(
    language: str, drink: str, gently: str, allergy: str, on: str, danger: str
) -> None:
    """Common practice, no source (drinking too much: Hew-Butler et al. 2015, from memory): no more water into somebody
    who may have had too much; the very cold are not walked about; a swelling face is an emergency; nobody is kept
    going past a red flag; who calls the emergency number does as they say."""
    cards = {c.id: c for c in built_in_cards("1", "112", language)}
    assert any(drink in f for f in cards["stomach"].red_flags)
    assert any(gently in f for f in cards["cannot-get-warm"].red_flags)
    assert all(
        any(allergy in f for f in cards[i].red_flags) for i in ("feet", "stomach", "fall", "wants-to-stop")
    )
    assert any(on in s for s in cards["wants-to-stop"].try_first)
    assert danger in red_flag_line("1", "112", language)
