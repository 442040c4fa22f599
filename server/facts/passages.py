"""Passages: when others of the race, whom nobody here follows, came to a point. By bib alone: their names are nobody's
business here. They are no reports, so nobody is watched by them; `server.forecast.day` reads what they say of the legs."""

from __future__ import annotations

from dataclasses import dataclass
from datetime import datetime


@dataclass(frozen=True, slots=True)
class Passage:
    """Whoever has that bib came to a point at a moment; None: that was said before, and is taken back."""

    bib: str
    point: str
    at: datetime | None
