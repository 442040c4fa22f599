"""The event loop is never held up: what takes long is worked out in threads, and once however many people ask."""

from __future__ import annotations

import asyncio
import asyncio.events
import time
from collections import Counter
from collections.abc import Iterator
from contextlib import contextmanager
from datetime import timedelta
from typing import Any

import pytest

from server.api import board, snapshot
from server.api.building import Built, build
from server.api.who_may import May
from server.watch import crew_routes
from tests.api.conftest import EVENT, RUNNER
from tests.api.field import many
from tests.api.test_never_deaf import served

pytestmark = pytest.mark.usefixtures("built_afresh")  # what a server takes to work out is measured

RUNNERS = 12
LONGEST_S = 0.15
"""One step of the loop may work for so long (own choice): what a person does not notice, and no heartbeat misses."""


def _name(callback: Any) -> str:
    task = getattr(callback, "__self__", None)
    step_of = task.get_coro() if isinstance(task, asyncio.Task) else callback
    return str(getattr(step_of, "__qualname__", type(step_of)))


@contextmanager
def longest_step() -> Iterator[dict[str, float]]:
    """The longest that one step of the loop works, by what it is a step of; in seconds of its own thread's work, so that
    a busy machine makes none longer."""
    found: dict[str, float] = {"": 0.0}
    really = asyncio.events.Handle._run

    def timed(self: Any) -> None:
        callback, began = self._callback, time.thread_time()
        really(self)
        took = time.thread_time() - began
        name = _name(callback)
        found[name] = max(found.get(name, 0.0), took)

    asyncio.events.Handle._run = timed  # type: ignore[method-assign]
    try:
        yield found
    finally:
        asyncio.events.Handle._run = really  # type: ignore[method-assign]


async def test_no_step_of_the_loop_takes_long(
    sqlite_url: str, event_text: str, event_files: dict[str, bytes], built: Built
) -> None:
    """The first picture of a field after a start, its board as values and as a page, who does what, reports, a call for
    help, a tick: none of it is worked out on the loop."""
    text = many(built.event, RUNNERS)
    field = await asyncio.to_thread(build, text, event_files)
    async with served(sqlite_url, text, event_files, field, timedelta(hours=6)) as running:
        headers = {"Authorization": f"Bearer {await running.token('olga')}"}
        with longest_step() as steps:
            for path in ("people", "board"):
                assert (await running.get("olga", f"/v1/events/{EVENT}/{path}"))[0] == 200
            for path in ("/", f"/board/{EVENT}/part"):
                async with running.client.get(path, headers=headers) as page:
                    assert page.status == 200
            for call in ("where", "next", "plan", "facts", "cutoffs", "cards"):
                assert (await running.get("ana", running.path(call)))[0] == 200
            assert (await running.get("ana", f"/v1/events/{EVENT}/notices"))[0] == 200
            assert (await running.report("vera", "in", "mill"))[0] == 200
            assert (await running.report("ana", "asked for help", words="her ankle"))[0] == 200
            await running.parts.ticker.tick(running.clock.now())
        longest = max(steps, key=lambda name: steps[name])
        assert steps[longest] < LONGEST_S, longest


async def test_the_measure_sees_a_heavy_step() -> None:
    """It can fail."""

    async def heavy() -> None:
        until = time.thread_time() + 0.2
        while time.thread_time() < until:
            pass

    with longest_step() as steps:
        await asyncio.create_task(heavy())
    assert max(steps.values()) >= 0.2


async def test_each_runners_meetings_are_worked_out_once(
    sqlite_url: str, event_text: str, event_files: dict[str, bytes], built: Built, monkeypatch: pytest.MonkeyPatch
) -> None:  # fmt: skip
    """However many people there are and ask; and who comes in which car is worked out once for all who share people."""
    text = many(built.event, 3)
    field = build(text, event_files)
    async with served(sqlite_url, text, event_files, field, timedelta(hours=6)) as running:
        seen = await running.parts.pictures.take(EVENT, running.clock.now())
        counted: Counter[str] = Counter()
        told, parties = snapshot.meetings_as_told, crew_routes.parties

        def count_told(*given: Any) -> Any:
            counted["meetings"] += 1
            return told(*given)

        def count_parties(*given: Any) -> Any:
            counted["parties"] += 1
            return parties(*given)

        monkeypatch.setattr(snapshot, "meetings_as_told", count_told)
        monkeypatch.setattr(crew_routes, "parties", count_parties)
        shown = [board.people(seen, May.YES) for _ in range(2)]
        for person in ("olga", "ana", "ana-1"):
            board.board(seen, seen.event.parts_of(person), person)
        assert counted == {"meetings": 3, "parties": 3}
        bound = {p.name: p.bound_for for p in shown[0].people}
        assert bound["Ana"] == bound["Ana 1"] == bound["Ana 2"] != ""
        assert RUNNER in {r.id for r in seen.event.runners}
