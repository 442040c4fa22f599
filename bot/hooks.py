"""Paths that machines of others call: Telegram with an update, a text gateway with a short message.

Both are stored in the inbox before they are answered, and worked off like everything else there.
"""

from __future__ import annotations

from datetime import datetime

from aiohttp import web

from bot.channels.base import RawUpdate
from bot.channels.installed import channels_of
from bot.channels.shorttext import BadTextError, ShortText, envelope
from server.api import auth
from server.api.ask import not_yours
from server.api.envelope import ApiError, reply
from server.api.inbound import keep_updates
from server.api.parts import PARTS, Parts
from server.api.replies import Stored

__all__ = ["TEXT_PATH", "TEXT_SCOPE", "add_to"]

TEXT_PATH = "/hooks/text"
TEXT_SCOPE = "text"
"""The scope of a text gateway's token: made for one person and one device."""


def add_to(app: web.Application) -> None:
    """Add the paths: Telegram's only where a webhook is set, as it is open to whoever knows the secret; the
    gateway's only where somebody works off what comes in, or it would wait for ever."""
    parts = app[PARTS]
    secret = parts.settings.telegram_webhook_secret.get_secret_value()
    if secret:
        # Only here, so that a server without Telegram does not need its library.
        from bot.channels.telegram.hook import PATH, telegram_webhook

        async def store(updates: tuple[RawUpdate, ...]) -> None:
            await _store(parts, "telegram", updates, parts.clock.now())

        app.router.add_post(PATH, telegram_webhook(secret, store))
    if ShortText.name in channels_of(parts.settings):
        app.router.add_post(TEXT_PATH, short_text)


async def _store(parts: Parts, channel: str, updates: tuple[RawUpdate, ...], now: datetime) -> int:
    return await keep_updates(parts, channel, [(u.id, u.body) for u in updates], now)


async def short_text(request: web.Request) -> web.Response:
    """POST /hooks/text: JSON as `bot.channels.shorttext` describes it, with a device's token in the header
    or, where a gateway can't set one, as `key` in the query. Answered once it is on the disk."""
    parts = request.app[PARTS]
    now = parts.clock.now()
    secret = request.query.get("key") or auth.secret_of(request)
    token = await auth.check(secret, request, parts, now)
    if TEXT_SCOPE not in token.scopes or token.person is None:
        raise not_yours(None)
    try:
        update = envelope(token.id, await request.text(), now)
    except (BadTextError, UnicodeDecodeError) as error:
        raise ApiError(
            "invalid", str(error), "body", "Send JSON with `text`, and `id`, `sent_at` if known."
        ) from None
    await parts.journal.bind(token.person, ShortText.name, token.id, now)
    return reply(Stored(await _store(parts, ShortText.name, (update,), now)), parts.clock.now())
