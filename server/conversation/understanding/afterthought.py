"""Times that a message itself puts right, and the time of a report that stands in another clause: '7:41, sorry, 7:40' is
7:40, and 'call it 8:10, she is in' is asked for 8:10.

And the time of an earlier report that words put right, with no word of a time beside it: '43 she went, not 41', 'the 19:20
was somebody else's', 'in at 11.22 actually'. Only the digits are read here; which report they are of, whoever has the
reports finds out (server/conversation/corrections.py)."""

from __future__ import annotations

import re
from collections.abc import Sequence
from dataclasses import dataclass, replace
from datetime import datetime, timedelta
from zoneinfo import ZoneInfo

from server.conversation.understanding import gates, names
from server.conversation.understanding.clauses import CLAUSES_MAX, Clauses, pieces_of
from server.conversation.understanding.features import question_form
from server.conversation.understanding.language import lexicon
from server.conversation.understanding.meaning import Context, Report, Reported, Several, Understood
from server.conversation.understanding.sentence import PERSON, Sentence, finish_of, read_sentence
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


# -- a time of an earlier report ------------------------------------------------------------------------------

_APART = 6
"""So many words stand at most between a time and the one in whose place it is (own choice)."""
_WRITTEN = re.compile(r"(\d{1,2}):(\d{2})|(\d{2})(\d{2})|(\d{2})")
_BEFORE = ("at", "to_time")


@dataclass(frozen=True, slots=True)
class Digits:
    """A time as it was written: `hour` None where only minutes were."""

    hour: int | None
    minute: int

    def is_of(self, at: datetime, zone: str) -> bool:
        """Whether a moment is that time on the race's clock; an hour up to 12 may be of the afternoon."""
        local = at.astimezone(ZoneInfo(zone))
        hours = {self.hour, (self.hour + 12) % 24 if self.hour is not None and self.hour <= 12 else self.hour}
        return local.minute == self.minute and (self.hour is None or local.hour in hours)

    def nearest(self, to: datetime, zone: str) -> datetime:
        """The moment of that time which is nearest to another."""
        local = to.astimezone(ZoneInfo(zone))
        hours = list(range(24)) if self.hour is None else [self.hour]
        if self.hour is not None and self.hour <= 12:
            hours.append((self.hour + 12) % 24)
        days = (local + timedelta(days=d) for d in (-1, 0, 1))
        ways = (d.replace(hour=h, minute=self.minute, second=0, microsecond=0) for d in days for h in hours)
        return min(ways, key=lambda x: abs(x - local)).astimezone(to.tzinfo)


@dataclass(frozen=True, slots=True)
class PutRight:
    """`right` in the place of `wrong` (None: of the report that the place and the kind say), at one of `points` and of one
    of `kinds`, as far as the words say so; `runner` where she was named."""

    right: Digits
    wrong: Digits | None
    points: tuple[str, ...]
    kinds: frozenset[Kind]
    runner: str | None


def puts_right(text: str, ctx: Context) -> PutRight | None:
    """The time that words put right; None for words that put none right."""
    if not any(c.isdigit() for c in text):
        return None
    said = read_sentence(text, ctx)
    pair = _not_but(said.plain) or _wrong_one(text, ctx) or _alone(said)
    if pair is None or said.asks or question_form(said) or gates.not_her(said):
        return None
    right, wrong = pair
    if right == wrong:
        return None
    kinds = _kinds(said)
    if wrong is None and not kinds:
        return None
    return PutRight(
        right, wrong, _points(said, ctx), kinds, said.runner.id if said.named and said.runner else None
    )


def _digits(words: Sequence[str], i: int) -> Digits | None:
    """The time that a word is, if it is one and counts nothing ('12 gels')."""
    found = _WRITTEN.fullmatch(words[i])
    if found is None:
        return None
    hour, minute = next(
        (h, m) for h, m in ((found[1], found[2]), (found[3], found[4]), (None, found[5])) if m
    )
    if int(minute) > 59 or (hour is not None and int(hour) > 24):
        return None
    if hour is None and not _may_end(words, i + 1):
        return None
    return Digits(int(hour) % 24 if hour is not None else None, int(minute))


def _may_end(words: Sequence[str], i: int) -> bool:
    """Whether what stands behind bare minutes leaves them minutes: nothing, or somebody, a move, a word that denies."""
    if i >= len(words):
        return True
    classes, read = lexicon().classes, lexicon().read
    kinds = ("she", "neg", "leave", "arrive", "through", "when", "i", "we")
    own = ("joins", "in_place_of", "trail", "for_her")
    return any(classes[k].word(words[i]) for k in kinds) or any(read[k].at(words, i) for k in own)


def _denied(words: Sequence[str], i: int) -> int | None:
    """Where the words begin that deny the time at `i` ('not', 'instead of'); None where nothing does."""
    read, neg = lexicon().read, lexicon().classes["neg"]
    k = i
    while k and (any(read[b].word(words[k - 1]) for b in _BEFORE) or words[k - 1] in lexicon().names["the"]):
        k -= 1
    if k and neg.word(words[k - 1]) and lexicon().answers.get(words[k - 1]) != "no":
        return k - 1
    return next((k - n for n in (1, 2, 3) if n <= k and read["in_place_of"].at(words[:k], k - n) == n), None)


def _not_but(words: Sequence[str]) -> tuple[Digits, Digits | None] | None:
    """'43 she went not 41', 'not 41 but 43': the time that holds and the one that does not."""
    found = [(i, d) for i in range(len(words)) if (d := _digits(words, i)) is not None]
    for n, (i, wrong) in enumerate(found):
        start = _denied(words, i)
        if start is None:
            continue
        before = found[n - 1] if n else None
        if before is not None and start - before[0] <= _APART:
            return before[1], wrong
        after = found[n + 1] if n + 1 < len(found) else None
        if before is None and after is not None and after[0] - i <= _APART:
            return after[1], wrong
    return None


def _wrong_one(text: str, ctx: Context) -> tuple[Digits, Digits | None] | None:
    """'In at 19:13, the 19:20 was somebody else's': of two times the one that is said to be wrong, and the other."""
    wrong = right = None
    for piece in pieces_of(text):
        said = read_sentence(piece, ctx)
        times = [d for i in range(len(said.plain)) if (d := _digits(said.plain, i)) and d.hour is not None]
        if len(times) > 1:
            return None
        if times and said.reads("wrong_time"):
            wrong = times[0] if wrong is None else wrong
        elif times:
            right = times[0] if right is None else right
    return (right, wrong) if right is not None and wrong is not None else None


def _alone(said: Sentence) -> tuple[Digits, Digits | None] | None:
    """'In at 11.22 actually': the one time there is, where the words say that it is put right."""
    times = [d for i in range(len(said.plain)) if (d := _digits(said.plain, i)) and d.hour is not None]
    return (times[0], None) if len(times) == 1 and said.reads("puts_right") else None


def _kinds(said: Sentence) -> frozenset[Kind]:
    short = {lexicon().short.get(w) for w in said.plain}
    if said.says("through") or "through" in short:
        return frozenset({Kind.THROUGH, Kind.IN, Kind.OUT})
    went = said.says("leave") or "out" in short
    came = said.says("arrive") or "in" in short
    if went == came:
        return frozenset()
    return frozenset({Kind.OUT if went else Kind.IN, Kind.THROUGH})


def _points(said: Sentence, ctx: Context) -> tuple[str, ...]:
    runner = said.runner or next(iter(ctx.candidates()), None)
    if said.point is not None and runner is not None:
        one = names.which_pass(said.point, said.masked, runner, ahead=False)
        said_which = any(lexicon().classes[c].has(said.masked) for c in ("back", "out_pass"))
        return (one,) if one is not None and said_which else said.point.ids
    finish = finish_of(runner) if runner is not None and said.finish else None
    return (finish,) if finish else ()
