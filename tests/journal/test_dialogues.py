"""What was spoken of is kept for a day, a turn for two; both are gone with the person."""

from __future__ import annotations

from dataclasses import replace
from datetime import UTC, datetime, timedelta

from server.journal import Journal, Spoken

NOW = datetime(2027, 6, 19, 12, tzinfo=UTC)
HOUR = timedelta(hours=1)


async def test_the_newest_is_known_and_an_older_reader_does_not_overwrite_it(journal: Journal) -> None:
    """Two servers that answer one person: what the first kept stays, the second is told."""
    first = await journal.spoken("telegram", "7", "", NOW)
    assert first == Spoken("telegram", "7", "")
    assert await journal.keep_turn(replace(first, body="a"), NOW)
    assert not await journal.keep_turn(replace(first, body="b"), NOW)
    second = await journal.spoken("telegram", "7", "", NOW)
    assert (second.version, second.body) == (1, "a")
    assert await journal.keep_turn(replace(second, body="c"), NOW)
    assert not await journal.keep_turn(replace(second, body="d"), NOW)
    assert (await journal.spoken("telegram", "7", "", NOW)).body == "c"


async def test_each_place_has_its_own(journal: Journal) -> None:
    """What is said in a group is no answer to what was asked between the two of us."""
    await journal.keep_turn(Spoken("telegram", "7", "", body="ours"), NOW)
    await journal.keep_turn(Spoken("telegram", "7", "-5", body="the group's"), NOW)
    assert (await journal.spoken("telegram", "7", "", NOW)).body == "ours"
    assert (await journal.spoken("telegram", "7", "-5", NOW)).body == "the group's"
    assert (await journal.spoken("telegram", "8", "-5", NOW)).body == ""


async def test_a_turn_is_kept_once(journal: Journal) -> None:
    """The first answer to a message is the answer to it."""
    assert await journal.turn("telegram:7", "k") is None
    spoken = Spoken("telegram", "7", "")
    await journal.keep_turn(spoken, NOW, "telegram:7", "k", "noted")
    await journal.keep_turn(replace(spoken, version=1), NOW, "telegram:7", "k", "noted twice")
    assert await journal.turn("telegram:7", "k") == "noted"
    assert await journal.turn("telegram:8", "k") is None


async def test_both_are_swept(journal: Journal) -> None:
    """A day is at its end after 24 hours, not before; a turn after 48."""
    await journal.keep_turn(Spoken("telegram", "7", "", body="a"), NOW, "telegram:7", "k", "noted")
    await journal.sweep(NOW + 24 * HOUR)
    assert (await journal.spoken("telegram", "7", "", NOW + 24 * HOUR)).body == "a"
    later = NOW + 24 * HOUR + timedelta(seconds=1)
    assert (await journal.spoken("telegram", "7", "", later)).body == ""
    await journal.sweep(later)
    assert (await journal.spoken("telegram", "7", "", NOW)).version == 0
    assert await journal.turn("telegram:7", "k") == "noted"
    await journal.sweep(NOW + 48 * HOUR + timedelta(seconds=1))
    assert await journal.turn("telegram:7", "k") is None


async def test_unbinding_an_address_forgets_what_was_spoken_of(journal: Journal) -> None:
    """Nothing of it stays for whoever has the address next."""
    await journal.keep_turn(Spoken("telegram", "7", "", body="a"), NOW, "telegram:7", "k", "noted")
    await journal.keep_turn(Spoken("telegram", "7", "-5", body="b"), NOW)
    await journal.keep_turn(Spoken("telegram", "8", "", body="c"), NOW)
    await journal.unbind("telegram", "7")
    assert (await journal.spoken("telegram", "7", "", NOW)).version == 0
    assert (await journal.spoken("telegram", "7", "-5", NOW)).version == 0
    assert await journal.turn("telegram:7", "k") is None
    assert (await journal.spoken("telegram", "8", "", NOW)).body == "c"
