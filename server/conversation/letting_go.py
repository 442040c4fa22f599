"""Whoever has an open alarm says in their own words that they have it no longer: that waits for no look-again time."""

from __future__ import annotations

from server.conversation.telling.answer import AlarmHere
from server.conversation.understanding import Acknowledged
from server.conversation.understanding.language import lexicon
from server.conversation.view import Refused
from server.conversation.visit import Visit

__all__ = ["alarms_of", "held", "said"]


def held(visit: Visit) -> tuple[AlarmHere, ...]:
    """The open alarms that the writer has."""
    mine = (a for r in visit.event.runners if r.alarm for a in alarms_of(visit, r.id))
    return tuple(a for a in mine if a.holder == visit.person.name)


def alarms_of(visit: Visit, runner: str) -> tuple[AlarmHere, ...]:
    """The open alarms about her; () also for who may not know."""
    try:
        return visit.view.facts(visit.event.id, runner).alarms
    except Refused:
        return ()


def said(visit: Visit, text: str) -> Acknowledged | None:
    """'I can't do this any more, somebody else must take it' of whoever has an alarm; None for anything else."""
    known = lexicon()
    if "?" in text or not known.read["lets_go"].has(known.words(text)) or not held(visit):
        return None
    return Acknowledged("cannot", text)
