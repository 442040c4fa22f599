"""A process that is stopped (SIGSTOP) in the middle of a transaction: it holds up nobody for longer than seconds."""

from __future__ import annotations

import asyncio
import os
import signal
import subprocess
import sys
import time
from collections.abc import AsyncIterator, Callable
from datetime import datetime

import pytest

from server.event.model import Event
from server.facts.entry import Entry, Kind
from server.journal import AwayError, Journal, Status, store
from server.watch.notice import Notice, NoticeKind, Urgency

HOLD = """
import asyncio, sys
from server.journal import Journal, events, store

store.IDLE_S = 1.0

async def main():
    journal = await Journal.open(sys.argv[1])
    async with journal._store.write() as c:
        await events.lock(c, "long-stile")
        print("held", flush=True)
        await asyncio.sleep(60)

asyncio.run(main())
"""


@pytest.fixture
async def stopped(loaded: Journal, database_url: str) -> AsyncIterator[subprocess.Popen[bytes]]:
    """Another process on the same database, stopped while it holds the event; killed at the end."""
    with subprocess.Popen([sys.executable, "-c", HOLD, database_url], stdout=subprocess.PIPE) as other:  # noqa: ASYNC220
        try:
            assert other.stdout is not None
            assert await asyncio.to_thread(other.stdout.readline) == b"held\n"
            os.kill(other.pid, signal.SIGSTOP)
            yield other
        finally:
            other.kill()


async def test_its_transaction_ends(
    stopped: subprocess.Popen[bytes],
    loaded: Journal,
    database_url: str,
    entry: Callable[..., Entry],
    notice: Callable[..., Notice],
    start: datetime,
) -> None:
    """PostgreSQL ends it, and a call for help that came meanwhile is kept with its alarm. SQLite cannot: its sender is
    told within seconds that nothing was kept, and once the process is gone the same call is kept."""
    call = entry("help", kind=Kind.ASKED_FOR_HELP)
    owed = [notice("tomas", kind=NoticeKind.ASKED_FOR_HELP, urgency=Urgency.ALARM)]
    began = time.monotonic()
    if database_url.startswith("sqlite"):
        with pytest.raises(AwayError) as away:
            await loaded.call_for_help(call, owed, start)
        assert away.value.why == "busy"
        assert store.URGENT_S - 0.5 < time.monotonic() - began < store.URGENT_S + 5
        stopped.kill()
        await asyncio.to_thread(stopped.wait)
    appended, made = await loaded.call_for_help(call, owed, start)
    assert (appended.status, len(made)) == (Status.NOTED, 1)
    again, made = await loaded.call_for_help(call, owed, start)
    assert (again.status, made) == (Status.SAME_AGAIN, ())
    [out] = await loaded.claim(["telegram"], start)
    assert out.notice.key.person == "tomas"


async def test_a_call_for_help_goes_before_all_who_wait(
    sqlite_url: str, event: Event, entry: Callable[..., Entry], start: datetime
) -> None:
    """On SQLite forty reports wait for their turn to write: the call that comes last is kept among the first. (PostgreSQL
    lets as many write at once as the pool is large; they hold the event for a moment each.)"""
    journal = await Journal.open(sqlite_url)
    await journal.store_event("t", {}, event, "ana", start)
    done: list[str] = []

    async def report(key: str) -> None:
        await journal.append(entry(key))
        done.append(key)

    async def call() -> None:
        await journal.call_for_help(entry("help", kind=Kind.ASKED_FOR_HELP), [], start)
        done.append("help")

    waiting = [asyncio.create_task(report(f"k{i}")) for i in range(40)]
    await asyncio.sleep(0)
    await asyncio.gather(call(), *waiting)
    await journal.close()
    assert len(done) == 41
    assert done.index("help") < 20


async def test_whoever_gives_up_in_the_queue_takes_nobodys_turn() -> None:
    """One in a hurry whose time is up, and one that is cancelled, leave the queue as it was."""
    queue = store.Queue()
    order: list[str] = []

    async def turn(name: str, within_s: float | None = None) -> None:
        async with queue.turn(within_s):
            order.append(name)
            await asyncio.sleep(0)

    async with queue.turn():
        hurried = asyncio.create_task(turn("hurried", 0.01))
        gone, stays = asyncio.create_task(turn("gone")), asyncio.create_task(turn("stays"))
        await asyncio.sleep(0)
        gone.cancel()
        with pytest.raises(TimeoutError):
            await hurried
        first = asyncio.create_task(turn("first", 60.0))
        await asyncio.sleep(0)
    await asyncio.gather(first, stays)
    assert order == ["first", "stays"]
    async with asyncio.timeout(10):
        await turn("free")
