"""Who sits beside a sleeping runner and says so every hour is heard every hour."""

from __future__ import annotations

from datetime import timedelta

import pytest

from server.watch.notice import NoticeKind
from tests.api.conftest import EVENT, Running


@pytest.mark.parametrize(("renewed", "alarms"), [(False, True), (True, False)])
async def test_a_rest_said_again_is_no_silence(running: Running, renewed: bool, alarms: bool) -> None:
    """Nine hours at the mill, as in a race of days. Said once, silence ends in an alarm; said every hour, nobody is
    asked about her, sent to her next meeting, or alarmed."""
    await running.reachable()
    ticker = running.parts.ticker
    ticker.catching_up = None
    running.parts.pictures.watching_since = running.clock.now()
    running.clock.set(running.start + timedelta(hours=3))
    await running.report("ana", "in", "mill")
    running.clock.advance(timedelta(minutes=5))
    await running.report("ana", "resting", "mill")
    for minute in range(10, 9 * 60, 10):
        now = running.clock.advance(timedelta(minutes=10))
        if renewed and minute % 60 == 0:
            assert (await running.report("ana", "resting", "mill"))[0] == 200
        await ticker.tick(now)
    kinds = {m.notice.key.kind for m in await running.parts.journal.made(EVENT)}
    asked = {NoticeKind.LATE, NoticeKind.OVERDUE, NoticeKind.LEAVE_NOW}
    assert bool(kinds & asked) is alarms
    assert (NoticeKind.OVERDUE in kinds) is alarms
    picture = await running.parts.pictures.take(EVENT, running.clock.now())
    assert len(picture.state.runner("maren").rests) == 1
