"""Crew who can't be there: whom they can telephone, in place of an answer that is about her."""

from __future__ import annotations

from bot.channels.base import Reply
from bot.desk.visit import Visit
from bot.words import UNDO_WITHIN
from server.event.model import PartKind
from server.wording import standing
from server.wording.say import lines

_ASKED = (PartKind.CREW, PartKind.PACER, PartKind.SAFETY_CONTACT, PartKind.ORGANISER)


async def numbers(visit: Visit) -> str:
    """The others of the crew with their numbers, then race control."""
    told = (await visit.api.people(visit.address, visit.event.id)).data
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
