"""Words that say she may be in danger, kept as how she is: whom to call stands in front of what was noted."""

from __future__ import annotations

from dataclasses import replace

from bot.channels.base import Reply
from bot.desk.visit import Visit
from bot.words import AskBack, Asked, Question, Reported, Unclear, Understood
from bot.words.danger import is_grave
from server.event.model import PartKind
from server.wording.say import lines

_ASKED = frozenset({Question.CARDS, Question.HELP_WORD, Question.USAGE})


def numbers_first(visit: Visit, meant: Understood, words: str, reply: Reply) -> Reply:
    """The reply with the numbers to call in its first line, where the words are grave and nobody was told yet."""
    told = isinstance(meant, Reported | AskBack | Unclear) or (
        isinstance(meant, Asked) and meant.question in _ASKED
    )
    if not told or reply.silent or not is_grave(words):
        return reply
    event = visit.event
    control = {"name": event.race_control.name, "phone": event.race_control.phone}
    own = PartKind.RUNNER in visit.kinds
    first = visit.s("grave-own" if own else "grave", emergency=event.emergency_number, **control)
    return replace(reply, text=lines(first, reply.text, visit.s("grave-help-own" if own else "grave-help")))
