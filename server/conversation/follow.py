"""The link for followers in words: the runner asks for it and takes it back; whoever else asks hears that it is hers."""

from __future__ import annotations

from server.conversation import actions
from server.conversation.understanding import wanted
from server.conversation.values import Reply
from server.conversation.visit import Visit
from server.event.model import PartKind

__all__ = ["in_words"]


async def in_words(visit: Visit, text: str) -> Reply | None:
    """The reply to 'give me a link for followers' and 'take the link back'; None for any other words."""
    on = wanted.link_in(text)
    if on is None:
        return None
    mine = next((p.runner for p in visit.event.parts if p.kind is PartKind.RUNNER and p.runner), None)
    if mine is None:
        return visit.reply(visit.s("follow-not-yours"))
    found = await actions.followers(visit.event.id, mine, on=on)
    return visit.reply(visit.s("follow-given", link=found.link) if on else visit.s("follow-taken-back"))
