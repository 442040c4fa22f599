"""Delivering what is owed: claim, send, report. What becomes of each outcome is the server's to decide.

Alarms have room of their own: none waits for news under way, to others or to the same chat, however long that takes.
"""

from __future__ import annotations

import asyncio
import base64
from collections.abc import Iterable
from dataclasses import replace
from functools import partial

import structlog

from bot.channels.addresses import HasPhotos
from bot.channels.base import Channel, Delivery, Outcome, Sent
from bot.loops.crowd import Crowd
from bot.loops.pace import Meter, Pace, Waiter
from bot.service_client import ServiceClient
from server.api.replies import DeliveryOut
from server.conversation.telling.message import Button
from server.log import broke

__all__ = ["Delivering", "as_one"]

log = structlog.get_logger("worker")

REPORTED_FOR_S = 600.0
"""How long a 'sent' is told to a server that can't be reached. Untold, the delivery would be repeated."""


class Delivering:
    """The loop that delivers."""

    def __init__(
        self,
        channel: Channel,
        service: ServiceClient,
        pace: Pace,
        waiter: Waiter,
        meter: Meter | None = None,
    ) -> None:
        self._channel, self._service, self._pace, self._waiter = channel, service, pace, waiter
        self._meter = meter or Meter(pace.at_most_per_s)
        self._pictures = isinstance(channel, HasPhotos)
        self._news, self._alarms = Crowd(pace.batch), Crowd(pace.batch)

    async def run(self) -> None:
        """Deliver until the stop; what is claimed then is still sent and reported."""
        try:
            await self._deliver()
            await self._news.until_done()
            await self._alarms.until_done()
        finally:
            self._news.cancel()
            self._alarms.cancel()

    async def _deliver(self) -> None:
        failures = 0
        while not self._waiter.stopping.is_set():
            try:
                wait_s = await self.once()
                failures = 0
            except Exception as error:
                wait_s = min(self._pace.again_longest_s, self._pace.again_s * 2.0 ** min(failures, 16))
                failures += 1
                log.warning("nothing claimed", channel=self._channel.name, error=type(error).__name__)
            await self._waiter.rest(wait_s)

    async def once(self) -> float:
        """Claim what there is room for and begin to send it; how many seconds to rest before the next. While news leave
        no room, alarms only."""
        await self._alarms.until_room()
        room = self._news.room
        claimed = await self._service.claim(
            self._channel.name,
            room or self._alarms.room,
            self._pace.lease_s,
            urgent=not room,
            pictures=self._pictures,
        )
        began = asyncio.get_running_loop().time()
        # One message holds one picture, and the words of that alone.
        chats: dict[tuple[bool, str, str], list[DeliveryOut]] = {}
        for delivery in claimed.deliveries:
            alone = delivery.id if delivery.picture else ""
            chats.setdefault((delivery.urgent, delivery.address, alone), []).append(delivery)
        for (urgent, address, _), owed in chats.items():
            crowd = self._alarms if urgent else self._news
            crowd.add(address, partial(self._send, owed, began, urgent=urgent))
        if claimed.deliveries:
            return 0.0
        if room:
            return self._pace.idle_s
        await self._news.until_room(self._pace.idle_s)
        return 0.0

    async def _send(self, owed: list[DeliveryOut], began: float, *, urgent: bool) -> None:
        """One message for everything the chat is owed now; each part of it reported by itself."""
        await asyncio.sleep(self._meter.wait_s(urgent=urgent))
        outcome = await self._sent(owed, began)
        if outcome.sent is Sent.WRONG_SETTINGS:
            log.error("WRONG SETTINGS: NOTHING GOES OUT", channel=self._channel.name, detail=outcome.detail)
        for delivery in owed:
            await self._report(delivery, outcome, began)

    async def _sent(self, owed: list[DeliveryOut], began: float) -> Outcome:
        if asyncio.get_running_loop().time() - began > self._pace.lease_s / 4:
            return Outcome(Sent.NOT_SENT, "an earlier message to the same chat took too long")
        try:
            # Past the lease somebody else may be sending it.
            return await asyncio.wait_for(self._channel.deliver(as_one(owed)), self._pace.lease_s / 2)
        except TimeoutError:
            return Outcome(Sent.UNKNOWN, "no outcome within the lease")
        except Exception as error:
            broke(log, "channel failed", error, channel=self._channel.name)
            return Outcome(Sent.UNKNOWN, f"the channel failed: {type(error).__name__}")

    async def _report(self, delivery: DeliveryOut, outcome: Outcome, began: float) -> None:
        """Tell the server, again and again while it can't be reached and telling is still of use."""
        told_for_s = REPORTED_FOR_S if outcome.sent is Sent.ACCEPTED else self._pace.lease_s
        wait_s = self._pace.again_s
        while True:
            try:
                await self._service.report(delivery.id, delivery.tries, outcome)
                return
            except Exception as error:
                late = asyncio.get_running_loop().time() - began > told_for_s
                if late or self._waiter.stopping.is_set():
                    log.error("outcome not reported", delivery=delivery.id, error=type(error).__name__)
                    return
            await self._waiter.rest(wait_s)
            wait_s = min(self._pace.again_longest_s, wait_s * 2)


def as_one(owed: Iterable[DeliveryOut]) -> Delivery:
    """Everything owed to one chat as one delivery, under the id and subject of the first."""
    first, *others = (_delivery(d) for d in owed)
    merged = first
    for other in others:
        merged = replace(
            merged,
            text=f"{merged.text}\n\n{other.text}",
            buttons=merged.buttons + other.buttons,
            urgent=merged.urgent or other.urgent,
            may_repeat=merged.may_repeat or other.may_repeat,
        )
    return merged


def _delivery(out: DeliveryOut) -> Delivery:
    return Delivery(
        id=out.id,
        address=out.address,
        text=out.text,
        buttons=tuple(tuple(Button(b.label, b.data) for b in row) for row in out.buttons),
        short=out.short,
        urgent=out.urgent,
        may_repeat=out.may_repeat,
        subject=out.subject,
        picture=base64.b64decode(out.picture) if out.picture else None,
    )
