"""Ticks: everything owed once, nobody judged before what waited is read, one failing event stops no other."""

from __future__ import annotations

import asyncio
from datetime import timedelta
from pathlib import Path

import pytest

from server.api.parts import PARTS
from server.api.ticker import Catching, Schedule
from server.app import Options, make_app
from server.clock import SteppedClock, SystemClock
from server.journal import Journal
from server.settings import Settings
from server.watch.notice import NoticeKind
from tests.api.conftest import EVENT, Running


async def test_ticking_again_owes_nothing_again(running: Running) -> None:
    """Two ticks at one moment make each notice once."""
    await running.reachable()
    running.clock.set(running.start + timedelta(hours=6))
    await running.parts.ticker.tick(running.clock.now())
    first = await running.parts.journal.made(EVENT)
    await running.parts.ticker.tick(running.clock.now())
    assert first
    assert await running.parts.journal.made(EVENT) == first


async def test_two_servers_on_one_database_owe_it_once(running: Running, sqlite_url: str) -> None:
    """Ticks of two servers at the same time make each notice once."""
    running.clock.set(running.start + timedelta(hours=6))
    other = await Journal.open(sqlite_url)
    try:
        app = make_app(Settings(), other, running.clock, options=Options(live=False))
        await asyncio.gather(
            *(t.tick(running.clock.now()) for t in (running.parts.ticker, app[PARTS].ticker))
        )
        keys = [m.notice.key for m in await other.made(EVENT)]
    finally:
        await other.close()
    assert keys
    assert len(keys) == len(set(keys))


async def test_nobody_is_judged_before_what_waited_is_read(running: Running, sqlite_url: str) -> None:
    """After a restart with updates waiting, a tick owes nothing until they are worked off."""
    await running.parts.journal.store_updates("telegram", [(1, "{}")], running.clock.now())
    running.clock.set(running.start + timedelta(hours=12))
    journal = await Journal.open(sqlite_url)
    try:
        app = make_app(Settings(), journal, running.clock, options=Options(live=False))
        ticker = app[PARTS].ticker
        await ticker.tick(running.clock.now())
        before = await journal.made(EVENT)
        update = (await journal.next_updates("telegram", running.clock.now()))[0]
        await journal.update_done(update.id, running.clock.now())
        await ticker.tick(running.clock.now())
        after = await journal.made(EVENT)
    finally:
        await journal.close()
    assert before == ()
    assert after


@pytest.mark.parametrize(
    ("channels", "waiting", "after_s", "over"),
    [(set(), 0, 0, True), ({"telegram"}, 0, 0, False), (set(), 3, 0, False), (set(), 3, 119, False),
     ({"telegram"}, 3, 120, True), ({"telegram"}, 0, 121, True)],
)  # fmt: skip
def test_catching_up_ends(channels: set[str], waiting: int, after_s: float, over: bool) -> None:
    """When all has been read, or it has kept us as long as is safe: before, at and after that moment."""
    since = SystemClock().now()
    catching = Catching(since, channels)
    assert catching.over(waiting, since + timedelta(seconds=after_s), timedelta(seconds=120)) is over


async def test_a_failing_event_stops_no_other(
    running: Running, event_text: str, event_files: dict[str, bytes]
) -> None:
    """An event whose stored file can't be read any more is named as failing; the good one is judged."""
    text = event_text.replace('id = "harrow-round"', 'id = "broken"')
    event = running.built.event
    from dataclasses import replace

    await running.parts.journal.store_event(
        text.replace("[event]", "[evnt]"),
        event_files,
        replace(event, id="broken"),
        "test",
        running.clock.now(),
    )
    running.clock.set(running.start + timedelta(hours=6))
    await running.parts.ticker.tick(running.clock.now())
    assert set(running.parts.ticker.failing) == {"broken"}
    assert await running.parts.journal.made(EVENT)
    status, reply = await running.get(None, "/health")
    assert (status, reply["data"]["failing"], reply["data"]["well"]) == (503, 1, False)


async def test_the_schedule_wakes_the_tick_and_lets_it_finish(running: Running) -> None:
    """Live, the first tick comes at once, and stopping waits for a tick under way."""
    schedule = Schedule(running.parts.ticker, SystemClock())
    schedule.start()
    async with asyncio.timeout(60):
        while running.parts.ticker.last_tick is None:  # noqa: ASYNC110 - the schedule tells nobody
            await asyncio.sleep(0.05)
    await schedule.stop()
    assert running.parts.ticker.last_tick is not None


async def test_the_keep_by_date_blanks_the_event(running: Running, tmp_path: Path) -> None:
    """At the keep-by moment personal data goes, and the event no longer counts as failing."""
    keep_until = running.built.event.keep_until
    assert keep_until is not None
    running.clock.set(keep_until + timedelta(seconds=1))
    await running.parts.ticker.tick(running.clock.now())
    await running.parts.ticker.tick(running.clock.now())
    assert (await running.parts.journal.load_event(EVENT)).text == ""
    assert running.parts.ticker.failing == {}


async def test_a_stepped_clock_never_goes_back() -> None:
    """A step back is refused and changes nothing; a time without its zone is none."""
    clock = SteppedClock(SystemClock().now())
    before = clock.now()
    with pytest.raises(ValueError, match="is earlier"):
        clock.set(before - timedelta(seconds=1))
    with pytest.raises(ValueError, match="zone"):
        clock.set(before.replace(tzinfo=None))
    assert clock.now() == before
    assert clock.advance(timedelta(seconds=1)) == before + timedelta(seconds=1)


async def test_who_is_never_heard_of_is_missed_by_a_server_that_ran_over_the_start(running: Running) -> None:
    """What was folded before the start holds until then only: a server up since then made no alarm about her, ever, unless
    somebody reported something."""
    await running.reachable()
    await running.parts.ticker.tick(running.clock.now())
    running.clock.set(running.start + timedelta(hours=36))
    await running.parts.ticker.tick(running.clock.now())
    assert NoticeKind.OVERDUE in {m.notice.key.kind for m in await running.parts.journal.made(EVENT)}
