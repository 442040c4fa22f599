"""An event back to the text of an event file: `dump_event`. What it writes is read back as the same event."""

from __future__ import annotations

from datetime import datetime, timedelta
from typing import Any
from zoneinfo import ZoneInfo

import tomli_w

from server.event.draft import DEFAULT_COURSE
from server.event.model import (
    AlarmRule,
    Car,
    Contact,
    CourseDef,
    CrewAccess,
    CutOff,
    Drive,
    Driving,
    Event,
    FuelPlan,
    IfThenCard,
    KitItem,
    KitWeight,
    MeetingPlan,
    NoticeChoice,
    Part,
    PartKind,
    PastRace,
    Person,
    Place,
    Point,
    PointKind,
    Rules,
    Runner,
    Share,
    Signal,
    Sleep,
    Stretch,
    Target,
    WeatherSpell,
)
from server.event.times import end_of_day, to_wall, write_pace, write_span

__all__ = ["dump_event"]

Table = dict[str, Any]


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
    top |= _given(
        {
            "rules": _rules(event.rules, zone),
            "alarm": _alarm(event.alarm),
            "driving": _driving(event.driving),
        }
    )
    if many:
        top["courses"] = [
            _given({"id": c.id, "route": c.route, "stated_km": c.stated_km, "results": c.results})
            for c in event.courses
        ]
    top |= _given(
        {
            "points": [_of(c, many) | _point(p, zone) for c in event.courses for p in c.points],
            "stretches": [_of(c, many) | _stretch(s) for c in event.courses for s in c.stretches],
            "runners": [_runner(r, event, many) for r in event.runners],
            "people": [] if _nobody_but_runners(event) else [_person(p, event) for p in event.people],
            "places": [_place(p) for p in event.places],
            "cars": [_car(c) for c in event.cars],
            "drives": [_drive(d) for d in event.drives],
            "meetings": [_meeting(m) for m in event.meetings],
            "shares": [_share(s) for s in event.shares],
            "weather": [_weather(w, zone) for w in event.weather],
            "if_then": [_card(c) for c in event.cards],
        }
    )
    return tomli_w.dumps(top)


def _given(table: Table) -> Table:
    """Without what is not given: None, empty texts and lists, false."""
    return {k: v for k, v in table.items() if v is not None and v is not False and v not in ("", [], {})}


def _unless(value: Any, default: Any) -> Any:
    return None if value == default else value


def _number(value: float | None) -> int | float | None:
    """Whole numbers without decimals, as people write them."""
    return int(value) if value is not None and value == int(value) else value


def _minutes(length: timedelta, default: timedelta = timedelta(0)) -> int | float | None:
    return None if length == default else _number(length / timedelta(minutes=1))


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
    return _given(
        {
            "id": event.id,
            "name": event.name,
            "time_zone": zone,
            "starts": to_wall(event.starts, zone),
            "limit": None if event.limit is None else write_span(event.limit),
            "route": course.route if course is not None else None,
            "stated_km": _number(course.stated_km) if course is not None else None,
            "results": course.results if course is not None else None,
            "emergency_number": event.emergency_number,
            "grid": event.grid,
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
    return _given(
        {
            "vehicles_max": r.vehicles_max,
            "crew_people_max": r.crew_people_max,
            "pacer_from_km": _number(r.pacer_from_km),
            "pacers_at_once": _unless(r.pacers_at_once, 1),
            "outside_help": None if r.outside_help_only_at_crew_points else "anywhere",
            "note": r.note,
            "crew_not_before": _wall(r.crew_not_before, zone),
            "pacer_sign_in_minutes": _minutes(r.pacer_sign_in),
        }
    )


def _driving(d: Driving) -> Table:
    default = Driving()
    return _given(
        {
            "road_factor": _unless(_number(d.road_factor), default.road_factor),
            "speed_kmh": _unless(_number(d.speed_kmh), default.speed_kmh),
            "night_factor": _unless(_number(d.night_factor), default.night_factor),
            "full_car_park_minutes": _minutes(d.full_car_park, default.full_car_park),
        }
    )


def _place(p: Place) -> Table:
    return _given({"id": p.id, "name": p.name, "lat": p.lat, "lon": p.lon})


def _share(s: Share) -> Table:
    return {"runner": s.runner, "person": s.person, "from": s.from_point, "to": s.to_point}


def _sleep(s: Sleep, zone: str) -> Table:
    return {"from": to_wall(s.start, zone), "to": to_wall(s.end, zone)}


def _alarm(a: AlarmRule) -> Table:
    default = AlarmRule()
    return _given(
        {
            "line": _unless(a.line, default.line),
            "grace_minutes": _minutes(a.grace, default.grace),
            "look_again_minutes": _minutes(a.look_again, default.look_again),
            "answer_within_minutes": _minutes(a.answer_within, default.answer_within),
        }
    )


def _point(p: Point, zone: str) -> Table:
    table = _given(
        {
            "id": p.id,
            "name": p.name,
            "also": list(p.also),
            "km": _number(p.km),
            "waypoint": p.waypoint,
            "kinds": [k.value for k in PointKind if k in p.kinds],
            "cut_offs": [_cut_off(c, zone) for c in p.cut_offs],
            "reports": [
                {"by": r.by.value, "chance": _number(r.chance), "delay_minutes": _minutes(r.delay) or 0}
                for r in p.reports
            ],
            "signal": _unless(p.signal.value, Signal.GOOD.value),
            "stop_minutes": _minutes(p.planned_stop),
            "note": p.note,
        }
    )
    return table if p.access is None else table | {"crew": _access(p.access, zone)}


def _cut_off(c: CutOff, zone: str) -> Table:
    if c.clock is not None:
        return {"when": c.edge.value, "clock": to_wall(c.clock, zone)}
    assert c.elapsed is not None
    return {"when": c.edge.value, "elapsed": write_span(c.elapsed)}


def _access(a: CrewAccess, zone: str) -> Table:
    return _given(
        {
            "parking": a.parking,
            "walk_in_minutes": _minutes(a.walk_in),
            "unloading_minutes": _minutes(a.unloading, CrewAccess().unloading),
            "open_from": _wall(a.opens, zone),
            "open_to": _wall(a.closes, zone),
            "people_max": a.people_max,
            "lat": a.lat,
            "lon": a.lon,
            "permit": a.permit,
            "place": a.place,
            "cars_max": a.cars_max,
        }
    )


def _wall(at: datetime | None, zone: str) -> datetime | None:
    return None if at is None else to_wall(at, zone)


def _stretch(s: Stretch) -> Table:
    return {"from_km": _number(s.from_km), "to_km": _number(s.to_km)} | _given(
        {
            "name": s.name,
            "surface": s.surface,
            "forest_or_gorge": s.forest_or_gorge,
            "no_signal": s.no_signal,
            "factor": _unless(s.factor, 1.0),
            "factor_for": s.factor_for,
            "escape_route": s.escape_route,
        }
    )


def _weather(w: WeatherSpell, zone: str) -> Table:
    return _given(
        {
            "from": _wall(w.from_at, zone),
            "to": _wall(w.to_at, zone),
            "course": w.course,
            "from_km": _number(w.from_km),
            "to_km": _number(w.to_km),
            "temperature_c": _number(w.temperature_c),
            "humidity": _number(w.humidity),
            "ground": None if w.ground is None else w.ground.value,
            "note": w.note,
        }
    )


def _past_race(r: PastRace) -> Table:
    return {"name": r.name, "km": _number(r.km), "ascent_m": _number(r.ascent_m), "time": write_span(r.time)}


def _runner(r: Runner, event: Event, many: bool) -> Table:
    own_start = r.wave or r.start != event.starts
    return _given(
        {
            "id": r.id,
            "person": _unless(r.person, r.id),
            "name": r.name,
            "bib": r.bib,
            "course": r.course if many else None,
            "wave": r.wave,
            "start": to_wall(r.start, event.time_zone) if own_start else None,
            "target": _target(r.target),
            "clothing": r.clothing,
            "torch": r.torch,
            "medical_note": r.medical_note,
            "walk_kmh": _number(r.walk_kmh),
            "climb_m_per_h": _number(r.climb_rate_m_per_h),
            "downhill_kmh": _number(r.downhill_kmh),
            "own_runs": list(r.own_runs),
            "past_race": [_past_race(p) for p in r.past_races],
            "fuel": [_fuel(f) for f in r.fuel],
        }
    )


def _target(t: Target) -> Table:
    return _given(
        {
            "finish": None if t.finish is None else write_span(t.finish),
            "pace_all_in": None if t.pace_all_in is None else write_pace(t.pace_all_in),
            "easy_pace": None if t.easy_pace is None else write_pace(t.easy_pace),
            "margin": None if t.margin is None else write_pace(t.margin),
        }
    )


def _fuel(f: FuelPlan) -> Table:
    return {"from": f.from_point} | _given(
        {
            "words": f.words,
            "kcal_per_h": _number(f.kcal_per_h),
            "carbohydrate_g_per_h": _number(f.carbohydrate_g_per_h),
            "fluid_ml_per_h": _number(f.fluid_ml_per_h),
            "sodium_mg_per_h": _number(f.sodium_mg_per_h),
        }
    )


def _person(p: Person, event: Event) -> Table:
    quiet = _given({"from": p.quiet_from, "to": p.quiet_to})
    return _given(
        {
            "id": p.id,
            "name": p.name,
            "phone": p.phone,
            "email": p.email,
            "webhook": p.webhook,
            "language": _unless(p.language, "en"),
            "miles": p.miles,
            "clock": "12h" if p.clock_12h else None,
            "time_zone": p.time_zone,
            "channels": list(p.channels),
            "notices": _unless(p.notices.value, NoticeChoice.ALL.value),
            "quiet": quiet,
            "parts": [_part(x, event.time_zone) for x in event.parts_of(p.id)],
        }
    )


def _part(p: Part, zone: str) -> Table:
    return _given(
        {
            "kind": p.kind.value,
            "runner": p.runner,
            "ladder": p.ladder,
            "calls_race_control": p.calls_race_control,
            "can_telephone": p.can_telephone,
            "point": p.point,
            "car": p.car,
            "drives": p.drives,
            "awake_since": _wall(p.awake_since, zone),
            "pace_from": p.pace_from,
            "pace_to": p.pace_to,
            "sleeps": [_sleep(s, zone) for s in p.sleeps],
            "permits": list(p.permits),
        }
    )


def _car(c: Car) -> Table:
    return _given(
        {
            "id": c.id,
            "name": c.name,
            "seats": _unless(c.seats, 5),
            "starts_at": c.starts_at,
            "permits": list(c.permits),
        }
    )


def _drive(d: Drive) -> Table:
    return _given(
        {
            "from": d.from_place,
            "to": d.to_place,
            "minutes": _number(d.minutes),
            "confirmed_by": d.confirmed_by,
            "note": d.note,
            "traffic_minutes": _minutes(d.traffic),
            "fuel_minutes": _minutes(d.fuel_stop),
        }
    )


def _meeting(m: MeetingPlan) -> Table:
    return _given(
        {
            "id": m.id,
            "point": m.point,
            "runner": m.runner,
            "crew": list(m.crew),
            "car": m.car,
            "from": m.from_place,
            "kit": [_kit(k) for k in m.kit],
            "food": m.food,
            "if_missed": m.if_missed,
            "pacer_joins": m.pacer_joins,
            "pacer_leaves": m.pacer_leaves,
        }
    )


def _kit(k: KitItem) -> str | Table:
    if k == KitItem(k.name):
        return k.name
    weight = _unless(k.weight.value, KitWeight.NORMAL.value)
    return _given({"name": k.name, "weight": weight, "car": k.car, "take_back": k.take_back})


def _card(c: IfThenCard) -> Table:
    return _given(
        {
            "id": c.id,
            "trouble": c.trouble,
            "try_first": list(c.try_first),
            "call": c.call,
            "red_flags": list(c.red_flags),
        }
    )
