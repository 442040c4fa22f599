"""The conversations under way in this process."""

from __future__ import annotations

import asyncio
from collections.abc import AsyncIterator, Callable
from contextlib import asynccontextmanager
from dataclasses import dataclass, field
from weakref import WeakValueDictionary

from server.api.snapshot import Picture
from server.api.who_may import May

Draw = Callable[[Picture, str, May, str], bytes]
"""Draws the profile of a runner for a person with that share: picture, runner, share, person -> PNG."""


@dataclass(slots=True)
class Talks:
    """The conversations under way in this process, each with its lock; and what draws pictures for them."""

    draw: Draw
    _locks: WeakValueDictionary[tuple[str, str, str], asyncio.Lock] = field(
        default_factory=WeakValueDictionary
    )

    @asynccontextmanager
    async def one_at_a_time(self, channel: str, address: str, place: str) -> AsyncIterator[None]:
        """Hold the conversation with an address at a place."""
        lock = self._locks.setdefault((channel, address, place), asyncio.Lock())
        async with lock:
            yield
