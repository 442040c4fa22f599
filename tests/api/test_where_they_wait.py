"""Two cars leapfrog and nobody reports 'out': what the second car writes is of where it waits, never of the first's."""

from __future__ import annotations

from collections.abc import AsyncIterator
from datetime import timedelta

import pytest

from server.facts.entry import Kind
from server.watch.notice import NoticeKind
from tests.api.conftest import Running
from tests.api.test_little_heard import FIRST, ask, made, pass_time, running

DOD = '{ name = "Ravel Dod", km = 40, crew = {}, reports = [ { by = "crew", chance = 0.9 } ] },'
JONAS = '{ name = "Jonas", phone = "+44 1632 960013", parts = [ { kind = "crew", drives = true } ] }, '
TWO_CARS = (
    FIRST.replace("@points@", DOD)
    .replace("@drives@", '{ from = "hotel", to = "ravel-dod", minutes = 40, confirmed_by = "jonas" }, ')
    .replace("@meetings@", '{ point = "ravel-dod", crew = ["jonas"], from = "hotel" }, ')
    .replace('{ name = "Dad"', JONAS + '{ name = "Dad"')
)


@pytest.fixture
async def two_cars(sqlite_url: str) -> AsyncIterator[Running]:
    """Seen in at the mill by Ana, who forgets 'out'; Jonas waits at Ravel Dod for hours and has said so to nobody."""
    async with running(sqlite_url, TWO_CARS) as server:
        server.clock.advance(timedelta(hours=2))
        await ask(server, "we're at the mill")
        server.clock.advance(timedelta(minutes=20))
        assert (await ask(server, "she's just in")).startswith("Noted: Maren in at Skelter Mill")
        await pass_time(server, 3.5)
        yield server


@pytest.mark.parametrize(
    ("words", "kind"), [("she is in now, looks awful", Kind.IN), ("she's off again 5 min ago", Kind.OUT)]
)
async def test_who_waits_farther_on_speaks_of_there(two_cars: Running, words: str, kind: Kind) -> None:
    """Asked about as Ravel Dod, never counted untapped, and never as the mill, which he has not seen today."""
    said = await ask(two_cars, words, "jonas")
    asked = next(line for line in said.splitlines() if "is that right?" in line)
    assert "Ravel Dod" in asked
    last = [e for e in await two_cars.parts.journal.entries("first") if e.by == "jonas" and e.kind is kind][
        -1
    ]
    assert (last.point, last.unconfirmed) == ("ravel-dod", True)


async def test_who_said_that_they_are_there_is_taken_at_their_word(two_cars: Running) -> None:
    """'Parked at Ravel Dod', then 'she's off again': out of Ravel Dod, though her last 'in' was at the mill."""
    await ask(two_cars, "we are at ravel dod", "jonas")
    two_cars.clock.advance(timedelta(minutes=9))
    said = await ask(two_cars, "she's off again", "jonas")
    assert said.startswith("Noted: Maren out of Ravel Dod")


async def test_who_set_out_for_the_next_speaks_of_there_once_the_drive_is_over(sqlite_url: str) -> None:
    """Ana stood at the start and pressed 'on our way' to the mill, and says no 'here': what she sees next is there, and
    counts; she is no longer at the start."""
    async with running(sqlite_url, TWO_CARS) as server:
        await ask(server, "parked at the start")
        await pass_time(server, 1)
        (leave,) = [m for m in await made(server, NoticeKind.LEAVE_NOW) if m.notice.key.person == "ana"]
        await server.call(
            "ana", "POST", f"/v1/events/first/notices/{leave.short}/answer", {"answer": "leaving"}
        )
        server.clock.advance(timedelta(hours=1))
        assert (await ask(server, "no sign of her yet")).startswith("Noted: Maren not at Skelter Mill yet")
        server.clock.advance(timedelta(minutes=15))
        assert (await ask(server, "she's just in")).startswith("Noted: Maren in at Skelter Mill")


async def test_who_was_with_her_last_still_means_there(two_cars: Running) -> None:
    """Ana, who reported her in, remembers 'out' hours late: out of the mill, as she says when."""
    said = await ask(two_cars, "she left at 7:30")
    assert said.startswith("Noted: Maren out of Skelter Mill, 07:30")


async def test_who_is_there_is_told_how_long_to_wait(two_cars: Running) -> None:
    """No leave-by that is over, and no word of driving, for somebody who stands at the point."""
    await ask(two_cars, "we are at ravel dod", "jonas")
    for text in ("how long have i got to wait", "when do i leave"):
        said = (await ask(two_cars, text, "jonas")).splitlines()
        assert said[0] in ("You are at Ravel Dod already.", "Wait.")
        assert any(line.startswith("Wait until ") for line in said)
        assert not any("Drive" in line for line in said)


@pytest.mark.parametrize("person", ["dad", "maren"])
async def test_who_goes_nowhere_reads_whose_leave_by_it_is(sqlite_url: str, person: str) -> None:
    """Home, or she herself, asks when to leave: the first line says that it is Ana who drives."""
    async with running(sqlite_url, TWO_CARS) as server:
        first, second = (await ask(server, "when do i leave", person)).splitlines()[:2]
        assert first == "For Ana, not for you:"
        assert second.startswith("Leave by Sat 05:50 for Skelter Mill")


@pytest.mark.parametrize("words", ["leaving now", "driving now", "on my way"])
async def test_who_leaves_the_hotel_early_is_not_asked_on_the_road(sqlite_url: str, words: str) -> None:
    """Said before any leave-now: it is noted as the departure it is, and nobody at home is sent to telephone a driver."""
    async with running(sqlite_url, TWO_CARS) as server:
        assert (await ask(server, words)).startswith("Noted: you left hotel, Sat 05:00.")
        await pass_time(server, 1.5, every_minutes=2)
        kinds = [(m.notice.key.kind, m.notice.key.person) for m in await server.parts.journal.made("first")]
        assert (NoticeKind.LEAVE_NOW, "ana") not in kinds
        asked = [m.notice.values.person for m in await made(server, NoticeKind.UNREACHED)]  # type: ignore[union-attr]
        assert "ana" not in asked


async def test_not_here_yet_is_never_of_the_start(sqlite_url: str) -> None:
    """Nothing heard of her at all, Ana asked whether she has been there: 'not here yet' is of where Ana waits, and no
    button offers the start."""
    async with running(sqlite_url, TWO_CARS) as server:
        await pass_time(server, 3.5)
        assert await made(server, NoticeKind.LATE)
        assert "In at Start" not in await buttons(server, "where is she")
        said = await ask(server, "wrong person, she's not here yet")
        assert "Noted: Maren not at Skelter Mill yet" in said
        assert "Start" not in said


async def buttons(server: Running, text: str) -> list[str]:
    """The labels under the reply."""
    body = {"text": text, "key": f"b-{server.clock.now():%H%M}"}
    _, reply = await server.call("ana", "POST", "/v1/chat", body)
    return [b["label"] for row in reply["data"]["buttons"] for b in row]


@pytest.mark.parametrize("words", ["we're here", "bin da", "parked up"])
async def test_here_of_crew_who_are_due_at_their_meeting_is_there(two_cars: Running, words: str) -> None:
    """'We're here' of Jonas, who drove to Ravel Dod, counts untapped; then what he sees is seen there."""
    said = await ask(two_cars, words, "jonas")
    assert said.startswith("Noted: you are at Ravel Dod")
    assert "not counted" not in said
    assert "is that right" not in said.lower()
    assert "counts" not in await ask(two_cars, "not here yet", "jonas")
    assert (await ask(two_cars, "she's just in", "jonas")).startswith("Noted: Maren in at Ravel Dod")


async def test_at_a_place_hours_after_a_question_is_no_question(two_cars: Running) -> None:
    """Jonas asked for the cut-off in the morning; 'at ravel dod' in the evening asks whether it is he or she."""
    await ask(two_cars, "will she make the cut-off", "jonas")
    two_cars.clock.advance(timedelta(hours=2))
    said = await ask(two_cars, "at ravel dod", "jonas")
    assert "ut-off" not in said
    assert said.splitlines()[0].endswith("?")
