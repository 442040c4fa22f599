"""How the server grows with the field and the journal: `python -m tests.bench scale`, one line of JSON a size.

The demo's race, six hours after its start, with as many runners as asked, each with a crew of her own or (beyond
`--crews`) with nobody; a journal of check-ins where each has been and of positions between them. All figures are CPU of
this process, so that a busy machine makes none larger; the caller's own work over HTTP is in them. Each size runs in a
process of its own.
"""

from __future__ import annotations

import argparse
import asyncio
import gc
import json
import resource
import statistics
import subprocess
import sys
import tempfile
import time
from collections.abc import AsyncIterator, Awaitable, Callable, Iterator, Sequence
from contextlib import asynccontextmanager
from dataclasses import dataclass
from datetime import datetime, timedelta
from pathlib import Path

from aiohttp.test_utils import TestClient, TestServer

from server.api.building import Built, build
from server.api.parts import PARTS
from server.app import Options, make_app
from server.clock import SteppedClock
from server.event.model import Goal
from server.facts.entry import Entry, Fix, Kind, Source
from server.journal import Journal
from server.log import set_up
from server.plan.timetable import Row
from server.settings import Settings
from tests.api.conftest import DEMO, EVENT, EXTRA_PEOPLE, Running
from tests.api.field import many
from tests.conftest import Postgres

AFTER = timedelta(hours=6)
REPORTED = 8
"""Reports: their median is a report's cost. One before them counts in nothing, as what is used first is made ready then."""
CREWS = 100
"""So many of the runners have crews, unless more are asked for: a field is runners with crews and runners without."""
AT_ONCE = 1000
"""Entries that are put into the journal together."""
MINUTE = timedelta(minutes=1)
TRACKED = 30
"""So many at the most send positions."""


@dataclass(frozen=True, slots=True)
class Size:
    """One size to measure."""

    database: str
    runners: int
    entries: int
    crews: int


def journal_of(built: Built, entries: int, until: datetime) -> Iterator[list[Entry]]:
    """Of each runner her arrivals by plan up to `until`, and positions evenly between her start and then, so that there
    are `entries` of all runners together."""
    each = entries // len(built.event.runners)
    for runner in built.event.runners:
        table, course = built.timetables[runner.id], built.courses[runner.course]
        been = [r for r in table.rows[1:-1] if runner.start + r.arrive[Goal.B] <= until][:each]
        found = [
            _entry(runner.id, Kind.IN, runner.start + r.arrive[Goal.B], f"in-{r.point}", point=r.point)
            for r in been
        ]
        left = max(each - len(found), 0)
        for n in range(left):
            at = (until - runner.start) * (n + 0.5) / left
            spot = course.at(km_by_plan(table.rows, at))
            fix = Fix(spot.lat_deg, spot.lon_deg, 10.0)
            found.append(_entry(runner.id, Kind.POSITION, runner.start + at, f"fix-{n}", fix=fix))
        yield found


def km_by_plan(rows: Sequence[Row], at: timedelta) -> float:
    """Where the plan has her so long after her start."""
    k = next(i for i in range(1, len(rows)) if rows[i].arrive[Goal.B] >= at or i == len(rows) - 1)
    before, after = rows[k - 1], rows[k]
    share = (at - before.leave[Goal.B]) / (after.arrive[Goal.B] - before.leave[Goal.B])
    return before.km + min(max(share, 0.0), 1.0) * (after.km - before.km)


def _entry(
    runner: str, kind: Kind, at: datetime, key: str, *, point: str | None = None, fix: Fix | None = None
) -> Entry:
    source = Source.TRACKER if fix else Source.VOLUNTEER
    return Entry(
        "", EVENT, runner, kind, at, at, at, "vera", source, f"tracker {runner}", key, via="api", point=point, fix=fix
    )  # fmt: skip


@asynccontextmanager
async def database(kind: str) -> AsyncIterator[str]:
    """The URL of an empty database that is gone afterwards."""
    with tempfile.TemporaryDirectory() as folder:
        if kind == "sqlite":
            yield f"sqlite+aiosqlite:///{folder}/scale.db"
            return
        server = Postgres(Path(folder))
        yield server.url(server.take())
        server.stop()


async def cpu_ms(work: Callable[[], Awaitable[object]]) -> float:
    """CPU of this process, all its threads."""
    began = time.process_time()
    await work()
    return 1000.0 * (time.process_time() - began)


async def measured(size: Size) -> dict[str, object]:
    """The figures of one size."""
    files = {"route.gpx": (DEMO / "route.gpx").read_bytes()}
    one = build((DEMO / "event.toml").read_text(encoding="utf-8") + EXTRA_PEOPLE, files)
    text = many(one.event, size.runners, size.crews)
    began = time.process_time()
    built = build(text, files)
    build_s = time.process_time() - began
    now = built.event.starts + AFTER
    async with database(size.database) as url:
        journal = await Journal.open(url)
        await journal.store_event(text, files, built.event, "bench", built.event.starts)
        waiting: list[Entry] = []
        for some in journal_of(built, size.entries, now):
            waiting += some
            if len(waiting) >= AT_ONCE:
                await journal.append_all(waiting)
                waiting = []
        await journal.append_all(waiting)
        await journal.close()
        return {
            "runners": size.runners,
            "entries": size.entries,
            "crews": size.crews,
            "build_s": round(build_s, 2),
            **await _served(url, built, now),
        }


async def _served(url: str, built: Built, now: datetime) -> dict[str, object]:
    began = time.process_time()
    journal = await Journal.open(url)
    clock = SteppedClock(now)
    app = make_app(Settings(), journal, clock, options=Options(live=False))
    parts = app[PARTS]
    await parts.pictures.take(EVENT, now)
    start_s = time.process_time() - began
    async with TestClient(TestServer(app)) as client:
        running = Running(client, parts, clock, built)
        first_tick = await cpu_ms(lambda: parts.ticker.tick(clock.now()))
        reports = [await _report(running, n) for n in range(REPORTED + 1)][1:]
        due, ticks = await _due(running)
        position = await _positions(running)
        pages = {who: [await _page(running, who) for _ in range(2)] for who in ("ana", "olga")}
    await journal.close()
    return {
        "start_s": round(start_s, 2),
        "first_tick_ms": round(first_tick, 1),
        "report_cpu_ms": round(statistics.median(reports), 1),
        "position_cpu_ms": position,
        "due_cpu_ms": due,
        "tick_cpu_ms": ticks,
        "board_cpu_ms": round(min(pages["ana"]), 1),
        "organiser_board_cpu_ms": round(min(pages["olga"]), 1),
        "rss_mb": round(resource.getrusage(resource.RUSAGE_SELF).ru_maxrss / 1024),
    }


async def _report(running: Running, n: int) -> float:
    """One report of a post, that she is in at her next point when she was to be, by the time it is answered: its notices are
    queued by then."""
    runners = running.built.event.runners
    runner = runners[n * len(runners) // (REPORTED + 1)]
    now = running.clock.now() + timedelta(seconds=20)
    rows = running.built.timetables[runner.id].rows
    due = next((r for r in rows[1:-1] if runner.start + r.arrive[Goal.B] > now - MINUTE), rows[-2])
    running.clock.advance(max(runner.start + due.arrive[Goal.B], now) - running.clock.now())
    await running.token("olga")

    async def report() -> None:
        path = f"/v1/events/{EVENT}/runners/{runner.id}/checkins"
        body = {"kind": "in", "point": due.point, "key": f"r{n}"}
        status, said = await running.call("olga", "POST", path, body)
        assert status == 200, said

    return await cpu_ms(report)


async def _due(running: Running) -> tuple[float, float]:
    """CPU of a judgement that was due, and of a tick each minute; medians over ten minutes."""
    ticks, each = [], []
    counted = running.parts.metrics.judged
    for _ in range(10):
        running.clock.advance(MINUTE)
        before = counted._value.get()
        spent = await cpu_ms(lambda: running.parts.ticker.tick(running.clock.now()))
        ticks.append(spent)
        each.append(spent / max(counted._value.get() - before, 1.0))
    return round(statistics.median(each), 1), round(statistics.median(ticks), 1)


async def _positions(running: Running) -> float:
    """CPU of a position of those who send one each minute, where the plan has them, with the ticks meanwhile; a mean over
    five minutes."""
    sending = running.built.event.runners[-TRACKED:]
    spent = 0.0
    for _ in range(5):
        running.clock.advance(MINUTE)
        for runner in sending:
            by_plan = km_by_plan(running.built.timetables[runner.id].rows, running.clock.now() - runner.start)
            found = running.built.courses[runner.course].at(by_plan)
            place = {"type": "Point", "coordinates": [found.lon_deg, found.lat_deg]}
            body = {"type": "Feature", "geometry": place, "properties": {"accuracy_m": 10.0}}
            path = f"/v1/events/{EVENT}/runners/{runner.id}/positions"
            spent += await cpu_ms(lambda: running.call("olga", "POST", path, body))  # noqa: B023
        spent += await cpu_ms(lambda: running.parts.ticker.tick(running.clock.now()))
    return round(spent / (5 * len(sending)), 1)


async def _page(running: Running, who: str) -> float:
    """The board's page, a second after the last time it was asked for."""
    running.clock.advance(timedelta(seconds=1))
    headers = {"Authorization": f"Bearer {await running.token(who)}"}

    async def ask() -> None:
        async with running.client.get(f"/board/{EVENT}/part", headers=headers) as page:
            assert page.status == 200
            await page.read()

    return await cpu_ms(ask)


def main(argv: list[str]) -> int:
    """Each size in a process of its own; a line of JSON as each is done."""
    ask = argparse.ArgumentParser(prog="python -m tests.bench scale", description=__doc__)
    ask.add_argument("--database", choices=("sqlite", "postgresql"), default="sqlite")
    ask.add_argument("--runners", type=int, nargs="+", default=[1, 10, 100])
    ask.add_argument("--entries", type=int, nargs="+", default=[1000, 10000])
    ask.add_argument(
        "--crews", type=int, default=CREWS, help="how many of the runners have a crew of their own"
    )
    ask.add_argument("--here", action="store_true", help="in this process")
    given = ask.parse_args(argv)
    sizes = [Size(given.database, r, e, min(r, given.crews)) for r in given.runners for e in given.entries]
    for size in sizes:
        if given.here:
            set_up("error")
            gc.enable()  # the tests' conftest, which came along, has turned it off: a server has it
            print(json.dumps(asyncio.run(measured(size))), flush=True)
            continue
        again = [sys.executable, "-m", "tests.bench", "scale", "--here", "--database", size.database]
        again += ["--runners", str(size.runners), "--entries", str(size.entries), "--crews", str(size.crews)]
        if subprocess.run(again, check=False).returncode:
            return 1
    return 0
