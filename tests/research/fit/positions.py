"""`python -m tests.research.fit.positions FOLDER`: what fixes between points are worth, on tracks made of real splits.

Of a leg that a finisher ran, and of the two before it, a track is made: her pace within a leg uneven, a fix every five
minutes, noise. She is asked about a quarter, half and three quarters on: by her points alone, with the track, with one that
jumps, with one that lags. Markdown.
"""

import argparse
from collections.abc import Iterator
from pathlib import Path

import numpy as np

from server.forecast.posterior import posterior
from server.forecast.values import Fact, FloatArray, Position, Quality, Reference, Sighting, WhoseTarget
from tests.research.fit.__main__ import CLIMB_M_PER_KM, say
from tests.research.fit.tables import KM_OF_MILE, MINUTE, Race, courses, load

PARTS = (0.25, 0.5, 0.75)
EVERY_S = 300.0
NOISE_M = 30.0
JUMP_KM = 3.0
LAG_S = 600.0
UNEVEN = 0.15
LEAST_LEG_S = 1800.0
TRACKS = ("points alone", "track", "jumps", "lags")


def tracked(begin_s: float, end_s: float, km: tuple[float, float], draws: np.random.Generator) -> FloatArray:
    """(f, 2) of seconds and km: fixes of somebody who runs the leg unevenly."""
    at = np.arange(begin_s + EVERY_S, end_s - 30.0, EVERY_S)
    part = (at - begin_s) / (end_s - begin_s)
    bend = UNEVEN * draws.standard_normal() / np.pi
    part = part + bend * np.sin(np.pi * part)
    where = km[0] + np.clip(part, 0.0, 1.0) * (km[1] - km[0])
    return np.column_stack([at, where + NOISE_M / 1000.0 * draws.standard_normal(at.size)])


def sent_by(now_s: float, fixes: FloatArray, how: str, draws: np.random.Generator) -> FloatArray:
    """The fixes that have come by now: none, all, with a fifth and the last of them far off, or of places she has left."""
    lag = LAG_S if how == "lags" else 0.0
    out: FloatArray = fixes[fixes[:, 0] + lag <= now_s] + np.array([lag, 0.0])
    if how == "points alone":
        return out[:0]
    if how == "jumps" and len(out):
        wrong = draws.random(len(out)) < 0.2
        wrong[-1] = True
        out[:, 1] += np.where(wrong, JUMP_KM * np.sign(draws.standard_normal(len(out))), 0.0)
    return out


def questions(race: Race, every: int) -> Iterator[tuple[str, float, float, float]]:
    """(track, part of the leg, error, and by how much the 80% band misses), minutes; nan: put past the point already."""
    climb = CLIMB_M_PER_KM[race.course]
    km = race.share * 100.0 * KM_OF_MILE
    quality = Quality.DISTANCE if race.free_level else Quality.PAST_RESULTS
    done = race.elapsed_s[~np.isnan(race.elapsed_s).any(axis=1)][::every]
    for row, times in enumerate(done):
        draws = np.random.default_rng([race.year, row])
        scale = times[0] / race.ref_s[0] if race.free_level else 1.0
        plan = Reference(km, race.ref_s * scale, np.zeros(km.size), quality, climb, WhoseTarget.ANYBODY)
        k = int(draws.integers(2, km.size))
        begin, end = float(times[k - 1]), float(times[k])
        if end - begin < LEAST_LEG_S:
            continue
        seen: list[Fact] = [Sighting(p, arrived_s=float(t)) for p, t in enumerate(times[:k])]
        legs = [
            (times[j - 1], times[j], (float(km[j - 1]), float(km[j]))) for j in range(max(k - 2, 1), k + 1)
        ]
        fixes = np.concatenate([tracked(float(a), float(b), way, draws) for a, b, way in legs])
        for part in PARTS:
            now = begin + part * (end - begin)
            for how in TRACKS:
                sent = sent_by(now, fixes, how, draws)
                places = [Position(float(w), float(t), NOISE_M) for t, w in sent]
                found = posterior(plan, [*seen, *places]).view(now).quantiles(k, np.array([0.1, 0.5, 0.9]))
                missed = np.maximum(np.maximum(found[0] - end, end - found[2]), 0.0)
                yield how, part, abs(found[1] - end) / MINUTE, missed / MINUTE


def main() -> None:
    """Command line."""
    parser = argparse.ArgumentParser(prog="python -m tests.research.fit.positions", description=__doc__)
    parser.add_argument("folder", type=Path)
    parser.add_argument(
        "--every", type=int, default=10, help="of the finishers; one leg of each is asked about"
    )
    parser.add_argument("--since", type=int, default=2009, help="years")
    chosen = parser.parse_args()
    folder: Path = chosen.folder
    say("| ground | track | a quarter on | half | three quarters | band holds | put past the point |")
    say("|---|---|---|---|---|---|---|")
    for name, races in courses(load(folder, folder.parent / "bench" / "references.json")).items():
        asked = [q for r in races if r.year >= chosen.since for q in questions(r, chosen.every)]
        for how in TRACKS:
            mine = [(part, error, missed) for h, part, error, missed in asked if h == how]
            errors = (np.nanmean([e for p, e, _ in mine if p == part]) for part in PARTS)
            held = 100 * np.mean([m == 0.0 for _, _, m in mine])
            past = 100 * np.mean([np.isnan(e) for _, e, _ in mine])
            shown = " | ".join(f"{e:.1f}" for e in errors)
            say(f"| {name} | {how} | {shown} | {held:.0f}% | {past:.1f}% of {len(mine)} |")


if __name__ == "__main__":
    main()
