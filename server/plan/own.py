"""What is known of her pace beyond the event file's own figures, and how far a plan that rests on it scatters."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Final

import numpy as np
import numpy.typing as npt

from server.plan.likely import RunPower
from server.plan.notes import Note, Saying
from server.plan.pace import Limits

# Standard deviation of log(actual / target) by what the shape of the plan rests on. Common practice, no
# source: half of those with a cost model come in within 9 % of their target.
SPREAD: Final = {"distance only": 0.16, "cost model": 0.13, "own data": 0.10, "past results": 0.11}


@dataclass(frozen=True, slots=True, eq=False)
class Results:
    """Others' split times on this course: point ids (n,), elapsed seconds (m, n), NaN where not recorded."""

    points: tuple[str, ...]
    times_s: npt.NDArray[np.float64]


@dataclass(frozen=True, slots=True, eq=False)
class OwnPace:
    """What is known of her beyond the event file: limits learned from her runs, and how sure the total is.

    shape: (point, share of the whole time on arrival there) of past results, which the legs then follow;
    results: the same still to be looked at near her target. powers: of her runs, against which the target is
    held. quality: 'own data' or 'past results'; spread: standard deviation of log(actual / target).
    """

    limits: Limits
    quality: str
    spread: float
    source: Saying
    shape: tuple[tuple[str, float], ...] = ()
    powers: tuple[RunPower, ...] = ()
    notes: tuple[Note, ...] = ()
    results: Results | None = None
