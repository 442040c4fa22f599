"""From the text of an event file and its route files to what every room needs: event, courses, timetables.

Used by the server for stored versions and by the command line for files on disk, so that `stilepost check`
refuses exactly what the server would. No I/O: the bytes are handed in.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field, replace
from datetime import datetime

from server.conversation.telling.cards import built_in_cards
from server.conversation.telling.movements import broken_words
from server.conversation.telling.planned import say_planned
from server.conversation.telling.reader import Reader
from server.course import Course, CourseError, PositionPrior, build_course, place_position, read_gpx
from server.event import Parsed, Problem, Severity, parse_event, place
from server.event.model import Event, Goal, Runner
from server.facts.entry import Fix
from server.facts.placing import KnownAt, Placed, Placer, remembered
from server.plan import PlanError, evidence_of, make_timetable
from server.plan.cards import cards_of
from server.plan.fuel import fuel_told
from server.plan.movements import crew_plan
from server.plan.packing import kit_wrong
from server.plan.timetable import Timetable
from server.sentences import Worded, as_said, languages, say
from server.watch.circle import met_apart

SLOWEST_SHARE, FASTEST_SHARE = 0.4, 2.5
# A runner's speed between two reports lies within these shares of her planned mean: a climb by night is two
# and a half times slower, a descent as much faster.
NOT_ON_COURSE_M = 3000.0


class BuildError(Exception):
    """An event file that can't be used as it stands; `problems` lists every mistake with place and remedy."""

    def __init__(self, problems: tuple[Problem, ...]) -> None:
        self.problems = problems
        super().__init__("\n".join(str(p) for p in problems))


@dataclass(frozen=True, slots=True, eq=False)
class Built:
    """An event with every km known, its courses by id, its timetables by runner, and what is only doubtful."""

    event: Event
    courses: Mapping[str, Course]
    timetables: Mapping[str, Timetable]
    warnings: tuple[Problem, ...] = ()
    placer: Placer = field(init=False, repr=False)
    """Puts a position on the line by what was known of her before. It remembers: a tracker sends thousands, and
    each new one has all of them folded anew."""

    def __post_init__(self) -> None:
        object.__setattr__(self, "placer", remembered(self._place))

    def _place(self, course: str, fix: Fix, at: datetime, before: KnownAt) -> Placed:
        slow, fast = self._speeds(course)
        prior = PositionPrior.since(before.km, max(at - before.at, at - at), slow, fast)
        found = place_position(self.courses[course], fix.lat, fix.lon, fix.accuracy_m, prior)
        km = None if found.nearest_offset_m > NOT_ON_COURSE_M else found.km
        return Placed(km, found.offset_m, found.ambiguous)

    def _speeds(self, course: str) -> tuple[float, float]:
        means = [
            t.rows[-1].km / max(t.rows[-1].arrive[Goal.B].total_seconds() / 3600, 0.01)
            for r, t in self.timetables.items()
            if self.event.runner(r).course == course
        ]
        mean = sum(means) / len(means) if means else 5.0
        return SLOWEST_SHARE * mean, FASTEST_SHARE * mean


def build(
    text: str,
    files: Mapping[str, bytes],
    file: str = "event.toml",
    version: int = 0,
    language: str = "",
    *,
    accepted: bool = False,
) -> Built:
    """Everything that follows from an event file; BuildError with every mistake found.

    `files` holds every file that the event file names (`Event.files`), by the names it gives them. `language`: of the rules
    that the crew's movements break and of what is doubtful of kit and fuel; every other mistake can be said in any.
    `accepted`: of a text that went through this before it was stored; what crews would break, and what is doubtful of kit
    and fuel, is not looked for again: that takes most of the time, and would keep a server from starting where a rule has
    come since.
    """
    parsed = parse_event(text, file, languages())
    problems = list(parsed.problems)
    if parsed.event is None:
        raise BuildError(tuple(problems))
    courses = _courses(parsed.event, files, problems, file)
    _stop_at_errors(problems)
    placed = place(parsed.event, courses, file, parsed)
    problems += placed.problems
    _stop_at_errors(problems)
    if placed.event is None:
        raise BuildError(tuple(problems))
    event = replace(placed.event, version=version)
    places = _Places(file, parsed)
    problems += _card_problems(event, places)
    timetables = _timetables(event, courses, files, problems, places)
    _stop_at_errors(problems)
    if accepted:
        return Built(event, courses, timetables, tuple(problems))
    problems += _broken_rules(event, timetables, places, language)
    _stop_at_errors(problems)
    problems += _doubts(event, courses, timetables, places, language)
    return Built(event, courses, timetables, tuple(problems))


def _stop_at_errors(problems: list[Problem]) -> None:
    if any(p.severity is Severity.ERROR for p in problems):
        raise BuildError(tuple(problems))


def _courses(
    event: Event, files: Mapping[str, bytes], problems: list[Problem], file: str
) -> dict[str, Course]:
    courses: dict[str, Course] = {}
    for definition in event.courses:
        if definition.route not in files:
            problems.append(
                _problem(file, "route", say("wrong-no-file", file=definition.route), say("do-correct-name"))
            )
            continue
        try:
            stages = any(p.next_stage for p in definition.points)
            track = read_gpx(files[definition.route], definition.route, stages=stages)
            course = build_course(track, stated_km=definition.stated_km)
        except CourseError as error:
            problems.append(
                Problem(Severity.ERROR, error.what, error.file, error.line, "route", error.remedy)
            )
            continue
        courses[definition.id] = course
        problems.extend(
            Problem(Severity.WARNING, w, definition.route, None, "route", None) for w in course.warnings
        )
    return courses


@dataclass(frozen=True, slots=True)
class _Places:
    """Where in the event file a field of the planner's stands."""

    file: str
    parsed: Parsed

    def problem(self, error: PlanError) -> Problem:
        """A mistake of the planner's, with its line in the event file, or in the file it speaks of."""
        file, line = (error.file, error.line) if error.file else (self.file, self._line(error.field))
        return Problem(Severity.ERROR, error.what, file, line, error.field, error.remedy)

    def _line(self, field: str) -> int | None:
        words: list[str | int] = []
        for word in field.split("."):
            name, _, number = word.removesuffix("]").partition("[")
            words += [name, int(number)] if number.isdigit() else [word]
        path: tuple[str | int, ...] = ("event", field) if len(words) == 1 else tuple(words)
        thing = (str(words[0]), str(words[1])) if len(words) > 1 else ("", "")
        if thing in self.parsed.paths:
            path = (*self.parsed.paths[thing], *words[2:])
        return next(
            (self.parsed.lines[path[:n]] for n in range(len(path), 0, -1) if path[:n] in self.parsed.lines),
            None,
        )


def _broken_rules(
    event: Event, timetables: Mapping[str, Timetable], places: _Places, language: str
) -> list[Problem]:
    """Every rule of the race that the crew's movements would break, at the meeting that breaks it."""
    found = []
    for b in (b for apart in met_apart(event) for b in crew_plan(apart, timetables, other_cars=False).broken):
        what, remedy = broken_words(Reader(language, event.time_zone, event.time_zone), b)
        field = "meetings" if b.meeting is None else f"meetings.{b.meeting}"
        found.append(places.problem(PlanError(as_said(what), field=field, remedy=as_said(remedy))))
    return found


FEW = 12
"""Runners of whom kit is asked about though no list speaks of them; a whole field's is its own affair."""


def _doubts(
    event: Event,
    courses: Mapping[str, Course],
    timetables: Mapping[str, Timetable],
    places: _Places,
    language: str,
) -> list[Problem]:
    """Torch and layers that would not reach her before she needs them, at any of her paces, and what she is to eat and drink
    outside the published ranges: doubtful, not wrong."""
    reader, found = Reader(language, event.time_zone, event.time_zone), []
    met = {m.runner for m in event.meetings}
    for r in event.runners:
        if len(event.runners) > FEW and r.id not in met and not (r.carries or r.drop_bags):
            continue
        kit = kit_wrong(event, timetables[r.id], courses[r.course])
        fuel = fuel_told(r, event.course_of(r.id).points, timetables[r.id])
        for told, key in (*((t, "carries") for t in kit), *((t, "fuel") for t in fuel)):
            what, remedy = (say_planned(reader, n) for n in (told.what, told.remedy))
            at = places.problem(
                PlanError(as_said(what), field=f"runners.{r.id}.{key}", remedy=as_said(remedy))
            )
            found.append(replace(at, severity=Severity.WARNING))
    return found


def _card_problems(event: Event, places: _Places) -> list[Problem]:
    """A card of the event's own with nothing to try, where no built-in one lends its steps."""
    try:
        cards_of(event, built_in_cards("", ""))
    except PlanError as error:
        return [places.problem(error)]
    return []


def _timetables(
    event: Event,
    courses: Mapping[str, Course],
    files: Mapping[str, bytes],
    problems: list[Problem],
    places: _Places,
) -> dict[str, Timetable]:
    """A timetable for every runner, of everything the event file says about her pace. Of those of whom it says the same
    (most of a large field) it is worked out once, as one costs a twelfth of a second."""
    timetables: dict[str, Timetable] = {}
    alike: dict[Runner, Timetable] = {}
    for runner in event.runners:
        course = courses[runner.course]
        as_anybody = replace(runner, id="", person="", name="", bib="")
        if as_anybody in alike:
            timetables[runner.id] = replace(alike[as_anybody], runner=runner.id)
            continue
        found = evidence_of(event, runner.id, course, files)
        problems.extend(p for p in map(places.problem, found.wrong) if p not in problems)
        if found.wrong:
            continue
        try:
            made = make_timetable(event, runner.id, course, own=found.own, estimates=found.estimates)
        except PlanError as error:
            problems.append(places.problem(error))
            continue
        timetables[runner.id] = alike[as_anybody] = made
    return timetables


def _problem(file: str, field: str, what: Worded, remedy: Worded) -> Problem:
    return Problem(Severity.ERROR, what, file, None, field, remedy)
