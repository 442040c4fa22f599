"""The demo's night: who must have known what by when, and how many messages that takes."""

from __future__ import annotations

from dataclasses import dataclass
from datetime import datetime, timedelta
from pathlib import Path
from zoneinfo import ZoneInfo

import pytest

from demo_event import play
from demo_event.play import Step, read_story
from server.watch.notice import NoticeKind
from tests.whole.night import Night
from tests.whole.story import ANSWER, Story, hold, must, never

K = NoticeKind
HERE = Path(play.__file__).parent
AT_MOST = {"ana": 26, "jonas": 22}
"""Messages in the 34 hours, answers to what they ask and report themselves among them."""


@dataclass(frozen=True, slots=True)
class Demo:
    """The ground of the demo: as it is shipped."""

    name: str = "demo"
    starts: datetime = datetime(2027, 9, 11, 5, 0, tzinfo=ZoneInfo("Europe/London"))

    @property
    def files(self) -> dict[str, bytes]:
        """Its route."""
        return {"route.gpx": (HERE / "route.gpx").read_bytes()}

    def event_text(self) -> str:
        """Its event file."""
        return (HERE / "event.toml").read_text("utf-8")


async def _play(n: Night) -> None:
    """The story as it is shipped, step by step; each step is a mark by its person and minute."""
    for step in read_story((HERE / "story.toml").read_text("utf-8"), n.built.event):
        await n.pass_by(step.at if not step.told else await _told_at(n, step))
        if step.note in ("Brindle Gate: slower than planned, and she lingers.", "The finish."):
            n.mark(step.note.partition(":")[0].strip("."))
        n.mark(f"{step.who} {n.wall(n.clock.now())}")
        if step.says:
            await n.says(step.who, step.says)
        elif step.presses:
            await n.presses(step.who, step.presses)
        elif step.shares_km is not None:
            await n.shares(step.who, step.shares_km)
        elif step.post is not None:
            post = dict(step.post)
            ago = float(str(post.pop("minutes_ago", 0)))
            await n.reports(step.who, str(post["kind"]), str(post["point"]), minutes_ago=ago)
    await n.wait(60)


async def _told_at(n: Night, step: Step) -> datetime:
    since = n.clock.now()
    while True:
        due = await n.look()
        for t in n.notices(step.who, step.told):
            if t.at >= since:
                return t.at + timedelta(minutes=step.minutes_later)
        assert due <= step.at, f"{step.who} is not told: {step.told}"
        await n.pass_to(due)


TABLE = (
    # Ana: her meetings, each half an hour ahead or before she left; what moved while she was up; the silence.
    must("begin", 0, 0, "ana", K.TEST_ALARM, "TEST ALARM"),
    must("office Sat 06:26", 0, 2, "ana", K.LEFT, "out of Pell Bridge", "Bring: two full bottles"),
    must("jonas Sat 11:24", 0, 2, "ana", K.WINDOW_MOVED, "Brindle Gate: leave by 14:15 (was 13:15)"),
    must(
        "ana Sat 14:05",
        -30,
        -1,
        "ana",
        K.LEAVE_SOON,
        "for Brindle Gate",
        "head torch, fresh battery; warm layer",
    ),
    must("Brindle Gate", 0, 2, "ana", K.ARRIVED, "Planned stop: 20 min"),
    must("ana Sun 02:30", -60, -4, "ana", K.LEAVE_SOON, "for Ember Quarry", "Bring: dry top"),
    never("office Sat 19:29", -29, 390, "ana", None),  # asleep from 19:00 to 02:00
    must("ana Sun 05:31", -5, -3, "ana", K.LATE, "Ember Quarry"),
    must("ines Sun 06:26", 0, 1, "ana", K.ALARM_NEWS, "Ines has it"),
    never("tomas Sun 08:01", 0, 60, "ana", K.UNCONFIRMED),
    never("ana Sun 08:10", 0, 60, "ana", K.STAND_DOWN),
    must("ana Sun 08:27", 120, 330, "ana", K.BE_THERE, "Harrow Fold finish", "Bring: blanket"),
    # Jonas: his own two meetings, the second without signal; that she is overdue, and found.
    must(
        "office Sat 06:24", 0, 2, "jonas", K.WINDOW_MOVED, "Long Stile homeward: leave by 09:25 (was 08:15)"
    ),
    must(
        "jonas Sat 09:47",
        -30,
        -20,
        "jonas",
        K.LEAVE_SOON,
        "for Long Stile homeward",
        "Bring: two full bottles",
    ),
    must("jonas Sat 09:47", -4, -1, "jonas", K.LEAVE_NOW, "for Long Stile homeward"),
    never("jonas Sat 09:47", -60, 30, "office", K.UNREACHED),
    must(
        "jonas Sat 11:37", 0, 0, "jonas", ANSWER, "Noted: Maren out of Long Stile homeward", "leave by 18:30"
    ),
    must("jonas Sat 20:06", -95, -35, "jonas", K.BRIEF, "Before you lose signal", "Bring: spare head torch"),
    must("jonas Sat 20:06", -95, -35, "jonas", K.WORD_OF_HER, "feet sore"),
    must("jonas Sat 20:06", -5, -1, "jonas", K.LEAVE_NOW, "for Ravel Dod"),
    must("ines Sun 06:26", 0, 5, "jonas", K.ALARM_NEWS, "Ines has it"),  # who sleeps until 06:30
    never("tomas Sun 08:01", 0, 60, "jonas", K.UNCONFIRMED),
    must("ana Sun 08:10", 0, 2, "jonas", K.STAND_DOWN, "seen at Ember Quarry"),
    must("ana Sun 08:10", 0, 2, "jonas", K.WINDOW_MOVED, "Harrow Fold finish"),
    must("jonas Sun 12:20", -30, -1, "jonas", K.LEAVE_SOON, "for Harrow Fold finish"),
    must("The finish", 0, 1, "jonas", K.FINISHED, "Maren has finished"),
    # Ines, at home: late before any alarm, the alarm, what a walker saw, the end.
    must("ines Sun 06:26", -65, -20, "ines", K.LATE_HOME, "Maren"),
    must("ines Sun 06:26", -2, -2, "ines", K.OVERDUE, "OVERDUE at Ember Quarry"),
    never("ines Sun 06:26", -120, -61, "ines", K.UNREACHED),
    must("tomas Sun 08:01", 0, 2, "ines", K.WORD_OF_HER, "walking, cold but fine"),
    must("ana Sun 08:10", 0, 1, "ines", K.STAND_DOWN, "seen at Ember Quarry"),
    must("The finish", 0, 1, "ines", K.FINISHED, "Maren has finished"),
    # Tomas, who joins her at the quarry, has a time from before noon on.
    must("jonas Sat 11:24", 0, 2, "tomas", K.WINDOW_MOVED, "Ember Quarry: leave by Sat 23:50"),
    must("ana Sun 02:30", -60, -4, "tomas", K.LEAVE_SOON, "for Ember Quarry"),
)
DEMO = Story(
    "the demo", Demo(), _play, TABLE, begins=datetime(2027, 9, 11, 3, 35, tzinfo=ZoneInfo("Europe/London"))
)
STORIES = (DEMO,)


async def test_the_demo(sqlite_url: str, capsys: pytest.CaptureFixture[str]) -> None:
    """Its table holds, and nobody gets more messages than they can read in such a night."""
    n = await hold(DEMO, sqlite_url)
    # What a chat is owed at one moment is one message, as the channels send it; an alarm is always one of its own.
    counts = {
        who: len({(t.at, t.to, t.text if t.urgent else "") for t in n.told if t.who == who})
        for who in AT_MOST
    }
    with capsys.disabled():
        print(f"\nmessages in the demo: {counts}")
    assert all(counts[who] <= most for who, most in AT_MOST.items()), counts
