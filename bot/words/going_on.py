"""She has started, she goes on, she will go on: that her race begins, or is not over."""

from __future__ import annotations

import re
from dataclasses import replace

from bot.words.meaning import Report, place_of
from bot.words.sentence import Sentence
from server.facts.entry import Kind

_STARTED = re.compile(
    r"^(?:(?P<who>she|her|[\w-]+) )?(?:is |has |just |now |finally |ok |well |safely )*started(?: (?:now|ok|well|fine|"
    r"running|off|the race|her race|on time))*$"
)
_GOES_ON = re.compile(
    r"^(?:she |is |now |but |still |ok )*(?:goes|going|carries|carrying|keeps|keeping) (?:on|going)"
    r"(?: (?:now|again|anyway|after all|running|walking))*$|^(?:she )?(?:is )?continu(?:es|ing)(?: now| anyway)*$"
)
_WILL_GO_ON = re.compile(
    r"^(?:she |now |but |says |that )*(?:will|is going to|wants to|is happy to|has decided to) (?:still )?"
    r"(?:go on|carry on|keep going|continue|keep on)(?: (?:now|anyway|after all|running|walking|a bit|in a bit|soon))*$"
)
_NOBODY_ELSE = frozenset({None, "she", "her", "is", "has", "just", "now", "finally"})
_OVER = frozenset({"retired", "retired, in hand"})


def going_on(base: Report, said: Sentence, text: str) -> Report | None:
    """Out of the start, moving again, or what she means to do; None where it says none of these. That she will go on says
    not yet that she does, but that she has retired is then asked about."""
    runner = said.runner
    if runner is None:
        return None
    # 'Start' is also the name of a point: looked for in the words with names as they stand.
    started = _STARTED.search(said.plain)
    if started is not None and (said.named or started["who"] in _NOBODY_ELSE):
        points = place_of(runner).points
        fresh = runner.reached is None or runner.reached == points[0].id
        return replace(base, kind=Kind.OUT, point=points[0].id) if fresh else _again(base)
    if _GOES_ON.search(text):
        return _again(base)
    if _WILL_GO_ON.search(text):
        return _again(base) if runner.going in _OVER else replace(base, kind=Kind.HOW_SHE_IS)
    return None


def _again(base: Report) -> Report:
    return replace(base, kind=Kind.MOVING_AGAIN)
