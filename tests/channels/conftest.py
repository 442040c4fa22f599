"""A stand-in Bot API, and the Telegram channel that talks to it through the real library."""

from __future__ import annotations

import asyncio
import socket
from collections import Counter
from collections.abc import AsyncIterator, Awaitable, Callable
from dataclasses import dataclass, field, replace
from datetime import UTC, datetime
from functools import cache
from typing import Any

import aiohttp
import pytest
from aiohttp import web
from pydantic import SecretStr

from bot.channels.base import Channel, Incoming, Reply
from bot.channels.telegram import Telegram
from bot.channels.telegram.api import Timeouts
from bot.channels.telegram.listening import Backoff
from bot.conversing import Conversing
from bot.service_client import ServiceClient
from bot.worker import Desk, Pace, Worker
from server.api import auth, snapshot
from server.api.building import Built, build
from server.api.parts import PARTS, Parts
from server.app import Options, make_app
from server.clock import SteppedClock
from server.journal import Journal
from server.settings import Settings
from server.watch.notice import Notice, NoticeKey, NoticeKind, ReminderValues, TestAlarmValues, Urgency
from tests.channels.standin import TOKEN, StandIn

PATIENT = Timeouts(poll_s=1, connection_s=60.0, answer_s=60.0, picture_s=60.0, pool_s=60.0)
WAIT_S = 60.0
"""How long a test waits for something that must happen: a limit, never a measure."""


async def until(true: Callable[[], Any]) -> None:
    """Wait until it is so; `true` may be asynchronous."""
    async with asyncio.timeout(WAIT_S):
        while True:
            found = true()
            if await found if isinstance(found, Awaitable) else found:
                return
            await asyncio.sleep(0.01)


@pytest.fixture
async def standin() -> AsyncIterator[StandIn]:
    """Telegram, on loopback."""
    async with StandIn() as started:
        yield started


@pytest.fixture
async def make_telegram(standin: StandIn) -> AsyncIterator[Callable[..., Telegram]]:
    """Makes Telegram channels at the stand-in; closes them. They wait long for what should come, however slow the
    machine is, and short only where a test asks for it."""
    made: list[Telegram] = []

    def make(token: str = TOKEN, base_url: str = "", **options: Any) -> Telegram:
        timeouts = options.pop("timeouts", PATIENT)
        options.setdefault("backoff", lambda: Backoff(0.01, 0.05))
        channel = Telegram(token, base_url or standin.base_url, timeouts=timeouts, **options)
        made.append(channel)
        return channel

    yield make
    for channel in made:
        await channel.close()


@pytest.fixture
def telegram(make_telegram: Callable[..., Telegram]) -> Telegram:
    """One such channel."""
    return make_telegram()


@pytest.fixture
def unused_port() -> int:
    """A port at which nobody listens."""
    with socket.socket() as probe:
        probe.bind(("127.0.0.1", 0))
        return int(probe.getsockname()[1])


EVENT_TEXT = """
[event]
id = "short-stile"
name = "The Short Stile"
time_zone = "Europe/London"
starts = 2027-06-19T05:00
route = "route.gpx"
emergency_number = "112"

[race_control]
name = "Race control"
phone = "+44 1632 960001"

[[points]]
id = "start"
name = "Fold"
km = 0.0
kinds = ["start"]

[[points]]
id = "mill"
name = "Skelter Mill"
km = 20.0
kinds = ["aid station", "crew access"]

[[points]]
id = "finish"
name = "Fold again"
km = 43.0
kinds = ["finish"]

[[runners]]
id = "maren"
name = "Maren"
bib = "214"
target = { finish = "8:00" }

[[people]]
id = "maren"
name = "Maren"
parts = [{ kind = "runner", runner = "maren" }]

[[people]]
id = "ana"
name = "Ana"
channels = ["telegram", "email"]
email = "ana@example.org"
parts = [{ kind = "crew", runner = "maren", ladder = 1 }]

[[people]]
id = "tomas"
name = "Tomas"
phone = "+44 1632 960012"
parts = [{ kind = "safety contact", runner = "maren", ladder = 2, can_telephone = true, calls_race_control = true }]

[[people]]
id = "jonas"
name = "Jonas"
parts = [{ kind = "crew", runner = "maren" }]
"""
EVENT = "short-stile"


def _gpx() -> bytes:
    """A straight, level line of 43 km north."""
    points = "".join(
        f'<trkpt lat="{54 + 43.0 / 111.2 * i / 430:.6f}" lon="-2.2"><ele>100</ele></trkpt>'
        for i in range(431)
    )
    return (
        '<gpx version="1.1" creator="x" xmlns="http://www.topografix.com/GPX/1/1"><trk><trkseg>'
        f"{points}</trkseg></trk></gpx>"
    ).encode()


class EchoDesk:
    """A desk that says back what it was asked; `gate` may hold or fail one address."""

    def __init__(self) -> None:
        self.handled: list[Incoming] = []
        self.gates: dict[str, Callable[[], Awaitable[None]]] = {}

    async def handle(self, incoming: Incoming) -> Reply:
        """See `bot.worker.Desk`."""
        if incoming.address in self.gates:
            await self.gates[incoming.address]()
        self.handled.append(incoming)
        return Reply(f"you said: {incoming.text or incoming.button}")


@pytest.fixture
def desk() -> EchoDesk:
    """A desk that says back what it was asked."""
    return EchoDesk()


@dataclass(repr=False)
class Server:
    """A real server with a small event, on a port that stays the same when it is stopped and started again."""

    url: str
    journal: Journal
    clock: SteppedClock
    app: web.Application
    start: Callable[[], Awaitable[None]]
    stop: Callable[[], Awaitable[None]]
    looks: Counter[str] = field(default_factory=Counter)

    async def looked(self, name: str, times: int = 2) -> None:
        """Wait until the journal has been asked so that often from now: 'claim', 'next_updates', 'take_lease'. Of
        two, the second began after this was called and has been answered."""
        before = self.looks[name]
        await until(lambda: self.looks[name] >= before + times)

    @property
    def parts(self) -> Parts:
        """What its handlers share."""
        return self.app[PARTS]

    async def token(self, channel: str) -> str:
        """A channel's own token."""
        return await self.journal.issue_token(None, channel, [auth.channel_scope(channel)], self.clock.now())

    async def another_event(self, event: str) -> None:
        """The same people and points are in a second event."""
        text = EVENT_TEXT.replace(f'"{EVENT}"', f'"{event}"')
        found = _built(text, 1).event
        await self.journal.store_event(text, {"route.gpx": _gpx()}, found, "test", self.clock.now())

    async def owe(
        self, person: str, *, urgency: Urgency = Urgency.ACTION, episode: int = 1, event: str = EVENT
    ) -> int:
        """A notice is owed to somebody; its short number."""
        now = self.clock.now()
        # News has no buttons of its own: those of one kind would not be joined.
        news = urgency is Urgency.NEWS
        key = NoticeKey(
            event, "", person, NoticeKind.REMINDER if news else NoticeKind.TEST_ALARM, "", episode
        )
        values = ReminderValues("e", "fill the bottles", now) if news else TestAlarmValues(now)
        owed = Notice(key, urgency, now, None, not news, values)
        (made,) = await self.journal.add_notices([owed], now)
        return made.short


def _counted(method: Callable[..., Awaitable[Any]], name: str, looks: Counter[str]) -> Callable[..., Any]:
    async def counted(*given: Any, **named: Any) -> Any:
        found = await method(*given, **named)
        looks[name] += 1
        return found

    return counted


@cache
def _built(text: str, version: int) -> Built:
    return build(text, {"route.gpx": _gpx()}, version=version)


@pytest.fixture
async def server(sqlite_url: str, unused_port: int, monkeypatch: pytest.MonkeyPatch) -> AsyncIterator[Server]:
    """The server, with Ana (41) and Jonas (42) bound on Telegram."""
    clock = SteppedClock(datetime(2027, 6, 19, 3, 0, tzinfo=UTC))
    journal = await Journal.open(sqlite_url, channels=("telegram", "email"))
    files = {"route.gpx": _gpx()}
    # Each server would build the same course and timetable again.
    monkeypatch.setattr(snapshot, "build", lambda text, _files, *, version, **_how: _built(text, version))
    await journal.store_event(EVENT_TEXT, files, _built(EVENT_TEXT, 1).event, "test", clock.now())
    await journal.bind("ana", "telegram", "41", clock.now())
    await journal.bind("jonas", "telegram", "42", clock.now())
    settings = Settings(
        telegram_webhook_secret=SecretStr("a-secret-of-ours"), port=unused_port, text_gateway=True
    )
    running: list[web.AppRunner] = []

    async def start() -> None:
        app = make_app(
            settings, journal, clock, options=Options(live=False, channels=frozenset({"telegram"}))
        )
        runner = web.AppRunner(app, shutdown_timeout=0.2, access_log=None)
        await runner.setup()
        await web.TCPSite(runner, "127.0.0.1", unused_port).start()
        running.append(runner)
        up.app = app

    async def stop() -> None:
        while running:
            await running.pop().cleanup()

    up = Server(f"http://127.0.0.1:{unused_port}", journal, clock, web.Application(), start, stop)
    for name in ("claim", "next_updates", "take_lease"):
        monkeypatch.setattr(journal, name, _counted(getattr(journal, name), name, up.looks))
    await start()
    yield up
    await stop()
    await journal.close()


QUICK = Pace(
    idle_s=0.02, lease_s=10.0, listen_ttl_s=1.5, again_s=0.01, again_longest_s=0.05, settings_again_s=0.1
)


LISTENS_ON = replace(QUICK, listen_ttl_s=300.0)
"""For a test whose server goes away: in real time, listening would be given up at the end of a short lease."""


@pytest.fixture
async def make_worker(server: Server) -> AsyncIterator[Callable[..., Awaitable[Worker]]]:
    """Starts workers, quick ones; stops them at the end."""
    running: list[tuple[Worker, asyncio.Task[None]]] = []
    async with aiohttp.ClientSession() as session:

        async def make(channel: Channel, desk: Desk | None = None, pace: Pace = QUICK) -> Worker:
            service = ServiceClient(session, server.url, await server.token(channel.name))
            worker = Worker(channel, service, desk or Conversing(service), pace, server.clock)
            running.append((worker, asyncio.create_task(worker.run())))
            return worker

        yield make
        for worker, _ in running:
            worker.stop()
        await asyncio.wait_for(asyncio.gather(*(task for _, task in running)), WAIT_S)
