"""Which constants serve a reference: chosen by its quality and by climb per km, never by a race's name."""

from dataclasses import dataclass, fields, replace
from functools import lru_cache

import numpy as np

from server.forecast.constants import CASES, GROUNDS, PLANNED, WILD_LEVEL_SD
from server.forecast.fitted import Bend, Ground, Net
from server.forecast.level import level_sd
from server.forecast.prior import Prior
from server.forecast.values import Quality, Reference, Target

OWN_TARGET_LEVEL_SD = 0.15
"""How far runners end from their own target (log), once something is seen or where no plan says. Assumed: the tables hold no
plans. Until then it is the plan's to say (`level`); too sure of a plan costs more than too unsure (see NOTEBOOK.md)."""

SHAPE = {
    # how good the legs' relative lengths are, and whether the reference holds a fade: 0 as distance only, 1 as results
    Quality.DISTANCE: (0.0, 0.0),
    Quality.COST_MODEL: (0.5, 1.0),
    Quality.OWN_DATA: (0.5, 1.0),
    Quality.PAST_RESULTS: (1.0, 1.0),
}
FITTED_PLANS_FOR = (Target.ANYBODY, Target.AIMED)
"""For whose targets a plan of the cost model has the constants fitted on such plans (`fit.planned`). The bridge still takes
hers as `Target.HERS`, with the assumed ones: the alarm tables and the asserted nights were made with those, and are to be
made anew together (NOTEBOOK.md, 'A target that is missed')."""
NOT_FITTED_WIDEN = 1.15
"""Windows are this much wider where quality and climb lie between or beyond what was fitted. Assumed, to be honest."""


@dataclass(frozen=True, slots=True, eq=False)
class Kind:
    """Everything the engine needs for one reference. nets: weighted, weights sum to 1.

    level_sd: how widely her level lies (log); start_level_sd: the same until something is seen of her, where a plan says.
    """

    prior: Prior
    level_sd: float
    nets: tuple[tuple[float, Net], ...]
    hazard: tuple[float, ...]
    push: tuple[float, float, float]
    tail: tuple[float, float, float]
    years: float
    widen: float
    start_level_sd: float | None = None

    def level_sd_after(self, seen: int) -> float:
        """How widely her level lies once so many stretches have been seen of her."""
        return self.level_sd if seen or self.start_level_sd is None else self.start_level_sd


def of(reference: Reference) -> Kind:
    """Constants for a reference: priors blended by quality and climb, curves and hazard by climb, her level by the plan."""
    kind = _kind(reference.quality, round(reference.climb_m_per_km, 1), reference.target)
    if reference.target is not Target.HERS or reference.spread is None:
        return kind
    start = level_sd(reference, kind.prior, kind.widen)
    # A plan less sure than is assumed counts on; one that is surer is not believed against what she shows.
    return replace(kind, start_level_sd=start, level_sd=max(start, kind.level_sd))


@lru_cache(maxsize=256)
def _kind(quality: Quality, climb: float, target: Target) -> Kind:
    flat, hill = GROUNDS
    hilly = float(
        np.clip((climb - flat.climb_m_per_km) / (hill.climb_m_per_km - flat.climb_m_per_km), 0.0, 1.0)
    )
    corners = {(c.quality, c.climb_m_per_km): c.prior for c in CASES}
    plain = _blend(
        corners[Quality.DISTANCE, flat.climb_m_per_km], corners[Quality.DISTANCE, hill.climb_m_per_km], hilly
    )
    known = _blend(
        corners[Quality.PAST_RESULTS, flat.climb_m_per_km],
        corners[Quality.PAST_RESULTS, hill.climb_m_per_km],
        hilly,
    )
    learned: tuple[tuple[Ground | Bend, float], ...]
    fitted = quality is Quality.COST_MODEL and target in FITTED_PLANS_FOR
    if fitted:
        good = 1.0
        prior = next(c.prior for c in CASES if c.quality is quality)
        learned = ((PLANNED, 1.0),)
    else:
        good, faded = SHAPE[quality]
        prior = _blend(plain, known, good, mean_share=faded)
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
    between = min(hilly, 1.0 - hilly) >= 0.1 and not fitted
    corner = not between and good in (0.0, 1.0) and climb < 1.5 * hill.climb_m_per_km
    level_sd = OWN_TARGET_LEVEL_SD if target is Target.HERS else WILD_LEVEL_SD
    return Kind(prior, level_sd, nets, hazard, push, tail, years, 1.0 if corner else NOT_FITTED_WIDEN)


def _blend(one: Prior, other: Prior, share: float, mean_share: float | None = None) -> Prior:
    """Between two priors: sizes geometrically, the rest straight; the mean shape may take its own share."""
    part = share if mean_share is None else mean_share
    mean = tuple((1.0 - part) * a + part * b for a, b in zip(one.mean, other.mean, strict=True))
    sizes: dict[str, float] = {}
    for field in fields(Prior):
        if field.name == "mean":
            continue
        a, b = float(getattr(one, field.name)), float(getattr(other, field.name))
        sizes[field.name] = (
            a ** (1.0 - share) * b**share if a > 0 and b > 0 else (1.0 - share) * a + share * b
        )
    return Prior(mean=mean, **sizes)
