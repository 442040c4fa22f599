"""Signed HTTP POSTs to machines of others: the headers, the signature, and what each answer means.

Headers of a request: `Stilepost-Timestamp`, POSIX seconds; `Stilepost-Delivery`, the same for every attempt of
one delivery, so that a repeat can be told; `Stilepost-Signature`, 'v1=' and the hex HMAC-SHA256, under the
secret both sides know, over the timestamp, a full stop, and the body as it was sent. A receiver computes
the same over what it got, compares in constant time, and refuses a timestamp more than five minutes off.
"""

from __future__ import annotations

import hashlib
import hmac
from dataclasses import dataclass
from datetime import datetime, timedelta
from email.utils import parsedate_to_datetime

import aiohttp

from bot.channels.base import Outcome, Sent
from server.api.openapi_extra import DELIVERY, SIGNATURE, TIMESTAMP

__all__ = ["DELIVERY", "ERRORS", "SIGNATURE", "STATUSES", "TIMESTAMP", "Poster", "sign", "verify"]

TOLERANCE = timedelta(minutes=5)


def sign(secret: str, timestamp: int, body: bytes) -> str:
    """The value of the signature header."""
    signed = str(timestamp).encode() + b"." + body
    return "v1=" + hmac.new(secret.encode(), signed, hashlib.sha256).hexdigest()


def verify(secret: str, timestamp: str, body: bytes, signature: str, now: datetime) -> bool:
    """Whether a request is signed with the secret, at most five minutes before or after `now`."""
    if not timestamp.isascii() or not timestamp.isdigit() or len(timestamp) > 12:
        return False
    fresh = abs(now.timestamp() - int(timestamp)) <= TOLERANCE.total_seconds()
    return hmac.compare_digest(sign(secret, int(timestamp), body).encode(), signature.encode()) and fresh


STATUSES: tuple[tuple[range, Sent], ...] = (
    (range(200, 300), Sent.ACCEPTED),
    (range(401, 402), Sent.WRONG_SETTINGS),
    (range(403, 404), Sent.WRONG_SETTINGS),
    (range(408, 409), Sent.UNKNOWN),
    (range(410, 411), Sent.GONE),
    (range(425, 426), Sent.LATER),
    (range(429, 430), Sent.LATER),
    # Not followed: where a message goes is the event file's to say. Others of 4xx: this one will never do.
    (range(300, 500), Sent.NEVER),
)
"""What an HTTP status means; first fit wins. Any other: unknown, as the receiver may have acted on it."""

ERRORS: tuple[tuple[type[BaseException], Sent], ...] = (
    (aiohttp.ClientConnectorError, Sent.NOT_SENT),
    (aiohttp.ConnectionTimeoutError, Sent.NOT_SENT),
    (aiohttp.InvalidURL, Sent.NEVER),
    (aiohttp.ClientError, Sent.UNKNOWN),
    (TimeoutError, Sent.UNKNOWN),
    (OSError, Sent.UNKNOWN),
    (ValueError, Sent.NEVER),
)
"""What an error on the way means; first fit wins. Any other: unknown."""


@dataclass(frozen=True, slots=True)
class Poster:
    """Sends signed POSTs. `timeout_s` holds for connecting, `answer_s` for each silence after that, both together
    for the whole."""

    secret: str
    timeout_s: float = 10.0
    answer_s: float = 10.0

    def __repr__(self) -> str:
        return "Poster()"

    async def post(self, url: str, delivery: str, body: bytes, now: datetime) -> Outcome:
        """One attempt; raises nothing. The outcome's `ref` is empty: the receiver names nothing."""
        timestamp = int(now.timestamp())
        headers = {
            "Content-Type": "application/json",
            TIMESTAMP: str(timestamp),
            DELIVERY: delivery,
            SIGNATURE: sign(self.secret, timestamp, body),
        }
        timeout = aiohttp.ClientTimeout(
            total=self.timeout_s + self.answer_s, sock_connect=self.timeout_s, sock_read=self.answer_s
        )
        try:
            # A connection kept from before may have been closed meanwhile, which would read as 'unknown'.
            connector = aiohttp.TCPConnector(force_close=True)
            async with (
                aiohttp.ClientSession(timeout=timeout, connector=connector) as session,
                session.post(url, data=body, headers=headers, allow_redirects=False) as answer,
            ):
                return of_status(answer.status, answer.headers.get("Retry-After", ""), now)
        except Exception as error:
            means = next((sent for kind, sent in ERRORS if isinstance(error, kind)), Sent.UNKNOWN)
            # Its text may quote the address, which may hold a secret.
            return Outcome(means, type(error).__name__)


def of_status(status: int, retry_after: str, now: datetime) -> Outcome:
    """What a status means; with a Retry-After the receiver asks for time, whatever else it says."""
    means = next((sent for codes, sent in STATUSES if status in codes), Sent.UNKNOWN)
    wait = _wait(retry_after, now)
    if status == 503 and wait is not None:
        means = Sent.LATER
    return Outcome(means, f"HTTP {status}", retry_after=wait if means is Sent.LATER else None)


def _wait(header: str, now: datetime) -> timedelta | None:
    """Seconds or a date (RFC 9110, 10.2.3); None for neither."""
    if header.isascii() and header.isdigit() and len(header) < 7:
        return timedelta(seconds=int(header))
    try:
        return max(timedelta(0), parsedate_to_datetime(header) - now)
    except (ValueError, TypeError):
        return None
