"""A tracker that sends thousands: each report costs one place on the line, and nobody else waits for them."""

from __future__ import annotations

import asyncio
import threading
from datetime import timedelta
from typing import Any

import pytest

from server.api import building, reports, snapshot
from server.api.building import Built, build
from server.facts.entry import Entry, Fix, Kind, Source
from server.facts.fold import fold
from tests.api.conftest import EVENT, Running


def _track(built: Built, count: int) -> list[Entry]:
    """Positions a minute apart, on the line at 6 km/h."""
    event = built.event
    course = built.courses[event.runner("maren").course]
    found = []
    for i in range(count):
        at, spot = event.starts + timedelta(minutes=1 + i), course.at((1 + i) / 10)
        fix = Fix(spot.lat_deg, spot.lon_deg, 8.0)
        found.append(
            Entry(
                f"p{i}", event.id, "maren", Kind.POSITION, at, at, at, "maren", Source.TRACKER, "t", f"k{i}", fix=fix
            )
        )  # fmt: skip
    return found


def test_one_more_position_is_placed_alone(
    event_text: str, event_files: dict[str, bytes], monkeypatch: pytest.MonkeyPatch
) -> None:
    """The fold is made anew after every report; what was placed before is not placed again."""
    built = build(event_text, event_files)
    placed, place = [], building.place_position

    def counting(*told: Any) -> Any:
        placed.append(told)
        return place(*told)

    monkeypatch.setattr(building, "place_position", counting)
    track = _track(built, 60)
    now = built.event.starts + timedelta(hours=2)
    fold(track[:-1], built.event, now, built.placer)
    assert len(placed) == 59
    fold(track, built.event, now, built.placer)
    assert len(placed) == 60


async def test_a_batch_is_judged_beside_the_loop(running: Running, monkeypatch: pytest.MonkeyPatch) -> None:
    """A thousand positions held back by a dead spot take seconds to judge; a call for help comes in meanwhile."""
    running.clock.advance(timedelta(hours=4))
    threads, judge = set(), reports.doubted

    def judged(*told: Any) -> Any:
        threads.add(threading.current_thread())
        return judge(*told)

    monkeypatch.setattr(reports, "doubted", judged)
    features = [
        {
            "type": "Feature",
            "geometry": {"type": "Point", "coordinates": [e.fix.lon, e.fix.lat]},
            "properties": {"time": e.seen_at.isoformat()},
        }
        for e in _track(running.built, 20)
        if e.fix is not None
    ]
    body = {"type": "FeatureCollection", "features": features}
    status, reply = await running.call("maren", "POST", running.path("positions"), body)
    assert (status, reply["data"]["noted"]) == (200, 20)
    assert threading.main_thread() not in threads


async def test_positions_wait_for_no_picture_that_takes_long(
    running: Running, monkeypatch: pytest.MonkeyPatch
) -> None:
    """Forty positions come while something long is worked out: each is kept and said to be within seconds, no picture is
    queued for each, and once there is time she is judged by all of them."""
    monkeypatch.setattr(snapshot, "SOON_S", 0.2)
    running.clock.advance(timedelta(hours=4))
    await running.parts.ticker.tick(running.clock.now())
    takes, pictures = [0], running.parts.pictures
    take = pictures.take

    async def counted(*told: Any, **more: Any) -> Any:
        takes[0] += 1
        return await take(*told, **more)

    monkeypatch.setattr(pictures, "take", counted)
    track = _track(running.built, 40)

    async def send(e: Entry) -> int:
        assert e.fix is not None
        place = {"type": "Point", "coordinates": [e.fix.lon, e.fix.lat]}
        properties = {"time": e.seen_at.isoformat()}
        body = {"type": "Feature", "geometry": place, "properties": properties}
        return (await running.call("maren", "POST", running.path("positions"), body))[0]

    await running.token("maren")
    async with pictures._kept[EVENT].lock:
        async with asyncio.timeout(30):
            assert await asyncio.gather(*(send(e) for e in track)) == [200] * 40
        assert takes[0] <= 4
        assert len(await running.stored()) == 40
    await running.parts.ticker.tick(running.clock.now())
    assert len((await pictures.take(EVENT, running.clock.now())).entries) == 40
