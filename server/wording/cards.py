"""The built-in if-then cards in English: what is tried first, who is called, when a medic is fetched.

For crew and runner, not for treating: whatever hurts, bleeds or confuses is for the race's medics, and a
red flag means that a medic is fetched and she does not leave until the medic says so. Common practice, no
source, except where the consensus on drinking too much is meant (Hew-Butler et al. 2015, from memory).
"""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from typing import Final

from rapidfuzz import fuzz

from server.event.model import IfThenCard
from server.wording import cards_de
from server.wording.sentences import language_of

LIKE: Final = 60.0
"""A card whose trouble is at least so like the words (0..100) is meant by them (own choice)."""

MEDIC: Final = "the medics at the point; between points race control, {race_control}"
RACE_CONTROL: Final = "race control, {race_control}"

RED_FLAG: Final = (
    "Any one of these: fetch a medic now, she does not leave until the medic has seen her and said she may. In danger "
    "of life (she does not wake, does not breathe as usual, bleeds hard) call {emergency} first and do as they say, then "
    "race control, {race_control}."
)
"""Stands over the red flags of every card."""

# Shared by every card in which the body is in trouble, since they are what is missed at 3 a.m.
ALWAYS: Final = (
    "she is confused, talks oddly, does not know where she is",
    "she faints, has a fit or can hardly be woken",
    "chest pain, or short of breath at rest; wheezing, or lips, tongue or face swell",
)

CARDS: Final = (
    IfThenCard(
        "feet",
        "a hot spot, a blister, wet or swollen feet",
        (
            "stop at the first rub, not at the next point",
            "shoe and sock off, sand and grit out, dry the foot",
            "tape or cover as she has practised; fresh dry socks",
            "lace more loosely if the foot has swollen, spare shoes half a size larger",
            "blisters that need more than a cover are for the medics",
        ),
        MEDIC,
        (
            "she cannot put weight on the foot",
            "numb, white or blue toes that do not warm up",
            "a deep cut, or a wound that is hot, red and spreading",
            *ALWAYS,
        ),
    ),
    IfThenCard(
        "stomach",
        "nausea, vomiting, nothing stays down",
        (
            "slow to a walk, get out of the sun, loosen what presses on the stomach",
            "pause food for ten to twenty minutes, then small bites of something plain",
            "sip to thirst, no more; no pills for pain or salt unless the medics say so",
            "change sweet for savoury, cold for warm",
            "give it half an hour before deciding anything",
        ),
        MEDIC,
        (
            "vomiting again and again, or with blood or black",
            "bad headache, swollen hands or face, heavier than at the start: drinking too much does this, no more to drink",
            "not even sips of water stay down",
            "no urine for many hours, or it is dark like cola",
            "belly pain that does not let go",
            *ALWAYS,
        ),
    ),
    IfThenCard(
        "fall",
        "she has fallen",
        (
            "before she moves: do head, neck or back hurt, does anything tingle? Then she stays as she lies, and you call",
            "else sit, breathe; wrists, ribs, knees: what hurts, what does not move",
            "warm layer on while sitting",
            "stand, then walk fifty metres, then decide",
            "clean and cover a graze; anything deeper is for the medics",
        ),
        MEDIC,
        (
            "she hit her head, even if she feels well",
            "neck or back pain, tingling, or no feeling in a limb: do not move her",
            "bleeding that does not stop under a firm hand: go on pressing",
            "she cannot walk, or a joint or bone looks wrong",
            *ALWAYS,
        ),
    ),
    IfThenCard(
        "wrong-turn",
        "off the course",
        (
            "stop: no mark for some minutes means look, not hurry on",
            "compare map, watch and the last mark that was sure",
            "go back the way she came to that mark, never a short cut across",
            "if she cannot tell where she is: stay put, warm layer on, call",
            "tell the crew how long it cost, so that they do not worry at the wrong time",
        ),
        RACE_CONTROL,
        (
            "she is lost and it gets dark, cold or foggy",
            "she is on steep or dangerous ground",
            "she is hurt and alone",
            "she is confused, talks oddly, does not know where she is",
        ),
    ),
    IfThenCard(
        "weather",
        "storm, lightning, fog, great heat or cold on its way",
        (
            "warm and waterproof layers on before she is cold, in the lee of something",
            "lightning: off ridges and out from under single trees, poles away from the body",
            "fog: slower, from mark to mark, with whoever is near",
            "heat: shade, water on head and neck, slow to a walk",
            "high ground ahead: ask race control before going up; the race may be held",
        ),
        RACE_CONTROL,
        (
            "she shivers without end, or no longer shivers and still is cold",
            "hot, and she staggers, is confused or falls, sweating or not: shade and water on her while help is called",
            "somebody was struck, or cannot get down by themselves",
            *ALWAYS,
        ),
    ),
    IfThenCard(
        "lost-kit",
        "torch, jacket, phone or other required kit is lost or broken",
        (
            "say at once what is missing; the rules may need it",
            "without light or warm layer: stay with somebody who has both as far as the next point",
            "crew: which car has the spare, and is that point still ahead of her",
            "a phone is lost: tell crew and race control that silence from her means nothing",
            "no spare: ask at the aid station, before she leaves it",
        ),
        RACE_CONTROL,
        (
            "no light, and night before the next point",
            "no warm or waterproof layer, and bad weather or high ground ahead",
        ),
    ),
    IfThenCard(
        "cannot-get-warm",
        "she is cold and does not warm up",
        (
            "out of the wind, wet things off, everything dry on, hat and hood; no rubbing, no alcohol",
            "off the ground: sit on a pack, blanket round her",
            "something warm and sweet to drink if she is awake and swallows well",
            "into the car or tent, with somebody beside her",
            "she leaves only when she is warm and dry, in more than she came in",
        ),
        MEDIC,
        (
            "she shivers without end, or no longer shivers and still is cold: keep her lying, move her gently",
            "slurred speech, clumsy hands, stumbling",
            "white or numb fingers, toes, nose or ears",
            *ALWAYS,
        ),
    ),
    IfThenCard(
        "wants-to-stop",
        "she wants to stop",
        (
            "if she is hurt or ill this is the wrong card: take that one",
            "not in the low hours, not on an empty stomach: warm, dry, fed first, twenty minutes, no shouting",
            "ask what exactly is wrong; each answer has its card",
            "no red flag on any card and the way ahead is safe: perhaps only to the next point, and decide there",
            "it is her race: a decision made warm and fed is not talked away twice",
            "if she retires: tell race control at once, hand in the number, wait for her crew in the warm",
        ),
        RACE_CONTROL,
        (
            "she wants to stop and cannot say why, or says things that make no sense",
            "she sits down to stay somewhere that is not a point: race control must know where",
            *ALWAYS,
        ),
    ),
)


ALSO: Final[Mapping[str, tuple[str, ...]]] = {
    "feet": ("feet", "foot", "blister", "toe", "heel", "sole", "füße", "fuß", "fuss", "füsse", "blase", "zehe"),
    "stomach": (
        "stomach", "sick", "vomit", "nausea", "throw up", "throwing up", "puke", "puking", "belly", "gut",
        "magen", "übel", "schlecht", "erbrech", "bauch",
    ),
    "fall": ("fall", "fell", "fallen", "sprain", "ankle", "knee", "sturz", "gestürzt", "hingefallen", "knöchel"),
    "wrong-turn": ("wrong turn", "off course", "off the course", "lost the way", "lost her way", "verlaufen", "verirrt"),
    "weather": (
        "weather", "storm", "lightning", "thunder", "fog", "heat", "wetter", "gewitter", "sturm", "nebel", "hitze",
    ),
    "lost-kit": ("kit", "lost her", "broken", "battery", "torch", "lampe", "ausrüstung", "verloren", "kaputt"),
    "cannot-get-warm": ("cold", "warm", "freez", "shiver", "frier", "kalt", "zitter"),
    "wants-to-stop": ("stop", "give up", "quit", "drop out", "pull out", "retire", "aufhören", "aufgeben", "aussteigen"),
}  # fmt: skip
"""Words by which people mean a card, besides its own; matched at the beginning of a word."""


def _texts(language: str) -> tuple[tuple[IfThenCard, ...], str]:
    """Cards and the sentence over red flags, in a language; English where there are none."""
    return (cards_de.CARDS, cards_de.RED_FLAG) if language_of(language) == "de" else (CARDS, RED_FLAG)


def built_in_cards(race_control: str, emergency: str, language: str = "en") -> tuple[IfThenCard, ...]:
    """The cards with the numbers to call filled in: race control's, and the local emergency number."""
    return tuple(
        IfThenCard(
            c.id,
            c.trouble,
            c.try_first,
            c.call.format(race_control=race_control, emergency=emergency),
            c.red_flags,
        )
        for c in _texts(language)[0]
    )


def red_flag_line(race_control: str, emergency: str, language: str = "en") -> str:
    """The sentence over the red flags, with the numbers filled in."""
    return _texts(language)[1].format(race_control=race_control, emergency=emergency)


def cards_meant(cards: Sequence[IfThenCard], words: str) -> tuple[str, ...]:
    """Ids of the cards that somebody's words name: by their usual words, else by the likeness of the trouble."""
    text = f" {words.casefold()} "
    named = [
        c.id for c in cards if any(f" {w}" in text for w in (*ALSO.get(c.id, ()), c.id.replace("-", " ")))
    ]
    if named:
        return tuple(named)
    scored = [(fuzz.token_set_ratio(c.trouble.casefold(), words.casefold()), c.id) for c in cards]
    best = max((score for score, _ in scored), default=0.0)
    return tuple(i for score, i in scored if score == best and score >= LIKE)
