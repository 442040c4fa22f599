"""While an alarm about her is open: what is asked of it is answered by the server, and what she, whoever called for her
or whoever has it writes goes on to the others word for word, understood or not."""

from __future__ import annotations

from dataclasses import replace

from server.conversation import actions
from server.conversation.submit import hand_in
from server.conversation.telling.answer import AlarmNowAnswer, RunnerHere
from server.conversation.telling.say import lines
from server.conversation.understanding import (
    AskBack,
    Asked,
    Kept,
    Question,
    Report,
    Reported,
    Several,
    Unclear,
    Understood,
    asks_of_alarm,
)
from server.conversation.values import Reply
from server.conversation.view import Refused
from server.conversation.visit import Visit
from server.event.model import PartKind
from server.facts.entry import Fix, Kind

__all__ = ["answer", "asked", "on_it", "pass_on", "place", "whose"]

_FIELD = {
    Question.ALARM_NOW: "now",
    Question.ALARM_TELL: "tell",
    Question.ALARM_CALL: "call",
    Question.ALARM_KNOWN: "known",
}


def whose(visit: Visit, text: str = "") -> RunnerHere | None:
    """The runner whose alarm is open: she who is named, she in whose alarm the writer has a part, else the first."""
    words = text.lower()
    alarmed = [r for r in visit.event.runners if r.alarm]
    named = [r for r in alarmed if r.name.lower() in words]
    return next(iter((*named, *(r for r in alarmed if r.on_it), *alarmed)), None)


def asked(visit: Visit, text: str) -> Asked | None:
    """A question about the open alarm; whether to call the emergency number is answered at any time."""
    question = asks_of_alarm(text)
    her = whose(visit, text) or visit.runner(None) or next(iter(visit.event.runners), None)
    if question is None or her is None or not (her.alarm or question is Question.ALARM_CALL):
        return None
    return Asked(question, her.id, words=text)


async def answer(visit: Visit, about: Asked) -> Reply:
    """What the server says to it."""
    runner = about.runner or next((r.id for r in visit.event.runners), "")
    told = visit.view.alarm(visit.event.id, runner)
    text: str = getattr(told, _FIELD[about.question])
    return visit.reply(text or told.call)


def on_it(visit: Visit) -> bool:
    """Whether the writer's words go on to those who answer an open call for help."""
    return any(r.on_it for r in visit.event.runners)


async def pass_on(visit: Visit, meant: Understood, text: str, reply: Reply) -> Reply:
    """The reply, after words that nothing has been made of have gone to those on the call for help; and how it stands."""
    her = next((r for r in visit.event.runners if r.on_it), None)
    if her is None or reply.silent or not isinstance(meant, Unclear | Kept | AskBack | Reported | Several):
        return reply
    if isinstance(meant, Reported | Several):
        return _with_state(visit, her, reply)
    word = Report(Kind.HELP_WORD, min(visit.sent_at, visit.now), her.id, words=text)
    try:
        told = (await hand_in(visit, word, f"{visit.key()}.word")).told
    except Refused:
        return reply
    passed = visit.s("passed-on", names=visit.say.all(told)) if told else ""
    asks_back = reply.text if isinstance(meant, AskBack) else ""
    new = replace(reply, text=lines(passed, asks_back), buttons=reply.buttons if asks_back else ())
    return _with_state(visit, her, new)


def _with_state(visit: Visit, her: RunnerHere, reply: Reply) -> Reply:
    """How the call stands, for her and for whoever called: after the reply's own first line."""
    now = _now(visit, her.id)
    if now is None or now.part not in ("runner", "caller"):
        return reply
    first, _, rest = reply.text.partition("\n")
    return replace(reply, text=lines(first, now.now.split("\n")[0], rest))


def _now(visit: Visit, runner: str) -> AlarmNowAnswer | None:
    try:
        return visit.view.alarm(visit.event.id, runner)
    except Refused:
        return None


async def place(visit: Visit, fix: Fix) -> Reply | None:
    """A place shared by whoever called for her, or has it, and is not her: theirs, for those on the call; None for any
    other."""
    her = next((r for r in visit.event.runners if r.on_it), None)
    if her is None or visit.kinds & {PartKind.RUNNER, PartKind.PACER}:
        return None
    body = {
        "kind": Kind.HELP_WORD.value,
        "seen_at": visit.sent_at.isoformat(),
        "sent_at": visit.sent_at.isoformat(),
        "key": visit.key(),
        "fix": {"lat": fix.lat, "lon": fix.lon},
    }
    told = (await actions.check_in(visit.event.id, her.id, body)).told
    text = visit.s("passed-on-place", names=visit.say.all(told) if told else "none", runner=her.name)
    return _with_state(visit, her, visit.reply(text))
