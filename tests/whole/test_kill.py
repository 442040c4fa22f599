"""SIGKILL to a real `stilepost serve`: nothing acknowledged is lost, nothing owed is forgotten."""

from __future__ import annotations

import asyncio
from collections.abc import AsyncIterator
from pathlib import Path
from typing import Any

import aiohttp
import pytest

from tests.whole.forks import Running, Servers, answering
from tests.whole.hill import EVENT, RUNNER
from tests.whole.kills import CHATS, Hunt, hunt, owed_unkilled

MOMENTS = {"sqlite": ("sent", "stored", "fetched"), "postgresql": ("fetched", "noted", "sent")}
SEED = 51


@pytest.fixture
async def hunted(database_url: str, servers: Servers, tmp_path: Path) -> AsyncIterator[Hunt]:
    """A race under way on an empty database of either kind; no server runs yet."""
    async with hunt(database_url, servers, tmp_path / "servers.log", SEED) as ready:
        yield ready


async def _asked_for_help(hunted: Hunt, server: Running) -> dict[str, Any]:
    """Race control reports that she asked for help; the answer."""
    url = f"{server.url}/v1/events/{EVENT}/runners/{RUNNER}/checkins"
    body = {"kind": "asked for help", "key": "help-1", "words": "slipped on the edge"}
    headers = {"Authorization": f"Bearer {hunted.token}"}
    async with hunted.session.post(url, json=body, headers=headers) as reply:
        data: dict[str, Any] = (await reply.json())["data"]
        return data


async def test_killed_between_noted_and_the_next_tick(hunted: Hunt) -> None:
    """A report that is on the disk when the process dies, nobody told yet, is told of after the restart, to the
    same people as if nothing had happened; and sent again with its key it counts once."""
    server = await hunted.start()
    await answering(hunted.session, server)
    await hunted.looked(server)
    before = await hunted.journal.made(EVENT)
    sending = asyncio.create_task(_asked_for_help(hunted, server))
    while (await hunted.journal.head(EVENT)).number == 2:  # noqa: ASYNC110 - in another process
        await asyncio.sleep(0.0005)
    hunted.servers.kill(server)
    with pytest.raises(aiohttp.ClientError):
        await sending
    assert await hunted.journal.made(EVENT) == before, "the kill came before anybody was told"

    await hunted.end_leases()
    again = await hunted.start()
    await answering(hunted.session, again)
    await hunted.looked(again)
    made = {
        (m.notice.key.person, m.notice.key.kind, m.notice.occasion) for m in await hunted.journal.made(EVENT)
    }
    entries = await hunted.journal.entries(EVENT)
    assert made == await owed_unkilled(entries)
    alarmed = {person for person, kind, _ in made if kind == "asked for help"}
    assert alarmed == {"ines", "ana", "jonas", "office"}
    assert (await _asked_for_help(hunted, again))["status"] == "same again"
    assert len(await hunted.journal.entries(EVENT)) == len(entries) == 3
    await hunted.drained()
    rung = sorted(c.chat for c in hunted.phones.sent if "ASKED FOR HELP" in c.text)
    assert rung == sorted(str(CHATS[person]) for person in alarmed), "each once"


async def test_killed_at_random(hunted: Hunt, capsys: pytest.CaptureFixture[str]) -> None:
    """At three moments: no report lost, nothing owed forgotten, what came twice says so.

    `python -m tests.whole.kills` does the same hundreds of times, at all of them."""
    kind = "sqlite" if hunted.database.startswith("sqlite") else "postgresql"
    tally = await hunted.run(MOMENTS[kind])
    with capsys.disabled():
        print(f"\n{kind}: {tally}")
    assert tally.noted >= len(MOMENTS[kind])
    assert tally.owed >= 5 * tally.noted
    assert tally.clean
