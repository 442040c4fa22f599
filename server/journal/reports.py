"""Reporting the outcome of an attempt; outcomes.py says what follows from each."""

from __future__ import annotations

from dataclasses import dataclass
from datetime import datetime, timedelta
from typing import Any

from sqlalchemy import func, select, update
from sqlalchemy.ext.asyncio import AsyncConnection

from server.journal import deliveries, groups, people
from server.journal import tables as t
from server.journal.errors import UnknownError
from server.journal.outcomes import AFTER, TRIES_BEFORE_NEXT, After, NextChannel, backoff
from server.journal.values import DeliveryState, Outcome

__all__ = ["SendReport", "keep_text", "move", "report"]

d = t.delivery.c
n = t.notice.c


@dataclass(frozen=True, slots=True)
class SendReport:
    """What a channel reports of one attempt; see `Journal.report`."""

    outcome: Outcome
    now: datetime
    tries: int | None = None
    detail: str = ""
    message_ref: str = ""
    text: str | None = None
    retry_after: timedelta | None = None
    moved_to: str | None = None


async def keep_text(c: AsyncConnection, delivery: str, tries: int, text: str) -> None:
    """See `Journal.keep_text`."""
    a = t.attempt.c
    await c.execute(update(t.delivery).where(d.id == delivery, d.tries == tries).values(text=text))
    await c.execute(update(t.attempt).where(a.delivery == delivery, a.number == tries).values(text=text))


async def report(
    c: AsyncConnection, delivery: str, said: SendReport, channels: frozenset[str] | None
) -> bool:
    """See `Journal.report`."""
    row, settled = await _locked(c, delivery)
    await _record(c, row, said)
    if said.outcome is Outcome.SENT:
        await _sent(c, row, said)
        return True
    if (said.tries is not None and said.tries != row.tries) or row.state not in deliveries.PENDING:
        return False
    after = AFTER[said.outcome]
    due = await _leave(c, row, said, after, settled)
    if after.chat_waits:
        await deliveries.pace(c, row.channel, row.address, due)
    if after.block:
        await people.block(c, row.channel, row.address, said.now)
    if said.outcome is Outcome.MOVED and said.moved_to:
        await move(c, row.channel, row.address, said.moved_to)
    tired = after.next_channel is NextChannel.AFTER_TRIES and row.tries >= TRIES_BEFORE_NEXT
    if not settled and (after.next_channel is NextChannel.NOW or tired):
        await deliveries.next_channel(c, row.notice, said.now, channels)
    return True


async def _leave(c: AsyncConnection, row: Any, said: SendReport, after: After, settled: bool) -> datetime:
    """Leave the delivery in the state that follows; returns when it is due again."""
    wait = said.retry_after if said.retry_after is not None else backoff(max(1, row.tries), row.rank)
    due = said.now if said.outcome is Outcome.MOVED else said.now + wait
    values = {
        "state": (DeliveryState.OVERTAKEN if settled and after.again else after.state).value,
        "due_at": due,
        "lease_until": None,
        "possible_repeat": row.possible_repeat or after.repeat,
        "detail": said.detail,
    }
    await c.execute(update(t.delivery).where(d.id == row.id).values(values))
    return due


async def _locked(c: AsyncConnection, delivery: str) -> tuple[Any, bool]:
    """The delivery's row, its notice's row held first; and whether that is answered or overtaken."""
    key = await c.scalar(select(d.notice).where(d.id == delivery))
    if key is None:
        raise UnknownError(f"there is no delivery {delivery!r}", "delivery", "report the id that was claimed")
    query = select(n.answered_at, n.overtaken_at).where(n.key == key)
    notice = (await c.execute(query.with_for_update())).one()
    row = (await c.execute(select(t.delivery).where(d.id == delivery).with_for_update())).one()
    return row, notice.answered_at is not None or notice.overtaken_at is not None


async def _record(c: AsyncConnection, row: Any, said: SendReport) -> None:
    a = t.attempt.c
    values: dict[str, Any] = {
        "reported_at": said.now,
        "outcome": said.outcome.value,
        "detail": said.detail,
        "message_ref": said.message_ref,
    }
    if said.text is not None:
        values["text"] = said.text
    number = row.tries if said.tries is None else said.tries
    await c.execute(update(t.attempt).where(a.delivery == row.id, a.number == number).values(values))


async def _sent(c: AsyncConnection, row: Any, said: SendReport) -> None:
    values: dict[str, Any] = {
        "state": DeliveryState.SENT.value,
        "sent_at": said.now,
        "lease_until": None,
        "message_ref": said.message_ref,
        "detail": said.detail,
    }
    if said.text is not None:
        values["text"] = said.text
    await c.execute(update(t.delivery).where(d.id == row.id).values(values))
    await c.execute(
        update(t.notice)
        .where(n.key == row.notice)
        .values(sent_at=func.coalesce(n.sent_at, said.now), failed_at=None)
    )
    await deliveries.cancel(c, row.notice, "sent over another channel")


async def move(c: AsyncConnection, channel: str, address: str, moved_to: str) -> None:
    """See `Journal.address_moved`."""
    a = t.address.c
    await groups.move(c, channel, address, moved_to)
    if await people.person_at(c, channel, moved_to) is None:
        await c.execute(
            update(t.address).where(a.channel == channel, a.address == address).values(address=moved_to)
        )
    there = select(d.notice).where(d.channel == channel, d.address == moved_to).scalar_subquery()
    await c.execute(
        update(t.delivery)
        .where(
            d.channel == channel,
            d.address == address,
            d.state.in_(deliveries.PENDING),
            d.notice.not_in(there),
        )
        .values(address=moved_to)
    )
