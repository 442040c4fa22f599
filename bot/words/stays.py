"""Both ends of one stop in one sentence: 'came in at 3:05 and left at 3:10', 'Lathe 1458-1506'."""

from __future__ import annotations

import re
from dataclasses import replace

from bot.words import asking, reporting
from bot.words.in_or_out import STRONG_IN
from bot.words.meaning import AskBack, Context, Report, Reported
from bot.words.placing import placed
from bot.words.sentence import Sentence
from bot.words.times import find_time
from server.facts.entry import Kind

_LEFT_AGAIN = re.compile(r"\b(?:and |then )*(?=(?:she )?(?:left|out|off|gone|went out|leaving|departed)\b)")


def in_and_out(said: Sentence, ctx: Context, corrects: bool) -> Reported | None:
    """'came in at five past three and left at ten past': two reports of one stop, each with its own time."""
    if said.runner is None or asking.is_question(said.text):
        return None
    for m in _LEFT_AGAIN.finditer(said.text):
        first, second = said.text[: m.start()], said.text[m.end() :]
        came, went = (find_time(part, ctx.now, ctx.time_zone) for part in (first, second))
        if (
            came is None
            or went is None
            or not STRONG_IN.search(came.rest)
            or not reporting.says_out(went.rest)
        ):
            continue
        arrived = Report(Kind.IN, came.at, said.runner.id, words=said.words, corrects=corrects)
        placed_in = placed(arrived, said, said.runner, ctx)
        if isinstance(placed_in, Report):
            return Reported((placed_in, replace(placed_in, kind=Kind.OUT, seen_at=went.at)))
    return None


_SPAN = re.compile(r"^PT (?:at )?(\d{1,2}:?\d\d) (?:to |until |out )?(\d{1,2}:?\d\d)$")


def two_times(said: Sentence, ctx: Context, corrects: bool) -> Reported | None:
    """'Lathe 1458-1506': came and went."""
    m = _SPAN.match(said.text)
    if m is None or said.runner is None:
        return None
    came, went = (find_time(f"at {t}", ctx.now, ctx.time_zone) for t in m.groups())
    if came is None or went is None or went.at < came.at:
        return None
    arrived = placed(
        Report(Kind.IN, came.at, said.runner.id, words=said.words, corrects=corrects), said, said.runner, ctx
    )
    if isinstance(arrived, AskBack):
        return None
    return Reported((arrived, replace(arrived, kind=Kind.OUT, seen_at=went.at)))
