"""Published shapes of slowing down, and the split tables beside the project."""

from __future__ import annotations

import importlib.util
import sys
from datetime import timedelta
from pathlib import Path
from types import ModuleType

import numpy as np
import pytest

from server.event.model import Target
from server.plan import make_timetable
from server.plan.pace import Fade

ROOT = Path(__file__).resolve().parents[2]
DATA = ROOT.parent / "shared/data"


@pytest.fixture(scope="module")
def fit() -> ModuleType:
    """The script that fits the constants, as a module."""
    spec = importlib.util.spec_from_file_location("fit_fade", ROOT / "tests/plan/fit_fade.py")
    assert spec is not None
    assert spec.loader is not None
    module = importlib.util.module_from_spec(spec)
    sys.modules["fit_fade"] = module
    spec.loader.exec_module(module)
    return module


def test_hundred_km_sections(fit: ModuleType) -> None:
    """Each 25 km of a fast 100 km is slower than the last by what Knechtle et al. 2015 found, within one
    spread."""
    ratios = fit.section_ratios(Fade())
    assert np.all(np.abs(ratios - fit.KNECHTLE) <= fit.KNECHTLE_SD)


def test_the_fast_end_within_15_per_cent(fit: ModuleType) -> None:
    """Lambert et al. 2004: the fastest over 100 km end within 15 % of the speed they began with."""
    assert float(np.prod(fit.section_ratios(Fade()))) >= 0.85


def test_the_slow_fall_further(fit: ModuleType) -> None:
    """Lambert et al. 2004: over one distance slower runners lose more of their speed than fast ones."""
    km = np.array([25.0, 50.0, 75.0, 100.0])
    losses = []
    for hours in (6.6, 8.0, 10.0, 13.0):
        group = fit.Group("", (0, 99), 1, km, km / 100.0, hours * 3600.0)
        shares = np.diff(fit.planned_shares(Fade(), group), prepend=0.0)
        losses.append(shares[-1] / shares[0])
    assert losses == sorted(losses)


def test_second_half_of_a_hilly_hundred_miles(demo_course, make_event) -> None:
    """100 miles, 89 finishers of one hilly race: second half 39.75 % slower, deviation 14.3 points. A plan
    with its
    night and stops lies within 1.5 deviations below that average: she means not to blow up."""
    table = make_timetable(make_event(Target(finish=timedelta(hours=29))), "maren", demo_course)
    from server.event.model import Goal

    km = [r.km for r in table.rows]
    at = [r.arrive[Goal.B].total_seconds() for r in table.rows]
    half = float(np.interp(80.5, km, at))
    slower = (at[-1] - half) / half - 1.0
    assert 0.3975 - 1.5 * 0.143 <= slower <= 0.3975 + 0.143


@pytest.mark.skipif(
    not DATA.is_dir(), reason="../shared/data is not beside this clone: the split tables are there"
)
def test_split_tables(fit: ModuleType) -> None:
    """On every flat100 table the planned share of the whole time at each point is within 1.7 % of the
    finishers'
    median (root mean square), and within 1.1 % over all of them."""
    errors, weights = [], []
    for group in fit.read_groups(DATA):
        plan = fit.planned_shares(Fade(), group)
        errors.append(float(np.sqrt(((plan - group.shares) ** 2).mean())))
        weights.append(group.runners)
    assert len(errors) >= 20
    assert max(errors) < 0.017
    assert float(np.average(errors, weights=weights)) < 0.011
