"""`python -m server.forecast.fit.alarms FOLDER`: what an alarm line costs, measured on years not fitted.

For each line: false alarms per leg and per race, against how long after she was due a runner who went no further is
flagged; with 0, 10, 20 and 30% of check-ins lost or an hour late. The alarm is the engine's own
`Posterior.unheard_falls_under`, told only how often check-ins fail, not which.
"""

import argparse
from collections.abc import Iterator, Sequence
from dataclasses import dataclass, field
from pathlib import Path

import numpy as np

from server.forecast.fit.__main__ import CLIMB_M_PER_KM, OWN_REFERENCE, folds, say
from server.forecast.fit.curves import train
from server.forecast.fit.hazards import fit_hazard
from server.forecast.fit.priors import WILD_LEVEL_SD, fit_prior
from server.forecast.fit.tables import MINUTE, Race, courses, load
from server.forecast.fit.tails import fit_tail
from server.forecast.kinds import Kind
from server.forecast.posterior import with_constants
from server.forecast.values import Fact, FloatArray, Reference, Settings, Sighting, Silence, Target, Watcher

LINES = (0.02, 0.01, 0.005, 0.002, 0.001)
FAILING = (0.0, 0.1, 0.2, 0.3)
HOUR_S = 3600.0
PROMPT_S = 60.0
FOLDS_SCORED = 2
SETTINGS = Settings(paths=200)


@dataclass(slots=True)
class Count:
    """Legs waited for, false alarms, races, races with one, and minutes after due for those who went no further."""

    legs: int = 0
    false: int = 0
    races: int = 0
    spoilt: int = 0
    ordinary: list[float] = field(default_factory=list)
    stopped: list[float] = field(default_factory=list)


def reports(times: FloatArray, failing: float, draws: np.random.Generator) -> list[tuple[float, int, float]]:
    """(received, point, arrived) of the check-ins that come: half of those that fail are lost, half an hour late."""
    out = []
    for point in np.flatnonzero(np.isfinite(times)):
        luck = float(draws.random())
        if luck < failing / 2.0:
            continue
        delay = HOUR_S if luck < failing else PROMPT_S
        out.append((float(times[point]) + delay, int(point), float(times[point])))
    return sorted(out)


def watch_runner(
    kind: Kind,
    race: Race,
    times: FloatArray,
    failing: float,
    counts: dict[float, Count],
    draws: np.random.Generator,
) -> None:
    """Follow one runner's reports as they come and count what each line would have done."""
    come = reports(times, failing, draws)
    finished = bool(np.isfinite(times[-1]))
    spoilt = dict.fromkeys(LINES, False)
    silence = Silence(tuple(Watcher(p, 1.0 - failing, PROMPT_S, 0.5) for p in range(race.ref_s.size)))
    for i, (received, _, _) in enumerate(come):
        known: list[Fact] = [Sighting(p, arrived_s=at) for _, p, at in come[: i + 1]]
        if any(p == race.ref_s.size - 1 for _, p, _ in come[: i + 1]):
            break
        after = come[i + 1][0] if i + 1 < len(come) else None
        if after is None and finished:
            break
        post = with_constants(kind, _reference(race, kind, times), known, race.limit_s, SETTINGS)
        due = float(post.view(received).quantiles(post.track.first, np.array([0.5]))[0])
        for line in LINES:
            at = post.unheard_falls_under(line, received, silence)
            raised = np.inf if at is None else at
            count = counts[line]
            if after is None:
                count.stopped.append((raised - due) / MINUTE)
            else:
                count.legs += 1
                count.false += raised < after
                spoilt[line] |= bool(raised < after)
                if failing == 0.0:
                    count.ordinary.append((raised - (after - PROMPT_S)) / MINUTE)
    for line, count in counts.items():
        count.races += 1
        count.spoilt += spoilt[line]


def _reference(race: Race, kind: Kind, times: FloatArray) -> Reference:
    first = np.flatnonzero(np.isfinite(times))[0]
    scale = times[first] / race.ref_s[first] if race.free_level else 1.0
    none = np.zeros(race.ref_s.size)
    quality = OWN_REFERENCE[race.course]
    climb = CLIMB_M_PER_KM[race.course]
    assert kind.level_sd == WILD_LEVEL_SD
    return Reference(race.ref_s, race.ref_s * scale, none, quality, climb, Target.ANYBODY)


def rows(races: Sequence[Race], every: int) -> Iterator[str]:
    """Lines of the table for one course."""
    tables = {f: {line: Count() for line in LINES} for f in FAILING}
    for kept in folds(races)[:FOLDS_SCORED]:
        fitted = [r for r in races if r not in kept]
        prior = fit_prior(fitted)
        nets = train(fitted, prior, WILD_LEVEL_SD)
        hazard = fit_hazard(fitted, prior, WILD_LEVEL_SD)
        kind = Kind(
            prior,
            WILD_LEVEL_SD,
            tuple((1.0 / len(nets), n) for n in nets),
            hazard,
            fit_tail(fitted, prior, nets, WILD_LEVEL_SD),
            len(fitted),
            1.0,
        )
        for race in kept:
            for row, times in enumerate(race.elapsed_s[::every]):
                for failing, counts in tables.items():
                    watch_runner(kind, race, times, failing, counts, np.random.default_rng([row, race.year]))
    for failing, counts in tables.items():
        for line, c in counts.items():
            stopped = np.array(c.stopped)
            never = float(np.mean(~np.isfinite(stopped))) if stopped.size else 0.0
            middle = float(np.median(stopped)) if stopped.size else float("nan")
            usual = (
                f"{np.mean(c.ordinary):4.0f}" if c.ordinary and np.all(np.isfinite(c.ordinary)) else "   -"
            )
            yield (
                f"{100 * failing:3.0f}% fail  line {100 * line:4.1f}%  false: {100 * c.false / max(c.legs, 1):5.2f}% of "
                f"{c.legs} legs, {100 * c.spoilt / max(c.races, 1):5.1f}% of {c.races} races;  after arrival {usual} min;  "
                f"no further: {middle:4.0f} min after due (half of {stopped.size}), never {100 * never:3.0f}%"
            )


def main() -> None:
    """Command line."""
    parser = argparse.ArgumentParser(prog="python -m server.forecast.fit.alarms", description=__doc__)
    parser.add_argument("folder", type=Path)
    parser.add_argument("--references", type=Path)
    parser.add_argument("--every", type=int, default=10, help="take each Nth runner")
    chosen = parser.parse_args()
    folder: Path = chosen.folder
    references: Path = chosen.references or folder.parent / "bench" / "references.json"
    for name, races in courses(load(folder, references)).items():
        say(name)
        for row in rows(races, chosen.every):
            say("  " + row)


if __name__ == "__main__":
    main()
