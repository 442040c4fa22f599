"""Nights on which nothing is heard of her: by day, by night, where no telephone works, and with a tracker that froze.

What home, those who wait and those at the next points must know by when; and that nobody is sent away from her meanwhile.
"""

from __future__ import annotations

import pytest

from server.watch.notice import NoticeKind
from tests.whole.beck import BECK
from tests.whole.night import Night
from tests.whole.ridge import RIDGE
from tests.whole.story import Story, hold, must, never

K = NoticeKind


async def _to_moosdorf(n: Night) -> None:
    """Ida as planned to Moosdorf, her car there."""
    await n.until("14:02")
    await n.reports("office", "out", "start", minutes_ago=1)
    n.mark("start")
    await n.until_told("max", K.LEAVE_NOW)
    await n.presses("max", "on our way")
    await n.until("16:20")
    await n.reports("office", "through", "alp", minutes_ago=5)
    await n.until("18:00")
    await n.says("max", "we are at moosdorf")
    await n.until("18:35")
    await n.reports("max", "in", "dorf")
    await n.wait(11)
    await n.reports("max", "out", "dorf")
    n.mark("out of dorf")


async def _to_blausee(n: Night) -> None:
    """On over the pass to the lake, where Timo joins her."""
    await _to_moosdorf(n)
    await n.until_told("lotte", K.LEAVE_NOW)
    await n.presses("lotte", "on our way")
    await n.until("21:00")
    await n.says("lotte", "i am at the pass")
    await n.until("22:25")
    await n.reports("office", "through", "pass", minutes_ago=20)
    await n.until_told("max", K.LEAVE_NOW, times=2)
    await n.presses("max", "on our way")
    await n.until("01:00")
    await n.says("max", "we are at the lake")
    await n.until("01:25")
    await n.reports("max", "in", "see")
    await n.wait(16)
    await n.reports("max", "out", "see")
    n.mark("out of see")


async def _stops_by_night(n: Night) -> None:
    """Out of Blausee at night and not heard of at the hut or the sawmill; race control finds her at dawn."""
    await _to_blausee(n)
    await n.until_told("lotte", K.WAKE_UP)
    await n.presses("lotte", "awake")
    await n.until_told("lotte", K.LEAVE_NOW, times=2)
    await n.presses("lotte", "on our way")
    await n.until_told("oskar", K.LATE_HOME)
    n.mark("home told")
    await n.until_told("oskar", K.OVERDUE)
    n.mark("alarm")
    await n.wait(2)
    await n.presses("oskar", "i have it")
    await n.wait(40)
    await n.reports("office", "in", "hut", minutes_ago=5)
    n.mark("found")
    await n.wait(10)


STOPS_BY_NIGHT = Story(
    "stops by night, unheard of",
    RIDGE,
    _stops_by_night,
    (
        must("home told", 0, 0, "oskar", K.LATE_HOME, "not overdue. This is no alarm.", "+44 1632 960500"),
        must("home told", 15, 200, "oskar", K.OVERDUE, "OVERDUE at"),
        must(
            "home told",
            0,
            150,
            "max",
            K.STAY,
            "Stay at Blausee: nobody has seen Ida since",
            "Do not leave for Talhaus meadow",
        ),
        never("home told", 0, 170, "max", K.LEAVE_NOW),
        must("alarm", 0, 1, "lotte", K.STAY, "Stay at Old Sawmill", "An alarm is open"),
        never("start", 0, 1500, "oskar", K.UNREACHED),
        must("found", 0, 1, "oskar", K.STAND_DOWN),
    ),
)


async def _lost_at_the_pass(n: Night) -> None:
    """No signal about the pass: Lotte, who said that she is there, is sent nowhere while nobody has seen Ida."""
    await _to_moosdorf(n)
    await n.until_told("lotte", K.LEAVE_NOW)
    await n.presses("lotte", "on our way")
    await n.until("21:00")
    await n.says("lotte", "i am at the pass")
    n.mark("at the pass")
    await n.until_told("oskar", K.LATE_HOME)
    n.mark("home told")
    await n.until_told("oskar", K.OVERDUE)
    n.mark("alarm")
    await n.presses("oskar", "i have it")
    await n.wait(45)
    await n.reports("lotte", "in", "pass", minutes_ago=10)
    n.mark("found")
    await n.wait(20)


LOST_AT_THE_PASS = Story(
    "lost where no telephone works",
    RIDGE,
    _lost_at_the_pass,
    (
        must("home told", 0, 0, "oskar", K.LATE_HOME, "Ida is late at"),
        must("home told", 15, 245, "oskar", K.OVERDUE),
        must("out of dorf", 0, 600, "lotte", K.STAY, "Stay at Hornpass"),
        never("at the pass", 0, 600, "lotte", K.MOVE_ON),
        must("found", 0, 1, "oskar", K.STAND_DOWN),
    ),
)


async def _late_by_day(n: Night) -> None:
    """One car by day: she is late at the Weir, and comes; Chapel's leave-by comes and goes meanwhile."""
    await n.until("07:02")
    await n.reports("office", "out", "start", minutes_ago=2)
    await n.until("08:35")
    await n.says("bo", "33 in at mere bridge 0832 out 0833")
    await n.until_told("ruth", K.LEAVE_NOW)
    await n.presses("ruth", "on our way")
    await n.until("10:00")
    await n.says("ruth", "we are at the fold")
    n.mark("at the fold")
    await n.until_told("hanne", K.LATE_HOME)
    n.mark("home told")
    await n.wait(40)
    await n.says("ruth", "shes in at the fold")
    n.mark("in")
    await n.wait(15)


LATE_BY_DAY = Story(
    "late by day, one car",
    BECK,
    _late_by_day,
    (
        must("at the fold", 0, 400, "ruth", K.LATE, "She is later than expected."),
        must("home told", 0, 0, "hanne", K.LATE_HOME, "not overdue"),
        never("at the fold", 0, 400, "ruth", K.MOVE_ON),
    ),
)


async def _sends(n: Night, km: float) -> None:
    """Ida's telephone shares where it is."""
    await n.shares("ida", km)


async def _tracker_freezes(n: Night) -> None:
    """Her shared place stays at one spot for 75 minutes, moves for ten, and goes quiet."""
    await _to_moosdorf(n)
    for k in range(6):
        await n.wait(5)
        await _sends(n, 22.6 + 0.6 * k)
    n.mark("stands")
    for _ in range(15):
        await n.wait(5)
        await _sends(n, 25.6)
    n.mark("moves")
    await n.wait(5)
    await _sends(n, 26.2)
    await n.wait(5)
    await _sends(n, 26.8)
    n.mark("quiet")
    await n.until_told("lotte", K.LEAVE_NOW)
    await n.presses("lotte", "on our way")
    await n.until_told("oskar", K.LATE_HOME)
    n.mark("home told")
    await n.reports("office", "in", "pass", minutes_ago=5)
    await n.wait(10)


TRACKER_FREEZES = Story(
    "the tracker freezes, then is quiet",
    RIDGE,
    _tracker_freezes,
    (
        must("stands", 15, 60, "lotte", K.STANDS, "has not moved for"),
        must("stands", 25, 75, "oskar", K.STANDS, "has not moved for"),
        never("moves", 1, 600, "lotte", K.STANDS),
        never("moves", 1, 600, "oskar", K.STANDS),
        must(
            "home told",
            0,
            0,
            "oskar",
            K.LATE_HOME,
            "Her tracker has sent nothing since",
            "That says nothing about her",
        ),
    ),
)

STORIES = (STOPS_BY_NIGHT, LOST_AT_THE_PASS, LATE_BY_DAY, TRACKER_FREEZES)


@pytest.mark.parametrize("story", STORIES, ids=str)
async def test_a_night_unheard_of(story: Story, sqlite_url: str) -> None:
    """Everybody knows by their minute, nobody is sent away, and the invariants hold."""
    await hold(story, sqlite_url)
