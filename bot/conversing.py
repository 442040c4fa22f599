"""What a person sent goes to the server, and what it answers comes back: the only place where a channel's messages meet it.

Nothing is understood here. While the server can't be reached it says what the server gave it to say then, or, to somebody
who has not written to this process yet, that it is away.
"""

from __future__ import annotations

import base64
from collections import OrderedDict
from dataclasses import replace
from typing import Any

from bot.api_client import ApiError, FaultError, UnreachableError
from bot.channels.addresses import HasPhotos
from bot.channels.base import Button, Incoming, Reply
from bot.service_client import ServiceClient
from server.api.replies import Conversed
from server.sentences import language_of, sentence

__all__ = ["Conversing", "FailsOnItError"]

KNOWN_MAX = 5_000
"""Of so many addresses it is remembered what to say while the server is away."""


PHOTO_MAX = 700_000
"""So many bytes of a photo the server takes (server/api/photos.py)."""


class FailsOnItError(Exception):
    """The server is there, and makes a mistake with this message."""


class Conversing:
    """Answers messages of one channel through the server."""

    def __init__(self, service: ServiceClient, photos: HasPhotos | None = None) -> None:
        self._service, self._photos = service, photos
        self._if_away: OrderedDict[str, str] = OrderedDict()

    async def handle(self, incoming: Incoming) -> Reply:
        """The reply to one message; silent where nothing is to be said. Raises FailsOnItError."""
        if incoming.group and not incoming.addressed:
            return Reply("")
        try:
            answered = await self._service.converse(incoming.address, _body(incoming))
            replies = [_reply(answered)]
            if incoming.photo is not None:
                replies.append(await self._photo_kept(incoming))
        except FaultError as error:
            raise FailsOnItError(str(error)) from None
        except UnreachableError:
            return Reply(self._away(incoming), again=True)
        except ApiError as error:
            return Reply(_refusal(incoming, error))
        self._remember(incoming.address, answered)
        return _together(replies)

    async def _photo_kept(self, incoming: Incoming) -> Reply:
        """What becomes of a photo once its words, which wait for no picture, are done: whatever it is costs them nothing."""
        try:
            return _reply(await self._service.converse(incoming.address, await self._with_photo(incoming)))
        except (ApiError, UnreachableError):
            return Reply(sentence(language_of(incoming.language), "photo-lost"))

    async def _with_photo(self, incoming: Incoming) -> dict[str, Any]:
        """The message once more, with its picture, or that there is none to be had."""
        assert incoming.photo is not None
        content = await self._photos.photo(incoming.photo.ref) if self._photos is not None else None
        body = _body(replace(incoming, message_key=f"{incoming.message_key}.p"))
        if content is None:
            return {**body, "photo": "lost"}
        if len(content) > PHOTO_MAX:
            return {**body, "photo": "too large"}
        return {**body, "photo": "here", "picture": base64.b64encode(content).decode()}

    def _remember(self, address: str, answered: Conversed) -> None:
        self._if_away[address] = answered.if_away
        self._if_away.move_to_end(address)
        while len(self._if_away) > KNOWN_MAX:
            self._if_away.popitem(last=False)

    def _away(self, incoming: Incoming) -> str:
        known = self._if_away.get(incoming.address)
        key = "error-unreachable" if incoming.kept else "error-unreachable-not-kept"
        return known or sentence(language_of(incoming.language), key)


def _refusal(incoming: Incoming, error: ApiError) -> str:
    language, key = language_of(incoming.language), f"error-{error.code}"
    known = {"not_yours", "not_ready", "too_many"}
    return sentence(language, key if error.code in known else "error-other")


def _body(incoming: Incoming) -> dict[str, Any]:
    """The message as it travels; what is as usual is left out."""
    fix, live = incoming.fix, "ended" if incoming.live_ended else "on" if incoming.live else ""
    body: dict[str, Any] = {
        "place": incoming.reply_to,
        "group": incoming.group,
        "text": incoming.text.replace("\x00", " "),  # which the server refuses, whatever stands around it
        "press": incoming.button,
        "live": live,
        "photo": "to come" if incoming.photo else "",
        "edits": incoming.edits,
        "other": incoming.other,
        "language": incoming.language,
        "short": incoming.short_form,
    }
    if fix is not None:
        measured = {
            "accuracy_m": fix.accuracy_m,
            "speed_m_s": fix.speed_m_s,
            "heading_deg": fix.heading_deg,
        }
        body["fix"] = {"lat": fix.lat, "lon": fix.lon} | {k: v for k, v in measured.items() if v is not None}
    said = {k: v for k, v in body.items() if v}
    return {
        "key": incoming.message_key,
        "sent_at": incoming.sent_at.isoformat(),
        "kept": incoming.kept,
    } | said


def _together(replies: list[Reply]) -> Reply:
    """What is said to the words of a photo and to the photo, as one."""
    text = "\n".join(r.text for r in replies if r.text)
    return replace(replies[0], text=text, buttons=tuple(row for r in replies for row in r.buttons))


def _reply(answered: Conversed) -> Reply:
    rows = tuple(tuple(Button(b.label, b.data) for b in row) for row in answered.buttons)
    picture = base64.b64decode(answered.picture) if answered.picture else None
    return Reply(answered.text, rows, picture=picture, alt=answered.alt, menu=answered.menu)
