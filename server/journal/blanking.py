"""Deletion in place: positions, words, pictures and ways to reach people go; times, points and numbers stay.

Never during an open alarm: what is known of a missing person is needed until stand-down.
"""

from __future__ import annotations

from collections.abc import Callable, Collection
from dataclasses import fields, is_dataclass, replace
from datetime import datetime, timedelta
from typing import Any, TypeVar

from sqlalchemy import ColumnElement, Table, and_, delete, or_, select, update
from sqlalchemy.ext.asyncio import AsyncConnection

from server.event.model import Person
from server.facts.entry import Entry, Fix
from server.forecast.outlook import Whereabouts
from server.journal import dialogues, events, groups, notices, passages
from server.journal import tables as t
from server.journal.codec import dump_entry, dump_notice, dump_person, load_entry, load_notice
from server.journal.errors import RefusedError, UnknownError
from server.journal.stored import HELD, Holds
from server.journal.values import Blanked, DeliveryState, EventVersion, Swept

__all__ = ["blank", "event", "person", "sweep"]

RAW_KEPT = timedelta(days=30)
"""How long the body of a raw update is kept once it has been worked off, for looking into faults."""

Rewrite = Callable[[str], str]
T = TypeVar("T")


def blank(value: T) -> T:
    """The same frozen value without free words, positions, estimated whereabouts and the stop log, however deep. Pure."""
    if not is_dataclass(value) or isinstance(value, type):
        return value
    changed: dict[str, Any] = {}
    for field in fields(value):
        old = getattr(value, field.name)
        holds = HELD.get(field.name)
        if holds is Holds.WORDS and isinstance(old, str):
            changed[field.name] = ""
        elif holds is Holds.HEALTH:
            changed[field.name] = () if isinstance(old, tuple) else None
        elif holds is Holds.WHERE or isinstance(old, Fix | Whereabouts):
            changed[field.name] = None
        elif isinstance(old, tuple):
            changed[field.name] = tuple(blank(x) for x in old)
        else:
            changed[field.name] = blank(old)
    return replace(value, **changed)


async def person(c: AsyncConnection, person_id: str, now: datetime, rewrite: Rewrite | None) -> Blanked:
    """See `Journal.blank_person`."""
    if await c.scalar(select(t.person.c.id).where(t.person.c.id == person_id)) is None:
        raise UnknownError(f"there is no person {person_id!r}", "person", "check the id")
    theirs = await _events_of(c, person_id)
    for name in theirs:
        await _refuse_alarm(c, name)
    total = Blanked(0, 0, 0, 0, 0)
    for name in theirs:
        runner = t.runner.c
        runners = frozenset(
            await c.scalars(select(runner.id).where(runner.event == name, runner.person == person_id))
        )
        total = _sum(total, await _blank_rows(c, name, now, person_id, runners))
        total = replace(total, texts_left=total.texts_left + await _texts(c, name, rewrite, keep=True))
        await c.execute(
            update(t.runner).where(runner.event == name, runner.person == person_id).values(name="", bib="")
        )
    return replace(total, updates=await _forget(c, [person_id], now))


async def event(c: AsyncConnection, event_id: str, now: datetime, rewrite: Rewrite | None) -> Blanked:
    """See `Journal.blank_event`."""
    await _refuse_alarm(c, event_id)
    done = await _blank_rows(c, event_id, now, None, frozenset())
    await _texts(c, event_id, rewrite, keep=False)
    await groups.forget(c, event_id)
    await passages.forget(c, event_id)
    runner, part = t.runner.c, t.part.c
    await c.execute(update(t.runner).where(runner.event == event_id).values(name="", bib=""))
    await c.execute(update(t.event).where(t.event.c.id == event_id).values(blanked_at=now))
    kept = (
        select(part.person)
        .join(t.event, t.event.c.id == part.event)
        .where(t.event.c.id != event_id, t.event.c.blanked_at.is_(None))
    )
    mine = select(part.person).where(part.event == event_id, part.person.not_in(kept)).distinct()
    return replace(done, updates=await _forget(c, list(await c.scalars(mine)), now))


async def sweep(c: AsyncConnection, now: datetime, rewrite: Rewrite | None) -> Swept:
    """See `Journal.sweep`."""
    e, u = t.event.c, t.update_.c
    old = and_(u.done_at <= now - RAW_KEPT, u.body != "")
    await c.execute(update(t.update_).where(old).values(body=""))
    await dialogues.sweep(c, now)
    due = await c.scalars(select(e.id).where(e.keep_until <= now, e.blanked_at.is_(None)).order_by(e.id))
    blanked, waiting = [], []
    for event_id in due.all():
        if await notices.open_alarms(c, event_id):
            waiting.append(event_id)
        else:
            await event(c, event_id, now, rewrite)
            blanked.append(event_id)
    return Swept(tuple(blanked), tuple(waiting))


async def _events_of(c: AsyncConnection, person_id: str) -> list[str]:
    found = {
        *await c.scalars(select(t.part.c.event).where(t.part.c.person == person_id)),
        *await c.scalars(select(t.runner.c.event).where(t.runner.c.person == person_id)),
        *await c.scalars(select(t.entry.c.event).where(t.entry.c.by == person_id)),
        *await c.scalars(select(t.notice.c.event).where(t.notice.c.person == person_id)),
        *await c.scalars(select(t.picture.c.event).where(t.picture.c.by == person_id)),
    }
    return sorted(found)


async def _refuse_alarm(c: AsyncConnection, event_id: str) -> None:
    await events.lock(c, event_id)
    alarms = await notices.open_alarms(c, event_id)
    if alarms:
        raise RefusedError(
            f"an alarm is open in {event_id!r} ({', '.join(sorted(alarms))}), and what is known may be needed",
            "event",
            "ask again after its stand-down; at the keep-by date it happens by itself",
        )


async def _blank_rows(
    c: AsyncConnection, event_id: str, now: datetime, person_id: str | None, runners: Collection[str]
) -> Blanked:
    """Entries, conflicts, notices, deliveries, answers, pictures: of everybody, or of and by one person."""
    entries = await _entries(c, event_id, now, person_id, runners)
    keys, deliveries = await _notices(c, event_id, person_id, runners)
    if person_id is not None:
        await _quoted(c, event_id, person_id, frozenset(entries))
    p = t.picture.c
    which: ColumnElement[bool] = p.event == event_id
    if person_id is not None:
        which = and_(which, or_(p.by == person_id, p.entry.in_(entries)))
    pictures = await c.execute(
        update(t.picture).where(which, p.blanked_at.is_(None)).values(content=b"", blanked_at=now)
    )
    await c.execute(update(t.event).where(t.event.c.id == event_id).values(blanks=t.event.c.blanks + 1))
    return Blanked(len(entries), len(keys), deliveries, 0, pictures.rowcount)


async def _entries(
    c: AsyncConnection, event_id: str, now: datetime, person_id: str | None, runners: Collection[str]
) -> list[str]:
    def theirs(entry: Entry) -> bool:
        return person_id is None or person_id in (entry.by, entry.person, entry.to) or entry.runner in runners

    e, x = t.entry.c, t.conflict.c
    done: list[str] = []
    for row in (await c.execute(select(e.id, e.body).where(e.event == event_id))).all():
        entry = load_entry(row.body)
        if theirs(entry):
            values = {"body": dump_entry(blank(entry)), "blanked_at": now}
            await c.execute(update(t.entry).where(e.id == row.id).values(values))
            done.append(row.id)
    for row in (await c.execute(select(t.conflict).where(x.event == event_id))).all():
        entry = load_entry(row.body)
        if theirs(entry):
            same = and_(x.entry == row.entry, x.content_hash == row.content_hash)
            await c.execute(update(t.conflict).where(same).values(body=dump_entry(blank(entry))))
    return done


async def _notices(
    c: AsyncConnection, event_id: str, person_id: str | None, runners: Collection[str]
) -> tuple[list[str], int]:
    n, d, a = t.notice.c, t.delivery.c, t.attempt.c
    which: ColumnElement[bool] = n.event == event_id
    if person_id is not None:
        which = and_(which, or_(n.person == person_id, n.runner.in_(runners)))
    rows = (await c.execute(select(n.key, n.body).where(which).with_for_update())).all()
    keys = [row.key for row in rows]
    for row in rows:
        values = {"body": dump_notice(blank(load_notice(row.body))), "answer": ""}
        await c.execute(update(t.notice).where(n.key == row.key).values(values))
    ids = (await c.scalars(select(d.id).where(d.notice.in_(keys)))).all()
    await c.execute(update(t.answer).where(t.answer.c.notice.in_(keys)).values(words=""))
    await c.execute(update(t.attempt).where(a.delivery.in_(ids)).values(text="", detail=""))
    open_ = (DeliveryState.QUEUED.value, DeliveryState.UNKNOWN.value, DeliveryState.ATTEMPTING.value)
    await c.execute(
        update(t.delivery)
        .where(d.id.in_(ids), d.state.in_(open_))
        .values(state=DeliveryState.OVERTAKEN.value)
    )
    # The id keeps (notice, channel, address) unique without saying where it went.
    await c.execute(update(t.delivery).where(d.id.in_(ids)).values(text="", detail="", address=d.id))
    return keys, len(ids)


async def _quoted(c: AsyncConnection, event_id: str, person_id: str, entries: frozenset[str]) -> None:
    """A person's words in what others were told of them: the notice stays theirs, without the words."""
    n, d, a = t.notice.c, t.delivery.c, t.attempt.c
    rows = (await c.execute(select(n.key, n.body).where(n.event == event_id).with_for_update())).all()
    found: list[str] = []
    for row in rows:
        notice = load_notice(row.body)
        v = notice.values
        said_by = getattr(v, "by", None) or getattr(v, "told_by", None)
        if said_by == person_id and getattr(v, "words", "") and entries & set(notice.facts):
            await c.execute(update(t.notice).where(n.key == row.key).values(body=dump_notice(blank(notice))))
            found.append(row.key)
    ids = (await c.scalars(select(d.id).where(d.notice.in_(found)))).all()
    await c.execute(update(t.attempt).where(a.delivery.in_(ids)).values(text="", detail=""))
    await c.execute(update(t.delivery).where(d.id.in_(ids)).values(text=""))


async def _texts(
    c: AsyncConnection, event_id: str, rewrite: Rewrite | None, *, keep: bool
) -> tuple[EventVersion, ...]:
    """Rewrite every version's text; without a way to: leave them and say so (`keep`), or empty them. Files that a
    text no longer names go with it: her own recordings begin at her door."""
    if rewrite is None and keep:
        return await events.versions(c, event_id)
    v = t.event_version.c
    for row in (await c.execute(select(v.version, v.text).where(v.event == event_id))).all():
        text = "" if rewrite is None else rewrite(row.text)
        values = {"text": text, "sha256": ""}
        await c.execute(
            update(t.event_version).where(v.event == event_id, v.version == row.version).values(values)
        )
        f = t.event_file.c
        mine = and_(f.event == event_id, f.version == row.version)
        names = (await c.scalars(select(f.name).where(mine))).all()
        gone = [name for name in names if f'"{name}"' not in text]
        await c.execute(delete(t.event_file).where(mine, f.name.in_(gone)))
    await c.execute(delete(t.blob).where(t.blob.c.sha256.not_in(select(t.event_file.c.sha256))))
    return ()


async def _forget(c: AsyncConnection, people: list[str], now: datetime) -> int:
    """Blank the people themselves and how to reach them; returns how many raw updates were blanked."""
    a, u = t.address.c, t.update_.c
    bound = (await c.execute(select(a.channel, a.address).where(a.person.in_(people)))).all()
    updates = 0
    for row in bound:
        # The body is the channel's own; whoever it names is in it somewhere. One done is of no more use.
        named = and_(
            u.channel == row.channel, u.done_at.is_not(None), u.body.contains(row.address, autoescape=True)
        )
        updates += (await c.execute(update(t.update_).where(named, u.body != "").values(body=""))).rowcount
        await _drop(c, t.destination, row.channel, row.address)
        await dialogues.forget(c, row.channel, row.address)
    await c.execute(delete(t.address).where(a.person.in_(people)))
    tokens, invitations = t.token.c, t.invitation.c
    for token in (await c.scalars(select(tokens.id).where(tokens.person.in_(people)))).all():
        await dialogues.forget(c, "web", token)
    await c.execute(
        update(t.token).where(tokens.person.in_(people), tokens.revoked_at.is_(None)).values(revoked_at=now)
    )
    unused = and_(invitations.used_at.is_(None), invitations.revoked_at.is_(None))
    await c.execute(update(t.invitation).where(invitations.person.in_(people), unused).values(revoked_at=now))
    for person_id in people:
        values = {"name": "", "body": dump_person(Person(person_id, "")), "blanked_at": now}
        await c.execute(update(t.person).where(t.person.c.id == person_id).values(values))
    return updates


async def _drop(c: AsyncConnection, table: Table, channel: str, address: str) -> None:
    await c.execute(delete(table).where(table.c.channel == channel, table.c.address == address))


def _sum(a: Blanked, b: Blanked) -> Blanked:
    return Blanked(
        a.entries + b.entries,
        a.notices + b.notices,
        a.deliveries + b.deliveries,
        a.updates + b.updates,
        a.pictures + b.pictures,
        a.texts_left + b.texts_left,
    )
