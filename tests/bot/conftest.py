"""A real server on a port of its own, a real journal, a small race, and a desk that talks to it over HTTP."""

from __future__ import annotations

import asyncio
import contextlib
import math
import shutil
import uuid
from collections.abc import AsyncIterator, Awaitable, Callable, Coroutine
from concurrent.futures import ThreadPoolExecutor
from dataclasses import dataclass
from datetime import datetime, timedelta
from pathlib import Path
from typing import Any, TypeVar

import aiohttp
import pytest
from aiohttp import web
from aiohttp.test_utils import unused_port

from bot.channels.base import Incoming, Reply
from bot.conversing import Conversing
from bot.service_client import ServiceClient
from server.api import auth
from server.api.building import build
from server.api.parts import PARTS
from server.app import Options, make_app
from server.clock import SteppedClock
from server.event.model import Event
from server.facts.entry import Fix
from server.facts.fold import fold
from server.facts.state import RaceState
from server.journal import Journal
from server.settings import Settings
from tests import golden

T = TypeVar("T")
CHANNEL = "test"
START = datetime.fromisoformat("2027-06-19T05:00+01:00")

EVENT = """
[event]
id = "hill"
name = "The Hill Sixty"
time_zone = "Europe/London"
starts = 2027-06-19T05:00:00
route = "route.gpx"
emergency_number = "112"

[race_control]
name = "Race control"
phone = "+44 1632 960001"

[[points]]
id = "start"
name = "Low Barn start"
km = 0
kinds = ["start"]
reports = [{ by = "timing mat", chance = 0.99, delay_minutes = 1 }]

[[points]]
id = "mill"
name = "Skelter Mill"
also = ["the mill"]
km = 15
kinds = ["aid station", "crew access"]
crew = { parking = "the weir", walk_in_minutes = 5 }
reports = [{ by = "crew", chance = 0.95, delay_minutes = 3 }]
stop_minutes = 5

[[points]]
id = "moor"
name = "Moor Cross"
km = 30
kinds = ["aid station", "cut-off"]
cut_off = { when = "out", elapsed = "6:00" }
reports = [{ by = "volunteer", chance = 0.9, delay_minutes = 5 }]

[[points]]
id = "gate"
name = "Brindle Gate"
km = 45
kinds = ["aid station", "crew access"]
crew = { parking = "the yard", walk_in_minutes = 5 }
reports = [{ by = "crew", chance = 0.95, delay_minutes = 3 }]
stop_minutes = 10

[[points]]
id = "finish"
name = "Low Barn finish"
km = 60
kinds = ["finish", "crew access"]
crew = { parking = "the school" }
reports = [{ by = "timing mat", chance = 0.99, delay_minutes = 1 }]

[[runners]]
id = "maren"
name = "Maren"
bib = "214"
target = { finish = "9:00" }
clothing = "orange jacket"

[[runners]]
id = "tove"
name = "Tove"
bib = "87"
target = { finish = "9:30" }

[[people]]
id = "maren"
name = "Maren"
phone = "+44 1632 960010"
parts = [{ kind = "runner", runner = "maren" }]

[[people]]
id = "tove"
name = "Tove"
parts = [{ kind = "runner", runner = "tove" }]

[[people]]
id = "ana"
name = "Ana"
phone = "+44 1632 960011"
parts = [{ kind = "crew", runner = "maren", ladder = 2, can_telephone = true, drives = true, car = "van" }]

[[people]]
id = "both"
name = "Birgit"
language = "de"
parts = [{ kind = "crew", runner = "maren" }, { kind = "crew", runner = "tove" }]

[[people]]
id = "ines"
name = "Ines"
phone = "+49 30 23125101"
time_zone = "Europe/Berlin"
parts = [
    { kind = "safety contact", runner = "maren", ladder = 1, calls_race_control = true },
    { kind = "safety contact", runner = "tove", ladder = 1 },
]

[[people]]
id = "vera"
name = "Vera"
parts = [{ kind = "volunteer", point = "moor" }]

[[people]]
id = "fan"
name = "Finn"
parts = [{ kind = "supporter", runner = "maren" }]

[[people]]
id = "olga"
name = "Olga"
parts = [{ kind = "organiser" }]

[[cars]]
id = "van"
name = "blue van"
starts_at = "start"

[[drives]]
from = "start"
to = "mill"
minutes = 20
confirmed_by = "ana"

[[drives]]
from = "mill"
to = "gate"
minutes = 30

[[meetings]]
point = "mill"
runner = "maren"
crew = ["ana"]
car = "van"
kit = ["two bottles", { name = "head torch", weight = "safety", car = "van" }, { name = "wet socks", take_back = true }]
food = "rice pudding"
if_missed = "drive on to Brindle Gate"

[[meetings]]
point = "gate"
runner = "maren"
crew = ["ana"]
car = "van"
kit = ["dry shirt"]

[[meetings]]
point = "gate"
runner = "tove"
crew = ["both"]
kit = ["poles"]

[[if_then]]
id = "feet"
trouble = "hot spot or blister on a foot"
try_first = ["stop at once", "dry and tape"]
red_flags = ["cannot bear weight"]
"""


def route_gpx() -> bytes:
    """60 km due north over two hills, a point every 100 m (one degree of latitude is 111.2 km)."""
    rows = []
    for i in range(601):
        height = 200 + 120 * math.sin(i / 600 * 4 * math.pi)
        rows.append(f'<trkpt lat="{54.5 + i * 0.1 / 111.2:.6f}" lon="-2.6"><ele>{height:.1f}</ele></trkpt>')
    return (
        '<?xml version="1.0"?><gpx version="1.1" creator="t" xmlns="http://www.topografix.com/GPX/1/1">'
        f"<trk><trkseg>{''.join(rows)}</trkseg></trk></gpx>"
    ).encode()


def place_at(km: float) -> Fix:
    """A place on the line."""
    return Fix(54.5 + km / 111.2, -2.6, 10.0)


@dataclass(slots=True, repr=False)
class Race:
    """The server, its clock, and a desk. `say` is what a person types; people are bound by their ids."""

    event: Event
    clock: SteppedClock
    journal: Journal
    desk: Conversing
    api: ServiceClient
    session: aiohttp.ClientSession
    url: str
    secret: str
    runner: web.AppRunner
    tick: Callable[[], Awaitable[object]]

    def at(self, hm: str, day: int = 0) -> None:
        """Set the clock to a wall time of the race."""
        hours, minutes = map(int, hm.split(":"))
        self.clock.set(START.replace(hour=hours, minute=minutes) + timedelta(days=day))

    async def say(self, who: str, text: str = "", **more: object) -> Reply:
        """Somebody types something, presses a button (`button=data`), or shares a place (`fix=…`)."""
        key = str(more.pop("key", uuid.uuid4().hex))
        sent_at = more.pop("sent_at", self.clock.now())
        said = Incoming(CHANNEL, who, sent_at, key, text=text, **more)  # type: ignore[arg-type]
        return await golden.heard(self.desk, self.journal, self.event.id, self.event.time_zone, said)

    async def press(self, who: str, reply: Reply, label: str, **more: object) -> Reply:
        """Somebody presses the button of a reply whose label begins so."""
        for row in reply.buttons:
            for button in row:
                if button.label.startswith(label):
                    return await self.say(who, button=button.data, **more)
        raise AssertionError(f"no button {label!r} in {[b.label for r in reply.buttons for b in r]}")

    async def call(self, who: str, method: str, path: str, body: Any = None) -> Any:
        """One call of the API by the person at that address: its data."""
        headers = {"Authorization": f"Bearer {self.secret}", "Acting-Address": who}
        async with self.session.request(method, self.url + path, json=body, headers=headers) as reply:
            found = await reply.json()
            assert found["ok"], found
            return found["data"]

    async def notices(self, who: str) -> list[dict[str, Any]]:
        """That person's notices, oldest first."""
        found = await self.call(who, "GET", f"/v1/events/{self.event.id}/notices")
        notices: list[dict[str, Any]] = found["notices"]
        return notices

    async def check_in(self, who: str, event: str, runner: str, body: dict[str, Any]) -> None:
        """A report by a device of theirs."""
        await self.call(who, "POST", f"/v1/events/{event}/runners/{runner}/checkins", body)

    async def state(self) -> RaceState:
        """What the journal's entries come to now."""
        entries = await self.journal.entries(self.event.id)
        return fold(entries, self.event, self.clock.now(), None)

    async def entries(self, kind: str) -> list[object]:
        """The entries of that kind."""
        return [e for e in await self.journal.entries(self.event.id) if e.kind.value == kind]


@dataclass(frozen=True, slots=True)
class Prepared:
    """A database to copy, the channel's secret in it, and the moment up to which it was lived through."""

    path: Path
    secret: str
    now: datetime


async def _store(path: Path, event: Event, files: dict[str, bytes], text: str = EVENT) -> str:
    """The event stored, everybody's chat bound, a token for the channel; its secret."""
    now = START - timedelta(hours=1)
    journal = await Journal.open(f"sqlite+aiosqlite:///{path}")
    await journal.store_event(text, files, event, "tests", now)
    for person in event.people:
        code = await journal.invite(person.id, event.id, "tests", now, timedelta(days=2))
        await journal.redeem(code, CHANNEL, person.id, "tests", now)
    secret = await journal.issue_token(None, CHANNEL, [auth.channel_scope(CHANNEL)], now, None)
    await journal.close()
    return secret


@contextlib.asynccontextmanager
async def serving(prepared: Prepared, folder: Path, event: Event) -> AsyncIterator[Race]:
    """A server on a copy of a prepared database."""
    path = folder / "race.db"
    shutil.copy(prepared.path, path)
    journal = await Journal.open(f"sqlite+aiosqlite:///{path}")
    clock = SteppedClock(prepared.now)
    port = unused_port()
    app = make_app(Settings(database="tests", port=port), journal, clock, options=Options(live=False))
    runner = web.AppRunner(app, shutdown_timeout=1.0)
    await runner.setup()
    await web.TCPSite(runner, "127.0.0.1", port).start()
    try:
        async with aiohttp.ClientSession() as session:
            url = f"http://127.0.0.1:{port}"
            api = ServiceClient(session, url, prepared.secret)
            ticker = app[PARTS].ticker
            yield Race(
                event,
                clock,
                journal,
                Conversing(api),
                api,
                session,
                url,
                prepared.secret,
                runner,
                lambda: ticker.tick(clock.now()),
            )
    finally:
        await runner.cleanup()
        await journal.close()


async def _live_through_the_start(prepared: Prepared, folder: Path, event: Event) -> None:
    """Both runners are out of the start, Maren in at the mill and out again."""
    async with serving(prepared, folder, event) as race:
        race.at("05:03")
        await race.say("olga", "maren out of start at 5:00")
        await race.say("olga", "tove out of start at 5:01")
        race.at("07:10")
        await race.say("ana", "in at mill 7:02")
        await race.say("ana", "out of mill 7:08")


def _run(work: Coroutine[object, object, T]) -> T:
    """Run something for a fixture of the session, which has no loop of its own."""
    with ThreadPoolExecutor(1) as thread:
        return thread.submit(lambda: asyncio.run(work)).result()


@pytest.fixture(scope="session")
def event_text() -> str:
    """The event file of the small race."""
    return EVENT


@pytest.fixture(scope="session")
def event_files() -> dict[str, bytes]:
    """What that file names."""
    return {"route.gpx": route_gpx()}


@pytest.fixture(scope="session")
def small_event() -> Event:
    """The Hill Sixty."""
    return build(EVENT, {"route.gpx": route_gpx()}).event


@pytest.fixture(scope="session")
def before_start(
    sqlite_template: Path, tmp_path_factory: pytest.TempPathFactory, small_event: Event
) -> Prepared:
    """An hour before the start."""
    path = tmp_path_factory.mktemp("before") / "race.db"
    shutil.copy(sqlite_template, path)
    secret = _run(_store(path, small_event, {"route.gpx": route_gpx()}))
    return Prepared(path, secret, START - timedelta(hours=1))


@pytest.fixture(scope="session")
def on_the_way(
    before_start: Prepared, tmp_path_factory: pytest.TempPathFactory, small_event: Event
) -> Prepared:
    """07:30: Maren was out of the mill at 07:08. Lived through once, copied for every test."""
    folder = tmp_path_factory.mktemp("way")
    _run(_live_through_the_start(before_start, folder, small_event))
    return Prepared(folder / "race.db", before_start.secret, START.replace(hour=7, minute=30))


@pytest.fixture
async def race(on_the_way: Prepared, tmp_path: Path, small_event: Event) -> AsyncIterator[Race]:
    """The race at 07:30."""
    async with serving(on_the_way, tmp_path, small_event) as served:
        yield served


TWO_CARS = (
    EVENT.replace(
        'parts = [{ kind = "crew", runner = "maren" }, { kind = "crew", runner = "tove" }]',
        """parts = [
    { kind = "crew", runner = "maren", drives = true, car = "red", can_telephone = true },
    { kind = "crew", runner = "tove" },
]""",
    )
    .replace("minutes = 30\n", 'minutes = 30\nconfirmed_by = "ana"\n')
    .replace(
        'runner = "maren"\ncrew = ["ana"]\ncar = "van"\nkit = ["dry',
        'runner = "maren"\ncrew = ["ana", "both"]\ncar = "van"\nkit = ["dry',
    )
    + """
[[places]]
id = "home"
name = "Hof Anger"

[[cars]]
id = "red"
name = "rotes Auto"
starts_at = "home"

[[drives]]
from = "home"
to = "gate"
minutes = 70
confirmed_by = "both"
"""
)
"""Birgit comes to Maren's meeting at the gate from home, in a car of her own; Ana from the mill, in the van."""


@pytest.fixture
async def race_two_cars(sqlite_template: Path, tmp_path: Path) -> AsyncIterator[Race]:
    """That race at its start."""
    event = build(TWO_CARS, {"route.gpx": route_gpx()}).event
    path = tmp_path / "before.db"
    shutil.copy(sqlite_template, path)
    secret = await _store(path, event, {"route.gpx": route_gpx()}, TWO_CARS)
    async with serving(Prepared(path, secret, START - timedelta(hours=1)), tmp_path, event) as race:
        race.at("05:03")
        await race.say("olga", "maren out of start at 5:00")
        yield race


@pytest.fixture
async def race_to_come(
    before_start: Prepared, tmp_path_factory: pytest.TempPathFactory, small_event: Event
) -> AsyncIterator[Race]:
    """The race an hour before its start."""
    async with serving(before_start, tmp_path_factory.mktemp("to-come"), small_event) as served:
        yield served
