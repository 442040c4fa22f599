"""`python -m tests.research.fit.gain FOLDER`: what past results of the same course gain over an even pace. Markdown.

On the hills, years kept back, three references for the same runners: an even pace (distance only), the splits of
other years' finishers (`results.shape_from_results`, points joined by name), and the race's own published pace. Each
with the prior fitted for its kind on the years not kept back; the nets are left out, so that the references compare.
"""

import argparse
from collections.abc import Sequence
from dataclasses import replace
from pathlib import Path

import numpy as np

from server.forecast.fitted import Ground
from server.forecast.results import shape_from_results
from tests.research.fit.__main__ import say
from tests.research.fit.ablate import AS_THE_NETS_SAY, NO_HAZARD, NO_PUSH
from tests.research.fit.fold import split, years
from tests.research.fit.priors import WILD_LEVEL_SD, fit_prior
from tests.research.fit.scores import Tally, score
from tests.research.fit.tables import BASIS_S, Race, courses, even_paced, load, plain_name

SHAPES = ("even pace", "past results", "published pace")


def from_results(race: Race, others: Sequence[Race]) -> Race | None:
    """The race with other years' splits as its reference; None where a point of it was never recorded by others."""
    names = [plain_name(p) for p in race.points]
    parts = []
    for other in others:
        column = {plain_name(p): i for i, p in enumerate(other.points)}
        part = np.full((other.elapsed_s.shape[0], len(names)), np.nan)
        for j, name in enumerate(names):
            if name in column and other.year != race.year:
                part[:, j] = other.elapsed_s[:, column[name]]
        parts.append(part)
    table = np.concatenate(parts)
    finished = np.isfinite(table[:, -1])
    if not np.isfinite(table[finished]).any(axis=0).all():
        return None
    return replace(race, ref_s=shape_from_results(table, BASIS_S) * BASIS_S, free_level=False)


def _shaped(races: Sequence[Race], fitted: Sequence[Race], folder: Path) -> dict[str, list[Race | None]]:
    """The same races with each reference in turn; others' results come from the years fitted only."""
    return {
        "even pace": [*even_paced(races, folder)],
        "past results": [from_results(r, fitted) for r in races],
        "published pace": [*races],
    }


def main() -> None:
    """Command line."""
    parser = argparse.ArgumentParser(prog="python -m tests.research.fit.gain", description=__doc__)
    parser.add_argument("folder", type=Path)
    parser.add_argument("--references", type=Path)
    chosen = parser.parse_args()
    folder: Path = chosen.folder
    references: Path = chosen.references or folder.parent / "bench" / "references.json"
    for name, races in courses(load(folder, references)).items():
        if any(r.free_level for r in races):
            continue
        tallies: dict[str, dict[str, Tally]] = {s: {} for s in SHAPES}
        scored: list[Race] = []
        for kept in split(races):
            fitted = [r for r in races if r not in kept]
            learn, ask = (_shaped(part, fitted, folder) for part in (fitted, kept))
            known = [i for i, r in enumerate(ask["past results"]) if r is not None]
            scored += [kept[i] for i in known]
            for shape in SHAPES:
                prior = fit_prior([r for r in learn[shape] if r is not None])
                asked = [r for i in known if (r := ask[shape][i]) is not None]
                ground = Ground(0.0, (), NO_HAZARD, NO_PUSH, AS_THE_NETS_SAY, len(fitted))
                score(asked, ground, prior, WILD_LEVEL_SD, tallies[shape])
        say(
            f"\n{name}, scored {years(scored)}, each by constants fitted without it; limit told, nets left out\n"
        )
        say("| reference | next | +4 | finish | loss |\n|---|---|---|---|---|")
        for shape, found in tallies.items():
            errors = " | ".join(f"{np.concatenate(e).mean():.2f}" for e in found["limit told"].errors)
            say(f"| {shape} | {errors} | {np.concatenate(found['limit told'].loss).mean():.2f} |")


if __name__ == "__main__":
    main()
