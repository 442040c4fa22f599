"""What words say for the stop log: 'drank 500, ate half a banana, no ibu' → three things logged; how much; who asks for it.

Words of all languages, from `logged.toml` of each folder; clauses of which nothing is known are left to the reader.
"""

from __future__ import annotations

import re
from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass, replace
from functools import cache

from server.conversation.understanding.features import begins_as_question
from server.conversation.understanding.language import Matcher, folders, lexicon, matcher
from server.conversation.understanding.language import _file as file_of
from server.conversation.understanding.words import asks, fold
from server.facts.stop_log import MOST, Item, Level, Logged

__all__ = ["amount_of", "asks_for_log", "logged_in", "of_writer", "only_of_the_log", "says_medic"]

_LONGEST_CLAUSE = 10
_PHRASE = 3
_ML = {"": 1.0, "ml": 1.0, "cl": 10.0, "dl": 100.0, "l": 1000.0}
_G = {"g": 1.0, "gr": 1.0}
_MIN = {"": 1.0, "min": 1.0, "mins": 1.0, "minute": 1.0, "h": 60.0}
_UNITS: Mapping[Item, Mapping[str, float]] = {Item.DRANK: _ML, Item.ATE: _G, Item.SLEPT: _MIN}
_AMOUNT = re.compile(
    r"(?<![\w.,:])(?<!\bat )(?<!\bum )(?<!\bsince )(?<!\bseit )(?<!\bvers )(\d{1,4}(?:[.,]\d{1,2})?)\s*([a-z]*)\b"
)
_LEAST_BARE_ML = 20.0
"""A number without a unit that is smaller counts bottles or cups (own choice)."""
_LEAST_ML_OF = 100.0
"""'500 coke' is millilitres from here on; less of a thing counts cups (own choice)."""
_OTHER_UNITS = frozenset({"mg", "kcal", "cal", "kj", "km", "k", "m", "am", "pm", "uhr", "%"})
_FOR_THE_LOG = (Item.ATE, Item.DRANK, Item.PEED, Item.PAINKILLER)
_LONGEST_MORE = 4


@dataclass(frozen=True)
class _Words:
    """The words of the log in every language. `joins` parts one thing from the next, by `joining` words or a sign; `not_yet`
    what is no fact; `lost`: it came up again; `writer` speaks of themselves; `finite` verbs follow whose they are; `past`
    asks what was; `counts`: more of it."""

    items: Mapping[Item, Matcher]
    levels: Mapping[Item, Mapping[Level, Matcher]]
    none: Matcher
    not_yet: Matcher
    lost: Matcher
    writer: Matcher
    asked: Matcher
    past: Matcher
    finite: Matcher
    counts: Matcher
    asks: Matcher
    medic: Matcher
    joins: re.Pattern[str]
    joining: Matcher
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
        pooled("lost"),
        pooled("writer"),
        pooled("asked"),
        pooled("past"),
        pooled("finite"),
        pooled("counts"),
        pooled("asks"),
        pooled("medic"),
        re.compile(rf"([;\n+&]|,(?!\d)|\.(?!\d)|\s(?:{joins})\s)"),
        pooled("joins"),
        {fold(k): v for f in files for k, v in f["units"].items()},
        pooled("drop"),
    )


def asks_for_log(text: str) -> bool:
    """Whether the words ask for the log, and no more; 'when did she last pee' does."""
    known, words = _words(), lexicon().words(text)
    if not words or len(words) > _LONGEST_CLAUSE:
        return False
    was = _asked(text, words) and known.past.has(words) and not known.not_yet.has(words)
    if was and any(known.items[i].has(words) for i in _FOR_THE_LOG):
        return True
    lengths = [_words().asks.at(words, i) for i in range(len(words))]
    # Short phrases are asked for by themselves: 'log' in other words may be a tree.
    return lengths[0] == len(words) or max(lengths) >= _PHRASE


def says_medic(text: str) -> bool:
    """Whether the writer says, in few words, that they are a medic."""
    words = lexicon().words(text)
    return len(words) <= _LONGEST_CLAUSE and _words().medic.has(words)


def only_of_the_log(text: str, names: Iterable[str] = ()) -> bool:
    """Whether all of it is for the log, in the log's own words, numbers, food and kit, and nothing of it is bad: no such
    line is a call for help, whatever a model makes of 'getrunken' (which 'ertrunken' is like)."""
    found, whole = logged_in(text, names)
    if not whole or any(one.level is Level.BAD for one in found):
        return False
    if any(one == Logged(Item.DRANK) for one in found):
        return False  # 'drunk'
    words, at = lexicon().words(_without(text, names)), 0
    while at < len(words):
        length = max(m.at(words, at) for m in _plain())
        if not length and not _AMOUNT_WORD.fullmatch(words[at]):
            return False
        at += length or 1
    return not any(_dose(one) for one in found)


_AMOUNT_WORD = re.compile(
    r"\d{1,4}(?:[.,]\d{1,2})?(?:ml|cl|dl|l|g|gr|mg|min|h)?|ml|cl|dl|l|g|gr|mg|min|mins|h"
)
_DOSE_MG = range(50, 1001)
"""A number beside a painkiller that may be the milligrams of one (own choice): any other is asked about."""


def _dose(one: Logged) -> bool:
    """Whether so much of a painkiller was taken as nobody should read past."""
    counts = [int(n) for n in re.findall(r"\d+", one.words)] if one.item is Item.PAINKILLER else []
    return any(n not in _DOSE_MG for n in counts) or len(counts) > 1


@cache
def _plain() -> tuple[Matcher, ...]:
    known, classes = _words(), lexicon().classes
    levels = (m for of in known.levels.values() for level, m in of.items() if level is not Level.BAD)
    units = matcher(known.units, lexicon().elided)
    return (
        *known.items.values(),
        *levels,
        known.none,
        known.drop,
        known.counts,
        known.joining,
        units,
        classes["eat"],
        classes["kit"],
    )


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


def of_writer(text: str) -> bool:
    """Whether the words are of who writes them: 'I ate a sandwich'."""
    return bool(_words().writer.begins(lexicon().words(text)))


def _asked(text: str, words: Sequence[str]) -> bool:
    return asks(text) or begins_as_question(words) or bool(_words().asked.begins(words))


def logged_in(text: str, names: Iterable[str] = ()) -> tuple[tuple[Logged, ...], bool]:
    """What the text says for the log, and whether it says nothing else. Nothing of a question, of what is only wished, or of
    what came up again. `names`: her own and her bib, which are no part of what she ate."""
    known, said = _words(), _without(text, names)
    words = lexicon().words(said)
    if _asked(text, words) or known.not_yet.has(words) or known.lost.has(words):
        return (), False
    parts = known.joins.split(f" {said} ")
    found: list[Logged] = []
    whole = True
    for joint, part in zip(("", *parts[1::2]), parts[::2], strict=True):
        if not part.strip():
            continue
        one = _clause(part.strip())
        if one is not None:
            found.append(one)
        elif found and joint.strip() not in tuple(",.;") and _is_more(found[-1], part):
            found[-1] = replace(found[-1], words=f"{found[-1].words} + {_rest(part, Item.ATE)}")
        else:
            whole = False
    return tuple(found), bool(found) and whole


def _without(text: str, names: Iterable[str]) -> str:
    """The text with 'she' for her names."""
    own = "|".join(re.escape(fold(n)) for n in names if n)
    return re.sub(rf"(?<!\w)#?(?:{own})(?!\w)", " she ", fold(text)) if own else fold(text)


def _is_more(before: Logged, part: str) -> bool:
    """Whether words behind 'and' are more of what was eaten: '2 gels and a bar'."""
    words = lexicon().words(part)
    counted = _words().counts.begins(words) or part.strip()[:1].isdigit()
    timed = any(a[2] and _in_unit(a, Item.SLEPT) for a in _AMOUNT.finditer(part))
    fits = before.item is Item.ATE and bool(before.words) and 1 < len(words) <= _LONGEST_MORE
    return bool(fits and counted and not timed and not _OTHER_UNITS & set(words))


def _clause(clause: str) -> Logged | None:
    """The one thing that a clause says; None for one that says none, too much, or of whom nobody knows."""
    known, words = _words(), lexicon().words(clause)
    if not words or len(words) > _LONGEST_CLAUSE:
        return None
    items = [i for i, m in known.items.items() if m.has(words)]
    amounts = list(_AMOUNT.finditer(clause))
    if not items:
        # '500 ml' is drunk; a number alone may be anything.
        only = amounts[0] if len(amounts) == 1 and amounts[0][0].strip() == clause else None
        ml = _in_unit(only, Item.DRANK) if only is not None and only[2] else None
        return Logged(Item.DRANK, ml) if ml is not None else None
    if len(items) > 1 or _of_another(words):
        return None
    item = items[0]
    if known.none.has(words):
        plain = item not in (Item.MOOD, Item.FEET, Item.CHANGED)
        return Logged(item, level=Level.NONE) if plain else None
    level = next((v for v, m in known.levels[item].items() if m.has(words)), None)
    measured = ((a[0], _in_unit(a, item)) if not _of_it(a, item) else (a[1], float(a[1])) for a in amounts)
    amount = next(((a, n) for a, n in measured if n is not None), None)
    rest = clause if amount is None else clause.replace(amount[0], " ", 1)
    what = _rest(rest, item)
    if item in (Item.MOOD, Item.FEET) and level is None:
        return None
    return Logged(item, None if amount is None else amount[1], level, "" if level else what)


def _of_another(words: Sequence[str]) -> bool:
    """Whether somebody not known stands before what was done: 'nora ate 2 gels'."""
    known = _words()
    at = next((i for i in range(len(words)) if known.finite.at(words, i)), 0)
    return any(not (known.drop.has([w]) or known.none.has([w])) for w in words[:at])


def _of_it(found: re.Match[str], item: Item) -> bool:
    """Whether a number is millilitres of what is named behind it: '500 coke', '500 getrunken'."""
    unit = _words().units.get(found[2], found[2])
    other = unit in _OTHER_UNITS or any(unit in of for of in _UNITS.values())
    return (
        item is Item.DRANK
        and not other
        and found[1].isdigit()
        and _LEAST_ML_OF <= int(found[1]) <= MOST[item]
    )


def _rest(clause: str, item: Item) -> str:
    """What is left of a clause without who did it and what it was: 'half a banana'. Of a painkiller its name stays."""
    known, kept = _words(), clause.split()
    verb = known.items[item]
    taken = [w for w in kept if not known.drop.has([w])]
    named = item is Item.PAINKILLER
    return " ".join(w for w in taken if named or not verb.has([w.rstrip(":")]))
