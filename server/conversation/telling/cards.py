"""The built-in if-then cards: when the emergency number is called, when a medic is fetched, what is tried first. Their
sentences are in `cards.ftl` of each language, numbered.

For crew and runner, not for treating: whatever hurts, bleeds or confuses is for the race's medics, who decide. Read as
published abstracts or tables, and common practice where no source is named:
too much water: Hew-Butler et al. 2015, 3rd international consensus, Br J Sports Med 49:1432; Rogers & Hew-Butler 2009,
Wilderness Environ Med 20:139 (drink to thirst; signs are not specific; anti-inflammatory painkillers add to the risk);
heat: Casa et al. 2015, NATA position statement, J Athl Train 50:986; DeMartini et al. 2015, Med Sci Sports Exerc 47:240
(confused and hot: cool before transport); head: Australian Institute of Sport, Concussion in Sport, diagrams 3 and 4
(removed at once; its red flags; no driving: common practice); cold: wilderness first-aid teaching, no single source;
lightning: NFHS guidelines (car or building; 30 minutes after the last thunder: common practice); caffeine: EFSA 2015, EFSA
Journal 13(5):4102 (adults, not pregnant).
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from functools import cache
from itertools import count
from typing import Final

from rapidfuzz import fuzz

from server.conversation.understanding.language import table
from server.event.model import IfThenCard
from server.sentences import has, sentence

LIKE: Final = 60.0
"""A card whose trouble is at least so like the words (0..100) is meant by them (own choice)."""
_OWN: Final = ""
_CARDS: Final[tuple[tuple[str, str, tuple[str, ...], tuple[str, ...]], ...]] = (
    ("feet", "medic", (_OWN, "always"), ("life",)),
    ("stomach", "medic", ("water", _OWN, "always"), ("life",)),
    ("fall", "medic", (_OWN, "always"), ("life",)),
    ("head-injury", "medic", (_OWN, "always"), ("life", "head")),
    ("weather", "race-control", (_OWN, "always"), ("life", _OWN)),
    ("cannot-get-warm", "medic", (_OWN, "always"), ("life", _OWN)),
    ("allergy", "medic", (_OWN, "always"), ("life", _OWN)),
    ("diabetes", "medic", (_OWN, "always"), ("life", _OWN)),
    ("collapse", "medic", ("water", _OWN, "always"), ("life",)),
    ("wrong-turn", "race-control", (_OWN,), ("life",)),
    ("lost-kit", "race-control", (_OWN,), ()),
    ("drowsy-driver", "race-control", (_OWN,), ()),
    ("runner-late", "race-control", (_OWN,), ()),
    ("wants-to-stop", "race-control", (_OWN,), ("life",)),
)
"""Id, whom to call, where the medic's flags and those for the emergency number come from: its own, or a group that stands on
several cards."""


@cache
def built_in_cards(race_control: str, emergency: str, language: str = "") -> tuple[IfThenCard, ...]:
    """The cards with the numbers to call filled in: race control's, and the local emergency number."""

    def said(name: str) -> str:
        return sentence(language, f"card-{name}", race_control=race_control, emergency=emergency)

    def numbered(name: str) -> Iterator[str]:
        for n in count(1):
            if not has(f"card-{name}-{n}"):
                return
            yield said(f"{name}-{n}")

    def flags(card: str, kind: str, groups: Sequence[str]) -> tuple[str, ...]:
        return tuple(x for g in groups for x in numbered(f"flag-{g}" if g else f"{card}-{kind}"))

    return tuple(
        IfThenCard(
            card,
            said(card),
            tuple(numbered(f"{card}-try")),
            said(f"call-{call}"),
            flags(card, "red", red),
            flags(card, "life", life),
        )
        for card, call, red, life in _CARDS
    )


def red_flag_line(race_control: str, emergency: str, language: str = "") -> str:
    """The sentence over the red flags, with the numbers filled in."""
    return sentence(language, "card-red-flag", race_control=race_control, emergency=emergency)


@cache
def _meant_by(card_id: str) -> tuple[str, ...]:
    """Words of every language by which people mean a card: nobody finds out in which one they write."""
    said = (w.casefold() for w in table("troubles.toml").get(card_id, ()))
    return (*dict.fromkeys(said), card_id.replace("-", " "))


def cards_meant(cards: Sequence[IfThenCard], words: str) -> tuple[str, ...]:
    """Ids of the cards that somebody's words name: by their usual words, matched at the beginning of one, else by the
    likeness of the trouble."""
    text = f" {words.casefold()} "
    named = [c.id for c in cards if any(f" {w}" in text for w in _meant_by(c.id))]
    if named:
        return tuple(named)
    scored = [(fuzz.token_set_ratio(c.trouble.casefold(), words.casefold()), c.id) for c in cards]
    best = max((score for score, _ in scored), default=0.0)
    return tuple(i for score, i in scored if score == best and score >= LIKE)
