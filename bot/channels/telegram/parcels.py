"""A text of any length as messages that Telegram takes. Pure.

Telegram counts characters as UTF-16 units (an emoji is two): 4096 a message, 1024 a caption, from its API's
documentation. The library does not check them.
"""

from __future__ import annotations

__all__ = ["CAPTION_MAX", "TEXT_MAX", "cut", "split", "units"]

TEXT_MAX = 4096
CAPTION_MAX = 1024


def units(text: str) -> int:
    """The length of a text in UTF-16 units."""
    return len(text) + sum(ord(c) > 0xFFFF for c in text)


def _head(text: str, most: int) -> int:
    """How many characters from the start fit into `most` units."""
    used = 0
    for i, c in enumerate(text):
        used += 2 if ord(c) > 0xFFFF else 1
        if used > most:
            return i
    return len(text)


def split(text: str, most: int = TEXT_MAX) -> tuple[str, ...]:
    """The text in parts of at most `most` units (2 or more): cut between lines, else between words, else
    anywhere. No word is lost; parts that would be blank, which Telegram refuses, fall away."""
    parts: list[str] = []
    rest = text.strip()
    while units(rest) > most:
        fits = _head(rest, most)
        # One more character is looked at, since a border just behind what fits is a good place to cut.
        window = rest[: fits + 1]
        at = max(window.rfind("\n"), 0) or max(window.rfind(" "), 0) or fits
        parts.append(rest[:at].rstrip())
        rest = rest[at:].lstrip()
    parts.append(rest)
    return tuple(p for p in parts if p)


def cut(text: str, most: int = CAPTION_MAX) -> str:
    """The start of a text, ending in '…' where something is left out."""
    if units(text) <= most:
        return text
    return text[: _head(text, most - 1)].rstrip() + "…"
