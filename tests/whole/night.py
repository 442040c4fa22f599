"""A night on the hill: the real server over HTTP, a stepped clock, people who write to the desk, and what they got.

Nothing is put in by hand but what people say, press and report. The clock moves only to where the server asked to
be asked again, and each message is noted with the minute at which it reached its person.
"""

from __future__ import annotations

import asyncio
from collections.abc import AsyncIterator, Iterator
from contextlib import asynccontextmanager
from dataclasses import dataclass, field
from datetime import datetime, timedelta, tzinfo
from typing import Any
from zoneinfo import ZoneInfo

import aiohttp
from aiohttp import web

from bot.channels.base import Incoming
from bot.conversing import Conversing
from bot.service_client import ServiceClient
from server.api import auth
from server.api.building import Built, build
from server.api.parts import PARTS, Parts
from server.app import Options, make_app
from server.clock import SteppedClock
from server.facts.entry import Entry, Fix
from server.journal import Journal
from server.settings import Settings
from server.watch.notice import Made
from tests import golden
from tests.whole.hill import ZONE

CHANNEL = "terminal"
LOOK_EVERY_S = 300.0
"""The server's longest pause between two looks, where it asks for none sooner."""


@dataclass(frozen=True, slots=True)
class Told:
    """A message as it reached somebody: a notice, by its kind, or with kind '' an answer to what they said or pressed
    (`to`). `short` is the notice's number."""

    at: datetime
    who: str
    kind: str
    text: str
    urgent: bool = False
    zone: tzinfo = ZONE
    to: str = ""
    short: int = 0

    @property
    def clock(self) -> str:
        """The minute on the wall where the race is."""
        return self.at.astimezone(self.zone).strftime("%H:%M")

    def __str__(self) -> str:
        first = self.text.partition("\n")[0]
        return f"{self.clock} {self.who}: {self.kind or 'answer'}: {first}"


@dataclass(slots=True, repr=False)
class Night:
    """The night while it is played."""

    built: Built
    clock: SteppedClock
    journal: Journal
    parts: Parts
    session: aiohttp.ClientSession
    url: str
    secret: str
    desk: Conversing
    told: list[Told] = field(default_factory=list)
    buttons: dict[str, list[tuple[str, str]]] = field(default_factory=dict)
    marks: dict[str, datetime] = field(default_factory=dict)
    made: tuple[Made, ...] = ()
    entries: tuple[Entry, ...] = ()
    _number: Iterator[int] = field(default_factory=lambda: iter(range(1, 1_000_000)))

    @property
    def event(self) -> str:
        """The id of the event that is played."""
        return self.built.event.id

    @property
    def runner(self) -> str:
        """The id of its first runner."""
        return self.built.event.runners[0].id

    @property
    def zone(self) -> ZoneInfo:
        """The clock on the wall where the race is."""
        return ZoneInfo(self.built.event.time_zone)

    # Time ----------------------------------------------------------------------------------------------

    def at(self, clock: str) -> datetime:
        """The next moment at which the clocks on the hill show that time."""
        hour, minute = map(int, clock.split(":"))
        now = self.clock.now().astimezone(self.zone)
        then = now.replace(hour=hour, minute=minute, second=0, microsecond=0)
        return then if then >= now else then + timedelta(days=1)

    def mark(self, name: str) -> None:
        """Give this moment a name."""
        self.marks[name] = self.clock.now()

    def wall(self, at: datetime) -> str:
        """A moment as the clock on the wall shows it, with its day."""
        return at.astimezone(self.zone).strftime("%a %H:%M")

    async def wait(self, minutes: float) -> None:
        """Let so many minutes go by."""
        await self._until(self.clock.now() + timedelta(minutes=minutes))

    async def until_told(self, who: str, kind: str, times: int = 1) -> None:
        """Let time go by until somebody has been told a kind of notice so many times."""
        ends = self.clock.now() + timedelta(hours=5)
        due = await self.look()
        while len(self.notices(who, kind)) < times:
            assert due < ends, f"{who} is not told: {kind}\n" + "\n".join(map(str, self.told[-12:]))
            await self.pass_to(max(due, self.clock.now()))
            due = await self.look()

    async def pass_by(self, then: datetime) -> None:
        """Let time go by to a moment."""
        await self._until(then)

    async def until(self, clock: str) -> None:
        """Let time go by to that time of day."""
        await self._until(self.at(clock))

    async def not_before(self, clock: str) -> None:
        """Let time go by to that time of day, unless it is past."""
        if self.at(clock) - self.clock.now() < timedelta(hours=12):
            await self.until(clock)

    async def _until(self, then: datetime) -> None:
        """Let time go by, the server looking whenever it wants to."""
        while True:
            due = await self.look()
            if due >= then:
                break
            await self.pass_to(due)
        await self.pass_to(then)
        await self.look()

    async def pass_to(self, then: datetime) -> None:
        """The clock goes on to a moment before which nothing is due."""
        self.clock.set(then)

    async def look(self) -> datetime:
        """One tick, and what is due handed over; when to look next."""
        due = await self.parts.ticker.tick(self.clock.now())
        held = await self.journal.next_due([CHANNEL])
        while held is not None and held <= self.clock.now() and await self._hand_over():
            held = await self.journal.next_due([CHANNEL])
        return due if held is None else min(due, held)

    async def gather(self) -> None:
        """Keep what the journal holds of the night, for when it is closed."""
        self.made = tuple(await self.journal.made(self.event))
        self.entries = tuple(await self.journal.entries(self.event))

    async def silence(self, since: datetime) -> list[tuple[datetime, float]]:
        """P(not heard by then | still going) for each minute since then, as the last facts have it."""
        outlook = (await self.parts.pictures.take(self.event, self.clock.now())).situation.outlooks[
            self.runner
        ]
        minutes = int((self.clock.now() - since).total_seconds() // 60)
        at = [since + timedelta(minutes=m) for m in range(minutes + 2)]
        return [(t, outlook.at(t).p_unheard()) for t in at]

    async def _hand_over(self) -> int:
        claimed = await self._service("/v1/outbox/claim", channel=CHANNEL, limit=50)
        kinds = {m.short: m.notice.key.kind.value for m in await self.journal.made(self.event)}
        for d in claimed["deliveries"]:
            now, kind, short = self.clock.now(), kinds[d["short"]], d["short"]
            self.told.append(Told(now, d["address"], kind, d["text"], d["urgent"], self.zone, short=short))
            self._offer(d["address"], d["buttons"])
            await self._service(f"/v1/outbox/{d['id']}/report", outcome="accepted", tries=d["tries"])
        return len(claimed["deliveries"])

    def _offer(self, who: str, rows: list[list[dict[str, str]]]) -> None:
        offered = self.buttons.setdefault(who, [])
        offered += [(b["label"], b["data"]) for row in rows for b in row]

    # People --------------------------------------------------------------------------------------------

    async def says(self, who: str, text: str) -> str:
        """Somebody writes; the answer they get."""
        return await self._hear(who, text=text)

    async def presses(self, who: str, label: str) -> str:
        """Somebody presses the newest button they have with that label, once; the answer they get."""
        data = self.offers(who, label)
        assert data, f"{who} has no button '{label}': {self.buttons.get(who)}"
        self.buttons[who] = [b for b in self.buttons[who] if b[1] != data]
        return await self._hear(who, button=data, label=f"[{label}]")

    async def presses_or_says(self, who: str, label: str, text: str) -> str:
        """Somebody presses a button where they have it, and writes otherwise."""
        return await self.presses(who, label) if self.offers(who, label) else await self.says(who, text)

    async def shares(self, who: str, km: float, runner: str = "") -> str:
        """Somebody shares where they are: so many km along the course of a runner (the first, if none is named)."""
        event = self.built.event
        spot = self.built.courses[event.runner(runner or self.runner).course].at(km)
        return await self._hear(who, fix=Fix(spot.lat_deg, spot.lon_deg, 15.0))

    def offers(self, who: str, label: str) -> str:
        """What the newest button with that label says when pressed; '' if somebody has none."""
        offered = reversed(self.buttons.get(who, []))
        return next((d for has, d in offered if label.lower() in has.lower()), "")

    async def _hear(
        self, who: str, text: str = "", button: str = "", fix: Fix | None = None, label: str = ""
    ) -> str:
        key = f"m{next(self._number)}"
        said = Incoming(CHANNEL, who, self.clock.now(), key, text=text, button=button, fix=fix)
        reply = await golden.heard(self.desk, self.journal, self.event, self.built.event.time_zone, said)
        self.told.append(
            Told(self.clock.now(), who, "", reply.text, zone=self.zone, to=text or label or "(a place)")
        )
        self._offer(who, [[{"label": b.label, "data": b.data} for b in row] for row in reply.buttons])
        await self.look()
        return reply.text

    async def reports(
        self,
        who: str,
        kind: str,
        point: str | None = None,
        minutes_ago: float = 0,
        runner: str = "",
        **more: Any,
    ) -> dict[str, Any]:
        """Somebody's device reports about a runner (the first, if none is named); the reply, which must be 'noted'.
        `more` are other fields of a check-in."""
        seen = self.clock.now() - timedelta(minutes=minutes_ago)
        body = {
            "kind": kind,
            "point": point,
            "seen_at": seen.isoformat(),
            "key": f"k{next(self._number)}",
            **more,
        }
        path = f"/v1/events/{self.event}/runners/{runner or self.runner}/checkins"
        status, found = await self.call(who, "POST", path, body)
        assert (status, found["ok"]) == (200, True), found
        assert found["data"]["status"] == "noted"
        await self.look()
        data: dict[str, Any] = found["data"]
        return data

    async def loads(self, text: str, files: dict[str, bytes]) -> None:
        """A new version of the event file is loaded, as `stilepost load` does it once it has been said yes to."""
        event = build(text, files).event
        await self.journal.store_event(text, files, event, "test", self.clock.now())
        await self.look()

    async def call(self, who: str, method: str, path: str, body: Any = None) -> tuple[int, Any]:
        """One call by the person at that address: status and JSON."""
        headers = {"Authorization": f"Bearer {self.secret}", "Acting-Address": who}
        async with self.session.request(method, self.url + path, json=body, headers=headers) as reply:
            return reply.status, await reply.json()

    async def asks(self, who: str, question: str) -> tuple[int, Any]:
        """One question about the runner: status and JSON."""
        return await self.call(who, "GET", f"/v1/events/{self.event}/runners/{self.runner}/{question}")

    async def _service(self, path: str, **body: object) -> Any:
        headers = {"Authorization": f"Bearer {self.secret}"}
        async with self.session.post(self.url + path, json=body, headers=headers) as reply:
            found = await reply.json()
            assert found["ok"], found
            return found["data"]

    # What they got -------------------------------------------------------------------------------------

    def notices(self, who: str | None = None, kind: str | None = None) -> list[Told]:
        """The notices somebody was told, in order."""
        return [t for t in self.told if t.kind and who in (None, t.who) and (kind is None or t.kind == kind)]

    def counted(self) -> str:
        """How many notices each person was told."""
        return ", ".join(f"{p.id} {len(self.notices(p.id))}" for p in self.built.event.people)


@asynccontextmanager
async def night(
    database: str,
    text: str,
    files: dict[str, bytes],
    begins: datetime,
    settings: Settings | None = None,
) -> AsyncIterator[Night]:
    """The server up on a port of its own at `begins`, everybody of the event bound to the terminal."""
    built = build(text, files)
    clock = SteppedClock(begins)
    journal = await Journal.open(database)
    settings = settings or Settings(tick_seconds_max=LOOK_EVERY_S)
    try:
        await journal.store_event(text, files, built.event, "test", begins)
        for person in built.event.people:
            await journal.bind(person.id, CHANNEL, person.id, begins)
        secret = await journal.issue_token(None, CHANNEL, [auth.channel_scope(CHANNEL)], begins)
        app = make_app(settings, journal, clock, options=Options(live=False))
        async with serving(app) as url, aiohttp.ClientSession() as session:
            desk = Conversing(ServiceClient(session, url, secret))
            yield Night(built, clock, journal, app[PARTS], session, url, secret, desk)
    finally:
        await journal.close()


@asynccontextmanager
async def serving(app: web.Application) -> AsyncIterator[str]:
    """The app on a free port of loopback; its address."""
    runner = web.AppRunner(app, shutdown_timeout=1.0)
    await runner.setup()
    try:
        await web.TCPSite(runner, "127.0.0.1", 0).start()
        yield f"http://127.0.0.1:{runner.addresses[0][1]}"
        await asyncio.sleep(0)
    finally:
        await runner.cleanup()
