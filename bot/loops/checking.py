"""Opening a channel, and seeing that the other side of one that only sends is up, so that the server can say for
how long it was not."""

from __future__ import annotations

import structlog

from bot.channels.addresses import Checked, Opened, WrongSettingsError
from bot.channels.base import Channel
from bot.loops.pace import Pace, Waiter
from bot.service_client import ServiceClient

__all__ = ["Checking"]

log = structlog.get_logger("worker")

WELL_FOR = 2.5
"""How many checks in a row may go missing before the other side counts as down, less a half for slowness."""


class Checking:
    """The loop that opens and checks."""

    def __init__(self, channel: Channel, service: ServiceClient, pace: Pace, waiter: Waiter) -> None:
        self._channel, self._service, self._pace, self._waiter = channel, service, pace, waiter

    async def run(self) -> None:
        """Open the channel, then check it until the stop; returns where there is nothing to check."""
        if isinstance(self._channel, Opened):
            await self._open(self._channel)
        if isinstance(self._channel, Checked):
            await self._check(self._channel)

    async def _open(self, channel: Opened) -> None:
        wait_s = self._pace.again_s
        while not self._waiter.stopping.is_set():
            try:
                await channel.open()
                return
            except WrongSettingsError as error:
                log.error("WRONG SETTINGS", channel=self._channel.name, detail=str(error))
                await self._waiter.rest(self._pace.settings_again_s)
            except Exception as error:
                log.warning("channel not opened", channel=self._channel.name, error=type(error).__name__)
                await self._waiter.rest(wait_s)
                wait_s = min(self._pace.again_longest_s, wait_s * 2)

    async def _check(self, channel: Checked) -> None:
        every_s = channel.check_every.total_seconds()
        while not self._waiter.stopping.is_set():
            try:
                if await channel.check():
                    await self._service.alive(self._channel.name, max(10.0, every_s * WELL_FOR))
                else:
                    log.warning("the other side does not answer", channel=self._channel.name)
            except Exception as error:
                log.warning("not checked", channel=self._channel.name, error=type(error).__name__)
            await self._waiter.rest(every_s)
