"""A crew's group in Telegram, end to end: asked for in the chat, told what concerns all, moved, released."""

from __future__ import annotations

from collections.abc import Awaitable, Callable
from datetime import timedelta
from typing import Any

from bot.channels.telegram import Telegram
from bot.worker import Worker
from server.facts.entry import Entry, Kind, Source
from tests.channels.conftest import EVENT, Server, until
from tests.channels.standin import StandIn

MakeWorker = Callable[..., Awaitable[Worker]]
CHAT = {"id": -500, "type": "group", "title": "crew"}


def command(text: str) -> dict[str, Any]:
    """A command as Telegram marks it."""
    length = len(text.split(" ", maxsplit=1)[0])
    return {"text": text, "entities": [{"type": "bot_command", "offset": 0, "length": length}]}


def said_in(standin: StandIn, chat: int) -> list[str]:
    """What was sent to a chat."""
    return [call.text for call in standin.sent if call.chat == str(chat)]


async def entered(server: Server, kind: Kind, key: str, words: str = "") -> None:
    """The organiser enters a race-level fact, and the server looks."""
    now = server.clock.now()
    entry = Entry(
        "", EVENT, None, kind, now, now, now, "office", Source.VOLUNTEER, "office", key, words=words
    )
    await server.journal.append(entry)
    server.parts.ticker.catching_up = None
    server.parts.pictures.watching_since = now
    await server.parts.ticker.look(EVENT, now)
    server.clock.advance(timedelta(minutes=2))


async def test_a_group_is_told_what_concerns_all(
    server: Server, standin: StandIn, telegram: Telegram, make_worker: MakeWorker
) -> None:
    """Ana asks for it in the group, which is told what it will hear; then of a new route, once, besides each of the
    crew; it moves as it grows and is told there; a stranger in it can't have it released, Ana can."""
    await make_worker(telegram)
    await standin.put(message=standin.message(41, chat=CHAT, **command("/group")))
    await until(lambda: said_in(standin, -500))
    assert "this group hears what concerns all" in said_in(standin, -500)[0]
    (group,) = await server.journal.groups(EVENT)
    assert (group.channel, group.address, group.bound_by) == ("telegram", "-500", "ana")

    await entered(server, Kind.REROUTED, "k1", "by the lower path")
    await until(lambda: len(said_in(standin, -500)) == 2)
    assert "by the lower path" in said_in(standin, -500)[1]
    await until(lambda: any("by the lower path" in t for t in said_in(standin, 41)))

    standin.migrated["-500"] = -100500
    await entered(server, Kind.HELD, "k2")
    await until(lambda: said_in(standin, -100500))
    (moved,) = await server.journal.groups(EVENT)
    assert (moved.id, moved.address) == (group.id, "-100500")

    chat = {"id": -100500, "type": "supergroup", "title": "crew"}
    await standin.put(message=standin.message(77, chat=chat, **command("/group off")))
    await until(lambda: len(said_in(standin, -100500)) == 2)
    assert len(await server.journal.groups(EVENT)) == 1, "a stranger releases nothing"
    await standin.put(message=standin.message(41, chat=chat, **command("/group off")))
    await until(lambda: len(said_in(standin, -100500)) == 3)
    assert await server.journal.groups(EVENT) == ()
    await entered(server, Kind.RELEASED, "k3")
    await until(lambda: len(said_in(standin, 41)) >= 3)
    assert len(said_in(standin, -100500)) == 3


async def test_in_a_private_chat_there_is_no_group(
    server: Server, standin: StandIn, telegram: Telegram, make_worker: MakeWorker
) -> None:
    """'/group' to the bot alone binds nothing."""
    await make_worker(telegram)
    await standin.say("/group")
    await until(lambda: said_in(standin, 41))
    assert await server.journal.groups(EVENT) == ()
