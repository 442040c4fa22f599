"""The words of all languages: every folder beside this room that has a lexicon, read once.

Nobody finds out which language a sentence is in: a class holds the words of every language there is, so that a sentence of
two costs nothing, and one more language is one more folder.
"""

from __future__ import annotations

import tomllib
from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass
from functools import cache, lru_cache
from importlib import resources
from typing import Any

from server.conversation.understanding.words import fold, words_of

GAP = ".."
"""In a phrase: up to three words between."""
GAP_MAX = 3

Phrase = tuple[str, ...]


@dataclass(frozen=True)
class Matcher:
    """A set of words, beginnings of words and phrases, looked for in a row of words. `phrases` by their first word."""

    single: frozenset[str]
    stems: Mapping[str, tuple[str, ...]]
    phrases: Mapping[str, tuple[Phrase, ...]]
    whole: frozenset[str]

    def has(self, words: Sequence[str]) -> bool:
        """Whether any stands in the words."""
        return any(self.at(words, i) for i in range(len(words)))

    def word(self, word: str) -> bool:
        """Whether it is one of the single words."""
        return word in self.single or (word[:1] in self.stems and word.startswith(self.stems[word[:1]]))

    def at(self, words: Sequence[str], i: int) -> int:
        """How many words from the `i`th on are one of these, the longest; 0 for none."""
        word = words[i]
        for phrase in self.phrases.get(word, ()):
            n = _length(phrase, words, i)
            if n:
                return n
        return 1 if self.word(word) else 0

    def places(self, words: Sequence[str]) -> list[int]:
        """The numbers of the words where one begins, in order."""
        return [i for i in range(len(words)) if self.at(words, i)]

    def begins(self, words: Sequence[str]) -> int:
        """How many words at the beginning are one of these; 0 for none."""
        return self.at(words, 0) if words else 0

    def without(self, words: Sequence[str], instead: str) -> list[str]:
        """The words with a sign in place of every phrase of these."""
        out, i = [], 0
        while i < len(words):
            n = next((n for p in self.phrases.get(words[i], ()) if (n := _length(p, words, i))), 0)
            out.append(instead if n else words[i])
            i += n or 1
        return out


def _length(phrase: Phrase, words: Sequence[str], i: int) -> int:
    """How many words from the `i`th on are a phrase whose first word stands there; 0 if they are not."""
    k, j = 1, i + 1
    while k < len(phrase):
        part = phrase[k]
        if part == GAP:
            nxt = phrase[k + 1]
            j = next(
                (x for x in range(j, min(j + GAP_MAX + 1, len(words))) if _is(nxt, words[x])), len(words)
            )
            if j == len(words):
                return 0
            k, j = k + 2, j + 1
        elif j < len(words) and _is(part, words[j]):
            k, j = k + 1, j + 1
        else:
            return 0
    return j - i


def _is(part: str, word: str) -> bool:
    return word.startswith(part[:-1]) if part[-1] == "*" else word == part


def _spellings(entry: str, elided: frozenset[str]) -> set[str]:
    """An entry folded, and once more with its umlauts left off."""
    loose = entry.replace("ä", "a").replace("ö", "o").replace("ü", "u")
    out = set()
    for e in (entry, loose):
        parts = [p if p == GAP or p[0] == "<" else _folded(p, elided) for p in e.split()]
        out.add(" ".join(p for p in parts if p))
    return out


def _folded(word: str, elided: frozenset[str]) -> str:
    return " ".join(words_of(word.rstrip("*"), elided)) + "*" * word.endswith("*")


def matcher(entries: Iterable[str], elided: frozenset[str] = frozenset()) -> Matcher:
    """A matcher of entries as the files write them."""
    single, stems, whole = set(), set(), set()
    phrases: dict[str, set[Phrase]] = {}
    for entry in entries:
        for e in _spellings(entry, elided):
            whole.add(e)
            if " " in e:
                phrase = tuple(e.split())
                phrases.setdefault(phrase[0], set()).add(phrase)
            elif e.endswith("*"):
                stems.add(e[:-1])
            else:
                single.add(e)
    by_first = {w: tuple(sorted(p, key=lambda x: (-len(x), x))) for w, p in phrases.items()}
    by_letter = {s[0]: tuple(sorted(x for x in stems if x[0] == s[0])) for s in stems}
    return Matcher(frozenset(single), by_letter, by_first, frozenset(whole))


@dataclass(frozen=True)
class Lexicon:
    """The words of every language. `classes` what the model sees and rules may look for; `topics` what words are about, for
    the model only; `read`, `short`, `danger`, `subject` what rules look for; `answers`
    whole messages by answer; `places` groups of words for one thing; `names` words that are no names."""

    classes: Mapping[str, Matcher]
    topics: Mapping[str, Matcher]
    read: Mapping[str, Matcher]
    short: Mapping[str, str]
    filler: frozenset[str]
    answers: Mapping[str, str]
    soft: Matcher
    danger: Mapping[str, Matcher]
    subject: Mapping[str, Matcher]
    places: tuple[frozenset[str], ...]
    names: Mapping[str, frozenset[str]]
    elided: frozenset[str]
    numbers: Mapping[str, int]
    times: tuple[tuple[tuple[str, ...], str], ...]
    folders: tuple[str, ...]

    def words(self, text: str) -> list[str]:
        """The words of a text."""
        return list(_words(text, self.elided))


@lru_cache(maxsize=4096)
def _words(text: str, elided: frozenset[str]) -> tuple[str, ...]:
    """The words of a text, remembered: names are looked for in every message."""
    return tuple(words_of(text, elided))


def _folder() -> Any:
    return resources.files("server.conversation").joinpath("languages")


def folders() -> tuple[str, ...]:
    """The languages there are words for."""
    return tuple(sorted(f.name for f in _folder().iterdir() if f.joinpath("lexicon.toml").is_file()))


def _file(language: str, name: str) -> dict[str, Any]:
    return tomllib.loads(_folder().joinpath(language, name).read_text(encoding="utf-8"))


def _pooled(files: Iterable[Mapping[str, Any]], table: str) -> dict[str, list[str]]:
    out: dict[str, list[str]] = {}
    for f in files:
        for key, entries in f.get(table, {}).items():
            out.setdefault(key, []).extend(entries)
    return out


def table(name: str) -> dict[str, list[str]]:
    """Lists of words from a file that each language has, those of all languages together."""
    return _pooled(({"all": _file(n, name)} for n in folders()), "all")


@cache
def lexicon() -> Lexicon:
    """The words of every language, read once."""
    names = folders()
    files = [_file(n, "lexicon.toml") for n in names]
    times = [_file(n, "times.toml") for n in names]
    elided = frozenset(e for f in files for e in f.get("elided", ()))
    matched = ("classes", "topics", "read", "danger", "subject")
    tables = {t: _pooled(files, t) for t in (*matched, "answers", "short", "places", "names")}
    made = {t: {k: matcher(v, elided) for k, v in tables[t].items()} for t in matched}
    answers = {
        e: a for a, v in tables["answers"].items() if a != "soft" for x in v for e in _spellings(x, elided)
    }
    short = {
        e: k for k, v in tables["short"].items() if k != "filler" for x in v for e in _spellings(x, elided)
    }
    folded = {k: frozenset(" ".join(words_of(x, elided)) for x in v) for k, v in tables["names"].items()}
    return Lexicon(
        made["classes"],
        made["topics"],
        made["read"],
        short,
        frozenset(fold(x) for x in tables["short"]["filler"]),
        answers,
        matcher(tables["answers"]["soft"], elided),
        made["danger"],
        made["subject"],
        tuple(frozenset(fold(x) for x in v) for v in tables["places"].values()),
        folded,
        elided,
        _numbers(times),
        _times(times, elided),
        names,
    )


def _numbers(files: Iterable[Mapping[str, Any]]) -> dict[str, int]:
    out: dict[str, int] = {}
    for f in files:
        own = {e: n for w, n in f["numbers"].items() for e in _spellings(w, frozenset())}
        joined = f.get("joined")
        if joined:
            tens = {w: n for w, n in own.items() if n >= 20}
            units = {w: n for w, n in own.items() if 0 < n < 10} | f.get("joined_units", {})
            own |= {joined.format(unit=u, ten=t): n + m for t, m in tens.items() for u, n in units.items()}
        out |= own
    return out


def _times(
    files: Iterable[Mapping[str, Any]], elided: frozenset[str]
) -> tuple[tuple[tuple[str, ...], str], ...]:
    """Phrases of time, longest first, with what each stands for."""
    found: dict[tuple[str, ...], str] = {}
    for f in files:
        for sign, entries in f["words"].items():
            for x in entries:
                for e in _spellings(x, elided):
                    found.setdefault(tuple(e.split()), sign)
        for word in f["numbers"]:
            if " " in word:
                found.setdefault(tuple(word.split()), str(f["numbers"][word]))
    return tuple(sorted(found.items(), key=lambda x: (-len(x[0]), x[0])))
