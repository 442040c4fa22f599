"""What was asked, or said, just before is tried first: the words may be nothing but the answer to it, or put it right."""

from __future__ import annotations

import re
from dataclasses import replace

from server.conversation import passed_on
from server.conversation.dialogue import Handed
from server.conversation.understanding import (
    UNDO_WITHIN,
    Acknowledged,
    AskBack,
    Kept,
    Report,
    Reported,
    Small,
    Understood,
    Undo,
    chosen,
    is_back,
    of_another_bib,
    put_right,
    short_answer,
)
from server.conversation.visit import SPOKEN_OF, Visit
from server.facts.entry import Kind

_MOVES = frozenset({Kind.IN, Kind.OUT, Kind.THROUGH, Kind.SWEEP_THROUGH, Kind.RESTING, Kind.MOVING_AGAIN})


def answered(visit: Visit, text: str) -> Understood | None:
    """What the words mean as an answer to what this conversation asked last, or as the last report put right; None where
    they are something new."""
    memory = visit.memory
    if memory.danger is not None:
        said = short_answer(text)
        if isinstance(said, Acknowledged) and said.answer in ("yes", "no"):
            return passed_on.cry_of(visit, memory.danger) if said.answer == "yes" else Small(thanks=True)
    if memory.choices:
        said = short_answer(text)
        if isinstance(said, Acknowledged) and {c.label for c in memory.choices} == {"yes", "no"}:
            plain = next((c.then for c in memory.choices if c.label == said.answer), None)
            if plain is not None:
                return plain
        choice = chosen(text, memory.choices, visit.context())
        if choice is not None:
            return choice.then
    last = _last(visit)
    if last is None:
        return None
    gone = last.report.kind in (Kind.OUT, Kind.THROUGH) and visit.now - last.at <= UNDO_WITHIN
    first = _CLAUSE.split(text.strip(), maxsplit=1)[0]
    if gone and any(is_back(words, visit.context()) for words in (text, first)):
        return Undo()
    right = _put_right(visit, text, last.report)
    return right or (Undo(whole=True) if of_another_bib(text, last.report, visit.context()) else None)


def _put_right(visit: Visit, text: str, last: Report) -> Reported | None:
    """The last report put right by the words, or by those before a comma: 'no hang on, 1139, she came back for her cup'."""
    ends = [m.start() for m in _COMMA.finditer(text)]
    for head in (text, _COMMA.sub(" ", text, count=1), *(text[:end] for end in reversed(ends))):
        again = put_right(head, last, visit.context())
        if again is not None:
            return Reported((replace(again, words=text),))
    return None


_COMMA = re.compile(r",\s")


_CLAUSE = re.compile(r"[,.;:!\n]|\s[-–]\s")


def taken(visit: Visit, text: str, meant: Understood) -> Understood:
    """'I have it, driving to him' takes the alarm that waits for it, whatever way the driving may be meant, and of which
    runner: whoever lies there must not wait for that. The words go on word for word."""
    of_it = isinstance(meant, Acknowledged) and meant.answer not in (_TAKES, "cannot")
    if not (of_it or isinstance(meant, AskBack | Kept)) or not visit.event.open_notices:
        return meant
    said = short_answer(_CLAUSE.split(text.strip(), maxsplit=1)[0])
    takes = isinstance(said, Acknowledged) and said.answer == _TAKES
    return Acknowledged(_TAKES, text) if takes else meant


_TAKES = "i have it"


def _last(visit: Visit) -> Handed | None:
    """This person's last report, while it is still spoken of."""
    last = visit.memory.handed[-1] if visit.memory.handed else None
    if last is None or last.event != visit.event.id or visit.now - last.at > SPOKEN_OF:
        return None
    of_it = (
        h for h in reversed(visit.memory.handed) if h is last or (h.message and h.message == last.message)
    )
    return next((h for h in of_it if h.report.kind in _MOVES), None)
