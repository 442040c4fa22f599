"""Invitations over HTTP: looked at, taken once, by a channel or by a device of its own."""

from __future__ import annotations

from datetime import timedelta

from server.api import auth
from tests.api.conftest import EVENT, Running


async def _code(running: Running, person: str) -> str:
    return await running.parts.journal.invite(person, EVENT, "test", running.clock.now(), timedelta(hours=1))


async def _channel(running: Running, channel: str = "telegram") -> dict[str, str]:
    secret = await running.parts.journal.issue_token(
        None, channel, [auth.channel_scope(channel)], running.clock.now()
    )
    return {"Authorization": f"Bearer {secret}"}


async def test_a_device_looks_then_joins_once(running: Running) -> None:
    """The preview names person and parts and uses nothing up; then the code gives one token, and no second."""
    body = {"code": await _code(running, "ana"), "channel": "device"}
    look = (await running.call(None, "POST", "/v1/join", {**body, "preview": True}))[1]["data"]
    taken = (await running.call(None, "POST", "/v1/join", body))[1]["data"]
    again = await running.call(None, "POST", "/v1/join", body)
    assert (look["name"], look["parts"][0]["kind"], look["accepted"], look["token"]) == (
        "Ana",
        "crew",
        False,
        "",
    )
    assert taken["accepted"]
    headers = {"Authorization": f"Bearer {taken['token']}"}
    assert (await running.call(None, "GET", "/v1/me", headers=headers))[1]["data"]["person"]["id"] == "ana"
    assert (again[0], again[1]["error"]["code"]) == (403, "no_such_code")


async def test_a_channel_binds_a_chat(running: Running) -> None:
    """Before, the address is nobody's; after, the channel's token acts for that person and no other."""
    channel = await _channel(running)
    acting = {**channel, "Acting-Address": "777"}
    before = await running.call(None, "GET", "/v1/me", headers=acting)
    body = {"code": await _code(running, "ana"), "channel": "telegram", "address": "777"}
    await running.call(None, "POST", "/v1/join", body, headers=channel)
    after = await running.call(None, "GET", "/v1/me", headers=acting)
    other = await running.call(None, "GET", "/v1/me", headers={**channel, "Acting-Address": "778"})
    bare = await running.call(None, "GET", "/v1/me", headers=channel)
    assert (before[0], before[1]["error"]["code"]) == (401, "no_address")
    assert after[1]["data"]["person"]["id"] == "ana"
    assert (other[0], bare[0]) == (401, 401)


async def test_another_channel_may_not_bind_ours(running: Running) -> None:
    """A token of one channel cannot join addresses of another."""
    body = {"code": await _code(running, "ana"), "channel": "email", "address": "a@example.org"}
    status, _ = await running.call(None, "POST", "/v1/join", body, headers=await _channel(running))
    assert status == 403


async def test_guessing_codes_is_slow(running: Running) -> None:
    """After five wrong codes from one address a further one waits, and the right one does not."""
    right = await _code(running, "ana")
    for number in range(5):
        body = {"code": f"WRONGCODE{number:03d}", "channel": "device"}
        assert (await running.call(None, "POST", "/v1/join", body))[0] == 403
    wrong = {"code": "WRONGCODE005", "channel": "device"}
    status, reply = await running.call(None, "POST", "/v1/join", wrong)
    assert (status, reply["error"]["code"]) == (429, "too_many")
    assert (await running.call(None, "POST", "/v1/join", {"code": right, "channel": "device"}))[0] == 200
