"""Reading tables of a parsed TOML file with every mistake noted, none stopping the rest.

A `Section` is one table: ask it for each key by type; what was never asked for is reported by `done`, with
the nearest known key. A value that is missing or wrong gives the default, and the report remembers it.
"""

from __future__ import annotations

from collections.abc import Callable, Iterable, Mapping
from datetime import date, datetime
from enum import StrEnum
from typing import Any, TypeVar

from rapidfuzz import fuzz, process

from server.event.lines import Path
from server.event.problem import Problem, Severity
from server.event.times import TimeError
from server.sentences import Worded, both, say

T = TypeVar("T")
E = TypeVar("E", bound=StrEnum)

ITEMS_MAX = 500
"""Of what a race has (points, places, drives); a check may look at each pair."""


class Problems:
    """Collects problems; knows the file's name and the line of every path."""

    def __init__(self, file: str, lines: Mapping[Path, int]) -> None:
        self.file = file
        self.lines = lines
        self.noted: dict[Problem, None] = {}
        self.names: dict[Path, str] = {}

    def error(self, path: Path, what: Worded, remedy: Worded) -> None:
        """Note a mistake that stands in the way."""
        self._note(Severity.ERROR, path, what, remedy)

    def warn(self, path: Path, what: Worded, remedy: Worded) -> None:
        """Note something that may be meant, but should be known."""
        self._note(Severity.WARNING, path, what, remedy)

    def _note(self, severity: Severity, path: Path, what: Worded, remedy: Worded) -> None:
        self.noted[Problem(severity, what, self.file, self.line(path), self.field(path), remedy)] = None

    @property
    def problems(self) -> list[Problem]:
        """Each once, in the order in which they were found."""
        return list(self.noted)

    def line(self, path: Path) -> int | None:
        """The line of a path, or of the nearest thing around it that stands in the file."""
        for n in range(len(path), 0, -1):
            if path[:n] in self.lines:
                return self.lines[path[:n]]
        return None

    def field(self, path: Path) -> str:
        """`points.mill.km`: items by their id, or by their number from 1."""
        words = []
        for n, part in enumerate(path):
            words.append(self.names.get(path[: n + 1]) or (str(part + 1) if isinstance(part, int) else part))
        return ".".join(words)

    @property
    def failed(self) -> bool:
        """Whether any error was noted."""
        return any(p.severity is Severity.ERROR for p in self.noted)


def nearest(word: str, known: Iterable[str], least: float = 60.0) -> str | None:
    """The known word nearest to `word`, or None if none is near."""
    found = process.extractOne(
        word, sorted(known), scorer=fuzz.ratio, score_cutoff=least, processor=str.lower
    )
    return found[0] if found is not None else None


def did_you_mean(word: str, known: Iterable[str], else_say: Worded) -> Worded:
    """'Did you mean ...?' or the other remedy."""
    near = nearest(word, known)
    return say("do-did-mean", near=near) if near is not None else else_say


class Section:
    """One table of the file."""

    def __init__(self, report: Problems, values: dict[str, Any], path: Path) -> None:
        self.report, self.values, self.path = report, values, path
        self.asked: set[str] = set()

    def at(self, key: str) -> Path:
        """The path of a key."""
        return (*self.path, key)

    def has(self, key: str) -> bool:
        """Whether the key is given."""
        self.asked.add(key)
        return key in self.values

    def raw(self, key: str) -> Any:
        """The value as parsed, None if not given."""
        self.asked.add(key)
        return self.values.get(key)

    def error(self, key: str, what: Worded, remedy: Worded) -> None:
        """Note a mistake at a key (or, if it is not given, at this table)."""
        self.report.error(self.at(key), what, remedy)

    def missing(self, key: str, remedy: Worded) -> None:
        """Note that a needed key is not given."""
        self.error(key, say("wrong-missing", key=key), remedy)

    def both(self, one: str, other: str) -> None:
        """Note it where only one of two keys is given."""
        if self.has(one) != self.has(other):
            given = one if self.has(one) else other
            self.error(given, say("wrong-go-together", one=one, other=other), say("do-give-both-none"))

    def wrong(self, key: str) -> bool:
        """Whether a mistake at that key is noted."""
        field = self.report.field(self.at(key))
        return any(p.field == field and p.severity is Severity.ERROR for p in self.report.noted)

    def timed(self, key: str, read: Callable[[], T]) -> T | None:
        """What a reader of times makes of a key, its error noted."""
        try:
            return read()
        except TimeError as e:
            self.error(key, e.what, e.remedy)
        except OverflowError:
            self.error(key, say("wrong-time-out-range"), say("do-check-year"))
        return None

    def table(self, key: str) -> Section | None:
        """A table within this one."""
        value = self.raw(key)
        if value is None:
            return None
        if not isinstance(value, dict):
            head = ".".join((*(p for p in self.path if isinstance(p, str)), key))
            remedy = say("do-write-own-line", key=key)
            if self._listed:
                remedy = say("do-write-own-line-below", key=key, head=head, listed=self._listed)
            self.error(key, say("wrong-no-table", value=shown_short(value)), remedy)
            return None
        return Section(self.report, value, self.at(key))

    def tables(self, key: str, most: int | None = ITEMS_MAX) -> list[Section]:
        """A list of tables within this one; not more than `most`. None for what grows with the field: the file's size bounds
        that, and every check of it looks at each once."""
        value = self.raw(key)
        if value is None:
            return []
        value = [value] if isinstance(value, dict) else value
        if not isinstance(value, list) or not all(isinstance(v, dict) for v in value):
            head = ".".join((*(p for p in self.path if isinstance(p, str)), key))
            remedy = say("do-begin-each-own-line", head=head)
            if self._listed:
                remedy = say("do-begin-each-own-line-below", head=head, listed=self._listed)
            self.error(key, say("wrong-no-list-tables", key=key), remedy)
            return []
        if most is not None and len(value) > most:
            self.error(key, say("wrong-too-many", count=len(value), key=key), say("do-keep-them", most=most))
            return []
        one = not isinstance(self.values[key], list)
        return [
            Section(self.report, v, self.at(key) if one else (*self.at(key), i)) for i, v in enumerate(value)
        ]

    @property
    def _listed(self) -> str:
        """The list of tables that this one is an item of, or stands in ('runners'); '' for none: TOML then wants its whole
        name, since a heading of its own begins a table of the file's."""
        last = max((i for i, p in enumerate(self.path) if isinstance(p, int)), default=-1)
        return ".".join(p for p in self.path[: max(last, 0)] if isinstance(p, str))

    def name_me(self, name: str) -> None:
        """Let this table be called by its id in messages."""
        if name:
            self.report.names[self.path] = name

    def done(self) -> None:
        """Report what nobody asked for."""
        table = ".".join(p for p in self.path if isinstance(p, str))
        look = say("do-stilepost-keys-says-what-each", table=table) if table else None
        for key in self.values:
            if key not in self.asked:
                known = sorted(self.asked)
                remedy = did_you_mean(key, known, say("do-known-here", known=", ".join(known)))
                self.error(key, say("wrong-key-not-known", key=key), both(remedy, look))


def one_of(words: Iterable[str]) -> str:
    """The form of a key that holds one of some words."""
    return f"one of: {', '.join(words)}"


def shown_short(value: object) -> str:
    """A value as it might stand in the file, short."""
    if isinstance(value, bool):
        return str(value).lower()
    if isinstance(value, datetime | date):
        return value.isoformat()
    if isinstance(value, dict):
        return "a table"
    if isinstance(value, list) and any(isinstance(x, dict) for x in value):
        return "[{ ... }]"
    text = repr(value)
    return text if len(text) <= 40 else text[:37] + "..."
