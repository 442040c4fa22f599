"""What crew must know of a meeting beside its times: the cut-off, how long she stops, the walk in, sunset and torch."""

from __future__ import annotations

from collections.abc import Iterator
from datetime import datetime

from server.conversation.telling.say import Say
from server.conversation.telling.times import clock, planned
from server.event.model import Goal
from server.paper.before import BeforeStart
from server.plan.cutoffs import due_times, one_latest
from server.plan.light import SunEvent
from server.plan.paces import LIMIT


def meeting_facts(
    before: BeforeStart, runner: str, point: str, say: Say, *, crew: bool = True
) -> tuple[str, ...]:
    """A fact each; with `crew` also what only those on wheels need."""
    found = (*_limits(before, runner, point, say), *_stop(before, runner, point, say, crew=crew))
    return (*found, *_dark(before, runner, point, say, _ahead(before, runner, point, crew=crew)))


def _limits(before: BeforeStart, runner: str, point: str, say: Say) -> Iterator[str]:
    course = before.event.course_of(runner)
    for due in due_times(before.event, runner):
        if due.point == point:
            yield say.s("paper-fact-cut-off", edge=say.s(f"edge-{due.edge.value}"), when=_clock(say, due.at))
    for c in one_latest(before.cut_offs(runner)) if course.point(point).crew_access else ():
        for out in c.latest_out:
            if out.point == point and out.at is not None:
                when, place = _clock(say, out.at), course.point(c.due.point).name
                yield say.s("paper-fact-latest", when=when, place=place)


def _stop(before: BeforeStart, runner: str, point: str, say: Say, *, crew: bool) -> Iterator[str]:
    row, access = before.timetable(runner).row(point), before.event.course_of(runner).point(point).access
    if row.stop:
        yield say.s("paper-fact-stop", length=say.length(row.stop))
    if crew and access is not None and access.walk_in:
        yield say.s("paper-fact-walk", length=say.length(access.walk_in))


def _dark(before: BeforeStart, runner: str, point: str, say: Say, ahead: str | None) -> Iterator[str]:
    """Sunset or sunrise on the way from here to `ahead`, and from when she needs a torch by then, by each pace."""
    table = before.timetable(runner)
    if ahead is None:
        return
    here, there = table.row(point), table.row(ahead)
    for moment in table.light:
        if moment.event in (SunEvent.SUNSET, SunEvent.SUNRISE) and here.km <= moment.km < there.km:
            yield say.s(f"plan-light-{moment.event.value}", when=_clock(say, moment.at), km=say.km(moment.km))
    by_words: dict[str, list[str]] = {}
    for name, parts in before.dark(runner):
        found = next((d for d in parts if d.to_km > here.km and d.from_km < there.km), None)
        if found is not None:
            when = "" if found.from_km <= here.km else _clock(say, found.from_at)
            by_words.setdefault(when, []).append(say.s("paper-goal-limit") if name == LIMIT else name)
    every = len(before.dark(runner))
    told = [_by_pace(say, when, goals, everywhere=len(goals) == every) for when, goals in by_words.items()]
    if told:
        place = before.event.course_of(runner).point(ahead).name
        yield say.s("paper-fact-torch", place=place, goals=say.all(told))


def _by_pace(say: Say, when: str, goals: list[str], *, everywhere: bool) -> str:
    if when:
        return say.s("paper-dark-from", goals=say.all(goals), when=when)
    return say.s("paper-dark-always" if everywhere else "paper-dark-already", goals=say.all(goals))


def _ahead(before: BeforeStart, runner: str, point: str, *, crew: bool) -> str | None:
    """Where she can next be given a torch: at a meeting or from a bag of hers, else at the finish; None from there. For
    herself (not `crew`) where nobody gives her one here, the next point."""
    met = {m.point for m in before.event.meetings if m.runner == runner}
    met |= {b.point for b in before.event.runner(runner).drop_bags}
    order = [r.point for r in before.timetable(runner).rows]
    later = order[order.index(point) + 1 :]
    if not crew and point not in met:
        return later[0] if later else None
    return next((p for p in later if p in met), later[-1] if later else None)


def arrives(before: BeforeStart, runner: str, point: str, say: Say) -> str:
    """When she is planned in at a point, by goal B."""
    table = before.timetable(runner)
    return _clock(say, planned(table.start + table.row(point).arrive[Goal.B], Goal.B))


def _clock(say: Say, at: datetime) -> str:
    """The point's clock alone: beside her times on both clocks a second one would bury the fact."""
    return clock(at, say.reader, say.now, day=True)
