"""`stilepost plan`: from an event file on disk to table, picture, calendars, sheets. No server, no database."""

from __future__ import annotations

import json
from collections.abc import Mapping
from datetime import UTC, datetime
from pathlib import Path

import click
from rich.console import Console
from rich.table import Table

from server.api.building import Built
from server.cli import tables
from server.cli.common import Failed, read_event
from server.cli.events import EVENT_FILE
from server.conversation.telling.movements import plan_remarks
from server.conversation.telling.reader import Reader, reader_in
from server.conversation.telling.ready import ready_lines
from server.conversation.telling.say import Say
from server.event.keys import TABLES, json_schema, key_help, nearest_table, tables_named
from server.event.model import Event
from server.pages.profile import profile_svg
from server.paper.before import BeforeStart, before_start
from server.paper.brief import briefs_of, file_names
from server.paper.calendar import appointments_of, calendar
from server.paper.document import Size
from server.paper.files import gpx_with_points, to_csv, to_json
from server.paper.lists import lists_of
from server.paper.meeting import meeting_lines
from server.paper.meeting_files import meetings_csv, meetings_json
from server.paper.moves import moves_table
from server.paper.pdf import pdf
from server.paper.picture import plan_picture
from server.paper.sheet import as_html, crew_pdf, crew_sheets
from server.paper.silences import print_silences
from server.paper.table import print_fuel, print_plan
from server.plan.movements import CrewPlan, course_spots, crew_plan
from server.sentences import languages, sentence

_OUT = click.Path(path_type=Path)


@click.command()
@EVENT_FILE
@click.option("--runner", help="Only this runner, by id.")
@click.option(
    "--language",
    type=click.Choice(languages()),
    help="For table, picture and files (default: that of the file's people).",
)
@click.option("--miles", is_flag=True, help="Miles instead of km.")
@click.option("--picture", type=_OUT, help="Draw height and times along the course to this PNG file.")
@click.option("--svg", type=_OUT, help="Draw the profile with its points to this SVG file.")
@click.option(
    "--out",
    type=click.Path(path_type=Path, file_okay=False),
    help="Write timetable.csv, meetings.csv, plan.json (both in one), course-with-points.gpx, and as PDF to print and HTML "
    "for a telephone: lists, the crew's brief, a sheet a person; and a calendar a person, into this folder.",
)
@click.option(
    "--paper",
    type=click.Choice([s.value for s in Size]),
    default=Size.A4.value,
    help="The paper that sheets are for.",
)
def plan(
    file: Path,
    runner: str | None,
    language: str | None,
    miles: bool,
    picture: Path | None,
    svg: Path | None,
    out: Path | None,
    paper: str,
) -> None:
    """Plan from an event FILE: timetable, goals, light, cut-offs, meetings; with --out also files to hand out.

    Needs no server and no database. Leave-by and be-there-from are those that the notices would give before the start.
    """
    found = read_event(file, language)
    built, language = found.built, found.language
    event = built.event
    who = _runners(event, runner, language)
    say = Say(Reader(language, event.time_zone, event.time_zone, miles=miles), datetime.now(UTC))
    before = before_start(event, built.timetables, built.courses, say.now)
    say = Say(say.reader, before.at)
    for warning in built.warnings:
        click.echo(warning.in_language(language), err=True)
    console = tables.console()
    for each in who:
        _show(console, before, each, say)
        course = built.courses[event.runner(each).course]
        for line in ready_lines(say, event, built.timetables[each], course, found.files):
            console.print(f"- {line}", highlight=False, markup=False)
    moves = crew_plan(event, built.timetables, before.views, spots=course_spots(event, built.courses))
    if moves.visits:
        console.print(moves_table(event, moves, say))
    for line in plan_remarks(say.reader, event, moves):
        console.print(f"- {line}", highlight=False, markup=False)
    _draw(before, built, who[0], say.reader, picture, svg)
    if out is not None:
        for name, content in _files(before, who, say, moves, Size(paper)).items():
            _write(out / name, content, language)
            click.echo(sentence(language, "cli-written", file=str(out / name)))
    _refuse_broken(moves, language)


def _runners(event: Event, runner: str | None, language: str) -> list[str]:
    known = [r.id for r in event.runners]
    if runner is not None and runner not in known:
        what = sentence(language, "cli-no-runner", runner=runner, known=", ".join(known))
        raise Failed(what, language)
    return known if runner is None else [runner]


def _show(console: Console, before: BeforeStart, runner: str, say: Say) -> None:
    print_plan(console, before, runner, say)
    if before.event.runner(runner).fuel:
        print_fuel(console, before.event, before.timetable(runner), say)
    print_silences(console, before, runner, say)
    met = before.meetings(runner)
    if not met:
        return
    table = Table(title=say.s("paper-head-meetings"), title_justify="left", show_header=False)
    for m in (car for meeting in met for car in meeting.parties()):
        place = before.event.course_of(runner).point(m.point).name
        crew = say.all(p.name for p in before.event.people if p.id in m.crew)
        table.add_row(f"{place}\n{crew}", "\n".join(meeting_lines(before, runner, m, say)), end_section=True)
    console.print(table)


def _draw(
    before: BeforeStart, built: Built, runner: str, reader: Reader, picture: Path | None, svg: Path | None
) -> None:
    event, course = before.event, before.course(runner)
    if picture is not None:
        _write(picture, plan_picture(event, before.timetable(runner), course, reader), reader.language)
        click.echo(sentence(reader.language, "cli-written", file=str(picture)))
    if svg is not None:
        line = built.courses[event.runner(runner).course]
        _write(svg, profile_svg(event, runner, line).encode(), reader.language)
        click.echo(sentence(reader.language, "cli-written", file=str(svg)))


def _files(
    before: BeforeStart, runners: list[str], say: Say, moves: CrewPlan, size: Size
) -> Mapping[str, bytes]:
    """Everything to hand out, by file name; with several runners each one's files carry their id."""
    event, files = before.event, {}
    for runner in runners:
        mark = f"-{runner}" if len(event.runners) > 1 else ""
        table, course = before.timetable(runner), before.course(runner)
        files[f"timetable{mark}.csv"] = to_csv(event, table).encode("utf-8-sig")
        files[f"plan{mark}.json"] = to_json(event, table, say, meetings_json(before, runner, moves)).encode()
        files[f"course-with-points{mark}.gpx"] = gpx_with_points(event, table, course, say)
        files[f"plan{mark}.png"] = plan_picture(event, table, course, say.reader)
        lists = [lists_of(before, runner)]
        files[f"lists{mark}.html"] = as_html(lists, event.name, size).encode()
        files[f"lists{mark}.pdf"] = pdf(lists, size)
    if moves.visits:
        files["meetings.csv"] = meetings_csv(before, runners, moves).encode("utf-8-sig")
    briefs = briefs_of(before, moves)
    for name, brief in zip(file_names(briefs), briefs, strict=True):
        files[f"{name}.html"] = as_html([brief], event.name, size).encode()
        files[f"{name}.pdf"] = pdf([brief], size)
    people = [p.id for p in event.people if event.parts_of(p.id)]
    for person in people:
        own = Say(reader_in(event, person), before.at)
        found = appointments_of(before, person, own)
        if found:
            files[f"calendar-{person}.ics"] = calendar(event, found, before.at)
        files[f"sheet-{person}.html"] = crew_sheets(before, [person], event.name, moves, size).encode()
        files[f"sheet-{person}.pdf"] = crew_pdf(before, [person], moves, size)
    files["crew-sheets.html"] = crew_sheets(before, people, event.name, moves, size).encode()
    files["crew-sheets.pdf"] = crew_pdf(before, people, moves, size)
    return files


def _write(path: Path, content: bytes, language: str) -> None:
    try:
        path.parent.mkdir(parents=True, exist_ok=True)
        path.write_bytes(content)
    except OSError as error:
        why = error.strerror or type(error).__name__
        raise Failed(sentence(language, "cli-not-written", file=str(path), why=why), language) from error


def _refuse_broken(moves: CrewPlan, language: str) -> None:
    if moves.broken:
        raise Failed(sentence(language, "cli-breaks-rules", count=len(moves.broken)), language)


@click.command()
@click.argument("table", required=False)
@click.option(
    "--schema", is_flag=True, help="Print the JSON Schema of the whole file instead, for an editor."
)
def keys(table: str | None, *, schema: bool) -> None:
    """List every table and key of an event file: meaning, form, what holds without it, an example.

    With a TABLE (points, points.crew, …) only that one and those inside it.
    """
    if schema:
        click.echo(json.dumps(json_schema(), indent=2, ensure_ascii=False))
        return
    shown = TABLES if table is None else tables_named(table)
    if not shown:
        raise Failed(f"there is no table '{table}'. {nearest_table(table or '')}")
    for one in shown:
        click.echo(f"{one.head}\n  {one.means}")
        for k in key_help(one):
            click.echo(f"\n  {k.name}: {k.means}")
            form = f"{k.form}; without it {k.default}" if k.default else k.form
            click.echo(f"      {form}\n      {k.example}")
        click.echo("")


COMMANDS = (plan, keys)
