"""Words that go on from what was said before and mean nothing without it: which of those offered, another time or place for
the last report."""

from __future__ import annotations

import re
from collections.abc import Sequence
from dataclasses import replace
from datetime import datetime, timedelta
from zoneinfo import ZoneInfo

from server.conversation.understanding import names
from server.conversation.understanding.features import question_form
from server.conversation.understanding.language import Matcher, lexicon
from server.conversation.understanding.meaning import Choice, Context, Report
from server.conversation.understanding.sentence import (
    FINISH,
    LENGTH,
    NUMBER,
    POINT,
    RUNNER,
    TIME,
    Sentence,
    finish_of,
    read_sentence,
)

_ORDINALS = ("first", "second", "third", "fourth")
_FIRST_PART = re.compile(r"[,;.]")
_TWO_DIGITS = re.compile(r"\d\d")
LONGEST = 8
"""No such answer has more words."""


def _without(words: Sequence[str], *known: Matcher) -> list[str]:
    """The words less every phrase of these."""
    out, i = [], 0
    while i < len(words):
        n = max(m.at(words, i) for m in known)
        if not n:
            out.append(words[i])
        i += n or 1
    return out


def says_alone(said: Sentence, kind: str) -> bool:
    """Whether a clause says what a class of words stands for, and nothing else."""
    read = lexicon().read
    aside = (lexicon().soft, lexicon().classes[kind], read["put_right"])
    return not [w for w in _without(said.masked, *aside) if w not in (RUNNER, "a")]


def is_back(text: str, ctx: Context) -> bool:
    """Whether words say that she has come back, or never left, and nothing else: 'no wait, she's come back'."""
    said = read_sentence(text, ctx)
    if question_form(said) or not 0 < len(said.masked) <= LONGEST:
        return False
    classes, read = lexicon().classes, lexicon().read
    back = (read["come_back"], read["still_there"])
    aside = (
        lexicon().soft,
        classes["correct"],
        classes["no"],
        classes["undo"],
        classes["she"],
        read["rather"],
    )
    left = _without(said.masked, *back, *aside, read["lead"], read["put_right"], read["here"], read["trail"])
    return any(m.has(said.masked) for m in back) and all(w in (RUNNER, "a") for w in left)


def ordinal(text: str) -> int | None:
    """Which of several in a row is meant, from 0 on, -1 for the last: 'the second one'; None for any other words."""
    words = lexicon().words(text)
    read = lexicon().read
    row = _without(words, read["follow"], lexicon().soft) if len(words) <= LONGEST else []
    for number, name in enumerate((*_ORDINALS, "last_of")):
        if row and any(m.begins(r) == len(r) > 0 for m in (read[name],) for r in (row, words)):
            return number if name != "last_of" else -1
    return None


def chosen(text: str, choices: Sequence[Choice], ctx: Context) -> Choice | None:
    """The one of what was offered that the words name, and nothing else: by runner, bib, point or place in the row."""
    number = ordinal(text)
    if number is not None:
        return choices[number] if number < len(choices) else None
    said = read_sentence(text, ctx)
    if question_form(said) or len(said.masked) > LONGEST:
        return None
    read = lexicon().read
    left = _without(said.masked, lexicon().soft, read["follow"], read["lead"], read["at"], read["put_right"])
    labels = {c.label: c for c in choices}
    if left == [RUNNER] and said.runner is not None:
        return labels.get(said.runner.id)
    if left in ([POINT], [FINISH]):
        ids = said.point.ids if said.point is not None else (finish_of(said.runner) if said.runner else None,)
        return next((labels[i] for i in ids if i in labels), None)
    if len(left) == 1 and left[0] in (NUMBER, TIME):
        bib = next((w.lstrip("#") for w in said.plain if w.lstrip("#").isdigit()), "")
        of_bib = next((r.id for r in ctx.runners if r.bib == bib), "")
        return labels.get(of_bib)
    return None


def whose(text: str, ctx: Context) -> tuple[str, ...] | None:
    """The runner that a message names and says nothing else; () for 'both', 'all of them'; None for any other words."""
    said = read_sentence(text, ctx)
    read = lexicon().read
    if question_form(said) or not 0 < len(said.masked) <= LONGEST:
        return None
    for left in (
        _without(said.masked, lexicon().soft, read["follow"], read["lead"], read["put_right"]),
        said.masked,
    ):
        if list(left) == [RUNNER] and said.runner is not None:
            return (said.runner.id,)
        if left and read["everyone"].begins(left) == len(left):
            return ()
    return None


def put_right(text: str, last: Report, ctx: Context) -> Report | None:
    """The last report with the time, the minutes or the place that the words put right, and nothing else: 'no wait 1615',
    'make that 2 min earlier', 'sorry it was the mill'. None for any other words."""
    said = read_sentence(text, ctx)
    classes, read = lexicon().classes, lexicon().read
    if question_form(said) or not 0 < len(said.masked) <= LONGEST:
        return None
    aside = (
        lexicon().soft,
        classes["correct"],
        classes["undo"],
        classes["no"],
        read["rather"],
        read["lead"],
        read["put_right"],
    )
    left = _without(said.masked, *aside, read["earlier"], read["later"], read["at"])
    says_so = any(
        m.has(said.masked) for m in (classes["correct"], classes["no"], classes["undo"], read["rather"])
    )
    if left in ([TIME], [LENGTH], [TIME, TIME]):
        shift = _shift(said, ctx)
        if shift is not None:
            return _again(last, text, seen_at=last.seen_at + shift)
        times = [t.at for t in said.times if not t.bare and not t.ahead]
        if says_so and left != [LENGTH] and times:
            # 'Not 1502, 1512': the other one is meant.
            other = [t for t in times if t != last.seen_at]
            return _again(last, text, seen_at=(other or times)[0])
    handed_in = _handed_in(last, ctx) if says_so else None
    if handed_in is not None:
        # 'Ten min ago' … 'no, 20': as long ago as that, by the same words.
        same = lexicon().words(last.words)
        minutes = _minutes_alone([w for w in left if w not in same], said)
        length = next((x.length for x in said.lengths), None) if left == [LENGTH] else None
        length = timedelta(minutes=minutes) if minutes is not None else length
        if length is not None:
            return replace(_again(last, text, seen_at=handed_in - length), ago=True)
    minutes = _minutes_alone(left, said) if says_so and handed_in is None else None
    if minutes is not None:
        # 'Make that 52': the same hour, or that before.
        local = last.seen_at.astimezone(ZoneInfo(ctx.time_zone)).replace(minute=minutes)
        then = local.astimezone(last.seen_at.tzinfo)
        return _again(last, text, seen_at=then if then <= ctx.now else then - timedelta(hours=1))
    if left in ([POINT], [FINISH]) and says_so and not said.times:
        runner = next((r for r in ctx.runners if r.id == last.runner), None)
        if runner is None:
            return None
        at = finish_of(runner) if said.point is None else None
        place = names.which_pass(said.point, said.masked, runner, ahead=False) if said.point else at
        return _again(last, text, point=place) if place and place != last.point else None
    return None


def of_another_bib(text: str, last: Report, ctx: Context) -> bool:
    """Whether the words say of the last report that it was of a bib that nobody here has, and nothing else: 'sorry, misread,
    it was 241', 'not 214, 241'. A number beside other words counts something."""
    said, words = read_sentence(text, ctx), lexicon().words(text)
    classes, read = lexicon().classes, lexicon().read
    bib = next((r.bib for r in ctx.runners if r.id == last.runner), None)
    numbers = {w for w in words if w.isdigit()}
    denied = (bib in numbers and classes["neg"].has(words)) or read["wrong_time"].has(words)
    slip = next((o for o in numbers - {bib} if bib and _slip_of(o, bib)), None)
    denied = denied or (slip is not None and (classes["correct"].has(words) or read["rather"].has(words)))
    if not bib or not denied or question_form(said):
        return False
    other = numbers - {bib}
    known = {r.bib for r in ctx.runners} | {w for w in other if lexicon().danger["own"].word(w)}
    if len(other) != 1 or other & known or len(min(other)) != len(bib):
        return False
    aside = [read[k] for k in ("rather", "put_right", "wrong_time", "bib_mark", "article")]
    left = _without(said.masked, classes["correct"], classes["neg"], lexicon().soft, *aside)
    return all(w in (NUMBER, RUNNER) for w in left)


def _slip_of(other: str, bib: str) -> bool:
    """Whether one number is easily read for another: one digit apart, or two changed round."""
    apart = sum(a != b for a, b in zip(other, bib, strict=False))
    return len(other) == len(bib) and (apart == 1 or (apart == 2 and sorted(other) == sorted(bib)))


def _handed_in(last: Report, ctx: Context) -> datetime | None:
    """When a report was handed in whose time was told as so long ago, or put right so just now; None where it was told
    otherwise."""
    if last.ago:
        return ctx.now
    ago = next((ctx.now - t.at for t in read_sentence(last.words, ctx).times if t.ago), None)
    return None if ago is None else last.seen_at + ago


def _minutes_alone(left: Sequence[str], said: Sentence) -> int | None:
    """Two digits and nothing else, that may be minutes of an hour; words behind a comma say why."""
    first = _FIRST_PART.split(said.written)[0]
    found = [w for w in lexicon().words(first) if _TWO_DIGITS.fullmatch(w)]
    others = [w for w in left if w != NUMBER and not _TWO_DIGITS.fullmatch(w)]
    small = first == said.written and not others
    if len(found) != 1 or not (small or first != said.written) or int(found[0]) > 59:
        return None
    return int(found[0])


def _shift(said: Sentence, ctx: Context) -> timedelta | None:
    """By how much earlier (negative) or later; None where no such length is said."""
    read = lexicon().read
    if read["earlier"].has(said.plain):
        ago = next((ctx.now - t.at for t in said.times if not t.bare and not t.ahead), None)
        length = next((x.length for x in said.lengths), ago)
        return -length if length is not None else None
    if read["later"].has(said.plain):
        return next((x.length for x in said.lengths), None)
    return None


def _again(last: Report, text: str, *, seen_at: datetime | None = None, point: str | None = None) -> Report:
    return replace(
        last,
        seen_at=seen_at or last.seen_at,
        point=point or last.point,
        words=text,
        corrects=True,
        guessed=False,
        condition=False,
    )
