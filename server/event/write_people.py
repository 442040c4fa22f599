"""Runners, people, cars, drives, meetings and cards as tables of an event file."""

from __future__ import annotations

from server.event.model import (
    Car,
    Drive,
    Eaten,
    Event,
    FuelPlan,
    IfThenCard,
    KitItem,
    KitWeight,
    MeetingPlan,
    NoticeChoice,
    Part,
    PastRace,
    Person,
    Place,
    Runner,
    Share,
    Sleep,
    Target,
)
from server.event.times import to_wall, write_pace, write_span
from server.event.write_values import Table, given, minutes, number, unless, wall


def _past_race(r: PastRace) -> Table:
    return {"name": r.name, "km": number(r.km), "ascent_m": number(r.ascent_m), "time": write_span(r.time)}


def runner_table(r: Runner, event: Event, many: bool) -> Table:
    """A runner; `many`: on which of several courses."""
    own_start = r.wave or r.start != event.starts
    return given(
        {
            "id": r.id,
            "person": unless(r.person, r.id),
            "name": r.name,
            "bib": r.bib,
            "course": r.course if many else None,
            "wave": r.wave,
            "start": to_wall(r.start, event.time_zone) if own_start else None,
            "target": _target(r.target),
            "clothing": r.clothing,
            "torch": r.torch,
            "medical_note": r.medical_note,
            "walk_kmh": number(r.walk_kmh),
            "climb_m_per_h": number(r.climb_rate_m_per_h),
            "downhill_kmh": number(r.downhill_kmh),
            "own_runs": list(r.own_runs),
            "past_race": [_past_race(p) for p in r.past_races],
            "fuel": [_fuel(f) for f in r.fuel],
            "carries": [_kit(k) for k in r.carries],
            "drop_bags": [{"point": b.point, "kit": [_kit(k) for k in b.kit]} for b in r.drop_bags],
            "prompts": [{"when": p.when, "words": p.words} for p in r.prompts],
            "wants_to_hear": list(r.wants_to_hear),
            "not_to_hear": list(r.not_to_hear),
            "bottles": r.bottles,
            "trained_carbohydrate_g_per_h": number(r.trained_carbohydrate_g_per_h),
        }
    )


def _target(t: Target) -> Table:
    return given(
        {
            "finish": None if t.finish is None else write_span(t.finish),
            "pace_all_in": None if t.pace_all_in is None else write_pace(t.pace_all_in),
            "easy_pace": None if t.easy_pace is None else write_pace(t.easy_pace),
            "margin": None if t.margin is None else write_pace(t.margin),
        }
    )


def _fuel(f: FuelPlan) -> Table:
    return {"from": f.from_point} | given(
        {
            "words": f.words,
            "kcal_per_h": number(f.kcal_per_h),
            "carbohydrate_g_per_h": number(f.carbohydrate_g_per_h),
            "fluid_ml_per_h": number(f.fluid_ml_per_h),
            "sodium_mg_per_h": number(f.sodium_mg_per_h),
            "caffeine_mg_per_h": number(f.caffeine_mg_per_h),
            "eats": [_eaten(e) for e in f.eats],
        }
    )


def _eaten(e: Eaten) -> Table:
    return {"name": e.name, "per_h": number(e.per_h)} | given(
        {
            "kcal": number(e.kcal),
            "carbohydrate_g": number(e.carbohydrate_g),
            "sodium_mg": number(e.sodium_mg),
            "caffeine_mg": number(e.caffeine_mg),
        }
    )


def person_table(p: Person, event: Event) -> Table:
    """A person with their parts."""
    quiet = given({"from": p.quiet_from, "to": p.quiet_to})
    return given(
        {
            "id": p.id,
            "name": p.name,
            "phone": p.phone,
            "email": p.email,
            "webhook": p.webhook,
            "language": unless(p.language, ""),
            "miles": p.miles,
            "clock": "12h" if p.clock_12h else None,
            "time_zone": p.time_zone,
            "channels": list(p.channels),
            "notices": unless(p.notices.value, NoticeChoice.ALL.value),
            "quiet": quiet,
            "parts": [_part(x, event.time_zone) for x in event.parts_of(p.id)],
        }
    )


def _part(p: Part, zone: str) -> Table:
    return given(
        {
            "kind": p.kind.value,
            "runner": p.runner,
            "ladder": p.ladder,
            "calls_race_control": p.calls_race_control,
            "can_telephone": p.can_telephone,
            "point": p.point,
            "car": p.car,
            "drives": p.drives,
            "awake_since": wall(p.awake_since, zone),
            "pace_from": p.pace_from,
            "pace_to": p.pace_to,
            "sleeps": [_sleep(s, zone) for s in p.sleeps],
            "permits": list(p.permits),
        }
    )


def _sleep(s: Sleep, zone: str) -> Table:
    return {"from": to_wall(s.start, zone), "to": to_wall(s.end, zone)}


def car_table(c: Car) -> Table:
    """A car."""
    return given(
        {
            "id": c.id,
            "name": c.name,
            "seats": unless(c.seats, 5),
            "starts_at": c.starts_at,
            "permits": list(c.permits),
        }
    )


def drive_table(d: Drive) -> Table:
    """A drive."""
    return given(
        {
            "from": d.from_place,
            "to": d.to_place,
            "minutes": number(d.minutes),
            "confirmed_by": d.confirmed_by,
            "note": d.note,
            "traffic_minutes": minutes(d.traffic),
            "fuel_minutes": minutes(d.fuel_stop),
        }
    )


def place_table(p: Place) -> Table:
    """A place."""
    return given({"id": p.id, "name": p.name, "lat": p.lat, "lon": p.lon})


def share_table(s: Share) -> Table:
    """A share of a relay."""
    return {"runner": s.runner, "person": s.person, "from": s.from_point, "to": s.to_point}


def meeting_table(m: MeetingPlan) -> Table:
    """A meeting."""
    return given(
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
    weight = unless(k.weight.value, KitWeight.NORMAL.value)
    return given(
        {
            "name": k.name,
            "weight": weight,
            "car": k.car,
            "take_back": k.take_back,
            "hours": number(k.hours),
            "grams": number(k.grams),
            "prepare": [p.value for p in k.prepare],
        }
    )


def card_table(c: IfThenCard) -> Table:
    """An if-then card."""
    return given(
        {
            "id": c.id,
            "trouble": c.trouble,
            "try_first": list(c.try_first),
            "call": c.call,
            "red_flags": list(c.red_flags),
        }
    )
