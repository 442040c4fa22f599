"""Raw updates: stored once, offset never lowered, worked off in order, again after a crash."""

from __future__ import annotations

import asyncio
from collections.abc import AsyncIterator
from datetime import datetime, timedelta

import pytest

from server.journal import Journal, NewUpdate
from server.journal.retention import HANGS_AFTER

SECOND = timedelta(seconds=1)
LEASE = 60 * SECOND


async def test_stored_once(journal: Journal, start: datetime) -> None:
    """The same update again, in any batch, counts once; the offset only rises; channels are apart."""
    assert await journal.offset("telegram") is None
    assert await journal.store_updates("telegram", [(7, "a"), (8, "b")], start) == 2
    assert await journal.store_updates("telegram", [(8, "b again"), (9, "c"), (9, "c")], start) == 1
    assert await journal.offset("telegram") == 10
    assert await journal.store_updates("telegram", [(3, "old")], start + SECOND) == 1
    assert await journal.offset("telegram") == 10
    assert await journal.store_updates("web", [(7, "x")], start) == 1
    assert await journal.store_updates("web", [], start) == 0
    assert await journal.waiting("telegram") == 4
    assert await journal.waiting() == 5
    updates = await journal.next_updates("telegram", start)
    assert [(u.update_id, u.body) for u in updates] == [(7, "a"), (8, "b"), (9, "c"), (3, "old")]


async def test_large_ids(journal: Journal, start: datetime) -> None:
    """Ids beyond 32 bits are kept whole."""
    assert await journal.store_updates("telegram", [(2**40, "a")], start) == 1
    assert await journal.offset("telegram") == 2**40 + 1


@pytest.mark.parametrize(("after", "count"), [(LEASE - SECOND, 0), (LEASE, 1), (LEASE + SECOND, 1)])
async def test_a_worker_dies(journal: Journal, start: datetime, after: timedelta, count: int) -> None:
    """An update whose worker died comes again when its lease ends; one done never."""
    await journal.store_updates("telegram", [(1, "a"), (2, "b")], start)
    first, second = await journal.next_updates("telegram", start, lease=LEASE)
    await journal.update_done(second.id, start, "could not be read")
    again = await journal.next_updates("telegram", start + after, lease=LEASE)
    assert [(u.id, u.tries) for u in again] == [(first.id, 2)] * count
    assert await journal.waiting("telegram") == 1


async def test_many_workers(journal: Journal, start: datetime) -> None:
    """Several workers at once get each update once."""
    await journal.store_updates("telegram", [(i, "x") for i in range(40)], start)
    batches = await asyncio.gather(*(journal.next_updates("telegram", start, limit=10) for _ in range(8)))
    left = await journal.next_updates("telegram", start, limit=40)
    ids = [u.update_id for batch in [*batches, left] for u in batch]
    assert sorted(ids) == list(range(40))


@pytest.fixture
async def other(journal: Journal, database_url: str) -> AsyncIterator[Journal]:
    """Another server on the same database."""
    opened = await Journal.open(database_url)
    yield opened
    await opened.close()


async def test_a_server_dies(journal: Journal, other: Journal, start: datetime) -> None:
    """What was claimed through a server that has died is free at once, with most of its lease to run."""
    await journal.store_updates("telegram", [(1, "a")], start)
    assert await other.next_updates("telegram", start, server=await other.server())
    assert not await journal.next_updates("telegram", start + SECOND)
    await other.close()
    assert [u.tries for u in await journal.next_updates("telegram", start + SECOND)] == [2]


@pytest.mark.parametrize(("after", "count"), [(HANGS_AFTER - SECOND, 0), (HANGS_AFTER, 1)])
async def test_a_server_hangs(
    journal: Journal, other: Journal, start: datetime, after: timedelta, count: int
) -> None:
    """It lives, and has given no sign of life for a while: what it claimed, and its being the one that listens, are for
    others. One that has never given any is left its lease."""
    await journal.store_updates("telegram", [(1, "a")], start)
    assert await other.next_updates("telegram", start, server=await other.server())
    assert await other.take_lease("listen:telegram", "other", start, LEASE)
    assert not await journal.next_updates("telegram", start + after)
    await other.sign_of_life(start)
    assert await journal.take_lease("listen:telegram", "mine", start + after, LEASE) is bool(count)
    assert len(await journal.next_updates("telegram", start + after)) == count


def _said(number: int, chat: str, *, urgent: bool = False) -> NewUpdate:
    return NewUpdate(number, f"{chat}{number}", chat, urgent)


async def test_no_update_overtakes_an_earlier_one_of_its_chat(journal: Journal, start: datetime) -> None:
    """While one is in hand, those after it wait, whoever asks; those of other chats do not. One that is let by holds up
    nobody."""
    await journal.store_updates("telegram", [_said(n, c) for n, c in enumerate("aabac", 1)], start)

    async def next_ones(limit: int, at: datetime = start) -> list[int]:
        return [u.update_id for u in await journal.next_updates("telegram", at, limit, LEASE)]

    assert await next_ones(1) == [1]
    assert await next_ones(1) == [3]
    assert await next_ones(9) == [5]
    await journal.update_done("telegram-1", start)
    assert await next_ones(9) == [2, 4]
    await journal.store_updates("telegram", [_said(9, "a")], start + SECOND)
    assert await next_ones(9, start + SECOND) == []
    for number in (2, 4):
        await journal.update_let_by(f"telegram-{number}")
    assert await next_ones(9, start + SECOND) == [9]
    await journal.update_done("telegram-9", start)
    assert await next_ones(9, start + LEASE) == [2, 3, 4, 5]


async def test_one_given_back_is_free_at_once(journal: Journal, start: datetime) -> None:
    """For whoever asks next, with those that wait behind it; not when somebody has claimed it since, nor once done."""
    await journal.store_updates("telegram", [_said(1, "a")], start)

    async def tries(at: datetime) -> list[int]:
        return [u.tries for u in await journal.next_updates("telegram", at, 9, LEASE)]

    assert await tries(start) == [1]
    assert await tries(start + SECOND) == []
    await journal.update_back("telegram-1", 1)
    assert await tries(start + SECOND) == [2]
    await journal.update_back("telegram-1", 1)
    assert await tries(start + SECOND) == []
    await journal.update_done("telegram-1", start)
    await journal.update_back("telegram-1", 2)
    assert await tries(start + LEASE) == []


async def test_many_workers_keep_the_order_of_each_chat(journal: Journal, start: datetime) -> None:
    """Eight workers at once on six chats: each chat's updates are begun in order, one after the other."""
    await journal.store_updates("telegram", [_said(n, "abcdef"[n % 6]) for n in range(48)], start)
    begun: dict[int, list[int]] = {n: [] for n in range(6)}
    under_way: set[int] = set()

    async def work() -> None:
        while await journal.waiting():
            for u in await journal.next_updates("telegram", start, limit=1):
                chat = u.update_id % 6
                assert chat not in under_way
                under_way.add(chat)
                begun[chat].append(u.update_id)
                await asyncio.sleep(0.001)
                under_way.discard(chat)
                await journal.update_done(u.id, start)

    async with asyncio.timeout(60):
        await asyncio.gather(*(work() for _ in range(8)))
    assert begun == {n: list(range(n, 48, 6)) for n in range(6)}


async def test_calls_for_help_go_before_what_waits(journal: Journal, start: datetime) -> None:
    """After an outage a hundred messages wait: the chat that calls for help is next, with what it wrote before."""
    news = [_said(n, f"c{n}") for n in range(100)]
    await journal.store_updates("telegram", [*news, _said(100, "h"), _said(101, "h", urgent=True)], start)
    found = await journal.next_updates("telegram", start, limit=4)
    assert [u.update_id for u in found] == [100, 101, 0, 1]
