"""The last step: the draft becomes a version of the event, and each person gets an invitation with its QR."""

from __future__ import annotations

import asyncio
from collections.abc import Mapping
from dataclasses import replace
from datetime import timedelta
from typing import Any, Final

import segno
from aiohttp import web

from server.api.building import BuildError, Built, build
from server.api.parts import PARTS
from server.conversation.telling.mistakes import say_change
from server.event import changes, removal_refused
from server.event.model import Event
from server.pages.labels import label
from server.pages.session import parts_words, preferred_language
from server.pages.setup.folder import RaceFolder

__all__ = ["before", "press", "qr_of"]

GOOD_FOR: Final = timedelta(days=14)
"""As long as an invitation of the command line."""
BY: Final = "set-up page"


async def before(request: web.Request, draft: RaceFolder) -> dict[str, Any]:
    """What publishing would change: `stored` the version there is (0 for none), `changes` in words, `refused` why not;
    `joined` who has come already."""
    parts = request.app[PARTS]
    language = preferred_language(request, parts)
    built = await asyncio.to_thread(_built, draft)
    none: dict[str, Any] = {"stored": 0, "changes": [], "refused": [], "joined": set(), "invited": []}
    if built is None:
        return none
    event = built.event
    versions = await parts.journal.event_versions(event.id)
    if not versions:
        return none
    stored = await parts.journal.load_event(event.id)
    old = await asyncio.to_thread(_stored, stored.text, stored.files)
    joined = {i.person for i in await parts.journal.invitations(event.id) if i.used_at is not None}
    if old is None:
        return none | {"stored": stored.version, "joined": joined}
    refused = removal_refused(old, event, await parts.journal.points_with_check_ins(event.id))
    found = changes(replace(old, version=0), replace(event, version=0))
    return none | {
        "stored": stored.version,
        "changes": [say_change(c, language) for c in found],
        "refused": [r.in_language(language) for r in refused],
        "joined": joined,
    }


async def press(request: web.Request, draft: RaceFolder, form: Mapping[str, str]) -> dict[str, Any]:
    """'publish' stores the draft; 'invite' makes a code for everybody who has not come yet, or for one person. What comes
    back is what the page shows: a code is shown once."""
    parts = request.app[PARTS]
    language, now = preferred_language(request, parts), parts.clock.now()
    built = await asyncio.to_thread(_built, draft)
    found = await before(request, draft)
    if built is None or found["refused"]:
        return found
    event = built.event
    if form["do"] == "publish":
        files = {n: draft.files[n] for n in event.files()}
        found["stored"] = await parts.journal.store_event(draft.text, files, event, BY, now)
        found |= {"changes": [], "said": label(language, "setup-published", version=str(found["stored"]))}
    if not found["stored"]:
        return found
    one = form.get("person", "")
    people = [p for p in event.people if (p.id == one if one else p.id not in found["joined"])]
    for person in people:
        code = await parts.journal.invite(person.id, event.id, BY, now, GOOD_FOR)
        found["invited"].append(_invitation(request, event, person.id, code, language))
    return found


def _invitation(request: web.Request, event: Event, person: str, code: str, language: str) -> dict[str, str]:
    settings = request.app[PARTS].settings
    site = (settings.public_url or f"{request.scheme}://{request.host}").rstrip("/")
    link = f"{site}/join#{code}"
    return {
        "id": person,
        "name": next(p.name for p in event.people if p.id == person),
        "parts": parts_words(event.parts_of(person), language),
        "code": code,
        "link": link,
        "qr": qr_of(link),
        "here": "" if settings.public_url else "yes",
    }


def qr_of(link: str) -> str:
    """The QR of a link, as a picture that stands in the page itself."""
    return segno.make(link, error="m", micro=False).svg_data_uri(scale=4, border=4, light="#fff")


def _built(draft: RaceFolder) -> Built | None:
    try:
        return build(draft.text, draft.files)
    except BuildError:
        return None


def _stored(text: str, files: Mapping[str, bytes]) -> Event | None:
    try:
        return build(text, files, accepted=True).event
    except BuildError:
        return None
