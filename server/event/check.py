"""Cross checks: what each table says may be right and the whole still wrong. `check` notes every mistake."""

from __future__ import annotations

import re
from collections.abc import Collection, Sequence
from datetime import datetime, timedelta
from itertools import pairwise

from rapidfuzz import fuzz

from server.event.check_crew import check_crew
from server.event.check_km import check_km
from server.event.context import At
from server.event.lines import Path
from server.event.model import CutOff, Eaten, Edge, Event, PartKind, Point, PointKind, ReporterKind, Runner
from server.event.parse_state import ParseState
from server.event.running import MOST_PER_H
from server.event.table_reader import did_you_mean
from server.sentences import say

NEARLY_THE_SAME = 93.0
"""Two names this alike (rapidfuzz ratio, of 100) are warned of: 'Moss Edge' and 'Moss Edges' (own choice)."""


def check(draft: ParseState, event: Event) -> None:
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


def paths(draft: ParseState) -> dict[tuple[str, str], Path]:
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


def _ids(draft: ParseState) -> None:
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
                what = say("wrong-id-used-twice-first-line", thing_id=thing_id, kind=kind, line=line)
                draft.report.error((*thing.path, "id"), what, say("do-give-its-own-id", thing_id=thing_id))
            seen.setdefault(thing_id, thing.path)


def _refs(draft: ParseState) -> None:
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


def _ends(draft: ParseState, path: Path, points: Sequence[At[Point]]) -> None:
    report = draft.report
    for kind, where, place in ((PointKind.START, 0, "first"), (PointKind.FINISH, -1, "last")):
        having = [p for p in points if kind in p.value.kinds]
        if not having and not any(p.path in draft.astray for p in points):
            at = points[where].path if points else path
            report.error(
                at, say("wrong-no-end", kind=kind.value), say("do-give-end", place=place, kind=kind.value)
            )
        place_taken = bool(points) and points[where] in having
        for extra in [p for p in having if p is not points[where]] if place_taken else having[1:]:
            what = say("wrong-second-end", name=extra.value.name, kind=kind.value)
            report.error(extra.path, what, say("do-place-passed-twice-two-points"))
        if len(having) == 1 and having[0] is not points[where]:
            what = say("wrong-end-out-of-place", kind=kind.value)
            report.error(having[0].path, what, say("do-list-points-running-order"))
    if len(points) < 2:
        report.error(
            points[0].path if points else path,
            say("wrong-course-needs-two-points-least"),
            say("do-add-points"),
        )


def _plain(name: str) -> str:
    return " ".join(name.casefold().removeprefix("the ").split())


def _names(draft: ParseState, points: Sequence[At[Point]]) -> None:
    """Names that the bot could not tell apart."""
    owner: dict[str, At[Point]] = {}
    for p in points:
        for name in (p.value.name, *p.value.also, p.value.id):
            other = owner.setdefault(_plain(name), p)
            if other is not p:
                what = say(
                    "wrong-also-name-line",
                    name=name,
                    name2=other.value.name,
                    line=draft.report.line(other.path),
                )
                key = "also" if name in p.value.also else "name"
                remedy = say("do-people-must-able-tell-two")
                draft.report.error((*p.path, key), what, remedy)
    for i, one in enumerate(points):
        for two in points[i + 1 :]:
            a, b = _plain(one.value.name), _plain(two.value.name)
            # 'Ford, lap 2' is called so to tell it from 'Ford, lap 1'.
            numbered = re.findall(r"\d+", a) != re.findall(r"\d+", b)
            if a != b and not numbered and fuzz.ratio(a, b) >= NEARLY_THE_SAME:
                what = say("wrong-easily-mixed-up", name=two.value.name, name2=one.value.name)
                draft.report.warn((*two.path, "name"), what, say("do-choose-names-differ-more"))


def _reporters(draft: ParseState, path: Path, points: Sequence[At[Point]]) -> None:
    anybody = False
    for p in points:
        for i, r in enumerate(p.value.reports):
            anybody = anybody or r.by is not ReporterKind.NOBODY
            if r.by is ReporterKind.CREW and p.value.access is None:
                what = say("wrong-crew-report-from-where-they", name=p.value.name)
                draft.report.warn((*p.path, "reports", i, "by"), what, say("do-add-crew-another-reporter"))
    if points and not anybody:
        what = say("wrong-nobody-reports-from-any-point")
        draft.report.warn(path, what, say("do-say-reports-reports-volunteer-chance"))


def _ways_home(draft: ParseState, event: Event) -> None:
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
        what = say("wrong-no-crew-car-comes-how", name=first.value.name)
        remedy = say("do-ask-race-add-transport-under")
        draft.report.warn(first.path, what, remedy)


def _cut_offs(draft: ParseState, points: Sequence[At[Point]], runners: Sequence[At[Runner]]) -> None:
    """Before the start, out of order, past the limit."""
    end = None if draft.limit is None else draft.starts + draft.limit
    starts = _starts(draft, runners)
    ordered = [(p, c) for p in points for c in sorted(p.value.cut_offs, key=_in_first)]
    for p, c in ordered:
        at = _cut_off_path(p.path, draft)
        if c.clock is not None and c.clock <= draft.starts:
            draft.report.error(
                at, say("wrong-cut-off-before-start", name=p.value.name), say("do-check-day-time")
            )
        if end is not None and c.at(draft.starts) > end:
            what = say("wrong-cut-off-after-time-limit", name=p.value.name)
            draft.report.warn(at, what, say("do-check-limit-event"))
    for (p, c), (q, d) in pairwise(ordered):
        if any(d.at(s) < c.at(s) for s in starts):
            same = p is q
            what = (
                say("wrong-must-out-before-must", name=q.value.name)
                if same
                else say("wrong-cut-off-earlier-before", name=q.value.name, name2=p.value.name)
            )
            draft.report.error(_cut_off_path(q.path, draft), what, say("do-check-both-order-points"))


def _starts(draft: ParseState, runners: Sequence[At[Runner]]) -> frozenset[datetime]:
    return frozenset(r.value.start for r in runners) or frozenset({draft.starts})


def _cut_off_path(point: Path, draft: ParseState) -> Path:
    many = (*point, "cut_offs")
    return many if many in draft.report.lines else (*point, "cut_off")


def _in_first(c: CutOff) -> bool:
    return c.edge is Edge.OUT


def _stages(draft: ParseState, points: Sequence[At[Point]], starts: Collection[datetime]) -> None:
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
            what = say("wrong-no-stage-ends-start-none")
            draft.report.error(path, what, say("do-give-next-stage-points-where"))
        elif last is not None and at <= last:
            what = say("wrong-stage-after-starts-before-before", name=p.value.name)
            draft.report.error(path, what, say("do-give-each-stage-own-day"))
        last = at


def _cut_off_in_stage(
    draft: ParseState, p: At[Point], c: CutOff, began: datetime | None, starts: Collection[datetime]
) -> None:
    """A cut-off that nobody can meet, or that leaves no time to start again. `began`: the stage that ends here."""
    ends = p.value.next_stage
    if began is not None and any(c.at(s) <= began for s in starts):
        what = say("wrong-cut-off-before-stage-leads", name=p.value.name)
        draft.report.error(_cut_off_path(p.path, draft), what, say("do-check-day-time-next-stage"))
    elif ends is not None and c.edge is Edge.IN and any(c.at(s) > ends for s in starts):
        what = say("wrong-stage-after-starts-before-cut", name=p.value.name)
        draft.report.error((*p.path, "next_stage"), what, say("do-check-day-time-those-cut"))
    elif ends is not None and c.edge is Edge.OUT and any(c.at(s) < ends for s in starts):
        what = say("wrong-nobody-out-cut-off-next", name=p.value.name)
        draft.report.error(_cut_off_path(p.path, draft), what, say("do-write-when-time-not-before"))


def _hours(draft: ParseState, points: Sequence[At[Point]]) -> None:
    end = draft.starts + (draft.limit or timedelta(days=14))
    for p in points:
        access = p.value.access
        if access is None:
            continue
        if access.closes is not None and access.closes <= draft.starts:
            what = say("wrong-crew-access-closes-before-start", name=p.value.name)
            draft.report.error((*p.path, "crew", "open_to"), what, say("do-give-weekday-sun-14-00"))
        if access.opens is not None and access.opens >= end:
            what = say("wrong-crew-access-opens-after-race", name=p.value.name)
            draft.report.error((*p.path, "crew", "open_from"), what, say("do-check-day-time"))


def _runners(draft: ParseState) -> None:
    people = {p.value.id for p in draft.people}
    if not draft.runners:
        draft.report.error((), say("wrong-no-runner"), say("do-add-runners-name-target"))
    for key in ("bib", "name"):
        seen: dict[str, str] = {}
        for r in draft.runners:
            value = getattr(r.value, key)
            if value and _plain(value) in seen:
                what = say("wrong-also-runner", key=key, value=value, seen=seen[_plain(value)])
                draft.report.error((*r.path, key), what, say("do-reports-could-not-told-apart"))
            seen.setdefault(_plain(value), r.value.id)
    astray = draft.runners_astray()
    for r in draft.runners:
        _runner(draft, r, people, astray)


def _runner(draft: ParseState, r: At[Runner], people: Collection[str], astray: Collection[str]) -> None:
    report = draft.report
    if r.value.person not in people and not (astray and r.value.person == r.value.id):
        else_say = say("do-add-people-id", person=r.value.person)
        what = say("wrong-no-person-people", person=r.value.person)
        report.error((*r.path, "person"), what, did_you_mean(r.value.person, people, else_say))
    if draft.starts_known and not timedelta(-1) <= r.value.start - draft.starts <= timedelta(days=14):
        what = say("wrong-starts-more-day-before-event", name=r.value.name)
        report.error((*r.path, "start"), what, say("do-check-start-event"))
    ids = [p.value.id for p in draft.points_of(r.value.course)]
    _fuel(draft, r, ids)
    kinds = {p.value.id: p.value.kinds for p in draft.points_of(r.value.course)}
    first: set[str] = set()
    for i, bag in enumerate(r.value.drop_bags):
        where = (*r.path, "drop_bags", i, "point")
        draft.known(where, "point", bag.point, ids)
        if PointKind.DROP_BAG not in kinds.get(bag.point, {PointKind.DROP_BAG}):
            what = say("wrong-no-point-drop-bags", point=bag.point)
            remedy = say("do-ask-race-then-add-drop")
            report.warn(where, what, remedy)
        if bag.point in first:
            what = say("wrong-two-bags-wait-at", point=bag.point)
            report.warn(where, what, say("do-put-all-into-one-bag"))
        first.add(bag.point)


def _fuel(draft: ParseState, r: At[Runner], ids: Sequence[str]) -> None:
    """Where each plan begins, each another; and no litres where millilitres are asked for."""
    begun: set[str] = set()
    for i, plan in enumerate(r.value.fuel):
        where = (*r.path, "fuel", i)
        draft.known((*where, "from"), "point", plan.from_point, ids)
        if plan.from_point in begun:
            what = say("wrong-two-fuel-plans-begin", from_point=plan.from_point)
            draft.report.error((*where, "from"), what, say("do-join-them-into-let-begin"))
        begun.add(plan.from_point)
        if plan.fluid_ml_per_h is not None and 0.0 < plan.fluid_ml_per_h < SIP_ML:
            what = say("wrong-ml-hour-not-even-sip", fluid_ml_per_h=f"{plan.fluid_ml_per_h:g}")
            draft.report.warn((*where, "fluid_ml_per_h"), what, say("do-write-millilitres-not-litres-fluid"))
        for name, most in MOST_PER_H.items():
            made = plan.made(name)
            if getattr(plan, name) is None and made is not None and made > most:
                what = say("wrong-rate-outside", name=name, value=f"{made:g}", low=0, high=f"{most:g}")
                draft.report.error((*where, "eats"), what, say("do-correct-per-h-or-what-one-holds"))
        _eaten(draft, where, plan.eats)


def _eaten(draft: ParseState, where: Path, eats: Sequence[Eaten]) -> None:
    """Each thing once, and no grams where milligrams are asked for."""
    seen: set[str] = set()
    for k, e in enumerate(eats):
        if _plain(e.name) in seen:
            what = say("wrong-eaten-twice", name=e.name)
            draft.report.warn((*where, "eats", k, "name"), what, say("do-write-it-once-added-up"))
        seen.add(_plain(e.name))
        for key in ("sodium_mg", "caffeine_mg"):
            amount = getattr(e, key)
            if amount is not None and 0.0 < amount < HARDLY_MG:
                what = say("wrong-mg-hardly-any", mg=f"{amount:g}")
                draft.report.warn((*where, "eats", k, key), what, say("do-write-milligrams", key=key))


HARDLY_MG = 2.0
"""Less of salt or caffeine in one is taken for grams (own choice)."""


SIP_ML = 20.0
"""Less fluid an hour is taken for litres (own choice)."""


def _keep_until(draft: ParseState) -> None:
    if draft.keep_until is None or not draft.starts_known:
        return
    if draft.keep_until < draft.starts + (draft.limit or timedelta(0)):
        what = say("wrong-personal-data-would-blanked-before")
        draft.report.error(("event", "keep_until"), what, say("do-give-day-after-race"))
