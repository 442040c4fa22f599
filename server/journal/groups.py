"""Chats of a whole crew: an address that belongs to an event, to nobody in it. Told only what concerns all."""

from __future__ import annotations

import hashlib
from datetime import datetime

from sqlalchemy import bindparam, delete, select, update
from sqlalchemy.ext.asyncio import AsyncConnection

from server.journal import people
from server.journal import tables as t
from server.journal.store import insert
from server.journal.values import Address, CrewGroup
from server.watch.situation import GROUP

__all__ = ["address", "bind", "forget", "move", "of_event", "unbind"]

g = t.crew_group.c


async def bind(c: AsyncConnection, event: str, channel: str, chat: str, by: str, now: datetime) -> CrewGroup:
    """See `Journal.bind_group`."""
    digest = hashlib.sha256(f"{event}\0{channel}\0{chat}\0{now.timestamp()}".encode()).hexdigest()[:16]
    row = {"id": GROUP + digest, "channel": channel, "address": chat, "event": event}
    values = {**row, "bound_by": by, "bound_at": now}
    await c.execute(insert(c, t.crew_group).values(values).on_conflict_do_nothing())
    await people.unblock(c, channel, chat)
    found = await c.execute(
        select(t.crew_group).where(g.channel == channel, g.address == chat, g.event == event)
    )
    r = found.one()
    return CrewGroup(r.id, r.event, r.channel, r.address, r.bound_by, r.bound_at)


async def unbind(c: AsyncConnection, event: str, channel: str, chat: str) -> bool:
    """See `Journal.unbind_group`."""
    gone = delete(t.crew_group).where(g.event == event, g.channel == channel, g.address == chat)
    return bool((await c.execute(gone)).rowcount)


_OF_EVENT = select(t.crew_group).where(g.event == bindparam("which")).order_by(g.bound_at, g.id)


async def of_event(c: AsyncConnection, event: str) -> tuple[CrewGroup, ...]:
    """See `Journal.groups`."""
    rows = await c.execute(_OF_EVENT, {"which": event})
    return tuple(CrewGroup(r.id, r.event, r.channel, r.address, r.bound_by, r.bound_at) for r in rows)


async def address(c: AsyncConnection, group: str, channels: frozenset[str] | None) -> tuple[Address, ...]:
    """Where a group is reached now: one address, or none if it is gone, blocked, or of no channel here."""
    r = (await c.execute(select(t.crew_group).where(g.id == group))).one_or_none()
    if r is None or (channels is not None and r.channel not in channels):
        return ()
    if await people.is_blocked(c, r.channel, r.address):
        return ()
    return (Address(r.channel, r.address, group, r.bound_at),)


async def move(c: AsyncConnection, channel: str, chat: str, moved_to: str) -> None:
    """A chat has become another, as groups do when they grow."""
    there = select(g.event).where(g.channel == channel, g.address == moved_to).scalar_subquery()
    await c.execute(
        update(t.crew_group)
        .where(g.channel == channel, g.address == chat, g.event.not_in(there))
        .values(address=moved_to)
    )


async def forget(c: AsyncConnection, event: str) -> None:
    """Forget how to reach every group of an event."""
    await c.execute(delete(t.crew_group).where(g.event == event))
