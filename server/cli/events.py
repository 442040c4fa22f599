"""Subcommands about the event file: check it, load it, get it back out. Its plan: `server.cli.planning`."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import replace
from datetime import UTC, datetime
from pathlib import Path
from zoneinfo import ZoneInfo

import click

from server.api.building import BuildError, build
from server.api.start_list import prepare
from server.cli import tables
from server.cli.common import (
    CliContext,
    Failed,
    journal,
    mistakes,
    read_event,
    run,
    stored_event,
    text_of,
    the_event,
)
from server.conversation.telling.mistakes import file_language, say_change
from server.conversation.telling.reader import Reader
from server.conversation.telling.say import Say
from server.event import changes, removal_refused
from server.event.model import Event
from server.journal import Journal
from server.paper.before import before_start
from server.paper.silences import print_silences
from server.paper.table import print_timetable
from server.plan.movements import course_spots, crew_plan
from server.sentences import languages, sentence

EVENT_FILE = click.argument("file", type=click.Path(path_type=Path, exists=True, dir_okay=False))


@click.command()
@EVENT_FILE
@click.option(
    "--language", type=click.Choice(languages()), help="Of what is said (default: that of the file's people)."
)
def check(file: Path, language: str | None) -> None:
    """Check an event file: every mistake at once, then the timetable, and when silence would become an alarm."""
    found = read_event(file, language)
    for problem in found.built.warnings:
        click.echo(problem.in_language(found.language))
    event, console = found.built.event, tables.console()
    say = Say(Reader(found.language, event.time_zone, event.time_zone), datetime.now(UTC))
    before = before_start(event, found.built.timetables, found.built.courses, say.now)
    for runner in event.runners:
        print_timetable(console, event, found.built.timetables[runner.id], say)
        print_silences(console, before, runner.id, Say(say.reader, before.at))
    points = sum(len(c.points) for c in event.courses)
    counts = {"runners": len(event.runners), "points": points, "people": len(event.people)}
    moves = crew_plan(
        event,
        found.built.timetables,
        before.views,
        spots=course_spots(event, found.built.courses),
        other_cars=False,
    )
    short = sum(not v.promised for v in moves.visits)
    if short:
        click.echo(sentence(found.language, "check-not-promised", count=short, file=str(file)))
    click.echo(
        sentence(found.language, "check-right", file=str(file), meetings=len(event.meetings), **counts)
    )


@click.command()
@EVENT_FILE
@click.option("--yes", is_flag=True, help="Store it without asking.")
@click.option("--by", default="", help="Who loads it, for the list of versions (default: the system's user).")
@click.pass_obj
def load(context: CliContext, file: Path, yes: bool, by: str) -> None:
    """Store an event file as a numbered version, after showing what would change.

    Nothing is applied silently: a server that runs sees the new version at its next look. A point or runner
    with check-ins can't be dropped.
    """
    found = read_event(file)
    for problem in found.built.warnings:
        click.echo(problem.in_language(found.language))

    async def work() -> None:
        async with journal(context.settings) as opened:
            event = found.built.event
            if not await _show_changes(opened, event, found.language):
                return
            ask = sentence(found.language, "load-ask")
            if not yes and not click.confirm(ask, default=False):
                raise Failed(sentence(found.language, "load-nothing-stored"), found.language)
            version = await opened.store_event(
                found.text, found.files, event, by or _user(), datetime.now(UTC)
            )
            click.echo(sentence(found.language, "load-stored", event=event.id, version=str(version)))

    run(work())


@click.command("start-list")
@click.argument("file", type=click.Path(path_type=Path, exists=True, dir_okay=False))
@click.option("--event", help="Which event (default: the only one).")
@click.option("--yes", is_flag=True, help="Store it without asking.")
@click.option("--by", default="", help="Who loads it, for the list of versions (default: the system's user).")
@click.pass_obj
def start_list(context: CliContext, file: Path, event: str | None, yes: bool, by: str) -> None:
    """Put a start list (CSV: bib, name, wave, course, target) into a stored event, after showing what would change.

    Runners are told by bib. Only what differs is changed, an empty cell leaves what is stored, nobody is taken out.
    """
    text = text_of(file)

    async def work() -> None:
        async with journal(context.settings) as opened:
            stored = await opened.load_event(await the_event(opened, event))
            language = file_language(stored.text)
            try:
                prepared = prepare(stored, text, str(file), language)
            except BuildError as error:
                raise Failed(mistakes(error.problems, language), language) from error
            listed, built = prepared.listed, prepared.built
            if built is None:
                raise Failed(mistakes(listed.problems, language), language)
            counts = {"added": len(listed.added), "changed": len(listed.changed), "same": listed.same}
            click.echo(sentence(language, "start-list-found", **{k: str(n) for k, n in counts.items()}))
            if listed.not_listed:
                names = ", ".join(listed.not_listed)
                click.echo(sentence(language, "start-list-not-listed", names=names))
            if not await _show_changes(opened, built.event, language):
                return
            if not yes and not click.confirm(sentence(language, "load-ask"), default=False):
                raise Failed(sentence(language, "load-nothing-stored"), language)
            version = await opened.store_event(
                listed.text, stored.files, built.event, by or _user(), datetime.now(UTC), over=stored.version
            )
            click.echo(sentence(language, "load-stored", event=built.event.id, version=str(version)))

    run(work())


def _user() -> str:
    import getpass

    try:
        return getpass.getuser()
    except (KeyError, OSError):
        return "unknown"


async def _show_changes(opened: Journal, event: Event, language: str) -> bool:
    """Print what loading would change; False if nothing. Failed where it would drop what has reports."""
    versions = await opened.event_versions(event.id)
    if not versions:
        click.echo(sentence(language, "load-new", event=event.id, name=event.name))
        return True
    stored = await opened.load_event(event.id)
    try:
        before = build(stored.text, stored.files, version=stored.version, accepted=True).event
    except BuildError as error:
        click.echo(sentence(language, "load-unreadable", version=str(stored.version)))
        click.echo(mistakes(error.problems, language))
        return True
    used = await opened.points_with_check_ins(event.id)
    refused = removal_refused(before, event, used)
    if refused:
        raise Failed("\n".join(r.in_language(language) for r in refused), language)
    found = changes(replace(before, version=0), replace(event, version=0))
    for change in found:
        click.echo(f"  {say_change(change, language)}")
    if not found:
        click.echo(sentence(language, "load-no-change", event=event.id, version=str(stored.version)))
    return bool(found)


@click.command()
@click.argument("event")
@click.argument("folder", type=click.Path(path_type=Path, file_okay=False))
@click.option("--version", "version", type=int, help="This version instead of the current one.")
@click.option("--whole", is_flag=True, help="Also everything reported and told, as journal.jsonl.")
@click.pass_obj
def export(context: CliContext, event: str, folder: Path, version: int | None, whole: bool) -> None:
    """Write a stored EVENT's file and the files it names into FOLDER, as they were loaded.

    With --whole also journal.jsonl: versions, people, reports, notices and answers, which `stilepost import`
    reads into another database.
    """

    async def work() -> None:
        async with journal(context.settings) as opened:
            stored = await opened.load_event(event, version)
            _write_all(folder, {"event.toml": stored.text.encode(), **stored.files})
            click.echo(f"{event}, version {stored.version}: written to {folder}")
            if whole:
                rows = await opened.export_event(event, folder / "journal.jsonl")
                click.echo(f"{rows} rows: written to {folder / 'journal.jsonl'}")

    run(work())


def _write_all(folder: Path, files: Mapping[str, bytes]) -> None:
    folder.mkdir(parents=True, exist_ok=True)
    for name, content in files.items():
        path = folder / name
        if not path.resolve().is_relative_to(folder.resolve()):
            path = folder / Path(name).name
        path.parent.mkdir(parents=True, exist_ok=True)
        _write_new(path, content)


def _write_new(path: Path, content: bytes) -> None:
    if path.exists() and path.read_bytes() != content:
        raise Failed(f"{path}: is there already, with other content. Choose another folder, or move it away.")
    path.write_bytes(content)


@click.command("import")
@click.argument("file", type=click.Path(path_type=Path, exists=True, dir_okay=False))
@click.pass_obj
def import_(context: CliContext, file: Path) -> None:
    """Read an event that `stilepost export --whole` wrote (journal.jsonl) into this database."""

    async def work() -> None:
        async with journal(context.settings) as opened:
            click.echo(f"{await opened.import_event(file)}: read in.")

    run(work())


@click.command("events")
@click.pass_obj
def list_events(context: CliContext) -> None:
    """List the stored events and their versions."""

    async def work() -> None:
        async with journal(context.settings) as opened:
            for current in await opened.list_events():
                zone = (await stored_event(opened, current.event)).time_zone
                for v in await opened.event_versions(current.event):
                    at = f"{v.at.astimezone(ZoneInfo(zone)):%Y-%m-%d %H:%M} {zone}"
                    click.echo(f"{v.event}  version {v.version}  {v.name}  by {v.by}  {at}")

    run(work())


COMMANDS = (check, load, start_list, export, import_, list_events)
