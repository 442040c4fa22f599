"""Which constants serve a reference: chosen by its quality and by climb per km, never by a race's name."""

from dataclasses import dataclass, fields
from functools import lru_cache

import numpy as np

from server.forecast.constants import CASES, GROUNDS, PLANNED, WILD_LEVEL_SD
from server.forecast.fitted import Bend, Ground, Net
from server.forecast.prior import Prior
from server.forecast.values import Quality, Reference

NOT_FITTED_WIDEN = 1.15
"""Windows are this much wider where climb lies between or beyond what was fitted. Assumed, to be honest."""


@dataclass(frozen=True, slots=True, eq=False)
class ReferenceKind:
    """Everything the engine needs for one reference. nets: weighted, weights sum to 1. level_sd: of her level (log)."""

    prior: Prior
    level_sd: float
    nets: tuple[tuple[float, Net], ...]
    hazard: tuple[float, ...]
    push: tuple[float, float, float]
    tail: tuple[float, float, float]
    years: float
    widen: float


def of(reference: Reference) -> ReferenceKind:
    """Constants for a reference: priors blended by quality and climb, curves and hazard by climb.

    Plans have theirs, fitted on plans of the cost model on any climb; her own runs make the same plan of her own pace.
    """
    return _kind(reference.quality, round(reference.climb_m_per_km, 1))


@lru_cache(maxsize=256)
def _kind(quality: Quality, climb: float) -> ReferenceKind:
    flat, hill = GROUNDS
    hilly = float(
        np.clip((climb - flat.climb_m_per_km) / (hill.climb_m_per_km - flat.climb_m_per_km), 0.0, 1.0)
    )
    learned: tuple[tuple[Ground | Bend, float], ...]
    planned = quality in (Quality.COST_MODEL, Quality.OWN_DATA)
    if planned:
        prior = next(c.prior for c in CASES if c.quality is Quality.COST_MODEL)
        learned = ((PLANNED, 1.0),)
    else:
        corners = {c.climb_m_per_km: c.prior for c in CASES if c.quality is quality}
        prior = _blend(corners[flat.climb_m_per_km], corners[hill.climb_m_per_km], hilly)
        learned = tuple(g for g in ((flat, 1.0 - hilly), (hill, hilly)) if g[1] > 0)
    nets = tuple((weight / len(ground.nets), net) for ground, weight in learned for net in ground.nets)
    hazard = tuple((1.0 - hilly) * f + hilly * h for f, h in zip(flat.hazard, hill.hazard, strict=True))
    # the geometric mean of the grounds' reaches (`correct.tail_reach`), and of their powers
    tail = (
        float(np.prod([g.tail[0] ** w for g, w in learned])),
        float(sum(g.tail[1] * w for g, w in learned)),
        float(np.prod([g.tail[2] ** w for g, w in learned])),
    )
    push = (
        (1.0 - hilly) * flat.push[0] + hilly * hill.push[0],
        (1.0 - hilly) * flat.push[1] + hilly * hill.push[1],
        (1.0 - hilly) * flat.push[2] + hilly * hill.push[2],
    )
    years = float(sum(g.years * w for g, w in learned))
    between = min(hilly, 1.0 - hilly) >= 0.1 and not planned
    beyond = climb >= 1.5 * hill.climb_m_per_km
    widen = NOT_FITTED_WIDEN if between or beyond else 1.0
    return ReferenceKind(prior, WILD_LEVEL_SD, nets, hazard, push, tail, years, widen)


def _blend(one: Prior, other: Prior, share: float) -> Prior:
    """Between two priors: sizes geometrically, the rest straight."""
    mean = tuple((1.0 - share) * a + share * b for a, b in zip(one.mean, other.mean, strict=True))
    sizes: dict[str, float] = {}
    for field in fields(Prior):
        if field.name == "mean":
            continue
        a, b = float(getattr(one, field.name)), float(getattr(other, field.name))
        sizes[field.name] = (
            a ** (1.0 - share) * b**share if a > 0 and b > 0 else (1.0 - share) * a + share * b
        )
    return Prior(mean=mean, **sizes)
