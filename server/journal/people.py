"""People and where they can be reached, in the order in which to try."""

from __future__ import annotations

from collections.abc import Collection
from dataclasses import replace
from datetime import datetime
from typing import Any

from sqlalchemy import BindParameter, bindparam, delete, select, update
from sqlalchemy.ext.asyncio import AsyncConnection

from server.event.model import Person
from server.journal import tables as t
from server.journal.codec import load_part, load_person
from server.journal.errors import ClashError, UnknownError
from server.journal.store import insert
from server.journal.values import Address, PersonPart

__all__ = [
    "addresses",
    "addresses_of",
    "bind",
    "block",
    "channels_of",
    "is_blocked",
    "order",
    "parts",
    "person",
    "person_at",
    "unbind",
    "unblock",
]

_LAST = ("web",)
"""Channels that rouse nobody: tried after all others, unless the person's own order names them."""


async def person(c: AsyncConnection, person_id: str) -> Person | None:
    """See `Journal.person`."""
    body = await c.scalar(select(t.person.c.body).where(t.person.c.id == person_id))
    return None if body is None else load_person(body)


_p = t.part.c
_PARTS = select(_p.event, _p.body).where(_p.person == bindparam("who")).order_by(_p.event, _p.kind, _p.runner)


async def parts(c: AsyncConnection, person_id: str) -> tuple[PersonPart, ...]:
    """See `Journal.parts`."""
    rows = await c.execute(_PARTS, {"who": person_id})
    return tuple(PersonPart(r.event, load_part(r.body)) for r in rows)


async def person_at(c: AsyncConnection, channel: str, address: str) -> str | None:
    """See `Journal.person_at`."""
    a = t.address.c
    return await c.scalar(select(a.person).where(a.channel == channel, a.address == address))


async def bind(c: AsyncConnection, person_id: str, channel: str, address: str, now: datetime) -> None:
    """See `Journal.bind`."""
    if await c.scalar(select(t.person.c.id).where(t.person.c.id == person_id)) is None:
        raise UnknownError(
            f"there is no person {person_id!r}", "person", "load an event that names them first"
        )
    row = {"channel": channel, "address": address, "person": person_id, "bound_at": now}
    await c.execute(insert(c, t.address).values(row).on_conflict_do_nothing())
    if await person_at(c, channel, address) != person_id:
        raise ClashError(
            f"this {channel} address already belongs to somebody else",
            "address",
            "ask the organiser to remove the old binding first",
        )
    await unblock(c, channel, address)


async def unbind(c: AsyncConnection, channel: str, address: str) -> None:
    """See `Journal.unbind`."""
    a = t.address.c
    await c.execute(delete(t.address).where(a.channel == channel, a.address == address))


async def is_blocked(c: AsyncConnection, channel: str, address: str) -> bool:
    """Whether an address is of no use until its person is heard from there."""
    d = t.destination.c
    query = select(d.blocked_at).where(d.channel == channel, d.address == address)
    return await c.scalar(query) is not None


async def unblock(c: AsyncConnection, channel: str, address: str) -> None:
    """The address is of use again."""
    d = t.destination.c
    blocked = (d.channel == channel, d.address == address, d.blocked_at.is_not(None))
    await c.execute(update(t.destination).where(*blocked).values(blocked_at=None))


async def block(c: AsyncConnection, channel: str, address: str, now: datetime) -> None:
    """Call an address of no use until its person is heard from there."""
    row = {"channel": channel, "address": address, "blocked_at": now}
    await c.execute(
        insert(c, t.destination)
        .values(row)
        .on_conflict_do_update(index_elements=["channel", "address"], set_={"blocked_at": now})
    )


async def addresses(
    c: AsyncConnection, person_id: str, channels: frozenset[str] | None
) -> tuple[Address, ...]:
    """See `Journal.addresses`: bound ones, then the e-mail and webhook that the event file gives."""
    return (await addresses_of(c, [person_id], channels))[person_id]


_ids: BindParameter[Any] = bindparam("ids", expanding=True)
_a, _d = t.address.c, t.destination.c
_PERSONS = select(t.person.c.body).where(t.person.c.id.in_(_ids))
_ADDRESSES = select(t.address).where(_a.person.in_(_ids)).order_by(_a.bound_at, _a.address)
_BLOCKED = select(t.destination).where(_d.blocked_at.is_not(None), _d.address.in_(_ids))


async def addresses_of(
    c: AsyncConnection, ids: Collection[str], channels: frozenset[str] | None
) -> dict[str, tuple[Address, ...]]:
    """`addresses` of many persons, in as many queries as those of one; none for who is not known."""
    rows = await c.execute(_PERSONS, {"ids": list(ids)})
    persons = {p.id: p for p in (load_person(r.body) for r in rows)}
    bound: dict[str, list[Address]] = {i: [] for i in persons}
    for r in await c.execute(_ADDRESSES, {"ids": list(persons)}):
        bound[r.person].append(Address(r.channel, r.address, r.person, r.bound_at))
    for who, theirs in bound.items():
        have = {(x.channel, x.address) for x in theirs}
        for channel, address in (("email", persons[who].email), ("webhook", persons[who].webhook)):
            if address and (channel, address) not in have:
                theirs.append(Address(channel, address, who, None))
    everywhere = {x.address for theirs in bound.values() for x in theirs}
    blocked = {
        (r.channel, r.address): r.blocked_at for r in await c.execute(_BLOCKED, {"ids": list(everywhere)})
    }
    found = {
        who: order(
            [replace(x, blocked_at=blocked.get((x.channel, x.address))) for x in theirs],
            persons[who].channels,
            channels,
        )
        for who, theirs in bound.items()
    }
    return {i: found.get(i, ()) for i in ids}


async def channels_of(
    c: AsyncConnection, persons: tuple[Person, ...], channels: frozenset[str] | None
) -> dict[str, tuple[str, ...]]:
    """See `Journal.channels_of`."""
    a, by_id = t.address.c, {p.id: p for p in persons}
    found: dict[str, list[Address]] = {}
    query = select(t.address).where(a.person.in_(by_id)).order_by(a.bound_at, a.address)
    for r in await c.execute(query):
        found.setdefault(r.person, []).append(Address(r.channel, r.address, r.person, r.bound_at))
    return {
        who: tuple(dict.fromkeys(x.channel for x in order(theirs, by_id[who].channels, channels)))
        for who, theirs in found.items()
    }


def order(
    found: list[Address], wish: tuple[str, ...], channels: frozenset[str] | None
) -> tuple[Address, ...]:
    """The addresses in the order in which to try: not blocked first; then as wished; unnamed channels after
    that by age, those that rouse nobody last. Channels not in `channels` (None = all) are left out."""

    def place(numbered: tuple[int, Address]) -> tuple[bool, int, int]:
        age, x = numbered
        named = wish.index(x.channel) if x.channel in wish else len(wish) + (x.channel in _LAST)
        return x.blocked_at is not None, named, age

    usable_here = [x for x in found if channels is None or x.channel in channels]
    return tuple(x for _, x in sorted(enumerate(usable_here), key=place))
