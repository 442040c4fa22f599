"""Questions whose answer stands in the event file in its writer's own words: the line, quoted with where it stands, before
anything is said to be unknown."""

from __future__ import annotations

from dataclasses import replace

from server.conversation.telling.answer import Written
from server.conversation.telling.say import lines
from server.conversation.telling.written import say_written
from server.conversation.understanding import lines_about
from server.conversation.values import Reply
from server.conversation.visit import Visit

__all__ = ["before", "of_place", "quoted"]


def _about(visit: Visit, words: str, *, plain: bool) -> tuple[Written, ...]:
    written = visit.view.written(visit.event.id)
    return lines_about(words, visit.context(), written, me=visit.person.id, plain=plain)


def quoted(visit: Visit, words: str) -> str:
    """The lines of the file that a question is surely about, one or two; '' where there is none."""
    return lines(*(say_written(visit.say, w) for w in _about(visit, words, plain=False)))


def of_place(visit: Visit, kind: str, point: str | None) -> str:
    """The line of a kind that the file has of a point; '' where it has none."""
    rows = visit.view.written(visit.event.id) if point else ()
    return next((say_written(visit.say, w) for w in rows if w.kind == kind and w.place == point), "")


def before(visit: Visit, words: str, reply: Reply) -> Reply:
    """The reply with what the file plainly says of it first; as it is where the file says nothing, or the reply says it."""
    if not words or reply.silent:
        return reply
    found = _about(visit, words, plain=True)
    new = [say_written(visit.say, w) for w in found if not w.text or w.text.rstrip(".") not in reply.text]
    return replace(reply, text=lines(*new, reply.text)) if new else reply
