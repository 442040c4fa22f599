"""What the other rooms may ask of a forecast, in the event's own terms: point ids and aware datetimes.

`Outlook` is made once per journal head (posterior); `Outlook.at(now)` is the cheap view. The engine in
this room works in seconds since the runner's start; `server.forecast.bridge` joins the two, and `in_event` on the way back.
"""

from __future__ import annotations

from dataclasses import dataclass
from datetime import datetime
from typing import Protocol

import numpy as np
import numpy.typing as npt

RATHER = 0.15
"""P(still going), by the odds that flags are made with, under which her race has rather ended than not: where reports fail
as they do, about as many are flagged falsely as by the line, and much sooner (tests/research/NOTEBOOK.md)."""


@dataclass(frozen=True, slots=True)
class Window:
    """Arrival at a point, given that she gets there: 10%, 50% and 90% times, not rounded."""

    point: str
    early: datetime
    likely: datetime
    late: datetime


@dataclass(frozen=True, slots=True)
class Whereabouts:
    """Where along the course she may be now: 10%, 50%, 90% km. An estimate, not seen."""

    low_km: float
    likely_km: float
    high_km: float


@dataclass(frozen=True, slots=True)
class DayLegs:
    """What the times of so many others say of a runner's legs: log factors of those to the points `ids`, in order."""

    ids: tuple[str, ...]
    logs: tuple[float, ...]
    others: int


class View(Protocol):
    """A forecast as seen at one moment. Points already reached have no window (KeyError)."""

    @property
    def now(self) -> datetime:
        """The moment of the view."""

    @property
    def points(self) -> tuple[str, ...]:
        """Ids of the points still to come, in running order."""

    def window(self, point: str) -> Window:
        """The window shown to people."""

    def arrival(self, point: str, p: float) -> datetime:
        """The time by which she has arrived with probability `p`, given that she gets there."""

    def leaving(self, point: str, p: float) -> datetime:
        """The same for leaving the point (also for one she is at now)."""

    def p_gets_there(self, point: str) -> float:
        """Probability that she arrives at all, stopping included; ignores cut-offs."""

    def p_in_by(self, point: str, when: datetime) -> float:
        """Probability that she is in by `when`, stopping included."""

    def p_out_by(self, point: str, when: datetime) -> float:
        """Probability that she is out by `when`, stopping included."""

    def p_makes(self, point: str, when: datetime, out: bool) -> float:
        """The odds of a cut-off at `when`, in or out, stopping included: near one that she knows of, she hurries."""

    def p_unheard(self) -> float:
        """P(not heard by now | still going): the figure held against the alarm line. 1 where silence
        says nothing (nobody reports, no signal, our own channels down)."""

    def where(self) -> Whereabouts:
        """Where she may be now."""

    def paths(self) -> tuple[npt.NDArray[np.float64], npt.NDArray[np.float64]]:
        """Joint paths, arrivals and departures, each (paths, points to come), POSIX seconds; their margins
        are the windows. Same columns as `points`."""


class Outlook(Protocol):
    """A runner's forecast after the facts heard so far."""

    @property
    def day(self) -> DayLegs | None:
        """What others' times of the day have changed of it; None where they say nothing."""

    def at(self, now: datetime) -> View:
        """The view at `now`; deterministic."""

    def late_time(self) -> tuple[str, datetime] | None:
        """The next point somebody reports from, or the finish where nobody does from any, and its 90% time as it stood
        at the last fact heard; None once she has finished or retired."""

    def unheard_falls_under(self, line: float, after: datetime) -> datetime | None:
        """The first moment not before `after` at which `p_unheard` is under `line` if nothing is heard;
        None when silence never says so much."""

    def ended_rather(self, going: float, after: datetime) -> datetime | None:
        """The first moment not before `after` at which her race has rather ended than not, the odds that it has not under
        `going`, if nothing is heard; None when it never has. Not before her 95% time at the next point reported from."""

    def untold(self) -> Outlook | None:
        """The forecast as if nobody had said 'not here yet', so that silence alone speaks of what came after the last
        sighting; None where nobody has said it."""
