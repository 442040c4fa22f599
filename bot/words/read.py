"""From a sentence to what it means: the order in which things are looked for, and how gaps are filled.

Distress comes first, whatever else is said. Then short answers, lists of bibs, follow-ups; then it is a
question if it is put as one, else a report if it says one, else a question if it names what can be asked.
"""

from __future__ import annotations

import re
from dataclasses import dataclass, replace
from datetime import datetime, timedelta

from bot.words import answering, asking, lists, names, reporting
from bot.words.german import is_german, to_english
from bot.words.meaning import (
    AskBack,
    Asked,
    Choice,
    Context,
    Distress,
    Need,
    Question,
    Report,
    Reported,
    Unclear,
    Understood,
    place_of,
)
from bot.words.tidy import tidy
from bot.words.times import find_ahead, find_length, find_time
from server.event.model import PartKind
from server.facts.entry import Kind, Retired
from server.wording.answer import PointHere, RunnerHere


@dataclass(frozen=True, slots=True)
class Sentence:
    """A sentence with its names found. `plain` is tidied; `text` has PT, FINISH, PERSON, 'she' in place of
    names; `runner` the one it is about (None: open); `named` whether she was named."""

    words: str
    plain: str
    text: str
    runner: RunnerHere | None
    named: bool
    runner_score: float
    point: names.Named | None
    person: str | None
    finish: bool


def understand(text: str, ctx: Context) -> Understood:
    """What a person means by `text`. Never raises; what is not understood is `Unclear`."""
    english = to_english(text) if is_german(text, ctx.language) else text
    said = _names(text, english, ctx)
    if not said.plain.strip("? ;"):
        return Unclear(text)
    return (
        _distress(said, ctx)
        or answering.short_answer(said.plain, text)
        or _listed(said, ctx)
        or _follow_up(said, ctx)
        or _question_or_report(said, ctx)
        or Unclear(text)
    )


def _points(ctx: Context, runner: RunnerHere | None) -> tuple[PointHere, ...]:
    if runner is not None:
        return runner.points
    return ctx.runners[0].points if ctx.runners else ()


_FINISH_SAID = re.compile(r"\b(?:(?:at |to |in )?the (?:finish(?: line)?|end)|finish(?: line)?)\b")


def _names(words: str, english: str, ctx: Context) -> Sentence:
    """Find who and where, and put stand-ins in their place."""
    everywhere = tuple(p for r in ctx.runners for p in r.points)
    known = names.name_words(everywhere, [*(r.name for r in ctx.runners), *(n for _, n in ctx.people)])
    plain = tidy(english, known)
    found = names.find_runner(plain, ctx.runners)
    text = found.rest if found else plain
    runner = ctx.runner(found.id if found else None)
    point = names.find_point(text, _points(ctx, runner))
    if point is not None:
        tokens = text.split()
        text = " ".join([*tokens[: point.start], names.POINT, *tokens[point.end :]])
    finish = _FINISH_SAID.search(text) is not None
    text = _FINISH_SAID.sub(lambda m: ("at " if m[0].startswith("at") else "") + names.FINISH, text)
    runners = {r.id for r in ctx.runners}
    others = tuple(
        (i, n) for i, n in ctx.people if i not in runners and n not in {r.name for r in ctx.runners}
    )
    person = names.find_person(text, others)
    if person is not None:
        text = person[1]
    return Sentence(
        words,
        plain,
        text,
        runner,
        found is not None,
        found.score if found else 100.0,
        point,
        person[0] if person else None,
        finish,
    )


_SELF = re.compile(
    r"\b(?:help|sos|mayday|hurt|injured|lost|bleeding|collapsed|ambulance|rescue me|emergency|"
    r"(?:can not|can't) (?:move|walk|get up|go on)|broken (?:my |an? )?(?:leg|ankle|arm|wrist)|stuck|hilfe|notfall|verletzt|verlaufen|verirrt)\b"
)
_NOT_SELF = re.compile(
    r"\blost (?:time|\d+|some time|weight|(?:my|a|the|her) (?:bottle|gloves?|hat|buff|poles?|cup|gels?|torch|appetite))\b"
)
_FOR_HER = re.compile(
    r"\b(?:asked|asking|asks|calling|called|shouting|needs?|wants|needing) (?:for )?(?:urgent )?(?:help|rescue|a medic|a doctor|an? ambulance|medics?|ambulance)\b|"
    r"\bshe (?:is |has |was )?(?:badly |seriously )?(?:hurt|injured|collapsed|unconscious|bleeding|lost)\b|\b(?:sos|mayday)\b|"
    r"\bcall (?:an ambulance|for help|rescue|mountain rescue)\b"
)


def _distress(said: Sentence, ctx: Context) -> Distress | None:
    """Help is never argued with: a runner's or pacer's word is enough; of others, that she needs it."""
    of_self = bool(ctx.parts & {PartKind.RUNNER, PartKind.PACER})
    runner = said.runner.id if said.runner else None
    if of_self and _SELF.search(said.plain) and not _NOT_SELF.search(said.plain):
        return Distress(said.words, ctx.now, runner, by_self=True)
    text = said.text
    if _FOR_HER.search(text) and not asking.is_question(text):
        return Distress(
            said.words, ctx.now, runner, by_self=not of_self and re.search("sos|mayday", text) is not None
        )
    return None


# --- lists and short form ---------------------------------------------------------------------------------


def _listed(said: Sentence, ctx: Context) -> Understood | None:
    plain = names.find_runner(said.plain, tuple(replace(r, bib="") for r in ctx.runners))
    text = plain.rest if plain else said.plain
    if said.point is not None:
        text = text.replace(said.point.words, names.POINT, 1)
    text = _FINISH_SAID.sub(names.FINISH, text)
    items = lists.read_list(text, ctx.now, ctx.time_zone, frozenset(r.bib for r in ctx.runners))
    if items is None:
        return None
    alone = items[0]
    if len(items) == 1 and alone.kind is Kind.OUT and not (alone.bib or alone.at or said.point):
        return None
    reports: list[Report] = []
    for item in items:
        runner = said.runner
        if item.bib is not None:
            runner = next((r for r in ctx.runners if r.bib == item.bib), None)
            if runner is None:
                return _ask_bib(item.bib, items, said, ctx)
        if runner is None:
            return None
        report = _placed(Report(item.kind, item.at or ctx.now, runner.id), said, runner, ctx)
        if isinstance(report, AskBack):
            return report
        reports.append(report)
    return Reported(tuple(_in_order(reports)))


def _in_order(reports: list[Report]) -> list[Report]:
    """'in … out …' of one runner without a point: the out is of the point she came in at."""
    last: dict[str | None, Report] = {}
    out = []
    for r in reports:
        before = last.get(r.runner)
        if r.kind is Kind.OUT and before is not None and before.kind is Kind.IN:
            r = replace(r, point=before.point, guessed=before.guessed)
        last[r.runner] = r
        out.append(r)
    return out


def _ask_bib(bib: str, items: tuple[lists.Item, ...], said: Sentence, ctx: Context) -> AskBack:
    """An unknown bib: what was clear is kept apart, the near ones are offered."""
    known = {r.bib: r for r in ctx.runners}
    clear = []
    for item in items:
        runner = known.get(item.bib or "")
        if runner is not None:
            report = _placed(Report(item.kind, item.at or ctx.now, runner.id), said, runner, ctx)
            if isinstance(report, Report):
                clear.append(report)
    choices = []
    for near in lists.near_bibs(bib, ctx.runners):
        meant = []
        for item in items:
            if item.bib == bib:
                report = _placed(Report(item.kind, item.at or ctx.now, near.id), said, near, ctx)
                if isinstance(report, Report):
                    meant.append(report)
        choices.append(Choice(near.id, Reported(tuple(_in_order(meant)))))
    return AskBack(Need.BIB, tuple(choices), bib, also=tuple(_in_order(clear)))


# --- follow-ups --------------------------------------------------------------------------------------------

_LEAD = r"(?:and |so |ok |what about |how about |then |same |again |but |for |at |to |in |with |on )*"
_AFTER = re.compile(
    rf"^{_LEAD}(?:the )?(?:one |point |stop |next (?:one )?)?(?:after|following)(?: that| this| it)?(?: one)?(?: \?)?$|"
    rf"^(?:and |so |then )+(?:the )?next(?: one| point| stop)?(?: after)?(?: that)?(?: \?)?$|^and then(?: \?)?$|"
    r"^(?:the )?next one(?: after)?(?: that)?(?: \?)?$|\bthe one after\b|^(?:and )?after (?:that|PT)(?: \?)?$"
)
_PLACE_ONLY = re.compile(rf"^{_LEAD}(?:the )?(?:PT|FINISH)(?: then| though)?(?: \?)?$")
_RUNNER_ONLY = re.compile(rf"^{_LEAD}(?:she|her)(?: then| though| too)?(?: \?)?$")


def _follow_up(said: Sentence, ctx: Context) -> Understood | None:
    """'and the one after?', 'and Kettle?', 'same for Tove': the last question again about something else."""
    last = ctx.last
    if _PLACE_ONLY.search(said.text) and (said.point or said.finish):
        if (
            last is not None
            and (last.question in asking.ABOUT_A_POINT)
            and last.question is not Question.PEOPLE
        ):
            again = replace(last, words=said.words)
            return _about(again, said, ctx)
        question = Question.FINISH if said.finish and said.point is None else Question.AT
        return _about(Asked(question, words=said.words), said, ctx)
    if last is None:
        if said.named and _RUNNER_ONLY.search(said.text) and said.runner:
            return Asked(Question.WHERE, said.runner.id, words=said.words)
        return None
    if said.named and _RUNNER_ONLY.search(said.text) and said.runner:
        return replace(last, runner=said.runner.id, words=said.words)
    if _AFTER.search(said.text) and said.runner:
        return _after(last, said.runner, said.words)
    return None


_ABOUT_MEETINGS = frozenset(
    {Question.MEETING, Question.BRING, Question.TAKE_BACK, Question.FOOD, Question.LEAVE, Question.DRIVE}
)


def _after(last: Asked, runner: RunnerHere, words: str) -> Asked:
    """The last question about the point after: for meetings the next with crew access."""
    place = place_of(runner)
    crew = last.question in _ABOUT_MEETINGS
    ids = [p.id for p in place.points]
    ahead = [p for p in place.ahead if p.crew_access or not crew]
    start = (
        ids.index(last.point) if last.point in ids else (ids.index(ahead[0].id) if ahead else len(ids) - 1)
    )
    later = [p for p in place.points[start + 1 :] if p.crew_access or not crew or p.finish]
    point = later[0].id if later else ids[-1]
    question = last.question
    if question in (Question.NEXT, Question.WHERE, Question.HEARD, Question.FINISH):
        question = Question.AT
    if question is Question.MEETING:
        question = Question.LEAVE
    return replace(last, question=question, point=point, runner=runner.id, words=words)


# --- questions and reports ---------------------------------------------------------------------------------


def _question_or_report(said: Sentence, ctx: Context) -> Understood | None:
    volunteer = ctx.parts <= {PartKind.VOLUNTEER}
    if asking.is_question(said.text) and not volunteer:
        return _question(said, ctx) or _report(said, ctx, loose=True)
    return _report(said, ctx, loose=volunteer) or _question(said, ctx) or _report(said, ctx, loose=True)


_PERCENT = re.compile(r"\b(\d+) percent\b|\bby (?:a )?(\d+)\b")
_FASTER = re.compile(r"\b(?:faster|quicker|speed\w*|picks? up|gains?)\b")


def _question(said: Sentence, ctx: Context) -> Understood | None:
    text = said.text
    later = find_ahead(text, ctx.now)
    if later is None and re.search(r"\b(?:if|suppos|when|say)\b", text):
        later = find_time(text, ctx.now, ctx.time_zone)
        if later is not None and re.search(r"\bnow\b", text):
            later = None
    question = asking.question_in(text if later is None else later.rest + " LATER")
    if question is None and later is not None:
        question = asking.question_in(text)
    if question is None:
        if (said.point or said.finish) and asking.is_question(text):
            question = Question.AT
        else:
            return Asked(Question.HELP_WORD, words=said.words) if re.fullmatch(r"help( \?)?", text) else None
    asked = Asked(question, words=said.words, person=said.person)
    if question is Question.SLOWER:
        m = _PERCENT.search(text)
        percent = int(m[1] or m[2]) if m else 10
        asked = replace(asked, factor=1 + (-percent if _FASTER.search(text) else percent) / 100)
    if question is Question.LEAVES_NOW:
        asked = replace(asked, leaving=later.at if later else ctx.now)
    if question in (Question.NEXT, Question.WHERE) and said.point is not None:
        asked = replace(asked, question=Question.AT)
    if question in (Question.NEXT, Question.AT) and said.finish and said.point is None:
        asked = replace(asked, question=Question.FINISH)
    return _about(asked, said, ctx)


_NO_RUNNER = frozenset(
    {Question.USAGE, Question.NUMBERS, Question.PEOPLE, Question.CARDS, Question.HELP_WORD}
)


def _about(asked: Asked, said: Sentence, ctx: Context) -> Understood:
    """The question with its runner and point; asks back where those are open and matter."""
    runner = said.runner
    if runner is None and asked.question not in _NO_RUNNER:
        if len(ctx.runners) < 2:
            return asked
        choices = tuple(
            Choice(r.id, _settled(_point_of(replace(asked, runner=r.id), said, r, ctx))) for r in ctx.runners
        )
        return AskBack(Need.RUNNER, choices)
    if runner is None:
        runner = ctx.runners[0] if ctx.runners else None
        if runner is None:
            return asked
        return _point_of(asked, said, runner, ctx)
    asked = replace(asked, runner=None if asked.question in _NO_RUNNER else runner.id)
    return _point_of(asked, said, runner, ctx)


def _settled(meant: Understood) -> Asked | Reported | Unclear | AskBack:
    return meant if isinstance(meant, Asked | Reported | Unclear | AskBack) else Unclear("")


def _finish_id(runner: RunnerHere) -> str | None:
    return next((p.id for p in runner.points if p.finish), None)


def _point_of(asked: Asked, said: Sentence, runner: RunnerHere, ctx: Context) -> Asked | AskBack:
    if asked.question is Question.FINISH:
        return replace(asked, point=_finish_id(runner))
    if asked.question not in asking.ABOUT_A_POINT:
        return asked
    if said.point is None:
        return replace(asked, point=_finish_id(runner)) if said.finish else _by_default(asked, said, ctx)
    ahead = asked.question not in asking.PAST
    point = names.which_pass(said.point, said.plain, runner, ahead=ahead)
    if point is not None:
        finish = point == _finish_id(runner) and asked.question is Question.AT
        return replace(asked, question=Question.FINISH if finish else asked.question, point=point)
    choices = tuple(Choice(i, replace(asked, point=i)) for i in said.point.ids)
    return AskBack(Need.POINT, choices, said.point.words)


_HERE_OR_THERE = re.compile(r"\b(?:there|that one|it)\b")


def _by_default(asked: Asked, said: Sentence, ctx: Context) -> Asked:
    """'there' means the point last asked about; else the point stays open."""
    last = ctx.last
    if last is not None and last.point and _HERE_OR_THERE.search(said.text):
        same = last.runner in (None, asked.runner)
        return replace(asked, point=last.point) if same else asked
    if (
        asked.question is Question.SLOWER
        and asking.question_in(said.text.replace("slow", "")) is Question.FINISH
    ):
        return asked
    return asked


_CORRECTS = re.compile(
    r"^(?:(?:sorry|no|oops|actually|wait) )*(?:correction|correct|corrected|amend|i meant|meant|i mean|it was|that was|should be|"
    r"that should be|actually) "
)
_STRONG_IN = re.compile(
    r"\b(?:arrived|arrives|reached|turned up|rocked up|checked in|made it|rolled in|(?:got|came|come|comes|coming|pulled|just|is|now|she) in|"
    r"(?:just |she |has )got (?:in|here|to)|(?:she|her) (?:is )?(?:just )?(?:here|at (?:PT|FINISH))|with (?:us|me)|here now|just here|landed)\b|^(?:in|here|at PT|finish\w*|she finish\w*|she (?:is|has) (?:finish\w*|home))\b"
)
_STRONG_OUT = re.compile(
    r"^(?:she |just |ok |now |is |has |been )*(?:left|leaving|leaves|departed|gone|out|off|heading|headed|on her way|setting off|set off|away|moving on)\b|"
    r"\b(?:left|departed|leaving|out of|heading out|headed out|head out|set off|setting off|on her way|off again)\b"
)
_BODY = re.compile(
    r"\b(?:left|right) (?:heel|foot|knee|leg|ankle|toe|hip|shin|calf|arm|hand|side|shoulder|shoe|wrist|quad|eye)s?\b"
)
_LEAVING_TIME = re.compile(r"^(?:leaving time|departure|leave)\b")


def _report(said: Sentence, ctx: Context, *, loose: bool) -> Understood | None:
    """The report a sentence makes; `loose` takes any 'in' and 'out' for one."""
    said, corrects = _correction(said)
    time = find_time(said.text, ctx.now, ctx.time_zone)
    length = find_length(said.text)
    text = time.rest if time else (length[1] if length else said.text)
    at = time.at if time else ctx.now
    base = Report(
        Kind.NOTE,
        at,
        said.runner.id if said.runner else None,
        words=said.words,
        guessed=(time is not None and time.unsure) or (said.named and said.runner_score < names.SURE),
        corrects=corrects,
        amount=length[0] if length else None,
    )
    own = _crew(base, said, text, ctx)
    if own is not None:
        return own
    report = _kind_of(base, said, text, time is not None, ctx, loose=loose)
    if report is None or isinstance(report, AskBack):
        return report
    return _finished_report(report, said, ctx)


def _correction(said: Sentence) -> tuple[Sentence, bool]:
    m = _CORRECTS.search(said.text)
    if m is None or said.text == m[0].strip():
        return said, False
    return replace(said, text=said.text[m.end() :]), True


def _finished_report(report: Report, said: Sentence, ctx: Context) -> Understood | None:
    runner = said.runner
    if runner is None:
        if report.kind in _RACE_WIDE:
            return Reported((report,))
        if len(ctx.runners) < 2:
            return None
        choices = []
        for r in ctx.runners:
            placed = _placed(replace(report, runner=r.id), said, r, ctx)
            choices.append(Choice(r.id, placed if isinstance(placed, AskBack) else Reported((placed,))))
        return AskBack(Need.RUNNER, tuple(choices))
    placed = _placed(report, said, runner, ctx)
    return placed if isinstance(placed, AskBack) else Reported((placed,))


_RACE_WIDE = frozenset({Kind.START_DELAYED, Kind.HELD, Kind.RELEASED, Kind.CREW_LEFT, Kind.RACE_CONTROL_TOLD})
_CREW_PARTS = frozenset({PartKind.CREW, PartKind.PACER, PartKind.SAFETY_CONTACT, PartKind.ORGANISER})


def _crew(base: Report, said: Sentence, text: str, ctx: Context) -> Understood | None:
    """What crew say of themselves: there, or on the road."""
    if PartKind.RUNNER in ctx.parts or not ctx.parts & _CREW_PARTS or re.search(r"\bshe\b|\bher\b", text):
        return None
    alone = said.runner is not None and said.runner.at is not None and not re.search(r"\b(?:we|i)\b", text)
    if reporting.says_crew_off(text) and not alone:
        return Reported((replace(base, kind=Kind.CREW_LEFT),))
    if reporting.says_crew_there(text) and said.runner is not None:
        placed = _placed(replace(base, kind=Kind.CREW_THERE), said, said.runner, ctx)
        return placed if isinstance(placed, AskBack) else Reported((placed,))
    return None


def _kind_of(
    base: Report, said: Sentence, text: str, timed: bool, ctx: Context, *, loose: bool
) -> Report | AskBack | None:
    """Which kind of report; the ways of saying that her race may be over are looked at first."""
    if asking.is_question(said.text) and not loose:
        return None
    ended = _ended(base, said, text, ctx)
    if ended is not None:
        return ended
    kind = reporting.kind_in(text if base.amount is None else text + " for LENGTH")
    if kind is None and base.amount is not None and re.search(r"\bstopp?\w*\b", text):
        kind = Kind.RESTING
    if kind is Kind.POSITION:
        return replace(
            base, kind=kind, guessed=True, placed_by_words=True, condition=reporting.says_condition(text)
        )
    if kind is Kind.START_DELAYED and base.amount is None:
        length = find_length(said.text, bare=True)
        return replace(base, kind=kind, amount=length[0] if length else None)
    if kind is not None:
        return replace(base, kind=kind)
    return _in_or_out(base, said, text, timed, loose=loose)


def _in_or_out(
    base: Report, said: Sentence, text: str, timed: bool, *, loose: bool
) -> Report | AskBack | None:
    condition = reporting.says_condition(text)
    text = _BODY.sub(" ", text)
    if _STRONG_OUT.search(text) and not _LEAVING_TIME.search(text):
        if (
            re.search(r"\bout\b|^off\b", text)
            and not (timed or said.point)
            and re.fullmatch(
                r"(?:she |is |now |just |has |her |gone |just )*(?:out|off)(?: now)?(?: \?)?", text
            )
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
    if reporting.says_out(text):
        return replace(base, kind=Kind.OUT) if timed or said.point else _ask_out(base, said)
    if reporting.says_in(text) or (timed and (said.point or said.finish)):
        return replace(base, kind=Kind.IN)
    return None


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
    placed: Report = retired
    if said.runner is not None:
        found = _placed(retired, said, said.runner, ctx)
        placed = found if isinstance(found, Report) else retired
    return AskBack(
        Need.HOW, tuple(Choice(h.value, Reported((replace(placed, how=h),))) for h in _ENDED_HOW), said.words
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
    """The point a report without one is about: where the writer stands, where she is, or the next due."""
    place = place_of(runner)
    if stands_at is not None:
        return stands_at
    if place.at is not None and kind in (Kind.OUT, Kind.IN):
        return place.at.id
    if place.ahead:
        return place.ahead[0].id
    return place.points[-1].id if place.points else None


def _placed(report: Report, said: Sentence, runner: RunnerHere, ctx: Context) -> Report | AskBack:
    """The report with its point; asks back if several different places fit."""
    report = replace(report, runner=runner.id)
    if said.point is not None:
        point = names.which_pass(said.point, said.plain, runner, ahead=False)
        if point is None:
            choices = tuple(Choice(i, Reported((replace(report, point=i),))) for i in said.point.ids)
            return AskBack(Need.POINT, choices, said.point.words)
        # Which of two passes was meant is inferred, but from where she is: as good as written.
        return replace(report, point=point, guessed=report.guessed or said.point.score < names.SURE)
    if said.finish or (report.kind is Kind.IN and re.search(r"\bfinish|\bhome\b", said.text)):
        finish = _finish_id(runner)
        near = finish in [p.id for p in place_of(runner).ahead[:2]]
        return replace(report, point=finish, guessed=report.guessed or not (near or said.finish))
    if report.kind not in _AT_A_POINT:
        return report
    point = _expected(runner, report.kind, ctx.point)
    surely = ctx.point is not None or (runner.at is not None and report.kind is Kind.OUT)
    return replace(report, point=point, guessed=report.guessed or not surely)


UNDO_WITHIN = timedelta(minutes=10)
"""How long a report can be taken back with one word."""


def undo_until(at: datetime) -> datetime:
    """Until when a report sent at `at` can be undone."""
    return at + UNDO_WITHIN
