"""Others' passages: kept once, corrected, taken back, read on, within a cap, and gone with the event's personal data."""

from __future__ import annotations

from datetime import datetime, timedelta
from pathlib import Path

import pytest

from server.facts.passages import Passage
from server.journal import Journal, JournalHead, PassagesKept, RefusedError, UnknownError, passages
from server.journal.values import Pulse

EVENT = "long-stile"


async def pulse(journal: Journal, head: JournalHead, now: datetime) -> Pulse:
    return await journal.pulse(EVENT, head, None, now, now)


async def test_the_same_again_changes_nothing(loaded: Journal, start: datetime) -> None:
    """Twice in one call the last counts; the same again moves no head; another time replaces; none takes back."""
    at = start + timedelta(hours=3)
    some = [
        Passage("7", "mill", at),
        Passage("8", "mill", at),
        Passage("7", "mill", at + timedelta(minutes=1)),
    ]
    assert await loaded.keep_passages(EVENT, some, "olga") == PassagesKept(2, 0, 0)
    first = (await pulse(loaded, JournalHead(0, 0), start)).head
    assert await loaded.keep_passages(EVENT, some, "olga") == PassagesKept(0, 0, 2)
    again = await pulse(loaded, first, start)
    assert (again.head, again.passages) == (first, ())
    assert await loaded.keep_passages(
        EVENT, [Passage("8", "mill", None), Passage("9", "mill", None)], "olga"
    ) == (PassagesKept(0, 1, 1))
    later = await pulse(loaded, first, start)
    assert later.head.number == first.number
    assert later.passages == (Passage("8", "mill", None),)
    assert await loaded.passages(EVENT) == (
        Passage("7", "mill", at + timedelta(minutes=1)),
        Passage("8", "mill", None),
    )


async def test_too_many_are_refused_whole(
    loaded: Journal, start: datetime, monkeypatch: pytest.MonkeyPatch
) -> None:
    """What is wrong and what to do; what was there stays, and may still be corrected."""
    monkeypatch.setattr(passages, "MOST", 3)
    await loaded.keep_passages(EVENT, [Passage(str(n), "mill", start) for n in range(3)], "olga")
    with pytest.raises(RefusedError, match=r"would have 4 passages, at most 3 .* nothing of this was stored"):
        await loaded.keep_passages(EVENT, [Passage("0", "mill", None), Passage("3", "mill", start)], "olga")
    assert {p.at for p in await loaded.passages(EVENT)} == {start}
    assert (await loaded.keep_passages(EVENT, [Passage("0", "mill", None)], "olga")).changed == 1
    with pytest.raises(UnknownError):
        await loaded.keep_passages("no-such", [], "olga")


async def test_a_feed_of_thousands_at_once(loaded: Journal, start: datetime) -> None:
    """More than one statement takes, whole and once."""
    some = [Passage(str(n), p, start + timedelta(minutes=n)) for n in range(1000) for p in ("mill", "chapel")]
    assert (await loaded.keep_passages(EVENT, some, "olga")).added == 2000
    assert (await loaded.keep_passages(EVENT, some, "olga")).same == 2000
    assert len(await loaded.passages(EVENT)) == 2000


async def test_they_go_with_the_event(loaded: Journal, start: datetime, tmp_path: Path) -> None:
    """Copied with it; deleted with its personal data, and a reader who had them hears of it."""
    await loaded.keep_passages(EVENT, [Passage("7", "mill", start)], "olga")
    await loaded.export_event(EVENT, tmp_path / "event.jsonl")
    assert '"table":"passage"' in (tmp_path / "event.jsonl").read_text(encoding="utf-8")
    before = (await pulse(loaded, JournalHead(0, 0), start)).head
    await loaded.blank_event(EVENT, start)
    after = await pulse(loaded, before, start)
    assert await loaded.passages(EVENT) == ()
    assert after.head.blanks > before.blanks
