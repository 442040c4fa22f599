"""Nights on which her race ends early, or is said to; on which who should drive, pace or wait can't; on which the plan
changes: each with who must have heard what by when."""

from __future__ import annotations

import pytest

from server.facts.entry import Retired
from server.facts.hearsay import HEARSAY as HEARSAY_MARK
from server.watch.notice import NoticeKind
from tests.whole.beck import BECK
from tests.whole.loops import LOOPS
from tests.whole.night import Night
from tests.whole.ridge import RIDGE
from tests.whole.story import ANSWER, Story, hold, must, never
from tests.whole.ways import out_of_dorf, out_of_fold, two_loops

K = NoticeKind
TOLD = "another runner told me 33 dropped out"


async def _timed_out(n: Night) -> None:
    """An hour slow from the start, Lene comes in at the Weir twelve minutes after it closed; race control ends her race."""
    await n.until("07:02")
    await n.reports("office", "out", "start", minutes_ago=2)
    await n.until("08:50")
    await n.says("bo", "33 in at mere bridge 0847 out 0848")
    await n.until_told("ruth", K.LEAVE_SOON)
    await n.presses("ruth", "on our way")
    await n.until("10:50")
    await n.says("ruth", "we are at the fold")
    await n.until("11:12")
    await n.says("ruth", "lene in at the fold 1108, out 1111")
    await n.until("11:55")
    await n.says("ruth", "on our way")
    await n.wait(30)
    await n.says("ruth", "we are at the weir")
    await n.until("13:42")
    await n.says("ruth", "shes in at the weir")
    n.mark("in")
    await n.wait(6)
    await n.says("piet", "when do we leave for the finish")
    n.mark("piet asks")
    await n.wait(6)
    await n.presses("ruth", "Her race is over")
    n.mark("over")
    await n.wait(3)
    await n.presses("ruth", "I go")
    await n.wait(2)
    await n.says("ruth", "we have lene")
    n.mark("with us")
    await n.wait(2)
    await n.says("hanne", "race control told")
    await n.wait(90)


TIMED_OUT = Story(
    "timed out by twelve minutes",
    BECK.but(
        (
            'emergency_number = "112"',
            'emergency_number = "112"\ntransport = "bus from the mill yard at 15:00"',
        )
    ),
    _timed_out,
    (
        *(
            must(
                "in",
                0,
                1,
                who,
                K.PAST_CUT_OFF,
                "Lene came in at Long Weir 13:42",
                "out by 13:30",
                "race control decides",
            )
            for who in ("lene", "piet", "hanne", "office")
        ),
        must("in", 0, 1, "ruth", K.PAST_CUT_OFF, "Stay with her"),
        must("piet asks", 0, 0, "piet", ANSWER, "race control decides"),
        *(
            never("in", 0, 120, who, kind)
            for who in ("ruth", "piet")
            for kind in (K.LEAVE_SOON, K.LEAVE_NOW, K.WINDOW_MOVED, K.MOVE_ON)
        ),
        must("over", 0, 1, "hanne", K.RETIRED, "timed out", "bus from the mill yard at 15:00"),
        must("over", 0, 1, "dot", K.RETIRED, "Lene"),
        must("with us", 0, 1, "hanne", K.RETIRED, "Ruth has Lene"),
        never("in", 0, 120, "hanne", K.OVERDUE),
        never("with us", 3, 90, "hanne", None),
    ),
)


async def _retires(n: Night) -> None:
    """Kaya's knee goes at the Far Gate of her second loop; Dana fetches her. Wim, and Eli who waits for him, go on."""
    await two_loops(n)
    await n.until("20:50")
    await n.says("kaya", "Knee gone, i am retiring at far gate loop two")
    n.mark("retires")
    await n.wait(7)
    await n.presses("dana", "I go")
    n.mark("dana goes")
    await n.wait(25)
    await n.says("dana", "kaya is with us")
    n.mark("with us")
    await n.says("rosa", "race control told")
    await n.wait(25)


RETIRES = Story(
    "retires between two points, in her own words",
    LOOPS,
    _retires,
    (
        must("retires", 0, 0, "kaya", ANSWER, "retired at Far Gate, loop two"),
        must("retires", 0, 1, "dana", K.RETIRED, "Knee gone", "Can you fetch her"),
        must("retires", 0, 1, "rosa", K.RETIRED, "Knee gone", "You tell race control"),
        must("dana goes", 0, 1, "kaya", K.RETIRED, "Dana fetches Kaya"),
        must("dana goes", 0, 1, "rosa", K.RETIRED, "Dana fetches Kaya"),
        must("with us", 0, 1, "rosa", K.RETIRED, "Dana has Kaya"),
        never("retires", 0, 120, "eli", K.RETIRED),
        never("retires", 0, 120, "wim", None, "Kaya"),
        never("retires", 0, 120, "dana", K.LEAVE_NOW),
        never("retires", 0, 120, "rosa", K.OVERDUE, "Kaya"),
    ),
)


async def _hearsay(n: Night) -> None:
    """Bo hears from another runner that she dropped out; nobody knows; the alarm says it; she comes in at the Weir."""
    await out_of_fold(n)
    await n.until("11:00")
    said = {
        "kind": "retired",
        "seen_at": n.clock.now().isoformat(),
        "key": "b1",
        "how": Retired.NOT_SAID.value,
    }
    said |= {"words": TOLD, "unconfirmed": True, "doubt": HEARSAY_MARK}
    status, _ = await n.call("bo", "POST", f"/v1/events/{n.event}/runners/lene/checkins", said)
    assert status == 200
    await n.look()
    n.mark("hearsay")
    await n.until_told("hanne", K.OVERDUE)
    n.mark("alarm")
    await n.wait(2)
    await n.presses("hanne", "i have it")
    await n.wait(8)
    await n.says("hanne", "i can not do this any more, somebody else must take it")
    n.mark("let go")
    await n.wait(2)
    await n.says("ruth", "can't")
    n.mark("ruth cannot")
    await n.wait(4)
    await n.says("cy", "33 in at weir")
    n.mark("found")
    await n.wait(10)


HEARSAY = Story(
    "said by another to have dropped out",
    BECK,
    _hearsay,
    (
        *(must("hearsay", 0, 1, who, K.UNCONFIRMED, TOLD) for who in ("lene", "ruth", "hanne", "office")),
        never("hearsay", 0, 400, "hanne", K.RETIRED),
        # Sent on at 11:12, they never answered: they may be at the Weir by now, and are not told to stay at the Fold.
        *(never("hearsay", 0, 400, who, K.STAY, "Stay at Sheep Fold") for who in ("ruth", "piet")),
        must("alarm", 0, 0, "hanne", K.OVERDUE, "NOT CONFIRMED", TOLD),
        must("let go", 0, 0, "hanne", ANSWER, "you do not have it any more"),
        must("let go", 0, 1, "ruth", K.HANDED_ON, "Hanne had it and can't any more"),
        must("ruth cannot", 0, 0, "ruth", ANSWER, "you can’t take it"),
        must("ruth cannot", 0, 1, "piet", K.HANDED_ON, "ALARM HANDED ON TO YOU"),
        must("found", 0, 1, "hanne", K.STAND_DOWN, "seen at Long Weir"),
        must("found", 0, 1, "piet", K.STAND_DOWN, "seen at Long Weir"),
        never("hearsay", 0, 400, "dot", None),
    ),
)


async def _driver(n: Night) -> None:
    """Ruth is too tired to drive and Piet can't: home, the office and Lene hear what she misses; then Ruth is rested."""
    await out_of_fold(n)
    await n.until("10:40")
    await n.says("ruth", "i am too tired to drive")
    n.mark("too tired")
    await n.until("11:20")
    await n.says("ruth", "I can drive again")
    n.mark("again")
    await n.presses("ruth", "on our way")
    await n.until("12:10")
    await n.says("ruth", "we are at the weir")
    await n.until("12:25")
    await n.says("ruth", "shes in at the weir")
    await n.wait(5)


DRIVER = Story(
    "the only driver is too tired",
    BECK,
    _driver,
    (
        must("too tired", 0, 0, "ruth", ANSWER, "You first: stop where it is safe, and do not drive on"),
        *(
            must(
                "too tired", 0, 1, who, K.UNCOVERED, "Long Weir", "NOBODY is left who could be there in time"
            )
            for who in ("hanne", "office", "piet")
        ),
        must("too tired", 0, 1, "lene", K.UNCOVERED, "Nobody of yours will be at Long Weir", "dry socks"),
        never("too tired", 0, 39, "ruth", K.LEAVE_NOW),
        must("again", 0, 1, "ruth", K.LEAVE_NOW, "At a normal drive from now you are there at 12:05"),
        must("again", 0, 1, "hanne", K.COVERED, "Ruth"),
        must("again", 0, 1, "lene", K.COVERED),
        never("too tired", 0, 200, "cy", K.UNCOVERED),
    ),
)


async def _pacer(n: Night) -> None:
    """Timo twists an ankle at dusk: she hears that nobody runs with her from Blausee; those who meet her before say it."""
    await out_of_dorf(n)
    await n.until("19:45")
    await n.reports("timo", "cannot come", why="pacer", words="I twisted my ankle")
    n.mark("ankle")
    await n.wait(20)


PACER = Story(
    "the pacer twists an ankle",
    RIDGE,
    _pacer,
    (
        must("ankle", 0, 1, "ida", K.UNCOVERED, "No pacer at Blausee"),
        must("ankle", 0, 1, "max", K.UNCOVERED, "No pacer"),
        must("ankle", 0, 1, "lotte", K.UNCOVERED, "Tell Ida at Hornpass"),
        never("ankle", 0, 20, "oskar", K.WORD_OF_HER),
        never("ankle", 0, 20, "ulla", None),
    ),
)


async def _two_and_one_driver(n: Night) -> None:
    """Dana, who waits for Kaya, is ill: Eli at the same camp takes Kaya's meetings, and still waits for Wim."""
    await two_loops(n)
    await n.until("20:45")
    await n.says("dana", "i feel ill, i cant come")
    n.mark("ill")
    await n.wait(4)
    await n.presses_or_says("eli", "I go", "i go")
    n.mark("eli goes")
    await n.until("21:42")
    await n.says("eli", "kaya in at camp loop two")
    n.mark("kaya in")
    await n.wait(10)


TWO_AND_ONE = Story(
    "two runners, one of the crew falls out",
    LOOPS,
    _two_and_one_driver,
    (
        must("ill", 0, 0, "dana", ANSWER, "You first"),
        must("ill", 0, 1, "rosa", K.UNCOVERED, "Kaya", "Dana can’t"),
        never("ill", 0, 60, "wim", K.UNCOVERED),
        never("ill", 0, 60, "dana", K.LEAVE_NOW),
        never("ill", 0, 60, "rosa", K.UNCOVERED, "meet Wim"),
    ),
)


async def _with_us(n: Night) -> None:
    """Dana has Kaya in the van half a loop short, and says so: nobody is asked or sent; then she goes on."""
    await two_loops(n)
    await n.until("20:40")
    await n.reports("dana", "in hand", words="sitting in the van with a blanket, she may go on")
    n.mark("with us")
    await n.wait(50)
    n.mark("goes on")
    await n.reports("dana", "moving again")
    await n.wait(20)


WITH_US = Story(
    "with her crew for a while",
    LOOPS,
    _with_us,
    (
        must("with us", 0, 1, "rosa", K.IN_HAND, "Dana", "sitting in the van with a blanket"),
        never("with us", 1.5, 60, "rosa", K.LATE_HOME, "Kaya"),
        never("with us", 1.5, 60, "rosa", K.OVERDUE, "Kaya"),
        *(
            never("with us", 1.5, 60, "dana", kind)
            for kind in (K.LATE, K.LEAVE_SOON, K.LEAVE_NOW, K.STAY, K.MOVE_ON)
        ),
        never("with us", 0, 70, "eli", K.IN_HAND),
    ),
)


async def _new_version(n: Night) -> None:
    """The car park at the Weir is flooded and the poles stay at home: the new file is loaded while she is on the way."""
    await out_of_fold(n)
    await n.until("10:40")
    changed = BECK.but(
        ('parking = "mill yard"', 'parking = "chapel lane"'),
        ('"dry socks", "poles"', '"dry socks", "rain jacket"'),
    )
    await n.loads(changed.event_text(), changed.files)
    n.mark("loaded")
    await n.wait(20)


NEW_VERSION = Story(
    "a new version of the plan during the race",
    BECK,
    _new_version,
    (
        *(
            must("loaded", 0, 1, who, K.NEW_VERSION, "mill yard", "chapel lane", "poles", "rain jacket")
            for who in ("ruth", "piet")
        ),
        must("loaded", 0, 1, "lene", K.NEW_VERSION, "rain jacket"),
        never("loaded", 0, 20, "dot", None),
        never("loaded", 0, 20, "bo", K.NEW_VERSION),
        never("loaded", 0, 20, "hanne", K.NEW_VERSION),
    ),
)

STORIES = (TIMED_OUT, RETIRES, HEARSAY, DRIVER, PACER, TWO_AND_ONE, WITH_US, NEW_VERSION)


@pytest.mark.parametrize("story", STORIES, ids=str)
async def test_a_race_that_ends_or_a_plan_that_breaks(story: Story, sqlite_url: str) -> None:
    """Everybody knows by their minute, nobody is told what must not be told, and the invariants hold."""
    await hold(story, sqlite_url)
