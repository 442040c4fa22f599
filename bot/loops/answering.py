"""Working off stored updates: read, ask the server, answer, done. One person's in order, different people's at once.

An update is done only when it has been answered or can't be. One that is left (the channel did not answer, the process
died) comes again when its lease is over, one whose server did not answer as soon as that is back; its keys make the work
on it bear repeating.
"""

from __future__ import annotations

from collections.abc import Awaitable, Callable
from contextlib import suppress
from dataclasses import replace
from datetime import datetime, timedelta
from functools import partial
from typing import Protocol

import structlog

from bot.api_client import ApiError, FaultError, UnreachableError
from bot.channels.addresses import HasMenu, NotReadyError, TellsOfAddresses
from bot.channels.base import Channel, Incoming, Outcome, RawUpdate, Reply, Sent
from bot.loops.crowd import Crowd
from bot.loops.pace import Meter, Pace, Waiter
from bot.service_client import ServiceClient
from server.api.replies import RawUpdateOut
from server.clock import Clock, SystemClock
from server.log import broke
from server.sentences import language_of, sentence

__all__ = ["Answering", "Desk"]

log = structlog.get_logger("worker")

ANSWERED_FOR = timedelta(minutes=15)
"""An answer that could not be sent for so long is of no use any more; the report it was to is kept."""
TRIES_MAX = 30
"""After so many tries, a minute apart, an update on which the desk fails is set aside for people to look at."""
QUICK_TRIES = 3
MENUS_MAX = 10_000

_SETTLED = (Sent.ACCEPTED, Sent.NEVER, Sent.GONE)
_ENDED = (*_SETTLED, Sent.UNKNOWN)
"""After the quick tries an answer of unknown fate is let be: whoever asked sees at least that, or asks again."""


class Desk(Protocol):
    """What answers: `bot.conversing.Conversing`."""

    async def handle(self, incoming: Incoming) -> Reply:
        """The answer to one thing a person sent."""


class Answering:
    """The loop that works off updates."""

    def __init__(
        self,
        channel: Channel,
        service: ServiceClient,
        desk: Desk,
        pace: Pace,
        waiter: Waiter,
        clock: Clock | None = None,
        meter: Meter | None = None,
    ) -> None:
        self._channel, self._service, self._desk = channel, service, desk
        self._meter = meter or Meter(pace.at_most_per_s)
        self._pace, self._waiter = pace, waiter
        self._clock = clock or SystemClock()
        self._menus: dict[str, None] = {}
        self._crowd = Crowd(pace.batch)
        self._unsettled: dict[str, Callable[[], Awaitable[None]]] = {}
        self._lost = False

    async def run(self) -> None:
        """Work updates off until the stop; those claimed then are still worked off."""
        try:
            await self._work_off()
            await self._crowd.until_done()
        finally:
            self._crowd.cancel()

    async def _work_off(self) -> None:
        failures = 0
        while not self._waiter.stopping.is_set():
            try:
                if await self.once():
                    continue
                failures, wait_s = 0, self._pace.idle_s
            except Exception as error:
                wait_s = min(self._pace.again_longest_s, self._pace.again_s * 2.0 ** min(failures, 16))
                failures += 1
                self._lost |= isinstance(error, UnreachableError) and not isinstance(error, FaultError)
                log.warning("no updates claimed", channel=self._channel.name, error=type(error).__name__)
            await self._waiter.rest_or_news(wait_s)

    async def once(self) -> int:
        """Claim what there is room for and begin to work it off; how many updates that were."""
        await self._crowd.until_room()
        await self._settle()
        claimed = await self._service.next_updates(self._channel.name, self._crowd.room)
        people: dict[str, list[tuple[RawUpdateOut, tuple[Incoming, ...]]]] = {}
        for update in claimed:
            read = await self._read(update)
            if read is not None:
                people.setdefault(read[0].address if read else update.id, []).append((update, read))
        for address, theirs in people.items():
            self._crowd.add(address, partial(self._in_order, theirs))
        return len(claimed)

    async def _settle(self) -> None:
        """Tell the server, once it was lost, what it could not be told: or its claims would keep these people waiting."""
        if not self._lost:
            return
        for update, told in list(self._unsettled.items()):
            with suppress(ApiError):
                await told()
            del self._unsettled[update]
        self._lost = False

    async def _read(self, update: RawUpdateOut) -> tuple[Incoming, ...] | None:
        """What an update says; None for one that is left, or set aside as unreadable."""
        raw = RawUpdate(update.update_id, update.body, update.received_at)
        try:
            return self._channel.read(raw)
        except NotReadyError:
            return None
        except Exception as error:
            broke(log, "update can't be read", error, channel=self._channel.name, update=update.id)
            await self._done(update, f"can't be read: {type(error).__name__}")
            return None

    async def _in_order(self, theirs: list[tuple[RawUpdateOut, tuple[Incoming, ...]]]) -> None:
        for update, read in theirs:
            if not await self._work(update, read):
                # What the same person sent after it waits too, or it might be understood in its place.
                return

    async def _work(self, update: RawUpdateOut, read: tuple[Incoming, ...]) -> bool:
        """Work off one update; whether it is done."""
        try:
            await self._hand_on_addresses(update)
            for incoming in read:
                reply = await self._asked(incoming)
                if reply.again:
                    self._give_back(update)
                if reply.again and update.tries > 1:
                    return False
                outcome = await self._answered(incoming, reply)
                if outcome.sent not in _ENDED and not self._stale(update.received_at):
                    log.warning("answer not sent", channel=self._channel.name, outcome=outcome.sent.value)
                    return False
                if reply.again:
                    return False
                await self._show_menu(incoming, reply)
        except Exception as error:
            if isinstance(error, UnreachableError):
                log.warning("update left", update=update.id, error=type(error).__name__, tries=update.tries)
                self._lost |= not isinstance(error, FaultError)
                self._give_back(update)
                return False
            broke(log, "the desk failed", error, update=update.id, tries=update.tries)
            if update.tries in (1, TRIES_MAX):
                await self._say_fault(read)
            if update.tries < TRIES_MAX:
                # Told so, they may have written it anew: what comes after it must not wait for it.
                with suppress(ApiError, UnreachableError):
                    await self._service.update_later(self._channel.name, update.id)
                return True
            await self._done(update, f"the desk failed on it: {type(error).__name__}")
            return True
        await self._done(update, "")
        return True

    async def _say_fault(self, read: tuple[Incoming, ...]) -> None:
        """Whoever wrote, perhaps for help, must not take our silence for 'noted'."""
        for incoming in read:
            if not incoming.group:
                with suppress(Exception):
                    await self._channel.reply(
                        incoming, Reply(sentence(language_of(incoming.language), "error-fault"))
                    )

    async def _hand_on_addresses(self, update: RawUpdateOut) -> None:
        if isinstance(self._channel, TellsOfAddresses):
            for news in self._channel.addresses(RawUpdate(update.update_id, update.body, update.received_at)):
                await self._service.address_news(self._channel.name, news)

    async def _answered(self, incoming: Incoming, reply: Reply) -> Outcome:
        """Send the desk's answer, trying a few times at once what may soon work; marked once it may have arrived."""
        wait_s, marked = self._pace.again_s, False
        for _ in range(QUICK_TRIES - 1):
            self._meter.wait_s(urgent=True)
            outcome = await self._channel.reply(incoming, reply)
            asked_s = outcome.retry_after.total_seconds() if outcome.retry_after else 0.0
            if outcome.sent is Sent.UNKNOWN and not marked:
                reply, marked = _may_repeat(reply, incoming.language), True
            if outcome.sent is Sent.MOVED and outcome.new_address:
                incoming = _at(incoming, outcome.new_address)
            elif outcome.sent in _SETTLED or asked_s > self._pace.again_longest_s:
                return outcome
            else:
                await self._waiter.rest(max(wait_s, asked_s))
                wait_s *= 2
        return await self._channel.reply(incoming, reply)

    async def _asked(self, incoming: Incoming) -> Reply:
        wait_s = self._pace.again_s
        for _ in range(QUICK_TRIES - 1):
            try:
                reply = await self._desk.handle(incoming)
                if not reply.again:
                    return reply
            except UnreachableError:
                pass
            await self._waiter.rest(wait_s)
            wait_s *= 2
        return await self._desk.handle(incoming)

    async def _show_menu(self, incoming: Incoming, reply: Reply) -> None:
        """Once for each person and process, and as soon as somebody has joined."""
        if not isinstance(self._channel, HasMenu) or incoming.group or incoming.address in self._menus:
            return
        menu = reply.menu
        if menu is None:
            return
        if len(self._menus) >= MENUS_MAX:
            self._menus.clear()
        self._menus[incoming.address] = None
        await self._channel.show_menu(incoming, set(menu.kinds), menu.language)

    async def _done(self, update: RawUpdateOut, problem: str) -> None:
        done = partial(self._service.update_done, self._channel.name, update.id, problem)
        try:
            await done()
        except (ApiError, UnreachableError) as error:
            # It comes again, and its keys make it count once.
            log.warning("update not marked done", update=update.id, error=type(error).__name__)
            if isinstance(error, UnreachableError):
                self._lost |= not isinstance(error, FaultError)
                self._unsettled[update.id] = done

    def _give_back(self, update: RawUpdateOut) -> None:
        self._unsettled[update.id] = partial(
            self._service.update_back, self._channel.name, update.id, update.tries
        )

    def _stale(self, received_at: datetime) -> bool:
        return self._clock.now() - received_at > ANSWERED_FOR


def _may_repeat(reply: Reply, language: str) -> Reply:
    text = sentence(language_of(language), "mark-repeat", text=reply.text or reply.alt, short=0)
    return replace(reply, text=text)


def _at(incoming: Incoming, new_address: str) -> Incoming:
    return replace(incoming, reply_to=new_address)
