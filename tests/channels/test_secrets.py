"""The bot's token and people's words stand in no log, no repr and no record, however loud the logs are."""

from __future__ import annotations

import asyncio
import logging
from collections.abc import Callable

import pytest

from bot.channels.base import Delivery, RawUpdate
from bot.channels.telegram import Telegram
from tests.channels import standin as at
from tests.channels.conftest import WAIT_S
from tests.channels.standin import TOKEN, StandIn

WORDS = "she is at 54.1234, -2.4321 and being sick"


async def test_no_log_holds_the_token_or_what_was_written(
    make_telegram: Callable[..., Telegram],
    standin: StandIn,
    caplog: pytest.LogCaptureFixture,
    capsys: pytest.CaptureFixture[str],
) -> None:
    """The HTTP client logs whole URLs at INFO, the library what it sends at DEBUG and answers it can't read."""
    caplog.set_level(logging.DEBUG)
    channel = make_telegram()
    await standin.say(WORDS)
    stored: asyncio.Queue[tuple[RawUpdate, ...]] = asyncio.Queue()
    listening = asyncio.create_task(channel.listen(stored.put))
    await asyncio.wait_for(stored.get(), WAIT_S)
    listening.cancel()
    standin.script("sendMessage", at.fine, at.refused(500, WORDS), at.not_json, at.not_ok, at.another_shape)
    standin.script("sendMessage", at.lost_reply, at.refused(400, WORDS))
    outcomes = [await channel.deliver(Delivery("d", "41", WORDS)) for _ in range(7)]
    printed = capsys.readouterr()
    logged = caplog.text + "".join(str(r.__dict__) for r in caplog.records) + printed.out + printed.err
    assert TOKEN not in logged
    assert WORDS not in logged
    assert TOKEN not in repr(outcomes)


def test_no_repr_holds_the_token(make_telegram: Callable[..., Telegram]) -> None:
    """A traceback with local values would show it."""
    channel = make_telegram()
    assert TOKEN not in repr(channel)
    assert TOKEN not in repr(channel._bot)
    assert TOKEN not in str(channel._bot)


async def test_a_secret_setting_is_in_no_error(
    make_telegram: Callable[..., Telegram], unused_port: int
) -> None:
    """An error on opening says what is wrong without quoting the address."""
    channel = make_telegram(base_url=f"http://127.0.0.1:{unused_port}")
    with pytest.raises(ConnectionError) as error:
        await channel.open()
    assert TOKEN not in str(error.value)
    assert error.value.__cause__ is None
