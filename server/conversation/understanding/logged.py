"""What words say for the stop log: 'drank 500, ate half a banana, no ibu' → three things logged; how much; who asks for it.

Words of all languages, from `logged.toml` of each folder; clauses of which nothing is known are left to the reader.
"""

from __future__ import annotations

import re
from collections.abc import Mapping
from dataclasses import dataclass
from functools import cache

from server.conversation.understanding.language import Matcher, folders, lexicon, matcher
from server.conversation.understanding.language import _file as file_of
from server.conversation.understanding.words import asks, fold
from server.facts.stop_log import MOST, Item, Level, Logged

__all__ = ["amount_of", "asks_for_log", "logged_in"]

_LONGEST_CLAUSE = 10
_PHRASE = 3
_ML = {"": 1.0, "ml": 1.0, "cl": 10.0, "dl": 100.0, "l": 1000.0}
_G = {"g": 1.0, "gr": 1.0}
_MIN = {"": 1.0, "min": 1.0, "mins": 1.0, "minute": 1.0, "h": 60.0}
_UNITS: Mapping[Item, Mapping[str, float]] = {Item.DRANK: _ML, Item.ATE: _G, Item.SLEPT: _MIN}
_AMOUNT = re.compile(r"(?<![\w.,:])(\d{1,4}(?:[.,]\d{1,2})?)\s*([a-z]*)\b")
_LEAST_BARE_ML = 20.0
"""A number without a unit that is smaller counts bottles or cups (own choice)."""


@dataclass(frozen=True)
class _Words:
    """The words of the log in every language. `joins` parts one thing from the next; `not_yet` what is no fact."""

    items: Mapping[Item, Matcher]
    levels: Mapping[Item, Mapping[Level, Matcher]]
    none: Matcher
    not_yet: Matcher
    asks: Matcher
    joins: re.Pattern[str]
    units: Mapping[str, str]
    drop: Matcher


@cache
def _words() -> _Words:
    files = [file_of(f, "logged.toml") for f in folders()]

    def pooled(*path: str) -> Matcher:
        found: list[str] = []
        for f in files:
            table: object = f
            for key in path:
                table = table.get(key, ()) if isinstance(table, dict) else ()
            found += table if isinstance(table, list) else ()
        return matcher(found, lexicon().elided)

    joins = "|".join(re.escape(fold(w)) for f in files for w in f["joins"])
    return _Words(
        {i: pooled("items", i.value) for i in Item},
        {i: {level: pooled("levels", i.value, level.value) for level in Level} for i in Item},
        pooled("none"),
        pooled("not_yet"),
        pooled("asks"),
        re.compile(rf"[;\n+&]|,(?!\d)|\.(?!\d)|\s(?:{joins})\s"),
        {fold(k): v for f in files for k, v in f["units"].items()},
        pooled("drop"),
    )


def asks_for_log(text: str) -> bool:
    """Whether the words ask for the log, and no more."""
    words = lexicon().words(text)
    if not words or len(words) > _LONGEST_CLAUSE:
        return False
    lengths = [_words().asks.at(words, i) for i in range(len(words))]
    # Short phrases are asked for by themselves: 'log' in other words may be a tree.
    return lengths[0] == len(words) or max(lengths) >= _PHRASE


def amount_of(text: str, item: Item) -> float | None:
    """How much of that thing, in its unit, where the text says no more than that; None for anything else."""
    found = _AMOUNT.fullmatch(fold(text).strip(" .!"))
    return None if found is None else _in_unit(found, item)


def _in_unit(found: re.Match[str], item: Item) -> float | None:
    unit = _words().units.get(found[2], found[2])
    factor = _UNITS.get(item, {}).get(unit)
    value = float(found[1].replace(",", "."))
    if factor is None or (item is Item.DRANK and not unit and value < _LEAST_BARE_ML):
        return None
    amount = value * factor
    return amount if 0 < amount <= MOST[item] else None


def logged_in(text: str) -> tuple[tuple[Logged, ...], bool]:
    """What the text says for the log, and whether it says nothing else. Nothing of a question, or of what is only wished."""
    known = _words()
    if asks(text) or known.not_yet.has(lexicon().words(text)):
        return (), False
    clauses = [c.strip() for c in known.joins.split(f" {fold(text)} ") if c.strip()]
    each = [_clause(c) for c in clauses]
    found = tuple(one for one in each if one is not None)
    return found, bool(found) and all(one is not None for one in each)


def _clause(clause: str) -> Logged | None:
    """The one thing that a clause says; None for one that says none, or too much."""
    known, words = _words(), lexicon().words(clause)
    if not words or len(words) > _LONGEST_CLAUSE:
        return None
    item = next((i for i, m in known.items.items() if m.has(words)), None)
    amounts = list(_AMOUNT.finditer(clause))
    if item is None:
        # '500 ml' is drunk; a number alone may be anything.
        only = amounts[0] if len(amounts) == 1 and amounts[0][0].strip() == clause else None
        ml = _in_unit(only, Item.DRANK) if only is not None and only[2] else None
        return Logged(Item.DRANK, ml) if ml is not None else None
    if known.none.has(words):
        plain = item not in (Item.MOOD, Item.FEET, Item.CHANGED)
        return Logged(item, level=Level.NONE) if plain else None
    level = next((v for v, m in known.levels[item].items() if m.has(words)), None)
    measured = ((a, _in_unit(a, item)) for a in amounts)
    amount = next(((a, n) for a, n in measured if n is not None), None)
    rest = clause if amount is None else clause.replace(amount[0][0], " ", 1)
    what = _rest(rest, item)
    if item in (Item.MOOD, Item.FEET) and level is None:
        return None
    return Logged(item, None if amount is None else amount[1], level, "" if level else what)


def _rest(clause: str, item: Item) -> str:
    """What is left of a clause without who did it and what it was: 'half a banana'. Of a painkiller its name stays."""
    known, kept = _words(), clause.split()
    verb = known.items[item]
    taken = [w for w in kept if not known.drop.has([w])]
    named = item is Item.PAINKILLER
    return " ".join(w for w in taken if named or not verb.has([w]))
