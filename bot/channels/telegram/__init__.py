"""Telegram: people's own chat, by the real python-telegram-bot.

In: raw updates (asked for, or brought by a webhook). Out: `Incoming`s; messages with their `Outcome`. It never
imports the journal, never retries by itself, and its token stands in no log and no repr.

Settings: `token`; `base_url` (another server that speaks Telegram's Bot API; empty = Telegram's own);
`webhook_url` and `webhook_secret` (both set: Telegram calls us; empty: we ask); `poll_s`, `timeout_s`.
"""

from __future__ import annotations

import re

from bot.channels.addresses import WrongSettingsError
from bot.channels.base import Settings
from bot.channels.telegram.api import Timeouts
from bot.channels.telegram.channel import Telegram
from bot.channels.telegram.listening import Hook

__all__ = ["Telegram", "make"]

# Telegram takes 1 to 256 of these; one short enough to be guessed would let anybody in.
_SECRET = re.compile(r"[A-Za-z0-9_-]{16,256}")


def make(settings: Settings) -> Telegram:
    """The channel from its settings. WrongSettingsError names the setting that is wrong."""
    url, secret = settings.get("webhook_url", ""), settings.get("webhook_secret", "")
    if bool(url) != bool(secret):
        raise WrongSettingsError("a webhook of Telegram needs both telegram_webhook_secret and public_url")
    if secret and not _SECRET.fullmatch(secret):
        raise WrongSettingsError("telegram_webhook_secret has 16 to 256 letters, digits, '_' or '-'")
    try:
        timeout_s = float(settings.get("timeout_s", "5"))
        timeouts = Timeouts(
            poll_s=int(settings.get("poll_s", "25")), connection_s=timeout_s, answer_s=timeout_s
        )
    except ValueError:
        raise WrongSettingsError("poll_s and timeout_s of telegram are numbers of seconds") from None
    hook = Hook(url, secret) if url else None
    return Telegram(settings.get("token", ""), settings.get("base_url", ""), hook=hook, timeouts=timeouts)
