"""A worker between a real server and a stand-in Telegram, and whatever goes down meanwhile."""

from __future__ import annotations

import asyncio
from collections.abc import Callable
from datetime import timedelta

import pytest

from bot.channels.base import StoreUpdates
from bot.channels.telegram import Telegram
from bot.channels.telegram.listening import Backoff
from tests.channels import standin as at
from tests.channels.conftest import EVENT, WAIT_S, EchoDesk, Server, until
from tests.channels.standin import StandIn
from tests.channels.working import (
    Broken,
    MakeWorker,
    all_done,
    states_are,
    texts,
)


async def test_the_server_knows_for_how_long_telegram_was_down(
    server: Server,
    standin: StandIn,
    make_telegram: Callable[..., Telegram],
    make_worker: MakeWorker,
    desk: EchoDesk,
) -> None:
    """Signs of life come only when Telegram has answered: the gap is the outage, and it counts as nobody."""
    failures = Backoff(0.01, 0.05)
    await make_worker(make_telegram(backoff=lambda: failures), desk)

    async def heard() -> bool:
        beats = await server.journal.last_heartbeats()
        return beats.get("channel:telegram") == server.clock.now()

    await until(heard)
    went = server.clock.now()
    await standin.stop()
    await until(lambda: failures.failures > 0)
    server.clock.advance(timedelta(minutes=40))
    await until(lambda: failures.failures > 5)
    (still,) = await server.journal.outages(went, server.clock.now())
    assert (still.component, still.start, still.end) == ("channel:telegram", went, None)
    await standin.__aenter__()
    await until(heard)
    (over,) = await server.journal.outages(went - timedelta(hours=1), server.clock.now())
    assert (over.start, over.end) == (went, server.clock.now())


async def test_a_mail_server_that_is_down_makes_nobody_deaf(
    server: Server, make_worker: MakeWorker, desk: EchoDesk
) -> None:
    """Its outage is known by its own name, and no silence counts less for it."""
    channel = Broken()
    await make_worker(channel, desk)

    async def heard() -> bool:
        return "outgoing:email" in await server.journal.last_heartbeats()

    await until(heard)
    channel.up = False
    await until(lambda: channel.found_down)
    went = server.clock.now()
    server.clock.advance(timedelta(hours=1))
    (outage,) = await server.journal.outages(went, server.clock.now())
    assert (outage.component, outage.end) == ("outgoing:email", None)
    picture = await server.parts.pictures.take(EVENT, server.clock.now())
    assert picture.situation.outages == ()


async def test_nobody_is_judged_before_what_waited_is_read(
    server: Server, standin: StandIn, telegram: Telegram, make_worker: MakeWorker, desk: EchoDesk
) -> None:
    """The channel says when nothing waits any more; until then the server is catching up."""
    ticker = server.parts.ticker
    await ticker.tick(server.clock.now())
    assert ticker.catching_up is not None
    await standin.say("waited")
    await make_worker(telegram, desk)
    await until(lambda: len(texts(standin)) == 1)
    await until(lambda: ticker.catching_up is not None and not ticker.catching_up.channels)
    await until(lambda: all_done(server))
    await ticker.tick(server.clock.now())
    assert ticker.catching_up is None


async def test_one_listens_and_the_next_takes_over(
    server: Server,
    standin: StandIn,
    make_telegram: Callable[..., Telegram],
    make_worker: MakeWorker,
    desk: EchoDesk,
) -> None:
    """Two workers, one lease: never two askers; the second listens as soon as the first has ended."""
    first = await make_worker(make_telegram(), desk)
    await until(lambda: standin.offsets)
    await make_worker(make_telegram(), desk)
    await server.looked("take_lease", 3)
    await standin.say("one")
    await until(lambda: texts(standin) == ["you said: one"])
    assert standin.conflicts == 0
    first.stop()
    await standin.say("two")
    await until(lambda: texts(standin) == ["you said: one", "you said: two"])
    assert standin.conflicts == 0


async def test_who_has_lost_the_lease_stops_listening(
    server: Server,
    standin: StandIn,
    telegram: Telegram,
    make_worker: MakeWorker,
    desk: EchoDesk,
    monkeypatch: pytest.MonkeyPatch,
) -> None:
    """Another took it while this one was asleep: it asks no more."""
    ended: list[bool] = []
    listen = telegram.listen

    async def listens(store: StoreUpdates) -> None:
        try:
            await listen(store)
        finally:
            ended.append(True)

    monkeypatch.setattr(telegram, "listen", listens)
    await make_worker(telegram, desk)
    await until(lambda: standin.offsets)

    async def taken() -> bool:
        # It may renew in between, at any moment: then it holds on a little longer.
        server.clock.advance(timedelta(seconds=5))
        now = server.clock.now()
        return await server.journal.take_lease("listen:telegram", "another", now, timedelta(hours=9))

    await until(taken)
    await until(lambda: ended)
    asked = len(standin.offsets)
    await standin.say("unheard")
    await server.looked("take_lease")
    assert len(standin.offsets) == asked
    assert standin.unconfirmed != []


async def test_a_wrong_token_is_tried_again_without_harm(
    server: Server, standin: StandIn, telegram: Telegram, make_worker: MakeWorker, desk: EchoDesk
) -> None:
    """Settings are wrong until somebody mends them; then everything goes on by itself."""
    right, standin.token = standin.token, "1:another"
    await standin.say("waits")
    short = await server.owe("jonas")
    await make_worker(telegram, desk)

    async def refused() -> bool:
        (d,) = await server.journal.deliveries(EVENT, short)
        return d.tries > 0 and d.state.value == "queued"

    await until(refused)
    assert standin.sent == []
    standin.token = right
    server.clock.advance(timedelta(minutes=1))
    await until(lambda: texts(standin) == ["you said: waits"])
    await until(lambda: states_are(server, short, [("telegram", "sent")]))


async def test_a_stop_lets_a_send_under_way_be_reported(
    server: Server, standin: StandIn, telegram: Telegram, make_worker: MakeWorker, desk: EchoDesk
) -> None:
    """Ended in the middle of a send, it waits for Telegram's yes and records it."""
    arrived, go_on = asyncio.Event(), asyncio.Event()
    standin.script("sendMessage", at.held(arrived, go_on))
    short = await server.owe("ana")
    worker = await make_worker(telegram, desk)
    await asyncio.wait_for(arrived.wait(), WAIT_S)
    worker.stop()
    go_on.set()
    await until(lambda: states_are(server, short, [("telegram", "sent")]))
