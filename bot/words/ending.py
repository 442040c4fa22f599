"""Her race over, plainly or perhaps: words that may mean quite something else are asked back."""

from __future__ import annotations

import re
from dataclasses import replace

from bot.words import reporting
from bot.words.meaning import AskBack, Choice, Context, Need, Report, Reported, Unclear
from bot.words.placing import expected, placed
from bot.words.sentence import Sentence
from server.event.model import PartKind
from server.facts.entry import Kind, Retired

MAY_STOP = re.compile(
    r"\b(?:wants? to|want to|thinking (?:about|of)|might|may|talking about|considering) "
    r"(?:stop|drop|quit|pull|giv|retir|pack)\w*"
)

NOT_OVER = re.compile(
    r"\b(?:not|never|nowhere near) (?:been |going to |yet |be )?"
    r"(?:retir|quit|drop|stopp|giv|pull|dnf|withdr|out of the race|bail|pack)\w*"
)


_ENDS_IT = re.compile(
    r"\b(?:out of the race|(?:her )?race is over|retired|retires|dnf|withdrawn|withdrew|dropped out|"
    r"thrown in the towel|threw in the towel|stopped for good)\b(?! (?:to|from her|into|for the)\b)"
)
# 'given up eating', 'packed it in the car': the end of her race only where nothing of the kind follows.
_MAY_END_IT = re.compile(
    r"\b(?:quits?|(?:given|gave|gives) up|bailed|(?:binned|bins) it|(?:packed|jacked) it in|called it (?:a day|quits)|"
    r"done for the (?:day|night))(?= (?:at (?:PT|FINISH)|here|now|today|there|$)|$)"
)
_BEFORE_IT = frozenset(
    [
        "she",
        "her",
        "is",
        "has",
        "had",
        "have",
        "been",
        "just",
        "now",
        "sadly",
        "unfortunately",
        "sorry",
        "ok",
        "well",
        "so",
        "yes",
        "afraid",
        "that",
        "officially",
        "definitely",
        "i",
        "am",
        "bad",
        "news",
        "PT",
        "at",
        "update",
        "hi",
        "all",
        "and",
        "says",
        "it",
        "has",
    ]
)


# 'quit smiling', 'given up on gels': what is over is something else, most likely.
_OF_SOMETHING = re.compile(r"\b(?:quits?|(?:given|gave|gives) up) (?:on\b|\w+ing\b|the\b|her\b)")


def _ended_word(text: str, *, by_herself: bool) -> str:
    """'' where a sentence that `says_ended` says it of her and of nothing else; else its words that have to be asked about.
    `by_herself`: the runner writes, whose 'I' it is."""
    other = _OF_SOMETHING.search(text)
    if other is not None:
        return other[0]
    plain = _ENDS_IT.search(text) or _MAY_END_IT.search(text)
    if plain is not None:
        before = text[: plain.start()].replace(";", " ").split()
        hers = by_herself or "i" not in before or "she" in before
        if hers and all(word in _BEFORE_IT for word in before):
            return ""
    return reporting.ended_words(text)


def ended(base: Report, said: Sentence, text: str, ctx: Context) -> Report | AskBack | None:
    """Her race over, plainly or perhaps. Not for crew's own words, nor for a stop of a stated length. What is plain counts
    at once, whether or not it says how."""
    retired = replace(base, kind=Kind.RETIRED)
    if reporting.says_ended(text):
        how = reporting.how_ended(text)
        if how is not None and not _OF_SOMETHING.search(text):
            return replace(retired, how=how)
        word = _ended_word(text, by_herself=PartKind.RUNNER in ctx.parts)
        return replace(retired, how=Retired.NOT_SAID) if not word else _ask_over(retired, said, word, ctx)
    word = reporting.dropped_word(text) or ""
    if not word or base.amount is not None or reporting.kind_in(text) is not None:
        return None
    if word in ("finished", "done") and not re.search(r"\bshe (?:is |has )?done\b|^done$", text):
        return None
    if re.search(rf"\b{word} (?:in|up|on|away)\b", text):
        return None
    return _ask_over(retired, said, word, ctx)


def _ask_over(retired: Report, said: Sentence, word: str, ctx: Context) -> AskBack:
    """Whether her race is over: said to be, it counts, and how it ended is asked after."""
    over = replace(retired, how=Retired.NOT_SAID)
    if said.runner is not None:
        found = placed(over, said, said.runner, ctx)
        over = found if isinstance(found, Report) else over
    return AskBack(
        Need.DROPPED, (Choice("over", Reported((over,))), Choice("else", Unclear(said.words))), word
    )


def ask_out(base: Report, said: Sentence) -> AskBack:
    """'Out' alone: out of a point and going on, or out of the race?"""
    left = replace(base, kind=Kind.OUT)
    runner = said.runner
    point = None
    if runner is not None:
        point = expected(runner, Kind.OUT, None)
        left = replace(left, point=point)
    # Her race ends where she is known to be: whoever fetches her must not be sent to look for the place.
    here = runner.at if runner is not None else None
    over = replace(base, kind=Kind.RETIRED, point=base.point or here, how=Retired.NOT_SAID)
    return AskBack(
        Need.OUT, (Choice("left", Reported((left,))), Choice("over", Reported((over,)))), "out", point
    )
