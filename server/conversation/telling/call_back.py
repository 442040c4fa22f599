"""What is said while a call for help is open: back to whoever called, on to those who see to it, and to those near.

Whoever called may be hurt, alone and cold: the first line says whether anybody is coming, and where nobody is, whom to call.
"""

from __future__ import annotations

from datetime import timedelta

from server.conversation.telling import measures
from server.conversation.telling.alarm import ended_by, numbers
from server.conversation.telling.alarm_known import bib, named, part_of
from server.conversation.telling.say import SayInEvent, lines, slug
from server.facts.entry import Kind
from server.sentences import has
from server.watch.alarms import IN_HAND, TAKEN_BACK
from server.watch.notice import AlarmNewsValues, Answered, CallBackValues, MeanwhileValues

__all__ = ["alarm_news", "call_back", "meanwhile", "scene"]


def call_back(say: SayInEvent, v: CallBackValues, to: str) -> str:
    """How the call stands, for the person `to`."""
    hers = _is_her(say, to)
    call = {"call": _call(say, v, to), "emergency": say.event.emergency_number}
    if v.state == Answered.OVER.value:
        return _over(say, v, call, hers=hers)
    if v.state == Answered.HELD.value and v.holder is not None:
        return lines(
            say.s("call-held", name=say.person(v.holder), when=say.maybe(v.at), **call),
            _does(say, v),
            say.s("call-if-worse", **call),
            scene(say) if not hers else say.s("call-stay"),
        )
    return lines(
        _nobody(say, v, to, call),
        numbers(say, v, to),
        scene(say) if not hers else say.s("call-stay"),
    )


def _is_her(say: SayInEvent, person: str) -> bool:
    return any(r.id == say.runner_id and r.person == person for r in say.event.runners)


def _call(say: SayInEvent, v: CallBackValues, to: str) -> str:
    """'your call for help', 'the call for help for Maren'."""
    if _is_her(say, to):
        return say.s("call-yours" if v.by in ("", to) else "call-for-you")
    return say.s("call-for", runner=named(say)) if say.runner_id else say.s("call-unnamed")


def _nobody(say: SayInEvent, v: CallBackValues, to: str, call: dict[str, str]) -> str:
    """Nobody has it: who had it, who was asked; at first that they are being asked."""
    if not v.asked:
        return say.s("call-nobody-to-ask", **call)
    asked = say.s("call-asked", names=say.people(p for p in v.asked if p != to))
    if v.state == Answered.GIVEN_BACK.value:
        return lines(say.s("call-given-back", name=say.person(v.holder), **call), asked)
    if v.state == Answered.LOST.value:
        return lines(say.s("call-lost", name=say.person(v.holder), **call), asked)
    if v.minutes == 0:
        first = say.s("call-made", who=say.person(v.by), when=say.when(v.raised_at), **call)
        return lines(first, asked, say.s("call-do-not-wait", **call))
    waited = say.length(timedelta(minutes=v.minutes))
    return lines(say.s("call-nobody", length=waited, **call), asked)


def _does(say: SayInEvent, v: CallBackValues) -> str:
    """What whoever has it wrote last; where they wrote nothing, how to ask them."""
    if v.said is not None:
        return say.s(
            "call-does", name=say.person(v.said.by), when=say.when(v.said.at), words=_one_line(v.said.words)
        )
    person = next((p for p in say.event.people if p.id == v.holder), None)
    phone = person.phone if person and person.phone else "none"
    return say.s("call-does-not-said", name=say.person(v.holder), phone=phone)


def _over(say: SayInEvent, v: CallBackValues, call: dict[str, str], *, hers: bool) -> str:
    """That it is over, in words for whoever waited: who looks after her, who ended it."""
    values = {"who": say.person(v.ended_by) if v.ended_by else "none", "when": say.maybe(v.at), **call}
    key = f"call-over-{slug(v.reason)}"
    if v.reason == IN_HAND:
        key = f"{key}-{'you' if hers else 'of'}"
    if not has(key) or (values["who"] == "none" and v.reason != TAKEN_BACK):
        key = "call-over"
    first = say.s(key, reason=ended_by(say, v.reason), runner=named(say) if say.runner_id else "", **values)
    return lines(first, say.s("call-over-again", **call))


def scene(say: SayInEvent) -> str:
    """What to do beside her until somebody comes."""
    return say.s("call-scene", emergency=say.event.emergency_number)


def meanwhile(say: SayInEvent, v: MeanwhileValues) -> str:
    """What came in, word for word: from whom, when."""
    by_her = _is_her(say, v.by)
    who = {
        "who": say.person(v.by),
        "part": "none" if by_her else part_of(say, v.by),
        "when": say.when(v.at),
        "runner": say.runner,
    }
    place = measures.place(v.fix.lat, v.fix.lon, say.reader.language) if v.fix else ""
    words = _one_line(v.words) or "none"
    if v.kind == Kind.POSITION.value or (v.kind == Kind.HELP_WORD.value and place and not v.words):
        first = say.s("meanwhile-own-place" if v.own_place else "meanwhile-place", place=place, **who)
    elif v.kind in _SAYS_IT and v.words:
        first = say.s("meanwhile-words", words=words, **who)
    else:
        point = say.place_of(say.point(v.point) if v.point else "", None)
        first = say.s("meanwhile-report", fact=say.fact(v.kind, point), words=words, **who)
    return lines(
        say.s("meanwhile-doubted", text=first) if v.unconfirmed else first,
        say.s("meanwhile-own-place", place=place, **who) if place and v.words and v.own_place else "",
        say.s("meanwhile-reply") if by_her else "",
    )


_SAYS_IT = frozenset(
    k.value for k in (Kind.HELP_WORD, Kind.HOW_SHE_IS, Kind.ASKED_FOR_HELP, Kind.NOTE, Kind.MOVING_AGAIN)
)
"""Reports whose words say what they say."""


def _one_line(words: str) -> str:
    return " / ".join(part.strip() for part in words.split("\n") if part.strip())


def alarm_news(say: SayInEvent, v: AlarmNewsValues) -> str:
    """That an alarm is open, who has it, and what the reader does: nothing, unless she comes their way."""
    key = f"alarm-kind-{slug(v.of_kind)}"
    kind = say.s(key if has(key) else "alarm-kind-other")
    holder = say.person(v.holder) if v.holder else "none"
    control = say.event.race_control
    do = (
        say.s(
            "news-at-point",
            runner=say.runner,
            place=say.point(v.at_point),
            bib=bib(say) or say.runner,
            name=control.name,
            phone=control.phone,
        )
        if v.at_point
        else say.s("news-stay", runner=say.runner)
    )
    return lines(
        say.s("alarm-news", runner=named(say), kind=kind, when=say.when(v.raised_at), holder=holder),
        do,
        say.s("news-danger", emergency=say.event.emergency_number),
    )
