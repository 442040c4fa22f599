"""The board as a page: whole, and the part of it that the script fetches anew."""

from __future__ import annotations

from dataclasses import dataclass, replace

from aiohttp import web
from jinja2 import Environment

from server.api import answers, board
from server.api.ask import Ask, not_yours, parts_in
from server.api.auth import caller
from server.api.envelope import ApiError
from server.api.me import notices_of
from server.api.parts import PARTS
from server.api.picture import Picture
from server.api.who_may import Call, May, may
from server.event.model import Part
from server.pages.labels import labels
from server.pages.pictures import marked_profile
from server.pages.session import CHOICES, parts_words
from server.pages.view import BoardView, Pen, board_view
from server.wording.reader import Reader, reader_in

TEMPLATES = web.AppKey("TEMPLATES", Environment)
NOTICES_SHOWN = 8


@dataclass(frozen=True, slots=True)
class Seen:
    """One person looking at one event."""

    ask: Ask
    picture: Picture
    parts: tuple[Part, ...]
    reader: Reader


async def home(request: web.Request) -> web.StreamResponse:
    """GET / and /board/{event}: the board of the event named, or of the asker's first."""
    seen = await _seen(request)
    event = seen.picture.event
    t = labels(seen.reader.language)
    html = (
        request.app[TEMPLATES]
        .get_template("board.html")
        .render(
            t=t,
            language=seen.reader.language,
            view=_view(seen),
            person=answers.person_name(event, seen.ask.person),
            parts=parts_words(seen.parts, seen.reader.language),
            notices=notices_of(seen.picture, seen.ask.person)[-NOTICES_SHOWN:],
            choices=request.app[CHOICES],
        )
    )
    return web.Response(text=html, content_type="text/html")


async def part(request: web.Request) -> web.StreamResponse:
    """GET /board/{event}/part: what changes, as HTML."""
    seen = await _seen(request)
    template = request.app[TEMPLATES].get_template("board_part.html")
    html = template.render(t=labels(seen.reader.language), view=_view(seen))
    return web.Response(text=html, content_type="text/html")


async def _seen(request: web.Request) -> Seen:
    parts = request.app[PARTS]
    ask = Ask(parts, request, parts.clock.now())
    ask.who = await caller(request, parts, ask.now)
    event = request.match_info.get("event") or await _first_event(ask)
    ask.person_parts = await parts_in(ask, event)
    if may(ask.person_parts, Call.BOARD) is May.NO:
        raise not_yours(Call.BOARD)
    picture = await parts.pictures.take(event, ask.now)
    return Seen(ask, picture, ask.person_parts, reader_in(picture.event, ask.person))


async def _first_event(ask: Ask) -> str:
    """The event of theirs that is on, else the next to come, else the last."""
    mine = {p.event for p in await ask.parts.journal.parts(ask.person)}
    if not mine:
        raise ApiError("not_yours", "you have no part in an event yet", "", "Ask whoever plans it.")
    events = [await ask.parts.pictures.event(e) for e in sorted(mine)]
    begun = [e for e in events if e.starts <= ask.now]
    coming = [e for e in events if e.starts > ask.now]
    on = [e for e in begun if e.limit is None or ask.now <= e.starts + 2 * e.limit]
    if on:
        return max(on, key=lambda e: e.starts).id
    if coming:
        return min(coming, key=lambda e: e.starts).id
    return max(begun, key=lambda e: e.starts).id


def _view(seen: Seen) -> BoardView:
    picture, parts = seen.picture, seen.parts
    shown = board.board(picture, parts, seen.ask.person)
    phones = may(parts, Call.PHONES) is May.YES
    people = board.people(picture, May.YES) if phones else None
    pen = Pen(seen.reader, picture.now)
    view = board_view(shown, people, pen)
    drawn = tuple(
        replace(r, profile=marked_profile(picture, r.id, may(parts, Call.WHERE, r.id), pen))
        for r in view.runners
    )
    return replace(view, runners=drawn)
