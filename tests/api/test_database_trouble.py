"""The database is locked, full or read-only: whoever reports hears so in time, /health says so, and nothing is half kept."""

from __future__ import annotations

import sqlite3
import time
from collections.abc import Callable, Iterator
from contextlib import closing, contextmanager
from datetime import timedelta
from typing import Any

import pytest
from sqlalchemy import event

from server.journal import Journal, store
from tests.api.conftest import EVENT, Running

pytestmark = pytest.mark.usefixtures("built_afresh")  # what a server takes to work out is measured

HELP = {"kind": "asked for help", "words": "her ankle", "key": "help-1"}


def _set(journal: Journal, *statements: str) -> Callable[[], None]:
    """Have every connection of a journal begin with these; returns what takes them back."""
    base, threads = journal._store, journal._store._threads
    usual, urgent = base.engine.sync_engine, base._apart.sync_engine
    engines = (usual, urgent) if threads is None else (threads.usual, threads.urgent)

    def begin(dbapi: Any, _record: Any, _proxy: Any) -> None:
        cursor = dbapi.cursor()
        for statement in statements:
            cursor.execute(statement)
        cursor.close()

    for engine in engines:
        event.listen(engine, "checkout", begin)

    def take_back() -> None:
        for engine in engines:
            event.remove(engine, "checkout", begin)

    return take_back


_WRONG = {
    "full": ("PRAGMA max_page_count = 1", "PRAGMA max_page_count = 1073741823"),
    "read-only": ("PRAGMA query_only = ON", "PRAGMA query_only = OFF"),
}


@contextmanager
def troubled(why: str, running: Running, path: str) -> Iterator[None]:
    """That is the matter while the block runs."""
    if why == "busy":
        with closing(sqlite3.connect(path, isolation_level=None)) as other:
            other.execute("BEGIN IMMEDIATE")
            yield
        return
    wrong, right = _WRONG[why]
    take_back = _set(running.parts.journal, wrong)
    yield
    take_back()
    _set(running.parts.journal, right)


@pytest.fixture
def quick(monkeypatch: pytest.MonkeyPatch) -> None:
    """An ordinary writer gives up sooner than it does, so that the test is short."""
    monkeypatch.setattr(store, "BUSY_S", 1.0)


@pytest.mark.parametrize("why", ["busy", "full", "read-only"])
async def test_a_call_for_help_hears_so_within_seconds(
    quick: None, running: Running, sqlite_url: str, why: str, monkeypatch: pytest.MonkeyPatch
) -> None:
    """503 with Retry-After, and what to do; /health names it; once it is put right the same call is noted, once."""
    running.clock.advance(timedelta(hours=5))
    headers = {"Authorization": f"Bearer {await running.token('ana')}"}
    with troubled(why, running, sqlite_url.partition(":///")[2]):
        began = time.monotonic()
        async with running.client.post(running.path("checkins"), json=HELP, headers=headers) as reply:
            error = (await reply.json())["error"]
            assert (reply.status, error["code"], error["where"]) == (503, "unavailable", "database")
            assert why in error["what"]
            assert "telephone now" in error["do"]
            assert 1 <= int(reply.headers["Retry-After"]) <= 15
        assert time.monotonic() - began < store.URGENT_S + 10
        if why == "full":
            monkeypatch.setattr(store, "ROOM_BYTES", 1 << 62)  # a small row may still have fitted in
        status, health = await running.get(None, "/health")
        monkeypatch.setattr(store, "ROOM_BYTES", 0)
        assert (status, health["data"]["well"], health["data"]["unwritable"]) == (503, False, why)
    running.clock.advance(timedelta(seconds=2))
    assert (await running.call("ana", "POST", running.path("checkins"), HELP))[0] == 200
    assert len(await running.stored()) == 1
    assert len(await running.parts.journal.made(EVENT)) > 0
    status, health = await running.get(None, "/health")
    assert health["data"]["unwritable"] == ""


async def test_a_report_and_a_page_hear_so(running: Running) -> None:
    """Any other report too; what only reads goes on."""
    token = await running.token("ana")
    take_back = _set(running.parts.journal, "PRAGMA query_only = ON")
    status, reply = await running.report("ana", "how she is", words="tired")
    assert (status, reply["error"]["code"]) == (503, "unavailable")
    assert (await running.get("ana", f"/v1/events/{EVENT}/people"))[0] == 200
    async with running.client.get("/", headers={"Authorization": f"Bearer {token}"}) as page:
        assert page.status == 200
    take_back()


async def test_a_database_that_may_only_be_read(
    postgres: Any, event_text: str, event_files: dict[str, bytes], built: Any
) -> None:
    """PostgreSQL as a standby leaves it: the same answer."""
    from tests.api.test_never_deaf import served

    name = postgres.take()
    async with served(postgres.url(name), event_text, event_files, built, timedelta(hours=5)) as running:
        await running.token("ana")
        take_back = _set(running.parts.journal, "SET TRANSACTION READ ONLY")
        status, reply = await running.call("ana", "POST", running.path("checkins"), HELP)
        assert (status, reply["error"]["code"]) == (503, "unavailable")
        assert "read-only" in reply["error"]["what"]
        take_back()
        assert (await running.call("ana", "POST", running.path("checkins"), HELP))[0] == 200
    postgres.give_back(name)
