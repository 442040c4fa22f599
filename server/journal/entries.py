"""Entries: append once per (sender, key), number within the event, keep conflicts, read back."""

from __future__ import annotations

from dataclasses import replace

from sqlalchemy import select, update
from sqlalchemy.ext.asyncio import AsyncConnection

from server.facts.entry import Entry
from server.journal import events
from server.journal import tables as t
from server.journal.codec import aware, dump_entry, load_entry
from server.journal.errors import ClashError, JournalError, UnknownError
from server.journal.keys import content_hash, entry_id
from server.journal.store import insert
from server.journal.values import Appended, Conflict, Head, Status

__all__ = ["append", "conflicts", "head", "of_event", "one"]


async def append(c: AsyncConnection, entry: Entry) -> Appended:
    """See `Journal.append`."""
    entry = _checked(entry)
    await events.lock(c, entry.event)
    e = t.entry.c
    first = (
        await c.execute(select(t.entry).where(e.sender == entry.sender, e.key == entry.key))
    ).one_or_none()
    digest = content_hash(entry)
    if first is not None:
        # Once blanked, an entry's words are gone: a resend of the same report still hashes alike.
        kept = load_entry(first.body)
        if first.content_hash == digest:
            return Appended(kept, Status.SAME_AGAIN, first.number)
        await _keep_conflict(c, first.id, first.event, entry, digest)
        return Appended(kept, Status.CONFLICT, first.number)
    if await c.scalar(select(e.id).where(e.id == entry.id)):
        raise ClashError(f"the entry id {entry.id!r} is taken", "id", "leave the id empty")
    return Appended(entry, Status.NOTED, await _put(c, entry, digest))


async def _put(c: AsyncConnection, entry: Entry, digest: str) -> int:
    event = t.event.c
    number: int = await c.scalar(
        update(t.event)
        .where(event.id == entry.event)
        .values(entries=event.entries + 1)
        .returning(event.entries)
    )
    await c.execute(
        insert(c, t.entry).values(
            event=entry.event,
            number=number,
            id=entry.id,
            runner=entry.runner,
            kind=entry.kind.value,
            point=entry.point,
            by=entry.by,
            sender=entry.sender,
            key=entry.key,
            seen_at=entry.seen_at,
            sent_at=entry.sent_at,
            received_at=entry.received_at,
            content_hash=digest,
            body=dump_entry(entry),
        )
    )
    return number


async def _keep_conflict(c: AsyncConnection, first: str, event: str, entry: Entry, digest: str) -> None:
    row = {
        "event": event,
        "entry": first,
        "content_hash": digest,
        "received_at": entry.received_at,
        "body": dump_entry(replace(entry, id="")),
    }
    await c.execute(insert(c, t.conflict).values(row).on_conflict_do_nothing())


def _checked(entry: Entry) -> Entry:
    """The entry with its id and with its times in UTC; refused if it cannot be kept as one."""
    for field in ("event", "sender", "key"):
        if not getattr(entry, field):
            raise JournalError("is empty", field, "every entry names its event, its sender and a key")
    return replace(
        entry,
        id=entry.id or entry_id(entry.sender, entry.key),
        seen_at=aware(entry.seen_at, "seen_at"),
        sent_at=aware(entry.sent_at, "sent_at"),
        received_at=aware(entry.received_at, "received_at"),
        until=aware(entry.until, "until") if entry.until else None,
    )


async def of_event(c: AsyncConnection, event: str, since: int) -> list[Entry]:
    """See `Journal.entries`."""
    e = t.entry.c
    bodies = await c.scalars(select(e.body).where(e.event == event, e.number > since).order_by(e.number))
    return [load_entry(body) for body in bodies]


async def one(c: AsyncConnection, entry: str) -> Entry | None:
    """See `Journal.entry`."""
    body = await c.scalar(select(t.entry.c.body).where(t.entry.c.id == entry))
    return None if body is None else load_entry(body)


async def head(c: AsyncConnection, event: str) -> Head:
    """See `Journal.head`."""
    row = (
        await c.execute(select(t.event.c.entries, t.event.c.blanks).where(t.event.c.id == event))
    ).one_or_none()
    if row is None:
        raise UnknownError(f"there is no event {event!r}", "event", "load its file first, or check the id")
    return Head(row.entries, row.blanks)


async def conflicts(c: AsyncConnection, event: str) -> tuple[Conflict, ...]:
    """See `Journal.conflicts`."""
    x = t.conflict.c
    query = select(x.entry, x.body).where(x.event == event).order_by(x.received_at, x.entry, x.content_hash)
    return tuple(Conflict(r.entry, load_entry(r.body)) for r in await c.execute(query))
