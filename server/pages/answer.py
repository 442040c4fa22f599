"""The page behind the link in a mail: the notice with its answers as buttons. Looking answers nothing, a press does.

No cookie and no login: the link's token is the key, for this person and this notice only. A press goes through the
same desk as a button in a chat, so that it means the same.
"""

from __future__ import annotations

import asyncio
import hashlib
from collections import OrderedDict
from dataclasses import dataclass, field, replace

import structlog
from aiohttp import web

from server.api import answer_links, auth, conversing
from server.api.answer_links import AnswerToken
from server.api.auth import Caller
from server.api.parts import PARTS
from server.conversation.telling.message import Message, Rows
from server.conversation.telling.notices import label_key, say_notice
from server.conversation.telling.reader import reader_in
from server.conversation.telling.say import Say
from server.conversation.values import Incoming, Reply
from server.event.model import Event
from server.journal import TokenInfo
from server.log import broke
from server.pages.board import TEMPLATES
from server.pages.labels import labels
from server.pages.session import preferred_language
from server.watch.notice import Made
from server.watch.waiting import waiting

log = structlog.get_logger("pages")

OFFERED_MAX = 1000


@dataclass(slots=True)
class Pressing:
    """One press at a time, so that a double tap is one answer; and what was offered after an answer ('when?')."""

    one_at_a_time: asyncio.Lock = field(default_factory=asyncio.Lock)
    offered: OrderedDict[str, frozenset[str]] = field(default_factory=OrderedDict)

    def offer(self, token: str, rows: Rows) -> None:
        """Remember what may be pressed next with a token. Forgotten, it is said in the chat instead."""
        self.offered[token] = frozenset(b.data for row in rows for b in row)
        while len(self.offered) > OFFERED_MAX:
            self.offered.popitem(last=False)


PRESSING = web.AppKey("PRESSING", Pressing)


@dataclass(frozen=True, slots=True)
class _Asked:
    """The notice behind a link, in its person's words, as it stands."""

    secret: str
    token: TokenInfo
    bound: AnswerToken
    event: Event
    made: Made
    message: Message
    waits: bool

    @property
    def say(self) -> Say:
        """Sentences for the person."""
        return Say(reader_in(self.event, self.bound.person), self.made.made_at)


async def show(request: web.Request) -> web.StreamResponse:
    """GET /answer?t=TOKEN: the notice and its buttons. Nothing changes by it, however often a machine looks."""
    asked = await _asked(request, request.query.get("t", ""))
    if asked is None:
        return no_such_link(request)
    return _page(request, asked, *_standing(asked))


async def press(request: web.Request) -> web.StreamResponse:
    """POST /answer (`t`, `press`): the answer counts, and the page says what follows."""
    sent = await request.post()
    secret, pressed = str(sent.get("t", "")), str(sent.get("press", ""))
    pressing = request.app[PRESSING]
    async with pressing.one_at_a_time:
        asked = await _asked(request, secret)
        if asked is None:
            return no_such_link(request)
        own = {b.data for row in asked.message.buttons for b in row} if asked.waits else set()
        if pressed not in own | pressing.offered.get(asked.token.id, frozenset()):
            return _page(request, asked, *_standing(asked))
        try:
            reply = await _pressed(request, asked, pressed)
        except Exception as error:
            broke(log, "a press on the page failed", error)
            return _page(request, asked, asked.say.s("error-other"), asked.message.buttons, alert=True)
        pressing.offer(asked.token.id, reply.buttons)
    return _page(request, asked, reply.text, reply.buttons)


async def _asked(request: web.Request, secret: str) -> _Asked | None:
    parts = request.app[PARTS]
    now = parts.clock.now()
    if not secret:
        return None
    token = await auth.check(secret, request, parts, now)
    bound = answer_links.bound(token)
    if bound is None:
        return None
    everything = await parts.journal.made(bound.event)
    made = next(
        (m for m in everything if m.short == bound.short and m.notice.key.person == bound.person), None
    )
    if made is None:
        return None
    event = await parts.pictures.event(bound.event)
    reader = reader_in(event, bound.person)
    message = say_notice(made.notice, event, reader, now, short=made.short)
    waits = made.answered_at is None and (
        not made.notice.needs_answer or made.short in waiting(everything, now)
    )
    return _Asked(secret, token, bound, event, made, message, waits)


def _standing(asked: _Asked) -> tuple[str, Rows]:
    """What the page says under the notice, and the buttons: answered already, over, or waiting for a press."""
    if asked.waits:
        return "", asked.message.buttons
    t = labels(asked.say.reader.language)
    if asked.made.answered_at is None:
        return t("answer-over"), ()
    word = asked.made.answer
    said = asked.say.s(label_key(word, asked.made.notice.key.kind.value), word=word)
    return t("answer-done", answer=said, when=asked.say.when(asked.made.answered_at)), ()


async def _pressed(request: web.Request, asked: _Asked, pressed: str) -> Reply:
    """Press for the person to whom the link is bound, as them."""
    parts = request.app[PARTS]
    # The link lets them answer as themselves, here and for this notice only.
    token = replace(asked.token, person=asked.bound.person, scopes=frozenset({auth.PERSON}))
    caller = Caller(token, asked.bound.person)
    incoming = Incoming(
        channel=answer_links.CHANNEL,
        address=asked.token.id,
        sent_at=parts.clock.now(),
        message_key=f"{asked.token.id}.{hashlib.sha256(pressed.encode()).hexdigest()[:12]}",
        button=pressed,
    )
    return await conversing.pressed(parts, caller, incoming, asked.bound.event)


def _page(
    request: web.Request, asked: _Asked, said: str, buttons: Rows, *, alert: bool = False
) -> web.StreamResponse:
    language = asked.say.reader.language
    first, _, rest = asked.message.text.partition("\n")
    html = (
        request.app[TEMPLATES]
        .get_template("answer.html")
        .render(
            t=labels(language),
            language=language,
            first=first,
            rest=rest.strip(),
            said=said,
            alert=alert,
            buttons=buttons,
            secret=asked.secret,
            event=asked.event,
        )
    )
    return web.Response(text=html, content_type="text/html")


def no_such_link(request: web.Request) -> web.StreamResponse:
    """The same for a link that never was, is over, or is for something else: nobody learns which."""
    language = preferred_language(request, request.app[PARTS])
    t = labels(language)
    html = (
        request.app[TEMPLATES]
        .get_template("plain.html")
        .render(t=t, language=language, heading=t("error-title"), text=t("answer-no-link"))
    )
    return web.Response(text=html, status=403, content_type="text/html")
