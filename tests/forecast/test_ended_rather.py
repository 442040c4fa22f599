"""When silence says that her race has rather ended: one reporter who may fail does not silence it, several add up."""

from dataclasses import replace

import numpy as np
import pytest

from server.forecast.posterior import posterior
from server.forecast.values import Reference, Silence, Watcher
from server.forecast.view import Posterior
from tests.forecast.test_odds import seen

LINE, HIGH, HALF = 0.002, 0.95, 0.5
HOUR = 3600.0


@pytest.fixture
def out_of_six(plan: Reference) -> Posterior:
    """Seen at six points of fourteen, on her plan."""
    return posterior(plan, seen(plan))


def watched(*chances: tuple[int, float]) -> Silence:
    return Silence(tuple(Watcher(p, chance=c) for p, c in chances))


def ended(post: Posterior, silence: Silence, going: float = HALF) -> float:
    found = post.ended_rather_s(going, post.last_fact_s, silence)
    return np.inf if found is None else found


def test_a_mat_that_may_fail_is_no_reason_to_wait_for_the_next(out_of_six: Posterior) -> None:
    """Mats of 97%: the line waits for the silence of a second point, or a third."""
    mats = watched(*((p, 0.97) for p in range(6, 14)))
    line = out_of_six.unheard_falls_under(LINE, out_of_six.last_fact_s, mats)
    assert line is not None
    assert ended(out_of_six, mats) < line - HOUR / 2


def test_never_before_nearly_all_would_have_been_there(out_of_six: Posterior) -> None:
    """However sure the reporter, and however likely an end: not a second before."""
    surely = float(out_of_six.view(out_of_six.last_fact_s).quantiles(6, np.array([HIGH]))[0])
    sure = watched(*((p, 1.0) for p in range(6, 14)))
    assert ended(out_of_six, sure, going=1.0) == pytest.approx(surely)
    assert ended(out_of_six, sure) >= surely


def test_each_silent_reporter_brings_it_forward(out_of_six: Posterior) -> None:
    """A poor reporter alone, then with another at the same point, then with a good one."""
    poor = watched((6, 0.7), (8, 0.7))
    two = watched((6, 0.7), (6, 0.7), (8, 0.7), (8, 0.7))
    good = watched((6, 0.7), (6, 0.97), (8, 0.7), (8, 0.97))
    times = [ended(out_of_six, s) for s in (poor, two, good)]
    assert times[0] > times[1] > times[2]


def test_at_that_moment_the_odds_are_what_they_say(out_of_six: Posterior) -> None:
    """A minute before she is still rather going on, a minute after not."""
    mats = watched(*((p, 0.9) for p in range(6, 14)))
    at = ended(out_of_six, mats)
    assert out_of_six.view(at - 60.0, mats).probability_going() >= HALF
    assert out_of_six.view(at + 60.0, mats).probability_going() < HALF


def test_where_nobody_reports_it_never_comes(out_of_six: Posterior) -> None:
    """Nor while nobody could have been heard."""
    deaf = Silence((Watcher(6, chance=0.97, covered_s=((0.0, 1.0),)),))
    assert ended(out_of_six, Silence()) == np.inf
    assert ended(out_of_six, deaf) == np.inf


def test_who_runs_near_the_limit_is_asked_after_sooner(plan: Reference) -> None:
    """The odds of having stopped that flags are made with, to which the limit is told, count for the alarm and for no other
    odds."""
    mats = watched(*((p, 0.97) for p in range(6, 14)))
    near, far = (posterior(plan, seen(plan), float(plan.elapsed_s[-1]) * by) for by in (0.98, 2.0))
    assert 1.0 - near.flagged[0] > 2.0 * (1.0 - far.flagged[0])
    assert near.survival == pytest.approx(far.survival)
    assert ended(near, mats) < ended(replace(near, flagged=near.survival, firsts={}), mats) - HOUR / 12


@pytest.mark.parametrize("by", [1.3, 2.0, 3.0])
@pytest.mark.parametrize("pace", [0.9, 1.0, 1.1])
def test_who_runs_well_within_the_limit_is_asked_after_no_later_for_it(
    plan: Reference, by: float, pace: float
) -> None:
    """A generous limit says that she need not stop for it, not that nothing can happen to her."""
    mats = watched(*((p, 0.97) for p in range(6, 14)))
    told = posterior(plan, seen(plan, factor=pace), float(plan.elapsed_s[-1]) * by)
    assert ended(told, mats) <= ended(replace(told, flagged=told.survival, firsts={}), mats)
