"""`stilepost serve` in processes that can be killed at any moment and started again in a fraction of a second.

`python -m tests.whole.forks` imports what the server needs, then for each JSON line of its input (`env`, `arguments`,
`log`) forks a child that runs the console command itself with these, and prints the child's number. `Servers` drives
it: a kill is SIGKILL, and what was killed is known to be gone before anything else happens.
"""

from __future__ import annotations

import asyncio
import json
import os
import signal
import socket
import subprocess
import sys
from dataclasses import dataclass
from pathlib import Path
from typing import Any, Self

import aiohttp

ROOT = Path(__file__).parents[2]
STARTS_WITHIN_S = 60.0


def main() -> None:
    """Fork a server for each line that has `arguments`; wait for the end of the one in each that has `gone`."""
    import bot.channels.telegram  # noqa: F401 - imported once, for every child
    import server.app  # noqa: F401
    from server.cli.main import main as stilepost

    for line in sys.stdin:
        asked = json.loads(line)
        if "gone" in asked:
            os.waitpid(asked["gone"], 0)
            print(asked["gone"], flush=True)
            continue
        pid = os.fork()
        if pid == 0:
            sys.stdin.close()
            log = os.open(asked["log"], os.O_WRONLY | os.O_CREAT | os.O_APPEND)
            os.dup2(log, 1)
            os.dup2(log, 2)
            os.environ.update(asked["env"])
            stilepost(asked["arguments"])
            os._exit(0)
        print(pid, flush=True)


@dataclass(slots=True)
class Running:
    """A server under way."""

    pid: int
    url: str


class Servers:
    """Starts and kills servers. `with Servers() as servers`; every one still running is killed at the end."""

    def __init__(self) -> None:
        self._process: subprocess.Popen[bytes] | None = None
        self._running: dict[int, Running] = {}

    def __enter__(self) -> Self:
        env = {**os.environ, "OPENBLAS_NUM_THREADS": "1", "OMP_NUM_THREADS": "1"}
        command = (sys.executable, "-m", "tests.whole.forks")
        pipe = subprocess.PIPE
        self._process = subprocess.Popen(command, stdin=pipe, stdout=pipe, cwd=ROOT, env=env)
        return self

    def __exit__(self, *_: object) -> None:
        self.kill_all()
        assert self._process is not None
        assert self._process.stdin is not None
        self._process.stdin.close()
        self._process.wait()

    def start(self, database: str, port: int, log: Path, **env: str) -> Running:
        """`stilepost serve` on that database and port, with more settings in the environment."""
        arguments = ["--database", database, "serve", "--port", str(port)]
        pid = self._ask(env=env, arguments=arguments, log=str(log))
        server = self._running[pid] = Running(pid, f"http://127.0.0.1:{port}")
        return server

    def bot(self, log: Path, **env: str) -> Running:
        """`stilepost bot telegram`, with its settings in the environment."""
        pid = self._ask(env=env, arguments=["bot", "telegram"], log=str(log))
        bot = self._running[pid] = Running(pid, "")
        return bot

    def kill(self, server: Running) -> None:
        """SIGKILL, and wait until it is gone."""
        if self._running.pop(server.pid, None) is not None:
            os.kill(server.pid, signal.SIGKILL)
            self._ask(gone=server.pid)

    def kill_all(self) -> None:
        """Every one that still runs."""
        for server in list(self._running.values()):
            self.kill(server)

    def _ask(self, **asked: Any) -> int:
        # It answers within milliseconds once it has imported everything.
        assert self._process is not None
        assert self._process.stdin is not None
        assert self._process.stdout is not None
        self._process.stdin.write(json.dumps(asked).encode() + b"\n")
        self._process.stdin.flush()
        return int(self._process.stdout.readline())


async def answering(session: aiohttp.ClientSession, server: Running) -> None:
    """Wait until a server answers."""
    async with asyncio.timeout(STARTS_WITHIN_S):
        while True:
            try:
                async with session.get(f"{server.url}/health") as reply:
                    await reply.read()
                    return
            except (aiohttp.ClientError, OSError):
                await asyncio.sleep(0.01)


def free_port() -> int:
    """A port that nobody listens on now."""
    with socket.socket() as taken:
        taken.bind(("127.0.0.1", 0))
        port: int = taken.getsockname()[1]
        return port


if __name__ == "__main__":
    main()
