"""Shared parts of the forecast's tests: a plan of 14 points and a few ways to see a runner on it."""

import numpy as np
import pytest

from server.forecast.values import Quality, Reference, WhoseTarget


@pytest.fixture
def plan() -> Reference:
    """A hilly 100-mile plan: 14 points, 26 h, five planned minutes at each but the finish."""
    km = np.array([9, 20, 31, 42, 55, 66, 78, 90, 101, 113, 125, 137, 149, 161.0])
    stops = np.full(14, 300.0)
    stops[-1] = 0.0
    arrive = 26 * 3600 * (km / 161.0) ** 1.08
    return Reference(km, arrive, stops, Quality.COST_MODEL, 30.0, WhoseTarget.HERS)


@pytest.fixture
def bare() -> Reference:
    """Distances only, nobody's target, no stops."""
    km = np.linspace(8.0, 160.0, 20)
    return Reference(km, km * 540.0, np.zeros(20), Quality.DISTANCE, 2.0, WhoseTarget.ANYBODY)
