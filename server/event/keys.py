"""Every table and key of an event file: what it means, its form, what holds without it, an example.

Meaning and example stand in `keys_race` and `keys_people`; form and default are those that the reader itself asks for,
got by letting it read files made of all the examples. So no key is read without being listed (a test), and none is
listed with a form that is not the one checked.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from functools import cache

from server.event.keys_people import PEOPLE_TABLES
from server.event.keys_race import RACE_TABLES
from server.event.keyword import ALL, Key, KeyTable
from server.event.read import read_asking
from server.event.section import Ask, did_you_mean

__all__ = ["TABLES", "KeyHelp", "asked", "example_file", "key_help", "nearest_table", "tables_named"]

TABLES: tuple[KeyTable, ...] = (*RACE_TABLES, *PEOPLE_TABLES)
FREE = "waves"
"""The one table in which people choose the names of the keys."""


@dataclass(frozen=True, slots=True)
class KeyHelp:
    """One key, told whole. `default` '' where nothing holds without it."""

    name: str
    means: str
    form: str
    default: str
    example: str


def tables_named(name: str) -> tuple[KeyTable, ...]:
    """The table of that name with those inside it; none if there is none. '[[points]]' and 'points' are the same."""
    plain = name.strip("[] ").casefold()
    return tuple(t for t in TABLES if t.name == plain or t.name.startswith(f"{plain}."))


def nearest_table(name: str) -> str:
    """What to do about a name that no table has."""
    known = [t.name for t in TABLES]
    return did_you_mean(name, known, f"Tables: {', '.join(known)}.")


def key_help(table: KeyTable) -> tuple[KeyHelp, ...]:
    """Every key of a table, in the order in which people write them."""
    asks = asked()
    found = []
    for k in table.keys:
        ask = asks.get((table.name, k.name), Ask(""))
        inner = _inner(table, k)
        example = inner.wrap % "{ … }" if inner is not None else k.example
        found.append(KeyHelp(k.name, k.means, ask.form, ask.default, f"{k.name} = {example}"))
    return tuple(found)


@cache
def asked() -> dict[tuple[str, str], Ask]:
    """What the reader asks for, by table and key, whatever may stand in a file; free names are left out."""
    found: dict[tuple[str, str], Ask] = {}
    for which in ALL:
        found = dict(read_asking(example_file(which))) | found
    return {k: a for k, a in found.items() if k[0] != FREE}


def example_file(which: int = 0) -> str:
    """A file without a mistake that holds an example of every key; of keys that exclude each other one in each of the
    three files (0..2)."""
    tables = [t for t in TABLES if "." not in t.name and which in t.within]
    course = 'course = "long"\n' if which == ALL[-1] else ""
    return "\n".join(
        f"{t.before.replace('COURSE', course)}{_head(t)}\n{_body(t, which)}\n{t.after.replace('COURSE', course)}"
        for t in tables
    )


def _head(table: KeyTable) -> str:
    return f"[[{table.name}]]" if table.many else f"[{table.name}]"


def _body(table: KeyTable, which: int) -> str:
    return "\n".join(f"{k.name} = {_example(table, k, which)}" for k in _keys(table, which))


def _keys(table: KeyTable, which: int) -> Iterator[Key]:
    return (k for k in table.keys if which in k.within)


def _example(table: KeyTable, key: Key, which: int) -> str:
    inner = _inner(table, key)
    if inner is None:
        return key.example
    return (
        inner.wrap
        % f"{{ {', '.join(f'{k.name} = {_example(inner, k, which)}' for k in _keys(inner, which))} }}"
    )


def _inner(table: KeyTable, key: Key) -> KeyTable | None:
    name = f"{table.name}.{'cut_off' if key.name == 'cut_offs' else key.name}"
    return None if key.example else next((t for t in TABLES if t.name == name), None)
