"""After the race: what somebody writes under the numbers of the three questions is kept for the page afterwards."""

from __future__ import annotations

import re
from collections.abc import Sequence

from server.conversation import stand_in
from server.conversation.values import Reply
from server.conversation.visit import Visit
from server.facts.entry import LOOKED_BACK, Kind

__all__ = ["answers", "keep"]

_NUMBERED = re.compile(r"\s*([123])\s*[.:)\-–]?\s+(?=\S)")


def answers(visit: Visit, text: str) -> Sequence[tuple[str, str]]:
    """Question and words of each answer, where this person was asked and wrote nothing else; else none."""
    if not visit.event.asked_back:
        return ()
    found: list[tuple[str, str]] = []
    for line in text.strip().splitlines():
        number = _NUMBERED.match(line)
        if number is not None:
            found.append((LOOKED_BACK[int(number[1]) - 1], line[number.end() :].strip()))
        elif found and line.strip():
            found[-1] = (found[-1][0], f"{found[-1][1]} {line.strip()}")
        elif line.strip():
            return ()
    return found


async def keep(visit: Visit, given: Sequence[tuple[str, str]]) -> Reply:
    """Keep them, and say for which questions; any may be written again, and counts besides."""
    noted = [
        await stand_in.keep(visit, Kind.LOOKED_BACK, words, runner=visit.event.asked_back, edge=question)
        for question, words in given
    ]
    kept = visit.say.all(dict.fromkeys(visit.s(f"look-back-{question}") for question, _ in given))
    return visit.reply(visit.s("look-back-kept", kept=kept), visit.undo_button(noted[-1].entry))
