"""How fast the loops go, and how they wait: until something is due, news come, or the worker is to stop."""

from __future__ import annotations

import asyncio
from dataclasses import dataclass

__all__ = ["Meter", "Pace", "Waiter"]


@dataclass(frozen=True, slots=True)
class Pace:
    """Seconds, but for `batch`. `idle_s`: between two looks at the server when nothing is known to be due.
    `lease_s`: how long deliveries are ours; it leaves room for a slow send. `listen_ttl_s`: after this much
    silence of ours another process may listen. `again_s`, `again_longest_s`: after trouble. `at_most_per_s`: so many
    messages to all chats together (common practice for Telegram, whose documentation speaks of 30)."""

    idle_s: float = 1.0
    batch: int = 20
    lease_s: float = 60.0
    listen_ttl_s: float = 30.0
    again_s: float = 0.5
    again_longest_s: float = 15.0
    settings_again_s: float = 30.0
    at_most_per_s: float = 25.0


class Meter:
    """Spaces the messages of one channel as a whole, as its other side refuses more: alarms and answers go at once and
    are counted, everything else waits for its turn."""

    def __init__(self, at_most_per_s: float) -> None:
        self._every_s = 1.0 / at_most_per_s
        self._next = 0.0

    def wait_s(self, *, urgent: bool) -> float:
        """Take the next turn; how many seconds from now it is."""
        now = asyncio.get_running_loop().time()
        turn = max(now, self._next)
        self._next = turn + self._every_s
        return 0.0 if urgent else turn - now


class Waiter:
    """One worker's stop, and the news that an update was stored."""

    def __init__(self) -> None:
        self.stopping = asyncio.Event()
        self._news = asyncio.Event()

    def stop(self) -> None:
        """Have every loop end after what it is doing."""
        self.stopping.set()
        self._news.set()

    def news(self) -> None:
        """Something has been stored."""
        self._news.set()

    async def rest(self, seconds: float) -> None:
        """Wait so long, or until the stop."""
        await _within(self.stopping, seconds)

    async def rest_or_news(self, seconds: float) -> None:
        """Wait so long, or until news or the stop."""
        await _within(self._news, seconds)
        if not self.stopping.is_set():
            self._news.clear()


async def _within(event: asyncio.Event, seconds: float) -> None:
    try:
        await asyncio.wait_for(event.wait(), max(0.0, seconds))
    except TimeoutError:
        return
