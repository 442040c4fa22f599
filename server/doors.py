"""Where connections come in: how many may be open, and how long one may ask nothing.

aiohttp closes a connection that idles after a request, but not one that never sends any, or half of one: hundreds of such
would stay, and take the descriptors that a call for help needs.
"""

from __future__ import annotations

import asyncio
import time
from contextlib import suppress

from aiohttp import web
from aiohttp.web_protocol import RequestHandler

__all__ = ["Door"]


class Door(web.TCPSite):
    """A TCP site that closes connections which ask nothing for `idle_s`, and beyond `most` the idlest at once. One with a
    request in hand, a stream among them, is never closed. `close` ends the watching."""

    def __init__(self, runner: web.BaseRunner, host: str, port: int, *, most: int, idle_s: float) -> None:
        super().__init__(runner, host, port)
        self._most, self._idle_s = most, idle_s
        self._idle_since: dict[RequestHandler, float] = {}
        self._watching: asyncio.Task[None] | None = None

    async def start(self) -> None:
        """Begin to listen and to watch."""
        await super().start()
        self._watching = asyncio.create_task(self._watch())

    async def close(self) -> None:
        """Stop watching; the listening is the runner's to end."""
        if self._watching is not None:
            self._watching.cancel()
            with suppress(asyncio.CancelledError):
                await self._watching

    async def _watch(self) -> None:
        while True:
            await asyncio.sleep(min(1.0, self._idle_s / 4))
            self.look(time.monotonic())

    def look(self, now: float) -> None:
        """Close what has idled too long by `now`, and the idlest of what is too many."""
        server = self._runner.server
        assert isinstance(server, web.Server)
        idle = [c for c in server.connections if c._current_request is None]
        self._idle_since = {c: self._idle_since.get(c, now) for c in idle}
        idle.sort(key=lambda c: self._idle_since[c])
        too_many = len(server.connections) - self._most
        for number, connection in enumerate(idle):
            if now - self._idle_since[connection] >= self._idle_s or number < too_many:
                connection.force_close()
