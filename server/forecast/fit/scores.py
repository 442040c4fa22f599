"""Scores on years kept back: the same measures as the scoring script, for many runners at once."""

from dataclasses import dataclass, field

import numpy as np

from server.forecast.correct import correct, spread
from server.forecast.fit.curves import ask
from server.forecast.fit.tables import MINUTE, Race, batch
from server.forecast.fitted import Net
from server.forecast.margins import KNOT_P, KNOT_Z
from server.forecast.prior import Prior
from server.forecast.values import FloatArray


@dataclass(slots=True)
class Tally:
    """Errors (min), loss a question (min) and hits of the 80% band at the next point, four on and the finish."""

    errors: list[list[FloatArray]] = field(default_factory=lambda: [[], [], []])
    held: list[list[FloatArray]] = field(default_factory=lambda: [[], [], []])
    loss: list[FloatArray] = field(default_factory=list)
    false_flags: list[FloatArray] = field(default_factory=list)

    def add(self, quantiles_s: FloatArray, truth_s: FloatArray) -> None:
        """quantiles_s (B, m, 8) at KNOT_P, truth_s (B, m) nan where not recorded."""
        there = ~np.isnan(truth_s)
        error = np.abs(quantiles_s[:, :, 3] - truth_s) / MINUTE
        held = (quantiles_s[:, :, 1] <= truth_s) & (truth_s <= quantiles_s[:, :, 5])
        m = truth_s.shape[1]
        for i, column in enumerate((0, 3, m - 1)):
            if column < m and (i != 1 or m > 3):
                self.errors[i].append(error[there[:, column], column])
                self.held[i].append(held[there[:, column], column])
        miss = (truth_s[..., None] - quantiles_s[..., :7]) / MINUTE
        pinball = np.maximum(KNOT_P[:7] * miss, (KNOT_P[:7] - 1.0) * miss).mean(axis=-1)
        some = there.any(axis=1)
        self.loss.append(np.nanmean(pinball[some], axis=1))
        self.false_flags.append(truth_s[there[:, 0], 0] > quantiles_s[there[:, 0], 0, 7])

    def line(self) -> str:
        """next, +4, finish, loss, 80% band holds, false flags at the 99.5% time."""
        means = [float(np.concatenate(e).mean()) if e else float("nan") for e in self.errors]
        held = " / ".join(f"{100 * np.concatenate(h).mean():.0f}" for h in self.held if h)
        flags = 100.0 * np.concatenate(self.false_flags).mean()
        loss = np.concatenate(self.loss).mean()
        return f"{means[0]:6.2f} {means[1]:6.2f} {means[2]:6.1f} {loss:6.3f}   {held}   {flags:.2f}"


def quantiles(
    race: Race, k: int, prior: Prior, nets: tuple[Net, ...], level_sd: float, limit: bool
) -> tuple[FloatArray, FloatArray]:
    """Quantiles (B, m, 8) and truth (B, m), seconds, of finishers asked at point k - 1."""
    b = batch(race, k, prior)
    a = ask(b, prior, level_sd, limit)
    curves = correct(tuple((1.0 / len(nets), n) for n in nets), a.x, 1.0) if nets else KNOT_Z
    ahead = np.exp(a.used.mean[..., None] + spread(a.used)[..., None] * curves)
    times = np.maximum.accumulate(b.spent_s[:, None, None] + ahead, axis=1)
    return times[b.finished], b.truth_s[b.finished]


def score(
    races: list[Race], prior: Prior, nets: tuple[Net, ...], level_sd: float, into: dict[str, Tally]
) -> None:
    """Add these races to the tallies 'told', 'not told' (from the second point on) and 'one point' of each."""
    for race in races:
        for k in range(1, race.ref_s.size):
            for limit in (True, False):
                name = ("one point, " if k == 1 else "") + ("limit told" if limit else "no limit")
                into.setdefault(name, Tally()).add(*quantiles(race, k, prior, nets, level_sd, limit))
