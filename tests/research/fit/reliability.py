"""Do the odds come true? On years kept back.

Two odds, told no limit: that she finishes within the race's limit, asked at each point she is seen at; and that she
is still going, asked 30 minutes after her median for the next point when a watcher who reports at once has not seen
her. The first came true if she finished in time, the second if she was seen again.
"""

import itertools
from collections.abc import Iterator, Sequence
from dataclasses import dataclass, field

import numpy as np

from server.forecast.posterior import with_constants
from server.forecast.values import Fact, FloatArray, Sighting, Silence, Watcher
from tests.research.fit.alarms import SETTINGS, reference_of
from tests.research.fit.fold import Fold
from tests.research.fit.tables import Race

EDGES = np.array([0.0, 0.1, 0.3, 0.5, 0.7, 0.8, 0.9, 0.95, 1.0])
AFTER_DUE_S = 1800.0
QUESTIONS = ("finishes within the limit", "still going, 30 min after due and not seen")


@dataclass(slots=True)
class Odds:
    """Said and come true."""

    said: list[float] = field(default_factory=list)
    true: list[bool] = field(default_factory=list)

    def rows(self) -> list[str]:
        """A line for each band of odds that was ever said."""
        said, true = np.array(self.said), np.array(self.true)
        out = []
        for low, high in itertools.pairwise(EDGES):
            here = (said >= low) & ((said < high) | (high == 1.0))
            if here.any():
                out.append(
                    f"| {100 * low:.0f} to {100 * high:.0f}% | {here.sum()} | {100 * said[here].mean():.0f}% "
                    f"| {100 * true[here].mean():.0f}% |"
                )
        brier, even = np.mean((said - true) ** 2), np.mean((true.mean() - true) ** 2)
        out.append(f"| all | {said.size} | {100 * said.mean():.1f}% | {100 * true.mean():.1f}% |")
        out.append(f"\nBrier score {brier:.4f}; one figure for all would give {even:.4f}.")
        return out


def ask_runner(fold: Fold, race: Race, times: FloatArray, into: dict[str, Odds]) -> None:
    """Ask both odds at each point where the runner was seen, the finish left out."""
    there = np.flatnonzero(np.isfinite(times))
    finished = bool(np.isfinite(times[-1]) and times[-1] <= race.limit_s)
    for i, point in enumerate(there[1:], start=1):
        if point == times.size - 1:
            continue
        facts: list[Fact] = [Sighting(int(p), arrived_s=float(times[p])) for p in there[: i + 1]]
        reference = reference_of(race, times)
        post = with_constants(fold.kind, reference, facts, None, SETTINGS)
        view = post.view(float(times[point]))
        into[QUESTIONS[0]].said.append(view.probability_cutoff(times.size - 1, race.limit_s, leaving=False))
        into[QUESTIONS[0]].true.append(finished)
        again = i + 1 < there.size
        if again and there[i + 1] != point + 1:
            continue  # the next point kept no record of her: whether she was in by then is not known
        now = float(view.quantiles(int(point) + 1, np.array([0.5]))[0]) + AFTER_DUE_S
        if again and times[point + 1] <= now:
            continue
        silent = Silence((Watcher(int(point) + 1, 1.0, 1.0, 0.5),))
        into[QUESTIONS[1]].said.append(post.view(now, silent).probability_going())
        into[QUESTIONS[1]].true.append(again)


def rows(found: Sequence[Fold], every: int) -> Iterator[str]:
    """The tables for one course."""
    odds = {q: Odds() for q in QUESTIONS}
    for fold in found:
        for race in fold.kept:
            for times in race.elapsed_s[::every]:
                ask_runner(fold, race, times, odds)
    for question, said in odds.items():
        yield f"\n{question}:\n\n| said | asked | mean said | came true |\n|---|---|---|---|"
        yield from said.rows()
