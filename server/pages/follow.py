"""Two pages about followers: the one behind the link, for whoever has it; and the runner's own, where she gives it and takes
it back. No script and no cookie on the first."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import replace
from datetime import timedelta

from aiohttp import web

from server.api import auth
from server.api.acting import ACTING
from server.api.ask import Ask, Inside, check_may, not_yours
from server.api.envelope import ApiError
from server.api.followers import DELAY, STEP, Followed, bound, followed, followers
from server.api.models import Followers
from server.api.parts import PARTS
from server.api.who_may import Call, May, may
from server.conversation.telling.answer import FollowersAnswer
from server.conversation.telling.reader import Reader
from server.conversation.telling.say import Say
from server.pages.board import TEMPLATES, BoardReader, seen_in
from server.pages.labels import labels
from server.pages.session import preferred_language
from server.pages.setup.publishing import qr_of

__all__ = ["OWN", "give", "own", "show"]

OWN = "/followers/{event}"


async def show(request: web.Request) -> web.StreamResponse:
    """GET /follow?t=…: one runner's race, delayed and coarse. The same page for a link that was taken back and one that
    never was."""
    parts = request.app[PARTS]
    now, language = parts.clock.now(), preferred_language(request, parts)
    found: Followed | None = None
    try:
        token = await auth.check(request.query.get("t", ""), request, parts, now)
        of = bound(token)
        found = None if of is None else await followed(parts, *of, now)
    except ApiError as error:
        if error.code not in ("bad_token", "not_found"):
            raise
    t = labels(language)
    if found is None:
        html = (
            request.app[TEMPLATES]
            .get_template("plain.html")
            .render(t=t, language=language, heading=t("follow-title"), text=t("follow-none"), back=False)
        )
        return web.Response(text=html, status=404, content_type="text/html")
    say = Say(Reader(language, found.zone, found.zone), now)
    rows = [(r.name, say.km(r.km), say.when(r.at)) for r in reversed(found.reached)]
    html = (
        request.app[TEMPLATES]
        .get_template("follow.html")
        .render(
            t=t,
            language=language,
            f=found,
            first=_first(t, found, rows),
            rows=rows,
            delay=t("follow-delay", minutes=_minutes(DELAY), step=_minutes(STEP)),
            asked=t("follow-asked", when=say.when(now)),
        )
    )
    return web.Response(text=html, content_type="text/html")


def _minutes(length: timedelta) -> str:
    return str(round(length.total_seconds() / 60))


def _first(t: Callable[..., str], f: Followed, rows: list[tuple[str, str, str]]) -> str:
    """The sentence above the list."""
    if not f.started or not rows:
        return t("follow-before", runner=f.runner)
    name, km, when = rows[0]
    key = "follow-finished" if f.finished else "follow-over" if f.over else "follow-last"
    return t(key, runner=f.runner, place=name, km=km, when=when)


async def own(request: web.Request) -> web.StreamResponse:
    """GET /followers/{event}: whether her link holds."""
    seen = await seen_in(request)
    return await _own(request, seen, await _asked(seen, None))


async def give(request: web.Request) -> web.StreamResponse:
    """POST /followers/{event}: given, or taken back."""
    auth.refuse_foreign_form(request)
    seen = await seen_in(request)
    pressed = (await request.post()).get("do")
    return await _own(request, seen, await _asked(seen, {"on": True, "off": False}.get(str(pressed))))


async def _asked(seen: BoardReader, on: bool | None) -> FollowersAnswer:
    """The call of the API as whoever is here, about the runner they are."""
    event = seen.picture.built.event
    mine = next((r.id for r in event.runners if may(seen.parts, Call.FOLLOWERS, r.id) is May.YES), None)
    if mine is None:
        raise not_yours(Call.FOLLOWERS)
    inside = Inside({"event": event.id, "runner": mine})
    ask: Ask = replace(seen.ask, request=inside, body=Followers(on=on), page=seen.ask.site)
    await check_may(ask, next(r for r in ACTING if r.handler is followers))
    return await followers(ask)


async def _own(request: web.Request, seen: BoardReader, answer: FollowersAnswer) -> web.StreamResponse:
    language = seen.reader.language
    t = labels(language)
    html = (
        request.app[TEMPLATES]
        .get_template("followers.html")
        .render(
            t=t,
            language=language,
            event=seen.picture.built.event,
            answer=answer,
            qr=qr_of(answer.link) if answer.link else "",
            here=not request.app[PARTS].settings.public_url,
            shows=t("follow-shows", minutes=_minutes(DELAY), step=_minutes(STEP)),
        )
    )
    return web.Response(text=html, content_type="text/html")
