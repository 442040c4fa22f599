"""What a sentence asks: the question, the point and runner it is about, and follow-ups on the one before."""

from __future__ import annotations

import re
from dataclasses import replace

from bot.words import asking, beside, names, supposing
from bot.words.everyday import RIGHT_AS_IT_IS
from bot.words.meaning import (
    UNSAID,
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
from bot.words.tidy import MENDED
from bot.words.times import find_ahead, find_time
from server.event.model import PartKind
from server.wording.answer import RunnerHere

_NO_RUNNER = frozenset(
    {
        Question.COVER,
        Question.DUTY,
        Question.USAGE,
        Question.NUMBERS,
        Question.PEOPLE,
        Question.CARDS,
        Question.HELP_WORD,
        Question.CATCH_UP,
        Question.WEATHER,
    }
)

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
    if _PLACE_ONLY.search(said.text) and (said.point or said.finish) and not _who_is_there(said, ctx):
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
        if last.runner is None or last.question in _NO_RUNNER:
            # What was asked before was of oneself, or too long ago: a runner's name asks where she is.
            return Asked(Question.WHERE, said.runner.id, words=said.words)
        return replace(last, runner=said.runner.id, words=said.words)
    other = [r for r in ctx.runners if r.id != last.runner]
    if _OTHER_RUNNER.search(said.text) and len(other) == 1:
        return replace(last, runner=other[0].id, words=said.words)
    if _AFTER.search(said.text) and said.runner:
        return _after(last, said.runner, said.words)
    return None


def _who_is_there(said: Sentence, ctx: Context) -> bool:
    """'at Kettle' by itself, from crew whose place nobody knows, may say where they are: no question, and hours after
    one no more of it."""
    stale = ctx.last is None or (ctx.last.runner is None and ctx.last.point is None)
    alone = re.fullmatch(r"at (?:PT|FINISH)", said.text) is not None and stale
    return alone and ctx.point is None and PartKind.CREW in ctx.parts


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


# Of these the place is what is asked for; other answers name the place they are about.
_OF_A_PLACE = frozenset(
    {Question.NEXT, Question.AT, Question.WHERE, Question.LAST_STOP, Question.CUT_OFF, Question.DARK}
)

_A_PLACE = re.compile(
    r"\b(?:at|to|reach|in) (?:the |der |dem |den |die |das )?(?!the\b|der\b|dem\b|den\b|die\b|das\b)"
    r"(?P<name>[a-z]{4,})(?= \?$|$| (?:at|then|now|if|when|by|today|tonight|and|or)\b)"
)
# Words after 'at', 'to' and 'in' that name no place, or any.
_NO_PLACE = frozenset(
    """
    least last once first night dawn dusk noon midnight home there here this that them next point stop station finish
    moment all time times pace speed present which what each every these both some rest sleep come leave bring
    drive wait meet arrive morning evening afternoon hours minutes start place places course trail route camp
    hurt pain order time touch position late later soon have take give need know call tell report walk race
    control reached minute hour while total person front back dark light daylight trouble good shape form spirits
    front ziel naechste naechsten letzten anderen etwa nacht haben kommen bringen nehmen fahren laufen gehen machen
    danger shop arzt ende warten stay sein ihre ihren unsere unserem hause hotel auto wagen crew
    """.split()  # noqa: SIM905 - a list of words reads better as words
)


_MODAL = re.compile(r"\b(?:soll\w*|kann|darf|muss|will|wird|könnte|möchte|würde)\b")


def _place_not_known(said: Sentence) -> str:
    """A word that stands where a place does and is none of the course's; '' where there is none."""
    if said.point is not None or said.finish or said.person is not None:
        return ""
    m = _A_PLACE.search(said.text)
    if m is None or m["name"] in _NO_PLACE or m["name"] in RIGHT_AS_IT_IS or m["name"] in MENDED:
        return ""
    if m["name"].endswith("en") and _MODAL.search(said.words.lower()):
        return ""  # 'wann sollte sie aufhören': a verb at the end, no place
    return m["name"]


def _which_place(asked: Asked, said: Sentence, word: str, ctx: Context) -> AskBack | None:
    """A place that is not on the course: which point is meant; never another place's answer as if it were that one."""
    runner = said.runner or next(iter(ctx.candidates()), None)
    if runner is None:
        return None
    place = place_of(runner)
    question = Question.AT if asked.question in (Question.NEXT, Question.WHERE) else asked.question
    points = place.points if question in asking.PAST else place.ahead or place.points
    choices = []
    for p in points:
        one = replace(asked, question=Question.FINISH if p.finish and question is Question.AT else question)
        then = about(replace(one, point=p.id), replace(said, text=""), ctx)
        choices.append(Choice(p.id, _settled(_at(then, p.id))))
    return AskBack(Need.POINT, tuple(choices), word)


def _at(meant: Understood, point: str) -> Understood:
    if isinstance(meant, AskBack):
        return replace(
            meant, choices=tuple(Choice(c.label, _settled(_at(c.then, point))) for c in meant.choices)
        )
    return replace(meant, point=point) if isinstance(meant, Asked) else meant


_MAY_BE_BESIDE = frozenset(
    {
        Question.NEXT,
        Question.AT,
        Question.FINISH,
        Question.WHERE,
        Question.MEETING,
        Question.LEAVE,
        Question.DRIVE,
        Question.FOOD,
        Question.BRING,
        Question.PEOPLE,
        Question.PLAN,
    }
)
"""Whose lines are wide enough to catch what is about something else ('is it worth bringing the dog to the finish')."""

_PERCENT = re.compile(r"\b(\d+) percent\b|\bby (?:a )?(\d+)\b")
_FASTER = re.compile(r"\b(?:faster|quicker|speed\w*|picks? up|gains?)\b")


def question(said: Sentence, ctx: Context) -> Understood | None:
    text = said.text
    later = find_ahead(text, ctx.now)
    if later is None and re.search(r"\b(?:if|suppos|when|say)\b", text):
        later = find_time(text, ctx.now, ctx.time_zone)
        if later is not None and re.search(r"\bnow\b", text):
            later = None
    question = asking.not_known(text, said.words)
    if question is None:
        question = asking.question_in(text if later is None else later.rest + " LATER")
    if question is None and later is not None:
        question = asking.question_in(text)
    if question is None and supposing.asks_for_a_remedy(said.words):
        question = Question.HOW if supposing.asks_how(said.words) else Question.CARDS
    names_beside = (
        beside.not_known_here(text, said.words) if question in _MAY_BE_BESIDE or question is None else ""
    )
    if question is None:
        asks = asking.is_question(text) or supposing.asks_in_german(said.words)
        if (said.point or said.finish) and asks and not asking.is_weather(text):
            question = Question.AT
            names_beside = names_beside or UNSAID
        else:
            return Asked(Question.HELP_WORD, words=said.words) if re.fullmatch(r"help( \?)?", text) else None
    if question is Question.MEETING and said.point is not None and re.search(r"\bi (?:start|PT)\b", text):
        # 'When do I start' asks for no point, though the start is one.
        said = replace(said, point=None)
    if question in _OF_A_PLACE and (unknown := _place_not_known(said)):
        return _which_place(Asked(question, words=said.words), said, unknown, ctx)
    asked = Asked(question, words=said.words, person=said.person, beside=names_beside)
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


def about(asked: Asked, said: Sentence, ctx: Context) -> Understood:
    """The question with its runner and point; asks back where those are open and matter."""
    runner = said.runner
    if runner is None and asked.question not in _NO_RUNNER:
        if len(ctx.runners) < 2:
            return asked
        choices = tuple(
            Choice(r.id, _settled(_point_of(replace(asked, runner=r.id), said, r, ctx)))
            for r in ctx.candidates()
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
