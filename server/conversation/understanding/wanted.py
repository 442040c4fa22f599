"""A change of the plan asked for in words and nothing else said: 'skip the quarry', 'just finish'. What else stands in a
message makes it something else: 'she dropped at the quarry', 'drop bag at the quarry' are none."""

from __future__ import annotations

from dataclasses import dataclass
from functools import cache

from server.conversation.understanding.language import Matcher, lexicon, matcher, table
from server.conversation.understanding.meaning import Context
from server.conversation.understanding.sentence import POINT, RUNNER, read_sentence

__all__ = ["Wanted", "change_in", "link_in"]


@dataclass(frozen=True, slots=True)
class Wanted:
    """`points`: where a meeting is left out, several where the name may be any of them; none: the target of `runner` (None:
    nobody named) is given up."""

    points: tuple[str, ...]
    runner: str | None

    @property
    def finish(self) -> bool:
        """Whether it is the target that goes."""
        return not self.points


@cache
def _words() -> dict[str, Matcher]:
    return {k: matcher(v, lexicon().elided) for k, v in table("changes.toml").items()}


def change_in(text: str, ctx: Context) -> Wanted | None:
    """The change that the whole of a message asks for; None for any other message."""
    said, words = read_sentence(text, ctx), _words()
    if said.times or said.lengths or said.amounts:
        return None
    runner = said.runner if said.named and said.runner_score == 100.0 else None
    hers = None if runner is None else runner.id
    # As typed: 'finish' is a place as well.
    name = set() if runner is None else set(lexicon().words(runner.name))
    plain = [RUNNER if w in name else w for w in said.plain]
    if _left(plain, words["finish"], words["fill"]) == 1:
        return Wanted((), hers)
    if said.point is None or not _left(list(said.masked), words["skip"], words["fill"]):
        return None
    return Wanted(said.point.ids, hers)


def link_in(text: str) -> bool | None:
    """Whether the whole of a message asks for a link for followers, or takes it back (False); None for any other message."""
    row, words = lexicon().words(text), _words()
    if _left(row, words["unfollow"], words["fill"]) == 1:
        return False
    return True if _left(row, words["follow"], words["fill"]) == 1 else None


def _left(row: list[str], asks: Matcher, fill: Matcher) -> int:
    """How many phrases ask for it, where all other words are names or mean nothing by themselves; 0 else."""
    asked, i = 0, 0
    while i < len(row):
        n = asks.at(row, i)
        asked += n > 0
        n = n or fill.at(row, i) or (1 if row[i] in (POINT, RUNNER) else 0)
        if not n:
            return 0
        i += n
    return asked
