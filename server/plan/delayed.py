"""A plan whose start was put off: the same hours on foot under another sun."""

from __future__ import annotations

from dataclasses import replace
from datetime import datetime
from itertools import pairwise
from typing import Final

import numpy as np

from server.course import Course
from server.event.model import CourseDef, Goal
from server.plan.light import dark_kit, light_moments, sky_over
from server.plan.timetable import Timetable

STEP_KM: Final = 0.25


def started_at(timetable: Timetable, definition: CourseDef, course: Course, start: datetime) -> Timetable:
    """The timetable from an aware `start`: light and dark where she is by then; what she means to take stays.

    Between two points she is taken to go evenly, so a moment may be a few minutes from what a plan made for that start
    says. Minutes for night and heat stay those of the plan.
    """
    if start == timetable.start:
        return timetable
    rows = timetable.rows
    elapsed, km = [0.0], [rows[0].km]
    for before, row in pairwise(rows):
        leaves, arrives = (t.total_seconds() for t in (before.leave[Goal.B], row.arrive[Goal.B]))
        steps = max(2, round((row.km - before.km) / STEP_KM) + 1)
        elapsed += np.linspace(leaves, arrives, steps).tolist()
        km += np.linspace(before.km, row.km, steps).tolist()
    gone, along = np.array(elapsed), np.array(km)
    sky = sky_over(course.km, course.lat_deg, course.lon_deg, start, float(gone[-1]))
    shaded = np.zeros(len(along), dtype=np.bool_)
    for s in definition.stretches:
        if s.forest_or_gorge:
            shaded |= (along >= s.from_km) & (along < s.to_km)
    return replace(
        timetable,
        start=start,
        light=light_moments(sky, gone, along),
        dark=dark_kit(sky, gone, along, shaded),
    )
