"""The nights between a runner's stages, from the event to the engine: time that does not count, and limits to be in by."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from datetime import datetime

from server.event.model import Edge, Event, Goal, Point
from server.facts.state import RaceState, RunnerState
from server.forecast.planned import Plan
from server.forecast.stages import StageEnd
from server.forecast.values import Fact, Held, KnownStop


@dataclass(frozen=True, slots=True)
class Night:
    """The end of a stage: its point's number, how long she rests there by the plan, when the next stage starts and by
    when she has to be in, seconds after her start."""

    point: int
    length_s: float
    until_s: float
    limit_s: float


def nights_of(
    event: Event, runner: RunnerState, race: RaceState, timetable: Plan, index: dict[str, int]
) -> tuple[Night, ...]:
    """The nights between her stages, in running order."""
    found = []
    for p in event.course_of(runner.runner).points:
        if p.next_stage is not None and p.id in index:
            row = timetable.row(p.id)
            length = (row.leave[Goal.B] - row.arrive[Goal.B]).total_seconds()
            until, limit = _since(runner.start, p.next_stage), in_by(p, p.next_stage, race, runner.start)
            found.append(Night(index[p.id], length, until, _since(runner.start, limit)))
    return tuple(found)


def in_by(point: Point, next_stage: datetime, race: RaceState, start: datetime) -> datetime:
    """By when she has to be in at the end of a stage: when the next one starts, or a cut-off before that as it now
    stands."""
    moved = [when for p, edge, when in race.cut_offs_moved if p == point.id and edge == Edge.IN.value]
    told = moved[-1:] or [c.at(start) for c in point.cut_offs if c.edge is Edge.IN]
    return min([next_stage, *told])


def nights_told(runner: RunnerState, ids: Sequence[str], nights: Sequence[Night]) -> list[Fact]:
    """A night is time that does not count, from when she came in, else as the plan has it; one ahead holds her there
    until the next stage starts."""
    out: list[Fact] = []
    ahead = {n.point for n in nights_ahead(runner, ids, nights)}
    for n in nights:
        times = runner.at_point(ids[n.point])
        if n.point in ahead:
            out.append(KnownStop(n.point, n.until_s))
        elif times is not None and times.arrived is not None:
            out.append(Held(min(_since(runner.start, times.arrived.at), n.until_s), n.until_s))
        else:
            out.append(Held(n.until_s - n.length_s, n.until_s))
    return out


def nights_ahead(runner: RunnerState, ids: Sequence[str], nights: Sequence[Night]) -> tuple[Night, ...]:
    """Those at whose point she has not been, as far as is known."""
    order = {p: i for i, p in enumerate(ids)}
    been = [order[t.point] for t in runner.times if t.point in order and (t.arrived or t.left)]
    been += [len(ids) - 1] if runner.finished else []
    return tuple(n for n in nights if n.point > max(been, default=-1))


def ends_of(ahead: Sequence[Night], finish: int, limit_s: float | None) -> tuple[StageEnd, ...]:
    """The limits of the stages ahead, that of the last one at the finish; () where no night lies ahead: then the race's
    own limit is told to the engine as a whole."""
    if not ahead:
        return ()
    last = () if limit_s is None else (StageEnd(finish, limit_s),)
    return (*(StageEnd(n.point, n.limit_s) for n in ahead), *last)


def _since(start: datetime, at: datetime) -> float:
    return (at - start).total_seconds()
