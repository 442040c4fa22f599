"""Looks at every event when something may have changed: facts heard, or time gone by.

`Ticker.tick(now)` is a plain function of the journal and `now`; `Schedule` (APScheduler) only wakes it, the
demo and tests call it themselves. Judging holds nothing that another server would wait for: a verdict is kept if
nothing has come in about its runner meanwhile, so any number of servers may tick. Nobody is judged before what waited
during an absence has been read (`catching_up`): ours, or that of a channel; a call for help does not wait for that
(server/api/fast_lane.py). Beside a server that listens already there is nothing to wait for.
"""

from __future__ import annotations

import asyncio
from collections import defaultdict
from collections.abc import Callable, Mapping
from contextlib import suppress
from dataclasses import dataclass, field, replace
from datetime import datetime, timedelta

import structlog
from apscheduler.schedulers.asyncio import AsyncIOScheduler

from server.api.board import alarms as alarms_of
from server.api.building import BuildError
from server.api.due import Dues
from server.api.hub import Hub
from server.api.metrics import Metrics
from server.api.replies import OpenAlarm
from server.api.snapshot import Picture, Pictures
from server.clock import Clock
from server.journal import Journal, UnknownError
from server.log import broke
from server.settings import Settings
from server.watch.circle import circle_of
from server.watch.evaluate import evaluate_event, evaluate_runner
from server.watch.notice import Made
from server.watch.situation import Verdict

log = structlog.get_logger("ticker")

NO_RUNNER = ""
SWEEP_EVERY = timedelta(hours=1)
GAP = timedelta(minutes=2)
"""Signs of life farther apart than this are an outage."""
JUST_BACK = timedelta(minutes=2)
"""How long after a channel's outage what waited at it is worked off before anybody is judged."""
GOES = 4
"""So often a runner is judged anew because something about her came in meanwhile; then the verdict is kept all the same
(own choice: whoever is reported on more often than she can be judged must not be left unjudged)."""
WITH_HER = 5
"""So many others waiting to be judged are judged with the runner reported on; more wait for the tick that follows at once
(own choice): whoever reports waits for the answer."""
FRESH = 25
"""After so many judgements at one look what has come in meanwhile is read."""
SOONEST = timedelta(milliseconds=500)
# A rule that asks to be asked again at once must not spin the server.
AFTER_ANOTHER = timedelta(seconds=2)
"""What another server has been told it judges itself, at once: we look after that, and once for all that came by then."""


@dataclass(slots=True)
class Catching:
    """What a start still waits for: channels that have not handed over what waited, updates not worked off."""

    since: datetime
    channels: set[str] = field(default_factory=set)

    def over(self, waiting: int, now: datetime, at_most: timedelta) -> bool:
        """Whether everything has been read, or has kept us longer than is safe."""
        return (not self.channels and waiting == 0) or now - self.since >= at_most


class Ticker:
    """Judges events; one per server."""

    def __init__(
        self,
        journal: Journal,
        pictures: Pictures,
        clock: Clock,
        settings: Settings,
        hub: Hub,
        metrics: Metrics,
        *,
        channels: frozenset[str] = frozenset(),
        expected: Mapping[str, timedelta] | None = None,
        beats: bool = True,
    ) -> None:
        self._journal, self._pictures, self._clock = journal, pictures, clock
        self._settings, self._hub, self._metrics = settings, hub, metrics
        self._beats = beats
        self.catching_up: Catching | None = Catching(clock.now(), set(channels))
        self._expected: Mapping[str, timedelta] = {f"channel:{c}": GAP for c in channels} | dict(
            expected or {}
        )
        self.last_tick: datetime | None = None
        self.failing: dict[str, str] = {}
        self._seen: dict[str, tuple[str, int]] = {}
        self._swept: datetime | None = None
        self._read_up_to: datetime | None = None
        self._unreached: dict[str, frozenset[str]] = {}
        self._looking = set[str]()
        self._judging: dict[tuple[str, str], asyncio.Lock] = defaultdict(asyncio.Lock)
        self._dues: dict[str, Dues] = defaultdict(Dues)
        self.on_due: Callable[[datetime], None] = lambda _moment: None

    def caught_up(self, channel: str) -> None:
        """A channel has handed over everything that waited while we were away."""
        if self.catching_up is not None:
            self.catching_up.channels.discard(channel)

    async def tick(self, now: datetime) -> datetime:
        """Judge every event at `now`; returns when to ask next. One event's failure stops no other."""
        with self._metrics.ticks.time():
            if self._beats:
                await self._beat(now)
            next_due = now + timedelta(seconds=self._settings.tick_seconds_max)
            if await self._still_catching_up(now):
                return now + timedelta(seconds=1)
            for version in await self._journal.list_events():
                due = await self._tick_event(version.event, now)
                next_due = min(next_due, due or next_due)
            await self._sweep(now)
            self.last_tick = now
        return max(next_due, now + SOONEST)

    async def look(self, event_id: str, now: datetime, first: str = NO_RUNNER) -> tuple[Made, ...]:
        """Judge one event at `now`, `first` before all other runners; the notices that were new. Empty while still
        catching up."""
        if self.catching_up is not None and await self._still_catching_up(now):
            return ()
        return (await self._judge(event_id, now, first))[0]

    async def after_entry(
        self, event_id: str, runner: str | None = None, *, together: bool = False
    ) -> tuple[Made, ...]:
        """Look at once, since a fact has come in; a failure is logged and left to the next tick, as the
        entry itself is safe and its sender must be told so. `together`, for what comes many a second: where such a look is
        under way, the tick that follows sees to it; a look each would have ever more of them wait, and all answers."""
        now = self._clock.now()
        try:
            if together and event_id in self._looking:
                return ()
            looking = asyncio.create_task(self.look(event_id, now, runner or NO_RUNNER))
            if together:
                self._looking.add(event_id)
                looking.add_done_callback(lambda _: self._looking.discard(event_id))
            return await asyncio.wait_for(asyncio.shield(looking), 5.0)
        except Exception as error:
            broke(log, "look after entry failed", error, event_id=event_id)
            return ()
        finally:
            self._hub.changed(event_id)
            self.on_due(now + SOONEST)

    def heard(self, event_id: str | None) -> None:
        """Another server has changed an event: open pages are told, and we look soon. None: perhaps any."""
        if event_id is not None:
            self._hub.changed(event_id)
        self.on_due(self._clock.now() + AFTER_ANOTHER)

    async def _beat(self, now: datetime) -> None:
        """Say that we work, and once what else should: a channel that never comes up is down since now."""
        await self._journal.heartbeat("server", now, GAP)
        for component, gap in self._expected.items():
            await self._journal.expect(component, now, gap)
        self._expected = {}

    async def _still_catching_up(self, now: datetime) -> bool:
        if self.catching_up is None and await self._back_again(now):
            self.catching_up = Catching(now)
        catching = self.catching_up
        if catching is None:
            return False
        for channel in sorted(catching.channels):
            if await self._journal.listens_elsewhere(channel, now):
                catching.channels.discard(channel)
        waiting = await self._journal.waiting()
        if not catching.over(waiting, now, timedelta(seconds=self._settings.catch_up_seconds_max)):
            return True
        if catching.channels or waiting:
            log.warning("judging before all was read", channels=sorted(catching.channels), waiting=waiting)
        self.catching_up = None
        self._pictures.watching_since = now
        return False

    async def _back_again(self, now: datetime) -> bool:
        """Whether a channel has just come back and what waited at it is stored, not yet worked off."""
        if not await self._journal.waiting():
            return False
        ended = [o.end for o in await self._journal.outages(now - JUST_BACK, now) if o.end is not None]
        back = max((e for e in ended if e <= now), default=None)
        if back is None or (self._read_up_to is not None and back <= self._read_up_to):
            return False
        self._read_up_to = back
        return True

    async def _tick_event(self, event_id: str, now: datetime) -> datetime | None:
        try:
            made, ask_again = await self._judge(event_id, now, tick=True)
        except UnknownError:  # blanked, or not stored any more
            return None
        except BuildError as error:
            self._failed(event_id, error)
            return None
        except Exception as error:
            broke(log, "tick failed", error, event_id=event_id)
            self._failed(event_id, error)
            return None
        if made or await self._is_news(event_id):
            self._hub.changed(event_id)
        return ask_again

    def _failed(self, event_id: str, error: Exception) -> None:
        self._metrics.tick_failures.inc()
        self.failing[event_id] = type(error).__name__

    async def _is_news(self, event_id: str) -> bool:
        """Whether entries or the version have changed since the last tick, perhaps by another server."""
        versions = await self._journal.event_versions(event_id)
        now_seen = (str(await self._journal.head(event_id)), versions[-1].version)
        before = self._seen.get(event_id)
        self._seen[event_id] = now_seen
        return before is not None and before != now_seen

    async def _judge(
        self, event_id: str, now: datetime, first: str = NO_RUNNER, *, tick: bool = False
    ) -> tuple[tuple[Made, ...], datetime | None]:
        """Judge those of whom something has come in, `first` before all others; on a tick those too whose time has come."""
        picture = await self._pictures.take(event_id, now)
        event, dues = picture.event, self._dues[event_id]
        if event.keep_until is not None and now >= event.keep_until:
            return (), None
        look, new = dues.look_at(picture), list[Made]()
        whom = dict.fromkeys(dues.to_judge(now, tick=tick))
        waits = first in dues.moved and first not in dues.facts
        if not waits and any(r.id == first for r in picture.event.runners):
            near = circle_of(picture.situation, first)
            far = [r for r in whom if r not in near]
            whom = {first: None} | dict.fromkeys(r for r in whom if r in near)
            whom |= dict.fromkeys(far if len(far) <= WITH_HER else ())
        for n, runner in enumerate((*whom, NO_RUNNER)):
            if n % FRESH == FRESH - 1:  # many take long
                picture = await self._pictures.take(event_id, now)
                look = dues.look_at(picture)
            picture, look, made = await self._judge_one(picture, look, runner, now)
            new += made
        if tick:
            await self._journal.try_next_channels(now, event.alarm.answer_within)
        self._count(new, *await asyncio.to_thread(_alarms_in, picture))
        for error in dues.failing.values():
            self._failed(event_id, error)
        if not dues.failing:
            self.failing.pop(event_id, None)
        # That somebody can't be reached at all may owe something to the next on the ladder.
        return tuple(new), now if any(m.failed for m in new) else dues.next()

    async def _judge_one(
        self, picture: Picture, look: int, runner: str, now: datetime
    ) -> tuple[Picture, int, tuple[Made, ...]]:
        """Judge one runner, anew where something about her came in meanwhile; the picture it rests on, the number of its
        look, and what was new. This process does so once at a time; that keeps no other process waiting, and ends with
        this one."""
        event_id = picture.event.id
        dues = self._dues[event_id]
        async with self._judging[event_id, runner]:
            for go in range(1, GOES + 1):
                if go > 1:
                    picture = await self._pictures.take(event_id, now)
                    look = dues.look_at(picture)
                verdict, error = await asyncio.to_thread(_evaluate_surely, picture, runner, now)
                self._metrics.judged.inc()
                last = go == GOES
                made = await self._journal.add_judged(verdict.owed, now, picture.seen(runner), anyhow=last)
                if made is not None:
                    break
        made = made or ()
        # Short of what was owed: made by another at the same moment, perhaps of something else under the same key.
        again = now if len(made) < len(verdict.owed) or any(m.failed for m in made) else verdict.ask_again
        dues.failing.pop(runner, None)
        if error is not None:
            broke(log, "a runner can't be judged: alarms only", error, event_id=event_id)
            dues.failing[runner] = error
            again = now
        dues.judged(runner, look, again, now, made)
        return picture, look, made

    def _count(
        self, new: list[Made], unanswered: int, waiting: Mapping[str, OpenAlarm], event_id: str
    ) -> None:
        for made in new:
            self._metrics.notices.labels(made.notice.key.kind.value).inc()
            log.info(
                "notice made",
                event_id=made.notice.key.event,
                short=made.short,
                kind=made.notice.key.kind.value,
                person=made.notice.key.person,
                failed=made.failed,
            )
        self._metrics.unreached.set(unanswered)
        # In capitals, once each, which alarms nobody has answered.
        for alarm_id, alarm in waiting.items():
            if alarm_id not in self._unreached.get(event_id, ()):
                words = {"alarm": alarm_id, "kind": alarm.kind, "runner": alarm.runner}
                log.error("!!! NOBODY HAS BEEN REACHED: TELEPHONE NOW !!!", event_id=event_id, **words)
        self._unreached[event_id] = frozenset(waiting)

    async def _sweep(self, now: datetime) -> None:
        if self._swept is None or now - self._swept >= SWEEP_EVERY:
            self._swept = now
            swept = await self._journal.sweep(now)
            for event_id in swept.blanked:
                log.info("event blanked at its keep-by date", event_id=event_id)


def _alarms_in(picture: Picture) -> tuple[int, Mapping[str, OpenAlarm], str]:
    """How many alarm notices nobody has answered; the alarms for which nobody has been reached, by id; the event's id."""
    event, alarms = picture.event, [m for m in picture.situation.made if m.notice.urgency.value == "alarm"]
    about = {m.notice.key.runner for m in alarms} - {NO_RUNNER}
    found = (alarm for runner in about for alarm in alarms_of(picture, runner))
    waiting = {alarm.alarm: alarm for alarm in found if alarm.unreached}
    return sum(m.answered_at is None for m in alarms), waiting, event.id


def _evaluate(picture: Picture, runner: str, now: datetime) -> Verdict:
    if runner == NO_RUNNER:
        return evaluate_event(picture.situation, now)
    return evaluate_runner(picture.situation, runner, now)


def _evaluate_surely(picture: Picture, runner: str, now: datetime) -> tuple[Verdict, Exception | None]:
    """The verdict, and what broke: then that of the situation without a forecast, which still passes on a call for
    help and climbs open alarms. One thing that can't be judged must not silence the rest."""
    try:
        return _evaluate(picture, runner, now), None
    except Exception as error:
        bare = replace(picture, situation=replace(picture.situation, outlooks={}))
        return _evaluate(bare, runner, now), error


class Schedule:
    """Wakes a ticker in live use. One in-memory job; when something is due lives in the tables.

    The scheduler goes by the clock of the wall. One that is put back, by an hour of summer time kept in it or by the
    time service after a start, would have it sleep on for as long: `longest_s` by a clock that nobody sets, and we
    look all the same.
    """

    def __init__(self, ticker: Ticker, clock: Clock, longest_s: float = 30.0) -> None:
        self._ticker, self._clock, self._longest_s = ticker, clock, longest_s
        self._scheduler = AsyncIOScheduler(
            timezone="UTC", job_defaults={"misfire_grace_time": None, "coalesce": True, "max_instances": 1}
        )
        self._running: asyncio.Task[None] | None = None
        self._guard: asyncio.Task[None] | None = None
        self._looked = 0.0
        self._again = False
        self._due: datetime | None = None
        ticker.on_due = self.wake_by

    def start(self) -> None:
        """Begin; the first tick is at once."""
        self._scheduler.start()
        self._looked = asyncio.get_running_loop().time()
        self._guard = asyncio.create_task(self._stay_awake())
        self._at(self._clock.now())

    async def _stay_awake(self) -> None:
        loop = asyncio.get_running_loop()
        while True:
            await asyncio.sleep(self._longest_s / 2)
            if loop.time() - self._looked > 1.5 * self._longest_s:
                await self._wake()

    def wake_by(self, moment: datetime) -> None:
        """Wake at `moment`, or sooner if that was already meant."""
        if self._due is None or moment < self._due:
            self._at(moment)

    async def stop(self) -> None:
        """Stop waking and let a tick under way come to its end (the scheduler would cancel it)."""
        self._scheduler.shutdown(wait=False)
        if self._guard is not None:
            self._guard.cancel()
        if self._running is not None:
            with suppress(Exception):
                await self._running

    def _at(self, moment: datetime) -> None:
        self._due = moment
        self._scheduler.add_job(self._wake, "date", run_date=moment, id="tick", replace_existing=True)

    async def _wake(self) -> None:
        # The job must end at once: a run that comes due while the one before it has not ended is dropped for
        # good, and a tick may well take longer than the time to the next.
        self._due = None
        self._looked = asyncio.get_running_loop().time()
        if self._running is None or self._running.done():
            self._running = asyncio.create_task(self._tick())
        else:
            self._again = True

    async def _tick(self) -> None:
        self._again = False
        now = self._clock.now()
        due = now + timedelta(seconds=5)
        try:
            due = await self._ticker.tick(now)
        except Exception as error:
            broke(log, "tick failed", error)
        finally:
            self.wake_by(self._clock.now() if self._again else due)
