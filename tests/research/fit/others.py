"""`python -m tests.research.fit.others FOLDER PLANS`: what others' passage times of the day say of a runner's legs.

The server's own model (`server.forecast.others`). Others are taken among those ahead of her, as their times stood when she
was last seen: N nearest in pace. Markdown.
"""

import argparse
from dataclasses import dataclass, field
from pathlib import Path

import numpy as np

from server.forecast import kinds
from server.forecast.field import forecast_field
from server.forecast.margins import KNOT_P
from server.forecast.others import bent, factors, nearest
from server.forecast.values import Quality
from tests.research.fit.__main__ import OWN_REFERENCE, say
from tests.research.fit.alarms import reference_of
from tests.research.fit.planned import kept_back, planned_races
from tests.research.fit.scores import Tally
from tests.research.fit.tables import Race, load

AHEAD = (0, 5, 50)


@dataclass(slots=True)
class Asked:
    """Tallies by how many others are taken."""

    by: dict[int, Tally] = field(default_factory=lambda: {n: Tally() for n in AHEAD})


def score(race: Race, every: int, into: Asked) -> None:
    """Add each Nth finisher, asked about at every point from the second on; limit told."""
    everybody = race.elapsed_s
    for row in np.flatnonzero(np.isfinite(everybody[:, -1]))[::every]:
        times = everybody[row]
        plan = reference_of(race, times)
        kind = kinds.of(plan)
        for k in range(2, times.size):
            if not np.isfinite(times[k - 1]):
                continue
            now = np.where(everybody <= times[k - 1], everybody, np.nan)
            ahead = nearest(now, k - 1, float(times[k - 1]))
            seen = np.where(np.arange(times.size) < k, times, np.nan)[None]
            for n, tally in into.by.items():
                own = bent(plan, factors(kind, plan, ahead[:n])) if n else plan
                found = forecast_field(own, seen, KNOT_P, race.limit_s).quantiles_s[:, k:]
                tally.add(found, times[None, k:])


def main() -> None:
    """Command line."""
    parser = argparse.ArgumentParser(prog="python -m tests.research.fit.others", description=__doc__)
    parser.add_argument("folder", type=Path)
    parser.add_argument("plans", type=Path, help="of `python -m tests.plan.plan_tables`")
    parser.add_argument("--every", type=int, default=24)
    chosen = parser.parse_args()
    folder: Path = chosen.folder
    races = load(folder, folder.parent / "bench" / "references.json")
    say(
        "| ground | reference | others | next | +4 | finish | loss | 80% band holds |\n|---|---|---|---|---|---|---|---|"
    )
    for some in (races, planned_races(folder, chosen.plans)):
        for name, mine in kept_back(some):
            asked = Asked()
            for race in mine:
                score(race, chosen.every, asked)
            made_from = OWN_REFERENCE[name] if mine[0].km is None else Quality.COST_MODEL
            for n, t in asked.by.items():
                errors = " | ".join(f"{np.concatenate(e).mean():.2f}" for e in t.errors)
                held = " / ".join(f"{100 * np.concatenate(h).mean():.0f}" for h in t.held)
                loss = np.concatenate(t.loss).mean()
                say(f"| {name} | {made_from.value} | {n} | {errors} | {loss:.2f} | {held} |")


if __name__ == "__main__":
    main()
