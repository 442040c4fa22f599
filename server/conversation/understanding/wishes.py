"""What somebody wants to be told of at once: 'wake me when she is in at the mill'."""

from __future__ import annotations

from datetime import datetime, timedelta
from itertools import pairwise

from server.conversation.understanding.language import lexicon
from server.conversation.understanding.sentence import RUNNER, TIME, Sentence

__all__ = ["before_her", "edge_of", "of_finish"]


def edge_of(said: Sentence) -> str:
    """Whether a wish to be told is for when she is 'in' or 'out' somewhere; '' where it is for a time, for so long before,
    or for nothing that she does."""
    if said.times or said.lengths or not (said.named or said.says("she")):
        return ""
    if said.says("leave"):
        return "out"
    known = said.point is not None or of_finish(said) or said.says("arrive") or said.says("through")
    return "in" if known else ""


def before_her(said: Sentence, now: datetime) -> timedelta | None:
    """How long before she is in somewhere somebody wants to be woken: '20 min before she gets here'; None for any other."""
    words = lexicon().read["before_her"]
    # 'Before' behind a length reads like 'ago'.
    named = (TIME, RUNNER) in pairwise(said.masked)
    if not (named or words.has(said.plain) or words.has(said.masked)):
        return None
    ago = next((now - t.at for t in said.times if t.ago), None)
    return ago or next((x.length for x in said.lengths if not said.times), None)


def of_finish(said: Sentence) -> bool:
    """Whether it is for the finish: named, or 'when she finishes'."""
    return said.finish or (said.point is None and said.says("finish"))
