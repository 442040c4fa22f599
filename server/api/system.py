"""Calls about the server itself: is it well, what does it measure."""

from __future__ import annotations

import ipaddress

from aiohttp import web

from server.api import auth
from server.api.ask import Ask, not_yours
from server.api.envelope import adapter
from server.api.parts import PARTS, Parts
from server.api.replies import Health

LATE_TICKS = 4


async def health_of(parts: Parts) -> Health:
    """How the server is: the database answers and can be written, ticks come in time, every event can be judged."""
    now = parts.clock.now()
    unwritable = await parts.signs.write(now)
    try:
        await parts.journal.ping()
        waiting = await parts.journal.waiting()
        heard = tuple(sorted((await parts.journal.last_heartbeats()).items()))
        database = True
    except Exception:
        waiting, heard, database = 0, (), False
    last, catching_up = parts.ticker.last_tick, parts.ticker.catching_up
    age = (now - last).total_seconds() if last else None
    may_take = LATE_TICKS * parts.settings.tick_seconds_max
    late = age is not None and age > may_take
    if last is None and catching_up is not None:
        # Nobody has been judged since the start: that may be, as long as what waited is still being read.
        late = (now - catching_up.since).total_seconds() > may_take + parts.settings.catch_up_seconds_max
    failing = tuple(sorted(parts.ticker.failing))
    return Health(
        well=database and not unwritable and not late and not failing,
        database=database,
        unwritable=unwritable,
        tick_age_s=age,
        inbox_waiting=waiting,
        catching_up=catching_up is not None,
        failing=failing if database else (),
        heard=heard,
    )


async def health(request: web.Request) -> web.Response:
    """GET /health: 200 when well, 503 otherwise, so that another machine can watch. Names no event."""
    parts = request.app[PARTS]
    found = await health_of(parts)
    shown = adapter(Health).dump_python(found, mode="json")
    shown["failing"] = len(found.failing)
    body = {"ok": found.well, "now": parts.clock.now().isoformat(), "data": shown}
    return web.json_response(body, status=200 if found.well else 503, headers={"Cache-Control": "no-store"})


async def metrics(request: web.Request) -> web.Response:
    """GET /metrics: for this machine, or with a token of scope 'metrics'. Behind a proxy only with one."""
    parts = request.app[PARTS]
    ask = Ask(parts, request, parts.clock.now())
    if parts.settings.behind_proxy or not _is_loopback(request.remote):
        who = await auth.caller(request, parts, ask.now)
        if auth.METRICS not in who.token.scopes:
            raise not_yours(None)
    found = await health_of(parts)
    parts.metrics.tick_age.set(found.tick_age_s if found.tick_age_s is not None else -1)
    parts.metrics.inbox.set(found.inbox_waiting)
    parts.metrics.streams.set(len(parts.hub.addresses))
    return web.Response(body=parts.metrics.text(), headers={"Content-Type": "text/plain; version=0.0.4"})


def _is_loopback(address: str | None) -> bool:
    try:
        return ipaddress.ip_address(address or "").is_loopback
    except ValueError:
        return False
