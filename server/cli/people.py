"""Subcommands about what lets people and machines in, and about deletion; invitations are in `inviting`."""

from __future__ import annotations

from datetime import UTC, datetime

import click

from bot.channels.base import CHANNELS
from bot.channels.installed import channels_of
from bot.hooks import TEXT_PATH, TEXT_SCOPE
from server.api import auth
from server.api.answer_links import is_answer
from server.cli.common import CliContext, Failed, base_url, journal, known, run, stored_event, the_event
from server.cli.forgetting import without_person
from server.journal import Journal


@click.command()
@click.argument("name")
@click.option("--person", help="A token that acts for this person (id).")
@click.option("--runner", help="A token that may only report this runner (id): for a tracker.")
@click.option(
    "--text", help="A token for one device that sends short texts (SMS, satellite) as this person (id)."
)
@click.option("--channel", help="A token for a channel's own process, such as telegram.")
@click.option("--metrics", is_flag=True, help="A token that may only read /metrics.")
@click.option("--event", help="In which event (default: the only one).")
@click.pass_obj
def token(
    context: CliContext,
    name: str,
    person: str | None,
    runner: str | None,
    text: str | None,
    channel: str | None,
    metrics: bool,
    event: str | None,
) -> None:
    """Make a token for a device called NAME; give exactly one of --person, --runner, --text, --channel, --metrics.

    It is shown once and stored hashed.
    """
    given = [x for x in (person, runner, text, channel, metrics or None) if x]
    if len(given) != 1:
        raise click.UsageError("Give exactly one of --person, --runner, --text, --channel, --metrics.")
    if channel and channel not in CHANNELS:
        raise Failed(
            f"--channel: no channel is called '{channel}'. There are: {', '.join(sorted(CHANNELS))}."
        )

    async def work() -> None:
        async with journal(context.settings) as opened:
            scope, acts_for = auth.METRICS, None
            if channel:
                scope = auth.channel_scope(channel)
            elif not metrics:
                scope, acts_for = await _scope(opened, person, runner, text, event)
            secret = await opened.issue_token(acts_for, name, [scope], datetime.now(UTC))
            click.echo(f"token: {secret}")
            base = base_url(context.settings)
            if runner:
                click.echo(f"a tracker that can only GET: {base}/v1/report?key={secret}&lat=…&lon=…&t=…")
            if text:
                _show_text_gateway(f"{base}{TEXT_PATH}", secret, on="text" in channels_of(context.settings))

    run(work())


def _show_text_gateway(url: str, secret: str, *, on: bool) -> None:
    click.echo(f'the gateway POSTs {{"text": "…"}} to {url} with \'Authorization: Bearer\' and the token;')
    click.echo(f"one that can't set a header: {url}?key={secret}")
    if not on:
        click.echo("note: this server takes no short texts yet. Set STILEPOST_TEXT_GATEWAY=true.", err=True)


async def _scope(
    opened: Journal, person: str | None, runner: str | None, text: str | None, event: str | None
) -> tuple[str, str | None]:
    event_id = await the_event(opened, event)
    found = await stored_event(opened, event_id)
    if runner:
        known("runner", runner, [r.id for r in found.runners])
        return auth.report_scope(event_id, runner), found.runner(runner).person
    known("person", person or text or "", [p.id for p in found.people])
    return (auth.PERSON, person) if person else (TEXT_SCOPE, text)


@click.command()
@click.option("--person", help="Whose tokens (default: all).")
@click.option("--revoke", help="Withdraw the token of this id.")
@click.pass_obj
def tokens(context: CliContext, person: str | None, revoke: str | None) -> None:
    """List tokens that hold, without their secrets; withdraw one with --revoke ID. Links in mails are left out."""

    async def work() -> None:
        async with journal(context.settings) as opened:
            now = datetime.now(UTC)
            if revoke and not await opened.revoke_token(revoke, now):
                raise Failed(f"there is no token '{revoke}' that holds. `stilepost tokens` lists them.")
            for t in await opened.tokens(person):
                if is_answer(t) or (t.expires_at is not None and t.expires_at <= now):
                    continue
                who = t.person or "-"
                click.echo(
                    f"{t.id}  {who}  {t.device}  {' '.join(sorted(t.scopes))}  {t.created_at:%Y-%m-%d}"
                )

    run(work())


@click.command()
@click.option("--person", help="Blank everything of and by this person, in every event.")
@click.option("--event", help="Blank everything personal in this event.")
@click.option("--yes", is_flag=True, help="Do it without asking.")
@click.pass_obj
def blank(context: CliContext, person: str | None, event: str | None, yes: bool) -> None:
    """Delete personal data: positions, words, pictures and addresses are blanked in place.

    Times and points stay, so that the plan can still be compared with what happened. While an alarm is open
    it is refused: it waits for stand-down. Backups made before still hold the data.
    """
    if (person is None) == (event is None):
        raise click.UsageError("Give one of --person, --event.")
    whose = f"person '{person}'" if person else f"event '{event}'"
    if not yes and not click.confirm(f"Blank the data of {whose}? This can't be undone.", default=False):
        raise Failed("nothing was blanked.")

    async def work() -> None:
        async with journal(context.settings) as opened:
            now = datetime.now(UTC)
            if person is not None:
                gone = person
                done = await opened.blank_person(person, now, lambda text: without_person(text, gone))
            else:
                done = await opened.blank_event(event or "", now)
            click.echo(
                f"{whose}: blanked {done.entries} reports, {done.notices} notices, {done.deliveries} messages, "
                f"{done.updates} updates, {done.pictures} pictures."
            )
            for left in done.texts_left:
                click.echo(f"still named in the file of {left.event}, version {left.version}.")

    run(work())


COMMANDS = (token, tokens, blank)
