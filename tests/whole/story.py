"""A bad night as a story: what people say, press and report; the table of who must have known what by when.

A story is a ground (a course with its people), what happens on it (`play`, a coroutine that drives a `Night`), and its
table. `hold` plays it on a stepped clock and checks the table, and besides what holds on every night (invariants.py).
The clock jumps to where the server asks to be asked again, so that a night takes seconds.
"""

from __future__ import annotations

from collections.abc import Awaitable, Callable
from dataclasses import dataclass, field
from datetime import datetime, timedelta
from typing import Protocol

from server.settings import Settings
from server.watch.notice import NoticeKind
from tests.whole import invariants
from tests.whole.night import Night, Told, night

__all__ = ["ANSWER", "Story", "hold", "must", "never", "play_story"]

ANSWER = "answer"
"""In a table in place of a kind of notice: the answer to what the person said or pressed."""
LONGEST_PAUSE_S = 1800.0
"""The server's longest pause between two looks in a story: what it forgets to ask for is seen to be late."""
BEGINS_BEFORE = timedelta(minutes=50)
"""How long before the start a story begins, where it says nothing else: after the test alarms."""

Kind = NoticeKind | str


class _Unhurried(Settings):
    """Settings whose longest pause may be longer than a server's."""

    tick_seconds_max: float = LONGEST_PAUSE_S


@dataclass(frozen=True, slots=True)
class Row:
    """One line of a table: from `low` to `high` minutes after a mark, `who` is told (or never told) a kind of notice
    with all those words in it. Kind None is any notice; `ANSWER` an answer."""

    must: bool
    mark: str
    low: float
    high: float
    who: str
    kind: Kind | None
    words: tuple[str, ...]

    def fits(self, told: Told) -> bool:
        """Whether a message is of this row, but for its time."""
        if told.who != self.who or (self.kind is None and not told.kind):
            return False
        if self.kind is not None and told.kind != ("" if self.kind == ANSWER else self.kind):
            return False
        return all(w in told.text for w in self.words)

    def __str__(self) -> str:
        when = f"{self.low:g} to {self.high:g} min after '{self.mark}'"
        what = f"{self.kind or 'anything'}" + "".join(f" with '{w}'" for w in self.words)
        return f"{when}: {self.who} {'must be told' if self.must else 'must NOT be told'}: {what}"


def must(mark: str, low: float, high: float, who: str, kind: Kind | None, *words: str) -> Row:
    """Somebody must be told."""
    return Row(True, mark, low, high, who, kind, words)


def never(mark: str, low: float, high: float, who: str, kind: Kind | None, *words: str) -> Row:
    """Somebody must not be told."""
    return Row(False, mark, low, high, who, kind, words)


class Place(Protocol):
    """What a story is played on: a `Ground`, or an event that is shipped."""

    @property
    def starts(self) -> datetime:
        """The start."""
        ...

    @property
    def files(self) -> dict[str, bytes]:
        """The route file beside the event file."""
        ...

    def event_text(self) -> str:
        """The event file."""
        ...


@dataclass(frozen=True, slots=True)
class Story:
    """A bad night. `begins`: the first moment, by default `BEGINS_BEFORE` the start. `apart_from`: names of invariants
    that do not hold in it, with the reason beside it where the story is written."""

    name: str
    ground: Place
    play: Callable[[Night], Awaitable[None]]
    table: tuple[Row, ...]
    begins: datetime | None = None
    apart_from: frozenset[str] = field(default_factory=frozenset)

    def __str__(self) -> str:
        return self.name


async def play_story(story: Story, database: str) -> Night:
    """Play it; the night when it is over. Its server is gone by then, its marks, messages and journal's rows are there."""
    ground = story.ground
    begins = story.begins or ground.starts - BEGINS_BEFORE
    settings = _Unhurried()
    async with night(database, ground.event_text(), ground.files, begins, settings) as n:
        n.mark("begin")
        await story.play(n)
        n.mark("end")
        await n.gather()
    return n


async def hold(story: Story, database: str) -> Night:
    """Play it and check its table and the invariants; whoever reads a failure sees every one, and all that was told."""
    n = await play_story(story, database)
    faults = [*failures(n, story.table)]
    faults += [
        f"{name}: {fault}"
        for name, check in invariants.ALL.items()
        if name not in story.apart_from
        for fault in check(n)
    ]
    assert not faults, f"{story.name}:\n  " + "\n  ".join(faults) + "\n\n" + transcript(n)
    return n


def failures(n: Night, table: tuple[Row, ...]) -> list[str]:
    """The rows of a table that do not hold, in words."""
    found = []
    for row in table:
        if row.mark not in n.marks:
            found.append(f"{row}: there is no mark '{row.mark}', only: {', '.join(n.marks)}")
            continue
        at = n.marks[row.mark]
        low, high = at + timedelta(minutes=row.low), at + timedelta(minutes=row.high)
        fitting = [t for t in n.told if row.fits(t)]
        hits = [t for t in fitting if low <= t.at <= high]
        if row.must and not hits:
            near = min(fitting, key=lambda t: min(abs(t.at - low), abs(t.at - high)), default=None)
            when = "never told" if near is None else f"told {minutes(near.at - at):+.0f} min"
            found.append(f"{row} (mark {n.wall(at)}): {when}")
        if not row.must and hits:
            found.append(f"{row} (mark {n.wall(at)}): told {hits[0]}")
    return found


def minutes(span: timedelta) -> float:
    """A span in minutes."""
    return span.total_seconds() / 60


def transcript(n: Night) -> str:
    """All that was said and told, as received."""
    marks = {at: name for name, at in n.marks.items()}
    lines = []
    for t in n.told:
        if t.at in marks:
            lines.append(f"--- {n.wall(t.at)} {marks.pop(t.at)}")
        head = f"{n.wall(t.at)} {t.who} <{t.kind or f'answer to: {t.to}'}>: "
        lines.append(head + t.text.replace("\n", "\n" + " " * 10))
    return "\n".join(lines)


def evening(n: Night, who: str) -> str:
    """One person's evening: each message with its time as they received it, and what they said."""
    rows = []
    for t in n.told:
        if t.who == who:
            rows += [f"{n.wall(t.at)}  < {t.to}"] if t.to else []
            mark = "!" if t.urgent else "=" if not t.kind else ">"
            rows.append(f"{n.wall(t.at)}  {mark} " + t.text.replace("\n", "\n" + " " * 13))
    return "\n".join(rows) + "\n"
