"""A night on the hill, through the real server: who was told what, and when; and who was told nothing.

Maren runs 48 km through the night. Ana is in the kitchen when she should leave; at the tarn nobody sees Maren for an
hour and a half, and nobody knows why; Ines, at home, takes the alarm; then Jonas sees her coming, and she goes on.
"""

from __future__ import annotations

from collections.abc import AsyncIterator
from datetime import datetime, timedelta

import pytest

from server.forecast.outlook import RATHER
from server.watch.notice import MeetingValues, NoticeKind
from tests.whole import hill
from tests.whole.hill import EVENT
from tests.whole.night import Night, night

K = NoticeKind
STARTS = datetime(2027, 6, 19, 20, 0, tzinfo=hill.ZONE)
MINUTE = timedelta(minutes=1)

MUST_BE_TOLD = (
    # after this      from, to (min)  who      kind            words in it
    ("we begin", 0, 0, "ines", K.TEST_ALARM, "TEST ALARM, nothing has happened"),
    ("we begin", 0, 0, "ana", K.TEST_ALARM, "TEST ALARM, nothing has happened"),
    ("we begin", 0, 0, "jonas", K.TEST_ALARM, "TEST ALARM, nothing has happened"),
    ("out of larch", 0, 2, "ana", K.WINDOW_MOVED, "New times for Hollin Mill: leave by"),
    ("out of larch", -15, 60, "ana", K.LEAVE_NOW, "for Hollin Mill to meet Maren"),
    # What to bring is said once, half an hour before they leave; then only what is new.
    ("we begin", 60, 160, "ana", K.LEAVE_SOON, "Bring: two full bottles and head torch"),
    ("in at hollin", 0, 2, "ana", K.ARRIVED, "Maren is in at Hollin Mill"),
    ("out of hollin", -40, 0, "jonas", K.LEAVE_SOON, "Bring: warm layer and two full bottles"),
    ("out of hollin", 60, 160, "jonas", K.LATE, "She is later than expected."),
    ("not yet", 0, 30, "ines", K.LATE_HOME, "Maren is late at Black Tarn, not overdue. This is no alarm."),
    ("not yet", 15, 120, "ines", K.OVERDUE, "Maren (bib 51) is OVERDUE at Black Tarn"),
    ("not yet", 15, 120, "jonas", K.STAY, "Stay at Black Tarn: nobody has seen Maren since Sat 23:22"),
    ("ines has it", 20, 20, "ines", K.LOOK_AGAIN, "Ines, what is known now?"),
    ("in at tarn", 0, 0, "ines", K.STAND_DOWN, "Maren has been seen at Black Tarn"),
    ("not yet", -60, 0, "ana", K.LEAVE_SOON, "Bring: dry socks and gloves"),
    ("out of tarn", 0, 2, "ana", K.LEFT, "Maren is out of Black Tarn"),
    ("in at wythe", 0, 2, "ana", K.ARRIVED, "Maren is in at Wythe Cross"),
    ("out of tarn", 20, 180, "jonas", K.LEAVE_NOW, "for Thorn meadow to meet Maren"),
    ("finished", 0, 2, "jonas", K.FINISHED, "Maren has finished"),
    ("finished", 0, 2, "ines", K.FINISHED, "Maren has finished"),
    ("finished", 0, 2, "sam", K.FINISHED, "Maren has finished"),
)

_ALARM = frozenset({K.OVERDUE, K.LOOK_AGAIN, K.HANDED_ON, K.STAND_DOWN, K.ASKED_FOR_HELP, K.SWEEP})
_TO_CREW = frozenset(
    {K.TEST_ALARM, K.LEAVE_SOON, K.LEAVE_NOW, K.WINDOW_MOVED, K.LEFT, K.ARRIVED, K.MOVE_ON, K.FINISHED}
)
MAY_BE_TOLD = {
    "maren": frozenset[K](),
    "vera": frozenset[K](),
    "office": frozenset[K](),
    "sam": frozenset({K.FINISHED}),
    # Ines answers her alarm, so that it climbs to none of the others: they hear who has it, and that it is over.
    # Where Ana's first leave-now comes ten minutes before Vera's report, Ines too is told that she does not answer.
    "ines": frozenset(
        {K.TEST_ALARM, K.UNREACHED, K.LATE_HOME, K.OVERDUE, K.LOOK_AGAIN, K.STAND_DOWN, K.FINISHED}
        | {K.ALARM_KNOWN, K.READ_OUT}
    ),
    "ana": _TO_CREW | {K.ALARM_NEWS, K.STAND_DOWN},
    "jonas": _TO_CREW | {K.LATE, K.STAY, K.UNREACHED, K.ALARM_NEWS, K.STAND_DOWN},
}
AT_MOST_ONCE = (
    K.ALARM_NEWS,
    K.ALARM_KNOWN,
    K.READ_OUT,
    K.LATE_HOME,
    K.OVERDUE,
    K.STAND_DOWN,
    K.FINISHED,
    K.UNREACHED,
)


@pytest.fixture
async def hillside(sqlite_url: str) -> AsyncIterator[Night]:
    """Seventy minutes before the start."""
    begins = STARTS - 70 * MINUTE
    async with night(sqlite_url, hill.event_text(STARTS), hill.files(), begins) as n:
        n.mark("we begin")
        yield n


async def _evening(n: Night) -> None:
    await n.until("18:52")
    for who in ("ines", "ana", "jonas"):
        assert await n.says(who, "got it") == "Good, you have read it."
    await n.until("20:02")
    await n.reports("office", "out", "start", minutes_ago=2)
    n.mark("the start")
    await n.until("21:24")
    assert "in at Larch Gate, Sat 21:20" in await n.says("vera", "51 in at larch 21:20 out 21:23")
    n.mark("out of larch")
    await n.until_told("ana", K.LEAVE_NOW)
    await n.wait(2)
    await n.presses("ana", "on our way")
    await n.until("23:12")
    await n.reports("office", "in", "hollin", minutes_ago=2)
    n.mark("in at hollin")
    await n.until("23:22")
    assert "Noted: Maren out of Hollin Mill" in await n.says("ana", "out of the mill")
    n.mark("out of hollin")


async def _lost(n: Night) -> list[tuple[datetime, float]]:
    """Nobody hears of her; P(not heard | still going), minute by minute, as it stood until the alarm."""
    await n.until("23:28")
    assert "you left Thorn hall" in await n.says("jonas", "on my way")
    await n.until("00:40")
    assert "you are at Black Tarn" in await n.says("jonas", "i am at the tarn")
    await n.until_told("ana", K.LEAVE_NOW, times=2)
    await n.presses("ana", "on our way")
    await n.until_told("jonas", K.LATE)
    await n.wait(5)
    await n.presses("jonas", "not yet")
    n.mark("not yet")
    await n.until_told("ines", K.OVERDUE)
    outlook = (await n.parts.pictures.take(EVENT, n.clock.now())).situation.outlooks[hill.RUNNER].untold()
    assert outlook is not None
    ended = outlook.ended_rather(RATHER, n.marks["out of hollin"])
    assert ended is not None
    n.marks["rather ended"] = ended
    return await n.silence(n.marks["not yet"])


async def _found(n: Night) -> None:
    await n.wait(2)
    assert "It is yours" in await n.presses("ines", "i have it")
    n.mark("ines has it")
    await n.wait(22)
    await n.presses("ines", "still missing")
    await n.wait(6)
    assert "Told to Ana and Ines" in await n.says("jonas", "shes in at the tarn")
    n.mark("in at tarn")


async def _morning(n: Night) -> None:
    await n.wait(12)
    await n.says("jonas", "out of the tarn")
    n.mark("out of tarn")
    await n.until_told("jonas", K.LEAVE_NOW)
    await n.presses("jonas", "on our way")
    await n.until("04:57")
    await n.reports("office", "in", "wythe", minutes_ago=1)
    n.mark("in at wythe")
    await n.wait(9)
    await n.says("ana", "left wythe")
    await n.wait(120)
    await n.reports("office", "in", "finish", minutes_ago=1)
    n.mark("finished")
    await n.wait(6)
    assert "Maren is with you" in await n.says("jonas", "we have her")
    n.mark("over")
    await n.wait(60)


async def test_who_is_told_what_through_a_night(hillside: Night, capsys: pytest.CaptureFixture[str]) -> None:
    """Everybody is told what is theirs within its minutes, nobody anything else, and it ends when she is home."""
    n = hillside
    await _evening(n)
    silence = await _lost(n)
    await _nobody_sees_more_than_their_part(n)
    await _found(n)
    await _morning(n)
    told = "\n".join(map(str, n.told))
    with capsys.disabled():
        print(f"\nmessages: {n.counted()}")
    for mark, low, high, who, kind, words in MUST_BE_TOLD:
        at = n.marks[mark]
        found = [t for t in n.notices(who, kind) if at + low * MINUTE <= t.at <= at + high * MINUTE]
        assert any(words in t.text for t in found), f"{mark}: {who}: {kind}: {words}\n{told}"
    for who, kinds in MAY_BE_TOLD.items():
        assert {K(t.kind) for t in n.notices(who)} <= kinds, f"{who}\n{told}"
        for kind in AT_MOST_ONCE:
            assert len(n.notices(who, kind)) <= 1, f"{who}: {kind}\n{told}"
    assert not [t for t in n.notices() if t.at > n.marks["over"]], "nothing follows once crew have her"
    alarmed = [t.who for t in n.notices() if t.urgent and K(t.kind) in _ALARM]
    assert sorted(alarmed) == ["ines", "ines", "ines"], "one alarm, looked at again, over; news to the others"
    _overdue_within_minutes_of_its_line(n, silence)
    await _every_leave_now_was_in_time(n)


def _overdue_within_minutes_of_its_line(n: Night, silence: list[tuple[datetime, float]]) -> None:
    """The alarm came when P(unheard) was under the line, or her race had rather ended than not by what Jonas had not
    reported, and the grace after 'late' was over, at most 2 min after.

    'Not yet' moves the moment she is late, and the question that follows it may be told minutes after that moment: the
    grace ran from a time between the first question and the last.
    """
    alarm = n.notices("ines", K.OVERDUE)[0].at
    asked = [t.at for t in n.notices("jonas", K.LATE) if t.at < alarm]
    rule = n.built.event.alarm
    under = next((at for at, unheard in silence if unheard <= rule.line), None)
    under = min(at for at in (under, n.marks["rather ended"]) if at is not None)
    first, last = (max(under, at + rule.grace) for at in (asked[0], asked[-1]))
    assert first - MINUTE <= alarm <= last + 2 * MINUTE, "looked at minute by minute"


async def _every_leave_now_was_in_time(n: Night) -> None:
    """Told before the leave-by, which leaves time for the drive, the walk and the unloading before she came."""
    came = {"hollin": "in at hollin", "tarn": "in at tarn", "wythe": "in at wythe", "finish": "finished"}
    last = {m.notice.key.point: m for m in await n.journal.made(EVENT) if m.notice.key.kind is K.LEAVE_NOW}
    assert set(last) == {"hollin", "wythe", "finish"}, "Jonas set out for the tarn before he was told to"
    course = n.built.event.course_of(hill.RUNNER)
    for point, made in last.items():
        values, crew = made.notice.values, course.point(point).access
        assert isinstance(values, MeetingValues)
        assert values.leave_by is not None
        assert values.drive is not None
        assert crew is not None
        assert values.leave_by - made.made_at >= 4 * MINUTE, point
        ready = values.leave_by + values.drive + crew.walk_in + crew.unloading
        assert ready <= n.marks[came[point]], point


async def _nobody_sees_more_than_their_part(n: Night) -> None:
    """While she is missing a supporter sees no place and no estimate, a volunteer and a stranger nothing."""
    status, where = await n.asks("sam", "where")
    assert status == 200
    shown = str(where["data"])
    assert "Hollin Mill" in shown
    assert where["data"]["where"] is None, "no estimate"
    for question in ("facts", "next", "kit", "missed", "cutoffs"):
        assert (await n.asks("sam", question))[0] == 403, question
    for question in ("forecast", "where", "plan", "facts", "next", "kit"):
        assert (await n.asks("vera", question))[0] == 403, question
        assert (await n.asks("nobody-we-know", question))[0] == 401, question
    there, nowhere = [
        (await n.call("sam", "GET", f"/v1/events/{e}/runners/x/facts")) for e in (EVENT, "no-such")
    ]
    assert there == nowhere, "the refusal does not tell whether there is such a thing"
    answer = await n.says("sam", "where is she")
    assert "Hollin Mill" in answer
    assert "estimate" not in answer.lower()
