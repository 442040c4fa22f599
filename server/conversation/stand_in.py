"""Crew who can't be there: whom they can telephone, in place of an answer that is about her."""

from __future__ import annotations

import hashlib
from datetime import datetime, timedelta

from server.conversation import changing
from server.conversation.submit import hand_in
from server.conversation.telling import requests, standing
from server.conversation.telling.answer import NotedAnswer
from server.conversation.telling.say import lines
from server.conversation.understanding import UNDO_WITHIN, Report
from server.conversation.values import Reply
from server.conversation.view import Refused
from server.conversation.visit import Visit
from server.event.model import PartKind
from server.facts.entry import Kind

_ASKED = (PartKind.CREW, PartKind.PACER, PartKind.SAFETY_CONTACT, PartKind.ORGANISER)


async def numbers(visit: Visit) -> str:
    """The others of the crew with their numbers, then race control."""
    told = visit.view.people(visit.event.id)
    kinds = {k.value for k in _ASKED}
    others = tuple(
        p for p in told.people if p.name != visit.person.name and p.phone and kinds & set(p.part.split(", "))
    )
    return standing.say_stand_in(visit.say, others, told.race_control)


async def asked(visit: Visit) -> Reply:
    """'Can Per take my meeting instead?': nothing here moves a meeting; who can be telephoned."""
    return visit.reply(lines(visit.s("stand-in-asked"), await numbers(visit)))


async def held_up(visit: Visit, entry: str, words: str) -> Reply:
    """'We are stuck': kept as a note; whom to telephone, and no word of haste."""
    minutes = str(round(UNDO_WITHIN.total_seconds() / 60))
    text = lines(
        visit.s("held-up", words=words), await numbers(visit), visit.s("noted-undo", minutes=minutes)
    )
    return visit.reply(text, visit.undo_button(entry))


async def keep(
    visit: Visit,
    kind: Kind,
    words: str,
    to: str | None = None,
    point: str | None = None,
    until: datetime | None = None,
    runner: str | None = None,
    edge: str = "",
    amount: timedelta | None = None,
) -> NotedAnswer:
    """What is wanted, as an entry. Its key is the message's with the words, so that two wishes of one message are two."""
    one = Report(
        kind,
        visit.sent_at,
        point=point,
        until=until,
        words=words,
        of_crew=True,
        person=to,
        runner=runner,
        edge=edge,
        amount=amount,
    )
    mark = hashlib.sha256(words.encode()).hexdigest()[:8]
    return await hand_in(visit, one, f"{visit.key()}.{mark}")


def undo_line(visit: Visit) -> str:
    """How it is taken back."""
    return visit.s("noted-undo", minutes=str(round(UNDO_WITHIN.total_seconds() / 60)))


async def swap(visit: Visit, words: str, person: str, point: str) -> Reply:
    """Ask somebody by name to take a meeting of the writer's over; it stays the writer's until they do. Of what is none of
    the writer's nobody is asked."""
    try:
        noted = await keep(visit, Kind.ASKED_TO_SWAP, words, person, point)
    except Refused as error:
        if error.code != "invalid":
            raise
        instead = await changing.driver(visit, person, point)
        if instead is not None:
            return instead
        return visit.reply(lines(visit.s("swap-whose"), await numbers(visit)))
    sent = requests.say_sent(visit.say, noted, words)
    return visit.reply(lines(sent, visit.s("swap-sent"), undo_line(visit)), visit.undo_button(noted.entry))
