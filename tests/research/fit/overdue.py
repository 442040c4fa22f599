"""Told 'not here yet' so long past her time: does the next window still hold? On years kept back, of those who came in."""

from collections.abc import Iterator, Sequence

import numpy as np
from scipy.special import ndtri

from server.forecast.correct import correct, spread, trust_in_nets, with_mishaps
from server.forecast.margins import Margins, truncated_above
from server.forecast.values import FloatArray
from tests.research.fit.curves import ask
from tests.research.fit.fold import Fold
from tests.research.fit.priors import WILD_LEVEL_SD
from tests.research.fit.tables import MINUTE, batch

PAST_DUE_MIN = (0.0, 15.0, 30.0, 45.0, 60.0, 90.0, 120.0)
SCORES = ndtri(np.array([0.1, 0.5, 0.9]))


def waits(fold: Fold, every: int) -> FloatArray:
    """(r, 5), of each Nth runner: minutes past due when asked; minutes more that she took; those said, 10, 50, 90%."""
    found: list[tuple[float, ...]] = []
    kind = fold.kind
    for race in fold.kept:
        for k in range(2, race.ref_s.size):
            b = batch(race, k, kind.prior)
            a = ask(b, kind.prior, WILD_LEVEL_SD, True)
            curves = correct(kind.nets, a.x, trust_in_nets(kind.years, b.seen), kind.widen)
            curves = with_mishaps(curves, a.used, a.plain, b.spent_s, kind.tail)
            took = b.truth_s[:, 0] - b.spent_s
            sd = spread(a.used)
            for i in np.flatnonzero(np.isfinite(took))[k % every :: every]:
                one = Margins(a.used.mean[i, :1], sd[i, :1], curves[i, :1], kind.tail[2])
                due = float(one.at_z(np.zeros((1, 1)))[0, 0])
                for past in PAST_DUE_MIN:
                    asked = due + past * MINUTE
                    if took[i] <= asked:
                        break
                    z = truncated_above(SCORES, float(one.z_of(0, np.array(asked))))
                    said = (one.at_z(z[:, None])[:, 0] - asked) / MINUTE
                    found.append((past, (took[i] - asked) / MINUTE, *said))
    return np.array(found)


def rows(found: Sequence[Fold], every: int) -> Iterator[str]:
    """The table for one course."""
    table = np.concatenate([waits(fold, every) for fold in found])
    yield "| min past due | asked | 80% band holds | wait said, median | was | 9 in 10 said | was |"
    yield "|---|---|---|---|---|---|---|"
    for past in PAST_DUE_MIN:
        here = table[table[:, 0] == past]
        if not here.size:
            continue
        more, low, half, high = here[:, 1:5].T
        held = 100.0 * np.mean((low <= more) & (more <= high))
        yield (
            f"| {past:.0f} | {more.size} | {held:.0f}% | {np.median(half):.0f} | {np.median(more):.0f} "
            f"| {np.mean(high):.0f} | {np.quantile(more, 0.9):.0f} |"
        )
