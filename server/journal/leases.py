"""Claiming deliveries: who gets which, with a lease; a lease that has run out means an unknown outcome."""

from __future__ import annotations

from dataclasses import dataclass
from datetime import datetime, timedelta
from itertools import groupby
from typing import Any

from sqlalchemy import ColumnElement, Select, and_, exists, or_, select, update
from sqlalchemy.ext.asyncio import AsyncConnection

from server.journal import deliveries
from server.journal import tables as t
from server.journal.outcomes import RANK
from server.journal.store import insert
from server.journal.values import Delivery, DeliveryState, Outcome
from server.watch.notice import NoticeKind, Urgency
from server.watch.table import TABLE

__all__ = ["Claimer", "claim", "claimed_through"]

_LOOKED_AT = 500
_JOINED = 5
"""So many notices make one message at most: a longer one would be cut by its channel, a mark from its notice."""
_DIGEST = 30
"""So many old ones do, each in a line."""
OLD = timedelta(minutes=10)
"""News that has waited so long is of yesterday: all of it goes as one message (own choice)."""
_WAITING = (DeliveryState.QUEUED.value, DeliveryState.UNKNOWN.value)

d = t.delivery.c
n = t.notice.c
busy = t.destination.c


@dataclass(frozen=True, slots=True)
class Claimer:
    """Who claims, what, when, for how long and through which server; see `Journal.claim`. `gone`: servers whose claims
    are free."""

    channels: tuple[str, ...]
    now: datetime
    limit: int
    lease: timedelta
    holder: str
    spacing: timedelta
    urgent: bool = False
    server: str | None = None
    gone: tuple[str, ...] = ()


def claimed_through(channels: tuple[str, ...]) -> Select[Any]:
    """The servers through which deliveries on these channels are claimed."""
    return select(d.server).where(d.channel.in_(channels), d.state == DeliveryState.ATTEMPTING.value)


def _free(who: Claimer) -> ColumnElement[bool]:
    """Due and waiting, or lost."""
    return or_(and_(d.state.in_(_WAITING), d.due_at <= who.now), _lost(who))


def _lost(who: Claimer) -> ColumnElement[bool]:
    """Claimed by somebody whose lease is over, or whose server has gone."""
    over = or_(d.lease_until <= who.now, d.server.in_(who.gone))
    return and_(d.state == DeliveryState.ATTEMPTING.value, over)


def _held(now: datetime) -> ColumnElement[bool]:
    """What waits for company."""
    return and_(d.state == DeliveryState.QUEUED.value, d.tries == 0, d.held_until > now, ~_alarm())


def _alarm() -> ColumnElement[bool]:
    return d.rank == RANK[Urgency.ALARM]


async def claim(c: AsyncConnection, who: Claimer, channels: frozenset[str] | None) -> list[Delivery]:
    """See `Journal.claim`; `channels` are those of the installation, for what has to move on."""
    await _leave_blocked(c, who, channels)
    await _drop_settled(c, who)
    await _overtake_stale(c, who)
    chosen = await _choose(c, who)
    query = select(t.delivery).where(d.id.in_(chosen), or_(_free(who), _held(who.now)))
    rows = (await c.execute(query.with_for_update(skip_locked=True))).all()
    for row in rows:
        await _take(c, row, who)
    for channel, address in sorted({(row.channel, row.address) for row in rows}):
        await deliveries.pace(c, channel, address, who.now + who.spacing)
    claimed = await deliveries.load(c, d.id.in_([row.id for row in rows]), who.now)
    return sorted(claimed, key=lambda x: chosen.index(x.id))


async def _leave_blocked(c: AsyncConnection, who: Claimer, channels: frozenset[str] | None) -> None:
    """What waits for a chat that has been blocked since goes to the person's next channel."""
    blocked = exists().where(
        busy.channel == d.channel, busy.address == d.address, busy.blocked_at.is_not(None)
    )
    stuck = and_(d.channel.in_(who.channels), d.state.in_(_WAITING), blocked)
    query = select(n.key).where(n.key.in_(select(d.notice).where(stuck))).order_by(n.key)
    for key in (await c.scalars(query.with_for_update(skip_locked=True))).all():
        values = {"state": DeliveryState.FAILED.value, "detail": "the chat has been blocked"}
        await c.execute(update(t.delivery).where(d.notice == key, stuck).values(values))
        await deliveries.next_channel(c, key, who.now, channels)


async def _drop_settled(c: AsyncConnection, who: Claimer) -> None:
    """A lost attempt of what has been answered or overtaken meanwhile is not made again."""
    settled = select(n.key).where(or_(n.answered_at.is_not(None), n.overtaken_at.is_not(None)))
    query = (
        select(d.id)
        .where(d.channel.in_(who.channels), _lost(who), d.notice.in_(settled))
        .with_for_update(skip_locked=True)
    )
    ids = (await c.scalars(query)).all()
    if ids:
        values = {"state": DeliveryState.OVERTAKEN.value, "detail": "settled while its outcome was unknown"}
        await c.execute(update(t.delivery).where(d.id.in_(ids)).values(values))


async def _choose(c: AsyncConnection, who: Claimer) -> list[str]:
    """One message a chat: its most urgent and oldest that is due; unless that is an alarm, with everything else for
    the chat that is none, held or not. A message asks one thing: of those that ask, the first goes with it, in front."""
    resting = exists().where(busy.channel == d.channel, busy.address == d.address, busy.next_at > who.now)
    query = (
        select(
            d.id, d.channel, d.address, d.rank, d.due_at, n.needs_answer, n.kind, d.state, d.made_at, d.tries
        )
        .join(t.notice, n.key == d.notice)
        .where(d.channel.in_(who.channels), or_(_free(who), _held(who.now)), ~resting)
        .order_by(d.rank, d.due_at, d.made_at, n.short, d.id)
        .limit(_LOOKED_AT)
    )
    if who.urgent:
        query = query.where(_alarm())
    chats: dict[tuple[str, str], list[Any]] = {}
    for row in await c.execute(query):
        chats.setdefault((row.channel, row.address), []).append(row)
    chosen: list[str] = []
    for waiting in chats.values():
        if len(chosen) >= who.limit:
            break
        due = [row for row in waiting if row.due_at <= who.now or row.state == DeliveryState.ATTEMPTING.value]
        if not due:
            continue  # all of it is held
        if due[0].rank == RANK[Urgency.ALARM]:
            chosen.append(due[0].id)
            continue
        asking = [row.id for row in due if _asks(row)][:1]
        company = [row.id for row in waiting if not _asks(row) and row.rank != RANK[Urgency.ALARM]]
        old = [row.id for row in waiting if row.id in company and _is_old(row, who.now)]
        if len(old) > _JOINED:
            # After an outage: what asks something first, by itself; then the newest of the old news, in lines.
            chosen += asking or old[-_DIGEST:]
            continue
        chosen += (asking + company)[:_JOINED]
    return chosen


def _is_old(row: Any, now: datetime) -> bool:
    return bool(row.tries == 0 and now - row.made_at >= OLD)


def _asks(row: Any) -> bool:
    """Whether a notice has buttons of its own, which two in one message would mix up."""
    return bool(row.needs_answer) or bool(TABLE[NoticeKind(row.kind)].buttons)


async def _take(c: AsyncConnection, row: Any, who: Claimer) -> None:
    was_lost = row.state == DeliveryState.ATTEMPTING.value
    if was_lost:
        a = t.attempt.c
        await c.execute(
            update(t.attempt)
            .where(a.delivery == row.id, a.number == row.tries)
            .values(outcome=Outcome.UNKNOWN.value, detail="its holder did not report before its lease ended")
        )
    await c.execute(
        update(t.delivery)
        .where(d.id == row.id)
        .values(
            state=DeliveryState.ATTEMPTING.value,
            tries=row.tries + 1,
            lease_until=who.now + who.lease,
            server=who.server,
            possible_repeat=row.possible_repeat or was_lost,
        )
    )
    await c.execute(
        insert(c, t.attempt).values(
            delivery=row.id,
            number=row.tries + 1,
            claimed_at=who.now,
            claimed_by=who.holder,
            detail="",
            message_ref="",
            text="",
        )
    )


async def _overtake_stale(c: AsyncConnection, who: Claimer) -> None:
    """Of several past their use-by for one person and runner, only the newest is still sent."""
    query = (
        select(d.id, d.event, d.person, d.runner)
        .where(d.channel.in_(who.channels), _free(who), d.use_by < who.now, d.rank > RANK[Urgency.ALARM])
        .order_by(d.event, d.person, d.runner, d.made_at, d.id)
        .with_for_update(skip_locked=True)
    )
    rows = (await c.execute(query)).all()
    old: list[str] = []
    for _, group in groupby(rows, key=lambda row: (row.event, row.person, row.runner)):
        old += [row.id for row in group][:-1]
    if old:
        gone = {"state": DeliveryState.OVERTAKEN.value, "detail": "a newer notice went out instead"}
        await c.execute(update(t.delivery).where(d.id.in_(old)).values(gone))
