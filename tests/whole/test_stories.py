"""Bad nights on three courses, each with its table of who must have known what by when."""

from __future__ import annotations

import pytest

from server.watch.notice import NoticeKind
from tests.whole.beck import BECK
from tests.whole.night import Night
from tests.whole.story import ANSWER, Story, hold, must, never

K = NoticeKind


async def _stops_by_day(n: Night) -> None:
    """Nobody sees her after the Sheep Fold; a walker has her an hour and a half later, and she goes on."""
    await n.until("07:02")
    await n.reports("office", "out", "start", minutes_ago=2)
    n.mark("start")
    await n.until("08:35")
    await n.says("bo", "33 in at mere bridge 0832 out 0833")
    await n.until_told("ruth", K.LEAVE_NOW)
    await n.presses("ruth", "on our way")
    await n.until("10:00")
    await n.says("ruth", "we are at the fold")
    await n.until("10:12")
    await n.says("ruth", "shes in at the fold")
    await n.wait(7)
    await n.says("ruth", "out of the fold")
    n.mark("out of fold")
    await n.wait(20)
    await n.says("ruth", "on our way")
    await n.wait(35)
    await n.says("piet", "we are at the weir")
    await n.until_told("ruth", K.LATE)
    n.mark("asked")
    await n.wait(3)
    await n.presses("ruth", "not yet")
    await n.until_told("hanne", K.OVERDUE)
    n.mark("alarm")
    await n.wait(2)
    await n.presses("hanne", "i have it")
    await n.wait(15)
    await n.says("piet", "shes in at the weir")
    n.mark("found")
    await n.wait(20)


STOPS_BY_DAY = Story(
    "stops by day",
    BECK,
    _stops_by_day,
    (
        must("out of fold", 60, 200, "ruth", K.LATE, "Long Weir"),
        must("asked", 3, 150, "hanne", K.OVERDUE, "Lene (bib 33) is OVERDUE at Long Weir"),
        must("alarm", 2, 2, "hanne", ANSWER, "It is yours"),
        must("found", 0, 1, "hanne", K.STAND_DOWN, "seen at Long Weir"),
        never("alarm", 0, 120, "dot", None),
        never("start", 0, 600, "bo", K.LATE),
    ),
)

STORIES = (STOPS_BY_DAY,)


@pytest.mark.parametrize("story", STORIES, ids=str)
async def test_a_bad_night(story: Story, sqlite_url: str) -> None:
    """Everybody knows by their minute, nobody is told what must not be told, and the invariants hold."""
    await hold(story, sqlite_url)
