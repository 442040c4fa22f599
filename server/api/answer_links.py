"""Answering a notice from a mail: a link to a page, with a token of its own for one person and one notice.

The token may do nothing else, ends after a day, and is of use for one answer: the notice is answered then. Looking
at the page changes nothing, so that a mail scanner that follows links does not answer for anybody.
"""

from __future__ import annotations

from dataclasses import dataclass
from datetime import timedelta

from server.api.parts import Parts
from server.conversation.telling.mailed import say_answer_by_page, say_no_page
from server.conversation.telling.message import Message
from server.conversation.telling.reader import reader_in
from server.conversation.telling.say import Say
from server.event.model import Event
from server.journal import Delivery, TokenInfo

__all__ = ["PATH", "AnswerToken", "bound", "is_answer", "mail_text", "scope"]

PATH = "/answer"
CHANNEL = "email"
HOLDS = timedelta(hours=24)
_ANSWER = "answer:"


@dataclass(frozen=True, slots=True)
class AnswerToken:
    """What an answer token is for."""

    person: str
    event: str
    short: int


def scope(event: str, short: int) -> str:
    """The scope of a token for the answer to one notice."""
    return f"{_ANSWER}{event}/{short}"


def is_answer(token: TokenInfo) -> bool:
    """Whether a token is for an answer only."""
    return any(s.startswith(_ANSWER) for s in token.scopes)


def bound(token: TokenInfo) -> AnswerToken | None:
    """Whose answer to what a token is for; None for a token of another kind."""
    for found in token.scopes:
        event, _, short = found.removeprefix(_ANSWER).rpartition("/")
        if found.startswith(_ANSWER) and token.person is not None and short.isdecimal():
            return AnswerToken(token.person, event, int(short))
    return None


async def mail_text(parts: Parts, delivery: Delivery, event: Event, message: Message) -> str:
    """The text of a delivery as it goes by mail; any other, and one that asks nothing, as it is.

    Each attempt has a link of its own, since only the hash of a token is kept; all hold, as any of them may
    be the one that arrived.
    """
    if delivery.channel != CHANNEL or not message.buttons:
        return message.text
    person, now = delivery.notice.key.person, parts.clock.now()
    say = Say(reader_in(event, person), now)
    base = parts.settings.public_url.rstrip("/")
    if base:
        short = delivery.made.short
        until = now + HOLDS
        secret = await parts.journal.issue_token(
            person, f"answer to no. {short}, by mail", [scope(event.id, short)], now, until
        )
        return say_answer_by_page(say, message.text, f"{base}{PATH}?t={secret}", until)
    if not delivery.notice.needs_answer:
        return message.text
    name, phone = _to_telephone(event, person, delivery.notice.key.runner)
    return say_no_page(say, message.text, name, phone)


def _to_telephone(event: Event, person: str, runner: str) -> tuple[str, str]:
    """Who else on the ladder has a telephone, the first step first; else race control."""
    steps = [
        (part.ladder, p.name, p.phone)
        for p in event.people
        for part in event.parts_of(p.id)
        if part.ladder is not None
        and p.phone
        and p.id != person
        and (not runner or part.runner in (None, runner))
    ]
    if steps:
        _, name, phone = min(steps)
        return name, phone
    return event.race_control.name, event.race_control.phone
