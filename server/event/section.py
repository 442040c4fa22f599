"""Reading tables of a parsed TOML file with every mistake noted, none stopping the rest.

A `Section` is one table: ask it for each key by type; what was never asked for is reported by `done`, with
the nearest known key. A value that is missing or wrong gives the default, and the report remembers it.
"""

from __future__ import annotations

import math
import unicodedata
from collections.abc import Callable, Iterable, Mapping
from dataclasses import dataclass
from datetime import date, datetime, timedelta
from enum import StrEnum
from typing import Any, TypeVar

from rapidfuzz import fuzz, process

from server.event.lines import Path
from server.event.problem import Problem, Severity
from server.event.times import TimeError, read_span

T = TypeVar("T")
E = TypeVar("E", bound=StrEnum)

TEXT_MAX, WORDS_MAX, ITEMS_MAX = 120, 2000, 500
FIELD_MAX = 12_000
"""Runners, and people: a whole field."""


def table_of(path: Path) -> str:
    """The name of the table a path leads to, as people look it up: 'points.crew'; '' for the file itself."""
    words = [p for p in path if isinstance(p, str)]
    return ".".join("cut_off" if w == "cut_offs" else w for w in words)


@dataclass(frozen=True, slots=True)
class Ask:
    """What the reader asked for at a key: the form it must have, and what holds where it is not given ('' = nothing)."""

    form: str
    default: str = ""


class Report:
    """Collects problems; knows the file's name and the line of every path.

    `asks` is what was asked for, by table and key: what `stilepost keys` says of each.
    """

    def __init__(self, file: str, lines: Mapping[Path, int]) -> None:
        self.file = file
        self.lines = lines
        self.problems: list[Problem] = []
        self.names: dict[Path, str] = {}
        self.asks: dict[tuple[str, str], Ask] = {}

    def error(self, path: Path, what: str, remedy: str) -> None:
        """Note a mistake that stands in the way."""
        self._note(Severity.ERROR, path, what, remedy)

    def warn(self, path: Path, what: str, remedy: str) -> None:
        """Note something that may be meant, but should be known."""
        self._note(Severity.WARNING, path, what, remedy)

    def _note(self, severity: Severity, path: Path, what: str, remedy: str) -> None:
        problem = Problem(severity, what, self.file, self.line(path), self.field(path), remedy)
        if problem not in self.problems:
            self.problems.append(problem)

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
        return any(p.severity is Severity.ERROR for p in self.problems)


def nearest(word: str, known: Iterable[str], least: float = 60.0) -> str | None:
    """The known word nearest to `word`, or None if none is near."""
    found = process.extractOne(
        word, sorted(known), scorer=fuzz.ratio, score_cutoff=least, processor=str.lower
    )
    return found[0] if found is not None else None


def did_you_mean(word: str, known: Iterable[str], else_say: str) -> str:
    """'Did you mean ...?' or the other remedy."""
    near = nearest(word, known)
    return f"Did you mean '{near}'?" if near is not None else else_say


class Section:
    """One table of the file."""

    def __init__(self, report: Report, values: dict[str, Any], path: Path) -> None:
        self.report, self.values, self.path = report, values, path
        self.asked: set[str] = set()

    def at(self, key: str) -> Path:
        """The path of a key."""
        return (*self.path, key)

    def expect(self, key: str, form: str, default: object = None) -> None:
        """Say which form a key has: the first word said of it counts."""
        shown = "" if default in (None, "", ()) else _default(default)
        self.report.asks.setdefault((table_of(self.path), key), Ask(form, shown))

    def has(self, key: str) -> bool:
        """Whether the key is given."""
        self.asked.add(key)
        return key in self.values

    def raw(self, key: str) -> Any:
        """The value as parsed, None if not given."""
        self.asked.add(key)
        return self.values.get(key)

    def error(self, key: str, what: str, remedy: str) -> None:
        """Note a mistake at a key (or, if it is not given, at this table)."""
        self.report.error(self.at(key), what, remedy)

    def missing(self, key: str, remedy: str) -> None:
        """Note that a needed key is not given."""
        self.error(key, f"'{key}' is missing", remedy)

    def text(self, key: str, default: str = "", *, need: str = "", most: int = TEXT_MAX) -> str:
        """A text; `need` is the remedy when it is missing or empty."""
        self.expect(key, f"text of at most {most} characters", default)
        value = self.raw(key)
        if value is None or value == "":
            if need:
                self.missing(key, need)
            return default
        if not isinstance(value, str):
            self.error(key, f"{_shown(value)} is no text", f'Put it in quotes: {key} = "{value}".')
            return default
        return default if self._bad_text(key, value, most) else value

    def _bad_text(self, key: str, value: str, most: int) -> bool:
        odd = next((c for c in value if unicodedata.category(c) in ("Cc", "Cs") and c not in "\n\t"), None)
        if odd is not None:
            self.error(key, f"the text holds the control character U+{ord(odd):04X}", "Type the text anew.")
        elif len(value) > most:
            self.error(key, f"the text has {len(value)} characters", f"Keep it to {most}.")
        elif most <= TEXT_MAX and "\n" in value:
            self.error(key, "the text has more than one line", "Write it on one line.")
        else:
            return False
        return True

    def number(
        self, key: str, low: float, high: float, default: float | None = None, *, need: str = ""
    ) -> float | None:
        """A number from `low` to `high`."""
        self.expect(key, f"number from {low:g} to {high:g}", default)
        value = self.raw(key)
        if value is None:
            if need:
                self.missing(key, need)
            return default
        if isinstance(value, bool) or not isinstance(value, int | float):
            hint = (
                " (a point, not a comma, before decimals)" if isinstance(value, str) and "," in value else ""
            )
            self.error(key, f"{_shown(value)} is no number", f"Write a number without quotes{hint}.")
            return default
        if not math.isfinite(value) or not low <= value <= high:
            self.error(key, f"{value} is outside {low:g} to {high:g}", f"Give {key} within that range.")
            return default
        return float(value)

    def whole(self, key: str, low: int, high: int, default: int | None = None) -> int | None:
        """A whole number from `low` to `high`."""
        self.expect(key, f"whole number from {low} to {high}", default)
        value = self.number(key, low, high)
        if value is None:
            return default
        if value != int(value):
            self.error(key, f"{value} is no whole number", "Write it without decimals.")
            return default
        return int(value)

    def yes(self, key: str) -> bool:
        """true or false; false if not given."""
        self.expect(key, "true or false", "false")
        value = self.raw(key)
        if value is None:
            return False
        if not isinstance(value, bool):
            self.error(
                key, f"{_shown(value)} is neither true nor false", "Write true or false, without quotes."
            )
            return False
        return value

    def minutes(self, key: str, default: timedelta, most: float = 24 * 60) -> timedelta:
        """A length in minutes."""
        self.expect(key, f"minutes, from 0 to {most:g}", f"{default / timedelta(minutes=1):g}")
        value = self.number(key, 0, most)
        return default if value is None else timedelta(minutes=value)

    def span(self, key: str, least: timedelta, most: timedelta) -> timedelta | None:
        """A length 'h:mm' within bounds."""
        hours = f"{least / timedelta(hours=1):.3g} to {most / timedelta(hours=1):g} hours"
        self.expect(key, f'hours and minutes in quotes, as in "29:00"; {hours}')
        value = self.text(key)
        length = self.timed(key, lambda: read_span(value)) if value else None
        if length is not None and not least <= length <= most:
            self.error(key, f"{value} is outside {hours}", 'Write hours and minutes, as in "29:00".')
            return None
        return length

    def timed(self, key: str, read: Callable[[], T]) -> T | None:
        """What a reader of times makes of a key, its error noted."""
        try:
            return read()
        except TimeError as e:
            self.error(key, e.what, e.remedy)
        except OverflowError:
            self.error(key, "the time is out of range", "Check the year.")
        return None

    def choice(self, key: str, kinds: type[E], default: E | None = None, *, need: str = "") -> E | None:
        """One of a fixed set of words."""
        self.expect(key, one_of(k.value for k in kinds), None if default is None else default.value)
        value = self.text(key, need=need)
        if not value:
            return default
        return self._member(self.at(key), value, kinds) or default

    def choices(self, key: str, kinds: type[E]) -> tuple[E, ...]:
        """A list of words of a fixed set."""
        self.expect(key, f"list of words; {one_of(k.value for k in kinds)}")
        found = []
        for i, word in enumerate(self.texts(key)):
            member = self._member((*self.at(key), i), word, kinds)
            if member is not None:
                found.append(member)
        return tuple(found)

    def _member(self, path: Path, word: str, kinds: type[E]) -> E | None:
        known = [k.value for k in kinds]
        if word in known:
            return kinds(word)
        remedy = did_you_mean(word, known, f"Write one of: {', '.join(known)}.")
        self.report.error(path, f"'{word}' is not known here", remedy)
        return None

    def texts(self, key: str, most: int = TEXT_MAX) -> tuple[str, ...]:
        """A list of texts."""
        self.expect(key, "list of texts")
        value = self.raw(key)
        if value is None:
            return ()
        if not isinstance(value, list) or not all(isinstance(v, str) for v in value):
            self.error(key, f"{_shown(value)} is no list of texts", f'Write {key} = ["...", "..."].')
            return ()
        return tuple(v for v in value if v and not self._bad_text(key, v, most))

    def table(self, key: str) -> Section | None:
        """A table within this one."""
        self.expect(key, "table")
        value = self.raw(key)
        if value is None:
            return None
        if not isinstance(value, dict):
            head = ".".join((*(p for p in self.path if isinstance(p, str)), key))
            remedy = f"Write [{key}] on its own line, or {key} = {{ ... }}."
            if self._listed:
                remedy = f"Write {key} = {{ ... }}, or [{head}] on its own line below the [[{self._listed}]] it is of."
            self.error(key, f"{_shown(value)} is no table", remedy)
            return None
        return Section(self.report, value, self.at(key))

    def tables(self, key: str, most: int = ITEMS_MAX) -> list[Section]:
        """A list of tables within this one; not more than `most`."""
        self.expect(key, "list of tables")
        value = self.raw(key)
        if value is None:
            return []
        value = [value] if isinstance(value, dict) else value
        if not isinstance(value, list) or not all(isinstance(v, dict) for v in value):
            head = ".".join((*(p for p in self.path if isinstance(p, str)), key))
            remedy = f"Begin each one with [[{head}]] on its own line."
            if self._listed:
                remedy = (
                    f"Begin each one with [[{head}]] on its own line below the [[{self._listed}]] it is of."
                )
            self.error(key, f"'{key}' is no list of tables", remedy)
            return []
        if len(value) > most:
            self.error(key, f"{len(value)} {key} are too many", f"Keep them to {most}.")
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
        table = table_of(self.path)
        look = f"`stilepost keys {table}` says what each means." if table else ""
        for key in self.values:
            if key not in self.asked:
                known = sorted(self.asked)
                remedy = did_you_mean(key, known, f"Known here: {', '.join(known)}.")
                self.error(key, f"the key '{key}' is not known", f"{remedy} {look}".rstrip())


def one_of(words: Iterable[str]) -> str:
    """The form of a key that holds one of some words."""
    return f"one of: {', '.join(words)}"


def _default(value: object) -> str:
    return f"{value:g}" if isinstance(value, float) else str(value)


def _shown(value: object) -> str:
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
