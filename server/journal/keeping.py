"""Who is up: heartbeats, the outages their gaps show, and leases by name."""

from __future__ import annotations

from collections.abc import Mapping
from datetime import datetime, timedelta

from sqlalchemy import delete, or_, select
from sqlalchemy.ext.asyncio import AsyncConnection

from server.journal import tables as t
from server.journal.store import insert
from server.journal.values import Outage

__all__ = ["give_back_lease", "heartbeat", "last_heartbeats", "outages", "take_lease"]


async def heartbeat(c: AsyncConnection, component: str, now: datetime, gap: timedelta) -> Outage | None:
    """See `Journal.heartbeat`."""
    h = t.heartbeat.c
    before = await c.scalar(select(h.at).where(h.component == component).with_for_update())
    values = {"at": now, "gap_s": gap.total_seconds()}
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


async def outages(
    c: AsyncConnection, since: datetime, now: datetime, components: frozenset[str] | None
) -> tuple[Outage, ...]:
    """See `Journal.outages`."""
    over = [
        Outage(r.component, r.start, r.end)
        for r in await c.execute(select(t.outage).where(t.outage.c.end > since))
    ]
    still = [
        Outage(r.component, r.at, None)
        for r in await c.execute(select(t.heartbeat))
        if now - r.at > timedelta(seconds=r.gap_s)
    ]
    wanted = [x for x in over + still if components is None or x.component in components]
    return tuple(sorted(wanted, key=lambda x: (x.start, x.component)))


async def last_heartbeats(c: AsyncConnection) -> Mapping[str, datetime]:
    """See `Journal.last_heartbeats`."""
    return {r.component: r.at for r in await c.execute(select(t.heartbeat.c.component, t.heartbeat.c.at))}


async def take_lease(c: AsyncConnection, name: str, holder: str, now: datetime, ttl: timedelta) -> bool:
    """See `Journal.take_lease`."""
    x = t.lease.c
    values = {"holder": holder, "until": now + ttl}
    taken = await c.execute(
        insert(c, t.lease)
        .values(name=name, **values)
        .on_conflict_do_update(
            index_elements=["name"], set_=values, where=or_(x.holder == holder, x.until <= now)
        )
        .returning(x.name)
    )
    return taken.one_or_none() is not None


async def give_back_lease(c: AsyncConnection, name: str, holder: str) -> None:
    """See `Journal.give_back_lease`."""
    await c.execute(delete(t.lease).where(t.lease.c.name == name, t.lease.c.holder == holder))
