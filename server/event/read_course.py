"""Reads courses, points and stretches of an event file."""

from __future__ import annotations

import re
import unicodedata
from datetime import datetime, timedelta
from zoneinfo import ZoneInfo

from server.event.draft import DEFAULT_COURSE, At, CourseHead, Draft
from server.event.model import (
    CrewAccess,
    CutOff,
    Edge,
    Point,
    PointKind,
    ReporterKind,
    ReportsThere,
    Signal,
    Stretch,
)
from server.event.read_pace import read_file_name
from server.event.section import WORDS_MAX, Section, did_you_mean

KM_MAX = 1000.0
ASCENT_MAX = 60_000
SHORT_RACE = timedelta(days=6)
"""In a race shorter than this a weekday means one day."""
CUT_OFF_MIN, CUT_OFF_MAX = timedelta(minutes=1), timedelta(days=14)
ID = re.compile(r"[a-z0-9][a-z0-9-]{0,39}")


def slug(name: str) -> str:
    """A name as an id: small letters, digits and hyphens; at most 40."""
    plain = unicodedata.normalize("NFKD", name).encode("ascii", "ignore").decode().lower()
    return re.sub(r"[^a-z0-9]+", "-", plain).strip("-")[:40].strip("-")


def read_id(section: Section, default: str) -> str:
    """The id of a table, by default made from its name; names the table in messages."""
    section.expect("id", "small letters, digits and hyphens, at most 40", "made from the name")
    given = section.text("id")
    if given and ID.fullmatch(given) is None:
        remedy = f"Use small letters, digits and hyphens, such as '{slug(given) or 'point-1'}'."
        section.error("id", f"the id '{given}' can't be used", remedy)
        given = slug(given)
    found = given or slug(default) or "-".join(str(p) for p in section.path)
    section.name_me(found)
    return found


def read_courses(draft: Draft, top: Section, event: Section) -> None:
    """The one course of [event], or several [[courses]]."""
    route_help = 'Name the GPX file that stands beside this one: route = "route.gpx".'
    listed = top.tables("courses")
    if not listed:
        route = event.text("route", need=route_help)
        stated, results = event.number("stated_km", 1, KM_MAX), read_file_name(event, "results")
        ascent = event.number("stated_ascent_m", 0, ASCENT_MAX)
        head = CourseHead(DEFAULT_COURSE, route, stated, results, ascent)
        draft.courses.append(At(head, event.path))
        return
    if {k for k in ("route", "stated_km", "stated_ascent_m", "results") if event.has(k)}:
        event.error("route", "[event] names a route and so do the [[courses]]", "Keep one of the two.")
    for section in listed:
        head = CourseHead(
            read_id(section, section.text("name")),
            section.text("route", need=route_help),
            section.number("stated_km", 1, KM_MAX),
            read_file_name(section, "results"),
            section.number("stated_ascent_m", 0, ASCENT_MAX),
        )
        draft.courses.append(At(head, section.path))
        section.done()


def read_points(draft: Draft, top: Section) -> None:
    """Every [[points]] and [[stretches]]."""
    for section in top.tables("points"):
        draft.course_of[section.path] = _course(draft, section)
        draft.points.append(At(_point(draft, section), section.path))
        section.done()
    for section in top.tables("stretches"):
        draft.course_of[section.path] = _course(draft, section)
        draft.stretches.append(At(_stretch(section), section.path))
        section.done()


def _course(draft: Draft, section: Section) -> str:
    ids = [c.value.id for c in draft.courses]
    named = section.text("course")
    if named and named not in ids:
        section.error(
            "course", f"there is no course '{named}'", did_you_mean(named, ids, f"Known: {', '.join(ids)}.")
        )
    elif not named and len(ids) > 1:
        section.missing("course", f"There are several courses: say which ({', '.join(ids)}).")
    return named if named in ids else ids[0]


def _point(draft: Draft, section: Section) -> Point:
    name = section.text("name", need='Give the point a name, as in name = "Skelter Mill".')
    point_id = read_id(section, name)
    kinds = set(section.choices("kinds", PointKind))
    raw = section.raw("kinds")
    if raw is not None and (not isinstance(raw, list) or any(k not in set(PointKind) for k in raw)):
        draft.astray.add(section.path)
    km = section.number("km", 0, KM_MAX)
    waypoint = section.text("waypoint") or None
    ends = kinds & {PointKind.START, PointKind.FINISH}
    if not section.has("km") and waypoint is None and not (ends or section.path in draft.astray):
        section.missing("km", 'Give its distance, km = 21.3, or a waypoint of the route, waypoint = "Mill".')
    access = _access(draft, section)
    cut_offs = _cut_offs(draft, section)
    if access is not None:
        kinds.add(PointKind.CREW_ACCESS)
    elif PointKind.CREW_ACCESS in kinds and not section.has("crew"):
        access = CrewAccess()
        remedy = 'Add crew = { parking = "...", walk_in_minutes = 5 }.'
        section.report.warn(section.at("kinds"), "crew may come here, but nothing says where to park", remedy)
    if cut_offs:
        kinds.add(PointKind.CUT_OFF)
    elif PointKind.CUT_OFF in kinds and not (section.has("cut_off") or section.has("cut_offs")):
        section.missing("cut_off", 'Say when: cut_off = { when = "out", clock = "Sun 11:30" }.')
    return Point(
        id=point_id,
        name=name or point_id,
        km=km,
        kinds=frozenset(kinds),
        also=section.texts("also"),
        waypoint=waypoint,
        cut_offs=cut_offs,
        access=access,
        reports=tuple(_reports(s) for s in section.tables("reports")),
        signal=section.choice("signal", Signal, Signal.GOOD) or Signal.GOOD,
        planned_stop=section.minutes("stop_minutes", timedelta(0)),
        note=section.text("note", most=WORDS_MAX),
        next_stage=_next_stage(draft, section),
        transport=section.text("transport", most=WORDS_MAX),
    )


def _next_stage(draft: Draft, section: Section) -> datetime | None:
    after, found = draft.local_start() if draft.starts_known else None, len(draft.report.problems)
    at = draft.moment(section, "next_stage", after, '"Sun 07:00"')
    if at == draft.starts and len(draft.report.problems) > found:
        return None  # The mistake is noted, and the start in its place would make others of the cut-offs.
    if at is not None and draft.starts_known and at < draft.starts:
        section.error(
            "next_stage", "the next stage starts before the race", 'Give the weekday, as in "Sun 07:00".'
        )
        return None
    if at is not None and section.has("stop_minutes"):
        section.error(
            "stop_minutes", "a stage ends here, and she stays until the next one", "Leave stop_minutes out."
        )
    return at


def _cut_offs(draft: Draft, section: Section) -> tuple[CutOff, ...]:
    if section.has("cut_off") and section.has("cut_offs"):
        section.error("cut_offs", "there are cut_off and cut_offs", "Put them all into cut_offs.")
    found = [_cut_off(draft, s) for key in ("cut_off", "cut_offs") for s in section.tables(key)]
    edges = [c.edge for c in found if c is not None]
    if len(set(edges)) < len(edges):
        section.error("cut_offs", "two cut-offs for the same moment", 'Keep one for "in" and one for "out".')
    return tuple(c for c in found if c is not None)


def _cut_off(draft: Draft, section: Section) -> CutOff | None:
    need = 'Say whether she must be in or out by then: when = "in" or when = "out".'
    edge = section.choice("when", Edge, need=need)
    clocked, counted = section.has("clock"), section.has("elapsed")
    if clocked == counted:
        what = "a cut-off has clock and elapsed" if clocked else "a cut-off has no time"
        remedy = 'Give one: clock = "Sun 11:30" (time of day) or elapsed = "6:30" (since her start).'
        section.report.error(section.path, what, remedy)
    start = draft.local_start()
    clock = draft.moment(section, "clock", start, '"Sun 11:30"')
    elapsed = section.span("elapsed", CUT_OFF_MIN, CUT_OFF_MAX)
    section.done()
    if edge is None or (clock is None) == (elapsed is None):
        return None
    return CutOff(edge, clock, elapsed)


def _access(draft: Draft, section: Section) -> CrewAccess | None:
    """`open_from` without a day is on the day of the start, `open_to` the first such time after it."""
    crew = section.table("crew")
    if crew is None:
        return None
    day = draft.local_start().replace(hour=0, minute=0, second=0, microsecond=0)
    opens = draft.moment(crew, "open_from", day, '"09:00"')
    after = day if opens is None else opens.astimezone(ZoneInfo(draft.zone)).replace(tzinfo=None)
    closes = draft.moment(crew, "open_to", after, '"Sun 14:00"')
    # 'Sat 18:00' of a Saturday that opens later is found a week on: nobody means a week of access.
    week_on = draft.limit is not None and draft.limit < SHORT_RACE
    if (
        opens is not None
        and closes is not None
        and (closes <= opens or (week_on and closes - opens >= SHORT_RACE))
    ):
        crew.error("open_to", "it closes before it opens", "Check the two times, with weekday.")
    lat, lon = crew.number("lat", -90, 90), crew.number("lon", -180, 180)
    if (lat is None) != (lon is None) and crew.has("lat") != crew.has("lon"):
        crew.error("lat" if lat is not None else "lon", "lat and lon go together", "Give both or none.")
    found = CrewAccess(
        parking=crew.text("parking", most=WORDS_MAX),
        walk_in=crew.minutes("walk_in_minutes", timedelta(0)),
        unloading=crew.minutes("unloading_minutes", timedelta(minutes=5)),
        opens=opens,
        closes=closes,
        people_max=crew.whole("people_max", 0, 100),
        lat=lat,
        lon=lon,
        permit=crew.text("permit", most=WORDS_MAX),
        place=crew.text("place"),
        cars_max=crew.whole("cars_max", 0, 50),
    )
    crew.done()
    return found


def _reports(section: Section) -> ReportsThere:
    need = 'Say who reports: by = "volunteer" (or "crew", "timing mat", "runner", "tracker", "nobody").'
    by = section.choice("by", ReporterKind, ReporterKind.NOBODY, need=need) or ReporterKind.NOBODY
    chance = section.number("chance", 0, 1, 1.0 if by is ReporterKind.NOBODY else None)
    if chance == 0 or (chance is None and not section.has("chance")):
        what = "a chance of 0 is nobody" if chance == 0 else "'chance' is missing"
        section.error(
            "chance", what, "Write how surely she is reported, above 0 up to 1, as in chance = 0.9."
        )
    delay = section.minutes("delay_minutes", timedelta(0))
    section.done()
    return ReportsThere(by, chance or 1.0, delay)


def _stretch(section: Section) -> Stretch:
    first = section.number("from_km", 0, KM_MAX, need="Say where it begins: from_km = 60.")
    last = section.number("to_km", 0, KM_MAX, need="Say where it ends: to_km = 78.")
    if first is not None and last is not None and first >= last:
        section.error(
            "to_km", f"the stretch ends at km {last:g}, before it begins", "Check from_km and to_km."
        )
    factor = section.number("factor", 0.5, 4.0, 1.0)
    return Stretch(
        from_km=first or 0.0,
        to_km=last or 0.0,
        name=section.text("name"),
        surface=section.text("surface"),
        forest_or_gorge=section.yes("forest_or_gorge"),
        no_signal=section.yes("no_signal"),
        factor=1.0 if factor is None else factor,
        factor_for=section.text("factor_for"),
        escape_route=section.text("escape_route", most=WORDS_MAX),
    )
