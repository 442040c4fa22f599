"""Subcommands that ask people in: an invitation as code, start link and QR picture; the list of them; withdrawal."""

from __future__ import annotations

import io
import json
import sys
import urllib.error
import urllib.request
from dataclasses import dataclass
from datetime import UTC, datetime, timedelta
from pathlib import Path
from zoneinfo import ZoneInfo

import click
import segno

from bot.channels.addresses import WrongSettingsError
from bot.channels.base import make_channel
from bot.channels.installed import channel_settings, channels_of
from bot.channels.joining import qr_png, start_link
from server.cli.common import CliContext, Failed, base_url, journal, known, run, stored_event, the_event
from server.event.model import Event
from server.journal import Invitation
from server.settings import Settings, SettingsError

ASKED_FOR_S = "5"
LOOKS_FOR_S = 2.0
"""How long the server on this machine is looked for (own choice)."""


@dataclass(frozen=True, slots=True)
class Links:
    """The links that hand a code over: `telegram` empty where the bot's user name is not known, `note` why."""

    telegram: str
    web: str
    note: str = ""

    @property
    def best(self) -> str:
        """The one for the picture: people stay in the chat they know."""
        return self.telegram or self.web


@click.command()
@click.argument("person")
@click.option("--event", help="In which event (default: the only one).")
@click.option(
    "--hours",
    type=click.IntRange(1, 24 * 366),
    default=14 * 24,
    show_default=True,
    help="How long the code is good for.",
)
@click.option(
    "--qr",
    "picture",
    type=click.Path(path_type=Path, dir_okay=False),
    help="Also write the link as a QR picture (PNG) to this file.",
)
@click.option(
    "--url", "address", help="Where the page is, if the server was started on another port or host."
)
@click.option("--web", is_flag=True, help="QR of the web page's link, though there is a bot.")
@click.option("--blocks/--no-blocks", default=None, help="Draw the QR here (default: in a terminal).")
@click.pass_obj
def invite(
    context: CliContext,
    person: str,
    event: str | None,
    hours: int,
    picture: Path | None,
    address: str | None,
    web: bool,
    blocks: bool | None,
) -> None:
    """Make a one-use code that binds a chat or a browser to PERSON (by id): as code, link and QR.

    A new code makes an earlier unused one of theirs worthless. It is shown once and stored hashed;
    `stilepost invitations` lists who was asked and has not come.
    """
    if picture is not None and not picture.parent.is_dir():
        # Before a code is made: making one ends the one before it.
        raise Failed(f"--qr: there is no folder {picture.parent}. Make it, or name another.")
    if address is not None and not address.startswith(("http://", "https://")):
        raise Failed(f"--url: '{address}' is no web address. Give one that begins with http:// or https://.")
    site = (address or base_url(context.settings)).rstrip("/")

    async def work() -> None:
        async with journal(context.settings) as opened:
            event_id = await the_event(opened, event)
            found = await stored_event(opened, event_id)
            known("person", person, [p.id for p in found.people])
            username, note = await _username(context.settings)
            now = datetime.now(UTC)
            code = await opened.invite(person, event_id, "command line", now, timedelta(hours=hours))
            made = next(i for i in await opened.invitations(event_id) if i.person == person)
            telegram = start_link(username, code) if username else ""
            # Behind the '#': what stands there is never sent to a server, so no log on the way keeps it.
            links = Links(telegram, f"{site}/join#{code}", note)
            _show(found, made, code, links)
            if address is None and not context.settings.public_url:
                _doubt_own(site)
            shown: str = links.web if web else links.best
            if sys.stdout.isatty() if blocks is None else blocks:
                click.echo(qr_blocks(shown))
            if picture is not None:
                _write(picture, qr_png(shown))

    run(work())


def _doubt_own(site: str) -> None:
    """A link to this machine: that it opens nowhere else; and where nothing answers there, which address to give."""
    click.echo("note: without STILEPOST_PUBLIC_URL the link opens on this machine only.", err=True)
    if not answers_at(site):
        click.echo(
            f"note: no Stilepost answers at {site} now. If it runs on another port (`stilepost serve --port 8080`), "
            "invite again with --url http://127.0.0.1:8080; each new code ends the one before.",
            err=True,
        )


def answers_at(site: str) -> bool:
    """Whether a server of ours is there, well or not."""
    try:
        with urllib.request.urlopen(f"{site}/health", timeout=LOOKS_FOR_S) as reply:  # noqa: S310 - our own address
            return "data" in json.load(reply)
    except urllib.error.HTTPError as error:
        return error.headers.get_content_type() == "application/json"
    except (urllib.error.URLError, OSError, ValueError):
        return False


async def _username(settings: Settings) -> tuple[str, str]:
    """The bot's user name, from the settings or from Telegram; where there is none, why."""
    if settings.telegram_username:
        name = settings.telegram_username.removeprefix("@")
        try:
            start_link(name, "x")
        except ValueError as error:
            raise SettingsError(
                f"setting telegram_username: {error}. Write it as Telegram shows it."
            ) from None
        return name, ""
    its = channel_settings(settings).get("telegram")
    if its is None:
        apart = "telegram" in channels_of(settings)
        return "", "set STILEPOST_TELEGRAM_USERNAME for a start link" if apart else ""
    # Only here, so that a server without Telegram does not need its library.
    from bot.channels.telegram import Telegram

    bot = make_channel("telegram", {**its, "timeout_s": ASKED_FOR_S})
    assert isinstance(bot, Telegram)
    try:
        return await bot.ask_username(), ""
    except (ConnectionError, WrongSettingsError) as error:
        return "", f"no start link ({error}); the code works all the same when it is written to the bot"
    finally:
        await bot.close()


def _show(event: Event, made: Invitation, code: str, links: Links) -> None:
    parts = ", ".join(sorted({p.kind.value for p in event.parts_of(made.person)}))
    click.echo(f"{made.person_name} ({parts}) in {event.name}")
    click.echo(f"code: {code}")
    if links.telegram:
        click.echo(f"telegram: {links.telegram}")
    click.echo(f"link: {links.web}")
    click.echo(
        f"good once, until {_at(made.expires_at, event)}; withdraw: stilepost invitations --revoke {made.id}"
    )
    if links.note:
        click.echo(f"note: {links.note}.", err=True)


def _at(moment: datetime, event: Event) -> str:
    return f"{moment.astimezone(ZoneInfo(event.time_zone)):%a %d %b %Y %H:%M} ({event.time_zone})"


def qr_blocks(link: str) -> str:
    out = io.StringIO()
    segno.make(link, error="m", micro=False).terminal(out=out, compact=True)
    return out.getvalue()


def _write(picture: Path, png: bytes) -> None:
    try:
        picture.write_bytes(png)
    except OSError as error:
        raise Failed(
            f"--qr: {picture} can't be written ({error.strerror}). The code above holds; the picture is missing."
        ) from error
    click.echo(f"picture: {picture}")


@click.command()
@click.option("--event", help="In which event (default: the only one).")
@click.option("--revoke", help="Withdraw the unused invitation of this id.")
@click.pass_obj
def invitations(context: CliContext, event: str | None, revoke: str | None) -> None:
    """List who was invited and has come, without the codes; withdraw an unused one with --revoke ID."""

    async def work() -> None:
        async with journal(context.settings) as opened:
            now = datetime.now(UTC)
            if revoke and not await opened.revoke_invitation(revoke, now):
                raise Failed(
                    f"there is no unused invitation '{revoke}'. `stilepost invitations` lists them; "
                    "`stilepost tokens --revoke` withdraws what a used one has opened."
                )
            event_id = await the_event(opened, event)
            found = await stored_event(opened, event_id)
            asked = await opened.invitations(event_id)
            for i in asked:
                click.echo(f"{i.id}  {i.person}  {_state(i, now)}  until {_at(i.expires_at, found)}")
            never = [p.id for p in found.people if p.id not in {i.person for i in asked}]
            if never:
                click.echo(f"never invited: {', '.join(never)}")

    run(work())


def _state(i: Invitation, now: datetime) -> str:
    if i.used_at is not None:
        return "taken"
    if i.revoked_at is not None:
        return "withdrawn"
    return "waits" if now < i.expires_at else "expired"


COMMANDS = (invite, invitations)
