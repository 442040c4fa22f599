"""Web push as a channel (RFC 8030, 8291, 8292): a notice to a browser whose person switched it on, page open or not.

The address is the browser's own subscription as JSON: `endpoint`, `p256dh`, `auth`. What goes to the push service in
between is encrypted for that browser, and at most what such a service takes: the whole stands on the page. A
subscription that is gone (404, 410) takes nothing more. Libraries: pywebpush for the encryption, py-vapid for the
signature; sent by aiohttp, as pywebpush would follow a redirect and hand our signature on.

The body, JSON: `text`, `subject`, `short`, `urgent`, `may_repeat`, `buttons` as in `bot.channels.webhook`.

Settings: `key` (our private key, PEM), `contact` (an e-mail address or URL of ours), `timeout_s`.
"""

from __future__ import annotations

import ipaddress
import json
import socket
from dataclasses import dataclass
from urllib.parse import urlsplit

import aiohttp
from aiohttp.abc import ResolveResult
from py_vapid import Vapid02
from py_vapid.utils import b64urlencode
from pywebpush import WebPusher

from bot.channels.addresses import WrongSettingsError
from bot.channels.base import Delivery, Outcome, Sent, Settings
from bot.channels.outgoing import OnlyOut
from bot.channels.signing import ERRORS, of_status
from server.clock import Clock, SystemClock

__all__ = ["Push", "make", "new_key", "public_key"]

TTL_S = 3600
"""So long the push service keeps what a phone without signal can't be given (own choice)."""
BODY_BYTES = 3993
"""Taken everywhere: 4096 with what the encryption adds (RFC 8291, section 4)."""


@dataclass(frozen=True, slots=True)
class _Subscription:
    endpoint: str
    p256dh: str
    auth: str


def new_key() -> str:
    """A new private key of ours, PEM."""
    key = Vapid02()
    key.generate_keys()
    return str(key.private_pem().decode())


def public_key(private_pem: str) -> str:
    """What a browser subscribes with: the public point, uncompressed, base64url without padding."""
    from cryptography.hazmat.primitives.serialization import Encoding, PublicFormat

    public = Vapid02.from_pem(private_pem.encode()).public_key
    return str(b64urlencode(public.public_bytes(Encoding.X962, PublicFormat.UncompressedPoint)))


class Push(OnlyOut):
    """Sends deliveries to subscriptions. `anywhere`: to addresses of this machine and its network too, for tests."""

    name = "push"

    def __init__(
        self,
        private_pem: str,
        contact: str,
        timeout_s: float = 10.0,
        *,
        clock: Clock | None = None,
        anywhere: bool = False,
    ) -> None:
        self._key = Vapid02.from_pem(private_pem.encode())
        self._contact = contact if ":" in contact else f"mailto:{contact}"
        self._timeout = aiohttp.ClientTimeout(
            total=2 * timeout_s, sock_connect=timeout_s, sock_read=timeout_s
        )
        self._clock = clock or SystemClock()
        self._anywhere = anywhere

    async def deliver(self, delivery: Delivery) -> Outcome:
        """See `base.Channel`."""
        try:
            to = _read(delivery.address, anywhere=self._anywhere)
            body = self._sealed(to, _payload(delivery))
        except Exception as error:
            # The libraries raise many kinds for keys that are none; the text may quote them.
            return Outcome(Sent.NEVER, f"no subscription that can be used ({type(error).__name__})")
        return await self._post(to, body, urgent=delivery.urgent)

    def _sealed(self, to: _Subscription, payload: bytes) -> bytes:
        keys = {"p256dh": to.p256dh, "auth": to.auth}
        return bytes(WebPusher({"endpoint": to.endpoint, "keys": keys}).encode(payload)["body"])

    async def _post(self, to: _Subscription, body: bytes, *, urgent: bool) -> Outcome:
        now = self._clock.now()
        target = urlsplit(to.endpoint)
        expires = int(now.timestamp()) + 12 * 3600
        claims = {"sub": self._contact, "aud": f"{target.scheme}://{target.netloc}", "exp": expires}
        headers = {
            **self._key.sign(claims),
            "Content-Encoding": "aes128gcm",
            "Content-Type": "application/octet-stream",
            "TTL": str(TTL_S),
            "Urgency": "high" if urgent else "normal",
        }
        try:
            resolver = None if self._anywhere else _Public()
            connector = aiohttp.TCPConnector(force_close=True, resolver=resolver)
            async with (
                aiohttp.ClientSession(timeout=self._timeout, connector=connector) as session,
                session.post(to.endpoint, data=body, headers=headers, allow_redirects=False) as answer,
            ):
                return _outcome(
                    of_status(answer.status, answer.headers.get("Retry-After", ""), now), answer.status
                )
        except Exception as error:
            return Outcome(
                next((s for kind, s in ERRORS if isinstance(error, kind)), Sent.UNKNOWN), type(error).__name__
            )


def _outcome(outcome: Outcome, status: int) -> Outcome:
    """As of any receiver, but here 404 says that the subscription is gone too, and a refusal concerns it alone: it may have
    been made with another key."""
    if status in (401, 403, 404):
        return Outcome(Sent.GONE, outcome.detail)
    return outcome


def _payload(delivery: Delivery) -> bytes:
    """As much of the text as there is room for."""
    text = delivery.text
    while len(body := _json(delivery, text)) > BODY_BYTES and text:
        text = text[: len(text) * 3 // 4 - 1].rstrip() + "…" if len(text) > 8 else ""
    return body


def _json(delivery: Delivery, text: str) -> bytes:
    shown = {
        "text": text,
        "subject": delivery.subject[:100],
        "short": delivery.short,
        "urgent": delivery.urgent,
        "may_repeat": delivery.may_repeat,
        "buttons": [[{"label": b.label, "data": b.data} for b in row] for row in delivery.buttons],
    }
    return json.dumps(shown, ensure_ascii=False).encode()


def _read(address: str, *, anywhere: bool) -> _Subscription:
    """ValueError, KeyError or TypeError for what is no subscription, or of a place that no push service is at."""
    found = json.loads(address)
    to = _Subscription(str(found["endpoint"]), str(found["p256dh"]), str(found["auth"]))
    target = urlsplit(to.endpoint)
    if not target.hostname or (target.scheme != "https" and not anywhere):
        raise ValueError("not https")
    if not anywhere and _is_number(target.hostname):
        raise ValueError("a number instead of a name")
    return to


def _is_number(host: str) -> bool:
    try:
        ipaddress.ip_address(host)
    except ValueError:
        return False
    return True


class _Public(aiohttp.ThreadedResolver):
    """Finds no address of this machine or its network: where a notice is sent a browser has said, and it may lie."""

    async def resolve(
        self, host: str, port: int = 0, family: socket.AddressFamily = socket.AF_INET
    ) -> list[ResolveResult]:
        """See aiohttp; OSError where nothing public is left."""
        found = [
            r for r in await super().resolve(host, port, family) if ipaddress.ip_address(r["host"]).is_global
        ]
        if not found:
            raise OSError(None, "no public address")
        return found


def make(settings: Settings) -> Push:
    """The channel from its settings; WrongSettingsError names the one that is wrong."""
    for name in ("key", "contact"):
        if not settings.get(name):
            raise WrongSettingsError(f"{name} of push is missing")
    return Push(settings["key"], settings["contact"], float(settings.get("timeout_s", "10")))
