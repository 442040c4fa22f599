"""The set-up's paths: the door, a page and a form a step, the draft out and in."""

from __future__ import annotations

import asyncio
from collections.abc import Mapping
from typing import Any, Final

from aiohttp import web
from aiohttp.web_request import FileField
from jinja2 import Environment

from server.api.envelope import BODY_S, ApiError
from server.api.parts import PARTS
from server.course import CourseError, build_course, read_gpx
from server.drafting import crew, evidence, parcel, race
from server.drafting.document import Document, UnusualError
from server.drafting.typed import rows
from server.pages.board import TEMPLATES
from server.pages.labels import label, labels
from server.pages.session import preferred_language
from server.pages.setup import door, folder, publishing
from server.pages.setup.folder import RaceFolder
from server.pages.setup.look import STEPS, in_stages, look
from server.pages.setup.shown import context, pasted

BODY_MAX: Final = 100_000_000
"""A route of 100 MB is the most that is read (server.course)."""
DRAFT: Final = "draft.zip"
SAVING = web.AppKey("SAVING", asyncio.Lock)
"""One form after the other: each is read, changed and written as a whole."""
Form = Mapping[str, str]


async def enter(request: web.Request) -> web.StreamResponse:
    """GET /setup: the link's page, whose secret stands behind the '#'; or the first step for who has used it."""
    try:
        await door.folder_of(request)
    except ApiError as error:
        if error.code == "too_many":
            raise
        return _door(request)
    return door.to("course")


def _door(request: web.Request, wrong: str = "") -> web.Response:
    language = preferred_language(request, request.app[PARTS])
    return _html(request, "setup_door.html", language, {"wrong": wrong and label(language, wrong)})


async def open_(request: web.Request) -> web.StreamResponse:
    """POST /setup/open: the link's secret becomes a cookie."""
    try:
        async with asyncio.timeout(request.app[BODY_S]):
            data = await request.post()
    except TimeoutError:
        raise ApiError("too_slow", "the body took too long to come in", "body", "Send it again.") from None
    try:
        return await door.open_door(request, str(data.get("code", "")).strip())
    except ApiError as error:
        if error.code != "bad_token":
            raise
        response = _door(request, "setup-link-used")
        response.set_status(403)
        return response


async def show(request: web.Request) -> web.StreamResponse:
    """GET /setup/{step}: a step as the draft has it."""
    try:
        where = await door.folder_of(request)
    except ApiError as error:
        if error.code == "too_many":
            raise
        return _door(request, "setup-stranger")
    step = _step(request)
    draft = await asyncio.to_thread(folder.read, where)
    more = await publishing.before(request, draft) if step == "publish" else {}
    return await _page(request, step, draft, more)


def _step(request: web.Request) -> str:
    step = request.match_info["step"]
    if step not in STEPS:
        raise ApiError("not_found", "there is nothing at this path", "path")
    return step


async def _page(request: web.Request, step: str, draft: RaceFolder, more: Mapping[str, Any]) -> web.Response:
    parts = request.app[PARTS]
    language, now = preferred_language(request, parts), parts.clock.now()

    def made() -> tuple[str, dict[str, Any]]:
        found = look(draft, language)
        if found.doc is None:
            return "setup_broken.html", {"wrong": found.told}
        return f"setup_{step}.html", context(found, found.doc, step, language, now)

    template, values = await asyncio.to_thread(made)
    return _html(request, template, language, {"trouble": "", "said": "", **values, **more})


def _html(request: web.Request, template: str, language: str, values: Mapping[str, Any]) -> web.Response:
    environment: Environment = request.app[TEMPLATES]
    html = environment.get_template(template).render(t=labels(language), language=language, **values)
    return web.Response(text=html, content_type="text/html")


async def save(request: web.Request) -> web.StreamResponse:
    """POST /setup/{step}: everything typed goes into the draft, whatever was pressed; then what was pressed is done."""
    where, step = await door.folder_of(request), _step(request)
    form, uploads = await _sent(request)
    language = _language(request)
    async with request.app[SAVING]:
        draft = after = await asyncio.to_thread(folder.read, where)
        more: dict[str, Any] = {}
        try:
            after, more = await asyncio.to_thread(_apply, step, draft, form, uploads, language)
            await asyncio.to_thread(folder.write, where, after)
        except UnusualError as error:
            return await _page(request, step, draft, {"trouble": _unusual(error, language)})
        except OSError as error:
            why = label(language, "setup-not-kept", folder=str(where), why=error.strerror or "?")
            return await _page(request, step, after, {"trouble": why})
    if step == "publish" and form.get("do"):
        more = await publishing.press(request, after, form)
    if more:
        return await _page(request, step, after, more)
    onward = form.get("go", "")
    return door.to(onward if onward in STEPS else step)


def _unusual(error: UnusualError, language: str) -> str:
    return label(language, "setup-unusual", why=error.what.in_language(language))


def _language(request: web.Request) -> str:
    return preferred_language(request, request.app[PARTS])


Uploads = dict[str, list[tuple[str, bytes]]]
"""The files of a form, by field: each with the name it had."""


async def _sent(request: web.Request) -> tuple[dict[str, str], Uploads]:
    """Texts (the values of one name joined by commas) and files of a form."""
    try:
        data = await request.clone(client_max_size=BODY_MAX).post()
    except ValueError as error:
        raise ApiError("invalid", "the form can't be read", "body", "Send it again.") from error
    texts: dict[str, str] = {}
    uploads: Uploads = {}
    for name, value in data.items():
        if isinstance(value, FileField):
            content = value.file.read()
            if content:
                uploads.setdefault(name, []).append((value.filename, content))
        elif isinstance(value, str):
            clean = value.replace("\x00", "").replace("\r\n", "\n")
            texts[name] = f"{texts[name]}, {clean}" if name in texts else clean
    return texts, uploads


def _apply(
    step: str, draft: RaceFolder, form: Form, uploads: Uploads, language: str
) -> tuple[RaceFolder, dict[str, Any]]:
    """The draft after a form, and what the page shows besides (where it has to be shown before anything else)."""
    doc = Document(draft.text)
    files = dict(draft.files)
    more: dict[str, Any] = {}
    if step == "course":
        race.put_race(doc, form)
        if "route" in uploads:
            files, more = _route(doc, files, uploads["route"][0][1], language)
    elif step == "points":
        race.put_points(doc, rows(form, "p"))
        found = look(RaceFolder(doc.text(), files), language)
        length = found.course.length_km if found.course is not None else None
        if form.get("pasted", "").strip():
            read, seen = pasted(doc, form["pasted"], length)
            if form.get("do") == "take":
                race.take_rows(doc, read.rows, length)
                lost = [r for r in seen if r["lost"]]
                if lost or read.left:
                    more = {"said": label(language, "setup-taken-but", count=str(len(lost) + len(read.left)))}
            else:
                more = {"pasted": form["pasted"], "read": seen, "left": read.left}
                if form.get("do") != "read":
                    more["said"] = label(language, "setup-not-taken")
    elif step == "runner":
        crew.put_runners(doc, form)
        files |= evidence.take(doc, uploads.get("own", []), uploads.get("results", []))
        evidence.drop(doc, form)
    elif step == "people":
        crew.put_people(doc, rows(form, "p"), rows(form, "c"))
    elif step == "meetings":
        crew.put_drives(doc, rows(form, "d"))
        crew.put_meetings(doc, rows(form, "m"))
        if form.get("do") == "suggest":
            crew.suggest(doc)
    return RaceFolder(doc.text(), files), more


def _route(
    doc: Document, files: dict[str, bytes], data: bytes, language: str
) -> tuple[dict[str, bytes], dict[str, Any]]:
    try:
        course = build_course(read_gpx(data, race.ROUTE, stages=True))
    except CourseError as error:
        line = "" if error.line is None else f":{error.line}"
        return files, {"trouble": f"{race.ROUTE}{line}: {error.in_language(language)}"}
    race.put_route(doc, course, (label(language, "setup-start"), label(language, "setup-finish")))
    more: dict[str, Any] = {}
    if course.rides and not in_stages(doc):
        (km, gap), *_ = course.rides
        more = {"said": label(language, "setup-route-broken", **{"from": f"{km:.1f}", "gap": f"{gap:.1f}"})}
    return {**files, race.ROUTE: data}, more


async def take_out(request: web.Request) -> web.StreamResponse:
    """GET /setup/draft.zip: event.toml and the files beside it, as they are."""
    draft = await asyncio.to_thread(folder.read, await door.folder_of(request))
    data = await asyncio.to_thread(parcel.pack, draft.all_files())
    named = {"Content-Disposition": 'attachment; filename="race.zip"'}
    return web.Response(body=data, content_type="application/zip", headers=named)


async def put_in(request: web.Request) -> web.StreamResponse:
    """POST /setup/draft: a zip, or an event.toml, in the place of the draft; what is wrong in it is told at its steps."""
    where = await door.folder_of(request)
    _, uploads = await _sent(request)
    draft = await asyncio.to_thread(folder.read, where)
    try:
        files = await asyncio.to_thread(parcel.unpack, uploads.get("draft", [("", b"")])[0][1])
        text = files.pop(parcel.EVENT).decode()
        Document(text)
    except parcel.ParcelError as error:
        why = f"setup-parcel-{error.reason}"
    except UnicodeDecodeError:
        why = "setup-parcel-event"
    except UnusualError as error:
        return await _page(request, "course", draft, {"trouble": _unusual(error, _language(request))})
    else:
        await asyncio.to_thread(folder.replace, where, RaceFolder(text, files or draft.files))
        return door.to("check")
    return await _page(request, "course", draft, {"trouble": label(_language(request), why)})
