"""Opening: migrations equal to the tables, several servers at once, newer databases refused, pragmas set."""

from __future__ import annotations

import asyncio
from collections.abc import Callable
from datetime import UTC, datetime, timedelta, timezone
from pathlib import Path

import pytest
from alembic.autogenerate import compare_metadata
from alembic.migration import MigrationContext
from sqlalchemy import Connection, Table, bindparam, select, text
from sqlalchemy.exc import IntegrityError, StatementError

from server.journal import Journal, JournalError, TooNewError
from server.journal import tables as t
from server.journal.store import Store, insert
from server.journal.tables import UtcDateTime
from tests.conftest import SYNCHRONOUS


async def test_migrations_make_the_tables(database_url: str) -> None:
    """What the migrations make and what the code believes are the same, on both databases."""

    def differences(c: Connection) -> list[object]:
        return list(compare_metadata(MigrationContext.configure(c), t.metadata))

    store = await Store.open(database_url, None)
    async with store.read() as c:
        assert await c.run_sync(differences) == []
    await store.close()


async def test_servers_that_start_at_once(make_database: Callable[[], str]) -> None:
    """Four servers that open the same new database at once all come up, on tables made once."""
    url = make_database()
    store = await Store.open(url, None)
    async with store.write() as c:
        for table in reversed(t.metadata.sorted_tables):
            await c.execute(text(f"DROP TABLE {table.name}"))
        await c.execute(text("DELETE FROM alembic_version"))
    await store.close()
    journals = await asyncio.gather(*(Journal.open(url) for _ in range(4)))
    for journal in journals:
        await journal.ping()
        await journal.close()


async def test_a_database_of_the_first_revision_is_brought_up_to_date(
    database_url: str, start: datetime
) -> None:
    """A database as the first revision left it, with a lease and a sign of life in it, opens with both kept; the
    lease is its holder's until it ends, as nothing is known of its server."""
    store = await Store.open(database_url, None)
    async with store.write() as c:
        for later in ("crew_group", "dialogue", "turn", "server_life", "kept_secret", "passage"):
            await c.execute(text(f"DROP TABLE {later}"))
        await c.execute(text("DROP INDEX ix_notice_what_became"))
        added = ("lease", "since"), ("lease", "server"), ("delivery", "server"), ("raw_update", "server")
        for table, column in (
            ("heartbeat", "caught_up_at"), *added, ("raw_update", "chat"), ("raw_update", "urgent"),
            ("event", "passages"),
        ):  # fmt: skip
            await c.execute(text(f"ALTER TABLE {table} DROP COLUMN {column}"))
        await c.execute(text("UPDATE alembic_version SET version_num = '0001'"))
        beat = {"at": start, "gap": 120.0}
        at = bindparam("at", type_=UtcDateTime())
        await c.execute(text("INSERT INTO heartbeat VALUES ('server', :at, :gap)").bindparams(at), beat)
        until = {"at": start + timedelta(minutes=1)}
        await c.execute(text("INSERT INTO lease VALUES ('poller', 'a', :at)").bindparams(at), until)
    await store.close()
    journal = await Journal.open(database_url)
    assert await journal.last_heartbeats() == {"server": start}
    assert not await journal.take_lease("poller", "b", start, timedelta(minutes=1))
    assert await journal.take_lease("poller", "b", start + timedelta(minutes=1), timedelta(minutes=1))
    await journal.close()


async def test_a_newer_database_is_refused(database_url: str) -> None:
    """A database of a revision that this program does not know is left alone, with the likely cause."""
    store = await Store.open(database_url, None)
    async with store.write() as c:
        now = await c.scalar(text("SELECT version_num FROM alembic_version"))
        await c.execute(text("UPDATE alembic_version SET version_num = '9999'"))
    with pytest.raises(TooNewError, match=r"revision '9999'.*newer Stilepost"):
        await Journal.open(database_url)
    async with store.write() as c:
        await c.execute(text("UPDATE alembic_version SET version_num = :now"), {"now": now})
    await store.close()
    await (await Journal.open(database_url)).close()


@pytest.mark.parametrize(
    "url", ["", "journal.db", "mysql://x/y", "sqlite://", "sqlite+aiosqlite:///:memory:", "http://x"]
)
async def test_other_urls_are_refused(url: str) -> None:
    """What is no database, or one that would forget, is refused with what to write instead."""
    with pytest.raises(JournalError, match="give sqlite"):
        await Journal.open(url)


async def test_what_cannot_be_opened(tmp_path: Path) -> None:
    """A folder that is not there, a file that is no database, a server that does not answer: said so."""
    (tmp_path / "notes.txt").write_text("no database, but long enough to be taken for one" * 50)
    urls = {
        f"sqlite:///{tmp_path}/none/x.db": "no folder",
        f"sqlite:///{tmp_path}/notes.txt": "not a database",
        f"postgresql://nobody@/x?host={tmp_path}": "cannot be opened",
    }
    for url, words in urls.items():
        with pytest.raises(JournalError, match=words):
            await Journal.open(url)


async def test_plain_names_are_taken(tmp_path: Path) -> None:
    """'sqlite:///' is understood as the driver used here."""
    journal = await Journal.open(f"sqlite:///{tmp_path}/x.db")
    await journal.ping()
    await journal.close()


async def test_pragmas(sqlite_url: str, monkeypatch: pytest.MonkeyPatch) -> None:
    """Every SQLite connection is durable, waits when busy, and holds references true."""
    monkeypatch.setattr("server.journal.store.SYNCHRONOUS", SYNCHRONOUS)
    opened = await Store.open(sqlite_url, None)
    async with opened.read() as c:
        found = [
            await c.scalar(text(f"PRAGMA {p}"))
            for p in ("journal_mode", "synchronous", "foreign_keys", "busy_timeout")
        ]
    assert found == ["wal", 2, 1, 15_000]
    await opened.close()


async def put(store: Store, table: Table, row: dict[str, object]) -> None:
    """Insert a row in a transaction of its own."""
    async with store.write() as c:
        await c.execute(insert(c, table).values(row))


async def test_references_hold(database_url: str, start: datetime) -> None:
    """An address of a person who is not there is refused by the database itself."""
    store = await Store.open(database_url, None)
    row = {"channel": "x", "address": "1", "person": "nobody", "bound_at": start}
    with pytest.raises(IntegrityError):
        await put(store, t.address, row)
    await store.close()


async def test_moments(database_url: str) -> None:
    """A column of moments refuses naive ones and gives back the same moment in UTC."""
    store = await Store.open(database_url, None)
    noon = datetime(2027, 6, 19, 12, 0, 0, 123456, tzinfo=timezone(timedelta(hours=1)))
    async with store.write() as c:
        await c.execute(insert(c, t.lease).values(name="a", holder="x", until=noon))
        back = await c.scalar(select(t.lease.c.until))
        assert back == noon
        assert back.tzinfo is UTC
    naive = datetime(2027, 6, 19, 12)  # noqa: DTZ001
    with pytest.raises(StatementError, match="no time zone"):
        await put(store, t.lease, {"name": "b", "holder": "x", "until": naive})
    await store.close()


async def test_read_then_write_loses_nothing(make_database: Callable[[], str], start: datetime) -> None:
    """Four servers with twenty read-then-write transactions each end at 80 (with the driver's own
    transactions on SQLite it was 20, silently)."""
    url = make_database()
    stores = [await Store.open(url, None) for _ in range(4)]
    async with stores[0].write() as c:
        await c.execute(insert(c, t.guess).values(guesser="x", since=start, wrong=0))

    async def count(store: Store) -> None:
        for _ in range(20):
            async with store.write() as c:
                row = (await c.execute(select(t.guess).with_for_update())).one()
                await c.execute(t.guess.update().values(wrong=row.wrong + 1))

    await asyncio.gather(*(count(store) for store in stores))
    async with stores[0].read() as c:
        assert await c.scalar(select(t.guess.c.wrong)) == 80
    for store in stores:
        await store.close()


async def test_a_reader_sees_one_moment(loaded: Journal, database_url: str) -> None:
    """A read transaction does not see what is committed after it began, and holds nobody up."""
    store = await Store.open(database_url, None)
    async with store.read() as c:
        before = await c.scalar(select(t.event.c.blanks))
        await asyncio.wait_for(loaded.blank_event("long-stile", datetime.now(UTC)), 60)
        assert await c.scalar(select(t.event.c.blanks)) == before
    await store.close()
