"""Subcommands about the data as a whole: tables, copies, going back."""

from __future__ import annotations

import asyncio
import shutil
import tempfile
from pathlib import Path

import click

from server.cli.common import CliContext, Failed, journal, run
from server.journal import Journal


@click.command()
@click.pass_obj
def migrate(context: CliContext) -> None:
    """Bring the database's tables up to date. `serve` does so by itself; this is for doing it beforehand."""

    async def work() -> None:
        async with journal(context.settings) as opened:
            await opened.ping()
            click.echo("the database is up to date.")

    run(work())


@click.command()
@click.argument("path", type=click.Path(path_type=Path))
@click.option("--lines", is_flag=True, help="Write JSON lines, which go back into either kind of database.")
@click.pass_obj
def backup(context: CliContext, path: Path, lines: bool) -> None:
    """Write a whole copy of the database to PATH while the server runs.

    The copy owes what the original owed at that moment. It holds personal data: keep it as safe.
    """
    if path.exists():
        raise Failed(f"{path}: is there already. Choose another name; copies are never written over.")

    async def work() -> None:
        async with journal(context.settings) as opened:
            await (opened.dump(path) if lines else opened.backup(path))

    run(work())
    click.echo(f"written to {path} ({path.stat().st_size:,} bytes)")


@click.command()
@click.argument("path", type=click.Path(path_type=Path, exists=True, dir_okay=False))
@click.pass_obj
def restore(context: CliContext, path: Path) -> None:
    """Read a copy written by `stilepost backup`, with `--lines` or without, into an empty database of either kind.

    The copy may be of an older Stilepost; it stays as it is.
    """

    async def work() -> None:
        async with journal(context.settings) as opened:
            with tempfile.TemporaryDirectory() as folder:
                lines = await _as_lines(path, Path(folder))
                click.echo(f"{await opened.restore(lines)} rows read from {path}")

    run(work())


async def _as_lines(path: Path, folder: Path) -> Path:
    """The copy as JSON lines; of a database file those are made, from a copy of it that may be brought up to date."""
    with path.open("rb") as file:
        if file.read(15) != b"SQLite format 3":
            return path
    copy = folder / "copy.db"
    await asyncio.to_thread(shutil.copyfile, path, copy)
    opened = await Journal.open(f"sqlite+aiosqlite:///{copy}")
    try:
        await opened.dump(folder / "copy.jsonl")
    finally:
        await opened.close()
    return folder / "copy.jsonl"


COMMANDS = (migrate, backup, restore)
