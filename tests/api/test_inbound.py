"""In which order what comes in is worked off: from which chat it is, and whether it sounds like a call for help."""

from __future__ import annotations

import json
from datetime import UTC, datetime

import pytest

from bot.channels.shorttext import envelope
from server.api.inbound import new_update, number
from tests.channels.working import at_message

NOW = datetime(2027, 6, 19, 4, 0, tzinfo=UTC)


@pytest.mark.parametrize(
    ("words", "urgent"),
    [("help", True), ("Hilfe, sie ist gestürzt", True), ("she can't breathe", True), ("sos", True),
     ("in at mill 1557", False), ("all good, no help needed", False), ("where is she?", False), ("", False)],
)  # fmt: skip
def test_what_is_written(words: str, urgent: bool) -> None:
    """By the same rules as the conversation's; whose it is by its sender, in a group too."""
    update = new_update("7", at_message(7, words, user=41))
    assert (update.update_id, update.chat, update.urgent) == (7, "41", urgent)


def test_what_is_pressed_and_what_comes_by_short_text() -> None:
    """A press may be a call for help or an answer to an alarm; a gateway's update names its device."""
    press = {"update_id": 8, "callback_query": {"id": "1", "from": {"id": 41}, "data": "x:y"}}
    assert (new_update("8", json.dumps(press)).chat, new_update("8", json.dumps(press)).urgent) == (
        "41",
        True,
    )
    text = envelope("device-1", json.dumps({"text": "SOS km 40", "id": "m1"}), NOW)
    update = new_update(text.id, text.body)
    assert (update.chat, update.urgent, update.update_id) == ("device-1", True, number("device-1/m1"))


@pytest.mark.parametrize(
    "body", ["", "no json", "[]", "7", '{"message": {"from": 3}}', "[" * 100_000, '{"a": {}}']
)
def test_what_can_not_be_read_is_of_no_chat(body: str) -> None:
    """It is stored as it came, and waits for nothing."""
    update = new_update("9", body)
    assert (update.body, update.chat, update.urgent) == (body, "", False)
