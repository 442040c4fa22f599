"""What a mail says about answering it: by its page, or, where there is none, how else. A mail has no buttons."""

from __future__ import annotations

from datetime import datetime

from server.conversation.telling.say import Say

__all__ = ["say_answer_by_page", "say_no_page"]


def say_answer_by_page(say: Say, text: str, link: str, until: datetime) -> str:
    """The text with the link right under its first line, where somebody half awake sees it, and what goes with
    it at the end."""
    first, _, rest = text.partition("\n")
    to_answer, note = say.s("mail-answer", link=link), say.s("mail-answer-note", until=say.when(until))
    return "\n\n".join(x for x in (first, to_answer, rest.strip("\n"), note) if x)


def say_no_page(say: Say, text: str, name: str, phone: str) -> str:
    """The text, and that a reply reaches nobody; `phone` whom to telephone instead, '' for nobody."""
    return "\n\n".join((text, say.s("mail-no-page", name=name, phone=phone or "none")))
