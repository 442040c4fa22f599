"""Connections, transactions, migrations and locks: the part that knows SQLite from PostgreSQL."""

from __future__ import annotations

import asyncio
import contextlib
import hashlib
import os
import sys
import uuid
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
        self.id = uuid.uuid4().hex
        self._alive: int | AsyncConnection | None = None
        self._alive_lock = asyncio.Lock()

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
        await self._end()
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
        async with self._lockers.begin() as c:
            await c.execute(text("SELECT pg_advisory_xact_lock(:key)"), {"key": _key_of(name)})
            yield

    @asynccontextmanager
    async def _file_lock(self, name: str) -> AsyncIterator[None]:
        # Not BEGIN IMMEDIATE: that would keep every check-in waiting while a forecast is worked out. flock and
        # not lockf: closing any descriptor would give back all of a process's lockf locks on the file.
        fd = _lock_file(self._locks, name)
        try:
            while not _try_lock(fd):  # noqa: ASYNC110 - the holder may be another process
                await asyncio.sleep(_LOCK_POLL_S)
            yield
        finally:
            os.close(fd)

    async def live(self) -> str:
        """This server's id, for others to tell by `is_live` whether it runs. What says so is held by the system and
        goes with the process, whatever the clock says; a connection that broke is made anew."""
        async with self._alive_lock:
            if self.sqlite:
                if self._alive is None:
                    self._alive = _live_file(self._locks, self.id)
            elif not await self._still_connected():
                await self._end()
                c = await self._lockers.connect()
                self._alive = await c.execution_options(isolation_level="AUTOCOMMIT")
                await c.execute(text("SELECT pg_advisory_lock(:key)"), {"key": _key_of(f"live|{self.id}")})
        return self.id

    async def is_live(self, c: AsyncConnection, server: str) -> bool:
        """Whether the server of that id runs; asked inside a transaction of ours."""
        if server == self.id:
            return True
        if self.sqlite:
            return _is_live_file(self._locks, server)
        key = {"key": _key_of(f"live|{server}")}
        return not await c.scalar(text("SELECT pg_try_advisory_xact_lock(:key)"), key)

    async def _still_connected(self) -> bool:
        if not isinstance(self._alive, AsyncConnection):
            return False
        try:
            await self._alive.execute(text("SELECT 1"))
        except (DBAPIError, OSError):
            return False
        return True

    async def _end(self) -> None:
        held, self._alive = self._alive, None
        if isinstance(held, AsyncConnection):
            with contextlib.suppress(DBAPIError, OSError):
                await held.close()
        elif held is not None:
            os.close(held)

    @property
    def _locks(self) -> Path:
        return Path(f"{self.path}-locks")


def _key_of(name: str) -> int:
    return int.from_bytes(hashlib.sha256(name.encode()).digest()[:8], "big", signed=True)


def _live_file(folder: Path, server: str) -> int:
    """Open and lock the file that says that a server runs, and clear away those of the dead."""
    folder.mkdir(exist_ok=True)
    for other in folder.glob("live-*"):
        if not _is_live_file(folder, other.name.removeprefix("live-")):
            other.unlink(missing_ok=True)
    path = folder / f"live-{server}"
    while True:
        fd = os.open(path, os.O_RDWR | os.O_CREAT, 0o600)
        # Somebody clearing away may have taken it for dead between the two calls.
        if _try_lock(fd) and path.exists() and os.path.samestat(os.fstat(fd), path.stat()):
            return fd
        os.close(fd)


def _is_live_file(folder: Path, server: str) -> bool:
    if sys.platform == "win32":  # no flock: only the end of its lease tells
        return True
    try:
        fd = os.open(folder / f"live-{server}", os.O_RDWR)
    except FileNotFoundError:
        return False
    try:
        return not _try_lock(fd)
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
