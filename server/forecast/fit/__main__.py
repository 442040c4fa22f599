"""`python -m server.forecast.fit FOLDER [--references FILE] [--scores-only]`: fit, write constants.py, print scores.

Each printed score names the years fitted and the years scored; they never overlap. The constants written at the end
are fitted on all years of the folder.
"""

import argparse
import sys
from collections.abc import Sequence
from dataclasses import fields
from datetime import UTC, datetime
from pathlib import Path

import numpy as np

from server.forecast.fit.curves import train
from server.forecast.fit.fold import folds, years
from server.forecast.fit.hazards import fit_hazard, hazard_score
from server.forecast.fit.limits import fit_push
from server.forecast.fit.priors import WILD_LEVEL_SD, fit_prior
from server.forecast.fit.scores import Tally, score
from server.forecast.fit.stop_shape import fit_stops
from server.forecast.fit.tables import Race, courses, even_paced, from_other_years, load
from server.forecast.fit.tails import fit_tail
from server.forecast.fit.write import write
from server.forecast.fitted import Case, Ground
from server.forecast.prior import Prior
from server.forecast.values import Quality

CLIMB_M_PER_KM = {"flat100": 2.0, "hill100": 34.0}
"""Ground of each course in the folder, from its description: under 400 m in all, and 5500 m over 161 km."""
MANY_POINTS = 14
"""Years with fewer points have longer legs, so that their next-point errors and flags compare with nothing else."""
OWN_REFERENCE = {"flat100": Quality.DISTANCE, "hill100": Quality.PAST_RESULTS}
HEADER = (
    f"{'':24s} {'next':>6s} {'+4':>6s} {'finish':>6s} {'loss':>6s}   80% holds %    false %, flag after / due"
)


def say(line: str) -> None:
    """Write a line to standard output at once."""
    sys.stdout.write(line + "\n")
    sys.stdout.flush()


def cross_validate(name: str, races: list[Race]) -> list[Prior]:
    """Fit with years left out, score on them, print; the priors found, one a fold."""
    total: dict[str, Tally] = {}
    by_density: dict[str, dict[str, Tally]] = {}
    priors = []
    for fold in folds(races):
        priors.append(fold.prior)
        here: dict[str, Tally] = {}
        for into in (here, total):
            score(fold.kept, fold.ground, fold.prior, WILD_LEVEL_SD, into)
        for race in fold.kept:
            dense = "many points" if race.ref_s.size >= MANY_POINTS else "few points"
            score([race], fold.ground, fold.prior, WILD_LEVEL_SD, by_density.setdefault(dense, {}))
        say(f"{name}: {fold.name()}")
        for row in ("limit told", "no limit"):
            say(f"  {row:22s} {here[row].line()}")
        foreseen, counted, ours, even = hazard_score(fold.kept, fold.prior, WILD_LEVEL_SD, fold.ground.hazard)
        say(
            f"  retirements foreseen {foreseen:.0f}, counted {counted:.0f}; log score {ours:.4f} (one rate {even:.4f})"
        )
    say(f"{name}: each year scored by constants fitted without it\n{HEADER}")
    for row, tally in sorted(total.items()):
        say(f"{row:24s} {tally.line()}")
    for dense, tallies in by_density.items():
        for row in ("limit told", "no limit"):
            say(f"{dense + ', ' + row:24s} {tallies[row].line()}")
    return priors


def _spread(case: str, priors: Sequence[Prior]) -> list[tuple[str, str, float]]:
    """How far each constant differs between fits with different years left out: as a share, plain near zero."""
    out = []
    for f in fields(Prior):
        values = np.array([np.atleast_1d(getattr(p, f.name)) for p in priors], dtype=np.float64)
        middle = np.abs(values.mean(axis=0))
        sd = values.std(axis=0)
        out.append((case, f.name, float(np.max(np.where(middle > 1e-3, sd / np.maximum(middle, 1e-3), sd)))))
    return out


def main() -> None:
    """Command line."""
    parser = argparse.ArgumentParser(prog="python -m server.forecast.fit", description=__doc__)
    parser.add_argument("folder", type=Path, help="folder of NAME.csv with NAME.json")
    parser.add_argument("--references", type=Path, help="JSON of reference timetables by race")
    parser.add_argument("--scores-only", action="store_true", help="print scores, write nothing")
    chosen = parser.parse_args()
    folder: Path = chosen.folder
    references: Path = chosen.references or folder.parent / "bench" / "references.json"
    cases: list[Case] = []
    grounds: list[Ground] = []
    spread: list[tuple[str, str, float]] = []
    by_course = courses(load(folder, references))
    for name, races in by_course.items():
        climb, quality = CLIMB_M_PER_KM[name], OWN_REFERENCE[name]
        found = cross_validate(name, races)
        if chosen.scores_only:
            continue
        spread += _spread(f"{quality.value}, {climb:g} m/km", found)
        prior = fit_prior(races)
        cases.append(Case(quality, climb, prior))
        if quality is Quality.DISTANCE:
            other = [from_other_years(r, races) for r in races]
            cases.append(Case(Quality.PAST_RESULTS, climb, fit_prior(other)))
        else:
            other = even_paced(races, folder)
            # her hills, seen against an even pace, belong to this course: only their scatter carries over
            even = next(c.prior.mean for c in cases if c.quality is Quality.DISTANCE)
            cases.append(Case(Quality.DISTANCE, climb, fit_prior(other, fixed_mean=even)))
        nets = train(races, prior, WILD_LEVEL_SD)
        tail = fit_tail(races, prior, nets, WILD_LEVEL_SD)
        hazard = fit_hazard(races, prior, WILD_LEVEL_SD)
        push = fit_push(races, prior, nets, hazard, WILD_LEVEL_SD)
        grounds.append(Ground(climb, nets, hazard, push, tail, len(races)))
    if chosen.scores_only:
        return
    source = "; ".join(f"{name} {years(races)}" for name, races in by_course.items())
    stops = fit_stops(next(iter(sorted(folder.glob("*_stops.csv")))))
    grounds.sort(key=lambda g: g.climb_m_per_km)
    target = Path(__file__).parents[1] / "constants.py"
    write(target, source, datetime.now(UTC).date(), cases, grounds, stops, WILD_LEVEL_SD, spread)
    say(f"wrote {target.name}")


if __name__ == "__main__":
    main()
