"""A clause with its slots read: who and where it is about, what times it says, the words with stand-ins for all of these.

The model sees the stand-ins, so that no name and no time is ever learnt: <runner> <point> <finish> <person> <control> <time>
<len> <num> <km> <pct> <ahead>.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

from server.conversation.telling.answer import PointHere, RunnerHere
from server.conversation.understanding import names
from server.conversation.understanding.language import lexicon
from server.conversation.understanding.meaning import Context
from server.conversation.understanding.times import (
    AmountSaid,
    LengthSaid,
    TimeSaid,
    find_amounts,
    find_lengths,
    find_times,
    signs_of,
)
from server.conversation.understanding.words import asks

POINT, FINISH, RUNNER, PERSON, CONTROL = "<point>", "<finish>", "<runner>", "<person>", "<control>"
TIME, LENGTH, NUMBER, AHEAD = "<time>", "<len>", "<num>", "<ahead>"
_OF_UNIT = {"KM": "<km>", "MILE": "<km>", "PERCENT": "<pct>"}


@dataclass(frozen=True, slots=True)
class Sentence:
    """A clause with its slots. `written` as typed; `plain` its words; `masked` the same with stand-ins; `runner` the one it
    is about (None: open); `named` whether she was named; `times` the first is the one that is told; `nowhere`: it names a
    kind of place, and no point of the course ('the second gate')."""

    written: str
    plain: tuple[str, ...]
    masked: tuple[str, ...]
    runner: RunnerHere | None
    named: bool
    runner_score: float
    point: names.Named | None
    person: str | None
    finish: bool
    control: bool
    times: tuple[TimeSaid, ...]
    lengths: tuple[LengthSaid, ...]
    amounts: tuple[AmountSaid, ...]
    asks: bool
    runners: tuple[str, ...] = ()
    nowhere: bool = False

    def says(self, kind: str) -> bool:
        """Whether a class of words is among the words."""
        return lexicon().classes[kind].has(self.masked)

    def reads(self, kind: str) -> bool:
        """The same of the words that only rules look for."""
        return lexicon().read[kind].has(self.masked)

    @property
    def time(self) -> TimeSaid | None:
        """The time that is told."""
        return next((t for t in self.times if not t.ahead), None)


def points_of(ctx: Context, runner: RunnerHere | None) -> tuple[PointHere, ...]:
    """The points that may be named."""
    if runner is not None:
        return runner.points
    # One course is most often that of all; a point of another's is found by its name too.
    return tuple({p.id: p for r in reversed(ctx.candidates()) for p in r.points}.values())


def _is_starting(masked: list[str], point: names.Named) -> bool:
    """Whether the name of the start is said as the verb ('she has started'), and not as the place."""
    words = lexicon()
    if point.end - point.start > 1 or not words.classes["start"].word(masked[point.start]):
        return False
    before = masked[point.start - 1] if point.start else ""
    if point.score == 100.0:
        return before == RUNNER or any(
            words.classes[k].word(before) for k in ("aux", "she", "i", "we", "neg") if before
        )
    place = ("at", "place", "from", "to")
    return (
        bool(before)
        and before not in words.names["the"]
        and not any(words.read[k].word(before) for k in place)
    )


def _put(masked: list[str], start: int, end: int, sign: str) -> None:
    """A stand-in for a stretch of words; the others of the stretch become ''."""
    masked[start] = sign
    for i in range(start + 1, end):
        masked[i] = ""


def _word_signs(words: Sequence[str]) -> list[str]:
    signs = signs_of(words)
    out = [""] * len(words)
    for begin, end, first, last in signs.spans:
        for i in range(first, last):
            out[i] = signs.text[begin:end]
    return out


def read_sentence(written: str, ctx: Context) -> Sentence:
    """A clause with everything in it that is a name, a time or a number."""
    plain = lexicon().words(written)
    masked = list(plain)
    control = _race_control(masked, ctx.control)
    found = names.find_runner(masked, _word_signs(masked), ctx.runners)
    if found is not None:
        _put(masked, found.start, found.end, RUNNER)
    runner = ctx.runner(found.id if found else None)
    runners = {r.id for r in ctx.runners} | {r.name for r in ctx.runners}
    point, nowhere = _point(masked, points_of(ctx, runner), written)
    if point is not None:
        _put(masked, point.start, point.end, POINT)
    finish = _finish(masked)
    others = tuple((i, n) for i, n in ctx.people if i not in runners and n not in runners)
    person = names.find_person([w or "<>" for w in masked], others)
    if person is not None:
        _put(masked, person.start, person.end, PERSON)
    more = _more_names(masked, ctx, runner)
    times, lengths, amounts = _numbers(masked, ctx)
    row = tuple(w for w in masked if w)
    return Sentence(
        written,
        tuple(plain),
        row,
        runner,
        found is not None,
        found.score if found else 100.0,
        point,
        person.id if person else None,
        finish,
        control,
        times,
        lengths,
        amounts,
        asks(written),
        tuple(dict.fromkeys((*((found.id,) if found else ()), *more))),
        nowhere,
    )


def _point(masked: list[str], points: tuple[PointHere, ...], written: str) -> tuple[names.Named | None, bool]:
    """The point that is named, and whether a kind of place is said that is none of the points."""
    row, nowhere = [w or "<>" for w in masked], False
    while (point := names.find_point(row, points)) is not None:
        if not names.of_no_name(point, row, written):
            return (None if _is_starting(masked, point) else point), nowhere
        row[point.start], nowhere = "<>", True
    return None, nowhere or lexicon().read["nameless"].has(row)


def _more_names(masked: list[str], ctx: Context, runner: RunnerHere | None) -> tuple[str, ...]:
    """Stand-ins for the other places and runners that are named; those runners."""
    if POINT in masked:
        more, _ = _point(masked, points_of(ctx, runner), "")
        if more is not None and more.score == 100.0:
            _put(masked, more.start, more.end, POINT)
    if RUNNER in masked:
        more_of = names.find_runner(masked, _word_signs(masked), ctx.runners)
        if more_of is not None and more_of.score == 100.0:
            _put(masked, more_of.start, more_of.end, RUNNER)
            return (more_of.id,)
    return ()


def _race_control(masked: list[str], own_name: str) -> bool:
    """Race control by whatever name this race or the sport gives it."""
    own = lexicon().words(own_name)
    control = lexicon().read["control"]
    i = 0
    said = False
    while i < len(masked):
        n = len(own) if own and masked[i : i + len(own)] == own else control.begins(masked[i : i + MOST])
        if n:
            _put(masked, i, i + n, CONTROL)
            said = True
        i += max(n, 1)
    return said


MOST = 5
"""No phrase looked for in this way has more words."""


def _finish(masked: list[str]) -> bool:
    finish = lexicon().read["finish"]
    for i, w in enumerate(masked):
        if not w or w.startswith("<"):
            continue
        n = finish.begins([x or "<>" for x in masked[i : i + MOST]])
        if n:
            _put(masked, i, i + n, FINISH)
            return True
    return False


_PATTERN_WORDS = {POINT: "PT", FINISH: "FINISH"}


def _numbers(
    masked: list[str], ctx: Context
) -> tuple[tuple[TimeSaid, ...], tuple[LengthSaid, ...], tuple[AmountSaid, ...]]:
    """The times, lengths and amounts, with stand-ins put for them."""
    if not any(c.isdigit() for w in masked for c in w) and not any(
        s.isupper() or s.isdigit() for s in _word_signs(masked)
    ):
        return (), (), ()
    row = [_PATTERN_WORDS.get(w, w or "_") for w in masked]
    amounts = find_amounts(row)
    for a in amounts:
        _put(masked, a.start, a.end, _OF_UNIT[a.unit])
        row[a.start : a.end] = ["_"] * (a.end - a.start)
    times = find_times(row, ctx.now, ctx.time_zone)
    for t in times:
        if not t.bare:
            _put(masked, t.start, t.end, AHEAD if t.ahead else TIME)
            row[t.start : t.end] = ["_"] * (t.end - t.start)
    lengths = find_lengths(row)
    for x in lengths:
        _put(masked, x.start, x.end, LENGTH)
    for i, w in enumerate(masked):
        if w and w.lstrip("#").replace(":", "").replace(".", "").isdigit():
            masked[i] = NUMBER
    return times, lengths, amounts


def finish_of(runner: RunnerHere) -> str | None:
    """The id of a runner's finish."""
    return next((p.id for p in runner.points if p.finish), None)
