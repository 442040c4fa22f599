"""Published rules for how hard or how fast a slope is: Minetti, Tobler, Naismith, Langmuir, DIN 33466,
Riegel.

Each is the rule as published, nothing added; the pace model puts limits around them. Gradient i is rise over
horizontal run (0.10 = ten per cent), arrays of any shape in and out.
"""

from __future__ import annotations

from typing import Final

import numpy as np
import numpy.typing as npt

Floats = npt.NDArray[np.float64]

STEEPEST: Final = 0.45
"""The treadmill of the measurements went no steeper."""

_RUN: Final = (155.4, -30.4, -43.3, 46.3, 19.5, 3.6)
_WALK: Final = (280.5, -58.7, -76.8, 51.9, 19.6, 2.5)

MILE_KM: Final = 1.609344
FOOT_M: Final = 0.3048


def _cost(coefficients: tuple[float, ...], gradient: Floats | float) -> Floats:
    # A fifth-degree polynomial bends away as soon as it leaves the measured range; the edge's value is nearer
    # the truth, and a course is seldom steeper for long.
    i = np.clip(np.asarray(gradient, dtype=np.float64), -STEEPEST, STEEPEST)
    return np.polyval(np.asarray(coefficients), i)


def running_cost(gradient: Floats | float) -> Floats:
    """Energy to run one metre along the slope, J/(kg m); gradients beyond +-0.45 count as +-0.45.

    Source: Minetti, Moia, Roi, Susta, Ferretti 2002, J Appl Physiol 93:1039-1046 (coefficients from memory).
    """
    return _cost(_RUN, gradient)


def walking_cost(gradient: Floats | float) -> Floats:
    """Energy to walk one metre along the slope, J/(kg m); gradients beyond +-0.45 count as +-0.45.

    The polynomial gives 2.5 on the level where 1.64 +-0.50 was measured: it is the cost of a brisk walk.
    Source: as `running_cost`.
    """
    return _cost(_WALK, gradient)


def tobler_m_s(slope: Floats | float) -> Floats:
    """Walking speed over the ground, m/s: 6 exp(-3.5 |s + 0.05|) km/h. Source: Tobler 1993 (from memory)."""
    s = np.asarray(slope, dtype=np.float64)
    return np.asarray(6.0 * np.exp(-3.5 * np.abs(s + 0.05)) / 3.6)


def naismith_s(distance_km: Floats | float, ascent_m: Floats | float) -> Floats:
    """Hill-walking time, s: 1 h per 3 miles plus 1 h per 2,000 ft of ascent. Source: Naismith 1892
    (memory)."""
    hours = np.asarray(distance_km) / (3.0 * MILE_KM) + np.asarray(ascent_m) / (2000.0 * FOOT_M)
    return np.asarray(hours * 3600.0)


def din_33466_s(distance_km: float, ascent_m: float, descent_m: float) -> float:
    """Time on a walking signpost, s: 4 km/h, 300 m/h up, 500 m/h down; the larger of the horizontal and the
    vertical time plus half the smaller. Source: DIN 33466, as worked in Alpine-club guidance."""
    level_h = distance_km / 4.0
    vertical_h = ascent_m / 300.0 + descent_m / 500.0
    return 3600.0 * (max(level_h, vertical_h) + min(level_h, vertical_h) / 2.0)


def riegel_s(known_s: float, known_km: float, wanted_km: float, exponent: float = 1.06) -> float:
    """Time for another distance, s: t1 (d2 / d1)^1.06. Fitted on races from 3.5 min to about 4 h, so past a
    marathon it is hopeful. Source: Riegel 1981, American Scientist 69:285 (from memory)."""
    return float(known_s * (wanted_km / known_km) ** exponent)
