"""Times that a message itself puts right, and the time of a report that stands in another clause: '7:41, sorry, 7:40' is
7:40, and 'call it 8:10, she is in' is asked for 8:10."""

from __future__ import annotations

import re
from collections.abc import Sequence
from dataclasses import replace
from datetime import datetime, timedelta

from server.conversation.understanding.clauses import CLAUSES_MAX, Clauses, pieces_of
from server.conversation.understanding.language import lexicon
from server.conversation.understanding.meaning import Report, Reported, Several, Understood
from server.conversation.understanding.sentence import PERSON
from server.facts.entry import Kind

_TIME = r"(?<![\w.:])\d{1,2}(?:[:.h][0-5]\d|h)(?![\w:])"
_BETWEEN = 60
"""So many characters stand at most between a time and the one that takes its place (own choice)."""
_PUT_RIGHT = re.compile(
    rf"(?P<first>{_TIME})(?P<between>[^?\n]{{1,{_BETWEEN}}}?)(?P<second>{_TIME})", re.IGNORECASE
)
_LATELY = timedelta(minutes=90)
"""A time said that much before the message, and no earlier, may be of what it reports as of now (own choice)."""
_SEEN = frozenset({Kind.IN, Kind.OUT, Kind.THROUGH})


def put_right(text: str) -> str:
    """The text with a time that it takes back itself replaced by the one said after it."""
    found = _PUT_RIGHT.search(text)
    if found is None:
        return text
    between = found["between"].split()
    if any(len(w) > 1 and w.strip(",.#").isdigit() for w in between):
        return text  # bibs and their times
    before, after = text[: found.start()], text[found.end() :].lstrip()
    if _only_denies(between):
        return f"{before}{found['first']} {after}".strip()
    left = _without_end(between)
    if left == len(between):
        return text
    return f"{before}{found['second']} {' '.join(between[:left])} {after}".strip()


def _only_denies(tokens: Sequence[str]) -> bool:
    """Whether nothing but 'and not' stands between two times: 'at 17:07 and not 17:17' is 17:07."""
    words, read = lexicon(), lexicon().read
    plain = words.words(" ".join(tokens))
    nots = [w for w in plain if words.classes["neg"].word(w) and words.answers.get(w) != "no"]
    rest = [w for w in plain if w not in nots and not (read["joins"].word(w) or read["at"].word(w))]
    return bool(nots) and not [w for w in rest if not read["to_time"].word(w)]


_PHRASE_MAX = 3


def _without_end(tokens: Sequence[str]) -> int:
    """How many words stand before those that take back what was said ('sorry', 'nee, um', 'make that'); all where none."""
    words, read = lexicon(), lexicon().read
    left = end = len(tokens)
    while end and all(read["at"].word(w) or read["to_time"].word(w) for w in words.words(tokens[end - 1])):
        end -= 1
    while end:
        for n in range(min(_PHRASE_MAX, end), 0, -1):
            phrase = words.words(" ".join(tokens[end - n : end]))
            if phrase and read["rather"].begins(phrase) == len(phrase):
                left = end = end - n
                break
        else:
            break
    return left


def at_the_time_said(meant: Understood, text: str, clauses: Clauses) -> Understood:
    """The meaning; a report as of now, in a message that says one time in another clause, is asked for that time."""
    at = _only_time(text, clauses)
    if at is None:
        return meant
    now = clauses.ctx.now

    def timed(one: Report) -> Report:
        as_of_now = one.kind in _SEEN and one.seen_at == now
        return replace(one, seen_at=at, guessed=True) if as_of_now else one

    def of(part: Reported) -> Reported:
        if any(r.seen_at == at for r in part.reports):
            return part
        return Reported(tuple(timed(r) for r in part.reports))

    if isinstance(meant, Several):
        return Several(tuple(of(p) if isinstance(p, Reported) else p for p in meant.parts))
    return of(meant) if isinstance(meant, Reported) else meant


def _only_time(text: str, clauses: Clauses) -> datetime | None:
    """The one moment of a clock, of the last while, that a clause says which is not of the writer or of another."""
    now = clauses.ctx.now
    found = set()
    for piece in pieces_of(text)[:CLAUSES_MAX]:
        said = clauses.of(piece)
        if PERSON in said.masked or said.says("we") or said.asks:
            continue
        found |= {t.at for t in said.times if not t.ahead and not t.bare and now - _LATELY <= t.at < now}
    return found.pop() if len(found) == 1 else None
