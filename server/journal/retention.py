"""Who is up: heartbeats, the outages their gaps show, and leases by name."""

from __future__ import annotations

from collections.abc import Mapping
from datetime import datetime, timedelta
from typing import Any

from sqlalchemy import Select, and_, bindparam, delete, or_, select, update
from sqlalchemy.ext.asyncio import AsyncConnection

from server.journal import tables as t
from server.journal.store import Store, insert
from server.journal.values import DeliveryState, Outage

__all__ = [
    "expect",
    "give_back_lease",
    "gone",
    "heartbeat",
    "last_heartbeats",
    "listens",
    "lives",
    "outages",
    "sign_of_life",
    "take_lease",
]


_WAITING = (DeliveryState.QUEUED.value, DeliveryState.UNKNOWN.value)
PUT_BACK = timedelta(minutes=1)
"""A sign of life so far in the future was given before the clock was put back (own choice: time services keep machines
within a second)."""
HANGS_AFTER = timedelta(seconds=8)
"""A server that has given signs of life and none for so long hangs (it is stopped, its machine too busy or gone): what it
claimed is for others (own choice: four signs missed, and an alarm still within ten seconds)."""
FORGOTTEN_AFTER = timedelta(days=1)
LONGEST_LEASE = timedelta(minutes=10)
"""No call takes a lease for longer."""


async def sign_of_life(c: AsyncConnection, now: datetime, store: Store) -> None:
    """See `Journal.sign_of_life`."""
    x, values = t.server_life.c, {"at": now}
    await c.execute(delete(t.server_life).where(x.at < now - FORGOTTEN_AFTER))
    mine = insert(c, t.server_life).values(server=store.id, **values)
    await c.execute(mine.on_conflict_do_update(index_elements=["server"], set_=values))


async def lives(c: AsyncConnection, server: str, now: datetime, store: Store) -> bool:
    """Whether the server of that id runs, and does not hang as far as it gives signs of life."""
    if server == store.id:
        return True
    at = await c.scalar(select(t.server_life.c.at).where(t.server_life.c.server == server))
    return (at is None or now - at < HANGS_AFTER) and await store.is_live(c, server)


async def gone(c: AsyncConnection, servers: Select[Any], now: datetime, store: Store) -> tuple[str, ...]:
    """Those of the servers found that have died or hang: what they claimed waits for nobody."""
    found = {x for x in await c.scalars(servers.distinct()) if x is not None}
    return tuple([x for x in sorted(found) if not await lives(c, x, now, store)])


async def expect(c: AsyncConnection, component: str, now: datetime, gap: timedelta) -> None:
    """See `Journal.expect`."""
    row = {"component": component, "at": now, "gap_s": gap.total_seconds()}
    await c.execute(insert(c, t.heartbeat).values(row).on_conflict_do_nothing())


async def heartbeat(
    c: AsyncConnection, component: str, now: datetime, gap: timedelta, *, caught_up: bool = False
) -> Outage | None:
    """See `Journal.heartbeat`."""
    h = t.heartbeat.c
    before = await c.scalar(select(h.at).where(h.component == component).with_for_update())
    if before is not None and before > now + PUT_BACK:
        await _put_back(c, now)
        before = now
    values: dict[str, object] = {"at": now, "gap_s": gap.total_seconds()}
    if caught_up:
        values["caught_up_at"] = now
    await c.execute(
        insert(c, t.heartbeat)
        .values(component=component, **values)
        .on_conflict_do_update(index_elements=["component"], set_=values, where=h.at < now)
    )
    if before is None or now - before <= gap:
        return None
    row = {"component": component, "start": before, "end": now}
    await c.execute(insert(c, t.outage).values(row).on_conflict_do_nothing())
    return Outage(component, before, now)


async def _put_back(c: AsyncConnection, now: datetime) -> None:
    """The clock has been put back: what was to wait a moment by the old time would wait for as long as that was.

    Chats rest no more, an alarm must not lie for an hour; leases of the old time are over, so what was claimed under
    them may go out as a possible repeat.
    """
    h, busy, d = t.heartbeat.c, t.destination.c, t.delivery.c
    far = now + LONGEST_LEASE
    await c.execute(update(t.heartbeat).where(h.at > now).values(at=now, caught_up_at=None))
    await c.execute(update(t.server_life).where(t.server_life.c.at > now).values(at=now))
    waits = and_(d.state.in_(_WAITING), d.due_at > now, d.held_until.is_(None))
    await c.execute(update(t.delivery).where(waits).values(due_at=now))
    await c.execute(update(t.delivery).where(d.lease_until > far).values(lease_until=now))
    await c.execute(update(t.destination).where(busy.next_at > now).values(next_at=now))
    await c.execute(update(t.update_).where(t.update_.c.lease_until > far).values(lease_until=now))
    await c.execute(update(t.lease).where(t.lease.c.until > far).values(until=now))


_OVER = select(t.outage).where(t.outage.c.end > bindparam("since"))
_BEATS = select(t.heartbeat)


async def outages(
    c: AsyncConnection, since: datetime, now: datetime, components: frozenset[str] | None
) -> tuple[Outage, ...]:
    """See `Journal.outages`; `components` are those that may be down now."""
    over = [Outage(r.component, r.start, r.end) for r in await c.execute(_OVER, {"since": since})]
    still = [
        Outage(r.component, r.at, None)
        for r in await c.execute(_BEATS)
        if now - r.at > timedelta(seconds=r.gap_s) and (components is None or r.component in components)
    ]
    return tuple(sorted(over + still, key=lambda x: (x.start, x.component)))


async def last_heartbeats(c: AsyncConnection) -> Mapping[str, datetime]:
    """See `Journal.last_heartbeats`."""
    return {r.component: r.at for r in await c.execute(select(t.heartbeat.c.component, t.heartbeat.c.at))}


async def take_lease(
    c: AsyncConnection, name: str, holder: str, now: datetime, ttl: timedelta, store: Store
) -> bool:
    """See `Journal.take_lease`."""
    x = t.lease.c
    row = (await c.execute(select(t.lease).where(x.name == name).with_for_update())).one_or_none()
    dead = row is not None and row.server is not None and not await lives(c, row.server, now, store)
    free = [x.holder == holder, x.until <= now]
    if dead and row is not None:
        free.append(and_(x.holder == row.holder, x.server == row.server))
    same = row is not None and row.holder == holder and row.until > now and row.since is not None
    values = {
        "holder": holder,
        "until": now + ttl,
        "since": row.since if same and row is not None else now,
        "server": store.id,
    }
    taken = await c.execute(
        insert(c, t.lease)
        .values(name=name, **values)
        .on_conflict_do_update(index_elements=["name"], set_=values, where=or_(*free))
        .returning(x.name)
    )
    return taken.one_or_none() is not None


async def listens(c: AsyncConnection, lease: str, component: str, now: datetime, store: Store) -> bool:
    """See `Journal.listens_elsewhere`."""
    x, h = t.lease.c, t.heartbeat.c
    held = (await c.execute(select(t.lease).where(x.name == lease, x.until > now))).one_or_none()
    if held is None or held.since is None or held.server in (None, store.id):
        return False
    beat = (await c.execute(select(t.heartbeat).where(h.component == component))).one_or_none()
    if beat is None or beat.caught_up_at is None or beat.caught_up_at < held.since:
        return False
    fresh = now - beat.at <= timedelta(seconds=beat.gap_s)
    return fresh and await lives(c, held.server, now, store)


async def give_back_lease(c: AsyncConnection, name: str, holder: str) -> None:
    """See `Journal.give_back_lease`."""
    await c.execute(delete(t.lease).where(t.lease.c.name == name, t.lease.c.holder == holder))
