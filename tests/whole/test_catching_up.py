"""What waited is read before anybody is judged, and nobody waits who need not: on a stepped clock, without a sleep."""

from __future__ import annotations

from collections.abc import AsyncIterator, Callable
from contextlib import AsyncExitStack
from dataclasses import dataclass
from datetime import datetime, timedelta

import pytest
from structlog.testing import capture_logs

from server.api.building import build
from server.api.parts import Parts
from server.app import Options, make_parts
from server.clock import SteppedClock
from server.facts.entry import Entry, Kind, Source
from server.journal import Journal
from server.settings import Settings
from server.watch.notice import OutageValues
from tests.whole import hill
from tests.whole.hill import EVENT, RUNNER
from tests.whole.test_night import STARTS

SECOND, TTL = timedelta(seconds=1), timedelta(seconds=30)
TELEGRAM = Options(live=True, channels=frozenset({"telegram"}))
LEASE, SIGNS = "listen:telegram", "channel:telegram"


@dataclass(repr=False)
class House:
    """One database and as many servers on it as are started, all on one clock."""

    url: str
    clock: SteppedClock
    stack: AsyncExitStack

    async def server(self) -> tuple[Journal, Parts]:
        """A server with Telegram that has just started."""
        journal = await Journal.open(self.url, channels=("web", "telegram"))
        self.stack.push_async_callback(journal.close)
        return journal, make_parts(Settings(), journal, self.clock, TELEGRAM)

    async def judges(self, parts: Parts) -> bool:
        """Whether it judges at this moment."""
        await parts.ticker.tick(self.clock.now())
        return parts.ticker.catching_up is None

    async def polled(self, journal: Journal, holder: str, *, waited: bool = False) -> None:
        """A bot asked Telegram by this server's leave: it listens, and perhaps something waited there."""
        assert await journal.take_lease(LEASE, holder, self.clock.now(), TTL)
        await journal.heartbeat(SIGNS, self.clock.now(), caught_up=not waited)


@pytest.fixture
async def house(make_database: Callable[[], str]) -> AsyncIterator[House]:
    """A race that begins in an hour."""
    async with AsyncExitStack() as stack:
        yield House(make_database(), SteppedClock(STARTS - timedelta(hours=1)), stack)


async def test_beside_a_server_that_listens_a_second_judges_at_once(house: House) -> None:
    """The bot of the first has found nothing waiting: what the second would read, the first reads; at its very first
    look the second judges."""
    first, parts = await house.server()
    await house.polled(first, "a")
    parts.ticker.caught_up("telegram")
    assert await house.judges(parts)
    house.clock.advance(10 * SECOND)
    _, second = await house.server()
    assert await house.judges(second)


async def test_beside_a_server_that_still_reads_a_second_waits_for_it(house: House) -> None:
    """Both have just been started after an absence: neither judges before the one that listens has read all, and
    what it stored has been worked off; then both do."""
    first, parts = await house.server()
    _, second = await house.server()
    await house.polled(first, "a", waited=True)
    await first.store_updates("telegram", [(1, "{}")], house.clock.now())
    assert not await house.judges(parts)
    assert not await house.judges(second)
    house.clock.advance(SECOND)
    await house.polled(first, "a")
    parts.ticker.caught_up("telegram")
    assert not await house.judges(second), "stored, not yet worked off"
    await first.update_done("telegram-1", house.clock.now())
    assert await house.judges(second)
    assert await house.judges(parts)


async def test_after_a_kill_what_the_dead_one_heard_counts_for_nothing(house: House) -> None:
    """Killed and started again within seconds: the lease of the dead says nothing, its signs of life are from before;
    our own bot listens at once, without waiting for that lease to end, and only when it has read we judge."""
    first, _ = await house.server()
    await house.polled(first, "a")
    await first.close()
    house.clock.advance(3 * SECOND)
    again, parts = await house.server()
    assert not await house.judges(parts)
    await house.polled(again, "b", waited=True)
    assert not await house.judges(parts)
    house.clock.advance(SECOND)
    await house.polled(again, "b")
    parts.ticker.caught_up("telegram")
    assert await house.judges(parts)


async def test_two_started_after_a_kill_wait_for_the_one_that_listens(house: House) -> None:
    """That the dead one had read everything is no news: the holder must have found so itself."""
    first, _ = await house.server()
    await house.polled(first, "a")
    await first.close()
    house.clock.advance(3 * SECOND)
    listening, _ = await house.server()
    _, second = await house.server()
    assert await listening.take_lease(LEASE, "b", house.clock.now(), TTL)
    assert not await house.judges(second)
    await house.polled(listening, "b")
    assert await house.judges(second)


async def test_what_waited_at_a_channel_that_was_down_is_read_first(house: House) -> None:
    """Telegram comes back after ten minutes and hands over a report: nobody is judged before it has been worked off."""
    journal, parts = await house.server()
    await _stored(journal, house.clock.now())
    await house.polled(journal, "a")
    parts.ticker.caught_up("telegram")
    assert await house.judges(parts)
    for _ in range(6):
        house.clock.advance(timedelta(seconds=100))
        assert await house.judges(parts)
    await journal.store_updates("telegram", [(7, "{}")], house.clock.now())
    await house.polled(journal, "a", waited=True)
    assert not await house.judges(parts)
    assert await parts.ticker.look(EVENT, house.clock.now()) == ()
    await journal.update_done("telegram-7", house.clock.now())
    assert await house.judges(parts)
    await journal.store_updates("telegram", [(8, "{}")], house.clock.now())
    assert await house.judges(parts), "what comes in after that is everyday traffic"
    told = [m.notice.values for m in await journal.made(EVENT)]
    assert [(v.what, v.end is None) for v in told if isinstance(v, OutageValues)] == [
        (SIGNS, True),
        (SIGNS, False),
    ]


async def test_an_alarm_that_reaches_nobody_is_logged_in_capitals(house: House) -> None:
    """Nobody has a channel that works: the log says so once, in capitals, with a mark found by eye."""
    journal, parts = await house.server()
    await _stored(journal, house.clock.now())
    await house.polled(journal, "a")
    parts.ticker.caught_up("telegram")
    house.clock.advance(timedelta(hours=2))
    await house.polled(journal, "a")
    now = house.clock.now()
    asked = Entry("", EVENT, RUNNER, Kind.ASKED_FOR_HELP, now, now, now, "maren", Source.RUNNER, "maren", "k")
    await journal.append(asked)
    with capture_logs() as logs:
        for _ in range(4):
            await parts.ticker.tick(house.clock.now())
            house.clock.advance(timedelta(minutes=1))
    (said,) = [line for line in logs if "NOBODY HAS BEEN REACHED" in str(line["event"])]
    assert (str(said["event"])[:3], said["log_level"], said["runner"]) == ("!!!", "error", RUNNER)


async def _stored(journal: Journal, now: datetime) -> None:
    text = hill.event_text(STARTS)
    await journal.store_event(text, hill.files(), build(text, hill.files()).event, "office", now)
