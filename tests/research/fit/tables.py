"""Split tables -> races, and races -> batches of questions asked of many runners at once."""

import csv
import json
from collections.abc import Iterable, Sequence
from dataclasses import dataclass, replace
from pathlib import Path

import numpy as np
from numpy.typing import NDArray

from server.forecast.condition import StretchesAhead, StretchesRun
from server.forecast.prior import Prior
from server.forecast.results import shape_from_results
from server.forecast.tempered import contrast, over
from server.forecast.values import FloatArray

KM_OF_MILE = 1.609344
MINUTE = 60.0
BASIS_S = 86400.0


@dataclass(frozen=True, slots=True, eq=False)
class Race:
    """One year of one course. elapsed_s (runners, n) nan where not recorded; ref_s (n,) the reference's arrivals.

    km (n,): where the points stand, where the reference is of the cost model.
    """

    course: str
    year: int
    elapsed_s: FloatArray
    ref_s: FloatArray
    limit_s: float
    free_level: bool
    points: tuple[str, ...] = ()
    km: FloatArray | None = None

    @property
    def share(self) -> FloatArray:
        """(n,) share of the reference's whole time at each point."""
        return np.asarray(self.ref_s / self.ref_s[-1])


@dataclass(frozen=True, slots=True, eq=False)
class Batch:
    """A question to each runner seen at point k - 1. spent_s, finished (B,); ahead_ref_s, truth_s (B, m)."""

    race: Race
    k: int
    seen: StretchesRun
    ahead: StretchesAhead
    ahead_ref_s: FloatArray
    spent_s: FloatArray
    truth_s: FloatArray
    finished: NDArray[np.bool_]


def read_table(path: Path) -> tuple[dict[str, object], FloatArray]:
    """A table's description and its numbers, nan for ''."""
    meta = json.loads(path.with_suffix(".json").read_text())
    with path.open(newline="") as file:
        rows = list(csv.reader(file))[1:]
    return meta, np.array([[np.nan if v == "" else float(v) for v in row[1:]] for row in rows])


def load(folder: Path, references: Path) -> list[Race]:
    """All races of a folder, in order of name. References by race, where there are any, come from a JSON file."""
    known = json.loads(references.read_text()) if references.exists() else {}
    races = []
    for path in sorted(folder.glob("*.csv")):
        if "_stops" in path.name:
            continue
        meta, elapsed = read_table(path)
        course, year = path.stem.split("_")
        ref = known.get(path.stem)
        if ref is None and "km" not in meta:
            raise ValueError(f"{path}: neither km in its description nor a reference in {references}")
        shape = np.array(meta["km"] if ref is None else ref, dtype=np.float64)
        limit = float(str(meta["limit_s"]))
        names = meta.get("points", [])
        points = tuple(str(p) for p in names) if isinstance(names, list) else ()
        races.append(
            Race(course, int(year), elapsed, shape / shape[-1] * BASIS_S, limit, ref is None, points)
        )
    if not races:
        raise ValueError(f"{folder}: no tables NAME.csv with NAME.json beside them")
    return races


def thinned(race: Race, seed: int) -> Race:
    """The same race with some points forgotten, so that other spacings of points are learned too."""
    draws = np.random.default_rng(seed)
    keep = draws.random(race.ref_s.size) < draws.uniform(0.35, 0.8)
    keep[-1] = True
    elapsed = race.elapsed_s[:, keep]
    km = None if race.km is None else race.km[keep]
    return replace(race, elapsed_s=elapsed[~np.isnan(elapsed).all(axis=1)], ref_s=race.ref_s[keep], km=km)


def from_other_years(race: Race, races: Sequence[Race]) -> Race:
    """The same race with a reference made from the other years' results, where its own is distance only.

    Other years' points stand elsewhere: their usual share of the time is read off at this year's share of the way.
    """
    way, time = [], []
    for other in races:
        if other.year != race.year:
            shape = shape_from_results(other.elapsed_s, BASIS_S)
            way.append(np.concatenate([[0.0], other.share]))
            time.append(np.concatenate([[0.0], shape]))
    shape = np.mean([np.interp(race.share, w, t) for w, t in zip(way, time, strict=True)], axis=0)
    return replace(race, ref_s=shape * BASIS_S, free_level=False)


def even_paced(races: Sequence[Race], folder: Path) -> list[Race]:
    """The same races with nothing but distance as reference: miles by point from the table of stops.

    A point that table does not name is placed between its neighbours by the usual time.
    """
    meta, _ = read_table(next(iter(sorted(folder.glob("*_stops.csv")))))
    names, miles = meta["points"], meta["miles"]
    if not isinstance(names, list) or not isinstance(miles, list):
        raise ValueError(f"{folder}: the table of stops must list points and miles")
    known = {str(n): float(m) for n, m in zip(names, miles, strict=True)}
    out = []
    for race in races:
        place = np.array([known.get(plain_name(p), np.nan) for p in race.points])
        there = ~np.isnan(place)
        x, y = np.concatenate([[0.0], race.share[there]]), np.concatenate([[0.0], place[there]])
        way = np.where(there, place, np.interp(race.share, x, y))
        out.append(replace(race, ref_s=way / way[-1] * BASIS_S, free_level=True))
    return out


def plain_name(name: str) -> str:
    """Point names of one table in the other's spelling."""
    return (
        name.split("(")[0]
        .lower()
        .replace("'", "")
        .replace(".", "_")
        .strip("_")
        .replace("el_dorado", "eldorado")
    )


def batch(race: Race, k: int, prior: Prior) -> Batch:
    """Everybody recorded at point k - 1 (1 <= k < n), with what had been recorded by then."""
    rows = np.flatnonzero(~np.isnan(race.elapsed_s[:, k - 1]))
    times = race.elapsed_s[rows]
    count = rows.size
    a, y, counts = np.zeros((count, k)), np.zeros((count, k)), np.zeros((count, k))
    share = race.share
    before_share, before_s = np.zeros(count), np.zeros(count)
    for i in range(k):
        there = ~np.isnan(times[:, i])
        a[:, i] = before_share
        took = np.where(there, times[:, i] - before_s, 1.0)
        y[:, i] = np.log(took / ((share[i] - before_share) * BASIS_S))
        counts[:, i] = there
        before_share = np.where(there, share[i], before_share)
        before_s = np.where(there, times[:, i], before_s)
    first = y[np.arange(count), np.argmax(counts > 0, axis=1)]
    base = first if race.free_level else np.zeros(count)
    y = np.where(counts > 0, y - base[:, None], 0.0)
    point = prior.point_sd**2
    b = np.tile(share[:k], (count, 1))
    seen = StretchesRun(
        a, b, y, np.where(a > 0, point, 0.0), np.full_like(b, point), counts, np.zeros_like(b)
    )
    ahead_a, ahead_b = np.tile(share[k - 1 : -1], (count, 1)), np.tile(share[k:], (count, 1))
    ahead = StretchesAhead(ahead_a, ahead_b, np.full_like(ahead_a, point), np.full_like(ahead_a, point))
    ahead_ref = np.diff(race.ref_s[k - 1 :])[None, :] * np.exp(base)[:, None]
    if race.km is not None and prior.contrast_sd > 0.0:
        edges, planned = np.concatenate([[0.0], share]), contrast(race.km, race.ref_s)
        seen = replace(seen, contrast=over(edges, planned, a, b))
        ahead = replace(ahead, contrast=over(edges, planned, ahead_a, ahead_b))
    finished = ~np.isnan(race.elapsed_s[rows, -1])
    return Batch(race, k, seen, ahead, ahead_ref, times[:, k - 1], times[:, k:], finished)


def courses(races: Iterable[Race]) -> dict[str, list[Race]]:
    """Races by course."""
    out: dict[str, list[Race]] = {}
    for race in races:
        out.setdefault(race.course, []).append(race)
    return out
