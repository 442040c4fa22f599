"""Strangers and newcomers: an invitation says who you are and your part, then you accept. Nothing else is
told."""

from __future__ import annotations

import re
from datetime import UTC, datetime

from server.conversation import actions
from server.conversation.dialogue import Memory
from server.conversation.telling import replies
from server.conversation.telling.message import Button, Press, data
from server.conversation.telling.reader import Reader
from server.conversation.telling.say import Say, lines
from server.conversation.understanding import Acknowledged, short_answer
from server.conversation.values import Incoming, Reply
from server.conversation.view import Refused
from server.event.model import PartKind

# Twelve signs without those that look alike, perhaps in groups; a start link sends '/start CODE'.
_CODE = re.compile(
    r"^(?:/start\s+|join\s+|code\s*:?\s*)?([0-9A-Za-z]{12}|[0-9A-Za-z]{4}(?:[- ][0-9A-Za-z]{4}){2})$"
)
CODE_SIGNS = 12


def code_in(text: str) -> str | None:
    """An invitation code in a message, without its borders; None if it can be none."""
    m = _CODE.match(text.strip())
    if m is None:
        return None
    code = re.sub(r"[- ]", "", m[1])
    return code if len(code) == CODE_SIGNS else None


def _say(language: str, now: datetime | None = None) -> Say:
    return Say(Reader(language, "UTC", "UTC"), now or datetime.fromtimestamp(0, UTC))


def stranger(language: str) -> Reply:
    """All that a stranger is told."""
    return Reply(_say(language).s("stranger"))


async def preview(incoming: Incoming, memory: Memory, code: str) -> Reply:
    """Who a code is for. In a group nothing is shown: everybody would read it."""
    say = _say(incoming.language)
    if incoming.group:
        return Reply(say.s("join-private"))
    try:
        told = await actions.join(code, preview=True)
    except Refused as error:
        return Reply(replies.say_error(say, error.code, error.what))
    memory.code = code
    row = (
        Button(say.s("button-join"), data(Press.JOIN, "yes")),
        Button(say.s("button-not-me"), data(Press.JOIN, "no")),
    )
    return Reply(replies.say_preview(say, told), (row,))


def accepts(incoming: Incoming) -> bool | None:
    """Whether a newcomer says yes or no to a preview; None for anything else."""
    if incoming.button:
        return {"j|yes": True, "j|no": False}.get(incoming.button)
    said = short_answer(incoming.text)
    if isinstance(said, Acknowledged):
        return {"yes": True, "ok": True, "no": False}.get(said.answer)
    return None


async def settle(incoming: Incoming, memory: Memory, *, accept: bool) -> Reply:
    """Bind this chat to the person, or leave the code unused."""
    say = _say(incoming.language)
    code, memory.code = memory.code, ""
    if not accept:
        return Reply(say.s("join-no"))
    try:
        told = await actions.join(code, preview=False)
    except Refused as error:
        return Reply(replies.say_error(say, error.code, error.what))
    sees_times = any(p.kind is not PartKind.VOLUNTEER for p in told.parts)
    return Reply(lines(say.s("join-done-plain", name=told.name), say.s("window-how") if sees_times else ""))
