"""Her own pace from her own runs: cleaned, cut into steps, and the pace model's limits fitted to them.

What is fitted is what the plan uses: fastest walk, climb rate, downhill limit, how fast legs tire, and a
correction by gradient, all drawn towards the usual figures as far as her runs say nothing. Each run has a
power of its own, so that an easy run is not taken for a slow runner.
"""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import dataclass
from itertools import product
from typing import Final

import numpy as np
import numpy.typing as npt
from scipy.optimize import least_squares

from server.course import heights
from server.plan.costs import running_cost
from server.plan.errors import PlanError
from server.plan.likely import RunPower
from server.plan.notes import Note, Saying, note, saying
from server.plan.own import SPREAD, OwnPace
from server.plan.pace import Fade, Limits, Terrain, best_power_w_kg, faster_gait
from server.plan.recordings import Recording
from server.sentences import say

Floats = npt.NDArray[np.float64]
Bools = npt.NDArray[np.bool_]

STEP_M: Final = 100.0
STILL_M_S: Final = 0.25
"""Slower than this she stands: at a gate, a stop, a viewpoint. Common practice, no source."""
PAUSE_S: Final = 20.0
JUMP_M_S: Final = 8.0
"""Faster than this on foot over a sample is the satellite's jump, or a car. Common practice, no source."""
CLOSED_M: Final = 60.0
STEEPEST: Final = 0.45
NOISE: Final = 0.13
"""Standard deviation of log(time of 100 m) about the model that one step has: ground, gates, bends."""
ALIKE_STEPS: Final = 4.0
"""Neighbouring steps share their ground, so that many count as one. Common practice, no source."""
MOST_STEPS: Final = 6_000
BINS: Final = (-0.30, -0.20, -0.12, -0.07, -0.03, 0.0, 0.03, 0.07, 0.12, 0.20, 0.30)
OWN_AFTER_STEPS: Final = 12.0
"""After so many independent steps on a gradient her own figure and the published one weigh alike."""


@dataclass(frozen=True, slots=True)
class UsualLimit:
    """What is usual of a limit, and how widely people differ (log standard deviation). Common practice, no
    source."""

    name: str
    usual: float
    spread: float


PRIORS: Final = (
    UsualLimit("walk_m_s", 1.85, 0.12),
    UsualLimit("climb_m_per_h", 1000.0, 0.40),
    UsualLimit("downhill_m_s", 4.5, 0.35),
    UsualLimit("fade_strength", 1.0, 0.40),
)
USUAL_POWER_W_KG: Final = 9.0
POWER_SPREAD: Final = 0.5


@dataclass(frozen=True, slots=True, eq=False)
class RunSteps:
    """One run in steps of about 100 m, standing left out: seconds, gradient, hours on foot at its start
    (n,)."""

    file: str
    seconds: Floats
    step_m: Floats
    gradient: Floats
    hours: Floats
    paused_s: float
    jumps: int
    drift_m: float


@dataclass(frozen=True, slots=True)
class Learnt:
    """One figure: value, and the 10% and 90% side of what it may be."""

    name: str
    value: float
    low: float
    high: float


@dataclass(frozen=True, slots=True)
class GaitPoint:
    """At one gradient: her running and hiking speed (m/s, None where she did not), from how many 100 m
    steps, and the
    share that is her own (0 published, 1 her own)."""

    gradient: float
    run_m_s: float | None
    hike_m_s: float | None
    steps: int
    own: float


@dataclass(frozen=True, slots=True)
class RunsLearnt:
    """What her runs say: the limits for the plan, each figure with how sure it is, and in words what was
    used.

    powers: of each run; hours: the longest run; spread: of log(actual / target) for a plan
    on it.
    """

    limits: Limits
    figures: tuple[Learnt, ...]
    gait: tuple[GaitPoint, ...]
    powers: tuple[RunPower, ...]
    hours: float
    km: float
    spread: float
    source: Saying
    notes: tuple[Note, ...]

    def figure(self, name: str) -> Learnt:
        """The figure of that name; KeyError if there is none."""
        for f in self.figures:
            if f.name == name:
                return f
        raise KeyError(name)

    def own_pace(self) -> OwnPace:
        """The same as the planner takes it."""
        return OwnPace(
            self.limits, "own data", self.spread, self.source, powers=self.powers, notes=self.notes
        )


def steps_of(recording: Recording) -> RunSteps:
    """A recording cleaned and cut into steps: pauses and jumps out, heights smoothed, drift of the
    barometer taken out.

    Errors: PlanError where nothing is left that was on foot, or heights are missing.
    """
    t, x, height = recording.elapsed_s, recording.along_m, recording.height_m
    known = np.flatnonzero(np.isfinite(height))
    if len(known) < 0.5 * len(height):
        raise PlanError(
            say("wrong-no-heights-so-nothing-can"),
            field=recording.file,
            file=recording.file,
            remedy=say("do-give-recording-watch-writes-heights"),
        )
    height = np.interp(np.arange(len(height)), known, height[known])
    dt, dx = np.diff(t), np.diff(x)
    jump = dx > JUMP_M_S * np.maximum(dt, 1.0)
    moving = _moving(t, x) & ~jump
    drift = _drift(recording, height)
    height = height - drift * (t - t[0]) / (t[-1] - t[0])
    walked_m = np.concatenate([[0.0], np.cumsum(np.where(moving, dx, 0.0))])
    walked_s = np.concatenate([[0.0], np.cumsum(np.where(moving, dt, 0.0))])
    if walked_m[-1] < 1_000.0:
        raise PlanError(
            say("wrong-m-foot-rest-pauses-jumps", walked_m=f"{walked_m[-1]:.0f}"),
            field=recording.file,
            file=recording.file,
            remedy=say("do-give-run-more-kilometre"),
        )
    _refuse_ride(recording, float(walked_m[-1]), float(walked_s[-1]))
    keep = np.concatenate([[True], np.diff(walked_m) > 1e-6])
    along, seconds, hours = walked_m[keep], walked_s[keep], t[keep] / 3600.0
    edges = np.arange(0.0, along[-1], STEP_M)
    bare, _ = heights.without_spikes(along, height[keep])
    clean = heights.clean(along, bare, edges)
    gradient = np.clip(np.diff(clean) / STEP_M, -STEEPEST, STEEPEST)
    took = np.diff(np.interp(edges, along, seconds))
    at = np.interp(edges[:-1], along, hours)
    good = (took > STEP_M / JUMP_M_S) & (took < STEP_M / STILL_M_S)
    n = int(good.sum())
    pauses = float(dt[~moving].sum())
    return RunSteps(
        recording.file,
        took[good],
        np.full(n, STEP_M),
        gradient[good],
        at[good],
        pauses,
        int(jump.sum()),
        drift,
    )


def _refuse_ride(recording: Recording, metres: float, seconds: float) -> None:
    """Nobody has run so fast for so long: then it was on wheels, whatever the watch calls it."""
    fastest = best_power_w_kg(max(seconds / 3600.0, 0.5)) / float(running_cost(0.0))
    if metres / seconds > fastest:
        speed = metres / seconds * 3.6
        raise PlanError(
            say("wrong-km-h-over-km-faster", speed_km_h=f"{speed:.1f}", km=f"{metres / 1000:.0f}"),
            field=recording.file,
            file=recording.file,
            remedy=say("do-leave-out-rides-give-recordings"),
        )


def _moving(t: Floats, x: Floats) -> Bools:
    """Whether each gap between samples (n - 1,) belongs to moving: over PAUSE_S around it she gets on."""
    before, after = t[:-1] - PAUSE_S / 2, t[1:] + PAUSE_S / 2
    gone = np.interp(after, t, x) - np.interp(before, t, x)
    # Past both ends there is no road: the window is what was recorded of it.
    span = np.minimum(after, t[-1]) - np.maximum(before, t[0])
    dt, dx = np.diff(t), np.diff(x)
    paused = (dt > PAUSE_S) & (dx / np.maximum(dt, 1e-9) < STILL_M_S)
    return np.asarray((gone / np.maximum(span, 1e-9) >= STILL_M_S) & ~paused)


def _drift(recording: Recording, height: Floats) -> float:
    """Metres by which the barometer drifted: end less start, where she came back to the place she left."""
    placed = np.flatnonzero(np.isfinite(recording.lat_deg) & np.isfinite(recording.lon_deg))
    if len(placed) < 2:
        return 0.0
    a, b = placed[0], placed[-1]
    north = (recording.lat_deg[b] - recording.lat_deg[a]) * 111_200.0
    east = (recording.lon_deg[b] - recording.lon_deg[a]) * 111_300.0
    east *= math.cos(math.radians(float(recording.lat_deg[a])))
    if math.hypot(north, east) > CLOSED_M:
        return 0.0
    return float(np.median(height[b - 4 : b + 1]) - np.median(height[a : a + 5]))


def learn(runs: Sequence[RunSteps]) -> RunsLearnt:
    """The limits that fit a runner's own runs, drawn to the usual figures where they say nothing.

    Errors: PlanError where there is no run, or under 3 km in all.
    """
    if not runs or sum(len(r.seconds) for r in runs) < 30:
        raise PlanError(
            say("wrong-under-3-km-own-running"),
            field="recordings",
            remedy=say("do-add-longer-runs"),
        )
    pool = _Pool(runs)
    powers_first = [pool.first_power(k) for k in range(len(runs))]
    # A limit that is nowhere reached has no slope to follow, so that the search begins where limits are
    # reached, from several places. soft_l1: a step in a queue at a stile is no property of hers.
    tried = [
        least_squares(
            pool.residuals, np.array([*first, 0.0, *powers_first]), loss="soft_l1", f_scale=2.0, max_nfev=60
        )
        for first in product((-1.5, 0.5), (-2.0, -1.0, 0.0), (-2.0, -1.0, 0.0))
    ]
    found = min(tried, key=lambda t: float(t.cost))
    covariance = np.linalg.inv(found.jac.T @ found.jac)
    sd = np.sqrt(np.diag(covariance))
    figures = tuple(
        Learnt(
            p.name,
            *(
                p.usual * math.exp(p.spread * found.x[k] + z * p.spread * sd[k])
                for z in (0.0, -1.2816, 1.2816)
            ),
        )
        for k, p in enumerate(PRIORS)
    )
    limits = pool.limits(found.x)
    gait, curve = pool.by_gradient(found.x)
    limits = Limits(limits.walk_m_s, limits.climb_m_per_h, limits.downhill_m_s, limits.fade, curve)
    powers = [USUAL_POWER_W_KG * math.exp(POWER_SPREAD * v) for v in found.x[len(PRIORS) :]]
    return _put(runs, limits, figures, gait, powers)


def _put(
    runs: Sequence[RunSteps],
    limits: Limits,
    figures: tuple[Learnt, ...],
    gait: tuple[GaitPoint, ...],
    powers: list[float],
) -> RunsLearnt:
    km = sum(float(r.step_m.sum()) for r in runs) / 1000.0
    longest = max(float(r.hours[-1]) for r in runs)
    # Her own shape is worth as much as the hours it was seen for; short runs leave the late hours to the
    # usual figure.
    share = min(1.0, longest / 12.0)
    spread = SPREAD["cost model"] + share * (SPREAD["own data"] - SPREAD["cost model"])
    notes = []
    if longest < 4.0:
        notes.append(note("longest-run", longest_h=longest))
    if sum(r.paused_s for r in runs) > 600.0:
        notes.append(note("paused", paused_s=round(sum(r.paused_s for r in runs) / 60) * 60))
    jumps = sum(r.jumps for r in runs)
    if jumps:
        notes.append(note("jumps", count=jumps))
    source = saying("source-own-runs", count=len(runs), distance_whole_km=km, longest_h=longest)
    named = tuple(
        RunPower(r.file, p, max(float(r.hours[-1]), 0.1)) for r, p in zip(runs, powers, strict=True)
    )
    return RunsLearnt(limits, figures, gait, named, longest, km, spread, source, tuple(notes))


class _Pool:
    """All steps of all runs as one terrain, and the model's residuals on them."""

    def __init__(self, runs: Sequence[RunSteps]) -> None:
        whole = np.concatenate([np.full(len(r.seconds), k) for k, r in enumerate(runs)])
        every = max(1, -(-len(whole) // MOST_STEPS))
        pick = slice(None, None, every)
        self.run = whole[pick].astype(np.intp)
        self.seconds = np.concatenate([r.seconds for r in runs])[pick]
        self.hours = np.concatenate([r.hours for r in runs])[pick]
        gradient = np.concatenate([r.gradient for r in runs])[pick]
        step = np.concatenate([r.step_m for r in runs])[pick]
        n = len(step)
        km = np.concatenate([[0.0], np.cumsum(step)]) / 1000.0
        free = np.full(n, 50.0)
        self.terrain = Terrain(km, step, gradient, free, np.zeros(n, dtype=np.bool_))
        self.light = np.zeros(n, dtype=np.bool_)
        self.alike = max(1.0, ALIKE_STEPS / every)

    def first_power(self, run: int) -> float:
        """Where to begin looking for a run's power: from its level steps, in prior deviations."""
        level = (self.run == run) & (np.abs(self.terrain.gradient) < 0.03)
        some = level if level.sum() >= 3 else self.run == run
        speed = float(np.median(self.terrain.step_m[some] / self.seconds[some]))
        return math.log(max(speed, 0.8) * 3.6 / USUAL_POWER_W_KG) / POWER_SPREAD

    def limits(self, x: Floats) -> Limits:
        """The limits at parameters x: each a number of prior deviations from what is usual."""
        walk, climb, down, strength = (p.usual * math.exp(p.spread * x[k]) for k, p in enumerate(PRIORS))
        return Limits(walk, climb, down, Fade(strength=strength))

    def expected(self, x: Floats) -> tuple[Floats, Bools]:
        """Seconds of each step by the model, and whether it is a walk."""
        limits = self.limits(x)
        power = USUAL_POWER_W_KG * np.exp(POWER_SPREAD * x[len(PRIORS) :])[self.run]
        left = limits.fade.at(self.hours)
        gait = faster_gait(self.terrain, limits, power * left, left, self.light)
        return self.terrain.step_m / gait.speed_m_s, gait.walks

    def residuals(self, x: Floats) -> Floats:
        """Log errors in their deviations, then the pull of what is usual: (steps + parameters,)."""
        off = np.log(self.seconds / self.expected(x)[0]) / (NOISE * math.sqrt(self.alike))
        return np.concatenate([off, x])

    def by_gradient(self, x: Floats) -> tuple[tuple[GaitPoint, ...], tuple[tuple[float, float], ...]]:
        """Her speeds on each gradient, and by what the model's speed is to be multiplied there."""
        expected, walks = self.expected(x)
        speed = self.terrain.step_m / self.seconds
        nearest = np.abs(self.terrain.gradient[:, None] - np.array(BINS)[None, :]).argmin(axis=1)
        points: list[GaitPoint] = []
        curve: list[tuple[float, float]] = []
        for k, i in enumerate(BINS):
            here = nearest == k
            independent = float(here.sum()) / self.alike
            own = independent / (independent + OWN_AFTER_STEPS)
            off = float(np.median(np.log(expected[here] / self.seconds[here]))) if here.any() else 0.0
            curve.append((i, math.exp(own * off)))
            run, hike = (
                float(np.median(speed[s])) if s.sum() >= 3 else None for s in (here & ~walks, here & walks)
            )
            points.append(GaitPoint(i, run, hike, int(here.sum()), own))
        return tuple(points), tuple(curve)
