"""What is wrong with an event file, in the language of its people: file, line and field stay, the words change.

The rooms that read files know no languages; their sentences are the keys, values and all, in `mistakes.toml` of a language's
folder. A sentence that a language has not got stays as it is: nothing that is wrong may go unsaid.
"""

from __future__ import annotations

import re
import tomllib
from collections import Counter
from collections.abc import Mapping
from dataclasses import replace
from functools import cache

from server.conversation.telling.say import slug
from server.event import Problem
from server.event.changes import Change
from server.sentences import fallback, folder, language_of, sentence

__all__ = ["file_language", "problem_in", "said_in", "say_change", "say_problem"]

FILE = "mistakes.toml"
_HOLE = re.compile(r"\{(\d*)\}")


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


def say_problem(problem: Problem, language: str) -> str:
    """One mistake on a line: file, line, what kind, field, what is wrong, what to do."""
    kind = sentence(language, f"mistake-{problem.severity.value}")
    return str(problem_in(problem, language)).replace(f": {problem.severity.value}:", f": {kind}:", 1)


def problem_in(problem: Problem, language: str) -> Problem:
    """The same mistake with its sentences in a language; place and field as they are."""
    return replace(problem, what=said_in(problem.what, language), remedy=said_in(problem.remedy, language))


def said_in(words: str, language: str) -> str:
    """A sentence of the code in a language; itself where there is none for it."""
    return _translated(words, language_of(language)) or words


@cache
def said_of(language: str) -> Mapping[str, str]:
    """The sentences of the code that a language's folder has, and what becomes of each."""
    file = folder(language) / FILE
    tables = tomllib.loads(file.read_text(encoding="utf-8")) if file.is_file() else {}
    return {words: said for table in tables.values() for words, said in table.items()}


@cache
def _translated(words: str, language: str) -> str | None:
    bare = words.rstrip(".")
    for key in dict.fromkeys((words, f"{bare}.", bare)):
        found = _matched(key, language)
        if found is not None:
            # Sentences of the plan stand without their full stop, and so does what they become.
            return found if words.endswith(".") == found.endswith(".") or key == words else found.rstrip(".")
    return None


def _matched(words: str, language: str) -> str | None:
    plain = said_of(language).get(words)
    if plain is not None:
        return plain
    for pattern, said in _patterns(language):
        match = pattern.fullmatch(words)
        if match is not None:
            return _filled(said, [_hole(v, language) for v in match.groups()])
    return None


def _hole(value: str, language: str) -> str:
    """What stands in a hole: a sentence of its own, or a value that stays; single words are the file's own."""
    if " " not in value:
        return value
    return _translated(value, language) or value


def _filled(said: str, values: list[str]) -> str:
    rest = iter(values)
    return _HOLE.sub(lambda m: values[int(m.group(1))] if m.group(1) else next(rest), said)


@cache
def _patterns(language: str) -> tuple[tuple[re.Pattern[str], str], ...]:
    """Every sentence with holes, those with the most words of their own first: the others would swallow them."""
    holed = [(k, v) for k, v in said_of(language).items() if "{}" in k]
    holed.sort(key=lambda kv: -len(kv[0].replace("{}", "")))
    return tuple((re.compile("(.*?)".join(map(re.escape, k.split("{}"))), re.DOTALL), v) for k, v in holed)


def say_change(change: Change, language: str) -> str:
    """What loading would change, on one line; names of fields and what they hold as the file has them."""
    thing = f"{sentence(language, f'change-thing-{slug(change.what)}')} {change.id}".strip()
    values = {"field": change.field, "was": change.was or "none", "now": change.now or "none"}
    return sentence(language, f"change-{change.kind.value}", thing=thing, **values)
