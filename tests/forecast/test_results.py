"""Others' split times as a reference."""

import numpy as np
import pytest

from server.forecast.results import read_results, reference_from_results, shape_from_results
from server.forecast.values import Quality


def field_of(runners: int) -> np.ndarray:
    """Fast runners fade less: arrival shares differ with the finish time."""
    finish = np.linspace(18.0, 30.0, runners) * 3600.0
    fade = 1.0 + 0.02 * (finish / 3600.0 - 18.0)
    share = np.array([0.25, 0.5, 0.75, 1.0])
    return finish[:, None] * share[None, :] ** fade[:, None]


def test_the_shape_is_that_of_runners_near_the_target() -> None:
    """A 20 h target takes the shape of 20 h runners, not of the field's middle."""
    table = field_of(300)
    got = shape_from_results(table, 20 * 3600.0)
    assert got[-1] == 1.0
    assert np.allclose(got, np.array([0.25, 0.5, 0.75, 1.0]) ** 1.04, atol=0.01)


def test_gaps_and_retirements_do_not_matter() -> None:
    """Blank cells are left out and rows without a finish are not used."""
    table = field_of(300)
    holed = table.copy()
    holed[::3, 1] = np.nan
    gone = np.column_stack([table[:50, :2], np.full((50, 2), np.nan)])
    assert np.allclose(
        shape_from_results(np.vstack([holed, gone]), 24 * 3600.0),
        shape_from_results(table, 24 * 3600.0),
        atol=0.003,
    )


def test_a_reference_reaches_the_target_to_the_second() -> None:
    """The finish is the target; stops are shortened where others left no room."""
    ref = reference_from_results(
        np.array([40, 80, 120, 160.0]), field_of(60), 90000.0, 30.0, np.array([600, 600, 1e6, 0.0])
    )
    assert ref.elapsed_s[-1] == pytest.approx(90000.0, abs=1e-6)
    assert ref.quality is Quality.PAST_RESULTS
    assert ref.stop_s[0] == 600.0
    assert ref.stop_s[2] < ref.elapsed_s[3] - ref.elapsed_s[2]


@pytest.mark.parametrize(
    ("table", "words"),
    [
        (np.full((3, 4), np.nan), "nobody has a time at the finish"),
        (np.array([[1.0, np.nan, 3.0]]), "no finisher has a time at point 1"),
        (np.array([[2.0, 1.0, 3.0]]), "do not rise"),
        (np.zeros(4), "table of runners by points"),
    ],
)
def test_tables_that_cannot_serve_are_refused(table: np.ndarray, words: str) -> None:
    """Each error says what is wrong and what to do."""
    with pytest.raises(ValueError, match=words):
        shape_from_results(table, 80000.0)


def test_cells_are_read_in_three_forms() -> None:
    """Seconds, h:mm, h:mm:ss and blanks; anything else is named by row and column."""
    got = read_results([["runner", "a", "b"], ["x", "3600", "2:30"], ["y", "", "2:30:30"]])
    assert np.array_equal(got, np.array([[3600.0, 9000.0], [np.nan, 9030.0]]), equal_nan=True)
    with pytest.raises(ValueError, match="row 2, column 3: 'soon'"):
        read_results([["runner", "a", "b"], ["x", "1", "soon"]])
    with pytest.raises(ValueError, match="row 2: 2 cells, but the header has 3"):
        read_results([["runner", "a", "b"], ["x", "1"]])
