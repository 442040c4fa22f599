"""Her race said to be over by somebody who can only have heard of it: kept, asked about, never counted by itself.

Her own word, that of crew who stand with her and that of the race's own people count at once; what another runner told,
or crew who are known to be elsewhere, does not. A sighting after it says that it was wrong, or is no longer so.
"""

from __future__ import annotations

from server.facts.entry import Entry, Kind, Source
from server.facts.state import RaceState, RunnerState

__all__ = ["HEARSAY", "is_hearsay", "only_heard", "said_over"]

HEARSAY = "hearsay"
"""Mark (`Entry.doubt`) of a report that tells what another told its sender."""


def is_hearsay(entry: Entry) -> bool:
    """Whether an entry is marked as told by another."""
    return HEARSAY in (reason.strip() for reason in entry.doubt.split(";"))


def only_heard(entry: Entry, mine: RunnerState, state: RaceState) -> bool:
    """Whether crew report her race over at a point while they are known to be at another, and were not with her last."""
    if entry.kind is not Kind.RETIRED or entry.source is not Source.CREW or entry.point is None:
        return False
    there = [(s.at, point) for point, who, s in state.crew_there if who == entry.by]
    if not there or max(there)[1] == entry.point:
        return False
    since, point = max(there)
    if any(p == point and who == entry.by and s.at >= since for p, who, s in state.crew_left):
        return False
    return mine.last_known is None or mine.last_known.by != entry.by or mine.last_known.point != entry.point


def said_over(mine: RunnerState) -> tuple[Entry, ...]:
    """The unconfirmed reports that her race is over which no sighting has overtaken, the oldest first."""
    last = mine.last_known
    over = (e for e in mine.unconfirmed if e.kind is Kind.RETIRED)
    return tuple(e for e in over if mine.retirement is None and (last is None or e.seen_at >= last.at))
