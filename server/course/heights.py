"""Heights as recorded -> heights to reckon with: spikes out, noise smoothed, and no ascent made of noise.

Three steps. A spike is a jump no ground makes that comes back at once: it is bridged. What is left is
smoothed by distance, not by sample, so that a point a second and a point a kilometre are treated alike.
At last only rises and falls larger than the recording's own noise count: between two such turning points
the heights are made monotone, so that gradient, ascent and picture all come from one line.
"""

from __future__ import annotations

from itertools import pairwise
from typing import Final

import numpy as np
import numpy.typing as npt
from scipy.ndimage import gaussian_filter1d
from scipy.optimize import isotonic_regression

Floats = npt.NDArray[np.float64]

SPIKE_M: Final = 8.0
SPIKE_SLOPE: Final = 0.7
SPIKE_RUN_M: Final = 150.0
SMOOTH_M: Final = 40.0
FINE_M: Final = 5.0
# Ups and downs below this are never counted, above the other always; between them the noise decides.
LEAST_TURN_M: Final = 3.0
MOST_TURN_M: Final = 12.0
TURN_OF_NOISE: Final = 3.0
NOISE_LAG_M: Final = 25.0


def without_spikes(along_m: Floats, height_m: Floats) -> tuple[Floats, int]:
    """Heights (n,) with spikes bridged in a straight line, and how many spikes there were.

    along_m: (n,) metres, never falling; height_m: (n,) metres, no NaN. A spike leaves by a step of SPIKE_M
    or more, steeper than SPIKE_SLOPE, and is back near where it left within SPIKE_RUN_M. Common practice,
    no source.
    """
    rise = np.diff(height_m)
    run = np.diff(along_m)
    steep = np.flatnonzero((np.abs(rise) >= SPIKE_M) & (np.abs(rise) > SPIKE_SLOPE * run))
    cleaned = height_m.copy()
    count, free_from = 0, -1
    for position, start in enumerate(steep.tolist()):
        if start < free_from:
            continue
        end = _spike_end(along_m, height_m, steep[position + 1 : position + 20].tolist(), start)
        if end is not None:
            inside = slice(start + 1, end)
            cleaned[inside] = _bridge(along_m, height_m, start, end)
            count, free_from = count + 1, end
    return cleaned, count


def _spike_end(along_m: Floats, height_m: Floats, later: list[int], start: int) -> int | None:
    """Index of the first sample after a spike that left the ground after sample `start`, or None."""
    jump = height_m[start + 1] - height_m[start]
    for back in later:
        if along_m[back + 1] - along_m[start] > SPIKE_RUN_M:
            return None
        if abs(height_m[back + 1] - height_m[start]) <= 0.35 * abs(jump):
            return back + 1
    return None


def _bridge(along_m: Floats, height_m: Floats, start: int, end: int) -> Floats:
    """Heights of the samples between start and end on the straight line from one to the other."""
    run = along_m[end] - along_m[start]
    part = (along_m[start + 1 : end] - along_m[start]) / run if run > 0 else np.zeros(end - start - 1)
    return np.asarray(height_m[start] + part * (height_m[end] - height_m[start]), dtype=np.float64)


def smoothed(along_m: Floats, height_m: Floats, grid_m: Floats) -> Floats:
    """Heights (m,) at grid_m (m,), smoothed by a bell of standard deviation SMOOTH_M along the line.

    along_m (n,), strictly rising, and height_m (n,) are the vertices of the line; grid_m lies within them.
    At both ends the line is mirrored through its end, so that a slope there stays a slope.
    """
    length = float(along_m[-1])
    count = max(2, int(np.ceil(length / FINE_M)) + 1)
    fine = np.linspace(0.0, length, count)
    heights = np.interp(fine, along_m, height_m)
    step = length / (count - 1)
    pad = min(count - 1, int(np.ceil(4 * SMOOTH_M / step)))
    before = 2 * _end_height(heights, step) - heights[pad:0:-1]
    after = 2 * _end_height(heights[::-1], step) - heights[-2 : -pad - 2 : -1]
    whole = np.concatenate([before, heights, after])
    bell = gaussian_filter1d(whole, SMOOTH_M / step, mode="nearest")[pad : pad + count]
    return np.asarray(np.interp(grid_m, fine, bell), dtype=np.float64)


def _end_height(heights: Floats, step_m: float) -> float:
    """Height of the first sample by the straight line through those near it: one sample alone is noise."""
    near = heights[: max(2, int(2 * SMOOTH_M / step_m))]
    along = np.arange(len(near)) - (len(near) - 1) / 2
    slope = float((along * near).sum() / (along**2).sum())
    return float(near.mean()) + slope * float(along[0])


def noise_m(along_m: Floats, height_m: Floats) -> float:
    """Size of a recording's fast noise in metres: the typical second difference over NOISE_LAG_M.

    Ground bends little over 25 m, noise much; the median keeps true steps from counting. Zero for a drawn
    line.
    """
    grid = np.arange(0.0, along_m[-1], NOISE_LAG_M)
    if len(grid) < 4:
        return 0.0
    bends = np.diff(np.interp(grid, along_m, height_m), n=2)
    return float(1.4826 * np.median(np.abs(bends)))


def turning_points(height_m: Floats, least_m: float) -> list[int]:
    """Indices of the ends of every rise and fall of least_m or more; first and last sample always among them.

    Between two neighbours of the result no reversal reaches least_m.
    """
    heights: list[float] = height_m.tolist()
    steps = np.diff(height_m)
    # Only where the line bends back or lies level can a rise or fall end: a long course has few such samples.
    bends = (np.flatnonzero(steps[:-1] * steps[1:] <= 0) + 1).tolist()
    turns = [0]
    low = high = 0
    rising: bool | None = None
    for index in (0, *bends, len(heights) - 1):
        height = heights[index]
        if height > heights[high]:
            high = index
        if height < heights[low]:
            low = index
        if rising is not False and heights[high] - height >= least_m:
            turns.append(high)
            rising, low, high = False, index, index
        elif rising is not True and height - heights[low] >= least_m:
            turns.append(low)
            rising, low, high = True, index, index
    if rising is not None:
        turns.append(high if rising else low)
    turns.append(len(heights) - 1)
    return sorted(set(turns))


def monotone_between(height_m: Floats, turns: list[int]) -> Floats:
    """Heights (n,) made monotone from each turning point to the next, as near as can be (least squares)."""
    result = height_m.copy()
    for start, end in pairwise(turns):
        if end - start < 2:
            continue
        piece = height_m[start : end + 1]
        rising = bool(piece[-1] >= piece[0])
        # A turning point is shared by two pieces, so weight holds it; start and finish are samples like others.
        weight = np.ones(len(piece))
        held = [at for at, turn in ((0, start), (-1, end)) if 0 < turn < len(height_m) - 1]
        weight[held] = 1e9
        result[start : end + 1] = isotonic_regression(piece, weights=weight, increasing=rising).x
        for at in held:
            result[start + at % len(piece)] = piece[at]
    return result


def clean(along_m: Floats, height_m: Floats, grid_m: Floats) -> Floats:
    """Heights (m,) to reckon with at grid_m, from despiked vertices along_m, height_m (n,)."""
    least = float(np.clip(TURN_OF_NOISE * noise_m(along_m, height_m), LEAST_TURN_M, MOST_TURN_M))
    heights = smoothed(along_m, height_m, grid_m)
    return monotone_between(heights, turning_points(heights, least))
