"""A running server on a real port, with the demo's event some hours into the race, for pages and browsers."""

from __future__ import annotations

from collections.abc import AsyncIterator
from dataclasses import replace
from datetime import timedelta
from pathlib import Path

import pytest
from aiohttp import web

from server.api import auth
from server.api.building import build
from server.api.parts import PARTS, Parts
from server.app import Options, make_app
from server.clock import SteppedClock
from server.facts.entry import Entry, Kind, Source
from server.facts.stop_log import Logged
from server.journal import Journal
from server.pages.session import DemoPerson
from server.settings import Settings

DEMO = Path(__file__).parents[2] / "demo_event"
EVENT = "harrow-round"


class Site:
    """The server, its address, and what a test does to the race."""

    def __init__(self, url: str, parts: Parts, clock: SteppedClock) -> None:
        self.url, self.parts, self.clock = url, parts, clock

    async def token(self, person: str) -> str:
        return await self.parts.journal.issue_token(person, f"s-{person}", [auth.PERSON], self.clock.now())

    async def report(
        self,
        kind: Kind,
        point: str | None = None,
        by: str = "ana",
        words: str = "",
        logged: tuple[Logged, ...] = (),
    ) -> None:
        now = self.clock.now()
        number = len(await self.parts.journal.entries(EVENT))
        await self.parts.journal.append(
            Entry(
                id="",
                event=EVENT,
                runner="maren",
                kind=kind,
                seen_at=now,
                sent_at=now,
                received_at=now,
                by=by,
                source=Source.CREW,
                sender=by,
                key=f"k{number}",
                point=point,
                words=words,
                logged=logged,
            )
        )
        await self.parts.ticker.after_entry(EVENT)


@pytest.fixture
def settings() -> Settings:
    """Those of an installation that sets none."""
    return Settings()


@pytest.fixture
def options() -> Options:
    """How the server runs: its clock is driven by the test."""
    return Options(live=False)


@pytest.fixture
async def site(sqlite_url: str, settings: Settings, options: Options) -> AsyncIterator[Site]:
    text = (DEMO / "event.toml").read_text(encoding="utf-8")
    files = {"route.gpx": (DEMO / "route.gpx").read_bytes()}
    event = build(text, files).event
    clock = SteppedClock(event.starts - timedelta(hours=1))
    journal = await Journal.open(sqlite_url)
    await journal.store_event(text, files, event, "test", clock.now())
    choices = tuple(DemoPerson(p.id, p.name) for p in event.people)
    app = make_app(settings, journal, clock, options=replace(options, choices=choices))
    runner = web.AppRunner(app, shutdown_timeout=1.0)
    await runner.setup()
    await web.TCPSite(runner, "127.0.0.1", 0).start()
    running = Site(f"http://127.0.0.1:{runner.addresses[0][1]}", app[PARTS], clock)
    clock.set(event.starts + timedelta(hours=2, minutes=45))
    await running.report(Kind.IN, "mill")
    clock.set(event.starts + timedelta(hours=2, minutes=58))
    await running.report(Kind.OUT, "mill")
    clock.set(event.starts + timedelta(hours=3, minutes=20))
    yield running
    await runner.cleanup()
    await journal.close()
