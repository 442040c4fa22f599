"""Plans whose hills are overdone: what is tempered, what stays, and how the part is found again."""

from dataclasses import replace

import numpy as np
import pytest

from server.forecast import kinds
from server.forecast.condition import StretchesAhead, StretchesRun, legs_ahead
from server.forecast.fieldcheck import arrivals
from server.forecast.margins import KNOT_P
from server.forecast.tempered import contrast, over, tempered
from server.forecast.values import Quality, Reference, WhoseTarget
from tests.research.fit.planned import fit_contrast, tempered_race, warped
from tests.research.fit.tables import BASIS_S, Race

KM = np.linspace(10.0, 160.0, 16)


def hilly(stop_s: float = 0.0) -> Reference:
    """Every other leg at half as slow again; stops of so many seconds."""
    legs = np.where(np.arange(16) % 2 == 0, 6600.0, 4400.0)
    stops = np.full(16, stop_s)
    stops[-1] = 0.0
    arrive = np.cumsum(legs) + np.concatenate([[0.0], np.cumsum(stops[:-1])])
    return Reference(KM, arrive, stops, Quality.COST_MODEL, 40.0, WhoseTarget.ANYBODY)


@pytest.mark.parametrize("stop_s", [0.0, 600.0])
def test_finish_and_stops_stay_and_slow_legs_shrink(stop_s: float) -> None:
    """A slow leg takes less, a fast one more; the whole time and the stops are the plan's."""
    plan = hilly(stop_s)
    kept = tempered(plan, -0.25)
    moving = np.diff(kept.elapsed_s, prepend=0.0) - np.concatenate([[0.0], plan.stop_s[:-1]])
    assert kept.elapsed_s[-1] == plan.elapsed_s[-1]
    assert np.array_equal(kept.stop_s, plan.stop_s)
    assert np.log(moving[4] / moving[5]) == pytest.approx(0.75 * np.log(1.5), abs=0.03)
    assert tempered(plan, 0.0) is plan


def test_a_steady_fade_is_no_contrast() -> None:
    """A plan that only slows along the way is left as it is, to within a percent."""
    legs = np.exp(np.linspace(-0.3, 0.3, 16))
    arrive = np.cumsum(legs) / legs.sum() * 86400.0
    assert np.abs(contrast(KM, arrive)).max() < 0.04
    plan = Reference(KM, arrive, np.zeros(16), Quality.COST_MODEL, 40.0, WhoseTarget.ANYBODY)
    assert np.abs(np.log(tempered(plan, -0.25).elapsed_s / arrive)).max() < 0.01


def test_parts_of_legs_have_their_legs_contrast() -> None:
    """Within a leg it is the leg's own, over two it is their mean by length."""
    edges, legs = np.array([0.0, 0.2, 0.6, 1.0]), np.array([1.0, -1.0, 0.5])
    got = over(edges, legs, np.array([0.05, 0.0, 0.2]), np.array([0.1, 0.6, 1.0]))
    assert got == pytest.approx([1.0, (0.2 - 0.4) / 0.6, (-0.4 + 0.2) / 0.8])


def test_what_a_climb_shows_moves_climbs_and_descents_apart() -> None:
    """Slow on slow legs of the plan and quick on quick ones: the next slow leg is expected slower than the quick one."""
    plan = tempered(hilly(), -0.25)
    kind = kinds.of(plan)
    assert kind.prior.contrast_sd > 0.0
    share = plan.elapsed_s / plan.elapsed_s[-1]
    edges, planned = np.concatenate([[0.0], share]), contrast(plan.km, plan.elapsed_s)
    a, b = edges[:-1], edges[1:]
    zero = np.zeros((1, 4))
    y = np.where(np.arange(4) % 2 == 0, 0.15, -0.15)
    ahead = StretchesAhead(a[None, 4:], b[None, 4:], np.zeros((1, 12)), np.zeros((1, 12)))

    def apart(told: bool) -> float:
        seen = StretchesRun(a[None, :4], b[None, :4], y[None], zero, zero, np.ones((1, 4)), zero)
        if told:
            seen = replace(seen, contrast=planned[None, :4])
        legs = legs_ahead(
            kind.prior, seen, replace(ahead, contrast=planned[None, 4:]) if told else ahead, 1.0
        )
        return float(legs.mean[0, 0] - legs.mean[0, 1])

    assert apart(told=True) > apart(told=False) + 0.05


def test_the_part_is_found_again() -> None:
    """A field that keeps 70% of a plan's contrast is seen to; tempered by what was found, nothing is left. Flat: none."""
    plan = hilly()
    truth = tempered(plan, -0.3).elapsed_s
    draws = np.random.default_rng(2)
    pace = np.exp(0.1 * draws.standard_normal((60, 1)))
    steps = np.diff(truth, prepend=0.0) * pace * np.exp(0.03 * draws.standard_normal((60, 16)))
    race = Race("hill100", 2012, np.cumsum(steps, axis=1), plan.elapsed_s / plan.elapsed_s[-1] * BASIS_S, 1.5 * BASIS_S,
                False, km=KM)  # fmt: skip
    found = fit_contrast([race])
    assert found == pytest.approx(-0.3, abs=0.05)
    assert fit_contrast([tempered_race(race, found)]) == pytest.approx(0.0, abs=0.02)
    level = replace(race, ref_s=KM / KM[-1] * BASIS_S)
    assert fit_contrast([level]) == 0.0


def test_other_errors_of_a_plan_leave_its_whole() -> None:
    """Warped plans rise, end at the same time and differ by seed."""
    plan = hilly()
    race = Race(
        "hill100",
        2012,
        np.ones((1, 16)),
        plan.elapsed_s / plan.elapsed_s[-1] * BASIS_S,
        BASIS_S,
        False,
        km=KM,
    )
    one, other = warped(race, 1), warped(race, 2)
    assert one.ref_s[-1] == pytest.approx(BASIS_S)
    assert np.all(np.diff(one.ref_s) > 0)
    assert not np.allclose(one.ref_s, other.ref_s)


def test_plans_of_the_cost_model_do_not_depend_on_hours() -> None:
    """A race of 0.7 times the hours has 0.7 times the windows."""
    plan = hilly()
    seen = plan.elapsed_s[:5] * 1.07
    whole = arrivals(KM, seen, plan.elapsed_s, KNOT_P, limit_s=1e5, quality="cost model", climb_m_per_km=40.0)
    short = arrivals(
        KM, 0.7 * seen, 0.7 * plan.elapsed_s, KNOT_P, limit_s=0.7e5, quality="cost model", climb_m_per_km=40.0
    )
    assert short == pytest.approx(0.7 * whole, rel=1e-6)
