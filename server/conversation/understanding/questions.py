"""From an intent that asks to the question with its point and runner; the questions that plain phrases tell from their
neighbours, whatever the model makes of them ('who am I riding with' is not where she is, 'am I needed there' not what to
bring); and follow-ups on the question before."""

from __future__ import annotations

import re
from collections.abc import Callable, Sequence
from dataclasses import dataclass, replace
from datetime import timedelta
from itertools import pairwise

from rapidfuzz import fuzz

from server.conversation.telling.answer import PointHere, RunnerHere
from server.conversation.understanding import names
from server.conversation.understanding.again import ordinal
from server.conversation.understanding.features import question_form
from server.conversation.understanding.language import lexicon
from server.conversation.understanding.meaning import (
    UNSAID,
    AskBack,
    Asked,
    Choice,
    Context,
    Need,
    Question,
    Understood,
    place_of,
)
from server.conversation.understanding.sentence import (
    AHEAD,
    FINISH,
    LENGTH,
    PERSON,
    POINT,
    RUNNER,
    Sentence,
    finish_of,
)
from server.event.model import PartKind

OF_INTENT = {
    "when_there": Question.NEXT, "finish": Question.FINISH, "where": Question.WHERE, "plan_gap": Question.PLAN_GAP,
    "last_stop": Question.LAST_STOP, "cut_off": Question.CUT_OFF, "missed": Question.MISSED, "wait_or_go": Question.WAIT,
    "people": Question.PEOPLE, "ride": Question.RIDE, "bring": Question.BRING, "take_back": Question.TAKE_BACK,
    "food": Question.FOOD, "leave": Question.LEAVE, "drive": Question.DRIVE, "dark": Question.DARK,
    "heard": Question.HEARD, "what_if": Question.SLOWER, "leaves_now": Question.LEAVES_NOW, "plan": Question.PLAN,
    "meeting": Question.MEETING, "how_is_she": Question.HOW, "trouble": Question.CARDS, "numbers": Question.NUMBERS,
    "picture": Question.PICTURE, "photo": Question.PHOTO, "walk_towards": Question.TOWARDS,
    "who_knows": Question.TOLD, "my_race": Question.MY_RACE, "goals": Question.GOALS, "why": Question.WHY,
    "signal": Question.SIGNAL, "catch_up": Question.CATCH_UP, "duty": Question.DUTY, "cover": Question.COVER,
    "report": Question.REPORT, "usage": Question.USAGE, "unknown_weather": Question.WEATHER,
    "unknown_rivals": Question.RIVALS, "unknown_rules": Question.RULES, "unknown_other": Question.ELSEWHERE,
    "start_time": Question.START, "clock": Question.CLOCK, "course_ahead": Question.COURSE, "my_reports": Question.MINE,
    "clothing": Question.LOOKS, "pace": Question.PACE, "words": Question.WORDS, "complaint": Question.COMPLAINT,
}  # fmt: skip

ABOUT_A_POINT = frozenset(
    {
        Question.AT, Question.LAST_STOP, Question.CUT_OFF, Question.MISSED, Question.WAIT, Question.PEOPLE,
        Question.RIDE, Question.BRING, Question.TAKE_BACK, Question.FOOD, Question.LEAVE, Question.DRIVE,
        Question.MEETING, Question.DARK, Question.SLOWER, Question.LEAVES_NOW, Question.WEATHER, Question.LEAVE_THERE,
        Question.SIGNAL, Question.ELSEWHERE, Question.RULES, Question.PHOTO, Question.COURSE, Question.MINE,
        Question.NEEDED, Question.FETCH, Question.PARKING, Question.SILENT,
    }
)  # fmt: skip
"""Questions for which the point named matters; the others drop it."""
PAST = frozenset({Question.LAST_STOP, Question.MISSED, Question.MINE})
"""Questions about what has been: of a place passed twice, the last pass is meant."""
NO_RUNNER = frozenset(
    {
        Question.COVER, Question.DUTY, Question.USAGE, Question.NUMBERS, Question.PEOPLE, Question.CARDS,
        Question.HELP_WORD, Question.CATCH_UP, Question.WEATHER, Question.RULES, Question.ELSEWHERE, Question.SIGNAL,
        Question.WHY, Question.PHOTO, Question.CLOCK, Question.MINE, Question.WORDS, Question.COMPLAINT,
    }
)  # fmt: skip
_ABOUT_MEETINGS = frozenset(
    {
        Question.MEETING, Question.BRING, Question.TAKE_BACK, Question.FOOD, Question.LEAVE, Question.DRIVE,
        Question.NEEDED, Question.PARKING,
    }
)  # fmt: skip
SLOWER_BY = 10
"""Per cent, where none is said."""


@dataclass(frozen=True, slots=True)
class Plain:
    """`words`: the phrases of the lexicon, of which one must be there; `also`: others of which one must be there too;
    `said`: it asks without the form of a question ('she should have been here ages ago'); `but`: classes of words of which
    one makes it another question ('when am I needed')"""

    words: str
    intent: str
    question: Question
    also: str = ""
    said: bool = False
    but: tuple[str, ...] = ()
    runner: bool | None = None
    """Asked by her (True), by anybody else (False), or by all (None)."""


_PLAIN = (
    Plain("ask_car", "ride", Question.RIDE, runner=False),
    Plain("ask_my_day", "duty", Question.DUTY, said=True, runner=False, but=("she",)),
    Plain("ask_odds", "cut_off", Question.CUT_OFF, runner=False, but=("when", "i", "we")),
    Plain("ask_own_odds", "cut_off", Question.CUT_OFF, said=True, runner=True, but=("when",)),
    Plain(
        "ask_needed_so", "duty", Question.NEEDED, said=True, runner=False, but=("when", "why", "what", "how")
    ),
    Plain("ask_needed", "duty", Question.NEEDED, runner=False, but=("when", "why", "what", "how")),
    Plain("ask_fetch", "cover", Question.FETCH),
    Plain("ask_next_bit", "course_ahead", Question.NEXT_BIT, runner=True),
    Plain("ask_silent", "catch_up", Question.SILENT, runner=False),
    Plain("ask_spot", "people", Question.ON_SPOT, runner=False),
    Plain("ask_parking", "meeting", Question.PARKING, runner=False),
    Plain("ask_crew_food", "unknown_other", Question.CREW_FOOD, runner=False, but=("when",)),
    Plain("ask_how_far_to_one", "people", Question.PEOPLE),
    Plain("ask_up", "leave", Question.LEAVE, runner=False),
    Plain("ask_took", "finish", Question.TOOK),
    Plain("ask_late_said", "plan_gap", Question.LATE, said=True, runner=False, but=("neg",)),
    Plain("ask_late", "plan_gap", Question.LATE, runner=False),
    Plain("ask_ground", "course_ahead", Question.GROUND),
    Plain("takes_over", "dark", Question.DARK, also="ask_light", runner=False),
)


def plain_question(said: Sentence, parts: frozenset[PartKind]) -> Plain | None:
    """What a clause plainly asks; None where no phrase says it."""
    runs = PartKind.RUNNER in parts
    read = lexicon().read
    for one in _PLAIN:
        if one.runner not in (None, runs) or not read[one.words].has(said.masked):
            continue
        if one.also and not read[one.also].has(said.masked):
            continue
        if not any(said.says(c) for c in one.but):
            return one
    return None


def ask(intent: str, said: Sentence, ctx: Context) -> Understood | None:
    """The question that an intent stands for; None for an intent that asks nothing."""
    question = OF_INTENT.get(intent)
    if question is None:
        return None
    plainly = plain_question(said, ctx.parts)
    if plainly is not None and plainly.intent == intent:
        question = plainly.question
    asked = Asked(question, words=said.written, person=said.person)
    if question is Question.MY_RACE and PartKind.RUNNER not in ctx.parts:
        asked = replace(asked, question=Question.PLAN_GAP)
    elif question is Question.MY_RACE and how_far_to(said):
        asked = replace(asked, question=Question.DRIVE)
    if question is Question.SLOWER:
        percent = next((a.number for a in said.amounts if a.unit == "PERCENT"), None)
        length = _more_of(said, ctx)
        if percent is None and length is not None:
            asked = replace(asked, more=length)
        else:
            amount = percent or float(SLOWER_BY)
            asked = replace(asked, factor=1 + (-amount if said.reads("faster") else amount) / 100)
    if question is Question.LEAVES_NOW:
        later = next((t.at for t in said.times if not t.bare), ctx.now)
        asked = replace(asked, leaving=later)
    asks_number = (
        question in (Question.NUMBERS, Question.PEOPLE) and said.says("number") and said.person is None
    )
    if asks_number and said.says("she") and ctx.last is not None and ctx.last.person:
        # 'What's his number' of somebody just spoken of.
        asked = replace(asked, question=Question.PEOPLE, person=ctx.last.person)
    if question is Question.ELSEWHERE:
        asked = replace(asked, beside=_named_beside(said))
    if question is Question.RULES and (said.says("leave") or said.says("dropped") or said.says("kit")):
        asked = replace(asked, question=Question.LEAVE_THERE)
    if question in (Question.NEXT, Question.WHERE) and said.point is not None:
        asked = replace(asked, question=Question.AT)
    if asked.question in (Question.NEXT, Question.AT) and said.finish and said.point is None:
        asked = replace(asked, question=Question.FINISH)
    return about(asked, said, ctx)


def how_far_to(said: Sentence) -> bool:
    """Whether the way to a place is asked for, not how far ahead of the plan or behind it one is."""
    return said.says("howfar") and not said.says("late") and (said.point is not None or said.says("next"))


def _more_of(said: Sentence, ctx: Context) -> timedelta | None:
    """The time that is supposed to be lost, or gained."""
    ahead = next((t.at - ctx.now for t in said.times if t.ahead), None)
    length = next((x.length for x in said.lengths), ahead)
    return -length if length is not None and said.reads("faster") else length


def _named_beside(said: Sentence) -> str:
    """The thing that is asked about and not in the file, in the writer's word."""
    outside = lexicon().classes["outside"]
    return next((w for w in said.plain if outside.word(w)), UNSAID)


def of_a_place(said: Sentence, ctx: Context) -> Understood | None:
    """'Is there a loo at the mill', 'can I camp there', 'do they have veggie food': what a place has and allows is in no
    file, whatever else the words sound like; None for anything that is no such question."""
    if said.point is None or said.named or not said.reads("place_has"):
        return None
    asks_so = question_form(said) or said.asks or said.written.rstrip().endswith("?")
    if not asks_so or said.says("she") or said.says("bring") or said.reads("time_left"):
        return None
    has = lexicon().read["place_has"]
    beside = next((w for w in said.plain if has.word(w)), UNSAID)
    return about(Asked(Question.ELSEWHERE, words=said.written, beside=beside), said, ctx)


def about(asked: Asked, said: Sentence, ctx: Context) -> Understood:
    """The question with its runner and point; asks back where those are open and matter."""
    runner = said.runner
    if runner is None and asked.question not in NO_RUNNER:
        if len(ctx.runners) < 2:
            return asked
        choices = tuple(
            Choice(r.id, _point_of(replace(asked, runner=r.id), said, r, ctx)) for r in ctx.candidates()
        )
        return AskBack(Need.RUNNER, choices)
    if runner is None:
        runner = ctx.runners[0] if ctx.runners else None
        if runner is None:
            return asked
        return _point_of(asked, said, runner, ctx)
    asked = replace(asked, runner=None if asked.question in NO_RUNNER else runner.id)
    return _point_of(asked, said, runner, ctx)


def _point_of(asked: Asked, said: Sentence, runner: RunnerHere, ctx: Context) -> Asked | AskBack:
    if asked.question is Question.FINISH:
        return replace(asked, point=finish_of(runner))
    swap = asked.question is Question.COVER and asked.person is not None and said.point is not None
    if asked.question not in ABOUT_A_POINT and not swap:
        return asked
    if said.point is None:
        # 'Wait for her or go to the finish' does not ask about the finish.
        to_finish = said.finish and asked.question is not Question.WAIT
        return replace(asked, point=finish_of(runner)) if to_finish else _by_default(asked, said, ctx)
    ahead = asked.question not in PAST
    crew = asked.question in _ABOUT_MEETINGS
    point = names.which_pass(said.point, said.masked, runner, ahead=ahead, crew=crew)
    if point is not None:
        finish = point == finish_of(runner) and asked.question is Question.AT
        return replace(asked, question=Question.FINISH if finish else asked.question, point=point)
    choices = tuple(Choice(i, replace(asked, point=i)) for i in said.point.ids)
    return AskBack(Need.POINT, choices, said.point.words)


def _by_default(asked: Asked, said: Sentence, ctx: Context) -> Asked:
    """'there' means the point last asked about; else the point stays open."""
    last = ctx.last
    if last is not None and last.point and said.reads("there"):
        same = last.runner in (None, asked.runner)
        return replace(asked, point=last.point) if same else asked
    if asked.question is Question.SLOWER and said.says("finish"):
        runner = ctx.runner(asked.runner)
        return replace(asked, point=finish_of(runner)) if runner else asked
    return asked


# -- follow-ups --------------------------------------------------------------------------------------------------


def _core(said: Sentence) -> list[str]:
    """The words without those that lead on from the question before ('and', 'what about')."""
    follow = lexicon().read["follow"]
    words = list(said.masked)
    while words and (n := follow.begins(words)):
        words = words[n:]
    while words and lexicon().read["trail"].word(words[-1]):
        words.pop()
    return words


def follow_up(said: Sentence, ctx: Context) -> Understood | None:
    """'and the one after?', 'and Kettle?', 'same for Tove': the last question again about something else; None for any
    other sentence."""
    last, core = ctx.last, _core(said)
    if core in ([POINT], [FINISH]) and not _who_is_there(said, ctx):
        if last is not None and last.question in ABOUT_A_POINT and last.question is not Question.PEOPLE:
            return about(replace(last, words=said.written), said, ctx)
        question = Question.FINISH if said.finish and said.point is None else Question.AT
        return about(Asked(question, words=said.written), said, ctx)
    if core == [RUNNER] and said.runner is not None and len(said.runners) == 1:
        if last is None or last.runner is None or last.question in NO_RUNNER:
            # What was asked before was of oneself, or too long ago: a runner's name asks where she is.
            return Asked(Question.WHERE, said.runner.id, words=said.written)
        return replace(last, runner=said.runner.id, words=said.written)
    if core == [PERSON] and said.person is not None:
        return Asked(Question.PEOPLE, person=said.person, words=said.written)
    if last is None:
        return None
    again = _other_pass(last, said, ctx)
    if again is not None:
        return again
    more = _more_than_before(last, said, core, ctx)
    if more is not None:
        return more
    number = ordinal(said.written)
    if number is not None and last.question in _ABOUT_MEETINGS:
        return replace(last, nth=number, point=None, words=said.written)
    other = [r for r in ctx.runners if r.id != last.runner]
    row = " ".join(said.masked)
    if len(other) == 1 and (" ".join(core) in lexicon().read["other_runner"].whole):
        return replace(last, runner=other[0].id, words=said.written)
    after = lexicon().read["after"].whole
    if said.runner and (row in after or " ".join(core) in after):
        return _after(last, said.runner, said.written)
    return None


def _other_pass(last: Asked, said: Sentence, ctx: Context) -> Asked | None:
    """'No, the second time', 'non, celui du retour': the question before, of the other pass of the same place."""
    her = ctx.runner(last.runner)
    if her is None or last.point is None or len(said.plain) > _PASS_MAX:
        return None
    if not lexicon().read["other_pass"].has(said.plain) or said.point is not None:
        return None
    here = next((p for p in her.points if p.id == last.point), None)
    others = [p for p in her.points if here is not None and p is not here and _place(p) == _place(here)]
    return replace(last, point=others[0].id, words=said.written) if len(others) == 1 else None


def _place(point: PointHere) -> tuple[str, ...]:
    """The words of a point's name that say no pass."""
    return tuple(w for w in lexicon().words(point.name) if w not in lexicon().names["passes"])


_PASS_MAX = 9
"""Such an answer has no more words (own choice)."""


_OF_TIMES = frozenset(
    {
        Question.NEXT,
        Question.AT,
        Question.FINISH,
        Question.SLOWER,
        Question.LEAVES_NOW,
        Question.PLAN_GAP,
        Question.CUT_OFF,
    }
)


def _more_than_before(last: Asked, said: Sentence, core: Sequence[str], ctx: Context) -> Asked | None:
    """'And with 20 min more?': the times asked about before, so much later."""
    more = _more_of(said, ctx)
    if more is None or last.question not in _OF_TIMES or last.runner is None or len(core) > _MORE_MAX:
        return None
    if not (said.reads("more") or said.reads("faster") or set(core) <= {LENGTH, AHEAD}):
        return None
    return Asked(Question.SLOWER, last.runner, last.point, more=more, words=said.written)


_MORE_MAX = 6
"""So many words such a question has at most."""


def _who_is_there(said: Sentence, ctx: Context) -> bool:
    """'at Kettle' by itself, from crew whose place nobody knows, may say where they are: no question, and hours after
    one no more of it."""
    stale = ctx.last is None or (ctx.last.runner is None and ctx.last.point is None)
    alone = len(said.masked) > 1 and lexicon().read["at"].word(said.masked[0]) and not said.asks and stale
    return alone and ctx.point is None and PartKind.CREW in ctx.parts


def _after(last: Asked, runner: RunnerHere, words: str) -> Asked:
    """The last question about the point after: for meetings the next with crew access."""
    place = place_of(runner)
    crew = last.question in _ABOUT_MEETINGS
    if crew and last.point is None:
        return replace(last, nth=(last.nth or 0) + 1, words=words)
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


# -- a place that is none of the course's --------------------------------------------------------------------------

_OF_A_PLACE = frozenset(
    {
        Question.NEXT,
        Question.AT,
        Question.FINISH,
        Question.WHERE,
        Question.LAST_STOP,
        Question.CUT_OFF,
        Question.DARK,
    }
)
"""Of these the place is what is asked for; other answers name the place they are about."""
_NAME = re.compile(r"[a-z]{4,}")
_WORD = re.compile(r"[a-z]{3,}")


OF_SOMEBODY = frozenset(
    {
        Question.NEXT, Question.AT, Question.FINISH, Question.WHERE, Question.PEOPLE, Question.TOLD, Question.HEARD,
        Question.HOW, Question.RIDE, Question.MISSED,
    }
)  # fmt: skip
"""Questions about somebody."""
_LIKE_SHE = 60.0
"""Above this likeness a word is 'she' mistyped, and no name."""


def name_not_known(said: Sentence, known: Callable[[str], bool]) -> str:
    """A name behind the verb of a question ('where is Tom') that is nobody's of the event and no word that anybody's
    examples hold; '' where there is none."""
    if said.named or said.person is not None or said.says("she") or said.point is not None:
        return ""
    aux = lexicon().classes["aux"]
    for w, nxt in pairwise(said.masked):
        if aux.word(w) and _WORD.fullmatch(nxt) and not known(nxt):
            alike = max(fuzz.ratio(nxt, s) for s in lexicon().classes["she"].single)
            return nxt if alike < _LIKE_SHE else ""
    return ""


def place_not_known(said: Sentence, known: Callable[[str], bool]) -> str:
    """A word behind 'at' or 'to' that is none of the course's places: one that names a kind of place (castle, river), or no
    word that anybody's examples hold; '' where there is none."""
    if said.point is not None or said.finish or said.person is not None:
        return ""
    at, names = lexicon().read["place"], lexicon().names
    of_places = frozenset().union(*lexicon().places) - names["station"] - names["none"]
    for i, w in enumerate(said.masked[:-1]):
        nxt = said.masked[i + 1]
        behind = said.masked[i + 2] if i + 2 < len(said.masked) else ""
        if nxt in names["the"] and behind:
            nxt = behind
        elif behind in names["the"]:
            continue  # 'to beat the limit' goes to no place
        if at.word(w) and _NAME.fullmatch(nxt) and (nxt in of_places or not known(nxt)):
            return nxt
    return ""


def which_place(asked: Asked, said: Sentence, word: str, ctx: Context) -> AskBack | None:
    """A place that is not on the course: which point is meant; never another place's answer as if it were that one."""
    if asked.question not in _OF_A_PLACE:
        return None
    runner = said.runner or next(iter(ctx.candidates()), None)
    if runner is None:
        return None
    place = place_of(runner)
    question = (
        Question.AT if asked.question in (Question.NEXT, Question.WHERE, Question.FINISH) else asked.question
    )
    points = place.points if question in PAST else place.ahead or place.points
    choices = []
    for p in points:
        one = replace(asked, question=Question.FINISH if p.finish and question is Question.AT else question)
        then = about(replace(one, point=p.id), replace(said, masked=()), ctx)
        choices.append(Choice(p.id, _at(then, p.id)))
    return AskBack(Need.POINT, tuple(choices), word)


def _at(meant: Understood, point: str) -> Understood:
    if isinstance(meant, AskBack):
        return replace(meant, choices=tuple(Choice(c.label, _at(c.then, point)) for c in meant.choices))
    return replace(meant, point=point) if isinstance(meant, Asked) else meant
