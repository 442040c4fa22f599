"""Runner, people, cars, meetings and drives of a draft, as forms have them; and meetings suggested from the points."""

from __future__ import annotations

import re
from collections.abc import Callable, Iterable, Mapping, Sequence
from dataclasses import dataclass
from datetime import datetime
from typing import Any

from server.drafting.document import Document
from server.drafting.pasted import read_cut_off
from server.drafting.race import ident, local_start
from server.drafting.typed import (
    Given,
    begun,
    fresh_id,
    items,
    moment,
    number,
    rows,
    shown,
    span,
    span_in_minutes,
)

__all__ = [
    "FUEL",
    "_KINDS",
    "DriveNeeded",
    "awake_shown",
    "crew_points",
    "drivers",
    "kit_of",
    "legs",
    "put_drives",
    "put_meetings",
    "put_people",
    "put_runner",
    "put_runners",
    "several",
    "sleeps_shown",
    "suggest",
    "things_shown",
    "with_part",
]

Table = Mapping[str, Any]
_LASTS = re.compile(
    r"(.*\S)\s*[( ]\s*(\d+(?:\.\d+)?)\s*(?:h|hrs?|hours?|std\.?|stunden|heures?)\s*\)?", re.IGNORECASE
)
FUEL = ("carbohydrate_g_per_h", "kcal_per_h", "fluid_ml_per_h", "sodium_mg_per_h")
"""What an hour of eating and drinking comes to, as the event file names it."""
_KINDS = ("crew", "pacer", "safety contact", "organiser", "volunteer", "supporter")


def put_runners(doc: Document, given: Given) -> None:
    """The first runner, whose fields stand alone, and others in rows 'r0-…'."""
    put_runner(doc, given)
    gone = []
    for row in rows(given, "r"):
        there = [ident(r) for r in doc.tables("runners")]
        was = row.get("was", "") or next(
            (ident(r) for r in doc.tables("runners")[1:] if r.get("name") == row.get("name")), ""
        )
        if was in there:
            put_runner(doc, row, there.index(was))
            gone += [was] if row.get("gone") else []
        elif row.get("name", "").strip():
            put_runner(doc, row, len(there))
    for who in gone:
        doc.drop("runners", [ident(r) for r in doc.tables("runners")].index(who))


def put_runner(doc: Document, given: Given, at: int = 0) -> None:
    """The runner of that place in the table: name, bib, target, a race she has run, what she eats. She is among
    the people then, and reads `language` where she was not before."""
    listed = doc.tables("runners")
    old = listed[at] if at < len(listed) else {}
    name = given.get("name", "").strip()
    finish = span(given.get("finish", ""))
    past = {
        "name": given.get("past-name", "").strip() or None,
        "km": number(given.get("past-km", "")),
        "ascent_m": number(given.get("past-ascent", "")),
        "time": span(given.get("past-time", "")),
    }
    target: dict[str, Any] | None = {"finish": finish}
    if finish is None and not set(old.get("target", {})) - {"finish"}:
        target = None
    values: dict[str, Any] = {
        "name": name or None,
        "bib": given.get("bib", "").strip() or None,
        "target": target,
        "past_race": past if any(v is not None for v in past.values()) else None,
    }
    if "carries" in given:
        values["carries"] = _kit(old.get("carries"), given["carries"])
    if fuel := rows(given, "f"):
        values["fuel"] = _fuel(old.get("fuel"), fuel)
    if old:
        doc.change("runners", at, values)
    elif name or any(v is not None for v in values.values()):
        doc.add("runners", {"id": fresh_id(name, [ident(r) for r in listed], "runner"), **values})
    if name:
        _among_people(doc, doc.tables("runners")[at], old, name, given.get("language", ""))


def _fuel(old: Any, given: Sequence[Given]) -> list[dict[str, Any]] | None:
    """What she takes from a point on, a row each; what the file says of one besides (the things themselves) stays."""
    held = [dict(f) for f in old if isinstance(f, dict)] if isinstance(old, list) else []
    found = []
    for n, row in enumerate(given):
        typed = {key: number(row.get(key, "")) for key in FUEL}
        words = row.get("words", "").strip() or None
        if words is None and not any(v is not None for v in typed.values()):
            continue
        one = (held[n] if n < len(held) else {}) | {
            "from": row.get("from") or "start",
            "words": words,
            **typed,
        }
        found.append({key: value for key, value in one.items() if value is not None})
    return found or None


def _among_people(doc: Document, runner: Table, old: Table, name: str, language: str) -> None:
    person = str(runner.get("person") or ident(runner))
    people = doc.tables("people")
    found = next((n for n, p in enumerate(people) if ident(p) == person), None)
    if found is None:
        doc.add("people", {"id": person, "name": name, "language": language or None})
    elif people[found].get("name") == old.get("name"):
        doc.change("people", found, {"name": name})


def put_people(doc: Document, given: Sequence[Given], cars: Sequence[Given]) -> None:
    """Everybody with their parts, and the cars."""
    _listed(doc, "cars", cars, lambda row: {"seats": number(row.get("seats", ""))}, "car")
    for row, person in zip(given, _listed(doc, "people", given, _person, "person"), strict=True):
        number_there = next((n for n, p in enumerate(doc.tables("people")) if ident(p) == person), None)
        if number_there is not None:
            held = doc.tables("people")[number_there].get("parts")
            doc.change("people", number_there, {"parts": _parts(held, row, local_start(doc))})


def _person(row: Given) -> dict[str, Any]:
    return {key: row.get(key, "").strip() or None for key in ("phone", "email", "language") if key in row}


def _listed(
    doc: Document, table: str, given: Iterable[Given], values: Callable[[Given], Table], otherwise: str
) -> list[str]:
    """Change, add and take out the tables of a list; returns the id of each row's, '' where there is none."""
    found = []
    for row in given:
        there = [ident(t) for t in doc.tables(table)]
        was, name = row.get("was", ""), row.get("name", "").strip()
        if not was and name:
            # A finger that taps twice sends the new row twice.
            was = next((ident(t) for t in doc.tables(table) if t.get("name") == name), "")
        if was in there and row.get("gone"):
            doc.drop(table, there.index(was))
            was = ""
        elif was in there:
            doc.change(table, there.index(was), {"id": was, "name": name or None, **values(row)})
        elif not was and begun(row):
            was = fresh_id(name, there, otherwise)
            doc.add(table, {"id": was, "name": name or None, **values(row)})
        found.append(was)
    return found


def _parts(old: Any, row: Given, starts: datetime | None) -> list[dict[str, Any]] | None:
    """The parts ticked, each with what the file says of it besides; parts that no form knows stay."""
    held = [dict(p) for p in old if isinstance(p, dict)] if isinstance(old, list) else []
    ticked = [kind for kind in _KINDS if row.get(kind.replace(" ", "-"))]
    calling = "safety contact" if "safety contact" in ticked else next(iter(ticked), "")
    out = []
    for kind in ticked:
        mine = [p for p in held if p.get("kind") == kind]
        part = mine[0] if mine else {"kind": kind}
        part["calls_race_control"] = True if row.get("calls") and kind == calling else None
        if kind == "crew":
            part |= {"drives": True if row.get("drives") else None, "car": row.get("car") or None}
            part |= _awake(part, row, starts)
        if kind == "volunteer" and "station" in row:
            part |= {"point": row["station"] or None}
        if kind == "safety contact":
            part |= {"ladder": number(row.get("ladder", "")) or part.get("ladder") or 1}
        out += [part, *mine[1:]]
    order = [str(p.get("kind")) for p in held]
    out += [p for p in held if p.get("kind") not in _KINDS]
    out.sort(key=lambda p: order.index(str(p["kind"])) if str(p.get("kind")) in order else len(order))
    return out or None


_BARE = re.compile(r"\d\d:\d\d")
_UNTIL = re.compile(r"\s*[–—]\s*|\s+(?:-|to|until|till|bis|à|au)\s+|(?<=:\d\d)\s*-\s*")


def _awake(part: Table, row: Given, starts: datetime | None) -> dict[str, Any]:
    """Since when they are awake and when they mean to sleep: changed only where the form says something else."""
    found: dict[str, Any] = {}
    if "awake" in row and row["awake"] != awake_shown(part):
        found["awake_since"] = moment(*row["awake"].partition("T")[::2])
    if "sleeps" in row and row["sleeps"] != sleeps_shown(part):
        spans = (_UNTIL.split(item, maxsplit=1) for item in items(row["sleeps"]))
        # A time alone is the first after the start, or after the sleep began: as the event file reads it.
        ends = (
            [x if _BARE.fullmatch(x) else read_cut_off(x, starts).get("clock", x) for x in s] for s in spans
        )
        found["sleeps"] = [dict(zip(("from", "to"), span, strict=False)) for span in ends] or None
    return found


def awake_shown(part: Table) -> str:
    """Since when they are awake, as a field of day and time has it."""
    at = part.get("awake_since")
    return f"{at:%Y-%m-%dT%H:%M}" if isinstance(at, datetime) else shown(at)


def sleeps_shown(part: Table) -> str:
    """When they mean to sleep: 'Sun 01:00 – Sun 03:00', with commas between several."""
    held = [s for s in part.get("sleeps") or [] if isinstance(s, dict)]
    return ", ".join(f"{shown(s.get('from'))} – {shown(s.get('to'))}" for s in held)


def drivers(doc: Document) -> list[tuple[str, str | None]]:
    """Who of the crew drives, and in which car."""
    return [
        (ident(person), part.get("car"))
        for person in doc.tables("people")
        for part in person.get("parts") or []
        if isinstance(part, dict) and part.get("kind") == "crew" and part.get("drives")
    ]


def with_part(doc: Document, kind: str) -> list[str]:
    """Who has a part of that kind."""
    return [
        ident(person)
        for person in doc.tables("people")
        if any(isinstance(p, dict) and p.get("kind") == kind for p in person.get("parts") or [])
    ]


def crew_points(doc: Document) -> list[dict[str, Any]]:
    """The points where crew may come, in the order of the file."""
    return [p for p in doc.tables("points") if "crew" in p or "crew access" in (p.get("kinds") or [])]


def suggest(doc: Document) -> int:
    """A meeting at every point where crew may come and nobody goes yet; returns how many.

    The cars take them in turn, each with all who drive it, those who do not drive go with the first; the first meeting of
    each is driven to from the start. That is a beginning: the plan then says what of it can't be made.
    """
    wheel = drivers(doc)
    who = several(doc)
    held = doc.tables("meetings")
    met = {(str(m.get("point")), str(m.get("runner") or runner)) for m in held for runner in who}
    points = [p for p in crew_points(doc) if "start" not in (p.get("kinds") or [])]
    free = [(ident(p), runner) for p in points for runner in who if (ident(p), runner) not in met]
    if not wheel:
        return 0
    riders = [c for c in with_part(doc, "crew") if c not in {d for d, _ in wheel}]
    turns: dict[str, tuple[list[str], str | None]] = {}
    for driver, car in wheel:
        turns.setdefault(car or driver, ([], car))[0].append(driver)
    loads = list(turns.values())
    loads[0][0].extend(riders)
    gone = {c for m in held for c in m.get("crew", [])}
    start = next((ident(p) for p in doc.tables("points") if "start" in (p.get("kinds") or [])), "start")
    for n, (point, runner) in enumerate(free):
        crew, car = loads[n % len(loads)]
        first = None if gone & set(crew) else start
        gone.update(crew)
        doc.add(
            "meetings", {"point": point, "runner": runner or None, "crew": [*crew], "car": car, "from": first}
        )
    _meetings_in_order(doc)
    return len(free)


def several(doc: Document) -> list[str]:
    """The runners of whom a meeting has to say which it is with; [''] where there is one."""
    found = [ident(r) for r in doc.tables("runners")]
    return found if len(found) > 1 else [""]


def put_meetings(doc: Document, given: Iterable[Given]) -> None:
    """A row a crew point: whether anybody goes, who, in which car, from where, kit and food."""
    for row in given:
        meetings = doc.tables("meetings")
        point = row.get("point", "")
        runner = row.get("runner") or None
        named = [n for n, m in enumerate(meetings) if m.get("point") == point]
        fits = [n for n in named if runner in (None, meetings[n].get("runner"))]
        # A meeting of the time when there was one runner says of none.
        at = next(iter(fits or [n for n in named if not meetings[n].get("runner")]), None)
        crew = items(row.get("crew", ""))
        if not crew and not row.get("kit") and not row.get("food"):
            if at is not None and "crew" in row:
                doc.drop("meetings", at)
            continue
        old = {} if at is None else meetings[at]
        values = {
            "point": point,
            **({"runner": runner} if runner else {}),
            "crew": crew or None,
            "car": row.get("car") or None,
            "from": row.get("from") or None,
            "kit": _kit(old.get("kit"), row.get("kit", "")),
            "food": row.get("food", "").strip() or None,
            **{key: row[key] or None for key in ("pacer_joins", "pacer_leaves") if key in row},
        }
        if at is None:
            doc.add("meetings", values)
        else:
            doc.change("meetings", at, values)
    _meetings_in_order(doc)


def _meetings_in_order(doc: Document) -> None:
    order = [ident(p) for p in doc.tables("points")]
    if len({str(m.get("runner", "")) for m in doc.tables("meetings")}) == 1:
        doc.sort("meetings", lambda m: order.index(m["point"]) if m.get("point") in order else len(order))


def _kit(old: Any, typed: str) -> list[Any] | None:
    """Things by name; what the file says of one besides stays with it."""
    listed = old if isinstance(old, list) else []
    held = {_thing_shown(k): k for k in listed}
    alike = {shown(k): k for k in listed if isinstance(k, dict)}
    found: list[Any] = []
    for name in sorted((n for n in alike | held if len(items(n)) > 1), key=len, reverse=True):
        # A comma that stands in the name of a thing there is parts nothing.
        if name in typed:
            typed = typed.replace(name, f"\0{len(found)}", 1)
            found.append((alike | held)[name])
    named = [
        found[int(n[1:])] if n.startswith("\0") else held[n] if n in held else _thing(n, alike)
        for n in items(typed)
    ]
    return named or None


def _thing(typed: str, alike: Mapping[str, Table]) -> Any:
    """'head torch 8 h' with its hours; one that was there keeps what else the file says of it."""
    hit = _LASTS.fullmatch(typed)
    name = hit[1] if hit else typed
    hours = number(hit[2]) if hit else None
    known = {k: v for k, v in alike.get(name, {}).items() if k != "hours"}
    more = {"hours": hours} if hours is not None else {}
    return {**known, "name": name, **more} if known or more else name


def things_shown(listed: Any) -> str:
    """Things as they stand in a field: names, and how long each lasts."""
    return ", ".join(map(_thing_shown, listed)) if isinstance(listed, list) else shown(listed)


def _thing_shown(thing: Any) -> str:
    hours = thing.get("hours") if isinstance(thing, dict) else None
    return f"{shown(thing)} {shown(hours)} h" if hours is not None else shown(thing)


def kit_of(old: Any, names: Iterable[str]) -> list[Any] | None:
    """Things by name, one by one; what the file says of one besides stays with it."""
    held = {shown(k): k for k in old} if isinstance(old, list) else {}
    return [held.get(n, n) for n in (name.strip() for name in names) if n] or None


@dataclass(frozen=True, slots=True)
class DriveNeeded:
    """A drive that the meetings need, and what the file says of it: `minutes` as typed, `by` who stands by them."""

    start: str
    end: str
    minutes: str = ""
    by: str = ""


def legs(doc: Document) -> list[DriveNeeded]:
    """Every drive of a car (else of a driver) from one meeting to the next, each way once, in the order of the meetings."""
    wheel = dict(drivers(doc))
    stands: dict[str, str] = {}
    found: dict[tuple[str, str], DriveNeeded] = {}
    given = {(str(d.get("from")), str(d.get("to"))): d for d in doc.tables("drives")}
    for m in doc.tables("meetings"):
        point = str(m.get("point", ""))
        who = next((str(c) for c in m.get("crew") or [] if c in wheel), "")
        goes = str(m.get("car") or wheel.get(who) or who)
        start = str(m.get("from") or stands.get(goes, ""))
        stands[goes] = point
        if start and start != point:
            known = given.get((start, point), {})
            minutes = known.get("minutes")
            leg = DriveNeeded(
                start, point, "" if minutes is None else f"{minutes}", str(known.get("confirmed_by") or "")
            )
            found[start, point] = leg
    return list(found.values())


def put_drives(doc: Document, given: Iterable[Given]) -> None:
    """Minutes of drives and who stands by them. Where somebody stands by an estimate, its minutes are taken."""
    for row in given:
        drives = doc.tables("drives")
        start, end = row.get("from", ""), row.get("to", "")
        by = row.get("by") or None
        minutes = number(span_in_minutes(row.get("minutes", "")))
        if minutes is None and by:
            minutes = number(row.get("guess", ""))
        at = next((n for n, d in enumerate(drives) if (d.get("from"), d.get("to")) == (start, end)), None)
        if at is not None:
            doc.change("drives", at, {"minutes": minutes, "confirmed_by": by})
        elif minutes is not None or by:
            doc.add("drives", {"from": start, "to": end, "minutes": minutes, "confirmed_by": by})
