"""Forecasts and views of a whole field: each worked out when somebody asks for it, kept while what it rests on stays."""

from __future__ import annotations

from collections.abc import Callable, Iterator, Mapping
from dataclasses import dataclass, field
from datetime import datetime
from typing import TypeVar

import structlog

from server.api.building import Built
from server.event.model import Event
from server.facts.state import Interval, RaceState, RunnerState
from server.forecast.bridge import outlook
from server.forecast.channel_outages import Hearing
from server.forecast.day import NOBODY, Followed, Strangers, day_of, seen_at, seen_of_others
from server.forecast.outlook import DayLegs, Outlook, View
from server.forecast.values import FloatArray
from server.log import broke

__all__ = ["OnDemand", "OutlookCache", "outlooks_of", "views_of"]

log = structlog.get_logger("picture")

T = TypeVar("T")


class OnDemand(Mapping[str, T]):
    """By runner, what `find` finds of her once it is asked for; who has none (None) is not in it."""

    def __init__(self, runners: tuple[str, ...], find: Callable[[str], T | None]) -> None:
        self._runners, self._find = runners, find
        self._found: dict[str, T | None] = {}

    def __getitem__(self, runner: str) -> T:
        if runner not in self._found:
            self._found[runner] = self._find(runner)
        found = self._found[runner]
        if found is None:
            raise KeyError(runner)
        return found

    def __iter__(self) -> Iterator[str]:
        return (r for r in self._runners if r in self)

    def __len__(self) -> int:
        return sum(1 for _ in self)


@dataclass(slots=True)
class OutlookCache:
    """Forecasts worked out before of one build, with what each rests on."""

    built: Built
    outlooks: dict[str, tuple[object, Outlook | None]] = field(default_factory=dict)
    ahead: dict[str, tuple[Outlook, object]] = field(default_factory=dict)
    strangers: Strangers = NOBODY
    days: dict[str, tuple[bytes, DayLegs | None]] = field(default_factory=dict)
    others: dict[str, tuple[RunnerState, Strangers, frozenset[datetime], int, FloatArray | None]] = field(
        default_factory=dict
    )
    followed: Followed = field(init=False)

    def __post_init__(self) -> None:
        self.followed = Followed(self.built.event)

    def others_of(
        self, me: RunnerState, starts: frozenset[datetime], held: tuple[Interval, ...]
    ) -> FloatArray | None:
        """Others' arrivals that concern her, looked for again once she, the strangers, or times of the followed before she
        was last seen have changed: of a whole field hardly any for one report."""
        changes = self.followed.changes
        known = self.others.get(me.runner)
        if known and known[0] is me and known[1] is self.strangers and known[2] == starts:
            seen = max(seen_at(me).values(), default=0.0)
            if min(changes[known[3] :], default=seen + 1.0) > seen:
                self.others[me.runner] = (*known[:3], len(changes), known[4])
                return known[4]
        plan = self.built.timetables[me.runner]
        found = seen_of_others(self.strangers, self.followed, me, plan, starts, held)
        self.others[me.runner] = (me, self.strangers, starts, len(changes), found)
        return found

    def last_had(self, runner: str) -> Outlook | None:
        """Her forecast as it was last worked out, perhaps before her last report."""
        return self.outlooks.get(runner, (None, None))[1]


def outlooks_of(
    known: OutlookCache, event: Event, state: RaceState, hearing: Hearing
) -> Mapping[str, Outlook]:
    """The forecasts of an event, its meetings as they are gone to, in a state."""
    built = known.built
    known.followed.take(state.runners)
    starts = frozenset(r.start for r in state.runners)

    def find(runner: str) -> Outlook | None:
        if runner not in built.timetables:
            return None
        others = known.others_of(state.runner(runner), starts, state.held)
        rests_on = (*_rests_on(event, state, hearing, runner), None if others is None else others.tobytes())
        before = known.outlooks.get(runner)
        if before is None or before[0] != rests_on:
            before = known.outlooks[runner] = (
                rests_on,
                _worked_out(known, event, state, hearing, runner, others),
            )
        return before[1]

    return OnDemand(tuple(r.runner for r in state.runners), find)


def _rests_on(event: Event, state: RaceState, hearing: Hearing, runner: str) -> tuple[object, ...]:
    meetings = event.meetings_of(runner)
    crew = {who for m in meetings for who in m.crew}
    there = tuple(x for x in state.crew_there if x[1] in crew)
    left = tuple(x for x in state.crew_left if x[1] in crew)
    return state.runner(runner), state.cut_offs_moved, there, left, hearing, meetings


def _worked_out(
    known: OutlookCache,
    event: Event,
    state: RaceState,
    hearing: Hearing,
    runner: str,
    others: FloatArray | None,
) -> Outlook | None:
    built, me = known.built, state.runner(runner)
    course, plan = built.courses[event.runner(runner).course], built.timetables[runner]
    try:
        day = None if others is None else _day(known, event, me, others)
        return outlook(event, me, state, plan, course, hearing=hearing, day=day)
    except Exception as error:
        # Facts that no forecast can hold must not take the board, the chat and a call for help with them.
        broke(log, "no forecast", error, event_id=event.id, runner=runner)
        return None


def _day(known: OutlookCache, event: Event, me: RunnerState, others: FloatArray) -> DayLegs | None:
    """Worked out once for those times of others, however often something new is heard of her meanwhile."""
    key = others.tobytes()
    before = known.days.get(me.runner)
    if before is None or before[0] != key:
        course = known.built.courses[event.runner(me.runner).course]
        day = day_of(others, event, me, known.built.timetables[me.runner], course)
        before = known.days[me.runner] = (key, day)
    return before[1]


def views_of(
    outlooks: Mapping[str, Outlook], runners: tuple[str, ...], now: datetime, event_id: str
) -> Mapping[str, View]:
    """The forecasts as seen now; without those, and with a word in the log, that can't be had."""

    def find(runner: str) -> View | None:
        of_her = outlooks.get(runner)
        try:
            return None if of_her is None else of_her.at(now)
        except Exception as error:
            broke(log, "no view of a forecast", error, event_id=event_id, runner=runner)
            return None

    return OnDemand(runners, find)
