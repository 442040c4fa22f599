"""What a sentence asks: the question, the point and runner it is about, and follow-ups on the one before."""

from __future__ import annotations

import re
from dataclasses import replace

from bot.words import asking, names
from bot.words.meaning import (
    AskBack,
    Asked,
    Choice,
    Context,
    Need,
    Question,
    Reported,
    Unclear,
    Understood,
    place_of,
)
from bot.words.sentence import Sentence, finish_of
from bot.words.times import find_ahead, find_time
from server.wording.answer import RunnerHere

_LEAD = r"(?:and |so |ok |what about |how about |then |same |again |but |for |at |to |in |with |on )*"
_AFTER = re.compile(
    rf"^{_LEAD}(?:the )?(?:one |point |stop |next (?:one )?)?(?:after|following)(?: that| this| it)?(?: one)?(?: \?)?$|"
    rf"^(?:and |so |then )+(?:the )?next(?: one| point| stop)?(?: after)?(?: that)?(?: \?)?$|^and then(?: \?)?$|"
    r"^(?:the )?next one(?: after)?(?: that)?(?: \?)?$|\bthe one after\b|^(?:and )?after (?:that|PT)(?: \?)?$"
)
_PLACE_ONLY = re.compile(rf"^(?!in at\b){_LEAD}(?:the )?(?:PT|FINISH)(?: then| though)?(?: \?)?$")
_OTHER_RUNNER = re.compile(rf"^{_LEAD}(?:the )?other (?:one|runner|girl|lady|woman)(?: too)?(?: \\?)?$")
_RUNNER_ONLY = re.compile(rf"^{_LEAD}(?:she|her)(?: then| though| too)?(?: \?)?$")


def follow_up(said: Sentence, ctx: Context) -> Understood | None:
    """'and the one after?', 'and Kettle?', 'same for Tove': the last question again about something else."""
    last = ctx.last
    if _PLACE_ONLY.search(said.text) and (said.point or said.finish):
        if (
            last is not None
            and (last.question in asking.ABOUT_A_POINT)
            and last.question is not Question.PEOPLE
        ):
            again = replace(last, words=said.words)
            return about(again, said, ctx)
        question = Question.FINISH if said.finish and said.point is None else Question.AT
        return about(Asked(question, words=said.words), said, ctx)
    if last is None:
        if said.named and _RUNNER_ONLY.search(said.text) and said.runner:
            return Asked(Question.WHERE, said.runner.id, words=said.words)
        return None
    if said.named and _RUNNER_ONLY.search(said.text) and said.runner:
        return replace(last, runner=said.runner.id, words=said.words)
    other = [r for r in ctx.runners if r.id != last.runner]
    if _OTHER_RUNNER.search(said.text) and len(other) == 1:
        return replace(last, runner=other[0].id, words=said.words)
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


_PERCENT = re.compile(r"\b(\d+) percent\b|\bby (?:a )?(\d+)\b")
_FASTER = re.compile(r"\b(?:faster|quicker|speed\w*|picks? up|gains?)\b")


def question(said: Sentence, ctx: Context) -> Understood | None:
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
        if (said.point or said.finish) and asking.is_question(text) and not asking.is_weather(text):
            question = Question.AT
        else:
            return Asked(Question.HELP_WORD, words=said.words) if re.fullmatch(r"help( \?)?", text) else None
    if question is Question.MEETING and said.point is not None and re.search(r"\bi (?:start|PT)\b", text):
        # 'When do I start' asks for no point, though the start is one.
        said = replace(said, point=None)
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
    return about(asked, said, ctx)


_NO_RUNNER = frozenset(
    {Question.DUTY, Question.USAGE, Question.NUMBERS, Question.PEOPLE, Question.CARDS, Question.HELP_WORD}
)


def about(asked: Asked, said: Sentence, ctx: Context) -> Understood:
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


def _point_of(asked: Asked, said: Sentence, runner: RunnerHere, ctx: Context) -> Asked | AskBack:
    if asked.question is Question.FINISH:
        return replace(asked, point=finish_of(runner))
    if asked.question not in asking.ABOUT_A_POINT:
        return asked
    if said.point is None:
        return replace(asked, point=finish_of(runner)) if said.finish else _by_default(asked, said, ctx)
    ahead = asked.question not in asking.PAST
    point = names.which_pass(said.point, said.plain, runner, ahead=ahead)
    if point is not None:
        finish = point == finish_of(runner) and asked.question is Question.AT
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
