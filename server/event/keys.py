"""Every table and key of an event file: what it means, its form, what holds without it, an example; and its JSON Schema."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from typing import Any, Final

from server.event.course_model import CourseDef, Point, Stretch, WeatherSpell
from server.event.crew import Car, Drive, Driving, IfThenCard, MeetingPlan, Person, Place, Share
from server.event.forms import Id
from server.event.forms_of_time import Moment
from server.event.model import AlarmRule, Brief, Contact, Event, Rules
from server.event.running import Runner
from server.event.table import Key, One, Table, Tables, keys_of, schema
from server.event.table_reader import did_you_mean
from server.sentences import Worded, say

__all__ = [
    "FREE",
    "TABLES",
    "KeyHelp",
    "KeyTable",
    "json_schema",
    "key_help",
    "nearest_table",
    "tables_named",
]

FREE: Final = "waves"
"""The one table in which people choose the names of the keys."""
_WAVES = Key("B", Moment(), "any name: when that wave starts", "2027-09-11T05:30")
_TOP: Final[tuple[tuple[str, type[Table], bool], ...]] = (
    ("event", Event, False),
    ("race_control", Contact, False),
    ("rescue", Contact, False),
    ("rules", Rules, False),
    ("brief", Brief, False),
    ("alarm", AlarmRule, False),
    ("driving", Driving, False),
    ("courses", CourseDef, True),
    ("points", Point, True),
    ("stretches", Stretch, True),
    ("weather", WeatherSpell, True),
    ("runners", Runner, True),
    ("people", Person, True),
    ("places", Place, True),
    ("cars", Car, True),
    ("drives", Drive, True),
    ("meetings", MeetingPlan, True),
    ("shares", Share, True),
    ("if_then", IfThenCard, True),
)


@dataclass(frozen=True, slots=True)
class KeyTable:
    """One table. `head` is how it is begun: '[[points]]', 'crew = { … } in points'. `of` declares it (free names: None)."""

    name: str
    means: str
    head: str
    keys: tuple[Key, ...]
    of: type[Table] | None = None


@dataclass(frozen=True, slots=True)
class KeyHelp:
    """One key, told whole. `default` '' where nothing holds without it."""

    name: str
    means: str
    form: str
    default: str
    example: str


def _listed() -> Iterator[KeyTable]:
    for name, table, many in _TOP:
        yield from _with_inner(name, f"[[{name}]]" if many else f"[{name}]", table)
    means = 'Starts of their own, by names you choose; a runner names hers with wave = "…".'
    yield KeyTable(FREE, means, f"[{FREE}]", (_WAVES,))


def _with_inner(name: str, head: str, table: type[Table], without: Sequence[str] = ()) -> Iterator[KeyTable]:
    keys = tuple(k for k in (*keys_of(table), *table.MORE) if k.field not in without)
    means = " ".join((table.__doc__ or "").split("\n\n")[0].split())
    yield KeyTable(name, means, head, keys, table)
    for k in keys:
        if isinstance(k.form, One):
            inner = f"{k.name} = {wrapped(k, '{ … }')} in {name}"
            yield from _with_inner(f"{name}.{k.name}", inner, k.form.table, k.form.without)


def wrapped(key: Key, inner: str) -> str:
    """A table within another, as it stands at its key."""
    return (key.example or ("[ %s ]" if isinstance(key.form, Tables) else "%s")) % inner


TABLES: Final = tuple(_listed())


def tables_named(name: str) -> tuple[KeyTable, ...]:
    """The table of that name with those inside it; none if there is none. '[[points]]' and 'points' are the same."""
    plain = name.strip("[] ").casefold()
    return tuple(t for t in TABLES if t.name == plain or t.name.startswith(f"{plain}."))


def nearest_table(name: str) -> Worded:
    """What to do about a name that no table has."""
    known = [t.name for t in TABLES]
    return did_you_mean(name, known, say("do-known-tables", tables=", ".join(known)))


def key_help(table: KeyTable) -> tuple[KeyHelp, ...]:
    """Every key of a table."""
    found = []
    for k in table.keys:
        example = wrapped(k, "{ … }") if isinstance(k.form, One) else k.example
        found.append(KeyHelp(k.name, k.means, k.form.said, _default(k), f"{k.name} = {example}"))
    return tuple(found)


def longest(of: str) -> int:
    """How many letters the text at a key such as 'points.crew.parking' may have; KeyError for a key that holds none."""
    table, _, name = of.rpartition(".")
    found = [k for t in TABLES if t.name == table for k in t.keys if k.name == name]
    if not found or "maxLength" not in found[0].form.schema():
        raise KeyError(of)
    return int(found[0].form.schema()["maxLength"])


def _default(k: Key) -> str:
    """What holds where a key is not given, as it would stand in the file; '' for nothing."""
    if isinstance(k.form, Id):
        return "made from the name"
    if k.must or k.default in (None, "", ()):
        return ""
    written = k.form.write(k.default, "UTC")
    return str(written).lower() if isinstance(written, bool) else str(written)


def json_schema() -> dict[str, Any]:
    """The JSON Schema of an event file, for editors and whoever makes one by machine."""
    named = {}
    for name, table, many in _TOP:
        named[name] = {"type": "array", "items": schema(table)} if many else schema(table)
    named[FREE] = {"type": "object", "additionalProperties": {"type": "string", "format": "date-time"}}
    return {
        "$schema": "https://json-schema.org/draft/2020-12/schema",
        "type": "object",
        "required": ["event", "points", "runners"],
        "properties": named,
        "additionalProperties": False,
    }
