"""`stilepost learn`: races that were held, taken into the next event file."""

from __future__ import annotations

import asyncio
from datetime import UTC, datetime
from pathlib import Path

import click

from server.api.building import BuildError, Built, build
from server.api.snapshot import Pictures
from server.cli import tables
from server.cli.afterwards import looked_back
from server.cli.common import CliContext, Failed, OnDisk, journal, known, mistakes, read_event, run, the_event
from server.conversation.telling.mistakes import file_language
from server.conversation.telling.reader import Reader
from server.conversation.telling.say import Say
from server.drafting.document import UnusualError
from server.drafting.learnt import HeldRace, LearnError, Lesson, read_held, taken_in
from server.paper.afterwards import to_json
from server.paper.before import before_start
from server.paper.table import goals_line, print_fuel, print_plan
from server.sentences import sentence


@click.command()
@click.argument("races", nargs=-1)
@click.option(
    "--into", type=click.Path(path_type=Path, exists=True, dir_okay=False), required=True,
    help="The event file of the next race.",
)  # fmt: skip
@click.option("--runner", help="The runner in the next file, by id (default: the one whose race it was).")
@click.option("--write", is_flag=True, help="Change the file; without it what would change is only shown.")
@click.pass_obj
def learn(context: CliContext, races: tuple[str, ...], into: Path, runner: str | None, write: bool) -> None:
    """Take RACES that were held into the next plan: her own time, fade, stops and intake, each with its spread.

    A RACE is the JSON that `stilepost afterwards` wrote, or the id of a stored event (without one: the only one). Every
    change is shown with what it rests on; with --write it goes into the file, comments kept.
    """
    found = read_event(into)
    held = [r for name in races or ("",) for r in _held(context, name, runner)]
    try:
        text, changes = taken_in(found.text, runner, held)
    except LearnError as error:
        raise Failed(sentence(found.language, error.code, **error.values), found.language) from error
    except UnusualError as error:
        raise Failed(sentence(found.language, "learn-unusual", file=str(into)), found.language) from error
    for change in changes:
        click.echo(f"- {said(change, found.language)}")
    if text == found.text:
        click.echo(sentence(found.language, "learn-nothing"))
        return
    try:
        built = build(text, found.files, str(into), language=found.language)
    except BuildError as error:
        click.echo(mistakes(error.problems, found.language), err=True)
        raise Failed(sentence(found.language, "learn-breaks", file=str(into)), found.language) from error
    _show_next(found, built)
    if not write:
        click.echo(sentence(found.language, "learn-shown", file=str(into)))
        return
    into.write_text(text, encoding="utf-8")
    click.echo(sentence(found.language, "cli-written", file=str(into)))


def _show_next(found: OnDisk, built: Built) -> None:
    """The next plan with what was learnt, of each runner whose plan it changes; her goals as they were above it."""
    old, event, console = found.built, built.event, tables.console()
    say = Say(Reader(found.language, event.time_zone, event.time_zone), datetime.now(UTC))
    before = before_start(event, built.timetables, built.courses, say.now)
    say = Say(say.reader, before.at)
    for r in event.runners:
        table, was = built.timetables[r.id], old.timetables[r.id]
        if r == old.event.runner(r.id) and table.rows == was.rows:
            continue
        console.print(sentence(found.language, "learn-was", runner=r.name), highlight=False, markup=False)
        console.print(goals_line(say, old.event, was), highlight=False, markup=False)
        console.print(sentence(found.language, "learn-next", runner=r.name), highlight=False, markup=False)
        print_plan(console, before, r.id, say)
        if r.fuel:
            print_fuel(console, event, table, say)


def said(change: Lesson, language: str) -> str:
    """A change in words: what, from what to what, and how sure."""
    values: dict[str, str | int] = {
        "field": change.field,
        "was": change.was or "none",
        "now": change.now,
        "low": change.low,
        "high": change.high,
        "count": change.count,
    }
    return sentence(language, change.kind, **values)


def _held(context: CliContext, name: str, runner: str | None) -> list[HeldRace]:
    """The races of a file, or of a stored event: of the runner named, else of everybody reported."""
    path = Path(name)
    if name and path.suffix == ".json":
        try:
            text = path.read_text(encoding="utf-8")
        except (OSError, UnicodeDecodeError) as error:
            raise Failed(sentence("", "learn-no-json", file=name)) from error
        try:
            return [read_held(text, name)]
        except LearnError as error:
            raise Failed(sentence(file_language(""), error.code, **error.values)) from error

    async def work() -> list[HeldRace]:
        async with journal(context.settings) as opened:
            event = await the_event(opened, name or None)
            came = [e.received_at for e in await opened.entries(event)]
            picture = await Pictures(opened).take(event, max([datetime.now(UTC), *came]))
            reported = [r.runner for r in picture.state.runners if r.times]
            if not reported:
                raise Failed(sentence("", "cli-nothing-reported", event=event))
            if runner is None and len(reported) > 1:
                raise Failed(sentence("", "cli-log-whose", known=", ".join(reported)))
            whose = runner or reported[0]
            known("runner", whose, reported)
            found = await asyncio.to_thread(looked_back, picture, whose)
            return [read_held(to_json(found), event)]

    return run(work())


COMMANDS = (learn,)
