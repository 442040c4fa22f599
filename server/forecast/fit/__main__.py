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
from server.forecast.fit.hazards import fit_hazard, hazard_score
from server.forecast.fit.priors import WILD_LEVEL_SD, fit_prior
from server.forecast.fit.scores import Tally, score
from server.forecast.fit.stop_shape import fit_stops
from server.forecast.fit.tables import Race, courses, even_paced, from_other_years, load
from server.forecast.fit.tails import fit_tail
from server.forecast.fit.write import write
from server.forecast.fitted import Case, Ground
from server.forecast.prior import Prior
from server.forecast.values import Quality

FOLDS = 5
CLIMB_M_PER_KM = {"flat100": 2.0, "hill100": 34.0}
"""Ground of each course in the folder, from its description: under 400 m in all, and 5500 m over 161 km."""
OWN_REFERENCE = {"flat100": Quality.DISTANCE, "hill100": Quality.PAST_RESULTS}
HEADER = (
    f"{'':24s} {'next':>6s} {'+4':>6s} {'finish':>6s} {'loss':>6s}   80% holds %    false %, flag after / due"
)


def say(line: str) -> None:
    """Write a line to standard output at once."""
    sys.stdout.write(line + "\n")
    sys.stdout.flush()


def folds(races: Sequence[Race]) -> list[list[Race]]:
    """Years to keep back in turn, dense and sparse years spread over the folds."""
    ordered = sorted(races, key=lambda r: (-r.ref_s.size, r.year))
    count = min(FOLDS, len(ordered))
    return [ordered[i::count] for i in range(count)]


def cross_validate(name: str, races: list[Race]) -> list[Prior]:
    """Fit with years left out, score on them, print; the priors found, one a fold."""
    total: dict[str, Tally] = {}
    priors = []
    for kept in folds(races):
        fitted = [r for r in races if r not in kept]
        prior = fit_prior(fitted)
        nets = train(fitted, prior, WILD_LEVEL_SD)
        hazard = fit_hazard(fitted, prior, WILD_LEVEL_SD)
        priors.append(prior)
        here: dict[str, Tally] = {}
        ground = Ground(0.0, nets, hazard, fit_tail(fitted, prior, nets, WILD_LEVEL_SD), len(fitted))
        score(kept, ground, prior, WILD_LEVEL_SD, here)
        score(kept, ground, prior, WILD_LEVEL_SD, total)
        say(f"{name}: fitted {_years(fitted)}; scored {_years(kept)}")
        for row in ("limit told", "no limit"):
            say(f"  {row:22s} {here[row].line()}")
        foreseen, counted, ours, even = hazard_score(kept, prior, WILD_LEVEL_SD, hazard)
        say(
            f"  retirements foreseen {foreseen:.0f}, counted {counted:.0f}; log score {ours:.4f} (one rate {even:.4f})"
        )
    say(f"{name}: each year scored by constants fitted without it\n{HEADER}")
    for row, tally in sorted(total.items()):
        say(f"{row:24s} {tally.line()}")
    return priors


def _years(races: Sequence[Race]) -> str:
    return " ".join(str(y) for y in sorted(r.year for r in races))


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
        grounds.append(Ground(climb, nets, fit_hazard(races, prior, WILD_LEVEL_SD), tail, len(races)))
    if chosen.scores_only:
        return
    years = "; ".join(f"{name} {_years(races)}" for name, races in by_course.items())
    stops = fit_stops(next(iter(sorted(folder.glob("*_stops.csv")))))
    grounds.sort(key=lambda g: g.climb_m_per_km)
    target = Path(__file__).parents[1] / "constants.py"
    write(target, years, datetime.now(UTC).date(), cases, grounds, stops, WILD_LEVEL_SD, spread)
    say(f"wrote {target.name}")


if __name__ == "__main__":
    main()
