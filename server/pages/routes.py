"""The pages' own paths, beside the API: board, joining, chat, the stream of news, pictures, files."""

from __future__ import annotations

import asyncio
import hashlib
import json
from collections.abc import Awaitable, Callable
from functools import cache
from importlib import resources
from urllib.parse import urlsplit

import structlog
from aiohttp import web
from jinja2 import Environment, PackageLoader, StrictUndefined, select_autoescape

from server.api import answer_links, auth, followers
from server.api.envelope import ApiError, from_away, from_journal
from server.api.parts import PARTS
from server.event.keys import longest
from server.journal import AwayError, JournalError
from server.log import broke
from server.pages import answer, board, changing, chat, follow, pictures, push, session, sheet, stream
from server.pages.labels import labels
from server.pages.session import CHOICES, DemoPerson, preferred_language
from server.pages.setup import door
from server.pages.setup import routes as setup

log = structlog.get_logger("pages")
Page = Callable[[web.Request], Awaitable[web.StreamResponse]]

CSP = (
    "default-src 'none'; script-src 'self'; style-src 'self'; img-src 'self' data:; connect-src 'self'; "
    "manifest-src 'self'; worker-src 'self'; "
    "form-action 'self'; base-uri 'none'; frame-ancestors 'none'"
)
HEADERS = {
    "Content-Security-Policy": CSP,
    "X-Content-Type-Options": "nosniff",
    "Referrer-Policy": "same-origin",
    "Cross-Origin-Opener-Policy": "same-origin",
    "Permissions-Policy": "geolocation=(self), camera=(), microphone=()",
    "Cache-Control": "no-store",
}
_TYPES = {"css": "text/css", "js": "text/javascript", "svg": "image/svg+xml"}


def add_to(app: web.Application, choices: tuple[DemoPerson, ...] = (), push_key: str = "") -> None:
    """Add every page to the server. `choices`: who one may be in the demo; `push_key`: the public key for web push."""
    app[CHOICES] = choices
    app[push.KEY] = push_key
    app[board.TEMPLATES] = _templates()
    for path, page in (
        ("/", board.home),
        ("/board/{event}", board.home),
        ("/board/{event}/part", board.part),
        ("/sheet/{event}", sheet.sheet),
        ("/sheet/{event}/paper.pdf", sheet.paper),
        ("/join", _join_page),
        ("/stream", stream.news),
        (answer_links.PATH, answer.show),
        (changing.PATH, changing.show),
        (followers.PATH, follow.show),
        (follow.OWN, follow.own),
    ):
        app.router.add_get(path, _page(page))
    app[answer.PRESSING] = answer.Pressing()
    app.router.add_post(answer_links.PATH, _page(answer.press))
    app.router.add_post(changing.PATH, _page(changing.press))
    app.router.add_post(follow.OWN, _page(follow.give))
    app.router.add_get("/v1/events/{event}/runners/{runner}/picture.svg", pictures.svg)
    app.router.add_get("/v1/events/{event}/runners/{runner}/picture.png", pictures.png)
    app.router.add_get("/v1/events/{event}/photos/{picture}", pictures.photo)
    app.router.add_post("/join", session.join)
    app.router.add_post("/leave", session.leave)
    app.router.add_post("/be/{person}", session.be)
    app.router.add_post("/v1/chat", chat.say)
    app.router.add_post("/v1/push", push.on)
    app.router.add_post("/v1/push/off", push.off)
    app.router.add_get("/static/{version}/{name}", _static)
    app.router.add_get("/manifest.webmanifest", _manifest)
    app[setup.SAVING] = asyncio.Lock()
    app.router.add_get(door.PATH, _page(setup.enter))
    app.router.add_post(f"{door.PATH}/open", _page(setup.open_))
    app.router.add_get(f"{door.PATH}/{setup.DRAFT}", _page(setup.take_out))
    app.router.add_post(f"{door.PATH}/draft", _page(setup.put_in))
    app.router.add_get(f"{door.PATH}/{{step}}", _page(setup.show))
    app.router.add_post(f"{door.PATH}/{{step}}", _page(setup.save))
    app.router.add_get("/worker.js", _worker)
    app.cleanup_ctx.append(stream.delivering)


def _templates() -> Environment:
    environment = Environment(
        loader=PackageLoader("server.pages"),
        autoescape=select_autoescape(),
        undefined=StrictUndefined,
        trim_blocks=True,
        lstrip_blocks=True,
    )
    environment.filters["phone"] = lambda text: "".join(c for c in text if c.isdigit() or c == "+")
    environment.globals["static"] = static_path
    environment.globals["longest"] = longest
    return environment


def _page(page: Page) -> Page:
    """A page with the headers all pages have; whoever is not logged in is led to joining."""

    async def handle(request: web.Request) -> web.StreamResponse:
        try:
            response = await page(request)
        except ApiError as error:
            response = _trouble(request, error)
        except JournalError as error:
            response = _trouble(request, from_journal(error))
        except AwayError as error:
            response = _trouble(request, from_away(error))
        except (ConnectionResetError, web.HTTPException):
            raise
        except Exception as error:
            broke(log, "page failed", error)
            response = _trouble(request, ApiError("our_fault", "the server made a mistake", "", "Try again."))
        if not response.prepared:
            response.headers.update(HEADERS | {"Content-Security-Policy": _policy(request)})
            response.enable_compression()
        return response

    return handle


def _policy(request: web.Request) -> str:
    """Nothing but what is from here; pictures also from the server of map tiles, where one is set."""
    tiles = urlsplit(request.app[PARTS].settings.map_tiles)
    return CSP.replace("img-src", f"img-src {tiles.scheme}://{tiles.netloc}") if tiles.netloc else CSP


def _trouble(request: web.Request, error: ApiError) -> web.StreamResponse:
    if request.path == answer_links.PATH and error.code == "bad_token":
        return answer.no_such_link(request)
    if error.code in ("no_token", "bad_token"):
        response = _door(request, stranger=True)
        response.headers["X-Stranger"] = "1"
        if error.code == "bad_token":
            response.del_cookie(auth.COOKIE, path="/")
        response.set_status(401 if request.path.endswith("/part") else 200)
        return response
    t = labels(preferred_language(request, request.app[PARTS]))
    html = (
        request.app[board.TEMPLATES]
        .get_template("plain.html")
        .render(
            t=t,
            language=preferred_language(request, request.app[PARTS]),
            heading=t("error-title"),
            text=". ".join(x for x in (error.what, error.do) if x),
        )
    )
    return web.Response(text=html, status=error.status, content_type="text/html", headers=error.headers)


async def _join_page(request: web.Request) -> web.StreamResponse:
    """GET /join: the code is typed, or stands behind the '#' of the link."""
    return _door(request, stranger=False)


def _door(request: web.Request, *, stranger: bool) -> web.Response:
    parts = request.app[PARTS]
    language = preferred_language(request, parts)
    t = labels(language)
    html = (
        request.app[board.TEMPLATES]
        .get_template("join.html")
        .render(
            t=t,
            language=language,
            stranger=t("stranger") if stranger else "",
            choices=request.app[CHOICES],
        )
    )
    return web.Response(text=html, content_type="text/html")


@cache
def _file(name: str) -> bytes | None:
    if name not in {f.name for f in resources.files(__package__).joinpath("static").iterdir()}:
        return None
    return resources.files(__package__).joinpath("static", name).read_bytes()


@cache
def static_path(name: str) -> str:
    """The path of a file, with its content in the name: so it may be kept for ever and is never stale."""
    content = _file(name)
    if content is None:
        raise KeyError(f"there is no static file {name}")
    return f"/static/{hashlib.sha256(content).hexdigest()[:12]}/{name}"


async def _static(request: web.Request) -> web.StreamResponse:
    name = request.match_info["name"]
    content = _file(name)
    if content is None:
        raise web.HTTPNotFound
    kind = _TYPES.get(name.rpartition(".")[2], "application/octet-stream")
    headers = {**HEADERS, "Cache-Control": "public, max-age=31536000, immutable"}
    response = web.Response(body=content, content_type=kind, charset="utf-8", headers=headers)
    response.enable_compression()
    return response


async def _worker(_request: web.Request) -> web.StreamResponse:
    """GET /worker.js: shows board and sheet as last seen without a connection; at the root, as it serves all paths."""
    headers = {**HEADERS, "Cache-Control": "no-cache"}
    return web.Response(
        body=_file("worker.js"), content_type="text/javascript", charset="utf-8", headers=headers
    )


async def _manifest(request: web.Request) -> web.StreamResponse:
    """GET /manifest.webmanifest: by which a phone can put the page among its programs."""
    language = preferred_language(request, request.app[PARTS])
    name = labels(language)("title")
    about = {
        "name": name,
        "short_name": name,
        "lang": language,
        "start_url": "/",
        "scope": "/",
        "display": "standalone",
        "background_color": "#15120d",
        "theme_color": "#15120d",
        "icons": [{"src": static_path("mark.svg"), "sizes": "any", "type": "image/svg+xml"}],
    }
    headers = {**HEADERS, "Cache-Control": "no-cache"}
    return web.Response(text=json.dumps(about), content_type="application/manifest+json", headers=headers)
