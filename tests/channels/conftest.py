"""A stand-in Bot API, and the Telegram channel that talks to it through the real library."""

from __future__ import annotations

import socket
from collections.abc import AsyncIterator, Callable
from typing import Any

import pytest

from bot.channels.telegram import Telegram
from bot.channels.telegram.api import Timeouts
from bot.channels.telegram.listening import Backoff
from tests.channels.standin import TOKEN, StandIn


@pytest.fixture
async def standin() -> AsyncIterator[StandIn]:
    """Telegram, on loopback."""
    async with StandIn() as started:
        yield started


@pytest.fixture
async def make_telegram(standin: StandIn) -> AsyncIterator[Callable[..., Telegram]]:
    """Makes Telegram channels at the stand-in, impatient so that tests are quick; closes them."""
    made: list[Telegram] = []

    def make(token: str = TOKEN, base_url: str = "", **options: Any) -> Telegram:
        timeouts = options.pop("timeouts", Timeouts(poll_s=1, connection_s=0.4, picture_s=0.4))
        options.setdefault("backoff", lambda: Backoff(0.01, 0.05))
        channel = Telegram(token, base_url or standin.base_url, timeouts=timeouts, **options)
        made.append(channel)
        return channel

    yield make
    for channel in made:
        await channel.close()


@pytest.fixture
def telegram(make_telegram: Callable[..., Telegram]) -> Telegram:
    """One such channel."""
    return make_telegram()


@pytest.fixture
def unused_port() -> int:
    """A port at which nobody listens."""
    with socket.socket() as probe:
        probe.bind(("127.0.0.1", 0))
        return int(probe.getsockname()[1])
