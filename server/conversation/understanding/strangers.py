"""What is said of a bib that is nobody's here: never a report of hers; asked where hers is a slip away, and what the same
message says of her is kept beside it."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import replace

from server.conversation.understanding import gates, lists, reports
from server.conversation.understanding.clauses import Clauses, clauses_of
from server.conversation.understanding.meaning import (
    AskBack,
    Choice,
    Kept,
    Need,
    Reported,
    Several,
    Understood,
)
from server.conversation.understanding.sentence import NUMBER, RUNNER, Sentence

_MOVES = ("through", "out", "in")


def of_a_strange_bib(
    text: str, clauses: Clauses, read: Callable[[str, Sentence, Clauses], Understood]
) -> Understood | None:
    """'241 went through', '88 is through, he says he passed her on the moor'; None where no such bib is said to go anywhere.
    `read` is how the rest of the message is read where it names her itself."""
    parts = [clauses.of(c) for c, _ in clauses_of(text)]
    strange = next(((s, bib) for s in parts if (bib := gates.strange_bib(s))), None)
    if strange is None:
        return None
    said, bib = strange
    rest = [s for s in parts if s is not said]
    of_her = any(s.named or s.says("she") for s in rest)
    kept = Kept(text, clauses.ctx.now, None, of_her=of_her)
    near = _one_slip_away(said, bib, clauses)
    if not of_her and (near is not None or not rest):
        return near
    told = clauses.of(" ".join(s.written for s in rest)) if any(s.named for s in rest) else None
    if told is None or gates.told_by_others(told):
        return kept
    own = read(told.written, told, clauses)
    return (
        Several((own, replace(kept, words=said.written, of_her=False))) if isinstance(own, Reported) else kept
    )


def _one_slip_away(said: Sentence, bib: str, clauses: Clauses) -> AskBack | None:
    """The question whether a runner of these was meant, whose bib is one slip away."""
    intent = next((i for i in _MOVES if any(said.says(c) for c in gates.MOVES[i])), None)
    choices = []
    for one in lists.near_bibs(bib, clauses.ctx.runners) if intent else ():
        masked = tuple(RUNNER if w == NUMBER else w for w in said.masked)
        meant = replace(said, runner=one, named=True, runners=(one.id,), masked=masked)
        found = reports.report(intent or "", meant, clauses.ctx)
        if isinstance(found, Reported | AskBack):
            choices.append(Choice(one.id, found))
    return AskBack(Need.BIB, tuple(choices), bib) if choices else None
