"""Reads an event file: text in, the event or every mistake out. `parse_event` is the door."""

from __future__ import annotations

import re
import tomllib
from collections.abc import Collection
from dataclasses import replace
from typing import Any, TypeVar

from server.event.check import check, paths
from server.event.context import At
from server.event.forms import Text, Values
from server.event.forms_of_time import Moment
from server.event.lines import line_index, with_seconds
from server.event.model import (
    AlarmRule,
    Brief,
    Car,
    Contact,
    CourseDef,
    Drive,
    Driving,
    Event,
    IfThenCard,
    MeetingPlan,
    Part,
    PartKind,
    Person,
    Place,
    Point,
    Rules,
    Runner,
    Share,
    Stretch,
    WeatherSpell,
)
from server.event.parse_state import DEFAULT_COURSE, Parsed, ParseState
from server.event.problem import Problem, Severity, once
from server.event.table import Table, keys_of, read_key, read_table, read_values, take
from server.event.table_reader import Problems, Section, nearest
from server.event.typo_hints import slip
from server.sentences import Worded, say

__all__ = ["parse_event"]

CHARACTERS_MAX = 8_000_000
"""A thousand runners with a crew of their own and ten thousand without (7 MB); more is no event file."""
T = TypeVar("T", bound=Table)
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
    report = Problems(file, lines)
    draft = ParseState(report, languages)
    event = _event(Section(report, values, ()), draft)
    problems = once(sorted(report.problems, key=lambda p: p.line if p.line is not None else len(text)))
    return Parsed(None if report.failed else event, tuple(problems), lines, paths(draft))


def _toml(text: str, file: str) -> tuple[dict[str, Any] | None, Problem | None]:
    text = text.removeprefix("\ufeff")
    if len(text) > CHARACTERS_MAX:
        what = say("wrong-file-characters", count=f"{len(text):,}")
        remedy = say("do-event-file-most-route", most=f"{CHARACTERS_MAX:,}")
        return None, Problem(Severity.ERROR, what, file, None, "", remedy)
    try:
        return tomllib.loads(with_seconds(text)), None
    except tomllib.TOMLDecodeError as e:
        return None, _syntax(e, text, file)
    except (RecursionError, ValueError) as e:
        what = (
            say("wrong-brackets-nested-too-deep")
            if isinstance(e, RecursionError)
            else say("wrong-value-impossible", error=e)
        )
        return None, Problem(Severity.ERROR, what, file, None, "", say("do-compare-example-file"))


def _syntax(error: tomllib.TOMLDecodeError, text: str, file: str) -> Problem:
    """The parser's words are for programmers: say what people usually did wrong on such a line."""
    words = str(error)
    found = _WHERE.search(words)
    rows = text.split("\n")
    line = int(found[1]) if found is not None and found[1] else len(rows)
    row = rows[line - 1].strip() if line <= len(rows) else ""
    said = _WHERE.sub("", words)
    what, remedy = slip(row) or (
        say("wrong-line-no-toml", why=said[:1].lower() + said[1:], row=row[:80]),
        _syntax_remedy(said, row),
    )
    return Problem(Severity.ERROR, what, file, line, "", remedy)


def _syntax_remedy(said: str, row: str) -> Worded:
    if any(c in row for c in "“”„‘’"):
        return say("do-use-straight-quotes-not-curly")
    if "overwrite" in said or "twice" in said:
        return say("do-key-table-already-keep-use")
    if re.search(r"=\s*-?\d+,\d", row):
        return say("do-write-decimals-point-21-3")
    minutes = re.search(r"(\w*minutes)\s*=\s*(\d{1,2}):(\d\d)", row)
    if minutes is not None:
        return say("do-write-minutes", key=minutes[1], minutes=60 * int(minutes[2]) + int(minutes[3]))
    if re.search(r"=\s*\d{1,2}:\d\d", row):
        return say("do-put-times-lengths-quotes-29")
    if re.search(r"=\s*[A-Za-z]", row):
        return say("do-put-words-quotes-name-skelter")
    if row.count('"') % 2:
        return say("do-quote-missing")
    if row and "=" not in row and not row.startswith(("[", "#")):
        return say("do-each-line-key-value-heading")
    return say("do-compare-line-example-file-quotes")


def _event(top: Section, draft: ParseState) -> Event:
    report = draft.report
    head = top.table("event")
    if head is None:
        report.error((), say("wrong-no-event-table"), say("do-begin-file-event-name-starts"))
        head = Section(report, {}, ("event",))
    about = _about(draft, top, head)
    take(draft, top.tables("points"), Point, draft.points)
    take(draft, top.tables("stretches"), Stretch, draft.stretches)
    _waves(draft, top)
    take(draft, top.tables("runners", None), Runner, draft.runners)
    draft.runner_ids = [r.value.id for r in draft.runners]
    take(draft, top.tables("people", None), Person, draft.people)
    take(draft, top.tables("places"), Place, draft.places)
    take(draft, top.tables("cars", None), Car, draft.cars)
    take(draft, top.tables("drives"), Drive, draft.drives)
    take(draft, top.tables("meetings", None), MeetingPlan, draft.meetings)
    take(draft, top.tables("if_then"), IfThenCard, draft.cards)
    take(draft, top.tables("shares", None), Share, draft.shares)
    take(draft, top.tables("weather"), WeatherSpell, draft.weather)
    draft.rules = _one(draft, top, "rules", Rules) or Rules()
    about |= {
        "rules": draft.rules,
        "race_control": _race_control(draft, top),
        "rescue": _one(draft, top, "rescue", Contact),
        "alarm": _one(draft, top, "alarm", AlarmRule) or AlarmRule(),
        "driving": _one(draft, top, "driving", Driving) or Driving(),
        "brief": _one(draft, top, "brief", Brief) or Brief(),
    }
    top.done()
    _fill_in(draft)
    event = Event(**about, **_lists(draft))
    check(draft, event)
    return event


def _about(draft: ParseState, top: Section, head: Section) -> Values:
    """[event] itself, and the courses. The zone goes first: every moment needs it, and most need the start."""
    zone, starts = (k for k in keys_of(Event) if k.field in ("time_zone", "starts"))
    draft.zone = read_key(head, zone, {}, draft)
    at = read_key(head, starts, {}, draft)
    if at is not None:
        draft.starts, draft.starts_known = at, head.values.get("time_zone") == draft.zone
    about = read_values(head, Event, draft, time_zone=draft.zone, starts=draft.starts)
    draft.limit, draft.keep_until = about["limit"], about["keep_until"]
    if not head.has("emergency_number"):
        remedy = say("do-write-emergency-number-112-what")
        draft.report.warn(head.path, say("wrong-no-emergency-number-given-112"), remedy)
    about["emergency_number"] = about["emergency_number"] or "112"
    _courses(draft, top, head)
    head.done()
    return about


def _courses(draft: ParseState, top: Section, head: Section) -> None:
    """The one course of [event], or several [[courses]]."""
    listed = top.tables("courses")
    if not listed:
        v = read_values(head, CourseDef, draft, id=DEFAULT_COURSE, points=())
        draft.courses.append(At(CourseDef(**v), head.path))
    elif {k.name for k in Event.MORE if head.has(k.name)}:
        head.error("route", say("wrong-event-names-route-so-do"), say("do-keep-two"))
    for section in listed:
        take(
            draft,
            [section],
            CourseDef,
            draft.courses,
            points=(),
            name=Text().read(section, "name", {}, draft) or "",
        )
    draft.course_ids = [c.value.id for c in draft.courses]


def _waves(draft: ParseState, top: Section) -> None:
    """[waves]: name = start."""
    waves = top.table("waves")
    for name in waves.values if waves is not None else ():
        assert waves is not None
        at = Moment().read(waves, name, {}, draft)
        if at is not None:
            draft.waves[name] = at


def _one(draft: ParseState, top: Section, name: str, table: type[T]) -> T | None:
    section = top.table(name)
    return None if section is None else read_table(section, table, draft)


def _race_control(draft: ParseState, top: Section) -> Contact:
    """Needed as soon as anybody is to be alarmed; a file with no people is only planned from."""
    found = _one(draft, top, "race_control", Contact)
    if found is not None:
        return found
    remedy = say("do-add-race-control-name-phone")
    if draft.people:
        draft.report.error((), say("wrong-nobody-knows-how-reach-race"), remedy)
    else:
        draft.report.warn((), say("wrong-no-race-control"), remedy)
    return Contact("Race control", "")


def _fill_in(draft: ParseState) -> None:
    """Runners who are nobody else stand for themselves; every runner has the part of one."""
    listed = [p.value.id for p in draft.people]
    known, astray = set(listed), draft.runners_astray()
    running = {p.value.runner for p in draft.parts if p.value.kind is PartKind.RUNNER}
    for r in draft.runners:
        if r.value.person in known or r.value.person != r.value.id or r.value.id in running:
            continue
        if astray:
            continue  # whoever she is among the people is told already: the id is mistyped
        draft.people.append(At(Person(r.value.person, r.value.name), r.path))
        if listed:
            what = say("wrong-not-among-people-nothing-can", name=r.value.name)
            near = nearest(r.value.id, listed)
            code = "do-add-people-name-phone-or" if near else "do-add-people-name-phone"
            remedy = say(code, name=r.value.name, near=near or "")
            draft.report.warn(r.path, what, remedy)
    people = {p.value.id for p in draft.people}
    said = {(p.value.person, p.value.runner) for p in draft.parts if p.value.kind is PartKind.RUNNER}
    for r in draft.runners:
        mine = {(r.value.person, r.value.id), (r.value.person, None)} & said
        if not mine and r.value.person in people:
            part = Part(r.value.person, PartKind.RUNNER, r.value.id)
            draft.parts.append(At(part, r.path))


def _lists(draft: ParseState) -> Values:
    """The values of every list, points and stretches with their course."""
    courses = tuple(
        replace(
            c.value,
            points=tuple(p.value for p in draft.points_of(c.value.id)),
            stretches=tuple(s.value for s in draft.stretches if draft.course_of[s.path] == c.value.id),
        )
        for c in draft.courses
    )
    order = {p.value.id: i for i, p in enumerate(draft.people)}
    parts = sorted((p.value for p in draft.parts), key=lambda p: order[p.person])
    plain = ("runners", "people", "cars", "drives", "meetings", "cards", "places", "shares", "weather")
    lists = {name: tuple(x.value for x in getattr(draft, name)) for name in plain}
    return {"courses": courses, "parts": tuple(parts), **lists}
