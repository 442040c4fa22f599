"""The plan for other programs: calendar per person, GPX with points, CSV, JSON. Values in, text or bytes out."""

from __future__ import annotations

import csv
import io
import json
from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from datetime import UTC, datetime, timedelta
from typing import Any
from zoneinfo import ZoneInfo

import gpxpy.gpx
import icalendar
import numpy as np

from server.course import Course
from server.event.model import CutOff, Event, Goal, PartKind, Point
from server.plan.targets import hours
from server.plan.timetable import Row, Timetable

PRODUCT = "-//Stilepost//crew plan//EN"


@dataclass(frozen=True, slots=True)
class Appointment:
    """One entry of a person's calendar. `id` stays the same when times move; start and end are aware."""

    id: str
    start: datetime
    end: datetime
    title: str
    where: str = ""
    words: str = ""
    lat: float | None = None
    lon: float | None = None


def calendar(event: Event, appointments: Sequence[Appointment], stamp: datetime) -> bytes:
    """An RFC 5545 calendar. UID is made of event and appointment and never changes, SEQUENCE is the event's version:
    a calendar that has an older version moves its entries instead of doubling them. Times are in UTC, which needs
    no VTIMEZONE and is right in every zone. `stamp` is when this was made. Two appointments of one id: ValueError.
    """
    ids = [a.id for a in appointments]
    if len(set(ids)) != len(ids):
        raise ValueError(f"two appointments of one id among {sorted(ids)}")
    whole = icalendar.Calendar()
    whole.add("prodid", PRODUCT)
    whole.add("version", "2.0")
    whole.add("method", "PUBLISH")
    whole.add("x-wr-calname", event.name)
    for a in sorted(appointments, key=lambda a: (a.start, a.id)):
        entry = icalendar.Event()
        entry.add("uid", f"{event.id}.{a.id}@stilepost")
        entry.add("sequence", event.version)
        entry.add("dtstamp", stamp.astimezone(UTC))
        entry.add("dtstart", a.start.astimezone(UTC).replace(microsecond=0))
        entry.add("dtend", max(a.end, a.start + timedelta(minutes=1)).astimezone(UTC).replace(microsecond=0))
        entry.add("summary", a.title)
        if a.where:
            entry.add("location", a.where)
        if a.words:
            entry.add("description", a.words)
        if a.lat is not None and a.lon is not None:
            entry.add("geo", (a.lat, a.lon))
        whole.add_component(entry)
    return bytes(whole.to_ical())


def appointments_of(
    event: Event, person: str, timetables: Mapping[str, Timetable]
) -> tuple[Appointment, ...]:
    """What a person has to do by the plan: start, meetings, pacing, standing at a point.

    A meeting lasts from goal A's arrival to goal C's departure: the crew movements narrow it. `timetables` by
    runner id; a runner without one has no appointments. Errors: KeyError for a person who is not in the event.
    """
    event.person(person)
    found: list[Appointment] = []
    for m in event.meetings:
        table = timetables.get(m.runner)
        if table is not None and (person in m.crew or person == event.runner(m.runner).person):
            found.append(_meeting(event, table, m.id, m.point, ", ".join(k.name for k in m.kit), m.food))
    for part in event.parts_of(person):
        for runner in [part.runner] if part.runner else [r.id for r in event.runners]:
            table = timetables.get(runner)
            if table is None:
                continue
            if part.kind is PartKind.RUNNER:
                found.append(_start(event, table))
            elif part.kind is PartKind.PACER and part.pace_from and part.pace_to:
                found.append(_pacing(event, table, part.pace_from, part.pace_to))
            elif part.kind is PartKind.VOLUNTEER and part.point:
                row = table.row(part.point)
                name = event.course_of(runner).point(part.point).name
                found.append(
                    Appointment(
                        f"stand-{part.point}-{runner}",
                        *_between(table, row),
                        f"{_name(event, table)} at {name}",
                    )
                )
    return tuple(found)


def _name(event: Event, table: Timetable) -> str:
    return event.runner(table.runner).name


def _between(table: Timetable, row: Row) -> tuple[datetime, datetime]:
    return table.start + row.arrive[Goal.A], table.start + row.leave[Goal.C]


def _meeting(event: Event, table: Timetable, meeting: str, point_id: str, kit: str, food: str) -> Appointment:
    row, point = table.row(point_id), event.course_of(table.runner).point(point_id)
    access = point.access
    likely = (table.start + row.arrive[Goal.B]).astimezone(ZoneInfo(event.time_zone))
    words = [f"planned {likely:%a %H:%M}, stop {hours(row.stop)}"]
    words += [f"bring: {kit}"] if kit else []
    words += [f"food: {food}"] if food else []
    words += [f"parking: {access.parking}"] if access and access.parking else []
    words.append("the plan, not a forecast: ask for the forecast before you leave")
    start, end = _between(table, row)
    where = f"{point.name}, km {row.km:.1f}"
    title = f"{_name(event, table)} at {point.name}"
    place = (access.lat, access.lon) if access else (None, None)
    return Appointment(f"meeting-{meeting}", start, end, title, where, "\n".join(words), *place)


def _start(event: Event, table: Timetable) -> Appointment:
    first, last = table.rows[0], table.rows[-1]
    name = event.course_of(table.runner).point(first.point).name
    words = "\n".join(f"goal {g.value}: {hours(last.arrive[g])}" for g in Goal)
    return Appointment(
        f"race-{table.runner}",
        table.start,
        table.start + last.arrive[Goal.C],
        f"{event.name}: start",
        name,
        words,
    )


def _pacing(event: Event, table: Timetable, pace_from: str, pace_to: str) -> Appointment:
    course = event.course_of(table.runner)
    first, last = table.row(pace_from), table.row(pace_to)
    names = (course.point(pace_from).name, course.point(pace_to).name)
    return Appointment(
        f"pace-{table.runner}-{pace_from}",
        table.start + first.arrive[Goal.A],
        table.start + last.arrive[Goal.C],
        f"Pace {_name(event, table)}, {names[0]} to {names[1]}",
        names[0],
        f"{last.km - first.km:.1f} km",
    )


def gpx_with_points(event: Event, timetable: Timetable, course: Course, *, with_line: bool = True) -> bytes:
    """GPX 1.1 for phones and watches: a waypoint for each point, named with its planned time, and the line.

    A watch shows some fifteen letters of a name, so the time comes first; window, stop and cut-off are in the
    description. Times in names are local to the event, `time` is the planned arrival in UTC.
    """
    zone = ZoneInfo(event.time_zone)
    definition = event.course_of(timetable.runner)
    out = gpxpy.gpx.GPX()
    out.creator = "Stilepost"
    out.name = f"{event.name}: {event.runner(timetable.runner).name}"
    for row in timetable.rows:
        point, spot = definition.point(row.point), course.at(row.km)
        at = timetable.start + row.arrive[Goal.B]
        mark = gpxpy.gpx.GPXWaypoint(
            latitude=round(spot.lat_deg, 7),
            longitude=round(spot.lon_deg, 7),
            elevation=None if spot.height_m is None else round(spot.height_m, 1),
            time=at.astimezone(UTC),
            name=f"{at.astimezone(zone):%H:%M} {point.name}",
            description=_described(timetable, row, point, zone),
        )
        out.waypoints.append(mark)
    if with_line:
        out.tracks.append(_line(course))
    return str(out.to_xml(version="1.1")).encode()


def _described(table: Timetable, row: Row, point: Point, zone: ZoneInfo) -> str:
    early, late = ((table.start + row.arrive[g]).astimezone(zone) for g in (Goal.A, Goal.C))
    said = [f"km {row.km:.1f}", f"{early:%H:%M} to {late:%H:%M}"]
    if row.stop:
        said.append(f"stop {hours(row.stop)}")
    said += [f"cut-off {c.edge.value} {_due(c, table).astimezone(zone):%a %H:%M}" for c in point.cut_offs]
    return ", ".join(said)


def _due(cut_off: CutOff, table: Timetable) -> datetime:
    return cut_off.at(table.start)


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
    """The timetable as CSV: one row a point, elapsed h:mm:ss and local clock time, in and out, for each goal."""
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
                cells += [_elapsed(gone), f"{(timetable.start + gone).astimezone(zone):%Y-%m-%d %H:%M:%S}"]
        legs = (f"{row.leg_km:.2f}", f"{row.leg_ascent_m:.0f}", f"{row.leg_descent_m:.0f}")
        name = definition.point(row.point).name
        # A name that begins like a formula would be run by a spreadsheet.
        safe = f"'{name}" if name[:1] in "=+-@\t\r" else name
        writer.writerow([safe, row.point, f"{row.km:.2f}", *legs, _elapsed(row.stop), *cells])
    return out.getvalue()


def _elapsed(gone: timedelta) -> str:
    seconds = round(gone.total_seconds())
    return f"{seconds // 3600}:{seconds // 60 % 60:02d}:{seconds % 60:02d}"


def to_json(event: Event, timetable: Timetable) -> str:
    """The timetable as JSON: elapsed whole seconds, instants in UTC (ISO 8601), factors in seconds."""
    definition = event.course_of(timetable.runner)
    whole: dict[str, Any] = {
        "event": event.id,
        "version": event.version,
        "runner": timetable.runner,
        "start": timetable.start.astimezone(UTC).isoformat(),
        "source": timetable.source,
        "quality": timetable.quality,
        "notes": list(timetable.notes),
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
    }
    return json.dumps(whole, ensure_ascii=False, allow_nan=False, indent=1)
