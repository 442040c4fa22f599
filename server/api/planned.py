"""What the plan says beside the forecast, as values: timetable, goals' change-over, light, cut-offs, cards. No I/O."""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from datetime import datetime, timedelta

from server.api.answers import freshness, point_name
from server.api.snapshot import Picture
from server.api.who_may import May
from server.conversation.telling.answer import (
    CardsAnswer,
    ChangeAt,
    CutOffAnswer,
    CutOffsAnswer,
    EarlierOut,
    FactorMinutes,
    LightAt,
    PlanAnswer,
    PlanRow,
    StageAnswer,
    TorchPart,
)
from server.conversation.telling.cards import built_in_cards, red_flag_line
from server.event.model import Edge, Event, Goal, Point
from server.facts.cut_offs import cut_offs_at
from server.forecast.outlook import View
from server.paper.before import changes_of
from server.plan.cards import cards_of
from server.plan.cutoffs import DueTime, cut_off_odds
from server.plan.delayed import started_at
from server.plan.stage_odds import ends_of_stages, stage_odds
from server.plan.timetable import Row
from server.watch.meetings import race_ends
from server.watch.odds import latest_out


def plan(picture: Picture, runner: str, share: May) -> PlanAnswer:
    """GET …/plan: times in and out of the three goals, and what became of them."""
    event, state, timetable = picture.event, picture.state.runner(runner), picture.timetable(runner)
    changes = _changes(picture, runner) if share is May.YES else {}
    rows = tuple(_plan_row(picture, runner, row, share, changes.get(row.point, ())) for row in timetable.rows)
    ahead = (r.point for r in timetable.rows if r.point not in state.reached)
    full = share is May.YES
    # A start that was put off moves her into another light.
    lit = started_at(timetable, event.course_of(runner), picture.course(runner), state.start)
    return PlanAnswer(
        runner=runner,
        runner_name=event.runner(runner).name,
        rows=rows,
        source=timetable.source if full else (),
        notes=timetable.notes if full else (),
        next_point=next(ahead, None),
        light=tuple(LightAt(m.event.value, m.at, m.km) for m in lit.light),
        torch=tuple(TorchPart(d.from_at, d.to_at, d.from_km, d.to_km) for d in lit.dark),
        odds_spread=timetable.spread if full else None,
        stages=stages(picture, runner) if full else (),
    )


def stages(picture: Picture, runner: str) -> tuple[StageAnswer, ...]:
    """The ends of her stages still to come, each with the odds of starting the next one; nothing once her race is over."""
    view, state = picture.views.get(runner), picture.state.runner(runner)
    if view is None or state.going.race_over:
        return ()
    course = picture.event.course_of(runner)
    return tuple(
        StageAnswer(s.point, course.point(s.point).name, s.starts_at, s.by, s.odds, s.low, s.window)
        for s in stage_odds(view, course, picture.state, state.start)
    )


def _changes(picture: Picture, runner: str) -> Mapping[str, tuple[ChangeAt, ...]]:
    """Until when out of each point to come each goal still holds; nothing once her race is over."""
    view = picture.views.get(runner)
    state = picture.state.runner(runner)
    if view is None or state.going.race_over:
        return {}
    found: dict[str, tuple[ChangeAt, ...]] = {}
    moved = picture.state.cut_offs_moved
    for c in changes_of(picture.event, view, picture.timetable(runner), state.start, moved):
        if c.at is not None:
            found[c.point] = (*found.get(c.point, ()), ChangeAt(c.goal.value, c.at))
    return found


def _plan_row(picture: Picture, runner: str, row: Row, share: May, changes: tuple[ChangeAt, ...]) -> PlanRow:
    state = picture.state.runner(runner)
    point = picture.event.course_of(runner).point(row.point)
    times = state.at_point(row.point)
    return PlanRow(
        point=row.point,
        name=point.name,
        km=row.km,
        a_in=state.start + row.arrive[Goal.A],
        b_in=state.start + row.arrive[Goal.B],
        c_in=state.start + row.arrive[Goal.C],
        b_out=state.start + row.leave[Goal.B],
        stop=row.stop if share is May.YES else timedelta(0),
        arrived=times.arrived.at if times and times.arrived else None,
        crew_access=point.crew_access,
        changes=changes,
        factors=tuple(FactorMinutes(n, t.total_seconds()) for n, t in row.factors)
        if share is May.YES
        else (),
    )


def cut_offs(picture: Picture, runner: str) -> CutOffsAnswer:
    """GET …/cutoffs: those to come, with odds that include stopping."""
    event = picture.event
    view = picture.views.get(runner)
    going = not picture.state.runner(runner).going.race_over
    earlier = _earlier(picture, runner, view) if view is not None and going else {}
    coming = tuple(
        answer
        for p in event.course_of(runner).points
        if view is not None and going and p.id in view.points
        for answer in _cut_offs_at(picture, runner, p, view, earlier)
    )
    fresh, name = freshness(picture, runner), event.runner(runner).name
    return CutOffsAnswer(runner, name, coming, fresh, stages=stages(picture, runner))


def _cut_offs_at(
    picture: Picture,
    runner: str,
    point: Point,
    view: View,
    earlier: Mapping[tuple[str, Edge], tuple[EarlierOut, ...]],
) -> Iterable[CutOffAnswer]:
    for edge, at in _dues(picture, runner, point):
        odds = view.p_makes(point.id, at, edge is Edge.OUT)
        start = picture.state.runner(runner).start
        before, out_by = latest_out(view, point, at, start) if edge is Edge.IN else (None, None)
        yield CutOffAnswer(
            point.id,
            point.name,
            edge.value,
            at,
            odds,
            latest_out_name=point_name(picture.event, runner, before),
            latest_out=out_by,
            window=view.window(point.id),
            earlier=earlier.get((point.id, edge), ()),
            going=view.p_gets_there(point.id),
        )


def _dues(picture: Picture, runner: str, point: Point) -> Iterable[tuple[Edge, datetime]]:
    """The cut-offs of a point as they stand, at the finish the race's limit too, as on paper."""
    state = picture.state.runner(runner)
    due = dict(cut_offs_at(picture.state, point, state))
    ends = race_ends(picture.event, state)
    moved = any(p == point.id and e == Edge.IN.value for p, e, _ in picture.state.cut_offs_moved)
    if ends is not None and not moved and point == picture.event.course_of(runner).points[-1]:
        due[Edge.IN] = min(ends, due.get(Edge.IN, ends))
    return due.items()


def _earlier(picture: Picture, runner: str, view: View) -> Mapping[tuple[str, Edge], tuple[EarlierOut, ...]]:
    """For each cut-off the latest times out of the points before it for 9 in 10, if she goes on."""
    event, state = picture.event, picture.state.runner(runner)
    due = [
        DueTime(p.id, edge, at)
        for p in event.course_of(runner).points
        for edge, at in _dues(picture, runner, p)
    ]
    return {
        (c.due.point, c.due.edge): tuple(
            EarlierOut(o.point, point_name(event, runner, o.point), o.at) for o in c.latest_out
        )
        for c in cut_off_odds(view, due, state.start, stage_ends=ends_of_stages(event, runner))
    }


def cards(event: Event, share: May, language: str = "") -> CardsAnswer:
    """GET …/cards: the prepared answers to trouble: the event's own, then the built-in ones it does not replace."""
    numbers = (event.race_control.phone, event.emergency_number, language)
    red_line = red_flag_line(*numbers)
    return CardsAnswer(cards_of(event, built_in_cards(*numbers)) if share is May.YES else (), red_line)
