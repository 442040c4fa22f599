"""Times, windows, durations: rounded so that nothing looks surer than it is, on every clock that matters."""

from __future__ import annotations

from datetime import UTC, datetime, timedelta

import pytest
from hypothesis import given
from hypothesis import strategies as st

from server.conversation.telling import times
from server.conversation.telling.reader import Reader
from server.forecast.outlook import Window

LONDON = Reader("en", "Europe/London", "Europe/London")
NOW = datetime(2027, 6, 19, 14, 10, tzinfo=UTC)


def local(hm: str, day: int = 19) -> datetime:
    """A wall time in Britain in June 2027 (an hour ahead of UTC)."""
    hours, minutes = map(int, hm.split(":"))
    return datetime(2027, 6, day, hours, minutes, tzinfo=UTC) - timedelta(hours=1)


seconds = st.integers(min_value=0, max_value=40 * 3600)


@given(seconds, seconds, seconds)
def test_edges_are_outward_and_likely_inside(a: int, b: int, c: int) -> None:
    """Outer edges never cut into the window, lie within 5 minutes of it, and enclose the middle; all on 5
    minutes."""
    early, likely, late = sorted((a, b, c))
    w = Window("p", *(NOW + timedelta(seconds=s) for s in (early, likely, late)))
    low, mid, high = times.edges(w)
    assert low <= w.early < low + timedelta(minutes=5)
    assert high - timedelta(minutes=5) < w.late <= high
    assert low <= mid <= high
    assert abs(mid - w.likely) <= timedelta(minutes=2, seconds=30)
    assert all(t.timestamp() % 300 == 0 for t in (low, mid, high))


@pytest.mark.parametrize(
    ("early", "likely", "late", "said"),
    [
        (
            local("17:12"), local("17:33"), local("18:18"),
            "about 17:35 (17:10 to 18:20)",
        ),
        (
            local("23:12"), local("23:48"), local("00:38", 20),
            "about Sat 23:50 (23:10 to Sun 00:40)",
        ),
        (
            local("23:40"), local("00:10", 20), local("00:50", 20),
            "about Sun 00:10 (Sat 23:40 to Sun 00:50)",
        ),
        (
            local("02:11", 20), local("02:34", 20), local("03:19", 20),
            "about Sun 02:35 (02:10 to 03:20)",
        ),
        (
            local("15:02"), local("15:20"), local("15:41"),
            "about 15:20, any time from now to 15:45",
        ),
        (
            local("13:02"), local("13:31"), local("14:03"),
            "expected 13:30 (13:00 to 14:05), nothing reported from there",
        ),
        (local("14:58"), local("14:58"), local("14:58"), "there since 14:58"),
        (local("16:02"), local("16:02"), local("16:02"), "16:02"),
    ],
)  # fmt: skip
def test_windows_in_words(early: datetime, likely: datetime, late: datetime, said: str) -> None:
    """A window reads as the glossary shows it; weekdays at night and where the day changes."""
    assert times.window(Window("p", early, likely, late), LONDON, NOW) == said


def test_own_clock_stands_behind_the_points() -> None:
    """Somebody elsewhere reads the point's clock first, then their own, and only where they differ."""
    w = Window("p", local("17:12"), local("17:33"), local("18:18"))
    berlin = Reader("en", "Europe/Berlin", "Europe/London")
    assert times.window(w, berlin, NOW).endswith(", your clock 18:35 (18:10 to 19:20)")
    assert times.moment(local("13:05"), berlin, NOW) == "13:05 (14:05 your clock)"
    lisbon = Reader("en", "Europe/Lisbon", "Europe/London")  # another zone, the same time
    assert times.moment(local("13:05"), lisbon, NOW) == "13:05"


def test_the_hour_that_comes_twice_is_named() -> None:
    """When clocks go back, 01:30 is told with the zone's short name, as there are two of it."""
    night = datetime(2027, 10, 30, 22, 0, tzinfo=UTC)
    first, second = datetime(2027, 10, 31, 0, 30, tzinfo=UTC), datetime(2027, 10, 31, 1, 30, tzinfo=UTC)
    assert times.clock(first, LONDON, night) == "Sun 01:30 BST"
    assert times.clock(second, LONDON, night) == "Sun 01:30 GMT"
    assert times.clock(second + timedelta(hours=1), LONDON, night) == "Sun 02:30"


@pytest.mark.parametrize(
    ("at", "said"),
    [("00:05", "12:05 am"), ("12:00", "12:00 pm"), ("09:07", "9:07 am"), ("15:30", "3:30 pm")],
)
def test_twelve_hour_clock(at: str, said: str) -> None:
    """Those who read 12 hours get am and pm; noon is pm, the first hour of the day is 12 am (common
    practice)."""
    reader = Reader("en", "Europe/London", "Europe/London", clock_12h=True)
    assert times.clock(local(at), reader, NOW, day=False) == said


@pytest.mark.parametrize(
    ("minutes", "said"),
    [(0, "under a minute"), (1, "1 min"), (59, "59 min"), (60, "1 h"), (80, "1 h 20 min"), (1500, "25 h")],
)
def test_durations(minutes: int, said: str) -> None:
    """Lengths of time are told to the minute, in hours and minutes."""
    assert times.duration(timedelta(minutes=minutes), "en") == said


def test_ago() -> None:
    """How long ago, with 'just now' for the last minute and a half, and 'in' for what is to come."""
    assert times.ago(NOW - timedelta(minutes=25), NOW, "en") == "25 min ago"
    assert times.ago(NOW - timedelta(seconds=80), NOW, "en") == "just now"
    assert times.ago(NOW + timedelta(minutes=10), NOW, "en") == "in 10 min"


def test_read_out_time_has_the_whole_weekday() -> None:
    """A time to be read aloud names the day in full."""
    assert times.full_clock(local("05:25", 20), LONDON) == "Sunday 05:25"
