"""An event back to the text of an event file: `dump_event`. What it writes is read back as the same event."""

from __future__ import annotations

from dataclasses import fields
from datetime import timedelta
from typing import Any
from zoneinfo import ZoneInfo

import tomli_w

from server.event.draft import DEFAULT_COURSE
from server.event.model import (
    AlarmRule,
    Brief,
    Contact,
    CourseDef,
    CrewAccess,
    CutOff,
    Driving,
    Event,
    Part,
    PartKind,
    Person,
    Point,
    PointKind,
    Rules,
    Signal,
    Stretch,
    WeatherSpell,
)
from server.event.times import end_of_day, to_wall, write_span
from server.event.write_people import (
    car_table,
    card_table,
    drive_table,
    meeting_table,
    person_table,
    place_table,
    runner_table,
    share_table,
)
from server.event.write_values import Table, given, minutes, number, unless, wall

__all__ = ["dump_event"]


def dump_event(event: Event) -> str:
    """TOML text; `parse_event` of it gives an equal event, but for `version`, which is not in the file.

    Lengths must be whole seconds (paces: microseconds), as they are in every event that was read.
    """
    zone = event.time_zone
    many = [c.id for c in event.courses] != [DEFAULT_COURSE]
    top: Table = {"event": _head(event, many)}
    if event.race_control.phone:
        top["race_control"] = _contact(event.race_control)
    if event.rescue is not None:
        top["rescue"] = _contact(event.rescue)
    top |= given(
        {
            "rules": _rules(event.rules, zone),
            "alarm": _alarm(event.alarm),
            "driving": _driving(event.driving),
            "brief": given({f.name: list(getattr(event.brief, f.name)) for f in fields(Brief)}),
        }
    )
    if many:
        top["courses"] = [
            given(
                {
                    "id": c.id,
                    "route": c.route,
                    "stated_km": c.stated_km,
                    "stated_ascent_m": number(c.stated_ascent_m),
                    "results": c.results,
                }
            )
            for c in event.courses
        ]
    top |= given(
        {
            "points": [_of(c, many) | _point(p, zone) for c in event.courses for p in c.points],
            "stretches": [_of(c, many) | _stretch(s) for c in event.courses for s in c.stretches],
            "runners": [runner_table(r, event, many) for r in event.runners],
            "people": [] if _nobody_but_runners(event) else [person_table(p, event) for p in event.people],
            "places": [place_table(p) for p in event.places],
            "cars": [car_table(c) for c in event.cars],
            "drives": [drive_table(d) for d in event.drives],
            "meetings": [meeting_table(m) for m in event.meetings],
            "shares": [share_table(s) for s in event.shares],
            "weather": [_weather(w, zone) for w in event.weather],
            "if_then": [card_table(c) for c in event.cards],
        }
    )
    return tomli_w.dumps(top)


def _of(course: CourseDef, many: bool) -> Table:
    return {"course": course.id} if many else {}


def _head(event: Event, many: bool) -> Table:
    zone = event.time_zone
    course = None if many else event.courses[0]
    keep: Any = None
    if event.keep_until is not None:
        day = (event.keep_until.astimezone(ZoneInfo(zone)) - timedelta(microseconds=1)).date()
        whole = end_of_day(day, zone) == event.keep_until
        keep = day if whole else to_wall(event.keep_until, zone)
    return given(
        {
            "id": event.id,
            "name": event.name,
            "time_zone": zone,
            "starts": to_wall(event.starts, zone),
            "limit": None if event.limit is None else write_span(event.limit),
            "route": course.route if course is not None else None,
            "stated_km": number(course.stated_km) if course is not None else None,
            "stated_ascent_m": number(course.stated_ascent_m) if course is not None else None,
            "results": course.results if course is not None else None,
            "emergency_number": event.emergency_number,
            "grid": event.grid,
            "transport": event.transport,
            "exercise": event.exercise or None,
            "keep_until": keep,
        }
    )


def _nobody_but_runners(event: Event) -> bool:
    """A file without [[people]], where each runner stands for herself: it stays one. Written out, these people
    would be asked for a safety contact."""
    people = tuple(Person(r.person, r.name) for r in event.runners)
    parts = tuple(Part(r.person, PartKind.RUNNER, r.id) for r in event.runners)
    own = all(r.person == r.id for r in event.runners)
    return own and event.people == people and event.parts == parts


def _contact(c: Contact) -> Table:
    return {"name": c.name, "phone": c.phone}


def _rules(r: Rules, zone: str) -> Table:
    return given(
        {
            "vehicles_max": r.vehicles_max,
            "crew_people_max": r.crew_people_max,
            "pacer_from_km": number(r.pacer_from_km),
            "pacers_at_once": unless(r.pacers_at_once, 1),
            "outside_help": None if r.outside_help_only_at_crew_points else "anywhere",
            "note": r.note,
            "crew_not_before": wall(r.crew_not_before, zone),
            "pacer_sign_in_minutes": minutes(r.pacer_sign_in),
            "required_kit": list(r.required_kit),
        }
    )


def _driving(d: Driving) -> Table:
    default = Driving()
    return given(
        {
            "road_factor": unless(number(d.road_factor), default.road_factor),
            "speed_kmh": unless(number(d.speed_kmh), default.speed_kmh),
            "night_factor": unless(number(d.night_factor), default.night_factor),
            "full_car_park_minutes": minutes(d.full_car_park, default.full_car_park),
        }
    )


def _alarm(a: AlarmRule) -> Table:
    default = AlarmRule()
    return given(
        {
            "line": unless(a.line, default.line),
            "grace_minutes": minutes(a.grace, default.grace),
            "look_again_minutes": minutes(a.look_again, default.look_again),
            "answer_within_minutes": minutes(a.answer_within, default.answer_within),
        }
    )


def _point(p: Point, zone: str) -> Table:
    table = given(
        {
            "id": p.id,
            "name": p.name,
            "also": list(p.also),
            "km": number(p.km),
            "waypoint": p.waypoint,
            "kinds": [k.value for k in PointKind if k in p.kinds],
            "cut_offs": [_cut_off(c, zone) for c in p.cut_offs],
            "reports": [
                {"by": r.by.value, "chance": number(r.chance), "delay_minutes": minutes(r.delay) or 0}
                for r in p.reports
            ],
            "signal": unless(p.signal.value, Signal.GOOD.value),
            "stop_minutes": minutes(p.planned_stop),
            "note": p.note,
            "transport": p.transport,
            "next_stage": None if p.next_stage is None else to_wall(p.next_stage, zone),
        }
    )
    return table if p.access is None else table | {"crew": _access(p.access, zone)}


def _cut_off(c: CutOff, zone: str) -> Table:
    if c.clock is not None:
        return {"when": c.edge.value, "clock": to_wall(c.clock, zone)}
    assert c.elapsed is not None
    return {"when": c.edge.value, "elapsed": write_span(c.elapsed)}


def _access(a: CrewAccess, zone: str) -> Table:
    return given(
        {
            "parking": a.parking,
            "walk_in_minutes": minutes(a.walk_in),
            "unloading_minutes": minutes(a.unloading, CrewAccess().unloading),
            "open_from": wall(a.opens, zone),
            "open_to": wall(a.closes, zone),
            "people_max": a.people_max,
            "lat": a.lat,
            "lon": a.lon,
            "permit": a.permit,
            "place": a.place,
            "cars_max": a.cars_max,
        }
    )


def _stretch(s: Stretch) -> Table:
    return {"from_km": number(s.from_km), "to_km": number(s.to_km)} | given(
        {
            "name": s.name,
            "surface": s.surface,
            "forest_or_gorge": s.forest_or_gorge,
            "no_signal": s.no_signal,
            "factor": unless(s.factor, 1.0),
            "factor_for": s.factor_for,
            "escape_route": s.escape_route,
        }
    )


def _weather(w: WeatherSpell, zone: str) -> Table:
    return given(
        {
            "from": wall(w.from_at, zone),
            "to": wall(w.to_at, zone),
            "course": w.course,
            "from_km": number(w.from_km),
            "to_km": number(w.to_km),
            "temperature_c": number(w.temperature_c),
            "humidity": number(w.humidity),
            "ground": None if w.ground is None else w.ground.value,
            "note": w.note,
        }
    )
