"""A group chat that is to be told what concerns the whole crew: '/group' in it, and '/group off' to end that."""

from __future__ import annotations

from server.conversation import actions
from server.conversation.values import Reply
from server.conversation.visit import Visit

__all__ = ["asked", "settle"]

_SAID = {"/group": True, "/group on": True, "/group off": False}


def asked(text: str) -> bool | None:
    """Whether a message asks for that (True), for its end (False), or for something else (None)."""
    return _SAID.get(" ".join(text.lower().split()))


async def settle(visit: Visit, chat: str, *, tell: bool) -> Reply:
    """Bind or release the group, and say to all what it will and will not be told."""
    told = await actions.group(visit.event.id, chat, tell=tell)
    return visit.reply(visit.s("group-bound" if told.tell else "group-free", name=told.event_name))
