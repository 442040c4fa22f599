"""A start list (CSV: bib, name, wave, course, target) read, and put into the text of an event file.

Whoever is in the file already is told by bib (or, without one there, by name): only what differs is changed, an empty cell
leaves what stands there, and who is not in the list stays. So the same list again changes nothing.
"""

from __future__ import annotations

import re
from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass, field
from typing import Any

from server.drafting.document import Document, UnusualError
from server.drafting.rows import csv_rows, wrong_row
from server.event import Problem, Severity
from server.event.forms import slug
from server.event.model import Event
from server.event.times import TimeError, read_span
from server.sentences import Worded, say

__all__ = ["ListRow", "Listed", "listed_in", "not_changed", "read_start_list"]

COLUMNS = ("bib", "name", "wave", "course", "target")
ROWS_MAX = 12_000


@dataclass(frozen=True, slots=True)
class ListRow:
    """One runner of a list; `line` counts from 1. What is empty is not said."""

    line: int
    bib: str = ""
    name: str = ""
    wave: str = ""
    course: str = ""
    target: str = ""


@dataclass(frozen=True, slots=True)
class Listed:
    """The text with a list in it: bibs that were added, those changed, how many are as they were; the names of stored
    runners who are not in the list, and stay."""

    text: str
    added: tuple[str, ...] = ()
    changed: tuple[str, ...] = ()
    same: int = 0
    not_listed: tuple[str, ...] = ()
    problems: tuple[Problem, ...] = ()


def read_start_list(
    text: str, event: Event, waves: Mapping[str, Any], file: str
) -> tuple[list[ListRow], list[Problem]]:
    """The rows of a list, and everything that is wrong with it, each with line, column and remedy."""
    read = csv_rows(text, file, ROWS_MAX, _HEAD_HELP)
    if isinstance(read, Problem):
        return [], [read]
    columns, rest = read.columns, read.rows
    problems = list(_wrong_head(columns, read.head, read.line, file))
    if problems:
        return [], problems
    rows, seen = list[ListRow](), dict[str, int]()
    for line, row in rest:
        found = ListRow(line, **dict(zip(columns, row, strict=False)))
        wrong = list(_wrong_row(found, len(row), len(columns), event, waves, file))
        if found.bib in seen:
            what = say("wrong-bib-stands-line-too", bib=found.bib, seen=seen[found.bib])
            wrong.append(wrong_row(file, line, "bib", what, say("do-give-each-runner-bib-their")))
        seen.setdefault(found.bib, line)
        problems += wrong
        if not wrong:
            rows.append(found)
    return rows, problems


_HEAD_HELP = say("do-write-first-line-bib-name")


def not_changed(error: UnusualError, file: str) -> Problem:
    """The mistake that an event file is written in a way that no list can be put into."""
    what = say("wrong-event-file-not-changed-list", error=error.what)
    return Problem(Severity.ERROR, what, file, None, "", say("do-write-each-table-under-heading"))


def _wrong_head(columns: Sequence[str], head: Sequence[str], line: int, file: str) -> Iterator[Problem]:
    for name, said in zip(columns, head, strict=True):
        if name not in COLUMNS:
            yield wrong_row(file, line, said, say("wrong-no-column", said=said), _HEAD_HELP)
        elif columns.count(name) > 1:
            yield wrong_row(
                file, line, said, say("wrong-column-stands-twice", said=said), say("do-take-two-out")
            )
    for name in ("bib", "name"):
        if name not in columns:
            yield wrong_row(file, line, name, say("wrong-column-missing", name=name), _HEAD_HELP)


def _wrong_row(
    row: ListRow, cells: int, columns: int, event: Event, waves: Mapping[str, Any], file: str
) -> Iterator[Problem]:
    def wrong(column: str, what: Worded, remedy: Worded) -> Problem:
        return wrong_row(file, row.line, column, what, remedy)

    if cells > columns:
        more = say("do-put-name-separator-quotes")
        yield wrong("", say("wrong-row-cells-first-line", cells=cells, columns=columns), more)
    if not row.bib:
        yield wrong("bib", say("wrong-bib-missing"), say("do-give-each-runner-bib-their"))
    elif len(row.bib) > 20 or not re.fullmatch(r"[\w .-]+", row.bib):
        yield wrong("bib", say("wrong-no-bib", bib=row.bib), say("do-use-digits-letters-most-20"))
    if not row.name:
        yield wrong("name", say("wrong-name-missing"), say("do-write-runners-name"))
    elif len(row.name) > 100:
        yield wrong("name", say("wrong-text-characters", count=len(row.name)), say("do-keep-it-to", most=100))
    if row.wave and row.wave not in waves:
        known = ", ".join(sorted(waves)) or "none"
        add = say("do-add-start-under-waves-known", known=known)
        yield wrong("wave", say("wrong-no-wave", wave=row.wave), add)
    if row.course and row.course not in {c.id for c in event.courses}:
        courses = ", ".join(c.id for c in event.courses)
        yield wrong("course", say("wrong-no-course", course=row.course), say("do-use", known=courses))
    if row.target:
        try:
            read_span(row.target)
        except TimeError as error:
            yield wrong("target", error.what, error.remedy)


def listed_in(text: str, rows: Sequence[ListRow], event: Event, file: str) -> Listed:
    """The text of an event file with the runners of a list in it; UnusualError where it is in a form that is not changed."""
    document = Document(text)
    stored = _Stored(document.tables("runners"))
    people = bool(document.tables("people"))
    ids = {r.id for r in event.runners} | {p.id for p in event.people}
    new, persons = list[dict[str, Any]](), list[dict[str, Any]]()
    added, changed, problems, same, met = list[str](), list[str](), list[Problem](), 0, set[int]()
    for row in rows:
        number = stored.number(row)
        if number is None:
            problems += _missing_in_new(row, event, file)
            id_ = _new_id(row.bib, ids)
            new.append(_table(row, id_, event))
            persons.append({"id": id_, "name": row.name, "parts": [{"kind": "runner", "runner": id_}]})
            added.append(row.bib)
            continue
        met.add(number)
        values = _differs(stored.tables[number], row, event)
        if values:
            document.change("runners", number, values)
            changed.append(row.bib)
        else:
            same += 1
    if added and people and not _somebody_for_all(event):
        what = say("wrong-alarm-about-new-runner-would")
        problems.append(Problem(Severity.ERROR, what, file, None, "", _FOR_ALL_HELP))
    document.add_all("runners", new)
    if people:
        document.add_all("people", persons)
    left = tuple(_name(t) for n, t in enumerate(stored.tables) if n not in met)
    return Listed(document.text(), tuple(added), tuple(changed), same, left, tuple(problems))


_FOR_ALL_HELP = say("do-give-person-race-part-all")


def _somebody_for_all(event: Event) -> bool:
    """Whether an alarm about anybody reaches somebody."""
    return any(p.runner is None and p.ladder is not None for p in event.parts)


@dataclass(slots=True)
class _Stored:
    """The runners that stand in a file, found by bib, else by a name that one without a bib has."""

    tables: list[dict[str, Any]]
    by_bib: dict[str, int] = field(default_factory=dict)
    by_name: dict[str, int] = field(default_factory=dict)

    def __post_init__(self) -> None:
        names = [_name(t).casefold() for t in self.tables]
        for n, table in enumerate(self.tables):
            bib = str(table.get("bib", ""))
            if bib:
                self.by_bib[bib] = n
            elif names.count(names[n]) == 1:
                self.by_name[names[n]] = n

    def number(self, row: ListRow) -> int | None:
        found = self.by_bib.get(row.bib)
        return self.by_name.pop(row.name.casefold(), None) if found is None else found


def _name(table: Mapping[str, Any]) -> str:
    return str(table.get("name", table.get("id", "")))


def _missing_in_new(row: ListRow, event: Event, file: str) -> Iterator[Problem]:
    if not row.target:
        what = say("wrong-bib-new-no-target", bib=row.bib)
        yield wrong_row(file, row.line, "target", what, say("do-write-hours-minutes-29-00"))
    if not row.course and len(event.courses) > 1:
        courses = ", ".join(c.id for c in event.courses)
        what = say("wrong-bib-new-no-course", bib=row.bib)
        yield wrong_row(file, row.line, "course", what, say("do-use", known=courses))


def _new_id(bib: str, taken: set[str]) -> str:
    """An id made from a bib, which no runner and no person has."""
    base = f"bib-{slug(bib) or 'x'}"[:36]
    found, n = base, 2
    while found in taken:
        found, n = f"{base}-{n}", n + 1
    taken.add(found)
    return found


def _table(row: ListRow, id_: str, event: Event) -> dict[str, Any]:
    values: dict[str, Any] = {"id": id_, "name": row.name, "bib": row.bib}
    values |= {"wave": row.wave} if row.wave else {}
    values |= {"course": row.course} if row.course and len(event.courses) > 1 else {}
    return values | ({"target": {"finish": row.target}} if row.target else {})


def _differs(table: Mapping[str, Any], row: ListRow, event: Event) -> dict[str, Any]:
    """The keys of a stored runner that the list has otherwise."""
    said = {"bib": row.bib, "name": row.name, "wave": row.wave}
    said |= {"course": row.course} if len(event.courses) > 1 else {}
    values: dict[str, Any] = {k: v for k, v in said.items() if v and str(table.get(k, "")) != v}
    target = table.get("target", {})
    if row.target and not _same_span(target.get("finish"), row.target):
        values["target"] = {**dict.fromkeys(target), "finish": row.target}
    return values


def _same_span(stored: object, said: str) -> bool:
    try:
        return isinstance(stored, str) and read_span(stored) == read_span(said)
    except TimeError:
        return False
