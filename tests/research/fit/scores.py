"""Scores on years kept back: the same measures as the scoring script, for many runners at once."""

from dataclasses import dataclass, field

import numpy as np

from server.forecast.correct import spread, with_mishaps
from server.forecast.fitted import Ground
from server.forecast.margins import KNOT_P
from server.forecast.prior import Prior
from server.forecast.values import FloatArray
from tests.research.fit.curves import ask, bent
from tests.research.fit.tables import MINUTE, Batch, Race, batch


@dataclass(slots=True)
class Tally:
    """Errors (min), loss a question (min) and hits of the 80% band at the next point, four on and the finish."""

    errors: list[list[FloatArray]] = field(default_factory=lambda: [[], [], []])
    held: list[list[FloatArray]] = field(default_factory=lambda: [[], [], []])
    loss: list[FloatArray] = field(default_factory=list)
    legs: list[FloatArray] = field(default_factory=list)

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

    def add_leg(self, next_s: FloatArray, truth_s: FloatArray) -> None:
        """Quantiles (B, 8) of the next arrival and true later arrivals (B, m), from the last fact on; of everybody.

        A leg whose end was not recorded, though she was seen later, counts for nothing.
        """
        gone = np.isnan(truth_s).all(axis=1)
        known = gone | ~np.isnan(truth_s[:, 0])
        self.legs.append(np.column_stack([truth_s[:, 0], next_s[:, 3], next_s[:, 7]])[known] / MINUTE)

    def flags(self) -> str:
        """False flags at the 99.5% time, and, tuned to one in 200, minutes late after arrivals and after due."""
        legs = np.concatenate(self.legs)
        made, gone = legs[~np.isnan(legs[:, 0])], legs[np.isnan(legs[:, 0])]
        wide = np.quantile((made[:, 0] - made[:, 1]) / (made[:, 2] - made[:, 1]), 0.995)
        after = (made[:, 1] + wide * (made[:, 2] - made[:, 1]) - made[:, 0]).mean()
        due = f"{(wide * (gone[:, 2] - gone[:, 1])).mean():.0f}" if gone.size else "-"
        return f"{100 * (made[:, 0] > made[:, 2]).mean():.2f}   {after:.0f} / {due}"

    def line(self) -> str:
        """next, +4, finish, loss, 80% band holds, then `flags`."""
        means = [float(np.concatenate(e).mean()) if e else float("nan") for e in self.errors]
        held = " / ".join(f"{100 * np.concatenate(h).mean():.0f}" for h in self.held if h)
        loss = np.concatenate(self.loss).mean()
        return f"{means[0]:6.2f} {means[1]:6.2f} {means[2]:6.1f} {loss:6.3f}   {held}   {self.flags()}"


def quantiles(b: Batch, ground: Ground, prior: Prior, level_sd: float, limit: bool) -> FloatArray:
    """Quantiles (B, m, 8), seconds, of everybody asked."""
    a = ask(b, prior, level_sd, limit)
    nets = ground.nets
    curves = bent(a, nets, ground.years)
    curves = with_mishaps(curves, a.used, a.plain, b.spent_s, ground.tail)
    ahead = np.exp(a.used.mean[..., None] + spread(a.used)[..., None] * curves)
    return np.asarray(np.maximum.accumulate(b.spent_s[:, None, None] + ahead, axis=1))


def score(races: list[Race], ground: Ground, prior: Prior, level_sd: float, into: dict[str, Tally]) -> None:
    """Add these races to the tallies 'limit told', 'no limit' (from the second point on) and 'one point' of each."""
    for race in races:
        for k in range(1, race.ref_s.size):
            b = batch(race, k, prior)
            for limit in (True, False):
                name = ("one point, " if k == 1 else "") + ("limit told" if limit else "no limit")
                tally = into.setdefault(name, Tally())
                found = quantiles(b, ground, prior, level_sd, limit)
                tally.add(found[b.finished], b.truth_s[b.finished])
                tally.add_leg(found[:, 0] - b.spent_s[:, None], b.truth_s - b.spent_s[:, None])
