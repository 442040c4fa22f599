"""The values that cross the forecast's door: reference, facts, silence, settings.

Times are seconds since this runner's own start, distances km along the course. No event, no names, no ids:
whoever calls numbers the points 0 .. n-1 in running order, the last being the finish; the start is km 0 at 0 s.
"""

from dataclasses import dataclass
from enum import StrEnum
from typing import TypeAlias

import numpy as np
from numpy.typing import NDArray

FloatArray: TypeAlias = NDArray[np.float64]


class Quality(StrEnum):
    """What the shape of a reference was made from: the better it is, the less the legs scatter about it."""

    DISTANCE = "distance only"
    COST_MODEL = "cost model"
    OWN_DATA = "her own data"
    PAST_RESULTS = "past results"


class WhoseTarget(StrEnum):
    """Whose finish time the reference carries, which is whether it says anything of her (`target`)."""

    HERS = "her own target"
    ANYBODY = "no target of hers"


@dataclass(frozen=True, slots=True, eq=False)
class Reference:
    """A plan's timetable: when she would be where if all went exactly as planned.

    km: (n,) distance of each point from the start, rising, > 0.
    elapsed_s: (n,) planned arrival at each point, rising, > 0, planned stops at earlier points included.
    stop_s: (n,) planned length of the stop at each point, >= 0, shorter than the time to the next arrival.
    climb_m_per_km: ascent of the whole course divided by its length, >= 0.
    spread: standard deviation of log(her whole time / the planned one) before she starts, of a target of hers; None:
    the plan does not say.
    Raises ValueError saying which entry is wrong.
    """

    km: FloatArray
    elapsed_s: FloatArray
    stop_s: FloatArray
    quality: Quality
    climb_m_per_km: float
    target: WhoseTarget = WhoseTarget.HERS
    spread: float | None = None

    def __post_init__(self) -> None:
        for name in ("km", "elapsed_s", "stop_s"):
            value = np.array(getattr(self, name), dtype=np.float64)
            value.flags.writeable = False
            object.__setattr__(self, name, value)
        n = self.km.size
        if n == 0 or self.km.shape != (n,) or self.elapsed_s.shape != (n,) or self.stop_s.shape != (n,):
            raise ValueError(
                f"reference: km {self.km.shape}, elapsed_s {self.elapsed_s.shape} and stop_s {self.stop_s.shape} "
                "must be one-dimensional, equally long and hold the finish at least"
            )
        for name, value in (("km", self.km), ("elapsed_s", self.elapsed_s)):
            steps = np.diff(value, prepend=0.0)
            if not np.all(np.isfinite(value)) or not np.all(steps > 0):
                where = int(np.flatnonzero(~(steps > 0))[0]) if np.any(~(steps > 0)) else 0
                raise ValueError(f"reference: {name} must rise from the start at 0; look at point {where}")
        room = np.diff(self.elapsed_s, append=np.inf)
        wrong = np.flatnonzero(~((self.stop_s >= 0) & (self.stop_s < room)))
        if wrong.size:
            raise ValueError(
                f"reference: stop_s at point {int(wrong[0])} must be at least 0 and end before the next planned arrival"
            )
        if not (np.isfinite(self.climb_m_per_km) and self.climb_m_per_km >= 0):
            raise ValueError(f"reference: climb_m_per_km is {self.climb_m_per_km}; it must be 0 or more")
        if self.spread is not None and not (np.isfinite(self.spread) and self.spread > 0):
            raise ValueError(f"reference: spread is {self.spread}; it must be above 0")

    @property
    def n(self) -> int:
        """How many points there are, finish included."""
        return int(self.km.size)


@dataclass(frozen=True, slots=True)
class Sighting:
    """She was seen at a point: arrived, left, or both (a 'through' has both alike). sd_s: how sure the times are."""

    point: int
    arrived_s: float | None = None
    left_s: float | None = None
    sd_s: float = 0.0


@dataclass(frozen=True, slots=True)
class Position:
    """She was at `km` along the course at `at_s`, to within accuracy_m (one standard deviation)."""

    km: float
    at_s: float
    accuracy_m: float = 50.0


@dataclass(frozen=True, slots=True)
class NotYet:
    """Somebody at the point says at `at_s`: not here yet. Counts in full, unlike silence."""

    point: int
    at_s: float


@dataclass(frozen=True, slots=True)
class KnownStop:
    """She is at the point and will not leave it before until_s (said by her, her crew or a medic)."""

    point: int
    until_s: float


@dataclass(frozen=True, slots=True)
class Rest:
    """She rests, away from a point or at one, from start_s; end_s is None while she has not been reported moving."""

    start_s: float
    end_s: float | None = None


@dataclass(frozen=True, slots=True)
class Condition:
    """From from_km to to_km the crew expects exp(log_factor) times the usual time, with log standard deviation sd."""

    from_km: float
    to_km: float
    log_factor: float
    sd: float = 0.0


@dataclass(frozen=True, slots=True)
class Held:
    """The race was held from start_s to end_s (None: it still is): time that does not count."""

    start_s: float
    end_s: float | None = None


@dataclass(frozen=True, slots=True)
class Retired:
    """She has retired; where is the km if known. No later point will be reached."""

    at_s: float
    km: float | None = None


Fact: TypeAlias = Sighting | Position | NotYet | KnownStop | Rest | Condition | Held | Retired


@dataclass(frozen=True, slots=True)
class Watcher:
    """Who would have reported her at a point.

    chance: probability that an arrival there is reported at all.
    delay_median_s, delay_spread: the report comes a lognormal delay after the arrival (spread: log standard deviation).
    covered_s: stretches of time in which a report could have come through; None means always. A no-signal stretch
    and an outage of our own channels are simply not covered: that time counts as nobody there.
    """

    point: int
    chance: float
    delay_median_s: float = 120.0
    delay_spread: float = 1.0
    covered_s: tuple[tuple[float, float], ...] | None = None

    def __post_init__(self) -> None:
        if not 0.0 <= self.chance <= 1.0:
            raise ValueError(
                f"watcher at point {self.point}: chance is {self.chance}; it must lie between 0 and 1"
            )
        if not (self.delay_median_s > 0 and self.delay_spread > 0):
            raise ValueError(
                f"watcher at point {self.point}: delay_median_s and delay_spread must be above 0"
            )


@dataclass(frozen=True, slots=True)
class Silence:
    """Everybody who would have reported; nothing has been heard of her beyond the facts.

    `beside`: what else would have spoken (a tracker that used to send), which is evidence like the others but nobody to ask.
    """

    watchers: tuple[Watcher, ...] = ()
    beside: tuple[Watcher, ...] = ()


NO_SILENCE = Silence()


@dataclass(frozen=True, slots=True)
class Fineness:
    """How finely to compute: paths is the number of joint paths (>= 50)."""

    paths: int = 400


DEFAULT = Fineness()
