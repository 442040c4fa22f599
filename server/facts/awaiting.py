"""What a person wants to be told of as soon as it happens: that she is in at a point, or out of it."""

from __future__ import annotations

from dataclasses import dataclass
from datetime import datetime, timedelta
from enum import StrEnum

from server.event.model import Event
from server.facts.entry import Entry, Kind
from server.facts.state import RaceState, RunnerState, Stamp

__all__ = ["Awaited", "Came", "awaited", "came", "is_wish"]


class Came(StrEnum):
    """What has come of it: it happened; it is as long before as was wished, by her window; she was reported at a later point
    and never there; her race is over before."""

    YES = "yes"
    SOON = "soon"
    UNSEEN = "unseen"
    OVER = "over"


@dataclass(frozen=True, slots=True)
class Awaited:
    """A wish that is still open: its entry, whose, where, and whether to hear of her being 'in' or 'out' there;
    `before`: how long before she is in."""

    entry: str
    runner: str
    point: str
    edge: str
    before: timedelta | None = None


def came(e: Entry, state: RunnerState, order: tuple[str, ...]) -> tuple[Came, Stamp | None] | None:
    """What has come of a wish, with the report that shows it; None while she is still to come, or to go. `order`: the ids of
    her points."""
    here = state.at_point(e.point or "")
    if here is not None:
        stamp = here.left if e.edge == "out" else here.arrived or here.left
        if stamp is not None and not here.implied:
            return Came.YES, stamp
    if state.finished is not None and e.point == order[-1]:
        return Came.YES, state.finished
    later = order[order.index(e.point) + 1 :] if e.point in order else ()
    for times in state.times:
        stamp = times.arrived or times.left
        if times.point in later and stamp is not None and not times.implied:
            return Came.UNSEEN, stamp
    return (
        (Came.OVER, state.retirement.stamp if state.retirement else None) if state.going.race_over else None
    )


def is_wish(e: Entry) -> bool:
    """Whether an entry is such a wish."""
    return e.kind is Kind.REMIND and e.edge is not None and e.about is not None and e.point is not None


def awaited(race: RaceState, event: Event, person: str, now: datetime) -> tuple[Awaited, ...]:
    """The wishes of a person that are still open."""
    found = []
    for e in race.requests:
        if (
            not is_wish(e)
            or e.by != person
            or e.seen_at > now
            or e.about not in {r.id for r in event.runners}
        ):
            continue
        order = tuple(p.id for p in event.course_of(e.about).points)
        if came(e, race.runner(e.about), order) is None:
            found.append(Awaited(e.id, e.about, e.point or "", e.edge or "in", e.amount))
    return tuple(found)
