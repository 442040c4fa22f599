"""The stream of news to open pages, and the delivery of notices over it.

A session is reachable over the web for as long as one of its pages is open: opening binds its address,
closing unbinds it after a while, so that the ladder never waits for a page nobody has open.
"""

from __future__ import annotations

import asyncio
import contextlib
from collections.abc import AsyncIterator
from dataclasses import replace
from datetime import timedelta

import structlog
from aiohttp import web
from pydantic import TypeAdapter

from server.api import auth
from server.api.ask import Ask
from server.api.hub import Listener
from server.api.parts import PARTS, Parts
from server.api.replies import DeliveryOut
from server.api.service import Shows, worded
from server.journal import ClashError, Delivery, Outcome
from server.log import broke

log = structlog.get_logger("web")
WEB = "web"
CLAIM_EVERY_S = 0.5
CLOSED_FOR_S = 45.0
NOT_OPEN = timedelta(seconds=45)
_DELIVERY: TypeAdapter[DeliveryOut] = TypeAdapter(DeliveryOut)


async def news(request: web.Request) -> web.StreamResponse:
    """GET /stream: server-sent events 'changed' and 'message' for as long as the page is open."""
    parts = request.app[PARTS]
    ask = Ask(parts, request, parts.clock.now())
    ask.who = await auth.caller(request, parts, ask.now)
    person, address = ask.person, ask.who.token.device
    events = frozenset(p.event for p in await parts.journal.parts(person))
    response = web.StreamResponse(
        headers={
            "Content-Type": "text/event-stream",
            "Cache-Control": "no-store",
            "X-Accel-Buffering": "no",
            "X-Content-Type-Options": "nosniff",
        }
    )
    await response.prepare(request)
    with contextlib.suppress(ClashError):
        await parts.journal.bind(person, WEB, address, ask.now)
    try:
        with parts.hub.listening(person, address, events) as listener:
            # What found no page open is tried again only after a while: an alarm need not wait for that.
            await parts.journal.here_again(WEB, address, ask.now)
            await _write(response, listener, parts.settings.stream_ping_seconds)
    except (ConnectionResetError, asyncio.CancelledError):
        pass  # the page was closed
    finally:
        _forget_later(request.app, parts, address)
    return response


async def _write(response: web.StreamResponse, listener: Listener, ping_s: float) -> None:
    await response.write(b"retry: 3000\n\n")
    async for item in listener.news(ping_s):
        if item is None:
            await response.write(b": ping\n\n")
        else:
            await response.write(f"event: {item.kind}\ndata: {item.data}\n\n".encode())


LEAVING = web.AppKey("LEAVING", set[asyncio.Task[None]])


def _forget_later(app: web.Application, parts: Parts, address: str) -> None:
    async def forget() -> None:
        await asyncio.sleep(CLOSED_FOR_S)
        if address not in parts.hub.addresses:
            await parts.journal.unbind(WEB, address)

    if parts.hub.closed:
        return
    task = asyncio.create_task(forget())
    app[LEAVING].add(task)
    task.add_done_callback(app[LEAVING].discard)


async def delivering(app: web.Application) -> AsyncIterator[None]:
    """Deliver what is owed over the web to open pages, for as long as the server runs."""
    app[LEAVING] = set()
    task = asyncio.create_task(_deliver_all(app))
    yield
    for each in (task, *app[LEAVING]):
        each.cancel()
    await asyncio.gather(task, *app[LEAVING], return_exceptions=True)


async def _deliver_all(app: web.Application) -> None:
    parts = app[PARTS]
    while True:
        await asyncio.sleep(CLAIM_EVERY_S)
        if not parts.hub.addresses:
            continue
        try:
            chats: dict[str, list[Delivery]] = {}
            server = await parts.journal.server()
            for delivery in await parts.journal.claim(
                [WEB], parts.clock.now(), holder="pages", server=server
            ):
                chats.setdefault(delivery.address, []).append(delivery)
            for owed in chats.values():
                for together in _parcels(owed):
                    await _deliver(parts, together)
        except Exception as error:
            broke(log, "web delivery failed", error)


def _parcels(owed: list[Delivery]) -> list[list[Delivery]]:
    """What goes as one message: everything without a picture, and each that has one by itself."""
    alone = [d for d in owed if getattr(d.notice.values, "picture", "")]
    rest = [d for d in owed if d not in alone]
    return [*([rest] if rest else []), *([d] for d in alone)]


async def _deliver(parts: Parts, owed: list[Delivery]) -> None:
    """Hand what one session is owed to its open pages as one message; without one it waits a little."""
    out = _as_one([await worded(parts, delivery, shows=Shows.PATH) for delivery in owed])
    data = _DELIVERY.dump_json(out).decode()
    taken = parts.hub.message(out.address, data)
    for delivery in owed:
        await parts.journal.report(
            delivery.id,
            Outcome.SENT if taken else Outcome.LATER,
            parts.clock.now(),
            tries=delivery.tries,
            detail="" if taken else "no page open",
            retry_after=None if taken else NOT_OPEN,
        )


def _as_one(worded_ones: list[DeliveryOut]) -> DeliveryOut:
    """All texts and buttons in one, under the number of the first."""
    return replace(
        worded_ones[0],
        text="\n\n".join(out.text for out in worded_ones),
        buttons=tuple(row for out in worded_ones for row in out.buttons),
        urgent=any(out.urgent for out in worded_ones),
        may_repeat=any(out.may_repeat for out in worded_ones),
    )
