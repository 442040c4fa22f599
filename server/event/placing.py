"""Gives every point of an event its km, by its course: `place`."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, replace
from datetime import timedelta
from typing import Final
from zoneinfo import ZoneInfo

from server.course import Course, Placing, WantedPoint, place_points
from server.event.check_km import check_km
from server.event.model import CourseDef, Event, Point, PointKind
from server.event.parse_state import Parsed
from server.event.problem import Problem
from server.event.table_reader import Problems
from server.sentences import say

ZONE_APART_H: Final = 4.0


@dataclass(frozen=True, slots=True)
class PlacedEvent:
    """The event with every km known, or None and the mistakes that stand in the way."""

    event: Event | None
    problems: tuple[Problem, ...]


def place(
    event: Event, courses: Mapping[str, Course], file: str = "event.toml", parsed: Parsed | None = None
) -> PlacedEvent:
    """Put the points of `event` on its courses (by course id).

    `parsed`, the result the event came from, lets mistakes name their lines. The first and the last point
    are the ends of the line. KeyError when a course is missing from `courses`.
    """
    report = Problems(file, parsed.lines if parsed is not None else {})
    paths = parsed.paths if parsed is not None else {}
    placed = []
    for definition in event.courses:
        placing = place_points(courses[definition.id], [_wanted(p) for p in definition.points])
        for mistake in placing.mistakes:
            point = definition.points[mistake.index]
            path = paths.get(("points", point.id), ("points", point.id))
            report.names[path] = point.id
            report.error((*path, mistake.field), mistake.what, mistake.remedy)
        placed.append(_with_km(definition, placing))
    if report.failed:
        return PlacedEvent(None, tuple(report.problems))
    done = replace(event, courses=tuple(placed))
    report.names |= {path: name for (_, name), path in paths.items()}
    check_km(done, report, paths)
    _rides(done, courses, report)
    _zone(done, courses, report)
    return PlacedEvent(None if report.failed else done, tuple(report.problems))


STAGE_END_KM: Final = 1.0
"""So far from the break in the line the point may stand at which the stage ends (own choice)."""


def _rides(event: Event, courses: Mapping[str, Course], report: Problems) -> None:
    """A break in the line where no stage ends: what is missing there is counted as if nobody ran it."""
    for definition in event.courses:
        ends = [p.km for p in definition.points if p.next_stage is not None and p.km is not None]
        for km, straight_km in courses[definition.id].rides:
            if not any(abs(km - end) <= STAGE_END_KM for end in ends):
                about = {"file": definition.route, "from_km": f"{km:.1f}", "length_km": f"{straight_km:.1f}"}
                report.warn(
                    ("event", "route"), say("wrong-broken-where-no-stage", **about), say("do-broken-stage")
                )


def _zone(event: Event, courses: Mapping[str, Course], report: Problems) -> None:
    """A time zone an ocean away from the route: every clock time would be hours out. Zones lie up to three hours and a half
    from the sun's own time."""
    lon = float(courses[event.courses[0].id].lon_deg[0])
    lon = (lon + 180.0) % 360.0 - 180.0
    offset = event.starts.astimezone(ZoneInfo(event.time_zone)).utcoffset()
    zone_h, sun_h = (offset or timedelta(0)) / timedelta(hours=1), lon / 15.0
    apart = abs((zone_h - sun_h + 12.0) % 24.0 - 12.0)
    if apart > ZONE_APART_H:
        what = say("wrong-time-zone-hours-from-suns", time_zone=event.time_zone, apart_h=f"{apart:.0f}")
        remedy = say("do-check-time-zone-route-right", lon=f"{lon:.1f}")
        report.warn(("event", "time_zone"), what, remedy)


def _wanted(p: Point) -> WantedPoint:
    if PointKind.START in p.kinds:
        return WantedPoint(p.name, p.km, p.waypoint, "start")
    return WantedPoint(p.name, p.km, p.waypoint, "finish" if p.finish else None)


def _with_km(definition: CourseDef, placing: Placing) -> CourseDef:
    """A km given by hand stays as it is when the course agrees to it; it only ever gains one."""
    if placing.mistakes:
        return definition
    pairs = zip(definition.points, placing.points, strict=True)
    return replace(definition, points=tuple(replace(p, km=q.km) for p, q in pairs))
