"""`stilepost change`: the plan changed during the race from a command line, by the same path as page and chat: what it is
for whom first, then it is asked, then it counts and each hears it."""

from __future__ import annotations

from dataclasses import replace
from datetime import UTC, datetime
from typing import Any

import click

from server.api import auth
from server.api.acting import ACTING
from server.api.ask import Ask, Inside, check_may
from server.api.envelope import ApiError
from server.api.models import Change
from server.api.moved_cut_off import Limit, limits, new_time
from server.api.replanning import change
from server.api.snapshot import Picture
from server.api.who_may import Call, May, may
from server.app import Options, make_parts
from server.cli.common import CliContext, Failed, base_url, journal, known, run, the_event
from server.cli.inviting import qr_blocks
from server.clock import SystemClock
from server.conversation.telling.answer import ChangeAnswer
from server.conversation.telling.reader import reader_in
from server.event.replan import What
from server.journal import Journal, TokenInfo
from server.sentences import sentence

UNDO = "undo"
_HERE = frozenset({auth.PERSON})


@click.command("change")
@click.argument("what", type=click.Choice([*(w.value.replace(" ", "-") for w in What), UNDO]))
@click.option("--as", "person", required=True, help="Who changes it (id): their part must allow it.")
@click.option("--event", help="In which event (default: the only one).")
@click.option("--meeting", help="The meeting it is about (id).")
@click.option("--runner", help="For whom (id; default: the only runner).")
@click.option("--point", help="Where she is met instead, or where one is added, or whose cut-off it is (id).")
@click.option("--crew", multiple=True, help="Who goes (id); once for each.")
@click.option("--car", help="In which car (id; default: their own).")
@click.option("--kit", multiple=True, help="A thing to bring; once for each.")
@click.option("--name", default="", help="Of somebody who is added.")
@click.option("--phone", default="", help="Their telephone number.")
@click.option("--drives", is_flag=True, help="They drive.")
@click.option("--start", help="Where a drive to the meeting begins (id).")
@click.option("--minutes", type=float, help="How long it takes; whoever says so stands by it.")
@click.option("--edge", type=click.Choice(["in", "out"]), help="Which cut-off, where a point has both.")
@click.option("--until", default="", help="The new time of a cut-off, such as 18:30.")
@click.option("--yes", is_flag=True, help="Change it without asking.")
@click.pass_obj
def change_plan(
    context: CliContext, /, what: str, person: str, event: str | None, *, yes: bool, **given: Any
) -> None:
    """Change the plan while the race is on; what it is for whom is shown first, and asked about.

    \b
    stilepost change who-goes --as ana --meeting mill-maren --crew jonas --car estate
    stilepost change move --as ana --meeting mill-maren --point quarry
    stilepost change skip --as ana --meeting mill-maren
    stilepost change person --as ana --name Per --drives --car van
    stilepost change cut-off --as olga --point mill --until 18:30
    stilepost change drive-time --as ana --meeting mill-maren --start hotel --minutes 40
    stilepost change undo --as ana
    stilepost change undo --as olga --point mill

    Everybody concerned hears old and new. A person who is added gets an invitation at once.
    """

    async def work() -> None:
        async with journal(context.settings) as opened:
            asked = await _ask(context, opened, await the_event(opened, event), person)
            picture = await asked.picture()
            language = reader_in(picture.built.event, person).language
            body = await _body(opened, picture, what, given)
            if what != UNDO:
                looked = await _call(asked, body | {"dry_run": True}, picture, person)
                _show(looked, language)
                if looked.refused:
                    raise Failed(sentence(language, "change-left"), language)
                body["over"] = looked.version
                if not yes and not click.confirm(sentence(language, "change-really"), default=False):
                    raise Failed(sentence(language, "change-left"), language)
            done = await _call(asked, body, picture, person)
            key = "change-undone" if what == UNDO else "change-done"
            click.echo(sentence(language, key, names=", ".join(done.told), count=len(done.told)))
            if done.invited is not None:
                link = f"{base_url(context.settings)}/join#{done.invited.code}"
                values = {"name": done.invited.name, "link": link, "code": done.invited.code}
                click.echo(sentence(language, "change-invited", **values))
                click.echo(qr_blocks(link))

    run(work())


async def _ask(context: CliContext, opened: Journal, event: str, person: str) -> Ask:
    """The call of the API as that person."""
    parts = make_parts(context.settings, opened, SystemClock(), Options(live=False))
    now = datetime.now(UTC)
    token = TokenInfo("command-line", person, "command line", _HERE, now)
    asked = Ask(parts, Inside({"event": event}), now, auth.Caller(token, person))
    people = (await parts.pictures.event(event)).people
    known("person", person, [p.id for p in people])
    return asked


async def _call(asked: Ask, body: dict[str, Any], picture: Picture, person: str) -> ChangeAnswer:
    ask = replace(asked, body=Change.model_validate(body))
    event = picture.built.event
    language = reader_in(event, person).language
    try:
        await check_may(ask, next(r for r in ACTING if r.handler is change))
        return await change(ask)
    except ApiError as error:
        if error.code != "not_yours":
            raise Failed(error.what, language) from error
        needed = Call.RACE if body.get("what") == What.CUT_OFF else Call.CHANGE
        able = [p.id for p in event.people if may(event.parts_of(p.id), needed) is May.YES]
        who = event.person(person).name
        raise Failed(
            sentence(language, "change-who-may", who=who, names=", ".join(able)), language
        ) from error


async def _body(opened: Journal, picture: Picture, what: str, given: dict[str, Any]) -> dict[str, Any]:
    """What was typed, as the API takes it."""
    event = picture.built.event
    if what == UNDO and given["point"]:
        moved = (e for k, e in picture.state.said if k.startswith(f"cut-off:{given['point']}:"))
        return {"undo_entry": next((e.id for e in moved), "none")}
    if what == UNDO:
        return {"undo": (await opened.event_versions(event.id))[-1].version}
    body = {k: v for k, v in given.items() if v and k != "until"}
    body["what"] = What(what.replace("-", " ")) if what != What.CUT_OFF else What.CUT_OFF
    if body["what"] is What.CUT_OFF:
        found = _limit(picture, given)
        body["until"] = None if found is None else new_time(given["until"], found, event.time_zone)
    return body


def _limit(picture: Picture, given: dict[str, Any]) -> Limit | None:
    """The cut-off that is meant."""
    event = picture.built.event
    runners = [r.id for r in event.runners if given["runner"] in (None, r.id)]
    ahead = (one for r in runners for one in limits(event, picture.state, r))
    meant = [one for one in ahead if one.point == given["point"] and given["edge"] in (None, one.edge)]
    return meant[-1] if meant else None


def _show(looked: ChangeAnswer, language: str) -> None:
    for why in looked.refused:
        click.echo(sentence(language, "change-refused", what=why))
    if looked.refused:
        return
    click.echo(sentence(language, "change-would"))
    for mind in looked.minds:
        click.echo(sentence(language, "change-mind", what=mind))
    for p in looked.people:
        for line in p.lines:
            click.echo(
                "  " + sentence(language, "change-for", name=p.name, what=line).replace("\n", "\n    ")
            )
    if not looked.people:
        click.echo(sentence(language, "change-for-nobody"))


COMMANDS = (change_plan,)
