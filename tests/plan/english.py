"""What the planner's values say in English, for tests that look for a sentence."""

from __future__ import annotations

from collections.abc import Iterable

from server.conversation.telling.planned import say_planned, say_sources
from server.conversation.telling.reader import Reader
from server.plan.notes import Saying

READER = Reader("en", "Europe/London", "Europe/London")


def said(notes: Iterable[Saying]) -> list[str]:
    """Each note in words."""
    return [say_planned(READER, n) for n in notes]


def source(sources: Iterable[Saying]) -> str:
    """Where target and pace came from."""
    return say_sources(READER, sources)
