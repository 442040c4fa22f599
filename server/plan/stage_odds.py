"""The odds of being in at the end of a stage before the next one starts, and how much rest that leaves."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from datetime import datetime
from typing import Final

from server.event.model import CourseDef
from server.facts.state import RaceState
from server.forecast.nights import in_by
from server.forecast.outlook import View, Window

LOW_ODDS: Final = 0.9
"""Under these odds of starting the next stage it is said that they are low (own choice: as for the latest times out)."""


@dataclass(frozen=True, slots=True)
class StageOdds:
    """The end of a stage: when the next one starts, by when she has to be in for it (a cut-off may be earlier), the odds
    of that, stopping included, and when she comes in, given that she gets there."""

    point: str
    starts_at: datetime
    by: datetime
    odds: float
    window: Window


def stage_odds(view: View, course: CourseDef, race: RaceState, start: datetime) -> Iterator[StageOdds]:
    """Every end of a stage that she has not reached, in running order; start: her own as it is now."""
    for point in course.points:
        if point.next_stage is not None and point.id in view.points:
            by = in_by(point, point.next_stage, race, start)
            odds = view.p_makes(point.id, by, False)
            yield StageOdds(point.id, point.next_stage, by, odds, view.window(point.id))
