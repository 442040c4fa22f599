"""The chat of the page: what a person types or presses goes to the same desk as from every other channel.

The desk calls this server's own API over loopback with that person's own token, so that it can do nothing the
person may not.
"""

from __future__ import annotations

import asyncio
import base64
from collections import OrderedDict
from collections.abc import AsyncIterator
from datetime import timedelta

import aiohttp
from aiohttp import web

from bot.api_client import ApiClient
from bot.channels.base import Incoming
from bot.desk import Desk
from server.api import auth
from server.api.ask import Ask
from server.api.envelope import ApiError, read_model, reply
from server.api.me import buttons_out
from server.api.models import ChatIn
from server.api.parts import PARTS
from server.api.replies import ChatReply
from server.facts.entry import Fix
from server.pages.stream import WEB

DESKS_MAX = 500


class Desks:
    """A desk for each open session: it remembers what was asked last. Forgetting one is harmless."""

    def __init__(self, session: aiohttp.ClientSession) -> None:
        self.session = session
        self._desks: OrderedDict[str, tuple[Desk, asyncio.Lock]] = OrderedDict()

    def of(self, token_id: str, base_url: str, secret: str) -> tuple[Desk, asyncio.Lock]:
        """The desk of that session, and the lock that keeps its messages in order."""
        if token_id not in self._desks:
            client = ApiClient(self.session, base_url, secret)
            self._desks[token_id] = (Desk(client), asyncio.Lock())
        self._desks.move_to_end(token_id)
        while len(self._desks) > DESKS_MAX:
            self._desks.popitem(last=False)
        return self._desks[token_id]


DESKS = web.AppKey("DESKS", Desks)


async def desk(app: web.Application) -> AsyncIterator[None]:
    """The desks' HTTP session, for as long as the server runs."""
    async with aiohttp.ClientSession() as session:
        app[DESKS] = Desks(session)
        yield


async def say(request: web.Request) -> web.StreamResponse:
    """POST /v1/chat: one text, button or place; the reply is what the desk says."""
    parts = request.app[PARTS]
    ask = Ask(parts, request, parts.clock.now())
    secret = auth.secret_of(request)
    ask.who = await auth.caller(request, parts, ask.now)
    sent = await read_model(request, ChatIn)
    if sum((bool(sent.text), bool(sent.button), sent.fix is not None)) != 1:
        raise ApiError("invalid", "exactly one of text, button, fix is wanted", "text", "Send one of them.")
    incoming = _incoming(sent, ask)
    its_desk, lock = request.app[DESKS].of(ask.who.token.id, loopback(request), secret)
    async with lock:
        said = await its_desk.handle(incoming)
    picture = ""
    if said.picture is not None:
        picture = "data:image/png;base64," + base64.b64encode(said.picture).decode()
    return reply(ChatReply(said.text, buttons_out(said.buttons), picture, said.alt), parts.clock.now())


def _incoming(sent: ChatIn, ask: Ask) -> Incoming:
    fix = Fix(sent.fix.lat, sent.fix.lon, sent.fix.accuracy_m) if sent.fix else None
    return Incoming(
        channel=WEB,
        address=ask.caller.token.device,
        sent_at=ask.now - timedelta(seconds=sent.age_s),
        message_key=sent.key,
        text=sent.text,
        kept=False,
        button=sent.button,
        fix=fix,
    )


def loopback(request: web.Request) -> str:
    """This server's own address as seen from itself."""
    transport = request.transport
    name = transport.get_extra_info("sockname") if transport is not None else None
    if not name:
        raise ApiError("not_ready", "the connection is closing", "", "Send it again.")
    host = f"[{name[0]}]" if ":" in name[0] else name[0]
    return f"http://{host}:{name[1]}"
