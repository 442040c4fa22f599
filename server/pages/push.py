"""Switching web push on and off: what a browser subscribes with, and the subscription bound to who is logged in there."""

from __future__ import annotations

import json

from aiohttp import web

from server.api import auth
from server.api.envelope import ApiError, read_model
from server.api.models import PushSubscription
from server.api.parts import PARTS
from server.journal import ClashError

KEY = web.AppKey("PUSH_KEY", str)
"""The server's public key, '' where it sends no push."""
CHANNEL = "push"


async def on(request: web.Request) -> web.StreamResponse:
    """POST /v1/push: the subscription is theirs who are logged in; whoever had this browser before has it no more."""
    parts = request.app[PARTS]
    now = parts.clock.now()
    person = auth.acting(await auth.caller(request, parts, now))
    address = _address(await read_model(request, PushSubscription))
    if not request.app[KEY]:
        raise ApiError("invalid", "this server sends no push", "", "Use another channel.")
    try:
        await parts.journal.bind(person, CHANNEL, address, now)
    except ClashError:
        await parts.journal.unbind(CHANNEL, address)
        await parts.journal.bind(person, CHANNEL, address, now)
    return web.Response(status=204)


async def off(request: web.Request) -> web.StreamResponse:
    """POST /v1/push/off: nothing is sent there any more. Whoever knows the keys of a browser is that browser."""
    parts = request.app[PARTS]
    auth.acting(await auth.caller(request, parts, parts.clock.now()))
    await parts.journal.unbind(CHANNEL, _address(await read_model(request, PushSubscription)))
    return web.Response(status=204)


def _address(asked: PushSubscription) -> str:
    """As the channel has it; the same subscription always makes the same."""
    found = {"endpoint": asked.endpoint, "p256dh": asked.p256dh, "auth": asked.auth}
    return json.dumps(found, separators=(",", ":"))
