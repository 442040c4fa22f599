"""What the forecast reads of a plan: any timetable with these fields will do; how one is made it need not know."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from datetime import datetime, timedelta
from typing import Protocol

from server.event.model import Goal


class PlannedRow(Protocol):
    """One point of a plan: km on the line, the climb of the leg before it (m), stop, in and out per goal from the start."""

    @property
    def point(self) -> str: ...
    @property
    def km(self) -> float: ...
    @property
    def leg_ascent_m(self) -> float: ...
    @property
    def stop(self) -> timedelta: ...
    @property
    def arrive(self) -> Mapping[Goal, timedelta]: ...
    @property
    def leave(self) -> Mapping[Goal, timedelta]: ...


class Plan(Protocol):
    """A runner's plan, rows in running order; `quality` is the word for what it was made from, `spread` the standard
    deviation of log(actual / goal B), 0 where the plan does not know."""

    @property
    def start(self) -> datetime: ...
    @property
    def rows(self) -> Sequence[PlannedRow]: ...
    @property
    def quality(self) -> str: ...
    @property
    def spread(self) -> float: ...

    def row(self, point: str) -> PlannedRow:
        """The row of that point; KeyError if there is none."""
        ...
