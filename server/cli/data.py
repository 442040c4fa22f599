"""Subcommands about the data as a whole: tables, copies, going back."""

from __future__ import annotations

from pathlib import Path

import click

from server.cli.common import Context, Failed, journal, run


@click.command()
@click.pass_obj
def migrate(context: Context) -> None:
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
def backup(context: Context, path: Path, lines: bool) -> None:
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
def restore(context: Context, path: Path) -> None:
    """Read JSON lines written by `stilepost backup --lines` into an empty database.

    A database file written by `stilepost backup` needs no restoring: point STILEPOST_DATABASE at it.
    """
    with path.open("rb") as file:
        if file.read(15) == b"SQLite format 3":
            raise Failed(
                f"{path}: is a database file. Stop the server, put the file where STILEPOST_DATABASE points, "
                "and start it again."
            )

    async def work() -> None:
        async with journal(context.settings) as opened:
            click.echo(f"{await opened.restore(path)} rows read from {path}")

    run(work())


COMMANDS = (migrate, backup, restore)
