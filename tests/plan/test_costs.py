"""The published rules against their published figures. Source beside each; '(memory)' as in the rule
itself."""

from __future__ import annotations

import numpy as np
import pytest

from server.plan import costs


class TestMinetti:
    """Minetti et al. 2002, J Appl Physiol 93:1039-1046: polynomials (memory), measured values from its
    abstract."""

    @pytest.mark.parametrize(
        ("gradient", "measured", "spread"),
        [(0.0, 3.40, 0.24), (0.45, 18.93, 1.74), (-0.20, 1.73, 0.36), (-0.45, 3.92, 0.81)],
    )
    def test_running_agrees_with_what_was_measured(
        self, gradient: float, measured: float, spread: float
    ) -> None:
        """The running polynomial lies within the measured value's own spread."""
        assert abs(float(costs.running_cost(gradient)) - measured) <= spread

    @pytest.mark.parametrize(
        ("gradient", "measured", "spread"), [(0.45, 17.33, 1.11), (-0.10, 0.81, 0.37), (-0.45, 3.46, 0.95)]
    )
    def test_walking_agrees_with_what_was_measured(
        self, gradient: float, measured: float, spread: float
    ) -> None:
        """The walking polynomial lies within the measured value's own spread on slopes."""
        assert abs(float(costs.walking_cost(gradient)) - measured) <= spread

    def test_walking_on_the_level_is_the_known_exception(self) -> None:
        """On the level the walking polynomial gives 2.5, above the measured 1.64 +-0.50: stated, not
        hidden."""
        assert float(costs.walking_cost(0.0)) == pytest.approx(2.5)
        assert float(costs.walking_cost(0.0)) > 1.64 + 0.50

    @pytest.mark.parametrize(
        ("gradient", "run", "walk"),
        [(0.0, 3.6, 2.5), (0.1, 5.968354, 4.901735), (-0.1, 2.152646 - 0.005, 1.126265 + 0.002)],
    )
    def test_polynomials(self, gradient: float, run: float, walk: float) -> None:
        """The polynomials give the values one can work out by hand."""
        i = gradient
        by_hand_run = 155.4 * i**5 - 30.4 * i**4 - 43.3 * i**3 + 46.3 * i**2 + 19.5 * i + 3.6
        by_hand_walk = 280.5 * i**5 - 58.7 * i**4 - 76.8 * i**3 + 51.9 * i**2 + 19.6 * i + 2.5
        assert float(costs.running_cost(i)) == pytest.approx(by_hand_run, abs=1e-12)
        assert float(costs.walking_cost(i)) == pytest.approx(by_hand_walk, abs=1e-12)
        assert by_hand_run == pytest.approx(run, abs=0.02)
        assert by_hand_walk == pytest.approx(walk, abs=0.02)

    def test_beyond_the_treadmill_the_edge_counts(self) -> None:
        """Gradients past +-0.45 cost what +-0.45 costs, where the bare polynomial would run away."""
        beyond = np.array([-3.0, -0.46, 0.46, 3.0])
        edge = np.array([-0.45, -0.45, 0.45, 0.45])
        np.testing.assert_array_equal(costs.running_cost(beyond), costs.running_cost(edge))
        np.testing.assert_array_equal(costs.walking_cost(beyond), costs.walking_cost(edge))

    def test_walking_is_cheaper_on_every_slope(self) -> None:
        """Walking costs less than running over the whole range: why a model without limits never runs."""
        i = np.linspace(-0.45, 0.45, 91)
        assert np.all(costs.walking_cost(i) < costs.running_cost(i))


@pytest.mark.parametrize(("slope", "kmh"), [(0.0, 5.04), (-0.05, 6.00)])
def test_tobler(slope: float, kmh: float) -> None:
    """Tobler 1993 (memory): 5.04 km/h on the level, 6.00 at a slope of -0.05."""
    assert float(costs.tobler_m_s(slope)) * 3.6 == pytest.approx(kmh, abs=0.005)


def test_naismith() -> None:
    """Naismith 1892 (memory): 3 miles take an hour, 2,000 ft of ascent another."""
    assert float(costs.naismith_s(3 * 1.609344, 0.0)) == pytest.approx(3600)
    assert float(costs.naismith_s(3 * 1.609344, 2000 * 0.3048)) == pytest.approx(7200)


@pytest.mark.parametrize(
    ("km", "up_m", "down_m", "hours"),
    [(10.0, 1200.0, 0.0, 5.25), (10.0, 0.0, 1200.0, 3.7), (8.0, 900.0, 0.0, 4.0)],
)
def test_din_33466(km: float, up_m: float, down_m: float, hours: float) -> None:
    """DIN 33466: the three examples worked in Alpine-club guidance."""
    # Source's 3.7 h is 2.5 h on the level plus half of 2.4 h down.
    assert costs.din_33466_s(km, up_m, down_m) / 3600.0 == pytest.approx(hours, abs=1e-9)


def test_riegel() -> None:
    """Riegel 1981 (memory): twice the distance takes 2^1.06 times as long, the same distance the same
    time."""
    assert costs.riegel_s(3600.0, 10.0, 20.0) == pytest.approx(3600.0 * 2**1.06)
    assert costs.riegel_s(3600.0, 10.0, 10.0) == 3600.0
