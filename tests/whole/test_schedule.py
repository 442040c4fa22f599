"""The schedule never falls asleep, however long a look takes; and a server that never looks is not called well."""

from __future__ import annotations

import asyncio
from collections.abc import Callable
from datetime import datetime, timedelta
from typing import Any, cast

from server.api.system import health_of
from server.api.ticker import Schedule, Ticker
from server.app import Options, make_parts
from server.clock import SteppedClock, SystemClock
from server.journal import Journal
from server.settings import Settings
from tests.whole.test_night import STARTS


class SlowTicker:
    """Takes longer over a look than the time until it wants to look again, as on a busy machine at a start."""

    def __init__(self) -> None:
        self.looks = 0
        self.on_due: Callable[[datetime], None] = lambda _moment: None

    async def tick(self, now: datetime) -> datetime:
        self.looks += 1
        await asyncio.sleep(0.05)
        return now + timedelta(seconds=0.01)


async def test_a_look_that_takes_longer_than_its_pause_is_followed_by_the_next() -> None:
    """It looks again and again; a wake in the middle of a look is not lost either."""
    ticker = SlowTicker()
    schedule = Schedule(cast(Ticker, cast(Any, ticker)), SystemClock())
    schedule.start()
    await asyncio.sleep(0.02)
    ticker.on_due(SystemClock().now())
    async with asyncio.timeout(5):
        while ticker.looks < 5:  # noqa: ASYNC110 - what counts is that it goes on by itself
            await asyncio.sleep(0.01)
    await schedule.stop()


class SetBack:
    """A clock an hour ahead of what the scheduler goes by, as that of the machine is once it has been put back."""

    def now(self) -> datetime:
        return SystemClock().now() + timedelta(hours=1)


async def test_a_clock_put_back_by_an_hour_stops_no_look() -> None:
    """What was due by the old time would be an hour off by the new; nobody is left unwatched so long."""
    ticker = SlowTicker()
    schedule = Schedule(cast(Ticker, cast(Any, ticker)), SetBack(), longest_s=0.1)
    schedule.start()
    async with asyncio.timeout(5):
        while ticker.looks < 2:  # noqa: ASYNC110 - what counts is that it goes on by itself
            await asyncio.sleep(0.01)
    await schedule.stop()


async def test_a_server_that_never_looks_is_not_well(sqlite_url: str) -> None:
    """While what waited is being read that is no fault; long after, it is."""
    journal = await Journal.open(sqlite_url)
    clock, settings = SteppedClock(STARTS), Settings()
    parts = make_parts(settings, journal, clock, Options(live=False, channels=frozenset({"telegram"})))
    assert (await health_of(parts)).well
    clock.advance(timedelta(seconds=settings.catch_up_seconds_max))
    assert (await health_of(parts)).well
    clock.advance(timedelta(seconds=5 * settings.tick_seconds_max))
    assert not (await health_of(parts)).well
    await journal.close()
