"""A person's sheet by today's forecast, to print before there is no signal: meetings, numbers, cards."""

from __future__ import annotations

import asyncio

from aiohttp import web

from server.api import answers, board, planned
from server.api.who_may import Call, May, may
from server.pages.alarm_card import ladder_phones
from server.pages.bars import axis
from server.pages.board import KEPT, TEMPLATES, Seen, seen_in, view_of
from server.pages.labels import labels
from server.pages.session import parts_words
from server.pages.view import Pen


async def sheet(request: web.Request) -> web.StreamResponse:
    """GET /sheet/{event}: the sheet of whoever asks."""
    html = await asyncio.to_thread(_sheet, request.app, await seen_in(request))
    return web.Response(text=html, content_type="text/html", headers=KEPT)


def _sheet(app: web.Application, seen: Seen) -> str:
    picture, parts, person = seen.picture, seen.parts, seen.ask.person
    pen = Pen(seen.reader, picture.now)
    shown = board.board(picture, parts, person)
    share = may(parts, Call.CARDS)
    cards = planned.cards(picture.event, share, seen.reader.language) if share is May.YES else None
    sees = may(parts, Call.PHONES) is May.YES
    return (
        app[TEMPLATES]
        .get_template("sheet.html")
        .render(
            t=labels(seen.reader.language),
            language=seen.reader.language,
            view=view_of(seen, shown, pen),
            person=answers.person_name(picture.event, person),
            parts=parts_words(parts, seen.reader.language),
            axes={r.id: axis(r, pen) for r in shown.runners},
            phones={
                r.id: ladder_phones(picture.event, r.id, person, pen) if sees else () for r in shown.runners
            },
            cards=cards,
        )
    )
