"""Event files: numbered versions, stable ids, nothing with check-ins dropped, people not mistaken."""

from __future__ import annotations

import asyncio
from collections.abc import Callable
from dataclasses import replace
from datetime import datetime

import pytest

from server.event.model import Event, Person
from server.facts.entry import Entry
from server.journal import ClashError, Journal, RefusedError, UnknownError

TEXT = "[event]\n"
FILES = {"route.gpx": b"\x00\xff"}


async def test_versions(journal: Journal, event: Event, start: datetime) -> None:
    """Each changed text or file is a new number, the same again is not, and all stay readable."""
    assert await journal.store_event(TEXT, FILES, event, "ana", start) == 1
    assert await journal.store_event(TEXT, FILES, event, "ana", start) == 1
    assert await journal.store_event(TEXT + "# new\n", FILES, event, "jonas", start) == 2
    assert await journal.store_event(TEXT + "# new\n", {"route.gpx": b"2"}, event, "ana", start) == 3
    first, last = await journal.load_event("long-stile", 1), await journal.load_event("long-stile")
    assert (first.text, dict(first.files), first.by, first.at) == (TEXT, FILES, "ana", start)
    assert (last.version, dict(last.files)) == (3, {"route.gpx": b"2"})
    assert [(v.version, v.by) for v in await journal.event_versions("long-stile")] == [
        (1, "ana"),
        (2, "jonas"),
        (3, "ana"),
    ]
    assert [(v.event, v.version) for v in await journal.list_events()] == [("long-stile", 3)]


async def test_two_load_at_once(journal: Journal, event: Event, start: datetime) -> None:
    """Two different files stored at the same moment become two versions, neither is lost."""
    numbers = await asyncio.gather(
        *(journal.store_event(f"{TEXT}# {i}\n", FILES, event, "ana", start) for i in range(4))
    )
    assert sorted(numbers) == [1, 2, 3, 4]


@pytest.mark.parametrize("version", [None, 7])
async def test_unknown(journal: Journal, version: int | None) -> None:
    """What is not there is said to be unknown."""
    with pytest.raises(UnknownError, match="long-stile"):
        await journal.load_event("long-stile", version)
    with pytest.raises(UnknownError, match="no event"):
        await journal.head("long-stile")


async def test_a_point_with_check_ins_is_not_dropped(
    loaded: Journal, event: Event, entry: Callable[..., Entry], start: datetime
) -> None:
    """Dropping a point or runner with entries is refused by name, and changes nothing; others may go."""
    await loaded.append(entry())
    await loaded.append(entry("k2", point="typo"))
    assert await loaded.points_with_check_ins("long-stile") == {"mill", "typo"}
    [course] = event.courses

    def without(point: str) -> Event:
        kept = tuple(p for p in course.points if p.id != point)
        return replace(event, courses=(replace(course, points=kept),))

    with pytest.raises(RefusedError, match="drops mill"):
        await loaded.store_event("other", FILES, without("mill"), "ana", start)
    with pytest.raises(RefusedError, match="drops maren"):
        await loaded.store_event("other", FILES, replace(event, runners=()), "ana", start)
    assert [v.version for v in await loaded.event_versions("long-stile")] == [1]
    assert await loaded.store_event("other", FILES, without("chapel"), "ana", start) == 2


async def test_a_person_is_one_across_events(loaded: Journal, event: Event, start: datetime) -> None:
    """The same id with another name in another event is refused; with the same name it is the same person,
    whose address serves both events."""
    other = replace(event, id="moss-fifty", name="Moss Fifty")
    stranger = replace(other, people=(Person("ana", "Anastasia"), *event.people[:1], *event.people[2:]))
    with pytest.raises(ClashError, match="is Ana in another event"):
        await loaded.store_event(TEXT, FILES, stranger, "x", start)
    await loaded.store_event(TEXT, FILES, other, "x", start)
    assert [p.event for p in await loaded.parts("ana")] == ["long-stile", "moss-fifty"]
    assert await loaded.person_at("telegram", "111") == "ana"
    ana = await loaded.person("ana")
    assert ana == event.person("ana")
