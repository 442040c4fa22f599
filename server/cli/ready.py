"""`stilepost ready`: her recordings against the course, what is missing and by when."""

from __future__ import annotations

from datetime import UTC, datetime
from pathlib import Path

import click

from server.cli.common import Failed, OnDisk, read_event
from server.cli.events import EVENT_FILE
from server.conversation.telling.reader import Reader
from server.conversation.telling.ready import say_ready
from server.conversation.telling.say import Say
from server.conversation.telling.sentences import sentence
from server.plan.ready import ready as ready_for
from server.plan.recordings import read_recording


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
        for line in ready_lines(found, each, say):
            click.echo(f"- {line}")


def ready_lines(found: OnDisk, runner: str, say: Say) -> tuple[str, ...]:
    """Of one runner; the recordings were read once by the check, so that all of them can be."""
    event = found.built.event
    names = [n for n in event.runner(runner).own_runs if n in found.files]
    recordings = [read_recording(found.files[n], n) for n in names]
    course = found.built.courses[event.runner(runner).course]
    against = ready_for(event, found.built.timetables[runner], course, recordings)
    return say_ready(say, against, len(recordings))


COMMANDS = (ready,)
