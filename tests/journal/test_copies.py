"""Copies: the backup owes what the original owed; dumps cross between databases; events go out and in."""

from __future__ import annotations

import asyncio
from collections.abc import Callable
from datetime import datetime, timedelta
from pathlib import Path

import pytest
from click.testing import CliRunner

from server.cli.main import stilepost
from server.facts.entry import Entry
from server.journal import (
    DeliveryState,
    Journal,
    JournalError,
    Outcome,
    RefusedError,
    TooNewError,
    UnknownError,
)
from server.watch.notice import Notice, Urgency
from tests.conftest import Postgres

SECOND = timedelta(seconds=1)
Database = Callable[[], str]


async def fill(
    loaded: Journal, entry: Callable[..., Entry], notice: Callable[..., Notice], start: datetime
) -> None:
    """One sent, one just being sent, one whose outcome is unknown, one waiting, one failed; and the rest."""
    for key in ("k1", "k2"):
        await loaded.append(entry(key))
    await loaded.append(entry("k1", point="chapel"))
    await loaded.keep_picture("long-stile", None, "ana", b"\x00\xff", "image/png", start)
    for i, person in enumerate(("ana", "tomas", "ana", "ana", "jonas"), 1):
        asks = notice(person, i, urgency=Urgency.ACTION, needs_answer=True)
        await loaded.add_notices([asks], start + i * SECOND)
    now = start + timedelta(minutes=1)
    sent, unknown = await loaded.claim(["telegram"], now)
    await loaded.report(sent.id, Outcome.SENT, now, text="words")
    await loaded.report(unknown.id, Outcome.UNKNOWN, now)
    await loaded.answer("long-stile", 1, "ana", "on it", now)
    await loaded.claim(["telegram"], now + SECOND)
    await loaded.store_updates("telegram", [(5, "raw"), (6, "raw")], start)
    await loaded.heartbeat("server", start)
    await loaded.heartbeat("server", now + timedelta(hours=1))


async def owed(journal: Journal, start: datetime) -> list[tuple[str, int, bool, str]]:
    """What is sent from now on, in order, until nothing is left."""
    got = []
    for minute in range(10, 20):
        now = start + timedelta(minutes=minute)
        for d in await journal.claim(["telegram", "email"], now):
            got.append((d.id, d.tries, d.possible_repeat, d.address))
            await journal.report(d.id, Outcome.SENT, now, tries=d.tries)
    return got


async def restored(make_database: Database, path: Path) -> Journal:
    """A journal on what a backup wrote."""
    if (await asyncio.to_thread(path.read_bytes)).startswith(b"SQLite format 3"):
        return await Journal.open(f"sqlite+aiosqlite:///{path}")
    copy = await Journal.open(make_database())
    await copy.restore(path)
    return copy


async def test_a_backup_owes_the_same(
    loaded: Journal, make_database: Database, entry: Callable[..., Entry], notice: Callable[..., Notice],
    start: datetime, tmp_path: Path,
) -> None:  # fmt: skip
    """A backup made while entries come in is whole, and owes exactly what the original owes."""
    await fill(loaded, entry, notice, start)
    writing = asyncio.gather(*(loaded.append(entry(f"w{i}")) for i in range(20)))
    await loaded.backup(tmp_path / "copy")
    await writing
    copy = await restored(make_database, tmp_path / "copy")
    theirs = await copy.entries("long-stile")
    assert (await loaded.entries("long-stile"))[: len(theirs)] == theirs
    assert await copy.made("long-stile") == await loaded.made("long-stile")
    assert await copy.waiting("telegram") == 2
    assert await copy.offset("telegram") == 7
    owes = await owed(loaded, start)
    assert await owed(copy, start) == owes
    assert [(tries, repeat) for _, tries, repeat, _ in owes] == [(2, True), (2, True), (1, False)]
    with pytest.raises(RefusedError, match="such a file already"):
        await loaded.backup(tmp_path / "copy")
    await copy.close()


async def test_a_dump_restores_equal(
    loaded: Journal, make_database: Database, sqlite_url: str, entry: Callable[..., Entry],
    notice: Callable[..., Notice], start: datetime, tmp_path: Path,
) -> None:  # fmt: skip
    """A dump read into either kind of database dumps to the same bytes; only an empty one is read into."""
    await fill(loaded, entry, notice, start)
    first = tmp_path / "first"
    rows = await loaded.dump(first)
    for i, url in enumerate((make_database(), sqlite_url)):
        copy = await Journal.open(url)
        assert await copy.restore(first) == rows
        await copy.dump(tmp_path / f"again{i}")
        assert (tmp_path / f"again{i}").read_bytes() == first.read_bytes()
        with pytest.raises(RefusedError, match="not empty"):
            await copy.restore(first)
        await copy.close()


async def test_an_event_out_and_in(
    loaded: Journal, make_database: Database, entry: Callable[..., Entry], notice: Callable[..., Notice],
    start: datetime, tmp_path: Path,
) -> None:  # fmt: skip
    """An event read in exports to the same bytes, holds no secrets, and leaves sending to the old server
    unless told otherwise."""
    await fill(loaded, entry, notice, start)
    await loaded.issue_token("ana", "phone", [], start)
    first = tmp_path / "first"
    await loaded.export_event("long-stile", first)
    assert "sha256" in first.read_text()
    assert '"table":"token"' not in first.read_text()
    moved, looked_at = await Journal.open(make_database()), await Journal.open(make_database())
    assert await moved.import_event(first, owing=True) == "long-stile"
    await moved.export_event("long-stile", tmp_path / "again")
    assert (tmp_path / "again").read_bytes() == first.read_bytes()
    await looked_at.import_event(first)
    assert await owed(looked_at, start) == []
    states = {d.state for d in await looked_at.deliveries("long-stile")}
    assert states == {DeliveryState.SENT, DeliveryState.OVERTAKEN}
    assert await looked_at.entries("long-stile") == await loaded.entries("long-stile")
    assert await looked_at.outages(start, start) == await loaded.outages(start, start)
    with pytest.raises(RefusedError, match="is here already"):
        await looked_at.import_event(first)
    with pytest.raises(RefusedError, match="not a whole journal"):
        await (fresh := await Journal.open(make_database())).restore(first)
    with pytest.raises(UnknownError, match="no event 'x'"):
        await loaded.export_event("x", tmp_path / "x")
    for journal in (moved, looked_at, fresh):
        await journal.close()


@pytest.mark.parametrize(
    ("spoil", "error", "words"),
    [
        (lambda text: "", JournalError, "is no dump"),
        (lambda text: "<html>", JournalError, "is no dump"),
        (lambda text: text[: len(text) // 2], JournalError, "cut off"),
        (lambda text: text[: text.rindex("\n", 0, -1) + 1], JournalError, "cut off"),
        (lambda text: text.replace('"format": 1', '"format": 2', 1), TooNewError, "a newer Stilepost"),
        (lambda text: text.replace('"revision": "0', '"revision": "9', 1), TooNewError, "a newer Stilepost"),
    ],
)
async def test_spoilt_dumps(
    sqlite_url: str,
    start: datetime,
    tmp_path: Path,
    spoil: Callable[[str], str],
    error: type[Exception],
    words: str,
) -> None:
    """A file that is no dump, is cut off or too new is refused with the reason, and nothing is read in."""
    journal = await Journal.open(sqlite_url)
    await journal.heartbeat("server", start)
    await journal.dump(tmp_path / "dump")
    await journal.close()
    (tmp_path / "spoilt").write_text(spoil((tmp_path / "dump").read_text()))
    empty = await Journal.open(f"sqlite+aiosqlite:///{tmp_path}/empty.db")
    with pytest.raises(error, match=words):
        await empty.restore(tmp_path / "spoilt")
    assert await empty.last_heartbeats() == {}
    await empty.close()


async def test_restore_as_documented(
    loaded: Journal, make_database: Database, database_url: str, postgres: Postgres, tmp_path: Path,
    entry: Callable[..., Entry], start: datetime,
) -> None:  # fmt: skip
    """`stilepost backup FILE`, then `stilepost restore FILE` into an empty database, from and to either kind: all is there,
    and the copy is as it was."""
    await loaded.append(entry())
    file = tmp_path / "copy"
    await loaded.backup(file)
    before = file.read_bytes()
    name = postgres.take()
    rows = []
    for target in (make_database(), postgres.url(name)):
        command = ["--database", target, "restore", str(file)]
        done = await asyncio.to_thread(CliRunner().invoke, stilepost, command)
        assert done.exit_code == 0, done.output
        copy = await Journal.open(target)
        lines = tmp_path / f"lines-{len(rows)}"
        await copy.dump(lines)
        rows.append(lines.read_text())
        assert [e.key for e in await copy.entries("long-stile")] == [entry().key]
        await copy.close()
    await loaded.dump(tmp_path / "was")
    assert set(rows) == {(tmp_path / "was").read_text()}
    assert file.read_bytes() == before
    postgres.give_back(name)
