"""The same report handed in twice at the same moment is one report: a channel that lost our answer may well do so."""

from __future__ import annotations

import asyncio
from datetime import datetime, timedelta
from typing import Any

import pytest
from aiohttp.test_utils import TestClient, TestServer

from server.api.building import Built
from server.api.parts import PARTS
from server.app import Options, make_app
from server.clock import SteppedClock
from server.journal import Journal
from server.settings import Settings
from tests.api.conftest import EVENT, RUNNER, Running

ROUNDS = 10


class Going(SteppedClock):
    """A clock that no two ask at one moment."""

    def now(self) -> datetime:
        """A millisecond later than the last time."""
        return self.advance(timedelta(milliseconds=1))


@pytest.mark.parametrize(
    ("person", "path", "body"),
    [
        ("ana", f"runners/{RUNNER}/checkins", {"kind": "asked for help", "words": "her ankle"}),
        ("ana", f"runners/{RUNNER}/checkins", {"kind": "how she is", "words": "tired"}),
        ("ana", f"runners/{RUNNER}/checkins", {"kind": "in", "point": "mill"}),
        ("olga", "race", {"kind": "access closed", "point": "mill"}),
    ],
)
async def test_both_are_the_same(
    database_url: str, event_text: str, event_files: dict[str, bytes], built: Built,
    person: str, path: str, body: dict[str, Any],
) -> None:  # fmt: skip
    """One is noted, the other the same again, whichever comes first, though neither has a time but ours; what differs is a
    conflict still."""
    clock = Going(built.event.starts + timedelta(hours=5))
    journal = await Journal.open(database_url)
    await journal.store_event(event_text, event_files, built.event, "test", clock.now())
    app = make_app(Settings(), journal, clock, options=Options(live=False))
    async with TestClient(TestServer(app)) as client:
        running = Running(client, app[PARTS], clock, built)
        await running.token(person)

        async def hand_in(key: str, **more: str) -> tuple[int, str]:
            sent = body | {"key": key} | more
            status, reply = await running.call(person, "POST", f"/v1/events/{EVENT}/{path}", sent)
            return status, reply["data"]["status"] if status == 200 else reply["error"]["code"]

        for number in range(ROUNDS):
            both = await asyncio.gather(*(hand_in(f"k{number}") for _ in range(2)))
            assert sorted(both) == [(200, "noted"), (200, "same again")]
        assert await hand_in("k0", words="something else") == (409, "conflict")
        assert len(await journal.entries(EVENT)) == ROUNDS
        assert len(await journal.conflicts(EVENT)) == 1
    await journal.close()
