"""The odds of being in at the end of a stage before the next one starts, and how much rest that leaves."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from datetime import datetime
from typing import Final

from server.event.model import CourseDef, Event
from server.facts.state import RaceState
from server.forecast.nights import in_by
from server.forecast.outlook import View, Window

LOW_ODDS: Final = 0.85
"""Under these odds that whoever gets there is in for the next stage it is said that they are low (own choice). Those who
stop on the way are not among them: nobody helps them by asking what becomes of late-comers."""


@dataclass(frozen=True, slots=True)
class StageOdds:
    """The end of a stage: when the next one starts, by when she has to be in for it (a cut-off may be earlier), the odds
    of that, stopping included, whether they are low though she gets there, and when she comes in, given that she does."""

    point: str
    starts_at: datetime
    by: datetime
    odds: float
    low: bool
    window: Window


def stage_odds(view: View, course: CourseDef, race: RaceState, start: datetime) -> Iterator[StageOdds]:
    """Every end of a stage that she has not reached, in running order; start: her own as it is now."""
    for point in course.points:
        if point.next_stage is not None and point.id in view.points:
            by = in_by(point, point.next_stage, race, start)
            odds = view.p_makes(point.id, by, False)
            low = odds < LOW_ODDS * view.p_gets_there(point.id)
            yield StageOdds(point.id, point.next_stage, by, odds, low, view.window(point.id))


def ends_of_stages(event: Event, runner: str) -> frozenset[str]:
    """The points of her course at which a stage ends."""
    return frozenset(p.id for p in event.course_of(runner).points if p.next_stage is not None)
