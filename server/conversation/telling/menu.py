"""The commands a chat shows in its menu, by a person's parts. Pure.

A command is a question in one word that the desk understands when typed too. A stranger's menu tells nothing.
"""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from dataclasses import dataclass

from server.event.model import PartKind
from server.sentences import sentence

__all__ = ["COMMANDS", "IN_GROUPS", "Command", "menu_for"]


@dataclass(frozen=True, slots=True)
class Command:
    """One line of the menu: the word to send (lower-case letters) and what it asks, in the reader's words."""

    word: str
    says: str


_WITH_HER = (
    "next",
    "leave",
    "kit",
    "missed",
    "where",
    "plan",
    "cutoffs",
    "food",
    "cards",
    "numbers",
    "report",
    "usage",
)

_BY_PART: Mapping[PartKind, tuple[str, ...]] = {
    PartKind.CREW: _WITH_HER,
    PartKind.PACER: _WITH_HER,
    PartKind.ORGANISER: ("where", "next", "plan", "cutoffs", "missed", "numbers", "report", "usage"),
    PartKind.SAFETY_CONTACT: ("where", "next", "plan", "cutoffs", "numbers", "cards", "report", "usage"),
    PartKind.RUNNER: ("plan", "food", "kit", "cutoffs", "cards", "numbers", "report", "usage"),
    PartKind.VOLUNTEER: ("numbers", "usage"),
    PartKind.SUPPORTER: ("where", "plan", "report", "usage"),
}
_STRANGER = ("start",)

IN_GROUPS = ("group",)
"""What to ask a menu for that everybody in a group sees: only what concerns all."""
_GROUP = ("where", "next", "plan", "group")

COMMANDS = tuple(dict.fromkeys((*_STRANGER, *(w for words in _BY_PART.values() for w in words))))
"""Every command there is, once."""


def menu_for(parts: Iterable[str], language: str) -> tuple[Command, ...]:
    """The menu of somebody with these kinds of part; those of several parts joined, none twice."""
    kinds = frozenset(parts)
    words = [w for kind, its in _BY_PART.items() if kind.value in kinds for w in its]
    if kinds & frozenset(IN_GROUPS):
        words += _GROUP
    return tuple(Command(w, sentence(language, f"menu-{w}")) for w in dict.fromkeys(words or _STRANGER))
