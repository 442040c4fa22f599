"""What a printed document is made of: pages of blocks, which HTML and PDF show each in its own way, from the same values."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import asdict, dataclass
from enum import StrEnum
from typing import Any


class Look(StrEnum):
    """How lines of text stand out, in black and white alone."""

    PLAIN = "plain"
    SMALL = "small"
    LIST = "list"
    STEPS = "steps"
    COLUMNS = "columns"
    FRAME = "frame"
    DANGER = "danger"


class Size(StrEnum):
    """A sheet of paper."""

    A4 = "a4"
    LETTER = "letter"


@dataclass(frozen=True, slots=True)
class Head:
    """A heading."""

    text: str


@dataclass(frozen=True, slots=True)
class Lines:
    """Lines of text of one look."""

    lines: tuple[str, ...]
    look: Look = Look.PLAIN


@dataclass(frozen=True, slots=True)
class Grid:
    """A table: heads, rows of as many cells, and which rows are bold. `numbers`: all but the first and the last column are
    set to the right."""

    columns: tuple[str, ...]
    rows: tuple[tuple[str, ...], ...]
    strong: tuple[int, ...] = ()
    numbers: bool = False
    shares: tuple[float, ...] = ()
    """The widths of the columns to each other; () = by what stands in them."""


@dataclass(frozen=True, slots=True)
class Cell:
    """A time with its name over it and a word on it below."""

    name: str
    time: str
    below: str = ""


@dataclass(frozen=True, slots=True)
class Met:
    """A meeting: where, its times large, what to know there, kit to tick (`must` framed), what if she is missed, and
    `blanks`: what is written by hand, each with a line after it."""

    place: str
    about: str
    cells: tuple[Cell, ...]
    facts: tuple[str, ...]
    must: tuple[str, ...]
    kit: tuple[str, ...]
    lines: tuple[str, ...]
    missed: str
    blanks: tuple[str, ...] = ()


@dataclass(frozen=True, slots=True)
class Ticks:
    """Things to tick; `must` framed."""

    must: tuple[str, ...]
    others: tuple[str, ...]


@dataclass(frozen=True, slots=True)
class CardBlock:
    """An if-then card."""

    trouble: str
    life: tuple[str, ...]
    red: str
    steps: tuple[str, ...]
    call: str


@dataclass(frozen=True, slots=True)
class Label:
    """A label to cut out: what it says large, and lines below."""

    large: str
    lines: tuple[str, ...]


Block = Head | Lines | Grid | Met | Ticks | CardBlock | Label


@dataclass(frozen=True, slots=True)
class Page:
    """What begins on a new sheet of paper; it may fill several."""

    blocks: tuple[Block, ...]


@dataclass(frozen=True, slots=True)
class Sheet:
    """One document. `name` and `event` stand at the foot of every page with its number; `about` beside the name."""

    language: str
    name: str
    event: str
    about: str
    pages: tuple[Page, ...]


def page(*blocks: Block | None) -> Page:
    """A page of blocks; those that say nothing fall away, a heading with nothing below it too."""
    kept = [b for b in blocks if b is not None and not _empty(b)]
    ends = [*kept[1:], Head("")][: len(kept)]
    return Page(
        tuple(
            b
            for b, then in zip(kept, ends, strict=True)
            if not isinstance(b, Head) or not isinstance(then, Head)
        )
    )


def _empty(b: Block) -> bool:
    match b:
        case Lines():
            return not any(b.lines)
        case Grid():
            return not b.rows
        case Ticks():
            return not (b.must or b.others)
        case _:
            return False


def kind(b: Block) -> str:
    """The name of a block's kind, as the templates know it."""
    return type(b).__name__.lower()


def as_data(sheets: Sequence[Sheet]) -> list[dict[str, Any]]:
    """The sheets as plain values, each block with its kind."""
    return [
        {
            "language": s.language,
            "name": s.name,
            "event": s.event,
            "about": s.about,
            "pages": [[{"kind": kind(b), **asdict(b)} for b in p.blocks] for p in s.pages],
        }
        for s in sheets
    ]
