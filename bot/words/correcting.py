"""Which of one's own reports is taken back or corrected: 'undo through Bru', 'Bru was 7:45 not 17:16'."""

from __future__ import annotations

import re

from bot.words import asking, names
from bot.words.meaning import Context, Report, Reported, Undo
from bot.words.sentence import Sentence, finish_of
from bot.words.times import find_time
from server.facts.entry import Kind

_KINDS = {
    "in": Kind.IN, "arrived": Kind.IN, "arrival": Kind.IN, "out": Kind.OUT, "left": Kind.OUT,
    "through": Kind.THROUGH, "past": Kind.THROUGH,
}  # fmt: skip
_WHICH = r"(?:(?P<kind>in|arrived|arrival|out|left|through|past)\b ?)?(?:(?:at|of|from|report|time|the) )*(?:PT|FINISH)"
_SORRY = r"^(?:sorry |please |no |oops |wait )*(?:she )?"
_UNDO_AT = re.compile(
    _SORRY
    + r"(?:undo|scrap|delete|remove|cancel|take back) (?:(?:the|my|that|last|report|for) )*"
    + _WHICH
    + r"(?: please)?$"
)
_WAS = re.compile(_SORRY + _WHICH + r" (?:time )?(?:was|is|should be|should have been) (?P<time>.+)$")
_NOT = re.compile(r"\b(?:and |so )?not (?:at )?\d.*$")


def undo_at(said: Sentence) -> Undo | None:
    """'undo in at Mill': the writer's last report there, not whatever came last; None for any other sentence."""
    m = _UNDO_AT.search(said.text)
    points = _points(said)
    if m is None or not points:
        return None
    return Undo(points, _KINDS.get(m["kind"] or ""), said.runner.id if said.named and said.runner else None)


def _points(said: Sentence) -> tuple[str, ...]:
    if said.point is not None:
        return said.point.ids
    finish = finish_of(said.runner) if said.finish and said.runner else None
    return (finish,) if finish else ()


def was_another_time(said: Sentence, ctx: Context) -> Reported | None:
    """'Mill was 7:45 not 17:16', 'in at Mill was 7:45': the time of the writer's own report there; else None."""
    m = _WAS.search(said.text)
    if m is None or said.runner is None or asking.is_question(said.text):
        return None
    wrong = _NOT.search(m["time"])
    kind = _KINDS.get(m["kind"] or "")
    if wrong is None and kind is None:
        return None
    time = find_time(_NOT.sub("", m["time"]), ctx.now, ctx.time_zone)
    if time is None or time.rest.strip():
        return None
    known = (
        names.which_pass(said.point, said.plain, said.runner, ahead=False)
        if said.point
        else finish_of(said.runner)
    )
    if known is None:
        return None
    one = Report(
        kind or Kind.IN,
        time.at,
        said.runner.id,
        known,
        words=said.words,
        guessed=kind is None or time.unsure,
        corrects=True,
        own_there=True,
    )
    return Reported((one,))
