"""The plan for other programs: GPX with points, CSV, JSON. Values in, text or bytes out."""

from __future__ import annotations

import csv
import io
import json
from collections.abc import Mapping, Sequence
from datetime import UTC, timedelta
from typing import Any
from zoneinfo import ZoneInfo

import gpxpy.gpx
import numpy as np

from server.conversation.telling.planned import say_planned, say_sources
from server.conversation.telling.say import Say
from server.conversation.telling.times import planned, planned_length
from server.course import Course
from server.event.model import Event, Goal
from server.plan.cutoffs import DueTime, due_times
from server.plan.targets import hours
from server.plan.timetable import Row, Timetable


def gpx_with_points(
    event: Event, timetable: Timetable, course: Course, say: Say, *, with_line: bool = True
) -> bytes:
    """GPX 1.1 for phones and watches: a waypoint for each point, named with its planned time, and the line.

    A watch shows some fifteen letters of a name, so the time comes first; window, stop and cut-off are in the
    description. Times in names are local to the event, `time` is the planned arrival in UTC.
    """
    zone = ZoneInfo(event.time_zone)
    definition, due = event.course_of(timetable.runner), due_times(event, timetable.runner)
    out = gpxpy.gpx.GPX()
    out.creator = "Stilepost"
    out.name = f"{event.name}: {event.runner(timetable.runner).name}"
    for row in timetable.rows:
        point, spot = definition.point(row.point), course.at(row.km)
        exact = timetable.start + row.arrive[Goal.B]
        at = planned(exact, Goal.B)
        mark = gpxpy.gpx.GPXWaypoint(
            latitude=round(spot.lat_deg, 7),
            longitude=round(spot.lon_deg, 7),
            elevation=None if spot.height_m is None else round(spot.height_m, 1),
            time=exact.astimezone(UTC),
            name=f"{at.astimezone(zone):%H:%M} {point.name}",
            description=_described(timetable, row, [d for d in due if d.point == row.point], say),
        )
        out.waypoints.append(mark)
    if with_line:
        out.tracks.append(_line(course))
    return str(out.to_xml(version="1.1")).encode()


def _described(table: Timetable, row: Row, dues: Sequence[DueTime], say: Say) -> str:
    early, late = (planned(table.start + row.arrive[g], g) for g in (Goal.A, Goal.C))
    said = [say.km(row.km), f"A {say.when(early, day=True)}", f"C {say.when(late, day=True)}"]
    if row.stop:
        said.append(f"{say.s('paper-stop')} {hours(row.stop)}")
    for d in dues:
        due = say.s("paper-due", edge=say.s(f"edge-{d.edge.value}"), when=say.when(d.at, day=True))
        said.append(f"{say.s('paper-cut-off')} {due}")
    return ", ".join(said)


def _line(course: Course) -> gpxpy.gpx.GPXTrack:
    track = gpxpy.gpx.GPXTrack(name=course.name)
    segment = gpxpy.gpx.GPXTrackSegment()
    known = ~np.isnan(course.height_m)
    for k in range(len(course.km)):
        lon = (float(course.lon_deg[k]) + 180.0) % 360.0 - 180.0
        height = round(float(course.height_m[k]), 1) if known[k] else None
        segment.points.append(
            gpxpy.gpx.GPXTrackPoint(round(float(course.lat_deg[k]), 7), round(lon, 7), elevation=height)
        )
    track.segments.append(segment)
    return track


def to_csv(event: Event, timetable: Timetable) -> str:
    """The timetable as CSV: one row a point, elapsed h:mm:ss and local clock time, in and out, for each goal; whole
    minutes as in the table: A down, B nearest, C up."""
    zone = ZoneInfo(event.time_zone)
    definition = event.course_of(timetable.runner)
    out = io.StringIO()
    writer = csv.writer(out, lineterminator="\r\n")
    names = [f"{g.value} {edge}" for g in Goal for edge in ("in", "in clock", "out", "out clock")]
    writer.writerow(["point", "id", "km", "leg km", "ascent m", "descent m", "stop", *names])
    for row in timetable.rows:
        cells: list[str] = []
        for g in Goal:
            for gone in (row.arrive[g], row.leave[g]):
                shown = planned(timetable.start + gone, g).astimezone(zone)
                cells += [_elapsed(planned_length(gone, g)), f"{shown:%Y-%m-%d %H:%M:%S}"]
        legs = (f"{row.leg_km:.2f}", f"{row.leg_ascent_m:.0f}", f"{row.leg_descent_m:.0f}")
        name = definition.point(row.point).name
        # A name that begins like a formula would be run by a spreadsheet.
        safe = f"'{name}" if name[:1] in "=+-@\t\r" else name
        writer.writerow([safe, row.point, f"{row.km:.2f}", *legs, _elapsed(row.stop), *cells])
    return out.getvalue()


def _elapsed(gone: timedelta) -> str:
    seconds = round(gone.total_seconds())
    return f"{seconds // 3600}:{seconds // 60 % 60:02d}:{seconds % 60:02d}"


def to_json(event: Event, timetable: Timetable, say: Say, meetings: Sequence[Mapping[str, Any]] = ()) -> str:
    """The timetable as JSON: elapsed whole seconds, instants in UTC (ISO 8601), factors in seconds, notes in words;
    `meetings` as `meetings_json` has them."""
    definition = event.course_of(timetable.runner)
    whole: dict[str, Any] = {
        "event": event.id,
        "version": event.version,
        "runner": timetable.runner,
        "start": timetable.start.astimezone(UTC).isoformat(),
        "source": say_sources(say.reader, timetable.source),
        "quality": timetable.quality,
        "spread": round(timetable.spread, 4),
        "notes": [say_planned(say.reader, n) for n in timetable.notes],
        "points": [
            {
                "id": row.point,
                "name": definition.point(row.point).name,
                "km": round(row.km, 3),
                "leg_km": round(row.leg_km, 3),
                "leg_ascent_m": round(row.leg_ascent_m),
                "leg_descent_m": round(row.leg_descent_m),
                "stop_s": round(row.stop.total_seconds()),
                "in_s": {g.value: round(row.arrive[g].total_seconds()) for g in Goal},
                "out_s": {g.value: round(row.leave[g].total_seconds()) for g in Goal},
                "factors_s": {name: round(gone.total_seconds()) for name, gone in row.factors},
            }
            for row in timetable.rows
        ],
        "light": [
            {"event": m.event.value, "at": m.at.astimezone(UTC).isoformat(), "km": round(m.km, 2)}
            for m in timetable.light
        ],
        "meetings": list(meetings),
    }
    return json.dumps(whole, ensure_ascii=False, allow_nan=False, indent=1)
