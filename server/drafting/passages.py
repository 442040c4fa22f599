"""Others' passage times (CSV or JSON: bib, point, and time or elapsed) read row by row: one that is wrong is named, and
takes no other with it. Columns that nobody asked for, names among them, are not looked at."""

from __future__ import annotations

import json
import re
from collections.abc import Mapping, Sequence
from dataclasses import dataclass, field
from datetime import datetime, timedelta
from zoneinfo import ZoneInfo

from server.drafting.rows import csv_rows, wrong_row
from server.event import Problem
from server.event.model import Event
from server.event.times import DAYS, TimeError, read_clock, read_moment, read_span, to_utc
from server.facts.passages import Passage
from server.sentences import Worded, say

__all__ = ["ROWS_MAX", "Read", "of_csv", "of_json", "read_passages"]

ROWS_MAX = 20_000
"""So many rows are read at once (own choice)."""
AHEAD = timedelta(minutes=2)
"""So far a clock at the course may be ahead of ours (own choice)."""
_HEAD_HELP = say("do-passages-head")
_TIME_HELP = say("do-passage-time")
_FRACTION = re.compile(r"[.,]\d+$")
Row = tuple[int, Mapping[str, str]]


@dataclass(frozen=True, slots=True)
class Read:
    """The passages that were taken from some rows, and why each other row was not."""

    taken: tuple[Passage, ...]
    not_taken: tuple[Problem, ...]


def of_csv(text: str, file: str) -> tuple[Row, ...] | Problem:
    """The rows of a CSV by the names of its first line, each with its line; or what is wrong with the whole of it."""
    read = csv_rows(text, file, ROWS_MAX, _HEAD_HELP)
    if isinstance(read, Problem):
        return read
    for name in ("bib", "point", "time"):
        if name not in read.columns and not (name == "time" and "elapsed" in read.columns):
            return wrong_row(file, read.line, name, say("wrong-column-missing", name=name), _HEAD_HELP)
    return tuple((line, dict(zip(read.columns, row, strict=False))) for line, row in read.rows)


def of_json(found: object, file: str) -> tuple[Row, ...] | Problem:
    """The same of a list of objects with those names, or of an object that has it as `passages`; rows count from 1. What is
    no object, is a row that says nothing."""
    if isinstance(found, str):
        try:
            found = json.loads(found)
        except (ValueError, RecursionError):
            return wrong_row(file, 1, "", say("wrong-passages-json"), _HEAD_HELP)
    if isinstance(found, Mapping):
        found = found.get("passages")
    if not isinstance(found, Sequence) or isinstance(found, str):
        return wrong_row(file, 1, "", say("wrong-passages-json"), _HEAD_HELP)
    if len(found) > ROWS_MAX:
        what = say("wrong-rows-too-many", count=len(found))
        return wrong_row(file, ROWS_MAX + 1, "", what, say("do-keep-them", most=ROWS_MAX))
    return tuple((n, _plain(row)) for n, row in enumerate(found, 1))


def _plain(row: object) -> dict[str, str]:
    if not isinstance(row, Mapping):
        return {}
    return {str(k).casefold(): "" if v is None else str(v).strip() for k, v in row.items()}


def read_passages(rows: Sequence[Row], event: Event, starts: datetime, now: datetime, file: str) -> Read:
    """The passages of rows, as far as they can be right. `starts`: when the race started, from which elapsed times count; no
    passage lies before it or after `now`. A row without a time takes back what was said of that bib there."""
    reader = _Reader(event, starts, now)
    taken, wrong = list[Passage](), list[Problem]()
    for line, row in rows:
        try:
            taken.append(reader.passage(row))
        except _Wrong as w:
            wrong.append(wrong_row(file, line, w.column, w.what, w.remedy))
    return Read(tuple(taken), tuple(wrong))


class _Wrong(Exception):  # noqa: N818 - no error of ours
    def __init__(self, column: str, what: Worded, remedy: Worded) -> None:
        super().__init__(what)
        self.column, self.what, self.remedy = column, what, remedy


@dataclass(slots=True)
class _Reader:
    event: Event
    starts: datetime
    now: datetime
    followed: frozenset[str] = field(init=False)
    places: dict[str, set[str]] = field(init=False)

    def __post_init__(self) -> None:
        self.followed = frozenset(r.bib.casefold() for r in self.event.runners if r.bib)
        self.places = {}
        for p in (p for course in self.event.courses for p in course.points):
            for word in (p.id, p.name):
                self.places.setdefault(word.casefold(), set()).add(p.id)

    def passage(self, row: Mapping[str, str]) -> Passage:
        bib = row.get("bib", "")
        if not bib:
            raise _Wrong("bib", say("wrong-bib-missing"), _HEAD_HELP)
        if len(bib) > 20 or not re.fullmatch(r"[\w .-]+", bib):
            raise _Wrong("bib", say("wrong-no-bib", bib=bib[:40]), say("do-use-digits-letters-most-20"))
        if bib.casefold() in self.followed:
            raise _Wrong("bib", say("wrong-passage-followed", bib=bib), say("do-passage-check-in"))
        return Passage(bib, self._point(row.get("point", "")), self._time(row))

    def _point(self, said: str) -> str:
        found = self.places.get(said.casefold(), set())
        if len(found) == 1:
            return next(iter(found))
        known = ", ".join(sorted(found) or [p.id for c in self.event.courses for p in c.points])
        code = "wrong-passage-points" if found else "wrong-passage-no-point"
        raise _Wrong("point", say(code, said=said[:80]), say("do-use", known=known))

    def _time(self, row: Mapping[str, str]) -> datetime | None:
        said, elapsed = row.get("time", ""), row.get("elapsed", "")
        if not said and not elapsed:
            if "time" not in row and "elapsed" not in row:
                raise _Wrong("time", say("wrong-passage-no-time", said=""), _TIME_HELP)
            return None
        column = "time" if said else "elapsed"
        try:
            at = self._clock(said) if said else self.starts + read_span(_FRACTION.sub("", elapsed))
        except TimeError as error:
            raise _Wrong(column, error.what, error.remedy if said else _TIME_HELP) from None
        except (ValueError, OverflowError):
            raise _Wrong(column, say("wrong-passage-no-time", said=said[:40]), _TIME_HELP) from None
        if at < self.starts:
            raise _Wrong(column, say("wrong-passage-before-start", said=said or elapsed), _TIME_HELP)
        if at > self.now + AHEAD:
            raise _Wrong(column, say("wrong-passage-to-come", said=said or elapsed), _TIME_HELP)
        return at

    def _clock(self, said: str) -> datetime:
        """A moment as the clock at the race shows it, with a date, with a day, or with neither where it was only once."""
        zone = self.event.time_zone
        begin = self.starts.astimezone(ZoneInfo(zone)).replace(tzinfo=None)
        text = _FRACTION.sub("", said)
        if re.match(r"\d{4}-", text):
            local = datetime.fromisoformat(said)
        elif text[:3].lower() in DAYS:
            local = read_moment(text, begin)
        else:
            local = datetime.combine(begin.date(), read_clock(text))
            local += timedelta(days=local < begin)
            if to_utc(local + timedelta(days=1), zone)[0] <= self.now + AHEAD:
                raise TimeError(say("wrong-passage-which-day", said=said), say("do-passage-day"))
        at, twice = to_utc(local, zone)
        if twice is not None:
            raise TimeError(twice, say("do-passage-day"))
        return at
