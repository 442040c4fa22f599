"""A whole field in one vectorised call: windows and odds of many runners on one course, from bare arrival times."""

from dataclasses import dataclass, replace

import numpy as np

from server.forecast import kinds, stopping
from server.forecast.condition import StretchesAhead, StretchesRun, Totals, legs_ahead, totals
from server.forecast.correct import correct, inputs, spread, trust_in_nets, with_mishaps
from server.forecast.limit import told
from server.forecast.margins import LEAST_LEG, in_order, times_at
from server.forecast.target import aimed
from server.forecast.tempered import contrast, over, tempered
from server.forecast.values import FloatArray, Reference, WhoseTarget


@dataclass(frozen=True, slots=True, eq=False)
class Field:
    """quantiles_s (B, n, q): arrivals given that she gets there; a time already seen stands at every probability,
    a point gone by unrecorded is nan. gets_there (B, n): probability of reaching each point, cut-offs ignored."""

    quantiles_s: FloatArray
    gets_there: FloatArray


def forecast_field(
    reference: Reference,
    elapsed_s: FloatArray,
    probs: FloatArray,
    limit_s: float | None = None,
    scale: FloatArray | None = None,
    kind: kinds.ReferenceKind | None = None,
) -> Field:
    """Forecast every runner at once by the same steps as `posterior`.

    elapsed_s (B, n): seconds after each runner's own start, nan where not (yet) recorded; rising along the course.
    probs (q,) rising in (0, 1). scale (B,): each runner's target as a multiple of the reference's finish time.
    kind: other constants than the fitted ones, for years that those were fitted on.
    Runners are taken together by the last point they were seen at, so there are at most n steps.
    """
    elapsed = np.asarray(elapsed_s, dtype=np.float64)
    if elapsed.ndim != 2 or elapsed.shape[1] != reference.n:
        raise ValueError(
            f"field: elapsed_s is {elapsed.shape}, wanted (runners, {reference.n}) as the reference has"
        )
    size = np.ones(elapsed.shape[0]) if scale is None else np.asarray(scale, dtype=np.float64)
    there = np.isfinite(elapsed)
    last = np.where(there.any(axis=1), elapsed.shape[1] - np.argmax(there[:, ::-1], axis=1), 0)
    quantiles = np.repeat(elapsed[..., None], len(probs), axis=2)
    gets_there = np.ones(elapsed.shape)
    for k in np.unique(last[last < reference.n]):
        rows = np.flatnonzero(last == k)
        quantiles[rows, k:], gets_there[rows, k:] = _together(
            kinds.of(reference) if kind is None else kind,
            reference,
            elapsed[rows, :k],
            np.asarray(probs, dtype=np.float64),
            limit_s,
            size[rows],
        )
    return Field(quantiles, gets_there)


def _together(
    kind: kinds.ReferenceKind,
    reference: Reference,
    elapsed: FloatArray,
    probs: FloatArray,
    limit_s: float | None,
    scale: FloatArray,
) -> tuple[FloatArray, FloatArray]:
    """Runners last seen at the same point: quantiles (b, n - k, q) and odds of getting there (b, n - k)."""
    reference = tempered(reference, kind.prior.contrast)
    count, k = elapsed.shape
    seen = _seen(reference, elapsed, scale, kind.prior.point_sd**2)
    share = reference.elapsed_s / reference.elapsed_s[-1]
    ends = np.concatenate([[0.0 if k == 0 else share[k - 1]], share[k:]])
    a, b = np.tile(ends[:-1], (count, 1)), np.tile(ends[1:], (count, 1))
    point = np.full(a.shape, kind.prior.point_sd**2)
    first = point.copy()
    if k == 0:
        first[:, 0] = 0.0
    ahead = StretchesAhead(a, b, first, point)
    if kind.prior.contrast_sd > 0.0:
        planned = contrast(reference.km, reference.elapsed_s, reference.stop_s)
        edges = np.concatenate([[0.0], share])
        seen = replace(seen, contrast=over(edges, planned, seen.a, seen.b))
        ahead = replace(ahead, contrast=over(edges, planned, a, b))
    spent = elapsed[:, -1] if k else np.zeros(count)
    ahead_ref = np.diff(ends)[None, :] * reference.elapsed_s[-1] * scale[:, None]
    legs = legs_ahead(kind.prior, seen, ahead, kind.level_sd**2)
    plain = totals(legs, ahead_ref)
    limit = None if limit_s is None else np.full(count, limit_s)
    used = plain if limit is None else told(plain, limit - spent)
    nets, trust = kind.nets if k else (), trust_in_nets(kind.years, seen)

    def bent(of: Totals, lim: FloatArray | None) -> FloatArray:
        x = inputs(seen, ahead, legs, of, plain, ahead_ref, spent, lim)
        return correct(nets, x, trust, kind.widen)

    curves = bent(used, limit)
    if reference.target is WhoseTarget.HERS:
        target = reference.elapsed_s[-1] * scale
        used, curves = aimed(used, curves, spent, target, reference.spread)
        plain = aimed(plain, bent(plain, None), spent, target, reference.spread)[0]
    if k:
        curves = with_mishaps(curves, used, plain, spent, kind.tail)
    times = times_at(used.mean, spread(used), curves, probs, kind.tail[2])
    least = LEAST_LEG * ahead_ref * np.exp(np.minimum(legs.mean, 0.5))
    ordered = np.swapaxes(in_order(np.swapaxes(times, 1, 2), least[:, None, :]), 1, 2)
    return spent[:, None, None] + ordered, stopping.survival(kind.hazard, seen, ahead, legs)


def _seen(reference: Reference, elapsed: FloatArray, scale: FloatArray, point_var: float) -> StretchesRun:
    """Stretches between recorded points; an unrecorded one only lengthens the next."""
    count, k = elapsed.shape
    share = reference.elapsed_s / reference.elapsed_s[-1]
    a, y = np.zeros((count, k)), np.zeros((count, k))
    there = np.isfinite(elapsed)
    before_share, before_s = np.zeros(count), np.zeros(count)
    for i in range(k):
        a[:, i] = before_share
        planned = (share[i] - before_share) * reference.elapsed_s[-1] * scale
        y[:, i] = np.log(np.where(there[:, i], (elapsed[:, i] - before_s) / planned, 1.0))
        before_share = np.where(there[:, i], share[i], before_share)
        before_s = np.where(there[:, i], elapsed[:, i], before_s)
    b = np.tile(share[:k], (count, 1))
    counts = there.astype(np.float64)
    return StretchesRun(
        a, b, y, np.where(a > 0, point_var, 0.0), np.full_like(b, point_var), counts, np.zeros_like(b)
    )
