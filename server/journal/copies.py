"""Copies: a backup while running, a dump either database reads, one event out and in again.

A dump is JSON lines: a head (what, format, revision of the tables), one row a line with its table, and a foot
with the count, so that a cut-off file is known as one.
"""

from __future__ import annotations

import asyncio
import base64
import json
import os
import sqlite3
from collections.abc import Iterable, Iterator
from datetime import datetime
from pathlib import Path
from typing import Any

from sqlalchemy import ColumnElement, LargeBinary, Table, or_, select, text, update
from sqlalchemy.exc import IntegrityError
from sqlalchemy.ext.asyncio import AsyncConnection

from server.journal import tables as t
from server.journal.errors import JournalError, RefusedError, TooNewError, UnknownError
from server.journal.store import Store, insert
from server.journal.tables import UtcDateTime, metadata
from server.journal.values import DeliveryState

__all__ = ["backup", "dump", "export_event", "import_event", "restore"]

FORMAT = 1
_BATCH = 500


async def backup(store: Store, path: Path) -> None:
    """See `Journal.backup`."""
    if not store.sqlite:
        await dump(store, path)
        return
    _refuse_existing(path)
    await asyncio.to_thread(_vacuum_into, store.path, path)


def _vacuum_into(source: Path, target: Path) -> None:
    connection = sqlite3.connect(source, timeout=60)
    try:
        connection.execute("VACUUM INTO ?", (str(target),))
    finally:
        connection.close()
    with target.open("rb") as file:
        os.fsync(file.fileno())


async def dump(store: Store, path: Path) -> int:
    """See `Journal.dump`."""
    _refuse_existing(path)
    async with store.read() as c:
        await store.take_time(c)
        rows = [(table, row) for table in metadata.sorted_tables for row in await _rows(c, table, None)]
        revision = await _revision(c)
    await asyncio.to_thread(_write, path, _head(revision, None), rows)
    return len(rows)


async def restore(store: Store, path: Path) -> int:
    """See `Journal.restore`."""
    head, rows = await _read(store, path)
    async with store.write() as c:
        await store.take_time(c)
        for table in metadata.sorted_tables:
            if (await c.execute(select(table).limit(1))).first() is not None:
                raise RefusedError(
                    f"the database is not empty ({table.name})",
                    "database",
                    "restore into a new, empty database",
                )
        if head.get("event") is not None:
            raise RefusedError("this is one event, not a whole journal", str(path), "import it as an event")
        await _insert(c, rows)
        return len(rows)


async def export_event(store: Store, event: str, path: Path) -> int:
    """See `Journal.export_event`."""
    _refuse_existing(path)
    async with store.read() as c:
        await store.take_time(c)
        if await c.scalar(select(t.event.c.id).where(t.event.c.id == event)) is None:
            raise UnknownError(f"there is no event {event!r}", "event", "check the id")
        rows = [(table, row) for table, which in _of_event(event) for row in await _rows(c, table, which)]
        revision = await _revision(c)
    await asyncio.to_thread(_write, path, _head(revision, event), rows)
    return len(rows)


async def import_event(store: Store, path: Path, *, owing: bool) -> str:
    """See `Journal.import_event`."""
    head, rows = await _read(store, path)
    async with store.write() as c:
        await store.take_time(c)
        event = head.get("event")
        if not isinstance(event, str):
            raise RefusedError("this is a whole journal, not one event", str(path), "restore it instead")
        if await c.scalar(select(t.event.c.id).where(t.event.c.id == event)) is not None:
            raise RefusedError(f"event {event!r} is here already", str(path), "import it elsewhere")
        await _insert(c, rows)
        if not owing:
            d = t.delivery.c
            waiting = [
                s.value for s in (DeliveryState.QUEUED, DeliveryState.UNKNOWN, DeliveryState.ATTEMPTING)
            ]
            await c.execute(
                update(t.delivery)
                .where(d.event == event, d.state.in_(waiting))
                .values(state=DeliveryState.OVERTAKEN.value, detail="left to the server it was exported from")
            )
        return event


def _of_event(event: str) -> Iterator[tuple[Table, ColumnElement[bool] | None]]:
    """The tables of an event in the order in which they can be read in, each with which rows."""
    notices = select(t.notice.c.key).where(t.notice.c.event == event)
    deliveries = select(t.delivery.c.id).where(t.delivery.c.event == event)
    files = select(t.event_file.c.sha256).where(t.event_file.c.event == event)
    parts = select(t.part.c.person).where(t.part.c.event == event)
    told = select(t.notice.c.person).where(t.notice.c.event == event)
    special: dict[Table, ColumnElement[bool] | None] = {
        t.event: t.event.c.id == event,
        t.person: or_(t.person.c.id.in_(parts), t.person.c.id.in_(told)),
        t.blob: t.blob.c.sha256.in_(files),
        t.attempt: t.attempt.c.delivery.in_(deliveries),
        t.answer: t.answer.c.notice.in_(notices),
        t.outage: None,  # without them silence would count where nobody was listening
    }
    for table in metadata.sorted_tables:
        if table in special:
            yield table, special[table]
        elif "event" in table.c and table is not t.invitation:
            yield table, table.c.event == event


async def _rows(c: AsyncConnection, table: Table, which: ColumnElement[bool] | None) -> list[dict[str, Any]]:
    query = select(table).order_by(*table.primary_key.columns)
    if which is not None:
        query = query.where(which)
    return [dict(row) for row in (await c.execute(query)).mappings()]


async def _insert(c: AsyncConnection, rows: list[tuple[Table, dict[str, Any]]]) -> None:
    """Insert in the file's order; shared rows (people, files, outages) that are here stay as they are."""
    shared = (t.person, t.blob, t.outage)
    for table in metadata.sorted_tables:
        mine = [row for of, row in rows if of is table]
        for start in range(0, len(mine), _BATCH):
            statement = insert(c, table)
            if table in shared:
                statement = statement.on_conflict_do_nothing()
            try:
                await c.execute(statement, mine[start : start + _BATCH])
            except IntegrityError as e:
                raise RefusedError(
                    f"rows of {table.name} are here already, or refer to what is not in the file",
                    table.name,
                    "read it into another database",
                ) from e


async def _revision(c: AsyncConnection) -> str:
    return str(await c.scalar(text("SELECT version_num FROM alembic_version")))


def _head(revision: str, event: str | None) -> dict[str, Any]:
    return {"stilepost": "journal", "format": FORMAT, "revision": revision, "event": event}


def _refuse_existing(path: Path) -> None:
    if path.exists():
        raise RefusedError("there is such a file already", str(path), "choose another name")


def _write(path: Path, head: dict[str, Any], rows: Iterable[tuple[Table, dict[str, Any]]]) -> None:
    """Write beside, sync, then rename: a copy is whole or not there."""
    part = path.with_name(path.name + ".part")
    count = 0
    with part.open("w", encoding="utf-8") as file:
        file.write(json.dumps(head) + "\n")
        for table, row in rows:
            line = {"table": table.name, "row": {k: _plain(v) for k, v in row.items() if v is not None}}
            file.write(json.dumps(line, ensure_ascii=False, separators=(",", ":")) + "\n")
            count += 1
        file.write(json.dumps({"rows": count}) + "\n")
        file.flush()
        os.fsync(file.fileno())
    part.rename(path)


def _plain(value: Any) -> Any:
    if isinstance(value, datetime):
        return value.isoformat()
    if isinstance(value, bytes | memoryview):
        return base64.b64encode(value).decode()
    return value


def _from_plain(table: Table, row: dict[str, Any]) -> dict[str, Any]:
    """A row with every column of the table, of its Python type."""
    found: dict[str, Any] = {}
    for column in table.columns:
        value = row.get(column.name)
        if value is None and column.default is not None:  # of an older program, which did not have it yet
            value = getattr(column.default, "arg", None)
        if value is not None and isinstance(column.type, UtcDateTime):
            value = datetime.fromisoformat(value)
        elif value is not None and isinstance(column.type, LargeBinary):
            value = base64.b64decode(value)
        found[column.name] = value
    return found


async def _read(store: Store, path: Path) -> tuple[dict[str, Any], list[tuple[Table, dict[str, Any]]]]:
    """Head and rows of a dump; refused with the reason if it is none, cut off, or of a newer program."""
    lines = (await asyncio.to_thread(path.read_text, encoding="utf-8")).splitlines()
    try:
        docs = [json.loads(line) for line in lines]
        head, foot = docs[0], docs[-1]
        ours = head["stilepost"] == "journal"
    except (ValueError, LookupError, TypeError) as e:
        raise JournalError("is no dump of a journal, or is cut off", str(path), "choose another file") from e
    if not ours or foot.get("rows") != len(docs) - 2:
        raise JournalError(f"is cut off after {len(docs) - 1} rows", str(path), "take a whole copy")
    async with store.read() as c:
        revision = await _revision(c)
    if head["format"] > FORMAT or head["revision"] > revision:
        raise TooNewError(
            f"is of format {head['format']}, tables {head['revision']}",
            str(path),
            "a newer Stilepost has probably written it: read it with that one",
        )
    by_name = {table.name: table for table in metadata.sorted_tables}
    return head, [(by_name[d["table"]], _from_plain(by_name[d["table"]], d["row"])) for d in docs[1:-1]]
