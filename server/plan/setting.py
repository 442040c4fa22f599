"""What a timetable is made from, gathered and checked: points in order, limits that a body has, the
target."""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import dataclass
from datetime import datetime
from typing import Final

import numpy as np
import numpy.typing as npt

from server.course import Course
from server.event.model import CourseDef, CutOff, Edge, Event, Point, Runner
from server.plan.errors import PlanError
from server.plan.ground import Ground, ground_of
from server.plan.light import sky_over
from server.plan.likely import RunPower
from server.plan.pace import Day, Limits, Stops, Weather
from server.plan.targets import Wanted, clock, wanted

Floats = npt.NDArray[np.float64]

# Standard deviation of log(actual / target) by what the shape of the plan rests on. Common practice, no
# source: half of those with a cost model come in within 9 % of their target.
SPREAD: Final = {"distance only": 0.16, "cost model": 0.13, "own data": 0.10, "past results": 0.11}
Z90: Final = 1.2815515655446004
SKY_LASTS: Final = 1.5
UNTIL_KM: Final = 0.05


@dataclass(frozen=True, slots=True)
class OwnPace:
    """What is known of her beyond the event file: limits learned from her runs, and how sure the total is.

    shape: (point, share of the whole time on arrival there) of past results, which the legs then follow.
    powers: of her runs, against which the target is held.
    quality: 'own data' or 'past results'; spread: standard deviation of log(actual / target); source: in
    words.
    """

    limits: Limits
    quality: str
    spread: float
    source: str
    shape: tuple[tuple[str, float], ...] = ()
    powers: tuple[RunPower, ...] = ()


@dataclass(frozen=True, slots=True, eq=False)
class Setting:
    """Everything a runner's timetable is made from, checked: the values of one call."""

    event: Event
    runner: Runner
    definition: CourseDef
    points: tuple[Point, ...]
    km: Floats
    ground: Ground
    limits: Limits
    stops: Stops
    day: Day
    target: Wanted
    spread: float
    quality: str
    source: str
    shape: tuple[tuple[str, float], ...]


def make_setting(
    event: Event, runner_id: str, course: Course, weather: tuple[Weather, ...], own: OwnPace | None
) -> Setting:
    try:
        runner = event.runner(runner_id)
    except KeyError:
        known = ", ".join(r.id for r in event.runners) or "none"
        raise PlanError(
            f"there is no runner '{runner_id}'", field="runners", remedy=f"Use one of: {known}"
        ) from None
    definition = event.course_of(runner_id)
    points = definition.points
    km = _placed(points, course)
    ground = ground_of(course, definition, float(km[-1]))
    stops = Stops(km[1:-1], np.array([p.planned_stop.total_seconds() for p in points[1:-1]]))
    climb = course.climb(0.0, float(km[-1]))
    field = f"runners.{runner_id}.target"
    target = wanted(runner.target, float(km[-1]), climb.up_m if climb else 0.0, stops.total_s, field)
    if stops.total_s >= target.total_s:
        raise PlanError(
            f"the planned stops alone take {clock(stops.total_s)}, the target is {clock(target.total_s)}",
            field=field,
            remedy="Shorten stop_minutes at the points, or aim for a later finish",
        )
    quality = own.quality if own else "cost model" if ground.has_heights else "distance only"
    spread = own.spread if own else SPREAD[quality]
    lasts = target.total_s * math.exp(Z90 * spread) * SKY_LASTS
    sky = sky_over(course.km, course.lat_deg, course.lon_deg, runner.start, lasts)
    source = f"{target.source}; pace: {own.source if own else 'published costs by gradient'}"
    return Setting(
        event,
        runner,
        definition,
        points,
        km,
        ground,
        limits_of(runner, own),
        stops,
        Day(sky, weather),
        target,
        spread,
        quality,
        source,
        own.shape if own else (),
    )


def _placed(points: Sequence[Point], course: Course) -> Floats:
    """km of every point, checked: start at 0, rising, within the course."""
    if len(points) < 2:
        raise PlanError(
            "a plan needs a start and a finish at least",
            field="points",
            remedy="Add the points of the course",
        )
    unplaced = [p.name for p in points if p.km is None]
    if unplaced:
        raise PlanError(
            f"no km is known for {', '.join(unplaced)}",
            field="points",
            remedy="Give km, or a waypoint of the route",
        )
    km = np.array([p.km for p in points], dtype=np.float64)
    fallen = np.flatnonzero(np.diff(km) <= 0)
    if fallen.size or km[0] < 0:
        k = int(fallen[0]) + 1 if fallen.size else 0
        raise PlanError(
            f"{points[k].name} at km {km[k]:g} does not come after the point before it",
            field=f"points.{points[k].id}.km",
            remedy="Put the points in running order; one place passed twice is two points",
        )
    if km[-1] > course.length_km + UNTIL_KM:
        raise PlanError(
            f"{points[-1].name} is at km {km[-1]:g}, the route ends at km {course.length_km:.2f}",
            field=f"points.{points[-1].id}.km",
            remedy="Correct the km, or state the organiser's distance as stated_km",
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
                f"{name} = {value:g} is outside {low:g} to {high:g}",
                field=f"runners.{runner.id}.{name}",
                remedy="Give what she does on good ground when fresh, or leave it out",
            )
    return Limits(
        walk_m_s=base.walk_m_s if runner.walk_kmh is None else runner.walk_kmh / 3.6,
        climb_m_per_h=base.climb_m_per_h if runner.climb_rate_m_per_h is None else runner.climb_rate_m_per_h,
        downhill_m_s=base.downhill_m_s if runner.downhill_kmh is None else runner.downhill_kmh / 3.6,
        fade=base.fade,
        by_gradient=base.by_gradient,
    )


def cut_offs(setting: Setting) -> list[tuple[int, Edge, datetime, CutOff | None]]:
    """Every cut-off of her course as an instant; the race's own limit counts from the race's start."""
    found: list[tuple[int, Edge, datetime, CutOff | None]] = [
        (k, c.edge, c.at(setting.runner.start), c) for k, p in enumerate(setting.points) for c in p.cut_offs
    ]
    if setting.event.limit is not None:
        found.append((len(setting.points) - 1, Edge.IN, setting.event.starts + setting.event.limit, None))
    return found
