"""Cross checks: what each table says may be right and the whole still wrong. `check` notes every mistake."""

from __future__ import annotations

from collections.abc import Collection, Sequence
from datetime import datetime, timedelta
from itertools import pairwise

from rapidfuzz import fuzz

from server.event.check_crew import check_crew
from server.event.check_km import check_km
from server.event.context import At
from server.event.lines import Path
from server.event.model import CutOff, Edge, Event, PartKind, Point, PointKind, ReporterKind, Runner
from server.event.parse_state import Draft
from server.event.table_reader import did_you_mean

NEARLY_THE_SAME = 93.0
"""Two names this alike (rapidfuzz ratio, of 100) are warned of: 'Moss Edge' and 'Moss Edges' (own choice)."""


def check(draft: Draft, event: Event) -> None:
    """Note every mistake that needs more than one table to see."""
    _ids(draft)
    _refs(draft)
    for course in draft.courses:
        points = draft.points_of(course.value.id)
        _ends(draft, course.path, points)
        _names(draft, points)
        runners = [r for r in draft.runners if r.value.course == course.value.id]
        _stages(draft, points, _starts(draft, runners) if draft.starts_known else ())
        _reporters(draft, course.path, points)
        if draft.starts_known:
            _cut_offs(draft, points, runners)
            _hours(draft, points)
    _runners(draft)
    _keep_until(draft)
    _ways_home(draft, event)
    check_crew(draft)
    check_km(event, draft.report, paths(draft))


def paths(draft: Draft) -> dict[tuple[str, str], Path]:
    """Where each thing with an id stands: ('points', 'mill') -> its path."""
    found: dict[tuple[str, str], Path] = {}
    for kind, things in (
        ("points", draft.points),
        ("runners", draft.runners),
        ("people", draft.people),
        ("meetings", draft.meetings),
        ("courses", draft.courses),
    ):
        found |= {(kind, t.value.id): t.path for t in things}
    return found


def _ids(draft: Draft) -> None:
    for kind, things in (
        ("points", draft.points),
        ("runners", draft.runners),
        ("people", draft.people),
        ("cars", draft.cars),
        ("meetings", draft.meetings),
        ("if_then", draft.cards),
        ("places", draft.places),
        ("courses", draft.courses),
    ):
        seen: dict[str, Path] = {}
        for thing in things:
            thing_id = thing.value.id
            if thing_id in seen:
                line = draft.report.line(seen[thing_id])
                what = f"the id '{thing_id}' is used twice in {kind} (first on line {line})"
                draft.report.error((*thing.path, "id"), what, f'Give this one its own: id = "{thing_id}-2".')
            seen.setdefault(thing_id, thing.path)


def _refs(draft: Draft) -> None:
    """Each id that a key names is one that there is."""
    things = (
        ("point", draft.points),
        ("runner", draft.runners),
        ("person", draft.people),
        ("car", draft.cars),
        ("place", draft.places),
    )
    ids = {what: {x.value.id: None for x in named} for what, named in things}
    for path, what, word in draft.refs:
        draft.known(path, what, word, ids[what])


def _ends(draft: Draft, path: Path, points: Sequence[At[Point]]) -> None:
    report = draft.report
    for kind, where, place in ((PointKind.START, 0, "first"), (PointKind.FINISH, -1, "last")):
        having = [p for p in points if kind in p.value.kinds]
        if not having and not any(p.path in draft.astray for p in points):
            at = points[where].path if points else path
            report.error(
                at, f"no point is the {kind.value}", f'Give the {place} one kinds = ["{kind.value}"].'
            )
        place_taken = bool(points) and points[where] in having
        for extra in [p for p in having if p is not points[where]] if place_taken else having[1:]:
            what = f"'{extra.value.name}' is a second {kind.value}"
            report.error(extra.path, what, "A place passed twice is two points, only one of them the end.")
        if len(having) == 1 and having[0] is not points[where]:
            what = f"the {kind.value} is not the {place} point"
            report.error(having[0].path, what, "List the points in running order.")
    if len(points) < 2:
        report.error(
            points[0].path if points else path, "a course needs two points at least", "Add [[points]]."
        )


def _plain(name: str) -> str:
    return " ".join(name.casefold().removeprefix("the ").split())


def _names(draft: Draft, points: Sequence[At[Point]]) -> None:
    """Names that the bot could not tell apart."""
    owner: dict[str, At[Point]] = {}
    for p in points:
        for name in (p.value.name, *p.value.also, p.value.id):
            other = owner.setdefault(_plain(name), p)
            if other is not p:
                what = (
                    f"'{name}' is also a name of '{other.value.name}' (line {draft.report.line(other.path)})"
                )
                key = "also" if name in p.value.also else "name"
                remedy = "People must be able to tell the two: call them outward and homeward, or first and second."
                draft.report.error((*p.path, key), what, remedy)
    for i, one in enumerate(points):
        for two in points[i + 1 :]:
            a, b = _plain(one.value.name), _plain(two.value.name)
            if a != b and fuzz.ratio(a, b) >= NEARLY_THE_SAME:
                what = f"'{two.value.name}' and '{one.value.name}' are easily mixed up"
                draft.report.warn((*two.path, "name"), what, "Choose names that differ more.")


def _reporters(draft: Draft, path: Path, points: Sequence[At[Point]]) -> None:
    anybody = False
    for p in points:
        for i, r in enumerate(p.value.reports):
            anybody = anybody or r.by is not ReporterKind.NOBODY
            if r.by is ReporterKind.CREW and p.value.access is None:
                what = f"crew are to report from '{p.value.name}', where they have no access"
                draft.report.warn(
                    (*p.path, "reports", i, "by"), what, "Add crew = { ... } or another reporter."
                )
    if points and not anybody:
        what = "nobody reports from any point, so silence would never raise an alarm"
        draft.report.warn(path, what, 'Say who reports: reports = [ { by = "volunteer", chance = 0.9 } ].')


def _ways_home(draft: Draft, event: Event) -> None:
    """Where no car of her crew may come, only the race takes away who retires: asked once, where nothing says how."""
    if event.transport or all(p.value.kind is not PartKind.CREW for p in draft.parts):
        return
    ends = {PointKind.START, PointKind.FINISH}
    far = (
        p
        for p in draft.points
        if not (p.value.crew_access or p.value.transport or p.value.kinds & ends or p.path in draft.astray)
    )
    first = next(far, None)
    if first is not None:
        what = (
            f"no crew car comes to '{first.value.name}': how a runner who retires there gets away is not said"
        )
        remedy = 'Ask the race, and add transport = "..." there, or under [event] for every such point.'
        draft.report.warn(first.path, what, remedy)


def _cut_offs(draft: Draft, points: Sequence[At[Point]], runners: Sequence[At[Runner]]) -> None:
    """Before the start, out of order, past the limit."""
    end = None if draft.limit is None else draft.starts + draft.limit
    starts = _starts(draft, runners)
    ordered = [(p, c) for p in points for c in sorted(p.value.cut_offs, key=_in_first)]
    for p, c in ordered:
        at = _cut_off_path(p.path, draft)
        if c.clock is not None and c.clock <= draft.starts:
            draft.report.error(
                at, f"the cut-off at '{p.value.name}' is before the start", "Check day and time."
            )
        if end is not None and c.at(draft.starts) > end:
            what = f"the cut-off at '{p.value.name}' is after the time limit"
            draft.report.warn(at, what, "Check it, and limit in [event].")
    for (p, c), (q, d) in pairwise(ordered):
        if any(d.at(s) < c.at(s) for s in starts):
            same = p is q
            what = (
                f"at '{q.value.name}' she must be out before she must be in"
                if same
                else f"the cut-off at '{q.value.name}' is earlier than the one before, at '{p.value.name}'"
            )
            draft.report.error(_cut_off_path(q.path, draft), what, "Check both, and the order of the points.")


def _starts(draft: Draft, runners: Sequence[At[Runner]]) -> frozenset[datetime]:
    return frozenset(r.value.start for r in runners) or frozenset({draft.starts})


def _cut_off_path(point: Path, draft: Draft) -> Path:
    many = (*point, "cut_offs")
    return many if many in draft.report.lines else (*point, "cut_off")


def _in_first(c: CutOff) -> bool:
    return c.edge is Edge.OUT


def _stages(draft: Draft, points: Sequence[At[Point]], starts: Collection[datetime]) -> None:
    """Stages follow each other in time, none ends where the course begins or ends, and cut-offs lie within them."""
    last = None
    for p in points:
        at = p.value.next_stage
        for c in p.value.cut_offs:
            _cut_off_in_stage(draft, p, c, last, starts)
        if at is None:
            continue
        path = (*p.path, "next_stage")
        if p.value.kinds & {PointKind.START, PointKind.FINISH}:
            what = "no stage ends at the start, and none follows the finish"
            draft.report.error(path, what, "Give next_stage to the points where a night lies between.")
        elif last is not None and at <= last:
            what = f"the stage after '{p.value.name}' starts before the one before it"
            draft.report.error(path, what, "Give each stage its own day, in running order.")
        last = at


def _cut_off_in_stage(
    draft: Draft, p: At[Point], c: CutOff, began: datetime | None, starts: Collection[datetime]
) -> None:
    """A cut-off that nobody can meet, or that leaves no time to start again. `began`: the stage that ends here."""
    ends = p.value.next_stage
    if began is not None and any(c.at(s) <= began for s in starts):
        what = f"the cut-off at '{p.value.name}' is before the stage that leads there starts"
        draft.report.error(
            _cut_off_path(p.path, draft), what, "Check day and time, and next_stage of the point before."
        )
    elif ends is not None and c.edge is Edge.IN and any(c.at(s) > ends for s in starts):
        what = f"the stage after '{p.value.name}' starts before the cut-off there"
        draft.report.error((*p.path, "next_stage"), what, "Check day and time, and those of the cut-off.")
    elif ends is not None and c.edge is Edge.OUT and any(c.at(s) < ends for s in starts):
        what = f"nobody is out of '{p.value.name}' by the cut-off there: the next stage starts after it"
        draft.report.error(
            _cut_off_path(p.path, draft), what, 'Write when = "in", or a time not before next_stage.'
        )


def _hours(draft: Draft, points: Sequence[At[Point]]) -> None:
    end = draft.starts + (draft.limit or timedelta(days=14))
    for p in points:
        access = p.value.access
        if access is None:
            continue
        if access.closes is not None and access.closes <= draft.starts:
            what = f"crew access at '{p.value.name}' closes before the start"
            draft.report.error((*p.path, "crew", "open_to"), what, 'Give the weekday, as in "Sun 14:00".')
        if access.opens is not None and access.opens >= end:
            what = f"crew access at '{p.value.name}' opens after the race is over"
            draft.report.error((*p.path, "crew", "open_from"), what, "Check day and time.")


def _runners(draft: Draft) -> None:
    people = {p.value.id for p in draft.people}
    if not draft.runners:
        draft.report.error((), "there is no runner", "Add [[runners]] with name and target.")
    for key in ("bib", "name"):
        seen: dict[str, str] = {}
        for r in draft.runners:
            value = getattr(r.value, key)
            if value and _plain(value) in seen:
                what = f"{key} '{value}' is also that of runner '{seen[_plain(value)]}'"
                draft.report.error((*r.path, key), what, "Reports could not be told apart: make them differ.")
            seen.setdefault(_plain(value), r.value.id)
    astray = draft.runners_astray()
    for r in draft.runners:
        _runner(draft, r, people, astray)


def _runner(draft: Draft, r: At[Runner], people: Collection[str], astray: Collection[str]) -> None:
    report = draft.report
    if r.value.person not in people and not (astray and r.value.person == r.value.id):
        else_say = f'Add [[people]] with id = "{r.value.person}".'
        what = f"there is no person '{r.value.person}' in [[people]]"
        report.error((*r.path, "person"), what, did_you_mean(r.value.person, people, else_say))
    if draft.starts_known and not timedelta(-1) <= r.value.start - draft.starts <= timedelta(days=14):
        what = f"{r.value.name} starts more than a day before the event, or weeks after"
        report.error((*r.path, "start"), what, "Check her start and that of the event.")
    ids = [p.value.id for p in draft.points_of(r.value.course)]
    _fuel(draft, r, ids)
    kinds = {p.value.id: p.value.kinds for p in draft.points_of(r.value.course)}
    first: set[str] = set()
    for i, bag in enumerate(r.value.drop_bags):
        where = (*r.path, "drop_bags", i, "point")
        draft.known(where, "point", bag.point, ids)
        if PointKind.DROP_BAG not in kinds.get(bag.point, {PointKind.DROP_BAG}):
            what = f"'{bag.point}' is no point for drop bags"
            remedy = (
                'Ask the race; then add "drop bag" to the kinds of that point, or send the bag elsewhere.'
            )
            report.warn(where, what, remedy)
        if bag.point in first:
            what = f"two of her bags wait at '{bag.point}'"
            report.warn(where, what, "Put it all into one: what she eats from there is labelled on each.")
        first.add(bag.point)


def _fuel(draft: Draft, r: At[Runner], ids: Sequence[str]) -> None:
    """Where each plan begins, each another; and no litres where millilitres are asked for."""
    begun: set[str] = set()
    for i, plan in enumerate(r.value.fuel):
        where = (*r.path, "fuel", i)
        draft.known((*where, "from"), "point", plan.from_point, ids)
        if plan.from_point in begun:
            what = f"two of her fuel plans begin at '{plan.from_point}'"
            draft.report.error(
                (*where, "from"), what, "Join them into one, or let one begin at a later point."
            )
        begun.add(plan.from_point)
        if plan.fluid_ml_per_h is not None and 0.0 < plan.fluid_ml_per_h < SIP_ML:
            what = f"{plan.fluid_ml_per_h:g} ml an hour is not even a sip"
            draft.report.warn(
                (*where, "fluid_ml_per_h"), what, "Write millilitres, not litres: fluid_ml_per_h = 500."
            )


SIP_ML = 20.0
"""Less fluid an hour is taken for litres (own choice)."""


def _keep_until(draft: Draft) -> None:
    if draft.keep_until is None or not draft.starts_known:
        return
    if draft.keep_until < draft.starts + (draft.limit or timedelta(0)):
        what = "personal data would be blanked before the race is over"
        draft.report.error(("event", "keep_until"), what, "Give a day after the race.")
