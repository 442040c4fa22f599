"""Fits the constants of `server.plan.pace.Fade` again: python tests/plan/fit_fade.py ../shared/data

Prints the fitted constants, and for each group of finishers how much slower the second half was, as seen
and as planned, and the error of the share of the whole time at each point. Also read by
tests/plan/test_fade.py.
"""

from __future__ import annotations

import csv
import json
import sys
from dataclasses import dataclass
from datetime import UTC, datetime
from pathlib import Path

import numpy as np
import numpy.typing as npt

ROOT = Path(__file__).resolve().parents[2]
if str(ROOT) not in sys.path:
    sys.path.insert(0, str(ROOT))

from server.plan.day import Day  # noqa: E402
from server.plan.light import sky_over  # noqa: E402
from server.plan.pace import Fade, Limits, Stops, Terrain, solve  # noqa: E402

Floats = npt.NDArray[np.float64]
BANDS_H = ((0, 19), (19, 22), (22, 25), (25, 27.5), (27.5, 31))
# Two to three minutes a point, as no table of these races tells stops from moving.
STOP_SHARE = 0.04
# Knechtle et al. 2015, Open Access J Sports Med 6:71-80: speed of each 25 km of 100 km over the one before.
KNECHTLE = np.array([0.980, 0.946, 0.955])
KNECHTLE_SD = np.array([0.021, 0.034, 0.038])


@dataclass(frozen=True)
class Group:
    """Finishers of one year within one band of hours: km (n,), their median share of the whole at each."""

    year: str
    band_h: tuple[float, float]
    runners: int
    km: Floats
    shares: Floats
    total_s: float


def read_groups(folder: Path) -> list[Group]:
    """The groups of all flat100 tables with at least 8 finishers."""
    groups: list[Group] = []
    for path in sorted(folder.glob("flat100_*.csv")):
        km = np.array(json.loads(path.with_suffix(".json").read_text())["km"])
        rows = list(csv.reader(path.open()))[1:]
        times = np.array([[float(x) if x else np.nan for x in row[1:]] for row in rows])
        times = times[~np.isnan(times[:, -1])]
        for low, high in BANDS_H:
            some = times[(times[:, -1] > low * 3600) & (times[:, -1] <= high * 3600)]
            if len(some) >= 8:
                shares = np.nanmedian(some / some[:, -1:], axis=0)
                total = float(np.median(some[:, -1]))
                groups.append(Group(path.stem[-4:], (low, high), len(some), km, shares, total))
    return groups


def flat(km: float, step_m: float = 250.0) -> Terrain:
    """Level ground of so many km."""
    n = round(km * 1000 / step_m)
    edges = np.linspace(0.0, km, n + 1)
    return Terrain(edges, np.diff(edges) * 1000, np.zeros(n), np.full(n, 5.0), np.zeros(n, dtype=np.bool_))


SUMMER = sky_over(
    np.array([0.0, 161.0]),
    np.array([52.5, 52.5]),
    np.array([13.4, 13.4]),
    datetime(2014, 8, 16, 4, 0, tzinfo=UTC),
    40 * 3600.0,
)


def planned_shares(fade: Fade, group: Group) -> Floats:
    """Share of the whole time at each point of a group's course, as the pace model plans it."""
    terrain = flat(float(group.km[-1]))
    n = len(group.km) - 1
    stops = Stops(group.km[:-1], np.full(n, STOP_SHARE * group.total_s / n))
    done = solve(terrain, Limits(fade=fade), stops, Day(SUMMER), group.total_s).march
    moving = np.interp(group.km, terrain.km, np.concatenate([[0.0], np.cumsum(done.moving_s)]))
    elapsed = moving + np.concatenate([[0.0], np.cumsum(stops.seconds)])
    return np.asarray(elapsed / elapsed[-1])


def section_ratios(fade: Fade) -> Floats:
    """Speed of each 25 km over the one before in 100 km at 6.55 h, about the ten fastest of those years."""
    terrain = flat(100.0)
    none = Stops(np.array([50.0]), np.array([0.0]))
    done = solve(terrain, Limits(fade=fade), none, Day(SUMMER), 6.55 * 3600).march
    moved = np.concatenate([[0.0], np.cumsum(done.moving_s)])
    speed = 1.0 / np.diff(np.interp([0, 25, 50, 75, 100], terrain.km, moved))
    return np.asarray(speed[1:] / speed[:-1])


def second_half_slower(km: Floats, shares: Floats) -> float:
    """By how much the second half took longer than the first."""
    half = float(np.interp(km[-1] / 2, np.concatenate([[0.0], km]), np.concatenate([[0.0], shares])))
    return (1.0 - half) / half - 1.0


def loss(x: Floats, groups: list[Group]) -> float:
    """Mean square error of the shares, weighted by runners, and of the ratios in their own deviations."""
    floor, hours, bend = (float(v) for v in x)
    if not (0.2 < floor < 0.95 and 3 < hours < 60 and 0.5 < bend < 4):
        return 1e3
    fade = Fade(floor, hours, bend)
    square = [g.runners * float(((planned_shares(fade, g) - g.shares) ** 2).mean()) for g in groups]
    off = (section_ratios(fade) - KNECHTLE) / KNECHTLE_SD
    return sum(square) / sum(g.runners for g in groups) * 1e4 + 0.2 * float((off**2).mean())


def main() -> None:
    """Fit and print."""
    from scipy.optimize import minimize

    groups = read_groups(Path(sys.argv[1]))
    found = minimize(loss, (0.6, 12.0, 1.3), args=(groups,), method="Nelder-Mead", options={"maxiter": 80})
    fade = Fade(*(float(v) for v in found.x))
    print(f"floor {fade.floor:.3f}, hours {fade.hours:.2f}, bend {fade.bend:.3f}; loss {found.fun:.3f}")
    for g in groups:
        plan = planned_shares(fade, g)
        error = float(np.sqrt(((plan - g.shares) ** 2).mean()))
        seen, ours = second_half_slower(g.km, g.shares), second_half_slower(g.km, plan)
        print(
            f"{g.year} {g.band_h} h, {g.runners:3d} runners: second half {seen:+.0%}, "
            f"planned {ours:+.0%}, {error:.4f}"
        )
    print("100 km sections", section_ratios(fade))


if __name__ == "__main__":
    main()
