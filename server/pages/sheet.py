"""A person's sheet by today's forecast, to print before there is no signal: meetings, numbers, cards."""

from __future__ import annotations

import asyncio

from aiohttp import web

from server.api import answers, board, planned
from server.api.ask import not_yours
from server.api.who_may import Call, May, may
from server.event.model import PartKind
from server.pages.alarm_card import ladder_phones
from server.pages.bars import axis
from server.pages.board import KEPT, TEMPLATES, BoardReader, own_runner, seen_in, view_of
from server.pages.labels import labels
from server.pages.map import ways
from server.pages.session import parts_words
from server.pages.view import Pen
from server.paper.before import before_start
from server.paper.document import Size
from server.paper.sheet import crew_pdf
from server.plan.movements import course_spots, crew_plan

FEW = 4
"""With more runners than that a sheet takes longer to make than anybody waits (own choice)."""


async def sheet(request: web.Request) -> web.StreamResponse:
    """GET /sheet/{event}: the sheet of whoever asks."""
    html = await asyncio.to_thread(_sheet, request.app, await seen_in(request))
    return web.Response(text=html, content_type="text/html", headers=KEPT)


async def paper(request: web.Request) -> web.StreamResponse:
    """GET /sheet/{event}/paper.pdf: the same person's sheet as planned, to print; `?size=letter` for that paper."""
    seen = await seen_in(request)
    if not _printed(seen):
        raise not_yours(Call.PHONES)
    size = Size.LETTER if request.query.get("size") == Size.LETTER.value else Size.A4
    body = await asyncio.to_thread(_paper, seen, size)
    named = {"Content-Disposition": 'inline; filename="sheet.pdf"'}
    return web.Response(body=body, content_type="application/pdf", headers=named)


def _printed(seen: BoardReader) -> bool:
    """Whether a sheet is made here: for those of the race, where the field is small; a large one's is made by command."""
    helps = any(p.kind is PartKind.VOLUNTEER for p in seen.parts)
    return len(seen.picture.event.runners) <= FEW and (helps or may(seen.parts, Call.PHONES) is May.YES)


def _paper(seen: BoardReader, size: Size) -> bytes:
    built = seen.picture.built
    before = before_start(built.event, built.timetables, built.courses, seen.picture.now)
    spots = course_spots(built.event, built.courses)
    moves = crew_plan(built.event, built.timetables, before.views, spots=spots)
    return crew_pdf(before, [seen.ask.person], moves, size)


def _sheet(app: web.Application, seen: BoardReader) -> str:
    picture, parts, person = seen.picture, seen.parts, seen.ask.person
    pen = Pen(seen.reader, picture.now)
    shown = board.board(picture, parts, person)
    share = may(parts, Call.CARDS)
    cards = planned.cards(picture.event, share, seen.reader.language) if share is May.YES else None
    sees = may(parts, Call.PHONES) is May.YES
    me = own_runner(seen)
    return (
        app[TEMPLATES]
        .get_template("sheet.html")
        .render(
            t=labels(seen.reader.language),
            language=seen.reader.language,
            view=view_of(seen, shown, pen),
            person=answers.person_name(picture.event, person),
            parts=parts_words(parts, seen.reader.language),
            me=me,
            axes={r.id: axis(r, pen, her=r.id == me) for r in shown.runners},
            ways={r.id: ways(picture, r.id, pen) if r.meetings else {} for r in shown.runners},
            phones={
                r.id: ladder_phones(picture.event, r.id, person, pen) if sees else () for r in shown.runners
            },
            cards=cards,
            printed=_printed(seen),
        )
    )
