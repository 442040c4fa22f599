"""Heartbeats show outages; leases have one holder, before, at and after their end."""

from __future__ import annotations

import asyncio
from datetime import datetime, timedelta

import pytest

from server.journal import Journal, Outage

SECOND = timedelta(seconds=1)
MINUTE = timedelta(minutes=1)
GAP = 2 * MINUTE


@pytest.mark.parametrize(("after", "out"), [(GAP - SECOND, False), (GAP, False), (GAP + SECOND, True)])
async def test_a_gap_is_an_outage(journal: Journal, start: datetime, after: timedelta, out: bool) -> None:
    """A gap longer than agreed is an outage from the last heartbeat on, open until the next, then kept."""
    assert await journal.heartbeat("telegram", start, GAP) is None
    await journal.heartbeat("server", start + after, GAP)
    now = start + after
    expected = (Outage("telegram", start, None),) if out else ()
    assert await journal.outages(start, now) == expected
    closed = await journal.heartbeat("telegram", now, GAP)
    assert closed == (Outage("telegram", start, now) if out else None)
    assert await journal.outages(start, now, ["telegram"]) == ((closed,) if closed else ())
    assert await journal.outages(start, now, ["server"]) == ()
    assert await journal.outages(now, now) == (), "one that ended before is not asked for"
    assert await journal.last_heartbeats() == {"telegram": now, "server": now}


async def test_two_servers_beat(journal: Journal, start: datetime) -> None:
    """While one of two beats there is no outage, and an older beat that comes late changes nothing."""
    for i in range(10):
        await journal.heartbeat("server", start + i * MINUTE, GAP)
        assert await journal.heartbeat("server", start + i * MINUTE - 10 * SECOND, GAP) is None
    assert await journal.outages(start, start + 10 * MINUTE) == ()
    assert (await journal.last_heartbeats())["server"] == start + 9 * MINUTE


@pytest.mark.parametrize(
    ("after", "free"), [(MINUTE - SECOND, False), (MINUTE, True), (MINUTE + SECOND, True)]
)
async def test_a_lease_has_one_holder(
    journal: Journal, start: datetime, after: timedelta, free: bool
) -> None:
    """Another gets it when it ends, not before; the holder renews at any time."""
    assert await journal.take_lease("poller", "a", start - SECOND, MINUTE)
    assert await journal.take_lease("poller", "a", start, MINUTE)
    assert await journal.take_lease("poller", "b", start + after, MINUTE) is free
    assert await journal.take_lease("other", "b", start, MINUTE)


async def test_giving_back(journal: Journal, start: datetime) -> None:
    """Only the holder gives a lease back, and then it is free at once."""
    await journal.take_lease("poller", "a", start, MINUTE)
    await journal.give_back_lease("poller", "b")
    assert not await journal.take_lease("poller", "b", start, MINUTE)
    await journal.give_back_lease("poller", "a")
    assert await journal.take_lease("poller", "b", start, MINUTE)


async def test_one_of_many_gets_it(journal: Journal, start: datetime) -> None:
    """Of ten that ask at once, one gets the lease."""
    got = await asyncio.gather(*(journal.take_lease("poller", str(i), start, MINUTE) for i in range(10)))
    assert sum(got) == 1
