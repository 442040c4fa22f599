"""Entries: counted once, conflicts kept, numbered without holes, times aware, read back as they were."""

from __future__ import annotations

import asyncio
from collections import Counter
from collections.abc import Callable
from datetime import UTC, datetime, timedelta, timezone
from typing import Any

import pytest

from server.facts.entry import Entry, Fix, Kind, Retired, Source
from server.journal import Journal, JournalError, Status, UnknownError, content_key, entry_id

Make = Callable[..., Entry]


async def test_there_and_back(loaded: Journal, entry: Make) -> None:
    """Every field of an entry comes back as it went in, and the id is the one a sender can work out."""
    full = entry(
        kind=Kind.RETIRED,
        via="telegram",
        unconfirmed=True,
        doubt="guessed",
        replaces="e-1",
        about="e-2",
        how=Retired.TIMED_OUT,
        fix=Fix(54.1, -2.2, 12.5),
        until=datetime(2027, 6, 19, 12, tzinfo=UTC),
        amount=timedelta(minutes=7, microseconds=3),
        factor=1.1,
        edge="in",
        person="ana",
        words="Knie, 'kaputt' \u2713\n",
        seen_spread=timedelta(seconds=90),
    )
    done = await loaded.append(full)
    assert done.status is Status.NOTED
    assert done.entry.id == entry_id("telegram:111", "k1")
    [back] = await loaded.entries("long-stile")
    assert back == done.entry
    assert await loaded.entry(back.id) == back


async def test_same_again_counts_once(loaded: Journal, entry: Make, start: datetime) -> None:
    """The same key and content again, sent and received later by another way, changes nothing."""
    first = await loaded.append(entry())
    again = await loaded.append(entry(received_at=start + timedelta(hours=9), via="web", unconfirmed=True))
    assert (again.status, again.number, again.entry) == (Status.SAME_AGAIN, 1, first.entry)
    assert len(await loaded.entries("long-stile")) == 1
    assert str(await loaded.head("long-stile")) == "1.0"


async def test_conflict_is_kept_and_never_overwrites(loaded: Journal, entry: Make) -> None:
    """Other content under a used key is kept beside the first, once, and said so; the first stays."""
    first = await loaded.append(entry())
    for _ in range(2):
        other = await loaded.append(entry(point="chapel"))
        assert (other.status, other.entry) == (Status.CONFLICT, first.entry)
    assert [e.point for e in await loaded.entries("long-stile")] == ["mill"]
    [conflict] = await loaded.conflicts("long-stile")
    assert (conflict.entry, conflict.kept.point) == (first.entry.id, "chapel")


async def test_same_key_of_two_senders_is_two_entries(loaded: Journal, entry: Make) -> None:
    """Keys are unique per sender, not among senders."""
    await loaded.append(entry())
    assert (await loaded.append(entry(sender="web:7"))).status is Status.NOTED


async def test_since_and_head(loaded: Journal, entry: Make) -> None:
    """`since` gives what came after a number, and the head changes with each entry."""
    heads = {str(await loaded.head("long-stile"))}
    for i in range(5):
        assert (await loaded.append(entry(f"k{i}"))).number == i + 1
        heads.add(str(await loaded.head("long-stile")))
    assert [e.key for e in await loaded.entries("long-stile", since=3)] == ["k3", "k4"]
    assert len(heads) == 6


async def test_times_keep_their_moment(loaded: Journal, entry: Make) -> None:
    """A time given with an offset is the same moment when it comes back (12:00+01:00 is 11:00 UTC)."""
    noon = datetime(2027, 6, 19, 12, tzinfo=timezone(timedelta(hours=1)))
    await loaded.append(entry(seen_at=noon))
    [back] = await loaded.entries("long-stile")
    assert back.seen_at == datetime(2027, 6, 19, 11, tzinfo=UTC)
    assert back.seen_at.utcoffset() == timedelta(0)


@pytest.mark.parametrize(
    ("change", "error", "words"),
    [
        ({"seen_at": datetime(2027, 6, 19, 12)}, JournalError, "seen_at: .* no time zone"),  # noqa: DTZ001
        ({"sent_at": datetime(2027, 6, 19, 12)}, JournalError, "sent_at: .* no time zone"),  # noqa: DTZ001
        ({"until": datetime(2027, 6, 19, 12)}, JournalError, "until: .* no time zone"),  # noqa: DTZ001
        ({"key": ""}, JournalError, "key: is empty"),
        ({"sender": ""}, JournalError, "sender: is empty"),
        ({"event": "nowhere"}, UnknownError, "no event 'nowhere'"),
    ],
)
async def test_refused(
    loaded: Journal, entry: Make, change: dict[str, object], error: type[Exception], words: str
) -> None:
    """An entry that cannot be kept is refused with the field and the reason, and leaves no trace."""
    with pytest.raises(error, match=words):
        await loaded.append(entry(**change))
    assert str(await loaded.head("long-stile")) == "0.0"


async def test_many_at_once_are_numbered_without_holes(loaded: Journal, entry: Make) -> None:
    """Forty appends at once, every key twice, give twenty entries numbered 1 to 20."""
    done = await asyncio.gather(*(loaded.append(entry(f"k{i % 20}")) for i in range(40)))
    assert sorted(d.number for d in done if d.status is Status.NOTED) == list(range(1, 21))
    assert sum(d.status is Status.SAME_AGAIN for d in done) == 20
    assert len(await loaded.entries("long-stile")) == 20


def test_key_from_content(entry: Make, start: datetime) -> None:
    """A tracker without keys gets one from what it said: alike for a resend, other for another place."""
    here = entry(kind=Kind.POSITION, source=Source.TRACKER, key="", fix=Fix(54.1, -2.2))
    assert content_key(here) == content_key(
        entry(kind=Kind.POSITION, source=Source.TRACKER, key="x", fix=Fix(54.1, -2.2), received_at=start)
    )
    assert content_key(here) != content_key(
        entry(kind=Kind.POSITION, source=Source.TRACKER, fix=Fix(54.2, -2.2))
    )


async def test_pictures(loaded: Journal, start: datetime) -> None:
    """A picture comes back byte for byte; the same one twice counts once."""
    ids = {
        await loaded.keep_picture("long-stile", None, "ana", b"\x89PNG\x00", "image/png", start) for _ in "ab"
    }
    assert len(ids) == 1
    assert await loaded.picture(ids.pop()) == (b"\x89PNG\x00", "image/png")
    assert await loaded.picture("p-none") is None


async def test_many_at_once(loaded: Journal, entry: Callable[..., Entry], start: datetime) -> None:
    """A thousand in one transaction, as if each had been handed in: numbered without a hole, the same again known within
    the batch too, what differs kept as a conflict; one that can't be kept leaves none."""
    await loaded.append(entry("k0"))
    batch = [entry(f"k{n}") for n in range(1000)]
    done = await loaded.append_all([*batch, entry("k7"), entry("k8", words="other")])
    assert Counter(d.status for d in done) == {Status.NOTED: 999, Status.SAME_AGAIN: 2, Status.CONFLICT: 1}
    assert [d.number for d in done[:1000]] == list(range(1, 1001))
    kept = await loaded.entries("long-stile")
    assert [e.key for e in kept] == [f"k{n}" for n in range(1000)]
    assert str(await loaded.head("long-stile")) == "1000.0"
    assert [c.kept.words for c in await loaded.conflicts("long-stile")] == ["other"]
    assert await loaded.append_all([]) == []
    with pytest.raises(JournalError, match="is empty"):
        await loaded.append_all([entry("new"), entry("")])
    with pytest.raises(JournalError, match="several events"):
        await loaded.append_all([entry("new"), entry("newer", event="another")])
    assert (await loaded.append(entry("last"))).number == 1001


async def test_what_many_hand_in_at_one_moment_goes_together(
    loaded: Journal, entry: Callable[..., Entry], monkeypatch: pytest.MonkeyPatch
) -> None:
    """In two transactions, not one each; one that can't be kept is refused by itself, and each learns what became of
    its own."""
    transactions = 0
    really = loaded._store.writing

    async def counted(work: Any, **how: Any) -> Any:
        nonlocal transactions
        transactions += 1
        return await really(work, **how)

    monkeypatch.setattr(loaded._store, "writing", counted)
    senders = [f"tracker {n}" for n in range(40)]
    done = await asyncio.gather(*(loaded.append_all([entry("k", sender=s)]) for s in senders))
    assert [d.entry.sender for each in done for d in each] == senders
    assert sorted(d.number for each in done for d in each) == list(range(1, 41))
    assert transactions <= 2
    again, wrong, other = await asyncio.gather(
        *(loaded.append_all([e]) for e in (entry("k", sender=senders[7]), entry(""), entry("l"))),
        return_exceptions=True,
    )
    assert not isinstance(again, BaseException)
    assert not isinstance(other, BaseException)
    assert isinstance(wrong, JournalError)
    assert [d.status for d in (*again, *other)] == [Status.SAME_AGAIN, Status.NOTED]
