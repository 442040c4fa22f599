"""Her odds of having stopped on this leg, and when she is flagged by them: sooner whoever is likelier to have stopped.

The watch holds the odds against the silence of whoever would have reported her (`Posterior.ended_rather_s`). In scores,
where everybody is reported at once, she is flagged once the density of her next arrival has fallen under a line times her
odds: of all rules with as many false flags that one finds those who stopped soonest (Neyman and Pearson, 1933). As the
minutes after arrivals count too, everybody has at least LEAST_ODDS. It is never before her 95% time. The limit, when told,
is one of the things the odds are made of: near it runners are taken out by cut-offs that nobody tells the forecast.
"""

import numpy as np

from server.forecast.condition import Legs, StretchesRun, Totals
from server.forecast.correct import spread
from server.forecast.fitted import Flagging
from server.forecast.values import FloatArray

LEAST_ODDS = 0.01
LEAST_SEEN = 2
"""Legs seen from which on the odds are fitted; with fewer those of the hazard hold."""
HIGH_RARITY, LAST_RARITY = (float(-np.log(p)) for p in (0.05, 0.005))
LIMIT_INPUTS = 4


def inputs(
    seen: StretchesRun,
    middle: FloatArray,
    legs: Legs,
    plain: Totals,
    spent_s: FloatArray,
    limit_s: FloatArray | None,
) -> FloatArray:
    """(B, f) what the odds depend on: how far, how she slows, how odd her last legs were, and how near the limit she runs.

    middle (B,): share of the course at the middle of the next leg; plain: without the limit; limit_s (B,) or None.
    """
    count, k = seen.y.shape
    slow, last, three = (np.zeros(count) for _ in range(3))
    if k:
        rows = np.arange(count)
        newest = np.argmax(seen.counts * np.arange(1, k + 1), axis=1)
        newness = np.cumsum(seen.counts[:, ::-1], axis=1)[:, ::-1]
        slow = np.clip(seen.y[rows, newest] - legs.level, -1.0, 1.0)
        last = np.clip(legs.surprise[rows, newest], -3.0, 3.0)
        three = np.clip((legs.surprise * seen.counts * (newness <= 3)).sum(axis=1), -6.0, 6.0) / 3.0
    columns = [np.ones(count), middle, middle**2, np.maximum(middle - 0.8, 0.0), slow, last, three]
    if limit_s is not None:
        left = np.log(np.maximum(limit_s - spent_s, 60.0)) - plain.mean[:, -1]
        z = np.clip(left / spread(plain)[:, -1], -2.0, 6.0)
        past = np.clip(np.log((spent_s + np.exp(plain.mean[:, -1])) / np.maximum(limit_s, 60.0)), -0.5, 0.5)
        columns += [np.exp(-z), past, np.maximum(past + 0.05, 0.0), z]
    return np.stack(columns, axis=-1)


def stops(weights: tuple[float, ...], x: FloatArray, length: FloatArray) -> FloatArray:
    """(B,) probability that her race ends on a leg of that length (share of the course)."""
    return np.asarray(-np.expm1(-np.exp(np.clip(x @ np.array(weights), -14.0, 5.0)) * length))


def falls_under(
    middle_s: FloatArray, high_s: FloatArray, last_s: FloatArray, power: float, density: FloatArray
) -> FloatArray:
    """Seconds from the last fact at which the density (per s) of her arrival is under `density`; not before high_s.

    middle_s, high_s, last_s (B,): her median, 95% and 99.5% times; beyond the 95% time lateness falls off as the powers
    of `margins.later`. Shapes broadcast.
    """
    high, last = high_s - middle_s, last_s - middle_s
    steep = (LAST_RARITY - HIGH_RARITY) / np.log(last / high)
    near = (np.exp(-HIGH_RARITY) * high**steep * steep / density) ** (1.0 / (steep + 1.0))
    far = (np.exp(-LAST_RARITY) * last**power * power / density) ** (1.0 / (power + 1.0))
    return np.asarray(middle_s + np.where(near < last, np.maximum(near, high), np.maximum(last, far)))


def times(
    flagging: Flagging,
    told: bool,
    lines: FloatArray,
    chance: FloatArray,
    next_s: FloatArray,
    whole_s: FloatArray,
    power: float,
) -> FloatArray:
    """(B, lines) seconds from the last fact at which she is flagged, for false-flag rates a leg, falling.

    chance (B,): that she stops on this leg; next_s (B, 8): her next arrival at the knots; whole_s (B,): her whole time.
    """
    fitted = flagging.log_lines if told else flagging.log_lines_untold
    at = np.interp(np.log(lines), np.log(flagging.rates[::-1]), fitted[::-1])
    odds = chance / (1.0 - chance) + LEAST_ODDS
    density = np.exp(at)[None, :] * (odds / whole_s)[:, None]
    middle, high, last = (next_s[:, i, None] for i in (3, 6, 7))
    return np.maximum.accumulate(falls_under(middle, high, last, power, density), axis=1)
