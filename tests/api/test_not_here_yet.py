"""Crew at a point who answer 'not here yet' hour after hour: each answer says that she is missed, none puts the alarm
off, and the board and its answers stand meanwhile."""

from __future__ import annotations

from collections.abc import AsyncIterator
from datetime import timedelta

import pytest

from server.watch.notice import AlarmValues, NoticeKind
from tests.api.conftest import Running
from tests.api.test_little_heard import FIRST, ONWARD, ask, made, running

SURE = {
    **ONWARD,
    "@points@": '{ name = "Ravel Dod", km = 40, crew = {}, cut_off = { when = "out", elapsed = "12:00" }, '
    'reports = [ { by = "volunteer", chance = 0.999 } ] },',
}


@pytest.fixture
async def onward(sqlite_url: str) -> AsyncIterator[Running]:
    """Out of Skelter Mill two hours into the race, Ravel Dod next, whose reporters are all but sure."""
    async with running(sqlite_url, event_text()) as server:
        server.clock.advance(timedelta(hours=2))
        assert (await ask(server, "out of mill")).startswith("Noted: Maren out of Skelter Mill")
        yield server


def event_text(chance: str = "0.999", by: str = "volunteer") -> str:
    """The event, its second point told of by such reporters."""
    text = FIRST
    for key, value in SURE.items():
        text = text.replace(key, value.replace("0.999", chance).replace("volunteer", by))
    return text


async def overdue(server: Running, every: timedelta | None) -> tuple[timedelta, AlarmValues]:
    """How long after her 'out' the alarm comes if Ana says 'not here yet' so often from three hours on; what it says."""
    began = server.clock.now()
    said = began + timedelta(hours=3)
    while server.clock.now() < began + timedelta(hours=14):
        server.clock.advance(timedelta(minutes=10))
        if every is not None and server.clock.now() >= said:
            said += every
            assert "not at Ravel Dod yet" in await ask(server, "not at ravel dod yet")
        await server.parts.ticker.tick(server.clock.now())
        status, _ = await server.get("ana", "/v1/events/first/board")
        assert status == 200, f"{server.clock.now():%H:%M}"
        raised = await made(server, NoticeKind.OVERDUE)
        if raised:
            values = raised[0].notice.values
            assert isinstance(values, AlarmValues)
            return server.clock.now() - began, values
    raise AssertionError("no alarm in fourteen hours")


@pytest.mark.parametrize("minutes", [20, 60, 130])
async def test_no_answer_puts_the_alarm_off(onward: Running, sqlite_url: str, minutes: int) -> None:
    """The alarm comes no later than if nobody had said anything, and says when she was due, not when those who wait
    would next have thought her likely."""
    at, values = await overdue(onward, timedelta(minutes=minutes))
    assert values.expected is not None
    async with running(sqlite_url + "-silent", event_text()) as silent:
        silent.clock.advance(timedelta(hours=2))
        await ask(silent, "out of mill")
        alone, unasked = await overdue(silent, None)
    assert at <= alone
    assert values.expected == unasked.expected


async def test_who_is_told_missing_is_overdue_though_reporters_may_fail(sqlite_url: str) -> None:
    """Crew who are caught nine times in ten: their silence alone says too little for an alarm all day, their 'not here
    yet', hours after she would have been there, says it at once."""
    async with running(sqlite_url, event_text("0.9", "crew")) as server:
        server.clock.advance(timedelta(hours=2))
        await ask(server, "out of mill")
        for _ in range(42):
            server.clock.advance(timedelta(minutes=10))
            await server.parts.ticker.tick(server.clock.now())
        assert await made(server, NoticeKind.OVERDUE) == []
        await ask(server, "not at ravel dod yet")
        server.clock.advance(timedelta(minutes=1))
        await server.parts.ticker.tick(server.clock.now())
        assert [m.notice.key.person for m in await made(server, NoticeKind.OVERDUE)] == ["dad"]
