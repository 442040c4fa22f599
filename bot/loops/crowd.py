"""Work for many people at once, one person's in order: nobody waits for somebody else's slow chat."""

from __future__ import annotations

import asyncio
from collections.abc import Awaitable, Callable

__all__ = ["Crowd"]


class Crowd:
    """Up to `most` pieces of work under way. What a piece raises is its own to deal with: it is dropped here."""

    def __init__(self, most: int) -> None:
        self._most = most
        self._tasks: set[asyncio.Task[None]] = set()
        self._last: dict[str, asyncio.Task[None]] = {}

    @property
    def room(self) -> int:
        """How many more pieces may begin."""
        return max(0, self._most - len(self._tasks))

    def add(self, person: str, work: Callable[[], Awaitable[None]]) -> None:
        """Begin a piece of work, once the same person's earlier pieces have ended."""
        task = asyncio.create_task(self._after(self._last.get(person), work))
        self._tasks.add(task)
        self._last[person] = task
        task.add_done_callback(lambda done: self._ended(person, done))

    async def until_room(self, within_s: float | None = None) -> None:
        """Return when another piece may begin, or after `within_s`."""
        while self._tasks and not self.room:
            done, _ = await asyncio.wait(self._tasks, timeout=within_s, return_when=asyncio.FIRST_COMPLETED)
            if not done:
                return

    async def until_done(self) -> None:
        """Return when everything begun has ended."""
        while self._tasks:
            await asyncio.wait(self._tasks)

    def cancel(self) -> None:
        """Cancel what is under way."""
        for task in self._tasks:
            task.cancel()

    async def _after(self, earlier: asyncio.Task[None] | None, work: Callable[[], Awaitable[None]]) -> None:
        if earlier is not None and not earlier.done():
            await asyncio.wait((earlier,))
        await work()

    def _ended(self, person: str, task: asyncio.Task[None]) -> None:
        self._tasks.discard(task)
        if self._last.get(person) is task:
            del self._last[person]
        if not task.cancelled():
            task.exception()
