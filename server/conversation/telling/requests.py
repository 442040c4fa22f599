"""The wording of what people want told: words for others, a meeting to be taken over, a reminder; what became of it."""

from __future__ import annotations

from datetime import datetime

from server.conversation.telling.answer import NotedAnswer
from server.conversation.telling.say import Say, SayInEvent, lines
from server.conversation.telling.times import floor_to
from server.facts.awaiting import Came
from server.facts.entry import LOOKED_BACK
from server.watch.notice import LookBackValues, PassedOnValues, ReminderValues, SwapValues

__all__ = ["passed_on", "reminder", "say_quiet", "say_reminder", "say_sent", "say_shown", "swap"]


def passed_on(say: SayInEvent, v: PassedOnValues) -> str:
    """Who says it, and their words; of a meeting elsewhere that nothing in the plan is changed."""
    who = say.person(v.by)
    if v.picture:
        back = "yes" if v.taken_back else "no"
        return say.s("says-picture", who=who, words=v.words or "none", back=back)
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
    """Their own words; before them that she is in or out, or due soon, or why nobody will hear of it."""
    if not v.came:
        return say.s("reminder", when=say.when(v.at), words=v.words)
    place = say.point(v.point)
    if v.came == Came.YES.value and v.seen_at is not None:
        what = say.fact(v.edge, say.place_of(place, None))
        first = say.s(
            "awaited", runner=say.runner, fact=what, when=say.when(v.seen_at), by=say.person(v.told_by)
        )
    elif v.came == Came.SOON.value and v.window is not None:
        first = say.s("awaited-soon", runner=say.runner, place=place, window=say.window(v.window))
    elif v.came == Came.UNSEEN.value:
        first = say.s("awaited-unseen", runner=say.runner, place=place, then=say.point(v.then))
    else:
        first = say.s("awaited-over", runner=say.runner, place=place, edge=v.edge)
    return lines(first, say.s("awaited-asked", when=say.when(v.at), words=v.words))


def look_back(say: SayInEvent, v: LookBackValues) -> str:
    """The three questions, with how they are answered."""
    asked = (f"{n} {say.s(f'paper-ask-{q}')}" for n, q in enumerate(LOOKED_BACK, 1))
    return lines(
        say.s("look-back", runner=say.runner, event=say.event.name, when=say.when(v.at)),
        *asked,
        say.s("look-back-how"),
    )


def say_sent(say: Say, a: NotedAnswer, words: str) -> str:
    """To whom words went, who reads them later, who can't be told."""
    return lines(
        say.s("sent-to", names=say.all(a.told), words=words)
        if a.told
        else say.s("sent-to-nobody", words=words),
        *(say.s("sent-waits", name=name, when=say.when(until)) for name, until in a.waits),
        say.s("sent-unheard", names=say.all(a.unheard)) if a.unheard else "",
    )


def say_shown(say: Say, a: NotedAnswer) -> str:
    """To whom a picture was shown, who sees it later, who can't be told."""
    return lines(
        say.s("photo-shown", names=say.all(a.told) if a.told else "none"),
        *(say.s("sent-waits", name=name, when=say.when(until)) for name, until in a.waits),
        say.s("sent-unheard", names=say.all(a.unheard)) if a.unheard else "",
    )


def say_quiet(say: Say, until: datetime) -> str:
    """That no news comes until then, and what does."""
    return say.s("quiet-until", when=say.when(until))


def say_reminder(say: Say, until: datetime) -> str:
    """When they are reminded."""
    return say.s("remind-at", when=say.when(until))
