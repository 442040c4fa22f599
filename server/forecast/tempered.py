"""A plan of the cost model overdoes hills: what it has slow takes less, what it has fast takes more, on every leg alike.

A leg's contrast is the log of its planned pace, without stops, against a straight line along the course, so that the fade
and the night that every plan has are none. On the hill tables the field
kept three quarters of what was planned; how much it is on another course is not known before she has shown it
(`Prior.contrast_sd`). Nothing here knows heights: a slow leg may be steep, rough or high.
"""

from dataclasses import replace

import numpy as np

from server.forecast.values import FloatArray, Reference

MOST = 1.0
"""A leg planned at e times the pace of the whole way counts as no more."""


def contrast(km: FloatArray, elapsed_s: FloatArray, stop_s: FloatArray | None = None) -> FloatArray:
    """(n,) log pace of the legs to points (n,) against its straight line (weighted by moving time), within MOST."""
    moving = _moving(elapsed_s, stop_s)
    way = np.diff(km, prepend=0.0)
    share = moving / moving.sum()
    x = np.log(share) - np.log(way / way.sum())
    along = np.cumsum(share) - share / 2.0
    along -= share @ along
    x -= share @ x
    x -= along * (share @ (x * along)) / max(float(share @ along**2), 1e-9)
    return np.asarray(np.clip(x, -MOST, MOST))


def tempered(reference: Reference, part: float) -> Reference:
    """The reference with exp(part * contrast) times the moving time on each leg; stops and the finish stay."""
    if part == 0.0 or reference.n < 2:
        return reference
    moving = _moving(reference.elapsed_s, reference.stop_s)
    own = moving * np.exp(part * contrast(reference.km, reference.elapsed_s, reference.stop_s))
    own *= moving.sum() / own.sum()
    before = np.concatenate([[0.0], np.cumsum(reference.stop_s[:-1])])
    elapsed = np.cumsum(own) + before
    elapsed[-1] = reference.elapsed_s[-1]
    return replace(reference, elapsed_s=elapsed)


def over(edges: FloatArray, legs: FloatArray, a: FloatArray, b: FloatArray) -> FloatArray:
    """Mean of what legs (n,) between edges (n + 1,) have over stretches from a to b (any shape)."""
    upto = np.concatenate([[0.0], np.cumsum(legs * np.diff(edges))])
    return np.asarray(
        (np.interp(b, edges, upto) - np.interp(a, edges, upto)) / np.maximum(np.asarray(b) - a, 1e-9)
    )


def _moving(elapsed_s: FloatArray, stop_s: FloatArray | None) -> FloatArray:
    """(n,) seconds of each leg without the stop before it."""
    legs = np.diff(elapsed_s, prepend=0.0)
    if stop_s is not None:
        legs[1:] -= stop_s[:-1]
    return np.asarray(legs)
