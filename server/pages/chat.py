"""The chat of the page: what a person types or presses is answered by the same function as from every other channel."""

from __future__ import annotations

import base64
from dataclasses import replace
from datetime import timedelta

from aiohttp import web

from server.api import auth, conversing, photos
from server.api.ask import Ask
from server.api.envelope import ApiError, read_model, reply
from server.api.models import ChatIn
from server.api.parts import PARTS
from server.api.person_view import buttons_out
from server.api.replies import ChatReply
from server.conversation.values import Incoming, Photo
from server.facts.entry import Fix
from server.pages.stream import WEB


async def say(request: web.Request) -> web.StreamResponse:
    """POST /v1/chat: one text, button, place or photo; the reply is what the desk says."""
    parts = request.app[PARTS]
    ask = Ask(parts, request, parts.clock.now())
    ask.who = await auth.caller(request, parts, ask.now)
    sent = await read_model(request, ChatIn)
    if sum((bool(sent.text or sent.photo), bool(sent.button), sent.fix is not None)) != 1:
        raise ApiError(
            "invalid", "exactly one of text, button, fix, photo is wanted", "text", "Send one of them."
        )
    incoming = _incoming(sent, ask)
    auth.acting(ask.who)
    said = await conversing.answer(parts, ask.who, incoming, ask.site)
    if sent.photo:
        # Its words first: a call for help waits for no picture.
        photo = replace(incoming, photo=await photos.received(sent.photo), message_key=f"{sent.key}.p")
        shown = await conversing.answer(parts, ask.who, photo)
        text = "\n".join(t for t in (said.text, shown.text) if t)
        said = replace(shown, text=text, buttons=(*said.buttons, *shown.buttons))
    picture = ""
    if said.picture is not None:
        picture = "data:image/png;base64," + base64.b64encode(said.picture).decode()
    return reply(ChatReply(said.text, buttons_out(said.buttons), picture, said.alt), parts.clock.now())


def _incoming(sent: ChatIn, ask: Ask) -> Incoming:
    fix = Fix(sent.fix.lat, sent.fix.lon, sent.fix.accuracy_m) if sent.fix else None
    return Incoming(
        channel=WEB,
        address=ask.caller.token.id,
        sent_at=ask.now - timedelta(seconds=sent.age_s),
        message_key=sent.key,
        text=sent.text,
        kept=False,
        button=sent.button,
        fix=fix,
        photo=Photo() if sent.photo else None,
    )
