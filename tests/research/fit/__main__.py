"""`python -m tests.research.fit FOLDER [--scores-only | --write-only]`: fit, write constants.json, print scores.

Each printed score names the years fitted and the years scored; they never overlap. The constants written at the end
are fitted on all years of the folder; `--write-only` leaves out the folds, which take most of the time, and with them how
far the constants differ between them; `--plans-only` keeps the grounds and the cases of distance and results as they stand
and fits plans of the cost model and flags anew. What such plans are worth is scored by `fit.unseen`.
"""

import argparse
import sys
from collections.abc import Sequence
from dataclasses import fields
from datetime import UTC, datetime
from pathlib import Path

import numpy as np

from server.forecast import constants
from server.forecast.fitted import Case, Ground
from server.forecast.prior import Prior
from server.forecast.values import Quality
from tests.research.fit.curves import train
from tests.research.fit.flagging import Legs, fit_flags, legs_of
from tests.research.fit.fold import folds, years
from tests.research.fit.hazards import fit_hazard, hazard_score
from tests.research.fit.limits import fit_push
from tests.research.fit.planned import (
    fit_contrast,
    fit_planned,
    read_plans,
    read_profile,
    usable,
    with_plans,
)
from tests.research.fit.priors import WILD_LEVEL_SD, fit_prior
from tests.research.fit.scores import Tally, score
from tests.research.fit.stop_shape import fit_stops
from tests.research.fit.tables import Race, courses, even_paced, from_other_years, load
from tests.research.fit.tails import fit_tail
from tests.research.fit.write import write

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
    parser = argparse.ArgumentParser(prog="python -m tests.research.fit", description=__doc__)
    parser.add_argument("folder", type=Path, help="folder of NAME.csv with NAME.json")
    parser.add_argument("--references", type=Path, help="JSON of reference timetables by race")
    parser.add_argument(
        "--profile", type=Path, help="km,height_m,point of the course of tables that name their points"
    )
    parser.add_argument("--scores-only", action="store_true", help="print scores, write nothing")
    parser.add_argument(
        "--plans-only", action="store_true", help="keep grounds and their cases, fit plans and flags"
    )
    parser.add_argument("--write-only", action="store_true", help="fit on all years and write, score nothing")
    parser.add_argument(
        "--plans", type=Path, help="the planner's timetables, of `python -m tests.plan.plan_tables`"
    )
    chosen = parser.parse_args()
    if chosen.plans is None and not chosen.scores_only:
        parser.error("give --plans: `python -m tests.plan.plan_tables` makes the file")
    folder: Path = chosen.folder
    references: Path = chosen.references or folder.parent / "bench" / "references.json"
    profile: Path = chosen.profile or folder.parent / "courses" / "hill100.csv"
    cases: list[Case] = []
    told: list[Legs] = []
    untold: list[Legs] = []
    grounds: list[Ground] = []
    spread: list[tuple[str, str, float]] = []
    by_course = courses(load(folder, references))
    today = datetime.now(UTC).date()
    source, day = "; ".join(f"{name} {years(races)}" for name, races in by_course.items()), today
    if chosen.plans_only:
        source, day = constants.SOURCE, constants.FITTED_ON
        cases = [c for c in constants.CASES if c.quality is not Quality.COST_MODEL]
        grounds = list(constants.GROUNDS)
        spread = list(constants.SPREAD)
    for name, races in by_course.items():
        climb, quality = CLIMB_M_PER_KM[name], OWN_REFERENCE[name]
        if chosen.plans_only:
            ground = next(g for g in grounds if g.climb_m_per_km == climb)
            prior = next(c.prior for c in cases if c.quality is quality and c.climb_m_per_km == climb)
            told.append(legs_of(races, prior, ground, WILD_LEVEL_SD, limit=True))
            untold.append(legs_of(races, prior, ground, WILD_LEVEL_SD, limit=False))
            continue
        found = [] if chosen.write_only else cross_validate(name, races)
        if chosen.scores_only:
            continue
        if found:
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
        told.append(legs_of(races, prior, grounds[-1], WILD_LEVEL_SD, limit=True))
        untold.append(legs_of(races, prior, grounds[-1], WILD_LEVEL_SD, limit=False))
    if chosen.scores_only:
        return
    every = usable([r for races in by_course.values() for r in races])
    drawn = with_plans(every, read_plans(folder, read_profile(profile), chosen.plans))
    prior, planned = fit_planned(drawn, fit_contrast(drawn))
    cases.append(Case(Quality.COST_MODEL, sum(CLIMB_M_PER_KM.values()) / len(CLIMB_M_PER_KM), prior))
    stops = fit_stops(next(iter(sorted(folder.glob("*_stops.csv")))))
    grounds.sort(key=lambda g: g.climb_m_per_km)
    target = Path(constants.__file__).with_name("constants.json")
    flagging = fit_flags(told, untold)
    plans = "; ".join(f"{name} {years(usable(races))}" for name, races in by_course.items())
    write(
        target,
        {
            "source": source,
            "fitted_on": day.isoformat(),
            "plans": f"{plans} on {today}",
            "wild_level_sd": WILD_LEVEL_SD,
            "stops": stops,
            "spread": spread,
            "cases": cases,
            "grounds": grounds,
            "planned": planned,
            "flagging": flagging,
        },
    )
    say(f"wrote {target.name}")


if __name__ == "__main__":
    main()
