"""A line of the event file, word for word, with where it stands."""

from __future__ import annotations

from server.conversation.telling.answer import Written
from server.conversation.telling.say import Say


def say_written(say: Say, line: Written) -> str:
    """The line, quoted."""
    if line.start is not None and line.end is not None:
        return say.s("written-sleep", person=line.name, start=say.when(line.start), end=say.when(line.end))
    return say.s("written", kind=line.kind, name=line.name or "none", text=line.text.rstrip("."))
