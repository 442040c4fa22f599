"""`stilepost afterwards`: how a race went, as a page to print and as figures."""

from __future__ import annotations

import asyncio
from collections.abc import Mapping
from datetime import UTC, datetime
from pathlib import Path

import click

from server.api.answers import forecast
from server.api.snapshot import Picture, Pictures
from server.api.who_may import May
from server.cli.common import CliContext, Failed, journal, known, read_by_all, run, the_event
from server.event.model import Event
from server.paper.afterwards import Afterwards, sheet, to_csv, to_json
from server.paper.afterwards import afterwards as whole
from server.paper.document import Size
from server.paper.pdf import pdf
from server.paper.scored import scored
from server.paper.sheet import as_html
from server.plan.held import held_of
from server.sentences import sentence


@click.command()
@click.argument("event", required=False)
@click.option("--runner", help="Only this runner, by id (default: every one whom somebody reported on).")
@click.option(
    "--out", type=click.Path(path_type=Path, file_okay=False), default=Path("afterwards"), show_default=True,
    help="The folder for afterwards-RUNNER as .pdf, .html, .csv and .json.",
)  # fmt: skip
@click.option(
    "--paper",
    type=click.Choice([s.value for s in Size]),
    default=Size.A4.value,
    help="The paper to print on.",
)
@click.pass_obj
def afterwards(context: CliContext, event: str | None, runner: str | None, out: Path, paper: str) -> None:
    """Write how a stored EVENT went: plan against fact by section, stops, fade, how the windows did, messages and how soon
    they were answered, and three questions to each person."""

    async def work() -> None:
        async with journal(context.settings) as opened:
            name = await the_event(opened, event)
            # A race that was rehearsed may lie ahead: what came in last is past then.
            came = [e.received_at for e in await opened.entries(name)]
            picture = await Pictures(opened).take(name, max([datetime.now(UTC), *came]))
            if runner is not None:
                known("runner", runner, [r.id for r in picture.event.runners])
            reported = [r.runner for r in picture.state.runners if r.times and runner in (None, r.runner)]
            if not reported:
                language = await read_by_all(opened, name)
                raise Failed(sentence(language, "cli-nothing-reported", event=name), language)
            for each in reported:
                files = await asyncio.to_thread(_files, picture, each, Size(paper))
                for file, content in files.items():
                    _write(out / file, content)

    run(work())


def looked_back(picture: Picture, runner: str) -> Afterwards:
    """One runner's race as it went."""
    event, table, course = picture.event, picture.timetable(runner), picture.course(runner)
    windows = scored(event, runner, table, course, picture.entries, picture.built.placer)
    state, made = picture.state.runner(runner), picture.situation.made
    answer, held = forecast(picture, runner, May.YES), held_of(event, course, state)
    return whole(event, table, answer, made, windows, state.how_she_is, held, state.log, state.looked_back)


def _files(picture: Picture, runner: str, size: Size) -> Mapping[str, bytes]:
    event, found = picture.event, looked_back(picture, runner)
    pages = [sheet(found, _reader(event, runner), picture.now)]
    name = f"afterwards-{runner}"
    return {
        f"{name}.pdf": pdf(pages, size),
        f"{name}.html": as_html(pages, event.name, size).encode(),
        f"{name}.csv": to_csv(found).encode("utf-8-sig"),
        f"{name}.json": to_json(found).encode(),
    }


def _reader(event: Event, runner: str) -> str:
    return event.runner(runner).person


def _write(path: Path, content: bytes) -> None:
    try:
        path.parent.mkdir(parents=True, exist_ok=True)
        path.write_bytes(content)
    except OSError as error:
        why = error.strerror or type(error).__name__
        raise Failed(sentence("", "cli-not-written", file=str(path), why=why)) from error
    click.echo(sentence("", "cli-written", file=str(path)))


COMMANDS = (afterwards,)
