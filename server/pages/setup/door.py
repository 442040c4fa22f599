"""Who may set a race up: whoever opened a one-time link that somebody at the server's machine had made."""

from __future__ import annotations

from datetime import datetime, timedelta
from pathlib import Path
from typing import Final

from aiohttp import web

from server.api import auth
from server.api.envelope import ApiError
from server.api.parts import PARTS
from server.journal import Journal

__all__ = ["COOKIE", "PATH", "folder_of", "make_link", "open_door", "to"]

PATH: Final = "/setup"
COOKIE: Final = "stilepost-setup"
_LINK: Final = "open-setup:"
_HOLDS: Final = "setup:"
LINK_GOOD: Final = timedelta(hours=24)
HOLDS_FOR: Final = timedelta(days=60)


async def make_link(journal: Journal, site: str, folder: Path, now: datetime) -> str:
    """A link that opens the draft of a folder (its whole path) in one browser, once, within a day."""
    scope = [_LINK + str(folder)]
    secret = await journal.issue_token(None, "link to the set-up", scope, now, now + LINK_GOOD)
    # Behind the '#': what stands there is never sent to a server, so no log on the way keeps it.
    return f"{site}{PATH}#{secret}"


async def open_door(request: web.Request, secret: str) -> web.Response:
    """Take the link's secret, once, and give this browser a cookie for it; ApiError 'bad_token' for any other."""
    auth.refuse_foreign_form(request)
    parts = request.app[PARTS]
    now = parts.clock.now()
    token = await auth.check(secret, request, parts, now)
    folder = _after(_LINK, token.scopes)
    if folder is None or not await parts.journal.revoke_token(token.id, now):
        raise ApiError("bad_token", "the link has been used, or is none for the set-up", "code")
    held = await parts.journal.issue_token(None, "set-up page", [_HOLDS + folder], now, now + HOLDS_FOR)
    response = to("course")
    response.set_cookie(
        COOKIE,
        held,
        max_age=int(HOLDS_FOR.total_seconds()),
        httponly=True,
        samesite="Strict",
        secure=request.secure or parts.settings.public_url.startswith("https://"),
        path=PATH,
    )
    return response


def to(step: str) -> web.Response:
    """On to a step."""
    return web.Response(status=303, headers={"Location": f"{PATH}/{step}"}, text=step)


async def folder_of(request: web.Request) -> Path:
    """The folder that this browser may set up; ApiError 'no_token' or 'bad_token' for anybody else."""
    auth.refuse_foreign_form(request)
    parts = request.app[PARTS]
    secret = request.cookies.get(COOKIE, "")
    if not secret:
        raise ApiError("no_token", "this browser has not opened the link to the set-up", "cookie")
    token = await auth.check(secret, request, parts, parts.clock.now())
    folder = _after(_HOLDS, token.scopes)
    if folder is None:
        raise ApiError("bad_token", "that is no key to a set-up", "cookie")
    return Path(folder)


def _after(prefix: str, scopes: frozenset[str]) -> str | None:
    return next((s.removeprefix(prefix) for s in scopes if s.startswith(prefix)), None)
