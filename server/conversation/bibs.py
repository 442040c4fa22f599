"""Lists of bibs by whoever reports many: each is done, or named as not done."""

from __future__ import annotations

import re
from dataclasses import replace

from server.conversation.telling.say import lines
from server.conversation.understanding import Reported, Several, Understood
from server.conversation.values import Reply
from server.conversation.visit import Visit
from server.event.model import PartKind

__all__ = ["named_as_left"]

_POSTED = frozenset({PartKind.VOLUNTEER, PartKind.ORGANISER})
_BIB = re.compile(
    r"(?<![\w:.,+/-])#?(\d{2,5})(?![\w:./-]|\s*(?:min|m\b|km|k\b|h\b|hour|std|stund|heure|%))", re.IGNORECASE
)


def named_as_left(visit: Visit, text: str, meant: Understood, reply: Reply) -> Reply:
    """The reply, with the numbers that may be bibs and of which nothing was made: '214 out 1555, 215 too'."""
    if not visit.kinds or visit.kinds - _POSTED or not isinstance(meant, Reported | Several):
        return reply
    known = {r.bib for r in visit.event.runners}
    said = reply.text.replace(":", "")
    left = [b for b in dict.fromkeys(_BIB.findall(text)) if b not in known and b not in said]
    if not left:
        return reply
    return replace(reply, text=lines(reply.text, visit.s("bibs-left", bibs=visit.say.all(left))))
