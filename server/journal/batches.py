"""What many hand in at the same moment, in one transaction: a transaction each would queue for the event's row, and a call
for help behind all of them."""

from __future__ import annotations

import asyncio
from collections.abc import Awaitable, Callable, Sequence
from dataclasses import dataclass

from server.facts.entry import Entry
from server.journal.errors import AwayError
from server.journal.values import Appended

__all__ = ["Batches"]

MOST = 500
"""So many entries go into one transaction (own choice)."""

Append = Callable[[Sequence[Entry], bool], Awaitable[list[Appended]]]
"""Keeps entries of one event, all or none; whether their senders gave a time."""


@dataclass(frozen=True, slots=True, eq=False)
class _Given:
    """What somebody handed in and waits for."""

    entries: Sequence[Entry]
    timed: bool
    kept: asyncio.Future[list[Appended]]

    def kind(self) -> tuple[str, bool]:
        """What may go together."""
        return self.entries[0].event, self.timed


class Batches:
    """Whatever is handed in while a transaction is under way shares the next one. Who is answered is kept."""

    def __init__(self, append: Append) -> None:
        self._append = append
        self._waiting: list[_Given] = []
        self._running: asyncio.Task[None] | None = None

    async def append(self, entries: Sequence[Entry], timed: bool) -> list[Appended]:
        """Keep entries of one event, all or none of them. Whoever stops waiting may find them kept all the same."""
        given = _Given(entries, timed, asyncio.get_running_loop().create_future())
        self._waiting.append(given)
        if self._running is None or self._running.done():
            self._running = asyncio.create_task(self._run())
        return await given.kept

    async def _run(self) -> None:
        while self._waiting:
            kind, together, later, count = self._waiting[0].kind(), list[_Given](), list[_Given](), 0
            for given in self._waiting:
                goes = given.kind() == kind and count < MOST
                (together if goes else later).append(given)
                count += len(given.entries) if goes else 0
            self._waiting = later
            await self._keep(together)

    async def _keep(self, together: Sequence[_Given]) -> None:
        try:
            found = await self._append([e for g in together for e in g.entries], together[0].timed)
        except Exception as error:
            if len(together) > 1 and not isinstance(error, AwayError):
                for given in together:  # one of them can't be kept, which is no reason to keep none
                    await self._keep([given])
                return
            for given in together:
                if not given.kept.done():
                    given.kept.set_exception(error)
            return
        for given in together:
            mine, found = found[: len(given.entries)], found[len(given.entries) :]
            if not given.kept.done():
                given.kept.set_result(mine)
