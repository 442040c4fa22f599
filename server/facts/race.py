"""Race-level facts: delayed starts, waves, holds, cut-offs, access; and what crew and drivers have said.

Of several entries about one thing the last in seen order holds.
"""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from dataclasses import dataclass, field, replace
from datetime import datetime, timedelta

from server.event.model import Edge, Event, Runner
from server.facts.conflict_resolution import seen_order
from server.facts.entry import REQUESTS, Entry, Kind
from server.facts.points import stamp
from server.facts.state import Hold, Interval, PointTimes, Stamp

RACE_WIDE = REQUESTS | {
    Kind.START_DELAYED,
    Kind.WAVE_MOVED,
    Kind.HELD,
    Kind.RELEASED,
    Kind.RACE_ENDED_EARLY,
    Kind.REROUTED,
    Kind.CUT_OFF_MOVED,
    Kind.ACCESS_CLOSED,
    Kind.ACCESS_OPENED,
    Kind.CREW_THERE,
    Kind.CREW_LEFT,
    Kind.DRIVE_CONFIRMED,
    Kind.ANSWERED,
    Kind.STAND_DOWN,
    Kind.ASKED_FOR_HELP,
    Kind.TAKEN_BACK,
    Kind.CANNOT_COME,
    Kind.CAN_COME,
    Kind.TAKES_OVER,
    Kind.AWAKE,
    Kind.CONDITION,
    Kind.SWEEP_THROUGH,
}
"""Kinds that may bear on more than one runner's own race: those that `race_facts` reads, and those that concern every runner
when they name none. A test holds that no other changes anything here."""


@dataclass(slots=True)
class RaceFacts:
    """Everything in the journal that is not about one runner's own race, after all entries."""

    delays: list[Entry] = field(default_factory=list)
    waves: list[Entry] = field(default_factory=list)
    holds: list[Hold] = field(default_factory=list)
    ended_early: Stamp | None = None
    cut_offs: dict[tuple[str, str], datetime] = field(default_factory=dict)
    closed: dict[str, bool] = field(default_factory=dict)
    rerouted: list[Entry] = field(default_factory=list)
    crew_there: dict[tuple[str, str], Stamp] = field(default_factory=dict)
    crew_left: dict[tuple[str, str], Stamp] = field(default_factory=dict)
    drives: list[Entry] = field(default_factory=list)
    answers: list[Entry] = field(default_factory=list)
    stand_downs: list[Entry] = field(default_factory=list)
    awake: dict[str, datetime] = field(default_factory=dict)
    said: dict[str, Entry] = field(default_factory=dict)
    calls: list[Entry] = field(default_factory=list)
    taken_back: list[Entry] = field(default_factory=list)
    covering: list[Entry] = field(default_factory=list)
    requests: list[Entry] = field(default_factory=list)


def race_facts(entries: Iterable[Entry], event: Event) -> RaceFacts:
    """Fold the entries that count, in seen order, for what they say about the race as a whole."""
    facts = RaceFacts()
    for e in entries:
        _take(facts, e, event)
    return facts


def start_of(runner: Runner, facts: RaceFacts, event: Event) -> datetime:
    """A runner's start after delays and moved waves.

    A moved wave (or a time given for her alone) is absolute; `amount` counts from the planned start. A
    delay of the race said later comes on top; one said earlier does not. Two delays do not add up: an
    organiser says how late the start is by now, and `until` is the new time of the event's first start.
    """
    start = runner.start
    moved: Entry | None = None
    for e in facts.waves:
        mine = e.runner == runner.id if e.runner is not None else bool(e.wave) and e.wave == runner.wave
        if mine:
            moved = e
            start = e.until if e.until is not None else runner.start + (e.amount or timedelta(0))
    for e in reversed(facts.delays):
        if e.runner == runner.id and e.until is not None:
            return e.until
        if e.runner in (None, runner.id):
            if moved is not None and e.seen_at < moved.seen_at:
                return start
            return start + (e.until - event.starts if e.until is not None else e.amount or timedelta(0))
    return start


def start_said(runner: Runner, facts: RaceFacts) -> Entry | None:
    """The last entry that moved a runner's start; None where nobody did."""
    wave = runner.wave or None
    mine = [e for e in facts.waves if e.runner == runner.id or (e.runner is None and wave and e.wave == wave)]
    mine += [e for e in facts.delays if e.runner in (None, runner.id)]
    return max(mine, key=seen_order, default=None)


def held_intervals(facts: RaceFacts, runner: str, times: Mapping[str, PointTimes]) -> tuple[Interval, ...]:
    """When a runner was kept from going on: holds of all, of her, and of a point while she was there."""
    held = []
    for h in facts.holds:
        if h.runner not in (None, runner):
            continue
        start = h.start
        if h.point is not None:
            at = times.get(h.point)
            if at is None or at.arrived is None or (at.left is not None and at.left.at <= h.start):
                continue
            start = max(start, at.arrived.at)
        if h.end is None or start < h.end:
            held.append(Interval(start, h.end))
    return tuple(held)


def _take(facts: RaceFacts, e: Entry, event: Event) -> None:
    match e.kind:
        case Kind.START_DELAYED:
            facts.delays.append(e)
        case Kind.WAVE_MOVED:
            facts.waves.append(e)
        case Kind.HELD:
            _hold(facts, e)
        case Kind.RELEASED:
            _release(facts, e)
        case Kind.RACE_ENDED_EARLY:
            facts.ended_early = stamp(e)
            facts.said["ended"] = e
        case Kind.REROUTED:
            facts.rerouted.append(e)
        case Kind.CUT_OFF_MOVED:
            _move_cut_off(facts, e, event)
        case Kind.ACCESS_CLOSED | Kind.ACCESS_OPENED if e.point is not None:
            facts.closed[e.point] = e.kind is Kind.ACCESS_CLOSED
            facts.said[f"access:{e.point}"] = e
        case Kind.CREW_THERE | Kind.CREW_LEFT if e.point is not None:
            table = facts.crew_there if e.kind is Kind.CREW_THERE else facts.crew_left
            table[(e.point, e.person or e.by)] = stamp(e)
        case Kind.DRIVE_CONFIRMED:
            facts.drives.append(e)
        case Kind.ANSWERED:
            facts.answers.append(e)
        case Kind.STAND_DOWN:
            facts.stand_downs.append(e)
        case Kind.ASKED_FOR_HELP if e.runner is None:
            facts.calls.append(e)
        case Kind.TAKEN_BACK if e.runner is None:
            facts.taken_back.append(e)
        case Kind.CANNOT_COME | Kind.CAN_COME | Kind.TAKES_OVER:
            facts.covering.append(e)
        case kind if kind in REQUESTS:
            facts.requests.append(e)
            if kind is Kind.ASKED_TO_SWAP:
                facts.covering.append(e)
        case Kind.AWAKE:
            facts.awake[e.person or e.by] = e.seen_at
        case _:
            pass


def _hold(facts: RaceFacts, e: Entry) -> None:
    """A second 'held' for the same people while the first lasts says how long it lasts now."""
    end = e.until if e.until is not None else (e.seen_at + e.amount if e.amount is not None else None)
    for i, h in enumerate(facts.holds):
        open_now = h.end is None or h.end >= e.seen_at
        if open_now and (h.point, h.runner) == (e.point, e.runner):
            facts.holds[i] = replace(h, end=end)
            return
    facts.holds.append(Hold(e.seen_at, end, e.point, e.runner, e.id, e.by, e.words))


def _release(facts: RaceFacts, e: Entry) -> None:
    """Ends every hold it covers: without point and runner it lets everybody go."""
    for i, h in enumerate(facts.holds):
        covers = e.point in (None, h.point) and e.runner in (None, h.runner)
        if covers and (h.end is None or h.end > e.seen_at):
            facts.holds[i] = replace(h, end=e.seen_at, by=e.by, words=e.words)


def _move_cut_off(facts: RaceFacts, e: Entry, event: Event) -> None:
    """To `until`, or by `amount` from the time in the event file (elapsed ones: of the event's start)."""
    if e.point is None:
        return
    planned = {
        c.edge.value: c.at(event.starts)
        for course in event.courses
        for p in course.points
        if p.id == e.point
        for c in p.cut_offs
    }
    edges = (e.edge,) if e.edge is not None else tuple(planned) or (Edge.OUT.value,)
    for edge in edges:
        if e.until is not None:
            facts.cut_offs[(e.point, edge)] = e.until
        elif e.amount is not None and edge in planned:
            facts.cut_offs[(e.point, edge)] = planned[edge] + e.amount
        else:
            continue
        facts.said[f"cut-off:{e.point}:{edge}"] = e
