"""Her own words for bad moments, and what she wants to hear and not to hear: for herself and for those who meet her."""

from __future__ import annotations

from collections.abc import Iterator

from server.paper.document import Block, Head, Lines, Look
from server.paper.writing import Writing


def bad_moments(w: Writing, runner: str) -> Iterator[Block]:
    """Nothing where the file says nothing."""
    r = w.event.runner(runner)
    if not (r.prompts or r.wants_to_hear or r.not_to_hear):
        return
    yield Head(w.s("paper-head-bad-moments", runner=r.name))
    yield Lines(tuple(w.s("paper-prompt", when=p.when, words=p.words) for p in r.prompts), Look.FRAME)
    yield Lines(
        (
            w.s("paper-wants-to-hear", words="; ".join(r.wants_to_hear)) if r.wants_to_hear else "",
            w.s("paper-not-to-hear", words="; ".join(r.not_to_hear)) if r.not_to_hear else "",
        )
    )
