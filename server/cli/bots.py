"""The subcommand that runs one channel in a process of its own, against a server elsewhere."""

from __future__ import annotations

import asyncio
from collections.abc import Mapping
from pathlib import Path

import aiohttp
import click
import structlog

from bot.api_client import ApiError, UnreachableError
from bot.channels.installed import channel_settings
from bot.service_client import ServiceClient
from bot.starting import channels_at_work
from server.cli.common import CliContext, Failed, run
from server.cli.serving import until_told
from server.settings import Settings

log = structlog.get_logger("bot")

FIRST_S, LONGEST_S = 0.5, 15.0


@click.command()
@click.argument("channel", required=False)
@click.option("--server", help="The server's address instead of the settings' server_url.")
@click.option(
    "--token-file",
    type=click.Path(path_type=Path, dir_okay=False),
    help="A file with the channel's token instead of the settings' server_token.",
)
@click.pass_obj
def bot(context: CliContext, channel: str | None, server: str | None, token_file: Path | None) -> None:
    """Run one CHANNEL (telegram, email, webhook, text) apart from the server, such as on another machine.

    The server names it in STILEPOST_CHANNELS_APART and makes its token: `stilepost token NAME --channel CHANNEL`.
    While the server is away it waits and says so; what people write meanwhile stays at the channel's other
    side, what is owed at the server. Without CHANNEL it is the only one the settings give.
    """
    settings = context.settings
    name, its = _channel(settings, channel)
    url, token = _url(server or settings.server_url), _token(settings, token_file)
    run(_work(name, its, url, token))


async def _work(name: str, its: Mapping[str, str], url: str, token: str) -> None:
    async def known(_channel: str) -> str:
        return token

    told = asyncio.create_task(until_told())
    entering = asyncio.create_task(_let_in(name, url, token))
    try:
        await asyncio.wait((told, entering), return_when=asyncio.FIRST_COMPLETED)
        if entering.done():
            entering.result()
            async with channels_at_work({name: its}, url, known):
                await told
        log.info("stopping")
    finally:
        for task in (told, entering):
            task.cancel()
        await asyncio.gather(told, entering, return_exceptions=True)


async def _let_in(channel: str, url: str, token: str) -> None:
    """Return once the server has answered and takes the token; Failed if it refuses it."""
    wait_s = FIRST_S
    async with aiohttp.ClientSession() as session:
        service = ServiceClient(session, url, token)
        while True:
            try:
                # Gives back a lease that nobody holds: it changes nothing and wants the right token.
                await service.lease(channel, "nobody at all", 1.0, give_back=True)
                return
            except ApiError as error:
                if error.status < 500 and error.code != "too_many":
                    raise Failed(
                        f"{url} refuses the token ({error.what}). Make one there with "
                        f"`stilepost token NAME --channel {channel}`."
                    ) from None
            except UnreachableError:
                pass
            await asyncio.sleep(wait_s)
            wait_s = min(LONGEST_S, wait_s * 2)


def _channel(settings: Settings, wanted: str | None) -> tuple[str, Mapping[str, str]]:
    found = channel_settings(settings)
    if wanted is None and len(found) == 1:
        return next(iter(found.items()))
    if wanted is None or wanted not in found:
        which = "name the channel" if wanted is None else f"the settings do not give '{wanted}' what it needs"
        there_are = (
            ", ".join(found) or "none: set a bot token, a mail server or a secret; see `stilepost settings`"
        )
        raise Failed(f"{which}. The settings give: {there_are}.")
    return wanted, found[wanted]


def _url(url: str) -> str:
    if not url.startswith(("http://", "https://")):
        raise Failed(
            f"--server: '{url}' is no web address. Give the server's, such as https://crew.example.org, or set "
            "STILEPOST_SERVER_URL."
        )
    return url.rstrip("/")


def _token(settings: Settings, file: Path | None) -> str:
    if file is None:
        token = settings.server_token.get_secret_value()
    else:
        try:
            token = file.read_text(encoding="utf-8").strip()
        except (OSError, UnicodeDecodeError) as error:
            raise Failed(f"--token-file: {file} can't be read ({type(error).__name__}).") from error
    if not token:
        raise Failed(
            "the channel's token is missing: set STILEPOST_SERVER_TOKEN or give --token-file. On the command line "
            "anybody on the machine could read it."
        )
    return token


COMMANDS = (bot,)
