"""What is wrong with an event file, where, and what to do about it."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass, replace
from enum import StrEnum


class Severity(StrEnum):
    """An error stands in the way of loading; a warning is said and may be meant."""

    ERROR = "error"
    WARNING = "warning"


@dataclass(frozen=True, slots=True)
class Problem:
    """One mistake. `line` is 1-based, None where no line can be named; `field` a path such as
    `points.mill.km`, items by their id where they have one; `remedy` a sentence."""

    severity: Severity
    what: str
    file: str
    line: int | None
    field: str
    remedy: str

    def __str__(self) -> str:
        place = self.file if self.line is None else f"{self.file}:{self.line}"
        field = f" {self.field}:" if self.field else ""
        said = f"{place}: {self.severity.value}:{field} {self.what}. {self.remedy}".rstrip(". ")
        return said if said.endswith("?") else said + "."


_NO_SUCH = "there is no "


def once(problems: Iterable[Problem]) -> list[Problem]:
    """One id that there is none of is one mistake, however often it is used: told where it stands first, with the other
    lines. `problems` in the order of the file."""
    first: dict[tuple[str, str], int] = {}
    out: list[Problem] = []
    others: dict[int, list[int]] = {}
    for p in problems:
        key = (p.what, p.remedy)
        if p.what.startswith(_NO_SUCH) and "'" in p.what and key in first:
            others.setdefault(first[key], []).extend([] if p.line is None else [p.line])
            continue
        first.setdefault(key, len(out))
        out.append(p)
    for number, lines in others.items():
        also = sorted({n for n in lines if n != out[number].line})
        if also:
            where = ", ".join(str(n) for n in also)
            what = f"{out[number].what} (also on line{'s' if len(also) > 1 else ''} {where})"
            out[number] = replace(out[number], what=what)
    return out
