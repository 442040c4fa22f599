"""Who may have a group chat told what concerns all, part by part, and by which door."""

from __future__ import annotations

import pytest

from server.api import auth
from server.api.who_may import TABLE, Call, May
from server.event.model import PartKind
from tests.api.conftest import EVENT, Running
from tests.api.test_who_may import PERSON_OF

PATH = f"/v1/events/{EVENT}/group"


async def telegram(running: Running, person: str) -> dict[str, str]:
    """The headers of the Telegram bot acting for a person."""
    journal, now = running.parts.journal, running.clock.now()
    await journal.bind(person, "telegram", "777", now)
    secret = await journal.issue_token(None, "bot", [auth.channel_scope("telegram")], now)
    return {"Authorization": f"Bearer {secret}", "Acting-Address": "777"}


@pytest.mark.parametrize("part", PartKind, ids=lambda p: p.value)
async def test_who_may_bind_a_group(running: Running, part: PartKind) -> None:
    """As the table says: those who run the crew's night may, volunteers and supporters may not."""
    acting = await telegram(running, PERSON_OF[part])
    status, reply = await running.call(None, "POST", PATH, {"address": "-500"}, headers=acting)
    bound = [(g.channel, g.address) for g in await running.parts.journal.groups(EVENT)]
    if TABLE[Call.GROUP][part] is May.NO:
        assert (status, reply["error"]["code"], bound) == (403, "not_yours", [])
        return
    assert (status, reply["data"]["tell"], bound) == (200, True, [("telegram", "-500")])
    body = {"address": "-500", "tell": False}
    status, reply = await running.call(None, "POST", PATH, body, headers=acting)
    assert (status, reply["data"]["tell"]) == (200, False)
    assert await running.parts.journal.groups(EVENT) == ()


async def test_only_a_channel_has_groups(running: Running) -> None:
    """A page or device has no chats to offer: nobody binds somebody else's chat by its number."""
    status, reply = await running.call("ana", "POST", PATH, {"address": "-500"})
    assert (status, reply["error"]["code"]) == (403, "not_yours")
    assert await running.parts.journal.groups(EVENT) == ()
