"""`stilepost new`: a race set up in the browser, on this machine or on the server that runs on this database."""

from __future__ import annotations

import os
import sys
import webbrowser
from datetime import UTC, datetime
from pathlib import Path

import click

from server.app import Options, make_app
from server.cli.asking import ask_all
from server.cli.common import CliContext, Failed, base_url, journal, run
from server.cli.inviting import answers_at, qr_blocks
from server.cli.running import written
from server.cli.serving import PORT, channels_served, serve_until_told
from server.drafting.document import UnusualError
from server.journal import Journal
from server.pages.setup.door import make_link
from server.sentences import sentence
from server.settings import Settings

LOOPBACK = "127.0.0.1"


@click.command()
@click.argument("folder", default="race", type=click.Path(path_type=Path, file_okay=False))
@click.option("--port", type=PORT, help="Listen on this port instead of the settings'.")
@click.option(
    "--browser/--no-browser", default=None, help="Open a browser (default: where there is a display)."
)
@click.option(
    "--terminal",
    is_flag=True,
    help="Ask in this terminal, without a page (default: where there is no display).",
)
@click.pass_obj
def new(context: CliContext, folder: Path, port: int | None, browser: bool | None, terminal: bool) -> None:
    """Set a race up in the browser, step by step, by touch: from a GPX file to an invitation a person.

    The draft is FOLDER/event.toml with its route, all along. Prints a link that opens the set-up once, in one browser. Where
    a server runs on this database the link is to that one, else one is started here, for this machine alone. Without a
    display, or with --terminal, the same is asked here; `stilepost load FOLDER/event.toml` then stores it.
    """
    settings = context.settings
    folder = folder.resolve()
    if folder.exists() and not os.access(folder, os.W_OK):
        raise Failed(sentence(settings.language, "new-no-folder", folder=str(folder)), settings.language)

    there = written(settings.database)
    served = bool(there) and answers_at(there)
    if terminal or (not (served or _display() or browser is not None) and sys.stdin.isatty()):
        try:
            ask_all(folder, settings.language)
        except UnusualError as error:
            language, file = settings.language, str(folder / "event.toml")
            why = sentence(language, "new-unusual", file=file, why=error.what.in_language(language))
            raise Failed(why, language) from error
        return

    async def work() -> None:
        async with journal(settings) as opened:
            if served:
                await _tell(opened, settings, base_url(settings), folder, browser)
                return
            here = settings.model_copy(update={"host": LOOPBACK})
            app = make_app(here, opened, options=Options(channels=channels_served(here)))

            async def ready(own: str) -> None:
                await _tell(opened, here, own, folder, browser)
                click.echo(sentence(settings.language, "new-stop"))

            await serve_until_told(app, LOOPBACK, here.port if port is None else port, here, opened, ready)

    run(work())


async def _tell(opened: Journal, settings: Settings, site: str, folder: Path, browser: bool | None) -> None:
    """Print the link, as QR too where a telephone can follow it, and open it where somebody sits before a screen."""
    link = await make_link(opened, site, folder, datetime.now(UTC))
    click.echo(sentence(settings.language, "new-link", folder=str(folder)))
    click.echo(link)
    public = bool(settings.public_url) and link.startswith(settings.public_url.rstrip("/"))
    if public and sys.stdout.isatty():
        click.echo(qr_blocks(link))
    if browser if browser is not None else _display() and not public:
        webbrowser.open(link)


def _display() -> bool:
    """Whether somebody sits before a screen of this machine."""
    return sys.platform in ("darwin", "win32") or any(
        os.environ.get(v) for v in ("DISPLAY", "WAYLAND_DISPLAY")
    )


COMMANDS = (new,)
