"""The door of this room: entries in any order, doubled or late, become one `RaceState`.

State is a fold over entries by seen time. See conflict_resolution.py for which entries count, points.py for which of two
reports of one moment gives its time, status.py for what may follow what, race.py for race-level facts, folding.py for a
fold that grows.
"""

from __future__ import annotations

from collections.abc import Iterable
from datetime import datetime

from server.event.model import Event
from server.facts.entry import Entry
from server.facts.folding import Folding
from server.facts.placing import Placer
from server.facts.state import RaceState

__all__ = ["fold"]


def fold(entries: Iterable[Entry], event: Event, now: datetime, place: Placer | None = None) -> RaceState:
    """What is fact at `now`. The order of `entries` and doubled ones change nothing; those of other
    events are passed over. Without `place` positions are kept but not put on the line."""
    folding = Folding(event, place)
    folding.add(entries)
    return folding.at(now)
