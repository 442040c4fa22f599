"""What comes in over channels, on its way into the inbox: from which chat, and whether it sounds like a call for help.

Neither decides what an update means, which is for whoever works it off: they say in which order that is done. So a guess
is enough, by the form that an update has at its channel.
"""

from __future__ import annotations

import asyncio
import hashlib
import json
from collections.abc import Iterable
from datetime import datetime
from typing import Any

from server.api.parts import Parts
from server.conversation.understanding.danger import by_rule
from server.conversation.understanding.language import lexicon
from server.conversation.understanding.meaning import Danger
from server.journal import NewUpdate

__all__ = ["keep_updates", "new_update", "number"]


async def keep_updates(parts: Parts, channel: str, updates: Iterable[tuple[str, str]], now: datetime) -> int:
    """Store raw updates (id and body); how many were new. Once it returns they are safe."""
    given = list(updates)
    # In a thread: the words that are looked for take a second to be read in, once.
    new = await asyncio.to_thread(lambda: [new_update(id_, body) for id_, body in given])
    return await parts.journal.store_updates(channel, new, now)


def number(update_id: str) -> int:
    """The update's number at its channel; where ids are not numbers, 62 bits of their hash."""
    if update_id.isdecimal() and len(update_id) < 19:
        return int(update_id)
    return int.from_bytes(hashlib.sha256(update_id.encode()).digest()[:8], "big") >> 2


def new_update(update_id: str, body: str) -> NewUpdate:
    """The update to store. Pure."""
    chat, words, pressed = _whose(body)
    return NewUpdate(number(update_id), body, chat, pressed or _sounds_urgent(words))


def _whose(body: str) -> tuple[str, str, bool]:
    """Who sent it, what they wrote ('' for what can't be read so), and whether they pressed a button: that may call for
    help or answer an alarm, and is quickly done."""
    try:
        update = json.loads(body)
    except (ValueError, RecursionError):
        return "", "", False
    if not isinstance(update, dict):
        return "", "", False
    for part in (update, *(x for x in update.values() if isinstance(x, dict))):
        sender = part.get("from")
        who = part.get("device") if not isinstance(sender, dict) else sender.get("id")
        if isinstance(who, str | int):
            said: list[Any] = [part.get(field) for field in ("text", "caption")]
            return (
                str(who),
                " ".join(x for x in said if isinstance(x, str)),
                isinstance(part.get("data"), str),
            )
    return "", "", False


def _sounds_urgent(words: str) -> bool:
    return bool(words) and by_rule(lexicon().words(words), own=True) is not Danger.NONE
