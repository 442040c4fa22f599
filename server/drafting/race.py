"""The race itself: name, start, route, race control; its points from the route's waypoints, a form, a pasted table."""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from datetime import datetime
from typing import Any, Final

from server.course import Course
from server.course.passes import passes
from server.drafting.document import Document
from server.drafting.pasted import PastedRow, read_cut_off
from server.drafting.typed import Given, fresh_id, moment, number, span
from server.event.read_course import slug

__all__ = [
    "cut_off_of",
    "ident",
    "local_start",
    "put_points",
    "put_race",
    "put_route",
    "reporter_of",
    "same_point",
    "take_rows",
]

ROUTE: Final = "route.gpx"
NEAR_M: Final = 150.0
"""A waypoint further from the line is no point of the course (own choice)."""
END_KM: Final = 0.3
"""Nearer to an end a waypoint is the start or the finish (own choice)."""
SAME_KM: Final = 0.6
"""A pasted row of another name that is nearer to a point of its name than this moves it (own choice)."""
CHANCE: Final = 0.9
"""How surely somebody reports, until a person says otherwise (the example of `stilepost keys points.reports`)."""
_TICKED: Final = {"aid": "aid station", "water": "water", "bag": "drop bag"}
Table = Mapping[str, Any]


def ident(table: Table, otherwise: str = "") -> str:
    """What other tables call this one."""
    return str(table.get("id") or slug(str(table.get("name", ""))) or otherwise)


def local_start(doc: Document) -> datetime | None:
    """The start on the race's own clock, where it can be read."""
    found = doc.table("event").get("starts")
    return found.replace(tzinfo=None) if isinstance(found, datetime) else None


def put_race(doc: Document, given: Given) -> None:
    """The first step: what the race is called, when it starts, whom to call."""
    values: dict[str, Any] = {
        "name": given.get("name", "").strip() or None,
        "time_zone": given.get("zone", "").strip() or None,
        "starts": moment(given.get("day", ""), given.get("clock", "")),
        "limit": span(given.get("limit", "")),
        "emergency_number": given.get("emergency", "").strip() or None,
        "transport": given.get("transport", "").strip() or None,
    }
    if values["name"] and not doc.table("event").get("id"):
        values = {"id": fresh_id(str(values["name"]), [], "race"), **values}
    doc.put("event", values)
    control = {
        "name": given.get("control-name", "").strip() or None,
        "phone": given.get("control-phone", "").strip() or None,
    }
    doc.put("race_control", control)


def put_route(doc: Document, course: Course, names: tuple[str, str] = ("Start", "Finish")) -> None:
    """A new route: its ends and waypoints become points where there are none yet. `names`: of start and finish."""
    doc.put("event", {"route": ROUTE})
    if doc.tables("points"):
        return
    length = course.length_km
    doc.add("points", {"id": "start", "name": names[0], "kinds": ["start"]})
    taken = ["start", "finish"]
    for km, name in _along(course):
        if END_KM < km < length - END_KM:
            taken.append(fresh_id(name, taken, "point"))
            doc.add("points", {"id": taken[-1], "name": name, "km": round(km, 1)})
    doc.add("points", {"id": "finish", "name": names[1], "kinds": ["finish"]})


def _along(course: Course) -> list[tuple[float, str]]:
    """Every pass of every waypoint near the line, in running order; one place passed twice is two points."""
    found = []
    for w in course.track.waypoints:
        near = [p.km for p in passes(course, w.lat_deg, w.lon_deg) if p.offset_m <= NEAR_M]
        found += [(km, w.name if n == 1 else f"{w.name} {n}") for n, km in enumerate(near, 1)]
    return sorted(found)


def put_points(doc: Document, given: Iterable[Given]) -> None:
    """The table of points as a form has it: changed, taken out ('gone'), or new (no 'was'); then in running order."""
    starts = local_start(doc)
    for row in given:
        there = [ident(p) for p in doc.tables("points")]
        was = row.get("was", "")
        if was in there and row.get("gone"):
            doc.drop("points", there.index(was))
        elif was in there:
            at = there.index(was)
            doc.change("points", at, _point(doc.tables("points")[at], row, starts) | {"id": was})
        elif not was and (row.get("name") or row.get("km")):
            doc.add("points", {"id": fresh_id(row.get("name", ""), there, "point")} | _point({}, row, starts))
    _in_order(doc)


def _point(old: Table, row: Given, starts: datetime | None) -> dict[str, Any]:
    crew = bool(row.get("crew"))
    kinds = [
        str(k) for k in old.get("kinds", []) if k not in _TICKED.values() and (crew or k != "crew access")
    ]
    kinds += [word for key, word in _TICKED.items() if row.get(key)]
    stop = number(row.get("stop", ""))
    values: dict[str, Any] = {
        "name": row.get("name") or None,
        "km": number(row["km"]) if "km" in row else old.get("km"),
        "kinds": kinds or None,
        "crew": {"parking": row.get("parking") or None} if crew else None,
        "stop_minutes": None if stop == 0 else stop,
    }
    if "cut" in row:
        values |= _cut_off(old, row.get("cut", ""), row.get("edge", "out"), starts)
    return values | _reports(old, row.get("by", ""), crew)


def cut_off_of(point: Table) -> tuple[str, str] | None:
    """A point's one cut-off as (edge, time as typed); ('out', '') for none, None for several."""
    many = point.get("cut_offs")
    found = (
        [point["cut_off"]]
        if isinstance(point.get("cut_off"), dict)
        else many
        if isinstance(many, list)
        else []
    )
    if len(found) > 1 or not all(isinstance(f, dict) for f in found):
        return None
    if not found:
        return "out", ""
    typed = f"+{found[0]['elapsed']}" if "elapsed" in found[0] else str(found[0].get("clock", ""))
    return str(found[0].get("when", "out")), typed


def _cut_off(old: Table, typed: str, edge: str, starts: datetime | None) -> dict[str, Any]:
    if cut_off_of(old) in (None, (edge, typed)):
        return {}
    if not typed.strip():
        return {"cut_off": None, "cut_offs": None}
    made = {"when": edge, "clock": None, "elapsed": None} | read_cut_off(typed, starts)
    if "cut_offs" in old:
        return {"cut_offs": [made]}
    return {"cut_off": made}


def _reports(old: Table, by: str, crew: bool) -> dict[str, Any]:
    """Who tells that she is there: changed only where the form says something else; crew, where crew may come."""
    now = reporter_of(old)
    if not by and not now and crew and "crew" not in old:
        by = "crew"
    if by == now:
        return {}
    return {"reports": [{"by": by, "chance": CHANCE}] if by else None}


def reporter_of(point: Table) -> str:
    """Who reports from a point, the first of them; '' for nobody."""
    held = point.get("reports")
    first = held[0] if isinstance(held, list) and held else {}
    return str(first.get("by", "")) if isinstance(first, dict) else ""


def _in_order(doc: Document) -> None:
    """By km, the start first and the finish last; a file that places points by waypoints alone keeps its order."""
    points = doc.tables("points")
    if all(isinstance(p.get("km"), int | float) or _end(p) for p in points) and not doc.tables("courses"):
        doc.sort("points", lambda p: _end(p) or (1, float(p.get("km") or 0.0)))


def _end(point: Table) -> tuple[int, float] | None:
    kinds = point.get("kinds") or []
    return (0, 0.0) if "start" in kinds else (2, 0.0) if "finish" in kinds else None


def same_point(doc: Document, row: PastedRow, length_km: float | None) -> str | None:
    """The id of the point that a pasted row speaks of; None for a new one."""
    points = doc.tables("points")
    for p in points:
        if slug(str(p.get("name", ""))) == slug(row.name) or slug(row.name) == ident(p):
            return ident(p)
    if row.km is not None and row.km <= END_KM:
        return next((ident(p) for p in points if "start" in (p.get("kinds") or [])), None)
    if row.km is not None and length_km is not None and row.km >= length_km * 0.98:
        return next((ident(p) for p in points if "finish" in (p.get("kinds") or [])), None)
    for p in points:
        km, name = p.get("km"), str(p.get("name", "")).casefold()
        alike = name and (name in row.name.casefold() or row.name.casefold() in name)
        if alike and isinstance(km, int | float) and row.km is not None and abs(km - row.km) <= SAME_KM:
            return ident(p)
    return None


def take_rows(doc: Document, rows: Iterable[PastedRow], length_km: float | None) -> None:
    """Pasted rows into the points: a point that is there gets km, cut-off and crew, one that is not is made."""
    for row in rows:
        there = [ident(p) for p in doc.tables("points")]
        found = same_point(doc, row, length_km)
        old = {} if found is None else doc.tables("points")[there.index(found)]
        end = _end(old) is not None
        values: dict[str, Any] = {"name": row.name}
        if row.km is not None and not end:
            values["km"] = row.km
        typed = f"+{row.elapsed}" if row.elapsed else row.clock
        if typed and not (end and "start" in old["kinds"]):
            values |= _cut_off(old, typed, row.edge, local_start(doc))
        if row.crew is not None:
            values |= _reports(old, "", row.crew)
            values["crew"] = {} if row.crew else None
        if found is not None:
            doc.change("points", there.index(found), values)
        elif row.km is not None:
            doc.add("points", {"id": fresh_id(row.name, there, "point"), **values})
    _in_order(doc)
