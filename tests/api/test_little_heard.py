"""A first event with one meeting, hours in, of which nobody has said anything, and then only one thing: no answer
speaks of a time to come that is over, and nobody is told that she is where she was hours ago."""

from __future__ import annotations

from collections.abc import AsyncIterator
from datetime import timedelta
from pathlib import Path

import pytest
from aiohttp.test_utils import TestClient, TestServer

from server.api.building import build
from server.api.parts import PARTS
from server.app import Options, make_app
from server.clock import SteppedClock
from server.journal import Journal
from server.settings import Settings
from tests.api.conftest import Running

FIRST = """
event.name = "First"
event.time_zone = "Europe/London"
event.starts = 2027-06-19T05:00
event.route = "route.gpx"
event.emergency_number = "112"
race_control = { phone = "+44 1632 960001" }
points = [ { name = "Start", kinds = ["start"] },
  { name = "Skelter Mill", km = 21, crew = {}, stop_minutes = 8, reports = [ { by = "crew", chance = 0.9 } ] },
  { name = "Finish", kinds = ["finish"] } ]
runners = [ { name = "Maren", target = { finish = "25:00" } } ]
people = [ { name = "Maren" }, { name = "Ana", phone = "+44 1632 960011", parts = [ { kind = "crew", drives = true },
  { kind = "safety contact", ladder = 1, calls_race_control = true } ] } ]
drives = [ { from = "hotel", to = "skelter-mill", minutes = 35, confirmed_by = "ana" } ]
meetings = [ { point = "skelter-mill", crew = ["ana"], from = "hotel" } ]
"""
ROUTE = Path(__file__).parents[2] / "demo_event" / "route.gpx"


@pytest.fixture
async def first(sqlite_url: str) -> AsyncIterator[Running]:
    files = {"route.gpx": ROUTE.read_bytes()}
    built = build(FIRST, files)
    clock = SteppedClock(built.event.starts)
    journal = await Journal.open(sqlite_url)
    await journal.store_event(FIRST, files, built.event, "test", clock.now())
    app = make_app(Settings(), journal, clock, options=Options(live=False))
    async with TestClient(TestServer(app)) as client:
        yield Running(client, app[PARTS], clock, built)
    await journal.close()


async def ask(first: Running, text: str, person: str = "ana") -> str:
    """What the desk replies in the web chat."""
    status, body = await first.call(
        person, "POST", "/v1/chat", {"text": text, "key": f"{person}-{first.clock.now():%H%M}-{len(text)}"}
    )
    assert status == 200, body
    return str(body["data"]["text"])


async def test_nothing_heard(first: Running) -> None:
    """Hours after her window: it is told as what was expected, and a meeting out of reach as out of reach, in
    each answer alike."""
    first.clock.advance(timedelta(hours=7))
    said = await ask(first, "when is she at the mill")
    assert "expected 07:" in said.splitlines()[0]
    assert "nothing reported from there" in said.splitlines()[0]
    for text in ("when do i leave", "next meeting"):
        said = await ask(first, text)
        assert "can’t be met any more" in said.splitlines()[0], (text, said)
        assert "any time from now" not in said
        assert "Leave by" not in said
    status, board = await first.get("ana", "/v1/events/first/board")
    assert status == 200
    assert [m["values"]["lost"] for m in board["data"]["runners"][0]["meetings"]] == ["too late"]


async def test_seen_in_hours_ago(first: Running) -> None:
    """Her own 'in' at a stop of eight minutes, hours ago: where she was is a fact, where she is an estimate."""
    first.clock.advance(timedelta(hours=2, minutes=15))
    assert "Noted" in await ask(first, "in at mill", "maren")
    assert (await ask(first, "where is she")).startswith("Maren is at Skelter Mill")
    first.clock.advance(timedelta(hours=4))
    said = await ask(first, "where is she")
    assert said.startswith("Maren was last known in at Skelter Mill 07:15")
    assert "Nobody has reported her out of there; over 19 in 20 that she has gone on." in said
    assert "Estimate, not seen" in said
    said = await ask(first, "have we missed her at the mill")
    assert "has not been reported out; over 19 in 20 that she has gone on" in said
    assert (await ask(first, "next meeting")).startswith("No meeting with Maren is left")
