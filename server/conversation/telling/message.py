"""What wording hands out: a text and the buttons under it; and how a button's data is written and read.

Button data is at most 64 bytes (the tightest limit of the channels we know), so long ids are shortened to a
tag that still tells them apart. Fields are joined by '|'; the first says what kind of button it is.
"""

from __future__ import annotations

import hashlib
from collections.abc import Iterable
from dataclasses import dataclass, replace
from enum import StrEnum
from itertools import count

DATA_BYTES_MAX = 64
_TAG_BYTES_MAX = 16


class Press(StrEnum):
    """The first field of a button's data: what pressing it does, and which fields follow.

    ANSWER: notice's short number, answer word, point tag, runner tag, event mark. REPORT: check-in kind, point tag,
    runner tag, minutes ago, event mark. UNDO and CONFIRM: entry id, and where a notice asked about it, its number and
    event mark. ASK: question word, point tag, runner tag, event mark.
    PICK: number of the choice offered, what it means (button_payload.py; nothing if that needs its words), event mark.
    LOG: point tag, runner tag, item of the stop log, what of it, event mark. JOIN: 'yes' or 'no'. CHANGE: step, runner tag,
    point tag, what it is about, version looked at in hex, event mark (conversation/changing.py).
    """

    ANSWER = "n"
    REPORT = "r"
    UNDO = "u"
    CONFIRM = "c"
    ASK = "q"
    PICK = "p"
    LOG = "l"
    JOIN = "j"
    CHANGE = "w"


@dataclass(frozen=True, slots=True)
class Button:
    """One button: what it says, and the data that comes back when pressed (at most 64 bytes of UTF-8)."""

    label: str
    data: str

    def __post_init__(self) -> None:
        if len(self.data.encode()) > DATA_BYTES_MAX:
            raise ValueError(f"button data {self.data!r} is over {DATA_BYTES_MAX} bytes: shorten its fields")


Rows = tuple[tuple[Button, ...], ...]


@dataclass(frozen=True, slots=True)
class Message:
    """A text ready to send, with rows of buttons."""

    text: str
    buttons: Rows = ()


def told_apart(rows: Rows) -> Rows:
    """The same buttons, no two of which read alike: those with one label are numbered from the second on.

    The last resort: whoever makes buttons puts into the label what tells them apart, where there is anything.
    """
    taken = {b.label for row in rows for b in row}
    met: set[str] = set()

    def own(button: Button) -> Button:
        if button.label not in met:
            met.add(button.label)
            return button
        label = next(x for n in count(2) if (x := f"{button.label} ({n})") not in taken)
        taken.add(label)
        return replace(button, label=label)

    return tuple(tuple(own(b) for b in row) for row in rows)


def tag(identifier: str) -> str:
    """The id itself if short, else its start and eight hex digits of its SHA-256: 16 bytes at most."""
    if len(identifier.encode()) <= _TAG_BYTES_MAX:
        return identifier
    digest = hashlib.sha256(identifier.encode()).hexdigest()[:8]
    return identifier.encode()[:7].decode(errors="ignore") + "~" + digest


def untag(tagged: str, identifiers: Iterable[str]) -> str | None:
    """The id among `identifiers` whose tag this is, or None."""
    return next((i for i in identifiers if tag(i) == tagged), None)


def event_mark(event: str) -> str:
    """Five hex digits that tell one person's events apart: a notice's number is only one within its event."""
    return hashlib.sha256(event.encode()).hexdigest()[:5]


def data(press: Press, *fields: str) -> str:
    """Button data from its fields. A '|' inside a field would be read as a border, so it is refused."""
    if any("|" in f for f in fields):
        raise ValueError(f"'|' cannot stand in a button's field: {fields!r}")
    return "|".join((press.value, *fields))


def read_data(text: str) -> tuple[Press, tuple[str, ...]] | None:
    """The press and its fields; None for data that is not ours."""
    first, *fields = text.split("|")
    try:
        return Press(first), tuple(fields)
    except ValueError:
        return None
