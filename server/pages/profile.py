"""The course as a picture: height along the way, the points, where she was last known, the estimate apart.

A fact is drawn as a full line with its time; an estimate as a hatched band, never as a point, for a dot would
look seen. The same picture stands alone (own colours) or inside a page, whose classes then colour it.
"""

from __future__ import annotations

from dataclasses import dataclass
from functools import lru_cache
from html import escape

from server.conversation.telling.measures import KM_PER_MILE
from server.course import Course, profile
from server.event.model import CourseDef, Event, Point

WIDTH, HEIGHT = 760.0, 270.0
LEFT, RIGHT, TOP, BOTTOM = 38.0, 66.0, 88.0, 26.0
LABEL_ROOM = 13.0
NICE_STEPS = (1, 2, 5, 10, 20, 25, 50, 100)


@dataclass(frozen=True, slots=True)
class Marks:
    """What is known of her, to be drawn: km of the last known point and its words; the estimate's km."""

    last_km: float | None = None
    last_words: str = ""
    low_km: float | None = None
    high_km: float | None = None


@dataclass(frozen=True, slots=True)
class _Frame:
    length_km: float
    low_m: float
    high_m: float

    def x(self, km: float) -> float:
        return LEFT + (WIDTH - LEFT - RIGHT) * km / self.length_km

    def y(self, height_m: float) -> float:
        share = (height_m - self.low_m) / (self.high_m - self.low_m)
        return HEIGHT - BOTTOM - share * (HEIGHT - TOP - BOTTOM)


def profile_svg(
    event: Event,
    runner: str,
    course: Course,
    marks: Marks | None = None,
    title: str = "Course",
    *,
    miles: bool = False,
) -> str:
    """The picture as SVG text, its scale in km or miles. Without heights the line is flat and everything else the same."""
    return course_svg(event.course_of(runner), course, marks, title, miles=miles)


def course_svg(
    definition: CourseDef,
    course: Course,
    marks: Marks | None = None,
    title: str = "Course",
    *,
    miles: bool = False,
) -> str:
    """The same of a course on which nobody runs yet."""
    frame, ground = _drawn(course)
    marks = marks or Marks()
    parts = [
        f'<svg xmlns="http://www.w3.org/2000/svg" class="profile" viewBox="0 0 {WIDTH:.0f} {HEIGHT:.0f}" '
        f'role="img" font-family="system-ui, sans-serif"><title>{escape(title)}</title>',
        _HATCH,
        _no_signal(definition, frame),
        _estimate(marks, frame),
        ground,
        _heights(frame, course.has_heights),
        _scale(frame, *((KM_PER_MILE, "mi") if miles else (1.0, "km"))),
        *_points(definition.points, frame),
        _last(marks, frame),
        "</svg>",
    ]
    return "".join(parts)


_HATCH = (
    '<defs><pattern id="hatch" width="7" height="7" patternUnits="userSpaceOnUse" '
    'patternTransform="rotate(45)"><rect class="hatch" width="2.4" height="7" fill="#8a7a55"/></pattern></defs>'
)


@lru_cache(maxsize=32)
def _drawn(course: Course) -> tuple[_Frame, str]:
    """The frame of a course, and its ground: the same on every board, whoever looks and whenever."""
    corners = [(p.km, p.height_m) for p in profile(course)] or [(0.0, 0.0), (course.length_km, 0.0)]
    heights = [h for _, h in corners]
    low, high = min(heights), max(heights)
    room = max(50.0, (high - low) * 0.08)
    frame = _Frame(course.length_km, low - room, high + room)
    return frame, _ground(corners, frame)


def _ground(corners: list[tuple[float, float]], frame: _Frame) -> str:
    line = " ".join(f"{frame.x(km):.1f},{frame.y(h):.1f}" for km, h in corners)
    floor = HEIGHT - BOTTOM
    return (
        f'<polygon class="ground" fill="#c9b58a" fill-opacity="0.28" '
        f'points="{frame.x(0):.1f},{floor} {line} {frame.x(frame.length_km):.1f},{floor}"/>'
        f'<polyline class="ridge" fill="none" stroke="#8a7a55" stroke-width="1.6" points="{line}"/>'
    )


def _heights(frame: _Frame, known: bool) -> str:
    if not known:
        return ""
    step = _nice((frame.high_m - frame.low_m) / 3, (50, 100, 200, 250, 500, 1000))
    first = int(frame.low_m // step + 1) * step
    levels = range(int(first), int(frame.high_m), int(step))
    return "".join(
        f'<line class="rule" stroke="#8a7a55" stroke-opacity="0.35" stroke-dasharray="2 4" '
        f'x1="{LEFT}" x2="{WIDTH - RIGHT}" y1="{frame.y(h):.1f}" y2="{frame.y(h):.1f}"/>'
        f'<text class="scale" fill="#8a7a55" font-size="10" text-anchor="end" x="{LEFT - 5}" '
        f'y="{frame.y(h) + 3:.1f}">{h}</text>'
        for h in levels
    )


def _scale(frame: _Frame, unit_km: float, unit: str) -> str:
    length = frame.length_km / unit_km
    marks = range(0, int(length) + 1, _nice(length / 8, NICE_STEPS))
    return "".join(
        f'<text class="scale" fill="#8a7a55" font-size="10" text-anchor="middle" x="{frame.x(n * unit_km):.1f}" '
        f'y="{HEIGHT - 8}">{n}{f" {unit}" if n == 0 else ""}</text>'
        for n in marks
    )


def _nice(wanted: float, steps: tuple[int, ...]) -> int:
    return next((s for s in steps if s >= wanted), steps[-1])


def _points(points: tuple[Point, ...], frame: _Frame) -> list[str]:
    """A tick for every point; names where they do not run into one another, crew points first."""
    taken: list[float] = []
    named: set[str] = set()
    for p in sorted(points, key=lambda p: (not p.crew_access, p.km or 0.0)):
        x = frame.x(p.km or 0.0)
        if all(abs(x - other) >= LABEL_ROOM for other in taken):
            taken.append(x)
            named.add(p.id)
    return [_point(p, frame, p.id in named) for p in points]


def _point(p: Point, frame: _Frame, named: bool) -> str:
    x, floor = frame.x(p.km or 0.0), HEIGHT - BOTTOM
    crew = p.crew_access
    tick = (
        f'<line class="{"tick crew" if crew else "tick"}" stroke="#8a7a55" stroke-width="{1.8 if crew else 0.8}" '
        f'x1="{x:.1f}" x2="{x:.1f}" y1="{TOP - 4 if named else floor - 10:.1f}" y2="{floor}"/>'
    )
    if not named:
        return tick
    weight = "600" if crew else "400"
    return tick + (
        f'<text class="{"name crew" if crew else "name"}" fill="#6b5d3e" font-size="11" font-weight="{weight}" '
        f'transform="translate({x + 3:.1f} {TOP - 8:.1f}) rotate(-38)">{escape(_short(p.name))}</text>'
    )


def _short(name: str) -> str:
    return name if len(name) <= 17 else name[:16].rstrip() + "…"


def _no_signal(definition: CourseDef, frame: _Frame) -> str:
    floor = HEIGHT - BOTTOM
    return "".join(
        f'<rect class="no-signal" fill="#8a7a55" fill-opacity="0.22" x="{frame.x(s.from_km):.1f}" '
        f'y="{floor}" width="{frame.x(s.to_km) - frame.x(s.from_km):.1f}" height="5"/>'
        for s in definition.stretches
        if s.no_signal
    )


def _estimate(marks: Marks, frame: _Frame) -> str:
    if marks.low_km is None or marks.high_km is None:
        return ""
    left, right = frame.x(marks.low_km), frame.x(marks.high_km)
    return (
        f'<rect class="estimate" fill="url(#hatch)" x="{left:.1f}" y="{TOP}" '
        f'width="{max(right - left, 3):.1f}" height="{HEIGHT - TOP - BOTTOM}"/>'
    )


def _last(marks: Marks, frame: _Frame) -> str:
    if marks.last_km is None:
        return ""
    x = frame.x(marks.last_km)
    left = x > WIDTH * 0.6
    return (
        f'<line class="known" stroke="#a3501e" stroke-width="3" x1="{x:.1f}" x2="{x:.1f}" y1="{TOP}" '
        f'y2="{HEIGHT - BOTTOM}"/>'
        f'<text class="known" fill="#a3501e" font-size="13" font-weight="700" '
        f'text-anchor="{"end" if left else "start"}" x="{x - 6 if left else x + 6:.1f}" y="{TOP + 14}">'
        f"{escape(marks.last_words)}</text>"
    )
