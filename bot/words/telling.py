"""What a sentence reports: kind, time, runner and point; what may be meant in two ways is asked back."""

from __future__ import annotations

import re
from dataclasses import replace

from bot.words import asking, lists, names, reporting, supposing
from bot.words.everyday import AROUND_IN_AND_OUT
from bot.words.meaning import (
    AskBack,
    Choice,
    Context,
    Need,
    Report,
    Reported,
    Unclear,
    Understood,
    place_of,
)
from bot.words.patterns import pattern
from bot.words.sentence import Sentence, finish_of
from bot.words.times import find_length, find_time
from server.event.model import PartKind
from server.facts.entry import Kind, Retired
from server.wording.answer import RunnerHere

_CORRECTS = pattern(
    r"""
    ^(sorry |no |oops |actually |wait )*(correction|correct|corrected|amend|i meant|meant|i mean|it was|that was|\
      should be|that should be|actually)\s
    """
)
_STRONG_IN = pattern(
    r"""
    \b(arrived|arrives|reached|turned up|rocked up|checked in|made it|rolled in|landed)\b
    \b(got|came|come|comes|coming|pulled|rolled|ran|walked|strolled|limped|staggered|jogged|stumbled|hobbled|\
      wandered|just|is|now|\
      she) (in|into)\b
    \b(just |she |has )got (in|here|to)\b
    \b(she|her) (is )?(just )?(here|at (PT|FINISH))\b
    \b(with (us|me)|here now|just here)\b
    ^PT (is |now |just )*(in|arrived)\b
    ^(in|here|at PT|finish\w*|she finish\w*|she (is|has) (finish\w*|home))\b
    """
)
_STRONG_OUT = pattern(
    r"""
    ^(she |just |ok |now |is |has |been )*(left|leaving|leaves|departed|gone|out|off|heading|headed|on her way|\
      setting off|set off|away|moving on)\b
    \bback (out|on (the )?(course|trail|her way))\b
    \b(departed|leaving|out of|heading out|headed out|head out|set off|setting off|on her way|off again)\b
    \b(she|has|just|have) left\b
    \bleft (PT|FINISH|here|us|at|with|again|LENGTH|now)\b
    ^(she )?went$
    """
)
_BODY = re.compile(
    r"\b(?:left|right) (?:heel|foot|knee|leg|ankle|toe|hip|shin|calf|arm|hand|side|shoulder|shoe|wrist|quad|eye)s?\b"
    r"|\bleft or right\b|\bright or left\b|\bleft (?:turn|fork|hand|at the|of the|side)\b"
)
# 'left the pub', 'left her poles', 'out of diesel', 'in the car': no point of the course is left or reached.
_THINGS = re.compile(
    r"\b(?:left|leaving|leaves|forgot|out of|out from|in|into|inside|got|off)\s+(?:the|my|our|a|an|her|his|some|"
    r"your|this|that)\s+"
    r"(?!PT|FINISH|aid|station|check|point|cp|stop|next|last|mat|feed|hall|tent\b)\w+"
    r"|\b(?:out of|short of)\s+(?!PT|FINISH|here|there|us|the|her|a|my|our)\w+"
    r"|\bin (?:bed|tears|trouble|position|place|sight|range|traffic|pain|charge|time|front|touch|view|two minds)\b"
    r"|\b(?:out|off|away) (?:getting|buying|looking|for a|to get|shopping|walking the)\b"
)
_OF_ANOTHER = re.compile(
    r"^(?!.*\b(?:she|her)\b).*\bPERSON (?:\w+ )?(?:is|has|was|in|at|out|left|just|got|going|on|will|now|arrived|"
    r"there|here|gone|went|went)\b"
)
_STILL_HERE = re.compile(r"\b(?:still|yet) (?:here|in|there|at PT|with us)\b")
# 'we are out of soup', 'call me when she is in': about somebody else, or a wish.
_NOT_OF_HER = re.compile(r"^(?!.*\b(?:she|her)\b).*\b(?:we|i|our|my|us)\b")
_WISH = re.compile(
    r"\b(?:call|text|tell|ping|message|ring|let|wake) (?:me|us)\b|\b(?:when|once|if|until) she\b"
)
_LEAVING_TIME = re.compile(r"^(?:leaving time|departure|leave)\b")


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
    both = _in_and_out(said, ctx, corrects) or _two_times(said, ctx, corrects)
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
    return _with_runner(found, said, ctx)


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


_LEFT_AGAIN = re.compile(r"\b(?:and |then )*(?=(?:she )?(?:left|out|off|gone|went out|leaving|departed)\b)")


def _in_and_out(said: Sentence, ctx: Context, corrects: bool) -> Reported | None:
    """'came in at five past three and left at ten past': two reports of one stop, each with its own time."""
    if said.runner is None or asking.is_question(said.text):
        return None
    for m in _LEFT_AGAIN.finditer(said.text):
        first, second = said.text[: m.start()], said.text[m.end() :]
        came, went = (find_time(part, ctx.now, ctx.time_zone) for part in (first, second))
        if (
            came is None
            or went is None
            or not _STRONG_IN.search(came.rest)
            or not reporting.says_out(went.rest)
        ):
            continue
        arrived = Report(Kind.IN, came.at, said.runner.id, words=said.words, corrects=corrects)
        placed_in = placed(arrived, said, said.runner, ctx)
        if isinstance(placed_in, Report):
            return Reported((placed_in, replace(placed_in, kind=Kind.OUT, seen_at=went.at)))
    return None


_SPAN = re.compile(r"^PT (?:at )?(\d{1,2}:?\d\d) (?:to |until |out )?(\d{1,2}:?\d\d)$")


def _two_times(said: Sentence, ctx: Context, corrects: bool) -> Reported | None:
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
            Choice(r.id, _as_meant(placed(replace(report, runner=r.id), said, r, ctx))) for r in ctx.runners
        )
        return AskBack(Need.RUNNER, choices)
    return _as_meant(placed(report, said, runner, ctx))


_RACE_WIDE = frozenset({Kind.START_DELAYED, Kind.HELD, Kind.RELEASED, Kind.CREW_LEFT, Kind.RACE_CONTROL_TOLD})
_CREW_PARTS = frozenset({PartKind.CREW, PartKind.PACER, PartKind.SAFETY_CONTACT, PartKind.ORGANISER})


def _crew(base: Report, said: Sentence, text: str, ctx: Context) -> Understood | None:
    """What crew say of themselves: there, or on the road."""
    if PartKind.RUNNER in ctx.parts or not ctx.parts & _CREW_PARTS or re.search(r"\bshe\b|\bher\b", text):
        return None
    alone = said.runner is not None and said.runner.at is not None and not re.search(r"\b(?:we|i)\b", text)
    if reporting.says_crew_off(text) and not alone:
        return Reported((replace(base, kind=Kind.CREW_LEFT),))
    bare = _BARE_PLACE.match(text) and base.seen_at == ctx.now
    if bare and said.runner is not None and ctx.point is None and said.runner.at is None:
        # 'in Ravel 0305' with its time is hers: nobody writes down to the minute when they parked.
        return _ask_who(base, said, said.runner, ctx)
    if reporting.says_crew_there(text) and said.runner is not None:
        return _as_meant(placed(replace(base, kind=Kind.CREW_THERE), said, said.runner, ctx))
    return None


_BARE_PLACE = re.compile(r"^(?:now |just |back )?at (?:PT|FINISH)(?: now| already)?$")


def _ask_who(base: Report, said: Sentence, runner: RunnerHere, ctx: Context) -> AskBack | None:
    """'at Brindle now' from crew whose own place nobody knows: they, or she?"""
    ways = (("crew", Kind.CREW_THERE), ("her", Kind.IN))
    found = [(label, placed(replace(base, kind=kind), said, runner, ctx)) for label, kind in ways]
    reports = [(label, one) for label, one in found if isinstance(one, Report)]
    if len(reports) < len(ways):
        return None
    choices = tuple(Choice(label, Reported((one,))) for label, one in reports)
    return AskBack(Need.WHO, choices, "", reports[0][1].point)


def _kind_of(
    base: Report, said: Sentence, text: str, timed: bool, ctx: Context, *, loose: bool
) -> Report | AskBack | None:
    """Which kind of report; the ways of saying that her race may be over are looked at first."""
    if asking.is_question(said.text) and not loose:
        return None
    text = _WAVED_OFF.sub("she left", text)
    if (_MAY_STOP.search(text) or _NOT_OVER.search(text)) and base.runner is not None:
        came = _CAME_IN_PERSON.search(text) is not None
        return replace(base, kind=Kind.IN if came else Kind.HOW_SHE_IS, condition=came)
    supposed = _only_supposed(said.words)
    ended = None if supposed else _ended(base, said, text, ctx)
    if ended is not None:
        return ended
    kind = reporting.kind_in(text if base.amount is None else text + " for LENGTH")
    if kind is None and reporting.kind_in(said.plain) in _RACE_WIDE:
        # 'start' is also the name of a point.
        kind = reporting.kind_in(said.plain)
    if kind is None and base.amount is not None and re.search(r"\bstopp?\w*\b", text):
        kind = Kind.RESTING
    if reporting.is_sweep_to_come(text):
        return replace(base, kind=Kind.NOTE)
    if kind in (Kind.RESTING, Kind.MOVING_AGAIN) and _came_first(text, kind):
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
    if kind is not None:
        return replace(base, kind=kind)
    if PartKind.RUNNER in ctx.parts:
        if _GOING_ON.search(text):
            return replace(base, kind=Kind.MOVING_AGAIN)
        # A runner speaks of herself.
        text = re.sub(r"\bi (?:am|have|was)\b", "she is", text)
    return _in_or_out(base, said, text, timed, loose=loose)


_CAME = re.compile(
    r"\b(?:arrived|reached|landed|(?:came|come|got|rolled|pulled|ran|walked|just|is|now|she) (?:in|into)\b|^in\b)"
)


def _came_first(text: str, kind: Kind) -> bool:
    """'came in at 3 and is sat down': that she arrived is the news, and stands before what she does there."""
    came = _CAME.search(text)
    return came is not None and kind is Kind.RESTING and reporting.kind_in(text[: came.end()]) is None


_CAME_IN_PERSON = re.compile(
    r"\bshe (?:is |has )?(?:just )?(?:here|arrived|come in|came in|walked in|in|got in|made it)\b|^in\b"
)
# 'not out', 'never left': the opposite of what it would be without.
_NEGATED = re.compile(
    r"\b(?:not|never) (?:yet |been |even |actually |come |gone |got |really )*"
    r"(?:in|out|left|leave|leaving|arrived?|here|there|gone|come|at PT|off|away|reached?|finished|finish)\b"
)
_WAVED_OFF = re.compile(r"\b(?:waved|saw|seen|sent|packed) (?:her|she) off\b")
_GOING_ON = re.compile(
    r"^(?:i am )?(?:still )?(?:moving|going|walking|running|jogging|shuffling|plodding)(?: on|"
    r" along| ok| fine)?$"
)


def _in_or_out(
    base: Report, said: Sentence, text: str, timed: bool, *, loose: bool
) -> Report | AskBack | None:
    condition = reporting.says_condition(text)
    if (
        _NEGATED.search(text)
        or _WISH.search(text)
        or _only_supposed(said.words)
        or (_NOT_OF_HER.search(text) and not condition)
    ):
        return None
    if _STILL_HERE.search(text) and base.runner is not None:
        # She is where she was: no second arrival, but she has not gone on either.
        at = said.runner.at if said.runner is not None else None
        return replace(
            base, kind=Kind.RESTING if at is not None else Kind.HOW_SHE_IS, point=at, condition=condition
        )
    text = " ".join(_THINGS.sub(" ", _BODY.sub(" ", text)).split())
    if _OF_ANOTHER.search(text):
        return None
    if _STRONG_OUT.search(text) and not _LEAVING_TIME.search(text):
        if (
            re.search(r"\bout\b", text)
            and not (timed or said.point)
            and re.fullmatch(r"(?:she |is |now |just |has |her |gone |just )*out(?: now)?(?: \?)?", text)
        ):
            return _ask_out(base, said)
        return replace(base, kind=Kind.OUT)
    if _STRONG_IN.search(text):
        finish = re.search(r"\b(?:finish\w*|home)\b|FINISH", text)
        return replace(base, kind=Kind.IN, condition=condition and not finish)
    if condition and base.runner is not None:
        return replace(base, kind=Kind.HOW_SHE_IS)
    if not loose and asking.question_in(said.text) is not None:
        return None
    if timed and _WAS_THERE.search(text):
        return replace(base, kind=Kind.IN)
    # Anything longer that merely has 'in', 'at' or 'out' in it ('parking at Kettle') is no report.
    if not all(word in AROUND_IN_AND_OUT for word in text.replace("?", " ").split()):
        return None
    if reporting.says_out(text):
        clear = timed or said.point is not None or not re.search(r"\bout\b", text)
        return replace(base, kind=Kind.OUT) if clear else _ask_out(base, said)
    if reporting.says_in(text) or (timed and (said.point is not None or said.finish)):
        return replace(base, kind=Kind.IN)
    return None


_WAS_THERE = re.compile(r"^(?:she )?was (?:in|at (?:PT|FINISH))\b|^PT was$")


_CLAUSES = re.compile(r"[,;.!\n]+\s|[,;!\n]+|\s(?:and|but|und|aber)\s")
_GERMAN_IN_OUT = re.compile(r"\b(?:rein|raus|los|durch|angekommen|drin|weg|da)\b")


def _only_supposed(words: str) -> bool:
    """Whether a sentence states nothing; 'left Brindle 16:54, should be with you at 7' states its first part."""
    if not supposing.says_no_fact(words):
        return False
    clauses = _CLAUSES.split(words.lower())
    if len(clauses) == 1 or supposing.says_no_fact(clauses[0]):
        return True
    return not any(
        (reporting.says_out(c) or reporting.says_in(c) or _GERMAN_IN_OUT.search(c))
        and not supposing.says_no_fact(c)
        for c in clauses
    )


_MAY_STOP = re.compile(
    r"\b(?:wants? to|want to|thinking (?:about|of)|might|may|talking about|considering) "
    r"(?:stop|drop|quit|pull|giv|retir|pack)\w*"
)
_NOT_OVER = re.compile(
    r"\b(?:not|never|nowhere near) (?:been |going to |yet |be )?"
    r"(?:retir|quit|drop|stopp|giv|pull|dnf|withdr|out of the race|bail|pack)\w*"
)
_ENDED_HOW = (Retired.OWN_CHOICE, Retired.TIMED_OUT, Retired.WITHDRAWN)


def _ended(base: Report, said: Sentence, text: str, ctx: Context) -> Report | AskBack | None:
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


def _ask_out(base: Report, said: Sentence) -> AskBack:
    left = replace(base, kind=Kind.OUT)
    runner = said.runner
    point = None
    if runner is not None:
        point = _expected(runner, Kind.OUT, None)
        left = replace(left, point=point)
    over = AskBack(
        Need.HOW,
        tuple(Choice(h.value, Reported((replace(base, kind=Kind.RETIRED, how=h),))) for h in _ENDED_HOW),
    )
    return AskBack(Need.OUT, (Choice("left", Reported((left,))), Choice("over", over)), "out", point)


_AT_A_POINT = frozenset(
    {Kind.IN, Kind.OUT, Kind.THROUGH, Kind.NOT_HERE_YET, Kind.SWEEP_THROUGH, Kind.CREW_THERE}
)


def _expected(runner: RunnerHere, kind: Kind, stands_at: str | None) -> str | None:
    """The point a report without one is about: where she is, where the writer stands, where she is due.

    Nobody comes in at the start, and out of it only while nothing else is known of her.
    """
    place = place_of(runner)
    if kind is Kind.OUT and place.at is not None:
        return place.at.id
    if stands_at is not None:
        return stands_at
    if place.at is not None and kind is Kind.IN:
        return place.at.id
    ahead = [p.id for p in place.ahead]
    if kind is Kind.OUT and runner.reached is None and ahead and runner.going == "before the start":
        return ahead[0]
    if runner.due in ahead:
        return runner.due
    ahead = ahead[1:] if runner.reached is None and len(ahead) > 1 else ahead
    return next(iter(ahead), place.points[-1].id if place.points else None)


def placed(report: Report, said: Sentence, runner: RunnerHere, ctx: Context) -> Report | AskBack:
    """The report with its point; asks back if several different places fit."""
    report = replace(report, runner=runner.id)
    if report.placed_by_words:
        # 'above the quarry' names a point and is not at it.
        return report
    if said.point is not None:
        point = names.which_pass(said.point, said.plain, runner, ahead=False)
        if point is None:
            choices = tuple(Choice(i, Reported((replace(report, point=i),))) for i in said.point.ids)
            return AskBack(Need.POINT, choices, said.point.words)
        # Which of two passes was meant is inferred, but from where she is: as good as written.
        return replace(report, point=point, guessed=report.guessed or said.point.score < names.SURE)
    if said.finish or (report.kind is Kind.IN and re.search(r"\bfinish|\bhome\b", said.text)):
        finish = finish_of(runner)
        near = finish in [p.id for p in place_of(runner).ahead[:2]]
        return replace(report, point=finish, guessed=report.guessed or not (near or said.finish))
    if report.kind is Kind.RETIRED and ctx.point is not None and re.search(r"\bhere\b", said.text):
        return replace(report, point=ctx.point)
    if report.kind is Kind.RETIRED and runner.at is not None and report.how is not Retired.DID_NOT_START:
        return replace(report, point=runner.at)
    if report.kind not in _AT_A_POINT:
        return report
    from_post = ctx.parts <= {PartKind.VOLUNTEER} and ctx.point is not None
    point = ctx.point if from_post else _expected(runner, report.kind, ctx.point)
    stands = ctx.point is not None and ctx.point == point
    surely = stands or (runner.at is not None and report.kind is Kind.OUT)
    return replace(report, point=point, guessed=report.guessed or not surely)
