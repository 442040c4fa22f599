"""One message answered: what its sender may know is gathered, the room (server/conversation) decides, what it decides is
done, and what was spoken of is kept. For POST /v1/converse and, in process, for the pages.

One person's messages at one place are answered one after the other; nothing else waits for them. What was decided is done
by the functions that the API's own calls use, with keys made from the message's: a message that comes again, after a
crash too, counts once, and one that did something is answered as it was.
"""

from __future__ import annotations

import asyncio
import base64
import json
from collections.abc import Coroutine, Mapping
from dataclasses import dataclass, replace
from functools import partial
from typing import Any

import structlog
from pydantic import ValidationError

from server.api import me, photos
from server.api.acting import ACTING
from server.api.ask import Ask, Inside, Route, check_may, not_yours, parts_in
from server.api.auth import Caller
from server.api.envelope import ApiError, from_journal, from_validation
from server.api.models import Converse, Join
from server.api.parts import Parts
from server.api.person_view import PersonView, buttons_out
from server.api.replies import Conversed
from server.api.who_may import Call, May
from server.conversation.actions import Action
from server.conversation.away import if_away
from server.conversation.kept import dump, load
from server.conversation.respond import press, respond
from server.conversation.telling.message import Button
from server.conversation.values import Incoming, Menu, Photo, Reply
from server.conversation.view import Refused
from server.conversation.visit import sound_key
from server.facts.entry import Entry, Fix
from server.journal import JournalError, Spoken
from server.log import broke

__all__ = ["answer", "converse", "pressed"]

log = structlog.get_logger("conversation")

_Talk = Coroutine[Action[Any], Any, Reply]


async def converse(ask: Ask) -> Conversed:
    """POST /v1/converse: one thing a person sent, answered."""
    sent = ask.sent(Converse)
    try:
        photo = await _photo(sent)
        reply, view = await _answered(ask.parts, ask.caller, _incoming(sent, ask.caller, photo))
    except Exception:
        if not await _well(ask.parts):
            raise ApiError("not_ready", "the database does not answer", "", "Send it again.") from None
        raise
    if view is None or ask.caller.person is None:
        # Looked at anew, as whoever wrote may have joined by it.
        person = await ask.parts.journal.person_at(ask.caller.channel, ask.caller.address)
        view = await me.view_of(ask.parts, person, ask.now)
    return await asyncio.to_thread(_conversed, reply, view, sent)


async def _well(parts: Parts) -> bool:
    """Whether the database answers: else what failed is worth handing over again."""
    try:
        await parts.journal.ping()
    except Exception:
        return False
    return True


async def _photo(sent: Converse) -> Photo | None:
    if sent.photo == "here":
        return await photos.received(sent.picture)
    if sent.photo in ("", "to come"):
        return Photo() if sent.photo else None
    return Photo(trouble=sent.photo)


def _incoming(sent: Converse, caller: Caller, photo: Photo | None) -> Incoming:
    fix = sent.fix
    return Incoming(
        channel=caller.channel,
        address=caller.address,
        sent_at=sent.sent_at,
        message_key=sent.key,
        text=sent.text,
        button=sent.press,
        fix=Fix(fix.lat, fix.lon, fix.accuracy_m, fix.speed_m_s, fix.heading_deg) if fix else None,
        photo=photo,
        reply_to=sent.place,
        group=sent.group,
        addressed=sent.addressed,
        live=sent.live == "on",
        live_ended=sent.live == "ended",
        short_form=sent.short,
        language=sent.language,
        edits=sent.edits,
        other=sent.other,
        kept=sent.kept,
    )


def _conversed(reply: Reply, view: PersonView, sent: Converse) -> Conversed:
    picture = base64.b64encode(reply.picture).decode() if reply.picture is not None else ""
    try:
        known = view.me()
    except Refused:
        known = None
    kinds = {p.kind.value for e in known.events for p in e.parts} if known is not None else set()
    return Conversed(
        text=reply.text,
        buttons=buttons_out(reply.buttons),
        picture=picture,
        alt=reply.alt,
        if_away=if_away(known, sent.language, view.now, kept=sent.kept),
        menu=Menu(tuple(sorted(kinds)), known.person.language) if known is not None else None,
    )


async def answer(parts: Parts, caller: Caller, incoming: Incoming, page: str = "") -> Reply:
    """The reply to one message of whoever calls, all that it asks for done. `page`: where they write, on a page."""
    return (await _answered(parts, caller, incoming, page))[0]


async def _answered(
    parts: Parts, caller: Caller, incoming: Incoming, page: str = ""
) -> tuple[Reply, PersonView | None]:
    """The reply, and what its sender may know after it; None where that was not looked at."""
    place = incoming.reply_to if incoming.group else ""
    if incoming.group and not incoming.addressed:
        return Reply(""), None
    journal, key = parts.journal, sound_key(incoming.message_key)
    async with parts.talks.one_at_a_time(incoming.channel, incoming.address, place):
        before = await journal.turn(caller.sender, key)
        if before is not None:
            return _read(before), None
        now = parts.clock.now()
        spoken = await journal.spoken(incoming.channel, incoming.address, place, now)
        memory = load(spoken.body)
        # A message that comes again after a crash is understood as it was: 'she is in' would mean the next point by now.
        view = await me.view_of(parts, caller.person, now, partial(_said_in, caller.sender, key))
        driver = _Driver(parts, caller, view, incoming.photo, page)
        reply = await driver.drive(respond(driver.view, incoming, memory))
        turn = _text(reply) if driver.acted else None
        body = dump(memory)
        if turn is not None or body != spoken.body:
            await _keep(parts, replace(spoken, body=body), caller, key, turn)
    return reply, driver.view


def _said_in(sender: str, key: str, entry: Entry) -> bool:
    """Whether an entry was made from that message: under its key, or one made from it."""
    return entry.sender == sender and (entry.key == key or entry.key.startswith(f"{key}."))


async def _keep(parts: Parts, spoken: Spoken, caller: Caller, key: str, turn: str | None) -> None:
    """What was decided is done and safe: that the memory of it can't be kept takes the reply from nobody."""
    try:
        if not await parts.journal.keep_turn(spoken, parts.clock.now(), caller.sender, key, turn):
            log.warning("spoken with elsewhere meanwhile", channel=spoken.channel)
    except Exception as error:
        broke(log, "what was spoken of is not kept", error, channel=spoken.channel)


async def pressed(parts: Parts, caller: Caller, incoming: Incoming, event: str) -> Reply:
    """The reply to a button pressed outside of any chat: nothing is remembered of it."""
    driver = _Driver(parts, caller, await me.view_of(parts, caller.person, parts.clock.now()))
    return await driver.drive(press(driver.view, incoming, event))


@dataclass(slots=True)
class _Driver:
    """Carries out what one message's conversation asks for, one action after the other."""

    parts: Parts
    caller: Caller
    view: PersonView
    photo: Photo | None = None
    page: str = ""
    acted: bool = False

    async def drive(self, talk: _Talk) -> Reply:
        """Its reply. The room thinks in a thread: a what-if takes as long as a forecast."""
        outcome: Any = None
        error: Exception | None = None
        while True:
            step = await asyncio.to_thread(_step, talk, outcome, error)
            if isinstance(step, Reply):
                return step
            outcome, error = None, None
            try:
                outcome = await self._do(step)
            except Refused as refused:
                error = refused
            except JournalError as refused:
                error = from_journal(refused)
            except ValidationError as refused:
                error = from_validation(refused)
            if step.call != "draw":
                self.view.renew(await me.view_of(self.parts, self.caller.person, self.parts.clock.now()))

    async def _do(self, action: Action[Any]) -> Any:
        ask = Ask(self.parts, Inside(action.path), self.parts.clock.now(), self.caller, page=self.page)
        if action.call == "draw":
            return await self._drawn(ask)
        if action.call == "join":
            return await self._joined(ask, action.body)
        self.acted = True
        if action.call == "keep_photo":
            return await self._photo_kept(ask, action)
        route = _route(action.call)
        if "event" in action.path:
            await check_may(ask, route)
        assert route.body is not None
        ask.body = route.body.model_validate({k: v for k, v in action.body.items() if v is not None})
        return await route.handler(ask)

    async def _photo_kept(self, ask: Ask, action: Action[Any]) -> Any:
        ask.person_parts = await parts_in(ask, ask.event)
        assert self.photo is not None
        assert self.photo.content is not None
        body = {k: v for k, v in action.body.items() if v is not None}
        return await photos.keep(ask, self.photo.content, body, action.path.get("of"))

    async def _joined(self, ask: Ask, body: Mapping[str, Any]) -> Any:
        if not self.caller.channel:
            raise not_yours(None)
        sent = Join(channel=self.caller.channel, address=self.caller.address, **body)
        found = await me.join_chat(ask, sent)
        if not sent.preview:
            person = await self.parts.journal.person_at(self.caller.channel, self.caller.address)
            self.caller = replace(self.caller, person=person)
        return found

    async def _drawn(self, ask: Ask) -> bytes:
        ask.person_parts = await parts_in(ask, ask.event)
        ask.share = ask.may(Call.WHERE, ask.runner)
        if ask.share is May.NO:
            raise not_yours(Call.WHERE)
        picture = await ask.picture()
        return await asyncio.to_thread(self.parts.talks.draw, picture, ask.runner, ask.share, ask.person)


def _step(talk: _Talk, outcome: Any, error: Exception | None) -> Action[Any] | Reply:
    """Let the room go on up to its next action, or its reply."""
    try:
        return talk.send(outcome) if error is None else talk.throw(error)
    except StopIteration as end:
        reply: Reply = end.value
        return reply


def _route(name: str) -> Route:
    return next(r for r in ACTING if r.handler.__name__ == name)


def _text(reply: Reply) -> str:
    """A reply as it is kept; a picture is drawn again when it is asked for again."""
    rows = [[[b.label, b.data] for b in row] for row in reply.buttons]
    return json.dumps({"text": reply.text, "buttons": rows, "alt": reply.alt}, ensure_ascii=False)


def _read(text: str) -> Reply:
    kept = json.loads(text)
    rows = tuple(tuple(Button(*b) for b in row) for row in kept["buttons"])
    return Reply(kept["text"], rows, alt=kept["alt"])
