"""The sentences themselves: Fluent files, a folder a language (server/conversation/languages), one behind the others; and
`Worded`, a sentence by its code.

Code lists the folders and names no language: one that has a `say.ftl` is one that people can read. Which one stands behind
the others, for a sentence that another has not got and for a reader of none of them, is said in `languages.toml`.
"""

from __future__ import annotations

import tomllib
from collections.abc import Mapping
from dataclasses import dataclass
from functools import cache
from importlib import resources
from importlib.resources.abc import Traversable

from fluent.runtime import FluentBundle
from fluent.syntax import FluentParser
from fluent.syntax.ast import Junk, Message, Resource

GAP = "…"
LONGEST = 2000
"""Characters of a value that goes into a sentence by the library; a longer one is put in afterwards."""
PAGES = "pages.ftl"
"""The pages' own short words, whose names are theirs alone; every other file is told in messages and on paper."""


class WordingError(Exception):
    """A sentence is missing, broken, or was given the wrong values: a fault of ours, never of a person."""


def folder(language: str = "") -> Traversable:
    """The folder of a language; that of all languages for ''."""
    every = resources.files("server") / "conversation" / "languages"
    return every / language if language else every


@cache
def languages() -> tuple[str, ...]:
    """The languages there are sentences for."""
    return tuple(sorted(f.name for f in folder().iterdir() if (f / "say.ftl").is_file()))


@cache
def fallback() -> str:
    """The language behind all others."""
    return str(tomllib.loads((folder() / "languages.toml").read_text(encoding="utf-8"))["fallback"])


def language_of(wanted: str) -> str:
    """The language to use for one that is wanted ('de-AT' reads 'de'); the fallback where there is none, or none is said."""
    short = wanted.replace("_", "-").split("-")[0].lower()
    return short if short in languages() else fallback()


@cache
def sources(language: str, *, pages: bool = False) -> Mapping[str, str]:
    """The texts of a language's files by their names: those of the pages, or all others."""
    found = sorted((f for f in folder(language).iterdir() if f.name.endswith(".ftl")), key=lambda f: f.name)
    return {f.name: f.read_text(encoding="utf-8") for f in found if (f.name == PAGES) is pages}


@cache
def _parsed(language: str, name: str, *, pages: bool) -> Resource:
    """A file's sentences, parsed once for their names and their patterns: it is what a start takes longest for."""
    return FluentParser().parse(sources(language, pages=pages)[name])


@cache
def keys(language: str, *, pages: bool = False) -> frozenset[str]:
    """The names of all sentences of a language. A line that does not parse, or a name that comes twice, is an error, with
    its place."""
    found: set[str] = set()
    for name, text in sources(language, pages=pages).items():
        for entry in _parsed(language, name, pages=pages).body:
            if isinstance(entry, Junk):
                line = text[: entry.span.start if entry.span else 0].count("\n") + 1
                shown = (entry.content or "").strip()[:80]
                raise WordingError(f"{language}/{name}, line {line}: not a sentence: {shown!r}")
            if isinstance(entry, Message):
                if entry.id.name in found:
                    raise WordingError(f"{language}/{name}: {entry.id.name!r} is there already")
                found.add(entry.id.name)
    return frozenset(found)


@cache
def _bundle(language: str, *, pages: bool) -> FluentBundle:
    keys(language, pages=pages)
    # Marks around inserted values help mixed scripts but show as boxes on some phones and in SMS.
    bundle = FluentBundle([language], use_isolating=False)
    for name in sources(language, pages=pages):
        bundle.add_resource(_parsed(language, name, pages=pages))
    return bundle


def sentence(language: str, key: str, /, **values: str | int | float) -> str:
    """The sentence `key` with its values put in; from the fallback where the language has not got it.

    A value that is missing never holds a message back: the fallback is tried, then the text goes out with '…' in
    the gap. The tests look for such gaps; at night an alarm with a gap beats no alarm.
    """
    return _said(language, key, values, pages=False)


def label(language: str, key: str, /, **values: str | int | float) -> str:
    """The same of the pages' own words."""
    return _said(language, key, values, pages=True)


def _said(language: str, key: str, values: Mapping[str, str | int | float], *, pages: bool) -> str:
    long = {k: v for k, v in values.items() if isinstance(v, str) and len(v) > LONGEST}
    if long:
        # The library writes '{???}' for a value past 2,500 characters: all mistakes of a file are one.
        marks = {k: f"\ue000{n}\ue001" for n, k in enumerate(long)}
        whole = _said(language, key, {**values, **marks}, pages=pages)
        for k, mark in marks.items():
            whole = whole.replace(mark, long[k])
        return whole
    behind = fallback()
    for candidate in dict.fromkeys((language_of(language), behind)):
        if key not in keys(candidate, pages=pages):
            continue
        bundle = _bundle(candidate, pages=pages)
        pattern = bundle.get_message(key).value
        if pattern is None:
            continue
        text, errors = bundle.format_pattern(pattern, dict(values))
        if not errors:
            return str(text)
        if candidate == behind:
            gaps = {str(e).rpartition(": ")[2]: GAP for e in errors}
            return str(bundle.format_pattern(pattern, {**gaps, **values})[0])
    raise WordingError(f"languages/{behind} has no sentence {key!r}: add it")


def locale_of(language: str) -> str:
    """The locale for dates, numbers and lists in that language."""
    return sentence(language, "locale")


def has(key: str) -> bool:
    """Whether there is such a sentence."""
    return key in keys(fallback())


@dataclass(frozen=True, slots=True)
class Worded:
    """The code of a sentence in the languages' .ftl files, with its values: texts as they stand in a file, or sentences of
    their own. As a text it is in the fallback language."""

    code: str
    values: tuple[tuple[str, str | Worded], ...] = ()

    def in_language(self, language: str) -> str:
        """The sentence in a language, what stands in it too."""
        told = {k: v.in_language(language) if isinstance(v, Worded) else v for k, v in self.values}
        return sentence(language, self.code, **told)

    def __str__(self) -> str:
        return self.in_language(fallback())


def say(code: str, **values: object) -> Worded:
    """A sentence with its values; whatever is no sentence is put in as its text."""
    return Worded(code, tuple((k, v if isinstance(v, Worded) else str(v)) for k, v in values.items()))


def as_said(words: str) -> Worded:
    """Words that are in the reader's language already."""
    return say("as-said", words=words)


def both(first: Worded, second: Worded | None) -> Worded:
    """Two sentences after each other; the first alone where there is no second."""
    return first if second is None else say("both-said", first=first, second=second)
