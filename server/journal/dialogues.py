"""What was spoken of with an address, and what a message that did something was answered with. Both are of use for a
while only, and are swept."""

from __future__ import annotations

from datetime import datetime, timedelta

from sqlalchemy import delete, or_, select, update
from sqlalchemy.ext.asyncio import AsyncConnection

from server.journal import tables as t
from server.journal.store import insert
from server.journal.values import Spoken

__all__ = ["forget", "keep", "keep_turn", "known", "sweep", "turn"]

SPOKEN_KEPT = timedelta(hours=24)
TURNS_KEPT = timedelta(hours=48)
"""So long a channel may hand over the same message again (own choice: twice the longest wait of the channels)."""

d, u = t.dialogue.c, t.turn.c


async def known(c: AsyncConnection, channel: str, address: str, place: str, now: datetime) -> Spoken:
    """See `Journal.spoken`."""
    query = select(t.dialogue).where(d.channel == channel, d.address == address, d.place == place)
    row = (await c.execute(query)).one_or_none()
    if row is None:
        return Spoken(channel, address, place)
    fresh = now - row.at <= SPOKEN_KEPT
    return Spoken(channel, address, place, row.version, row.body if fresh else "")


async def keep(c: AsyncConnection, spoken: Spoken, now: datetime) -> bool:
    """See `Journal.keep_turn`."""
    mine = (d.channel == spoken.channel, d.address == spoken.address, d.place == spoken.place)
    if spoken.version:
        values = {"version": spoken.version + 1, "body": spoken.body, "at": now}
        done = await c.execute(update(t.dialogue).where(*mine, d.version == spoken.version).values(values))
        return done.rowcount == 1
    row = {"channel": spoken.channel, "address": spoken.address, "place": spoken.place}
    values = {**row, "version": 1, "body": spoken.body, "at": now}
    done = await c.execute(insert(c, t.dialogue).values(values).on_conflict_do_nothing())
    return done.rowcount == 1


async def keep_turn(c: AsyncConnection, sender: str, key: str, reply: str, now: datetime) -> None:
    """The answer to one message, once."""
    values = {"sender": sender, "key": key, "reply": reply, "at": now}
    await c.execute(insert(c, t.turn).values(values).on_conflict_do_nothing())


async def turn(c: AsyncConnection, sender: str, key: str) -> str | None:
    """See `Journal.turn`."""
    found: str | None = await c.scalar(select(u.reply).where(u.sender == sender, u.key == key))
    return found


async def forget(c: AsyncConnection, channel: str, address: str) -> None:
    """Everything of one address."""
    await c.execute(
        delete(t.dialogue).where(d.channel == channel, or_(d.address == address, d.place == address))
    )
    await c.execute(delete(t.turn).where(u.sender.in_((f"{channel}:{address}", f"token:{address}"))))


async def sweep(c: AsyncConnection, now: datetime) -> None:
    """What is of no more use."""
    await c.execute(delete(t.dialogue).where(d.at < now - SPOKEN_KEPT))
    await c.execute(delete(t.turn).where(u.at < now - TURNS_KEPT))
