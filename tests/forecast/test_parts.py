"""The parts of the engine against arithmetic one can do otherwise."""

import itertools
from dataclasses import replace

import numpy as np
import pytest
from scipy import stats

from server.forecast import kinds, limit, margins, prior
from server.forecast.condition import StretchesAhead, StretchesRun, Totals, legs_ahead, totals
from server.forecast.correct import correct, curve, trust_in_nets, with_mishaps
from server.forecast.posterior import posterior
from server.forecast.prior import Prior
from server.forecast.values import Quality, Reference, Sighting, WhoseTarget

SIMPLE = Prior(
    mean=(0.0, 0.0, 0.0, 0.0),
    slope_sd=0.2,
    curve_sd=0.3,
    slope_curve=-0.5,
    wander=0.02,
    wander_power=2.0,
    patch_sd=0.05,
    patch_length=0.1,
    patch_growth=0.5,
    leg_sd=0.05,
    leg_per_share=1e-4,
    leg_growth=1.0,
    point_sd=0.002,
    robust_df=1e9,
)


def grid(n: int) -> tuple[np.ndarray, np.ndarray]:
    edges = np.linspace(0.0, 1.0, n + 1)
    return edges[:-1], edges[1:]


def seen_of(a: np.ndarray, b: np.ndarray, y: np.ndarray) -> StretchesRun:
    zero = np.zeros((1, a.size))
    return StretchesRun(a[None], b[None], y[None], zero, zero, np.ones((1, a.size)), zero)


def test_conditioning_is_the_textbook_formula() -> None:
    """Without robust weights the legs ahead are the exact Gaussian conditional (Rasmussen and Williams, eq. 2.22-24)."""
    a, b = grid(8)
    y = np.array([0.1, 0.05, 0.2, 0.12])
    zero = np.zeros((1, 4))
    legs = legs_ahead(
        SIMPLE, seen_of(a[:4], b[:4], y), StretchesAhead(a[None, 4:], b[None, 4:], zero, zero), 0.3**2
    )
    full = prior.covariance(SIMPLE, a, b, a, b, 0.3**2) + np.diag(prior.leg_noise(SIMPLE, a, b))
    gain = full[4:, :4] @ np.linalg.inv(full[:4, :4])
    assert np.allclose(legs.mean[0], gain @ y)
    assert np.allclose(legs.cov[0], full[4:, 4:] - gain @ full[:4, 4:])


def test_merging_two_legs_keeps_their_average() -> None:
    """A stretch's slow parts are the length-weighted mean of those of its pieces: a gap in the record is two legs merged."""
    pieces_a, pieces_b = np.array([0.2, 0.3]), np.array([0.3, 0.5])
    whole_a, whole_b = np.array([0.2]), np.array([0.5])
    other = np.array([0.7]), np.array([0.8])
    weights = np.array([0.1, 0.2]) / 0.3
    smooth = Prior(
        **{**{f: getattr(SIMPLE, f) for f in SIMPLE.__slots__}, "patch_growth": 0.0, "wander_power": 1.0}
    )
    apart = prior.covariance(smooth, pieces_a, pieces_b, *other, 0.0)[:, 0]
    merged = prior.covariance(smooth, whole_a, whole_b, *other, 0.0)[0, 0]
    assert weights @ apart == pytest.approx(merged, rel=1e-6)
    assert weights @ prior.mean(smooth, pieces_a, pieces_b) == pytest.approx(
        prior.mean(smooth, whole_a, whole_b)[0]
    )


@pytest.mark.parametrize("n", [1, 2, 7, 30])
def test_prior_is_a_covariance(n: int) -> None:
    """Every covariance is symmetric and has no negative variance in any direction, for each kind of reference."""
    a, b = grid(n)
    for quality in Quality:
        for climb in (0.0, 15.0, 34.0, 90.0):
            kind = kinds.of(Reference(b * 100, b * 80000, np.zeros(n), quality, climb))
            k = prior.covariance(kind.prior, a, b, a, b, kind.level_sd**2) + np.diag(
                prior.leg_noise(kind.prior, a, b)
            )
            assert np.allclose(k, k.T)
            assert np.linalg.eigvalsh(k).min() > -1e-9


def test_totals_of_one_leg_are_the_leg_itself() -> None:
    """The moments of a single lognormal leg are kept exactly."""
    a, b = np.array([[0.3]]), np.array([[0.4]])
    zero = np.zeros((1, 1))
    legs = legs_ahead(
        SIMPLE, seen_of(np.zeros(0), np.zeros(0), np.zeros(0)), StretchesAhead(a, b, zero, zero), 0.1
    )
    t = totals(legs, np.array([[3600.0]]))
    assert t.mean[0, 0] == pytest.approx(np.log(3600.0) + legs.mean[0, 0])
    assert t.cov[0, 0, 0] == pytest.approx(legs.cov[0, 0, 0])


def test_a_limit_far_off_says_nothing_and_a_near_one_is_a_cut_normal() -> None:
    """Told a limit, the finish is the normal cut there (scipy's truncnorm), up to the soft edge; far off it is untouched."""
    plain = Totals(np.array([[9.0, 10.0]]), np.array([[[0.04, 0.03], [0.03, 0.05]]]))
    far = limit.told(plain, np.exp(np.array([20.0])))
    assert np.allclose(far.mean, plain.mean)
    assert np.allclose(far.cov, plain.cov)
    near = limit.told(plain, np.exp(np.array([10.1])))
    sd = np.sqrt(0.05)
    want = stats.truncnorm(-np.inf, 0.1 / sd, loc=10.0, scale=sd)
    assert near.mean[0, 1] == pytest.approx(want.mean(), abs=0.002)
    assert near.cov[0, 1, 1] == pytest.approx(want.var(), rel=0.03)
    assert near.mean[0, 0] < 9.0


def test_curves_rise_whatever_the_net_says() -> None:
    """No output of a net can make quantiles cross."""
    outputs = np.random.default_rng(5).normal(0.0, 5.0, (500, 8))
    assert np.all(np.diff(curve(outputs), axis=-1) > 0)
    assert np.allclose(curve(np.zeros(8)), margins.KNOT_Z)
    assert np.allclose(correct((), np.zeros((2, 3, 4)), np.ones(2), 1.0), margins.KNOT_Z)


def test_truncation_carries_over_exactly() -> None:
    """Scores known to exceed a floor are those of scipy's truncated normal, also 30 sd out."""
    z = np.array([-2.0, 0.0, 1.5])
    for floor in (-3.0, 0.5, 4.0):
        want = stats.truncnorm(floor, np.inf).isf(stats.norm.sf(z))
        assert np.allclose(margins.truncated_above(z, floor), want, rtol=1e-7)
    assert np.all(margins.truncated_above(z, 30.0) > 30.0)
    assert np.array_equal(margins.truncated_above(z, -np.inf), z)


def test_joint_scores_have_normal_margins_and_the_correlation() -> None:
    """Weighted margins are standard normal, finely so in the far tail of the next arrival; the
    correlation is the one asked for.
    """
    corr = np.array([[1.0, 0.8, 0.6], [0.8, 1.0, 0.9], [0.6, 0.9, 1.0]])
    scores, weights = margins.joint_scores(corr, 400)
    assert weights.sum() == pytest.approx(1.0)
    for j in range(3):
        got = margins.weighted_quantiles(scores[:, j], weights, np.array([0.05, 0.5, 0.9, 0.995]))
        want = stats.norm.ppf([0.05, 0.5, 0.9, 0.995])
        assert np.allclose(got[:3], want[:3], atol=0.03)
        # only the first column is layered finely in its tail; the others have steps of a body path's weight there
        assert got[3] == pytest.approx(want[3], abs=0.02 if j == 0 else 0.1)
    seen = (scores * weights[:, None]).T @ scores
    assert np.allclose(seen, corr, atol=0.05)


def test_correlations_that_cannot_be_give_the_nearest_that_can() -> None:
    """Lognormal sums matched by moments may correlate beyond 1: what can be is kept, nothing is raised."""
    impossible = np.array([[1.0, 1.3, 0.9], [1.3, 1.0, 0.95], [0.9, 0.95, 1.0]])
    scores, weights = margins.joint_scores(impossible, 400)
    assert np.all(np.isfinite(scores))
    found = (weights[:, None] * scores).T @ scores
    assert np.diag(found) == pytest.approx(1.0, abs=0.05)
    assert found[0, 1] > 0.95
    assert np.abs(found).max() < 1.05


def test_kinds_depend_on_quality_and_climb_only() -> None:
    """Better references scatter less; between fitted cases the windows are widened; names play no part."""

    def kind(quality: Quality, climb: float) -> kinds.ReferenceKind:
        return kinds.of(Reference([50.0], [30000.0], [0.0], quality, climb, WhoseTarget.ANYBODY))  # type: ignore[arg-type]

    a, b = np.array([0.4]), np.array([0.45])
    noise = [prior.leg_noise(kind(q, 34.0).prior, a, b)[0] for q in (Quality.DISTANCE, Quality.PAST_RESULTS)]
    middle = prior.leg_noise(kind(Quality.COST_MODEL, 34.0).prior, a, b)[0]
    assert noise[0] > middle > noise[1]
    assert kind(Quality.DISTANCE, 2.0).widen == 1.0
    assert kind(Quality.PAST_RESULTS, 34.0).widen == 1.0
    assert kind(Quality.DISTANCE, 20.0).widen > 1.0
    # a plan of the cost model is fitted on both grounds together, and serves what lies between
    assert [kind(Quality.COST_MODEL, climb).widen for climb in (2.0, 20.0, 34.0)] == [1.0] * 3
    assert kind(Quality.OWN_DATA, 20.0).prior == kind(Quality.COST_MODEL, 20.0).prior
    assert kind(Quality.COST_MODEL, 100.0).widen > 1.0
    assert kind(Quality.PAST_RESULTS, 100.0).widen > 1.0
    for climb in (0.0, 10.0, 34.0, 60.0):
        assert sum(w for w, _ in kind(Quality.DISTANCE, climb).nets) == pytest.approx(1.0)


def test_corrections_learned_from_little_are_believed_little() -> None:
    """Trust grows with the years a net was shown and with the points seen, and stays between 0 and 1."""

    def trust(years: float, points: int) -> float:
        ones = np.ones((1, points))
        return float(trust_in_nets(years, StretchesRun(ones, ones, ones, ones, ones, ones, ones))[0])

    assert 0.0 < trust(5, 1) < trust(5, 2) < trust(5, 9) < trust(18, 9) < 1.0
    assert trust(0, 9) == 0.0


def test_mishaps_move_only_the_far_tail_of_the_next_arrival() -> None:
    """Of all quantiles only the 99.5% time of the next point changes; it stays beyond the 95% time."""
    used = Totals(np.array([[8.0, 9.0]]), np.array([[[0.02, 0.01], [0.01, 0.02]]]))
    plain = np.broadcast_to(margins.KNOT_Z, (1, 2, 8))
    for tail in ((0.6, 0.5, 3.0), (0.01, 1.0, 3.0)):
        out = with_mishaps(plain, used, used, np.array([20000.0]), tail)
        assert np.array_equal(out[0, 1], plain[0, 1])
        assert np.array_equal(out[0, 0, :-1], plain[0, 0, :-1])
        assert out[0, 0, -1] > out[0, 0, -2]


def test_who_is_very_late_may_stay_so_the_longer() -> None:
    """Past the 99.5% time lateness is Pareto, as scipy has it: what is still to come grows with what has passed."""
    middle, sd = np.log(3600.0), 0.2
    one = margins.Margins(np.array([middle]), np.array([sd]), margins.KNOT_Z[None], 2.5)
    high, last = (np.exp(middle + sd * margins.KNOT_Z[k]) - 3600.0 for k in (-2, -1))
    z = np.linspace(-4.0, 6.0, 501)
    times = one.at_z(z[:, None])[:, 0]
    assert np.all(np.diff(times) > 0)
    assert np.allclose(one.z_of(0, times), z, atol=1e-6)
    assert times[np.searchsorted(z, 1.0)] == pytest.approx(np.exp(middle + sd * 1.0), rel=1e-9)
    for beyond in (1.2, 2.0, 7.0):
        got = stats.norm.sf(one.z_of(0, np.array(3600.0 + beyond * last)))
        assert got == pytest.approx(0.005 * stats.pareto(2.5).sf(beyond), rel=1e-6)
    assert stats.norm.sf(one.z_of(0, np.array(3600.0 + high))) == pytest.approx(0.05)
    still = []
    for hours in (0.5, 1.0, 2.0, 4.0):
        floor = 3600.0 + hours * 3600.0
        scores = margins.truncated_above(np.array([0.0]), float(one.z_of(0, np.array(floor))))
        still.append(float(one.at_z(scores[:, None])[0, 0]) - floor)
    assert all(a < b for a, b in itertools.pairwise(still))
    curves = margins.KNOT_Z[None, None]
    field = margins.times_at(
        np.array([[middle]]), np.array([[sd]]), curves, np.array([0.5, 0.97, 0.999]), 2.5
    )
    alone = one.at_z(stats.norm.ppf([0.5, 0.97, 0.999])[:, None])[:, 0]
    assert np.allclose(field[0, 0], alone)


def test_quantiles_of_paths_never_fall_when_a_path_is_later() -> None:
    """Unequal weights, any one value raised: no quantile falls; equal values give that value."""
    draws = np.random.default_rng(3)
    values, weights = draws.normal(5e4, 4e3, 150), draws.uniform(0.0, 1.0, 150) ** 4
    probs = np.array([0.001, 0.05, 0.5, 0.9, 0.995])
    before = margins.weighted_quantiles(values, weights, probs)
    for i in range(0, 150, 7):
        raised = values.copy()
        raised[i] += 9000.0
        assert np.all(margins.weighted_quantiles(raised, weights, probs) >= before - 1e-6)
    assert np.allclose(margins.weighted_quantiles(np.full(150, 7.0), weights, probs), 7.0)


@pytest.mark.parametrize("quality", list(Quality))
@pytest.mark.parametrize("spread", [0.13, 0.16, 0.25])
def test_before_the_start_the_finish_scatters_as_the_plan_says(plan, quality, spread) -> None:
    """The window of the finish before anything is seen is the plan's own range of it, whatever the course adds."""
    told = replace(plan, quality=quality, spread=spread)
    early, late = posterior(told).view(0.0).quantiles(plan.n - 1, np.array([0.1, 0.9]))
    assert np.log(late / early) / (2 * 1.2816) == pytest.approx(spread, rel=0.02)


def test_a_target_says_less_the_more_is_seen_and_is_doubted_where_her_times_speak_against_it(plan) -> None:
    """On her plan a surer target narrows the finish, early more than late; far off it she is not held to it."""
    probs = np.array([0.1, 0.5, 0.9])

    def finish(spread: float, points: int, slower: float = 1.0) -> np.ndarray:
        seen = [Sighting(i, arrived_s=slower * float(plan.elapsed_s[i])) for i in range(points)]
        told = replace(plan, spread=spread)
        return posterior(told, seen).view(0.0).quantiles(plan.n - 1, probs)

    def width(q: np.ndarray) -> float:
        return float(np.log(q[2] / q[0]))

    early, late = (width(finish(0.05, k)) / width(finish(0.2, k)) for k in (1, 10))
    assert early < 0.8 < late <= 1.0
    # what is left of the target's pull, as a share of what she is behind it
    pulls = [1.0 - np.log(finish(0.05, 8, x)[1] / finish(0.05, 8)[1]) / np.log(x) for x in (1.05, 1.6)]
    assert 0.0 < pulls[1] < pulls[0]


def test_a_spread_is_above_nothing(plan) -> None:
    """A plan can't be quite sure."""
    with pytest.raises(ValueError, match="spread is 0"):
        replace(plan, spread=0.0)
