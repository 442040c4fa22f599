"""If-then cards: every trouble has one, red flags are never lost, and injuries are for medics."""

from __future__ import annotations

from dataclasses import replace
from datetime import UTC, datetime, timedelta

import pytest

from server.conversation.telling.answer import CardsAnswer
from server.conversation.telling.cards import built_in_cards, red_flag_line
from server.conversation.telling.reader import Reader
from server.conversation.telling.say import Say
from server.conversation.telling.things import say_cards
from server.event.model import IfThenCard, Target
from server.plan import PlanError
from server.plan.cards import NEEDED, cards_of

BUILT_IN = built_in_cards("+44 1632 960001", "112")


@pytest.fixture
def event(make_event):
    """An event without cards of its own."""
    return make_event(Target(finish=timedelta(hours=29)))


def test_every_trouble_has_a_card(event) -> None:
    """From feet to wanting to stop, a blow to the head, an allergy, a drowsy driver among them: all there, each once."""
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
        if card.id not in ("lost-kit", "drowsy-driver"):
            assert any("confused" in f for f in card.red_flags), card.id


def test_a_red_flag_keeps_her_there() -> None:
    """The sentence over the flags: a medic is fetched, she does not leave; emergency number and race control in it."""
    line = red_flag_line("+44 1632 960001", "112")
    assert "does not leave" in line
    assert "medic" in line
    assert "112" in line
    assert "+44 1632 960001" in line


@pytest.mark.parametrize("word", ["paracetamol", "aspirin", "dose", "tablet", "push the bone"])
def test_nothing_is_prescribed(word: str) -> None:
    """No card names a drug or a treatment that is a medic's to choose; ibuprofen only to say no, an injector as hers."""
    text = " ".join(" ".join((c.trouble, *c.try_first, *c.red_flags)) for c in BUILT_IN).lower()
    assert word not in text
    assert text.count("ibuprofen") == text.count("no ibuprofen or its like") == 1
    assert text.count("injector") == text.count("own injector") + text.count("the injector goes to hospital")


LIFE = {
    "en": ("does not wake", "breathe normally", "a fit", "chest pain", "face, lips or tongue swell", "wheezes",
           "hot and confused", "weak on one side", "bleeding that does not stop"),
    "de": ("wacht nicht auf", "atmet nicht normal", "Krampfanfall", "Brustschmerz", "Gesicht, Lippen oder Zunge schwellen",
           "Atem pfeift", "heiß und verwirrt", "eine Seite ist schwach", "Blutung, die unter fester Hand nicht aufhört"),
    "fr": ("ne se réveille pas", "ne respire pas normalement", "convulsions", "mal à la poitrine",
           "lèvres ou la langue gonflent", "respiration siffle", "brûlante et confuse", "un côté est faible",
           "saignement qui ne s’arrête pas"),
}  # fmt: skip
MEDIC = {
    "en": ("severe headache, or one that grows", "cannot see or speak properly", "heart beats irregularly",
           "muscles too painful, swollen or weak"),
    "de": ("starke Kopfschmerzen, oder solche, die zunehmen", "nicht richtig sehen oder sprechen", "schlägt unregelmäßig",
           "Muskeln, die zu sehr schmerzen, geschwollen"),
    "fr": ("mal de tête violent, ou qui augmente", "ne voit ou ne parle pas bien", "cœur bat irrégulièrement",
           "muscles trop douloureux, gonflés ou faibles"),
}  # fmt: skip
OF_BODY = (
    "feet", "stomach", "fall", "head-injury", "weather", "cannot-get-warm", "allergy", "diabetes", "collapse",
)  # fmt: skip


@pytest.mark.parametrize("language", LIFE)
@pytest.mark.parametrize("card_id", OF_BODY)
def test_every_flag_is_on_every_card_about_her_body(card_id: str, language: str) -> None:
    """Those at which the emergency number comes first, and those that are always a medic's; in every language."""
    card = next(c for c in built_in_cards("1", "112", language) if c.id == card_id)
    for flag in LIFE[language]:
        assert any(flag in f for f in card.life_flags), flag
    for flag in MEDIC[language]:
        assert any(flag in f for f in card.red_flags), flag


HOLDS = {
    "stomach": {
        "en": ("outrank every step", "too much water does this as well as too little", "a medic before more drink or salt",
               "bloated, confused or with a headache", "no ibuprofen or its like", "dry, vomits, or has dark or no urine",
               "give it half an hour"),
        "de": ("gehen jedem Schritt hier vor", "zu viel Wasser ebenso wie zu wenig", "erst Sanitäter, dann mehr trinken",
               "aufgebläht, verwirrt oder Kopfschmerzen", "kein Ibuprofen und nichts Ähnliches", "dunklem oder keinem Urin",
               "eine halbe Stunde abwarten"),
    },
    "head-injury": {
        "en": ("race is over until a medic has seen her", "not left alone", "does not drive", "neck pain",
               "growing confusion", "vomiting again and again", "weakness or tingling", "drowsier", "sees or hears badly",
               "unusual behaviour"),
        "de": ("Rennen ist vorbei, bis Sanitäter sie gesehen", "nicht allein gelassen", "fährt nicht", "Schmerzen im Nacken",
               "zunehmende Verwirrung", "immer wieder Erbrechen", "Schwäche oder Kribbeln", "schläfriger",
               "sieht oder hört schlecht", "ungewohntes Verhalten"),
    },
    "weather": {
        "en": ("cool first, move second", "soak her, fan her, ice or wet cloths at neck, armpits and groin",
               "car or building", "crouch", "apart from each other", "30 minutes after the last thunder"),
        "de": ("erst kühlen, dann bewegen", "nass machen, fächeln, Eis oder nasse Tücher an Hals, Achseln, Leisten",
               "ins Auto oder in ein Gebäude", "in die Hocke", "Abstand voneinander", "30 Minuten nach dem letzten Donner"),
    },
    "cannot-get-warm": {
        "en": ("keep her lying", "insulated", "no walking", "heat to the trunk over her clothing",
               "slurred speech, stumbling"),
        "de": ("liegen lassen", "einpacken", "nicht gehen", "Wärme an den Rumpf, über der Kleidung", "verwaschene Sprache"),
    },
    "allergy": {"en": ("her own injector at once", "call 112"), "de": ("sofort ihr eigener Pen", "112 anrufen")},
    "diabetes": {
        "en": ("her own plan comes first", "nothing by mouth"),
        "de": ("ihr eigener Plan geht vor", "nichts in den Mund"),
    },
    "drowsy-driver": {
        "en": ("stop at the next safe place", "Somebody else drives, or nobody", "no metre more"),
        "de": ("an der nächsten sicheren Stelle anhalten", "jemand anders fährt oder niemand", "keinen Meter weiter"),
    },
    "runner-late": {
        "en": ("race's own results", "ask race control whether she went through", "alone or in the dark"),
        "de": ("Ergebnisse des Rennens", "die Rennleitung fragen, ob sie ungesehen durch ist", "allein oder im Dunkeln"),
    },
    "collapse": {
        "en": ("no normal breath is 112", "cool first, move second", "nothing to drink until a medic has looked"),
        "de": ("kein normaler Atem heißt jetzt 112", "erst kühlen, dann bewegen", "nichts zu trinken, bis Sanitäter"),
    },
}  # fmt: skip


@pytest.mark.parametrize("language", ["en", "de"])
@pytest.mark.parametrize("card_id", HOLDS)
def test_what_must_stand_on_a_card(card_id: str, language: str) -> None:
    """Water, painkillers and the flags: Hew-Butler et al. 2015; heat: Casa et al. 2015; head: Australian Institute of Sport,
    Concussion in Sport; cold, lightning, sleep: common practice (NFHS for lightning). All of it in both languages."""
    card = next(c for c in built_in_cards("1", "112", language) if c.id == card_id)
    text = " ".join((*card.try_first, *card.red_flags, *card.life_flags)).lower()
    for words in HOLDS[card_id][language]:
        assert words.lower() in text, words


def test_flags_come_first_and_in_a_box() -> None:
    """What is read first on a phone is when to call, framed; then when a medic is fetched; only then what to try."""
    say = Say(Reader("en", "UTC", "UTC"), datetime(2027, 6, 19, tzinfo=UTC))
    answer = CardsAnswer(BUILT_IN, red_flag_line("+44 1632 960001", "112"))
    told = say_cards(say, answer, ("stomach",)).split("\n")
    assert told[0].startswith("■ RED FLAGS. Any one of these: call 112 now")
    box = [n for n, line in enumerate(told) if line.startswith("■")]
    assert box == list(range(len(box)))
    medic = next(n for n, line in enumerate(told) if "A MEDIC is fetched" in line)
    steps = next(n for n, line in enumerate(told) if line.startswith("Try first"))
    assert max(box) < medic < steps


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
    assert any(weather in f for f in cards["weather"].life_flags)
    assert any(cold in s for s in cards["cannot-get-warm"].try_first)


@pytest.mark.parametrize(
    ("language", "drink", "gently", "allergy", "on", "danger"),
    [
        ("en", "before more drink or salt", "move her gently", "lips or tongue swell", "no red flag on any card",
         "do as they say"),
        ("de", "dann mehr trinken oder Salz", "sanft bewegen", "Lippen oder Zunge", "kein Warnzeichen",
         "tun, was sie sagen"),
    ],
)  # fmt: skip
def test_a_red_flag_says_what_must_not_be_done_meanwhile(
    language: str, drink: str, gently: str, allergy: str, on: str, danger: str
) -> None:
    """Common practice, no source (drinking too much: Hew-Butler et al. 2015): no more water into somebody
    who may have had too much; the very cold are not walked about; a swelling face is an emergency; nobody is kept
    going past a red flag; who calls the emergency number does as they say."""
    cards = {c.id: c for c in built_in_cards("1", "112", language)}
    assert any(drink in f for f in cards["stomach"].red_flags)
    assert any(gently in s for s in cards["cannot-get-warm"].try_first)
    assert all(
        any(allergy in f for f in cards[i].life_flags) for i in ("feet", "stomach", "fall", "wants-to-stop")
    )
    assert any(on in s for s in cards["wants-to-stop"].try_first)
    assert danger in red_flag_line("1", "112", language)
