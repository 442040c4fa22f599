"""Her race over, plainly or perhaps: words that may mean quite something else are asked back."""

from __future__ import annotations

import re
from dataclasses import replace

from bot.words import reporting
from bot.words.meaning import AskBack, Choice, Context, Need, Report, Reported, Unclear
from bot.words.placing import expected, placed
from bot.words.sentence import Sentence
from server.facts.entry import Kind, Retired

MAY_STOP = re.compile(
    r"\b(?:wants? to|want to|thinking (?:about|of)|might|may|talking about|considering) "
    r"(?:stop|drop|quit|pull|giv|retir|pack)\w*"
)

NOT_OVER = re.compile(
    r"\b(?:not|never|nowhere near) (?:been |going to |yet |be )?"
    r"(?:retir|quit|drop|stopp|giv|pull|dnf|withdr|out of the race|bail|pack)\w*"
)

_ENDED_HOW = (Retired.OWN_CHOICE, Retired.TIMED_OUT, Retired.WITHDRAWN)


def ended(base: Report, said: Sentence, text: str, ctx: Context) -> Report | AskBack | None:
    """Her race over, plainly or perhaps. Not for crew's own words, nor for a stop of a stated length."""
    retired = replace(base, kind=Kind.RETIRED)
    if reporting.says_ended(text):
        how = reporting.how_ended(text)
        return replace(retired, how=how) if how is not None else _ask_how(retired, said, ctx)
    word = reporting.dropped_word(text)
    if word is None or base.amount is not None or reporting.kind_in(text) is not None:
        return None
    if word in ("finished", "done") and not re.search(r"\bshe (?:is |has )?done\b|^done$", text):
        return None
    if re.search(rf"\b{word} (?:in|up|on|away)\b", text):
        return None
    over = _ask_how(retired, said, ctx)
    return AskBack(Need.DROPPED, (Choice("over", over), Choice("else", Unclear(said.words))), word)


def _ask_how(retired: Report, said: Sentence, ctx: Context) -> AskBack:
    known = retired
    if said.runner is not None:
        found = placed(retired, said, said.runner, ctx)
        known = found if isinstance(found, Report) else retired
    return AskBack(
        Need.HOW, tuple(Choice(h.value, Reported((replace(known, how=h),))) for h in _ENDED_HOW), said.words
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
    retired = replace(base, kind=Kind.RETIRED, point=base.point or here)
    over = AskBack(Need.HOW, tuple(Choice(h.value, Reported((replace(retired, how=h),))) for h in _ENDED_HOW))
    return AskBack(Need.OUT, (Choice("left", Reported((left,))), Choice("over", over)), "out", point)
