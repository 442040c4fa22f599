"""How hot it feels: the US National Weather Service's heat index, and what heat does to her pace."""

from __future__ import annotations

import math
from typing import Final

FREE_UNTIL_C: Final = 15.0
SLOWER_PER_DEGREE: Final = 0.005
SLOWER_AT_MOST: Final = 0.25


def heat_index_f(temperature_f: float, humidity: float) -> float:
    """Heat index, degrees Fahrenheit, from air temperature (deg F) and relative humidity (0 to 100 %).

    Rothfusz' regression with its two adjustments from 80 deg F, Steadman's simple form averaged with the
    temperature below. Meant for shade and a light wind; full sun adds up to 15 deg F.
    Source: US National Weather Service, SR 90-23 (Rothfusz 1990). ValueError outside -100..150 or 0..100.
    """
    t, r = temperature_f, humidity
    if not (-100.0 <= t <= 150.0 and 0.0 <= r <= 100.0):
        raise ValueError(f"heat index of {t} deg F at {r} % humidity: give -100 to 150 deg F and 0 to 100 %")
    simple = (0.5 * (t + 61.0 + 1.2 * (t - 68.0) + 0.094 * r) + t) / 2.0
    if simple < 80.0:
        return simple
    hi = (
        -42.379 + 2.04901523 * t + 10.14333127 * r - 0.22475541 * t * r - 0.00683783 * t * t
        - 0.05481717 * r * r + 0.00122874 * t * t * r + 0.00085282 * t * r * r - 0.00000199 * t * t * r * r
    )  # fmt: skip
    if r < 13.0 and 80.0 <= t <= 112.0:
        hi -= (13.0 - r) / 4.0 * math.sqrt((17.0 - abs(t - 95.0)) / 17.0)
    elif r > 85.0 and 80.0 <= t <= 87.0:
        hi += (r - 85.0) / 10.0 * (87.0 - t) / 5.0
    return hi


def heat_index_c(temperature_c: float, humidity: float) -> float:
    """The same in degrees Celsius."""
    return (heat_index_f(temperature_c * 1.8 + 32.0, humidity) - 32.0) / 1.8


def heat_slows(temperature_c: float, humidity: float) -> float:
    """By what her time is multiplied in that weather, 1.0 and up.

    Half a per cent a degree of heat index above 15 deg C, a quarter at most: common practice, no source. It
    orders the hours of a day; how an unacclimatised runner bears heat differs far more than this.
    """
    over = max(0.0, heat_index_c(temperature_c, humidity) - FREE_UNTIL_C)
    return 1.0 + min(SLOWER_AT_MOST, SLOWER_PER_DEGREE * over)
