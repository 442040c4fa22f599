"""Everything the watch looks at, as values: gathered by the server at one moment."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field
from datetime import datetime

from server.course import Course
from server.event.model import Event
from server.facts.state import Interval, RaceState
from server.forecast.hearing import Down, Hearing
from server.forecast.outlook import Outlook
from server.plan.timetable import Timetable
from server.watch.notice import Made, Notice

GROUP = "group:"
"""How the id of a group begins, where a person's id would stand."""


@dataclass(frozen=True, slots=True)
class Group:
    """A chat of the whole crew, by its id (`GROUP` and more), and since when it is told what concerns all."""

    id: str
    since: datetime


@dataclass(frozen=True, slots=True)
class Situation:
    """One event at one moment. `outages` are times when nobody at all could have reached us, `hearing` says when whom
    could not, `downs` are all outages of components of ours; `watching_since` is when this server last finished
    reading what waited after a start."""

    event: Event
    state: RaceState
    outlooks: Mapping[str, Outlook]
    timetables: Mapping[str, Timetable]
    courses: Mapping[str, Course]
    made: tuple[Made, ...]
    outages: tuple[Interval, ...] = ()
    watching_since: datetime | None = None
    downs: tuple[Down, ...] = ()
    hearing: Hearing = field(default_factory=Hearing)
    groups: tuple[Group, ...] = ()


@dataclass(frozen=True, slots=True)
class Verdict:
    """Notices owed now (none of them among those made), and when time alone may change the answer."""

    owed: tuple[Notice, ...]
    ask_again: datetime | None
