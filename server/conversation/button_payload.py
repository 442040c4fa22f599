"""What a button of a choice carries: enough to do what was meant when this program has been started again since, or when
something else has been asked. Words are not carried: what is nothing without them has to be written again.

The fields, behind the number of the choice: what kind of thing follows; its parts; the event's mark. A button holds 64
bytes (server/conversation/telling/message.py): kinds and moments are written short.
"""

from __future__ import annotations

import hashlib
from collections.abc import Iterable
from datetime import UTC, datetime

from server.conversation.telling.answer import EventHere
from server.conversation.telling.message import Button, Press, Rows, data, event_mark, tag, untag
from server.conversation.understanding import (
    Asked,
    Choice,
    MeantFor,
    Question,
    Report,
    Reported,
    Small,
    Unclear,
)
from server.conversation.visit import Visit
from server.facts.entry import Kind, Retired

__all__ = ["fields_of", "meant_by", "offer"]

_ASK, _REPORT, _HOW, _WHOSE, _ELSE, _NOTHING = "q", "r", "h", "m", "u", "k"
_WORDLESS = frozenset(
    {
        Kind.IN,
        Kind.OUT,
        Kind.THROUGH,
        Kind.RESTING,
        Kind.MOVING_AGAIN,
        Kind.NOT_HERE_YET,
        Kind.SWEEP_THROUGH,
        Kind.RETIRED,
        Kind.IN_HAND,
        Kind.STAND_DOWN,
        Kind.CREW_THERE,
        Kind.CREW_LEFT,
        Kind.RACE_CONTROL_TOLD,
    }
)
"""Reports that say the same without the words in which they were made."""
_FLAGS = {"g": "guessed", "c": "corrects"}
_HAS_HER = {"t": "got", "e": "here"}
_ENDED = {
    "1": Retired.OWN_CHOICE,
    "2": Retired.TIMED_OUT,
    "3": Retired.WITHDRAWN,
    "4": Retired.DID_NOT_START,
    "5": Retired.NOT_SAID,
}
_KIND_DIGITS = 4
_ALL = "*"


def offer(visit: Visit, labels: Iterable[str], choices: Iterable[Choice]) -> Rows:
    """One row a choice, each button with what its choice means."""
    mark = event_mark(visit.event.id)
    pairs = zip(labels, choices, strict=True)
    return tuple(
        (Button(label, data(Press.PICK, str(i), *fields_of(c), mark)),) for i, (label, c) in enumerate(pairs)
    )


def fields_of(choice: Choice) -> tuple[str, ...]:
    """What the button of a choice carries; () where that can't be without its words."""
    match choice.then:
        case Asked() as asked if asked.person is None and asked.question is not Question.CARDS:
            extra = f"{asked.factor:g}" if asked.factor is not None else _short(asked.leaving)
            return (_ASK, asked.question.value, tag(asked.point or ""), tag(asked.runner or ""), extra)
        case Reported(reports=(one,)) if _plain(one):
            how = next((k for k, v in _ENDED.items() if v is one.how), "")
            flags = "".join(k for k, name in _FLAGS.items() if getattr(one, name))
            flags += "".join(k for k, v in _HAS_HER.items() if v == one.with_us) + how
            where = (tag(one.point or ""), tag(one.runner or ""))
            return (_REPORT, _kind_mark(one.kind), *where, _short(one.seen_at), flags)
        case MeantFor(runners=runners, call=call) if len(runners) <= 1:
            return (_WHOSE, tag(runners[0]) if runners else _ALL, *((call,) if call else ()))
        case Unclear():
            return (_ELSE,)
        case Small():
            return (_NOTHING,)
        case _:
            return ()


def _plain(one: Report) -> bool:
    special = one.own_there or one.of_crew or one.placed_by_words or one.unnamed or one.condition
    return one.kind in _WORDLESS and not special


def meant_by(
    fields: tuple[str, ...], event: EventHere
) -> Asked | Reported | MeantFor | Unclear | Small | None:
    """What a button carried; None where it carried nothing, or nothing that this event knows."""
    match fields:
        case (str(kind), word, point, runner, extra) if kind == _ASK:
            question = Question(word)
            about = Asked(question, _runner(runner, event), _point(point, event))
            if not extra:
                return about
            if question is Question.SLOWER:
                return Asked(question, about.runner, about.point, factor=float(extra))
            return Asked(question, about.runner, about.point, leaving=_long(extra))
        case (str(kind), word, point, runner, seen, flags) if kind == _REPORT:
            found = next(k for k in _WORDLESS if _kind_mark(k) == word)
            one = Report(
                found,
                _long(seen),
                _runner(runner, event),
                _point(point, event),
                how=next((v for k, v in _ENDED.items() if k in flags), None),
                guessed="g" in flags,
                corrects="c" in flags,
                with_us=next((v for k, v in _HAS_HER.items() if k in flags), ""),
            )
            return Reported((one,))
        case (str(kind), point, runner, seen) if kind == _HOW:
            # A button of an older version, which asked how before it counted.
            ended = Retired.NOT_SAID
            over = Report(Kind.RETIRED, _long(seen), _runner(runner, event), _point(point, event), ended)
            return Reported((over,))
        case (str(kind), runner, *call) if kind == _WHOSE:
            meant = _runner(runner, event) if runner != _ALL else None
            return MeantFor((meant,) if meant else (), *call)
        case (str(kind),) if kind == _ELSE:
            return Unclear("")
        case (str(kind),) if kind == _NOTHING:
            return Small(thanks=True)
    return None


def _kind_mark(kind: Kind) -> str:
    return hashlib.sha256(kind.value.encode()).hexdigest()[:_KIND_DIGITS]


def _runner(tagged: str, event: EventHere) -> str | None:
    """The runner of a tag; ValueError for one who is not in the event any more."""
    if not tagged:
        return None
    found = untag(tagged, (r.id for r in event.runners))
    if found is None:
        raise ValueError(f"no runner {tagged!r} in {event.id}")
    return found


def _point(tagged: str, event: EventHere) -> str | None:
    if not tagged:
        return None
    found = untag(tagged, {p.id for r in event.runners for p in r.points})
    if found is None:
        raise ValueError(f"no point {tagged!r} in {event.id}")
    return found


_DIGITS = "0123456789abcdefghijklmnopqrstuvwxyz"


def _short(at: datetime | None) -> str:
    """A moment in whole seconds, written with 36 digits: six signs until 2038."""
    if at is None:
        return ""
    left, out = int(at.timestamp()), ""
    while left:
        left, digit = divmod(left, len(_DIGITS))
        out = _DIGITS[digit] + out
    return out or "0"


def _long(text: str) -> datetime:
    return datetime.fromtimestamp(int(text, len(_DIGITS)), UTC)
