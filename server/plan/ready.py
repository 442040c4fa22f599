"""Ready for this course? Her recordings against it: time on her feet, climb, steep descents, hours in the dark.

What is missing is said with a date by which it would still do good. These are common practice, no source: no training plan,
and no advice on health.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from datetime import date, datetime, timedelta
from enum import StrEnum
from typing import Final

import numpy as np

from server.course import Course, heights
from server.event.model import Event, Goal
from server.plan.errors import PlanError
from server.plan.learn import STEP_M, RunSteps, steps_of
from server.plan.light import sky_over
from server.plan.recordings import Recording
from server.plan.terrain import ground_of
from server.plan.timetable import Timetable

STEEP: Final = -0.20
"""Steeper down than this the legs brake (own choice; Minetti et al. 2002 find running cheapest there)."""
LONG_ENOUGH: Final = 0.5
LONGEST_ASKED_H: Final = 8.0
CLIMB_ENOUGH: Final = 0.8
STEEP_ENOUGH: Final = 0.33
STEEP_LEAST_M: Final = 300.0
DARK_ASKED_H: Final = 2.0
DARK_LEAST_H: Final = 0.5
LONG_RUN_H: Final = 2.0
"""A run of at least so long says something of climb an hour of a long day; the shares of the race's own figures that people
mean to have seen before it, and the hours of dark, are common practice, no source."""
BEFORE: Final = {"feet": 21, "climb": 21, "steep": 14, "dark": 10}
"""Days before the start by which the last of each is done (common practice, no source)."""


class ReadyPart(StrEnum):
    """What is compared."""

    FEET = "feet"
    CLIMB = "climb"
    STEEP = "steep"
    DARK = "dark"


@dataclass(frozen=True, slots=True)
class Against:
    """One thing of the course beside her recordings: hours (feet, dark), metres a km (climb), metres down on steep ground.
    `asked`: how much of it people mean to have done once; `file` where she did most; `by` until when, None = enough."""

    part: ReadyPart
    course: float
    had: float
    asked: float
    file: str
    by: date | None


@dataclass(frozen=True, slots=True)
class _Run:
    file: str
    hours: float
    climb_per_km: float
    steep_m: float
    dark_h: float


def ready(
    event: Event, table: Timetable, course: Course, recordings: Sequence[Recording]
) -> tuple[Against, ...]:
    """Each thing the course asks, beside the most she did of it in one run. Without heights the hills are left out; what the
    race has none of (dark, steep ground) too."""
    runs = [r for recording in recordings for r in _run(recording)]
    return tuple(_against(event, table, course, runs))


def _against(event: Event, table: Timetable, course: Course, runs: Sequence[_Run]) -> Iterator[Against]:
    start = table.start.date()
    total = table.rows[-1].arrive[Goal.B]
    hours = total / timedelta(hours=1)

    def put(part: ReadyPart, of_course: float, asked: float, had: Sequence[tuple[float, str]]) -> Against:
        most, file = max(((h, f) for h, f in had if h > 0), default=(0.0, ""))
        by = None if most >= asked else start - timedelta(days=BEFORE[part.value])
        return Against(part, of_course, most, asked, file, by)

    yield put(
        ReadyPart.FEET, hours, min(hours * LONG_ENOUGH, LONGEST_ASKED_H), [(r.hours, r.file) for r in runs]
    )
    definition = event.course_of(table.runner)
    ground = ground_of(course, definition, table.rows[-1].km)
    if ground.has_heights:
        up = sum(r.leg_ascent_m for r in table.rows) / max(table.rows[-1].km, 1.0)
        long = [r for r in runs if r.hours >= min(LONG_RUN_H, hours * LONG_ENOUGH)]
        yield put(ReadyPart.CLIMB, up, up * CLIMB_ENOUGH, [(r.climb_per_km, r.file) for r in long])
        steep = _steep_m(course.km * 1000.0, course.risen_m)
        if steep >= STEEP_LEAST_M:
            yield put(ReadyPart.STEEP, steep, steep * STEEP_ENOUGH, [(r.steep_m, r.file) for r in runs])
    dark = sum(((d.to_at - d.from_at) for d in table.dark), timedelta(0)) / timedelta(hours=1)
    if dark >= DARK_LEAST_H:
        yield put(ReadyPart.DARK, dark, min(dark, DARK_ASKED_H), [(r.dark_h, r.file) for r in runs])


def _steep_m(along_m: np.ndarray, height_m: np.ndarray) -> float:
    """Metres of height lost on ground steeper than STEEP, in steps as recordings are cut into."""
    edges = np.arange(0.0, float(along_m[-1]), STEP_M)
    gradient = np.diff(heights.clean(along_m, height_m, edges)) / STEP_M
    return float(-(gradient[gradient < STEEP]).sum() * STEP_M)


def _run(recording: Recording) -> Iterator[_Run]:
    try:
        steps = steps_of(recording)
    except PlanError:
        return  # the plan's own check tells of it
    yield _Run(
        recording.file,
        float(recording.elapsed_s[-1]) / 3600.0,
        _climb(steps),
        float(-(steps.gradient[steps.gradient < STEEP] * STEP_M).sum()),
        _dark_h(recording),
    )


def _climb(steps: RunSteps) -> float:
    km = float(steps.step_m.sum()) / 1000.0
    return float((np.maximum(steps.gradient, 0.0) * STEP_M).sum()) / max(km, 1.0)


def _dark_h(recording: Recording) -> float:
    placed = np.isfinite(recording.lat_deg) & np.isfinite(recording.lon_deg)
    if placed.sum() < 2:
        return 0.0
    km, elapsed = recording.along_m[placed] / 1000.0, recording.elapsed_s[placed]
    lat, lon = recording.lat_deg[placed], recording.lon_deg[placed]
    keep = np.concatenate([[True], np.diff(km) > 0])
    if keep.sum() < 2:
        return 0.0
    sky = sky_over(km[keep], lat[keep], lon[keep], recording.started, float(elapsed[-1]))
    ticks = np.arange(0.0, float(elapsed[-1]), 60.0)
    return float(sky.dark_for_pace(ticks, np.interp(ticks, elapsed, km)).sum()) / 60.0


def past(by: date, now: datetime) -> bool:
    """Whether that date is over."""
    return now.date() > by
