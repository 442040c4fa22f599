"""The terminal channel: lines in, messages out, buttons by number; and the table of channels."""

from __future__ import annotations

import io
from collections.abc import AsyncIterator
from datetime import UTC, datetime

import pytest

from bot.channels.base import CHANNELS, Delivery, RawUpdate, Reply, Sent, UnknownChannelError, make_channel
from bot.channels.terminal import Terminal
from server.clock import SteppedClock
from server.conversation.telling.message import Button
from server.facts.entry import Fix

NOW = datetime(2027, 6, 19, 14, 10, tzinfo=UTC)


def terminal(lines: list[str], out: io.StringIO) -> Terminal:
    """A terminal at which those lines are typed."""
    typed: AsyncIterator[str] = _lines(lines)
    return Terminal("ana", read_line=lambda: anext(typed), out=out, clock=SteppedClock(NOW))


async def _lines(lines: list[str]) -> AsyncIterator[str]:
    for line in [*lines, ""]:
        yield line


async def test_lines_are_stored_before_they_count() -> None:
    """Each line is handed to the store, empty ones are not; what is read from it is what was typed."""
    kept: list[RawUpdate] = []

    async def store(updates: tuple[RawUpdate, ...]) -> None:
        kept.extend(updates)

    channel = terminal(["next\n", "\n", "@ 54.9, -2.6\n"], io.StringIO())
    await channel.listen(store)
    first, second = (channel.read(u)[0] for u in kept)
    assert (first.text, first.address, first.sent_at, first.message_key) == ("next", "ana", NOW, kept[0].id)
    assert (second.text, second.fix) == ("", Fix(54.9, -2.6))
    assert channel.read(kept[0]) == channel.read(kept[0])


async def test_a_store_that_fails_is_not_swallowed() -> None:
    """A line that could not be stored is not taken for said."""

    async def store(_: tuple[RawUpdate, ...]) -> None:
        raise OSError("disk full")

    with pytest.raises(OSError, match="disk full"):
        await terminal(["next\n"], io.StringIO()).listen(store)


async def test_buttons_are_pressed_by_number() -> None:
    """A number that stands before a button presses it; any other number is text."""
    out = io.StringIO()
    channel = terminal(["2\n", "7\n"], out)
    rows = ((Button("Yes", "n|1|yes"),), (Button("No", "n|1|no"),))
    outcome = await channel.deliver(Delivery("d", "ana", "Is it so?", rows, urgent=True))
    assert outcome.sent is Sent.ACCEPTED
    assert out.getvalue() == "\aIs it so?\n  [1] Yes\n  [2] No\n\n"
    kept: list[RawUpdate] = []

    async def store(updates: tuple[RawUpdate, ...]) -> None:
        kept.extend(updates)

    await channel.listen(store)
    assert [channel.read(u)[0].button for u in kept] == ["n|1|no", ""]
    assert channel.read(kept[1])[0].text == "7"


async def test_others_are_not_here_and_a_closed_terminal_is_unknown() -> None:
    """A message to another address goes on to their next channel; one that may have been shown is unknown."""
    out = io.StringIO()
    channel = terminal([], out)
    assert (await channel.deliver(Delivery("d", "jonas", "hello"))).sent is Sent.GONE
    incoming = channel.read(RawUpdate("u", '{"at": "2027-06-19T14:10:00+00:00", "text": "x"}'))[0]
    out.close()
    assert (await channel.reply(incoming, Reply("late"))).sent is Sent.UNKNOWN


def test_the_table_of_channels() -> None:
    """Every channel in the table can be made by name alone or says which setting it lacks; others are
    refused."""
    assert make_channel("terminal", {"address": "ana"}).name == "terminal"
    with pytest.raises(UnknownChannelError, match="no channel is called 'pigeon'; there are: "):
        make_channel("pigeon", {})
    assert all(module.startswith("bot.channels.") for module in CHANNELS.values())
