"""A real server over a real SQLite file with the demo's event, a stepped clock, and a client for each person."""

from __future__ import annotations

import asyncio
import shutil
from collections.abc import AsyncIterator
from concurrent.futures import ThreadPoolExecutor
from dataclasses import dataclass, field
from datetime import datetime, timedelta
from pathlib import Path
from typing import Any

import pytest
from aiohttp.test_utils import TestClient, TestServer

from server.api import auth
from server.api.building import Built, build
from server.api.parts import PARTS, Parts
from server.app import Options, make_app
from server.clock import SteppedClock
from server.journal import Journal
from server.settings import Settings

DEMO = Path(__file__).parents[2] / "demo_event"
EVENT, RUNNER = "harrow-round", "maren"
EXTRA_PEOPLE = """
[[people]]
id = "vera"
name = "Vera"
parts = [{ kind = "volunteer", point = "mill" }]

[[people]]
id = "sam"
name = "Sam"
parts = [{ kind = "supporter", runner = "maren" }]

[[people]]
id = "olga"
name = "Olga"
parts = [{ kind = "organiser" }]
"""


@dataclass(slots=True, repr=False)
class Running:
    """The server while a test runs. `as_(person)` calls it with that person's own token."""

    client: TestClient[Any, Any]
    parts: Parts
    clock: SteppedClock
    built: Built
    tokens: dict[str, str] = field(default_factory=dict)

    @property
    def start(self) -> datetime:
        return self.built.event.starts

    def path(self, call: str) -> str:
        return f"/v1/events/{EVENT}/runners/{RUNNER}/{call}"

    async def token(self, person: str) -> str:
        if person not in self.tokens:
            self.tokens[person] = await self.parts.journal.issue_token(
                person, f"device of {person}", [auth.PERSON], self.clock.now()
            )
        return self.tokens[person]

    async def call(
        self, person: str | None, method: str, path: str, body: Any = None, **more: Any
    ) -> tuple[int, Any]:
        """Status and JSON of one call; `person` None sends no token."""
        headers = dict(more.pop("headers", {}))
        if person is not None:
            headers["Authorization"] = f"Bearer {await self.token(person)}"
        async with self.client.request(method, path, json=body, headers=headers, **more) as reply:
            return reply.status, await reply.json()

    async def get(self, person: str | None, path: str, **query: str) -> tuple[int, Any]:
        return await self.call(person, "GET", path, params=query)

    async def report(self, person: str, kind: str, point: str | None = None, **more: Any) -> tuple[int, Any]:
        body = {"kind": kind, **({"point": point} if point else {}), **more}
        return await self.call(person, "POST", self.path("checkins"), body)

    async def reachable(self) -> None:
        """Everybody can be reached over one channel."""
        for person in self.built.event.people:
            await self.parts.journal.bind(person.id, "telegram", person.id, self.clock.now())

    async def stored(self) -> list[Any]:
        return await self.parts.journal.entries(EVENT)


@pytest.fixture(scope="session")
def event_text() -> str:
    return (DEMO / "event.toml").read_text(encoding="utf-8") + EXTRA_PEOPLE


@pytest.fixture(scope="session")
def event_files() -> dict[str, bytes]:
    return {"route.gpx": (DEMO / "route.gpx").read_bytes()}


@pytest.fixture(scope="session")
def built(event_text: str, event_files: dict[str, bytes]) -> Built:
    return build(event_text, event_files)


@pytest.fixture(scope="module")
def with_event(
    sqlite_template: Path,
    tmp_path_factory: pytest.TempPathFactory,
    event_text: str,
    event_files: dict[str, bytes],
    built: Built,
) -> Path:
    """A database with the event in it, to copy: stored an hour before the start."""
    path = tmp_path_factory.mktemp("stored") / "race.db"
    shutil.copy(sqlite_template, path)

    async def store() -> None:
        journal = await Journal.open(f"sqlite+aiosqlite:///{path}")
        await journal.store_event(
            event_text, event_files, built.event, "test", built.event.starts - timedelta(hours=1)
        )
        await journal.close()

    with ThreadPoolExecutor(1) as thread:
        thread.submit(lambda: asyncio.run(store())).result()
    return path


@pytest.fixture
async def running(sqlite_url: str, with_event: Path, built: Built) -> AsyncIterator[Running]:
    clock = SteppedClock(built.event.starts - timedelta(hours=1))
    shutil.copy(with_event, sqlite_url.removeprefix("sqlite+aiosqlite:///"))
    journal = await Journal.open(sqlite_url)
    app = make_app(Settings(), journal, clock, options=Options(live=False))
    async with TestClient(TestServer(app)) as client:
        yield Running(client, app[PARTS], clock, built)
    await journal.close()
