"""Logging in and out of the pages: an invitation becomes a token in a cookie that scripts can't read."""

from __future__ import annotations

import secrets
from dataclasses import dataclass
from datetime import timedelta

from aiohttp import web

from server.api import auth
from server.api.ask import Ask
from server.api.envelope import ApiError, read_model, reply
from server.api.me import join_device
from server.api.models import RequestBody
from server.api.parts import PARTS, Parts
from server.conversation.telling.answer import JoinAnswer
from server.conversation.telling.reader import Reader
from server.conversation.telling.replies import say_preview
from server.conversation.telling.say import Say
from server.event.model import Part
from server.pages.labels import label
from server.sentences import languages

DAYS = timedelta(days=120)
_HERE = frozenset({"127.0.0.1", "::1", "localhost"})


@dataclass(frozen=True, slots=True)
class DemoPerson:
    """Somebody whom the demo's page lets one be."""

    person: str
    name: str


CHOICES = web.AppKey("CHOICES", tuple[DemoPerson, ...])
"""Not empty only in the demo, which runs on this machine with invented people."""


class JoinPage(RequestBody):
    """What the joining page sends."""

    code: str
    preview: bool = False


@dataclass(frozen=True, slots=True)
class You:
    """Who a code is for and what will be asked of them, a line each."""

    you: str


async def join(request: web.Request) -> web.StreamResponse:
    """POST /join: look what a code opens, then take it: the reply sets the cookie."""
    auth.refuse_foreign_form(request)
    parts = request.app[PARTS]
    sent = await read_model(request, JoinPage)
    ask = Ask(parts, request, parts.clock.now())
    joined = await join_device(ask, sent.code, preview=sent.preview)
    language = preferred_language(request, parts)
    say = Say(Reader(language, "UTC", "UTC"), ask.now)
    known = JoinAnswer(
        joined.person, joined.name, joined.event, joined.event_name, joined.parts, joined.accepted,
        joined.runner_names,
    )  # fmt: skip
    response = reply(You(say_preview(say, known)), ask.now)
    if joined.token:
        set_cookie(response, joined.token, request, parts)
    return response


def parts_words(parts: tuple[Part, ...], language: str) -> str:
    """Parts in words, each kind once."""
    kinds = dict.fromkeys(p.kind.value for p in parts)
    return ", ".join(label(language, "part-" + k.replace(" ", "-")) for k in kinds)


def preferred_language(request: web.Request, parts: Parts) -> str:
    """The language of somebody unknown: what the browser asks for, if we have it."""
    first = request.headers.get("Accept-Language", "")[:2].lower()
    return first if first in languages() else parts.settings.language


def set_cookie(response: web.Response, secret: str, request: web.Request, parts: Parts) -> None:
    """Keep the token where only the browser itself sends it, and only from our own pages."""
    response.set_cookie(
        auth.COOKIE,
        secret,
        max_age=int(DAYS.total_seconds()),
        httponly=True,
        samesite="Strict",
        secure=request.secure or parts.settings.public_url.startswith("https://"),
        path="/",
    )


async def leave(request: web.Request) -> web.StreamResponse:
    """POST /leave: the token no longer holds, the session takes no more messages."""
    parts = request.app[PARTS]
    now = parts.clock.now()
    who = await auth.caller(request, parts, now)
    await parts.journal.revoke_token(who.token.id, now)
    await parts.journal.unbind("web", who.token.device)
    response = web.Response(status=204)
    response.del_cookie(auth.COOKIE, path="/")
    return response


async def be(request: web.Request) -> web.StreamResponse:
    """POST /be/{person}: in the demo only, from this machine only."""
    auth.refuse_foreign_form(request)
    parts, choices = request.app[PARTS], request.app[CHOICES]
    person = request.match_info["person"]
    if person not in {c.person for c in choices} or request.remote not in _HERE:
        raise ApiError("not_found", "there is nothing at this path", "path")
    now = parts.clock.now()
    secret = await parts.journal.issue_token(
        person, "s-" + secrets.token_hex(12), [auth.PERSON], now, now + DAYS
    )
    response = web.Response(status=204)
    set_cookie(response, secret, request, parts)
    return response
