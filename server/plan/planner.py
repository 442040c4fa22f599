"""The room's door: a runner's timetable for goals A, B and C, or the reason why there can be none."""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import dataclass, replace
from datetime import timedelta

import numpy as np
import numpy.typing as npt

from server.course import Course
from server.event.model import CutOff, Edge, Event, Goal, Point
from server.plan.day import Weather
from server.plan.errors import PlanError
from server.plan.light import DarkKit, dark_kit, light_moments
from server.plan.likely import Z90, Estimate, odds_by_power, odds_of, predicted, verdict
from server.plan.notes import Note, note, saying
from server.plan.own import OwnPace
from server.plan.pace import RESTS_FROM_S, WALK_LEVEL_M_S, March, Solved, solve
from server.plan.remarks import remarks
from server.plan.setting import Setting, cut_offs, make_setting
from server.plan.targets import clock
from server.plan.timetable import Row, Timetable
from server.sentences import say

Floats = npt.NDArray[np.float64]

SAME_ASCENT = 0.02
"""Two figures of one climb this near are the same: maps differ by as much."""


def make_timetable(
    event: Event,
    runner_id: str,
    course: Course,
    *,
    weather: tuple[Weather, ...] | None = None,
    own: OwnPace | None = None,
    estimates: Sequence[Estimate] = (),
) -> Timetable:
    """The timetable of a runner for goals A, B, C on her course; every km of its points known.

    Rows add up to the target to the second. No goal is later than a cut-off: where the 90% side would be, C
    is pulled in to it, and the notes say so. A target that `own` or one of the `estimates` makes unlikely is called
    so, with the odds; without a target the first estimate, or the power of `own`, stands for it. `weather` None:
    that of the event. Errors: PlanError for a target out of reach, past a cut-off, or senseless.
    """
    setting = make_setting(event, runner_id, course, weather, own, estimates)
    solved = _solved(setting, setting.target.total_s)
    if not solved.reached:
        raise out_of_reach(setting, solved)
    b = _times(setting, solved.march, setting.target.total_s)
    _refuse_past_cut_off(setting, b)
    a, a_note = _goal_a(setting, b)
    c, c_note = _goal_c(setting, b)
    rows = _rows(setting, {Goal.A: a, Goal.B: b, Goal.C: c}, solved.march, course)
    unlikely = _unlikely(setting, solved.march.power, own, estimates)
    said = (
        *unlikely,
        *setting.target.notes,
        *_ascents(setting, course),
        *setting.ground.notes,
        *a_note,
        *c_note,
        *setting.notes,
    )
    elapsed, km = _line(setting, solved.march)
    return Timetable(
        runner_id,
        setting.runner.start,
        rows,
        setting.source,
        setting.quality,
        (*said, *remarks(setting, solved.march)),
        light=light_moments(setting.day.sky, elapsed, km),
        dark=_awake_in(dark_kit(setting.day.sky, elapsed, km, np.repeat(setting.ground.terrain.shaded, 2))),
        power_w_kg=solved.march.power,
        spread=setting.spread,
    )


def _ascents(setting: Setting, course: Course) -> tuple[Note, ...]:
    """The organiser's ascent beside ours, where both are known and are not the same."""
    climb, stated = course.climb(0.0, float(setting.km[-1])), setting.definition.stated_ascent_m
    if stated is None or climb is None or climb.up_m <= 0 or abs(stated / climb.up_m - 1.0) < SAME_ASCENT:
        return ()
    return (
        note("ascent", stated_m=stated, ours_m=climb.up_m, percent=round(100 * (stated / climb.up_m - 1.0))),
    )


def _unlikely(
    setting: Setting, power: float, own: OwnPace | None, estimates: Sequence[Estimate]
) -> tuple[Note, ...]:
    """What makes the target unlikely, then what each estimate gives, with its spread and what it rests on."""
    target = timedelta(seconds=setting.target.total_s)
    said = [verdict(odds_of(e, target), target, e.source) for e in estimates]
    if own is not None and own.powers:
        odds = odds_by_power(own.powers, power, target, own.spread)
        said.append(verdict(odds, target, own.source))
    others = [e for e in estimates if e.source != setting.target.source]
    told = [n for e in others for n in (predicted(e, beside=True), *e.notes)]
    told += [n for e in estimates if e not in others for n in e.notes]
    return (*(s for s in said if s is not None), *told)


def _solved(setting: Setting, total_s: float) -> Solved:
    """The march that takes total_s, in the shape of past results where there are any."""
    found = solve(setting.ground.terrain, setting.limits, setting.stops, setting.day, total_s)
    if not (found.reached and setting.shape):
        return found
    return replace(found, march=_shaped(setting, found.march, total_s))


@dataclass(frozen=True, slots=True, eq=False)
class Times:
    """Whole seconds from her start, (n,) each, at every point: in and out."""

    arrive_s: Floats
    leave_s: Floats


def _times(setting: Setting, done: March, total_s: int) -> Times:
    """In and out at every point, whole seconds; the last arrival is total_s exactly, and the nights between stages."""
    moved = np.concatenate([[0.0], np.cumsum(done.moving_s)])
    terrain = setting.ground.terrain
    return _stopping(setting, np.interp(setting.km, terrain.km, moved), total_s)


def _stopping(setting: Setting, moving: Floats, total_s: int | None = None) -> Times:
    """The same from her moving seconds at the points (n,)."""
    stop = np.concatenate([[0.0], setting.stops.lengths(setting.km, moving), [0.0]])
    nights = float((stop[1:-1] - setting.stops.seconds).sum())
    # Points round one by one would let the last digits drift; rounding the running total cannot.
    arrive = np.round(moving + np.concatenate([[0.0], np.cumsum(stop)[:-1]]))
    arrive[0] = 0.0
    if total_s is not None:
        arrive[-1] = float(round(total_s + nights))
    leave = arrive + stop
    if setting.stops.until_s is not None:
        leave[1:-1] = np.maximum(arrive[1:-1] + setting.stops.seconds, setting.stops.until_s)
    return Times(arrive, leave)


def _shaped(setting: Setting, done: March, total_s: float) -> March:
    """The march with each stretch between the shape's points made as long as others took of their whole
    time."""
    terrain, stop = setting.ground.terrain, np.concatenate([[0.0], setting.stops.seconds, [0.0]])
    index = {p.id: k for k, p in enumerate(setting.points)}
    wanted = sorted((index[p], share * total_s) for p, share in setting.shape if index.get(p, 0) > 0)
    moved = np.concatenate([[0.0], np.cumsum(done.moving_s)])
    edges_km = np.array([0.0, *(setting.km[k] for k, _ in wanted)])
    before = np.array([0.0, *(float(stop[:k].sum()) for k, _ in wanted)])
    ours = np.interp(edges_km, terrain.km, moved)
    theirs = np.array([0.0, *(s for _, s in wanted)]) - before
    if np.any(np.diff(theirs) <= 0.25 * np.diff(ours)):
        k = wanted[int(np.flatnonzero(np.diff(theirs) <= 0.25 * np.diff(ours))[0])][0]
        raise PlanError(
            say("wrong-past-results-leave-too-little", name=setting.points[k].name),
            field=f"runners.{setting.runner.id}.target",
            remedy=say("do-shorten-stops-before-look-whether"),
        )
    # Within a stretch the cost model still tells hill from flat: its own time is mapped onto the field's.
    moving = np.diff(np.interp(moved, ours, theirs))
    by = moving / done.moving_s
    lengths = setting.stops.lengths(terrain.km, np.concatenate([[0.0], np.cumsum(moving)]))
    starts = np.concatenate([[0.0], np.cumsum(moving[:-1])]) + setting.stops.before(terrain.km[:-1], lengths)
    parts = tuple((name, part * by) for name, part in done.parts)
    return replace(done, moving_s=moving, starts_s=starts, parts=parts)


def _refuse_past_cut_off(setting: Setting, b: Times) -> None:
    start = setting.runner.start
    for k, edge, at, rule in sorted(cut_offs(setting), key=lambda c: (c[0], c[2])):
        own = b.arrive_s[k] if edge is Edge.IN else b.leave_s[k]
        allowed = (at - start).total_seconds()
        if own <= allowed:
            continue
        point = setting.points[k]
        name = (
            say("wrong-races-time-limit")
            if rule is None
            else say(f"wrong-cut-off-{edge.value}", name=point.name)
        )
        if rule is not None and rule.clock is not None and rule.clock == point.next_stage:
            name = say("wrong-start-next-stage", name=point.name)
        if allowed <= 0:
            raise PlanError(
                say("wrong-before-start", name=name),
                field=_field_of(point, rule),
                remedy=say("do-correct-cut-off"),
            )
        aim = _latest_finish(setting)
        stops = float(setting.stops.seconds[: k if edge is Edge.OUT else max(0, k - 1)].sum())
        instead = say("do-aim-finish-earlier", aim=clock(aim)) if aim else say("do-no-finish-time-meets-cut")
        raise PlanError(
            say(
                f"wrong-past-cut-off-{edge.value}",
                finish=clock(setting.target.total_s),
                point=point.name,
                after=clock(own),
                over=clock(own - allowed),
                limit=name,
            ),
            # Where no target would do, it is the cut-off that has to be another one.
            field=f"runners.{setting.runner.id}.target" if aim else _field_of(point, rule),
            remedy=say("do-stop-less-before", instead=instead, stops=clock(stops)),
        )


def _field_of(point: Point, rule: CutOff | None) -> str:
    """The part of the event file that a cut-off stands in; the race's own limit is `rule` None."""
    if rule is None:
        return "limit"
    if rule not in point.cut_offs:
        return f"points.{point.id}.next_stage"
    return f"points.{point.id}.cut_off" + ("s" if len(point.cut_offs) > 1 else "")


def _latest_finish(setting: Setting) -> int | None:
    """The latest finish time in whole minutes, s, of a plan that meets every cut-off; None if there is
    none."""
    total = float(setting.target.total_s)
    for _ in range(12):
        total = total // 60 * 60
        try:
            solved = _solved(setting, total)
        except PlanError:
            return None
        if not solved.reached:
            return None
        times = _times(setting, solved.march, int(total))
        late = [
            (
                (at - setting.runner.start).total_seconds(),
                times.arrive_s[k] if edge is Edge.IN else times.leave_s[k],
            )
            for k, edge, at, _ in cut_offs(setting)
        ]
        share = min((allowed / own for allowed, own in late if own > allowed), default=1.0)
        if share >= 1.0:
            return int(total)
        if share <= 0.0:
            return None
        total = min(total * share, total - 60.0)
    return None


def _goal_a(setting: Setting, b: Times) -> tuple[Times, tuple[Note, ...]]:
    """The 10% side; where her limits do not allow it, as fast as they do."""
    total = round(setting.target.total_s * math.exp(-Z90 * setting.spread))
    if total <= setting.stops.total_s:
        return b, (note("goal-a-target"),)
    if setting.shape:
        return _scaled(setting, b, total), ()
    solved = _solved(setting, total)
    if solved.reached:
        return _times(setting, solved.march, total), ()
    fastest = min(math.ceil(solved.march.total_moving_s + setting.stops.total_s), setting.target.total_s)
    return _scaled(setting, b, fastest), (note("goal-a-limit", fastest_s=fastest),)


def _goal_c(setting: Setting, b: Times) -> tuple[Times, tuple[Note, ...]]:
    """The 90% side, pulled in to the first cut-off it would miss: between B and C all times move together."""
    total = round(setting.target.total_s * math.exp(Z90 * setting.spread))
    solved = None if setting.shape else _solved(setting, total)
    c = _times(setting, solved.march, total) if solved and solved.reached else _scaled(setting, b, total)
    share, because = 1.0, None
    for k, edge, at, rule in cut_offs(setting):
        allowed = math.floor((at - setting.runner.start).total_seconds())
        late = float(c.arrive_s[k] if edge is Edge.IN else c.leave_s[k])
        plan = float(b.arrive_s[k] if edge is Edge.IN else b.leave_s[k])
        if late > allowed:
            possible = (allowed - plan) / (late - plan)
            if possible < share:
                kind = "limit" if rule is None else f"cut-off-{edge.value}"
                share, because = possible, saying(kind, place=setting.points[k].name)
    if because is None:
        return c, ()
    if setting.stops.until_s is None:
        arrive = np.floor(b.arrive_s + share * (c.arrive_s - b.arrive_s))
        pulled = Times(arrive, arrive + (b.leave_s - b.arrive_s))
    else:
        moved = _moved(b) + share * (_moved(c) - _moved(b))
        pulled = _stopping(setting, moved)
        arrive = pulled.arrive_s
    return pulled, (note("goal-c", because, pulled_length_s=float(c.arrive_s[-1] - arrive[-1])),)


def _scaled(setting: Setting, b: Times, total_s: float) -> Times:
    """Goal B with all its moving time stretched so that the whole takes total_s."""
    stop = b.leave_s - b.arrive_s
    waited = np.concatenate([[0.0], np.cumsum(stop)[:-1]])
    by = (total_s - setting.stops.total_s) / (setting.target.total_s - setting.stops.total_s)
    if setting.stops.until_s is not None:
        return _stopping(setting, _moved(b) * by, round(total_s))
    arrive = np.round((b.arrive_s - waited) * by + waited)
    return Times(arrive, arrive + stop)


def _moved(times: Times) -> Floats:
    """Her moving seconds at every point (n,)."""
    waited = np.concatenate([[0.0], np.cumsum(times.leave_s - times.arrive_s)[:-1]])
    return np.asarray(times.arrive_s - waited)


def _rows(setting: Setting, goals: dict[Goal, Times], done: March, course: Course) -> tuple[Row, ...]:
    parts = _part_seconds(setting, done)
    rows: list[Row] = []
    for k, point in enumerate(setting.points):
        before = float(setting.km[k - 1]) if k else float(setting.km[0])
        climb = course.climb(before, float(setting.km[k]))
        rows.append(
            Row(
                point.id,
                float(setting.km[k]),
                float(setting.km[k]) - before,
                climb.up_m if climb else 0.0,
                climb.down_m if climb else 0.0,
                _stop_at(goals[Goal.B], k),
                {g: timedelta(seconds=float(t.arrive_s[k])) for g, t in goals.items()},
                {g: timedelta(seconds=float(t.leave_s[k])) for g, t in goals.items()},
                tuple((name, seconds[k]) for name, seconds in parts if k and seconds[k]),
            )
        )
    return tuple(rows)


def _stop_at(b: Times, k: int) -> timedelta:
    """How long she stops there, by goal B; a night to the minute."""
    seconds = float(b.leave_s[k] - b.arrive_s[k])
    return timedelta(seconds=round(seconds / 60.0) * 60.0 if seconds >= RESTS_FROM_S else seconds)


def _part_seconds(setting: Setting, done: March) -> list[tuple[str, list[timedelta]]]:
    """What each thing costs on the leg to each point, goal B, whole seconds."""
    terrain = setting.ground.terrain
    out: list[tuple[str, list[timedelta]]] = []
    for name, seconds in done.parts:
        whole = np.concatenate([[0.0], np.cumsum(seconds)])
        at = np.round(np.interp(setting.km, terrain.km, whole))
        legs = np.diff(at, prepend=at[0])
        out.append((name, [timedelta(seconds=float(s)) for s in legs]))
    return out


def _awake_in(dark: tuple[DarkKit, ...]) -> tuple[DarkKit, ...]:
    """Those dark parts in which she gets on: nobody needs a light to sleep between two stages."""
    return tuple(
        d for d in dark if d.to_km > d.from_km or (d.to_at - d.from_at).total_seconds() < RESTS_FROM_S
    )


def _line(setting: Setting, done: March) -> tuple[Floats, Floats]:
    """Her expected time along the whole course, stops as standing still: elapsed_s, km (2n,)."""
    terrain = setting.ground.terrain
    ends = done.starts_s + done.moving_s
    elapsed = np.column_stack([done.starts_s, ends]).ravel()
    km = np.column_stack([terrain.km[:-1], terrain.km[1:]]).ravel()
    return elapsed, km


def out_of_reach(setting: Setting, solved: Solved) -> PlanError:
    """Why a target cannot be met: what it would need, and which of her limits stand in the way."""
    terrain, target = setting.ground.terrain, setting.target.total_s
    field = f"runners.{setting.runner.id}.target"
    if solved.too_slow:
        return PlanError(
            say("wrong-slower-anybody-walks-course", target=clock(target)),
            field=field,
            remedy=say("do-plan-longer-stops-aim-earlier"),
        )
    fastest = solved.march.total_moving_s + setting.stops.total_s
    faster = solved.march.total_moving_s / (target - setting.stops.total_s)
    speeds: dict[str, str] = {}
    for name, here in (
        ("uphill", terrain.gradient > 0.05),
        ("level", np.abs(terrain.gradient) <= 0.03),
    ):
        if float(terrain.step_m[here].sum()) > 500.0:
            speed = float(terrain.step_m[here].sum() / solved.march.moving_s[here].sum()) * faster
            speeds[name] = f"{speed:.1f}"
    own = [
        f"{name} = {value:g}"
        for name, value in (
            ("walk_kmh", setting.limits.walk_m_s * 3.6 if setting.limits.walk_m_s < WALK_LEVEL_M_S else None),
            ("climb_m_per_h", setting.limits.climb_m_per_h),
            ("downhill_kmh", setting.limits.downhill_m_s * 3.6 if setting.limits.downhill_m_s else None),
        )
        if value is not None
    ]
    needs = say(f"wrong-speed-{'-'.join(speeds)}", **speeds) if speeds else say("wrong-speed-nobody-has")
    return PlanError(
        say(
            "wrong-finish-within-limits" if own else "wrong-finish-within-power",
            target=clock(target),
            needs=needs,
            limits=", ".join(own),
            fastest=clock(math.ceil(fastest)),
        ),
        field=field,
        remedy=say("do-aim-later-finish-or-correct-limits" if own else "do-aim-later-finish"),
    )
