"""Connections, transactions, migrations and locks: the part that knows SQLite from PostgreSQL."""

from __future__ import annotations

import asyncio
import contextlib
import hashlib
import os
import sys
from collections.abc import AsyncIterator, Iterable
from contextlib import asynccontextmanager
from pathlib import Path
from typing import Any, cast

from alembic import command
from alembic.config import Config
from alembic.script import ScriptDirectory
from alembic.util import CommandError
from sqlalchemy import Connection, Table, event, text
from sqlalchemy.dialects import postgresql, sqlite
from sqlalchemy.engine import URL, make_url
from sqlalchemy.exc import ArgumentError, DBAPIError
from sqlalchemy.ext.asyncio import AsyncConnection, AsyncEngine, create_async_engine
from sqlalchemy.pool import NullPool

from server.journal.errors import JournalError, TooNewError

if sys.platform != "win32":
    import fcntl

__all__ = ["Insert", "Store", "insert"]

Insert = postgresql.Insert | sqlite.Insert

_DRIVERS = {
    "sqlite": "sqlite+aiosqlite",
    "postgresql": "postgresql+asyncpg",
    "postgres": "postgresql+asyncpg",
}
_BUSY_MS = 15_000
_LOCK_POLL_S = 0.01
_MIGRATION_LOCK = 0x5711E


def insert(c: AsyncConnection, table: Table) -> postgresql.Insert:
    """An INSERT that knows ON CONFLICT, in the connection's dialect (both spell what we use alike)."""
    make: Any = sqlite.insert if c.dialect.name == "sqlite" else postgresql.insert
    return cast(postgresql.Insert, make(table))


class Store:
    """One database: `read` and `write` give a connection inside a transaction."""

    def __init__(self, url: URL, channels: frozenset[str] | None) -> None:
        self.url = url
        self.channels = channels
        self.sqlite = url.get_backend_name() == "sqlite"
        self.engine = _engine(url)
        # PostgreSQL holds locks on connections of their own: were they taken from the pool, as many lock
        # holders as the pool is large would wait for ever for a second connection to work with.
        self._lockers = create_async_engine(url, poolclass=NullPool)
        self._own_locks: dict[str, asyncio.Lock] = {}
        self._writer = asyncio.Lock()

    @classmethod
    async def open(cls, url: str, channels: Iterable[str] | None) -> Store:
        """Connect and migrate; see `Journal.open`."""
        try:
            parsed = make_url(url)
        except ArgumentError as e:
            raise JournalError(f"{url!r} is no database url", "database", _URL_HELP) from e
        driver = _DRIVERS.get(parsed.get_backend_name())
        if driver is None or (not parsed.database and driver.startswith("sqlite")):
            raise JournalError(f"{parsed.drivername!r} cannot be used", "database", _URL_HELP)
        if driver.startswith("sqlite") and parsed.database == ":memory:":
            raise JournalError("a database in memory would lose everything", "database", _URL_HELP)
        store = cls(parsed.set(drivername=driver), None if channels is None else frozenset(channels))
        try:
            if store.sqlite and not store.path.parent.is_dir():
                raise JournalError(f"there is no folder {store.path.parent}", "database", "make it first")
            await store.migrate()
        except (DBAPIError, OSError) as e:
            await store.close()
            why = e.orig if isinstance(e, DBAPIError) else e
            raise JournalError(f"cannot be opened: {why}", "database", _CHECK_HELP) from e
        except BaseException:
            await store.close()
            raise
        return store

    async def close(self) -> None:
        """Close every connection."""
        await self.engine.dispose()
        await self._lockers.dispose()

    @property
    def path(self) -> Path:
        """The file of a SQLite database."""
        assert self.sqlite
        assert self.url.database
        return Path(self.url.database)

    @asynccontextmanager
    async def read(self) -> AsyncIterator[AsyncConnection]:
        """A transaction that only reads, on one snapshot."""
        async with self.engine.connect() as plain:
            options: dict[str, Any] = (
                {"reads_only": True} if self.sqlite else {"isolation_level": "REPEATABLE READ"}
            )
            c = await plain.execution_options(**options)
            async with c.begin():
                yield c

    @asynccontextmanager
    async def write(self) -> AsyncIterator[AsyncConnection]:
        """A transaction that may write; committed when the block ends without an exception."""
        async with contextlib.AsyncExitStack() as stack:
            if self.sqlite:  # a fair queue in the process; between processes SQLite's busy timeout has to do
                await stack.enter_async_context(self._writer)
            yield await stack.enter_async_context(self.engine.begin())

    async def ping(self) -> None:
        """Return if the database answers."""
        async with self.read() as c:
            await c.execute(text("SELECT 1"))

    async def migrate(self) -> None:
        """Bring the tables up to date; servers that start at once wait for each other."""
        async with self.engine.begin() as c:
            if not self.sqlite:
                await c.execute(text("SELECT pg_advisory_xact_lock(:key)"), {"key": _MIGRATION_LOCK})
            await c.run_sync(_upgrade)

    @asynccontextmanager
    async def lock(self, name: str) -> AsyncIterator[None]:
        """Hold a named lock among all servers; freed by the system when the holder dies."""
        async with self._own_locks.setdefault(name, asyncio.Lock()):
            held = self._file_lock(name) if self.sqlite else self._advisory_lock(name)
            async with held:
                yield

    @asynccontextmanager
    async def _advisory_lock(self, name: str) -> AsyncIterator[None]:
        key = int.from_bytes(hashlib.sha256(name.encode()).digest()[:8], "big", signed=True)
        async with self._lockers.begin() as c:
            await c.execute(text("SELECT pg_advisory_xact_lock(:key)"), {"key": key})
            yield

    @asynccontextmanager
    async def _file_lock(self, name: str) -> AsyncIterator[None]:
        # Not BEGIN IMMEDIATE: that would keep every check-in waiting while a forecast is worked out. flock and
        # not lockf: closing any descriptor would give back all of a process's lockf locks on the file.
        fd = _lock_file(Path(f"{self.path}-locks"), name)
        try:
            while not _try_lock(fd):  # noqa: ASYNC110 - the holder may be another process
                await asyncio.sleep(_LOCK_POLL_S)
            yield
        finally:
            os.close(fd)


def _lock_file(folder: Path, name: str) -> int:
    folder.mkdir(exist_ok=True)
    return os.open(folder / hashlib.sha256(name.encode()).hexdigest()[:16], os.O_RDWR | os.O_CREAT, 0o600)


def _try_lock(fd: int) -> bool:
    if sys.platform == "win32":  # no flock: one process per database file is all that is safe there
        return True
    try:
        fcntl.flock(fd, fcntl.LOCK_EX | fcntl.LOCK_NB)
    except BlockingIOError:
        return False
    return True


_CHECK_HELP = "check that it is there, is a Stilepost database, and that we may read and write it"
_URL_HELP = "give sqlite+aiosqlite:///FILE or postgresql+asyncpg://USER@HOST/NAME"


def _engine(url: URL) -> AsyncEngine:
    if url.get_backend_name() != "sqlite":
        return create_async_engine(url, pool_pre_ping=True, pool_size=10, max_overflow=20)
    engine = create_async_engine(url, connect_args={"timeout": _BUSY_MS / 1000})

    @event.listens_for(engine.sync_engine, "connect")
    def connected(dbapi: Any, _record: Any) -> None:
        dbapi.isolation_level = None  # the driver's own transactions begin too late, see `began`
        cursor = dbapi.cursor()
        for pragma in (
            f"busy_timeout={_BUSY_MS}",
            "journal_mode=WAL",
            "synchronous=FULL",
            "foreign_keys=ON",
        ):
            cursor.execute(f"PRAGMA {pragma}")
        cursor.close()

    @event.listens_for(engine.sync_engine, "begin")
    def began(c: Connection) -> None:
        # A reader that turns writer fails at once when another has written since, whatever the timeout.
        reads_only = c.get_execution_options().get("reads_only", False)
        c.exec_driver_sql("BEGIN" if reads_only else "BEGIN IMMEDIATE")

    return engine


def _config(c: Connection) -> Config:
    config = Config()
    config.set_main_option("script_location", str(Path(__file__).parent / "migrations"))
    config.attributes["connection"] = c
    return config


def _upgrade(c: Connection) -> None:
    from alembic.runtime.migration import MigrationContext

    config = _config(c)
    scripts = ScriptDirectory.from_config(config)
    current = MigrationContext.configure(c).get_current_revision()
    if current is not None:
        try:
            scripts.get_revision(current)
        except CommandError as e:
            raise TooNewError(
                f"its tables are of revision {current!r}, this program knows up to"
                f" {scripts.get_current_head()!r}",
                "database",
                "a newer Stilepost has probably used it: start that one, or restore the backup made before",
            ) from e
    if current != scripts.get_current_head():
        command.upgrade(config, "head")
