"""Her light left behind, and who left a point with whom: words that sound like something else."""

from __future__ import annotations

from collections.abc import Sequence

from server.conversation.understanding import gates, names, reports
from server.conversation.understanding.clauses import pieces_of
from server.conversation.understanding.language import lexicon
from server.conversation.understanding.meaning import (
    AskBack,
    Choice,
    Context,
    Need,
    Report,
    Reported,
    Request,
    Requested,
    Understood,
)
from server.conversation.understanding.sentence import PERSON, POINT, Sentence
from server.event.model import PartKind
from server.facts.entry import Kind

__all__ = ["left_with", "light_left", "still_here"]

_ON_FOOT = frozenset({PartKind.RUNNER, PartKind.PACER})


def light_left(said: Sentence) -> Requested | None:
    """'She left without her torch', 'her lamp is on the back seat': kit that she needs once it is dark is not with her."""
    if said.asks or said.written.rstrip().endswith("?") or not said.reads("light"):
        return None
    elsewhere = said.point is not None or bool(said.times)  # which tells where she was seen besides
    if said.says("bring") or elsewhere or not said.reads("not_with_her"):
        return None
    words = lexicon()
    if any(words.read["light"].has(w) and words.read["with_her"].has(w) for w in _pieces(said)):
        return None  # 'gave her the torch, forgot the gels'
    runner = said.runner.id if said.runner is not None else None
    return Requested(Request.LIGHT_LEFT, said.written, runner=runner)


def _pieces(said: Sentence) -> list[Sequence[str]]:
    return [lexicon().words(piece) for piece in pieces_of(said.written)]


def left_with(said: Sentence, ctx: Context) -> Understood | None:
    """'Left the quarry with Tomas', of crew: they themselves, by car; else asked whether they did, or she with her pacer."""
    masked = list(said.masked)
    if PERSON not in masked or POINT not in masked or said.person is None or PERSON in masked[:2]:
        return None
    if (
        said.named
        or said.says("she")
        or said.asks
        or ctx.parts & _ON_FOOT
        or said.point is None
        or not said.says("leave")
    ):
        return None
    place = names.which_pass(said.point, said.masked, said.runner, ahead=False) if said.runner else None
    if said.runner is None or place is None:
        return None
    when = said.time.at if said.time is not None else ctx.now
    own = Reported((Report(Kind.CREW_LEFT, when, said.runner.id, place, words=said.written),))
    if said.says("car") or said.reads("by_car") or said.says("i") or said.says("we"):
        return own
    hers = reports.report("out", said, ctx)
    if not isinstance(hers, Reported):
        return None
    return AskBack(Need.WHO, (Choice("crew", own), Choice("her", hers)), "", place)


def still_here(said: Sentence, ctx: Context) -> Understood | None:
    """'Shes still here', 'not gone yet', and no more, of a runner who is at a point: that she is there yet, and no more than
    that."""
    at = said.runner.at if said.runner is not None else None
    if said.runner is None or at is None or len(said.masked) > _FEW or said.asks:
        return None
    if (
        not (said.reads("still_there") or gates.not_gone(said))
        or said.says("feel")
        or said.says("withus")
        or said.times
        or ctx.parts & _ON_FOOT
    ):
        return None
    return Reported((Report(Kind.HOW_SHE_IS, ctx.now, said.runner.id, at, words=said.written),))


_FEW = 4
"""So many words at most say nothing besides (own choice)."""
