"""The quiet beginnings that several bad nights share: up to where the trouble starts, each as coroutine of a `Night`."""

from __future__ import annotations

from server.watch.notice import NoticeKind
from tests.whole.night import Night

K = NoticeKind


async def out_of_fold(n: Night) -> None:
    """The day on the beck until she is out of the Sheep Fold, 10:19; mark 'out of fold'."""
    await n.until("07:02")
    await n.reports("office", "out", "start", minutes_ago=2)
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


async def out_of_dorf(n: Night, clock: str = "17:47") -> None:
    """The afternoon on the ridge until she is out of Moosdorf at that time; mark 'out of dorf'."""
    await n.until("14:03")
    await n.reports("office", "out", "start", minutes_ago=2)
    await n.until_told("max", K.LEAVE_NOW)
    await n.presses("max", "on our way")
    await n.until("16:06")
    await n.reports("office", "out", "alp", minutes_ago=4)
    await n.until("17:20")
    await n.says("max", "we are at moosdorf")
    await n.until(clock)
    await n.reports("office", "in", "dorf", minutes_ago=11)
    await n.says("max", "out of moosdorf")
    n.mark("out of dorf")


async def out_of_pass(n: Night) -> None:
    """On over Hornpass, where Lotte met her and wrote of it in the valley at 21:40; mark 'out of pass'."""
    await out_of_dorf(n)
    await n.until_told("lotte", K.BRIEF)
    n.mark("lotte briefed")
    await n.wait(5)
    await n.presses_or_says("lotte", "on our way", "leaving now")
    await n.until("21:40")
    await n.says("lotte", "in at hornpass 2042")
    await n.says("lotte", "out of hornpass 2053")
    n.mark("out of pass")


async def two_loops(n: Night, kaya: str = "19:48", wim: str = "20:28") -> None:
    """Both runners once round: Kaya and Wim in and out of the camp; marks 'kaya out', 'wim out'."""
    await n.until("18:02")
    await n.reports("office", "out", "start", minutes_ago=2, runner="kaya")
    await n.until("18:32")
    await n.reports("office", "out", "start", minutes_ago=2, runner="wim")
    await n.until(kaya)
    await n.reports("office", "in", "camp-one", minutes_ago=8, runner="kaya")
    await n.reports("office", "out", "camp-one", minutes_ago=1, runner="kaya")
    n.mark("kaya out")
    await n.until(wim)
    await n.reports("office", "in", "camp-one", minutes_ago=8, runner="wim")
    await n.reports("office", "out", "camp-one", minutes_ago=1, runner="wim")
    n.mark("wim out")
