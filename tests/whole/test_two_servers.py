"""Two servers, each with its own Telegram bot, on one PostgreSQL: each notice once, at least once when one is killed."""

from __future__ import annotations

import asyncio
import re
from collections import Counter
from collections.abc import AsyncIterator
from pathlib import Path

import pytest

from tests.conftest import Postgres
from tests.whole.forks import Running, Servers, answering
from tests.whole.hill import EVENT
from tests.whole.kills import CHATS, REPEAT, TOLD_OF_RACE, Hunt, hunt

NEWS = 4
SEED = 7


@pytest.fixture
async def pair(
    postgres: Postgres, servers: Servers, tmp_path: Path
) -> AsyncIterator[tuple[Hunt, Running, Running]]:
    """A race under way and two servers that look at it; the bot of the first listens."""
    name = postgres.take()
    async with hunt(postgres.url(name), servers, tmp_path / "servers.log", SEED) as ready:
        one = await ready.start()
        await answering(ready.session, one)
        await ready.looked(one)
        two = await ready.start(beside=True)
        await answering(ready.session, two)
        yield ready, one, two
    postgres.give_back(name)


def _arrivals(hunted: Hunt) -> Counter[tuple[str, str]]:
    """How often each piece of news came to each chat, without those that say that they may be repeats."""
    return Counter(
        (call.chat, number)
        for call in hunted.phones.sent
        for part in call.text.split("\n\n")
        if REPEAT not in part
        for number in re.findall(r"<(\d+)>", part)
    )


def _wanted(numbers: range) -> set[tuple[str, str]]:
    return {(str(CHATS[who]), str(number)) for who in TOLD_OF_RACE for number in numbers}


async def test_quiet(pair: tuple[Hunt, Running, Running]) -> None:
    """Nobody is killed: whichever server hears the news, each person gets it once, and Ana each answer once."""
    hunted, one, two = pair
    for number in range(1, NEWS + 1):
        assert await hunted.tell((one, two)[number % 2].url, number) == "noted"
    for number in range(1, 4):
        await hunted.writes(number)
    await hunted.drained()
    came = _arrivals(hunted)
    assert set(came) == _wanted(range(1, NEWS + 1))
    assert set(came.values()) == {1}
    assert not [call for call in hunted.phones.sent if REPEAT in call.text]
    answers = [n for call in hunted.phones.sent for n in re.findall(r"sore (x\d)", call.text)]
    assert sorted(answers) == ["x1", "x2", "x3"]
    keys = [e.key for e in await hunted.journal.entries(EVENT)]
    assert len(keys) == len(set(keys))


async def test_one_of_two_is_killed(pair: tuple[Hunt, Running, Running]) -> None:
    """The one that listens is killed while it delivers: the other takes over, nothing is forgotten, and what
    may have come already says so."""
    hunted, one, two = pair
    for number in range(1, 3):
        assert await hunted.tell((one, two)[number % 2].url, number) == "noted"
    hunted.phones.arm("sent", one.pid)
    await hunted.release()
    async with asyncio.timeout(20):
        await hunted.phones.fired.wait()
    hunted.servers.kill(one)
    for number in range(3, NEWS + 1):
        assert await hunted.tell(two.url, number) == "noted"
    await hunted.writes(1)
    await hunted.end_leases(listening=True)
    await hunted.looked(two)
    await hunted.drained()
    came = _arrivals(hunted)
    assert set(came) <= _wanted(range(1, NEWS + 1))
    assert set(came.values()) == {1}, "what came twice says so"
    every = {
        (call.chat, number) for call in hunted.phones.sent for number in re.findall(r"<(\d+)>", call.text)
    }
    assert every == _wanted(range(1, NEWS + 1))
    assert [c.text for c in hunted.phones.sent if "sore x1" in c.text], "the other bot listens now"
