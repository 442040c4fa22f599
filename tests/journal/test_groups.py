"""Chats of a whole crew: bound to an event, told over their own channel, followed when they move, forgotten with it."""

from __future__ import annotations

from collections.abc import Callable
from datetime import datetime, timedelta

from server.event.model import Event
from server.journal import Journal, Outcome
from server.watch.notice import Notice

EVENT = "long-stile"
SECOND = timedelta(seconds=1)
Make = Callable[..., Notice]


async def test_a_group_is_bound_once_and_released(loaded: Journal, start: datetime) -> None:
    """Bound again it is the same; released it is gone; another event's groups are its own."""
    first = await loaded.bind_group(EVENT, "telegram", "-500", "ana", start)
    again = await loaded.bind_group(EVENT, "telegram", "-500", "tomas", start + SECOND)
    assert again == first
    assert (first.address, first.bound_by, first.bound_at) == ("-500", "ana", start)
    assert first.id.startswith("group:")
    assert await loaded.groups(EVENT) == (first,)
    assert await loaded.groups("another") == ()
    assert await loaded.unbind_group(EVENT, "telegram", "-500")
    assert not await loaded.unbind_group(EVENT, "telegram", "-500")
    assert await loaded.groups(EVENT) == ()


async def test_a_notice_to_a_group_goes_to_its_chat(loaded: Journal, notice: Make, start: datetime) -> None:
    """Its delivery is like any other; the chat that has moved is followed, with what waits for it."""
    group = await loaded.bind_group(EVENT, "telegram", "-500", "ana", start)
    (made,) = await loaded.add_notices([notice(group.id)], start)
    assert not made.failed
    (delivery,) = await loaded.claim(["telegram"], start)
    assert delivery.address == "-500"
    await loaded.report(delivery.id, Outcome.MOVED, start, tries=1, moved_to="-100500")
    (moved,) = await loaded.claim(["telegram"], start + SECOND)
    assert moved.address == "-100500"
    (now,) = await loaded.groups(EVENT)
    assert (now.id, now.address) == (group.id, "-100500")


async def test_a_group_that_takes_nothing_more(loaded: Journal, notice: Make, start: datetime) -> None:
    """The bot was removed: what is owed is marked failed, and goes out again once it is bound anew."""
    group = await loaded.bind_group(EVENT, "telegram", "-500", "ana", start)
    await loaded.address_gone("telegram", "-500", start)
    (made,) = await loaded.add_notices([notice(group.id)], start)
    assert made.failed
    await loaded.bind_group(EVENT, "telegram", "-500", "ana", start + SECOND)
    (later,) = await loaded.add_notices([notice(group.id, 2)], start + SECOND)
    assert not later.failed


async def test_groups_are_forgotten_with_their_event(loaded: Journal, event: Event, start: datetime) -> None:
    """At the keep-by date nothing is left by which a group could be reached."""
    await loaded.bind_group(EVENT, "telegram", "-500", "ana", start)
    assert event.keep_until is not None
    await loaded.sweep(event.keep_until)
    assert await loaded.groups(EVENT) == ()
