"""How a race went against its plan, in words: how it ended, against goal B, where time was lost and where made up."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from datetime import datetime, timedelta

from server.conversation.telling import measures
from server.conversation.telling.answer import ForecastAnswer, PointAnswer
from server.conversation.telling.answers import ON_PLAN, going_words, race_ended
from server.conversation.telling.say import Say, lines, slug
from server.facts.entry import Retired
from server.sentences import has

__all__ = ["LegCompared", "parts_of", "say_pace", "say_report"]

WORTH_TELLING = timedelta(minutes=5)
"""A leg or a stop nearer to its plan than that is no loss (one step of the windows' rounding)."""
TOLD = 3
"""So many of the largest are told of; the plan has the rest."""


@dataclass(frozen=True, slots=True)
class LegCompared:
    """A leg from one point with a time to the next with one (`start` '' for a stop at `end`), how long it was planned to
    take, and how much longer it took; negative where it was quicker."""

    start: str
    end: str
    planned: timedelta
    over: timedelta


def parts_of(points: tuple[PointAnswer, ...]) -> Iterator[LegCompared]:
    """Every leg and stop both of whose ends are known, in running order. Where nobody reported, one leg spans the gap."""
    before: PointAnswer | None = None
    for p in points:
        came, went = (
            p.arrived or (p.left if p.through else None),
            p.left or (p.arrived if p.through else None),
        )
        if before is not None and came is not None and p.planned_in is not None:
            left = before.left or before.arrived if before.through or before.left else None
            left = left or (before.planned_out if before is points[0] else None)
            if left is not None and before.planned_out is not None:
                planned = p.planned_in - before.planned_out
                yield LegCompared(before.name, p.name, planned, (came - left) - planned)
        if p is not points[0] and not p.finish and p.arrived is not None and went is not None:
            planned = p.planned_stop or timedelta(0)
            yield LegCompared("", p.name, planned, (went - p.arrived) - planned)
        if p is points[0] or came is not None or went is not None:
            before = p


def say_report(say: Say, a: ForecastAnswer) -> str:
    """The end and its time, then against the plan, then where time was lost; of a race that goes on, how it stands."""
    parts = tuple(parts_of(a.points))
    lost = sorted((p for p in parts if p.over >= WORTH_TELLING), key=lambda p: -p.over)
    won = sorted((p for p in parts if p.over <= -WORTH_TELLING), key=lambda p: p.over)
    even = bool(parts) and not lost and not won
    return lines(
        _end(say, a),
        race_ended(say, a.fresh),
        _against(say, a.points),
        say.s("report-lost", parts=say.all(_part(say, p) for p in lost[:TOLD])) if lost else "",
        say.s("report-won", parts=say.all(_part(say, p) for p in won[:TOLD])) if won else "",
        say.s("report-even", length=say.length(WORTH_TELLING)) if even else "",
        say.s("report-whole"),
    )


def _end(say: Say, a: ForecastAnswer) -> str:
    finish = next((p for p in a.points if p.finish), None)
    name, fresh = a.runner_name, a.fresh
    if finish is not None and finish.arrived is not None:
        took = say.length(finish.arrived - fresh.started) if fresh.started is not None else "none"
        return say.s("report-finished", runner=name, when=say.when(finish.arrived, day=True), length=took)
    if fresh.retired_how == Retired.DID_NOT_START.value:
        return say.s("report-not-started", runner=name)
    if fresh.retired_at is not None:
        key = f"how-{slug(fresh.retired_how)}"
        return say.s(
            "report-retired",
            runner=name,
            place=fresh.retired_place or "none",
            when=say.when(fresh.retired_at, day=True),
            how=say.s(key) if has(key) else fresh.retired_how,
        )
    return say.s("report-not-over", runner=name, going=going_words(say, fresh.going))


def _against(say: Say, points: tuple[PointAnswer, ...]) -> str:
    """Against goal B where she was last seen, the finish if she got there."""
    seen = [p for p in points if p.km > 0 and (p.arrived or p.left) is not None and p.planned_in is not None]
    if not seen:
        return ""
    p = seen[-1]
    came = p.arrived or p.left
    assert came is not None
    assert p.planned_in is not None
    off = came - p.planned_in
    key = "report-late" if off > ON_PLAN else "report-early" if off < -ON_PLAN else "report-on-plan"
    values = {"length": say.length(abs(off))} if key != "report-on-plan" else {}
    return say.s(key, place=p.name, planned=say.when(p.planned_in, day=True), **values)


def _part(say: Say, p: LegCompared) -> str:
    length = say.length(abs(p.over))
    if p.start:
        return say.s("report-leg", **{"from": p.start, "to": p.end}, length=length)
    return say.s("report-stop", place=p.end, length=length)


def say_pace(say: Say, a: ForecastAnswer) -> str:
    """How long the last stretch between two reports took her and at what pace, then the whole so far, then the stretches
    before it, newest first; of a race without two reports, that there is none."""
    legs = list(_legs(a))
    if not legs:
        return say.s("pace-none", runner=a.runner_name)
    last, *earlier = reversed(legs)
    (km, began), (end_km, came) = (0.0, legs[0].began), (last.end_km, last.came)
    whole = say.s("pace-whole", leg=_covered(say, end_km - km, came - began)) if earlier else ""
    before = (_leg_line(say, leg, "pace-before") for leg in earlier[:TOLD])
    return lines(_leg_line(say, last, "pace-last"), whole, *before, say.s("pace-of"))


@dataclass(frozen=True, slots=True)
class _Leg:
    """From the time out of one point (its time in, where nobody reported her out) to the time at another."""

    start: str
    end: str
    km: float
    end_km: float
    began: datetime
    came: datetime


def _legs(a: ForecastAnswer) -> Iterator[_Leg]:
    before: tuple[PointAnswer, datetime] | None = None
    for p in a.points:
        came, went = p.arrived or p.left, p.left or p.arrived
        if p is a.points[0]:
            came, went = None, went or a.fresh.started
        elif before is not None and came is not None and p.km > before[0].km and came > before[1]:
            yield _Leg(before[0].name, p.name, p.km - before[0].km, p.km, before[1], came)
        before = (p, went) if went is not None else before


def _leg_line(say: Say, leg: _Leg, key: str) -> str:
    return say.s(key, **{"from": leg.start, "to": leg.end}, leg=_covered(say, leg.km, leg.came - leg.began))


def _covered(say: Say, km: float, took: timedelta) -> str:
    """'18 km in 2 h 51 min, 9:30 min per km', in the reader's unit."""
    unit = measures.KM_PER_MILE if say.reader.miles else 1.0
    minutes, seconds = divmod(round(took.total_seconds() / (km / unit)), 60)
    key = "pace-per-mile" if say.reader.miles else "pace-per-km"
    pace = say.s(key, pace=f"{minutes}:{seconds:02d}")
    return say.s("pace-leg", distance=measures.distance(km, say.reader), length=say.length(took), pace=pace)
