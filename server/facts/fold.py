"""The door of this room: entries in any order, doubled or late, become one `RaceState`.

State is a fold over entries by seen time. See count.py for which entries count, points.py for which of two
reports of one moment gives its time, going.py for what may follow what, race.py for race-level facts.
"""

from __future__ import annotations

import hashlib
from collections.abc import Iterable, Iterator
from dataclasses import replace
from datetime import datetime

from server.event.model import Event
from server.facts.count import counted
from server.facts.covering import fallen_and_taken
from server.facts.entry import Entry, Kind
from server.facts.placing import Placer
from server.facts.race import RaceFacts, held_intervals, race_facts, start_of, start_said
from server.facts.runner import fold_runner
from server.facts.state import Interval, RaceState, RunnerState

__all__ = ["fold"]

_FOR_ALL = frozenset({Kind.CONDITION, Kind.SWEEP_THROUGH, Kind.STAND_DOWN})
"""Kinds that concern every runner when they name none."""


def fold(entries: Iterable[Entry], event: Event, now: datetime, place: Placer | None = None) -> RaceState:
    """What is fact at `now`. The order of `entries` and doubled ones change nothing; those of other
    events are passed over. Without `place` positions are kept but not put on the line."""
    ours = [e for e in entries if e.event == event.id]
    called = {e.id for e in ours if e.kind is Kind.ASKED_FOR_HELP and e.runner is None}
    sorted_out = counted(ours, now)
    facts = race_facts(sorted_out.counts, event)
    starts = {f"start:{r.id}": e for r in event.runners if (e := start_said(r, facts)) is not None}
    runners = {r.id for r in event.runners}
    states = tuple(_runner(r.id, event, facts, sorted_out.counts, now, place) for r in event.runners)
    states = tuple(
        replace(
            s,
            unconfirmed=tuple(e for e in sorted_out.unconfirmed if e.runner == s.runner),
            future=tuple(e for e in sorted_out.future if e.runner == s.runner),
        )
        for s in states
    )
    fallen, taken = fallen_and_taken(facts.covering, event)
    strange = [e for e in sorted_out.counts if e.runner is not None and e.runner not in runners]
    return RaceState(
        head=_head(event, sorted_out.counts),
        runners=states,
        held=tuple(Interval(h.start, h.end) for h in facts.holds if h.point is None and h.runner is None),
        ended_early=facts.ended_early,
        cut_offs_moved=tuple((p, edge, at) for (p, edge), at in sorted(facts.cut_offs.items())),
        access_closed=tuple(sorted(p for p, closed in facts.closed.items() if closed)),
        rerouted=tuple(facts.rerouted),
        crew_there=tuple((p, who, s) for (p, who), s in sorted(facts.crew_there.items(), key=_first)),
        crew_left=tuple((p, who, s) for (p, who), s in sorted(facts.crew_left.items(), key=_first)),
        drives_confirmed=tuple(facts.drives),
        answers=tuple(facts.answers),
        stand_downs=tuple(facts.stand_downs),
        awake=tuple(sorted(facts.awake.items())),
        fallen=fallen,
        taken=taken,
        requests=tuple(facts.requests),
        calls=tuple(facts.calls),
        taken_back=tuple(e for e in facts.taken_back if e.about in called),
        conflicts=sorted_out.conflicts,
        holds=tuple(facts.holds),
        future=tuple(e for e in sorted_out.future if e.runner not in runners),
        unconfirmed=tuple(e for e in sorted_out.unconfirmed if e.runner not in runners),
        refused=tuple(strange),
        received=tuple(_received(sorted_out.counts)),
        said=tuple(sorted({**facts.said, **starts}.items(), key=lambda pair: pair[0])),
    )


def _received(counts: tuple[Entry, ...]) -> Iterator[tuple[str, str, datetime]]:
    """When each that counts came; one that waited for somebody's word when that came."""
    confirmed: dict[str, datetime] = {}
    for e in counts:
        if e.kind is Kind.CONFIRMED and e.about is not None:
            confirmed[e.about] = min(e.received_at, confirmed.get(e.about, e.received_at))
    for e in counts:
        came = max(e.received_at, confirmed.get(e.id, e.received_at)) if e.unconfirmed else e.received_at
        yield e.id, e.runner or "", came


def _first(pair: tuple[tuple[str, str], object]) -> tuple[str, str]:
    return pair[0]


def _runner(
    runner_id: str,
    event: Event,
    facts: RaceFacts,
    counts: tuple[Entry, ...],
    now: datetime,
    place: Placer | None,
) -> RunnerState:
    runner = event.runner(runner_id)
    mine = tuple(e for e in counts if e.runner == runner_id or (e.runner is None and e.kind in _FOR_ALL))
    state = fold_runner(runner, event.course_of(runner_id), start_of(runner, facts, event), mine, now, place)
    held = held_intervals(facts, runner_id, {t.point: t for t in state.times})
    return replace(state, held=held)


def _head(event: Event, counts: Iterable[Entry]) -> str:
    """A hash over the ids of all entries folded, the same whatever their order."""
    ids = sorted(e.id for e in counts)
    return hashlib.sha256("\n".join((event.id, *ids)).encode()).hexdigest()[:32]
