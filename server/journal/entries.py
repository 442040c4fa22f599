"""Entries: append once per (sender, key), number within the event, keep conflicts, read back."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, replace
from datetime import datetime
from typing import Any

from sqlalchemy import Select, bindparam, func, or_, select, true, tuple_, update
from sqlalchemy import insert as plain_insert
from sqlalchemy.ext.asyncio import AsyncConnection

from server.facts.entry import Entry
from server.journal import events, notices
from server.journal import tables as t
from server.journal.codec import aware, dump_entry, load_entry
from server.journal.errors import ClashError, JournalError, UnknownError
from server.journal.keys import content_hash, entry_id
from server.journal.store import insert
from server.journal.values import Appended, Conflict, JournalHead, Status

__all__ = ["append", "append_all", "conflicts", "first_report", "head", "of_event", "one", "state"]


# Made once: to put one of these together takes longer than to carry it out.
_e, _event = t.entry.c, t.event.c
_OF_KEY = select(t.entry).where(_e.sender == bindparam("sender"), _e.key == bindparam("key"))
_TAKEN = select(_e.id).where(_e.id == bindparam("id"))
_NEXT = update(t.event).where(_event.id == bindparam("which")).values(entries=_event.entries + 1)
_NEXT = _NEXT.returning(_event.entries)
_PUT = plain_insert(t.entry)
_LATER = select(_e.body).where(_e.event == bindparam("which"), _e.number > bindparam("since"))
_LATER = _LATER.order_by(_e.number)
_OF_RUNNER = _LATER.where(or_(_e.runner == bindparam("runner"), _e.runner.is_(None)))
_ONE = select(_e.body).where(_e.id == bindparam("id"))
_HEAD = select(_event.entries, _event.blanks, _event.passages).where(_event.id == bindparam("which"))
_STATE = select(_event.entries, _event.blanks, _event.passages, _event.version, *notices.MARK.c)
_STATE = _STATE.select_from(t.event.join(notices.MARK, true())).where(_event.id == bindparam("which"))


async def append(c: AsyncConnection, entry: Entry, *, timed: bool = True) -> Appended:
    """See `Journal.append`."""
    entry = _checked(entry)
    await events.lock(c, entry.event)
    first = (await c.execute(_OF_KEY, {"sender": entry.sender, "key": entry.key})).one_or_none()
    digest = content_hash(entry)
    if first is not None:
        # Once blanked, an entry's words are gone: a resend of the same report still hashes alike.
        kept = load_entry(first.body)
        if not timed:
            digest = content_hash(replace(entry, seen_at=kept.seen_at))
        if first.content_hash == digest:
            return Appended(kept, Status.SAME_AGAIN, first.number)
        await _keep_conflict(c, first.id, first.event, entry, digest)
        return Appended(kept, Status.CONFLICT, first.number)
    if await c.scalar(_TAKEN, {"id": entry.id}):
        raise ClashError(f"the entry id {entry.id!r} is taken", "id", "leave the id empty")
    return Appended(entry, Status.NOTED, await _put(c, entry, digest))


async def append_all(c: AsyncConnection, given: Sequence[Entry], *, timed: bool = True) -> list[Appended]:
    """See `Journal.append_all`."""
    found = [_checked(entry) for entry in given]
    event = found[0].event
    if any(entry.event != event for entry in found):
        raise JournalError("are of several events", "entries", "hand in those of one at a time")
    row = await events.lock(c, event)
    known = await _known(c, found)
    number, out, fresh = row.entries, [], []
    for entry in found:
        first, digest = known.get((entry.sender, entry.key)), content_hash(entry)
        if first is None:
            number += 1
            known[entry.sender, entry.key] = _First(entry, digest, number)
            fresh.append(_row(entry, digest, number))
            out.append(Appended(entry, Status.NOTED, number))
            continue
        if not timed:
            digest = content_hash(replace(entry, seen_at=first.entry.seen_at))
        status = Status.SAME_AGAIN if digest == first.digest else Status.CONFLICT
        out.append(Appended(first.entry, status, first.number))
    await _insert(c, event, number, fresh)
    for entry, done in zip(found, out, strict=True):
        if done.status is Status.CONFLICT:
            await _keep_conflict(c, done.entry.id, event, entry, content_hash(entry))
    return out


@dataclass(frozen=True, slots=True)
class _First:
    """The entry that is kept under a key."""

    entry: Entry
    digest: str
    number: int


_AT_ONCE = 500


_KNOWN = select(t.entry).where(tuple_(_e.sender, _e.key).in_(bindparam("pairs", expanding=True)))
_IDS = select(_e.id).where(_e.id.in_(bindparam("ids", expanding=True))).limit(1)
_UPTO = update(t.event).where(_event.id == bindparam("which")).values(entries=bindparam("last"))


async def _known(c: AsyncConnection, given: Sequence[Entry]) -> dict[tuple[str, str], _First]:
    """The entries that are kept under the sender and key of those given."""
    found: dict[tuple[str, str], _First] = {}
    for start in range(0, len(given), _AT_ONCE):
        some = given[start : start + _AT_ONCE]
        for row in await c.execute(_KNOWN, {"pairs": [(e.sender, e.key) for e in some]}):
            found[row.sender, row.key] = _First(load_entry(row.body), row.content_hash, row.number)
    return found


async def _insert(c: AsyncConnection, event: str, last: int, rows: list[dict[str, Any]]) -> None:
    """Insert rows numbered up to `last`; ClashError for an id that is taken."""
    for start in range(0, len(rows), _AT_ONCE):
        some = rows[start : start + _AT_ONCE]
        taken = await c.scalar(_IDS, {"ids": [row["id"] for row in some]})
        if taken is not None:
            raise ClashError(f"the entry id {taken!r} is taken", "id", "leave the id empty")
        await c.execute(_PUT, some)
    await c.execute(_UPTO, {"which": event, "last": last})


async def _put(c: AsyncConnection, entry: Entry, digest: str) -> int:
    number: int = await c.scalar(_NEXT, {"which": entry.event})
    await c.execute(_PUT, _row(entry, digest, number))
    return number


def _row(entry: Entry, digest: str, number: int) -> dict[str, Any]:
    return {
        "event": entry.event,
        "number": number,
        "id": entry.id,
        "runner": entry.runner,
        "kind": entry.kind.value,
        "point": entry.point,
        "by": entry.by,
        "sender": entry.sender,
        "key": entry.key,
        "seen_at": entry.seen_at,
        "sent_at": entry.sent_at,
        "received_at": entry.received_at,
        "content_hash": digest,
        "body": dump_entry(entry),
    }


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


async def of_event(c: AsyncConnection, event: str, since: int, runner: str | None) -> list[Entry]:
    """See `Journal.entries`."""
    which: dict[str, Any] = {"which": event, "since": since}
    if runner is None:
        return [load_entry(body) for body in await c.scalars(_LATER, which)]
    return [load_entry(body) for body in await c.scalars(_OF_RUNNER, which | {"runner": runner})]


async def one(c: AsyncConnection, entry: str) -> Entry | None:
    """See `Journal.entry`."""
    body = await c.scalar(_ONE, {"id": entry})
    return None if body is None else load_entry(body)


async def head(c: AsyncConnection, event: str) -> JournalHead:
    """See `Journal.head`."""
    return JournalHead(*await _one_row(c, _HEAD, event))


async def state(c: AsyncConnection, event: str) -> tuple[JournalHead, int, tuple[object, ...]]:
    """The head, the event's newest version, and the mark of what has become of its notices (`notices.made_since`)."""
    entries, blanks, passages, version, *mark = await _one_row(c, _STATE, event)
    return JournalHead(entries, blanks, passages), version, (blanks, *mark)


async def _one_row(c: AsyncConnection, query: Select[Any], event: str) -> Any:
    row = (await c.execute(query, {"which": event})).one_or_none()
    if row is None:
        raise UnknownError(f"there is no event {event!r}", "event", "load its file first, or check the id")
    return row


async def conflicts(c: AsyncConnection, event: str) -> tuple[Conflict, ...]:
    """See `Journal.conflicts`."""
    x = t.conflict.c
    query = select(x.entry, x.body).where(x.event == event).order_by(x.received_at, x.entry, x.content_hash)
    return tuple(Conflict(r.entry, load_entry(r.body)) for r in await c.execute(query))


async def first_report(c: AsyncConnection, event: str) -> datetime | None:
    """See `Journal.first_report`."""
    e = t.entry.c
    asked = select(func.min(e.received_at)).where(e.event == event, e.runner.is_not(None))
    first: datetime | None = await c.scalar(asked)
    return first
