"""A runner's circle: those who share a person or a car with her, and those who share one with them.

Nothing about a runner hangs on who meets whom outside her circle: who comes to her meetings, in which car and by which
way, is worked out within it, once for all of it, however large the field.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Mapping, Sequence
from dataclasses import dataclass, replace

from server.event.model import Event, PartKind
from server.watch.crew_routes import members
from server.watch.runner_context import remembering
from server.watch.situation import Situation

__all__ = ["circle_of", "met_apart", "runners_of", "share_of", "share_with"]

KEPT = 100
"""So many circles' events are kept (own choice): each holds some ten thousand bytes."""
_OF_CREW = frozenset({PartKind.CREW, PartKind.PACER})


def circle_of(situation: Situation, runner_id: str) -> frozenset[str]:
    """The ids of the runners of her circle, hers among them."""
    event, planned = situation.event, situation.planned
    if planned is None:
        found = event.once("circles", lambda: _circles((event,)))
    else:
        found = situation.once("circles", lambda: _circles((planned, event)))
    return found.get(runner_id, frozenset({runner_id}))


def share_of(situation: Situation, runner_id: str) -> Situation:
    """The situation of her circle: its runners, meetings, people and forecasts; race-level facts and notices whole. The same
    one for all of a circle, whose forecasts remember their answers. Of a share it is the share."""
    if situation.event.whole is not None:
        return situation
    mine = circle_of(situation, runner_id)
    return situation.once(("share", mine), lambda: _share(situation, mine))


def met_apart(event: Event) -> Iterator[Event]:
    """The event of each circle that has meetings, in the order of its first: what is planned for one hangs on no other."""
    circles = event.once("circles", lambda: _circles((event,)))
    for mine in dict.fromkeys(circles[m.runner] for m in event.meetings):
        yield _narrowed(event, mine)


def share_with(situation: Situation, people: Iterable[str]) -> Situation | None:
    """The situation of all circles that one of those people is in; None where they are in none."""
    event = situation.event
    mine = {r for who in people for her in runners_of(event, who) for r in circle_of(situation, her)}
    return _share(situation, frozenset(mine)) if mine else None


def runners_of(event: Event, person: str) -> Iterable[str]:
    """The runners whom a person meets, or of whom a part of theirs speaks; of who crews for all, each."""
    return event.once("runners by person", lambda: _by_person(event)).get(person, ())


def _by_person(event: Event) -> Mapping[str, set[str]]:
    found: dict[str, set[str]] = {}
    for m in event.meetings:
        for who in (*members(event, m), *m.crew):
            found.setdefault(who, set()).add(m.runner)
    for p in event.parts:
        of = (
            {p.runner}
            if p.runner is not None
            else {r.id for r in event.runners}
            if p.kind in _OF_CREW
            else set()
        )
        found.setdefault(p.person, set()).update(of)
    return found


def _share(situation: Situation, mine: frozenset[str]) -> Situation:
    event, planned = _narrowed(situation.event, mine), situation.planned
    states = tuple(situation.state.runner(r.id) for r in event.runners)
    return replace(
        situation,
        event=event,
        planned=None if planned is None else _narrowed(planned, mine),
        state=replace(situation.state, runners=states),
        outlooks={k: o for r in states for k, o in remembering(situation.outlooks, r.runner).items()},
        uncovered=tuple(u for u in situation.uncovered if u.plan.runner in mine),
    )


def _circles(events: tuple[Event, ...]) -> dict[str, frozenset[str]]:
    """Union of what `_ties` ties, by runner; of the plan, and of the event as its meetings are gone to."""
    parent: dict[object, object] = {}

    def root(x: object) -> object:
        while parent.setdefault(x, x) != x:
            parent[x] = parent[parent[x]]
            x = parent[x]
        return x

    runners = [r.id for r in events[0].runners]
    for event in events:
        for one, other in _ties(event):
            parent[root(one)] = root(other)
    together: dict[object, set[str]] = {}
    for r in runners:
        together.setdefault(root(("runner", r)), set()).add(r)
    sets = {top: frozenset(found) for top, found in together.items()}
    return {r: sets[root(("runner", r))] for r in runners}


def _ties(event: Event) -> Iterator[tuple[object, object]]:
    for m in event.meetings:
        her = ("runner", m.runner)
        for who in (*members(event, m), *m.crew):
            yield her, ("person", who)
        if m.car is not None:
            yield her, ("car", m.car)
    for s in event.shares:
        yield ("runner", s.runner), ("person", s.person)
    for r in event.runners:
        yield ("runner", r.id), ("person", r.person)
    for p in event.parts:
        if p.runner is not None:
            yield ("runner", p.runner), ("person", p.person)
        if p.car is not None:
            yield ("person", p.person), ("car", p.car)
        if p.runner is None and p.kind in _OF_CREW:
            # Whoever crews for all may be asked to stand in for any: all runners are one circle.
            yield from ((("runner", r.id), ("person", p.person)) for r in event.runners)


def _narrowed(event: Event, mine: frozenset[str]) -> Event:
    """The same one for the same circle, while few others are asked for: what is found in it once need not be found again."""
    known: dict[frozenset[str], Event] = event.once("narrowed", dict)
    found = known.get(mine)
    if found is None:
        found = known[mine] = _narrow(event, mine)
        for oldest in list(known)[: max(0, len(known) - KEPT)]:
            known.pop(oldest, None)
    return found


def _narrow(event: Event, mine: frozenset[str]) -> Event:
    order = event.once("order", lambda: _Order.of(event))
    runners = tuple(event.runners[i] for i in sorted(order.runners[r] for r in mine))
    meetings = tuple(m for r in runners for m in event.meetings_of(r.id))
    shares = tuple(s for s in event.shares if s.runner in mine)
    concerned = {r.person for r in runners} | {s.person for s in shares}
    for m in meetings:
        concerned |= {*members(event, m), *m.crew, *((m.pacer_leaves,) if m.pacer_leaves else ())}
    concerned |= {p.person for r in runners for p in event.people_for(r.id, *PartKind)}
    numbers = sorted(i for who in concerned for i in order.parts.get(who, ()))
    parts = tuple(event.parts[i] for i in numbers)
    cars = {m.car for m in meetings} | {p.car for p in parts} | {k.car for m in meetings for k in m.kit}
    return replace(
        event,
        runners=runners,
        meetings=meetings,
        shares=shares,
        people=tuple(
            event.people[i] for i in sorted(order.people[w] for w in concerned if w in order.people)
        ),
        parts=parts,
        cars=tuple(event.cars[i] for i in sorted(order.cars[c] for c in cars if c in order.cars)),
        whole=event,
    )


@dataclass(frozen=True, slots=True)
class _Order:
    """Where in the event's own order things stand, by id; parts by person."""

    runners: Mapping[str, int]
    people: Mapping[str, int]
    cars: Mapping[str | None, int]
    parts: Mapping[str, Sequence[int]]

    @staticmethod
    def of(event: Event) -> _Order:
        parts: dict[str, list[int]] = {}
        for i, p in enumerate(event.parts):
            parts.setdefault(p.person, []).append(i)
        return _Order(
            {r.id: i for i, r in enumerate(event.runners)},
            {p.id: i for i, p in enumerate(event.people)},
            {c.id: i for i, c in enumerate(event.cars)},
            parts,
        )
