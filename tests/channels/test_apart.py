"""The bot in a process of its own: real `stilepost serve`, real `stilepost bot`, the stand-in Telegram between."""

from __future__ import annotations

import asyncio
import os
import re
import signal
import sys
from collections.abc import AsyncIterator
from contextlib import asynccontextmanager
from pathlib import Path
from typing import Any

import pytest
from click.testing import CliRunner

from server.cli.main import stilepost
from tests.channels.conftest import WAIT_S, Server, until
from tests.channels.standin import TOKEN, StandIn

ROOT = Path(__file__).parents[2]
LOST, BACK = "SERVER NOT REACHED", "server reached again"


class Process:
    """One command of ours, running; `log` is what it has said."""

    def __init__(self, process: asyncio.subprocess.Process) -> None:
        self.process = process
        self.log = ""
        self._reading = asyncio.create_task(self._read())

    async def _read(self) -> None:
        assert self.process.stderr is not None
        while line := await self.process.stderr.readline():
            self.log += line.decode()

    async def end(self, how: signal.Signals = signal.SIGTERM) -> int:
        """Send the signal; its exit code."""
        if self.process.returncode is None:
            self.process.send_signal(how)
        code = await asyncio.wait_for(self.process.wait(), WAIT_S)
        await self._reading
        return code


class Place:
    """A machine's settings, and what runs on it."""

    def __init__(self, folder: Path, telegram: StandIn) -> None:
        self.env = {
            "STILEPOST_DATABASE": f"sqlite+aiosqlite:///{folder / 'one.db'}",
            "STILEPOST_CHANNELS_APART": "telegram",
        }
        self.bot_env = {"STILEPOST_TELEGRAM_TOKEN": TOKEN, "STILEPOST_TELEGRAM_BASE_URL": telegram.base_url}
        # The loudest log there is: what must not stand in it must not stand in any.
        self.env["STILEPOST_LOG_LEVEL"] = self.bot_env["STILEPOST_LOG_LEVEL"] = "debug"

    def command(self, *arguments: str) -> str:
        """What a command on the server's machine prints."""
        done = CliRunner().invoke(stilepost, list(arguments), env=self.env)
        assert done.exit_code == 0, done.output
        return done.output

    @asynccontextmanager
    async def running(self, *arguments: str, **env: str) -> AsyncIterator[Process]:
        """A command, for as long as the block runs."""
        clean = {k: v for k, v in os.environ.items() if not k.startswith("STILEPOST_")}
        started = Process(
            await asyncio.create_subprocess_exec(
                *(sys.executable, "-c", "from server.cli import main; main()", *arguments),
                cwd=ROOT,
                env={**clean, **env},
                stderr=asyncio.subprocess.PIPE,
            )
        )
        try:
            yield started
        finally:
            await started.end(signal.SIGKILL)

    def serve(self, port: int) -> Any:
        """The server."""
        return self.running("serve", "--port", str(port), **self.env)

    def bot(self, port: int, token: str) -> Any:
        """The bot; it knows nothing of the server's database."""
        url = f"http://127.0.0.1:{port}"
        return self.running("bot", "telegram", "--server", url, **self.bot_env, STILEPOST_SERVER_TOKEN=token)


@pytest.fixture
async def place(tmp_path: Path, standin: StandIn) -> Place:
    """The demo's event, loaded."""
    made = Place(tmp_path, standin)
    await asyncio.to_thread(made.command, "load", str(ROOT / "demo_event" / "event.toml"), "--yes")
    return made


def texts(standin: StandIn, chat: str) -> list[str]:
    """What was sent to a chat."""
    return [call.text for call in standin.sent if call.chat == chat]


async def test_a_bot_apart_waits_for_its_server_and_loses_nothing(
    place: Place, standin: StandIn, unused_port: int
) -> None:
    """Started before the server, it waits and says so. Then somebody joins; the server is killed; what is written
    meanwhile stays at Telegram and is answered when the server is back. SIGTERM ends it with 0; no log of either holds
    a token."""
    token = (await asyncio.to_thread(place.command, "token", "bot", "--channel", "telegram")).split()[-1]
    invited = await asyncio.to_thread(place.command, "invite", "ana", "--no-blocks")
    code = re.search(r"code: (\w+)", invited)
    assert code is not None
    async with place.bot(unused_port, token) as bot:
        await until(lambda: LOST in bot.log)
        async with place.serve(unused_port) as server:
            await until(lambda: BACK in bot.log or standin.offsets)
            await standin.say(f"/start {code[1]}")
            await until(lambda: len(texts(standin, "41")) == 1)
            offered = standin.sent[0]
            assert "Ana" in offered.text
            yes = offered.params["reply_markup"]["inline_keyboard"][0][0]["callback_data"]
            await standin.press(yes)
            await until(lambda: len(texts(standin, "41")) == 2)
            await until(lambda: standin.unconfirmed == [])
            lost = bot.log.count(LOST)
            await server.end(signal.SIGKILL)
        meanwhile = await standin.say("what do I bring")
        await until(lambda: bot.log.count(LOST) > lost)
        assert standin.unconfirmed == [meanwhile]
        assert len(texts(standin, "41")) == 2
        async with place.serve(unused_port) as again:
            await until(lambda: len(texts(standin, "41")) == 3)
            await until(lambda: standin.unconfirmed == [])
            assert await bot.end() == 0
            assert await again.end() == 0
        said = server.log + again.log + bot.log
        assert TOKEN not in said
        assert token not in said
        assert "what do I bring" not in said


async def test_a_token_that_is_not_the_channels_ends_the_bot(
    server: Server, tmp_path: Path, standin: StandIn, unused_port: int
) -> None:
    """Waiting would not help: exit code 1, what to do, and Telegram was never asked."""
    token = await server.token("email")
    async with Place(tmp_path, standin).bot(unused_port, token) as bot:
        assert await asyncio.wait_for(bot.process.wait(), WAIT_S) == 1
        await until(lambda: "--channel telegram" in bot.log)
        assert token not in bot.log
    assert standin.asked == {}


CASES: dict[str, tuple[list[str], dict[str, str], str]] = {
    "no channel": (["bot"], {}, "none: set a bot token"),
    "which of two": (
        ["bot"],
        {"STILEPOST_TELEGRAM_TOKEN": TOKEN, "STILEPOST_SMTP_HOST": "x"},
        "telegram, email",
    ),
    "one that lacks its settings": (["bot", "email"], {"STILEPOST_TELEGRAM_TOKEN": TOKEN}, "'email'"),
    "no server": (["bot"], {"STILEPOST_TELEGRAM_TOKEN": TOKEN}, "STILEPOST_SERVER_URL"),
    "no web address": (["bot", "--server", "crew"], {"STILEPOST_TELEGRAM_TOKEN": TOKEN}, "'crew'"),
    "no token": (
        ["bot", "--server", "http://x"],
        {"STILEPOST_TELEGRAM_TOKEN": TOKEN},
        "STILEPOST_SERVER_TOKEN",
    ),
    "no file": (
        ["bot", "--server", "http://x", "--token-file", "/nowhere"],
        {"STILEPOST_TELEGRAM_TOKEN": TOKEN},
        "/nowhere",
    ),
    "a channel that is none": (["invite", "ana"], {"STILEPOST_CHANNELS_APART": "pigeon"}, "channels_apart"),
}


@pytest.mark.parametrize("case", CASES)
def test_what_is_missing_is_named(case: str, tmp_path: Path) -> None:
    """Before anything starts, and no secret is shown."""
    arguments, env, says = CASES[case]
    url = f"sqlite+aiosqlite:///{tmp_path / 'one.db'}"
    found = CliRunner().invoke(stilepost, ["--database", url, *arguments], env=env)
    assert (found.exit_code, says in found.output) == (1, True), found.output
    assert TOKEN not in found.output
