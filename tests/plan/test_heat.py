"""The heat index against the National Weather Service's own chart (chart values from memory)."""

from __future__ import annotations

import math

import pytest
from hypothesis import given
from hypothesis import strategies as st

from server.plan.heat import heat_index_c, heat_index_f, heat_slows


@pytest.mark.parametrize(
    ("temperature_f", "humidity", "chart_f"),
    [
        (80, 40, 80), (80, 75, 84), (84, 60, 88), (86, 90, 105), (88, 50, 91), (90, 50, 95), (90, 70, 105),
        (92, 60, 105), (94, 45, 100), (96, 50, 108), (98, 40, 105),
        (100, 40, 109), (104, 40, 119), (110, 40, 136),
    ],
)  # fmt: skip
def test_chart(temperature_f: float, humidity: float, chart_f: float) -> None:
    """The formula rounds to the chart's figure, to within one degree (chart: NWS, from memory)."""
    assert heat_index_f(temperature_f, humidity) == pytest.approx(chart_f, abs=1.0)


def test_dry_adjustment() -> None:
    """Under 13 % humidity the index is lowered by (13-R)/4 sqrt((17-|T-95|)/17). Source: NWS SR 90-23."""
    at_13 = heat_index_f(95.0, 13.0)
    below = heat_index_f(95.0, 5.0)
    assert below < at_13 - (13.0 - 5.0) / 4.0 * math.sqrt(1.0) + 1.0
    step = heat_index_f(95.0, 13.0) - heat_index_f(95.0, 12.999)
    assert abs(step) < 0.01


def test_damp_adjustment() -> None:
    """Over 85 % at 80 to 87 deg F the index is raised by (R-85)/10 (87-T)/5. Source: NWS SR 90-23."""
    t, r = 82.0, 95.0
    plain = (
        -42.379 + 2.04901523 * t + 10.14333127 * r - 0.22475541 * t * r - 0.00683783 * t * t
        - 0.05481717 * r * r + 0.00122874 * t * t * r + 0.00085282 * t * r * r - 0.00000199 * t * t * r * r
    )  # fmt: skip
    assert heat_index_f(t, r) - plain == pytest.approx((r - 85) / 10 * (87 - t) / 5)


def test_below_80_the_simple_form_averaged() -> None:
    """At 70 deg F and 50 %: 0.5 (70 + 61 + 1.2 * 2 + 4.7) = 69.05, averaged with 70. Source: NWS."""
    assert heat_index_f(70.0, 50.0) == pytest.approx((69.05 + 70.0) / 2)


@pytest.mark.parametrize(
    ("t", "r"), [(200.0, 50.0), (-200.0, 50.0), (80.0, -1.0), (80.0, 101.0), (math.nan, 50.0)]
)
def test_refuses_what_is_no_weather(t: float, r: float) -> None:
    """Outside the range, and for what is no number, there is no index."""
    with pytest.raises(ValueError, match="heat index"):
        heat_index_f(t, r)


@given(st.floats(-20, 45), st.floats(0, 100))
def test_heat_only_slows(t: float, r: float) -> None:
    """Weather never makes her faster, and never costs more than a quarter."""
    assert 1.0 <= heat_slows(t, r) <= 1.25


def test_cool_air_costs_nothing() -> None:
    """At 12 deg C there is no heat to pay for; at 32 deg C there is."""
    assert heat_slows(12.0, 60.0) == 1.0
    assert heat_slows(32.0, 60.0) > 1.08
    assert heat_index_c(32.0, 60.0) > 32.0
