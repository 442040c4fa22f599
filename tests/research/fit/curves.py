"""Trains the small nets that bend the quantile curves, by quantile loss on runners who got there."""

from collections.abc import Sequence
from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray

from server.forecast.condition import Legs, Totals, legs_ahead, totals
from server.forecast.correct import FARTHEST, WIDEST_STRETCH, correct, curve, inputs, spread, trust_in_nets
from server.forecast.fitted import Net
from server.forecast.limit import told
from server.forecast.margins import KNOT_P, KNOT_Z
from server.forecast.prior import Prior
from server.forecast.values import FloatArray
from tests.research.fit.tables import MINUTE, Batch, Race, batch, thinned

HIDDEN = 24
NETS = 4
STEPS = 1000
SAMPLE = 2048
RATE = 0.01
DECAY = 0.1
TAIL_WEIGHT = 0.3
"""Weight of the 99.5% quantile's loss, beside 1 for the other seven together."""
NEAR_WEIGHT = 0.9
"""Part of the weight that counts errors against the expected spread, so that near points are learned too."""


@dataclass(frozen=True, slots=True, eq=False)
class Asked:
    """A batch with its forecast before correction: used is what is corrected, plain without the limit."""

    batch: Batch
    legs: Legs
    used: Totals
    plain: Totals
    x: FloatArray


def ask(b: Batch, prior: Prior, level_sd: float, limit: bool) -> Asked:
    """Forecast a batch with the limit told or not, up to the correction."""
    legs = legs_ahead(prior, b.seen, b.ahead, level_sd**2)
    plain = totals(legs, b.ahead_ref_s)
    limit_s = np.full(b.spent_s.shape, b.race.limit_s) if limit else None
    used = plain if limit_s is None else told(plain, limit_s - b.spent_s)
    return Asked(
        b, legs, used, plain, inputs(b.seen, b.ahead, legs, used, plain, b.ahead_ref_s, b.spent_s, limit_s)
    )


def bent(a: Asked, nets: Sequence[Net], years: float) -> FloatArray:
    """Curves (B, m, 8) of a forecast as nets learned from so many years bend them, each net counting alike."""
    each = tuple((1.0 / len(nets), n) for n in nets)
    return correct(each, a.x, trust_in_nets(years, a.batch.seen), 1.0)


@dataclass(frozen=True, slots=True, eq=False)
class Rows:
    """One row a runner, question and later point: inputs, log centre and spread, truth in minutes, weight."""

    x: FloatArray
    centre: FloatArray
    sd: FloatArray
    truth_min: FloatArray
    weight: FloatArray


def rows(races: Sequence[Race], prior: Prior, level_sd: float) -> Rows:
    """Every question, with the limit told and without: the next arrival of everybody, later ones of finishers.

    Who is still on the course when an alarm is weighed is not yet known to be a finisher.
    """
    parts: list[tuple[FloatArray, ...]] = []
    for race in races:
        for k in range(1, race.ref_s.size):
            b = batch(race, k, prior)
            ahead = b.truth_s - b.spent_s[:, None]
            there = ~np.isnan(ahead)
            there[:, 1:] &= b.finished[:, None]
            usual = there[b.finished].sum(axis=1).mean() if b.finished.any() else 1.0
            count = np.where(b.finished, there.sum(axis=1), usual)
            weight = np.broadcast_to(1.0 / np.maximum(count, 1.0)[:, None], ahead.shape)
            for limit in (True, False):
                a = ask(b, prior, level_sd, limit)
                parts.append(
                    (
                        a.x[there],
                        a.used.mean[there],
                        spread(a.used)[there],
                        ahead[there] / MINUTE,
                        weight[there],
                    )
                )
    x, centre, sd, truth, weight = (np.concatenate(p) for p in zip(*parts, strict=True))
    centre = centre - np.log(MINUTE)
    scale = np.exp(centre) * sd
    near = NEAR_WEIGHT * np.average(scale, weights=weight) / scale
    return Rows(x, centre, sd, truth, weight * (1.0 - NEAR_WEIGHT + near))


def train(races: Sequence[Race], prior: Prior, level_sd: float, thin: int = 1) -> tuple[Net, ...]:
    """Nets for these races; they differ only in where they start, and their curves are averaged."""
    dense = [r for r in races if r.ref_s.size > 12]
    extra = [thinned(r, 97 * i + s) for s in range(thin) for i, r in enumerate(dense)]
    table = rows([*races, *extra], prior, level_sd)
    centre, scale = table.x.mean(axis=0), table.x.std(axis=0) + 1e-6
    scaled = np.clip((table.x - centre) / scale, -FARTHEST, FARTHEST)
    return tuple(_train_one(table, scaled, centre, scale, seed) for seed in range(NETS))


def _train_one(
    table: Rows,
    scaled: FloatArray,
    centre: FloatArray,
    scale: FloatArray,
    seed: int,
) -> Net:
    """Adam with a cosine rate and decay of the weights; the same seed gives the same net."""
    draws = np.random.default_rng(seed)
    f = scaled.shape[1]
    weights = [
        draws.standard_normal((f, HIDDEN)) / np.sqrt(f),
        np.zeros(HIDDEN),
        draws.standard_normal((HIDDEN, 8)) * 0.05 / np.sqrt(HIDDEN),
        np.zeros(8),
        np.zeros((f, 8)),
    ]
    first = [np.zeros_like(w) for w in weights]
    second = [np.zeros_like(w) for w in weights]
    for step in range(STEPS):
        pick = draws.integers(0, scaled.shape[0], SAMPLE)
        slopes = _slopes(weights, scaled[pick], table, pick)
        rate = RATE * 0.5 * (1.0 + np.cos(np.pi * step / STEPS)) + 1e-5
        for i, slope in enumerate(slopes):
            first[i] = 0.9 * first[i] + 0.1 * slope
            second[i] = 0.999 * second[i] + 0.001 * slope * slope
            step_size = first[i] / (1.0 - 0.9 ** (step + 1))
            root = np.sqrt(second[i] / (1.0 - 0.999 ** (step + 1))) + 1e-8
            weights[i] = weights[i] - rate * (step_size / root + DECAY * weights[i] * (weights[i].ndim > 1))
    return Net(centre, scale, *weights)


def _slopes(
    weights: list[FloatArray], x: FloatArray, table: Rows, pick: NDArray[np.int64]
) -> list[FloatArray]:
    """Gradient of the weighted quantile loss in minutes by each array of weights."""
    inner, inner_bias, outer, outer_bias, straight = weights
    hidden = np.tanh(x @ inner + inner_bias)
    output = hidden @ outer + outer_bias + x @ straight
    bent = curve(output)
    minutes = np.exp(np.minimum(table.centre[pick, None] + table.sd[pick, None] * bent, 12.0))
    by_time = np.where(table.truth_min[pick, None] > minutes, -KNOT_P, 1.0 - KNOT_P)
    by_time = by_time * np.r_[np.ones(7) / 7.0, TAIL_WEIGHT] * table.weight[pick, None]
    by_curve = by_time * minutes * table.sd[pick, None]
    gaps = np.diff(KNOT_Z) * np.exp(np.clip(output[:, 1:], -3.0, WIDEST_STRETCH))
    above = np.cumsum(by_curve[:, ::-1], axis=1)[:, ::-1]
    below = np.cumsum(by_curve, axis=1)
    by_output = np.empty_like(output)
    by_output[:, 0] = by_curve.sum(axis=1)
    by_output[:, 4:] = above[:, 4:] * gaps[:, 3:]
    by_output[:, 1:4] = -below[:, :3] * gaps[:, :3]
    by_output /= x.shape[0]
    by_hidden = by_output @ outer.T * (1.0 - hidden * hidden)
    return [
        x.T @ by_hidden,
        by_hidden.sum(axis=0),
        hidden.T @ by_output,
        by_output.sum(axis=0),
        x.T @ by_output,
    ]
