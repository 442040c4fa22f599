"""Benchmarks, each as a ratio to a baseline of the same run: `python -m tests.bench`.

check-in to notice queued: one check-in over HTTP into SQLite, judged, its notice in the outbox; baseline: one bare
insert with its fsync into an SQLite file of its own. One forecast: a 30-point race with 15 points seen, posterior,
view and all windows, one of a hundred such windowed at once, and the factors of the day from fifty others, worked out
once for each change of their times (CPU time); baseline: one Cholesky factor of a 200 x 200 matrix. GPX: see
bench_course. With `scale` first: how a server grows with the field, see scale; with `load`: servers under load that die
and hang, see load.
"""

from __future__ import annotations

import asyncio
import sqlite3
import statistics
import sys
import tempfile
import time
from collections.abc import Callable
from datetime import timedelta
from pathlib import Path

import numpy as np
from rich.console import Console

from demo_event.play import stage
from server.event.model import Goal
from server.forecast import kinds
from server.forecast.field import forecast_field
from server.forecast.others import factors
from server.forecast.posterior import posterior
from server.forecast.values import Quality, Reference, Sighting
from server.log import set_up
from tests.bench import bench_course, load, scale

RUNS = 9


def median_ms(
    work: Callable[[], object], runs: int = RUNS, clock: Callable[[], float] = time.perf_counter
) -> float:
    """Median of several runs after one that does not count."""
    work()
    spent = []
    for _ in range(runs):
        began = clock()
        work()
        spent.append(clock() - began)
    return 1000.0 * statistics.median(spent)


def show(name: str, ms: float, baseline: str, base_ms: float) -> None:
    """One row."""
    print(f"{name:32s} {ms:9.2f} ms = {ms / base_ms:7.2f} x {baseline} ({base_ms:.2f} ms)", flush=True)


def bare_insert_ms(folder: Path) -> float:
    """A durable insert with nothing around it."""
    db = sqlite3.connect(folder / "bare.db", isolation_level=None)
    db.execute("PRAGMA journal_mode=WAL")
    db.execute("PRAGMA synchronous=FULL")
    db.execute("CREATE TABLE t (a TEXT)")
    found = median_ms(lambda: db.execute("INSERT INTO t VALUES ('x')"), 50)
    db.close()
    return found


async def check_in_ms(folder: Path) -> float:
    """From the POST of a check-in to its notice being in the outbox, over the demo's points; median."""
    spent: list[float] = []
    async with stage(folder, 1e9, 0, Console(quiet=True)) as player:
        journal, event = player.parts.journal, player.event
        player.clock.set(event.starts)
        await player.look()
        table = player.built.timetables["maren"]
        for row in table.rows[1:-1]:
            at = event.starts + row.arrive[Goal.B]
            player.clock.set(max(at, player.clock.now()))
            await player.look()
            before = len(await journal.made(event.id))
            body = {
                "kind": "in",
                "point": row.point,
                "seen_at": player.clock.now().isoformat(),
                "key": row.point,
            }
            began = time.perf_counter()
            await player.report("office", event.id, "maren", body)
            made = len(await journal.made(event.id))
            if made > before:
                spent.append(time.perf_counter() - began)
            player.clock.advance(timedelta(minutes=1))
    return 1000.0 * statistics.median(spent)


def a_plan(n: int = 30) -> Reference:
    """A race of so many points, 24 hours."""
    km = np.linspace(161 / n, 161, n)
    return Reference(km, km / 161 * 86400, np.zeros(n), Quality.COST_MODEL, 30.0)


def field_ms(runners: int = 100) -> float:
    """One of a field's forecasts worked out at once: every window of a 30-point race half run."""
    plan = a_plan()
    pace = np.linspace(0.8, 1.2, runners)[:, None]
    seen = np.where(np.arange(plan.n) < 15, plan.elapsed_s * pace, np.nan)
    probs = np.array([0.1, 0.5, 0.9])
    return median_ms(lambda: forecast_field(plan, seen, probs, 108000.0), 20, time.process_time) / runners


def forecast_ms() -> float:
    """Posterior, view and every window of a 30-point race half run."""
    reference = a_plan()
    n = reference.n
    facts = [Sighting(i, arrived_s=float(reference.elapsed_s[i] * 1.05)) for i in range(15)]
    probs = np.array([0.1, 0.5, 0.9])

    def one() -> None:
        view = posterior(reference, facts, limit_s=108000.0).view(15 * 3000.0)
        for point in range(15, n):
            view.quantiles(point, probs)

    return median_ms(one, 50, time.process_time)


def factors_ms(others: int = 50) -> float:
    """The day's factors from so many others, of whom some missed points."""
    plan, rng = a_plan(), np.random.default_rng(1)
    times = plan.elapsed_s * rng.uniform(0.8, 1.0, (others, 1))
    times[np.arange(others), rng.integers(0, plan.n, others)] = np.nan
    return median_ms(lambda: factors(kinds.of(plan), plan, times), 20, time.process_time)


def main() -> int:
    """All of them; the exit code of the course's bench, which knows a limit."""
    set_up("error")
    with tempfile.TemporaryDirectory() as folder:
        base = bare_insert_ms(Path(folder))
        show("check-in to notice queued", asyncio.run(check_in_ms(Path(folder))), "bare durable insert", base)
    matrix = np.eye(200) + 0.5
    base = median_ms(lambda: np.linalg.cholesky(matrix), 50, time.process_time)
    show("one forecast, 30 points", forecast_ms(), "Cholesky of 200 x 200", base)
    show("one of 100 forecasts at once", field_ms(), "Cholesky of 200 x 200", base)
    show("the day from 50 others", factors_ms(), "Cholesky of 200 x 200", base)
    return int(bench_course.main() or 0)


if __name__ == "__main__":
    others = {"scale": scale.main, "load": load.main}
    sys.exit(others[sys.argv[1]](sys.argv[2:]) if sys.argv[1:2] and sys.argv[1] in others else main())
