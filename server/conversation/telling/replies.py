"""What is said back to a report, an answer, a newcomer, somebody in distress, and to what was not
understood."""

from __future__ import annotations

from datetime import timedelta

from server.conversation.telling.answer import AnsweredAnswer, JoinAnswer, NotedAnswer
from server.conversation.telling.news import doubt_words
from server.conversation.telling.say import Say, lines, slug
from server.conversation.telling.things import part_words
from server.facts.entry import CHECK_INS, REQUESTS, Kind
from server.sentences import has

_TOLD_WITH_PLACE = frozenset({*CHECK_INS} - {Kind.ASKED_FOR_HELP, Kind.POSITION})


def _noted_first(say: Say, a: NotedAnswer, words: str) -> str:
    when = say.when(a.at)
    place = a.name or say.s("place-nowhere")
    match a.kind:
        case Kind.CREW_THERE:
            return say.s("noted-crew-there", place=place, when=when)
        case Kind.CREW_LEFT:
            return say.s("noted-crew-left", place=place, when=when)
        case Kind.AWAKE:
            return say.s("noted-awake")
        case Kind.RACE_CONTROL_TOLD:
            return say.s("noted-race-control")
        case Kind.IN_HAND:
            return say.s("noted-in-hand", runner=a.runner_name, when=when)
        case Kind.STAND_DOWN:
            return say.s("noted-stand-down")
        case Kind.HOW_SHE_IS:
            return say.s("noted-how", runner=a.runner_name, words=words)
        case Kind.LOG:
            return say.s("noted-log", words=words)
        case Kind.POSITION:
            return say.s("noted-position", runner=a.runner_name, when=when)
        case kind if kind is Kind.NOTE or kind in REQUESTS:
            return say.s("kept-note", words=words) if words else say.s("noted-note")
        case Kind.CANNOT_COME:
            return say.s("noted-cannot-come", who=a.person)
        case Kind.CAN_COME:
            return say.s("noted-can-come", who=a.person)
        case Kind.TAKES_OVER:
            return (
                say.s("noted-takes-over", who=a.goes)
                if a.goes == a.person
                else say.s("answered-goes", who=a.goes)
            )
    fact = say.fact(a.kind.value, place)
    return say.s("noted", runner=a.runner_name, fact=fact, when=when)


def say_noted(
    say: Say, a: NotedAnswer, words: str, undo: timedelta, *, ask: bool = False, supporter: bool = False
) -> str:
    """A report is kept: what was taken in, whether it counts, what follows, how to take it back."""
    if a.status == "same again":
        return lines(say.s("noted-same"), _noted_first(say, a, words), *a.yours)
    if a.unconfirmed:
        guessed = "guessed" in a.doubt.split("; ")
        if a.kind not in _TOLD_WITH_PLACE or supporter:
            doubt = say.s("noted-unconfirmed", doubt=doubt_words(say, a.doubt))
            return lines(_noted_first(say, a, words), say.s("noted-supporter") if supporter else doubt)
        # Not 'noted': what does not count is put as the question it is.
        fact = say.fact(a.kind.value, a.name or say.s("place-nowhere"))
        return lines(
            say.s("noted-kept", runner=a.runner_name, fact=fact, when=say.when(a.at)),
            say.s("noted-guessed")
            if guessed and ask
            else say.s("noted-kept-why", doubt=doubt_words(say, a.doubt)),
        )
    moved = a.kind in (Kind.IN, Kind.OUT, Kind.THROUGH)
    return lines(
        _noted_first(say, a, words),
        say.s("noted-next", place=a.next_name, window=say.window(a.next_window))
        if moved and a.next_window is not None and a.next_name
        else "",
        *a.yours,
        say.s("noted-told", names=say.all(a.told)) if a.told else "",
        say.s("noted-undo", minutes=str(round(undo.total_seconds() / 60))),
    )


def say_many(say: Say, noted: tuple[tuple[NotedAnswer, str], ...], undo: timedelta) -> str:
    """Several reports in one message, each with its words: how many, then each in a line."""
    minutes = str(round(undo.total_seconds() / 60))
    each = []
    for a, words in noted:
        line = _noted_first(say, a, words if a.kind in (Kind.HOW_SHE_IS, Kind.LOG, Kind.NOTE) else "")
        each.append(
            lines(line, say.s("noted-unconfirmed", doubt=doubt_words(say, a.doubt)))
            if a.unconfirmed
            else line
        )
    told = tuple(dict.fromkeys(name for a, _ in noted for name in a.told))
    return lines(
        say.s("noted-many", count=len(noted)),
        *each,
        *(text for a, _ in noted for text in a.yours),
        say.s("noted-told", names=say.all(told)) if told else "",
        say.s("noted-undo", minutes=minutes),
    )


def say_undone(say: Say, a: NotedAnswer, words: str = "") -> str:
    """A report was taken back; `words` is what was written, where that says more than its kind."""
    if not a.runner_name or a.kind not in _TOLD_WITH_PLACE:
        return say.s("undone-words", words=words) if words else say.s("undone-plain")
    place = a.name or say.s("place-nowhere")
    kind = a.kind.value
    return say.s("undone", runner=a.runner_name, fact=say.fact(kind, place), when=say.when(a.at))


def say_answered(say: Say, a: AnsweredAnswer, answer: str, *, alarm: bool) -> str:
    """An answer to a notice: what was understood, and of an alarm whose it is now."""
    if a.covers:
        return _covers(say, a)
    if not alarm:
        keys = (f"answered-{slug(a.kind)}-{slug(answer)}", f"answered-{slug(answer)}", "answered")
        return say.s(next(k for k in keys if has(k)))
    if not a.yours:
        return say.s("answered-other", name=a.holder)
    if a.look_again is None or a.look_again <= say.now:
        return say.s("answered-yours-untimed")
    return say.s("answered-yours", when=say.when(a.look_again))


def _covers(say: Say, a: AnsweredAnswer) -> str:
    """An answer that says who comes to a meeting; to who can't, first that they are to look after themselves."""
    told = say.s("noted-told", names=say.all(a.told)) if a.told else ""
    match a.covers:
        case Kind.CANNOT_COME:
            return lines(say.s("answered-cannot-come"), told, say.s("answered-cannot-why"))
        case Kind.TAKES_OVER if not a.yours:
            return say.s("answered-goes", who=a.holder)
        case _:
            return lines(say.s("answered-you-go"), told)


def say_cannot_come(say: Say, a: NotedAnswer, emergency: str, control: str, undo: timedelta) -> str:
    """First the person's own safety, then that they are sent nowhere, who has heard of it, and how it is taken back."""
    first = f"cannot-come-{slug(a.why)}"
    return lines(
        say.s(first, emergency=emergency, phone=control) if has(first) else "",
        say.s("noted-cannot-come-to", who=a.person, place=a.name)
        if a.name
        else say.s("noted-cannot-come", who=a.person),
        say.s("noted-told", names=say.all(a.told)) if a.told else "",
        say.s("cannot-come-back"),
        say.s("noted-undo", minutes=str(round(undo.total_seconds() / 60))),
    )


def say_distress(
    say: Say,
    control: tuple[str, str],
    emergency: str,
    told: tuple[str, ...] | None,
    *,
    by_self: bool,
    anew: bool = False,
    joins: str | None = None,
) -> str:
    """First whom to call; then whether the words were passed on (`told` None: they were not; () of a call made `anew`: there
    is nobody whom a channel reaches). `joins`: who has the alarm about her that was open already ('' nobody)."""
    name, phone = control
    first = say.s("distress" if by_self else "distress-for-her", emergency=emergency, name=name, phone=phone)
    if told is None:
        passed = say.s("distress-not-passed-on")
    elif anew and not told:
        passed = say.s("distress-reaches-nobody")
    else:
        passed = say.s("distress-passed-on", count=len(told), names=say.all(told))
    return lines(
        first,
        passed,
        "" if joins is None else say.s("distress-joins", holder=joins or "none", emergency=emergency),
        say.s("distress-where") if by_self else say.s("call-scene", emergency=emergency),
        say.s("distress-not-hurt") if told is not None else "",
    )


def say_preview(say: Say, a: JoinAnswer) -> str:
    """Who an invitation is for, what their part is and what will be asked of them, before they accept."""
    parts = part_words(
        say,
        a.parts,
        dict(zip(sorted({p.runner or "" for p in a.parts} - {""}), a.runner_names, strict=False)),
    )
    asked = dict.fromkeys(say.s(f"join-asks-{slug(p.kind.value)}") for p in a.parts)
    return lines(say.s("join-preview", name=a.name, parts=parts, event=a.event_name), *asked)


def say_error(say: Say, code: str, what: str = "") -> str:
    """A refusal of the server in a person's words."""
    key = f"error-{code}"
    return say.s(key, what=what) if has(key) else say.s("error-other")
