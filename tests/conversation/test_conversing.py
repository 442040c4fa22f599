"""A message on its way through the server: understood once, done once, and remembered by the server itself."""

from __future__ import annotations

import asyncio
from collections.abc import AsyncIterator
from pathlib import Path
from typing import Any

import pytest

from bot.conversing import Conversing
from server.api.snapshot import Pictures
from server.event.model import Event
from server.journal import Journal, Spoken
from tests.bot.conftest import Prepared, Race, before_start, on_the_way, serving, small_event  # noqa: F401 - fixtures


@pytest.fixture
async def race(on_the_way: Prepared, tmp_path: Path, small_event: Event) -> AsyncIterator[Race]:  # noqa: F811
    """The race at 07:30: Maren is between the mill and the gate."""
    async with serving(on_the_way, tmp_path, small_event) as served:
        yield served


async def _crash(*_args: Any, **_kwargs: Any) -> bool:
    raise OSError("the process died here")


async def test_a_message_that_comes_again_after_a_crash_means_what_it_meant(
    race: Race, monkeypatch: pytest.MonkeyPatch
) -> None:
    """'She is in', noted but not answered: handed over again it is the same point, and no second entry."""
    race.at("08:45")
    sent_at = race.clock.now()
    with monkeypatch.context() as crashed:
        crashed.setattr(Journal, "keep_turn", _crash)
        await race.say("ines", "maren is through", key="k1", sent_at=sent_at)
    first = await race.entries("through")
    race.at("08:46")
    again = await race.say("ines", "maren is through", key="k1", sent_at=sent_at)
    assert await race.entries("through") == first
    assert [e.point for e in first] == ["moor"]  # type: ignore[attr-defined]
    assert again.text.startswith("I had that already; it counts once.")


async def test_what_was_spoken_of_outlives_the_process(race: Race) -> None:
    """'Seen at the gate?' yes, 'when?': the time is written to a bot that was started again since."""
    race.at("08:05")
    await race.say("ana", "when is she at the gate")
    race.desk = Conversing(race.api)
    race.at("08:06")
    assert "Tove" in (await race.say("both", "and tove?")).text
    noted = await race.say("ana", "in at gate 7:29")
    race.desk = Conversing(race.api)
    assert "is that right?" in noted.text
    await race.say("ana", "right")
    assert await race.entries("confirmed")


async def test_a_reply_is_kept_only_where_something_was_done(race: Race) -> None:
    """A question asked again is answered as things stand now."""
    await race.say("ana", "where is she", key="q")
    assert await race.journal.turn("test:ana", "q") is None
    await race.say("ana", "in at moor cross 7:29", key="r")
    assert await race.journal.turn("test:ana", "r") is not None


async def test_another_servers_memory_is_not_overwritten(race: Race, monkeypatch: pytest.MonkeyPatch) -> None:
    """The reply stands all the same: what was decided is done."""
    kept = Journal.keep_turn

    async def late(journal: Journal, spoken: Spoken, *args: Any, **more: Any) -> bool:
        await kept(journal, spoken, race.clock.now())
        return await kept(journal, spoken, *args, **more)

    monkeypatch.setattr(Journal, "keep_turn", late)
    race.at("08:45")
    assert "Noted" in (await race.say("vera", "maren in at moor cross 8:44")).text


async def test_two_posts_of_one_message_at_once_count_once(race: Race) -> None:
    """The second waits for the first and gets its answer."""
    race.at("08:05")
    both = await asyncio.gather(*(race.say("olga", "maren is in", key="k2") for _ in range(2)))
    assert both[0] == both[1]
    assert len(await race.entries("in")) == 2  # the mill and this one


async def test_whoever_has_not_written_before_is_told_that_the_server_is_away(race: Race) -> None:
    """In the language their channel says, and it is handed over again."""
    await race.runner.cleanup()
    race.desk = Conversing(race.api)
    reply = await race.say("both", "wo ist sie", language="de")
    assert reply.text.startswith("Der Server ist gerade nicht zu erreichen.")
    assert reply.again


async def test_a_picture_without_what_a_message_said(race: Race) -> None:
    """As if its entries had not come, nor the notices that went out because of them."""
    race.at("08:45")
    await race.say("olga", "maren retired at moor 8:44", key="k3")
    pictures, now = Pictures(race.journal), race.clock.now()
    whole = await pictures.take("hill", now)
    less = await pictures.take("hill", now, lambda e: e.key == "k3")
    assert "k3" in {e.key for e in whole.entries}
    assert {e.key for e in whole.entries} - {e.key for e in less.entries} == {"k3"}
    gone = {e.id for e in whole.entries if e.key == "k3"}
    assert [m for m in whole.situation.made if gone & set(m.notice.facts)]
    assert not [m for m in less.situation.made if gone & set(m.notice.facts)]
    assert (await pictures.take("hill", now)).entries == whole.entries
