"""The rows of a list that somebody hands in as CSV: by the names of its first line, whatever separates the cells."""

from __future__ import annotations

import csv
import re
from dataclasses import dataclass

from server.event import Problem, Severity
from server.sentences import Worded, say

__all__ = ["Rows", "csv_rows", "wrong_row"]


@dataclass(frozen=True, slots=True)
class Rows:
    """The first line as written and in small letters, its number, and the rows after it with theirs; lines count from 1."""

    line: int
    head: list[str]
    columns: list[str]
    rows: list[tuple[int, list[str]]]


def csv_rows(text: str, file: str, most: int, head_help: Worded) -> Rows | Problem:
    """The rows of a text, empty lines left out, or what is wrong with the whole of it."""
    lines = re.split(r"\r\n|\n|\r", text.removeprefix("\ufeff").rstrip("\r\n"))
    if not any(line.strip() for line in lines):
        return wrong_row(file, 1, "", say("wrong-list-empty"), head_help)
    first = next(line for line in lines if line.strip())
    reader = csv.reader(lines, delimiter=max(",;\t", key=first.count), strict=True)
    try:
        cells = [(reader.line_num, [c.strip() for c in row]) for row in reader if any(c.strip() for c in row)]
    except csv.Error:
        quotes = say("do-put-quote-both-ends-cell")
        return wrong_row(file, reader.line_num, "", say("wrong-quote-not-closed"), quotes)
    (at, head), rest = cells[0], cells[1:]
    if len(rest) > most:
        what = say("wrong-rows-too-many", count=len(rest))
        return wrong_row(file, rest[most][0], "", what, say("do-keep-them", most=most))
    return Rows(at, head, [c.casefold() for c in head], rest)


def wrong_row(file: str, line: int, column: str, what: Worded, remedy: Worded) -> Problem:
    """A mistake in a row, or in one column of it."""
    return Problem(Severity.ERROR, what, file, line, column, remedy)
