"""A memory as text and back: what was spoken of outlives a restart and is known to every server.

Every value names its class, as a choice may hold any of the meanings. What can't be read, since another version of this
program wrote it, is forgotten: people are then asked again.
"""

from __future__ import annotations

import json
from collections import deque
from dataclasses import MISSING, Field, fields, is_dataclass
from datetime import datetime, timedelta
from enum import Enum
from typing import Any

from server.conversation import understanding as words
from server.conversation.dialogue import Handed, Memory
from server.conversation.values import Incoming, Photo, Trouble
from server.facts.entry import Fix, Kind, Retired, Why
from server.facts.stop_log import Item, Level, Logged

__all__ = ["LONGEST", "dump", "load"]

LONGEST = 16_000
"""A memory of more signs is not kept: nothing that a person says in half an hour comes near."""

_VALUES: dict[str, type[Any]] = {
    kind.__name__: kind
    for kind in (
        *(
            words.Asked,
            words.Report,
            words.Reported,
            words.MeantFor,
            words.AskBack,
            words.Choice,
            words.Unclear,
            words.Kept,
            words.Requested,
            words.OtherRunner,
            words.Small,
            words.Acknowledged,
            words.Undo,
        ),
        *(Handed, Incoming, Photo, Fix, Logged, Memory),
    )
}
_ENUMS: dict[str, type[Enum]] = {
    k.__name__: k
    for k in (words.Question, words.Need, words.Request, Kind, Retired, Why, Item, Level, Trouble)
}


def dump(memory: Memory) -> str:
    """As text; '' where it is too long to be kept."""
    text = json.dumps(_plain(memory), ensure_ascii=False, separators=(",", ":"))
    return text if len(text) <= LONGEST else ""


def load(text: str) -> Memory:
    """The memory; a new one for '' and for what can't be read."""
    try:
        found = _value(json.loads(text)) if text else None
    except (ValueError, TypeError, KeyError):
        return Memory()
    return found if isinstance(found, Memory) else Memory()


def _plain(value: Any) -> Any:
    if isinstance(value, Photo):
        value = Photo(value.ref, trouble=Trouble.LOST)  # its bytes are no memory: it has to be sent again
    if is_dataclass(value) and not isinstance(value, type):
        own = ((f, getattr(value, f.name)) for f in fields(value))
        return {"_": type(value).__name__} | {f.name: _plain(v) for f, v in own if not _is_default(f, v)}
    match value:
        case Enum():
            return {"_": type(value).__name__, "is": value.value}
        case datetime():
            return {"_": "datetime", "is": value.isoformat()}
        case timedelta():
            return {"_": "timedelta", "is": value.total_seconds()}
        case tuple() | list() | deque():
            return [_plain(v) for v in value]
    return value


def _is_default(field: Field[Any], value: Any) -> bool:
    if field.default_factory is not MISSING:
        return not value
    return field.default is not MISSING and bool(value == field.default)


def _value(plain: Any) -> Any:
    if isinstance(plain, list):
        return tuple(_value(v) for v in plain)
    if not isinstance(plain, dict):
        return plain
    kind, own = plain["_"], {k: v for k, v in plain.items() if k != "_"}
    if kind == "datetime":
        return datetime.fromisoformat(own["is"])
    if kind == "timedelta":
        return timedelta(seconds=own["is"])
    if kind in _ENUMS:
        return _ENUMS[kind](own["is"])
    made = {k: _value(v) for k, v in own.items()}
    if kind == "Memory":
        made |= {"handed": list(made.get("handed", ()))}
        made |= {"picked": deque(made.get("picked", ()), maxlen=Memory().picked.maxlen)}
    return _VALUES[kind](**made)
