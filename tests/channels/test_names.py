"""What an event file may call a channel is what there is."""

from __future__ import annotations

from bot.channels.base import CHANNELS
from server.event.forms import CHANNELS as NAMES


def test_an_event_file_may_name_every_channel_and_no_other() -> None:
    """The bot's channels and the page: a channel that no file can name reaches nobody."""
    assert set(NAMES) == {*CHANNELS, "web"}
