"""Raw updates: stored under (channel, id) before the channel is told, worked off in the order in which they came."""

from __future__ import annotations

from datetime import datetime, timedelta

from sqlalchemy import func, or_, select, update
from sqlalchemy.ext.asyncio import AsyncConnection

from server.journal import tables as t
from server.journal.store import insert
from server.journal.values import RawUpdate

__all__ = ["claim", "done", "offset", "store", "waiting"]


async def store(
    c: AsyncConnection, channel: str, updates: tuple[tuple[int, str], ...], received_at: datetime
) -> int:
    """See `Journal.store_updates`."""
    new = 0
    for update_id, body in updates:
        row = {
            "channel": channel,
            "update_id": update_id,
            "id": f"{channel}-{update_id}",
            "body": body,
            "received_at": received_at,
            "tries": 0,
            "problem": "",
        }
        kept = await c.execute(
            insert(c, t.update_).values(row).on_conflict_do_nothing().returning(t.update_.c.id)
        )
        new += len(kept.all())
    if updates:
        await _raise_offset(c, channel, max(update_id for update_id, _ in updates) + 1)
    return new


async def _raise_offset(c: AsyncConnection, channel: str, next_id: int) -> None:
    statement = insert(c, t.cursor).values(channel=channel, next_id=next_id)
    await c.execute(
        statement.on_conflict_do_update(
            index_elements=["channel"], set_={"next_id": next_id}, where=t.cursor.c.next_id < next_id
        )
    )


async def offset(c: AsyncConnection, channel: str) -> int | None:
    """See `Journal.offset`."""
    return await c.scalar(select(t.cursor.c.next_id).where(t.cursor.c.channel == channel))


async def claim(
    c: AsyncConnection, channel: str, now: datetime, limit: int, lease: timedelta
) -> list[RawUpdate]:
    """See `Journal.next_updates`."""
    u = t.update_.c
    free = (u.channel == channel, u.done_at.is_(None), or_(u.lease_until.is_(None), u.lease_until <= now))
    query = select(t.update_).where(*free).order_by(u.received_at, u.update_id).limit(limit)
    rows = (await c.execute(query.with_for_update(skip_locked=True))).all()
    await c.execute(
        update(t.update_)
        .where(u.channel == channel, u.update_id.in_([r.update_id for r in rows]))
        .values(lease_until=now + lease, tries=u.tries + 1)
    )
    return [RawUpdate(r.id, r.channel, r.update_id, r.body, r.received_at, r.tries + 1) for r in rows]


async def done(c: AsyncConnection, update_: str, now: datetime, problem: str) -> None:
    """See `Journal.update_done`."""
    await c.execute(
        update(t.update_)
        .where(t.update_.c.id == update_)
        .values(done_at=now, problem=problem, lease_until=None)
    )


async def waiting(c: AsyncConnection, channel: str | None) -> int:
    """See `Journal.waiting`."""
    query = select(func.count()).select_from(t.update_).where(t.update_.c.done_at.is_(None))
    if channel is not None:
        query = query.where(t.update_.c.channel == channel)
    return await c.scalar(query) or 0
