"""Runs one channel against the server's API: listen, answer, deliver, check, until told to stop.

It survives the server being down (it tries again, and what was not confirmed comes again) and the channel being
down (outcomes are reported, and the missing sign of life tells the server since when). It keeps nothing that
could be lost: every update and every delivery is the server's.
"""

from __future__ import annotations

import asyncio

import structlog

from bot.channels.addresses import Opened
from bot.channels.base import Channel, StoreUpdates
from bot.channels.outgoing import OnlyOut
from bot.loops.answering import Answering, Desk
from bot.loops.checking import Checking
from bot.loops.delivering import Delivering
from bot.loops.listening import Listening
from bot.loops.pace import Meter, Pace, Waiter
from bot.service_client import ServiceClient
from server.clock import Clock

__all__ = ["Desk", "Pace", "Worker"]

log = structlog.get_logger("worker")


class Worker:
    """One channel at work. `run` it in a task; `stop` ends it after what it is doing."""

    def __init__(
        self,
        channel: Channel,
        service: ServiceClient,
        desk: Desk,
        pace: Pace | None = None,
        clock: Clock | None = None,
    ) -> None:
        pace = pace or Pace()
        self._channel = channel
        self._waiter = Waiter()
        meter = Meter(pace.at_most_per_s)
        self._listening = Listening(channel, service, pace, self._waiter)
        self._answering = Answering(channel, service, desk, pace, self._waiter, clock, meter)
        self._delivering = Delivering(channel, service, pace, self._waiter, meter)
        self._checking = Checking(channel, service, pace, self._waiter)

    @property
    def store(self) -> StoreUpdates:
        """Stores updates that come by another way than listening, and has them worked off."""
        return self._listening.store

    async def run(self) -> None:
        """Work until `stop`. When cancelled it ends at once; nothing is lost by that, only repeated."""
        log.info("channel at work", channel=self._channel.name)
        try:
            async with asyncio.TaskGroup() as loops:
                loops.create_task(self._checking.run())
                loops.create_task(self._delivering.run())
                if not isinstance(self._channel, OnlyOut):
                    loops.create_task(self._listening.run())
                    loops.create_task(self._answering.run())
        finally:
            if isinstance(self._channel, Opened):
                await self._channel.close()
            log.info("channel at rest", channel=self._channel.name)

    def stop(self) -> None:
        """Take nothing more on; what has been claimed is finished and reported."""
        self._waiter.stop()
