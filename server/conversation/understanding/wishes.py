"""What somebody wants to be told of at once: 'wake me when she is in at the mill'."""

from __future__ import annotations

from server.conversation.understanding.sentence import Sentence

__all__ = ["edge_of", "of_finish"]


def edge_of(said: Sentence) -> str:
    """Whether a wish to be told is for when she is 'in' or 'out' somewhere; '' where it is for a time, for so long before,
    or for nothing that she does."""
    if said.times or said.lengths or not (said.named or said.says("she")):
        return ""
    if said.says("leave"):
        return "out"
    known = said.point is not None or of_finish(said) or said.says("arrive") or said.says("through")
    return "in" if known else ""


def of_finish(said: Sentence) -> bool:
    """Whether it is for the finish: named, or 'when she finishes'."""
    return said.finish or (said.point is None and said.says("finish"))
