"""Subcommands about people: invitations, tokens for devices and channels, deletion."""

from __future__ import annotations

from datetime import UTC, datetime, timedelta

import click

from server.api import auth
from server.api.building import build
from server.cli.common import Context, Failed, journal, run
from server.cli.forgetting import without_person
from server.event.model import Event
from server.journal import Journal


async def _the_event(opened: Journal, event: str | None) -> str:
    """The event named, or the only one there is."""
    stored = [v.event for v in await opened.list_events()]
    if event is None and len(stored) == 1:
        return stored[0]
    if event not in stored or event is None:
        listed = ", ".join(stored) or "none; `stilepost load event.toml` stores one"
        raise Failed(
            f"--event: {'name one' if event is None else f'there is no event {event!r}'}. Stored: {listed}."
        )
    return event


async def _event(opened: Journal, event_id: str) -> Event:
    stored = await opened.load_event(event_id)
    return build(stored.text, stored.files, version=stored.version).event


def _known(kind: str, value: str, there_are: list[str]) -> None:
    if value not in there_are:
        raise Failed(f"the event has no {kind} '{value}'. Use one of: {', '.join(there_are)}.")


@click.command()
@click.argument("person")
@click.option("--event", help="In which event (default: the only one).")
@click.option("--hours", default=14 * 24, show_default=True, help="How long the code is good for.")
@click.option("--qr", is_flag=True, help="Also print the link as a QR code.")
@click.pass_obj
def invite(context: Context, person: str, event: str | None, hours: int, qr: bool) -> None:
    """Make a one-use code that binds a chat or a browser to PERSON (by id).

    A new code makes an earlier unused one of theirs worthless. It is shown once and stored hashed.
    """

    async def work() -> None:
        async with journal(context.settings) as opened:
            event_id = await _the_event(opened, event)
            known = await _event(opened, event_id)
            _known("person", person, [p.id for p in known.people])
            now = datetime.now(UTC)
            code = await opened.invite(person, event_id, "command line", now, timedelta(hours=hours))
            _show_code(context, known, person, code, qr)

    run(work())


def _show_code(context: Context, event: Event, person: str, code: str, qr: bool) -> None:
    base = context.settings.public_url or f"http://{context.settings.host}:{context.settings.port}"
    # Behind the '#': what stands there is never sent to a server, so no log on the way keeps it.
    link = f"{base.rstrip('/')}/join#{code}"
    parts = ", ".join(sorted({p.kind.value for p in event.parts_of(person)}))
    click.echo(f"{event.person(person).name} ({parts}) in {event.name}")
    click.echo(f"code: {code}")
    click.echo(f"link: {link}")
    if qr:
        import segno

        segno.make(link).terminal(compact=True)


@click.command()
@click.argument("name")
@click.option("--person", help="A token that acts for this person (id).")
@click.option("--runner", help="A token that may only report this runner (id): for a tracker.")
@click.option("--channel", help="A token for a channel's own process, such as telegram.")
@click.option("--metrics", is_flag=True, help="A token that may only read /metrics.")
@click.option("--event", help="In which event (default: the only one).")
@click.pass_obj
def token(
    context: Context,
    name: str,
    person: str | None,
    runner: str | None,
    channel: str | None,
    metrics: bool,
    event: str | None,
) -> None:
    """Make a token for a device called NAME; give exactly one of --person, --runner, --channel, --metrics.

    It is shown once and stored hashed.
    """
    given = [x for x in (person, runner, channel, metrics or None) if x]
    if len(given) != 1:
        raise click.UsageError("Give exactly one of --person, --runner, --channel, --metrics.")

    async def work() -> None:
        async with journal(context.settings) as opened:
            scope, acts_for = auth.METRICS, None
            if channel:
                scope = auth.channel_scope(channel)
            elif person or runner:
                scope, acts_for = await _scope(opened, person, runner, event)
            secret = await opened.issue_token(acts_for, name, [scope], datetime.now(UTC))
            click.echo(f"token: {secret}")
            if runner:
                base = (
                    context.settings.public_url or f"http://{context.settings.host}:{context.settings.port}"
                )
                click.echo(
                    f"a tracker that can only GET: {base.rstrip('/')}/v1/report?key={secret}&lat=…&lon=…&t=…"
                )

    run(work())


async def _scope(
    opened: Journal, person: str | None, runner: str | None, event: str | None
) -> tuple[str, str | None]:
    event_id = await _the_event(opened, event)
    known = await _event(opened, event_id)
    if person:
        _known("person", person, [p.id for p in known.people])
        return auth.PERSON, person
    _known("runner", runner or "", [r.id for r in known.runners])
    return auth.report_scope(event_id, runner or ""), known.runner(runner or "").person


@click.command()
@click.option("--person", help="Whose tokens (default: all).")
@click.option("--revoke", help="Withdraw the token of this id.")
@click.pass_obj
def tokens(context: Context, person: str | None, revoke: str | None) -> None:
    """List tokens that hold, without their secrets; withdraw one with --revoke ID."""

    async def work() -> None:
        async with journal(context.settings) as opened:
            if revoke and not await opened.revoke_token(revoke, datetime.now(UTC)):
                raise Failed(f"there is no token '{revoke}' that holds. `stilepost tokens` lists them.")
            for t in await opened.tokens(person):
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
def blank(context: Context, person: str | None, event: str | None, yes: bool) -> None:
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


COMMANDS = (invite, token, tokens, blank)
