"""What an alarm line costs, measured on years not fitted: `python -m tests.research.fit.alarms FOLDER`, Markdown.

For each line: false alarms per leg, per race, and what that makes of a race of 20 legs, against how long after she was
due a runner who went no further is flagged; with a part of the check-ins lost, or an hour late. The alarm is the
engine's own `Posterior.unheard_falls_under` (with odds: `ended_rather_s` too), told how often check-ins fail, never which.
As a command, the years that the constants of the grounds were not fitted on, by those constants: each Nth finisher, and
everybody who went no further at the last report of her. `fit.report` has folds fitted anew instead.
"""

import argparse
from collections.abc import Iterator, Sequence
from dataclasses import dataclass, field
from datetime import UTC, datetime
from pathlib import Path

import numpy as np

from server.forecast import kinds
from server.forecast.kinds import ReferenceKind
from server.forecast.outlook import RATHER
from server.forecast.posterior import with_constants
from server.forecast.values import (
    Fact,
    Fineness,
    FloatArray,
    Quality,
    Reference,
    Sighting,
    Silence,
    Watcher,
    WhoseTarget,
)
from tests.research.fit.__main__ import CLIMB_M_PER_KM, OWN_REFERENCE, say
from tests.research.fit.fold import Fold
from tests.research.fit.planned import kept_back, planned_races
from tests.research.fit.tables import MINUTE, Race, load

LINES = (0.02, 0.01, 0.005, 0.002, 0.001)
TODAY_FAILING = ((0.0, 0.0), (0.03, 0.0), (0.1, 0.0), (0.0, 0.1))
WITH_ODDS = (0.002,)
"""Lines also tried together with the odds that her race has rather ended than not (`Posterior.ended_rather_s`)."""
FAILING = ((0.0, 0.0), (0.03, 0.0), (0.1, 0.0), (0.2, 0.0), (0.3, 0.0), (0.0, 0.1), (0.0, 0.2), (0.0, 0.3))
"""(lost, an hour late): parts of the check-ins."""
HOUR_S = 3600.0
PROMPT_S = 60.0
POINTS_WATCHED = 12
"""Of the points ahead: where a third of the reports fail, ten silent points say less than one in 100,000."""
LEGS = 20
SETTINGS = Fineness(paths=200)

Rule = tuple[float, bool]
"""An alarm line, and whether the odds of an end count beside it."""


@dataclass(slots=True)
class Count:
    """Legs waited for, false alarms, races, races with one, and minutes after due for those who went no further."""

    legs: int = 0
    false: int = 0
    races: int = 0
    spoilt: int = 0
    stopped: list[float] = field(default_factory=list)


def reports(
    times: FloatArray, lost: float, late: float, draws: np.random.Generator
) -> list[tuple[float, int, float]]:
    """(received, point, arrived) of the check-ins that come."""
    out = []
    for point in np.flatnonzero(np.isfinite(times)):
        luck = float(draws.random())
        if luck < lost:
            continue
        delay = HOUR_S if luck < lost + late else PROMPT_S
        out.append((float(times[point]) + delay, int(point), float(times[point])))
    return sorted(out)


def watch_runner(
    kind: ReferenceKind,
    race: Race,
    times: FloatArray,
    failing: tuple[float, float],
    counts: dict[Rule, Count],
    seed: int,
    lines: Sequence[float] = LINES,
    last: bool = False,
) -> None:
    """Follow one runner's reports as they come and count what each line would have done; last: after the last alone."""
    come = reports(times, *failing, np.random.default_rng([seed, race.year]))
    finished = bool(np.isfinite(times[-1]))
    spoilt = dict.fromkeys(counts, False)
    for i, (received, _, _) in enumerate(come):
        known: list[Fact] = [Sighting(p, arrived_s=at) for _, p, at in come[: i + 1]]
        if any(p == race.ref_s.size - 1 for _, p, _ in come[: i + 1]):
            break
        after = come[i + 1][0] if i + 1 < len(come) else None
        if after is None and finished:
            break
        if after is not None and last:
            continue
        post = with_constants(kind, reference_of(race, times), known, race.limit_s, SETTINGS)
        first = post.track.first
        watched = range(first, min(first + POINTS_WATCHED, race.ref_s.size))
        silence = Silence(tuple(Watcher(p, 1.0 - sum(failing), PROMPT_S, 0.5) for p in watched))
        due = float(post.view(received).quantiles(first, np.array([0.5]))[0])
        begin = received
        by_line: dict[float, float] = {}
        for line in lines:
            at = post.unheard_falls_under(line, begin, silence)
            by_line[line] = np.inf if at is None else at
            begin = begin if at is None else at
        for (line, odds), count in counts.items():
            raised = by_line[line]
            if odds:
                ended = post.ended_rather_s(RATHER, received, silence)
                raised = min(raised, np.inf if ended is None else ended)
            if after is None:
                count.stopped.append((raised - due) / MINUTE)
            else:
                count.legs += 1
                count.false += raised < after
                spoilt[line, odds] |= bool(raised < after)
    for rule, count in counts.items():
        count.races += 1
        count.spoilt += spoilt[rule]


def reference_of(race: Race, times: FloatArray) -> Reference:
    """What the engine is given for a runner of a table: as the scoring script gives it; a plan where the race has one."""
    if race.km is not None:
        still, steep = np.zeros(race.km.size), CLIMB_M_PER_KM[race.course]
        return Reference(race.km, race.ref_s, still, Quality.COST_MODEL, steep, WhoseTarget.ANYBODY)
    first = np.flatnonzero(np.isfinite(times))[0]
    scale = times[first] / race.ref_s[first] if race.free_level else 1.0
    none = np.zeros(race.ref_s.size)
    quality = OWN_REFERENCE[race.course]
    climb = CLIMB_M_PER_KM[race.course]
    return Reference(race.ref_s, race.ref_s * scale, none, quality, climb, WhoseTarget.ANYBODY)


def _row(failing: tuple[float, float], rule: Rule, c: Count) -> str:
    line, odds = rule
    name = f"{100 * line:.1f}%{', odds' if odds else ''}"
    stopped = np.array(c.stopped)
    never = f"{100 * np.mean(~np.isfinite(stopped)):.0f}%" if stopped.size else "-"
    middle, most = (
        (f"{v:.0f}" for v in np.quantile(stopped, [0.5, 0.9], method="higher"))
        if stopped.size
        else ("-", "-")
    )
    rate = c.false / max(c.legs, 1)
    return (
        f"| {100 * failing[0]:.0f}% / {100 * failing[1]:.0f}% | {name} | {100 * rate:.2f}% of {c.legs} "
        f"| {100 * (1.0 - (1.0 - rate) ** LEGS):.1f}% | {100 * c.spoilt / max(c.races, 1):.1f}% of {c.races} "
        f"| {middle} / {most} of {stopped.size} | {never} |"
    )


HEAD = (
    "| lost / an hour late | line | false, legs | in 20 such legs | false, races "
    "| minutes after due: half / nine in ten | never |\n|---|---|---|---|---|---|---|"
)


def rows(found: Sequence[Fold], every: int) -> Iterator[str]:
    """Lines of the table for one course."""
    yield HEAD
    for failing in FAILING:
        counts = {(line, False): Count() for line in LINES} | {(line, True): Count() for line in WITH_ODDS}
        for fold in found:
            for race in fold.kept:
                for row, times in enumerate(race.elapsed_s[::every]):
                    watch_runner(fold.kind, race, times, failing, counts, row)
        for rule, count in counts.items():
            yield _row(failing, rule, count)


def unseen_rows(races: Sequence[Race], every: int) -> Iterator[str]:
    """The same by today's constants, at the line that an event has unless it says otherwise, and with the odds beside it."""
    for failing in TODAY_FAILING:
        counts: dict[Rule, Count] = {(line, odds): Count() for line in WITH_ODDS for odds in (False, True)}
        for race in races:
            finished = np.isfinite(race.elapsed_s[:, -1])
            seen = np.isfinite(race.elapsed_s).any(axis=1)
            for row in [*np.flatnonzero(finished)[::every], *np.flatnonzero(~finished & seen)]:
                times = race.elapsed_s[row]
                kind = kinds.of(reference_of(race, times))
                watch_runner(kind, race, times, failing, counts, int(row), WITH_ODDS, last=not finished[row])
        for rule, count in counts.items():
            yield _row(failing, rule, count)


def main() -> None:
    """Command line."""
    parser = argparse.ArgumentParser(prog="python -m tests.research.fit.alarms", description=__doc__)
    parser.add_argument("folder", type=Path)
    parser.add_argument("--every", type=int, default=12, help="of the finishers")
    parser.add_argument("--plans", type=Path, help="references of `python -m tests.plan.plan_tables` instead")
    chosen = parser.parse_args()
    folder: Path = chosen.folder
    own = load(folder, folder.parent / "bench" / "references.json")
    for name, races in kept_back(own if chosen.plans is None else planned_races(folder, chosen.plans)):
        say(f"\n{name}, {datetime.now(UTC).date()}:\n\n{HEAD}")
        for row in unseen_rows(races, chosen.every):
            say(row)


if __name__ == "__main__":
    main()
