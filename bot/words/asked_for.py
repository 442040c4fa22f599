"""What the runner asks to have told to her crew: 'tell Ola to bring my jacket' is a word of hers, no question."""

from __future__ import annotations

import re

from bot.words.meaning import Context, Question, Report, Reported
from bot.words.sentence import Sentence
from bot.words.tidy import fold
from server.event.model import PartKind
from server.facts.entry import Kind

_TELL = re.compile(
    r"^(?:please |can you |could you |and )*(?:tell|ask|let) (?!me\b|us\b|she\b)(?:my |the )?\w+ (?:know )?"
    r"(?:to|that|i|we|about|if|for)\b"
)
_SAG = re.compile(
    r"^(?:bitte |kannst du )*(?:sagt?|sage|richtet?) (?:bitte )?(?!mir\b|uns\b)(?:der |dem |den |meiner )?\w+(?: bitte)?,? "
    r"(?:aus,? )?(?:sie|er|dass|ich|wir|ob)\b"
)


_THINGS = (None, Question.FOOD, Question.BRING, Question.TAKE_BACK, Question.MEETING, Question.CARDS)
_WISH = re.compile(
    r"^(?:please |will |just |really |also |am going to |going to |i )*"
    r"(?:need|want|would like|would love|could do with|fancy) "
    r"(?!to (?:know|see|ask)\b)"
)
_WUNSCH = re.compile(
    r"^(?:ich )?(?:bitte )?(?:brauch|brauche|will|moechte|haette gerne?|nehme|nehm|wuensche mir) "
    r"(?!ich\b|wir\b|man\b|sie\b|wissen\b)"
)


def by_her(said: Sentence, ctx: Context) -> Reported | None:
    """Her words for her crew, kept as how she is, so that the next who meet her read them; None of anybody else."""
    if PartKind.RUNNER not in ctx.parts or said.runner is None or said.words.rstrip().endswith("?"):
        return None
    raw = fold(said.words.lower()).strip()
    if not any(
        says.search(t) for says, t in ((_TELL, said.plain), (_SAG, raw), (_WISH, said.plain), (_WUNSCH, raw))
    ):
        return None
    return Reported((Report(Kind.HOW_SHE_IS, ctx.now, said.runner.id, words=said.words),))
