"""The built-in if-then cards: when the emergency number is called, when a medic is fetched, what is tried first. Each
language has its own in `cards.toml` of its folder, the same troubles, steps and flags in the same order.

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

import tomllib
from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass
from functools import cache
from typing import Any, Final

from rapidfuzz import fuzz

from server.event.model import IfThenCard
from server.sentences import fallback, folder, language_of, languages

LIKE: Final = 60.0
"""A card whose trouble is at least so like the words (0..100) is meant by them (own choice)."""
FILE: Final = "cards.toml"
_GROUP = "@"
"""Begins the name of flags that stand on several cards."""


@dataclass(frozen=True, slots=True)
class Cards:
    """A language's cards as they stand in its file: holes for the numbers to call, `red_flag` over the flags at which the
    emergency number comes first, `meant_by` the words, by the card's id, by which people mean it."""

    cards: tuple[IfThenCard, ...]
    red_flag: str
    meant_by: Mapping[str, tuple[str, ...]]


@cache
def cards_in(language: str) -> Cards:
    """The cards of a language's folder; those of the fallback where it has none. KeyError for a card that is not whole."""
    chosen = language_of(language)
    file = folder(chosen) / FILE
    if not file.is_file():
        return cards_in(fallback())
    t = tomllib.loads(file.read_text(encoding="utf-8"))
    return Cards(
        tuple(_card(c, t["call"], t["flags"]) for c in t["card"]),
        t["red_flag"],
        {c["id"]: tuple(c["meant_by"]) for c in t["card"]},
    )


def _card(c: Mapping[str, Any], calls: Mapping[str, str], groups: Mapping[str, Sequence[str]]) -> IfThenCard:
    def whole(flags: Iterable[str]) -> tuple[str, ...]:
        return tuple(x for f in flags for x in (groups[f[1:]] if f.startswith(_GROUP) else (f,)))

    called, tries = calls[c["call"]], tuple(c["try_first"])
    return IfThenCard(c["id"], c["trouble"], tries, called, whole(c["red_flags"]), whole(c["life_flags"]))


def built_in_cards(race_control: str, emergency: str, language: str = "") -> tuple[IfThenCard, ...]:
    """The cards with the numbers to call filled in: race control's, and the local emergency number."""

    def filled(texts: Sequence[str]) -> tuple[str, ...]:
        return tuple(t.format(race_control=race_control, emergency=emergency) for t in texts)

    return tuple(
        IfThenCard(
            c.id,
            c.trouble,
            filled(c.try_first),
            c.call.format(race_control=race_control, emergency=emergency),
            filled(c.red_flags),
            filled(c.life_flags),
        )
        for c in cards_in(language).cards
    )


def red_flag_line(race_control: str, emergency: str, language: str = "") -> str:
    """The sentence over the red flags, with the numbers filled in."""
    return cards_in(language).red_flag.format(race_control=race_control, emergency=emergency)


@cache
def _meant_by(card_id: str) -> tuple[str, ...]:
    """Words of every language by which people mean a card: nobody finds out in which one they write."""
    words = (w for x in languages() for w in cards_in(x).meant_by.get(card_id, ()))
    return (*dict.fromkeys(words), card_id.replace("-", " "))


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
