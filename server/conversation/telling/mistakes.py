"""The language of an event file, and what loading it would change, in words."""

from __future__ import annotations

import re
import tomllib
from collections import Counter
from collections.abc import Mapping

from server.conversation.telling.say import slug
from server.event.changes import Difference
from server.sentences import fallback, language_of, sentence

__all__ = ["file_language", "say_change"]


def file_language(text: str) -> str:
    """The language of an event file: the organiser's, else the one most of its people read; the fallback where none says."""
    try:
        people = tomllib.loads(text).get("people", [])
    except (tomllib.TOMLDecodeError, RecursionError, ValueError):
        # A file that can't be read may still say whom it is for.
        found = re.findall(r'^\s*(?:[^#\n]*[{,]\s*)?language\s*=\s*"([a-z]{2})', text, re.MULTILINE)
        named = len(re.findall(r"^\s*\[\[people\]\]", text, re.MULTILINE))
        return language_of(found[0]) if found and 2 * len(found) > named else fallback()
    if not isinstance(people, list):
        return fallback()
    read = [_reads(p) for p in people if isinstance(p, dict)]
    organisers = [_reads(p) for p in people if isinstance(p, dict) and _organises(p)]
    most = Counter(organisers or read).most_common(1)
    return language_of(most[0][0]) if most else fallback()


def _reads(person: Mapping[str, object]) -> str:
    return str(person.get("language", ""))


def _organises(person: Mapping[str, object]) -> bool:
    parts = person.get("parts", [])
    return isinstance(parts, list) and any(
        isinstance(p, dict) and p.get("kind") == "organiser" for p in parts
    )


def say_change(change: Difference, language: str) -> str:
    """What loading would change, on one line; names of fields and what they hold as the file has them."""
    thing = f"{sentence(language, f'change-thing-{slug(change.what)}')} {change.id}".strip()
    values = {"field": change.field, "was": change.was or "none", "now": change.now or "none"}
    return sentence(language, f"change-{change.kind.value}", thing=thing, **values)
