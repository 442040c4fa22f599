"""Raw updates: stored once, offset never lowered, worked off in order, again after a crash."""

from __future__ import annotations

import asyncio
from datetime import datetime, timedelta

import pytest

from server.journal import Journal

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
