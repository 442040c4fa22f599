"""What a sentence reports: kind, time, runner and point; what may be meant in two ways is asked back."""

from __future__ import annotations

import re
from dataclasses import replace

from bot.words import asking, lists, names, reporting, supposing
from bot.words.ending import MAY_STOP, NOT_OVER, ended
from bot.words.going_on import going_on
from bot.words.in_or_out import CAME_IN_PERSON, came_first, in_or_out, only_supposed
from bot.words.meaning import AskBack, Choice, Context, Need, Report, Reported, Understood
from bot.words.patterns import pattern
from bot.words.placing import placed
from bot.words.sentence import Sentence
from bot.words.stays import in_and_out, two_times
from bot.words.times import find_length, find_time
from server.event.model import PartKind
from server.facts.entry import Kind
from server.wording.answer import RunnerHere

_CORRECTS = pattern(
    r"""
    ^(sorry |no |oops |actually |wait )*(correction|correct|corrected|amend|i meant|meant|i mean|it was|that was|\
      should be|that should be|actually)\s
    """
)


def report(said: Sentence, ctx: Context, *, loose: bool) -> Understood | None:
    """The report a sentence makes; `loose` takes any 'in' and 'out' for one."""
    said, corrects = _correction(said)
    if corrects:
        said = replace(said, text=_WAS_NOT.sub("", said.text))
    time = find_time(said.text, ctx.now, ctx.time_zone)
    length = find_length(said.text)
    text = time.rest if time else (length[1] if length else said.text)
    at = time.at if time else ctx.now
    unsure = time is not None and (time.unsure or _another_time(time.rest, ctx))
    base = Report(
        Kind.NOTE,
        at,
        said.runner.id if said.runner else None,
        words=said.words,
        guessed=unsure or (said.named and said.runner_score < names.SURE) or supposing.is_hearsay(said.words),
        corrects=corrects,
        amount=length[0] if length else None,
    )
    unknown = _unknown_bib(said, ctx)
    if unknown is not None:
        return unknown
    both = in_and_out(said, ctx, corrects) or two_times(said, ctx, corrects)
    if both is not None:
        return both
    drive = _drive(base, said, ctx)
    if drive is not None:
        return Reported((drive,))
    own = _crew(base, said, text, ctx)
    if own is not None:
        return own
    found = _kind_of(base, said, text, time is not None, ctx, loose=loose)
    if found is None or isinstance(found, AskBack):
        return found
    if time is None and found.kind in _SIGHTED and _STRAY.search(text):
        # A number that nobody understood may be the time: it must not count as 'now' unasked.
        found = replace(found, guessed=True)
    return _with_runner(found, said, ctx)


_SIGHTED = frozenset({Kind.IN, Kind.OUT, Kind.THROUGH})
_STRAY = re.compile(r"\b\d{2,4}\b(?! ?(?:min|km|percent|mile|hour|m\b))")


def _correction(said: Sentence) -> tuple[Sentence, bool]:
    m = _CORRECTS.search(said.text)
    if m is None or said.text == m[0].strip():
        return said, False
    return replace(said, text=said.text[m.end() :]), True


# 'Lathe was 14:59 not 15:05': what it was not is no time of hers.
_WAS_NOT = re.compile(r"\b(?:and |so )?not (?:at )?\d{1,2}:?\d\d\b.*$")

_LEADING_NUMBER = re.compile(
    r"^(?:bib |no |number |runner |#)*(\d{1,5})\b(?! ?(?:min|hour|km|percent|mile|am|pm|ago|oclock|past|to|\d|:))"
)


def _unknown_bib(said: Sentence, ctx: Context) -> AskBack | None:
    """'99 dns' with nobody of that bib must never be taken for somebody else's report."""
    m = _LEADING_NUMBER.search(said.text)
    if m is None or said.named or any(r.bib == m[1] for r in ctx.runners):
        return None
    if find_time(m[1], ctx.now, ctx.time_zone) is not None:
        return None
    choices = []
    for near in lists.near_bibs(m[1], ctx.runners):
        meant = replace(said, text="she" + said.text[m.end() :], runner=near, named=True)
        found = report(meant, ctx, loose=True)
        if isinstance(found, Reported | AskBack):
            choices.append(Choice(near.id, found))
    return AskBack(Need.BIB, tuple(choices), m[1])


def _another_time(rest: str, ctx: Context) -> bool:
    """Whether a second time stands in the sentence: which of the two is meant is then a guess."""
    other = find_time(rest, ctx.now, ctx.time_zone)
    return other is not None and other.at != ctx.now


_DRIVE = re.compile(
    r"\b(?:drive|driving|drove)\b(?:.*?\bfrom (?P<start>.+?))? (?:to|and) (?P<to>.+?)"
    r"(?: (?:takes?|took|is|was|about|in))* (?=(?:\d|half|an|a quarter))"
)


def _drive(base: Report, said: Sentence, ctx: Context) -> Report | None:
    """'drive from hotel to Brindle Gate takes 35 min': how long a drive is, which somebody now stands for.
    The report's words are the place it starts from, '' where none is said."""
    if not ctx.parts & _CREW_PARTS or asking.is_question(said.text):
        return None
    length = find_length(said.plain, bare=True)
    m = _DRIVE.search(said.plain)
    if m is None or length is None or said.runner is None:
        return None
    to = names.find_point(m["to"], said.runner.points)
    point = names.which_pass(to, said.plain, said.runner, ahead=True) if to else None
    if point is None:
        return None
    start = (m["start"] or "").removeprefix("the ").strip()
    begins = names.find_point(start, said.runner.points) if start else None
    known = names.which_pass(begins, said.plain, said.runner, ahead=False) if begins else None
    return replace(
        base, kind=Kind.DRIVE_CONFIRMED, point=point, amount=length[0], words=known or start, guessed=False
    )


def _as_meant(found: Report | AskBack) -> Reported | AskBack:
    return found if isinstance(found, AskBack) else Reported((found,))


def _with_runner(report: Report, said: Sentence, ctx: Context) -> Understood | None:
    runner = said.runner
    if runner is None:
        if report.kind in _RACE_WIDE:
            return Reported((report,))
        if len(ctx.runners) < 2:
            return None
        choices = tuple(
            Choice(r.id, _as_meant(placed(replace(report, runner=r.id), said, r, ctx)))
            for r in ctx.candidates()
        )
        return AskBack(Need.RUNNER, choices)
    return _as_meant(placed(report, said, runner, ctx))


_RACE_WIDE = frozenset({Kind.START_DELAYED, Kind.HELD, Kind.RELEASED, Kind.CREW_LEFT, Kind.RACE_CONTROL_TOLD})

_ON_FOOT = frozenset({PartKind.RUNNER, PartKind.PACER})

_CREW_PARTS = frozenset({PartKind.CREW, PartKind.PACER, PartKind.SAFETY_CONTACT, PartKind.ORGANISER})


def _crew(base: Report, said: Sentence, text: str, ctx: Context) -> Understood | None:
    """What crew say of themselves: there, or on the road."""
    if PartKind.RUNNER in ctx.parts or not ctx.parts & _CREW_PARTS or re.search(r"\bshe\b|\bher\b", text):
        return None
    alone = said.runner is not None and said.runner.at is not None and not re.search(r"\b(?:we|i)\b", text)
    if reporting.says_crew_off(text) and not alone:
        return Reported((replace(base, kind=Kind.CREW_LEFT),))
    bare = _BARE_PLACE.match(text) and base.seen_at == ctx.now
    runners = (said.runner,) if said.runner is not None else ctx.candidates()
    if bare and ctx.point is None and any(_elsewhere(r) for r in runners):
        # 'in Ravel 0305' with its time is hers: nobody writes down to the minute when they parked.
        return _ask_who(base, said, runners, ctx)
    return _own_place(base, said, runners, ctx) if reporting.says_crew_there(text) else None


def _own_place(
    base: Report, said: Sentence, runners: tuple[RunnerHere, ...], ctx: Context
) -> Reported | AskBack | None:
    """Where crew say they are: of no runner, so that none needs to be named; asked where the points differ."""
    found = [placed(replace(base, kind=Kind.CREW_THERE), said, r, ctx) for r in runners]
    reports = {f.point: f for f in reversed(found) if isinstance(f, Report)}
    if said.point is not None or said.finish or len(reports) < 2:
        return _as_meant(found[0]) if found else None
    ways = tuple(Choice(p or "", Reported((replace(r, guessed=False),))) for p, r in reports.items())
    return AskBack(Need.POINT, ways)


_BARE_PLACE = re.compile(r"^(?:now |just |back )?at (?:PT|FINISH)(?: now| already)?$")


def _elsewhere(runner: RunnerHere) -> bool:
    """Whether she is at no point, or was last known in at one before that where the writer waits: 'out' is forgotten."""
    return runner.at is None or (runner.own is not None and runner.own != runner.at)


def _ask_who(base: Report, said: Sentence, runners: tuple[RunnerHere, ...], ctx: Context) -> AskBack | None:
    """'at Brindle now' from crew whose own place nobody knows: they, or she, or which of two?"""
    crew = placed(replace(base, kind=Kind.CREW_THERE), said, runners[0], ctx)
    hers = [placed(replace(base, kind=Kind.IN), said, r, ctx) for r in runners if _elsewhere(r)]
    arrived = [one for one in hers if isinstance(one, Report)]
    if isinstance(crew, AskBack) or not arrived:
        return None
    choices = (("crew", crew), *(("her", one) for one in arrived))
    return AskBack(Need.WHO, tuple(Choice(label, Reported((one,))) for label, one in choices), "", crew.point)


def _kind_of(
    base: Report, said: Sentence, text: str, timed: bool, ctx: Context, *, loose: bool
) -> Report | AskBack | None:
    """Which kind of report; the ways of saying that her race may be over are looked at first."""
    if asking.is_question(said.text) and not loose:
        return None
    if ctx.parts & _ON_FOOT and not said.named and reporting.says_back_on_course(text):
        # Of those who were off it: on the course again is under way again, and no point is left.
        fine = reporting.says_all_fine(text) or reporting.says_condition(text)
        return replace(base, kind=Kind.MOVING_AGAIN, condition=fine)
    text = _WAVED_OFF.sub("she left", text)
    if (MAY_STOP.search(text) or NOT_OVER.search(text)) and base.runner is not None:
        came = CAME_IN_PERSON.search(text) is not None
        return replace(base, kind=Kind.IN if came else Kind.HOW_SHE_IS, condition=came)
    supposed = only_supposed(said.words)
    over = None if supposed else ended(base, said, text, ctx)
    if over is not None:
        return over
    going = going_on(base, said, text)
    if going is not None:
        return going
    kind = reporting.kind_in(text if base.amount is None else text + " for LENGTH")
    if kind is None and reporting.kind_in(said.plain) in _RACE_WIDE:
        # 'start' is also the name of a point.
        kind = reporting.kind_in(said.plain)
    if kind is None and base.amount is not None and re.search(r"\bstopp?\w*\b", text):
        kind = Kind.RESTING
    if reporting.is_sweep_to_come(text):
        return replace(base, kind=Kind.NOTE)
    if kind in (Kind.RESTING, Kind.MOVING_AGAIN) and came_first(text, kind):
        kind = None
    if supposed and kind in (Kind.THROUGH, Kind.SWEEP_THROUGH, Kind.RESTING, Kind.MOVING_AGAIN):
        return None
    if kind is Kind.STAND_DOWN:
        # An alarm is not ended by two words: whoever may end it is asked once more.
        return replace(base, kind=kind, guessed=True)
    if kind is Kind.POSITION:
        return replace(
            base, kind=kind, guessed=True, placed_by_words=True, condition=reporting.says_condition(text)
        )
    if kind is Kind.START_DELAYED and base.amount is None:
        length = find_length(said.text, bare=True)
        return replace(base, kind=kind, amount=length[0] if length else None)
    if kind is Kind.IN_HAND and reporting.has_her(text) == "got":
        return replace(base, kind=kind, with_us="got")
    if kind is not None:
        return replace(base, kind=kind)
    if PartKind.RUNNER in ctx.parts:
        if _GOING_ON.search(text):
            return replace(base, kind=Kind.MOVING_AGAIN)
        # A runner speaks of herself.
        text = re.sub(r"\b(?:i (?:am|have|was)|we are)\b", "she is", text)
    return in_or_out(base, said, text, timed, loose=loose)


_WAVED_OFF = re.compile(r"\b(?:waved|saw|seen|sent|packed) (?:her|she) off\b")

_GOING_ON = re.compile(
    r"^(?:i am )?(?:still )?(?:moving|going|walking|running|jogging|shuffling|plodding)(?: on|"
    r" along| ok| fine)?$"
)
