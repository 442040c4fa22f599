"""The sentences themselves: Fluent files beside this module, one a language, English behind the others."""

from __future__ import annotations

from functools import cache
from importlib import resources

from fluent.runtime import FluentBundle, FluentResource
from fluent.syntax import FluentParser
from fluent.syntax.ast import Junk, Message

FALLBACK = "en"
GAP = "…"


class WordingError(Exception):
    """A sentence is missing, broken, or was given the wrong values: a fault of ours, never of a person."""


@cache
def languages() -> tuple[str, ...]:
    """The languages there are sentences for."""
    here = resources.files(__package__)
    return tuple(sorted(f.name.removesuffix(".ftl") for f in here.iterdir() if f.name.endswith(".ftl")))


def language_of(wanted: str) -> str:
    """The language to use for one that is wanted ('de-AT' reads 'de'); English where there is none."""
    short = wanted.replace("_", "-").split("-")[0].lower()
    return short if short in languages() else FALLBACK


@cache
def source(language: str) -> str:
    """The text of a language's file."""
    return resources.files(__package__).joinpath(f"{language}.ftl").read_text(encoding="utf-8")


@cache
def keys(language: str) -> frozenset[str]:
    """The names of all sentences of a language. A line that does not parse is an error, with its place."""
    found = set()
    for entry in FluentParser().parse(source(language)).body:
        if isinstance(entry, Junk):
            line = source(language)[: entry.span.start if entry.span else 0].count("\n") + 1
            shown = (entry.content or "").strip()[:80]
            raise WordingError(f"{language}.ftl, line {line}: not a sentence: {shown!r}")
        if isinstance(entry, Message):
            found.add(entry.id.name)
    return frozenset(found)


@cache
def _bundle(language: str) -> FluentBundle:
    keys(language)
    # Marks around inserted values help mixed scripts but show as boxes on some phones and in SMS.
    bundle = FluentBundle([language], use_isolating=False)
    bundle.add_resource(FluentResource(source(language)))
    return bundle


def sentence(language: str, key: str, **values: str | int | float) -> str:
    """The sentence `key` with its values put in; from English where the language has not got it.

    A value that is missing never holds a message back: English is tried, then the text goes out with '…' in
    the gap. The tests look for such gaps; at night an alarm with a gap beats no alarm.
    """
    chosen = language_of(language)
    for candidate in dict.fromkeys((chosen, FALLBACK)):
        if key not in keys(candidate):
            continue
        pattern = _bundle(candidate).get_message(key).value
        if pattern is None:
            continue
        text, errors = _bundle(candidate).format_pattern(pattern, dict(values))
        if not errors:
            return str(text)
        if candidate == FALLBACK:
            gaps = {str(e).rpartition(": ")[2]: GAP for e in errors}
            return str(_bundle(candidate).format_pattern(pattern, {**gaps, **values})[0])
    raise WordingError(f"{FALLBACK}.ftl has no sentence {key!r}: add it")


def locale_of(language: str) -> str:
    """The locale for dates, numbers and lists in that language; English as written in Britain."""
    chosen = language_of(language)
    return "en_GB" if chosen == "en" else chosen


def has(key: str) -> bool:
    """Whether English has this sentence."""
    return key in keys(FALLBACK)
