"""Silences on paper: after each point, when crew are asked, home is told and the alarm comes; and why so late."""

from __future__ import annotations

from collections.abc import Iterable
from datetime import datetime
from itertools import groupby
from zoneinfo import ZoneInfo

from rich.console import Console
from rich.table import Table

from server.conversation.telling.say import Say, slug
from server.conversation.telling.times import ceil_to, clock
from server.event.model import Event, Goal
from server.paper.before import BeforeStart
from server.watch.silences import Because, LegSilence

FEW_TOLD = 0.6
"""Where so many are missed, '1 runner in 1' would be said (own choice)."""
COLUMNS = ("after", "likely", "asked", "home", "alarm")


def silence_columns(say: Say) -> tuple[str, ...]:
    """The heads of the table."""
    return tuple(say.s(f"paper-silence-{c}") for c in COLUMNS)


def silence_rows(before: BeforeStart, runner: str, say: Say) -> tuple[tuple[str, ...], ...]:
    """A row a point she may last be heard of; each time for goals A, B and C."""
    rows = []
    for point, found in groupby(before.silences(runner), key=lambda s: s.point):
        three = sorted(found, key=lambda s: list(Goal).index(s.goal))
        first = say.s(
            "paper-silence-point",
            place=_name(before.event, runner, point),
            next=say.all(dict.fromkeys(_name(before.event, runner, s.next_point) for s in three)),
        )
        times = ([s.likely, s.asked, s.home, s.alarm] for s in three)
        rows.append((first, *(_three(say, column) for column in zip(*times, strict=True))))
    return tuple(rows)


def silence_notes(before: BeforeStart, runner: str, say: Say) -> tuple[str, ...]:
    """Where the alarm would come over two hours after the likely time by goal B: why, and what would shorten it."""
    return tuple(
        " ".join(x for x in _note(before.event, runner, s, say) if x)
        for s in before.silences(runner)
        if s.goal is Goal.B and s.far
    )


def _note(event: Event, runner: str, s: LegSilence, say: Say) -> list[str]:
    place = _name(event, runner, s.point)
    if s.after is None:
        out = [say.s("paper-silence-never", place=place)]
    else:
        out = [say.s("paper-silence-far", place=place, length=say.length(s.after))]
    for why in s.because:
        few = why is Because.MISSED and s.misses >= FEW_TOLD
        out.append(
            say.s(
                "paper-silence-few-told" if few else f"paper-silence-{slug(why.value)}",
                places=say.all(_name(event, runner, p) for p in s.quiet) if why is Because.NOBODY else "",
                place=_name(event, runner, s.next_point),
                count=max(round(1 / s.misses), 1) if s.misses else 1,
                length=say.length(s.asked - s.likely),
            )
        )
    if s.shorter is not None:
        more = _name(event, runner, s.shorter.point)
        out.append(say.s("paper-silence-shorter", place=more, when=_clock(say, s.shorter.alarm)))
    if s.told is not None and (s.alarm is None or s.told < s.alarm):
        at = _name(event, runner, s.next_point)
        out.append(say.s("paper-silence-told", place=at, when=_clock(say, s.told)))
    return out


def silence_table(before: BeforeStart, runner: str, say: Say) -> Table:
    """The table for a screen."""
    title = say.s("paper-head-silences", runner=before.event.runner(runner).name)
    table = Table(*silence_columns(say), title=title, title_justify="left")
    for row in silence_rows(before, runner, say):
        table.add_row(*row)
    return table


def print_silences(console: Console, before: BeforeStart, runner: str, say: Say) -> None:
    """When silence would be asked about, told home and an alarm; and why so late where it is late."""
    if before.silences(runner):
        console.print(silence_table(before, runner, say))
        for line in silence_notes(before, runner, say):
            console.print(f"- {line}", highlight=False, markup=False)


def _three(say: Say, times: Iterable[datetime | None]) -> str:
    """Side by side; a day that is said already is not said again, so that they fit a column."""
    told, zone, last = [], ZoneInfo(say.reader.event_time_zone), None
    for at in times:
        day = None if at is None else ceil_to(at).astimezone(zone).date()
        told.append(
            _clock(say, at)
            if at is None or day != last
            else clock(ceil_to(at), say.reader, say.now, day=False)
        )
        last = day or last
    return " / ".join(told)


def _clock(say: Say, at: datetime | None) -> str:
    return (
        say.s("paper-silence-no-alarm") if at is None else clock(ceil_to(at), say.reader, say.now, day=True)
    )


def _name(event: Event, runner: str, point: str) -> str:
    return event.course_of(runner).point(point).name
