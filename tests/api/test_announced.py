"""Two servers on one PostgreSQL: what one of them is told shows at the other at once, not at its next tick."""

from __future__ import annotations

import asyncio
from collections.abc import AsyncIterator
from datetime import timedelta

import pytest
from aiohttp.test_utils import TestClient, TestServer
from sqlalchemy import text

from server.api.building import Built
from server.api.parts import PARTS
from server.app import Options, make_app
from server.clock import SteppedClock
from server.journal import Journal
from server.settings import Settings
from tests.api.conftest import EVENT, Running
from tests.conftest import Postgres

SOON_S = 5.0
"""Far less than the time between two ticks, of which there is none here: the clock stands still."""


@pytest.fixture
async def pair(
    postgres: Postgres, event_text: str, event_files: dict[str, bytes], built: Built
) -> AsyncIterator[tuple[Running, Running]]:
    name = postgres.take()
    url = postgres.url(name)
    clock = SteppedClock(built.event.starts + timedelta(hours=1))
    journals = [await Journal.open(url) for _ in range(2)]
    await journals[0].store_event(event_text, event_files, built.event, "test", built.event.starts)
    clients = [
        TestClient(TestServer(make_app(Settings(), j, clock, options=Options(live=True)))) for j in journals
    ]
    both = [Running(c, c.app[PARTS], clock, built) for c in clients if c.app is not None]
    for c in clients:
        await c.start_server()
    yield both[0], both[1]
    for c, j in zip(clients, journals, strict=True):
        await c.close()
        await j.close()
    postgres.give_back(name)


async def told_on_a_page(of: Running, when: Running) -> None:
    """A page open at one server is told 'changed' after a report came in at the other."""
    headers = {"Authorization": f"Bearer {await of.token('olga')}"}
    async with of.client.get("/stream", headers=headers) as stream:
        await asyncio.sleep(1.0)  # what both did at their start has been told by then
        while stream.content.total_bytes and stream.content._buffer:
            stream.content.read_nowait()
        status, said = await when.report("olga", "in", "mill")
        assert status == 200, said
        async with asyncio.timeout(SOON_S):
            while b"event: changed" not in await stream.content.readline():
                pass


async def test_a_page_at_one_server_hears_what_the_other_was_told(pair: tuple[Running, Running]) -> None:
    one, two = pair
    await told_on_a_page(of=two, when=one)


@pytest.fixture
async def heard(pair: tuple[Running, Running]) -> AsyncIterator[tuple[asyncio.Queue[str | None], ...]]:
    """What each of the two journals hears; that it has begun to listen has been taken out."""
    queues = tuple(asyncio.Queue[str | None]() for _ in pair)
    tasks = [
        asyncio.create_task(of.parts.journal.hear(queue.put_nowait))
        for of, queue in zip(pair, queues, strict=True)
    ]
    async with asyncio.timeout(SOON_S):
        assert [await q.get() for q in queues] == [None, None]
    yield queues
    for task in tasks:
        task.cancel()
    await asyncio.gather(*tasks, return_exceptions=True)


async def changed(at: Running) -> None:
    await at.parts.journal.store_event("# one line more\n", {}, at.built.event, "test", at.clock.now())


async def test_a_new_version_is_heard_of_but_not_by_who_stored_it(
    pair: tuple[Running, Running], heard: tuple[asyncio.Queue[str | None], ...]
) -> None:
    """By the event's id; what a server does itself it knows."""
    await changed(pair[0])
    async with asyncio.timeout(SOON_S):
        assert await heard[1].get() == EVENT
    assert heard[0].empty()


async def test_a_connection_that_is_cut_is_made_anew(
    pair: tuple[Running, Running], heard: tuple[asyncio.Queue[str | None], ...]
) -> None:
    """The database ends every connection that listens; both listen again, and say that they may have missed something."""
    cut = text(
        "SELECT count(pg_terminate_backend(pid)) FROM pg_stat_activity WHERE query ~ 'LISTEN|SELECT 1'"
        " AND pid <> pg_backend_pid() AND state = 'idle'"
    )
    async with pair[0].parts.journal._store.write() as c:
        assert await c.scalar(cut)
    async with asyncio.timeout(4 * SOON_S):
        assert [await q.get() for q in heard] == [None, None]
        await changed(pair[0])
        assert await heard[1].get() == EVENT
