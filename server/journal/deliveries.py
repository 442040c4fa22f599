"""Deliveries: made with their notice, moved on to the next channel, answered, overtaken, read back.

Claiming is in leases.py, reporting in reports.py. Locks are always taken in the order event, notice, delivery,
destination, so that no two callers wait for each other; claiming waits for nobody (skip locked).
"""

from __future__ import annotations

import hashlib
from collections.abc import Mapping, Sequence
from dataclasses import replace
from datetime import datetime, timedelta
from typing import Any

from sqlalchemy import ColumnElement, and_, bindparam, exists, func, or_, select, update
from sqlalchemy import insert as plain_insert
from sqlalchemy.ext.asyncio import AsyncConnection

from server.journal import groups, notices, people
from server.journal import tables as t
from server.journal.outcomes import RANK
from server.journal.store import insert
from server.journal.values import Address, AnswerTaken, Attempt, Delivery, DeliveryState, Outcome
from server.watch.notice import Made, Notice, Urgency
from server.watch.situation import GROUP

__all__ = [
    "PENDING",
    "add_notices",
    "answer",
    "attempts",
    "cancel",
    "deliveries",
    "here_again",
    "load",
    "next_channel",
    "next_due",
    "overtake",
    "owe_again",
    "pace",
    "told_in_answer",
    "try_next_channels",
]

PENDING = (DeliveryState.QUEUED.value, DeliveryState.UNKNOWN.value, DeliveryState.ATTEMPTING.value)
"""States in which something is still to come of a delivery."""

d = t.delivery.c
n = t.notice.c
# Made once: to put one of these together takes longer than to carry it out.
_NOTICE = select(t.notice).where(n.key == bindparam("which"))
_HAD = select(d.channel, d.address, d.state).where(d.notice == bindparam("which"))
_FAILED = update(t.notice).where(n.key == bindparam("which")).values(failed_at=bindparam("at"))
_QUEUE = plain_insert(t.delivery)


async def add_notices(
    c: AsyncConnection, owed: Sequence[Notice], now: datetime, channels: frozenset[str] | None
) -> tuple[Made, ...]:
    """See `Journal.add_notices`."""
    new = {m.notice.key.text(): m for m in await notices.put(c, owed, now)}
    reached = await _reached(c, {m.notice.key.person for m in new.values()}, channels)
    first = {key: at[0] for key, m in new.items() if (at := reached[m.notice.key.person])}
    queued = [
        _delivery(notices.columns(new[key]), 1, at, now, new[key].notice.hold_until)
        for key, at in first.items()
    ]
    if queued:
        await c.execute(_QUEUE, queued)
    failed = [{"which": key, "at": now} for key in new if key not in first]
    if failed:
        await c.execute(_FAILED, failed)
    return tuple(replace(m, failed=key not in first) for key, m in new.items())


async def next_channel(c: AsyncConnection, key: str, now: datetime, channels: frozenset[str] | None) -> bool:
    """Queue the notice on the first usable address that has no delivery of it yet; without one, mark the
    notice failed if nothing of it is under way."""
    row = (await c.execute(_NOTICE, {"which": key})).one()
    had = {(x.channel, x.address): x.state for x in await c.execute(_HAD, {"which": key})}
    for x in (await _reached(c, {row.person}, channels))[row.person]:
        if (x.channel, x.address) not in had:
            await _queue(c, row, len(had) + 1, x, now)
            return True
    if not set(had.values()) & {*PENDING, DeliveryState.SENT.value}:
        await c.execute(_FAILED, {"which": key, "at": now})
    return False


async def _queue(c: AsyncConnection, notice: Any, number: int, at: Address, now: datetime) -> None:
    """Queue a notice, by its row, on an address."""
    await c.execute(_QUEUE, _delivery(notice._mapping, number, at, now, None))
    if notice.failed_at is not None:
        await c.execute(_FAILED, {"which": notice.key, "at": None})


def _delivery(
    notice: Mapping[str, Any], number: int, at: Address, now: datetime, hold_until: datetime | None
) -> dict[str, Any]:
    """The row of a notice's delivery number `number`, by the columns of the notice."""
    held = hold_until if hold_until is not None and hold_until > now else None
    return {
        "id": f"{notice['event']}-{notice['short']}-{number}",
        "notice": notice["key"],
        "event": notice["event"],
        "runner": notice["runner"],
        "person": notice["person"],
        "rank": RANK[Urgency(notice["urgency"])],
        "use_by": notice["use_by"],
        "channel": at.channel,
        "address": at.address,
        "state": DeliveryState.QUEUED.value,
        "tries": 0,
        "made_at": now,
        "due_at": held or now,
        "held_until": held,
        "possible_repeat": False,
        "message_ref": "",
        "detail": "",
        "text": "",
    }


async def owe_again(c: AsyncConnection, person: str, channel: str, address: str, now: datetime) -> None:
    """Queue on a newly bound address what the person could not be given and is still of use: notices before
    their use-by, and alarms still open."""
    failed = (
        await c.execute(
            select(t.notice)
            .where(
                n.person == person,
                n.failed_at.is_not(None),
                n.answered_at.is_(None),
                n.overtaken_at.is_(None),
            )
            .order_by(n.short)
            .with_for_update()
        )
    ).all()
    for row in failed:
        values = notices.made_of(row).notice.values
        still_good = row.use_by is not None and now <= row.use_by
        alarm = getattr(values, "alarm", None) if row.urgency == Urgency.ALARM.value else None
        if not still_good and (alarm is None or alarm not in await notices.open_alarms(c, row.event)):
            continue
        at = await c.scalar(
            select(d.id).where(d.notice == row.key, d.channel == channel, d.address == address)
        )
        if at is None:
            number = await c.scalar(select(func.count()).select_from(t.delivery).where(d.notice == row.key))
            await _queue(c, row, (number or 0) + 1, Address(channel, address, person, None), now)
        else:
            again = {"state": DeliveryState.QUEUED.value, "due_at": now}
            await c.execute(update(t.delivery).where(d.id == at).values(again))
            await c.execute(update(t.notice).where(n.key == row.key).values(failed_at=None))


async def pace(c: AsyncConnection, channel: str, address: str, next_at: datetime) -> None:
    """Nothing goes to this chat before `next_at`."""
    values = insert(c, t.destination).values(channel=channel, address=address, next_at=next_at)
    await c.execute(
        values.on_conflict_do_update(index_elements=["channel", "address"], set_={"next_at": next_at})
    )


async def here_again(c: AsyncConnection, channel: str, address: str, now: datetime) -> None:
    """See `Journal.here_again`."""
    waits = (
        d.channel == channel,
        d.address == address,
        d.state == DeliveryState.QUEUED.value,
        d.due_at > now,
    )
    held = and_(d.held_until.is_not(None), d.held_until > now)
    await c.execute(update(t.delivery).where(*waits, ~held).values(due_at=now))
    x = t.destination.c
    late = (x.channel == channel, x.address == address, x.next_at > now)
    await c.execute(update(t.destination).where(*late).values(next_at=now))


async def cancel(c: AsyncConnection, key: str, why: str) -> int:
    """Nothing of the notice that waits is sent any more; one just being sent goes on."""
    waiting = (DeliveryState.QUEUED.value, DeliveryState.UNKNOWN.value)
    done = await c.execute(
        update(t.delivery)
        .where(d.notice == key, d.state.in_(waiting))
        .values(state=DeliveryState.OVERTAKEN.value, detail=why)
    )
    return done.rowcount


async def answer(
    c: AsyncConnection, event: str, short: int, person: str, words: str, at: datetime
) -> AnswerTaken:
    """See `Journal.answer`."""
    row = await notices.locked(c, event, short)
    same = hashlib.sha256(f"{row.key}\0{person}\0{words}\0{at.timestamp()}".encode()).hexdigest()[:24]
    values = {"id": f"a-{same}", "notice": row.key, "person": person, "words": words, "at": at}
    await c.execute(insert(c, t.answer).values(values).on_conflict_do_nothing())
    first = row.answered_at is None
    if first:
        await c.execute(update(t.notice).where(n.key == row.key).values(answered_at=at, answer=words))
        await cancel(c, row.key, "answered")
    return AnswerTaken(await notices.by_short(c, event, short), first)


async def told_in_answer(c: AsyncConnection, event: str, shorts: tuple[int, ...], now: datetime) -> None:
    """See `Journal.told_in_answer`."""
    for short in sorted(shorts):
        row = await notices.locked(c, event, short)
        if row.sent_at is None:
            await c.execute(update(t.notice).where(n.key == row.key).values(sent_at=now))
        await cancel(c, row.key, "told in the answer")


async def overtake(c: AsyncConnection, event: str, shorts: tuple[int, ...], now: datetime) -> int:
    """See `Journal.overtake`."""
    count = 0
    for short in sorted(shorts):
        row = await notices.locked(c, event, short)
        await c.execute(update(t.notice).where(n.key == row.key).values(overtaken_at=now))
        count += await cancel(c, row.key, "overtaken by later facts")
    return count


async def try_next_channels(
    c: AsyncConnection, now: datetime, silent_for: timedelta, channels: frozenset[str] | None
) -> int:
    """See `Journal.try_next_channels`."""
    since = now - silent_for
    newer = exists().where(d.notice == n.key, d.made_at > since)
    silent = or_(and_(n.needs_answer, n.sent_at <= since), and_(n.sent_at.is_(None), n.made_at <= since))
    query = select(n.key, n.person).where(
        n.answered_at.is_(None),
        n.overtaken_at.is_(None),
        n.failed_at.is_(None),
        n.urgency != Urgency.NEWS.value,
        or_(n.use_by.is_(None), n.use_by >= now),
        silent,
        ~newer,
    )
    rows = (await c.execute(query.order_by(n.event, n.short).with_for_update(skip_locked=True))).all()
    left = await _with_a_channel_left(c, {row.key: row.person for row in rows}, channels)
    return sum([await next_channel(c, row.key, now, channels) for row in rows if row.key in left])


async def _with_a_channel_left(
    c: AsyncConnection, persons: Mapping[str, str], channels: frozenset[str] | None
) -> set[str]:
    """Of notices, by key with whom they are for, those with an address not tried yet or with nothing under way: most are
    silent until morning because their person has one channel, and are not to be gone through one by one at every look."""
    if not persons:
        return set()
    had: dict[str, dict[tuple[str, str], str]] = {key: {} for key in persons}
    for x in await c.execute(select(d.notice, d.channel, d.address, d.state).where(d.notice.in_(had))):
        had[x.notice][x.channel, x.address] = x.state
    reached = {
        who: {(a.channel, a.address) for a in theirs}
        for who, theirs in (await _reached(c, {*persons.values()}, channels)).items()
    }
    under_way = {*PENDING, DeliveryState.SENT.value}
    return {
        k for k, who in persons.items() if reached[who] - had[k].keys() or not under_way & {*had[k].values()}
    }


async def _reached(
    c: AsyncConnection, whom: set[str], channels: frozenset[str] | None
) -> Mapping[str, tuple[Address, ...]]:
    """The addresses to try of persons and groups, in their order, without those blocked."""
    chats = {who for who in whom if who.startswith(GROUP)}
    known = await people.addresses_of(c, whom - chats, channels) if whom - chats else {}
    found = {who: tuple(a for a in theirs if a.blocked_at is None) for who, theirs in known.items()}
    return found | {chat: await groups.address(c, chat, channels) for chat in chats}


async def deliveries(c: AsyncConnection, event: str, short: int | None) -> tuple[Delivery, ...]:
    """See `Journal.deliveries`."""
    which = d.event == event
    if short is not None:
        which = and_(which, d.notice.in_(select(n.key).where(n.event == event, n.short == short)))
    return tuple(await load(c, which, None))


async def load(c: AsyncConnection, which: ColumnElement[bool], now: datetime | None) -> list[Delivery]:
    rows = (await c.execute(select(t.delivery).where(which).order_by(d.made_at, d.id))).all()
    keys = {row.notice for row in rows}
    by_key = {r.key: notices.made_of(r) for r in await c.execute(select(t.notice).where(n.key.in_(keys)))}
    return [
        Delivery(
            id=row.id,
            channel=row.channel,
            address=row.address,
            state=DeliveryState(row.state),
            tries=row.tries,
            due=row.due_at,
            lease_until=row.lease_until,
            possible_repeat=row.possible_repeat,
            delayed=now is not None and row.use_by is not None and now > row.use_by,
            made=by_key[row.notice],
            text=row.text,
            message_ref=row.message_ref,
            detail=row.detail,
        )
        for row in rows
    ]


async def attempts(c: AsyncConnection, event: str, short: int) -> tuple[Attempt, ...]:
    """See `Journal.attempts`."""
    a = t.attempt.c
    query = (
        select(t.attempt)
        .join(t.delivery, d.id == a.delivery)
        .join(t.notice, n.key == d.notice)
        .where(n.event == event, n.short == short)
        .order_by(a.claimed_at, a.delivery, a.number)
    )
    return tuple(
        Attempt(
            delivery=r.delivery,
            number=r.number,
            claimed_at=r.claimed_at,
            claimed_by=r.claimed_by,
            reported_at=r.reported_at,
            outcome=Outcome(r.outcome) if r.outcome else None,
            detail=r.detail,
            message_ref=r.message_ref,
            text=r.text,
        )
        for r in await c.execute(query)
    )


async def next_due(c: AsyncConnection, channels: tuple[str, ...]) -> datetime | None:
    """See `Journal.next_due`."""
    busy = t.destination.c
    query = (
        select(d.state, d.due_at, d.lease_until, busy.next_at)
        .outerjoin(t.destination, (busy.channel == d.channel) & (busy.address == d.address))
        .where(d.channel.in_(channels), d.state.in_(PENDING))
    )
    moments: list[datetime] = []
    for row in await c.execute(query):
        at = row.lease_until if row.state == DeliveryState.ATTEMPTING.value else row.due_at
        moments.append(max(at, row.next_at) if row.next_at else at)
    return min(moments, default=None)
