"""Everything the forecast can be told, one kind of fact at a time."""

import numpy as np
import pytest

from server.forecast.posterior import posterior
from server.forecast.timeline import RunningTime, _edges, _sightings, build
from server.forecast.values import (
    Condition,
    Fact,
    Held,
    KnownStop,
    NotYet,
    Position,
    Reference,
    Rest,
    Retired,
    Sighting,
    Silence,
    Watcher,
)

PROBS = np.array([0.1, 0.5, 0.9])
HALF = np.array([0.5])


def middle(reference: Reference, facts: list[Fact], point: int) -> float:
    post = posterior(reference, facts)
    return float(post.view(post.last_fact_s).quantiles(point, HALF)[0])


def on_plan(plan: Reference, upto: int, factor: float = 1.0) -> list[Fact]:
    """In and out at the first points, factor times the planned times."""
    arrive = plan.elapsed_s * factor
    return [Sighting(p, float(arrive[p]), float(arrive[p] + plan.stop_s[p])) for p in range(upto)]


def test_nothing_known_yet_gives_the_plan_with_a_wide_window(plan: Reference) -> None:
    """Before the start the median lies near the plan and the band is wide; it narrows as points are seen."""
    start = posterior(plan).view(0.0).quantiles(13, PROBS)
    later = posterior(plan, on_plan(plan, 8)).view(float(plan.elapsed_s[7])).quantiles(13, PROBS)
    assert start[1] == pytest.approx(plan.elapsed_s[13], rel=0.08)
    assert start[2] - start[0] > 2.0 * (later[2] - later[0])


@pytest.mark.parametrize("factor", [0.8, 1.0, 1.25])
def test_the_first_leg_alone_moves_the_rest_but_not_all_the_way(plan: Reference, factor: float) -> None:
    """One point seen: the finish moves towards her pace, by less than all of it, and its window stays wide."""
    first: list[Fact] = [Sighting(0, arrived_s=float(plan.elapsed_s[0]) * factor)]
    post = posterior(plan, first)
    early, likely, late = post.view(post.last_fact_s).quantiles(13, PROBS)
    low, high = sorted((float(plan.elapsed_s[13]), float(plan.elapsed_s[13]) * factor))
    assert 0.92 * low < likely < 1.08 * high
    assert late - early > 0.1 * likely


def test_a_limit_already_gone_by_leaves_a_sound_forecast(plan: Reference) -> None:
    """Seen after the limit, or told one that lies before the start: finite windows in order, as if it were not told."""
    facts = on_plan(plan, 10, 1.3)
    last = float(plan.elapsed_s[9]) * 1.3
    plain = posterior(plan, facts).view(last).quantiles(13, PROBS)
    for limit in (0.9 * last, 10.0, -3600.0):
        got = posterior(plan, facts, limit).view(last).quantiles(13, PROBS)
        assert np.all(np.diff(got) > 0)
        assert got == pytest.approx(plain, rel=0.1)


def test_a_plan_that_is_far_off_is_left_behind(plan: Reference) -> None:
    """A runner 40% slower than her plan all along is forecast at her own pace, not the plan's."""
    got = middle(plan, on_plan(plan, 6, 1.4), 8)
    assert got == pytest.approx(1.4 * plan.elapsed_s[8], rel=0.06)


def test_out_tells_more_than_in(plan: Reference) -> None:
    """Known to have left, her next window is narrower than when only the arrival is known."""
    arrive = float(plan.elapsed_s[4])
    came: list[Fact] = [*on_plan(plan, 4), Sighting(4, arrived_s=arrive)]
    went: list[Fact] = [*on_plan(plan, 4), Sighting(4, arrived_s=arrive, left_s=arrive + 300.0)]
    wide, narrow = (posterior(plan, f).view(arrive + 300.0).quantiles(5, PROBS) for f in (came, went))
    assert narrow[2] - narrow[0] < wide[2] - wide[0]


def test_a_long_stop_seen_moves_all_that_follows(plan: Reference) -> None:
    """Leaving half an hour later than planned puts the next arrival about half an hour later."""
    arrive = float(plan.elapsed_s[5])
    short = middle(plan, [*on_plan(plan, 5), Sighting(5, arrive, arrive + 300.0)], 6)
    long = middle(plan, [*on_plan(plan, 5), Sighting(5, arrive, arrive + 2100.0)], 6)
    assert long - short == pytest.approx(1800.0, abs=60.0)


def test_a_known_stop_is_an_earliest_departure(plan: Reference) -> None:
    """Here and ahead: nobody leaves before the time said, and what follows is not earlier for it."""
    arrive = float(plan.elapsed_s[5])
    came: list[Fact] = [*on_plan(plan, 5), Sighting(5, arrived_s=arrive)]
    here = posterior(plan, [*came, KnownStop(5, arrive + 3600.0)]).view(arrive)
    assert here.out_quantiles(5, np.array([0.01]))[0] >= arrive + 3600.0
    assert here.quantiles(6, HALF)[0] > arrive + 3600.0
    ahead = posterior(plan, [*came, KnownStop(7, float(plan.elapsed_s[7]) + 5000.0)]).view(arrive)
    assert ahead.out_quantiles(7, np.array([0.01]))[0] >= plan.elapsed_s[7] + 5000.0 - 1.0
    plain = posterior(plan, came).view(arrive)
    assert np.all(ahead.quantiles(8, PROBS) >= plain.quantiles(8, PROBS))
    leg = float(plan.elapsed_s[8] - plan.elapsed_s[7] - plan.stop_s[7])
    until = float(plan.elapsed_s[7]) + 20000.0
    long = posterior(plan, [*came, KnownStop(7, until)]).view(arrive)
    assert long.quantiles(8, HALF)[0] == pytest.approx(until + leg, abs=0.25 * leg)


def test_a_rest_at_a_point_whose_end_is_told_is_its_stop(plan: Reference) -> None:
    """Nobody wrote that she left; that she went on after her rest says it, unless somebody wrote when."""
    arrive = float(plan.elapsed_s[4])
    came: list[Fact] = [*on_plan(plan, 4), Sighting(4, arrived_s=arrive)]
    rest = Rest(arrive + 60.0, arrive + 1500.0)
    assert build(plan, [*came, rest]).left_s[4] == arrive + 1500.0
    seen = Sighting(4, arrived_s=arrive, left_s=arrive + 1600.0)
    assert build(plan, [*came, seen, rest]).left_s[4] == arrive + 1600.0


def test_a_position_between_points_sharpens_the_next_window(plan: Reference) -> None:
    """Seen three quarters of the way, on pace, the window shrinks; a vague position is left out."""
    seen = on_plan(plan, 5)
    left = float(plan.elapsed_s[4] + 300.0)
    at = left + 0.75 * float(plan.elapsed_s[5] - left)
    km = float(plan.km[4] + 0.75 * (plan.km[5] - plan.km[4]))
    widths = []
    for facts in (seen, [*seen, Position(km, at, 1500.0)], [*seen, Position(km, at, 30.0)]):
        q = posterior(plan, facts).view(at).quantiles(5, PROBS)
        widths.append(q[2] - q[0])
    assert widths[2] < widths[1] <= widths[0]


def test_many_positions_do_not_feign_certainty(plan: Reference) -> None:
    """A tracker every 100 m is thinned: it tells little more than one every few kilometres."""
    seen = on_plan(plan, 5)
    left, gap = float(plan.elapsed_s[4] + 300.0), float(plan.km[5] - plan.km[4])
    pace = (float(plan.elapsed_s[5]) - left) / gap

    def width(step_km: float) -> float:
        ways = np.arange(step_km, 0.75 * gap + 1e-9, step_km)
        fixes: list[Fact] = [Position(float(plan.km[4] + w), left + w * pace, 20.0) for w in ways]
        q = posterior(plan, [*seen, *fixes]).view(left).quantiles(13, PROBS)
        return float(q[2] - q[0])

    assert width(0.1) > 0.8 * width(0.75 * gap)


def test_a_position_at_the_point_she_is_at_is_no_progress(plan: Reference) -> None:
    """A tracker that keeps sending from the aid station does not make her slow on the next leg."""
    arrive = float(plan.elapsed_s[5])
    came: list[Fact] = [*on_plan(plan, 5), Sighting(5, arrived_s=arrive)]
    still: list[Fact] = [*came, Position(float(plan.km[5]) + 0.05, arrive + 900.0, 20.0)]
    track = build(plan, still)
    assert track.seen_y.size == build(plan, came).seen_y.size
    assert middle(plan, still, 6) >= middle(plan, came, 6)


def test_points_missed_are_one_long_leg(plan: Reference) -> None:
    """Several points in a row without a record: what was seen before and after still counts."""
    full = on_plan(plan, 8, 1.1)
    gapped = [full[0], full[1], full[7]]
    assert middle(plan, gapped, 9) == pytest.approx(middle(plan, full, 9), rel=0.02)
    assert np.isnan(posterior(plan, gapped).view(0.0).quantiles(4, HALF)[0])


def test_a_report_taken_back_leaves_no_trace(plan: Reference) -> None:
    """Facts are all there is: without the wrong one the answer is as if it had never come."""
    facts = on_plan(plan, 6)
    before = posterior(plan, facts).arrivals_s
    posterior(plan, [*facts, Sighting(9, arrived_s=float(plan.elapsed_s[6]))])
    assert np.array_equal(posterior(plan, facts).arrivals_s, before)


def test_impossible_reports_do_not_break_the_forecast(plan: Reference) -> None:
    """Times that run backwards along the course are dropped in favour of the farther sighting."""
    facts: list[Fact] = [
        Sighting(3, arrived_s=30000.0),
        Sighting(4, arrived_s=20000.0),
        Position(40.0, 50000.0),
    ]
    view = posterior(plan, facts).view(60000.0)
    assert np.all(np.isfinite(view.quantiles(6, PROBS)))
    with pytest.raises(ValueError, match="point 14 is not one of the reference's 14 points"):
        posterior(plan, [Sighting(14, arrived_s=5.0)])


def test_two_reports_of_one_arrival_are_weighed_by_how_sure_they_are(plan: Reference) -> None:
    """The surer report counts for more; order does not matter."""
    one, other = Sighting(3, arrived_s=10000.0, sd_s=60.0), Sighting(3, arrived_s=10600.0, sd_s=600.0)
    got = build(plan, [one, other]).arrived_s[3]
    assert 10000.0 < got < 10050.0
    assert build(plan, [other, one]).arrived_s[3] == got


@pytest.mark.parametrize("jump_km", [-6.0, 5.0, 14.0])
def test_a_fix_far_off_is_not_believed_until_others_follow(plan: Reference, jump_km: float) -> None:
    """A tracker that jumps for a moment, back, on or past the next point, changes nothing; two more from there do."""
    seen = on_plan(plan, 5)
    left, pace = float(plan.elapsed_s[4] + plan.stop_s[4]), 640.0
    track = [Position(float(plan.km[4]) + k, left + k * pace, 20.0) for k in range(1, 6)]
    off = Position(track[-1].km + jump_km, track[-1].at_s + 300.0, 20.0)
    assert middle(plan, [*seen, *track, off], 7) == pytest.approx(middle(plan, [*seen, *track], 7), abs=1.0)
    amid = Position(track[2].km + jump_km, track[2].at_s + 60.0, 20.0)
    assert middle(plan, [*seen, *track, amid], 7) == pytest.approx(middle(plan, [*seen, *track], 7), abs=1.0)
    back = [Position(track[0].km + 0.3 * k, track[-1].at_s + k * 500.0, 20.0) for k in range(1, 8)]
    assert middle(plan, [*seen, track[0], track[-1], *back], 7) > middle(
        plan, [*seen, track[0], track[-1]], 7
    )


def test_a_tracker_that_lags_is_read_as_late_once_two_points_say_so(plan: Reference) -> None:
    """Its fixes lie before each point for ten minutes after she was seen there; one report that came too early is no lag."""
    pace, lag = 600.0, 600.0

    def seen_at(km: float) -> float:
        return km * pace

    seen: list[Fact] = [Sighting(p, arrived_s=seen_at(float(plan.km[p]))) for p in range(4)]
    places = [float(plan.km[p]) + w for p in (1, 2, 3) for w in (-0.6, -0.2, 0.5, 1.0, 4.0)]
    sound: list[Fact] = [Position(km, seen_at(km), 20.0) for km in places]
    late: list[Fact] = [Position(km, seen_at(km) + lag, 20.0) for km in places]
    right = middle(plan, [*seen, *sound], 4)
    assert middle(plan, [*seen, *late], 4) == pytest.approx(right, abs=90.0)
    early = [*seen[:3], Sighting(3, arrived_s=seen_at(float(plan.km[3])) - lag)]
    assert middle(plan, [*early, *sound], 4) == pytest.approx(right, abs=90.0)


@pytest.mark.parametrize(("lag", "found"), [(0.0, False), (60.0, False), (600.0, True), (900.0, True)])
def test_a_lag_is_found_where_she_stays_a_few_minutes(plan: Reference, lag: float, found: bool) -> None:
    """Three minutes at each point; a fix that still shows her there is no word for a tracker that is in time."""
    pace, stop = 600.0, 180.0

    def at(km: float) -> float:
        return km * pace + stop * sum(float(plan.km[p]) < km for p in range(4))

    seen: list[Fact] = [
        Sighting(p, arrived_s=at(float(plan.km[p])), left_s=at(float(plan.km[p])) + stop) for p in range(4)
    ]
    places = np.arange(0.5, float(plan.km[3]) + 6.0, 0.25)
    track: list[Fact] = [Position(float(km), at(float(km)) + lag, 20.0) for km in places]
    for p in range(4):
        track += [
            Position(float(plan.km[p]), at(float(plan.km[p])) + w + lag, 20.0)
            for w in (0.0, 60.0, 120.0, 180.0)
        ]
    told = _edges(plan, [*seen, *track], RunningTime(()), _sightings(plan, [*seen, *track]))[1]
    assert (told == pytest.approx(lag, abs=60.0)) if found else (told == 0.0)


def test_a_point_where_she_was_seen_in_and_out_says_once_whether_the_tracker_lags(plan: Reference) -> None:
    """A report of both times that came too early is one report: taken for two, it would put the tracker's word back."""

    def seen_at(km: float) -> float:
        return km * 600.0

    stop = 240.0
    there = seen_at(float(plan.km[3])) - 900.0
    seen: list[Fact] = [Sighting(p, arrived_s=seen_at(float(plan.km[p]))) for p in range(3)]
    track = [Position(float(plan.km[3]) - w, seen_at(float(plan.km[3]) - w), 20.0) for w in (1.2, 0.7, 0.4)]
    early = Sighting(3, arrived_s=there, left_s=there + stop)
    facts: list[Fact] = [*seen, early, *track]
    assert _edges(plan, facts, RunningTime(()), _sightings(plan, facts))[1] == 0.0


def test_conditions_set_by_the_crew_stretch_their_part_only(plan: Reference) -> None:
    """20% slower from km 90 to 101 delays later points by a fifth of that part and no earlier one."""
    seen = on_plan(plan, 5)
    mud = [*seen, Condition(float(plan.km[7]), float(plan.km[8]), float(np.log(1.2)))]
    assert middle(plan, mud, 7) == pytest.approx(middle(plan, seen, 7), abs=5.0)
    part = plan.elapsed_s[8] - plan.elapsed_s[7] - plan.stop_s[7]
    assert middle(plan, mud, 8) - middle(plan, seen, 8) == pytest.approx(0.2 * part, rel=0.15)
    unsure = [*seen, Condition(float(plan.km[7]), float(plan.km[8]), float(np.log(1.2)), 0.3)]
    q, p = (posterior(plan, f).view(0.0).quantiles(8, PROBS) for f in (unsure, mud))
    assert q[2] - q[0] > p[2] - p[0]


def test_a_rest_between_points_is_not_held_against_her_pace(plan: Reference) -> None:
    """An hour asleep under a tree delays her by that hour; it does not make the rest of the race slower."""
    seen = on_plan(plan, 5)
    left = float(plan.elapsed_s[4]) + 300.0
    arrive = float(plan.elapsed_s[5])
    plain = [*seen, Sighting(5, arrive, arrive + 300.0)]
    rested = [*seen, Rest(left + 600.0, left + 4200.0), Sighting(5, arrive + 3600.0, arrive + 3900.0)]
    assert middle(plan, rested, 9) - middle(plan, plain, 9) == pytest.approx(3600.0, abs=60.0)


def test_a_rest_lasts_as_long_as_rests_do_from_what_was_last_heard(plan: Reference) -> None:
    """Nobody sees her move again out there: hours of silence after 'resting' put nothing off, hearing that she still
    rests does."""
    begin = float(plan.elapsed_s[4]) + 2000.0
    seen: list[Fact] = [*on_plan(plan, 5), Rest(begin)]
    post = posterior(plan, seen)
    early, late = (post.view(begin + wait).quantiles(5, PROBS) for wait in (60.0, 7200.0))
    assert np.allclose(late, early)
    again = posterior(plan, [*seen, Rest(begin + 3600.0)]).view(begin + 7200.0).quantiles(5, PROBS)
    assert np.all(again > late)
    due = posterior(plan, [*seen, NotYet(5, begin + 3600.0)]).view(begin + 7200.0).quantiles(5, PROBS)
    assert due[0] < again[0], "'not here yet' does not say that she sits where she was"
    watch = Silence((Watcher(5, 0.999, 60.0, 0.5),))
    assert post.unheard_falls_under(0.005, begin, watch) is not None


def test_held_and_not_released_moves_with_the_clock(plan: Reference) -> None:
    """Under a hold with no end every later arrival moves by just the time that passes."""
    since = float(plan.elapsed_s[4]) + 400.0
    post = posterior(plan, [*on_plan(plan, 5), Held(since)])
    one, two = (post.view(since + wait).quantiles(8, PROBS) for wait in (100.0, 1900.0))
    assert np.allclose(two - one, 1800.0)


def test_retired_gets_nowhere_and_finished_is_done(plan: Reference) -> None:
    """Retired: no window, no odds, a place. Finished: the time, and odds of one."""
    gone = posterior(plan, [*on_plan(plan, 5), Retired(50000.0, 60.0)]).view(60000.0)
    assert np.all(np.isinf(gone.quantiles(9, PROBS)))
    assert gone.probability_arrives(9) == 0.0
    assert gone.probability_going() == 0.0
    assert gone.place_km(HALF)[0] == pytest.approx(60.0)
    done = posterior(plan, on_plan(plan, 14)).view(1e6)
    assert done.probability_arrives(13) == 1.0
    assert done.probability_going() == 1.0
    assert done.place_km(HALF)[0] == pytest.approx(161.0)
    assert done.arrivals_s.shape[1] == 0


def test_late_is_the_ninety_percent_time_as_it_stood(plan: Reference) -> None:
    """The 'late' time does not move while nothing is heard, whatever the clock says."""
    post = posterior(plan, on_plan(plan, 6))
    want = post.view(post.last_fact_s).quantiles(6, np.array([0.9]))[0]
    assert post.late_after_s(6) == want
    post.view(9e4, Silence((Watcher(6, 1.0),))).quantiles(6, HALF)
    assert post.late_after_s(6) == want


def test_not_here_yet_counts_in_full_where_silence_counts_by_its_chance(plan: Reference) -> None:
    """An explicit 'not yet' rules earlier times out; silence of a half-sure watcher only makes them unlikelier."""
    seen = on_plan(plan, 6)
    now = float(plan.elapsed_s[6]) + 1800.0
    told = posterior(plan, [*seen, NotYet(6, now)]).view(now).quantiles(6, np.array([0.01, 0.5]))
    hush = (
        posterior(plan, seen).view(now, Silence((Watcher(6, 0.5, 60.0),))).quantiles(6, np.array([0.01, 0.5]))
    )
    plain = posterior(plan, seen).view(now).quantiles(6, np.array([0.01, 0.5]))
    assert told[0] >= now
    assert plain[1] < hush[1] < told[1]
    assert hush[0] < now
