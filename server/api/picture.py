"""Gathers everything about one event at one moment, from the journal and the pure rooms, each part cached.

An event's version is built once (course, timetables); the fold once per journal head; a forecast's posterior
once per fold. Only the views depend on `now`, and they are cheap. Heavy steps run in a thread.
"""

from __future__ import annotations

import asyncio
from collections.abc import Mapping
from dataclasses import dataclass, field
from datetime import datetime, timedelta
from functools import partial

import structlog

from server.api.building import Built, build
from server.course import Course
from server.event.model import Event
from server.facts.entry import Entry, Kind, Source
from server.facts.fold import fold
from server.facts.state import Going, RaceState
from server.forecast.bridge import outlook
from server.forecast.hearing import LISTENS, Down, Hearing, hearing_of
from server.forecast.outlook import Outlook, View
from server.journal import Journal, UnknownError
from server.log import broke
from server.plan.light import HORIZON_DEG, sun_elevation_deg
from server.plan.timetable import Timetable
from server.watch.as_told import meetings_as_told, sight_of
from server.watch.leaving import p_gone_on
from server.watch.notice import MeetingValues
from server.watch.situation import Group, Situation

log = structlog.get_logger("picture")

OUTAGES_BACK = timedelta(days=14)


@dataclass(frozen=True, slots=True, eq=False)
class Picture:
    """One event at `now`: the situation the watch sees, with the views of every runner's forecast."""

    situation: Situation
    now: datetime
    views: Mapping[str, View]
    entries: tuple[Entry, ...]
    built: Built

    @property
    def event(self) -> Event:
        """The event as last stored, every point with its km."""
        return self.situation.event

    @property
    def state(self) -> RaceState:
        """What the entries say."""
        return self.situation.state

    def course(self, runner: str) -> Course:
        """The line a runner is on."""
        return self.situation.courses[self.event.runner(runner).course]

    def timetable(self, runner: str) -> Timetable:
        """The plan of a runner."""
        return self.situation.timetables[runner]

    def late_time(self, runner: str) -> tuple[str, datetime] | None:
        """The next point somebody reports from, and when she is late there."""
        outlook_of = self.situation.outlooks.get(runner)
        return outlook_of.late_time() if outlook_of else None

    def dark(self, runner: str, point: str, when: datetime) -> bool:
        """Whether the sun is down at a point at that moment, as kit needs to know it."""
        spot = self.course(runner).at(self.event.course_of(runner).point(point).km or 0.0)
        return sun_elevation_deg(spot.lat_deg, spot.lon_deg, when) < HORIZON_DEG

    def meetings(self, runner: str) -> tuple[MeetingValues, ...]:
        """Her meetings still to come, as people are told of them."""
        return meetings_as_told(self.situation, runner, self.now)

    def p_gone_on(self, runner: str) -> float:
        """P(she has gone on unseen from where she was last seen in); 0 where she was not last seen in."""
        last = self.state.runner(runner).last_known
        if last is None or last.point is None or self.state.runner(runner).going is not Going.AT_POINT:
            return 0.0
        return p_gone_on(sight_of(self.situation, runner, self.now), last.point)


def _seen_now(outlook: Outlook, now: datetime, event_id: str, runner: str) -> View | None:
    """The forecast as seen now; None, and a word in the log, where it can't be had."""
    try:
        return outlook.at(now)
    except Exception as error:
        broke(log, "no view of a forecast", error, event_id=event_id, runner=runner)
        return None


@dataclass(slots=True)
class _Folded:
    """One fold, and until when it holds: a later `now` changes it only by an entry from the future."""

    head: str
    version: int
    hearing: Hearing
    state: RaceState
    entries: tuple[Entry, ...]
    folded_at: datetime
    holds_until: datetime | None
    outlooks: Mapping[str, Outlook]

    def fits(self, head: str, version: int, hearing: Hearing, now: datetime) -> bool:
        return (
            (self.head, self.version, self.hearing) == (head, version, hearing)
            and now >= self.folded_at
            and (self.holds_until is None or now < self.holds_until)
        )


@dataclass(slots=True)
class _Kept:
    """What is kept of one event between two questions."""

    lock: asyncio.Lock = field(default_factory=asyncio.Lock)
    built: tuple[int, Built] | None = None
    folded: _Folded | None = None


class Pictures:
    """Takes pictures of events; one for the whole server, shared by answers, check-ins and ticks."""

    def __init__(self, journal: Journal) -> None:
        self._journal = journal
        self._kept: dict[str, _Kept] = {}
        self.watching_since: datetime | None = None

    async def built(self, event_id: str) -> Built:
        """The event as last stored with its courses and timetables; `UnknownError` if there is none."""
        kept = self._kept.setdefault(event_id, _Kept())
        async with kept.lock:
            return await self._built(event_id, kept)

    async def event(self, event_id: str) -> Event:
        """The event as last stored."""
        return (await self.built(event_id)).event

    async def take(self, event_id: str, now: datetime) -> Picture:
        """Everything about that event at `now`; `UnknownError` if there is none."""
        kept = self._kept.setdefault(event_id, _Kept())
        async with kept.lock:
            built = await self._built(event_id, kept)
            downs = await self._downs(now)
            hearing = await self._hearing(built.event, downs)
            folded = await self._folded(event_id, kept, built, now, hearing)
        situation = Situation(
            event=built.event,
            state=folded.state,
            outlooks=folded.outlooks,
            timetables=built.timetables,
            courses=built.courses,
            made=await self._journal.made(event_id),
            outages=hearing.nobody,
            watching_since=self.watching_since,
            downs=downs,
            hearing=hearing,
            groups=tuple(Group(g.id, g.bound_at) for g in await self._journal.groups(event_id)),
        )
        views = {
            r: v for r, o in folded.outlooks.items() if (v := _seen_now(o, now, event_id, r)) is not None
        }
        return Picture(situation, now, views, folded.entries, built)

    async def _built(self, event_id: str, kept: _Kept) -> Built:
        versions = await self._journal.event_versions(event_id)
        if not versions:
            self._kept.pop(event_id, None)
            raise UnknownError("there is no such event", "event", "GET /v1/me lists yours")
        latest = versions[-1].version
        if kept.built is None or kept.built[0] != latest:
            stored = await self._journal.load_event(event_id, latest)
            if not stored.text:
                raise UnknownError("the event's personal data has been deleted", "event")
            made = await asyncio.to_thread(build, stored.text, stored.files, version=latest)
            kept.built = (latest, made)
        return kept.built[1]

    async def _folded(
        self, event_id: str, kept: _Kept, built: Built, now: datetime, hearing: Hearing
    ) -> _Folded:
        head = str(await self._journal.head(event_id))
        if kept.folded and kept.folded.fits(head, built.event.version, hearing, now):
            return kept.folded
        entries = tuple(await self._journal.entries(event_id))
        kept.folded = await asyncio.to_thread(partial(_fold, built, entries, now, head=head, hearing=hearing))
        return kept.folded

    async def _downs(self, now: datetime) -> tuple[Down, ...]:
        found = await self._journal.outages(now - OUTAGES_BACK, now)
        return tuple(Down(o.component, o.start, o.end) for o in found)

    async def _hearing(self, event: Event, downs: tuple[Down, ...]) -> Hearing:
        if not any(d.component.startswith(LISTENS) for d in downs):
            return hearing_of(downs, (), {})
        beats = await self._journal.last_heartbeats()
        listening = [b.removeprefix(LISTENS) for b in beats if b.startswith(LISTENS)]
        return hearing_of(downs, sorted(listening), await self._journal.channels_of(event.people))


@dataclass(frozen=True, slots=True, eq=False)
class Supposed:
    """A what-if: the view that would hold, and what was supposed."""

    view: View
    factor: float | None
    leaving: datetime | None


def suppose(picture: Picture, runner: str, factor: float | None, leaving: datetime | None) -> Supposed:
    """What the forecast would be if she went slower by `factor` from here (1.1 = a tenth), or left the point
    where she is at `leaving`. Nothing of it is kept. Takes as long as a new forecast."""
    event, now = picture.event, max(picture.now, leaving or picture.now)
    reached = picture.state.runner(runner).reached
    extra = []
    if factor is not None:
        extra.append(_supposed_entry(event, runner, Kind.CONDITION, picture.now, factor=factor))
    if leaving is not None and reached:
        extra.append(_supposed_entry(event, runner, Kind.OUT, leaving, point=reached[-1]))
    state = fold((*picture.entries, *extra), event, now, picture.built.placer)
    new = outlook(
        event,
        state.runner(runner),
        state,
        picture.timetable(runner),
        picture.course(runner),
        picture.situation.outages,
        picture.situation.hearing,
    )
    return Supposed(new.at(now), factor, leaving)


def _supposed_entry(
    event: Event,
    runner: str,
    kind: Kind,
    at: datetime,
    *,
    factor: float | None = None,
    point: str | None = None,
) -> Entry:
    return Entry(
        id=f"supposed-{kind.value}",
        event=event.id,
        runner=runner,
        kind=kind,
        seen_at=at,
        sent_at=at,
        received_at=at,
        by="",
        source=Source.CREW,
        sender="supposed",
        key=kind.value,
        factor=factor,
        point=point,
    )


def _fold(
    built: Built,
    entries: tuple[Entry, ...],
    now: datetime,
    *,
    head: str,
    hearing: Hearing,
) -> _Folded:
    event = built.event
    state = fold(entries, event, now, built.placer)
    waiting = [e.seen_at for r in state.runners for e in r.future] + [e.seen_at for e in state.future]
    outlooks: dict[str, Outlook] = {}
    for r in state.runners:
        if r.runner in built.timetables:
            course = built.courses[event.runner(r.runner).course]
            try:
                found = outlook(event, r, state, built.timetables[r.runner], course, hearing=hearing)
            except Exception as error:
                # Facts that no forecast can hold must not take the board, the chat and a call for help with them.
                broke(log, "no forecast", error, event_id=event.id, runner=r.runner)
                continue
            outlooks[r.runner] = found
    return _Folded(
        head=head,
        version=event.version,
        hearing=hearing,
        state=state,
        entries=entries,
        folded_at=now,
        holds_until=min(waiting, default=None),
        outlooks=outlooks,
    )
