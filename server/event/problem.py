"""What is wrong with an event file, where, and what to do about it."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass, replace
from enum import StrEnum

from server.sentences import Worded, fallback, say, sentence


class Severity(StrEnum):
    """An error stands in the way of loading; a warning is said and may be meant."""

    ERROR = "error"
    WARNING = "warning"


@dataclass(frozen=True, slots=True)
class Problem:
    """One mistake. `line` is 1-based, None where no line can be named; `field` a path such as
    `points.mill.km`, items by their id where they have one; `remedy` a sentence."""

    severity: Severity
    what: Worded
    file: str
    line: int | None
    field: str
    remedy: Worded | None

    def in_language(self, language: str) -> str:
        """On one line: file, line, what kind, field, what is wrong, what to do."""
        place = self.file if self.line is None else f"{self.file}:{self.line}"
        kind = sentence(language, f"mistake-{self.severity.value}")
        field = f" {self.field}:" if self.field else ""
        remedy = "" if self.remedy is None else self.remedy.in_language(language)
        what = self.what.in_language(language)
        end = "" if what.endswith("?") else "."
        told = f"{place}: {kind}:{field} {what}{end} {remedy}".rstrip(". ")
        return told if told.endswith("?") else told + "."

    def __str__(self) -> str:
        return self.in_language(fallback())


NO_SUCH = "wrong-no-such"
"""The code of an id that there is none of."""


def once(problems: Iterable[Problem]) -> list[Problem]:
    """One id that there is none of is one mistake, however often it is used: told where it stands first, with the other
    lines. `problems` in the order of the file."""
    first: dict[tuple[Worded, Worded | None], int] = {}
    out: list[Problem] = []
    others: dict[int, list[int]] = {}
    for p in problems:
        key = (p.what, p.remedy)
        if p.what.code == NO_SUCH and key in first:
            others.setdefault(first[key], []).extend([] if p.line is None else [p.line])
            continue
        first.setdefault(key, len(out))
        out.append(p)
    for number, lines in others.items():
        also = sorted({n for n in lines if n != out[number].line})
        if also:
            code = "wrong-also-on-lines" if len(also) > 1 else "wrong-also-on-line"
            what = say(code, what=out[number].what, lines=", ".join(map(str, also)))
            out[number] = replace(out[number], what=what)
    return out
