"""Nothing that hangs, here or in another process, keeps an alarm or a call for help."""

from __future__ import annotations

import asyncio
import os
import signal
import subprocess
import sys
import time
from collections.abc import AsyncIterator
from contextlib import asynccontextmanager
from datetime import datetime, timedelta
from pathlib import Path

import pytest
from aiohttp.test_utils import TestClient, TestServer

from server.api.building import Built, build
from server.api.parts import PARTS
from server.api.snapshot import Picture
from server.app import Options, make_app
from server.clock import SteppedClock
from server.facts.entry import Kind
from server.journal import Journal
from server.settings import Settings
from server.watch.notice import NoticeKind
from tests.api.conftest import EVENT, RUNNER, Running

pytestmark = pytest.mark.usefixtures("built_afresh")  # what a server takes to work out is measured

HUNG = """
import asyncio, sys
from datetime import datetime

import server.api.ticker as ticker
from server.app import Options, make_parts
from server.clock import SteppedClock
from server.journal import Journal
from server.settings import Settings

really = ticker._evaluate_surely

def slowly(picture, runner, now):
    found = really(picture, runner, now)
    if found[0].owed:
        print("judged", len(found[0].owed), flush=True)
        sys.stdin.readline()
    return found

async def main():
    now = datetime.fromisoformat(sys.argv[2])
    journal = await Journal.open(sys.argv[1])
    parts = make_parts(Settings(), journal, SteppedClock(now), Options(live=False))
    ticker._evaluate_surely = slowly
    await parts.ticker.tick(now)
    await journal.close()

asyncio.run(main())
"""
SECOND = """
[[runners]]
id = "lena"
name = "Lena"
bib = "215"
target = { finish = "29:00" }

[[people]]
id = "rosa"
name = "Rosa"
phone = "+44 1632 960077"
parts = [{ kind = "safety contact", runner = "lena", ladder = 1 }]
"""
ROOT = Path(__file__).parents[2]


@asynccontextmanager
async def served(
    url: str, text: str, files: dict[str, bytes], built: Built, after: timedelta
) -> AsyncIterator[Running]:
    """A server on that database, at a time after the start, everybody on a channel."""
    clock = SteppedClock(built.event.starts + after)
    journal = await Journal.open(url)
    await journal.store_event(text, files, built.event, "test", built.event.starts)
    app = make_app(Settings(), journal, clock, options=Options(live=False))
    async with TestClient(TestServer(app)) as client:
        running = Running(client, app[PARTS], clock, built)
        await running.reachable()
        yield running
    await journal.close()


async def test_a_peer_that_is_stopped_while_it_judges_silences_nobody(
    database_url: str, event_text: str, event_files: dict[str, bytes], built: Built
) -> None:
    """It has judged, holds its verdict, and is stopped (SIGSTOP). Nothing has been heard of her for a day and a half: ours
    makes every alarm meanwhile. Set going again, the other finds that its verdict has been overtaken."""
    async with served(database_url, event_text, event_files, built, timedelta(hours=36)) as ours:
        now = ours.clock.now()
        with subprocess.Popen(  # noqa: ASYNC220
            [sys.executable, "-c", HUNG, database_url, now.isoformat()],
            stdin=subprocess.PIPE, stdout=subprocess.PIPE, cwd=ROOT,
        ) as other:  # fmt: skip
            try:
                assert other.stdout is not None
                assert other.stdin is not None
                judged = await asyncio.to_thread(other.stdout.readline)
                assert judged.startswith(b"judged"), judged
                os.kill(other.pid, signal.SIGSTOP)
                async with asyncio.timeout(60):
                    await ours.parts.ticker.tick(now)
                made = await ours.parts.journal.made(EVENT)
                assert NoticeKind.OVERDUE in {m.notice.key.kind for m in made}
                os.kill(other.pid, signal.SIGCONT)
                other.stdin.write(b"\n" * 100)
                other.stdin.close()
                assert await asyncio.to_thread(other.wait, 60) == 0
                assert await ours.parts.journal.made(EVENT) == made
            finally:
                other.kill()


async def _alarm_within(running: Running, limit_s: float) -> float:
    """Seconds until the alarm of a call for help is in the outbox."""
    began = time.monotonic()
    async with asyncio.timeout(limit_s):
        while True:
            out = await running.parts.journal.made(EVENT, RUNNER)
            if any(m.notice.key.kind is NoticeKind.ASKED_FOR_HELP for m in out):
                return time.monotonic() - began
            await asyncio.sleep(0.02)


async def test_a_call_for_help_waits_for_no_picture(running: Running) -> None:
    """Every thread is busy and the picture is being worked out for ever: its alarm is out all the same, with what is
    known of her, and the answer names who was told."""
    await running.reachable()
    running.clock.advance(timedelta(hours=5))
    assert (await running.report("vera", "in", "mill"))[0] == 200
    loop = asyncio.get_running_loop()
    threads = [loop.run_in_executor(None, time.sleep, 9.0) for _ in range(40)]
    try:
        async with running.parts.pictures._kept[EVENT].lock:
            calling = asyncio.create_task(running.report("ana", "asked for help", words="her ankle"))
            assert await _alarm_within(running, 5.0) < 5.0
            status, reply = await calling
        assert (status, reply["data"]["status"]) == (200, "noted")
        assert len(reply["data"]["told"]) >= 2
    finally:
        for thread in threads:
            thread.cancel()
    await running.parts.ticker.look(EVENT, running.clock.now())
    made = await running.parts.journal.made(EVENT, RUNNER)
    values = next(m.notice.values for m in made if m.notice.key.kind is NoticeKind.ASKED_FOR_HELP)
    assert values.last_known is not None
    assert (values.words, values.last_known.point) == ("her ankle", "mill")


async def test_a_call_for_help_just_after_a_start(
    database_url: str, event_text: str, event_files: dict[str, bytes], built: Built
) -> None:
    """Nothing has been built yet, and updates still wait to be read: the alarm goes out; what the whole look finds is no
    second alarm to anybody."""
    async with served(database_url, event_text, event_files, built, timedelta(hours=5)) as started:
        await started.parts.journal.store_updates("telegram", [(1, "{}")], started.clock.now())
        status, reply = await started.report("ana", "asked for help", "no-such-place", words="her ankle")
        assert (status, bool(reply["data"]["told"])) == (200, True)
        before = await started.parts.journal.made(EVENT)
        assert {m.notice.key.kind for m in before} == {NoticeKind.ASKED_FOR_HELP}
        assert {m.notice.values.words for m in before} == {"her ankle (at: no-such-place)"}
        update = (await started.parts.journal.next_updates("telegram", started.clock.now()))[0]
        await started.parts.journal.update_done(update.id, started.clock.now())
        await started.parts.ticker.tick(started.clock.now())
        after = await started.parts.journal.made(EVENT)
        again = [m for m in after if m.notice.key.kind is NoticeKind.ASKED_FOR_HELP]
        assert [m.short for m in again] == [m.short for m in before]
        assert [e.kind for e in await started.stored()] == [Kind.ASKED_FOR_HELP]


async def test_a_call_for_help_that_can_not_be_judged_is_kept(running: Running) -> None:
    """Whatever breaks on the fast lane, the entry is kept and the whole look makes its alarm."""
    await running.reachable()
    running.clock.advance(timedelta(hours=5))

    async def broken(*_: object) -> None:
        raise ZeroDivisionError

    running.parts.pictures.owed_at_once = broken  # type: ignore[method-assign,assignment]
    status, reply = await running.report("ana", "asked for help", words="her ankle")
    assert (status, bool(reply["data"]["told"])) == (200, True)
    assert await _alarm_within(running, 5.0) < 5.0


async def test_the_runner_reported_on_is_judged_first(
    sqlite_url: str, event_text: str, event_files: dict[str, bytes]
) -> None:
    """No queue behind other runners: of two of whom nobody has been judged yet, whichever the report is about; then only
    she is, as no time has gone by."""
    text = event_text + SECOND
    async with served(sqlite_url, text, event_files, build(text, event_files), timedelta(hours=5)) as two:
        order: list[str] = []
        really = two.parts.ticker._judge_one

        async def noted(picture: Picture, look: int, runner: str, now: datetime) -> object:
            order.append(runner)
            return await really(picture, look, runner, now)

        two.parts.ticker._judge_one = noted  # type: ignore[method-assign,assignment]
        for runner, others in (("lena", [RUNNER]), (RUNNER, [])):
            order.clear()
            body = {"kind": "how she is", "words": "fine"}
            path = f"/v1/events/{EVENT}/runners/{runner}/checkins"
            assert (await two.call("olga", "POST", path, body))[0] == 200
            async with asyncio.timeout(60):  # a busy machine answers before all are judged
                while "" not in order:  # noqa: ASYNC110
                    await asyncio.sleep(0.02)
            assert order == [runner, *others, ""]
