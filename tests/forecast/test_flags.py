"""Who is called overdue when: the density of her arrival against a line times her odds of having stopped."""

import numpy as np
import pytest

from server.forecast import flags, kinds, margins
from server.forecast.fieldcheck import flag
from server.forecast.fitted import Flagging
from server.forecast.posterior import with_constants
from server.forecast.values import Quality, Reference, Sighting, WhoseTarget
from tests.research.fit.flagging import Legs, fit_lines, fit_odds

LINES = np.array([0.04, 0.02, 0.01, 0.005, 0.0025, 0.00125, 0.0006])
KM = np.linspace(10.0, 160.0, 16)
SHAPE = 86400.0 * (KM / 160.0) ** 1.05


def test_the_density_is_that_of_the_margins() -> None:
    """At the moment found, the slope of P(later) as `margins.later_than` has it is the density asked for."""
    middle, high, last = (np.array([v]) for v in (3600.0, 5400.0, 9000.0))
    for density in (2e-5, 4e-6, 4e-7, 1e-8):
        at = flags.falls_under(middle, high, last, 2.5, np.array([density])) - middle
        if at[0] <= 1800.0 or at[0] == 5400.0:
            continue
        near = np.array([at[0] - 1.0, at[0] + 1.0])
        gone = np.exp(-margins.later_than(1800.0, 5400.0, near, 2.5))
        assert (gone[0] - gone[1]) / 2.0 == pytest.approx(density, rel=1e-3)


def test_likelier_to_have_stopped_is_flagged_sooner_and_nobody_before_her_late_time() -> None:
    """Flags rise as the lines fall and fall as the odds rise; the earliest is the 95% time."""
    fitted = Flagging((), (), (0.04, 0.0006), (2.0, -6.0), (2.0, -6.0))
    next_s = np.exp(np.log(3600.0) + 0.2 * np.tile(margins.KNOT_Z, (3, 1)))
    at = flags.times(fitted, True, LINES, np.array([0.001, 0.02, 0.5]), next_s, np.full(3, 86400.0), 3.0)
    assert np.all(np.diff(at, axis=1) >= 0.0)
    assert np.all(np.diff(at[:, -1]) < 0.0)
    assert np.all(at >= next_s[:, 6:7])


def test_the_adapter_flags_by_the_engines_own_forecast() -> None:
    """Rising as the lines fall, later than she is likely in, the sooner the more she has slowed; limit or none."""
    steady, tired = SHAPE[:8] * 1.05, SHAPE[:8] * 1.05
    tired[-1] += 2400.0
    for limit in (None, 108000.0):
        one, other = (flag(KM, seen, SHAPE, LINES, limit_s=limit) for seen in (steady, tired))
        assert np.all(np.diff(one) >= 0.0)
        ref = Reference(KM, SHAPE, np.zeros(16), Quality.PAST_RESULTS, 34.0, WhoseTarget.ANYBODY)
        due = [
            with_constants(
                kinds.of(ref), ref, [Sighting(i, arrived_s=float(t)) for i, t in enumerate(seen)], limit
            )
            .view(0.0)
            .quantiles(8, np.array([0.5, 0.94]))
            for seen in (steady, tired)
        ]
        assert one[0] > due[0][1]
        # of the minutes that her own spread gives her, she is left the fewer
        assert (other[3] - due[1][0]) / (due[1][1] - due[1][0]) < (one[3] - due[0][0]) / (
            due[0][1] - due[0][0]
        )


def test_what_stops_runners_is_found_out_and_lines_cost_what_they_say() -> None:
    """Invented legs on which one input doubles the odds: its weight is found; each line flags its part of the legs made."""
    draws = np.random.default_rng(3)
    n = 40000
    x = np.column_stack([np.ones(n), draws.standard_normal(n)])
    length = np.full(n, 0.05)
    stopped = draws.random(n) < flags.stops((0.0, np.log(2.0)), x, length)
    took = 3600.0 * np.exp(0.2 * draws.standard_normal(n))
    next_s = np.exp(np.log(3600.0) + 0.2 * np.tile(margins.KNOT_Z, (n, 1)))
    legs = Legs(x, length, np.where(stopped, np.nan, took), next_s, np.full(n, 86400.0), 3.0)
    weights = fit_odds([legs])
    assert weights == pytest.approx((0.0, np.log(2.0)), abs=0.1)
    lines = fit_lines([legs], weights)
    assert np.all(np.diff(lines) < 0.0)
