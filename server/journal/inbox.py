"""Raw updates: stored under (channel, id) before the channel is told, worked off in the order in which they came: those of
a chat always, and chats that sound as if they called for help before all others."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from datetime import datetime, timedelta
from typing import Any

from sqlalchemy import ColumnElement, Select, and_, case, exists, func, or_, select, update
from sqlalchemy.ext.asyncio import AsyncConnection

from server.journal import tables as t
from server.journal.store import insert
from server.journal.values import NewUpdate, RawUpdate

__all__ = ["Holder", "claim", "claimed_through", "done", "give_back", "let_by", "offset", "store", "waiting"]

u = t.update_.c


async def store(
    c: AsyncConnection, channel: str, updates: tuple[NewUpdate, ...], received_at: datetime
) -> int:
    """See `Journal.store_updates`."""
    new = 0
    for one in updates:
        row = {
            "channel": channel,
            "update_id": one.update_id,
            "id": f"{channel}-{one.update_id}",
            "body": one.body,
            "chat": one.chat,
            "urgent": one.urgent,
            "received_at": received_at,
            "tries": 0,
            "problem": "",
        }
        kept = await c.execute(
            insert(c, t.update_).values(row).on_conflict_do_nothing().returning(t.update_.c.id)
        )
        new += len(kept.all())
    if updates:
        await _raise_offset(c, channel, max(one.update_id for one in updates) + 1)
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


def claimed_through(channel: str) -> Select[Any]:
    """The servers through which updates of a channel are claimed."""
    return select(u.server).where(u.channel == channel, u.done_at.is_(None))


@dataclass(frozen=True, slots=True)
class Holder:
    """Who claims updates of a channel, when, for how long and through which server; `gone`: servers whose claims are
    free."""

    channel: str
    now: datetime
    limit: int
    lease: timedelta
    server: str | None
    gone: tuple[str, ...]


async def claim(c: AsyncConnection, who: Holder) -> list[RawUpdate]:
    """See `Journal.next_updates`."""
    earlier = t.update_.alias()
    of_chat = and_(earlier.c.channel == u.channel, earlier.c.chat == u.chat, u.chat != "", _open(earlier.c))
    in_hand = exists().where(of_chat, _before(earlier.c, u), _held(earlier.c, who))
    calls = or_(u.urgent, exists().where(of_chat, earlier.c.urgent))
    query = (
        select(t.update_)
        .where(u.channel == who.channel, _open(u), _free(u, who), ~in_hand)
        .order_by(case((calls, 0), else_=1), u.received_at, u.update_id)
        .limit(who.limit)
    )
    found = (await c.execute(query.with_for_update(skip_locked=True))).all()
    rows = await _in_order(c, who, found)
    await c.execute(
        update(t.update_)
        .where(u.channel == who.channel, u.update_id.in_([r.update_id for r in rows]))
        .values(lease_until=who.now + who.lease, server=who.server, tries=u.tries + 1)
    )
    return [RawUpdate(r.id, r.channel, r.update_id, r.body, r.received_at, r.tries + 1) for r in rows]


async def _in_order(c: AsyncConnection, who: Holder, found: Sequence[Any]) -> list[Any]:
    """Those found before which no open update of their chat stands that we have not got: another may be claiming it at
    this very moment."""
    chats = {r.chat for r in found if r.chat}
    query = select(u.chat, u.update_id).where(u.channel == who.channel, _open(u), u.chat.in_(chats))
    standing: dict[str, list[int]] = {}
    for row in await c.execute(query.order_by(u.received_at, u.update_id)):
        standing.setdefault(row.chat, []).append(row.update_id)
    kept: list[Any] = []
    for r in found:
        if not r.chat or standing[r.chat][0] == r.update_id:
            kept.append(r)
            if r.chat:
                standing[r.chat].pop(0)
    return kept


def _open(x: Any) -> ColumnElement[bool]:
    of: ColumnElement[bool] = x.done_at.is_(None)
    return of


def _free(x: Any, who: Holder) -> ColumnElement[bool]:
    """Claimed by nobody, or by somebody whose lease is over or whose server has gone."""
    return or_(x.lease_until.is_(None), x.lease_until <= who.now, x.server.in_(who.gone))


def _held(x: Any, who: Holder) -> ColumnElement[bool]:
    """Not so (spelt out, as what is compared with an empty column is neither true nor false)."""
    return and_(x.lease_until > who.now, or_(x.server.is_(None), x.server.not_in(who.gone)))


def _before(x: Any, y: Any) -> ColumnElement[bool]:
    same_time = and_(x.received_at == y.received_at, x.update_id < y.update_id)
    return or_(x.received_at < y.received_at, same_time)


async def let_by(c: AsyncConnection, update_: str) -> None:
    """See `Journal.update_let_by`."""
    await c.execute(update(t.update_).where(u.id == update_).values(chat=""))


async def give_back(c: AsyncConnection, update_: str, tries: int) -> None:
    """See `Journal.update_back`."""
    ours = and_(u.id == update_, u.tries == tries, u.done_at.is_(None))
    await c.execute(update(t.update_).where(ours).values(lease_until=None, server=None))


async def done(c: AsyncConnection, update_: str, now: datetime, problem: str) -> None:
    """See `Journal.update_done`."""
    await c.execute(
        update(t.update_)
        .where(t.update_.c.id == update_)
        .values(done_at=now, problem=problem, lease_until=None, server=None)
    )


async def waiting(c: AsyncConnection, channel: str | None) -> int:
    """See `Journal.waiting`."""
    query = select(func.count()).select_from(t.update_).where(t.update_.c.done_at.is_(None))
    if channel is not None:
        query = query.where(t.update_.c.channel == channel)
    return await c.scalar(query) or 0
