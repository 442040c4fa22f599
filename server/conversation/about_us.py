"""What is asked of ourselves: what a word of ours means; that a time was wrong, or a message of no use."""

from __future__ import annotations

from server.conversation.telling import answers
from server.conversation.telling.say import lines
from server.conversation.understanding import Asked, says
from server.conversation.values import Reply
from server.conversation.view import Refused
from server.conversation.visit import Visit

__all__ = ["complaint", "words"]

TERMS = (
    "window", "estimate", "late", "overdue", "held", "unconfirmed", "with-us", "last-known", "cut-off", "sweep",
    "stand-down", "leave-by", "resting", "goals", "out-of-race", "clock",
)  # fmt: skip
"""Words of ours that are asked about; `term_…` of the lexicon is how they are named, `term-…` what they mean."""
FIRST = ("window", "estimate", "unconfirmed", "late", "overdue")
"""Those told where none of them is named."""


async def words(visit: Visit, asked: Asked) -> Reply:
    """What the words that are named mean; of others, the most asked for."""
    named = [t for t in TERMS if says(asked.words, f"term_{t.replace('-', '_')}")]
    told = (visit.s(f"term-{t}") for t in named[:3] or FIRST)
    return visit.reply(lines("" if named else visit.s("term-none"), *told))


async def complaint(visit: Visit, asked: Asked) -> Reply:
    """Sorry; what holds now of their runner; how a time is put right, and how fewer messages come."""
    her = visit.runner(asked.runner) or visit.context().runner(None)
    now = ""
    if her is not None:
        try:
            told = visit.view.forecast(visit.event.id, her.id)
        except Refused:
            pass  # a part that may not see where she is reads the rest
        else:
            p = answers.next_point(told)
            ahead = answers.point_line(visit.say, told.runner_name, p) if p and p.window else ""
            now = lines(answers.say_heard(visit.say, told.fresh, told.runner_name).split("\n")[0], ahead)
    place = visit.some_place()
    return visit.reply(lines(visit.s("complaint-sorry"), now, visit.s("complaint-right", place=place)))
