"""`python -m tests.research.fit.unseen FOLDER PLANS`: plans of the cost model on a ground that nobody fitted. Markdown.

What the planner makes of a course and a target stands for the reference of somebody who has a GPX file and no results.
Prior, nets, tail and the part of the contrast are fitted on one ground, and scored on the other; limit told and not.
"""

import argparse
from pathlib import Path

from server.forecast.fitted import Ground
from tests.research.fit.__main__ import say
from tests.research.fit.ablate import NO_HAZARD, NO_PUSH
from tests.research.fit.fold import years
from tests.research.fit.planned import fit_contrast, fit_planned, planned_races, tempered_race
from tests.research.fit.priors import WILD_LEVEL_SD
from tests.research.fit.scores import Tally, score
from tests.research.fit.tables import courses


def main() -> None:
    """Command line."""
    parser = argparse.ArgumentParser(prog="python -m tests.research.fit.unseen", description=__doc__)
    parser.add_argument("folder", type=Path)
    parser.add_argument(
        "plans", type=Path, help="the planner's timetables, of `python -m tests.plan.plan_tables`"
    )
    parser.add_argument("--references", type=Path)
    parser.add_argument("--profile", type=Path)
    chosen = parser.parse_args()
    races = planned_races(chosen.folder, chosen.plans, chosen.references, chosen.profile)
    by_course = courses(races)
    say("| scored | asked | next | +4 | finish | loss | 80% band holds | false % at the 99.5% time | flags |")
    say("|---|---|---|---|---|---|---|---|---|")
    for name, kept in by_course.items():
        others = [r for r in races if r.course != name]
        part = fit_contrast(others)
        prior, bend = fit_planned(others, part)
        ground = Ground(0.0, bend.nets, NO_HAZARD, NO_PUSH, bend.tail, bend.years)
        tallies: dict[str, Tally] = {}
        score([tempered_race(r, part) for r in kept], ground, prior, WILD_LEVEL_SD, tallies)
        for row, tally in sorted(tallies.items()):
            *errors, rest = tally.line().split(maxsplit=4)
            say(f"| {name} {years(kept)} | {row} | " + " | ".join([*errors, *rest.split("   ")]) + " |")


if __name__ == "__main__":
    main()
