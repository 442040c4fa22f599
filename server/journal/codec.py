"""Frozen values to stored text and back. Every stored value carries a version; a newer one is refused."""

from __future__ import annotations

import json
from collections.abc import Hashable
from datetime import UTC, datetime
from functools import cache, lru_cache
from typing import Any, cast

from pydantic import TypeAdapter, ValidationError

from server.event.model import Part, Person
from server.facts.entry import Entry
from server.journal.errors import JournalError, TooNewError
from server.watch import notice as notice_values
from server.watch.notice import Notice, Values

__all__ = [
    "VERSION",
    "aware",
    "dump_entry",
    "dump_notice",
    "dump_part",
    "dump_person",
    "dump_values",
    "load_entry",
    "load_notice",
    "load_part",
    "load_person",
    "load_values",
]

VERSION = 1
"""Raise when a stored value changes its meaning (a default too: defaults are not written). Added optional
fields do not count."""


@cache
def _adapter(kind: Hashable) -> TypeAdapter[Any]:
    return TypeAdapter(cast(type[Any], kind))


def _dump(value: Entry | Values | Person | Part) -> str:
    kind: type[Any] = type(value)
    body = _adapter(cast(Hashable, kind)).dump_json(value, exclude_defaults=True).decode()
    return f'{{"v": {VERSION}, "type": "{kind.__name__}", "body": {body}}}'


def _load(text: str, types: dict[str, type[Any]]) -> Any:
    return _validated(json.loads(text), types)


def _validated(doc: dict[str, Any], types: dict[str, type[Any]]) -> Any:
    version, name = doc.get("v"), doc.get("type")
    if not isinstance(version, int) or version > VERSION or name not in types:
        raise TooNewError(
            f"holds a {name!r} of version {version}, this program knows versions up to {VERSION}",
            "stored value",
            "a newer Stilepost has probably written this: start that one, or restore an older backup",
        )
    try:
        return _adapter(cast(Hashable, types[name])).validate_python(doc["body"])
    except ValidationError as e:
        fields = ", ".join(".".join(str(p) for p in err["loc"]) for err in e.errors()[:5])
        raise TooNewError(
            f"a {name} cannot be read, at {fields}",
            "stored value",
            "a newer Stilepost has probably written this database, or a file was edited by hand",
        ) from e


def aware(at: datetime, field: str) -> datetime:
    """`at` in UTC; a naive one is refused, naming the field."""
    if at.tzinfo is None or at.utcoffset() is None:
        raise JournalError(
            f"{at.isoformat()} has no time zone", field, "give a time with its offset from UTC"
        )
    return at.astimezone(UTC)


_VALUES: dict[str, type[Any]] = {t.__name__: t for t in Values.__args__}
assert all(getattr(notice_values, name) is t for name, t in _VALUES.items())


def dump_entry(entry: Entry) -> str:
    """An entry as JSON text."""
    return _dump(entry)


def load_entry(text: str) -> Entry:
    """The entry of `dump_entry`'s text; TooNewError if it cannot be read."""
    entry: Entry = _load(text, {"Entry": Entry})
    return entry


def dump_values(values: Values) -> str:
    """A notice's values as JSON text."""
    return _dump(values)


def load_values(text: str) -> Values:
    """The values of `dump_values`' text; TooNewError if they cannot be read."""
    values: Values = _load(text, _VALUES)
    return values


def dump_notice(notice: Notice) -> str:
    """A notice as JSON text; the values carry their type, as no field of theirs tells it."""
    rest = _adapter(cast(Hashable, Notice)).dump_python(
        notice, mode="json", exclude={"values"}, exclude_defaults=True
    )
    rest["values"] = json.loads(dump_values(notice.values))
    return json.dumps({"v": VERSION, "type": "Notice", "body": rest}, separators=(",", ":"))


@lru_cache(maxsize=8192)
def load_notice(text: str) -> Notice:
    """The notice of `dump_notice`'s text; TooNewError if it cannot be read."""
    doc = json.loads(text)
    if isinstance(doc.get("v"), int) and doc["v"] <= VERSION:
        doc["body"]["values"] = load_values(json.dumps(doc["body"]["values"]))
    notice: Notice = _validated(doc, {"Notice": Notice})
    return notice


def dump_person(person: Person) -> str:
    """A person as JSON text."""
    return _dump(person)


def load_person(text: str) -> Person:
    """The person of `dump_person`'s text; TooNewError if it cannot be read."""
    person: Person = _load(text, {"Person": Person})
    return person


def dump_part(part: Part) -> str:
    """A part as JSON text."""
    return _dump(part)


def load_part(text: str) -> Part:
    """The part of `dump_part`'s text; TooNewError if it cannot be read."""
    part: Part = _load(text, {"Part": Part})
    return part
