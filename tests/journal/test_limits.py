"""A process that may open no more files, or make none longer; a clock that jumps."""

from __future__ import annotations

import asyncio
import json
import sys
from collections.abc import Callable
from datetime import datetime, timedelta
from pathlib import Path

import pytest

from server.journal import Journal
from server.watch.notice import Notice, NoticeKind, Urgency

ROOT = Path(__file__).parents[2]
SPENT = """
import asyncio, json, os, resource, sys
from datetime import UTC, datetime, timedelta

from server.facts.entry import Kind
from server.journal import AwayError, Journal
from tests.journal.conftest import START, make_entry


async def said(work):
    try:
        await asyncio.wait_for(work, 60)
    except AwayError as error:
        return error.why
    return "kept"


async def main():
    journal, limit = await Journal.open(sys.argv[1]), sys.argv[2]
    await journal.append(make_entry("before"))
    found, held = {}, []
    if limit == "files":
        await journal.append(make_entry("warm"))
        resource.setrlimit(resource.RLIMIT_NOFILE, (200, 200))
        while True:
            try:
                held.append(os.open("/dev/null", os.O_RDONLY))
            except OSError:
                break
    else:
        resource.setrlimit(resource.RLIMIT_FSIZE, (0, resource.getrlimit(resource.RLIMIT_FSIZE)[1]))
    call = make_entry("help", kind=Kind.ASKED_FOR_HELP)
    found["help"] = await said(journal.call_for_help(call, [], START))
    found["report"] = await said(journal.append(make_entry("report")))
    for fd in held:
        os.close(fd)
    resource.setrlimit(resource.RLIMIT_FSIZE, (resource.getrlimit(resource.RLIMIT_FSIZE)[1],) * 2)
    found["after"] = await said(journal.call_for_help(call, [], START))
    found["entries"] = sorted(e.key for e in await journal.entries("long-stile"))
    print(json.dumps(found))
    await journal.close()


asyncio.run(main())
"""


async def _spent(url: str, limit: str) -> dict[str, object]:
    run = await asyncio.create_subprocess_exec(
        sys.executable, "-c", SPENT, url, limit, stdout=asyncio.subprocess.PIPE, cwd=ROOT
    )
    out, _ = await asyncio.wait_for(run.communicate(), 120)
    assert run.returncode == 0
    found: dict[str, object] = json.loads(out.decode().splitlines()[-1])
    return found


async def test_no_file_may_be_opened_any_more(loaded: Journal, database_url: str) -> None:
    """A call for help, which takes a connection of its own, is refused as one to hand in again, and kept then; what
    writes over a connection that is open is kept."""
    found = await _spent(database_url, "files")
    assert found["help"] == "away"
    assert found["after"] == "kept"
    assert {"before", "help"} <= set(found["entries"])  # type: ignore[call-overload]


async def test_no_file_may_grow_any_more(
    loaded: Journal, sqlite_url: str, event: object, start: datetime
) -> None:
    """SQLite's own file: refused, nothing half kept, and kept once there is room."""
    journal = await Journal.open(sqlite_url)
    await journal.store_event("t", {}, event, "ana", start)  # type: ignore[arg-type]
    await journal.close()
    found = await _spent(sqlite_url, "length")
    assert found["help"] in ("full", "away")
    assert found["report"] in ("full", "away")
    assert (found["after"], found["entries"]) == ("kept", ["before", "help"])


@pytest.mark.parametrize("jump", [timedelta(hours=1), timedelta(hours=-1), timedelta(days=-400)])
async def test_the_clock_jumps(
    loaded: Journal, notice: Callable[..., Notice], start: datetime, jump: timedelta
) -> None:
    """Forward or back while a call for help is on its way and in hand: after the next sign of life everything is handed
    out again within the lease of the new time, by ourselves and by others."""
    alarm = notice("tomas", kind=NoticeKind.TEST_ALARM, urgency=Urgency.ALARM)
    await loaded.heartbeat("server", start)
    await loaded.add_notices([alarm], start)
    await loaded.store_updates("telegram", [(1, "help")], start)
    lease = timedelta(seconds=60)
    assert len(await loaded.claim(["telegram"], start, lease=lease)) == 1
    assert len(await loaded.next_updates("telegram", start, lease=lease)) == 1
    assert await loaded.take_lease("listen:telegram", "one", start, lease)
    after = start + jump
    await loaded.heartbeat("server", after)
    soon = after + lease
    assert len(await loaded.claim(["telegram"], soon, lease=lease)) == 1
    assert len(await loaded.next_updates("telegram", soon, lease=lease)) == 1
    assert await loaded.take_lease("listen:telegram", "two", soon, lease)
