"""'Stand down' with no alarm open: kept as words, says so, and keeps no later alarm off."""

from __future__ import annotations

from collections.abc import AsyncIterator
from datetime import timedelta

import pytest

from server.facts.entry import Kind
from server.watch.notice import NoticeKind
from tests.api.conftest import Running
from tests.api.test_little_heard import ask, made, running
from tests.api.test_not_here_yet import event_text


@pytest.fixture
async def onward(sqlite_url: str) -> AsyncIterator[Running]:
    """Out of Skelter Mill two hours into the race."""
    async with running(sqlite_url, event_text()) as server:
        server.clock.advance(timedelta(hours=2))
        assert (await ask(server, "out of mill")).startswith("Noted: Maren out of Skelter Mill")
        yield server


async def alarm_after(server: Running, said_at: timedelta | None) -> timedelta:
    """How long after now the alarm comes, if 'stand down' is said so long after it."""
    began = server.clock.now()
    while server.clock.now() < began + timedelta(hours=14):
        server.clock.advance(timedelta(minutes=10))
        if said_at is not None and server.clock.now() >= began + said_at:
            said_at = None
            answer = await ask(server, "stand down", "dad")
            assert answer.startswith("No alarm about Maren is open")
        await server.parts.ticker.tick(server.clock.now())
        if await made(server, NoticeKind.OVERDUE):
            return server.clock.now() - began
    raise AssertionError("no alarm in fourteen hours")


async def test_it_puts_no_alarm_off(onward: Running, sqlite_url: str) -> None:
    """Said half an hour before it: the alarm comes when it would have come."""
    without = await alarm_after(onward, None)
    async with running(sqlite_url.replace("journal", "other"), event_text()) as again:
        again.clock.advance(timedelta(hours=2))
        await ask(again, "out of mill")
        assert await alarm_after(again, without - timedelta(minutes=30)) == without
        kept = [e for e in await again.parts.journal.entries("first") if e.words == "stand down"]
        assert [e.kind for e in kept] == [Kind.NOTE]
