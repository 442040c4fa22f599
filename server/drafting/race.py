"""The race itself: name, start, route, race control; its points from the route's waypoints, a form, a pasted table."""

from __future__ import annotations

import re
from collections import Counter
from collections.abc import Iterable, Mapping, Sequence
from datetime import datetime
from typing import Any, Final

from server.course import Course
from server.course.line import STATED_WITHIN
from server.course.passes import passes
from server.drafting.document import Document
from server.drafting.pasted import PastedRow, read_cut_off
from server.drafting.typed import Given, begun, fresh_id, moment, number, shown, span
from server.event.forms import slug

__all__ = [
    "cut_off_of",
    "ident",
    "local_start",
    "matched",
    "put_points",
    "put_race",
    "put_route",
    "reporter_of",
    "take_rows",
]

ROUTE: Final = "route.gpx"
NEAR_M: Final = 150.0
"""A waypoint further from the line is no point of the course (own choice)."""
END_KM: Final = 0.3
"""Nearer to an end a waypoint is the start or the finish (own choice)."""
NAMESAKE_KM: Final = 2.0
"""A row whose name the table has twice is a point of that name no further off than this (own choice)."""
SAME_KM: Final = 0.6
"""A pasted row that has a point's name in its own is that point, no further off than this (own choice)."""
CHANCE: Final = 0.9
"""How surely somebody reports, until a person says otherwise (the example of `stilepost keys points.reports`)."""
MAT_CHANCE: Final = 0.97
"""A mat misses fewer than people do (own choice)."""
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
        was = row.get("was", "") or _twice(doc, row)
        if was in there and row.get("gone"):
            doc.drop("points", there.index(was))
        elif was in there:
            at = there.index(was)
            doc.change("points", at, _point(doc.tables("points")[at], row, starts) | {"id": was})
        elif not was and begun(row):
            doc.add("points", {"id": fresh_id(row.get("name", ""), there, "point")} | _point({}, row, starts))
    _in_order(doc)


def _twice(doc: Document, row: Given) -> str:
    """The id of the point that a new row has made already: a finger that taps twice sends it twice."""
    same = (row.get("name") or None, number(row.get("km", "")))
    return next(
        (ident(p) for p in doc.tables("points") if (p.get("name"), p.get("km")) == same and begun(row)), ""
    )


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
    if "stage" in row and row["stage"] != shown(old.get("next_stage")):
        values["next_stage"] = row["stage"] or None
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
    chance = MAT_CHANCE if by == "timing mat" else CHANCE
    return {"reports": [{"by": by, "chance": chance}] if by else None}


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


def matched(doc: Document, rows: Sequence[PastedRow], length_km: float | None) -> list[str | None]:
    """For each pasted row the id of the point it speaks of, None for a new one; no point is spoken of twice.

    Of several points of its name the nearest; where the table itself has a name twice, none that is far off.
    """
    names = Counter(slug(r.name) for r in rows)
    free = {ident(p): p for p in doc.tables("points")}
    found: list[str | None] = []
    for row in rows:
        alike = [(i, p) for i, p in free.items() if slug(row.name) in (slug(str(p.get("name", ""))), i)]
        best = min(alike, key=lambda x: _apart(x[1], row, length_km), default=None)
        if best is not None and names[slug(row.name)] > 1 and _apart(best[1], row, length_km) > NAMESAKE_KM:
            best = None
        taken = best[0] if best is not None else _unnamed(free, row, length_km)
        found.append(taken)
        free.pop(taken or "", None)
    return found


def _apart(point: Table, row: PastedRow, length_km: float | None) -> float:
    end = _end(point)
    km = point.get("km") if end is None else 0.0 if end[0] == 0 else length_km
    return abs(km - row.km) if isinstance(km, int | float) and row.km is not None else 0.0


def _unnamed(free: Mapping[str, Table], row: PastedRow, length_km: float | None) -> str | None:
    """A point of another name: an end of the course, or one close by whose name is part of the row's. What lies past the
    end of the line is its finish, by the organiser's length."""
    for i, p in free.items():
        end, name = _end(p), str(p.get("name", "")).casefold()
        if row.km is None:
            continue
        if end is not None and end[0] == 0:
            if row.km <= END_KM:
                return i
        elif end is not None:
            # Called so, the organiser's length may be that much shorter as well.
            short = STATED_WITHIN if name and name in row.name.casefold() else 0.02
            if (
                length_km is not None
                and (1.0 - short) * length_km <= row.km <= (1.0 + STATED_WITHIN) * length_km
            ):
                return i
        elif (
            name
            and _apart(p, row, length_km) <= SAME_KM
            and (name in row.name.casefold() or row.name.casefold() in name or _bare(name) == _bare(row.name))
        ):
            return i
    return None


_NUMBERED = re.compile(r"[\s,(]+(?:no\.?\s*)?\d(?:st|nd|rd|th|er|[eè]re|e|[eè]me|\.)?\)?$")


def _bare(name: str) -> str:
    """A name without the number of its pass: 'Mill 2' and 'Mill (2nd)' are one place."""
    return _NUMBERED.sub("", name.casefold().strip())


def take_rows(doc: Document, rows: Sequence[PastedRow], length_km: float | None) -> None:
    """Pasted rows into the points: a point that is there gets km, cut-off and crew, one that is not is made.

    The km of the finish is the organiser's length: points that the table does not name keep their place on the line.
    """
    found = matched(doc, rows, length_km)
    _stated(doc, rows, found, length_km)
    for row, point in zip(rows, found, strict=True):
        there = [ident(p) for p in doc.tables("points")]
        old = {} if point is None else doc.tables("points")[there.index(point)]
        end = _end(old)
        values: dict[str, Any] = {"name": row.name}
        if row.km is not None and end is None:
            values["km"] = row.km
        typed = f"+{row.elapsed}" if row.elapsed else row.clock
        if typed and (end is None or end[0] != 0):
            values |= _cut_off(old, typed, row.edge, local_start(doc))
        if row.crew is not None:
            values |= _reports(old, "", row.crew)
            values["crew"] = {} if row.crew else None
        if point is not None:
            doc.change("points", there.index(point), values)
        elif row.km is not None:
            doc.add("points", {"id": fresh_id(row.name, there, "point"), **values})
    _in_order(doc)


def _stated(
    doc: Document, rows: Sequence[PastedRow], found: Sequence[str | None], length_km: float | None
) -> None:
    points = {ident(p): p for p in doc.tables("points")}
    ends = [(r.km, i) for r, i in zip(rows, found, strict=True) if i and _end(points[i]) == (2, 0.0) and r.km]
    if not ends or length_km is None or doc.tables("courses"):
        return
    stated = float(ends[0][0] or 0.0)
    if not 0.1 < abs(stated - length_km) <= STATED_WITHIN * length_km:
        return
    doc.put("event", {"stated_km": int(stated) if stated.is_integer() else stated})
    for at, p in enumerate(doc.tables("points")):
        if ident(p) not in found and isinstance(p.get("km"), int | float):
            doc.change("points", at, {"km": round(p["km"] * stated / length_km, 1)})
