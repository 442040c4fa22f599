"""What a channel says while the server can't be reached: it understands nothing by itself, so it names whom to call."""

from __future__ import annotations

from datetime import datetime

from server.conversation.telling.answer import MeAnswer
from server.conversation.telling.reader import Reader
from server.conversation.telling.say import Say, lines
from server.event.model import PartKind

__all__ = ["if_away"]


def if_away(me: MeAnswer | None, language: str, now: datetime, *, kept: bool) -> str:
    """In the person's language. `kept`: what they write then is handed over once the server is back."""
    key = "error-unreachable" if kept else "error-unreachable-not-kept"
    if me is None or not me.events:
        return Say(Reader(language, "UTC", "UTC"), now).s(key)
    event, say = me.events[0], Say(Reader(me.person.language, "UTC", "UTC"), now)
    own = any(p.kind is PartKind.RUNNER for p in event.parts)
    control = {"name": event.race_control.name, "phone": event.race_control.phone}
    numbers = say.s("grave-own" if own else "grave", emergency=event.emergency_number, **control)
    return lines(numbers, say.s(key))
