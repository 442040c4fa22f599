"""What must hold for any facts at all."""

from typing import Any

import numpy as np
import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

from server.forecast.posterior import posterior
from server.forecast.stages import StageEnd, within
from server.forecast.values import (
    Condition,
    Fact,
    Fineness,
    Held,
    KnownStop,
    NotYet,
    Position,
    Quality,
    Reference,
    Rest,
    Sighting,
    Silence,
    Watcher,
    WhoseTarget,
)

PROBS = np.array([0.05, 0.1, 0.25, 0.5, 0.75, 0.9, 0.95])
FEW = Fineness(paths=120)
KM = np.array([9, 20, 31, 42, 55, 66, 78, 90, 101, 113, 125, 137, 149, 161.0])
ARRIVE = 26 * 3600 * (KM / 161.0) ** 1.08
quick = settings(max_examples=40, deadline=None, suppress_health_check=[HealthCheck.function_scoped_fixture])


def reference(quality: Quality = Quality.COST_MODEL, stop_s: float = 300.0) -> Reference:
    stops = np.full(14, stop_s)
    stops[-1] = 0.0
    return Reference(KM, ARRIVE, stops, quality, 30.0, WhoseTarget.HERS)


@st.composite
def runs(draw: Any) -> tuple[list[Fact], float]:
    """Facts of a believable race so far, and the time of the last of them."""
    reached = draw(st.integers(0, 12))
    level = draw(st.floats(0.7, 1.6))
    facts: list[Fact] = []
    now, before = 0.0, 0.0
    for p in range(reached):
        now += (ARRIVE[p] - before) * level * draw(st.floats(0.8, 1.4))
        before = ARRIVE[p]
        how = draw(st.sampled_from(["in", "in and out", "out", "missed", "through"]))
        if how == "in":
            facts.append(Sighting(p, arrived_s=now))
        elif how == "in and out":
            facts.append(
                Sighting(p, arrived_s=now, left_s=now + 200.0, sd_s=draw(st.sampled_from([0.0, 60.0])))
            )
        elif how == "out":
            facts.append(Sighting(p, left_s=now + 200.0))
        elif how == "through":
            facts.append(Sighting(p, arrived_s=now, left_s=now))
    if reached and draw(st.booleans()):
        at = now + 2000.0
        facts.append(Position(float(KM[reached - 1] + 0.4 * (KM[reached] - KM[reached - 1])), at, 80.0))
        now = at
    if draw(st.booleans()):
        facts.append(Condition(60.0, 110.0, 0.1, 0.05))
    if draw(st.booleans()):
        facts.append(Rest(now + 100.0, now + 900.0))
    if draw(st.booleans()):
        facts.append(Held(500.0, 1100.0))
    return facts, now


@quick
@given(run=runs(), seed=st.randoms())
def test_order_of_facts_is_nothing(run: tuple[list[Fact], float], seed: Any) -> None:
    """The same facts in any order give the same window to the last bit."""
    facts, now = run
    shuffled = list(facts)
    seed.shuffle(shuffled)
    one = posterior(reference(), facts, 32 * 3600.0, FEW)
    other = posterior(reference(), shuffled, 32 * 3600.0, FEW)
    assert np.array_equal(one.arrivals_s, other.arrivals_s)
    assert np.array_equal(one.departures_s, other.departures_s)
    assert one.view(now).probability_going() == other.view(now).probability_going()


@quick
@given(run=runs())
def test_windows_are_ordered_along_the_course_and_lie_ahead(run: tuple[list[Fact], float]) -> None:
    """At every probability each later point comes later; quantiles rise; nothing lies before the last fact."""
    facts, _ = run
    post = posterior(reference(), facts, None, FEW)
    view = post.view(post.last_fact_s)
    first = post.track.first
    table = np.array([view.quantiles(p, PROBS) for p in range(first, 14)])
    assert np.all(np.diff(table, axis=0) > 0)
    assert np.all(np.diff(table, axis=1) >= 0)
    assert np.all(table > post.track.clock.real(np.array(post.track.origin.at_s)))
    assert np.all(view.arrivals_s[:, 1:] >= view.departures_s[:, :-1])
    assert np.all(view.departures_s >= view.arrivals_s)


@quick
@given(run=runs(), ahead=st.integers(0, 3), waits=st.lists(st.floats(0.0, 40000.0), min_size=2, max_size=2))
def test_not_here_yet_never_makes_an_arrival_earlier(
    run: tuple[list[Fact], float], ahead: int, waits: list[float]
) -> None:
    """A later 'not here yet', at any point to come, moves no quantile of any point to an earlier time."""
    facts, now = run
    base = posterior(reference(), facts, 32 * 3600.0, FEW)
    point = min(base.track.first + ahead, 13)
    early, late = sorted(waits)
    tables = []
    for wait in (None, early, late):
        more: list[Fact] = facts if wait is None else [*facts, NotYet(point, now + wait)]
        view = posterior(reference(), more, 32 * 3600.0, FEW).view(now)
        tables.append(np.array([view.quantiles(p, PROBS) for p in range(base.track.first, 14)]))
    assert np.all(tables[1] >= tables[0] - 1e-6)
    assert np.all(tables[2] >= tables[1] - 1e-6)
    assert tables[2][point - base.track.first, 0] >= now + late - 1.0


@st.composite
def overdue(draw: Any) -> tuple[list[Fact], float]:
    """Somebody hours overdue: 'not here yet' from several points, rests, holds, stays, a position close to a point."""
    facts, now = draw(runs())
    first = posterior(reference(), facts, None, FEW).track.first
    hours = st.floats(0.0, 12 * 3600.0)
    if draw(st.booleans()):
        km0 = 0.0 if first == 0 else float(KM[first - 1])
        short = draw(st.sampled_from([0.02, 0.1, 0.4, 2.0]))
        facts.append(Position(max(float(KM[first]) - short, km0 + 0.01), now + 2500.0, 30.0))
    ahead = st.integers(first, 13)
    for _ in range(draw(st.integers(1, 4))):
        facts.append(NotYet(draw(ahead), now + draw(hours)))
    if draw(st.booleans()):
        facts.append(KnownStop(draw(st.integers(max(first - 1, 0), 13)), now + draw(hours)))
    begun = now + draw(hours)
    if draw(st.booleans()):
        facts.append(draw(st.sampled_from([Rest(begun), Rest(begun, begun + 4000.0)])))
    if draw(st.booleans()):
        facts.append(draw(st.sampled_from([Held(begun), Held(begun, begun + 4000.0)])))
    return facts, now + draw(hours)


@settings(quick, max_examples=120)
@given(run=overdue(), limit_s=st.sampled_from([None, 32 * 3600.0, 60 * 3600.0]))
def test_along_every_path_she_is_in_before_she_is_out_and_out_before_she_is_in_further_on(
    run: tuple[list[Fact], float], limit_s: float | None
) -> None:
    """However long she is overdue no path crosses, with the limit or without, as folded or as seen at a moment.

    Each later point takes its own part of a delay: one path in a hundred was in before it was out of the point before.
    """
    facts, now = run
    post = posterior(reference(), facts, limit_s, FEW)
    view = post.view(now)
    for arrive, leave in (
        (post.arrivals_s, post.departures_s),
        (post.plain_s, post.plain_out_s),
        (view.arrivals_s, view.departures_s),
    ):
        assert np.all(leave >= arrive)
        assert np.all(arrive[:, 1:] >= leave[:, :-1])
        assert np.all(arrive[:, 1:] > arrive[:, :-1])
    assert np.all(view.arrivals_s[:, 0] >= view.here_out_s)


@quick
@given(
    run=overdue(),
    night=st.integers(0, 5),
    told=st.floats(0.7, 1.0),
    until=st.floats(1.0, 3.0),
    finish=st.floats(0.8, 2.2),
)
def test_no_path_crosses_where_a_stage_has_its_limit(
    run: tuple[list[Fact], float], night: int, told: float, until: float, finish: float
) -> None:
    """Nor where a night lies ahead and each stage is to be done by its own limit; and no time becomes later."""
    facts, now = run
    first = posterior(reference(), facts, None, FEW).track.first
    end = min(first + night, 12)
    leaves = max(now, float(ARRIVE[end])) * until
    facts = [f for f in facts if not isinstance(f, KnownStop)]
    facts.append(KnownStop(end, leaves))
    post = posterior(reference(), facts, None, FEW)
    ends = [StageEnd(end, told * leaves), StageEnd(13, max(leaves, finish * float(ARRIVE[-1])))]
    found = within(post, ends)
    assert np.all(found.arrivals_s <= post.arrivals_s * (1.0 + 1e-9))
    assert np.all(found.departures_s >= found.arrivals_s)
    assert np.all(found.arrivals_s[:, 1:] >= found.departures_s[:, :-1] * (1.0 - 1e-9))


@quick
@given(run=runs(), later=st.floats(0.0, 60000.0))
def test_silence_where_nobody_reports_changes_nothing(run: tuple[list[Fact], float], later: float) -> None:
    """Watchers with no chance, or none of whose time was covered, leave everything as without them."""
    facts, now = run
    post = posterior(reference(), facts, None, FEW)
    nobody = Silence(tuple(Watcher(p, 0.0) for p in range(14)))
    no_signal = Silence(tuple(Watcher(p, 0.95, covered_s=()) for p in range(14)))
    plain = post.view(now + later)
    for silence in (nobody, no_signal):
        view = post.view(now + later, silence)
        assert np.array_equal(view.weights, plain.weights)
        assert view.probability_going() == pytest.approx(plain.probability_going(), abs=1e-12)
        assert view.probability_unheard() == pytest.approx(plain.probability_unheard(), abs=1e-12)


@quick
@given(run=runs(), later=st.lists(st.floats(0.0, 90000.0), min_size=2, max_size=2))
def test_more_silence_never_makes_an_unheard_arrival_likelier(
    run: tuple[list[Fact], float], later: list[float]
) -> None:
    """P(not heard | still going) only falls as covered time goes by."""
    facts, now = run
    post = posterior(reference(), facts, None, FEW)
    silence = Silence(tuple(Watcher(p, 0.9, 300.0, 1.0) for p in range(14)))
    early, late = sorted(later)
    assert (
        post.view(now + late, silence).probability_unheard()
        <= post.view(now + early, silence).probability_unheard() + 1e-12
    )


@quick
@given(run=runs())
def test_an_arrival_ends_its_window(run: tuple[list[Fact], float]) -> None:
    """Once seen in, the window of that point has no width and its odds are settled."""
    facts, _ = run
    post = posterior(reference(), facts, None, FEW)
    for p in np.flatnonzero(np.isfinite(post.track.arrived_s)):
        view = post.view(post.last_fact_s + 60.0)
        assert np.all(view.quantiles(int(p), PROBS) == post.track.arrived_s[p])
        assert view.probability_by(int(p), float(post.track.arrived_s[p])) == 1.0


@quick
@given(
    run=runs(),
    factor=st.floats(0.3, 3.0),
    quality=st.sampled_from(list(Quality)),
    limit=st.sampled_from([None, 30.0]),
)
def test_stretching_all_times_stretches_the_answer(
    run: tuple[list[Fact], float], factor: float, quality: Quality, limit: float | None
) -> None:
    """Plan, facts and limit all scaled: the windows scale too, so nothing leans on hours."""
    facts, _ = run
    plain = reference(quality, 0.0)
    stretched = Reference(plain.km, plain.elapsed_s * factor, plain.stop_s, quality, 30.0, WhoseTarget.HERS)
    more = [stretch(f, factor) for f in facts]
    one = posterior(plain, facts, None if limit is None else limit * 3600.0, FEW)
    other = posterior(stretched, more, None if limit is None else limit * 3600.0 * factor, FEW)
    assert np.allclose(other.arrivals_s, one.arrivals_s * factor, rtol=1e-6)


def stretch(fact: Fact, factor: float) -> Fact:
    """The same fact in a race whose clock runs otherwise."""
    if isinstance(fact, Sighting):
        times = [None if t is None else t * factor for t in (fact.arrived_s, fact.left_s)]
        return Sighting(fact.point, times[0], times[1], fact.sd_s * factor)
    if isinstance(fact, Position):
        return Position(fact.km, fact.at_s * factor, fact.accuracy_m)
    if isinstance(fact, (Rest, Held)):
        end = None if fact.end_s is None else fact.end_s * factor
        return type(fact)(fact.start_s * factor, end)
    return fact


@pytest.mark.parametrize("shift", [600.0, 7200.0])
def test_a_hold_shifts_everything_after_it(shift: float) -> None:
    """Facts before a hold and a hold of `shift` seconds after them: every later arrival moves by just that."""
    seen: list[Fact] = [Sighting(p, arrived_s=float(ARRIVE[p]) * 1.05) for p in range(5)]
    at = float(ARRIVE[4]) * 1.05 + 1.0
    plain = posterior(reference(), seen)
    held = posterior(reference(), [*seen, Held(at, at + shift)])
    for p in range(5, 14):
        assert np.allclose(held.view(at).quantiles(p, PROBS), plain.view(at).quantiles(p, PROBS) + shift)


def test_same_question_same_answer() -> None:
    """Asking again gives the same window to the last bit."""
    facts: list[Fact] = [Sighting(3, arrived_s=float(ARRIVE[3])), KnownStop(6, float(ARRIVE[6]) + 2000.0)]
    one, two = (posterior(reference(), facts, 30 * 3600.0) for _ in range(2))
    assert np.array_equal(one.view(1e5).quantiles(9, PROBS), two.view(1e5).quantiles(9, PROBS))


@quick
@given(st.floats(0.7, 1.6), st.integers(0, 12), st.floats(0.02, 12.0), st.floats(20.0, 400.0))
def test_a_position_just_before_a_point_leaves_a_forecast(
    level: float, p: int, short_km: float, every_s: float
) -> None:
    """Where a tracker shows her a few minutes before a point, crew stand there and ask: there is a forecast."""
    at = np.interp(KM[p] - min(short_km, 8.0), np.concatenate([[0.0], KM]), np.concatenate([[0.0], ARRIVE]))
    last = float(at) * level
    facts: list[Fact] = []
    for i in range(20, -1, -1):
        when = last - i * every_s
        if when > 600.0:
            km = np.interp(when / level, np.concatenate([[0.0], ARRIVE]), np.concatenate([[0.0], KM]))
            facts.append(Position(float(km), when, 8.0))
    view = posterior(reference(), facts, None, FEW).view(last + 30.0, Silence())
    windows = np.array([view.quantiles(q, PROBS) for q in range(view.posterior.track.first, len(KM))])
    assert np.all(np.isfinite(windows))
    assert np.all(np.diff(windows, axis=1) >= -1e-6)
    assert np.all(np.diff(windows, axis=0) >= -1e-6)


def test_a_position_just_before_a_point_puts_no_question_off() -> None:
    """Seen 400 m before the point she is late there no later than seen an hour before it, but for what she lost since.

    The allowance (10 min of 90%, 60 min of 99%) is our own choice.
    """

    def windows(*kms: float) -> tuple[np.ndarray[Any, np.dtype[np.float64]], float]:
        times = [float(np.interp(k, KM, ARRIVE)) for k in kms]
        facts: list[Fact] = [Position(k, t, 8.0) for k, t in zip(kms, times, strict=True)]
        view = posterior(reference(), facts, None).view(times[-1] + 60.0, Silence())
        return view.quantiles(6, np.array([0.9, 0.99])), times[-1]

    far = [60.0, 68.0, 70.0]
    whole, _ = windows(*far)
    close, seen = windows(*far, 72.0, 74.0, 76.0, 77.0, 77.6)
    assert close[0] <= whole[0] + 600.0
    assert close[1] <= whole[1] + 3600.0
    assert np.all(close > seen)
