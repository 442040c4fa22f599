"""Tells open page streams that something has changed: who listens gets a short message, never the facts.

A stream that cannot keep up loses nothing: every message says 'look again', and looking again shows all.
"""

from __future__ import annotations

import asyncio
from collections.abc import AsyncIterator, Iterator
from contextlib import contextmanager
from dataclasses import dataclass, field

WAITING_MAX = 100
STREAMS_MAX = 6
"""So many pages one person may have open at once; opening one more ends the oldest's stream (own choice: a phone, a
computer, some left open)."""


@dataclass(frozen=True, slots=True)
class News:
    """One message: `kind` 'changed' (look at the board again) or 'message' (with `data` for one person)."""

    kind: str
    data: str = ""


@dataclass(slots=True, eq=False)
class Listener:
    """One open stream of one person's session."""

    person: str
    address: str
    events: frozenset[str]
    waiting: asyncio.Queue[News | None] = field(default_factory=lambda: asyncio.Queue(WAITING_MAX))

    async def news(self, ping_after_s: float) -> AsyncIterator[News | None]:
        """What comes, or None each time nothing has come for so long; ends when the hub closes."""
        while True:
            try:
                item = await asyncio.wait_for(self.waiting.get(), ping_after_s)
            except TimeoutError:
                yield None
                continue
            if item is None:
                return
            yield item


class Hub:
    """All open streams of this server."""

    def __init__(self) -> None:
        self._listeners: dict[Listener, None] = {}
        self._closed = False

    @contextmanager
    def listening(self, person: str, address: str, events: frozenset[str]) -> Iterator[Listener]:
        """A listener for as long as the block lasts."""
        listener = Listener(person, address, events)
        if self._closed:
            listener.waiting.put_nowait(None)
        theirs = [x for x in self._listeners if x.person == person]
        for oldest in theirs[: max(0, len(theirs) + 1 - STREAMS_MAX)]:
            self._listeners.pop(oldest, None)
            _end(oldest)
        self._listeners[listener] = None
        try:
            yield listener
        finally:
            self._listeners.pop(listener, None)

    def changed(self, event: str) -> None:
        """Something about that event has changed."""
        for listener in self._listeners:
            if event in listener.events:
                _put(listener, News("changed", event))

    def message(self, address: str, data: str) -> bool:
        """Hand a message to every stream of that session; whether there was one to take it."""
        taken = False
        for listener in self._listeners:
            if listener.address == address:
                taken = _put(listener, News("message", data)) or taken
        return taken

    @property
    def addresses(self) -> frozenset[str]:
        """Sessions with a stream open now."""
        return frozenset(x.address for x in self._listeners)

    @property
    def closed(self) -> bool:
        """Whether the server is stopping."""
        return self._closed

    def close(self) -> None:
        """End every stream, so that a stopping server need not wait for them."""
        self._closed = True
        for listener in self._listeners:
            _end(listener)


def _end(listener: Listener) -> None:
    while not _put(listener, None):
        listener.waiting.get_nowait()


def _put(listener: Listener, item: News | None) -> bool:
    try:
        listener.waiting.put_nowait(item)
    except asyncio.QueueFull:
        return False
    return True
