"""Odds, silence and whereabouts."""

import itertools

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from server.forecast.posterior import posterior
from server.forecast.stopping import made
from server.forecast.values import Fact, NotYet, Reference, Sighting, Silence, Watcher

HALF = np.array([0.5])


def seen(plan: Reference, upto: int = 6, factor: float = 1.0) -> list[Fact]:
    return [Sighting(p, arrived_s=float(plan.elapsed_s[p]) * factor) for p in range(upto)]


def test_odds_fall_along_the_course_and_rise_with_time(plan: Reference) -> None:
    """The farther the point the smaller the odds; by a later time they are larger; arriving includes stopping."""
    view = posterior(plan, seen(plan)).view(float(plan.elapsed_s[5]))
    gets = [view.probability_arrives(p) for p in range(6, 14)]
    assert all(a > b for a, b in itertools.pairwise(gets))
    assert 0.3 < gets[-1] < 1.0
    by = [view.probability_by(9, t) for t in (*np.linspace(0.0, 2e5, 40), np.inf)]
    assert all(a <= b for a, b in itertools.pairwise(by))
    assert by[-1] == pytest.approx(view.probability_arrives(9))


def test_the_limit_told_does_not_leak_into_the_odds(plan: Reference) -> None:
    """Windows use the limit; odds of arriving, of a cut-off and of silence are the same with and without."""
    now = float(plan.elapsed_s[5]) * 1.2
    tight = posterior(plan, seen(plan, 6, 1.2), 30 * 3600.0).view(now)
    free = posterior(plan, seen(plan, 6, 1.2)).view(now)
    assert tight.quantiles(13, HALF)[0] < free.quantiles(13, HALF)[0]
    for t in (90000.0, 108000.0, 130000.0):
        assert tight.probability_by(13, t) == pytest.approx(free.probability_by(13, t), abs=0.02)
    assert tight.probability_arrives(13) == free.probability_arrives(13)


def test_a_cutoff_out_is_harder_than_a_cutoff_in(plan: Reference) -> None:
    """To be out by a time is less likely than to be in by it."""
    view = posterior(plan, seen(plan)).view(float(plan.elapsed_s[5]))
    t = float(plan.elapsed_s[8])
    assert view.probability_cutoff(8, t, leaving=True) < view.probability_cutoff(8, t, leaving=False)


@given(
    st.floats(0.0, 1.0), st.floats(0.0, 1.0), st.floats(-1.0, 2.0), st.floats(0.3, 1.5), st.floats(0.0, 3.0)
)
def test_who_hurries_makes_it_no_less_often_for_more_time_or_nearer_to_it(
    p: float, q: float, a: float, b: float, c: float
) -> None:
    """More of her likely times in time, or less of the way to go: no lower odds; none or all of them is no and yes."""
    low, high = sorted((p, q))
    assert 0.0 <= made((a, b, c), low, 0.4) <= made((a, b, c), high, 0.4) <= 1.0
    assert made((a, b, c), p, low) <= made((a, b, c), p, high)
    assert made((a, b, c), 0.0, q) == 0.0
    assert made((a, b, c), 1.0, q) == 1.0
    assert made((0.0, 1.0, 0.0), 0.3, q) == pytest.approx(0.3, abs=1e-6)


def test_odds_of_a_cutoff_are_no_larger_than_of_getting_there_and_larger_than_by_her_times(
    plan: Reference,
) -> None:
    """Near a cut-off she hurries: more likely than her times alone say, never more than that she gets there at all."""
    view = posterior(plan, seen(plan)).view(float(plan.elapsed_s[5]))
    due = float(view.quantiles(9, HALF)[0])
    for hours in (-1.0, -0.5, 0.0, 0.5, 1.0, 4.0, 30.0):
        t = due + hours * 3600.0
        odds = view.probability_cutoff(9, t, leaving=False)
        assert odds <= view.probability_arrives(9) + 1e-12
        if abs(hours) <= 1.0:
            assert odds > view.probability_by(9, t)
    assert view.probability_cutoff(2, float(plan.elapsed_s[2]) + 1.0, leaving=False) == 1.0
    assert view.probability_cutoff(2, float(plan.elapsed_s[2]) - 1.0, leaving=False) == 0.0


def test_silence_that_lasts_says_she_has_stopped(plan: Reference) -> None:
    """With a sure watcher ahead, the odds that she still goes fall with the hours, and the alarm line is crossed once."""
    post = posterior(plan, seen(plan))
    watch = Silence(
        (Watcher(6, 0.97, 120.0, 0.5), Watcher(7, 0.97, 120.0, 0.5), Watcher(8, 0.97, 120.0, 0.5))
    )
    due = float(post.view(0.0).quantiles(6, HALF)[0])
    going = [post.view(due + h * 3600.0, watch).probability_going() for h in (-2, 0, 2, 5, 9)]
    assert all(a > b for a, b in itertools.pairwise(going))
    assert going[0] > 0.9
    assert going[-1] < 0.1
    at = post.unheard_falls_under(0.005, due, watch)
    assert at is not None
    assert due < at < due + 6 * 3600.0
    assert post.view(at, watch).probability_unheard() < 0.005
    assert post.view(at - 2.0, watch).probability_unheard() >= 0.005
    assert post.unheard_falls_under(0.005, due, Silence()) is None


def test_the_alarm_line_is_the_windows_own_tail(plan: Reference) -> None:
    """With one watcher who always reports at once, the 0.5% line is crossed at the 99.5% time of her arrival."""
    post = posterior(plan, seen(plan))
    at = post.unheard_falls_under(0.005, 0.0, Silence((Watcher(6, 1.0, 1e-3, 0.1),)))
    assert at == pytest.approx(float(post.view(0.0).quantiles(6, np.array([0.995]))[0]), abs=180.0)


def test_an_outage_delays_the_alarm_by_as_long_as_it_lasts(plan: Reference) -> None:
    """Time in which no report could have come through does not count towards the alarm."""
    post = posterior(plan, seen(plan))
    due = float(post.view(0.0).quantiles(6, HALF)[0])
    always = post.unheard_falls_under(0.005, 0.0, Silence((Watcher(6, 0.999, 60.0, 0.5),)))
    gap = ((0.0, due - 7200.0), (due + 4 * 3600.0, 1e7))
    broken = post.unheard_falls_under(0.005, 0.0, Silence((Watcher(6, 0.999, 60.0, 0.5, gap),)))
    assert always is not None
    assert broken is not None
    assert broken >= due + 4 * 3600.0 > always


def test_not_yet_at_the_next_point_lowers_the_odds_of_going(plan: Reference) -> None:
    """Hours past her time and not in: likelier that she has stopped than before."""
    facts = seen(plan)
    now = float(plan.elapsed_s[6]) + 3 * 3600.0
    before = posterior(plan, facts).view(now).probability_arrives(13)
    after = posterior(plan, [*facts, NotYet(6, now)]).view(now).probability_arrives(13)
    assert after < 0.7 * before


def test_whereabouts_lie_between_the_last_point_and_the_finish(plan: Reference) -> None:
    """The place moves on with the clock and stays on the course."""
    post = posterior(plan, seen(plan))
    places = [
        float(post.view(float(plan.elapsed_s[5]) + h * 3600.0).place_km(HALF)[0])
        for h in (0.0, 1.0, 4.0, 40.0)
    ]
    assert places[0] == pytest.approx(plan.km[5], abs=0.5)
    assert places == sorted(places)
    assert places[-1] == pytest.approx(161.0)


def test_paths_have_the_windows_as_margins(plan: Reference) -> None:
    """Any probability read off the joint paths is the window's own quantile."""
    view = posterior(plan, seen(plan), 32 * 3600.0).view(float(plan.elapsed_s[5]))
    for column, point in enumerate(range(6, 14)):
        for p in (0.1, 0.5, 0.9):
            t = float(view.quantiles(point, np.array([p]))[0])
            assert np.dot(view.weights, view.arrivals_s[:, column] <= t) == pytest.approx(p, abs=0.01)
