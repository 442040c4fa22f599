"""Whole transactions in one step of a thread, for SQLite.

A driver that hands every statement to a thread of its own and waits for it costs ten times the statement. What the journal
does in a transaction waits for nothing but the database, so on SQLite all of it is done in one such step.
"""

from __future__ import annotations

from collections.abc import Callable, Coroutine
from typing import Any, TypeVar, cast

from sqlalchemy import Connection, Engine
from sqlalchemy.ext.asyncio import AsyncConnection

__all__ = ["Work", "carried_out"]

T = TypeVar("T")

Work = Callable[[AsyncConnection], Coroutine[Any, Any, T]]
"""What is done in a transaction; awaits its connection only."""


class _AtOnce:
    """A connection with the ways of an `AsyncConnection` that the journal uses, its answers there at once."""

    def __init__(self, c: Connection) -> None:
        self._c = c
        self.dialect = c.dialect

    async def execute(self, *what: Any) -> Any:
        return self._c.execute(*what)

    async def scalar(self, *what: Any) -> Any:
        return self._c.scalar(*what)

    async def scalars(self, *what: Any) -> Any:
        return self._c.scalars(*what)


def carried_out(engine: Engine, work: Work[T], *, reads_only: bool) -> T:
    """What `work` returns, in a transaction of its own: committed unless it raises."""
    with engine.connect().execution_options(reads_only=reads_only) as c, c.begin():
        doing = work(cast(AsyncConnection, _AtOnce(c)))
        try:
            doing.send(None)
        except StopIteration as done:
            return cast(T, done.value)
        finally:
            doing.close()
        # Inside, as nothing of it may be kept: what it had still to do is not done.
        raise RuntimeError("a transaction on SQLite has waited for something besides its connection")
