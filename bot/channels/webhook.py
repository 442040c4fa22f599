"""A signed outgoing webhook as a channel: each delivery is one POST of JSON to a person's own address.

The body: `delivery` (the id), `short` (the notice's number), `text`, `subject`, `urgent`, `may_repeat`, `alt` (a
picture in words), `buttons` (rows of `label` and `data`), `sent_at` (ISO 8601). Headers, signature and what an
answer means: `bot.channels.signing`. Any 2xx is 'accepted'.

Settings: `secret` (at least 16 characters), `timeout_s`.
"""

from __future__ import annotations

import json

from bot.channels.addresses import WrongSettingsError
from bot.channels.base import Delivery, Outcome, Sent, Settings
from bot.channels.outgoing import OnlyOut
from bot.channels.signing import Poster
from server.clock import Clock, SystemClock

__all__ = ["Webhook", "make", "poster"]

SECRET_MIN = 16


class Webhook(OnlyOut):
    """POSTs deliveries to the address (URL) each is for."""

    name = "webhook"

    def __init__(self, posts: Poster, clock: Clock | None = None) -> None:
        self._posts = posts
        self._clock = clock or SystemClock()

    async def deliver(self, delivery: Delivery) -> Outcome:
        """See `base.Channel`."""
        if not delivery.address.startswith(("https://", "http://")):
            return Outcome(Sent.NEVER, "the address is no web address")
        now = self._clock.now()
        body = {
            "delivery": delivery.id,
            "short": delivery.short,
            "subject": delivery.subject,
            "text": delivery.text,
            "alt": delivery.alt,
            "urgent": delivery.urgent,
            "may_repeat": delivery.may_repeat,
            "buttons": [[{"label": b.label, "data": b.data} for b in row] for row in delivery.buttons],
            "sent_at": now.isoformat(),
        }
        return await self._posts.post(delivery.address, delivery.id, json.dumps(body).encode(), now)


def poster(settings: Settings, called: str) -> Poster:
    """What signs and sends, from a channel's settings; `called` is the channel in what goes wrong."""
    secret = settings.get("secret", "")
    if len(secret) < SECRET_MIN:
        raise WrongSettingsError(
            f"the secret of {called} is shorter than {SECRET_MIN} characters: choose one"
        )
    try:
        timeout_s = float(settings.get("timeout_s", "10"))
        return Poster(secret, timeout_s, timeout_s)
    except ValueError:
        raise WrongSettingsError(f"timeout_s of {called} is a number of seconds") from None


def make(settings: Settings) -> Webhook:
    """The channel from its settings; WrongSettingsError names the one that is wrong."""
    return Webhook(poster(settings, "webhook"))
