"""Reads an event file: text in, the event or every mistake out. `parse_event` is the door."""

from __future__ import annotations

import re
import tomllib
from collections.abc import Collection, Mapping
from dataclasses import fields, replace
from datetime import date, datetime, timedelta
from typing import Any

from server.event.check import check, paths
from server.event.draft import FIRST_YEAR, LAST_YEAR, At, Draft
from server.event.lines import line_index, with_seconds
from server.event.model import AlarmRule, Brief, Contact, CourseDef, Event, Part, PartKind, Person, Rules
from server.event.plainly import slip
from server.event.problem import Parsed, Problem, Severity, once
from server.event.read_course import KM_MAX, read_courses, read_id, read_points
from server.event.read_moves import read_driving, read_places, read_shares
from server.event.read_pace import read_weather
from server.event.read_people import (
    read_cars,
    read_meetings,
    read_people,
    read_phone,
    read_runners,
    read_waves,
    zone,
)
from server.event.section import WORDS_MAX, Ask, Report, Section, nearest, one_of
from server.event.times import end_of_day

__all__ = ["parse_event"]

TEXT_BYTES_MAX = 4_000_000
_HELP = ("crew points only", "anywhere")
_WHERE = re.compile(r" \(at (?:line (\d+), column (\d+)|end of document)\)$")


def parse_event(text: str, file: str = "event.toml", languages: Collection[str] = ()) -> Parsed:
    """Read the text of an event file. `languages`: those there are; () lets any word stand for one.

    Never raises: a file that can't be read gives one problem, any other all its mistakes at once. The
    points that only name a waypoint have no km yet: see `place`.
    """
    values, problem = _toml(text, file)
    if problem is not None or values is None:
        return Parsed(None, (problem,) if problem is not None else ())
    lines = line_index(with_seconds(text))
    report = Report(file, lines)
    draft = Draft(report)
    event = _event(Section(report, values, ()), draft, languages)
    problems = once(sorted(report.problems, key=lambda p: p.line if p.line is not None else len(text)))
    return Parsed(None if report.failed else event, tuple(problems), lines, paths(draft))


def read_asking(text: str) -> Mapping[tuple[str, str], Ask]:
    """What the reader asks for, table by table and key by key, as it reads a text that is valid TOML."""
    report = Report("", {})
    _event(Section(report, tomllib.loads(with_seconds(text)), ()), Draft(report), ())
    return report.asks


def _toml(text: str, file: str) -> tuple[dict[str, Any] | None, Problem | None]:
    text = text.removeprefix("\ufeff")
    if len(text) > TEXT_BYTES_MAX:
        what = f"the file has {len(text):,} characters"
        remedy = f"An event file has at most {TEXT_BYTES_MAX:,}: is this the route?"
        return None, Problem(Severity.ERROR, what, file, None, "", remedy)
    try:
        return tomllib.loads(with_seconds(text)), None
    except tomllib.TOMLDecodeError as e:
        return None, _syntax(e, text, file)
    except (RecursionError, ValueError) as e:
        what = (
            "brackets are nested too deep" if isinstance(e, RecursionError) else f"a value is impossible: {e}"
        )
        return None, Problem(Severity.ERROR, what, file, None, "", "Compare with the example file.")


def _syntax(error: tomllib.TOMLDecodeError, text: str, file: str) -> Problem:
    """The parser's words are for programmers: say what people usually did wrong on such a line."""
    words = str(error)
    found = _WHERE.search(words)
    rows = text.split("\n")
    line = int(found[1]) if found is not None and found[1] else len(rows)
    row = rows[line - 1].strip() if line <= len(rows) else ""
    said = _WHERE.sub("", words)
    what, remedy = slip(row) or (
        f"this line can't be read as TOML ({said[:1].lower()}{said[1:]}): {row[:80]}",
        _syntax_remedy(said, row),
    )
    return Problem(Severity.ERROR, what, file, line, "", remedy)


def _syntax_remedy(said: str, row: str) -> str:
    if any(c in row for c in "“”„‘’"):
        return 'Use straight quotes, " and ", not curly ones.'
    if "overwrite" in said or "twice" in said:
        return "This key or table is there already: keep one, or use [[...]] for a list of tables."
    if re.search(r"=\s*-?\d+,\d", row):
        return "Write decimals with a point: 21.3."
    if re.search(r"=\s*\d{1,2}:\d\d", row):
        return 'Put times and lengths in quotes: "29:00".'
    if re.search(r"=\s*[A-Za-z]", row):
        return 'Put words in quotes: name = "Skelter Mill". true and false stand without.'
    if row.count('"') % 2:
        return "A quote is missing."
    if row and "=" not in row and not row.startswith(("[", "#")):
        return 'Each line is key = value, a [heading], or a comment after "#".'
    return "Compare the line with the example file: quotes, brackets, commas."


def _event(top: Section, draft: Draft, languages: Collection[str]) -> Event:
    report = draft.report
    head = top.table("event")
    if head is None:
        report.error((), "there is no [event] table", "Begin the file with [event], name, starts, time_zone.")
        head = Section(report, {}, ("event",))
    name = head.text("name", need='Give the race a name, as in name = "The Long Stile Hundred".')
    event_id = read_id(head, name)
    report.names.pop(head.path, None)
    _when(draft, head)
    read_courses(draft, top, head)
    read_points(draft, top)
    read_waves(draft, top)
    read_runners(draft, top)
    read_people(draft, top, languages)
    read_places(draft, top)
    read_cars(draft, top)
    read_meetings(draft, top)
    read_shares(draft, top)
    read_weather(draft, top)
    draft.rules = _rules(draft, top)
    number = read_phone(head, "emergency_number", short=True)
    if not head.has("emergency_number"):
        remedy = 'Write emergency_number = "112", or what holds where the race is.'
        report.warn(head.path, "no emergency number is given, 112 is used", remedy)
    event = Event(
        id=event_id,
        name=name,
        time_zone=draft.zone,
        starts=draft.starts,
        rules=draft.rules,
        courses=(),
        runners=(),
        people=(),
        parts=(),
        race_control=_race_control(draft, top),
        emergency_number=number or "112",
        limit=draft.limit,
        alarm=_alarm(top),
        rescue=_contact(top, "rescue"),
        grid=head.text("grid", "UTM"),
        transport=head.text("transport", most=WORDS_MAX),
        exercise=head.yes("exercise"),
        brief=_brief(top),
        keep_until=draft.keep_until,
        driving=read_driving(top),
    )
    head.done()
    top.done()
    _fill_in(draft)
    event = _with_lists(event, draft)
    check(draft, event)
    return event


def _when(draft: Draft, head: Section) -> None:
    draft.zone = zone(head, "time_zone") or "UTC"
    if not head.has("time_zone"):
        head.missing("time_zone", 'Say where the race is: time_zone = "Europe/London".')
    starts = draft.moment(head, "starts")
    if starts is not None:
        draft.starts, draft.starts_known = starts, head.values.get("time_zone") == draft.zone
    elif not head.has("starts"):
        head.missing("starts", "Say when: starts = 2027-06-19T05:00 (local time).")
    draft.limit = head.span("limit", timedelta(minutes=30), timedelta(days=14))
    head.expect("keep_until", "day or date and time without quotes, as in 2027-09-30")
    keep = head.raw("keep_until")
    if isinstance(keep, date) and not isinstance(keep, datetime):
        if not FIRST_YEAR <= keep.year <= LAST_YEAR:
            head.error("keep_until", f"the year {keep.year} can't be right", "Check the year.")
            return
        draft.keep_until = end_of_day(keep, draft.zone)
    else:
        draft.keep_until = draft.moment(head, "keep_until", example="2027-09-30")


def _brief(top: Section) -> Brief:
    section = top.table("brief")
    if section is None:
        return Brief()
    found = Brief(*(section.texts(f.name, WORDS_MAX) for f in fields(Brief)))
    section.done()
    return found


def _rules(draft: Draft, top: Section) -> Rules:
    rules = top.table("rules")
    if rules is None:
        return Rules()
    rules.expect("outside_help", one_of(_HELP), _HELP[0])
    help_where = rules.text("outside_help", _HELP[0])
    if help_where not in _HELP:
        rules.error("outside_help", f"'{help_where}' is not known here", f"Write one of: {', '.join(_HELP)}.")
    pacers = rules.whole("pacers_at_once", 0, 10, 1)
    day = draft.local_start().replace(hour=0, minute=0, second=0, microsecond=0)
    found = Rules(
        vehicles_max=rules.whole("vehicles_max", 0, 50),
        crew_people_max=rules.whole("crew_people_max", 0, 100),
        pacer_from_km=rules.number("pacer_from_km", 0, KM_MAX),
        pacers_at_once=1 if pacers is None else pacers,
        outside_help_only_at_crew_points=help_where != _HELP[1],
        note=rules.text("note", most=WORDS_MAX),
        crew_not_before=draft.moment(rules, "crew_not_before", day, '"09:00"'),
        pacer_sign_in=rules.minutes("pacer_sign_in_minutes", timedelta(0)),
        required_kit=rules.texts("required_kit"),
    )
    rules.done()
    return found


def _alarm(top: Section) -> AlarmRule:
    default = AlarmRule()
    alarm = top.table("alarm")
    if alarm is None:
        return default
    line = alarm.number("line", 1e-6, 0.2, default.line)
    found = AlarmRule(
        line=default.line if line is None else line,
        grace=alarm.minutes("grace_minutes", default.grace),
        look_again=alarm.minutes("look_again_minutes", default.look_again),
        answer_within=alarm.minutes("answer_within_minutes", default.answer_within),
    )
    alarm.done()
    return found


def _race_control(draft: Draft, top: Section) -> Contact:
    """Needed as soon as anybody is to be alarmed; a file with no people is only planned from."""
    found = _contact(top, "race_control")
    if found is not None:
        return found
    remedy = "Add [race_control] with name and phone."
    if draft.people:
        draft.report.error((), "nobody knows how to reach race control", remedy)
    else:
        draft.report.warn((), "there is no race control", remedy)
    return Contact("Race control", "")


def _contact(top: Section, key: str) -> Contact | None:
    table = top.table(key)
    if table is None:
        return None
    name = table.text("name", key.replace("_", " ").capitalize())
    phone = read_phone(table, "phone", need=f"[{key}] needs a telephone number.", short=True)
    table.done()
    return Contact(name, phone)


def _fill_in(draft: Draft) -> None:
    """Runners who are nobody else stand for themselves; every runner has the part of one."""
    listed = [p.value.id for p in draft.people]
    for r in draft.runners:
        theirs = [p for p in draft.parts if p.value.kind is PartKind.RUNNER and p.value.runner == r.value.id]
        if r.value.person in listed or r.value.person != r.value.id or theirs:
            continue
        if draft.runners_astray():
            continue  # whoever she is among the people is told already: the id is mistyped
        draft.people.append(At(Person(r.value.person, r.value.name), r.path))
        if listed:
            what = f"{r.value.name} is not among the [[people]]: nothing can be sent to her"
            near = nearest(r.value.id, listed)
            add = f'Add [[people]] with name = "{r.value.name}" and her phone'
            remedy = f'{add}; if she is {near}, write person = "{near}" here.' if near else f"{add}."
            draft.report.warn(r.path, what, remedy)
    people = {p.value.id for p in draft.people}
    for r in draft.runners:
        kinds = [(p.value.kind, p.value.person) for p in draft.parts if p.value.runner in (None, r.value.id)]
        mine = (PartKind.RUNNER, r.value.person) in kinds
        if not mine and r.value.person in people:
            part = Part(r.value.person, PartKind.RUNNER, r.value.id)
            draft.parts.append(At(part, r.path))


def _with_lists(event: Event, draft: Draft) -> Event:
    courses = tuple(
        CourseDef(
            id=c.value.id,
            route=c.value.route,
            points=tuple(p.value for p in draft.points_of(c.value.id)),
            stretches=tuple(s.value for s in draft.stretches if draft.course_of[s.path] == c.value.id),
            stated_km=c.value.stated_km,
            results=c.value.results,
            stated_ascent_m=c.value.stated_ascent_m,
        )
        for c in draft.courses
    )
    order = {p.value.id: i for i, p in enumerate(draft.people)}
    parts = sorted((p.value for p in draft.parts), key=lambda p: order[p.person])
    return replace(
        event,
        courses=courses,
        runners=tuple(r.value for r in draft.runners),
        people=tuple(p.value for p in draft.people),
        parts=tuple(parts),
        cars=tuple(c.value for c in draft.cars),
        drives=tuple(d.value for d in draft.drives),
        meetings=tuple(m.value for m in draft.meetings),
        cards=tuple(c.value for c in draft.cards),
        places=tuple(p.value for p in draft.places),
        shares=tuple(s.value for s in draft.shares),
        weather=tuple(w.value for w in draft.weather),
    )
