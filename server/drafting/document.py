"""An event file as blocks of text, one a table, so that one is changed, moved or taken out and every comment stays.

A library that keeps comments counts the one above a heading to the table before it; here it goes with its own table.
"""

from __future__ import annotations

import re
import tomllib
from collections.abc import Callable, Mapping, MutableMapping, Sequence
from dataclasses import dataclass, replace
from itertools import pairwise
from typing import Any

import tomlkit
from tomlkit.items import AoT, Array

from server.event.lines import masked, with_seconds
from server.sentences import Worded, say

__all__ = ["Document", "UnusualError"]

Values = Mapping[str, Any]
_HEADING = re.compile(r"\s*(\[\[?)\s*[\"']?([A-Za-z0-9_-]+)")
ORDER = (
    "event", "race_control", "rescue", "rules", "alarm", "driving", "waves", "courses", "points", "stretches", "weather",
    "runners", "people", "places", "cars", "drives", "meetings", "shares", "if_then",
)  # fmt: skip
"""Where a table goes that the file has not got yet: behind those before it here."""


class UnusualError(ValueError):
    """The text is right TOML in a form that is not kept block by block: tables written inside one line, or it is no TOML.
    `what` says which."""

    def __init__(self, what: Worded) -> None:
        self.what = what
        super().__init__(what)


@dataclass(frozen=True, slots=True)
class _Block:
    """`lead`: the comment right above; `body`: heading to last value; `gap`: blank lines and comments of nobody."""

    table: str
    lead: str
    body: str
    gap: str


class Document:
    """The text of an event file, changed in place. Tables are told by name and number, in the order of the file."""

    def __init__(self, text: str) -> None:
        """UnusualError where a table does not stand under a heading of its own."""
        text = text.removeprefix("\ufeff")
        _loaded(text)
        self._blocks = _blocks(text)
        if self.text() != text or any(_deep(v) for v in _loaded(self._blocks[0].body).values()):
            raise UnusualError(say("wrong-table-stands-before-first-heading"))

    def text(self) -> str:
        """The whole file."""
        return "".join(b.lead + b.body + b.gap for b in self._blocks)

    def tables(self, name: str) -> list[dict[str, Any]]:
        """The values of every table of that name."""
        return [_values(b) for b in self._blocks if b.table == name]

    def table(self, name: str) -> dict[str, Any]:
        """The values of the first table of that name; {} where there is none."""
        return next(iter(self.tables(name)), {})

    def change(self, name: str, number: int, values: Values) -> None:
        """Set keys of a table; None takes a key out. Tables inside are changed key by key; a list becomes
        the one given, its items written over those that stand there."""
        at = self._at(name)[number]
        self._blocks[at] = _changed(self._blocks[at], values)

    def put(self, name: str, values: Values) -> None:
        """Set keys of a table that comes once, made where there is none and something is to be said."""
        if self._at(name):
            self.change(name, 0, values)
        elif _without_none(values):
            self._insert(name, f"[{name}]\n", values)

    def add(self, name: str, values: Values) -> None:
        """One more table of a list, behind those there are."""
        self.add_all(name, [values])

    def add_all(self, name: str, many: Sequence[Values]) -> None:
        """More tables of a list, in that order."""
        if many:
            self._insert(name, f"[[{name}]]\n", *many)

    def drop(self, name: str, number: int) -> None:
        """Take a table out, with the comment right above it; comments that stand apart stay."""
        at = self._at(name)[number]
        gone = self._blocks.pop(at)
        if "#" in gone.gap:
            before = self._blocks[at - 1]
            self._blocks[at - 1] = replace(before, gap=before.gap.rstrip("\n") + "\n" + gone.gap)

    def sort(self, name: str, key: Callable[[Values], Any]) -> None:
        """Put the tables of a list in order; each takes the comment right above it along."""
        places = self._at(name)
        ordered = sorted((self._blocks[p] for p in places), key=lambda b: key(_values(b)))
        gaps = [self._blocks[p].gap for p in places]
        for place, block, gap in zip(places, ordered, gaps, strict=True):
            # Blank lines stay where they are, a comment that stands apart goes with the table above it.
            self._blocks[place] = block if "#" in block.gap or "#" in gap else replace(block, gap=gap)
            if place < len(self._blocks) - 1:
                self._end_line(place)

    def only(self, names: frozenset[str]) -> str:
        """The text of these tables alone."""
        return "".join(b.lead + b.body + b.gap for b in self._blocks if b.table in names | {""})

    def _at(self, name: str) -> list[int]:
        return [n for n, b in enumerate(self._blocks) if b.table == name]

    def _insert(self, name: str, heading: str, *many: Values) -> None:
        """Behind the last of its kind, else behind the last that comes before it in `ORDER`, else at the end."""
        before = ORDER[: ORDER.index(name) + 1] if name in ORDER else ORDER
        there = [n for n, b in enumerate(self._blocks) if b.table in (*before, "")]
        at = max((n for n in there if self._blocks[n].table == name), default=max(there))
        self._end_line(at)
        empty = _Block(name, "", heading, "\n")
        self._blocks[at + 1 : at + 1] = [_changed(empty, values) for values in many]

    def _end_line(self, at: int) -> None:
        """A heading stands on a line of its own, a blank one before it."""
        b = self._blocks[at]
        if b.body or b.lead:
            body = b.body if b.body.endswith("\n") else b.body + "\n"
            self._blocks[at] = replace(b, body=body, gap=b.gap if b.gap.endswith("\n") else b.gap + "\n")


def _deep(value: object) -> bool:
    return isinstance(value, dict) or (isinstance(value, list) and any(isinstance(v, dict) for v in value))


def _loaded(text: str) -> dict[str, Any]:
    try:
        return tomllib.loads(with_seconds(text))
    except (tomllib.TOMLDecodeError, RecursionError, ValueError) as error:
        raise UnusualError(say("wrong-no-toml", error=error)) from error


def _values(block: _Block) -> dict[str, Any]:
    found: Any = _loaded(block.body).get(block.table, {})
    return dict(found[0] if isinstance(found, list) else found)


def _blocks(text: str) -> list[_Block]:
    lines = text.splitlines(keepends=True)
    shapes = masked(text).splitlines(keepends=True)
    headings: list[tuple[int, str]] = []
    depth = 0
    for n, shape in enumerate(shapes):
        bare = shape.strip()
        if depth == 0 and bare.startswith("["):
            found = _HEADING.match(lines[n])
            name = found[2] if found else ""
            if not headings or name != headings[-1][1] or not _inside(lines[n]):
                headings.append((n, name))
            continue
        depth += sum(bare.count(c) for c in "[{") - sum(bare.count(c) for c in "]}")
    edges = [(0, ""), *headings, (len(lines), "")]
    return _with_leads([_block(lines[a:b], shapes[a:b], name) for (a, name), (b, _) in pairwise(edges)])


def _inside(line: str) -> bool:
    """Whether a heading is that of a table inside the one before: [points.crew]."""
    return "." in line.split("#")[0]


def _block(lines: list[str], shapes: list[str], name: str) -> _Block:
    """Own lines, and what trails them: comments of nobody begin at the first blank line after the last value."""
    last = max((n for n, s in enumerate(shapes) if s.strip()), default=-1) + 1
    while 0 < last < len(lines) and lines[last].strip():
        last += 1
    if last == len(lines) and name and lines[last - 1].lstrip().startswith("#"):
        # Comments up to the next heading without a blank line: they speak of what follows.
        while lines[last - 1].lstrip().startswith("#"):
            last -= 1
    return _Block(name, "", "".join(lines[:last]), "".join(lines[last:]))


def _with_leads(blocks: list[_Block]) -> list[_Block]:
    """Give each block the comment lines that stand right above its heading."""
    out = list(blocks)
    for n in range(1, len(out)):
        gap = out[n - 1].gap.splitlines(keepends=True)
        first = len(gap)
        while first > 0 and gap[first - 1].lstrip().startswith("#"):
            first -= 1
        out[n] = replace(out[n], lead="".join(gap[first:]))
        out[n - 1] = replace(out[n - 1], gap="".join(gap[:first]))
    return out


def _changed(block: _Block, values: Values) -> _Block:
    before = _values(block)
    wanted = _merged(before, values)
    if wanted == before:
        return block
    parsed = tomlkit.parse(with_seconds(block.body))
    held: Any = parsed[block.table]
    _merge(held[0] if isinstance(held, AoT) else held, values)
    body = tomlkit.dumps(parsed)
    changed = replace(block, body=body if body.endswith("\n") or not body else body + "\n")
    if _values(changed) != wanted:
        raise UnusualError(say("wrong-table-not-changed-in-place", table=block.table))
    return changed


def _merged(before: Values, values: Values) -> dict[str, Any]:
    out = dict(before)
    for key, value in values.items():
        if value is None:
            out.pop(key, None)
        elif isinstance(value, dict):
            old = out.get(key)
            out[key] = _merged(old if isinstance(old, dict) else {}, value)
        elif isinstance(value, list):
            out[key] = [_without_none(v) if isinstance(v, dict) else v for v in value]
        else:
            out[key] = value
    return out


def _merge(table: MutableMapping[str, Any], values: Values) -> None:
    for key, value in values.items():
        held = table.get(key)
        if value is None:
            table.pop(key, None)
        elif isinstance(value, dict) and isinstance(held, dict):
            _merge(held, value)
        elif isinstance(value, list) and isinstance(held, AoT | Array) and any(map(_deep, value)):
            _merge_items(held, value)
        elif held is None or _plain(held) != value:
            table[key] = _item(value)


def _merge_items(held: Any, values: list[Any]) -> None:
    while len(held) > len(values):
        del held[-1]
    for n, value in enumerate(values):
        if n < len(held) and isinstance(value, dict) and isinstance(held[n], dict):
            _merge(held[n], dict.fromkeys(held[n]) | dict(value))
        elif n < len(held):
            if _plain(held[n]) != value:
                held[n] = _item(value)
        elif isinstance(held, AoT):
            held.append(tomlkit.item(_without_none(value)))
        else:
            held.append(_item(value))


def _plain(item: Any) -> Any:
    return item.unwrap() if hasattr(item, "unwrap") else item


def _item(value: Any) -> Any:
    if isinstance(value, dict):
        table = tomlkit.inline_table()
        table.update({k: _item(v) for k, v in _without_none(value).items()})
        return table
    if isinstance(value, list):
        array = tomlkit.array()
        for v in value:
            array.append(_item(v))
        return array.multiline(len(value) > 1 and any(isinstance(v, dict) for v in value))
    return tomlkit.item(value)


def _without_none(values: Values) -> dict[str, Any]:
    return {k: v for k, v in values.items() if v is not None}
