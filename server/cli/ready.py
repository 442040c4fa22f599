"""`stilepost ready`: her recordings against the course, what is missing and by when."""

from __future__ import annotations

from datetime import UTC, datetime
from pathlib import Path

import click

from server.cli.common import Failed, read_event
from server.cli.events import EVENT_FILE
from server.conversation.telling.reader import Reader
from server.conversation.telling.ready import ready_lines
from server.conversation.telling.say import Say
from server.sentences import sentence


@click.command()
@EVENT_FILE
@click.option("--runner", help="Only this runner, by id.")
def ready(file: Path, runner: str | None) -> None:
    """Hold a runner's recordings (own_runs of an event FILE) against the course: longest time on her feet, climb a km,
    steep descents, hours in the dark; what is missing, and by when. Common practice, no training plan.
    """
    found = read_event(file)
    event = found.built.event
    known = [r.id for r in event.runners]
    if runner is not None and runner not in known:
        what = sentence(found.language, "cli-no-runner", runner=runner, known=", ".join(known))
        raise Failed(what, found.language)
    say = Say(Reader(found.language, event.time_zone, event.time_zone), datetime.now(UTC))
    for each in known if runner is None else [runner]:
        if len(known) > 1:
            click.echo(event.runner(each).name)
        course = found.built.courses[event.runner(each).course]
        for line in ready_lines(say, event, found.built.timetables[each], course, found.files):
            click.echo(f"- {line}")


COMMANDS = (ready,)
