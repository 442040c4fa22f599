"""What each step shows: the fields as the draft has them, and what they change, at once."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass, replace
from datetime import date, datetime
from typing import Any, Final

from server.conversation.telling.movements import plan_remarks
from server.conversation.telling.planned import say_sources
from server.conversation.telling.reader import Reader
from server.conversation.telling.ready import ready_lines
from server.conversation.telling.say import Say
from server.conversation.telling.times import planned
from server.drafting.crew import (
    FUEL,
    awake_shown,
    crew_points,
    drivers,
    legs,
    several,
    sleeps_shown,
    things_shown,
    with_part,
)
from server.drafting.document import Document
from server.drafting.evidence import recordings, results
from server.drafting.pasted import ReadTable, read_table
from server.drafting.race import cut_off_of, ident, local_start, matched, reporter_of
from server.drafting.typed import shown
from server.event.model import CourseDef, CrewAccess, Goal, Point, PointKind, ReporterKind
from server.event.times import zone_names
from server.pages.labels import label, labels
from server.pages.profile import course_svg
from server.pages.setup.look import STEPS, DraftLook
from server.paper.before import before_start
from server.paper.meeting import meeting_lines
from server.plan.cutoffs import due_times
from server.plan.movements import OfferKind, TroubleKind, course_spots, crew_plan
from server.plan.movements.roads import Roads
from server.sentences import languages

__all__ = ["Table", "context"]

Table = dict[str, Any]
OPENED_MOST: Final = 3
"""A table of so few points is shown opened (own choice)."""


@dataclass(frozen=True, slots=True)
class _At:
    """One look at a draft, for one reader at one moment."""

    look: DraftLook
    doc: Document
    language: str
    now: datetime

    @property
    def word(self) -> Callable[..., str]:
        return labels(self.language)


def context(look: DraftLook, doc: Document, step: str, language: str, now: datetime) -> Table:
    """Everything that a step's template needs of the draft."""
    at = _At(look, doc, language, now)
    number = STEPS.index(step)
    steps = [
        {
            "id": s,
            "name": at.word(f"setup-{s}"),
            "errors": look.errors(s) if look.begun(s) else 0,
            "begun": look.begun(s),
            "here": s == step,
        }
        for s in STEPS
    ]
    return {
        "step": step,
        "steps": steps,
        "number": number + 1,
        "after": STEPS[number + 1] if number + 1 < len(STEPS) else "",
        "race": str(doc.table("event").get("name", "")),
        "wrong": look.wrong(step) if look.begun(step) else (),
        **_STEPS[step](at),
    }


def _race(at: _At) -> Table:
    event, control = at.doc.table("event"), at.doc.table("race_control")
    starts = event.get("starts")
    if isinstance(starts, datetime):
        day, clock = f"{starts:%Y-%m-%d}", f"{starts:%H:%M}"
    elif isinstance(starts, date):
        day, clock = starts.isoformat(), ""
    else:
        day, _, clock = str(starts or "").partition("T")
    fields = {
        "name": shown(event.get("name")),
        "day": day,
        "clock": clock,
        "zone": shown(event.get("time_zone")),
        "limit": shown(event.get("limit")),
        "emergency": shown(event.get("emergency_number")),
        "transport": shown(event.get("transport")),
        "control_name": shown(control.get("name")),
        "control_phone": shown(control.get("phone")),
    }
    zones = sorted(
        {z for z in zone_names() if "/" in z and not z.startswith("Etc/")} | {fields["zone"]} - {""}
    )
    return {"f": fields, "zones": [(z, z.replace("_", " ")) for z in zones], **_course(at)}


def _course(at: _At) -> Table:
    """The course drawn with the points whose km can be read, whatever else is wrong."""
    course = at.look.course
    if course is None:
        return {"course": None, "svg": ""}
    placed = _placed(at)
    points = tuple(_drawn(p, course.length_km, placed) for p in at.doc.tables("points"))
    drawn = CourseDef(
        "main", "", tuple(p for p in points if p is not None and (p.km or 0.0) <= course.length_km)
    )
    climb = course.climb(0.0, course.length_km)
    figures = {
        "km": f"{course.length_km:.1f}",
        "up": f"{climb.up_m:.0f}" if climb is not None else "0",
        "down": f"{climb.down_m:.0f}" if climb is not None else "0",
        "points": str(len(at.doc.tables("points"))),
    }
    return {"course": figures, "svg": course_svg(drawn, course, title=at.word("setup-profile"))}


def _placed(at: _At) -> dict[str, float]:
    """The km of every point, those of waypoints too, where the plan has them."""
    plan = at.look.plan
    return (
        {} if plan is None else {p.id: p.km for c in plan.event.courses for p in c.points if p.km is not None}
    )


def _drawn(p: Table, length: float, placed: dict[str, float]) -> Point | None:
    kinds = frozenset(k for k in PointKind if k in (p.get("kinds") or []))
    km = 0.0 if PointKind.START in kinds else length if PointKind.FINISH in kinds else p.get("km")
    km = placed.get(ident(p)) if km is None else km
    if isinstance(km, bool) or not isinstance(km, int | float) or km < 0:
        return None
    return Point(
        ident(p), str(p.get("name", "")), float(km), kinds, access=CrewAccess() if "crew" in p else None
    )


def _points(at: _At) -> Table:
    wrong = at.look.wrong("points")
    rows = [_point(p) for p in at.doc.tables("points")]
    placed = _placed(at)
    for row in rows:
        row["at"] = row["km"] or (f"{placed[row['was']]:.1f}" if row["was"] in placed else "")
        row["wrong"] = [w.what for w in wrong if w.where.startswith(f"points.{row['was']}.")]
    reporters = [(r.value, at.word("setup-by-" + r.value.replace(" ", "-"))) for r in ReporterKind]
    said = [r for r in reporters if r[0] != ReporterKind.NOBODY]
    return {"rows": rows, "blank": _point({}) | {"wrong": [], "at": ""}, "reporters": said, **_course(at)}


def _point(p: Table) -> Table:
    kinds = p.get("kinds") or []
    cut = cut_off_of(p)
    crew = p.get("crew")
    return {
        "was": ident(p),
        "name": shown(p.get("name")),
        "km": shown(p.get("km")),
        "end": "start" in kinds or "finish" in kinds,
        "waypoint": shown(p.get("waypoint")),
        "aid": "aid station" in kinds,
        "water": "water" in kinds,
        "bag": "drop bag" in kinds,
        "crew": crew is not None or "crew access" in kinds,
        "parking": shown(crew.get("parking")) if isinstance(crew, dict) else "",
        "several": cut is None,
        "edge": cut[0] if cut else "out",
        "cut": cut[1] if cut else "",
        "stop": shown(p.get("stop_minutes")),
        "by": reporter_of(p),
        "stage": shown(p.get("next_stage")),
    }


def pasted(at_doc: Document, text: str, length_km: float | None) -> tuple[ReadTable, list[Table]]:
    """What was read of a pasted table, and each row with whether it is a new point."""
    read = read_table(text, local_start(at_doc))
    found = matched(at_doc, read.rows, length_km)
    rows: list[Table] = [
        {
            "line": r.line,
            "name": r.name,
            "km": "" if r.km is None else f"{r.km:g}",
            "cut": f"+{r.elapsed}" if r.elapsed else r.clock,
            "crew": r.crew,
            "new": point is None,
            "lost": r.km is None and point is None,
        }
        for r, point in zip(read.rows, found, strict=True)
    ]
    return read, rows


def _runner(at: _At) -> Table:
    """The first runner's fields, those of others, and of one more."""
    runners = at.doc.tables("runners")
    found = {"own": recordings(at.doc), "results": results(at.doc), "ready": _ready(at)}
    return {
        "f": _of_runner(runners[0] if runners else {}),
        "others": [{"was": ident(r), **_of_runner(r)} for r in runners[1:]],
        "blank": {"was": "", **_of_runner({})},
        "starts": [(ident(p), shown(p.get("name"))) for p in at.doc.tables("points")],
        **found,
        **_timetable(at),
    }


def _of_runner(runner: Table) -> Table:
    past, target = _inner(runner, "past_race"), _inner(runner, "target")
    held = [f for f in runner.get("fuel") or [] if isinstance(f, dict)]
    return {
        "name": shown(runner.get("name")),
        "bib": shown(runner.get("bib")),
        "carries": things_shown(runner.get("carries")),
        "finish": shown(target.get("finish")),
        "past_name": shown(past.get("name")),
        "past_km": shown(past.get("km")),
        "past_ascent": shown(past.get("ascent_m")),
        "past_time": shown(past.get("time")),
        "fuel": [{key: shown(f.get(key)) for key in ("from", "words", *FUEL)} for f in [*held, {}]],
    }


def _inner(table: Table, key: str) -> Table:
    found = table.get(key)
    return found if isinstance(found, dict) else {}


def _timetable(at: _At) -> Table:
    """Likely time at each point, from when to when, and the cut-off; {} while no plan can be made."""
    plan = at.look.plan
    if plan is None or not plan.timetables:
        return {"timetable": [], "source": ""}
    event, table = plan.event, next(iter(plan.timetables.values()))
    say = _say(at, event.time_zone)
    due = due_times(event, table.runner)
    rows = [
        {
            "name": event.course_of(table.runner).point(row.point).name,
            "km": f"{row.km:.1f}",
            "likely": say.when(planned(table.start + row.arrive[Goal.B], Goal.B), day=True),
            "early": say.when(planned(table.start + row.arrive[Goal.A], Goal.A), day=True),
            "late": say.when(planned(table.start + row.arrive[Goal.C], Goal.C), day=True),
            "cut": next((say.when(d.at, day=True) for d in due if d.point == row.point), ""),
        }
        for row in table.rows
    ]
    return {"timetable": rows, "source": say_sources(say.reader, table.source)}


def _say(at: _At, zone: str) -> Say:
    return Say(Reader(at.language, zone, zone), at.now)


def _people(at: _At) -> Table:
    wrong = at.look.wrong("people")
    rows = [_person(p) for p in at.doc.tables("people")]
    run = {str(r.get("person") or ident(r)) for r in at.doc.tables("runners")}
    for row in rows:
        row["kinds"] |= {"runner"} if row["was"] in run else set()
        row["wrong"] = [w.what for w in wrong if w.where.startswith(f"people.{row['was']}")]
    cars = [
        {"was": ident(c), "name": shown(c.get("name")), "seats": shown(c.get("seats"))}
        for c in at.doc.tables("cars")
    ]
    return {
        "rows": rows,
        "blank": _person({}) | {"wrong": [], "language": at.language},
        "cars": cars,
        "car_names": [(c["was"], c["name"]) for c in cars],
        "stations": [(ident(p), shown(p.get("name"))) for p in at.doc.tables("points")],
        "languages": [(x, label(x, "setup-language-name")) for x in languages()],
    }


def _person(p: Table) -> Table:
    parts = [q for q in p.get("parts") or [] if isinstance(q, dict)]
    held = {str(q.get("kind")): q for q in reversed(parts)}
    return {
        "was": ident(p),
        "name": shown(p.get("name")),
        "phone": shown(p.get("phone")),
        "email": shown(p.get("email")),
        "language": shown(p.get("language")),
        "kinds": set(held),
        "drives": bool(held.get("crew", {}).get("drives")),
        "car": shown(held.get("crew", {}).get("car")),
        "ladder": shown(held.get("safety contact", {}).get("ladder")),
        "station": shown(held.get("volunteer", {}).get("point")),
        "awake": awake_shown(held.get("crew", {})),
        "sleeps": sleeps_shown(held.get("crew", {})),
        "calls": any(q.get("calls_race_control") for q in parts),
    }


def _meetings(at: _At) -> Table:
    people = {ident(p): shown(p.get("name")) for p in at.doc.tables("people")}
    names = {ident(p): shown(p.get("name")) for p in at.doc.tables("points") + at.doc.tables("places")}
    who = several(at.doc)
    met = {(str(m.get("point")), str(m.get("runner") or who[0])): m for m in at.doc.tables("meetings")}
    likely = {r["name"]: r["likely"] for r in _timetable(at)["timetable"]}
    points = list(crew_points(at.doc))
    points += [{"id": k, "name": names.get(k, k)} for k, _ in met if k not in {ident(p) for p in points}]
    runners = {ident(r): shown(r.get("name")) for r in at.doc.tables("runners")}
    rows = [
        _meeting(p, met.get((ident(p), runner), {}), likely if runner == who[0] else {})
        | {"runner": runner, "whom": runners.get(runner, "")}
        for p in points
        for runner in who
    ]
    crew = list(dict.fromkeys(d for d, _ in drivers(at.doc)))
    return {
        "rows": rows,
        "people": people,
        "crew": {k: people[k] for k in [*crew, *(k for k in with_part(at.doc, "crew") if k not in crew)]},
        "pacers": {k: people[k] for k in with_part(at.doc, "pacer")},
        "cars": {ident(c): shown(c.get("name")) for c in at.doc.tables("cars")},
        "places": names,
        "suggested": any(not r["crew"] for r in rows) and bool(crew),
        "drivers": bool(crew),
        "legs": _legs(at, names),
        "remarks": _remarks(at),
    }


def _meeting(p: Table, m: Table, likely: dict[str, str]) -> Table:
    return {
        "point": ident(p),
        "name": shown(p.get("name")),
        "km": shown(p.get("km")),
        "likely": likely.get(str(p.get("name", "")), ""),
        "crew": [str(c) for c in m.get("crew") or []],
        "car": shown(m.get("car")),
        "from": shown(m.get("from")),
        "kit": things_shown(m.get("kit")),
        "food": shown(m.get("food")),
        "joins": shown(m.get("pacer_joins")),
        "leaves": shown(m.get("pacer_leaves")),
    }


def _legs(at: _At, names: dict[str, str]) -> list[Table]:
    """Each drive with an estimate by distance where no minutes are given."""
    plan = at.look.plan
    roads = None if plan is None else Roads(plan.event, spots=course_spots(plan.event, plan.courses))
    out = []
    for leg in legs(at.doc):
        way = roads.estimate(leg.start, leg.end) if roads is not None else None
        guess = "" if way is None or way.drive is None else f"{way.drive.total_seconds() / 60:.0f}"
        ends = {"start_name": names.get(leg.start, leg.start), "end_name": names.get(leg.end, leg.end)}
        out.append(
            {"start": leg.start, "end": leg.end, "minutes": leg.minutes, "by": leg.by, "guess": guess, **ends}
        )
    return out


def _remarks(at: _At) -> tuple[str, ...]:
    """What of the meetings can't be made, what would help, and the odds, as `stilepost plan` says them."""
    built = at.look.built
    if built is None or not built.event.meetings:
        return ()
    event = built.event
    before = before_start(event, built.timetables, built.courses, at.now)
    moves = crew_plan(event, built.timetables, before.views, spots=course_spots(event, built.courses))
    # Which drives nobody stands by is seen beside the drives themselves.
    moves = replace(
        moves,
        troubles=tuple(t for t in moves.troubles if t.kind is not TroubleKind.ESTIMATED),
        offers=tuple(o for o in moves.offers if o.kind is not OfferKind.CONFIRM),
    )
    return plan_remarks(_say(at, event.time_zone).reader, event, moves)


def _check(at: _At) -> Table:
    found = [(s, at.look.wrong(s)) for s in STEPS]
    out: Table = {"found": [f for f in found if f[1]], "right": at.look.built is not None, "meetings": []}
    built = at.look.built
    if built is not None:
        event = built.event
        before = before_start(event, built.timetables, built.courses, at.now)
        say = Say(_say(at, event.time_zone).reader, before.at)
        for runner in event.runners:
            for m in (car for meeting in before.meetings(runner.id) for car in meeting.parties()):
                place = event.course_of(runner.id).point(m.point).name
                crew = say.all(p.name for p in event.people if p.id in m.crew)
                lines = meeting_lines(before, runner.id, m, say)
                out["meetings"].append({"place": place, "crew": crew, "lines": lines})
        out["remarks"] = _remarks(at)
        out["ready"] = _ready(at)
    return out | _timetable(at)


def _ready(at: _At) -> list[Table]:
    """Her recordings against the course, as `stilepost ready` says it; of who has some."""
    plan = at.look.plan
    if plan is None:
        return []
    event = plan.event
    say = _say(at, event.time_zone)
    return [
        {
            "name": r.name,
            "lines": ready_lines(say, event, plan.timetables[r.id], plan.courses[r.course], at.look.files),
        }
        for r in event.runners
        if r.own_runs
    ]


def _publish(at: _At) -> Table:
    built = at.look.built
    people = [] if built is None else [{"id": p.id, "name": p.name} for p in built.event.people]
    errors = sum(at.look.errors(s) for s in STEPS)
    none: Table = {"stored": 0, "changes": [], "refused": [], "joined": set(), "invited": []}
    return {"right": built is not None, "people": people, "count": errors, **none}


_STEPS: Final[dict[str, Callable[[_At], Table]]] = {
    "course": _race,
    "points": _points,
    "runner": _runner,
    "people": _people,
    "meetings": _meetings,
    "check": _check,
    "publish": _publish,
}
