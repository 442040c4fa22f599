"""`python -m tests.research.fit.ablate FOLDER`: what the score loses without each part of the model, years kept back.

Prints Markdown: mean quantile loss (minutes) a question before the nets, and after nets trained on what is left, which
make good a part of what was taken away. `--plain` leaves the nets out, which is quick.
"""

import argparse
from collections.abc import Callable, Sequence
from dataclasses import replace
from pathlib import Path

import numpy as np

from server.forecast.fitted import Ground
from server.forecast.prior import Prior
from tests.research.fit.__main__ import say
from tests.research.fit.curves import train
from tests.research.fit.fold import FOLDS, split, years
from tests.research.fit.priors import WILD_LEVEL_SD, fit_prior
from tests.research.fit.scores import Tally, score
from tests.research.fit.tables import Race, courses, load

NO_HAZARD = (0.0, 0.0, 0.0, 0.0, 0.0, 0.0)
AS_THE_NETS_SAY = (1.0, 1.0, 3.0)
NO_PUSH = (0.0, 1.0, 0.0)
Fit = Callable[[Sequence[Race]], Prior]


def _without(*names: str) -> Fit:
    return lambda races: fit_prior(races, without=frozenset(names))


def _straight_mean(races: Sequence[Race]) -> Prior:
    return fit_prior(races, fixed_mean=(0.0, 0.0, 0.0, 0.0))


def _not_robust(races: Sequence[Race]) -> Prior:
    return replace(fit_prior(races), robust_df=1e9)


PARTS: dict[str, Fit] = {
    "nothing: all parts": fit_prior,
    "mean fade shape": _straight_mean,
    "personal slope and curvature": _without("slope_sd", "curve_sd"),
    "wander that grows late": _without("wander"),
    "patches that end": _without("patch_sd"),
    "wander and patches": _without("wander", "patch_sd"),
    "leg noise": _without("leg_sd", "leg_per_share"),
    "noise in where points stand": _without("point_sd"),
    "robust weights": _not_robust,
}


def measure(races: Sequence[Race], fit: Fit, most: int, nets: bool) -> list[float]:
    """Loss over the first `most` folds, limit told and not: without nets, then, if asked for, with nets."""
    plain: dict[str, Tally] = {}
    bent: dict[str, Tally] = {}
    for kept in split(races)[:most]:
        fitted = [r for r in races if r not in kept]
        prior = fit(fitted)
        score(
            kept,
            Ground(0.0, (), NO_HAZARD, NO_PUSH, AS_THE_NETS_SAY, len(fitted)),
            prior,
            WILD_LEVEL_SD,
            plain,
        )
        if nets:
            found = train(fitted, prior, WILD_LEVEL_SD)
            score(
                kept,
                Ground(0.0, found, NO_HAZARD, NO_PUSH, AS_THE_NETS_SAY, len(fitted)),
                prior,
                WILD_LEVEL_SD,
                bent,
            )
    return [
        float(np.concatenate(tallies[row].loss).mean())
        for tallies in (plain, bent)[: 1 + nets]
        for row in ("limit told", "no limit")
    ]


def main() -> None:
    """Command line."""
    parser = argparse.ArgumentParser(prog="python -m tests.research.fit.ablate", description=__doc__)
    parser.add_argument("folder", type=Path)
    parser.add_argument("--references", type=Path)
    parser.add_argument("--folds", type=int, default=FOLDS, help="only the first N folds, to save time")
    parser.add_argument("--plain", action="store_true", help="without the nets")
    chosen = parser.parse_args()
    folder: Path = chosen.folder
    references: Path = chosen.references or folder.parent / "bench" / "references.json"
    for name, races in courses(load(folder, references)).items():
        scored = [r for kept in split(races)[: chosen.folds] for r in kept]
        say(f"\n{name}, scored {years(scored)}, each by constants fitted without it\n")
        columns = ["limit told", "no limit"]
        if not chosen.plain:
            columns += ["with nets, limit told", "with nets, no limit"]
        say("| without | " + " | ".join(columns) + " |\n|---|" + "---|" * len(columns))
        for part, fit in PARTS.items():
            losses = measure(races, fit, chosen.folds, not chosen.plain)
            say(f"| {part} | " + " | ".join(f"{v:.2f}" for v in losses) + " |")


if __name__ == "__main__":
    main()
