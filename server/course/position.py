"""Places a position on the line by what is known of the runner, never by the nearest distance alone.

Where the course comes by a place twice, both passes are about as near; which one she is on is a question
of when she was where. So each step of the line gets a weight: how well the position fits there, times how
likely she is there at all. The passes share the weights, and the answer carries all of them.
"""

from __future__ import annotations

import math
from dataclasses import dataclass
from datetime import timedelta
from itertools import pairwise
from typing import Final

import numpy as np
import numpy.typing as npt

from server.course.line import Course
from server.course.passes import Pass, offsets_m, passes

Floats = npt.NDArray[np.float64]

# How far a good fix lies from a recorded line when she is on the path: both were recorded with an error.
LINE_ERROR_M: Final = 15.0
# A device that says nothing of its accuracy; a phone in the open has 5 to 10 m, in woods 30 (common
# practice).
UNSTATED_ACCURACY_M: Final = 30.0
# 'Accuracy' of a fix is the radius that holds 68%; on one axis a standard deviation is that over 1.51
# (Rayleigh).
RADIUS_TO_AXIS: Final = 1.51
OFF_COURSE_M: Final = 75.0
# The part of belief that everything known of her is wrong: enough for a clear fix to win, never a
# doubtful one.
DOUBT: Final = 0.02
CLEAR: Final = 0.8
# Candidates closer than this along the line, as on a hairpin, are one answer to 'where is she'.
SAME_PLACE_KM: Final = 0.5
# Passes with less weight than this are not worth a word.
LEAST_WEIGHT: Final = 0.001


@dataclass(frozen=True, slots=True)
class PositionPrior:
    """How likely she is where, before the position is looked at.

    km: rising, at least two; density: as many, zero or more, not all zero; straight between, zero
    outside. Only ratios count. Errors: ValueError.
    """

    km: tuple[float, ...]
    density: tuple[float, ...]

    def __post_init__(self) -> None:
        if len(self.km) != len(self.density) or len(self.km) < 2:
            raise ValueError("a prior needs as many densities as km, two at least")
        if any(not before < after for before, after in pairwise(self.km)):
            raise ValueError("km of a prior must rise")
        if not all(0 <= value < math.inf for value in self.density) or not any(self.density):
            raise ValueError("densities of a prior must be numbers, zero or more, and not all zero")

    @classmethod
    def since(cls, last_km: float, elapsed: timedelta, slow_kmh: float, fast_kmh: float) -> PositionPrior:
        """What follows from having been at last_km `elapsed` ago and moving at slow_kmh to fast_kmh.

        She may have rested meanwhile, so that anything from last_km on keeps a third of the density, and be a
        little faster than thought. elapsed: zero or more; 0 < slow_kmh <= fast_kmh. Errors: ValueError.
        """
        hours = elapsed / timedelta(hours=1)
        if not (hours >= 0 and 0 < slow_kmh <= fast_kmh and math.isfinite(last_km + fast_kmh)):
            raise ValueError("elapsed must not be negative, and 0 < slow_kmh <= fast_kmh")
        slow, fast = last_km + hours * slow_kmh, last_km + hours * fast_kmh
        edge = 0.3 + 0.3 * hours * fast_kmh
        knots = (last_km - 0.3, last_km, slow + 0.01, fast + 0.02, fast + 0.02 + edge)
        return cls(knots, (0.0, 0.33, 1.0, 1.0, 0.0))


@dataclass(frozen=True, slots=True)
class Candidate:
    """One place on the line a position may stand for: km, metres off the line, weight 0 to 1.

    spread_km: standard deviation along the line of where on this pass she is.
    """

    km: float
    offset_m: float
    weight: float
    spread_km: float


@dataclass(frozen=True, slots=True)
class PlacedPosition:
    """A position on the line: the likeliest candidate's values, and all others worth a word, likeliest first.

    spread_km takes in candidates within SAME_PLACE_KM. off_course: offset_m is more than OFF_COURSE_M beyond
    the fix's own accuracy. ambiguous: no place
    has most of the weight (CLEAR). nearest_km, nearest_offset_m: where the line comes nearest, whatever
    is known of her: whoever judges 'behind where she was' or '30 km off' needs both.
    """

    km: float
    offset_m: float
    weight: float
    spread_km: float
    off_course: bool
    ambiguous: bool
    alternatives: tuple[Candidate, ...]
    nearest_km: float
    nearest_offset_m: float


def place_position(
    course: Course,
    lat_deg: float,
    lon_deg: float,
    accuracy_m: float | None = None,
    prior: PositionPrior | None = None,
) -> PlacedPosition:
    """Where on the course a position is.

    lat_deg -90 to 90, lon_deg -180 to 180; accuracy_m: radius that holds 68%, None where the device does
    not say; prior: what is known of her, None for nothing. Errors: ValueError for a place or accuracy
    that is none.
    """
    accuracy = UNSTATED_ACCURACY_M if accuracy_m is None else accuracy_m
    if not 0 <= accuracy < math.inf:
        raise ValueError(f"accuracy {accuracy_m} m is none")
    by = passes(course, lat_deg, lon_deg)
    nearest = min(by, key=lambda one: one.offset_m)
    away = offsets_m(course, lat_deg, lon_deg)
    weights = _fit(away, nearest.offset_m, accuracy) * _known(course, prior)
    found = sorted(_candidates(course, by, weights), key=lambda one: (-one.weight, one.km))
    best = found[0]
    here = [one for one in found if abs(one.km - best.km) <= SAME_PLACE_KM]
    return PlacedPosition(
        best.km,
        best.offset_m,
        best.weight,
        _spread_km(best.km, here),
        off_course=best.offset_m > accuracy + OFF_COURSE_M,
        ambiguous=sum(one.weight for one in here) < CLEAR,
        alternatives=tuple(one for one in found[1:] if one.weight >= LEAST_WEIGHT),
        nearest_km=nearest.km,
        nearest_offset_m=nearest.offset_m,
    )


def _spread_km(km: float, here: list[Candidate]) -> float:
    """Standard deviation about km of candidates that are one place, each with its own spread."""
    total = sum(one.weight for one in here)
    return math.sqrt(sum(one.weight * (one.spread_km**2 + (one.km - km) ** 2) for one in here) / total)


def needed_kmh(from_km: float, to_km: float, elapsed: timedelta) -> float:
    """Speed in km/h she would have needed; negative for a place behind, infinite where no time went by."""
    hours = elapsed / timedelta(hours=1)
    if hours <= 0:
        return 0.0 if to_km == from_km else math.copysign(math.inf, to_km - from_km)
    return (to_km - from_km) / hours


def _fit(away: Floats, least_m: float, accuracy_m: float) -> Floats:
    """How well the position fits each step's end (n + 1,), 1 for the best.

    A bell whose width is the fix's error and the line's. Off the course her distance from it says little
    about which part she left, so that the bell widens with it.
    """
    strayed = max(0.0, least_m - accuracy_m - LINE_ERROR_M)
    width_2 = (accuracy_m / RADIUS_TO_AXIS) ** 2 + LINE_ERROR_M**2 + strayed**2
    exponent = -(away**2) / (2 * width_2)
    return np.asarray(np.exp(exponent - exponent.max()), dtype=np.float64)


def _known(course: Course, prior: PositionPrior | None) -> Floats:
    """Density per step's end (n + 1,), with DOUBT spread evenly over the whole course."""
    even = np.full(len(course.km), 1.0 / len(course.km))
    if prior is None:
        return even
    density = np.interp(course.km, prior.km, prior.density, left=0.0, right=0.0)
    total = float(density.sum())
    return even if total <= 0 else (1 - DOUBT) * density / total + DOUBT * even


def _candidates(course: Course, by: tuple[Pass, ...], weights: Floats) -> list[Candidate]:
    """The passes that have a share of the weights (n + 1,), their own weights adding up to one."""
    masses = [float(weights[one.first : one.last + 1].sum()) for one in by]
    total = sum(masses)
    return [
        _candidate(course, one, weights, mass / total) for one, mass in zip(by, masses, strict=True) if mass
    ]


def _candidate(course: Course, one: Pass, weights: Floats, weight: float) -> Candidate:
    share = weights[one.first : one.last + 1]
    km = course.km[one.first : one.last + 1]
    mass = float(share.sum())
    mean = float((share * km).sum() / mass)
    spread = math.sqrt(max(0.0, float((share * (km - mean) ** 2).sum() / mass)))
    # A sharp fix sees finer than the steps; a blurred one is where the weights say.
    sharp = spread * 1000 < 2 * course.step_m * course.scale
    return Candidate(one.km if sharp else mean, one.offset_m, weight, spread)
