"""Listening at a channel, by one process among all: a lease at the server says which.

The lease is renewed at a third of its time. A holder that can't reach the server stops listening when the lease
it had would have ended, so that never two listen for long; what both fetch counts once anyway.
"""

from __future__ import annotations

import asyncio
import uuid
from contextlib import suppress

import structlog

from bot.channels.addresses import WrongSettingsError
from bot.channels.base import Channel, RawUpdate
from bot.loops.pace import Pace, Waiter
from bot.service_client import ServiceClient
from server.log import broke

__all__ = ["Listening"]

log = structlog.get_logger("worker")


class Listening:
    """The loop that listens."""

    def __init__(self, channel: Channel, service: ServiceClient, pace: Pace, waiter: Waiter) -> None:
        self._channel, self._service, self._pace, self._waiter = channel, service, pace, waiter
        self._holder = uuid.uuid4().hex

    async def run(self) -> None:
        """Listen whenever it is ours to, until the stop; returns for a channel that has nothing to listen to."""
        while not self._waiter.stopping.is_set():
            until = self._lease_ends()
            if await self._renewed():
                try:
                    if await self._listen(until):
                        return
                except WrongSettingsError as error:
                    log.error(
                        "WRONG SETTINGS: NOTHING COMES IN", channel=self._channel.name, detail=str(error)
                    )
                    await self._waiter.rest(self._pace.settings_again_s)
                except Exception as error:
                    broke(log, "listening failed", error, channel=self._channel.name)
                    await self._waiter.rest(self._pace.again_s)
                finally:
                    await self._give_back()
            else:
                await self._waiter.rest(self._pace.listen_ttl_s / 3)

    async def store(self, updates: tuple[RawUpdate, ...]) -> None:
        """Keep updates at the server, and have them worked off."""
        await self._service.store(self._channel.name, updates, caught_up=not updates)
        if updates:
            self._waiter.news()

    async def _listen(self, held_until: float) -> bool:
        """Listen as long as the lease is held; True if the channel has nothing to listen to."""
        listening = asyncio.create_task(self._channel.listen(self.store))
        stopping = asyncio.create_task(self._waiter.stopping.wait())
        try:
            while not self._waiter.stopping.is_set():
                await asyncio.wait(
                    (listening, stopping),
                    timeout=self._pace.listen_ttl_s / 3,
                    return_when=asyncio.FIRST_COMPLETED,
                )
                if listening.done():
                    listening.result()
                    return True
                until = self._lease_ends()
                renewed = await self._renewed()
                if renewed:
                    held_until = until
                elif renewed is False or asyncio.get_running_loop().time() >= held_until:
                    log.warning("listening given up", channel=self._channel.name, lost=renewed is False)
                    return False
            return False
        finally:
            for task in (listening, stopping):
                task.cancel()
            await asyncio.gather(listening, stopping, return_exceptions=True)

    def _lease_ends(self) -> float:
        # Counted from before the server is asked, so that ours ends first.
        return asyncio.get_running_loop().time() + self._pace.listen_ttl_s

    async def _renewed(self) -> bool | None:
        """Whether the lease is ours; None if the server can't be asked."""
        try:
            return await self._service.lease(self._channel.name, self._holder, self._pace.listen_ttl_s)
        except Exception as error:
            log.warning("lease not asked for", channel=self._channel.name, error=type(error).__name__)
            return None

    async def _give_back(self) -> None:
        with suppress(Exception):
            await self._service.lease(
                self._channel.name, self._holder, self._pace.listen_ttl_s, give_back=True
            )
