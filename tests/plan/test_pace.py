"""The pace model: the faster gait within limits, what adds up, what slows her."""

from __future__ import annotations

from dataclasses import replace
from datetime import UTC, datetime, timedelta

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from server.event.model import GroundState
from server.plan.costs import running_cost, tobler_m_s, walking_cost
from server.plan.day import Day, Weather
from server.plan.light import sky_over
from server.plan.pace import (
    DOWNHILL_OVER_LEVEL,
    WALK_LEVEL_M_S,
    Factor,
    Fade,
    Limits,
    Stops,
    faster_gait,
    march,
    solve,
)
from server.plan.terrain import surface_of

USUAL = Limits()
NO_STOPS = Stops(np.array([0.5]), np.array([0.0]))


def gait(terrain_of, gradients, power, limits=USUAL, dark=False):
    """Speed and gait on given gradients, fresh."""
    terrain = terrain_of(list(gradients))
    return faster_gait(terrain, limits, power, 1.0, np.full(len(gradients), dark))


class TestGait:
    """Which gait wins where."""

    def test_a_runner_runs_the_level_and_walks_the_steep(self, terrain_of) -> None:
        """At 10 W/kg she runs level ground and walks a climb of 30 %."""
        found = gait(terrain_of, [0.0, 0.30], 10.0)
        assert found.walks.tolist() == [False, True]

    def test_without_a_limit_the_cheaper_gait_would_be_a_walk_everywhere(self, terrain_of) -> None:
        """With the walking limit lifted the model walks all of it at 10 W/kg: the trap the limits are there
        for."""
        found = gait(terrain_of, np.linspace(-0.05, 0.45, 30), 10.0, Limits(walk_m_s=99.0))
        assert found.walks.all()

    def test_level_running_is_power_over_cost(self, terrain_of) -> None:
        """On the level she runs at power / 3.6 once that beats a walk (Minetti)."""
        assert float(gait(terrain_of, [0.0], 9.0).speed_m_s[0]) == pytest.approx(9.0 / 3.6)

    def test_uphill_walking_is_power_over_cost_along_the_slope(self, terrain_of) -> None:
        """On a climb of 40 % she walks at power over walking cost, and the slope is longer than the map."""
        expected = 8.0 / (float(walking_cost(0.4)) * np.hypot(1.0, 0.4))
        assert float(gait(terrain_of, [0.4], 8.0).speed_m_s[0]) == pytest.approx(expected)

    def test_a_wall_is_not_the_cheapest_way_up(self, terrain_of) -> None:
        """Past the measured 0.45 she gains height no faster than at 0.45, however steep it gets."""
        i = np.array([0.45, 0.6, 0.9, 2.0])
        rate = gait(terrain_of, i, 8.0).speed_m_s * i
        assert np.all(rate <= rate[0] + 1e-12)

    def test_walking_never_beats_a_brisk_walk(self, terrain_of) -> None:
        """At no gradient does she walk faster than 2 m/s, shaped as Tobler's rule downhill."""
        i = np.linspace(-0.45, 0.45, 91)
        found = gait(terrain_of, i, 20.0)
        limit = WALK_LEVEL_M_S * np.where(
            i < 0, tobler_m_s(i) / tobler_m_s(0.0), np.exp(-2.0 * np.maximum(i, 0))
        )
        assert np.all(found.speed_m_s[found.walks] <= limit[found.walks] + 1e-12)

    def test_downhill_is_limited(self, terrain_of) -> None:
        """Running down is never faster than a quarter over her level speed, and slower again where it is
        steep."""
        i = np.linspace(-0.45, -0.01, 45)
        found = gait(terrain_of, i, 9.0)
        assert found.speed_m_s.max() <= DOWNHILL_OVER_LEVEL * 9.0 / 3.6 + 1e-12
        assert found.speed_m_s[0] < found.speed_m_s[-15]

    def test_her_own_limits_hold(self, terrain_of) -> None:
        """Climb rate, walking speed and downhill limit of her own are never exceeded."""
        limits = Limits(walk_m_s=1.4, climb_m_per_h=500.0, downhill_m_s=2.2)
        i = np.linspace(-0.45, 0.45, 91)
        found = gait(terrain_of, i, 14.0, limits)
        up = i > 0.01
        assert np.all(found.speed_m_s[up] * i[up] * 3600.0 <= 500.0 + 1e-6)
        assert np.all(found.speed_m_s[i < 0] <= 2.2 + 1e-9)

    def test_dark_slows_the_descent_only(self, terrain_of) -> None:
        """In the dark she runs down slower; on the level the gait is what it was."""
        day, night = (gait(terrain_of, [-0.15, 0.0], 9.0, dark=d) for d in (False, True))
        assert night.speed_m_s[0] < day.speed_m_s[0]
        assert night.speed_m_s[1] == day.speed_m_s[1]

    @given(st.floats(-0.6, 0.6), st.floats(2.0, 18.0), st.floats(0.01, 4.0))
    @settings(max_examples=200, deadline=None)
    def test_more_power_is_never_slower(self, terrain_of, gradient: float, power: float, more: float) -> None:
        """Speed never falls as power grows, on any gradient; it is always above zero."""
        low, high = (float(gait(terrain_of, [gradient], p).speed_m_s[0]) for p in (power, power + more))
        assert 0.0 < low <= high + 1e-12

    def test_vector_equals_scalar(self, terrain_of) -> None:
        """A whole course gives what its steps give one by one."""
        i = np.linspace(-0.5, 0.5, 41)
        together = gait(terrain_of, i, 8.0).speed_m_s
        alone = [float(gait(terrain_of, [g], 8.0).speed_m_s[0]) for g in i]
        np.testing.assert_allclose(together, alone, rtol=1e-12)


class TestAddingUp:
    """Power for a target, and what the time is made of."""

    hills = [0.05, 0.12, -0.08, 0.0, 0.25, -0.2, 0.02, -0.03] * 25

    @pytest.mark.parametrize("hours", [5.0, 7.5, 12.0])
    def test_the_target_is_met(self, terrain_of, long_day, hours: float) -> None:
        """Moving time and stops add up to the target within a hundredth of a second."""
        stops = Stops(np.array([10.0, 30.0]), np.array([300.0, 600.0]))
        found = solve(terrain_of(self.hills), Limits(), stops, Day(long_day), hours * 3600.0)
        assert found.reached
        assert found.march.total_moving_s + 900.0 == pytest.approx(hours * 3600.0, abs=0.01)

    def test_parts_add_up(self, terrain_of, long_day) -> None:
        """Level ground, hills, fade and every factor add up to the moving time on every step."""
        done = solve(terrain_of(self.hills), Limits(), NO_STOPS, Day(long_day), 9 * 3600.0).march
        np.testing.assert_allclose(sum(p for _, p in done.parts), done.moving_s, atol=1e-6)

    def test_a_harder_target_needs_more_power(self, terrain_of, long_day) -> None:
        """The shorter the time, the more power."""
        powers = [
            solve(terrain_of(self.hills), Limits(), NO_STOPS, Day(long_day), h * 3600.0).march.power
            for h in (6.0, 7.0, 8.0, 10.0)
        ]
        assert powers == sorted(powers, reverse=True)

    def test_too_fast_and_too_slow_are_told_apart(self, terrain_of, long_day) -> None:
        """What nobody can run is not reached; what nobody walks so slowly is too slow."""
        fast = solve(terrain_of(self.hills), Limits(), NO_STOPS, Day(long_day), 2 * 3600.0)
        slow = solve(terrain_of(self.hills), Limits(), NO_STOPS, Day(long_day), 30 * 24 * 3600.0)
        assert (fast.reached, fast.too_slow) == (False, False)
        assert (slow.reached, slow.too_slow) == (False, True)

    def test_heat_is_paid_in_its_hours_only(self, terrain_of, long_day) -> None:
        """A hot afternoon costs minutes between its hours and nothing outside them."""
        start = long_day.start
        hot = (Weather(start + timedelta(hours=2), start + timedelta(hours=4), 31.0, 60.0),)
        done = march(terrain_of(self.hills), Limits(), NO_STOPS, Day(long_day, hot), 9.0)
        heat = dict(done.parts)["heat"]
        inside = (done.starts_s >= 2 * 3600) & (done.starts_s < 4 * 3600)
        assert heat[inside].min() > 0
        assert np.all(heat[~inside] == 0)

    @pytest.mark.parametrize("ground", list(GroundState))
    def test_bad_ground_from_the_sky_is_bad_ground(self, terrain_of, long_day, ground: GroundState) -> None:
        """Mud or snow that the weather brings takes as long as a surface of that name: also downhill, where it is the
        foothold and not the breath that bounds her; and it is told under its own name."""
        kind = surface_of(ground.value)
        assert kind is not None
        firm = terrain_of(self.hills)
        laid = replace(
            firm,
            downhill_m_s=np.full(len(self.hills), kind.downhill_m_s),
            fixed=(Factor("surface", np.full(len(self.hills), kind.times), "test"),),
        )
        brought = march(firm, Limits(), NO_STOPS, Day(long_day, (Weather(None, None, ground=ground),)), 12.0)
        there = march(laid, Limits(), NO_STOPS, Day(long_day), 12.0)
        np.testing.assert_allclose(brought.moving_s, there.moving_s, rtol=1e-9)
        np.testing.assert_allclose(sum(p for _, p in brought.parts), brought.moving_s, atol=1e-6)
        down = np.array(self.hills) < -0.05
        extra = dict(brought.parts)[ground.value][down] / brought.moving_s[down]
        assert float(extra.max()) > 1.05 * (1.0 - 1.0 / kind.times)
        assert float(np.abs(dict(brought.parts)["night"]).max()) == 0.0

    def test_night_is_paid_where_it_is_dark(self, terrain_of) -> None:
        """Minutes for the night fall on steps begun between civil dusk and dawn and nowhere else."""
        km = np.array([0.0, 60.0])
        sky = sky_over(
            km, np.full(2, 50.0), np.full(2, 10.0), datetime(2027, 9, 4, 14, tzinfo=UTC), 20 * 3600.0
        )
        done = march(terrain_of(self.hills), Limits(), NO_STOPS, Day(sky), 8.0)
        night = dict(done.parts)["night"]
        assert done.dark.any()
        assert night[done.dark].min() > 0
        assert np.all(night[~done.dark] == 0)


class TestFade:
    """How power falls with hours."""

    def test_starts_whole_and_falls_to_its_floor(self) -> None:
        """Nothing is lost at the start, power only falls, and never under the floor."""
        hours = np.linspace(0, 200, 400)
        left = Fade().at(hours)
        assert left[0] == 1.0
        assert np.all(np.diff(left) <= 0)
        assert left[-1] == pytest.approx(Fade().floor, abs=1e-6)

    def test_no_fade_is_level(self) -> None:
        """Strength 0 keeps all power at all hours."""
        assert np.all(Fade(strength=0.0).at(np.linspace(0, 50, 9)) == 1.0)


def test_fourteen_minute_miles() -> None:
    """Common practice, no source: 14 min a mile all in make 23 h 20 min for 100 miles."""
    from server.event.model import Target
    from server.plan.targets import wanted

    per_km = timedelta(minutes=14) / 1.609344
    found = wanted(Target(pace_all_in=per_km), 160.9344, 0.0, 0.0, "target")
    assert found.total_s == (23 * 60 + 20) * 60


def test_running_cost_drives_the_run(terrain_of) -> None:
    """Where she runs uphill, speed is power over Minetti's running cost along the slope."""
    found = gait(terrain_of, [0.04], 12.0)
    assert not found.walks[0]
    assert float(found.speed_m_s[0]) == pytest.approx(12.0 / (float(running_cost(0.04)) * np.hypot(1, 0.04)))
