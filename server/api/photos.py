"""Photos that people send: made small, without what they tell of place and camera, kept, shown to those they went to."""

from __future__ import annotations

import asyncio
import base64
import binascii
import io
from typing import Any

from server.api.ask import Ask, not_yours
from server.api.models import CheckIn
from server.api.parts import Parts
from server.api.reports import check_in
from server.api.who_may import Call, May, may
from server.conversation.telling.answer import NotedAnswer
from server.conversation.values import Photo, Trouble
from server.event.model import Person
from server.facts.requests import addressees

__all__ = ["clean", "keep", "received", "shown"]

SENT_MAX = 700_000
"""So many bytes may be sent: as base64 with the words under it less than a body that the server reads by default."""
SIDE_MAX = 1280
"""Longest side kept, in pixels: a blister is seen at it, and it is small enough for a hill's signal (own choice)."""
PIXELS_MAX = 40_000_000
"""More are a telephone's no photo, and cost a server its memory (own choice)."""
JPEG = "image/jpeg"


async def received(content: str) -> Photo:
    """A photo as it came in base64, cleaned, or what is wrong with it."""
    try:
        sent = base64.b64decode(content, validate=True)
    except (binascii.Error, ValueError):
        return Photo(trouble=Trouble.UNREADABLE)
    if len(sent) > SENT_MAX:
        return Photo(trouble=Trouble.TOO_LARGE)
    small = await asyncio.to_thread(clean, sent)
    return Photo(content=small) if small is not None else Photo(trouble=Trouble.UNREADABLE)


def clean(sent: bytes) -> bytes | None:
    """The picture as JPEG of at most `SIDE_MAX` pixels a side, turned upright, and nothing else that its file holds: no
    place, time, camera or preview. None for what is no picture, or has more pixels than a photo."""
    # Only here: what a start has to load is what a call for help waits for after a crash.
    from PIL import Image, ImageOps

    try:
        with Image.open(io.BytesIO(sent), formats=("JPEG", "PNG", "WEBP")) as image:
            if image.width * image.height > PIXELS_MAX:
                return None
            upright = ImageOps.exif_transpose(image).convert("RGB")
    except Exception:  # what a broken file makes the decoder raise is of many kinds
        return None
    upright.thumbnail((SIDE_MAX, SIDE_MAX))
    bare = Image.new("RGB", upright.size)
    bare.paste(upright)
    out = io.BytesIO()
    bare.save(out, format="JPEG", quality=80)
    return out.getvalue()


async def keep(ask: Ask, content: bytes, body: dict[str, Any], runner: str | None) -> NotedAnswer:
    """Keep a photo and pass it on with the words under it. The picture is there before anybody is told of it, and bears the
    entry's id after, by which deletion finds it."""
    event = await ask.parts.pictures.event(ask.event)
    journal, by = ask.parts.journal, ask.person
    if ask.may(Call.PASS_ON) is May.NO:
        raise not_yours(Call.PASS_ON)
    picture = await journal.keep_picture(event.id, None, by, content, JPEG, ask.now)
    hers: Person | None = event.person(event.runner(runner).person) if runner else None
    ask.body = CheckIn.model_validate({**body, "picture": picture, "person": hers.id if hers else None})
    noted = await check_in(ask)
    await journal.keep_picture(event.id, noted.entry, by, content, JPEG, ask.now)
    return noted


async def shown(parts: Parts, event: str, picture: str, person: str) -> tuple[bytes, str]:
    """A photo's bytes and media type, for whoever took it and those it went to; ApiError 'not_yours' for anybody else and
    for one that is not there, or was taken back."""
    theirs = tuple(p.part for p in await parts.journal.parts(person) if p.event == event)
    kept = await parts.journal.picture_of(picture) if may(theirs, Call.PHOTO) is not May.NO else None
    if kept is None or kept[0] != event:
        raise not_yours(Call.PHOTO)
    now = await parts.pictures.take(event, parts.clock.now())
    entry = next((e for e in now.state.requests if e.picture == picture), None)
    told = {
        m.notice.key.person for m in now.situation.made if entry is not None and entry.id in m.notice.facts
    }
    if entry is None or person not in {entry.by, *told, *addressees(entry, now.event, now.state)}:
        raise not_yours(Call.PHOTO)
    found = await parts.journal.picture(picture)
    if found is None:
        raise not_yours(Call.PHOTO)
    return found
