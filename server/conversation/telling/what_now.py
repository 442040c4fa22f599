"""What somebody does now about an open alarm, what they tell rescuers, whether they call the emergency number.

Asked by frightened people in the middle of it: the first line is the answer, and there always is one.
"""

from __future__ import annotations

from server.conversation.telling import alarm_known, call_back
from server.conversation.telling.alarm import numbers, race_control_does
from server.conversation.telling.say import SayInEvent, lines
from server.watch.notice import AlarmNewsValues, AlarmValues, CallBackValues, NoticeKind

__all__ = ["CALLER", "HOLDER", "NEAR", "RUNNER", "call_words", "no_alarm", "now_words", "tell_words"]

RUNNER, CALLER, HOLDER, ASKED, NEAR = "runner", "caller", "holder", "asked", "near"


def now_words(say: SayInEvent, v: AlarmValues, back: CallBackValues, to: str, part: str) -> str:
    """What the person `to`, who has that part in the alarm, does now."""
    if part in (RUNNER, CALLER):
        return call_back.call_back(say, back, to)
    if part == HOLDER:
        return _holder(say, v, to)
    if part == ASKED:
        return _asked(say, v, to)
    news = AlarmNewsValues(v.alarm, v.of_kind, v.raised_at or say.now, v.by, v.holder, v.caller)
    return call_back.alarm_news(say, news)


def _holder(say: SayInEvent, v: AlarmValues, to: str) -> str:
    control = {"name": say.event.race_control.name, "phone": say.event.race_control.phone}
    if say.event.is_race_control(to):
        call = race_control_does(say, v)
    elif v.caller is not None and v.caller != to:
        call = say.s("now-control-other", caller=say.person(v.caller), **control)
    else:
        call = say.s("now-control", **control)
    help_call = v.of_kind == NoticeKind.ASKED_FOR_HELP.value
    whom = v.by if help_call and v.by and v.by != to else _her_person(say)
    person = next((p for p in say.event.people if p.id == whom), None)
    ring = say.s("now-ring", who=say.person(whom), phone=(person.phone if person else "") or "none")
    return lines(
        say.s("now-holder", runner=alarm_known.named(say)),
        call,
        ring if whom != to else "",
        say.s("now-write" if help_call else "now-look"),
        say.s("now-ends"),
        numbers(say, v, to),
    )


def _her_person(say: SayInEvent) -> str:
    return next((r.person for r in say.event.runners if r.id == say.runner_id), "")


def _asked(say: SayInEvent, v: AlarmValues, to: str) -> str:
    named = alarm_known.named(say)
    if v.holder:
        first = say.s("now-asked-held", runner=named, name=say.person(v.holder))
    else:
        first = say.s("now-asked", runner=named)
    beside = (
        say.s(
            "alarm-beside",
            emergency=say.event.emergency_number,
            name=say.event.race_control.name,
            phone=say.event.race_control.phone,
        )
        if to in v.beside
        else ""
    )
    return lines(first, alarm_known.says(say, v), beside, numbers(say, v, to))


def call_words(say: SayInEvent, to: str, *, is_open: bool) -> str:
    """Whether the person `to` calls the emergency number: when in doubt, yes. Of herself in the second person."""
    emergency = say.event.emergency_number
    control = {"name": say.event.race_control.name, "phone": say.event.race_control.phone}
    own = to == _her_person(say)
    return lines(
        say.s("now-call-own" if own else "now-call", emergency=emergency),
        say.s("now-call-unsure", emergency=emergency),
        say.s("now-call-open-own" if own else "now-call-open", emergency=emergency) if is_open else "",
        say.s("now-call-then", **control),
    )


def tell_words(say: SayInEvent, v: AlarmValues, *, whole: bool) -> str:
    """What to read out; for who may not see her facts only what anybody at the scene can say."""
    first = say.s("now-tell")
    return lines(first, alarm_known.read_out(say, v)) if whole else lines(first, say.s("now-tell-less"))


def no_alarm(say: SayInEvent) -> str:
    """That no alarm is open about her."""
    return say.s("told-none", runner=say.runner)
