"""SIGKILL to a real `stilepost serve`: nothing acknowledged is lost, nothing owed is forgotten."""

from __future__ import annotations

import asyncio
import os
import resource
import subprocess
import sys
import time
from collections.abc import AsyncIterator
from datetime import UTC, datetime
from pathlib import Path
from typing import Any

import aiohttp
import pytest

from server.api.inbound import new_update
from server.journal import Journal
from server.watch.notice import NoticeKind
from tests.channels.working import at_message
from tests.whole.forks import Running, Servers, answering
from tests.whole.hill import EVENT, RUNNER
from tests.whole.kills import CHATS, Hunt, hunt, owed_unkilled

MOMENTS = {"sqlite": ("sent", "stored", "fetched"), "postgresql": ("fetched", "noted", "sent")}
SEED = 51
OTHERS = 40


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


async def _made(hunted: Hunt) -> set[tuple[str, NoticeKind, str]]:
    return {
        (m.notice.key.person, m.notice.key.kind, m.notice.occasion) for m in await hunted.journal.made(EVENT)
    }


def _cpu_of_imports_s() -> float:
    """What a process of this machine works to have our modules in memory, here and now: the measure of its seconds."""
    before = resource.getrusage(resource.RUSAGE_CHILDREN)
    subprocess.run([sys.executable, "-c", "import server.app, server.cli.serving"], check=True, timeout=120)
    after = resource.getrusage(resource.RUSAGE_CHILDREN)
    return after.ru_utime + after.ru_stime - before.ru_utime - before.ru_stime


def _cpu_s(pid: int) -> float:
    """The seconds that a process has worked."""
    fields = Path(f"/proc/{pid}/stat").read_text().rpartition(")")[2].split()
    return (int(fields[11]) + int(fields[12])) / os.sysconf("SC_CLK_TCK")


async def test_killed_once_the_call_is_kept(hunted: Hunt) -> None:
    """A call for help is on the disk with its alarm or not at all: once it is, a process that dies has told the same people
    as if nothing had happened; and sent again with its key it counts once."""
    server = await hunted.start()
    await answering(hunted.session, server)
    await hunted.looked(server)
    before = await _made(hunted)
    sending = asyncio.create_task(_asked_for_help(hunted, server))
    while (await hunted.journal.head(EVENT)).number == 2:  # noqa: ASYNC110 - in another process
        await asyncio.sleep(0.0005)
    hunted.servers.kill(server)
    with pytest.raises(aiohttp.ClientError):
        await sending
    alarmed = {person for person, kind, _ in await _made(hunted) if kind is NoticeKind.ASKED_FOR_HELP}
    assert alarmed == {"ines", "ana", "jonas", "office"}

    again = await hunted.start()
    await answering(hunted.session, again)
    await hunted.looked(again)
    entries = await hunted.journal.entries(EVENT)
    assert await _made(hunted) - before == await owed_unkilled(entries) - before
    assert (await _asked_for_help(hunted, again))["status"] == "same again"
    assert len(await hunted.journal.entries(EVENT)) == len(entries) == 3
    await hunted.drained()
    rung = sorted(c.chat for c in hunted.phones.sent if c.text.startswith("ALARM: "))
    assert rung == sorted(str(CHATS[person]) for person in alarmed), "each once"


async def test_a_call_in_hand_at_the_kill(hunted: Hunt, capsys: pytest.CaptureFixture[str]) -> None:
    """A server has claimed her call for help, behind forty messages of others, and dies. Its lease has a minute to run: the
    alarm is in Telegram's hands long before that, and for little more work than a start is. (By the clock it is five
    seconds where the machine has nothing else to do; on one that has, seconds of work grow too, so that the measure is
    what the imports alone take there.)"""
    dead, now = await Journal.open(hunted.database), datetime.now(UTC)
    others = [(i, at_message(i, "eating ok, feet fine", CHATS["ana"])) for i in range(1, OTHERS + 1)]
    call = (OTHERS + 1, at_message(OTHERS + 1, "i have fallen, i need help", CHATS["maren"]))
    await dead.store_updates("telegram", [new_update(str(i), body) for i, body in (*others, call)], now)
    claimed = await dead.next_updates("telegram", now, limit=50, server=await dead.server())
    assert len(claimed) == OTHERS + 1
    assert claimed[0].update_id == OTHERS + 1, "it is worked off first"
    assert not await hunted.journal.next_updates("telegram", now)
    await dead.close()
    began = time.monotonic()
    server = await hunted.start()
    async with asyncio.timeout(50):
        while not any(c.text.startswith("ALARM: ") for c in hunted.phones.sent):  # noqa: ASYNC110
            await asyncio.sleep(0.01)
    took, worked = time.monotonic() - began, _cpu_s(server.pid)
    with capsys.disabled():
        kind = hunted.database.split(":")[0]
        print(f"\n{kind}: the alarm was out {took:.1f} s after the restart, for {worked:.1f} s of work")
    assert worked < 4.0 * await asyncio.to_thread(_cpu_of_imports_s)


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
