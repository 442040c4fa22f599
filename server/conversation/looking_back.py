"""After the race: what somebody writes under the numbers of the three questions is kept for the page afterwards."""

from __future__ import annotations

import re
from collections.abc import Sequence

from server.conversation import stand_in
from server.conversation.telling.say import lines
from server.conversation.values import Reply
from server.conversation.visit import Visit
from server.facts.entry import LOOKED_BACK, Kind

__all__ = ["answers", "keep"]

_NUMBERED = re.compile(r"\s*([123])\s*[.:)\-–]?\s+(?=\S)")
_ON_ONE_LINE = re.compile(r"(?:[,;.]\s*|\s)(?=[23]\s*[:)]\s+\S)|[,;.]\s*(?=[23]\s*[.\-–]\s+\S)")
"""Where the next number begins on the line of the one before."""


def answers(visit: Visit, text: str, *, alarm: bool) -> Sequence[tuple[str, str]]:
    """Question and words of each answer, where this person was asked and wrote nothing else; else none. In words that sound
    like a call for help they are answers only where each number stands there once, in its order: who needs help now counts
    no questions."""
    if not visit.event.asked_back:
        return ()
    found = _numbered(_apart(text))
    whole = [LOOKED_BACK.index(question) for question, _ in found]
    return () if alarm and (len(whole) < 2 or whole != sorted(set(whole))) else found


def _apart(text: str) -> str:
    """The text with each number on a line of its own."""
    lines = text.strip().splitlines()
    return "\n".join(_ON_ONE_LINE.sub("\n", line) if _NUMBERED.match(line) else line for line in lines)


def _numbered(text: str) -> list[tuple[str, str]]:
    found: list[tuple[str, str]] = []
    for line in text.splitlines():
        number = _NUMBERED.match(line)
        if number is not None:
            found.append((LOOKED_BACK[int(number[1]) - 1], line[number.end() :].strip()))
        elif found and line.strip():
            found[-1] = (found[-1][0], f"{found[-1][1]} {line.strip()}")
        elif line.strip():
            return []
    return found


async def keep(visit: Visit, given: Sequence[tuple[str, str]], *, alarm: bool) -> Reply:
    """Keep them, and say for which questions; any may be written again, and counts besides. Whom to call comes last where
    they sound like a call for help."""
    noted = [
        await stand_in.keep(visit, Kind.LOOKED_BACK, words, runner=visit.event.asked_back, edge=question)
        for question, words in given
    ]
    kept = visit.say.all(dict.fromkeys(visit.s(f"look-back-{question}") for question, _ in given))
    doubt = visit.s("in-doubt", emergency=visit.event.emergency_number) if alarm else ""
    text = lines(visit.s("look-back-kept", kept=kept), doubt)
    return visit.reply(text, visit.undo_button(noted[-1].entry))
