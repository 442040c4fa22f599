"""A first event with one meeting, hours in, of which nobody has said anything, and then only one thing: no answer
speaks of a time to come that is over, and nobody is told that she is where she was hours ago."""

from __future__ import annotations

import contextlib
import re
from collections.abc import AsyncIterator
from datetime import timedelta
from pathlib import Path

import pytest
from aiohttp.test_utils import TestClient, TestServer

from server.api.building import build
from server.api.parts import PARTS
from server.app import Options, make_app
from server.clock import SteppedClock
from server.facts.entry import Kind
from server.journal import Journal
from server.settings import Settings
from server.watch.notice import AlarmValues, Made, MeetingValues, NoticeKind
from tests.api.conftest import Running

FIRST = """
event.name = "First"
event.time_zone = "Europe/London"
event.starts = 2027-06-19T05:00
event.route = "route.gpx"
event.emergency_number = "112"
event.limit = "36:00"
race_control = { phone = "+44 1632 960001" }
points = [ { name = "Start", kinds = ["start"] },
  { name = "Skelter Mill", km = 21, crew = {}, stop_minutes = 8, reports = [ { by = "crew", chance = 0.9 } ] },
@points@  { name = "Finish", kinds = ["finish"] } ]
runners = [ { name = "Maren", target = { finish = "25:00" } } ]
people = [ { name = "Maren" }, { name = "Ana", phone = "+44 1632 960011", parts = [ { kind = "crew", drives = true } ] },
  { name = "Dad", phone = "+44 1632 960012", parts = [
    { kind = "safety contact", ladder = 1, calls_race_control = true } ] } ]
drives = [ @drives@{ from = "hotel", to = "skelter-mill", minutes = 35, confirmed_by = "ana" } ]
meetings = [ @meetings@{ point = "skelter-mill", crew = ["ana"], from = "hotel" } ]
"""
ONWARD = {
    "@points@": '{ name = "Ravel Dod", km = 60, crew = {}, reports = [ { by = "crew", chance = 0.9 } ] },',
    "@drives@": '{ from = "skelter-mill", to = "ravel-dod", minutes = 40, confirmed_by = "ana" }, ',
    "@meetings@": '{ point = "ravel-dod", crew = ["ana"] }, ',
}
ROUTE = Path(__file__).parents[2] / "demo_event" / "route.gpx"


@contextlib.asynccontextmanager
async def running(database: str, text: str) -> AsyncIterator[Running]:
    """The server with that event, at its start."""
    files = {"route.gpx": ROUTE.read_bytes()}
    built = build(text, files)
    clock = SteppedClock(built.event.starts)
    journal = await Journal.open(database)
    await journal.store_event(text, files, built.event, "test", clock.now())
    app = make_app(Settings(), journal, clock, options=Options(live=False))
    async with TestClient(TestServer(app)) as client:
        yield Running(client, app[PARTS], clock, built)
    await journal.close()


@pytest.fixture
async def first(sqlite_url: str) -> AsyncIterator[Running]:
    async with running(sqlite_url, re.sub("@[a-z]+@", "", FIRST)) as server:
        yield server


@pytest.fixture
async def onward(sqlite_url: str) -> AsyncIterator[Running]:
    """The same with a second meeting."""
    async with running(sqlite_url, re.sub("@[a-z]+@", lambda m: ONWARD[m[0]], FIRST)) as server:
        yield server


async def ask(first: Running, text: str, person: str = "ana") -> str:
    """What the desk replies in the web chat."""
    status, body = await first.call(
        person, "POST", "/v1/chat", {"text": text, "key": f"{person}-{first.clock.now():%H%M}-{len(text)}"}
    )
    assert status == 200, body
    return str(body["data"]["text"])


async def test_nothing_heard(first: Running) -> None:
    """Hours after her window: it is told as what was expected, and as long as she is missed nobody is told that a
    meeting with her can't be met any more."""
    first.clock.advance(timedelta(hours=7))
    said = await ask(first, "when is she at the mill")
    assert "expected 07:" in said.splitlines()[0]
    assert "nothing reported from there" in said.splitlines()[0]
    for text in ("when do i leave", "next meeting"):
        said = await ask(first, text)
        assert "can’t be met any more" not in said
        assert "any time from now" not in said
        assert "Leave by" not in said
    status, board = await first.get("ana", "/v1/events/first/board")
    assert status == 200
    assert [m["values"]["lost"] for m in board["data"]["runners"][0]["meetings"]] == [""]


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
    assert "nobody has reported her out; over 19 in 20 that she has gone on" in said
    assert (await ask(first, "next meeting")).startswith("No meeting with Maren is left")


async def pass_time(first: Running, hours: float, every_minutes: int = 10) -> None:
    """Let the time go by, with the ticker at work."""
    for _ in range(round(hours * 60 / every_minutes)):
        first.clock.advance(timedelta(minutes=every_minutes))
        await first.parts.ticker.tick(first.clock.now())


async def made(first: Running, kind: NoticeKind) -> list[Made]:
    """The notices of a kind made so far."""
    return [m for m in await first.parts.journal.made("first") if m.notice.key.kind is kind]


async def test_just_in_is_where_the_writer_stands(first: Running) -> None:
    """'She has just come in' from crew who said where they are counts there, untapped; never as in at the start."""
    first.clock.advance(timedelta(hours=2))
    await ask(first, "we're at the mill")
    first.clock.advance(timedelta(minutes=15))
    assert (await ask(first, "shes just come in")).startswith("Noted: Maren in at Skelter Mill, 07:15")
    first.clock.advance(timedelta(minutes=9))
    assert (await ask(first, "she's off again")).startswith("Noted: Maren out of Skelter Mill, 07:24")


async def test_a_forgotten_out_does_not_keep_crew_from_the_next_meeting(onward: Running) -> None:
    """Seen in, never reported out: leave-now for the next meeting goes out in time, and asks when she left."""
    onward.clock.advance(timedelta(hours=2))
    await ask(onward, "we're at the mill")
    onward.clock.advance(timedelta(minutes=15))
    await ask(onward, "maren in")
    await pass_time(onward, 8)
    onward = [m for m in await made(onward, NoticeKind.LEAVE_NOW) if m.notice.key.point == "ravel-dod"]
    assert onward
    values = onward[0].notice.values
    assert isinstance(values, MeetingValues)
    assert values.unreported_out == "skelter-mill"
    assert values.leave_by is not None
    assert onward[0].made_at <= values.leave_by


async def test_silence_ends_in_an_alarm_whoever_reports(first: Running) -> None:
    """Reporters who may fail, nobody at the finish, and her own 'resting' long ago: home is asked to telephone crew who
    do not answer, and is alarmed once the race is over, with her words."""
    first.clock.advance(timedelta(hours=4))
    assert "resting" in await ask(first, "sitting on a wall feel sick", "maren")
    await pass_time(first, 33, every_minutes=30)
    asked = [m for m in await made(first, NoticeKind.UNREACHED) if m.notice.key.person == "dad"]
    assert any(m.notice.occasion.startswith("late:") for m in asked)
    raised = await made(first, NoticeKind.OVERDUE)
    assert [m.notice.key.person for m in raised][:1] == ["dad"]
    values = raised[0].notice.values
    assert isinstance(values, AlarmValues)
    assert [h.words for h in values.heard_since] == ["sitting on a wall feel sick"]


async def test_no_report_keeps_the_watch_quiet_for_ever(first: Running) -> None:
    """'Resting until 2037' and years that nobody means are refused; 'in hand' of one who goes on holds for an hour."""
    path = "/v1/events/first/runners/maren/checkins"
    for until in ("2037-06-19T12:00:00Z", "9999-12-31T23:59:59-14:00"):
        status, _ = await first.call("ana", "POST", path, {"kind": "resting", "until": until})
        assert status == 422
    status, _ = await first.call("ana", "POST", path, {"kind": "in", "seen_at": "0001-01-01T00:00:00+14:00"})
    assert status == 422
    first.clock.advance(timedelta(hours=1))
    status, _ = await first.call("ana", "POST", path, {"kind": "in hand"})
    assert status == 200
    await pass_time(first, 36, every_minutes=60)
    assert await made(first, NoticeKind.OVERDUE)


async def test_only_her_word_or_home_takes_help_back(first: Running) -> None:
    """Crew can't call off the runner's own call for help; she can, and so can the safety contact."""
    first.clock.advance(timedelta(hours=1))
    assert "112" in (await ask(first, "help", "maren")).splitlines()[0]
    cry = next(e for e in await first.parts.journal.entries("first") if e.kind is Kind.ASKED_FOR_HELP)
    path = f"/v1/entries/{cry.id}/take-back"
    assert (await first.call("ana", "POST", path, {}))[0] == 403
    assert (await first.call("dad", "POST", path, {}))[0] == 200


async def test_words_nobody_understood_from_the_runner(first: Running) -> None:
    """What may have been a call for help is answered with the number and the word that is one."""
    assert "call 112, and write ‘help’" in await ask(first, "mmph xq zzt", "maren")
    for text in (
        "call 112",
        "i cant breathe",
        "my leg is broken",
        "no idea where i am",
        "s.o.s.",
        "come and get me",
    ):
        assert "112" in (await ask(first, text, "maren")).splitlines()[0], text


async def test_a_call_for_help_says_where_by_its_words(first: Running) -> None:
    """'At 15 km' in her words stands in the alarm with its place, before the forecast's estimate; the board shows
    the words."""
    first.clock.advance(timedelta(hours=1))
    await ask(first, "help, hurt my ankle at 15 km, cant walk", "maren")
    alarm = (await made(first, NoticeKind.ASKED_FOR_HELP))[0].notice
    values = alarm.values
    assert isinstance(values, AlarmValues)
    assert values.said_km == 15.0
    assert values.said_fix is not None
    status, board = await first.get("dad", "/v1/events/first/board")
    assert status == 200
    (line,) = board["data"]["runners"][0]["alarms"]
    assert "15 km" in line["words"]


async def test_help_goes_through_though_no_forecast_can_be_had(
    first: Running, monkeypatch: pytest.MonkeyPatch
) -> None:
    """What breaks the forecast of a runner breaks neither chat nor board, and her call for help reaches home."""

    def broken(*_: object, **__: object) -> None:
        raise OverflowError("date value out of range")

    monkeypatch.setattr("server.api.snapshot.outlook", broken)
    first.clock.advance(timedelta(hours=1))
    assert "112" in (await ask(first, "help", "maren")).splitlines()[0]
    assert "dad" in {m.notice.key.person for m in await made(first, NoticeKind.ASKED_FOR_HELP)}
    assert (await first.get("ana", "/v1/events/first/board"))[0] == 200
