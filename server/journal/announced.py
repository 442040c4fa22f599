"""Servers on one PostgreSQL tell each other that something of an event has changed, by its own LISTEN and NOTIFY.

What is told goes out with the transaction it tells of, and is a hint: whoever misses it sees the change at the next tick.
SQLite has no such thing; there one process does it all.
"""

from __future__ import annotations

import asyncio
from collections.abc import Callable, Iterable
from typing import Any

import structlog
from sqlalchemy import func, select
from sqlalchemy.ext.asyncio import AsyncConnection

from server.journal.store import Store

__all__ = ["announce", "hear"]

log = structlog.get_logger("journal")

CHANNEL = "stilepost"
ASKED_EVERY_S = 2.0
"""How often the connection is tried: one that broke without a word hears nothing."""
AGAIN_AFTER_S = (0.5, 1.0, 2.0, 5.0)


async def announce(c: AsyncConnection, store: Store, events: Iterable[str]) -> None:
    """Tell the other servers, once this transaction is kept, that these events have changed."""
    if not store.sqlite:
        for event in sorted(set(events)):
            await c.execute(select(func.pg_notify(CHANNEL, f"{store.id} {event}")))


async def hear(store: Store, changed: Callable[[str | None], None]) -> None:
    """Call `changed` with the id of each event that another server has changed, until cancelled; with None whenever what
    was told may have been missed, as the connection is new. Returns at once on SQLite."""
    failed = 0
    while not store.sqlite:
        try:
            async with store.apart() as c:
                failed = 0
                await _listen(c, store.id, changed)
        except Exception as error:  # whatever the database and its driver call it: it is tried again
            log.warning("not heard what other servers say", error=str(error))
            await asyncio.sleep(AGAIN_AFTER_S[min(failed, len(AGAIN_AFTER_S) - 1)])
            failed += 1


async def _listen(c: AsyncConnection, own: str, changed: Callable[[str | None], None]) -> None:
    def told(_connection: Any, _pid: int, _channel: str, said: str) -> None:
        server, _, event = said.partition(" ")
        if server != own:
            changed(event)

    driver: Any = (await c.get_raw_connection()).driver_connection
    await driver.add_listener(CHANNEL, told)
    changed(None)
    while True:
        await asyncio.sleep(ASKED_EVERY_S)
        await driver.execute("SELECT 1", timeout=ASKED_EVERY_S)
