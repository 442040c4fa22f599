"""The wording of what people want told: words for others, a meeting to be taken over, a reminder; what became of it."""

from __future__ import annotations

from datetime import datetime

from server.conversation.telling.answer import NotedAnswer
from server.conversation.telling.say import Say, SayInEvent, lines
from server.conversation.telling.times import floor_to
from server.watch.notice import PassedOnValues, ReminderValues, SwapValues

__all__ = ["passed_on", "reminder", "say_quiet", "say_reminder", "say_sent", "swap"]


def passed_on(say: SayInEvent, v: PassedOnValues) -> str:
    """Who says it, and their words; of a meeting elsewhere that nothing in the plan is changed."""
    who = say.person(v.by)
    if v.taken_back:
        return say.s("says-back", who=who, words=v.words)
    if not v.meeting:
        return say.s("says-to-you", who=who, words=v.words)
    place = SayInEvent(say.reader, say.now, say.event, _runner_of(say, v.meeting)).point(v.point)
    return lines(say.s("elsewhere-told", who=who, words=v.words, place=place), say.s("elsewhere-unchanged"))


def _runner_of(say: SayInEvent, meeting: str) -> str:
    return next((m.runner for m in say.event.meetings if m.id == meeting), "")


def swap(say: SayInEvent, v: SwapValues) -> str:
    """Who asks for which meeting, in their words, and when it is; or that who was asked can't."""
    place = say.point(v.point)
    if v.refused:
        return say.s("swap-refused", who=say.person(v.to), place=place)
    return lines(
        say.s("swap-asked", who=say.person(v.by), place=place, runner=say.runner, words=v.words),
        say.s("swap-window", window=say.window(v.window)) if v.window else "",
        say.s("swap-be-there", when=say.when(floor_to(v.be_there))) if v.be_there else "",
    )


def reminder(say: SayInEvent, v: ReminderValues) -> str:
    """Their own words."""
    return say.s("reminder", when=say.when(v.at), words=v.words)


def say_sent(say: Say, a: NotedAnswer, words: str) -> str:
    """To whom words went, who reads them later, who can't be told."""
    return lines(
        say.s("sent-to", names=say.all(a.told), words=words)
        if a.told
        else say.s("sent-to-nobody", words=words),
        *(say.s("sent-waits", name=name, when=say.when(until)) for name, until in a.waits),
        say.s("sent-unheard", names=say.all(a.unheard)) if a.unheard else "",
    )


def say_quiet(say: Say, until: datetime) -> str:
    """That no news comes until then, and what does."""
    return say.s("quiet-until", when=say.when(until))


def say_reminder(say: Say, until: datetime) -> str:
    """When they are reminded."""
    return say.s("remind-at", when=say.when(until))
