"""Every text that entries and notices store is declared for what it is, and deletion goes by that."""

from __future__ import annotations

import typing
from collections.abc import Iterator
from dataclasses import dataclass, fields, is_dataclass
from enum import Enum

from server.facts.entry import Entry
from server.journal.blanking import blank
from server.journal.stored import HELD, Holds
from server.watch.notice import Notice


def _holds_text(of: object) -> bool:
    if isinstance(of, type):
        return issubclass(of, str) and not issubclass(of, Enum)
    return any(_holds_text(x) for x in typing.get_args(of))


def stored_texts(of: object, seen: set[type]) -> Iterator[tuple[str, str]]:
    """(class, field) of all text that a stored value holds, however deep."""
    for inner in typing.get_args(of):
        yield from stored_texts(inner, seen)
    if not isinstance(of, type) or not is_dataclass(of) or of in seen:
        return
    seen.add(of)
    hints = typing.get_type_hints(of)
    for field in fields(of):
        if _holds_text(hints[field.name]):
            yield of.__name__, field.name
        yield from stored_texts(hints[field.name], seen)


def test_each_stored_text_is_declared() -> None:
    """A new field of text: say in server/journal/stored.py what it holds."""
    seen: set[type] = set()
    found = [*stored_texts(Entry, seen), *stored_texts(Notice, seen)]
    assert len(seen) > 40
    assert [(c, f) for c, f in found if f not in HELD] == []


def test_what_is_not_declared_is_found() -> None:
    """The walk sees a field of text two values down."""

    @dataclass(frozen=True, slots=True)
    class _Inner:
        remark: str

    @dataclass(frozen=True, slots=True)
    class _Outer:
        inner: tuple[_Inner, ...]

    # classes of a function: their hints are found by its names
    globals().update(_Inner=_Inner)
    found = list(stored_texts(_Outer, set()))
    assert found == [("_Inner", "remark")]


def test_words_and_whereabouts_are_taken_out_wherever_they_stand() -> None:
    """Each declared name of those two kinds, in a value inside a value."""
    names = [n for n, h in HELD.items() if h in (Holds.WORDS, Holds.WHERE)]
    assert {"words", "doubt", "fix"} <= set(names)

    @dataclass(frozen=True, slots=True)
    class _Said:
        words: str
        doubt: str
        fix: object
        by: str

    @dataclass(frozen=True, slots=True)
    class _Told:
        said: tuple[_Said, ...]

    told = blank(_Told((_Said("she looks grey", "not named", (1.0, 2.0), "ana"),)))
    assert told == _Told((_Said("", "", None, "ana"),))
