"""Pictures sent with a report: kept under an id made from their bytes, blanked in place."""

from __future__ import annotations

import hashlib
from datetime import datetime

from sqlalchemy import select
from sqlalchemy.ext.asyncio import AsyncConnection

from server.journal import tables as t
from server.journal.store import insert

__all__ = ["keep", "of_entry", "one", "owns"]


async def keep(
    c: AsyncConnection, event: str, entry: str | None, by: str, content: bytes, media_type: str, now: datetime
) -> str:
    """See `Journal.keep_picture`. The sender is part of the id: two people's same picture is two rows, so
    that deletion for one of them leaves the other's."""
    picture = "p-" + hashlib.sha256(f"{event}\0{by}\0".encode() + content).hexdigest()[:24]
    row = {
        "id": picture,
        "event": event,
        "entry": entry,
        "by": by,
        "media_type": media_type,
        "content": content,
        "at": now,
    }
    put = insert(c, t.picture).values(row)
    if entry is None:
        await c.execute(put.on_conflict_do_nothing())
    else:
        await c.execute(put.on_conflict_do_update(index_elements=["id"], set_={"entry": entry}))
    return picture


async def owns(c: AsyncConnection, picture: str, event: str, person: str) -> bool:
    """See `Journal.owns_picture`."""
    p = t.picture.c
    return await c.scalar(select(p.id).where(p.id == picture, p.event == event, p.by == person)) is not None


async def of_entry(c: AsyncConnection, picture: str) -> tuple[str, str | None, str] | None:
    """See `Journal.picture_of`."""
    p = t.picture.c
    row = (
        await c.execute(select(p.event, p.entry, p.by).where(p.id == picture, p.blanked_at.is_(None)))
    ).one_or_none()
    return None if row is None else (row.event, row.entry, row.by)


async def one(c: AsyncConnection, picture: str) -> tuple[bytes, str] | None:
    """See `Journal.picture`."""
    p = t.picture.c
    row = (
        await c.execute(select(p.content, p.media_type).where(p.id == picture, p.blanked_at.is_(None)))
    ).one_or_none()
    return None if row is None else (bytes(row.content), row.media_type)
