"""Event files as numbered versions, and the rows that follow from them: people, parts, runners, points."""

from __future__ import annotations

import hashlib
from collections.abc import Mapping
from datetime import datetime
from typing import Any

from sqlalchemy import bindparam, delete, select, update
from sqlalchemy.ext.asyncio import AsyncConnection

from server.event.model import Event, Person
from server.journal import tables as t
from server.journal.codec import dump_part, dump_person
from server.journal.errors import ClashError, RefusedError, UnknownError
from server.journal.store import insert
from server.journal.values import EventVersion, StoredEvent

__all__ = ["current", "load", "lock", "points_named", "store", "versions"]


async def store(
    c: AsyncConnection,
    text: str,
    files: Mapping[str, bytes],
    event: Event,
    by: str,
    now: datetime,
    over: int | None = None,
) -> int:
    """See `Journal.store_event`."""
    await c.execute(
        insert(c, t.event)
        .values(id=event.id, version=0, entries=0, notices=0, blanks=0)
        .on_conflict_do_nothing()
    )
    version = (await lock(c, event.id)).version
    digest = _digest(text, files)
    if version and digest == await _digest_of(c, event.id, version):
        return int(version)
    if over is not None and over != version:
        raise RefusedError(
            "the plan has been changed meanwhile", "over", "look at it as it is now, then change it"
        )
    await _refuse_drops(c, event)
    await _put_people(c, event)
    await _put_rows(c, event)
    await _put_version(c, event, version + 1, text, files, digest, by, now)
    await c.execute(
        update(t.event)
        .where(t.event.c.id == event.id)
        .values(version=version + 1, keep_until=event.keep_until, blanked_at=None)
    )
    return int(version + 1)


_LOCK = select(t.event).where(t.event.c.id == bindparam("which")).with_for_update()


async def lock(c: AsyncConnection, event: str) -> Any:
    """The event's row, held until the transaction ends: whatever is numbered within an event queues here."""
    row = (await c.execute(_LOCK, {"which": event})).one_or_none()
    if row is None:
        raise UnknownError(f"there is no event {event!r}", "event", "load its file first, or check the id")
    return row


async def current(c: AsyncConnection) -> tuple[EventVersion, ...]:
    """See `Journal.list_events`."""
    v = t.event_version.c
    query = select(v.event, v.version, v.name, v.by, v.at).join(
        t.event, (t.event.c.id == v.event) & (t.event.c.version == v.version)
    )
    rows = await c.execute(query.order_by(v.event))
    return tuple(EventVersion(r.event, r.version, r.name, r.by, r.at) for r in rows)


_v = t.event_version.c
_VERSIONS = select(_v.event, _v.version, _v.name, _v.by, _v.at).where(_v.event == bindparam("which"))
_VERSIONS = _VERSIONS.order_by(_v.version)


async def versions(c: AsyncConnection, event: str) -> tuple[EventVersion, ...]:
    """See `Journal.event_versions`."""
    rows = await c.execute(_VERSIONS, {"which": event})
    return tuple(EventVersion(r.event, r.version, r.name, r.by, r.at) for r in rows)


async def load(c: AsyncConnection, event: str, version: int | None) -> StoredEvent:
    """See `Journal.load_event`."""
    v = t.event_version.c
    wanted = version or select(t.event.c.version).where(t.event.c.id == event).scalar_subquery()
    row = (
        await c.execute(select(t.event_version).where(v.event == event, v.version == wanted))
    ).one_or_none()
    if row is None:
        which = f"event {event!r}" if version is None else f"version {version} of event {event!r}"
        raise UnknownError(f"there is no {which}", "event", "`stilepost events` lists those there are")
    f = t.event_file.c
    files = await c.execute(
        select(f.name, t.blob.c.content)
        .join(t.blob, t.blob.c.sha256 == f.sha256)
        .where(f.event == event, f.version == row.version)
        .order_by(f.name)
    )
    return StoredEvent(
        event, row.version, row.text, {r.name: bytes(r.content) for r in files}, row.by, row.at
    )


async def points_named(c: AsyncConnection, event: str) -> frozenset[str]:
    """See `Journal.points_with_check_ins`."""
    e = t.entry.c
    return frozenset(
        await c.scalars(select(e.point).where(e.event == event, e.point.is_not(None)).distinct())
    )


async def _runners_named(c: AsyncConnection, event: str) -> frozenset[str]:
    e = t.entry.c
    query = select(e.runner).where(e.event == event, e.runner.is_not(None)).distinct()
    return frozenset(await c.scalars(query))


async def _refuse_drops(c: AsyncConnection, event: Event) -> None:
    """Refuse a file without a known point or runner that has entries. Ids an entry got wrong don't count."""
    kept_points = {p.id for course in event.courses for p in course.points}
    known_points = set(await c.scalars(select(t.point.c.id).where(t.point.c.event == event.id)))
    known_runners = set(await c.scalars(select(t.runner.c.id).where(t.runner.c.event == event.id)))
    points = (await points_named(c, event.id) & known_points) - kept_points
    runners = (await _runners_named(c, event.id) & known_runners) - {r.id for r in event.runners}
    for kind, lost in (("points", points), ("runners", runners)):
        if lost:
            names = ", ".join(sorted(lost))
            raise RefusedError(
                f"the file drops {names}, of which there are check-ins",
                kind,
                "put them back with the same id; a name may change, an id may not",
            )


async def _put_people(c: AsyncConnection, event: Event) -> None:
    p = t.person.c
    ids = [person.id for person in event.people]
    known = {r.id: r for r in await c.execute(select(t.person).where(p.id.in_(ids)))}
    elsewhere = set(
        await c.scalars(select(t.part.c.person).where(t.part.c.person.in_(ids), t.part.c.event != event.id))
    )
    for person in event.people:
        row = known.get(person.id)
        if row is not None and person.id in elsewhere and row.name and row.name != person.name:
            raise ClashError(
                f"the id {person.id!r} is {row.name} in another event, here it is {person.name}",
                "people.id",
                "give one of the two another id, or write the name alike if it is the same person",
            )
        await _put_person(c, person)


async def _put_person(c: AsyncConnection, person: Person) -> None:
    values = {"name": person.name, "body": dump_person(person), "blanked_at": None}
    statement = insert(c, t.person).values(id=person.id, **values)
    await c.execute(statement.on_conflict_do_update(index_elements=["id"], set_=values))


async def _put_rows(c: AsyncConnection, event: Event) -> None:
    """Replace parts, runners and points by those of the file; entries refer to them by id, not by key."""
    for table in (t.part, t.runner, t.point):
        await c.execute(delete(table).where(table.c.event == event.id))
    parts = {(p.person, p.kind.value, p.runner or ""): dump_part(p) for p in event.parts}
    rows: dict[Any, list[dict[str, Any]]] = {
        t.part: [
            {"event": event.id, "person": person, "kind": kind, "runner": runner, "body": body}
            for (person, kind, runner), body in parts.items()
        ],
        t.runner: [
            {
                "event": event.id,
                "id": r.id,
                "person": r.person,
                "name": r.name,
                "bib": r.bib,
                "course": r.course,
                "start": r.start,
            }
            for r in event.runners
        ],
        t.point: [
            {"event": event.id, "course": course.id, "id": p.id, "name": p.name, "km": p.km}
            for course in event.courses
            for p in course.points
        ],
    }
    for table, values in rows.items():
        if values:
            await c.execute(insert(c, table), values)


async def _put_version(
    c: AsyncConnection,
    event: Event,
    version: int,
    text: str,
    files: Mapping[str, bytes],
    digest: str,
    by: str,
    now: datetime,
) -> None:
    await c.execute(
        insert(c, t.event_version).values(
            event=event.id, version=version, name=event.name, text=text, sha256=digest, by=by, at=now
        )
    )
    for name, content in files.items():
        sha256 = hashlib.sha256(content).hexdigest()
        await c.execute(insert(c, t.blob).values(sha256=sha256, content=content).on_conflict_do_nothing())
        row = {"event": event.id, "version": version, "name": name, "sha256": sha256}
        await c.execute(insert(c, t.event_file).values(row))


def _digest(text: str, files: Mapping[str, bytes]) -> str:
    h = hashlib.sha256(text.encode())
    for name in sorted(files):
        h.update(f"\0{name}\0".encode() + hashlib.sha256(files[name]).digest())
    return h.hexdigest()


async def _digest_of(c: AsyncConnection, event: str, version: int) -> str | None:
    v = t.event_version.c
    return await c.scalar(select(v.sha256).where(v.event == event, v.version == version))
