"""What a channel is: the values that go through it, the promises it keeps, and the table of all channels.

A channel knows one way of reaching people and nothing of events, runners or sentences. To add one, write a
file beside this one with a `make(settings) -> Channel` and add its line to `CHANNELS`.

Way in: the channel fetches raw updates and awaits `store(updates)`; only when that has returned are they
confirmed to where they came from, so that a killed process loses nothing. Later the worker hands each stored
update to `read`, the resulting `Incoming`s to the desk, and the desk's `Reply` to `reply`.
Way out: the worker claims deliveries from the server and calls `deliver`; the `Outcome` is reported back.
"""

from __future__ import annotations

from collections.abc import Awaitable, Callable, Mapping
from dataclasses import dataclass
from datetime import datetime, timedelta
from enum import StrEnum
from importlib import import_module
from typing import Protocol

from server.conversation.telling.message import Button, Rows
from server.conversation.values import Incoming, Photo, Reply

__all__ = [
    "CHANNELS",
    "Button",
    "Channel",
    "Delivery",
    "Incoming",
    "Outcome",
    "Photo",
    "RawUpdate",
    "Reply",
    "Sent",
    "StoreUpdates",
    "UnknownChannelError",
    "make_channel",
]


@dataclass(frozen=True, slots=True)
class RawUpdate:
    """One update as it came: `id` unique within the channel, `body` the text it arrived as (JSON or mail).

    `received_at` is when the server stored it; set on what comes out of the inbox, so that something its
    channel does not date (a pressed button) has a time all the same."""

    id: str
    body: str
    received_at: datetime | None = None


@dataclass(frozen=True, slots=True)
class Delivery:
    """One attempt owed over this channel: already worded by the server for the person it goes to.

    `short` is the notice's short number. `urgent` breaks through the phone's silence where the channel can;
    `may_repeat` says an earlier attempt had an unknown outcome (the text already says so).
    """

    id: str
    address: str
    text: str
    buttons: Rows = ()
    short: int = 0
    urgent: bool = False
    may_repeat: bool = False
    subject: str = ""
    picture: bytes | None = None
    alt: str = ""


class Sent(StrEnum):
    """What became of an attempt to send, and so what the server does next."""

    ACCEPTED = "accepted"
    """The channel took it (nobody is reached by that)."""
    NOT_SENT = "not sent"
    """Certainly not sent: try again, no mark."""
    UNKNOWN = "unknown"
    """May have been sent: try again, marked as a possible repeat."""
    LATER = "later"
    """The channel asks for time (`retry_after`): certainly not sent."""
    NEVER = "never"
    """This message will never be taken; do not retry it as it is."""
    GONE = "gone"
    """This address takes nothing more (blocked, left, deleted): the person's next channel."""
    MOVED = "moved"
    """The address has changed to `new_address`: store it, send again."""
    WRONG_SETTINGS = "wrong settings"
    """Token, host or rights are wrong: no message will get out until somebody mends it."""


@dataclass(frozen=True, slots=True)
class Outcome:
    """The outcome of one attempt. `ref` is the channel's own id of the message; `detail` holds no secrets."""

    sent: Sent
    detail: str = ""
    ref: str = ""
    retry_after: timedelta | None = None
    new_address: str = ""


StoreUpdates = Callable[[tuple[RawUpdate, ...]], Awaitable[None]]
"""Stores raw updates at the server; returns only when they are safe. Raises when they are not. An empty tuple
says that the other side answered and that nothing waits there: a sign of life, and the end of catching up."""


class Channel(Protocol):
    """One way of reaching people."""

    @property
    def name(self) -> str:
        """The key in `CHANNELS`; also what a person's `channels` list calls it."""

    async def listen(self, store: StoreUpdates) -> None:
        """Fetch updates until cancelled; await `store` before confirming them. Outgoing-only channels return
        at once. Raises nothing for trouble on the way (it waits and tries again), only for wrong settings."""

    def read(self, update: RawUpdate) -> tuple[Incoming, ...]:
        """What a stored update says; () for one that says nothing to the desk. Pure: the same update always
        gives the same Incomings, with the same keys."""

    async def reply(self, to: Incoming, reply: Reply) -> Outcome:
        """Answer where `to` came from."""

    async def deliver(self, delivery: Delivery) -> Outcome:
        """Send one delivery; never raises for what a channel can answer, never retries by itself."""


Settings = Mapping[str, str]
"""A channel's own settings (names documented in its file), secrets included; never logged."""


class UnknownChannelError(Exception):
    """A name that is not in `CHANNELS`."""


CHANNELS: Mapping[str, str] = {
    "terminal": "bot.channels.terminal",
    "telegram": "bot.channels.telegram",
    "email": "bot.channels.email",
    "webhook": "bot.channels.webhook",
    "text": "bot.channels.shorttext",
    "push": "bot.channels.push",
}
"""Name -> module with `make(settings: Settings) -> Channel`. Imported only when used, so that a server
without a channel does not need its library."""


def make_channel(name: str, settings: Settings) -> Channel:
    """The channel of that name, made from its settings."""
    if name not in CHANNELS:
        raise UnknownChannelError(f"no channel is called {name!r}; there are: {', '.join(sorted(CHANNELS))}")
    channel: Channel = import_module(CHANNELS[name]).make(settings)
    return channel
