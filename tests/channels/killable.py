"""A Telegram worker in a process that can be killed at any moment, and started again in a few milliseconds.

`python -m tests.channels.killable` reads one JSON object a line from its input (`server`, `token` of the channel,
`telegram` address, `bot` token), forks a child that works with these, and prints the child's number. It has imported
everything by then, so that a test may kill many. `Nursery` drives it from a test.
"""

from __future__ import annotations

import asyncio
import json
import os
import signal
import subprocess
import sys
from collections.abc import Mapping
from pathlib import Path
from typing import Self

import aiohttp

from bot.channels.base import Incoming, Reply
from bot.channels.telegram import Telegram
from bot.channels.telegram.api import Timeouts
from bot.channels.telegram.listening import Backoff
from bot.service_client import ServiceClient
from bot.worker import Pace, Worker

ROOT = Path(__file__).parents[2]


class Echo:
    """A desk that says back what it was asked."""

    async def handle(self, incoming: Incoming) -> Reply:
        """See `bot.worker.Desk`."""
        return Reply(f"you said: {incoming.text}")


async def work(told: Mapping[str, str]) -> None:
    """Work until killed."""
    channel = Telegram(
        told["bot"],
        told["telegram"],
        timeouts=Timeouts(poll_s=1, connection_s=60.0, answer_s=60.0),
        backoff=lambda: Backoff(0.01, 0.05),
    )
    # The lease outlives any test, or a slow machine would have it given up while the server is away.
    pace = Pace(idle_s=0.02, listen_ttl_s=300.0, again_s=0.01, again_longest_s=0.05)
    async with aiohttp.ClientSession() as session:
        await Worker(channel, ServiceClient(session, told["server"], told["token"]), Echo(), pace).run()


def main() -> None:
    """Fork a worker for each line."""
    signal.signal(signal.SIGCHLD, signal.SIG_IGN)
    for line in sys.stdin:
        pid = os.fork()
        if pid == 0:
            # Its log would fill the pipe its parent's numbers go through.
            sys.stdout = sys.stderr = open(os.devnull, "w")  # noqa: SIM115 - for the life of the process
            asyncio.run(work(json.loads(line)))
            return
        print(pid, flush=True)


class Nursery:
    """Starts and kills workers. `with Nursery() as nursery`."""

    def __init__(self) -> None:
        self._process: subprocess.Popen[bytes] | None = None
        self._pid = 0
        self.kills = 0

    def __enter__(self) -> Self:
        command = (sys.executable, "-m", "tests.channels.killable")
        pipe = subprocess.PIPE
        self._process = subprocess.Popen(command, stdin=pipe, stdout=pipe, cwd=ROOT)
        return self

    def __exit__(self, *_: object) -> None:
        self.kill()
        assert self._process is not None
        assert self._process.stdin is not None
        self._process.stdin.close()
        self._process.wait()

    async def start(self, **told: str) -> None:
        """Start a worker."""
        self._pid = await asyncio.to_thread(self._ask, told)

    def _ask(self, told: Mapping[str, str]) -> int:
        # The first time it imports everything first.
        assert self._process is not None
        assert self._process.stdin is not None
        assert self._process.stdout is not None
        self._process.stdin.write(json.dumps(told).encode() + b"\n")
        self._process.stdin.flush()
        return int(self._process.stdout.readline())

    def kill(self) -> None:
        """Kill the worker as hard as can be."""
        if self._pid:
            os.kill(self._pid, signal.SIGKILL)
            self._pid = 0
            self.kills += 1


if __name__ == "__main__":
    main()
