"""`python -m tests.research.fit.targets FOLDER PLANS`: targets that people miss, on a ground that nobody fitted. Markdown.

Each finisher aims at her true time, missed by so many percent (lognormal); the plan of the cost model says how sure it is.
Asked before the start, after the first point, after four and half-way, by constants fitted on the other ground.
"""

import argparse
from dataclasses import dataclass, field
from pathlib import Path

import numpy as np

from server.forecast.constants import GROUNDS
from server.forecast.field import forecast_field
from server.forecast.kinds import ReferenceKind
from server.forecast.margins import KNOT_P
from server.forecast.values import FloatArray, Quality, Reference, WhoseTarget
from tests.research.fit.__main__ import CLIMB_M_PER_KM, say
from tests.research.fit.planned import fit_contrast, fit_planned, planned_races
from tests.research.fit.priors import WILD_LEVEL_SD
from tests.research.fit.scores import Tally
from tests.research.fit.tables import BASIS_S, Race, courses

MISSES = (0.05, 0.10, 0.20)
HEAD = (
    "| scored | targets miss by | said | asked | next | +4 | finish | loss | 80% band holds | of all points |\n"
    "|---|---|---|---|---|---|---|---|---|---|"
)


def kind_of(others: list[Race]) -> ReferenceKind:
    """Constants for plans of the cost model, fitted on other grounds; the odds are no part of what is scored here."""
    prior, bend = fit_planned(others, fit_contrast(others))
    nets = tuple((1.0 / len(bend.nets), n) for n in bend.nets)
    return ReferenceKind(
        prior, WILD_LEVEL_SD, nets, GROUNDS[0].hazard, GROUNDS[0].push, bend.tail, bend.years, 1.0
    )


def asked_at(n: int) -> dict[str, int]:
    """How many points lie behind her when she is asked about."""
    return {"before the start": 0, "after one point": 1, "after four": 4, "half-way": n // 2}


@dataclass(slots=True)
class Windows:
    """The usual tally, and hits of the 80% band at every later point."""

    tally: Tally = field(default_factory=Tally)
    held: list[FloatArray] = field(default_factory=list)

    def add(self, found_s: FloatArray, truth_s: FloatArray) -> None:
        """As `Tally.add`."""
        self.tally.add(found_s, truth_s)
        inside = (found_s[..., 1] <= truth_s) & (truth_s <= found_s[..., 5])
        self.held.append(inside[~np.isnan(truth_s)].astype(np.float64))


def score_targets(
    race: Race, kind: ReferenceKind, miss: float, said: float, into: dict[str, Windows], every: int
) -> None:
    """Add the finishers of a race to the tallies by when they are asked about."""
    done = race.elapsed_s[~np.isnan(race.elapsed_s[:, -1])][::every]
    draws = np.random.default_rng(race.year)
    scale = done[:, -1] / BASIS_S * np.exp(miss * draws.standard_normal(done.shape[0]))
    assert race.km is not None
    climb = CLIMB_M_PER_KM[race.course]
    plan = Reference(
        race.km, race.ref_s, np.zeros(race.km.size), Quality.COST_MODEL, climb, WhoseTarget.HERS, said
    )
    for when, k in asked_at(race.km.size).items():
        seen = np.array(done)
        seen[:, k:] = np.nan
        there = np.isfinite(seen[:, k - 1]) if k else np.ones(len(seen), dtype=bool)
        found = forecast_field(plan, seen[there], KNOT_P, None, scale[there], kind).quantiles_s
        truth: FloatArray = done[there, k:]
        into.setdefault(when, Windows()).add(found[:, k:], truth)


def rows(races: list[Race], kind: ReferenceKind, pairs: list[tuple[float, float]], every: int) -> None:
    """Print the lines of some races."""
    for miss, said in pairs:
        tallies: dict[str, Windows] = {}
        for race in races:
            score_targets(race, kind, miss, said, tallies, every)
        for when, w in tallies.items():
            t, every_point = w.tally, 100 * np.concatenate(w.held).mean()
            means = " | ".join(f"{np.concatenate(e).mean():.1f}" for e in t.errors)
            held = " / ".join(f"{100 * np.concatenate(h).mean():.0f}" for h in t.held)
            loss = np.concatenate(t.loss).mean()
            say(
                f"| {races[0].course} | {100 * miss:.0f}% | {100 * said:.0f}% | {when} | {means} | {loss:.2f} "
                f"| {held} | {every_point:.0f} |"
            )


def main() -> None:
    """Command line."""
    parser = argparse.ArgumentParser(prog="python -m tests.research.fit.targets", description=__doc__)
    parser.add_argument("folder", type=Path)
    parser.add_argument(
        "plans", type=Path, help="the planner's timetables, of `python -m tests.plan.plan_tables`"
    )
    parser.add_argument("--every", type=int, default=1)
    chosen = parser.parse_args()
    races = planned_races(chosen.folder, chosen.plans)
    say(HEAD)
    for name, kept in courses(races).items():
        kind = kind_of([r for r in races if r.course != name])
        rows(kept, kind, [(m, m) for m in MISSES], chosen.every)


if __name__ == "__main__":
    main()
