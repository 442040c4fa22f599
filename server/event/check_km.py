"""Checks that need to know where each point lies: order, stretches, pacers.

Made twice: when the file is read, for points given by km, and when the rest have been placed on the course.
"""

from __future__ import annotations

from collections.abc import Mapping

from server.event.lines import Path
from server.event.model import CourseDef, Event, Part, PartKind
from server.event.table_reader import Problems
from server.sentences import say

Paths = Mapping[tuple[str, str], Path]


def check_km(event: Event, report: Problems, paths: Paths) -> None:
    """Note what is wrong between points; those without a km are passed over."""
    for course in event.courses:
        _order(course, report, paths)
        _stretches(course, report)
    for part in event.parts:
        if part.kind is PartKind.PACER:
            _pacer(event, part, report, paths)
    _joining(event, report, paths)
    _weather(event, report)


def _order(course: CourseDef, report: Problems, paths: Paths) -> None:
    last_km, last_name = -1.0, ""
    for p in course.points:
        if p.km is None:
            continue
        if p.km <= last_km:
            what = say(
                "wrong-km-stands-after-km",
                name=p.name,
                km=f"{p.km:g}",
                last_name=last_name,
                last_km=f"{last_km:g}",
            )
            path = paths.get(("points", p.id), ("points", p.id))
            report.error((*path, "km"), what, say("do-list-points-running-order-each"))
        last_km, last_name = p.km, p.name


def _stretches(course: CourseDef, report: Problems) -> None:
    """A little beyond the finish is rounding."""
    finish = course.points[-1].km if course.points else None
    for i, s in enumerate(course.stretches):
        if finish is not None and s.to_km > finish * 1.01 + 0.5:
            what = say("wrong-stretch-ends-km-finish-km", to_km=f"{s.to_km:g}", finish_km=f"{finish:g}")
            report.error(("stretches", i, "to_km"), what, say("do-check-km"))


def _weather(event: Event, report: Problems) -> None:
    for i, w in enumerate(event.weather):
        ends = [c.points[-1].km for c in event.courses if w.course in (None, c.id) and c.points]
        finish = max((km for km in ends if km is not None), default=None)
        if finish is None:
            continue
        for key, km in (("from_km", w.from_km), ("to_km", w.to_km)):
            if km is not None and km > finish * 1.01 + 0.5:
                what = say(
                    "wrong-lies-beyond-course-finish-km", key=key, km=f"{km:g}", finish_km=f"{finish:g}"
                )
                report.error(("weather", i, key), what, say("do-check-km"))


def _km(event: Event, point: str | None, runner: str | None) -> float | None:
    for course in event.courses:
        if runner is not None and all(r.course != course.id for r in event.runners if r.id == runner):
            continue
        for p in course.points:
            if p.id == point:
                return p.km
    return None


def _pacer(event: Event, part: Part, report: Problems, paths: Paths) -> None:
    path = paths.get(("people", part.person), ("people", part.person))
    first, last = _km(event, part.pace_from, part.runner), _km(event, part.pace_to, part.runner)
    allowed = event.rules.pacer_from_km
    if first is not None and allowed is not None and first < allowed:
        what = say(
            "wrong-paces-from-km-but-rules",
            name=event.person(part.person).name,
            from_km=f"{first:g}",
            allowed_km=f"{allowed:g}",
        )
        report.error((*path, "parts"), what, say("do-choose-later-point-pace-from"))
    if first is not None and last is not None and last <= first:
        report.error(
            (*path, "parts"), say("wrong-pace-comes-before-pace-from"), say("do-exchange-two-correct")
        )


def _joining(event: Event, report: Problems, paths: Paths) -> None:
    """Pacers that join and leave at meetings, in running order."""
    allowed = event.rules.pacer_from_km
    for runner in event.runners:
        course = next((c for c in event.courses if c.id == runner.course), None)
        order = {p.id: i for i, p in enumerate(course.points)} if course is not None else {}
        kms = {p.id: p.km for p in course.points} if course is not None else {}
        mine = [m for m in event.meetings_of(runner.id) if m.point in order]
        with_her: set[str] = set()
        for m in sorted(mine, key=lambda m: order[m.point]):
            path = paths.get(("meetings", m.id), ("meetings", m.id))
            km = kms[m.point]
            with_her.discard(m.pacer_leaves or "")
            if m.pacer_joins is None:
                continue
            with_her.add(m.pacer_joins)
            if km is not None and allowed is not None and km < allowed:
                what = say("wrong-pacer-joins-km-but-rules", km=f"{km:g}", allowed_km=f"{allowed:g}")
                report.error((*path, "pacer_joins"), what, say("do-let-pacer-join-later-meeting"))
            if len(with_her) > event.rules.pacers_at_once:
                what = say(
                    "wrong-pacers-would-rules-allow",
                    count=len(with_her),
                    pacers_at_once=event.rules.pacers_at_once,
                )
                report.error((*path, "pacer_joins"), what, say("do-say-where-before-leaves-pacer"))
