"""Heartbeats show outages; leases have one holder, before, at and after their end."""

from __future__ import annotations

import asyncio
from datetime import datetime, timedelta

import pytest

from server.event.model import Event
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


async def test_the_lease_of_a_server_that_died_is_free_at_once(database_url: str, start: datetime) -> None:
    """While the server through which it was taken runs, a lease holds until its end; when that server is gone, another
    need not wait for the end; the one who lost it does not get it back before that."""
    first, second = await Journal.open(database_url), await Journal.open(database_url)
    assert await first.take_lease("poller", "a", start, MINUTE)
    assert not await second.take_lease("poller", "b", start + SECOND, MINUTE)
    await first.close()
    assert await second.take_lease("poller", "b", start + 2 * SECOND, MINUTE)
    back = await Journal.open(database_url)
    assert not await back.take_lease("poller", "a", start + 3 * SECOND, MINUTE)
    assert await back.take_lease("poller", "b", start + 3 * SECOND, MINUTE), "the holder may change servers"
    await back.close()
    await second.close()


async def test_whether_another_server_listens(database_url: str, start: datetime) -> None:
    """It does once it has found nothing waiting since it took the lease, while it runs and gives signs of life."""
    first, second = await Journal.open(database_url), await Journal.open(database_url)
    assert not await second.listens_elsewhere("telegram", start)
    await first.heartbeat("channel:telegram", start - SECOND, caught_up=True)
    await first.take_lease("listen:telegram", "a", start, 10 * MINUTE)
    await first.heartbeat("channel:telegram", start + SECOND)
    assert not await second.listens_elsewhere("telegram", start + SECOND), "what waited may not be read yet"
    await first.heartbeat("channel:telegram", start + 2 * SECOND, caught_up=True)
    await first.take_lease("listen:telegram", "a", start + 3 * SECOND, 10 * MINUTE)
    assert await second.listens_elsewhere("telegram", start + 3 * SECOND)
    assert not await first.listens_elsewhere("telegram", start + 3 * SECOND), "that is no other server"
    assert not await second.listens_elsewhere("telegram", start + 3 * MINUTE), "no sign of life"
    await first.close()
    assert not await second.listens_elsewhere("telegram", start + 4 * SECOND), "it is gone"
    await second.close()


async def test_a_channel_that_was_removed_is_not_down(database_url: str, start: datetime) -> None:
    """Only what this installation has can be down now; what was down while it had it, was down."""
    before = await Journal.open(database_url, channels=["web", "telegram", "email"])
    for component in ("server", "channel:telegram", "outgoing:email"):
        await before.heartbeat(component, start, GAP)
    await before.heartbeat("channel:telegram", start + 10 * MINUTE, GAP)
    now = start + timedelta(hours=5)
    down = {o.component for o in await before.outages(start - MINUTE, now) if o.end is None}
    assert down == {"server", "channel:telegram", "outgoing:email"}
    await before.close()
    after = await Journal.open(database_url, channels=["web", "email"])
    found = [(o.component, o.end) for o in await after.outages(start - MINUTE, now)]
    assert set(found) == {
        ("server", None),
        ("outgoing:email", None),
        ("channel:telegram", start + 10 * MINUTE),
    }
    await after.close()


async def test_what_is_expected_and_never_comes_is_down(journal: Journal, start: datetime) -> None:
    """A channel that never gave a sign of life is down since it was expected; one that did is not touched."""
    await journal.heartbeat("server", start - MINUTE, GAP)
    for component in ("server", "channel:telegram"):
        await journal.expect(component, start, GAP)
    assert (await journal.last_heartbeats())["server"] == start - MINUTE
    assert await journal.outages(start, start + MINUTE) == ()
    now = start + GAP + SECOND
    await journal.heartbeat("server", start + GAP - MINUTE, GAP)
    assert await journal.outages(start, now) == (Outage("channel:telegram", start, None),)


async def test_the_channels_of_people(loaded: Journal, event: Event, start: datetime) -> None:
    """In the order in which they are tried: as each wishes, pages last; nobody without an address is named."""
    await loaded.bind("ana", "web", "s-1", start)
    await loaded.bind("ana", "text", "+44", start)
    assert await loaded.channels_of(event.people) == {
        "ana": ("telegram", "text", "web"),
        "tomas": ("telegram",),
    }
