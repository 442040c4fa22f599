"""`python -m tests.plan.served FOLDER PLANS --profile COURSE`: windows that the server gives for targets that are missed.

Each finisher has an event with her GPX, points and a target about her true time; her check-ins are folded and the outlook
asked, as the server does. Asked before the start, after the first point, after four and half-way.
"""

import argparse
from collections.abc import Sequence
from dataclasses import dataclass, replace
from datetime import timedelta
from pathlib import Path

import numpy as np
from scipy.special import ndtri

from server.course import Course
from server.event.model import Event
from server.facts.entry import Entry, Kind, Source
from server.facts.fold import fold
from server.forecast.bridge import outlook
from server.forecast.planned import Plan
from server.forecast.values import FloatArray
from server.plan import make_timetable
from server.plan.errors import PlanError
from tests.plan.plan_tables import course_of, event_of, level
from tests.research.fit.__main__ import say
from tests.research.fit.planned import read_plans, read_profile, usable, with_plans
from tests.research.fit.tables import MINUTE, Race, load
from tests.research.fit.targets import MISSES, asked_at

WINDOW = (0.1, 0.5, 0.9)
HEAD = (
    "| scored | targets miss by | said | limit | asked | next | +4 | finish | 80% band holds | of all points |\n"
    "|---|---|---|---|---|---|---|---|---|---|"
)


def windows(
    event: Event, table: Plan, course: Course, elapsed_s: FloatArray, probs: Sequence[float] = WINDOW
) -> FloatArray:
    """(m, q) seconds after the start of the points still ahead, by the server's own path. elapsed_s (k,): her check-ins."""
    entries = [_check_in(event, k, float(t)) for k, t in enumerate(elapsed_s, start=1) if np.isfinite(t)]
    now = entries[-1].seen_at if entries else event.starts
    race = fold(entries, event, now, None)
    found = outlook(event, race.runner("r"), race, table, course)
    first = found.ids.index(found.at(now).points[0])
    view = found.at(now).engine
    return np.array([view.quantiles(p, np.array(probs)) for p in range(first, len(found.ids))])


def _check_in(event: Event, k: int, elapsed_s: float) -> Entry:
    at = event.starts + timedelta(seconds=round(elapsed_s))
    return Entry(
        f"in{k}", event.id, "r", Kind.IN, at, at, at, "desk", Source.VOLUNTEER, "t", f"in{k}", point=f"p{k}"
    )


@dataclass(slots=True)
class Held:
    """Of the runners asked so far: errors (min) and hits of the band at the next point, four on, the finish; all hits."""

    errors: tuple[list[float], list[float], list[float]]
    hits: tuple[list[bool], list[bool], list[bool]]
    every: list[bool]

    def add(self, found_s: FloatArray, truth_s: FloatArray) -> None:
        """found_s (m, 3) at WINDOW, truth_s (m,) nan where not recorded."""
        inside = (found_s[:, 0] <= truth_s) & (truth_s <= found_s[:, 2])
        there = np.isfinite(truth_s)
        self.every += inside[there].tolist()
        for i, at in enumerate((0, 3, len(truth_s) - 1)):
            if at < len(truth_s) and there[at]:
                self.errors[i].append(abs(found_s[at, 1] - truth_s[at]) / MINUTE)
                self.hits[i].append(bool(inside[at]))


def finishers(race: Race, every: int) -> FloatArray:
    """Arrivals (runners, n) of those of a race who are asked about."""
    return race.elapsed_s[np.isfinite(race.elapsed_s[:, -1])][::every]


def missed(races: Sequence[Race], every: int) -> list[FloatArray]:
    """By how many standard deviations each of the finishers of each race misses the target.

    Drawn evenly over the normal, so that few runners say as much as many, and over all races together: eight draws of one
    race alone would have a spread of 0.92, and windows look too wide by as much.
    """
    sizes = [len(finishers(r, every)) for r in races]
    count = sum(sizes)
    spots = (np.random.default_rng(count).permutation(count) + 0.5) / count
    return np.split(np.asarray(ndtri(spots)), np.cumsum(sizes)[:-1])


def score(
    race: Race,
    course: Course,
    misses: FloatArray,
    said: float | None,
    limit: bool,
    every: int,
    into: dict[str, Held],
    before: bool = False,
) -> None:
    """Add some finishers of a race; misses: of their targets (log).

    said: how sure the plan is of its finish (log), None: as the planner has it.
    """
    assert race.km is not None
    done = finishers(race, every)
    targets = done[:, -1] * np.exp(misses)
    if limit:
        targets = np.minimum(targets, race.limit_s)  # the planner refuses to aim past it
    for times, target in zip(done, targets, strict=True):
        event = event_of(race.course, race.km, target, race.limit_s if limit else None)
        try:
            table = make_timetable(event, "r", course)
        except PlanError:
            continue  # faster than the planner takes anybody to be
        if said is not None:
            table = replace(table, spread=said)
        for when, k in asked_at(race.km.size).items():
            if k and (before or not np.isfinite(times[k - 1])):
                continue
            held = into.setdefault(when, Held(([], [], []), ([], [], []), []))
            held.add(windows(event, table, course, times[:k]), times[k:])


def main() -> None:
    """Command line."""
    parser = argparse.ArgumentParser(prog="python -m tests.plan.served", description=__doc__)
    parser.add_argument("folder", type=Path)
    parser.add_argument("plans", type=Path, help="of `python -m tests.plan.plan_tables`")
    parser.add_argument("--profile", type=Path, required=True)
    parser.add_argument("--every", type=int, default=30)
    parser.add_argument("--before", action="store_true", help="ask before the start alone")
    parser.add_argument("--limit", action="store_true", help="the events have the race's limit")
    parser.add_argument(
        "--as-planned", action="store_true", help="as sure as the planner is, whatever the miss"
    )
    chosen = parser.parse_args()
    profile = read_profile(chosen.profile)
    races = with_plans(
        usable(load(chosen.folder, chosen.folder.parent / "bench" / "references.json")),
        read_plans(chosen.folder, profile, chosen.plans),
    )
    say(HEAD)
    for name in sorted({r.course for r in races}):
        for miss in MISSES:
            tallies: dict[str, Held] = {}
            said = None if chosen.as_planned else miss
            kept = [r for r in races if r.course == name]
            for race, z in zip(kept, missed(kept, chosen.every), strict=True):
                assert race.km is not None
                # the flat's tables say km, the hills' none
                line = profile if name.startswith("hill") else level(float(race.km[-1]))
                score(
                    race,
                    course_of(line, name),
                    miss * z,
                    said,
                    chosen.limit,
                    chosen.every,
                    tallies,
                    chosen.before,
                )
            for when, h in tallies.items():
                errors = " | ".join(f"{np.mean(e):.1f}" for e in h.errors)
                hits = " / ".join(f"{100 * np.mean(e):.0f}" for e in h.hits)
                sure = "as planned" if said is None else f"{100 * said:.0f}%"
                told = "told" if chosen.limit else "no"
                say(
                    f"| {name} | {100 * miss:.0f}% | {sure} | {told} | {when} | {errors} | {hits} "
                    f"| {100 * np.mean(h.every):.0f} |"
                )


if __name__ == "__main__":
    main()
