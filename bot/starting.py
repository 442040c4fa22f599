"""Runs an installation's channels against one server, in the server's process or in one of their own."""

from __future__ import annotations

import asyncio
from collections.abc import AsyncIterator, Awaitable, Callable, Mapping
from contextlib import asynccontextmanager

import aiohttp

from bot.channels.addresses import HasPhotos
from bot.channels.base import make_channel
from bot.conversing import Conversing
from bot.service_client import ServiceClient
from bot.worker import Pace, Worker
from server.clock import Clock

__all__ = ["channels_at_work"]

ENDS_WITHIN_S = 20.0
"""How long the end waits for sends under way; what is cut off then is sent again, marked."""


@asynccontextmanager
async def channels_at_work(
    channels: Mapping[str, Mapping[str, str]],
    server_url: str,
    token_for: Callable[[str], Awaitable[str]],
    *,
    pace: Pace | None = None,
    clock: Clock | None = None,
) -> AsyncIterator[tuple[Worker, ...]]:
    """Run channels (name -> settings) against a server until the block ends; then finish what is under way.

    `token_for` gives the channel's own token. The block must end before the server does, or what has just
    been sent cannot be reported. Raises WrongSettingsError before anything runs.
    """
    made = [make_channel(name, its) for name, its in channels.items()]
    connector = aiohttp.TCPConnector(limit=0)
    async with aiohttp.ClientSession(connector=connector) as session:
        workers = []
        for channel in made:
            service = ServiceClient(session, server_url, await token_for(channel.name))
            photos = channel if isinstance(channel, HasPhotos) else None
            workers.append(Worker(channel, service, Conversing(service, photos), pace, clock))
        running = [
            asyncio.create_task(worker.run(), name=f"channel {w.name}")
            for worker, w in zip(workers, made, strict=True)
        ]
        try:
            yield tuple(workers)
        finally:
            for worker in workers:
                worker.stop()
            if running:
                _, late = await asyncio.wait(running, timeout=ENDS_WITHIN_S)
                for task in late:
                    task.cancel()
                await asyncio.gather(*running, return_exceptions=True)
