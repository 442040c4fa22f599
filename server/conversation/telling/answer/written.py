"""What the event file says in its writer's own words, line by line, as far as somebody may see it."""

from __future__ import annotations

from dataclasses import dataclass
from datetime import datetime


@dataclass(frozen=True, slots=True)
class Written:
    """One line. `kind`: what it is about ("parking", "rule" … as in `server/api/written.py`); `place` the id of
    the point it is of, '' for none; `name` that place, person, stretch or trouble in words; `person` whose it is alone; of
    hours of sleep `start` and `end`, and no text."""

    kind: str
    text: str
    place: str = ""
    name: str = ""
    person: str = ""
    start: datetime | None = None
    end: datetime | None = None
