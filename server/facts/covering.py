"""Who can't come to meetings, and who has taken one over: facts about those persons, folded as they were seen.

'Cannot come' holds until the same person is said to come again. A meeting that was taken over is held by the first who
took it; it is free again once they can't come either, or once the one they stand in for comes again. Whoever asked somebody
to take theirs keeps it until they do.
"""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import replace
from typing import TypeVar

from server.event.model import Event
from server.facts.entry import Entry, Kind, Why
from server.facts.points import stamp
from server.facts.state import Fallen, Taken

__all__ = ["fallen_and_taken"]

_Said = dict[tuple[str, str | None, Why], Fallen]
K = TypeVar("K")
V = TypeVar("V")


def fallen_and_taken(entries: Iterable[Entry], event: Event) -> tuple[tuple[Fallen, ...], tuple[Taken, ...]]:
    """Who can't come and who stands in, after `entries` in seen order; each in the order in which it was said."""
    fallen: _Said = {}
    taken: dict[str, Taken] = {}
    asked: dict[tuple[str, str | None], Entry] = {}
    for e in entries:
        who = e.person or e.by
        match e.kind:
            case Kind.CANNOT_COME:
                why = e.why or Why.NOT_SAID
                fallen.setdefault((who, e.about, why), Fallen(who, e.about, why, stamp(e), e.words))
                _drop(taken, (m for m, t in taken.items() if t.person == who and e.about in (None, m)))
            case Kind.CAN_COME:
                back = [k for k in fallen if k[0] == who and (e.about in (None, k[1]) or k[1] is None)]
                later = _not_before(event, who, e.about)
                freed = {m for k in back for m in _meetings(event, who, k[1])} & later
                for k in back:
                    was = fallen.pop(k)
                    for m in _meetings(event, who, None) if k[1] is None else ():
                        if m not in later:
                            fallen[(who, m, k[2])] = replace(was, meeting=m)
                _drop(taken, (m for m in taken if m in freed and taken[m].person != who))
            case Kind.ASKED_TO_SWAP if e.about is not None:
                asked[(e.about, e.to)] = e
            case Kind.TAKES_OVER if e.about is not None:
                swap = asked.pop((e.about, who), None)
                if swap is not None:
                    gave = Fallen(swap.by, e.about, Why.NOT_SAID, replace(stamp(e), by=swap.by), swap.words)
                    fallen.setdefault((swap.by, e.about, Why.NOT_SAID), gave)
                _drop(fallen, [k for k in fallen if k[0] == who and k[1] in (None, e.about)])
                taken.setdefault(e.about, Taken(who, e.about, stamp(e)))
    return tuple(fallen.values()), tuple(taken.values())


def _not_before(event: Event, who: str, about: str | None) -> set[str]:
    """The meetings that somebody comes to again who comes to that one: it and those after it; None means all."""
    theirs = _meetings(event, who, None)
    return (
        {*theirs[theirs.index(about) :]}
        if about in theirs
        else {*theirs, *(() if about is None else (about,))}
    )


def _drop(table: dict[K, V], keys: Iterable[K]) -> None:
    for key in tuple(keys):
        table.pop(key)


def _meetings(event: Event, who: str, meeting: str | None) -> tuple[str, ...]:
    """The meetings that somebody comes to again, in the places where they, or those in one car with them, were to be."""
    if meeting is not None:
        return (meeting,)
    cars = {p.car for p in event.parts_of(who) if p.car is not None}
    return tuple(
        m.id
        for m in event.meetings
        if who in (*m.crew, m.pacer_joins) or (m.car is not None and m.car in cars)
    )
