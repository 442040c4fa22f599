"""Gathers everything about one event at one moment, from the journal and the pure rooms, each part cached.

An event's version is built once (course, timetables); the fold grows with the journal; a forecast's posterior is worked out
when somebody asks for it. Only the views depend on `now`, and they are cheap. Heavy steps run in a thread.
"""

from __future__ import annotations

import asyncio
from collections.abc import Callable, Mapping, Sequence
from concurrent.futures import ThreadPoolExecutor
from dataclasses import dataclass, field, replace
from datetime import datetime, timedelta
from functools import lru_cache, partial
from typing import Any, TypeVar, cast

import structlog

from server.api.building import Built, build
from server.api.outlooks import OnDemand, OutlookCache, outlooks_of, views_of
from server.conversation.understanding import Danger
from server.conversation.understanding.danger import by_rule
from server.conversation.understanding.language import lexicon
from server.course import Course
from server.event import parse_event
from server.event.model import Event
from server.facts.cut_offs import Past, PastCutOff
from server.facts.entry import Entry, Kind, Source
from server.facts.fold import fold
from server.facts.folding import Folding
from server.facts.passages import Passage
from server.facts.state import Going, RaceState
from server.forecast.bridge import outlook
from server.forecast.channel_outages import LISTENS, Down, Hearing, hearing_of
from server.forecast.day import NOBODY, Strangers
from server.forecast.outlook import Outlook, View
from server.journal import EventVersion, Journal, JournalHead, MadeKnown, Pulse, UnknownError, VerdictBasis
from server.plan.light import HORIZON_DEG, sun_elevation_deg
from server.plan.timetable import Timetable
from server.watch.circle import share_of
from server.watch.covering import covered
from server.watch.crew_routes import members
from server.watch.evaluate import evaluate_help
from server.watch.leaving import p_gone_on
from server.watch.meetings import meetings
from server.watch.new_version import version_told
from server.watch.notice import Made, MeetingValues, Notice, NoticeKind
from server.watch.runner_context import Sight
from server.watch.situation import Group, Loaded, Situation
from server.watch.timed_out import goes_no_further, missed
from server.watch.told_times import meetings_as_told, sight_of

log = structlog.get_logger("picture")

T = TypeVar("T")

SOON_S = 2.0
"""So long the answer to a message waits for the newest picture (own choice: less than half of the five seconds within
which a call for help is out)."""
OUTAGES_BACK = timedelta(days=14)
CHANGED = "changed by "
"""How who made a version of an event is named where it came of a change that they asked for."""


@dataclass(frozen=True, slots=True, eq=False)
class Picture:
    """One event at `now`: the situation the watch sees, with the views of every runner's forecast."""

    situation: Situation
    now: datetime
    views: Mapping[str, View]
    entries: tuple[Entry, ...]
    built: Built
    head: str = ""
    strangers: Strangers = NOBODY
    ahead: dict[str, tuple[Outlook, object]] = field(default_factory=dict, repr=False)
    """What others have worked out of a forecast, by runner, with the forecast: kept from picture to picture."""
    memo: dict[object, Any] = field(default_factory=dict, repr=False)

    def once(self, key: object, find: Callable[[], T]) -> T:
        """What `find` finds in this picture, found once."""
        if key not in self.memo:
            self.memo[key] = find()
        return cast(T, self.memo[key])

    def seen(self, runner: str) -> VerdictBasis:
        """What a verdict about that runner ('' = about none) rests on."""
        told = self.situation.made[-1].short if self.situation.made else 0
        return VerdictBasis(self.event.id, runner, number_of(self.head), told)

    @property
    def event(self) -> Event:
        """The event as last stored, every point with its km, its meetings as they are gone to now."""
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

    def late_time(self, runner: str, *, as_asked: bool = False) -> tuple[str, datetime] | None:
        """The next point somebody reports from, and when she is late there; `as_asked`: as it stood before anybody said
        'not yet'."""
        found = self.situation.outlooks.get(runner)
        return ((found.untold() if as_asked else None) or found).late_time() if found else None

    def dark(self, runner: str, point: str, when: datetime) -> bool:
        """Whether the sun is down at a point at that moment, as kit needs to know it."""
        spot = self.course(runner).at(self.event.course_of(runner).point(point).km or 0.0)
        return sun_elevation_deg(spot.lat_deg, spot.lon_deg, when) < HORIZON_DEG

    def meetings(self, runner: str) -> tuple[MeetingValues, ...]:
        """Her meetings still to come, as people are told of them; none to which by the rule she goes no more. Worked out
        once, however many ask."""
        return self.once(("meetings", runner), lambda: self._meetings(runner))

    def _meetings(self, runner: str) -> tuple[MeetingValues, ...]:
        told = meetings_as_told(self.sight(runner))
        return tuple(m for m in told if not goes_no_further(self.sight(runner), m.point))

    def sight(self, runner: str) -> Sight:
        """What the watch's rules look at of a runner."""
        return self.once(("sight", runner), lambda: sight_of(self.situation, runner, self.now))

    def _bare(self, runner: str) -> Sight:
        """The same without her meetings, to which most of it goes and which no cut-off hangs on."""
        if ("sight", runner) in self.memo:
            return self.sight(runner)
        s = self.situation

        def find() -> Sight:
            return Sight(
                s, self.now, s.event.runner(runner), s.state.runner(runner), (), s.made_about(runner)
            )

        return self.once(("bare sight", runner), find)

    def bound_for(self, person: str) -> tuple[MeetingValues, ...]:
        """The meetings to come that a person goes to, of all runners; those of runners whom nobody meets are not even worked
        out."""
        going = self.once("goes to", lambda: _goes_to(self.event)).get(person, ())
        return tuple(m for r in going for m in self.meetings(r) if person in m.crew)

    def made_about(self) -> Mapping[str, tuple[Made, ...]]:
        """The notices made, by runner ('' = about none)."""

        def find() -> dict[str, tuple[Made, ...]]:
            found: dict[str, list[Made]] = {}
            for m in self.situation.made:
                found.setdefault(m.notice.key.runner, []).append(m)
            return {runner: tuple(about) for runner, about in found.items()}

        return self.once("made about", find)

    def past_cut_off(self, runner: str) -> PastCutOff | None:
        """The cut-off she has missed, while nobody has said that she goes on (server/watch/timed_out.py)."""
        return missed(self._bare(runner))

    def goes_no_further(self, runner: str, point: str) -> bool:
        """Whether by the rule she goes to a point no more, having missed a cut-off before it."""
        return goes_no_further(self._bare(runner), point)

    def p_gone_on(self, runner: str) -> float:
        """P(she has gone on unseen from where she was last seen in); 0 where she was not last seen in, or where by the
        rule her race ended there."""
        past = self.past_cut_off(runner)
        if past is not None and past.how is not Past.NO_OUT:
            return 0.0
        last = self.state.runner(runner).last_known
        if last is None or last.point is None or self.state.runner(runner).going is not Going.AT_POINT:
            return 0.0
        return p_gone_on(self.sight(runner), last.point)


def _assembled(planned: Situation, folded: _Folded, built: Built, now: datetime) -> Picture:
    runners = tuple(r.id for r in planned.event.runners)
    views = views_of(folded.outlooks, runners, now, planned.event.id)
    head, others, ahead = folded.head, folded.strangers, folded.known.ahead
    return Picture(covered(planned), now, views, folded.entries, built, head, others, ahead)


def _goes_to(event: Event) -> Mapping[str, tuple[str, ...]]:
    """Of each person the runners whom they go to meet, in the event's order."""
    found: dict[str, dict[str, None]] = {}
    for r in event.runners:
        for plan in event.meetings_of(r.id):
            for who in members(event, plan):
                found.setdefault(who, {})[r.id] = None
    return {who: tuple(theirs) for who, theirs in found.items()}


def _looked_at(task: asyncio.Task[Picture]) -> None:
    """What broke in it, if anything, is nobody's any more."""
    if not task.cancelled():
        task.exception()


def number_of(head: str) -> int:
    """How many entries a head names."""
    return int(head.partition(".")[0] or 0)


@dataclass(slots=True)
class _Folded:
    """One fold, and until when it holds: a later `now` changes it only by a start, or an entry from the future."""

    head: str
    version: int
    hearing: Hearing
    state: RaceState
    entries: tuple[Entry, ...]
    folded_at: datetime
    holds_until: datetime | None
    outlooks: Mapping[str, Outlook]
    known: OutlookCache
    strangers: Strangers

    @property
    def number(self) -> int:
        """How many entries are folded."""
        return number_of(self.head)

    @property
    def blanks(self) -> int:
        """How often some had been blanked by then."""
        return int(self.head.partition(".")[2] or 0)

    def fits(self, head: str, version: int, hearing: Hearing, strangers: Strangers, now: datetime) -> bool:
        return (
            (self.head, self.version, self.hearing) == (head, version, hearing)
            and self.strangers is strangers
            and now >= self.folded_at
            and (self.holds_until is None or now < self.holds_until)
        )


@dataclass(slots=True)
class _Growing:
    """A fold that grows with the journal: of one build, up to an entry's number, since personal data was last blanked; and
    the forecasts that rest on it, by the plan and as its meetings are gone to."""

    built: Built
    blanks: int
    folding: Folding
    planned: OutlookCache
    gone_to: OutlookCache
    number: int = 0

    @staticmethod
    def begun(built: Built, blanks: int) -> _Growing:
        folding = Folding(built.event, built.placer, thin=True)
        return _Growing(built, blanks, folding, OutlookCache(built), OutlookCache(built))


@dataclass(slots=True)
class _Kept:
    """What is kept of one event between two questions."""

    lock: asyncio.Lock = field(default_factory=asyncio.Lock)
    built: tuple[int, Built] | None = None
    ready: Built | None = None
    loaded: Loaded | None = None
    folded: _Folded | None = None
    growing: _Growing | None = None
    made: MadeKnown | None = None
    sheet: tuple[int, Mapping[str, tuple[MeetingValues, ...]]] | None = None
    last: Picture | None = None
    shared: asyncio.Task[Picture] | None = None
    passages: dict[tuple[str, str], Passage] = field(default_factory=dict)
    passages_read: int = 0
    strangers: tuple[object, Strangers] = (None, NOBODY)


class Pictures:
    """Takes pictures of events; one for the whole server, shared by answers, check-ins and ticks."""

    def __init__(self, journal: Journal) -> None:
        self._journal = journal
        self._kept: dict[str, _Kept] = {}
        # Threads that no forecast can keep busy: a call for help waits for none of those.
        self._at_once = ThreadPoolExecutor(2, "call for help")
        self.watching_since: datetime | None = None

    async def built(self, event_id: str) -> Built:
        """The event as last stored with its courses and timetables; `UnknownError` if there is none."""
        kept = self._kept.setdefault(event_id, _Kept())
        versions = await self._journal.event_versions(event_id)
        if kept.built is not None and versions and kept.built[0] == versions[-1].version:
            return kept.built[1]  # what is being worked out of it meanwhile changes nothing of this
        async with kept.lock:
            return await self._built(event_id, kept, versions)

    async def at_once(self, call: Entry, now: datetime) -> Situation:
        """What is known of the runner of a call for help (of nobody, where it names none), the call with it. It waits for
        nothing that is being worked out: her facts are folded by themselves; the forecast, and what others were told,
        are those last had; there is no forecast, and no course, where none has been worked out yet. `UnknownError`."""
        kept = self._kept.get(call.event) or _Kept()
        versions = await self._journal.event_versions(call.event)
        built = kept.built[1] if kept.built and versions and kept.built[0] == versions[-1].version else None
        text = "" if built else (await self._journal.load_event(call.event)).text
        folded = kept.folded if built and kept.folded and kept.folded.version == built.event.version else None
        head, about = await self._journal.head(call.event), call.runner or ""
        if folded is None or not folded.head.endswith(f".{head.blanks}"):
            known = await self._journal.entries(call.event, runner=about)
        else:
            later = await self._journal.entries(call.event, number_of(folded.head), runner=about)
            known = [*(e for e in folded.entries if e.runner in (about, None)), *later]
        made = await self._journal.made(call.event, about)
        others = () if kept.last is None else kept.last.situation.made

        def work() -> Situation:
            event = built.event if built else parse_event(text).event
            if event is None:
                raise UnknownError("the event's personal data has been deleted", "event")
            placer = built.placer if built else None
            state = fold((*(e for e in known if e.id != call.id), call), event, now, placer)
            return Situation(
                event=event,
                state=state,
                outlooks={about: o} if folded and (o := folded.known.last_had(about)) else {},
                timetables=built.timetables if built else {},
                courses=built.courses if built else {},
                made=(*(m for m in others if m.notice.key.runner != about), *made),
                watching_since=self.watching_since,
            )

        return await asyncio.get_running_loop().run_in_executor(self._at_once, work)

    async def owed_at_once(self, situation: Situation, runner: str, now: datetime) -> tuple[Notice, ...]:
        """What a call for help owes in such a situation, found on the same threads."""
        work = partial(evaluate_help, situation, runner, now)
        return await asyncio.get_running_loop().run_in_executor(self._at_once, work)

    def learn(self, other: Pictures, reads: Callable[[Built], Built] = lambda built: built) -> None:
        """Take over what another has worked out, for a copy of its journal that is in the same state; `reads` may change in
        what was built who reads which language."""
        self.watching_since = other.watching_since
        for e, k in other._kept.items():
            built = None if k.built is None else (k.built[0], reads(k.built[1]))
            self._kept[e] = _Kept(built=built, folded=k.folded)

    def begin_with(self, built: Built, watching_since: datetime | None) -> None:
        """Take over an event as it was built, of a journal that holds its first version and no other."""
        self.watching_since = watching_since
        self._kept[built.event.id] = _Kept(built=(built.event.version, built))

    def has_built(self, built: Built) -> None:
        """Take over what was built of a version that has just been stored."""
        self._kept.setdefault(built.event.id, _Kept()).ready = built

    async def event(self, event_id: str) -> Event:
        """The event as last stored."""
        return (await self.built(event_id)).event

    async def take(
        self, event_id: str, now: datetime, without: Callable[[Entry], bool] | None = None
    ) -> Picture:
        """Everything about that event at `now`; `UnknownError` if there is none. `without`: as if the entries of which it
        is true, and what was told because of them, had not come."""
        kept = self._kept.setdefault(event_id, _Kept())
        async with kept.lock:
            # Of one moment: of a notice that we know we know all that it rests on. Else what ended an alarm would be taken
            # for an entry that has been taken back.
            pulse = await self._pulse(event_id, kept, now)
            kept.made, made = pulse.made, pulse.made.made
            built = await self._built(event_id, kept, pulse.versions)
            downs = tuple(Down(o.component, o.start, o.end) for o in pulse.outages)
            hearing = await self._hearing(built.event, downs)
            strangers = await self._strangers(kept, built, pulse)
            folded = await self._folded(kept, built, pulse, now, hearing, strangers)
            sheet = await self._sheet(kept, built)
        gone = frozenset(e.id for e in folded.entries if without is not None and without(e))
        if gone:
            left = tuple(e for e in folded.entries if e.id not in gone)
            begun = _Growing.begun(built, 0)
            folded = await asyncio.to_thread(partial(_fold, begun, left, now, hearing, folded.strangers))
            made = tuple(m for m in made if not gone & set(m.notice.facts))
        groups = tuple(Group(g.id, g.bound_at) for g in pulse.groups)
        planned = Situation(
            event=built.event,
            state=folded.state,
            outlooks=folded.outlooks,
            timetables=built.timetables,
            courses=built.courses,
            made=made,
            outages=hearing.nobody,
            watching_since=self.watching_since,
            downs=downs,
            hearing=hearing,
            loaded=kept.loaded,
            groups=groups,
            sheet=sheet,
            grave=frozenset(e.id for r in folded.state.runners for e in r.how_she_is if _grave(e.words)),
        )
        if (
            folded.state.fallen
        ):  # who comes to which meeting instead is worked out in a thread: it may take long
            picture = await asyncio.to_thread(_assembled, planned, folded, built, now)
        else:
            picture = _assembled(planned, folded, built, now)
        if not gone:
            kept.last = picture
        return picture

    async def with_entry(self, event_id: str, number: int, now: datetime, made: Sequence[Made]) -> Picture:
        """A picture that has the entry of that number and the notices `made` of it: the last one, where it has the entry;
        else one taken at `now`."""
        last = (self._kept.get(event_id) or _Kept()).last
        if last is None or number_of(last.head) < number:
            return await self.take(event_id, now)
        known = {m.short for m in last.situation.made}
        new = tuple(m for m in made if m.short not in known)
        if not new:
            return last
        return replace(last, situation=replace(last.situation, made=(*last.situation.made, *new)), memo={})

    async def take_soon(
        self, event_id: str, now: datetime, without: Callable[[Entry], bool] | None = None
    ) -> Picture:
        """The same, or where that takes longer than `SOON_S` (much is being worked out), the one last taken, looked at
        now: whoever writes may be calling for help. What is missing in it are seconds."""
        taking = asyncio.ensure_future(self.take(event_id, now, without))
        last = (self._kept.get(event_id) or _Kept()).last
        if last is None or (without is not None and any(without(e) for e in last.entries)):
            return await taking
        done, _ = await asyncio.wait((taking,), timeout=SOON_S)
        if done:
            return taking.result()
        taking.add_done_callback(_looked_at)
        return replace(last, now=max(now, last.now), memo={})

    async def take_together(self, event_id: str, now: datetime) -> Picture:
        """For those who come by many a second: all who ask while one is being taken for them share it, no other is begun;
        after `SOON_S` the one last taken, where there is one. What is missing in it are seconds."""
        kept = self._kept.setdefault(event_id, _Kept())
        if kept.shared is None or kept.shared.done():
            kept.shared = asyncio.create_task(self.take(event_id, now))
        taking = kept.shared
        taking.add_done_callback(_looked_at)
        await asyncio.wait((taking,), timeout=None if kept.last is None else SOON_S)
        if taking.done() or kept.last is None:
            return await asyncio.shield(taking)
        return replace(kept.last, now=max(now, kept.last.now), memo={})

    async def _pulse(self, event_id: str, kept: _Kept, now: datetime) -> Pulse:
        read = kept.growing or kept.folded
        passages = kept.passages_read
        since = (
            JournalHead(0, 0, passages) if read is None else JournalHead(read.number, read.blanks, passages)
        )
        try:
            version = 0 if kept.built is None else kept.built[0]
            pulse = await self._journal.pulse(event_id, since, kept.made, now - OUTAGES_BACK, now, version)
        except UnknownError:
            self._kept.pop(event_id, None)
            raise _no_such_event() from None
        whole = since.blanks != pulse.head.blanks
        if whole or pulse.passages:
            known = {} if whole else kept.passages
            kept.passages = known | {(p.bib, p.point): p for p in pulse.passages}
        kept.passages_read = pulse.head.passages
        return pulse

    async def _built(self, event_id: str, kept: _Kept, versions: Sequence[EventVersion]) -> Built:
        if versions:
            latest = versions[-1].version
            stored = await self._journal.load_event(event_id, latest)
            if not stored.text:
                raise UnknownError("the event's personal data has been deleted", "event")
            made, kept.ready = kept.ready, None
            if made is None or made.event.version != latest:
                made = await asyncio.to_thread(
                    build, stored.text, stored.files, version=latest, accepted=True
                )
            kept.loaded = await self._loaded(event_id, versions, () if kept.made is None else kept.made.made)
            kept.built = (latest, made)
        if kept.built is None:
            self._kept.pop(event_id, None)
            raise _no_such_event()
        return kept.built[1]

    async def _loaded(
        self, event_id: str, versions: Sequence[EventVersion], made: Sequence[Made]
    ) -> Loaded | None:
        """The event as people know it: as the version before had it, or, where that one was to be told and nobody has been
        (this one came before the next look), one further back. None where there is none, or it can't be read."""
        told = {m.notice.occasion for m in made if m.notice.key.kind is NoticeKind.NEW_VERSION}
        first = await self._journal.first_report(event_id)
        known = len(versions) - 2
        while known > 0 and version_told(versions[known].version) not in told:
            if not _asked(versions[known]) and (first is None or versions[known].at < first):
                break  # loaded before anything was reported: nobody is told of it
            known -= 1
        if known < 0:
            return None
        before = parse_event((await self._journal.load_event(event_id, versions[known].version)).text).event
        asked = any(_asked(v) for v in versions[known + 1 :])
        return None if before is None else Loaded(versions[-1].at, before, asked)

    async def _sheet(self, kept: _Kept, built: Built) -> Mapping[str, tuple[MeetingValues, ...]]:
        if kept.sheet is None or kept.sheet[0] != built.event.version:
            kept.sheet = (built.event.version, await asyncio.to_thread(_sheet_of, built))
        return kept.sheet[1]

    async def _folded(
        self,
        kept: _Kept,
        built: Built,
        pulse: Pulse,
        now: datetime,
        hearing: Hearing,
        strangers: Strangers,
    ) -> _Folded:
        head, new = pulse.head, pulse.entries
        if kept.folded and kept.folded.fits(str(head), built.event.version, hearing, strangers, now):
            return kept.folded
        growing, kept.growing = kept.growing, None  # one that breaks off half way is begun afresh
        if growing is None or growing.built is not built or growing.blanks != head.blanks:
            growing = _Growing.begun(built, head.blanks)
            if len(new) < head.number:
                new = tuple(await self._journal.entries(built.event.id))[: head.number]
        kept.folded = await asyncio.to_thread(_fold, growing, new, now, hearing, strangers)
        kept.growing = growing
        return kept.folded

    async def _strangers(self, kept: _Kept, built: Built, pulse: Pulse) -> Strangers:
        rests_on = (built.event.version, pulse.head.passages, pulse.head.blanks)
        if kept.strangers[0] != rests_on:
            bibs = {r.bib for r in built.event.runners}
            if kept.passages:
                kept.strangers = (
                    rests_on,
                    await asyncio.to_thread(Strangers.of, kept.passages.values(), bibs),
                )
            else:
                kept.strangers = (rests_on, NOBODY)
        return kept.strangers[1]

    async def _hearing(self, event: Event, downs: tuple[Down, ...]) -> Hearing:
        if not any(d.component.startswith(LISTENS) for d in downs):
            return hearing_of(downs, (), {})
        beats = await self._journal.last_heartbeats()
        listening = [b.removeprefix(LISTENS) for b in beats if b.startswith(LISTENS)]
        return hearing_of(downs, sorted(listening), await self._journal.channels_of(event.people))


def _asked(version: EventVersion) -> bool:
    """Whether a version came of a change that somebody asked for."""
    return version.by.startswith(CHANGED)


def as_if(picture: Picture, built: Built, *entries: Entry) -> Picture:
    """The same moment with another version of the event, or with more entries: what would be, had it been loaded now, had
    they come in. Nothing of it is kept."""
    before = picture.situation
    growing = _Growing.begun(built, 0)
    folded = _fold(growing, (*picture.entries, *entries), picture.now, before.hearing, picture.strangers)
    planned = replace(
        before,
        event=built.event,
        planned=None,
        uncovered=(),
        state=folded.state,
        outlooks=folded.outlooks,
        timetables=built.timetables,
        courses=built.courses,
        sheet=_sheet_of(built),
    )
    return _assembled(planned, folded, built, picture.now)


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
    before = picture.situation.outlooks.get(runner)
    new = outlook(
        event,
        state.runner(runner),
        state,
        picture.timetable(runner),
        picture.course(runner),
        picture.situation.outages,
        picture.situation.hearing,
        None if before is None else before.day,
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


def _no_such_event() -> UnknownError:
    return UnknownError("there is no such event", "event", "GET /v1/me lists yours")


@lru_cache(maxsize=4096)
def _grave(words: str) -> bool:
    return bool(words) and by_rule(lexicon().words(words), own=False) is not Danger.NONE


def _sheet_of(built: Built) -> Mapping[str, tuple[MeetingValues, ...]]:
    """Each runner's meetings as the plan has them, when nothing has been heard yet."""
    event = built.event
    before = _fold(_Growing.begun(built, 0), (), event.starts - timedelta(days=1), Hearing())
    situation = Situation(event, before.state, before.outlooks, built.timetables, built.courses, made=())
    runners = tuple(r.id for r in event.runners)
    return OnDemand(runners, lambda r: meetings(share_of(situation, r), r, event.starts))


def _fold(
    growing: _Growing,
    new: Sequence[Entry],
    now: datetime,
    hearing: Hearing,
    strangers: Strangers = NOBODY,
) -> _Folded:
    """The fold with those entries too, and the forecasts that rest on it and on others' times."""
    built, folding = growing.built, growing.folding
    event = built.event
    folding.add(new)
    growing.number += len(new)
    state = folding.at(now)
    growing.planned.strangers = growing.gone_to.strangers = strangers
    known = growing.planned
    outlooks = outlooks_of(known, event, state, hearing)
    gone_to = covered(Situation(event, state, outlooks, built.timetables, built.courses, ()))
    if any(not u.held for u in gone_to.uncovered):
        # Crew who do not come report nothing: their silence says nothing of her.
        known = growing.gone_to
        outlooks = outlooks_of(known, gone_to.event, state, hearing)
    return _Folded(
        head=f"{growing.number}.{growing.blanks}",
        version=event.version,
        hearing=hearing,
        state=state,
        entries=folding.entries(),
        folded_at=now,
        holds_until=folding.changes_at(),
        outlooks=outlooks,
        known=known,
        strangers=strangers,
    )
