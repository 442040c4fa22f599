"""A runner who calls for help for another: whoever answers for the one named hears it too, at once."""

from __future__ import annotations

from collections.abc import AsyncIterator
from datetime import timedelta

import pytest

from server.facts.entry import Kind
from server.watch.notice import NoticeKind
from tests.api.conftest import Running
from tests.api.test_little_heard import FIRST, ask, running
from tests.api.test_told_of_help import _joins

TWO = (
    FIRST.replace("@points@", "")
    .replace("@drives@", "")
    .replace("@meetings@", "")
    .replace('"25:00" } } ]', '"25:00" } }, { name = "Nora Vale", target = { finish = "26:00" } } ]')
    .replace('people = [ { name = "Maren" },', 'people = [ { name = "Maren" }, { name = "Nora Vale" },')
    .replace(
        "calls_race_control = true } ] } ]",
        'calls_race_control = true, runner = "maren" } ] }, { name = "Bo", phone = "+44 1632 960013", parts = [ '
        '{ kind = "safety contact", ladder = 1, runner = "nora-vale" } ] } ]',
    )
    .replace('{ point = "skelter-mill",', '{ point = "skelter-mill", runner = "maren",')
    .replace("drives = true } ] }", 'drives = true, runner = "maren" } ] }')
)


@pytest.fixture
async def two(sqlite_url: str) -> AsyncIterator[Running]:
    """Two runners who do not know each other, an hour in, each with somebody at home who has joined."""
    async with running(sqlite_url, TWO) as server:
        server.clock.advance(timedelta(hours=1))
        for person in ("dad", "bo"):
            await _joins(server, person)
        yield server


async def _called(server: Running) -> dict[str, set[str]]:
    """Who was told of a call for help, by the runner it is about."""
    found: dict[str, set[str]] = {}
    for m in await server.parts.journal.made("first"):
        if m.notice.key.kind is NoticeKind.ASKED_FOR_HELP:
            found.setdefault(m.notice.key.runner, set()).add(m.notice.key.person)
    return found


async def test_the_one_named_has_her_alarm_too(two: Running) -> None:
    """Both homes are told; taken back, it is taken back for both."""
    said = await ask(two, "help nora is lying here, she does not move", "maren")
    assert "112" in said.splitlines()[0]
    assert "Bo" in said and "Dad" in said  # noqa: PT018
    told = await _called(two)
    assert "bo" in told["nora-vale"]
    assert "dad" in told["maren"]
    (hers,) = (e for e in await two.parts.journal.entries("first") if e.runner == "nora-vale")
    assert (hers.kind, hers.by, hers.words) == (
        Kind.ASKED_FOR_HELP,
        "maren",
        "help nora is lying here, she does not move",
    )
    await ask(two, "undo", "maren")
    back = [e for e in await two.parts.journal.entries("first") if e.kind is Kind.TAKEN_BACK]
    assert {e.about for e in back} >= {hers.id}


@pytest.mark.parametrize(
    "words",
    [
        "help, i have fallen",
        "maren has fallen, nora is with her, help",
        "help, i am at nora's car, can't walk",
    ],
)
async def test_nobody_else_is_alarmed(two: Running, words: str) -> None:
    """Where no other is named, or the one it is about is, or something of another's, it is that one's alarm alone."""
    await ask(two, words, "maren")
    assert set(await _called(two)) == {"maren"}
