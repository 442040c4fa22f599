"""What a timetable is made from, gathered and checked: points in order, limits that a body has, the
target."""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import dataclass, replace
from datetime import datetime, timedelta
from typing import Final

import numpy as np
import numpy.typing as npt

from server.course import Course
from server.event.model import CourseDef, CutOff, Edge, Event, Point, Runner, Target
from server.plan.day import Day, Weather, weather_of
from server.plan.errors import PlanError
from server.plan.light import Sky, sky_over
from server.plan.likely import Z90, Estimate, able_w_kg, predicted
from server.plan.notes import Note, Saying, saying
from server.plan.own import SPREAD, OwnPace
from server.plan.pace import Limits, Stops, march
from server.plan.past import field_shape
from server.plan.targets import TargetTime, clock, wanted
from server.plan.terrain import PreparedCourse, ground_of
from server.sentences import say

Floats = npt.NDArray[np.float64]

SKY_LASTS: Final = 1.5
UNTIL_KM: Final = 0.05
SLOW_KMH: Final = 3.0
"""A first guess at the mean speed of a slow runner, stops and all, where only her power is known."""
ROUNDS: Final = 12
SETTLED_S: Final = 20.0


@dataclass(frozen=True, slots=True, eq=False)
class Setting:
    """Everything a runner's timetable is made from, checked: the values of one call."""

    event: Event
    runner: Runner
    definition: CourseDef
    points: tuple[Point, ...]
    km: Floats
    ground: PreparedCourse
    limits: Limits
    stops: Stops
    day: Day
    target: TargetTime
    spread: float
    quality: str
    source: tuple[Saying, ...]
    shape: tuple[tuple[str, float], ...]
    notes: tuple[Note, ...] = ()


def make_setting(
    event: Event,
    runner_id: str,
    course: Course,
    weather: tuple[Weather, ...] | None,
    own: OwnPace | None,
    estimates: Sequence[Estimate] = (),
) -> Setting:
    """Everything gathered and checked. Without a target of her own, hers is the first estimate, else what the
    power of her runs makes of this course. Errors: PlanError."""
    try:
        runner = event.runner(runner_id)
    except KeyError:
        known = ", ".join(r.id for r in event.runners)
        raise PlanError(
            say("wrong-no-such", what="runner", word=runner_id),
            field="runners",
            remedy=say("do-use", known=known),
        ) from None
    definition = event.course_of(runner_id)
    points = definition.points
    km = _placed(points, course)
    ground = ground_of(course, definition, float(km[-1]))
    stops = _stops(points, km, runner.start)
    quality = own.quality if own else "cost model" if ground.has_heights else "distance only"
    bare = Setting(
        event,
        runner,
        definition,
        points,
        km,
        ground,
        limits_of(runner, own),
        stops,
        Day(
            _sky(course, runner, 0.0),
            weather_of(event, definition.id) if weather is None else weather,
        ),
        TargetTime(0, saying("source-finish", target_s=0.0)),
        own.spread if own else SPREAD[quality],
        quality,
        (),
        own.shape if own else (),
        own.notes if own else (),
    )
    return _aimed(bare, course, own, estimates)


def _stops(points: Sequence[Point], km: Floats, start: datetime) -> Stops:
    """Her planned stops, and until when she stays where a stage ends."""
    inner = points[1:-1]
    seconds = np.array([p.planned_stop.total_seconds() for p in inner])
    if not any(p.next_stage for p in inner):
        return Stops(km[1:-1], seconds)
    until = [-np.inf if p.next_stage is None else (p.next_stage - start).total_seconds() for p in inner]
    return Stops(km[1:-1], seconds, np.array(until))


def _sky(course: Course, runner: Runner, lasts_s: float) -> Sky:
    return sky_over(course.km, course.lat_deg, course.lon_deg, runner.start, lasts_s)


def _aimed(bare: Setting, course: Course, own: OwnPace | None, estimates: Sequence[Estimate]) -> Setting:
    """The setting with its target, the spread that goes with it, and the field's shape near it."""
    field, km = f"runners.{bare.runner.id}.target", float(bare.km[-1])
    target, spread, notes = bare.runner.target, bare.spread, bare.notes
    if target == Target() and (estimates or (own is not None and own.powers)):
        found = estimates[0] if estimates else _by_power(bare, course, own)
        aim = TargetTime(round(found.total.total_seconds() / 60.0) * 60, found.source)
        # One range of one finish: what is told of it is what goals and windows are made with.
        spread = max(spread, found.spread)
        notes = (predicted(replace(found, total=timedelta(seconds=aim.total_s), spread=spread)), *notes)
    else:
        climb = course.climb(0.0, km)
        aim = wanted(target, km, climb.up_m if climb else 0.0, bare.stops.total_s, field)
    if bare.stops.total_s >= aim.total_s:
        raise PlanError(
            say(
                "wrong-planned-stops-alone-take-target",
                stops=clock(bare.stops.total_s),
                target=clock(aim.total_s),
            ),
            field=field,
            remedy=say("do-shorten-stop-minutes-points-aim"),
        )
    source: tuple[Saying, ...] = (own.source if own else saying("source-costs"),)
    shape = bare.shape
    if own is not None and own.results is not None:
        near = field_shape(own.results.points, own.results.times_s, timedelta(seconds=aim.total_s))
        source = (own.source, near.source) if own.powers else (near.source,)
        shape, notes = near.own_pace().shape, (*notes, *near.notes)
    until = bare.stops.until_s
    nights = 0.0 if until is None else max(0.0, float(until.max()))
    lasts = aim.total_s * math.exp(Z90 * spread) * SKY_LASTS + nights
    return replace(
        bare,
        day=replace(bare.day, sky=_sky(course, bare.runner, lasts)),
        target=aim,
        spread=spread,
        source=tuple(dict.fromkeys((aim.source, *source))),
        shape=shape,
        notes=notes,
    )


def _by_power(bare: Setting, course: Course, own: OwnPace | None) -> Estimate:
    """Her whole time on this course by the power of her own runs: the longer it takes, the less she holds."""
    assert own is not None
    longest = 3600.0 * float(bare.km[-1]) / SLOW_KMH
    until = bare.stops.until_s
    nights = 0.0 if until is None else max(0.0, float(until.max()))
    day, total = replace(bare.day, sky=_sky(course, bare.runner, 2.0 * longest + nights)), longest / 2.0
    for _ in range(ROUNDS):
        able, spread = able_w_kg(own.powers, total / 3600.0, own.spread)
        done = march(bare.ground.terrain, bare.limits, bare.stops, day, able)
        found = done.total_moving_s + bare.stops.total_s
        if abs(found - total) < SETTLED_S:
            break
        total = found
    return Estimate(timedelta(seconds=round(total)), spread, own.source)


def _placed(points: Sequence[Point], course: Course) -> Floats:
    """km of every point, checked: start at 0, rising, within the course."""
    if len(points) < 2:
        raise PlanError(
            say("wrong-plan-needs-start-finish-least"),
            field="points",
            remedy=say("do-add-points-course"),
        )
    unplaced = [p.name for p in points if p.km is None]
    if unplaced:
        raise PlanError(
            say("wrong-no-km-known", unplaced=", ".join(unplaced)),
            field="points",
            remedy=say("do-give-km-waypoint-route"),
        )
    km = np.array([p.km for p in points], dtype=np.float64)
    fallen = np.flatnonzero(np.diff(km) <= 0)
    if fallen.size or km[0] < 0:
        k = int(fallen[0]) + 1 if fallen.size else 0
        raise PlanError(
            say("wrong-km-does-not-come-after", name=points[k].name, km=f"{km[k]:g}"),
            field=f"points.{points[k].id}.km",
            remedy=say("do-put-points-running-order-place"),
        )
    if km[-1] > course.length_km + UNTIL_KM:
        raise PlanError(
            say(
                "wrong-km-route-ends-km",
                name=points[-1].name,
                km=f"{km[-1]:g}",
                length_km=f"{course.length_km:.2f}",
            ),
            field=f"points.{points[-1].id}.km",
            remedy=say("do-correct-km-state-organisers-distance"),
        )
    return km


def limits_of(runner: Runner, own: OwnPace | None) -> Limits:
    """Her limits: what the event file states, else what was learned, else what is usual."""
    base = own.limits if own else Limits()
    for name, value, low, high in (
        ("walk_kmh", runner.walk_kmh, 2.0, 9.5),
        ("climb_m_per_h", runner.climb_rate_m_per_h, 100.0, 2_500.0),
        ("downhill_kmh", runner.downhill_kmh, 3.0, 30.0),
    ):
        if value is not None and not low <= value <= high:
            raise PlanError(
                say("wrong-rate-outside", name=name, value=f"{value:g}", low=f"{low:g}", high=f"{high:g}"),
                field=f"runners.{runner.id}.{name}",
                remedy=say("do-give-what-does-good-ground"),
            )
    return Limits(
        walk_m_s=base.walk_m_s if runner.walk_kmh is None else runner.walk_kmh / 3.6,
        climb_m_per_h=base.climb_m_per_h if runner.climb_rate_m_per_h is None else runner.climb_rate_m_per_h,
        downhill_m_s=base.downhill_m_s if runner.downhill_kmh is None else runner.downhill_kmh / 3.6,
        fade=base.fade if runner.fade is None else replace(base.fade, strength=runner.fade),
        by_gradient=base.by_gradient,
    )


def cut_offs(setting: Setting) -> list[tuple[int, Edge, datetime, CutOff | None]]:
    """Every cut-off of her course as an instant; the race's own limit counts from the race's start."""
    found: list[tuple[int, Edge, datetime, CutOff | None]] = [
        (k, c.edge, c.at(setting.runner.start), c) for k, p in enumerate(setting.points) for c in p.cut_offs
    ]
    # Who comes in after the next stage has started has missed it: so a stage ends no later than that.
    found += [
        (k, Edge.IN, p.next_stage, CutOff(Edge.IN, clock=p.next_stage))
        for k, p in enumerate(setting.points)
        if p.next_stage is not None
    ]
    if setting.event.limit is not None:
        found.append((len(setting.points) - 1, Edge.IN, setting.event.starts + setting.event.limit, None))
    return found
