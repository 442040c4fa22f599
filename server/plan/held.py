"""What a race that was held says of her: how she slowed against what is usual, how long she stopped, what she took in.

One race says little: each figure has its 10% and 90% side, and is drawn to what is usual as far as it can't say more.
"""

from __future__ import annotations

import math
from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass, replace
from datetime import datetime, timedelta
from typing import Final

import numpy as np

from server.course import Course
from server.event.model import CourseDef, Event, Goal, Target
from server.facts.entry import Entry
from server.facts.state import RunnerState, Stamp
from server.facts.stop_log import Item
from server.plan.errors import PlanError
from server.plan.learn import PRIORS
from server.plan.likely import Z90
from server.plan.planner import make_timetable

STRENGTHS: Final = (0.0, 0.5, 1.0, 1.5, 2.0, 3.0)
HALVES_NOISE: Final = 0.06
"""Standard deviation of log(second half / first half) between one race of a person and the next (own choice)."""
STOP_NOISE: Final = 0.5
STOP_PRIOR: Final = 0.4
"""Standard deviation of log(taken / planned) of one stop, and of people about their plans (own choice)."""
LEAST_FIGURES: Final = 3
"""With fewer amounts logged nothing is said of an hour."""
_LEAST_STRENGTH: Final = 0.1


@dataclass(frozen=True, slots=True)
class Figure:
    """A figure with its 10% and 90% side; `count`: of how many things it is made."""

    value: float
    low: float
    high: float
    count: int = 1


@dataclass(frozen=True, slots=True)
class RaceEvidence:
    """What one race says beside its times: her fade; carbohydrate (g) and fluid (ml) an hour, as logged. None: not known."""

    fade: Figure | None = None
    carbohydrate: Figure | None = None
    fluid: Figure | None = None


@dataclass(frozen=True, slots=True)
class Passed:
    """When she came to a point and left it, seconds after her start; None where nobody said so."""

    arrived_s: float | None
    left_s: float | None


def fade_of(event: Event, runner_id: str, course: Course, passed: Mapping[str, Passed]) -> Figure | None:
    """How strong her fade was, 1 as is usual: the strength with which the plan's own model makes her second half as much
    longer than the first as it was, with the stops as they were. None without a finish or three times, and in stages."""
    definition = event.course_of(runner_id)
    came = [
        (p.id, p.km, t.arrived_s)
        for p in definition.points
        if p.km is not None and (t := passed.get(p.id)) and t.arrived_s is not None
    ]
    finish = definition.points[-1].id
    if len(came) < LEAST_FIGURES or came[-1][0] != finish or any(p.next_stage for p in definition.points):
        return None
    ids, km = [c[0] for c in came], [c[1] for c in came]
    held = _as_held(event, runner_id, definition, passed, came[-1][2])
    tried: list[tuple[float, float]] = []
    for strength in STRENGTHS:
        runner = replace(held.runner(runner_id), fade=strength)
        faded = replace(held, runners=tuple(runner if r.id == runner_id else r for r in held.runners))
        try:
            rows = {r.point: r for r in make_timetable(faded, runner_id, course).rows}
        except PlanError:
            continue
        tried.append((strength, _halves(km, [rows[p].arrive[Goal.B].total_seconds() for p in ids])))
    if len(tried) < 2:
        return None
    fact = _halves(km, [c[2] for c in came])
    strengths, ratios = (np.array(x) for x in zip(*tried, strict=True))
    value, low, high = (
        float(np.interp(fact + z * HALVES_NOISE, ratios, strengths)) for z in (0.0, -Z90, Z90)
    )
    return Figure(value, low, high, len(came))


def held_of(event: Event, course: Course, state: RunnerState) -> RaceEvidence:
    """All of it, from what was reported and logged of her."""
    passed = {t.point: Passed(_since(t.arrived, state), _since(t.left, state)) for t in state.times}
    ends = [s.at for t in state.times for s in (t.left, t.arrived) if s is not None]
    end = state.finished.at if state.finished is not None else max(ends, default=state.start)
    carbohydrate, fluid = (intake_of(state.log, i, state.start, end) for i in (Item.ATE, Item.DRANK))
    return RaceEvidence(fade_of(event, state.runner, course, passed), carbohydrate, fluid)


def _since(stamp: Stamp | None, state: RunnerState) -> float | None:
    return None if stamp is None else (stamp.at - state.start).total_seconds()


def _as_held(
    event: Event, runner_id: str, definition: CourseDef, passed: Mapping[str, Passed], total_s: float
) -> Event:
    """The event with her whole time as the target, the stops as they were, and no limit in the way."""
    points = tuple(
        replace(p, planned_stop=_stop(passed.get(p.id), p.planned_stop), cut_offs=())
        for p in definition.points
    )
    courses = tuple(replace(c, points=points) if c.id == definition.id else c for c in event.courses)
    runner = replace(event.runner(runner_id), target=Target(finish=timedelta(seconds=total_s)))
    runners = tuple(runner if r.id == runner_id else r for r in event.runners)
    return replace(event, courses=courses, runners=runners, limit=None)


def _stop(t: Passed | None, planned: timedelta) -> timedelta:
    if t is None or t.arrived_s is None or t.left_s is None:
        return planned
    return timedelta(seconds=max(0.0, t.left_s - t.arrived_s))


def _halves(km: Sequence[float], seconds: Sequence[float]) -> float:
    """log(second half / first half) of the way to the last of these points, from the start on."""
    half = float(np.interp(km[-1] / 2.0, [0.0, *km], [0.0, *seconds]))
    return math.log((seconds[-1] - half) / half)


def drawn_fade(found: Iterable[Figure]) -> Figure | None:
    """The fade of one race or several, drawn to the usual 1 by how widely people differ."""
    prior = next(p for p in PRIORS if p.name == "fade_strength")
    weights, sums, count = 1.0 / prior.spread**2, 0.0, 0
    for f in found:
        value, low, high = (math.log(max(x, _LEAST_STRENGTH)) for x in (f.value, f.low, f.high))
        sd = max((high - low) / (2 * Z90), 0.1)
        weights, sums, count = weights + 1.0 / sd**2, sums + value / sd**2, count + 1
    if not count:
        return None
    middle, sd = sums / weights, 1.0 / math.sqrt(weights)
    return Figure(math.exp(middle), math.exp(middle - Z90 * sd), math.exp(middle + Z90 * sd), count)


def drawn_stops(stops: Sequence[tuple[float, float]]) -> Figure | None:
    """By what her stops took longer than planned, from (planned, taken) seconds, drawn to 1; None for too few."""
    logs = [math.log(max(taken, 60.0) / planned) for planned, taken in stops if planned >= 60.0]
    if len(logs) < LEAST_FIGURES:
        return None
    weight = len(logs) / STOP_NOISE**2
    whole = weight + 1.0 / STOP_PRIOR**2
    middle = weight * float(np.mean(logs)) / whole
    sd = 1.0 / math.sqrt(whole)
    return Figure(math.exp(middle), math.exp(middle - Z90 * sd), math.exp(middle + Z90 * sd), len(logs))


def intake_of(log: Iterable[Entry], item: Item, start: datetime, end: datetime) -> Figure | None:
    """What was logged of carbohydrate (g) or fluid (ml), an hour from start to end; its sides are the two halves of that
    time. At least that much: what nobody logged is not in it. None for too few amounts."""
    amounts = [
        (e.seen_at, one.amount)
        for e in log
        for one in e.logged
        if one.item is item and one.amount and start <= e.seen_at <= end + timedelta(hours=1)
    ]
    hours = (end - start) / timedelta(hours=1)
    if len(amounts) < LEAST_FIGURES or hours < 2.0:
        return None
    middle = start + (end - start) / 2
    first = sum(a for at, a in amounts if at <= middle)
    total = sum(a for _, a in amounts)
    halves = sorted((first / (hours / 2), (total - first) / (hours / 2)))
    return Figure(total / hours, halves[0], halves[1], len(amounts))
