"""In an alarm: who said last that she is not there yet, and who was asked and does not answer.

Who looks for her must not take her for merely unreported, and knows whom to telephone first.
"""

from __future__ import annotations

from server.conversation.telling.say import SayInEvent
from server.watch.notice import AlarmValues, LateHomeValues


def fact(say: SayInEvent, v: AlarmValues | LateHomeValues) -> str:
    """Where she is not, since when, told by whom, and their number to ask."""
    n = v.not_there
    if n is None:
        return ""
    return say.s(
        "alarm-not-there",
        fact=say.fact(n.kind, say.point(n.point or "")),
        when=say.when(n.at, day=True),
        ago=say.ago(n.at),
        who=say.person(n.by),
        phone=_phone(say, n.by) or "none",
    )


def no_word(say: SayInEvent, v: AlarmValues | LateHomeValues, to: str) -> str:
    """Who was asked whether she has come in and does not answer, their numbers, since when; not the reader."""
    them = [n for n in v.no_word if n.who != to]
    if not them:
        return ""
    names = say.all(" ".join(filter(None, (say.person(n.who), _phone(say, n.who)))) for n in them)
    return say.s("alarm-no-word", names=names, when=say.when(min(n.at for n in them), day=True))


def _phone(say: SayInEvent, who: str) -> str:
    return next((p.phone or "" for p in say.event.people if p.id == who), "")


def read_out(say: SayInEvent, v: AlarmValues) -> str:
    """The same as a whole sentence, on the event's own clock."""
    n = v.not_there
    if n is None:
        return ""
    return say.s(
        "read-out-not-there", place=say.point(n.point or ""), when=say.spoken(n.at), who=say.person(n.by)
    )
