"""Connections, transactions, migrations and locks: the part that knows SQLite from PostgreSQL."""

from __future__ import annotations

import asyncio
import contextlib
import hashlib
import os
import shutil
import sys
import uuid
from collections import deque
from collections.abc import AsyncIterator, Iterable, Iterator
from concurrent.futures import ThreadPoolExecutor
from contextlib import asynccontextmanager
from functools import cache, partial
from pathlib import Path
from typing import Any, TypeVar, cast

from alembic import command
from alembic.config import Config
from alembic.script import ScriptDirectory
from sqlalchemy import Connection, Engine, Table, create_engine, event, text
from sqlalchemy.dialects import postgresql, sqlite
from sqlalchemy.engine import URL, make_url
from sqlalchemy.exc import ArgumentError, DBAPIError, IntegrityError
from sqlalchemy.exc import TimeoutError as NoConnectionError
from sqlalchemy.ext.asyncio import AsyncConnection, AsyncEngine, create_async_engine
from sqlalchemy.pool import NullPool, Pool

from server.journal.errors import AwayError, JournalError, TooNewError
from server.journal.inline import Work, carried_out

if sys.platform != "win32":
    import fcntl

__all__ = ["Insert", "Store", "insert"]

Insert = postgresql.Insert | sqlite.Insert

_DRIVERS = {
    "sqlite": "sqlite+aiosqlite",
    "postgresql": "postgresql+asyncpg",
    "postgres": "postgresql+asyncpg",
}
BUSY_S = 15.0
"""So long an ordinary writer waits for another process's before it is refused, to be handed in again."""
SYNCHRONOUS = "FULL"
"""What SQLite does at each commit: the disk has it before anybody hears that it is kept."""
URGENT_S = 3.0
"""So long a call for help waits for a writer at most: then its sender, who tries again, must know (issue 14)."""
ROOM_BYTES = 16 * 1024 * 1024
"""A disk with less room than this counts as full (own choice: some thousand reports)."""
IDLE_S = 8.0
"""A transaction whose process does nothing in it for so long (it is stopped, its machine has gone) is ended by
PostgreSQL, and with it every row it held: no work of ours waits inside one."""
_THREADS = 4
"""So many transactions on SQLite are under way at once in a process; one of them may write (own choice)."""
_MIGRATION_LOCK = 0x5711E

T = TypeVar("T")


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
        # Connections beside the pool: for what must not wait until others give theirs back, and for our sign of life.
        self._apart = _engine(url, NullPool, busy_s=URGENT_S)
        self._threads = _Threads(url) if self.sqlite else None
        self._writer = Queue()
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
        if self._threads is not None:
            await asyncio.to_thread(self._threads.close)
        await self.engine.dispose()
        await self._apart.dispose()

    @property
    def path(self) -> Path:
        """The file of a SQLite database."""
        assert self.sqlite
        assert self.url.database
        return Path(self.url.database)

    async def reading(self, work: Work[T]) -> T:
        """What `work` reads in a transaction of its own, on one snapshot. AwayError where the database can't."""
        if self._threads is None:
            async with self.read() as c:
                return await work(c)
        with _away():
            return await self._threads.do(work, reads_only=True)

    async def writing(self, work: Work[T], *, urgent: bool = False) -> T:
        """What `work` returns, in a transaction that may write; see `write`."""
        if self._threads is None:
            async with self.write(urgent=urgent) as c:
                return await work(c)
        with _away():
            async with self._writer.turn(URGENT_S if urgent else None):
                return await self._threads.do(work, urgent=urgent)

    @asynccontextmanager
    async def read(self) -> AsyncIterator[AsyncConnection]:
        """A transaction that only reads, on one snapshot. AwayError where the database can't."""
        with _away():
            async with self.engine.connect() as plain:
                options: dict[str, Any] = (
                    {"reads_only": True} if self.sqlite else {"isolation_level": "REPEATABLE READ"}
                )
                c = await plain.execution_options(**options)
                async with c.begin():
                    yield c

    @asynccontextmanager
    async def write(self, *, urgent: bool = False) -> AsyncIterator[AsyncConnection]:
        """A transaction that may write; committed when the block ends without an exception. AwayError where the
        database can't. `urgent`: before every writer that waits in this process, on a connection of its own, and
        AwayError after `URGENT_S`."""
        engine = self._apart if urgent else self.engine
        with _away():
            async with contextlib.AsyncExitStack() as stack:
                if self.sqlite:  # a queue in the process; between processes SQLite's busy timeout has to do
                    await stack.enter_async_context(self._writer.turn(URGENT_S if urgent else None))
                yield await stack.enter_async_context(engine.begin())

    @asynccontextmanager
    async def apart(self) -> AsyncIterator[AsyncConnection]:
        """A connection of its own, in no transaction: to listen on."""
        async with self._apart.connect() as plain:
            yield await plain.execution_options(isolation_level="AUTOCOMMIT")

    async def ping(self) -> None:
        """Return if the database answers."""
        await self.reading(lambda c: c.execute(text("SELECT 1")))

    def has_room(self) -> bool:
        """Whether the disk of a SQLite file has room for a while: a small row may still find some in the file when a call
        for help no longer does. Of another's disk nothing is known here."""
        return not self.sqlite or shutil.disk_usage(self.path.parent).free >= ROOM_BYTES

    async def migrate(self) -> None:
        """Bring the tables up to date; servers that start at once wait for each other."""
        async with self.engine.begin() as c:
            if not self.sqlite:
                await self.take_time(c)
                await c.execute(text("SELECT pg_advisory_xact_lock(:key)"), {"key": _MIGRATION_LOCK})
            await c.run_sync(_upgrade)

    async def take_time(self, c: AsyncConnection) -> None:
        """Let this transaction wait, and work between its statements, for as long as whole copies take."""
        if not self.sqlite:
            await c.execute(text("SET LOCAL idle_in_transaction_session_timeout = 0"))
            await c.execute(text("SET LOCAL lock_timeout = 0"))

    async def live(self) -> str:
        """This server's id, for others to tell by `is_live` whether it runs. What says so is held by the system and
        goes with the process, whatever the clock says; a connection that broke is made anew."""
        async with self._alive_lock:
            with _away():
                if self.sqlite:
                    if self._alive is None:
                        self._alive = _live_file(self._locks, self.id)
                elif not await self._still_connected():
                    await self._end()
                    c = await self._apart.connect()
                    self._alive = await c.execution_options(isolation_level="AUTOCOMMIT")
                    await c.execute(
                        text("SELECT pg_advisory_lock(:key)"), {"key": _key_of(f"live|{self.id}")}
                    )
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


class _Threads:
    """Threads that carry out whole transactions on a SQLite file; what is urgent has its own."""

    def __init__(self, url: URL) -> None:
        plain = url.set(drivername="sqlite")
        self.usual = create_engine(
            plain, connect_args={"timeout": BUSY_S, "check_same_thread": False}, pool_size=_THREADS
        )
        self.urgent = create_engine(
            plain, connect_args={"timeout": URGENT_S, "check_same_thread": False}, poolclass=NullPool
        )
        _in_our_ways(self.usual, BUSY_S)
        _in_our_ways(self.urgent, URGENT_S)
        self._usually = ThreadPoolExecutor(_THREADS, "database")
        self._at_once = ThreadPoolExecutor(1, "urgent")

    async def do(self, work: Work[T], *, reads_only: bool = False, urgent: bool = False) -> T:
        """Carry `work` out. Whoever stops waiting for it does so once it is kept or not kept."""
        engine, threads = (self.urgent, self._at_once) if urgent else (self.usual, self._usually)
        doing = asyncio.get_running_loop().run_in_executor(
            threads, partial(carried_out, engine, work, reads_only=reads_only)
        )
        stopped: asyncio.CancelledError | None = None
        while not doing.done():
            try:
                await asyncio.wait((doing,))
            except (
                asyncio.CancelledError
            ) as error:  # asked twice, too: whoever writes next must find the way free
                stopped = error
        if stopped is not None:
            doing.exception()  # looked at, so that nothing says that nobody did
            raise stopped
        return doing.result()

    def close(self) -> None:
        for threads in (self._usually, self._at_once):
            threads.shutdown()
        for engine in (self.usual, self.urgent):
            engine.dispose()


class Queue:
    """Whose turn it is to write, in this process: in the order of asking, those in a hurry before all others."""

    def __init__(self) -> None:
        self._busy = False
        self._waiting: tuple[deque[asyncio.Future[None]], deque[asyncio.Future[None]]] = (deque(), deque())

    @asynccontextmanager
    async def turn(self, within_s: float | None = None) -> AsyncIterator[None]:
        """Hold the turn; `within_s`: in a hurry, and TimeoutError if it has not come by then."""
        if self._busy:
            await self._wait(within_s)
        self._busy = True
        try:
            yield
        finally:
            self._pass_on()

    async def _wait(self, within_s: float | None) -> None:
        mine = asyncio.get_running_loop().create_future()
        line = self._waiting[0 if within_s is not None else 1]
        line.append(mine)
        try:
            await asyncio.wait_for(asyncio.shield(mine), within_s)
        except BaseException:
            if mine.done() and not mine.cancelled():
                self._pass_on()  # it came just as we gave up
            else:
                line.remove(mine)
            raise

    def _pass_on(self) -> None:
        for line in self._waiting:
            if line:
                line.popleft().set_result(None)
                return
        self._busy = False


@contextlib.contextmanager
def _away() -> Iterator[None]:
    """Say of what a database could not do now, and may well do later, that it is so."""
    try:
        yield
    except IntegrityError:
        raise
    except DBAPIError as e:
        why = _why_away(e)
        if why is None:
            raise
        raise AwayError(why) from e
    except (NoConnectionError, TimeoutError) as e:
        raise AwayError("busy") from e
    except OSError as e:
        raise AwayError("away") from e


_SQLITE_AWAY = {
    "locked": "busy",
    "busy": "busy",
    "full": "full",
    "readonly": "read-only",
    "unable to open": "away",
    "disk i/o": "away",
}
_POSTGRES_AWAY = {
    "53100": "full",
    "25006": "read-only",
    "08": "away",
    "57": "away",
    "25P03": "away",
    "53": "busy",
    "55": "busy",
    "40": "busy",
}
"""Classes of SQLSTATE (PostgreSQL's documentation, appendix A); the longest that fits holds."""


def _why_away(e: DBAPIError) -> str | None:
    """Why the database can't do it now; None where asking again will not help."""
    if e.connection_invalidated:
        return "away"
    state = getattr(e.orig, "sqlstate", None)
    if state is not None:
        fits = [why for front, why in _POSTGRES_AWAY.items() if str(state).startswith(front)]
        return fits[0] if fits else None
    text_of = str(e.orig).lower()
    return next((why for words, why in _SQLITE_AWAY.items() if words in text_of), None)


def _engine(url: URL, pool: type[Pool] | None = None, busy_s: float | None = None) -> AsyncEngine:
    """Connections to a database, by the ways of its kind; without `pool` from a pool of theirs. `busy_s`: so long they
    wait for another writer, `BUSY_S` if not said."""
    busy_s = BUSY_S if busy_s is None else busy_s
    if url.get_backend_name() != "sqlite":
        limits = {
            "idle_in_transaction_session_timeout": f"{IDLE_S * 1000:.0f}",
            "lock_timeout": f"{busy_s * 1000:.0f}",
        }
        more: dict[str, Any] = {"connect_args": {"server_settings": limits, "timeout": busy_s}}
        more |= {"poolclass": pool} if pool else {"pool_pre_ping": True, "pool_size": 10, "max_overflow": 20}
        return create_async_engine(url, **more)
    engine = create_async_engine(
        url, connect_args={"timeout": busy_s}, **({"poolclass": pool} if pool else {})
    )

    _in_our_ways(engine.sync_engine, busy_s)
    return engine


def _in_our_ways(engine: Engine, busy_s: float) -> None:
    """Have every connection to a SQLite file, and every transaction, begin as we need it."""

    @event.listens_for(engine, "connect")
    def connected(dbapi: Any, _record: Any) -> None:
        dbapi.isolation_level = None  # the driver's own transactions begin too late, see `began`
        cursor = dbapi.cursor()
        for pragma in (
            f"busy_timeout={busy_s * 1000:.0f}",
            "journal_mode=WAL",
            f"synchronous={SYNCHRONOUS}",
            "foreign_keys=ON",
        ):
            cursor.execute(f"PRAGMA {pragma}")
        cursor.close()

    @event.listens_for(engine, "begin")
    def began(c: Connection) -> None:
        # A reader that turns writer fails at once when another has written since, whatever the timeout.
        reads_only = c.get_execution_options().get("reads_only", False)
        c.exec_driver_sql("BEGIN" if reads_only else "BEGIN IMMEDIATE")


def _config(c: Connection | None = None) -> Config:
    config = Config()
    config.set_main_option("script_location", str(Path(__file__).parent / "migrations"))
    config.attributes["connection"] = c
    return config


@cache
def _revisions() -> tuple[str | None, frozenset[str]]:
    """The one that the tables are brought to, and all that this program knows."""
    scripts = ScriptDirectory.from_config(_config())
    return scripts.get_current_head(), frozenset(s.revision for s in scripts.walk_revisions())


def _upgrade(c: Connection) -> None:
    from alembic.runtime.migration import MigrationContext

    current = MigrationContext.configure(c).get_current_revision()
    head, known = _revisions()
    if current is not None and current not in known:
        raise TooNewError(
            f"its tables are of revision {current!r}, this program knows up to {head!r}",
            "database",
            "a newer Stilepost has probably used it: start that one, or restore the backup made before",
        )
    if current != head:
        command.upgrade(_config(c), "head")
