"""The clock: aware, in UTC, and never running back by itself."""

from __future__ import annotations

from datetime import UTC, datetime, timedelta, timezone

import pytest

from server.clock import SteppedClock, SystemClock

NOON = datetime(2027, 6, 19, 12, tzinfo=timezone(timedelta(hours=1)))


def test_system_clock_is_aware() -> None:
    """The system's clock gives moments in UTC that do not run back."""
    clock = SystemClock()
    first = clock.now()
    assert first.tzinfo is UTC
    assert clock.now() >= first


def test_stepped_clock_stands_until_moved() -> None:
    """It stands where it was set, in UTC, moves by hand, and refuses to go back or be naive."""
    clock = SteppedClock(NOON)
    assert clock.now() == clock.now() == datetime(2027, 6, 19, 11, tzinfo=UTC)
    assert clock.now().utcoffset() == timedelta(0)
    assert clock.advance(timedelta(minutes=20)) == NOON + timedelta(minutes=20)
    clock.set(NOON + timedelta(hours=1))
    with pytest.raises(ValueError, match="is earlier"):
        clock.set(NOON)
    with pytest.raises(ValueError, match="no time zone"):
        SteppedClock(datetime(2027, 6, 19, 12))  # noqa: DTZ001
