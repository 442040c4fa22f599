"""The paths that machines of others call: a text gateway with a token from the command line, from text to entry."""

from __future__ import annotations

import asyncio
import re
from datetime import UTC, datetime, timedelta
from pathlib import Path

import pytest
from aiohttp.test_utils import TestClient, TestServer
from click.testing import CliRunner
from pydantic import SecretStr

from bot.channels.installed import channel_settings
from bot.starting import channels_at_work
from bot.worker import Pace
from server.api import auth
from server.app import Options, make_app
from server.cli.main import stilepost
from server.clock import SteppedClock
from server.journal import Journal
from server.settings import Settings
from tests.api.conftest import DEMO, EVENT
from tests.channels.conftest import until


def command(url: str, *arguments: str) -> str:
    """What a command prints; it must do its job."""
    done = CliRunner().invoke(stilepost, ["--database", url, *arguments])
    assert done.exit_code == 0, done.output
    return done.output


async def test_a_token_of_the_command_line_lets_a_device_report(tmp_path: Path) -> None:
    """`stilepost token --text` for Ana; the gateway posts her words with it as a header or in the query; they are an
    entry of hers, unasked; a withdrawn token is worth nothing."""
    url = f"sqlite+aiosqlite:///{tmp_path / 'one.db'}"
    await asyncio.to_thread(command, url, "load", str(DEMO / "event.toml"), "--yes")
    shown = await asyncio.to_thread(command, url, "token", "satellite", "--text", "ana")
    secret = shown.split("token: ")[1].split()[0]
    assert f"/hooks/text?key={secret}" in shown
    assert "STILEPOST_TEXT_GATEWAY=true" in shown
    settings = Settings(text_gateway=True)
    journal = await Journal.open(url)
    (stored,) = await journal.list_events()
    event = (await journal.load_event(stored.event)).text
    starts = re.search(r"starts = (\S+)", event)
    assert starts is not None
    clock = SteppedClock(datetime.fromisoformat(starts[1]).replace(tzinfo=UTC) + timedelta(hours=3))
    server = TestServer(make_app(settings, journal, clock, options=Options(live=False)))
    async with TestClient(server) as client:

        async def post(words: str, **how: dict[str, str]) -> int:
            async with client.post("/hooks/text", json={"text": words, "id": words}, **how) as answer:
                return answer.status

        async def token(channel: str) -> str:
            return await journal.issue_token(None, channel, [auth.channel_scope(channel)], clock.now())

        here = {"text": channel_settings(settings)["text"]}
        async with channels_at_work(
            here, str(server.make_url("/")), token, pace=Pace(idle_s=0.02), clock=clock
        ):
            assert await post("in mill", headers={"Authorization": f"Bearer {secret}"}) == 200
            clock.advance(timedelta(minutes=5))  # of one and the same moment no order is promised
            assert await post("out mill", params={"key": secret}) == 200

            async def both() -> bool:
                return len(await journal.entries(EVENT)) == 2

            await until(both)
        entries = await journal.entries(EVENT)
        assert [(e.kind.value, e.point, e.by) for e in entries] == [
            ("in", "mill", "ana"),
            ("out", "mill", "ana"),
        ]
        (device,) = [t for t in await journal.tokens("ana") if t.device == "satellite"]
        await asyncio.to_thread(command, url, "tokens", "--revoke", device.id)
        assert await post("in chapel", params={"key": secret}) == 401
    await journal.close()


@pytest.mark.parametrize(
    ("settings", "status"),
    [(Settings(), 404), (Settings(text_gateway=True), 401), (Settings(channels_apart="text"), 401)],
)
async def test_the_gateways_path_is_there_only_where_somebody_works_off_what_comes(
    sqlite_url: str, settings: Settings, status: int
) -> None:
    """Otherwise it would be stored, never read, and hold up every start."""
    journal = await Journal.open(sqlite_url)
    server = TestServer(make_app(settings, journal, options=Options(live=False)))
    async with TestClient(server) as client, client.post("/hooks/text", json={"text": "in mill"}) as answer:
        assert answer.status == status
    await journal.close()


async def test_a_body_too_long_is_refused_before_it_is_read(sqlite_url: str) -> None:
    """Telegram's path: without the secret nothing of it is read; with it 413, and nothing is stored."""
    settings = Settings(telegram_webhook_secret=SecretStr("a-secret-of-ours"), max_body_bytes=2048)
    journal = await Journal.open(sqlite_url)
    server = TestServer(make_app(settings, journal, options=Options(live=False)))
    body = '{"update_id": 1, "x": "' + "y" * 4096 + '"}'
    async with TestClient(server) as client:
        for secret, status in (("wrong", 403), ("a-secret-of-ours", 413)):
            headers = {"X-Telegram-Bot-Api-Secret-Token": secret}
            async with client.post("/hooks/telegram", data=body, headers=headers) as answer:
                assert answer.status == status
        headers = {"X-Telegram-Bot-Api-Secret-Token": "a-secret-of-ours"}
        async with client.post("/hooks/telegram", data='{"update_id": 1}', headers=headers) as answer:
            assert answer.status == 200
    assert await journal.waiting("telegram") == 1
    await journal.close()
