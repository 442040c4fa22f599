"""Two runners, one car: its driver fails at night while the other one sleeps, and then one of the two is not seen."""

from __future__ import annotations

import pytest

from server.watch.notice import NoticeKind
from tests.whole.night import CHANNEL, Night
from tests.whole.ridge import RIDGE
from tests.whole.story import ANSWER, Story, hold, must, never

K = NoticeKind
CHAT = "crew-chat"

SHARED = RIDGE.but(
    (
        """[[meetings]]
point = "pass"
crew = ["lotte"]
car = "bus"
kit = [{ name = "warm layer", weight = "safety", car = "bus" }, "gloves"]
food = "tea, rice"
if_missed = "drive down to the village for signal"

""",
        "",
    ),
    (
        'drives = true, car = "kombi" }]',
        'drives = true, car = "kombi" }, { kind = "crew", runner = "jon", drives = true, car = "kombi" }]',
    ),
    (
        'drives = true, car = "bus" }]',
        'drives = true, car = "bus" }, { kind = "crew", runner = "jon", drives = true, car = "bus" }]',
    ),
    ('point = "dorf"\n', 'point = "dorf"\nrunner = "ida"\n'),
    ('point = "see"\n', 'point = "see"\nrunner = "ida"\n'),
    ('point = "saege"\n', 'point = "saege"\nrunner = "ida"\n'),
    ('point = "finish"\n', 'point = "finish"\nrunner = "ida"\n'),
).and_also(
    """
[[runners]]
id = "jon"
name = "Jon"
bib = "85"
target = { finish = "18:00" }
clothing = "green jacket"

[[people]]
id = "jon"
name = "Jon"
phone = "+44 7700 900511"
parts = [{ kind = "runner", runner = "jon" }]

[[people]]
id = "greta"
name = "Greta"
phone = "+44 7700 900512"
parts = [{ kind = "crew", runner = "jon", ladder = 2, can_telephone = true, car = "kombi" }]

[[people]]
id = "hedy"
name = "Hedy"
phone = "+44 7700 900513"
quiet = { from = "22:00", to = "06:30" }
parts = [{ kind = "safety contact", runner = "jon", ladder = 1, can_telephone = true }]

[[drives]]
from = "start"
to = "see"
minutes = 60
confirmed_by = "lotte"

[[drives]]
from = "see"
to = "saege"
minutes = 25
confirmed_by = "lotte"

[[meetings]]
point = "dorf"
runner = "jon"
crew = ["max", "greta"]
car = "kombi"
kit = ["bread"]
food = "broth"

[[meetings]]
point = "see"
runner = "jon"
crew = ["max", "greta"]
car = "kombi"
kit = [{ name = "warm jacket", weight = "safety" }, "gels"]
food = "rice"
"""
)


async def _driver_fails(n: Night) -> None:
    """Max is too tired at half past ten; Lotte, woken, drives to the lake for both; Ida comes, Jon does not till three."""
    await n.journal.bind_group(n.event, CHANNEL, CHAT, "max", n.clock.now())
    await n.until("14:03")
    for runner in ("ida", "jon"):
        await n.reports("office", "out", "start", minutes_ago=2, runner=runner)
    await n.until_told("max", K.LEAVE_NOW)
    await n.presses("max", "on our way")
    await n.until("17:20")
    await n.says("max", "we are at moosdorf")
    await n.until("17:47")
    await n.reports("office", "in", "dorf", minutes_ago=11, runner="ida")
    await n.reports("office", "out", "dorf", minutes_ago=1, runner="ida")
    await n.until("18:10")
    await n.reports("office", "in", "dorf", minutes_ago=12, runner="jon")
    await n.reports("office", "out", "dorf", minutes_ago=2, runner="jon")
    n.mark("both out of dorf")
    await n.until("21:20")
    await n.reports("office", "in", "pass", minutes_ago=30, runner="ida")
    await n.reports("office", "out", "pass", minutes_ago=19, runner="ida")
    await n.reports("office", "in", "pass", minutes_ago=12, runner="jon")
    await n.reports("office", "out", "pass", minutes_ago=2, runner="jon")
    await n.until("22:25")
    await n.says("max", "i am too tired to drive")
    n.mark("max fails")
    await n.wait(3)
    while n.offers("lotte", "i go"):
        await n.presses("lotte", "i go")
    n.mark("lotte goes")
    await n.until_told("lotte", K.LEAVE_NOW)
    n.mark("lotte sent")
    await n.presses("lotte", "on our way")
    await n.wait(66)
    await n.says("lotte", "i am at blausee")
    n.mark("lotte there")
    await n.not_before("00:20")
    await n.says("lotte", "ida in at blausee")
    await n.wait(15)
    await n.says("lotte", "ida out of blausee")
    n.mark("ida out")
    await n.until_told("lotte", K.LATE)
    n.mark("asked")
    await n.wait(2)
    await n.presses("lotte", "not yet")
    await n.until_told("hedy", K.OVERDUE)
    n.mark("alarm")
    await n.wait(2)
    await n.presses("hedy", "i have it")
    n.mark("hedy has it")
    await n.wait(20)
    await n.reports("office", "in", "see", minutes_ago=4, runner="jon")
    n.mark("found")
    await n.wait(60)


DRIVER_FAILS = Story(
    "the driver of two runners' car fails, one of them is lost",
    SHARED,
    _driver_fails,
    (
        must("max fails", 0, 0, "max", ANSWER, "You first: stop where it is safe"),
        # She sleeps since ten and is the only one who could drive: woken at once, once a meeting.
        must("max fails", 0, 1, "lotte", K.UNCOVERED, "Ida", "Blausee"),
        must("max fails", 0, 1, "lotte", K.UNCOVERED, "Jon", "Blausee"),
        must("max fails", 0, 1, "greta", K.UNCOVERED, "Jon", "Max and Greta can’t", "Could go: Lotte"),
        must("max fails", 0, 1, "timo", K.UNCOVERED, "Ida"),
        must("max fails", 0, 1, CHAT, K.UNCOVERED, "Blausee"),
        never("max fails", 0, 400, CHAT, None, "tired"),
        # Home of each hears of their own; Hedy sleeps, and somebody can still come.
        never("max fails", 0, 2, "hedy", K.UNCOVERED),
        must("lotte goes", -3, 1, "greta", K.COVERED, "Lotte goes to Blausee", "Jon"),
        must("lotte goes", -3, 1, "max", K.COVERED, "Lotte goes to Blausee"),
        must("lotte goes", -3, 1, "lotte", K.COVERED, "You go to Blausee to meet Ida"),
        must("lotte goes", -3, 1, "lotte", K.COVERED, "You go to Blausee to meet Jon"),
        must("lotte goes", -3, 1, CHAT, K.COVERED, "Lotte goes to Blausee"),
        never("max fails", 0, 400, "max", K.LEAVE_NOW),
        never("max fails", 0, 400, "greta", K.LEAVE_NOW),
        never("lotte sent", 0, 66, "lotte", K.UNREACHED),
        must("asked", 0, 120, "hedy", K.LATE_HOME, "Jon"),
        must("alarm", 0, 0, "hedy", K.OVERDUE, "Jon (bib 85) is OVERDUE at Blausee"),
        # Oskar, who calls race control about Ida, hears nothing of Jon: nobody may wait for him to call.
        must("alarm", 0, 0, "hedy", K.OVERDUE, "Nobody is down to call race control. Whoever answers calls"),
        # All she needs came with 'You go': it is not said again a minute later, nor that she leaves for where she is.
        never("lotte goes", 0, 8, "lotte", K.LEAVE_SOON),
        never("lotte goes", 0, 8, "lotte", K.WINDOW_MOVED, "Blausee"),
        # She waits for Jon where she stands and is not sent on to the sawmill without a word of who stays.
        must("hedy has it", -30, 20, "lotte", K.STAY, "Jon"),
        never("alarm", 0, 20, "lotte", K.MOVE_ON, "Jon"),
        never("max fails", 0, 400, "oskar", K.OVERDUE, "Jon"),
        never("max fails", 0, 400, "hedy", None, "Ida"),
        must("found", 0, 1, "hedy", K.STAND_DOWN, "Blausee"),
    ),
)


@pytest.mark.parametrize("story", [DRIVER_FAILS], ids=str)
async def test_a_night_in_one_car(story: Story, sqlite_url: str) -> None:
    """Everybody knows by their minute, nobody is told what must not be told, and the invariants hold."""
    await hold(story, sqlite_url)
