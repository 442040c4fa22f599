"""What is said back to a report, an answer, a newcomer, somebody in distress, and to what was not
understood."""

from __future__ import annotations

from datetime import timedelta

from server.facts.entry import CHECK_INS, Kind
from server.wording.answer import AnsweredAnswer, JoinAnswer, NotedAnswer
from server.wording.news import doubt_words
from server.wording.say import Say, lines
from server.wording.sentences import has
from server.wording.things import part_words

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
        case Kind.POSITION:
            return say.s("noted-position", runner=a.runner_name, when=when)
        case Kind.NOTE:
            return say.s("noted-note")
    fact = say.fact(a.kind.value, place)
    return say.s("noted", runner=a.runner_name, fact=fact, when=when)


def say_noted(
    say: Say, a: NotedAnswer, words: str, undo: timedelta, *, ask: bool = False, supporter: bool = False
) -> str:
    """A report is kept: what was taken in, whether it counts, what follows, how to take it back."""
    if a.status == "same again":
        return lines(say.s("noted-same"), _noted_first(say, a, words))
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
        say.s("noted-told", names=say.all(a.told)) if a.told else "",
        say.s("noted-undo", minutes=str(round(undo.total_seconds() / 60))),
    )


def say_many(say: Say, noted: tuple[NotedAnswer, ...], undo: timedelta) -> str:
    """Several reports in one message: how many, then each in a line."""
    minutes = str(round(undo.total_seconds() / 60))
    each = []
    for a in noted:
        line = _noted_first(say, a, "")
        each.append(
            lines(line, say.s("noted-unconfirmed", doubt=doubt_words(say, a.doubt)))
            if a.unconfirmed
            else line
        )
    told = tuple(dict.fromkeys(name for a in noted for name in a.told))
    return lines(
        say.s("noted-many", count=len(noted)),
        *each,
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


def say_answered(say: Say, a: AnsweredAnswer, *, alarm: bool) -> str:
    """An answer to a notice: whose it is now."""
    if not alarm:
        return say.s("answered", short=str(a.short))
    if not a.yours:
        return say.s("answered-other", name=a.holder)
    if a.look_again is None or a.look_again <= say.now:
        return say.s("answered-yours-untimed")
    return say.s("answered-yours", when=say.when(a.look_again))


def say_distress(
    say: Say,
    control: tuple[str, str],
    emergency: str,
    told: tuple[str, ...] | None,
    *,
    by_self: bool,
    anew: bool = False,
) -> str:
    """First whom to call; then whether the words were passed on (`told` None: they were not; () of a call made `anew`: there
    is nobody whom a channel reaches)."""
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
        say.s("distress-where") if by_self else "",
        say.s("distress-not-hurt") if told is not None else "",
    )


def say_preview(say: Say, a: JoinAnswer) -> str:
    """Who an invitation is for and what their part is, before they accept."""
    parts = part_words(
        say,
        a.parts,
        dict(zip(sorted({p.runner or "" for p in a.parts} - {""}), a.runner_names, strict=False)),
    )
    return say.s("join-preview", name=a.name, parts=parts, event=a.event_name)


def say_error(say: Say, code: str, what: str = "") -> str:
    """A refusal of the server in a person's words."""
    key = f"error-{code}"
    return say.s(key, what=what) if has(key) else say.s("error-other")
