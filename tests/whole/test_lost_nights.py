"""Nights on which nobody hears of her: by night, where there is no signal, while the clocks change, one of two."""

from __future__ import annotations

from datetime import datetime
from zoneinfo import ZoneInfo

import pytest

from server.watch.notice import NoticeKind
from tests.whole.loops import LOOPS
from tests.whole.night import Night
from tests.whole.ridge import RIDGE
from tests.whole.story import ANSWER, Story, hold, must, never
from tests.whole.ways import out_of_dorf, out_of_pass, two_loops

K = NoticeKind


async def _by_night(n: Night) -> None:
    """She does not come to Blausee. Max and Timo wait there; Oskar takes the alarm; she comes at half past three."""
    await out_of_pass(n)
    await n.until_told("max", K.LEAVE_SOON, times=2)
    await n.presses("max", "on our way")
    await n.wait(70)
    await n.says("max", "we are at blausee")
    n.mark("they wait")
    await n.until_told("max", K.LATE, times=len(n.notices("max", K.LATE)) + 1)
    n.mark("asked")
    await n.wait(2)
    await n.presses("max", "not yet")
    await n.until_told("oskar", K.OVERDUE)
    n.mark("alarm")
    await n.wait(3)
    await n.presses("oskar", "i have it")
    n.mark("oskar has it")
    await n.wait(12)
    await n.says("max", "shes in at blausee, cold but fine")
    n.mark("found")
    await n.wait(90)


BY_NIGHT = Story(
    "lost by night",
    RIDGE,
    _by_night,
    (
        must("out of pass", 0, 240, "max", K.LEAVE_SOON, "Blausee", "dry shoes"),
        must("out of pass", 0, 240, "timo", K.LEAVE_SOON, "Blausee"),
        must("they wait", 10, 200, "max", K.LATE, "Blausee"),
        must("asked", 1, 120, "oskar", K.LATE_HOME, "Ida"),
        must("asked", 5, 150, "oskar", K.OVERDUE, "OVERDUE at Blausee"),
        must("oskar has it", -3, 1, "timo", K.ALARM_NEWS, "overdue"),
        # Lotte sleeps until five, and nothing is asked of her.
        never("asked", 0, 120, "lotte", None),
        never("asked", 0, 240, "max", K.MOVE_ON),
        never("out of pass", 0, 400, "ulla", None),
        must("found", 0, 1, "oskar", K.STAND_DOWN, "Blausee"),
        must("found", 0, 1, "timo", K.STAND_DOWN, "Blausee"),
    ),
)


async def _no_signal(n: Night) -> None:
    """Lotte waits at Hornpass without signal and sees nobody; she drives down and writes it. Nobody knew till then."""
    await out_of_dorf(n)
    await n.until_told("lotte", K.BRIEF)
    n.mark("briefed")
    await n.wait(10)
    await n.says("lotte", "leaving now")
    n.mark("lotte drives")
    await n.until("23:05")
    await n.reports("lotte", "not here yet", "pass", minutes_ago=25)
    await n.says("lotte", "i am in the village")
    n.mark("lotte writes")
    await n.until_told("oskar", K.OVERDUE)
    n.mark("alarm")
    await n.wait(4)
    await n.presses("oskar", "i have it")
    await n.wait(10)
    await n.says("office", "84 in at hornpass 2255, resting, then goes on")
    n.mark("found")
    await n.wait(60)


NO_SIGNAL = Story(
    "lost where there is no signal",
    RIDGE,
    _no_signal,
    (
        must("lotte drives", -45, 0, "lotte", K.BRIEF, "Before you lose signal", "warm layer"),
        never("lotte drives", 0, 200, "lotte", K.ARRIVED),
        must("lotte drives", 150, 240, "oskar", K.LATE_HOME, "Ida"),
        must("lotte writes", 0, 30, "oskar", K.OVERDUE, "OVERDUE", "not at Hornpass yet"),
        never("lotte writes", 0, 30, "oskar", K.UNREACHED),
        must("found", 0, 2, "oskar", K.STAND_DOWN),
    ),
)


async def _clocks_change(n: Night) -> None:
    """The night the clocks go back: two o'clock comes twice. She is late at Blausee and comes; nothing is an hour out."""
    await out_of_pass(n)
    await n.until_told("max", K.LEAVE_SOON, times=2)
    n.mark("soon")
    await n.presses("max", "on our way")
    await n.wait(70)
    await n.says("max", "we are at blausee")
    await n.until_told("max", K.LATE, times=len(n.notices("max", K.LATE)) + 1)
    n.mark("asked")
    await n.wait(3)
    await n.says("max", "shes in at blausee")
    n.mark("in at see")
    await n.wait(20)
    await n.says("max", "ida and timo left blausee")
    n.mark("out of see")
    await n.until_told("lotte", K.WAKE_UP)
    await n.presses("lotte", "awake")
    await n.until_told("lotte", K.LEAVE_NOW)
    n.mark("lotte sent")
    await n.presses("lotte", "on our way")
    await n.wait(60)


CLOCKS_CHANGE = Story(
    "the clocks go back",
    RIDGE.on(datetime(2027, 10, 30, 14, 0, tzinfo=ZoneInfo("Europe/Zurich"))),
    _clocks_change,
    (
        must("out of pass", 0, 240, "max", K.LEAVE_SOON, "Blausee"),
        must("asked", 3, 3, "max", ANSWER, "Ida in at Blausee"),
        never("asked", 0, 60, "oskar", K.OVERDUE),
        must("lotte sent", -40, -20, "lotte", K.WAKE_UP, "leave by Sun 03:25", "Old Sawmill"),
        must("lotte sent", 0, 0, "lotte", K.LEAVE_NOW, "Old Sawmill"),
    ),
)


async def _one_of_two(n: Night) -> None:
    """Loops: Wim is lost on his second, Kaya goes on as planned; nobody of hers is troubled, he is found at the gate."""
    await two_loops(n)
    await n.until("21:45")
    await n.reports("office", "in", "camp-two", minutes_ago=7, runner="kaya")
    await n.reports("office", "out", "camp-two", minutes_ago=1, runner="kaya")
    n.mark("kaya out again")
    await n.until_told("eli", K.LATE)
    n.mark("asked")
    await n.wait(2)
    await n.presses("eli", "not yet")
    await n.until_told("rosa", K.OVERDUE)
    n.mark("alarm")
    await n.wait(2)
    await n.presses("rosa", "i have it")
    await n.wait(15)
    await n.says("eli", "wim is in at camp loop two")
    n.mark("found")
    await n.wait(60)


ONE_OF_TWO = Story(
    "one of two is lost in the loops",
    LOOPS,
    _one_of_two,
    (
        must("wim out", 0, 240, "eli", K.LATE, "Wim"),
        must("asked", 0, 150, "rosa", K.LATE_HOME, "Wim"),
        must("alarm", 0, 0, "rosa", K.OVERDUE, "Wim (bib 8) is OVERDUE"),
        never("wim out", 0, 400, "dana", None, "Wim"),
        never("wim out", 0, 400, "rosa", K.OVERDUE, "Kaya"),
        must("found", 0, 1, "rosa", K.STAND_DOWN, "Wim"),
    ),
)


STORIES = (BY_NIGHT, NO_SIGNAL, CLOCKS_CHANGE, ONE_OF_TWO)


@pytest.mark.parametrize("story", STORIES, ids=str)
async def test_a_lost_night(story: Story, sqlite_url: str) -> None:
    """Everybody knows by their minute, nobody is told what must not be told, and the invariants hold."""
    await hold(story, sqlite_url)
