"""The fit's own tools: years fitted and scored never overlap, gradients are right, failing reports fail as said."""

import itertools
from dataclasses import replace
from pathlib import Path

import numpy as np
import pytest

from server.forecast import kinds
from server.forecast.correct import curve
from server.forecast.fitted import Ground
from server.forecast.margins import KNOT_P
from server.forecast.values import Quality, Reference, WhoseTarget
from tests.research.fit import alarms, curves, gain, heldout, overdue
from tests.research.fit.fold import Fold, split
from tests.research.fit.limits import fit_push
from tests.research.fit.reliability import Odds
from tests.research.fit.tables import BASIS_S, Race


def race(year: int, points: int = 4, runners: int = 30) -> Race:
    """An invented year: everybody at a pace of their own, one in five ending early."""
    draws = np.random.default_rng(year)
    ref = np.linspace(BASIS_S / points, BASIS_S, points)
    pace = np.exp(0.1 * draws.standard_normal((runners, 1)) + 0.05 * draws.standard_normal((runners, points)))
    times = np.cumsum(pace * BASIS_S / points, axis=1)
    times[::5, -1] = np.nan
    names = tuple(f"Point.{i}" for i in range(points))
    return Race("hill100", year, times, ref, 1.25 * BASIS_S, False, names)


@pytest.mark.parametrize("count", [2, 5, 18])
def test_no_year_is_both_fitted_and_scored(count: int) -> None:
    """Each year is kept back exactly once, whatever their number."""
    races = [race(1990 + i, 4 + i % 3) for i in range(count)]
    kept = [r.year for fold in split(races) for r in fold]
    assert sorted(kept) == [r.year for r in races]
    assert all(len(fold) < count for fold in split(races))


def test_the_nets_learn_along_the_true_slope() -> None:
    """The gradient by each weight is that of the loss itself, by finite differences, where no gap is held at its widest."""
    draws = np.random.default_rng(4)
    n, f, h = 60, 5, 3
    x = draws.standard_normal((n, f))
    table = curves.Rows(
        x,
        draws.normal(4.0, 0.5, n),
        np.full(n, 0.2),
        np.exp(draws.normal(4.0, 0.6, n)),
        draws.uniform(0.5, 2, n),
    )
    weights = [draws.standard_normal(shape) * 0.1 for shape in ((f, h), (h,), (h, 8), (8,), (f, 8))]

    def loss() -> float:
        inner, inner_bias, outer, outer_bias, straight = weights
        output = np.tanh(x @ inner + inner_bias) @ outer + outer_bias + x @ straight
        minutes = np.exp(table.centre[:, None] + table.sd[:, None] * curve(output))
        miss = table.truth_min[:, None] - minutes
        pinball = np.maximum(KNOT_P * miss, (KNOT_P - 1.0) * miss)
        by_quantile = np.r_[np.ones(7) / 7.0, curves.TAIL_WEIGHT]
        return float((pinball * by_quantile * table.weight[:, None]).sum() / n)

    slopes = curves._slopes(weights, x, table, np.arange(n))
    for weight, slope in zip(weights, slopes, strict=True):
        flat = weight.reshape(-1)
        for i in range(0, flat.size, 4):
            old, step = flat[i], 1e-6
            flat[i] = old + step
            up = loss()
            flat[i] = old - step
            down = loss()
            flat[i] = old
            assert slope.reshape(-1)[i] == pytest.approx((up - down) / (2 * step), rel=1e-3, abs=1e-4)


def test_reports_fail_as_often_as_said() -> None:
    """Of many check-ins the stated parts are lost or come an hour late; the rest come within the minute."""
    times = np.arange(1, 20001, dtype=np.float64) * 10000.0
    come = alarms.reports(times, 0.2, 0.1, np.random.default_rng(1))
    delays = np.array([received - arrived for received, _, arrived in come])
    assert len(come) == pytest.approx(16000, abs=250)
    assert (delays > 3000.0).sum() == pytest.approx(2000, abs=150)
    assert set(delays.round()) == {60.0, 3600.0}


def test_past_results_are_joined_by_name_and_never_from_the_year_itself() -> None:
    """Points are found by name, another spelling and a point more do no harm; her own year's times are not among them."""
    one, other = race(1991), race(1992)
    extra = np.column_stack([other.elapsed_s[:, 0], other.elapsed_s[:, 0] + 1.0, other.elapsed_s[:, 1:]])
    names = ("point_0", "Elsewhere", "POINT.1", "Point.2", "Point.3")
    mixed = Race(other.course, other.year, extra, other.ref_s, other.limit_s, False, names)
    got = gain.from_results(one, [one, mixed])
    assert got is not None
    assert got.ref_s[-1] == pytest.approx(BASIS_S)
    assert np.all(np.abs(got.ref_s / one.ref_s - 1.0) < 0.08)
    assert gain.from_results(one, [one]) is None


PRINTED = """
flat100: 1 races, 65 finishers
                   next       +4   finish     loss   80% band holds % (next / +4 / finish)    [minutes]
forecast            4.9     14.9     57.1     8.62   82 / 81 / 80
one point           3.1     13.0    139.0    17.00   75 / 76 / 77
still out          18.0     24.0     60.0    11.00   80 / 81 / 82
overdue flag at the 99.5% time: false on 0.49% of 1600 legs; all tuned to one false flag in 200 legs:
  forecast           35 min after the arrival on average; {stopped}
2.40 ms a forecast, 1600 forecasts
"""


@pytest.mark.parametrize(
    ("stopped", "due"), [("47 min after it was due for 14 who stopped", 47.0), ("nobody stopped", np.nan)]
)
def test_the_scripts_figures_are_read_as_printed(stopped: str, due: float) -> None:
    """Errors, loss, bands and flags come out of the printed lines; a fold where nobody stopped weighs nothing there."""
    finishers, found = heldout.figures(PRINTED.format(stopped=stopped))
    assert finishers == 65.0
    assert found["forecast"] == pytest.approx([4.9, 14.9, 57.1, 8.62, 82, 81, 80, 0.49, 35, due], nan_ok=True)
    assert found["still out"][3] == 11.0
    both = heldout.gathered([(65.0, found), heldout.figures(PRINTED.format(stopped="50 min after x"))])
    assert both["forecast"][9] == pytest.approx(50.0 if np.isnan(due) else 48.5)


def test_each_year_is_scored_alone_by_the_fold_that_keeps_it_back(monkeypatch: pytest.MonkeyPatch) -> None:
    """Years in order, each by the fold that does not know it; a row the script leaves out is not a number."""
    kind = kinds.of(
        Reference(np.ones(1), np.ones(1), np.zeros(1), Quality.PAST_RESULTS, 34.0, WhoseTarget.ANYBODY)
    )
    ground = Ground(0.0, (), (-1.0, 0, 0, 0, 0, 0), (0.0, 1.0), (1.0, 0.5, 3.0), 1)
    late, early, middle = race(1993), race(1991, points=6), race(1992)
    found = [
        Fold([late, early], [middle], kind.prior, ground),
        Fold([middle], [late, early], kind.prior, ground),
    ]
    asked: list[tuple[list[int], list[int]]] = []

    def run(fold: Fold, *_: object) -> str:
        asked.append(([r.year for r in fold.kept], [r.year for r in fold.fitted]))
        return "\n".join(
            li for li in PRINTED.format(stopped="nobody stopped").splitlines() if "still" not in li
        )

    monkeypatch.setattr(heldout, "run_script", run)
    table = list(heldout.by_year(found, Path(), Path(), 1))
    assert asked == [
        ([y], fitted) for y, fitted in ((1991, [1992]), (1992, [1993, 1991]), (1993, [1992])) for _ in "ab"
    ]
    assert table[1].startswith("| 1991, 6, limit told | forecast | 4.9 |")
    assert table[-1].startswith("| 1993, 4, no limit | still out | nan |")


def test_odds_are_counted_by_what_was_said() -> None:
    """Rows hold how often a band of odds came true; an odds of one belongs to the last band."""
    odds = Odds([0.05, 0.96, 1.0, 0.97], [False, True, True, False])
    rows = odds.rows()
    assert rows[0] == "| 0 to 10% | 1 | 5% | 0% |"
    assert rows[1] == "| 95 to 100% | 3 | 98% | 67% |"


def test_waits_are_asked_of_those_who_were_late_only() -> None:
    """From about half of the legs at the median down to few hours past it; what is said rises, what was is positive."""
    kind = kinds.of(
        Reference(np.ones(1), np.ones(1), np.zeros(1), Quality.PAST_RESULTS, 34.0, WhoseTarget.ANYBODY)
    )
    nets = tuple(n for _, n in kind.nets)
    ground = Ground(34.0, nets, kind.hazard, kind.push, kind.tail, int(kind.years))
    table = overdue.waits(Fold([race(1, 8, 120)], [], kind.prior, ground), 1)
    asked = [int((table[:, 0] == past).sum()) for past in overdue.PAST_DUE_MIN]
    assert all(a >= b for a, b in itertools.pairwise(asked))
    assert asked[0] > 100
    assert np.all(table[:, 1] > 0)
    assert np.all(np.diff(table[:, 2:5], axis=1) > 0)


def test_who_makes_a_limit_oftener_than_her_times_say_is_found_out() -> None:
    """Of those whose times say they would miss it, most are made to finish just in time: the push is up, not down."""
    kind = kinds.of(
        Reference(np.ones(1), np.ones(1), np.zeros(1), Quality.PAST_RESULTS, 34.0, WhoseTarget.ANYBODY)
    )
    plain = race(3, 8, 400)
    limit = float(np.nanquantile(plain.elapsed_s[:, -1], 0.6))
    rather = replace(plain, limit_s=limit, elapsed_s=plain.elapsed_s.copy())
    late = rather.elapsed_s[:, -1] > limit
    rather.elapsed_s[late, -1] = np.maximum(limit - 60.0, rather.elapsed_s[late, -2] + 600.0)
    never = (-9.0, 0.0, 0.0, 0.0, 0.0, 0.0)
    as_run, hurried = (
        fit_push([replace(r, limit_s=limit)], kind.prior, (), never, kind.level_sd) for r in (plain, rather)
    )
    for way in (0.5, 0.9):
        assert hurried[0] + hurried[2] * way**2 > as_run[0] + as_run[2] * way**2 + 0.3
    assert hurried[1] > 0.0


def test_hurry_that_comes_late_is_found_late() -> None:
    """Whoever is a little late at the last point but one runs in just in time; who is a little late at the first does not.

    Half of those late at first are late at last too, whatever they ran between.
    """
    kind = kinds.of(
        Reference(np.ones(1), np.ones(1), np.zeros(1), Quality.PAST_RESULTS, 34.0, WhoseTarget.ANYBODY)
    )
    draws = np.random.default_rng(5)
    ref = np.linspace(BASIS_S / 8, BASIS_S, 8)
    times = np.cumsum(np.exp(0.08 * draws.standard_normal((800, 8))) * BASIS_S / 8, axis=1)
    limit = float(np.quantile(times[:, -1], 0.5))
    alone = Race("hill100", 1, times, ref, limit, False)
    close = (times[:, -2] > limit * 0.875) & (times[:, -2] < limit * 0.90)
    hurries = times.copy()
    hurries[close, -1] = np.minimum(hurries[close, -1], limit - 30.0)
    never = (-9.0, 0.0, 0.0, 0.0, 0.0, 0.0)
    plain, late = (
        fit_push([r], kind.prior, (), never, kind.level_sd)
        for r in (alone, replace(alone, elapsed_s=hurries))
    )
    assert late[2] > plain[2] + 0.3
