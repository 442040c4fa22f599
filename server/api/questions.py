"""Calls that ask: each is answered by the asker's view of this moment, as a conversation is."""

from __future__ import annotations

import asyncio
from collections.abc import Callable
from typing import TypeVar

from server.api import board, meeting_answers
from server.api.ask import Ask
from server.api.field import field_of
from server.api.models import PointQuery, SupposeQuery
from server.api.person_view import PersonView
from server.api.replies import BoardAnswer, FieldAnswer
from server.conversation.telling.answer import (
    CardsAnswer,
    CutOffsAnswer,
    FactsAnswer,
    ForecastAnswer,
    KitAnswer,
    LogAnswer,
    MissedAnswer,
    NextAnswer,
    PeopleAnswer,
    PlanAnswer,
)
from server.event.model import Person

T = TypeVar("T")


async def _view(ask: Ask) -> PersonView:
    """What the asker may know of the event in the path."""
    return PersonView(ask.now, Person(ask.person, ask.person), {ask.event: await ask.picture()})


async def _look(ask: Ask, at: Callable[[PersonView], T]) -> T:
    """What that finds in the asker's view. In a thread: it may be worked out anew, of a whole field."""
    return await asyncio.to_thread(at, await _view(ask))


async def forecast(ask: Ask) -> ForecastAnswer:
    """GET …/forecast: windows of every point or one, odds, whereabouts, how fresh."""
    q = ask.asked(SupposeQuery)

    def found(view: PersonView) -> ForecastAnswer:
        return view.forecast(ask.event, ask.runner, point=q.point, factor=q.factor, leaving=q.leaving)

    return await _look(ask, found)


async def where(ask: Ask) -> ForecastAnswer:
    """GET …/where: the last known point as fact and, apart from it, the estimate."""
    return await _look(ask, lambda view: view.where(ask.event, ask.runner))


async def next_meeting(ask: Ask) -> NextAnswer:
    """GET …/next: the next meeting and the one after, mine or anybody's; with a point, those there."""
    query = ask.asked(PointQuery)
    person = ask.person if query.for_ == "me" else None
    picture = await ask.picture()
    return await asyncio.to_thread(meeting_answers.next_meetings, picture, ask.runner, person, query.point)


async def missed(ask: Ask) -> MissedAnswer:
    """GET …/missed: has she been through, and wait or go."""
    return await _look(ask, lambda view: view.missed(ask.event, ask.runner, ask.asked(PointQuery).point))


async def plan(ask: Ask) -> PlanAnswer:
    """GET …/plan: the timetable and what became of it."""
    return await _look(ask, lambda view: view.plan(ask.event, ask.runner))


async def kit(ask: Ask) -> KitAnswer:
    """GET …/kit: what to have ready."""
    return await _look(ask, lambda view: view.kit(ask.event, ask.runner, ask.asked(PointQuery).point))


async def facts(ask: Ask) -> FactsAnswer:
    """GET …/facts: what has been reported, nothing else."""
    return await _look(ask, lambda view: view.facts(ask.event, ask.runner))


async def stop_log(ask: Ask) -> LogAnswer:
    """GET …/log: what she ate, drank and how she was."""
    return await _look(ask, lambda view: view.log(ask.event, ask.runner))


async def cut_offs(ask: Ask) -> CutOffsAnswer:
    """GET …/cutoffs: those to come and their odds; when crew access closes."""
    return await _look(ask, lambda view: view.cut_offs(ask.event, ask.runner))


async def cards(ask: Ask) -> CardsAnswer:
    """GET …/cards: the prepared answers to trouble."""
    return await _look(ask, lambda view: view.cards(ask.event, ask.runner))


async def people(ask: Ask) -> PeopleAnswer:
    """GET …/people: who does what now, and the numbers."""
    return await _look(ask, lambda view: view.people(ask.event))


async def field_answer(ask: Ask) -> FieldAnswer:
    """GET …/field."""
    return await asyncio.to_thread(field_of, await ask.picture())


async def board_answer(ask: Ask) -> BoardAnswer:
    """GET …/board: everything the board shows to this part."""
    return await asyncio.to_thread(board.board, await ask.picture(), ask.person_parts, ask.person)
