"""`python -m server.forecast.fit.ablate FOLDER`: what the score loses without each part of the model, years kept back."""

import argparse
from collections.abc import Callable, Sequence
from dataclasses import replace
from pathlib import Path

import numpy as np

from server.forecast.fit.__main__ import folds, say
from server.forecast.fit.curves import train
from server.forecast.fit.priors import WILD_LEVEL_SD, fit_prior
from server.forecast.fit.scores import Tally, score
from server.forecast.fit.tables import Race, courses, load
from server.forecast.fitted import Ground, Net
from server.forecast.prior import Prior

NO_HAZARD = (0.0, 0.0, 0.0, 0.0, 0.0, 0.0)
AS_THE_NETS_SAY = (1.0, 0.0)
Fit = Callable[[Sequence[Race]], Prior]


def _without(*names: str) -> Fit:
    return lambda races: fit_prior(races, without=frozenset(names))


def _straight_mean(races: Sequence[Race]) -> Prior:
    return fit_prior(races, fixed_mean=(0.0, 0.0, 0.0, 0.0))


def _not_robust(races: Sequence[Race]) -> Prior:
    return replace(fit_prior(races), robust_df=1e9)


PARTS: dict[str, Fit] = {
    "all parts": fit_prior,
    "mean fade shape": _straight_mean,
    "personal slope and curvature": _without("slope_sd", "curve_sd"),
    "wander that grows late": _without("wander"),
    "patches that end": _without("patch_sd"),
    "wander and patches": _without("wander", "patch_sd"),
    "leg noise": _without("leg_sd", "leg_per_share"),
    "noise in where points stand": _without("point_sd"),
    "robust weights": _not_robust,
}


def measure(races: Sequence[Race], fit: Fit, nets: bool) -> dict[str, Tally]:
    """Tallies over all folds with a fit of the prior, and nets trained on it or none."""
    out: dict[str, Tally] = {}
    for kept in folds(races):
        fitted = [r for r in races if r not in kept]
        prior = fit(fitted)
        found: tuple[Net, ...] = train(fitted, prior, WILD_LEVEL_SD) if nets else ()
        score(kept, Ground(0.0, found, NO_HAZARD, AS_THE_NETS_SAY, len(fitted)), prior, WILD_LEVEL_SD, out)
    return out


def main() -> None:
    """Command line."""
    parser = argparse.ArgumentParser(prog="python -m server.forecast.fit.ablate", description=__doc__)
    parser.add_argument("folder", type=Path)
    parser.add_argument("--references", type=Path)
    chosen = parser.parse_args()
    folder: Path = chosen.folder
    references: Path = chosen.references or folder.parent / "bench" / "references.json"
    for name, races in courses(load(folder, references)).items():
        for part, fit in PARTS.items():
            losses = []
            for nets in (False, True):
                tallies = measure(races, fit, nets)
                losses += [
                    float(np.concatenate(tallies[row].loss).mean()) for row in ("limit told", "no limit")
                ]
            say(
                f"{name:8s} without {part:30s} no nets {losses[0]:6.3f} {losses[1]:6.3f}   "
                f"nets {losses[2]:6.3f} {losses[3]:6.3f}"
            )


if __name__ == "__main__":
    main()
