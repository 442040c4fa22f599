"""Calls that ask: each takes the picture of this moment and lets `server.api.answers` word it in values."""

from __future__ import annotations

import asyncio
from dataclasses import replace

from server.api import answers, board, meeting_answers, planned
from server.api.ask import Ask
from server.api.models import PointQuery, SupposeQuery
from server.api.picture import suppose
from server.api.replies import BoardAnswer
from server.api.who_may import May
from server.wording.answer import (
    CardsAnswer,
    CutOffsAnswer,
    FactsAnswer,
    ForecastAnswer,
    KitAnswer,
    MissedAnswer,
    NextAnswer,
    PeopleAnswer,
    PlanAnswer,
)
from server.wording.reader import reader_in


async def forecast(ask: Ask) -> ForecastAnswer:
    """GET …/forecast: windows of every point or one, odds, whereabouts, how fresh."""
    query = ask.asked(SupposeQuery)
    picture = await ask.picture()
    supposed = None
    if query.supposes and ask.share is May.YES:
        supposed = await asyncio.to_thread(suppose, picture, ask.runner, query.factor, query.leaving)
    return answers.forecast(picture, ask.runner, ask.share, query.point, supposed)


async def where(ask: Ask) -> ForecastAnswer:
    """GET …/where: the last known point as fact and, apart from it, the estimate."""
    return answers.whereabouts(await ask.picture(), ask.runner, ask.share)


async def next_meeting(ask: Ask) -> NextAnswer:
    """GET …/next: the next meeting and the one after, mine or anybody's; with a point, those there."""
    query = ask.asked(PointQuery)
    person = ask.person if query.for_ == "me" else None
    return meeting_answers.next_meetings(await ask.picture(), ask.runner, person, query.point)


async def missed(ask: Ask) -> MissedAnswer:
    """GET …/missed: has she been through, and wait or go."""
    return meeting_answers.missed(await ask.picture(), ask.runner, ask.asked(PointQuery).point, ask.person)


async def plan(ask: Ask) -> PlanAnswer:
    """GET …/plan: the timetable and what became of it."""
    return planned.plan(await ask.picture(), ask.runner, ask.share)


async def kit(ask: Ask) -> KitAnswer:
    """GET …/kit: what to have ready."""
    return meeting_answers.kit(await ask.picture(), ask.runner, ask.asked(PointQuery).point, ask.person)


async def facts(ask: Ask) -> FactsAnswer:
    """GET …/facts: what has been reported, nothing else."""
    return answers.facts(await ask.picture(), ask.runner)


async def cut_offs(ask: Ask) -> CutOffsAnswer:
    """GET …/cutoffs: those to come and their odds; when crew access closes."""
    picture = await ask.picture()
    return replace(planned.cut_offs(picture, ask.runner), doors=meeting_answers.doors(picture, ask.runner))


async def cards(ask: Ask) -> CardsAnswer:
    """GET …/cards: the prepared answers to trouble."""
    event = (await ask.picture()).event
    return planned.cards(event, ask.share, reader_in(event, ask.person).language)


async def people(ask: Ask) -> PeopleAnswer:
    """GET …/people: who does what now, and the numbers."""
    return board.people(await ask.picture(), ask.share)


async def board_answer(ask: Ask) -> BoardAnswer:
    """GET …/board: everything the board shows to this part."""
    return board.board(await ask.picture(), ask.person_parts, ask.person)
