"""Whole transactions in one step of a thread: whoever is cancelled, hangs or breaks in one leaves nothing behind."""

from __future__ import annotations

import asyncio
import subprocess
import sys
import threading
import time
from collections.abc import AsyncIterator, Callable, Iterator
from datetime import datetime
from pathlib import Path

import pytest
from sqlalchemy import func, select
from sqlalchemy.ext.asyncio import AsyncConnection

from server.event.model import Event
from server.facts.entry import Entry, Kind
from server.journal import Journal, Status, entries, store
from server.journal import tables as t

ROOT = Path(__file__).parents[2]
BUSY = """
import asyncio, sys
from server.journal import Journal
from tests.journal.conftest import make_entry

async def main():
    journal = await Journal.open(sys.argv[1])
    print("open", flush=True)
    for n in range(60):
        await asyncio.gather(journal.append(make_entry(f"theirs-{n}")), journal.entries("long-stile"))
    await journal.close()

asyncio.run(main())
"""


@pytest.fixture
async def on_file(sqlite_url: str, event: Event, start: datetime) -> AsyncIterator[Journal]:
    """A journal with the invented event in a SQLite file."""
    journal = await Journal.open(sqlite_url)
    await journal.store_event("t", {}, event, "ana", start)
    yield journal
    await journal.close()


@pytest.fixture
def gate() -> Iterator[threading.Event]:
    """Holds up whoever waits for it in a thread, until it is set; set at the end."""
    opens = threading.Event()
    yield opens
    opens.set()


async def _keys(journal: Journal) -> list[str]:
    return [e.key for e in await journal.entries("long-stile")]


async def test_what_waits_for_something_else_keeps_nothing(
    on_file: Journal, entry: Callable[..., Entry]
) -> None:
    """Half a transaction is none, also when it is the program that is wrong."""

    async def half(c: AsyncConnection) -> None:
        await entries.append(c, entry("half"))
        await asyncio.sleep(0)
        await entries.append(c, entry("other half"))

    with pytest.raises(RuntimeError, match="has waited"):
        await on_file._store.writing(half)
    assert await _keys(on_file) == []
    assert (await on_file.append(entry("next"))).status is Status.NOTED


@pytest.mark.parametrize("times", [1, 2, 3])
async def test_cancelled_while_it_writes(
    on_file: Journal, entry: Callable[..., Entry], gate: threading.Event, start: datetime, times: int
) -> None:
    """However often it is cancelled: its turn is over once its transaction is, which is kept whole, and a call for help
    that waited behind it is kept next."""
    under_way = threading.Event()

    async def slowly(c: AsyncConnection) -> None:
        await entries.append(c, entry("slow"))
        under_way.set()
        gate.wait(20)

    writing = asyncio.create_task(on_file._store.writing(slowly))
    assert await asyncio.to_thread(under_way.wait, 20)
    for _ in range(times):
        writing.cancel()
        await asyncio.sleep(0.01)
    call = asyncio.create_task(on_file.call_for_help(entry("help", kind=Kind.ASKED_FOR_HELP), [], start))
    await asyncio.sleep(0.05)
    assert on_file._store._writer._busy
    assert not writing.done()
    gate.set()
    with pytest.raises(asyncio.CancelledError):
        await writing
    assert (await call)[0].status is Status.NOTED
    assert await _keys(on_file) == ["slow", "help"]


async def test_cancelled_at_any_moment(on_file: Journal, entry: Callable[..., Entry]) -> None:
    """Of sixty reports, each cancelled a little later than the one before, those that were acknowledged are there, all
    others whole or not at all, and the way is free."""

    async def report(n: int) -> bool:
        try:
            async with asyncio.timeout(n * 0.0005):
                return (await on_file.append(entry(f"k{n}"))).status is Status.NOTED
        except TimeoutError:
            return False

    said = await asyncio.gather(*(report(n) for n in range(60)))
    kept = await _keys(on_file)
    assert {f"k{n}" for n, yes in enumerate(said) if yes} <= set(kept)
    assert len(kept) == (await on_file.head("long-stile")).number
    assert not on_file._store._writer._busy
    assert on_file._store._threads is not None
    assert on_file._store._threads.usual.pool.checkedout() == 0  # type: ignore[attr-defined]
    assert (await on_file.append(entry("last"))).status is Status.NOTED


async def test_readers_that_hang_hold_up_no_call_for_help(
    on_file: Journal, entry: Callable[..., Entry], gate: threading.Event, start: datetime
) -> None:
    """Every thread for ordinary work is held, and more work waits: the call is kept at once."""

    async def hangs(c: AsyncConnection) -> int:
        found = await c.scalar(select(func.count()).select_from(t.entry))
        gate.wait(20)
        return int(found)

    held = [asyncio.create_task(on_file._store.reading(hangs)) for _ in range(3 * store._THREADS)]
    await asyncio.sleep(0.2)
    async with asyncio.timeout(store.URGENT_S):
        appended, _ = await on_file.call_for_help(entry("help", kind=Kind.ASKED_FOR_HELP), [], start)
    assert appended.status is Status.NOTED
    gate.set()
    assert set(await asyncio.gather(*held)) <= {0, 1}


async def test_two_processes_on_one_file(
    on_file: Journal, sqlite_url: str, entry: Callable[..., Entry], start: datetime
) -> None:
    """Both read and write as fast as they can: neither waits for ever, every report of both is kept once, and no call for
    help waits longer than `URGENT_S`."""
    longest = 0.0
    with subprocess.Popen(  # noqa: ASYNC220
        [sys.executable, "-c", BUSY, sqlite_url], stdout=subprocess.PIPE, cwd=ROOT
    ) as other:
        try:
            assert other.stdout is not None
            assert await asyncio.to_thread(other.stdout.readline) == b"open\n"
            for n in range(60):
                call = entry(f"help-{n}", kind=Kind.ASKED_FOR_HELP)
                began = time.monotonic()
                _, _, out = await asyncio.gather(
                    on_file.append(entry(f"ours-{n}")), _keys(on_file), on_file.call_for_help(call, [], start)
                )
                longest = max(longest, time.monotonic() - began)
                assert out[0].status is Status.NOTED
            assert await asyncio.to_thread(other.wait, 60) == 0
        finally:
            other.kill()
    assert sorted(await _keys(on_file)) == sorted(
        f"{w}-{n}" for w in ("ours", "theirs", "help") for n in range(60)
    )
    assert longest < 2 * store.URGENT_S
