"""`stilepost passages`: others' passage times of the day from a file."""

from __future__ import annotations

import asyncio
from datetime import UTC, datetime
from pathlib import Path

import click

from server.api.passages import read_in
from server.api.snapshot import Pictures
from server.cli.common import CliContext, Failed, journal, read_by_all, run, text_of, the_event
from server.drafting.passages import of_csv, of_json
from server.event import Problem
from server.sentences import sentence


@click.command()
@click.argument("file", type=click.Path(path_type=Path, exists=True, dir_okay=False))
@click.option("--event", help="Which event (default: the only one).")
@click.option("--by", default="cli", help="Who says so.")
@click.pass_obj
def passages(context: CliContext, file: Path, event: str | None, by: str) -> None:
    """Keep when others of the race came to its points, from FILE: CSV, or a JSON list (bib, point, and time or elapsed).

    The last said of a bib at a point counts, so the same file again, grown, is right; a row without a time takes back what
    was said. Rows that are wrong are named, and the others kept. A server that runs sees them at its next look.
    """
    text = text_of(file)

    async def work() -> None:
        async with journal(context.settings) as opened:
            which, now = await the_event(opened, event), datetime.now(UTC)
            language = await read_by_all(opened, which)
            rows = (of_json if file.suffix.lower() == ".json" else of_csv)(text, str(file))
            if isinstance(rows, Problem):
                raise Failed(rows.in_language(language), language)
            picture = await Pictures(opened).take(which, now)
            read = await asyncio.to_thread(read_in, picture, rows, now, str(file))
            for problem in read.not_taken:
                click.echo(problem.in_language(language), err=True)
            kept = await opened.keep_passages(which, read.taken, by)
            counts = {
                "added": kept.added,
                "changed": kept.changed,
                "same": kept.same,
                "wrong": len(read.not_taken),
            }
            said = sentence(language, "passages-kept", **{k: str(n) for k, n in counts.items()})
            if rows and not read.taken:
                raise Failed(said, language)
            click.echo(said)

    run(work())


COMMANDS = (passages,)
