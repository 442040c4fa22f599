"""Others' split times of the same course -> the shape of a reference near her target."""

from collections.abc import Sequence

import numpy as np

from server.forecast.values import FloatArray, Quality, Reference, WhoseTarget

NEAR_LOG = 0.10
LEAST_RUNNERS = 20.0


def shape_from_results(elapsed_s: FloatArray, target_s: float) -> FloatArray:
    """(n,) arrival at each point as a share of the finish time, from others' arrivals (runners, n), nan where unknown.

    Weighted medians over those who finished, the weight falling off with the log distance of their finish from
    target_s (Gaussian, NEAR_LOG wide, wider until LEAST_RUNNERS count); rising along the course.
    Raises ValueError when nobody finished, or a point was never recorded by one who did.
    """
    table = np.asarray(elapsed_s, dtype=np.float64)
    if table.ndim != 2 or not target_s > 0:
        raise ValueError("past results: wanted a table of runners by points, and a target above 0 s")
    done = table[np.isfinite(table[:, -1]) & (table[:, -1] > 0)]
    if done.shape[0] == 0:
        raise ValueError("past results: nobody has a time at the finish; give the finish as the last column")
    far = np.log(done[:, -1] / target_s)
    width = NEAR_LOG
    weight = np.exp(-0.5 * (far / width) ** 2)
    while weight.sum() < min(LEAST_RUNNERS, 0.8 * far.size) and width < 10.0:
        width *= 1.5
        weight = np.exp(-0.5 * (far / width) ** 2)
    shares = done / done[:, -1:]
    out = np.empty(shares.shape[1])
    for j in range(shares.shape[1]):
        there = np.isfinite(shares[:, j])
        if not there.any():
            raise ValueError(f"past results: no finisher has a time at point {j}; leave that column out")
        out[j] = _weighted_median(shares[there, j], weight[there])
    if not np.all(np.diff(out, prepend=0.0) > 0):
        raise ValueError(
            "past results: the points' usual times do not rise; are the columns in running order?"
        )
    return out


def reference_from_results(
    km: FloatArray,
    elapsed_s: FloatArray,
    target_s: float,
    climb_m_per_km: float,
    stop_s: FloatArray | None = None,
    target: WhoseTarget = WhoseTarget.HERS,
) -> Reference:
    """A reference that reaches the finish at target_s in the shape others near her target have run.

    km (n,) of the points; elapsed_s (runners, n) others' arrivals, nan where unknown; stop_s (n,) her planned stops,
    shortened where others' legs leave no room (their times hold their own stops).
    """
    times = shape_from_results(elapsed_s, target_s) * target_s
    room = 0.5 * np.diff(times, append=times[-1])
    stops = np.zeros(times.size) if stop_s is None else np.minimum(np.asarray(stop_s, dtype=np.float64), room)
    return Reference(
        np.asarray(km, dtype=np.float64), times, stops, Quality.PAST_RESULTS, climb_m_per_km, target
    )


def read_results(rows: Sequence[Sequence[str]]) -> FloatArray:
    """Rows of a CSV, header and first column (a label) included, to arrivals in seconds (runners, n).

    A cell is empty, seconds, h:mm or h:mm:ss. Raises ValueError naming row and column (1 is the header).
    """
    out: list[list[float]] = []
    for i, row in enumerate(rows[1:], start=2):
        if len(row) != len(rows[0]):
            raise ValueError(f"past results, row {i}: {len(row)} cells, but the header has {len(rows[0])}")
        out.append([_seconds(cell, i, j) for j, cell in enumerate(row[1:], start=2)])
    return np.array(out, dtype=np.float64).reshape(len(out), max(len(rows[0]) - 1, 0) if rows else 0)


def _seconds(cell: str, row: int, column: int) -> float:
    text = cell.strip()
    if text == "":
        return float("nan")
    parts = text.split(":")
    try:
        numbers = [float(p) for p in parts]
    except ValueError:
        numbers = []
    if len(numbers) not in (1, 2, 3) or any(not v >= 0 or v == float("inf") for v in numbers):
        raise ValueError(
            f"past results, row {row}, column {column}: '{text}' is not seconds, h:mm or h:mm:ss"
        )
    if len(numbers) == 1:
        return numbers[0]
    hours, minutes = numbers[0], numbers[1]
    return hours * 3600.0 + minutes * 60.0 + (numbers[2] if len(numbers) == 3 else 0.0)


def _weighted_median(values: FloatArray, weights: FloatArray) -> float:
    order = np.argsort(values, kind="stable")
    upto = np.cumsum(weights[order]) - weights[order] / 2.0
    return float(np.interp(weights.sum() / 2.0, upto, values[order]))
