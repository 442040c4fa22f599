"""SIGKILL at random moments: nothing acknowledged is lost, nothing owed forgotten, repeats are marked."""

from __future__ import annotations

import asyncio
import json
import sys
from collections import Counter
from pathlib import Path

import pytest

from server.journal import Journal

KILLS = 10


async def test_killed_at_random(
    loaded: Journal, database_url: str, capsys: pytest.CaptureFixture[str]
) -> None:
    """Ten workers that append, owe and send are killed one after the other; the eleventh sends the rest."""
    program = Path(__file__).with_name("crash.py")
    run = await asyncio.create_subprocess_exec(
        sys.executable, str(program), database_url, str(KILLS), "214",
        stdout=asyncio.subprocess.PIPE, cwd=program.parents[2], env={"PYTHONPATH": str(program.parents[2])},
    )  # fmt: skip
    out, _ = await asyncio.wait_for(run.communicate(), 180)
    assert run.returncode == 0
    said = json.loads(out)
    entries = await loaded.entries("long-stile")
    lost = set(said["noted"]) - {e.key for e in entries}
    made = await loaded.made("long-stile")
    sent = Counter(delivery for delivery, _ in said["sent"])
    marked = Counter(delivery for delivery, repeat in said["sent"] if repeat)
    forgotten = set(said["owed"]) - {m.notice.key.text() for m in made if m.sent_at is not None}
    unmarked = {d for d, times in sent.items() if times > 1 + marked[d]}
    with capsys.disabled():
        print(
            f"\n{database_url.split(':')[0]}, {KILLS} kills: {len(said['noted'])} entries acknowledged,"
            f" {len(lost)} lost; {len(said['owed'])} notices owed, {len(forgotten)} forgotten;"
            f" {sum(sent.values()) - len(sent)} sent again, {len(unmarked)} of them unmarked"
        )
    assert len(said["noted"]) > KILLS, "the workers must have done something before they were killed"
    assert (lost, forgotten, unmarked) == (set(), set(), set())
    assert len(sent) == len(made), "every notice in the database was sent, acknowledged or not"
    assert [e.key for e in entries] == sorted(
        {e.key for e in entries}, key=lambda k: [*map(int, k.split("-"))]
    )
    assert str(await loaded.head("long-stile")) == f"{len(entries)}.0"
