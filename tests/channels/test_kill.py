"""kill -9 at the worst moments: nothing heard is lost, nothing owed is forgotten, what may repeat is marked."""

from __future__ import annotations

import asyncio
import random
from collections.abc import Callable, Iterator
from datetime import timedelta
from typing import Any

import pytest
from aiohttp import web

from tests.channels import standin as at
from tests.channels.conftest import EVENT, WAIT_S, Server, until
from tests.channels.killable import Nursery
from tests.channels.standin import TOKEN, StandIn

AFTER_A_DEATH = timedelta(seconds=301)
REPEAT = "may be a repeat"


@pytest.fixture(scope="module")
def one_nursery() -> Iterator[Nursery]:
    """The process that has imported everything, once for all tests."""
    with Nursery() as started:
        yield started


@pytest.fixture
def nursery(one_nursery: Nursery) -> Iterator[Nursery]:
    """Workers to be killed."""
    one_nursery.kills = 0
    yield one_nursery
    one_nursery.kill()


@pytest.fixture
async def start(server: Server, standin: StandIn, nursery: Nursery) -> Callable[[], Any]:
    """Starts a worker, once every lease of a dead one is over."""
    token = await server.token("telegram")

    async def again() -> None:
        server.clock.advance(AFTER_A_DEATH)
        await nursery.start(server=server.url, token=token, telegram=standin.base_url, bot=TOKEN)

    return again


async def settled(server: Server, standin: StandIn, shorts: list[int]) -> None:
    """Wait until every update is worked off and every notice sent."""
    async with asyncio.timeout(WAIT_S):
        while True:
            sent = [d.state.value for s in shorts for d in await server.journal.deliveries(EVENT, s)]
            if not standin.unconfirmed and not await server.journal.waiting() and set(sent) <= {"sent"}:
                return
            # While one is being sent the clock stands: a pause of a busy machine must not outlast its lease.
            if "attempting" not in sent:
                server.clock.advance(timedelta(seconds=0.2))
            await asyncio.sleep(0.02)


def check_heard(standin: StandIn, said: list[str]) -> None:
    """Everything that was said has been answered."""
    assert {f"you said: {word}" for word in said} <= {call.text for call in standin.sent}


async def check_owed(server: Server, standin: StandIn, shorts: list[int]) -> int:
    """Every notice arrived; one that arrived twice says so. How many did.

    The first may say so as well: a worker that is killed while it asks for work may have been given the notice, and
    only we who look at both ends know that it never sent it.
    """
    repeats = 0
    for short in shorts:
        attempts = await server.journal.attempts(EVENT, short)
        arrived = [c.text for c in standin.sent if c.text in {a.text for a in attempts if a.text}]
        assert arrived, f"notice {short} was forgotten"
        for text in arrived[1:]:
            assert REPEAT in text, f"notice {short} was repeated unmarked"
        repeats += len(arrived) - 1
    return repeats


async def test_killed_between_fetching_and_storing(
    server: Server, standin: StandIn, nursery: Nursery, start: Callable[[], Any]
) -> None:
    """Five times: updates fetched, the server away so that they cannot be stored, killed. All are answered."""
    said: list[str] = []
    for round_ in range(5):
        seen = len(standin.offsets)
        await start()
        await until(
            lambda seen=seen: len(standin.offsets) > seen + 1
        )  # it holds the lease, and waits for news
        await server.stop()
        fetched = len(standin.offsets)
        for i in range(3):
            said.append(f"word {round_}.{i}")
            await standin.say(said[-1])
        await until(lambda fetched=fetched: len(standin.offsets) > fetched)  # asks again: could not store
        nursery.kill()
        assert standin.unconfirmed
        await server.start()
    await start()
    await settled(server, standin, [])
    check_heard(standin, said)
    assert nursery.kills == 5


async def test_killed_between_telegrams_yes_and_our_record(
    server: Server, standin: StandIn, nursery: Nursery, start: Callable[[], Any]
) -> None:
    """Five times: Telegram has the message, we die before that is recorded. It comes again, marked."""
    shorts: list[int] = []
    for round_ in range(5):
        shorts.append(await server.owe("ana", episode=round_ + 1))
        arrived = asyncio.Event()
        standin.script("sendMessage", _yes_but_no_server(server, arrived))
        await start()
        await asyncio.wait_for(arrived.wait(), WAIT_S)
        await asyncio.sleep(0.05)
        nursery.kill()
        await server.start()
        await start()
        await settled(server, standin, shorts)
        nursery.kill()
    assert await check_owed(server, standin, shorts) == 5


def _yes_but_no_server(server: Server, arrived: asyncio.Event) -> at.Answer:
    """Carried out and said so, while our own server has just gone away."""

    async def answer(request: web.Request, carry_out: Callable[[], Any]) -> web.StreamResponse:
        await server.stop()
        response = await at.fine(request, carry_out)
        arrived.set()
        return response

    return answer


async def test_killed_at_any_moment(
    server: Server, standin: StandIn, nursery: Nursery, start: Callable[[], Any]
) -> None:
    """Ten times at random, while people write and notices are owed."""
    dice = random.Random(4)
    said: list[str] = []
    shorts: list[int] = []
    for round_ in range(10):
        await start()
        for i in range(2):
            said.append(f"word {round_}.{i}")
            await standin.say(said[-1], user=dice.choice((41, 42)))
        shorts.append(await server.owe(dice.choice(("ana", "jonas")), episode=round_ + 1))
        await asyncio.sleep(dice.uniform(0.05, 0.3))
        nursery.kill()
    await start()
    await settled(server, standin, shorts)
    check_heard(standin, said)
    repeats = await check_owed(server, standin, shorts)
    assert nursery.kills == 10
    print(
        f"killed 10 times: {len(said)} messages, lost 0; {len(shorts)} notices, forgotten 0, repeated {repeats}"
    )
