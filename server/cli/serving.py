"""Subcommands that run the server, play the demo, and describe both."""

from __future__ import annotations

import asyncio
import contextlib
import json
import signal
import tempfile
import urllib.error
import urllib.request
from collections.abc import Awaitable, Callable
from datetime import UTC, datetime, timedelta
from pathlib import Path

import click
import structlog
from aiohttp import web

from bot.channels.installed import channels_of, here
from bot.channels.push import new_key, public_key
from bot.starting import channels_at_work
from server.api import auth
from server.app import Options, make_app
from server.cli.common import CliContext, Failed, base_url, journal, known, read_event, run
from server.cli.events import EVENT_FILE
from server.cli.running import listening
from server.doors import Door
from server.journal import Journal
from server.log import AccessLog
from server.log import set_up as log_at
from server.settings import Settings, table

log = structlog.get_logger("serve")

PORT = click.IntRange(0, 65535)
"""Ports there are; 0 = any free one."""

HALF_A_YEAR = timedelta(days=183)


@click.command()
@click.option("--host", help="Listen here instead of the settings' host.")
@click.option("--port", type=PORT, help="Listen on this port instead of the settings'.")
@click.pass_obj
def serve(context: CliContext, host: str | None, port: int | None) -> None:
    """Run the server: API, pages, watch and, where settings give a token or a mail server, the channels."""
    settings = context.settings

    async def work() -> None:
        async with journal(settings) as opened:
            public = public_key(key) if (key := await push_key(settings, opened)) else ""
            options = Options(channels=channels_served(settings), push_key=public)
            app = make_app(settings, opened, options=options)

            await serve_until_told(
                app, host or settings.host, settings.port if port is None else port, settings, opened
            )

    run(work())


def channels_served(settings: Settings) -> frozenset[str]:
    """Those that hand over what waited while we were away."""
    return channels_of(settings) & {"telegram"}


async def push_key(settings: Settings, opened: Journal) -> str:
    """The private key by which push services know this installation, made once and kept; '' where it sends no push."""
    return await opened.secret("push key", new_key) if settings.push_contact else ""


async def serve_until_told(
    app: web.Application,
    host: str,
    port: int,
    settings: Settings,
    opened: Journal,
    ready: Callable[[str], Awaitable[None]] | None = None,
) -> None:
    """Serve until SIGINT or SIGTERM, the channels beside it; requests and sends under way are let finish. `ready` hears
    this server's own address once it listens."""

    async def token(channel: str) -> str:
        now = datetime.now(UTC)
        scope = [auth.channel_scope(channel), auth.server_scope(await opened.server())]
        return await opened.issue_token(None, f"{channel}, in this process", scope, now, now + HALF_A_YEAR)

    runner = web.AppRunner(
        app, access_log_class=AccessLog, shutdown_timeout=settings.shutdown_seconds, handle_signals=False
    )
    await runner.setup()
    try:
        site = Door(runner, host, port, most=settings.connections_max, idle_s=settings.idle_seconds)
        try:
            await site.start()
        except OSError as error:
            raise Failed(
                f"can't listen on {host}:{port} ({error.strerror}). Is another server running there? "
                "Choose another with --port."
            ) from error
        for address in runner.addresses:
            log.info("listening", host=address[0], port=address[1])
        own = _loopback(host, runner)
        with listening(settings.database, own):
            async with channels_at_work(here(settings, await push_key(settings, opened)), own, token):
                if ready is not None:
                    await ready(own)
                await until_told()
                log.info("stopping")
        await site.close()
    finally:
        await runner.cleanup()


def _loopback(host: str, runner: web.AppRunner) -> str:
    """Where this process reaches itself: on loopback if it listens on every address."""
    port = runner.addresses[0][1]
    if host in ("0.0.0.0", "::", ""):  # noqa: S104 - compared with, not bound to
        host = "127.0.0.1"
    return f"http://[{host}]:{port}" if ":" in host else f"http://{host}:{port}"


async def until_told() -> None:
    """Return at SIGINT or SIGTERM."""
    told = asyncio.Event()
    loop = asyncio.get_running_loop()
    for number in (signal.SIGINT, signal.SIGTERM):
        with contextlib.suppress(NotImplementedError):  # Windows has no signal handlers in a loop
            loop.add_signal_handler(number, told.set)
    await told.wait()


@click.command(context_settings={"ignore_unknown_options": True})
@click.option("--speed", default=1.0, show_default=True, help="How many times faster than two minutes.")
@click.option(
    "--port", type=PORT, default=8437, show_default=True, help="Where the page is; 0 = any free port."
)
@click.option("--keep/--no-keep", default=None, help="Keep the page up at the end (default: in a terminal).")
def demo(speed: float, port: int, keep: bool | None) -> None:
    """Play an invented 100-mile night in about two minutes, with every message as its person gets it."""
    from demo_event.play import demo as play  # its machinery is needed by nobody else

    raise SystemExit(play(speed=speed, port=port, keep=keep))


@click.command()
@EVENT_FILE
@click.option(
    "--slower",
    type=click.FloatRange(0.5, 3.0),
    default=1.0,
    show_default=True,
    help="Her times against the plan's: 1.15 = 15% slower.",
)
@click.option(
    "--stops-after", metavar="POINT", help="Nothing is heard of her after this point: play the alarm."
)
@click.option("--speed", default=1.0, show_default=True, help="How many times faster than two minutes.")
@click.option(
    "--port", type=PORT, default=8437, show_default=True, help="Where the page is; 0 = any free port."
)
@click.option("--keep/--no-keep", default=None, help="Keep the page up at the end (default: in a terminal).")
def rehearse(
    file: Path, slower: float, stops_after: str | None, speed: float, port: int, keep: bool | None
) -> None:
    """Play your own race from an event FILE: what everybody would be told, and when, if she runs as planned.

    On a stepped clock, in a database of its own; nobody is sent anything. The page can be watched meanwhile.
    """
    from demo_event.play import play_script
    from demo_event.rehearse import script

    found = read_event(file)
    if stops_after is not None:
        known("point", stops_after, sorted({p.id for c in found.built.event.courses for p in c.points}))
    raise SystemExit(play_script(script(found.text, found.files, slower, stops_after), speed, port, keep))


@click.command("try")
@click.argument("file", type=click.Path(path_type=Path, exists=True, dir_okay=False))
@click.option(
    "--keep",
    type=click.Path(path_type=Path, file_okay=False),
    help="A folder where the story's copies stay, so that it is not played again the next time. Delete it when the program "
    "or the story has changed.",
)
def try_file(file: Path, keep: Path | None) -> None:
    """Say each line of a FILE to a fresh copy of the demo's story, and print what came of it, a line of JSON each.

    A line is {"as": "ana", "at": "Sat 16:00", "say": "in at mill 1557"}; turns as a list, with {"press": label} or
    {"km": place on the course} among them; "lang": the language that person reads; "event": another folder with
    event.toml, its routes and a story.toml. The answer is {"reply", "buttons", "entries", "notices"}, for turns a list of
    these. How far it is is said on stderr.
    """
    from demo_event.play import StoryError
    from demo_event.trying import read_lines, try_lines

    async def work() -> None:
        with tempfile.TemporaryDirectory() as folder:
            await try_lines(
                lines,
                Path(folder),
                lambda came: click.echo(json.dumps(came, ensure_ascii=False)),
                keep=keep,
                progress=lambda said: click.echo(said, err=True),
            )

    log_at("error")
    try:
        lines = read_lines(file.read_text("utf-8"), file.parent)
        run(work())
    except StoryError as error:
        raise Failed(str(error)) from error


@click.command()
@click.option(
    "--url", help="The server (default: the one that runs on the database, else where the settings say)."
)
@click.pass_obj
def health(context: CliContext, url: str | None) -> None:
    """Ask a running server how it is; exit code 1 if it is not well or does not answer."""
    base = url or base_url(context.settings.model_copy(update={"public_url": ""}))
    if not base.startswith(("http://", "https://")):
        raise Failed(f"--url: '{base}' is no web address. Give one that begins with http:// or https://.")
    try:
        with urllib.request.urlopen(base.rstrip("/") + "/health", timeout=10) as reply:  # noqa: S310 - checked
            body = json.load(reply)
    except urllib.error.HTTPError as error:
        body = json.loads(error.read() or b"{}")
    except (urllib.error.URLError, OSError, ValueError) as error:
        raise Failed(f"{base} does not answer ({error}). Start it with `stilepost serve`.") from error
    for name, value in body.get("data", {}).items():
        click.echo(f"{name.replace('_', ' ')}: {value}")
    if not body.get("ok"):
        raise Failed("the server is not well.")


@click.command()
def openapi() -> None:
    """Print the OpenAPI description of the API."""
    from server.api.openapi import document

    click.echo(json.dumps(document(), indent=2))


@click.command()
def settings() -> None:
    """List every setting: its environment variable, type, default and what it does."""
    for row in table():
        click.echo(f"{row.env} ({row.kind}, default {row.default or 'empty'})\n    {row.says}")


COMMANDS = (serve, demo, rehearse, try_file, health, openapi, settings)
