"""Everything the watch looks at, as values: gathered by the server at one moment."""

from __future__ import annotations

from collections.abc import Callable, Mapping
from dataclasses import dataclass, field
from datetime import datetime
from typing import TypeVar, cast

from server.course import Course
from server.event.model import Event
from server.facts.state import Interval, RaceState
from server.forecast.channel_outages import Down, Hearing
from server.forecast.outlook import Outlook
from server.plan.timetable import Timetable
from server.watch.notice import Made, MeetingValues, Notice
from server.watch.uncovered_values import Uncovered

T = TypeVar("T")

GROUP = "group:"
"""How the id of a group begins, where a person's id would stand."""


@dataclass(frozen=True, slots=True)
class Group:
    """A chat of the whole crew, by its id (`GROUP` and more), and since when it is told what concerns all."""

    id: str
    since: datetime


@dataclass(frozen=True, slots=True)
class Loaded:
    """When the version in force was loaded, and the event as people know it: of the version before, or of one further back
    where nobody has been told of what came between. `asked`: it came of a change that somebody asked for, not of a file."""

    at: datetime
    before: Event
    asked: bool = False


@dataclass(frozen=True, slots=True)
class Situation:
    """One event at one moment. `outages` are times when nobody at all could have reached us, `hearing` says when whom
    could not, `downs` are all outages of components of ours; `watching_since` is when this server last finished
    reading what waited after a start. `planned` and `uncovered` are set once it went through `covering.covered`: the event
    as planned, where `event` has its meetings as they are gone to now, and the meetings somebody fell out of.
    `loaded` of a later version than the first. `sheet` are each runner's meetings as they stand before the start: what a
    person knows of one that nobody has told them about since. `grave`: ids of the entries whose words say that she may be
    in danger."""

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
    planned: Event | None = None
    uncovered: tuple[Uncovered, ...] = ()
    loaded: Loaded | None = None
    sheet: Mapping[str, tuple[MeetingValues, ...]] = field(default_factory=dict)
    grave: frozenset[str] = frozenset()
    memo: dict[object, tuple[object, object]] = field(default_factory=dict, compare=False, repr=False)

    def made_about(self, runner: str) -> tuple[Made, ...]:
        """The notices made about one runner ('' = about none), in the order in which they were made."""
        return self._made_by("runner", lambda m: m.notice.key.runner).get(runner, ())

    def made_to(self, person: str) -> tuple[Made, ...]:
        """The notices made to one person or group, about whomever."""
        return self._made_by("person", lambda m: m.notice.key.person).get(person, ())

    def _made_by(self, name: str, key: Callable[[Made], str]) -> Mapping[str, tuple[Made, ...]]:
        known = self.memo.get((name, id(self.made)))
        if known is None:
            found: dict[str, list[Made]] = {}
            for m in self.made:
                found.setdefault(key(m), []).append(m)
            known = ({k: tuple(mine) for k, mine in found.items()}, self.made)
            self.memo[name, id(self.made)] = known
        return cast(Mapping[str, tuple[Made, ...]], known[0])

    def once(self, name: object, find: Callable[[], T]) -> T:
        """What `find` makes of event, facts and forecasts, found once for all runners: situations that differ in the notices
        made alone share it."""
        rests_on = (self.event, self.state, self.outlooks, self.timetables, self.courses, self.uncovered)
        key = (name, *map(id, rests_on))
        if key not in self.memo:
            # With what it rests on, which so lives as long and keeps its id for itself.
            self.memo[key] = (find(), rests_on)
        return cast(T, self.memo[key][0])


@dataclass(frozen=True, slots=True)
class Verdict:
    """Notices owed now (none of them among those made), and when time alone may change the answer."""

    owed: tuple[Notice, ...]
    ask_again: datetime | None
