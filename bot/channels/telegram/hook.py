"""The path Telegram calls when a webhook is set: secret checked, update stored, then answered.

Whatever can't be stored gets 503, upon which Telegram calls again; what is no update gets 400.
"""

from __future__ import annotations

import hmac
import json
from collections.abc import Awaitable, Callable

import structlog
from aiohttp import web

from bot.channels.base import RawUpdate, StoreUpdates
from bot.channels.installed import TELEGRAM_HOOK

__all__ = ["PATH", "SECRET_HEADER", "telegram_webhook"]

log = structlog.get_logger("telegram")

PATH = TELEGRAM_HOOK
SECRET_HEADER = "X-Telegram-Bot-Api-Secret-Token"  # noqa: S105 - the header's name


def telegram_webhook(
    secret: str, store: StoreUpdates
) -> Callable[[web.Request], Awaitable[web.StreamResponse]]:
    """A handler for POST at PATH. An empty secret is refused: it would let anybody in."""
    if not secret:
        raise ValueError("a webhook without a secret would be open to everybody: set telegram_webhook_secret")

    async def handle(request: web.Request) -> web.Response:
        shown = request.headers.get(SECRET_HEADER, "")
        if not hmac.compare_digest(shown.encode(), secret.encode()):
            return web.Response(status=403)
        body = await request.text()
        try:
            update = json.loads(body)
            raw = RawUpdate(str(int(update["update_id"])), body)
        except (ValueError, TypeError, KeyError, RecursionError):
            return web.Response(status=400)
        try:
            await store((raw,))
        except Exception as error:
            log.warning("update not stored", error=type(error).__name__)
            return web.Response(status=503)
        return web.Response(status=200)

    return handle
