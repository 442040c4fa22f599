"""The scoring script on years that the constants never saw.

The script is run on the years kept back of each fold alone, in each way asked for, and its own printed figures are
gathered: mean over folds, each weighing by its finishers. Only the odds of having stopped (`Flagging`) are
those of all years.
"""

import contextlib
import functools
import io
import re
import runpy
import shutil
import sys
import tempfile
from collections.abc import Iterator, Sequence
from dataclasses import replace
from pathlib import Path

import numpy as np

from server.forecast import fieldcheck
from tests.research.fit.fold import Fold

WAYS: dict[str, list[str]] = {
    "limit told": [],
    "no limit": ["--no-limit"],
    "0.7 of the hours, limit told": ["--stretch", "0.7"],
    "0.7 of the hours, no limit": ["--stretch", "0.7", "--no-limit"],
    "1.3 of the hours, limit told": ["--stretch", "1.3"],
    "1.3 of the hours, no limit": ["--stretch", "1.3", "--no-limit"],
}
ROWS = ("forecast", "one point", "still out")
HEAD = (
    "| asked | row | next | +4 | finish | loss | 80% band holds | false at the 99.5% time "
    "| tuned: after arrival / after due |\n|---|---|---|---|---|---|---|---|---|"
)


def run_script(fold: Fold, folder: Path, script: Path, options: Sequence[str], every: int) -> str:
    """What the script prints for the years of a fold."""
    with tempfile.TemporaryDirectory() as name:
        bench, data = Path(name) / "bench", Path(name) / "data"
        bench.mkdir()
        data.mkdir()
        for file in script.parent.iterdir():
            shutil.copy(file, bench)
        for race in fold.kept:
            for suffix in (".csv", ".json"):
                shutil.copy(folder / f"{race.course}_{race.year}{suffix}", data)
        printed = io.StringIO()
        before_argv, before = sys.argv, (fieldcheck.arrivals, fieldcheck.flag)
        sys.argv = [script.name, str(data), "--every", str(every), *options]
        fieldcheck.arrivals, fieldcheck.flag = (functools.partial(f, kind=fold.kind) for f in before)
        try:
            with contextlib.redirect_stdout(printed):
                runpy.run_path(str(bench / script.name), run_name="__main__")
        finally:
            sys.argv, (fieldcheck.arrivals, fieldcheck.flag) = before_argv, before
    return printed.getvalue()


def figures(printed: str) -> tuple[float, dict[str, list[float]]]:
    """Finishers, and per row its numbers: errors, loss, bands; for the forecast also false flags and their lateness."""
    finishers = float(re.findall(r"(\d+) finishers", printed)[0])
    out = {}
    for row in ROWS:
        line = re.findall(rf"^{row}\s+(.*)$", printed, re.MULTILINE)
        out[row] = [float(v) for v in line[0].replace("/", " ").split()] if line else [np.nan] * 7
    flag = re.findall(r"^  forecast\s+(-?\d+) min .*?(?:; (-?\d+) min|; nobody)", printed, re.MULTILINE)[0]
    false = float(re.findall(r"false on ([\d.]+)%", printed)[0])
    out["forecast"] += [false, float(flag[0]), float(flag[1] or "nan")]
    return finishers, out


def gathered(parts: Sequence[tuple[float, dict[str, list[float]]]]) -> dict[str, list[float]]:
    """Means over folds, each weighing by its finishers."""
    weights = np.array([n for n, _ in parts])
    out = {}
    for row in ROWS:
        table = np.array([p[row] for _, p in parts])
        there = ~np.isnan(table)
        summed = np.where(there, table, 0.0) * weights[:, None]
        out[row] = list(summed.sum(axis=0) / np.maximum((there * weights[:, None]).sum(axis=0), 1e-9))
    return out


def line(label: str, row: str, v: Sequence[float]) -> str:
    """A row of the table."""
    flags = f"{v[7]:.2f}% | {v[8]:.0f} / {v[9]:.0f}" if len(v) > 7 else "| "
    held = " / ".join(f"{x:.0f}" for x in v[4:7])
    return f"| {label} | {row} | {v[0]:.1f} | {v[1]:.1f} | {v[2]:.1f} | {v[3]:.2f} | {held} | {flags} |"


def rows(found: Sequence[Fold], folder: Path, script: Path, every: int) -> Iterator[str]:
    """The table for one course."""
    yield HEAD
    for way, options in WAYS.items():
        parts = [figures(run_script(fold, folder, script, options, every)) for fold in found]
        for row, values in gathered(parts).items():
            yield line(way, row, values)


def by_year(found: Sequence[Fold], folder: Path, script: Path, every: int) -> Iterator[str]:
    """The script's table for each year alone: years differ by more than any change of the forecast."""
    yield HEAD.replace("| asked |", "| year, points, asked |")
    each = [(race, fold) for fold in found for race in fold.kept]
    for race, fold in sorted(each, key=lambda pair: pair[0].year):
        for way in ("limit told", "no limit"):
            printed = run_script(replace(fold, kept=[race]), folder, script, WAYS[way], every)
            _, values = figures(printed)
            for row in ROWS:
                yield line(f"{race.year}, {race.ref_s.size}, {way}", row, values[row])
