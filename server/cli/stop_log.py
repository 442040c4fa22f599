"""`stilepost log`: what was written on paper at the stops, put into the journal afterwards; and the form to write it on."""

from __future__ import annotations

import csv
import hashlib
import io
from dataclasses import dataclass
from datetime import UTC, datetime
from pathlib import Path
from zoneinfo import ZoneInfo

import click

from server.api.snapshot import Picture, Pictures
from server.cli.common import CliContext, Failed, journal, known, read_by_all, run, the_event
from server.conversation.telling.reader import reader_in
from server.conversation.understanding.logged import logged_in
from server.event.model import Event
from server.facts.entry import Entry, Kind, Source
from server.facts.stop_log import Logged
from server.journal import Status
from server.sentences import sentence

COLUMNS = ("time", "point", "log")
_FORMS = ("%Y-%m-%d %H:%M", "%Y-%m-%dT%H:%M", "%d.%m.%Y %H:%M")


@click.command("log")
@click.argument("file", required=False, type=click.Path(path_type=Path, exists=True, dir_okay=False))
@click.option("--event", help="In which event (default: the only one).")
@click.option("--runner", help="Whose log (default: the only runner's).")
@click.option("--by", help="Who wrote it on paper, by id (default: the runner).")
@click.pass_obj
def stop_log(
    context: CliContext, file: Path | None, event: str | None, runner: str | None, by: str | None
) -> None:
    """Put a log kept on paper into the journal: a CSV FILE with the columns time, point, log, a line a stop, its log in
    words: 'drank 500; ate half a banana; no ibuprofen; not peed; feet good'. Read in again, a line counts once.

    Without a FILE the form is printed, with the stops she was reported at.
    """

    text = None if file is None else file.read_bytes().decode("utf-8-sig", errors="replace")

    async def work() -> None:
        async with journal(context.settings) as opened:
            name = await the_event(opened, event)
            # A race that was rehearsed may lie ahead: what came in last is past then.
            now = max([datetime.now(UTC), *(e.received_at for e in await opened.entries(name))])
            picture = await Pictures(opened).take(name, now)
            ids = [r.id for r in picture.event.runners]
            if runner is None and len(ids) > 1:
                language = await read_by_all(opened, name)
                raise Failed(sentence(language, "cli-log-whose", known=", ".join(ids)), language)
            whose = runner or ids[0]
            known("runner", whose, ids)
            who = by or picture.event.runner(whose).person
            known("person", who, [p.id for p in picture.event.people])
            if text is None:
                click.echo(_form(picture, whose), nl=False)
                return
            language = reader_in(picture.event, who).language
            rows, wrong = _rows(text, picture, whose, now)
            if wrong:
                said = [f"{file}: {sentence(language, w.key, **w.values)}" for w in wrong]
                raise Failed(
                    "\n".join((*said, sentence(language, "cli-log-none", count=len(wrong)))), language
                )
            entries = [_entry(r, picture.event, whose, who, now) for r in rows]
            done = await opened.append_all(entries)
            new = sum(d.status is Status.NOTED for d in done)
            click.echo(sentence(language, "cli-log-noted", count=new, before=len(done) - new))

    run(work())


class _WrongLineError(Exception):
    """A line that can't be read, as the sentence that says so and its values."""

    def __init__(self, key: str, **values: str) -> None:
        super().__init__(key)
        self.key, self.values = key, values


@dataclass(frozen=True, slots=True)
class _Row:
    """A line of the form."""

    at: datetime
    point: str
    words: str
    logged: tuple[Logged, ...]


def _form(picture: Picture, runner: str) -> str:
    out, zone = io.StringIO(), ZoneInfo(picture.event.time_zone)
    write = csv.writer(out, lineterminator="\n")
    write.writerow(COLUMNS)
    for t in picture.state.runner(runner).times:
        at = t.arrived or t.left
        if at is not None:
            write.writerow((at.at.astimezone(zone).strftime(_FORMS[0]), t.point, ""))
    return out.getvalue()


def _rows(
    text: str, picture: Picture, runner: str, now: datetime
) -> tuple[list[_Row], list[_WrongLineError]]:
    """The lines with something in them, and everything in them that can't be read."""
    first = text.partition("\n")[0]
    read = csv.DictReader(io.StringIO(text), delimiter=";" if first.count(";") > first.count(",") else ",")
    missing = [c for c in COLUMNS if c not in (read.fieldnames or ())]
    if missing:
        return [], [_WrongLineError("cli-log-columns", missing=", ".join(missing))]
    found: list[_Row] = []
    wrong: list[_WrongLineError] = []
    for row in read:
        cells = {name: (row[name] or "").strip() for name in COLUMNS}
        # What stands behind a comma that nobody quoted is of the log still.
        words = ", ".join([cells["log"], *(c.strip() for c in row.get(None) or [] if c.strip())])
        if not words:
            continue
        line = str(read.line_num)
        try:
            at = _moment(cells["time"], picture.event, line, now)
        except _WrongLineError as error:
            at = now
            wrong.append(error)
        try:
            point = _point(cells["point"], picture.event, runner, line)
        except _WrongLineError as error:
            point = ""
            wrong.append(error)
        logged, whole = logged_in(words, (picture.event.runner(runner).name,))
        if not whole:
            wrong.append(_WrongLineError("cli-log-words", line=line, words=words))
        found.append(_Row(at, point, words, logged))
    return found, wrong


def _moment(text: str, event: Event, line: str, now: datetime) -> datetime:
    for form in _FORMS:
        try:
            at = datetime.strptime(text, form).replace(tzinfo=ZoneInfo(event.time_zone))
        except ValueError:
            continue
        if at > now:
            raise _WrongLineError("cli-log-ahead", line=line, time=text)
        return at
    raise _WrongLineError("cli-log-time", line=line, time=text)


def _point(text: str, event: Event, runner: str, line: str) -> str:
    points = event.course_of(runner).points
    for p in points:
        if text.casefold() in (p.id.casefold(), p.name.casefold()):
            return p.id
    raise _WrongLineError("cli-log-point", line=line, point=text, known=", ".join(p.id for p in points))


def _entry(row: _Row, event: Event, runner: str, who: str, now: datetime) -> Entry:
    own = f"{runner} {row.at.isoformat()} {row.point} {row.words}"
    return Entry(
        id="",
        event=event.id,
        runner=runner,
        kind=Kind.LOG,
        seen_at=row.at,
        sent_at=row.at,
        received_at=now,
        by=who,
        source=Source.RUNNER if event.runner(runner).person == who else Source.CREW,
        sender=f"paper:{who}",
        key="log-" + hashlib.sha256(own.encode()).hexdigest()[:32],
        via="paper",
        point=row.point,
        words=row.words,
        logged=row.logged,
    )


COMMANDS = (stop_log,)
