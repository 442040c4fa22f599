"""`stilepost`: the group of subcommands and the options they share."""

from __future__ import annotations

import os
import sys
from collections.abc import Sequence
from pathlib import Path

import click

from server import log
from server.cli import (
    afterwards,
    bots,
    changing,
    data,
    events,
    inviting,
    learning,
    new,
    passages,
    people,
    planning,
    ready,
    serving,
    stop_log,
)
from server.cli.common import CliContext, Failed
from server.settings import SettingsError, read_settings


@click.group(context_settings={"help_option_names": ["-h", "--help"], "max_content_width": 100})
@click.option(
    "--settings",
    "file",
    type=click.Path(path_type=Path, dir_okay=False),
    help="A TOML file of settings; the environment (STILEPOST_…) goes before it.",
)
@click.option("--database", help="Use this database instead of the one in the settings.")
@click.version_option(package_name="stilepost")
@click.pass_context
def stilepost(context: click.Context, file: Path | None, database: str | None) -> None:
    """Keeps an ultramarathon runner's crew in the right place at the right time.

    Begin with `stilepost demo`, then `stilepost new` for a race of your own, in the browser; or copy
    demo_event/event.toml, `stilepost check` it, `stilepost load` it, `stilepost serve`, and `stilepost invite` each
    person. An aid to a crew, not a rescue service.
    """
    try:
        settings = read_settings(os.environ, file)
    except SettingsError as error:
        raise Failed(str(error)) from error
    if database:
        settings = settings.model_copy(update={"database": database})
    log.set_up(settings.log_level, settings.log_json)
    context.obj = CliContext(settings)


for room in (
    new,
    events,
    passages,
    planning,
    changing,
    inviting,
    people,
    serving,
    bots,
    data,
    afterwards,
    stop_log,
    learning,
    ready,
):
    for command in room.COMMANDS:
        stilepost.add_command(command)


def main(arguments: Sequence[str] | None = None) -> None:
    """The console script."""
    try:
        stilepost.main(args=arguments, prog_name="stilepost")
    except BrokenPipeError:  # `stilepost plan … | head`
        sys.stderr.close()
        sys.exit(1)
