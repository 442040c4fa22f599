"""The one clock: only the edges (app, ticker, channels, console) hold one; every room is handed `now`.

`SystemClock` is live use; `SteppedClock` is set and moved by hand, for the demo and the tests, so that words
('20 mins ago'), pages and dates all follow the same moment.
"""

from __future__ import annotations

from datetime import UTC, datetime, timedelta
from typing import Protocol

__all__ = ["Clock", "SteppedClock", "SystemClock"]


class Clock(Protocol):
    """Something that says what time it is."""

    def now(self) -> datetime:
        """The present moment, aware, in UTC."""


class SystemClock:
    """The clock of the machine."""

    def now(self) -> datetime:
        """The machine's time, in UTC."""
        return datetime.now(UTC)


class SteppedClock:
    """A clock that stands still until it is moved. It never goes backwards by itself or by `advance`."""

    def __init__(self, start: datetime) -> None:
        self._now = _aware(start)

    def now(self) -> datetime:
        """The moment it stands at, in UTC."""
        return self._now

    def set(self, moment: datetime) -> None:
        """Stand at `moment`; an earlier one is refused (ValueError), as no room expects time to run back."""
        moment = _aware(moment)
        if moment < self._now:
            raise ValueError(f"the clock stands at {self._now.isoformat()}; {moment.isoformat()} is earlier")
        self._now = moment

    def advance(self, by: timedelta) -> datetime:
        """Move on by `by` (not negative) and return the new moment."""
        self.set(self._now + by)
        return self._now


def _aware(moment: datetime) -> datetime:
    if moment.tzinfo is None:
        raise ValueError(f"{moment.isoformat()} has no time zone; give an aware time")
    return moment.astimezone(UTC)
