"""From the picture of an event to what the server answers: one function a question, no I/O, no decisions.

The shapes are those of `server.conversation.telling.answer`. `share` is what the asker's part allows: May.SOME leaves
out what `who_may.SOME_MEANS` says.
"""

from __future__ import annotations

import math
from dataclasses import replace
from datetime import datetime, timedelta
from typing import Any

from server.api.alarms import open_about
from server.api.envelope import ApiError
from server.api.snapshot import Picture, Supposed
from server.api.who_may import May
from server.conversation.telling.answer import (
    Counts,
    DayWord,
    FactsAnswer,
    ForecastAnswer,
    Freshness,
    LastFact,
    LimitMissed,
    LogAnswer,
    LogRow,
    PointAnswer,
    SaidOver,
    StopFact,
    TrackerWord,
    WrittenOfHer,
)
from server.conversation.telling.answers import LIKELY_GONE_ON
from server.event.model import CourseDef, Event, Goal, Point
from server.facts.cut_offs import Past
from server.facts.hearsay import is_hearsay, said_over
from server.facts.state import Going, Interval, LastKnown, Retirement, RunnerState
from server.facts.stop_log import in_short
from server.facts.trackers import disagree, fixes_of, quiet_since
from server.forecast.channel_outages import deaf_now, nobody_since
from server.forecast.outlook import View, Whereabouts
from server.plan.timetable import Row

UNDO_WITHIN = timedelta(minutes=10)


def point_of(event: Event, runner: str, point: str | None) -> Point:
    """The point of that id on her course; ApiError 'not_found' naming those there are."""
    course = event.course_of(runner)
    for p in course.points:
        if p.id == point:
            return p
    known = ", ".join(p.id for p in course.points)
    raise ApiError("not_found", f"the course has no point '{point}'", "point", f"Use one of: {known}.")


def person_name(event: Event, person: str) -> str:
    """The name of a person, or the id itself for a sender that is no person (a mat, a tracker)."""
    return next((p.name for p in event.people if p.id == person), person)


def known(event: Event, runner: str, last: LastKnown | None, share: May) -> LastFact | None:
    """The last known point with names; coordinates only for those who may see all."""
    if last is None:
        return None
    name = next((p.name for p in event.course_of(runner).points if p.id == last.point), "")
    fix = last.fix if share is May.YES else None
    km = last.km if share is May.YES or last.point else None
    return LastFact(last.kind, last.at, person_name(event, last.by), last.point, name, km, fix)


def freshness(picture: Picture, runner: str, share: May = May.YES) -> Freshness:
    """How good the ground under an answer is; a page has many answers on the same."""
    return picture.once(("fresh", runner, share), lambda: _freshness(picture, runner, share))


def _freshness(picture: Picture, runner: str, share: May) -> Freshness:
    event, state = picture.event, picture.state.runner(runner)
    late = picture.late_time(runner)
    sharpened = point_name(event, runner, late[0]) if late else ""
    open_hold = next((h for h in (*state.held, *picture.state.held) if holds(h, picture.now)), None)
    ended = picture.state.said_of("ended")
    blind = nobody_since(picture.situation.downs)
    asked_by = None if state.going.race_over else picture.late_time(runner, as_asked=True)
    return Freshness(
        last=known(event, runner, state.last_known, share),
        going=state.going.value,
        doubted=len(state.unconfirmed),
        sharpened_by=sharpened,
        held=open_hold is not None,
        held_until=open_hold.end if open_hold else None,
        blind_since=blind,
        blind=deaf_now(picture.situation.downs),
        ended_at=picture.state.ended_early.at if picture.state.ended_early else None,
        ended_from=point_name(event, runner, ended.point) if ended else "",
        started=state.start,
        past_cut_off=_past_cut_off(picture, runner),
        said_over=_said_over(event, state),
        tracker=_tracker(event, state, picture.now) if share is May.YES else None,
        day=_day(picture, state) if share is May.YES else None,
        late_at=point_name(event, runner, asked_by[0]) if asked_by else "",
        late_by=max(asked_by[1], state.start) if asked_by else None,
        **_retired(event, runner, state.retirement),
    )


def _tracker(event: Event, state: RunnerState, now: datetime) -> TrackerWord | None:
    fixes = fixes_of(state)
    if not fixes or state.going.race_over:
        return None
    quiet, other = quiet_since(state, now) is not None, disagree(event.course_of(state.runner), state)
    if other is None:
        return TrackerWord(fixes[-1].km, fixes[-1].stamp.at, quiet) if quiet else None
    name, by = point_name(event, state.runner, other.point), person_name(event, other.seen.by)
    return TrackerWord(other.km, other.at, quiet, name, by, other.seen.at)


def _day(picture: Picture, state: RunnerState) -> DayWord | None:
    outlook = picture.situation.outlooks.get(state.runner)
    day = outlook.day if outlook else None
    if day is None or not state.going.on_course:
        return None
    reached = max((day.ids.index(p) for p in state.reached if p in day.ids), default=-1)
    if reached + 1 >= len(day.ids):
        return None
    name = point_name(picture.event, state.runner, day.ids[reached + 1])
    return DayWord(day.others, round(100 * math.expm1(day.logs[reached + 1])), name)


def _said_over(event: Event, state: RunnerState) -> SaidOver | None:
    found = said_over(state)
    if not found:
        return None
    e = found[-1]
    place = point_name(event, state.runner, e.point) or e.point or ""
    return SaidOver(e.seen_at, person_name(event, e.by), place, e.words, is_hearsay(e))


def _past_cut_off(picture: Picture, runner: str) -> LimitMissed | None:
    past = picture.past_cut_off(runner)
    if past is None:
        return None
    name = point_name(picture.event, runner, past.point)
    seen = point_name(picture.event, runner, past.seen_at) if past.seen_at else ""
    return LimitMissed(name, past.edge.value, past.cut_off, past.how.value, past.at, seen)


def _retired(event: Event, runner: str, over: Retirement | None) -> dict[str, Any]:
    """When, where and how her race ended before the finish."""
    if over is None:
        return {}
    place = point_name(event, runner, over.point) or over.point or ""
    return {"retired_at": over.stamp.at, "retired_place": place, "retired_how": over.how.value}


def holds(interval: Interval, now: datetime) -> bool:
    """Whether runners are held at `now` by that interval."""
    return interval.start <= now and (interval.end is None or now < interval.end)


def point_name(event: Event, runner: str, point: str | None) -> str:
    """The name of a point of her course; empty for none."""
    return next((p.name for p in event.course_of(runner).points if p.id == point), "")


def point_answers(
    picture: Picture, runner: str, share: May, supposed: Supposed | None = None
) -> tuple[PointAnswer, ...]:
    """Every point in running order, reached or to come; a smaller share sees the next one and the finish."""
    if supposed:
        answers = _point_answers(picture, runner, supposed.view)
    else:
        view = picture.views.get(runner)
        answers = picture.once(("points", runner), lambda: _point_answers(picture, runner, view))
    if share is May.YES:
        return answers
    ahead = [a for a in answers if a.window is not None]
    return tuple(a for a in answers if a in ahead[:1] or a.finish)


def _point_answers(picture: Picture, runner: str, view: View | None) -> tuple[PointAnswer, ...]:
    points = picture.event.course_of(runner).points
    return tuple(_point_answer(picture, runner, p, view) for p in points)


def next_point(picture: Picture, runner: str) -> PointAnswer | None:
    """The next point she is expected at."""
    view = picture.views.get(runner)
    found = (_point_answer(picture, runner, p, view) for p in picture.event.course_of(runner).points)
    return next((a for a in found if a.window is not None), None)


def _point_answer(picture: Picture, runner: str, point: Point, view: View | None) -> PointAnswer:
    state = picture.state.runner(runner)
    times = state.at_point(point.id)
    row = _row(picture, runner, point.id)
    ahead = view is not None and point.id in view.points and not state.going.race_over
    ahead = ahead and not picture.goes_no_further(runner, point.id)
    window = view.window(point.id) if view is not None and ahead else None
    return PointAnswer(
        point=point.id,
        name=point.name,
        km=point.km or 0.0,
        window=window,
        p_gets_there=view.p_gets_there(point.id) if view is not None and ahead else None,
        planned_in=state.start + row.arrive[Goal.B] if row else None,
        planned_out=state.start + row.leave[Goal.B] if row else None,
        planned_stop=row.stop if row else None,
        arrived=times.arrived.at if times and times.arrived else None,
        left=times.left.at if times and times.left else None,
        through=times.through if times else False,
        dark=picture.dark(runner, point.id, window.likely) if window else None,
        crew_access=point.crew_access,
        finish=point.finish,
    )


def _row(picture: Picture, runner: str, point: str) -> Row | None:
    timetable = picture.situation.timetables.get(runner)
    return next((r for r in timetable.rows if r.point == point), None) if timetable else None


def forecast(
    picture: Picture,
    runner: str,
    share: May,
    point: str | None = None,
    supposed: Supposed | None = None,
) -> ForecastAnswer:
    """GET …/forecast: every point or the one asked for, and where she may be."""
    points = point_answers(picture, runner, share, supposed if share is May.YES else None)
    if point is not None:
        wanted = point_of(picture.event, runner, point)
        points = tuple(p for p in points if p.point == wanted.id)
    gone_on = picture.p_gone_on(runner)
    where = _whereabouts(picture, runner, gone_on) if share is May.YES else None
    return ForecastAnswer(
        runner=runner,
        runner_name=picture.event.runner(runner).name,
        points=points,
        fresh=freshness(picture, runner, share),
        where=where,
        where_fix=_place(picture, runner, where.likely_km) if where else None,
        where_between=_between(picture.event.course_of(runner), where.likely_km) if where else None,
        p_gone_on=gone_on,
        supposed_factor=supposed.factor if supposed else None,
        supposed_leaving=supposed.leaving if supposed else None,
    )


def whereabouts(picture: Picture, runner: str, share: May) -> ForecastAnswer:
    """GET …/where: the last known point as fact and, apart from it, the estimate."""
    whole = forecast(picture, runner, share)
    ahead = tuple(p for p in whole.points if p.window is not None)[:1]
    return replace(whole, points=ahead)


def _whereabouts(picture: Picture, runner: str, gone_on: float) -> Whereabouts | None:
    going = picture.state.runner(runner).going
    view = picture.views.get(runner)
    away = going in (Going.MOVING, Going.RESTING) or gone_on >= LIKELY_GONE_ON
    past = picture.past_cut_off(runner)
    if past is not None and past.seen_at is not None and past.how is not Past.NO_OUT:
        return None  # nobody knows whether she goes on from there, and no forecast says it
    return view.where() if view is not None and away else None


def _place(picture: Picture, runner: str, km: float) -> tuple[float, float]:
    spot = picture.course(runner).at(km)
    return (round(spot.lat_deg, 5), round(spot.lon_deg, 5))


def _between(course: CourseDef, km: float) -> tuple[str, str] | None:
    behind = [p.name for p in course.points if (p.km or 0.0) <= km]
    ahead = [p.name for p in course.points if (p.km or 0.0) > km]
    return (behind[-1], ahead[0]) if behind and ahead else None


def facts(picture: Picture, runner: str) -> FactsAnswer:
    """GET …/facts: what has been reported; of open alarms, who knows."""
    event, state = picture.event, picture.state.runner(runner)
    stops = tuple(
        StopFact(
            point=t.point,
            name=point_name(event, runner, t.point),
            arrived=t.arrived.at if t.arrived else None,
            left=t.left.at if t.left else None,
            through=t.through,
            planned_stop=event.course_of(runner).point(t.point).planned_stop,
            told_by=next((person_name(event, s.by) for s in (t.arrived, t.left) if s), ""),
            came=Counts(t.arrived.entry, t.arrived.by) if t.arrived else None,
            went=Counts(t.left.entry, t.left.by) if t.left else None,
        )
        for t in state.times
    )
    said = tuple(WrittenOfHer(e.seen_at, person_name(event, e.by), e.words) for e in state.how_she_is)
    told = state.race_control_knows
    return FactsAnswer(
        runner,
        event.runner(runner).name,
        stops,
        freshness(picture, runner),
        said,
        open_about(picture, runner),
        told.at if told else None,
    )


SHOWN_FOR = timedelta(hours=12)
"""Who said that they are a medic sees the log for so long (own choice)."""


def stop_log(picture: Picture, runner: str, person: str, share: May) -> LogAnswer:
    """GET …/log: the stop log, and who was shown it as a medic."""
    event, state, now = picture.event, picture.state.runner(runner), picture.now
    name = event.runner(runner).name
    said = any(e.by == person and now - e.seen_at <= SHOWN_FOR for e in state.log_shown)
    if share is not May.YES and not said:
        return LogAnswer(runner, name, shown_to_asker=False)
    rows = (
        LogRow(
            e.seen_at,
            point_name(event, runner, e.point) if e.point else "",
            person_name(event, e.by),
            e.logged,
        )
        for e in state.log
    )
    medics = tuple((e.seen_at, person_name(event, e.by)) for e in state.log_shown)
    return LogAnswer(runner, name, in_short(state.log, state.start, now), tuple(rows), medics)
