"""The board as a page: whole, and the part of it that the script fetches anew."""

from __future__ import annotations

import asyncio
from dataclasses import dataclass, replace
from typing import Any

from aiohttp import web
from jinja2 import Environment

from server.api import answers, board
from server.api.ask import Ask, not_yours, parts_in
from server.api.auth import caller
from server.api.envelope import ApiError
from server.api.parts import PARTS
from server.api.person_view import notices_of
from server.api.replies import BoardAnswer
from server.api.snapshot import Picture
from server.api.who_may import Call, May, may
from server.conversation.telling.reader import Reader, reader_in
from server.event.model import Part
from server.pages import push
from server.pages.alarm_card import alarm_card
from server.pages.bars import axis
from server.pages.first import First, first
from server.pages.labels import labels
from server.pages.map import RUNNERS_MAX, MapView, course_map, ways
from server.pages.own import own
from server.pages.pictures import marked_profile
from server.pages.session import CHOICES, parts_words
from server.pages.stop_log import log_shown
from server.pages.view import BoardView, Pen, board_view

TEMPLATES = web.AppKey("TEMPLATES", Environment)
KEPT = {"X-Keep": "1"}
"""Of a page that the reader's browser may keep, to be opened without a connection."""
NOTICES_SHOWN = 8


@dataclass(frozen=True, slots=True)
class BoardReader:
    """One person looking at one event, of a whole field `also` at this runner."""

    ask: Ask
    picture: Picture
    parts: tuple[Part, ...]
    reader: Reader
    also: str = ""


async def home(request: web.Request) -> web.StreamResponse:
    """GET / and /board/{event}: the board of the event named, or of the asker's first."""
    html = await asyncio.to_thread(_whole, request.app, await seen_in(request))
    return web.Response(text=html, content_type="text/html", headers=KEPT)


def _whole(app: web.Application, seen: BoardReader) -> str:
    return (
        app[TEMPLATES]
        .get_template("board.html")
        .render(
            t=labels(seen.reader.language),
            language=seen.reader.language,
            **_shown(seen),
            reader=seen.ask.person,
            person=answers.person_name(seen.picture.event, seen.ask.person),
            parts=parts_words(seen.parts, seen.reader.language),
            notices=notices_of(seen.picture, seen.ask.person)[-NOTICES_SHOWN:],
            choices=app[CHOICES],
            push_key=app[push.KEY],
        )
    )


async def part(request: web.Request) -> web.StreamResponse:
    """GET /board/{event}/part: what changes, as HTML."""
    html = await asyncio.to_thread(_changing, request.app, await seen_in(request))
    return web.Response(text=html, content_type="text/html")


def _changing(app: web.Application, seen: BoardReader) -> str:
    template = app[TEMPLATES].get_template("board_part.html")
    return template.render(t=labels(seen.reader.language), **_shown(seen))


async def seen_in(request: web.Request) -> BoardReader:
    """Who asks, for the event of the path or their own first; ApiError where their part sees no board."""
    parts = request.app[PARTS]
    ask = Ask(parts, request, parts.clock.now())
    ask.who = await caller(request, parts, ask.now)
    event = request.match_info.get("event") or await _first_event(ask)
    ask.person_parts = await parts_in(ask, event)
    if may(ask.person_parts, Call.BOARD) is May.NO:
        raise not_yours(Call.BOARD)
    picture = await parts.pictures.take(event, ask.now)
    also = request.query.get("runner", "")
    return BoardReader(ask, picture, ask.person_parts, reader_in(picture.event, ask.person), also)


def _in_alarm(shown: BoardAnswer, runner: str) -> bool:
    return any(r.alarms for r in shown.runners if r.id == runner)


def own_runner(seen: BoardReader) -> str:
    """Which runner the reader is; '' for nobody."""
    return next((r.id for r in seen.picture.event.runners if r.person == seen.ask.person), "")


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


def _shown(seen: BoardReader) -> dict[str, Any]:
    """What the template of the changing part shows: the board, and what is of its reader alone."""
    picture, parts, person = seen.picture, seen.parts, seen.ask.person
    shown = board.board(picture, parts, person, seen.also)
    pen, me = Pen(seen.reader, picture.now), own_runner(seen)
    return {
        "view": view_of(seen, shown, pen),
        # Who has called for help is asked for no next point: what she does stands in the alarm above.
        "first": First("") if _in_alarm(shown, me) else first(picture, person, parts, pen),
        "follows": any(may(parts, Call.FOLLOWERS, r.id) is May.YES for r in picture.built.event.runners),
        "own": own(picture, shown, person, parts, pen),
        "cards": {r.id: alarm_card(picture, r.id, person, parts, pen) for r in shown.runners if r.alarms},
        "logs": {r.id: log_shown(picture, r.id, person, parts, pen) for r in shown.runners},
        "axes": {r.id: axis(r, pen, her=r.id == me) for r in shown.runners},
        "me": me,
        "changes": may(parts, Call.CHANGE) is May.YES,
        "maps": _maps(seen, shown, pen),
        "ways": {r.id: ways(picture, r.id, pen) if r.meetings else {} for r in shown.runners},
    }


def _maps(seen: BoardReader, shown: BoardAnswer, pen: Pen) -> dict[str, MapView]:
    """A map a runner whom the reader follows, unless that is a field."""
    followed = [r for r in shown.runners if r.forecast is not None]
    if len(followed) > RUNNERS_MAX:
        return {}
    settings = seen.ask.parts.settings
    found = ((r.id, course_map(seen.picture, r, seen.parts, pen, settings)) for r in followed)
    return {runner: drawn for runner, drawn in found if drawn is not None}


def view_of(seen: BoardReader, shown: BoardAnswer, pen: Pen) -> BoardView:
    """The board in words for that person, with the profile as far as their part goes."""
    picture, parts = seen.picture, seen.parts
    phones = may(parts, Call.PHONES) is May.YES
    # Of a field the crews of others are neither hers to telephone nor a list to read at night.
    of = {r.id for r in shown.runners} if len(picture.event.runners) > board.WHOLE else None
    people = board.people(picture, May.YES, of) if phones else None
    view = board_view(shown, people, pen, own_runner(seen))
    drawn = tuple(
        replace(r, profile=marked_profile(picture, r.id, may(parts, Call.WHERE, r.id), pen))
        for r in view.runners
    )
    return replace(view, runners=drawn)
