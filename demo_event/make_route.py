"""Makes route.gpx: an invented 100-mile course over invented hills, as a watch would have recorded it.

Run `python -m demo_event.make_route` to write the file again; the same seed gives the same file. Ground and
line are functions of the place, so both passes of a place have the same height; only the recording is noisy.
"""

from __future__ import annotations

import sys
from dataclasses import dataclass
from pathlib import Path
from xml.sax.saxutils import escape

import numpy as np
import numpy.typing as npt
from pyproj import Transformer
from scipy.interpolate import CubicSpline

Floats = npt.NDArray[np.float64]

SEED = 160_934
LENGTH_M = 160_934.0
ASCENT_M = 5_250.0
POINTS = 5_000
CENTRE_LAT, CENTRE_LON = 54.9, -2.6
GRID_M = 5.0

# Corners of the line in kilometres east and north of the centre, before bends and before scaling to LENGTH_M.
# Out to Long Stile, up a spur and back the same way, round the east, across the way out, home by the west.
OUT = ((0, 0), (5, 4), (11, 7), (18, 6), (24, 10))
SPUR = ((24, 10), (25, 13), (28, 17))
HOME = (
    (24, 10), (30, 4), (27, -5), (18, -9), (13, 0), (9, 9), (4, 16),
    (-6, 17), (-13, 11), (-15, 2), (-10, -6), (-4, -5), (0, 0),
)  # fmt: skip


@dataclass(frozen=True, slots=True)
class Place:
    """A waypoint of the file: its name, its km on the true line, how far beside it (right is positive)."""

    name: str
    km: float
    beside_m: float


@dataclass(frozen=True, slots=True)
class Ground:
    """The true line: metres along it, east and north of the centre, and height, every GRID_M."""

    along_m: Floats
    east_m: Floats
    north_m: Floats
    height_m: Floats
    stile_m: float
    chapel_m: float

    @property
    def ascent_m(self) -> float:
        """Sum of all rises of the true line, in metres."""
        return float(np.clip(np.diff(self.height_m), 0, None).sum())


def places(ground: Ground) -> tuple[Place, ...]:
    """The twelve named places, each once, though two of them are points of the race twice."""
    stile_km, chapel_km = ground.stile_m / 1000, ground.chapel_m / 1000
    return (
        Place("Harrow Fold", 0.0, 12),
        Place("Pell Bridge", 10.5, -9),
        Place("Skelter Mill", 21.0, 35),
        Place("Long Stile", stile_km, 15),
        Place("Corrie Chapel", chapel_km, 10),
        Place("Wether Lathe", 61.0, -22),
        Place("Brindle Gate", 74.0, 28),
        Place("Kettle Howe", 87.0, 8),
        Place("Ravel Dod", 100.5, -40),
        Place("Ashen Ford", 114.0, 6),
        Place("Ember Quarry", 128.0, 45),
        Place("Candle Moss", 144.5, -14),
    )


def through(corners: tuple[tuple[int, int], ...]) -> Floats:
    """A smooth line (n, 2), in metres, through the corners, a vertex every few metres."""
    xy = np.asarray(corners, dtype=np.float64) * 1000.0
    chord = np.concatenate([[0.0], np.cumsum(np.hypot(*np.diff(xy, axis=0).T))])
    fine = np.linspace(0.0, chord[-1], int(chord[-1] / GRID_M) + 1)
    return np.asarray(CubicSpline(chord, xy)(fine), dtype=np.float64)


def waves(rng: np.random.Generator, shortest_m: float, longest_m: float, count: int) -> Floats:
    """Random plane waves (count, 4): east and north wave numbers per metre, phase, wavelength in metres."""
    length = np.exp(rng.uniform(np.log(shortest_m), np.log(longest_m), count))
    angle, phase = rng.uniform(0, 2 * np.pi, (2, count))
    return np.column_stack([np.cos(angle) / length, np.sin(angle) / length, phase, length])


def field(wave: Floats, xy: Floats, power: float) -> Floats:
    """Sum of waves at places (n, 2), a wave's size as its length to `power`. Result (n,), unit spread."""
    size = wave[:, 3] ** power
    turns = xy @ wave[:, :2].T * (2 * np.pi) + wave[:, 2]
    return np.asarray((np.sin(turns) @ size) / np.sqrt((size**2).sum() / 2), dtype=np.float64)


def evenly(xy: Floats, step_m: float) -> tuple[Floats, Floats]:
    """The line (n, 2) again with a vertex every step_m: metres along, and places."""
    along = np.concatenate([[0.0], np.cumsum(np.hypot(*np.diff(xy, axis=0).T))])
    grid = np.arange(0.0, along[-1], step_m)
    return grid, np.column_stack([np.interp(grid, along, xy[:, k]) for k in (0, 1)])


def bend(rng: np.random.Generator, xy: Floats) -> Floats:
    """Moves every place by a field of the place alone, so that two passes of one path stay one path."""
    bends = [waves(rng, 500, 2500, 60) for _ in range(2)]
    return xy + 55.0 * np.column_stack([field(wave, xy, 1.0) for wave in bends])


def make_ground(rng: np.random.Generator) -> Ground:
    """The true course: LENGTH_M long with ASCENT_M of ascent, both within a few metres."""
    out, spur, home = through(OUT), through(SPUR), through(HOME)
    whole = np.concatenate([out, spur[1:], spur[-2::-1], home[1:]])
    bent = bend(rng, whole)
    steps = np.hypot(*np.diff(bent, axis=0).T)
    scale = LENGTH_M / float(steps.sum())
    run = np.concatenate([[0.0], np.cumsum(steps * scale)])
    along, xy = evenly(bent * scale, GRID_M)
    hills = field(waves(rng, 2_200, 16_000, 140), xy, 1.1)
    bumps = field(waves(rng, 500, 1_500, 80), xy, 1.0)
    shape = hills + 0.035 * bumps
    shape = shape * (ASCENT_M / float(np.clip(np.diff(shape), 0, None).sum()))
    height = shape - float(shape.min()) + 95.0
    return Ground(
        along, xy[:, 0], xy[:, 1], height, float(run[len(out) - 1]), float(run[len(out) + len(spur) - 2])
    )


def wander(rng: np.random.Generator, gaps_m: Floats, spread: float, memory_m: float) -> Floats:
    """Slow error of a recording (Ornstein-Uhlenbeck): (n + 1,) values that forget over memory_m."""
    keep = np.exp(-gaps_m / memory_m)
    kick = rng.normal(0.0, spread, len(gaps_m) + 1)
    values = [float(kick[0])]
    for weight, fresh in zip(keep, kick[1:], strict=True):
        values.append(float(weight * values[-1] + np.sqrt(1 - weight**2) * fresh))
    return np.asarray(values)


@dataclass(frozen=True, slots=True)
class Recording:
    """What the watch wrote: three arrays (n,), places in metres from the centre, heights in metres."""

    east_m: Floats
    north_m: Floats
    height_m: Floats


def record(rng: np.random.Generator, ground: Ground) -> Recording:
    """The ground as recorded: uneven spacing, metres of drift and jitter, height drift, three spikes."""
    gaps = np.exp(rng.normal(0.0, 0.35, POINTS - 1))
    at = np.concatenate([[0.0], np.cumsum(gaps)]) * (float(ground.along_m[-1]) / float(gaps.sum()))
    step = np.diff(at)
    east = (
        np.interp(at, ground.along_m, ground.east_m)
        + wander(rng, step, 2.5, 400.0)
        + rng.normal(0, 0.8, POINTS)
    )
    north = (
        np.interp(at, ground.along_m, ground.north_m)
        + wander(rng, step, 2.5, 400.0)
        + rng.normal(0, 0.8, POINTS)
    )
    height = np.interp(at, ground.along_m, ground.height_m) + wander(rng, step, 2.0, 3_000.0)
    height = height + rng.normal(0, 0.7, POINTS)
    for spike, size in zip(
        rng.choice(np.arange(200, POINTS - 200), 3, replace=False), (70.0, -55.0, 90.0), strict=True
    ):
        height[spike] += size
    return Recording(east, north, height)


def beside(ground: Ground, place: Place) -> tuple[float, float]:
    """East and north in metres of a place beside the true line (positive to the right of it)."""
    at = place.km * 1000
    here, there = (
        (
            float(np.interp(m, ground.along_m, ground.east_m)),
            float(np.interp(m, ground.along_m, ground.north_m)),
        )
        for m in (max(at - 10, 0.0), at + 10)
    )
    east, north = there[0] - here[0], there[1] - here[1]
    long = float(np.hypot(east, north)) or 1.0
    middle = (here[0] + there[0]) / 2, (here[1] + there[1]) / 2
    return middle[0] + north / long * place.beside_m, middle[1] - east / long * place.beside_m


def to_gpx(ground: Ground, recording: Recording) -> str:
    """The GPX 1.1 text of waypoints and the recorded track."""
    to_lonlat = Transformer.from_crs(
        f"+proj=aeqd +lat_0={CENTRE_LAT} +lon_0={CENTRE_LON} +datum=WGS84 +units=m",
        "EPSG:4326",
        always_xy=True,
    )
    lines = [
        '<?xml version="1.0" encoding="UTF-8"?>',
        '<gpx version="1.1" creator="demo_event/make_route.py" xmlns="http://www.topografix.com/GPX/1/1">',
        "<metadata><name>Harrow Round 100</name><desc>Invented: neither exists.</desc></metadata>",
    ]
    for place in places(ground):
        lon, lat = to_lonlat.transform(*beside(ground, place))
        height = float(np.interp(place.km * 1000, ground.along_m, ground.height_m))
        lines.append(
            f'<wpt lat="{lat:.6f}" lon="{lon:.6f}"><ele>{height:.0f}</ele>'
            f"<name>{escape(place.name)}</name></wpt>"
        )
    lines.append("<trk><name>Harrow Round 100</name><trkseg>")
    lons, lats = to_lonlat.transform(recording.east_m, recording.north_m)
    for lat, lon, height in zip(lats, lons, recording.height_m, strict=True):
        lines.append(f'<trkpt lat="{lat:.6f}" lon="{lon:.6f}"><ele>{height:.1f}</ele></trkpt>')
    lines.append("</trkseg></trk></gpx>")
    return "\n".join(lines) + "\n"


def make() -> tuple[Ground, str]:
    """The true course and the text of its recording."""
    rng = np.random.default_rng(SEED)
    ground = make_ground(rng)
    return ground, to_gpx(ground, record(rng, ground))


def main() -> None:
    """Writes route.gpx beside this file and says what is true of the ground."""
    ground, text = make()
    Path(__file__).with_name("route.gpx").write_text(text, encoding="utf-8")
    slopes = np.abs(np.diff(ground.height_m)) / GRID_M
    sys.stdout.write(
        f"{ground.along_m[-1] / 1000:.2f} km, {ground.ascent_m:.0f} m up, heights "
        f"{ground.height_m.min():.0f} to {ground.height_m.max():.0f} m, "
        f"steepest {slopes.max():.0%}, median slope {np.median(slopes):.1%}\n"
    )
    for place in places(ground):
        sys.stdout.write(f"{place.km:7.2f} km  {place.name}\n")
    sys.stdout.write(f"{2 * ground.chapel_m / 1000 - ground.stile_m / 1000:7.2f} km  Long Stile again\n")


if __name__ == "__main__":
    main()
