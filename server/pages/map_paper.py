"""The paper of a map: where a place of the world lies in the picture, lines as paths of SVG, and tiles under them."""

from __future__ import annotations

import math
from dataclasses import dataclass
from functools import lru_cache
from itertools import pairwise

from server.course import Corner, Course, Paper, outline
from server.forecast.outlook import Whereabouts

Line = list[tuple[float, float]]
Box = tuple[float, float, float, float]
WIDTH, MARGIN = 360.0, 26.0
HEIGHTS = (180.0, 420.0)
"""Of the picture, its units being pixels of a phone."""
STRETCH_MIN = 18.0
"""What is shorter can't be seen."""
TILE_ZOOM_MAX, TILES_MAX = 17, 24


@dataclass(frozen=True, slots=True)
class Tile:
    """A tile under the course: its address, and where it lies in the picture."""

    href: str
    x: str
    y: str
    size: str


@dataclass(frozen=True, slots=True)
class Frame:
    """From km on the paper to pixels of the picture."""

    paper: Paper
    west: float
    north: float
    px_per_km: float
    height: float

    def at(self, east_km: float, north_km: float) -> tuple[float, float]:
        return (
            MARGIN + (east_km - self.west) * self.px_per_km,
            MARGIN + (self.north - north_km) * self.px_per_km,
        )

    def spot(self, lat_deg: float, lon_deg: float) -> tuple[float, float]:
        return self.at(*self.paper.place(lat_deg, lon_deg))


@lru_cache(maxsize=32)
def drawn(course: Course) -> tuple[Frame, tuple[Corner, ...]]:
    """The frame of a course and its outline, of which no corner is more than half a pixel away."""
    rough = outline(course, 30.0)
    wide = max(c.east_km for c in rough) - min(c.east_km for c in rough)
    high = max(c.north_km for c in rough) - min(c.north_km for c in rough)
    room = WIDTH - 2 * MARGIN
    scale = min(room / max(wide, 0.1), (HEIGHTS[1] - 2 * MARGIN) / max(high, 0.1))
    height = max(HEIGHTS[0], high * scale + 2 * MARGIN)
    west = min(c.east_km for c in rough) - (room / scale - wide) / 2
    north = max(c.north_km for c in rough) + ((height - 2 * MARGIN) / scale - high) / 2
    corners = outline(course, 1000.0 * 0.5 / scale)
    return Frame(Paper.of(course), west, north, scale, height), corners


def of_course(course: Course, km: float) -> tuple[float, float]:
    spot = course.at(km)
    return spot.lat_deg, spot.lon_deg


def line_between(
    corners: tuple[Corner, ...], course: Course, paper: Paper, low: float = 0.0, high: float = math.inf
) -> Line:
    """The outline from one km to another, both ends on the line itself."""
    inside = [(c.east_km, c.north_km) for c in corners if low < c.km < high]
    return [
        paper.place(*of_course(course, low)),
        *inside,
        paper.place(*of_course(course, min(high, course.length_km))),
    ]


def path(line: Line, frame: Frame) -> str:
    """A line as the path of an SVG, in tenths of a pixel and relative, which takes half the room."""
    found, was = [], (0.0, 0.0)
    for east, north in line:
        x, y = (round(v, 1) for v in frame.at(east, north))
        found.append(f"{x - was[0]:.1f} {y - was[1]:.1f}".replace(".0", ""))
        was = (x, y)
    return f"M{found[0]}l{' '.join(found[1:])}"


def stretch(where: Whereabouts, corners: tuple[Corner, ...], course: Course, frame: Frame) -> Line:
    """The stretch she is likely on, no shorter than can be seen."""
    more = max(0.0, STRETCH_MIN / frame.px_per_km - (where.high_km - where.low_km)) / 2
    low, high = max(where.low_km - more, 0.0), min(where.high_km + more, course.length_km)
    return line_between(corners, course, frame.paper, low, high)


def strip(line: Line, frame: Frame) -> tuple[Box, ...]:
    """The boxes in the picture that a line takes up, its width with it."""
    corners = [frame.at(east, north) for east, north in line]
    return tuple(
        (min(a[0], b[0]) - 6, min(a[1], b[1]) - 6, max(a[0], b[0]) + 6, max(a[1], b[1]) + 6)
        for a, b in pairwise(corners)
    )


def xy(at: tuple[float, float]) -> tuple[str, str]:
    return f"{at[0]:.1f}", f"{at[1]:.1f}"


def tiles_under(frame: Frame, address: str) -> tuple[Tile, ...]:
    """The tiles of Web Mercator under the picture, as sharp as a phone needs and no more than TILES_MAX of them."""
    if not address:
        return ()
    turn_km = 2 * math.pi * frame.paper.scale_km
    for zoom in range(TILE_ZOOM_MAX, -1, -1):
        size = turn_km / 2**zoom * frame.px_per_km
        if size < 128:
            continue
        tiles = _tiles_at(frame, zoom, size, address)
        if len(tiles) <= TILES_MAX:
            return tiles
    return ()


def _tiles_at(frame: Frame, zoom: int, size: float, address: str) -> tuple[Tile, ...]:
    count = 2**zoom
    lat, lon = math.radians(frame.paper.lat_deg), frame.paper.lon_deg
    middle_x, middle_y = frame.at(0.0, 0.0)
    left = (lon + 180.0) / 360.0 * count - middle_x / size
    top = (1 - math.asinh(math.tan(lat)) / math.pi) / 2 * count - middle_y / size
    columns = range(math.floor(left), math.floor(left + WIDTH / size) + 1)
    rows = range(max(math.floor(top), 0), min(math.floor(top + frame.height / size) + 1, count))
    return tuple(
        Tile(
            address.replace("{z}", str(zoom)).replace("{x}", str(x % count)).replace("{y}", str(y)),
            f"{(x - left) * size:.2f}",
            f"{(y - top) * size:.2f}",
            f"{size + 0.3:.2f}",
        )
        for y in rows
        for x in columns
    )
