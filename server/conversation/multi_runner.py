"""Questions that name no runner, from somebody who has two or three: answered for all of them, or for the one whose
meeting comes first, instead of being asked back."""

from __future__ import annotations

from dataclasses import replace
from datetime import datetime

from server.conversation import asked, button_payload, unknown
from server.conversation.telling.answer import MeetingAnswer
from server.conversation.telling.say import lines
from server.conversation.understanding import AskBack, Asked, Need, Question
from server.conversation.values import Reply
from server.conversation.view import Refused
from server.conversation.visit import Visit
from server.event.model import PartKind

AT_MOST = 3
"""More runners than that are no longer read in one reply (own choice)."""

# What crew do next is the same whoever is named: the earliest meeting counts.
_LOGISTICS = frozenset(
    {Question.LEAVE, Question.MEETING, Question.DRIVE, Question.BRING, Question.TAKE_BACK, Question.FOOD}
)
# Whoever waits at a place waits for each runner that is still to come there.
_WHERE_THEY_STAND = frozenset({Question.MISSED, Question.WAIT})
_KIT = frozenset({Question.BRING, Question.TAKE_BACK, Question.FOOD})
# Lines of each answer: the fact alone says little of where she is now.
_LINES = {Question.REPORT: 2, Question.WHERE: 2, Question.MISSED: 3, Question.WAIT: 3}
_OF_EACH = frozenset(
    {
        Question.NEXT,
        Question.AT,
        Question.FINISH,
        Question.WHERE,
        Question.HEARD,
        Question.HOW,
        Question.PLAN_GAP,
        Question.LAST_STOP,
        Question.CUT_OFF,
        Question.DARK,
        Question.RIDE,
        Question.REPORT,
        *_WHERE_THEY_STAND,
    }
)


async def answer(visit: Visit, back: AskBack) -> Reply | None:
    """The answer to a question about one of several runners; None where it has to be asked which is meant."""
    questions = tuple(c.then for c in back.choices if isinstance(c.then, Asked) and c.then.runner is not None)
    if (
        back.need is not Need.RUNNER
        or not 2 <= len(questions) <= AT_MOST
        or len(questions) < len(back.choices)
    ):
        return None
    question = questions[0].question
    crew = bool(visit.kinds & {PartKind.CREW, PartKind.PACER})
    if crew and question in _LOGISTICS | _WHERE_THEY_STAND:
        found = await _mine(visit, questions)
        here = [(q, m) for q, m in found if m.values.point == visit.event.stands]
        if question in _WHERE_THEY_STAND and here:
            return await _each(visit, back, tuple(replace(q, point=m.values.point) for q, m in here))
        if found and question in _LOGISTICS:
            return await _first(visit, *min(found, key=lambda x: _begins(x[1])))
    return await _each(visit, back, questions) if question in _OF_EACH else None


async def _mine(visit: Visit, questions: tuple[Asked, ...]) -> list[tuple[Asked, MeetingAnswer]]:
    """Each question with the first meeting of this person's own with its runner; those without one left out."""
    found = []
    for one in questions:
        try:
            told = visit.view.next(visit.event.id, one.runner or "")
        except Refused:
            continue
        mine = next((m for m in told.meetings if m.mine), None)
        if mine is not None and (one.point is None or one.point == mine.values.point):
            found.append((one, mine))
    return found


def _begins(meeting: MeetingAnswer) -> datetime:
    return meeting.values.leave_by or meeting.values.be_there


async def _first(visit: Visit, one: Asked, meeting: MeetingAnswer) -> Reply:
    meant = replace(one, point=meeting.values.point) if one.question in _KIT else one
    reply = await asked.answer(visit, replace(meant, beside=""))
    _leave_open(visit)
    return unknown.beside(visit, one, replace(reply, text=_naming(visit, meeting.runner_name, reply.text)))


async def _each(visit: Visit, back: AskBack, questions: tuple[Asked, ...]) -> Reply | None:
    """A line or two for each runner, with a button for all that there is to say of one."""
    texts = []
    for one in questions:
        here = visit.runner(one.runner)
        try:
            text = (await asked.answer(visit, replace(one, beside=""))).text
        except Refused:
            continue
        short = "\n".join(text.split("\n")[: _LINES.get(one.question, 1)])
        texts.append(_naming(visit, here.name if here else "", short))
    _leave_open(visit)
    if not texts:
        return None
    visit.memory.choices, visit.memory.need = back.choices, back.need
    named = [visit.runner(c.label) for c in back.choices]
    labels = tuple(visit.s("choice-runner", name=r.name, bib=r.bib or "none") for r in named if r is not None)
    rows = button_payload.offer(visit, labels, back.choices) if len(labels) == len(named) else ()
    return unknown.beside(visit, questions[0], visit.reply(lines(*texts), rows))


def _naming(visit: Visit, name: str, text: str) -> str:
    first = text.split("\n")[0]
    return text if not name or name in first else visit.s("of-runner", runner=name, line=text)


def _leave_open(visit: Visit) -> None:
    """Nobody was named: whom 'she' means in the next message stays open."""
    if visit.memory.last is not None:
        visit.memory.last = replace(visit.memory.last, runner=None)
