"""Short text through a gateway of any kind (SMS, satellite): an incoming webhook, answers by a signed POST.

In. A gateway POSTs JSON: `text` (what was written), `sent_at` (ISO 8601 with offset; left out, the time of receipt),
`id` (its own id of the message, the same when it sends it again; left out, text and `sent_at` stand in for it;
with neither, every request counts as a new message, since the same words may be meant twice).
It shows a token made for one device and one person; whoever takes the request in stores, as the update's
body, what `envelope` makes of both, and only then answers 200. A report needs no confirming.

Out. Answers and notices go as JSON (`to`: the device, `text`, `delivery`) to the gateway's own address, signed
as in `bot.channels.signing`. Without such an address the channel only hears.

Settings: `url` (the gateway's address; may be empty), `secret`, `timeout_s`.
"""

from __future__ import annotations

import hashlib
import json
from datetime import UTC, datetime
from typing import Any

from bot.channels.addresses import WrongSettingsError
from bot.channels.base import Delivery, Incoming, Outcome, RawUpdate, Reply, Sent, Settings, StoreUpdates
from bot.channels.signing import Poster
from bot.channels.webhook import poster
from server.clock import Clock, SystemClock

__all__ = ["TEXT_MAX", "BadTextError", "ShortText", "envelope", "make"]

TEXT_MAX = 2000
_ID_MAX = 100


class BadTextError(ValueError):
    """What a gateway sent can't be read; the text says which field and what it should be."""


def envelope(device: str, body: str, received_at: datetime) -> RawUpdate:
    """What to store of a gateway's request: checked, with whose device it was. BadTextError if it is wrong.

    The same request with an `id` or a `sent_at` makes the same update again.
    """
    try:
        sent = json.loads(body)
    except (ValueError, RecursionError):
        raise BadTextError("the body is not JSON") from None
    if not isinstance(sent, dict):
        raise BadTextError("the body is no JSON object")
    text = _field(sent, "text", TEXT_MAX)
    if not text.strip():
        raise BadTextError("text: is missing or empty")
    stamp = _field(sent, "sent_at", 40)
    _moment(stamp, received_at)
    told_apart_by = stamp or received_at.isoformat()
    digest = hashlib.sha256(f"{told_apart_by}\0{text}".encode()).hexdigest()[:24]
    key = _field(sent, "id", _ID_MAX) or digest
    kept = {"device": device, "id": key, "text": text, "sent_at": stamp}
    return RawUpdate(f"{device}/{key}", json.dumps(kept))


def _field(sent: dict[str, Any], name: str, most: int) -> str:
    value = sent.get(name, "")
    if isinstance(value, int) and not isinstance(value, bool):
        value = str(value)
    if not isinstance(value, str) or len(value) > most:
        raise BadTextError(f"{name}: must be text of at most {most} characters")
    return value


def _moment(stamp: str, otherwise: datetime) -> datetime:
    if not stamp:
        return otherwise
    try:
        at = datetime.fromisoformat(stamp)
    except ValueError:
        raise BadTextError("sent_at: must be an ISO 8601 time") from None
    if at.tzinfo is None:
        raise BadTextError("sent_at: must have an offset, such as Z or +01:00")
    return at.astimezone(UTC)


class ShortText:
    """The devices behind one gateway; an address is a device's id."""

    name = "text"

    def __init__(self, url: str, posts: Poster | None, clock: Clock | None = None) -> None:
        """`posts` is needed where there is a `url`."""
        self._url, self._posts = url, posts
        self._clock = clock or SystemClock()

    async def listen(self, store: StoreUpdates) -> None:
        """The server's own door stores what comes; nothing is to be fetched."""

    def read(self, update: RawUpdate) -> tuple[Incoming, ...]:
        """See `base.Channel`. ValueError or KeyError for a body that `envelope` did not make."""
        kept = json.loads(update.body)
        otherwise = update.received_at or datetime.fromtimestamp(0, UTC)
        return (
            Incoming(
                channel=self.name,
                address=str(kept["device"]),
                sent_at=_moment(str(kept["sent_at"]), otherwise),
                message_key=str(kept["id"]),
                text=str(kept["text"]),
                short_form=True,
            ),
        )

    async def reply(self, to: Incoming, reply: Reply) -> Outcome:
        """See `base.Channel`. The delivery id is made from the message's, so that a repeat can be told."""
        if reply.silent:
            return Outcome(Sent.ACCEPTED, "nothing to say")
        return await self._send(to.address, reply.text or reply.alt, f"re-{to.address}-{to.message_key}")

    async def deliver(self, delivery: Delivery) -> Outcome:
        """See `base.Channel`."""
        return await self._send(delivery.address, delivery.text, delivery.id)

    async def _send(self, device: str, text: str, delivery: str) -> Outcome:
        if not self._url or self._posts is None:
            return Outcome(Sent.NEVER, "this gateway takes no answers")
        body = json.dumps({"to": device, "text": text, "delivery": delivery}).encode()
        return await self._posts.post(self._url, delivery, body, self._clock.now())


def make(settings: Settings) -> ShortText:
    """The channel from its settings; WrongSettingsError names the one that is wrong."""
    url = settings.get("url", "")
    if url and not url.startswith(("https://", "http://")):
        raise WrongSettingsError("the address of the text gateway begins with https://")
    return ShortText(url, poster(settings, "the text gateway") if url else None)
