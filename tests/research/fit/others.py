"""`python -m tests.research.fit.others FOLDER PLANS`: what others' passage times of the day say of a runner's legs.

By how much a leg of the day takes longer than planned is shared: the log factors of the legs are one Gaussian for the race,
with what a plan's contrast may be off and a part of each leg's own noise, and every other runner is seen through
her own level, slope and patches (the prior). Their posterior mean bends the reference of the one who is asked about; her
widths stay. Others are taken among those ahead of her, as their times stood when she was last seen: N nearest in pace.
Markdown.
"""

import argparse
from dataclasses import dataclass, field, replace
from pathlib import Path

import numpy as np

from server.forecast import kinds
from server.forecast.field import forecast_field
from server.forecast.kinds import ReferenceKind
from server.forecast.margins import KNOT_P
from server.forecast.prior import covariance, edge_noise, leg_noise, mean
from server.forecast.tempered import contrast, tempered
from server.forecast.values import FloatArray, Quality, Reference
from tests.research.fit.__main__ import OWN_REFERENCE, say
from tests.research.fit.alarms import reference_of
from tests.research.fit.planned import kept_back, planned_races
from tests.research.fit.scores import Tally
from tests.research.fit.tables import Race, load

SHARED = 0.3
"""Of a leg's own noise the part that all runners of a day have alike. Tried: 0.5 and 0.7, and a part that changes slowly
along the way: no better, and worse four points on."""
AHEAD = (0, 1, 5, 50)


def factors(kind: ReferenceKind, reference: Reference, others_s: FloatArray) -> FloatArray:
    """(n,) log factors of the day's legs against the reference, from others' arrivals (runners, n), nan where not known."""
    prior = kind.prior
    plan = tempered(reference, prior.contrast)
    share = plan.elapsed_s / plan.elapsed_s[-1]
    a, b = np.concatenate([[0.0], share[:-1]]), share
    planned = contrast(plan.km, plan.elapsed_s, plan.stop_s)
    shared = np.diag(SHARED * leg_noise(prior, a, b)) + prior.contrast_sd**2 * np.outer(planned, planned)
    known, pull = np.zeros_like(shared), np.zeros(share.size)
    for times in others_s:
        seen = np.flatnonzero(np.isfinite(times))
        if not seen.size:
            continue
        end = share[seen]
        begin = np.concatenate([[0.0], end[:-1]])
        edge = np.full(end.size, prior.point_sd**2)
        own = covariance(prior, begin, end, begin, end, kind.level_sd**2)
        own += edge_noise(begin, end, begin, end, edge * (begin > 0), edge)
        own += np.diag((1.0 - SHARED) * leg_noise(prior, begin, end))
        over = np.minimum(end[:, None], b) - np.maximum(begin[:, None], a)
        over = np.maximum(over, 0.0) / (end - begin)[:, None]
        y = np.log(np.diff(times[seen], prepend=0.0) / ((end - begin) * plan.elapsed_s[-1]))
        sees = np.linalg.solve(own, np.column_stack([over, y - mean(prior, begin, end)]))
        known += over.T @ sees[:, :-1]
        pull += over.T @ sees[:, -1]
    return np.asarray(shared @ np.linalg.solve(np.eye(share.size) + known @ shared, pull))


def bent(reference: Reference, logs: FloatArray) -> Reference:
    """The reference, of a plan without stops, with its legs times exp(logs)."""
    return replace(reference, elapsed_s=np.cumsum(np.diff(reference.elapsed_s, prepend=0.0) * np.exp(logs)))


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
            ahead = np.flatnonzero(np.isfinite(now[:, k:]).any(axis=1))
            pace = np.abs(np.log(everybody[ahead, k - 1] / times[k - 1]))
            ahead = ahead[np.argsort(pace, kind="stable")]
            seen = np.where(np.arange(times.size) < k, times, np.nan)[None]
            for n, tally in into.by.items():
                own = bent(plan, factors(kind, plan, now[ahead[:n]])) if n and ahead.size else plan
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
