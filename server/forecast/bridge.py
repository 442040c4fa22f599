"""Joins the engine, which knows seconds and numbered points, to the event: ids, aware datetimes, who reports where.

In: an event, one runner's facts, the race-level facts, her timetable and course, and when our own channels were
down. Out: an `Outlook`. Everything the engine is told passes through here, so this is where a fact could get lost.
"""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import replace
from datetime import datetime, timedelta
from functools import cache

import numpy as np

from server.course import Course
from server.event.model import (
    Edge,
    Event,
    Goal,
)
from server.facts.state import Interval, PlacedFix, RaceState, RunnerState
from server.forecast.channel_outages import Hearing
from server.forecast.in_event import EventOutlook
from server.forecast.nights import Night, ends_of, nights_ahead, nights_of, nights_told
from server.forecast.others import bent
from server.forecast.outlook import DayLegs
from server.forecast.planned import Plan
from server.forecast.posterior import posterior
from server.forecast.stages import within
from server.forecast.values import (
    Condition,
    Fact,
    Held,
    KnownStop,
    NotYet,
    Position,
    Quality,
    Reference,
    Rest,
    Retired,
    Sighting,
)
from server.forecast.watchers import silence_of

# A live tracker sends a fix every few seconds; beyond one in three minutes they say nothing new about the legs ahead.
THIN = timedelta(minutes=3)
# A telephone's own idea of its accuracy is hopeful, and the line it is put on has a width of its own.
LEAST_ACCURACY_M = 30.0
UNKNOWN_ACCURACY_M = 100.0
# How sure a crew's 'she is a tenth slower from here' is taken to be, as log standard deviation.
CONDITION_SD = 0.05
# So many of them widen the windows; further ones move them only, or a chatty crew would drown the forecast (own choice).
CONDITIONS_DOUBTED = 4


def outlook(
    event: Event,
    runner: RunnerState,
    race: RaceState,
    timetable: Plan,
    course: Course,
    outages: Sequence[Interval] = (),
    hearing: Hearing | None = None,
    day: DayLegs | None = None,
) -> EventOutlook:
    """A runner's forecast after the facts. Deterministic: same facts, same outlook.

    `timetable` goal B is the reference. `outages` are times when nobody could have reached us,
    `hearing` those when some could not. `day`: what others' times say of her legs (`server.forecast.day`).
    """
    rows = timetable.rows[1:]
    ids = tuple(r.point for r in rows)
    index = {p: i for i, p in enumerate(ids)}
    nights = nights_of(event, runner, race, timetable, index)
    reference = reference_of(timetable, course, nights)
    if day is not None:
        reference = bent(reference, np.array(day.logs))
    facts = (*facts_of(runner, index, timetable), *nights_told(runner, ids, nights))
    silence = silence_of(event, runner, race, index, outages, hearing)
    limit_s = limit_of(event, runner, race, ids[-1])
    # The engine's limit is of one way to the finish; with a night on it each stage has its own.
    ends = ends_of(nights_ahead(runner, ids, nights), len(ids) - 1, limit_s)
    post = posterior(reference, facts, limit_s=None if ends else limit_s)
    without = None
    if runner.not_yet:
        asked_nobody = replace(runner, not_yet=())
        without = cache(lambda: outlook(event, asked_nobody, race, timetable, course, outages, hearing, day))
    return EventOutlook(runner.start, ids, within(post, ends), silence, without, day)


def reference_of(timetable: Plan, course: Course, nights: Sequence[Night] = ()) -> Reference:
    """Goal B as the engine's reference; the start row is left out, the finish has no stop, the nights no length."""
    rows = timetable.rows[1:]
    stops = [r.stop.total_seconds() for r in rows]
    stops[-1] = 0.0
    slept = np.zeros(len(rows))
    for n in nights:
        stops[n.point] = 0.0
        slept[n.point + 1 :] += n.length_s
    up = sum(r.leg_ascent_m for r in rows)
    length = rows[-1].km
    return Reference(
        km=np.array([r.km for r in rows]),
        elapsed_s=np.array([r.arrive[Goal.B].total_seconds() for r in rows]) - slept,
        stop_s=np.array(stops),
        quality=_QUALITY.get(
            timetable.quality, Quality.DISTANCE if not course.has_heights else Quality.COST_MODEL
        ),
        climb_m_per_km=up / length if length else 0.0,
        spread=timetable.spread or None,
    )


_QUALITY = {
    "distance only": Quality.DISTANCE,
    "cost model": Quality.COST_MODEL,
    "own data": Quality.OWN_DATA,
    "past results": Quality.PAST_RESULTS,
}


def facts_of(runner: RunnerState, index: dict[str, int], timetable: Plan) -> tuple[Fact, ...]:
    """What is known of her, in the engine's words. Facts at points her course does not have say nothing."""
    start = runner.start
    facts: list[Fact] = []
    for t in runner.times:
        i = index.get(t.point)
        if i is None:
            continue
        if t.arrived:
            facts.append(
                Sighting(i, arrived_s=_since(start, t.arrived.at), sd_s=t.arrived.spread.total_seconds())
            )
        if t.left:
            facts.append(Sighting(i, left_s=_since(start, t.left.at), sd_s=t.left.spread.total_seconds()))
    if runner.finished and not any(t.point == timetable.rows[-1].point and t.arrived for t in runner.times):
        facts.append(
            Sighting(
                len(index) - 1,
                arrived_s=_since(start, runner.finished.at),
                sd_s=runner.finished.spread.total_seconds(),
            )
        )
    facts += [_position(start, f) for f in thinned(runner.positions)]
    facts += [NotYet(index[n.point], _since(start, n.stamp.at)) for n in runner.not_yet if n.point in index]
    facts += _rests(runner, index)
    facts += [Held(_since(start, h.start), _since(start, h.end) if h.end else None) for h in runner.held]
    facts += _conditions(runner, index, timetable)
    if runner.retirement:
        at = runner.retirement
        km = _km_of(at.point, timetable) if at.point else None
        facts.append(Retired(_since(start, at.stamp.at), km))
    return tuple(f for f in facts if not (isinstance(f, Sighting) and _before_start(f)))


def _before_start(seen: Sighting) -> bool:
    """A time before her own start can't be laid on the line from the start; she may have set off early."""
    return any(t is not None and t <= 0 for t in (seen.arrived_s, seen.left_s))


def thinned(positions: Sequence[PlacedFix]) -> list[PlacedFix]:
    """The placed fixes worth telling: on the line, not ambiguous, one each `THIN`, and always the last."""
    usable = sorted(
        (p for p in positions if p.km is not None and not p.ambiguous),
        key=lambda p: (p.stamp.at, p.stamp.entry),
    )
    kept: list[PlacedFix] = []
    for fix in usable[:-1]:
        if not kept or fix.stamp.at - kept[-1].stamp.at >= THIN:
            kept.append(fix)
    return kept + usable[-1:]


def _position(start: datetime, fix: PlacedFix) -> Position:
    assert fix.km is not None
    accuracy = fix.fix.accuracy_m
    return Position(
        km=fix.km,
        at_s=_since(start, fix.stamp.at),
        accuracy_m=UNKNOWN_ACCURACY_M if accuracy is None else max(accuracy, LEAST_ACCURACY_M),
    )


def _rests(runner: RunnerState, index: dict[str, int]) -> list[Fact]:
    """Rests as told. One that is going on, with a time she means to move again, ends then; said again, she was still
    there: whoever sits beside her all night is heard each time, not once."""
    out: list[Fact] = []
    here = _point_she_is_at(runner)
    for rest in runner.rests:
        end = rest.end
        heard = runner.rest_heard
        if end is None and heard is not None and heard > rest.start:
            if here in index:
                out.append(KnownStop(index[here], _since(runner.start, heard)))
            elif runner.rest_until is None:
                out.append(Rest(_since(runner.start, heard), None))
        if end is None and runner.rest_until is not None:
            if here in index:
                out.append(KnownStop(index[here], _since(runner.start, runner.rest_until)))
                continue
            end = max(runner.rest_until, rest.start)
        out.append(Rest(_since(runner.start, rest.start), _since(runner.start, end) if end else None))
    return out


def _point_she_is_at(runner: RunnerState) -> str:
    last = runner.times[-1] if runner.times else None
    return last.point if last and last.arrived and not last.left else ""


def _conditions(runner: RunnerState, index: dict[str, int], timetable: Plan) -> list[Fact]:
    """'She is a tenth slower from here': from where she then was, or from the point named, to the finish."""
    out: list[Fact] = []
    finish = timetable.rows[-1].km
    for entry in runner.conditions:
        if entry.factor is None or not entry.factor > 0:
            continue
        if entry.point in index:
            begin = _km_of(entry.point, timetable) or 0.0
        else:
            begin = _known_km(runner, entry.seen_at, timetable)
        if begin < finish:
            sd = CONDITION_SD if len(out) < CONDITIONS_DOUBTED else 0.0
            out.append(Condition(begin, finish, math.log(entry.factor), sd))
    return out


def _known_km(runner: RunnerState, at: datetime, timetable: Plan) -> float:
    """The farthest place she was known to have reached by then."""
    km = [0.0]
    seen = [t for t in runner.times if any(s is not None and s.at <= at for s in (t.arrived, t.left))]
    km += [_km_of(t.point, timetable) or 0.0 for t in seen]
    km += [p.km for p in runner.positions if p.km is not None and p.stamp.at <= at]
    return max(km)


def _km_of(point: str | None, timetable: Plan) -> float | None:
    return next((r.km for r in timetable.rows if r.point == point), None)


def limit_of(event: Event, runner: RunnerState, race: RaceState, finish: str) -> float | None:
    """The time limit at the finish as it now stands, seconds after her start; None where the race has none.

    The event's limit counts from the event's start, whatever her wave.
    """
    limits = [] if event.limit is None else [_since(runner.start, event.starts + event.limit)]
    moved = [when for point, edge, when in race.cut_offs_moved if point == finish and edge == Edge.IN.value]
    if moved:
        return _since(runner.start, moved[-1])
    point = event.course_of(runner.runner).point(finish)
    limits += [_since(runner.start, c.at(runner.start)) for c in point.cut_offs]
    return min(limits, default=None)


def _since(start: datetime, at: datetime) -> float:
    return (at - start).total_seconds()
