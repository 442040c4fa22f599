"""A real server on a port of its own, a real journal, a small race, and a desk that talks to it over HTTP."""

from __future__ import annotations

import itertools
import math
import shutil
from collections.abc import AsyncIterator, Callable
from dataclasses import dataclass, field
from datetime import datetime, timedelta
from pathlib import Path

import aiohttp
import pytest
from aiohttp import web
from aiohttp.test_utils import unused_port

from bot.api_client import ApiClient
from bot.channels.base import Incoming, Reply
from bot.desk import Desk
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


@dataclass(slots=True)
class Race:
    """The server, its clock, and a desk. `say` is what a person types; people are bound by their ids."""

    event: Event
    clock: SteppedClock
    journal: Journal
    desk: Desk
    api: ApiClient
    runner: web.AppRunner
    tick: Callable[[], object]
    url: str
    numbers: itertools.count[int] = field(default_factory=itertools.count)

    def at(self, hm: str, day: int = 0) -> None:
        """Set the clock to a wall time of the race."""
        hours, minutes = map(int, hm.split(":"))
        self.clock.set(START.replace(hour=hours, minute=minutes) + timedelta(days=day))

    async def say(self, who: str, text: str = "", **more: object) -> Reply:
        """Somebody types something, presses a button (`button=data`), or shares a place (`fix=…`)."""
        key = str(more.pop("key", f"m{next(self.numbers)}"))
        sent_at = more.pop("sent_at", self.clock.now())
        return await self.desk.handle(
            Incoming(CHANNEL, who, sent_at, key, text=text, **more)  # type: ignore[arg-type]
        )

    async def press(self, who: str, reply: Reply, label: str, **more: object) -> Reply:
        """Somebody presses the button of a reply whose label begins so."""
        for row in reply.buttons:
            for button in row:
                if button.label.startswith(label):
                    return await self.say(who, button=button.data, **more)
        raise AssertionError(f"no button {label!r} in {[b.label for r in reply.buttons for b in r]}")

    async def state(self) -> RaceState:
        """What the journal's entries come to now."""
        entries = await self.journal.entries(self.event.id)
        return fold(entries, self.event, self.clock.now(), None)

    async def entries(self, kind: str) -> list[object]:
        """The entries of that kind."""
        return [e for e in await self.journal.entries(self.event.id) if e.kind.value == kind]


@pytest.fixture(scope="session")
def route() -> bytes:
    """The route file."""
    return route_gpx()


@pytest.fixture
async def race(sqlite_template: Path, tmp_path: Path, route: bytes) -> AsyncIterator[Race]:
    """The race an hour before its start, with everybody's chat bound."""
    path = tmp_path / "race.db"
    shutil.copy(sqlite_template, path)
    journal = await Journal.open(f"sqlite+aiosqlite:///{path}")
    clock = SteppedClock(START - timedelta(hours=1))
    files = {"route.gpx": route}
    event = build(EVENT, files).event
    await journal.store_event(EVENT, files, event, "tests", clock.now())
    for person in event.people:
        code = await journal.invite(person.id, event.id, "tests", clock.now(), timedelta(days=2))
        await journal.redeem(code, CHANNEL, person.id, "tests", clock.now())
    secret = await journal.issue_token(None, CHANNEL, [auth.channel_scope(CHANNEL)], clock.now(), None)
    port = unused_port()
    app = make_app(Settings(database="tests", port=port), journal, clock, options=Options(live=False))
    runner = web.AppRunner(app, shutdown_timeout=1.0)
    await runner.setup()
    await web.TCPSite(runner, "127.0.0.1", port).start()
    url = f"http://127.0.0.1:{port}"
    async with aiohttp.ClientSession() as session:
        api = ApiClient(session, url, secret)
        ticker = app[PARTS].ticker
        yield Race(event, clock, journal, Desk(api), api, runner, lambda: ticker.tick(clock.now()), url)
    await runner.cleanup()
    await journal.close()
