"""Connections that ask nothing do not stay, and keep nobody out."""

from __future__ import annotations

import asyncio
from collections.abc import AsyncIterator

import aiohttp
import pytest
from aiohttp import web

from server.api.parts import PARTS
from server.app import Options, make_app
from server.clock import SystemClock
from server.doors import Door
from server.journal import Journal
from server.settings import Settings


@pytest.fixture
async def door(sqlite_url: str) -> AsyncIterator[tuple[Door, web.AppRunner, int]]:
    """A server behind its door, which lets ten in and waits a third of a second."""
    journal = await Journal.open(sqlite_url)
    settings = Settings(connections_max=10, idle_seconds=0.4, body_seconds=0.4)
    runner = web.AppRunner(make_app(settings, journal, SystemClock(), options=Options(live=False)))
    await runner.setup()
    door = Door(runner, "127.0.0.1", 0, most=settings.connections_max, idle_s=settings.idle_seconds)
    await door.start()
    yield door, runner, runner.addresses[0][1]
    await door.close()
    await runner.cleanup()
    await journal.close()


@pytest.mark.parametrize(
    "sent", [b"", b"GET /health HT", b"GET /v1/openapi.json HTTP/1.1\r\nHost: x\r\nX-A: "]
)
async def test_what_asks_nothing_is_closed(door: tuple[Door, web.AppRunner, int], sent: bytes) -> None:
    """Nothing, half a line, half of the headers: closed by the server, and its descriptors are free."""
    _, runner, port = door
    found = [await asyncio.open_connection("127.0.0.1", port) for _ in range(30)]
    for _, writer in found:
        writer.write(sent)
    async with aiohttp.ClientSession() as session, session.get(f"http://127.0.0.1:{port}/health") as reply:
        assert reply.status in (200, 503)
    async with asyncio.timeout(60):
        for reader, writer in found:
            assert await reader.read() == b""
            writer.close()
        while runner.server is not None and runner.server.connections:  # noqa: ASYNC110
            await asyncio.sleep(0.05)


async def test_the_idlest_goes_when_there_are_too_many(door: tuple[Door, web.AppRunner, int]) -> None:
    """At once, not only when its time is up; and a request in hand is let finish however long it takes."""
    watcher, runner, port = door
    assert runner.server is not None
    found = [await asyncio.open_connection("127.0.0.1", port) for _ in range(12)]
    async with asyncio.timeout(60):
        while len(runner.server.connections) < 12:  # noqa: ASYNC110
            await asyncio.sleep(0.01)
    busy = runner.server.connections[0]
    busy._current_request = object()  # type: ignore[assignment]
    watcher.look(0.0)
    watcher.look(0.1)
    assert len([c for c in runner.server.connections if c.transport is not None]) <= 10
    watcher.look(1e9)
    assert [c for c in runner.server.connections if c.transport is not None] == [busy]
    busy._current_request = None
    for _, writer in found:
        writer.close()


async def test_a_body_that_does_not_come(door: tuple[Door, web.AppRunner, int]) -> None:
    """The headers are there, the body is not: told so in time."""
    _, runner, port = door
    secret = await runner.app[PARTS].journal.issue_token(
        None, "bot", ["channel:telegram"], SystemClock().now(), None
    )
    reader, writer = await asyncio.open_connection("127.0.0.1", port)
    head = f"POST /v1/inbox HTTP/1.1\r\nHost: x\r\nAuthorization: Bearer {secret}\r\n"
    writer.write(f"{head}Content-Type: application/json\r\nContent-Length: 500\r\n\r\n{{".encode())
    async with asyncio.timeout(60):
        assert (await reader.readline()).startswith(b"HTTP/1.1 408")
    writer.close()
