"""The values of an event on the ground: points, stretches, weather, courses. Frozen; ids are stable slugs."""

from __future__ import annotations

from dataclasses import dataclass
from datetime import datetime, timedelta
from enum import StrEnum


class PointKind(StrEnum):
    """What a point is; one point may be several things."""

    START = "start"
    AID_STATION = "aid station"
    CREW_ACCESS = "crew access"
    WATER = "water"
    CUT_OFF = "cut-off"
    DROP_BAG = "drop bag"
    FINISH = "finish"


class Edge(StrEnum):
    """Which moment at a point is meant: arriving or leaving."""

    IN = "in"
    OUT = "out"


class Signal(StrEnum):
    """How phones work at a point."""

    GOOD = "good"
    PATCHY = "patchy"
    NONE = "none"


class ReporterKind(StrEnum):
    """Who sends check-ins from a point."""

    TIMING_MAT = "timing mat"
    VOLUNTEER = "volunteer"
    CREW = "crew"
    RUNNER = "runner"
    TRACKER = "tracker"
    NOBODY = "nobody"


@dataclass(frozen=True, slots=True)
class CutOff:
    """A time by which a runner must be in, or out of, a point. Exactly one of `clock`, `elapsed` is set.

    `clock` is an instant; `elapsed` counts from the runner's own start (her wave).
    """

    edge: Edge
    clock: datetime | None = None
    elapsed: timedelta | None = None

    def at(self, start: datetime) -> datetime:
        """The instant for a runner who started at `start`."""
        if self.clock is not None:
            return self.clock
        assert self.elapsed is not None
        return start + self.elapsed


@dataclass(frozen=True, slots=True)
class ReportsThere:
    """Who reports at a point, with what chance (0..1] that a runner there is reported, and how late."""

    by: ReporterKind
    chance: float
    delay: timedelta


@dataclass(frozen=True, slots=True)
class CrewAccess:
    """How crew get to a point: where to park, how long on foot, when it is open, how many people and cars.

    `permit` names the permit that a car, or somebody of the crew, needs there ('' for none); `cars_max` is how many cars
    of one runner may come. `place` is the id of a `Place`: points that name the same one (a loop come round again) are
    one car park.
    """

    parking: str = ""
    walk_in: timedelta = timedelta(0)
    unloading: timedelta = timedelta(minutes=5)
    opens: datetime | None = None
    closes: datetime | None = None
    people_max: int | None = None
    lat: float | None = None
    lon: float | None = None
    permit: str = ""
    place: str = ""
    cars_max: int | None = None


@dataclass(frozen=True, slots=True)
class Point:
    """A named place on the course. One place passed twice is two points. `km` is None until placed
    when only `waypoint` (a name in the route file) is given; a loaded event has every km. `next_stage`: a stage ends here,
    and the next one starts at that moment. `transport`: how the race takes away who retires there."""

    id: str
    name: str
    km: float | None
    kinds: frozenset[PointKind]
    also: tuple[str, ...] = ()
    waypoint: str | None = None
    cut_offs: tuple[CutOff, ...] = ()
    access: CrewAccess | None = None
    reports: tuple[ReportsThere, ...] = ()
    signal: Signal = Signal.GOOD
    planned_stop: timedelta = timedelta(0)
    note: str = ""
    next_stage: datetime | None = None
    transport: str = ""

    @property
    def crew_access(self) -> bool:
        """Whether crew may meet a runner here."""
        return self.access is not None

    @property
    def finish(self) -> bool:
        """Whether this is the end of the course."""
        return PointKind.FINISH in self.kinds


@dataclass(frozen=True, slots=True)
class Stretch:
    """A part of the course with something in common: surface, shade, no signal, an escape route.

    `factor` multiplies her time there (1.10 = a tenth slower); `names` what it stands for.
    """

    from_km: float
    to_km: float
    name: str = ""
    surface: str = ""
    forest_or_gorge: bool = False
    no_signal: bool = False
    factor: float = 1.0
    factor_for: str = ""
    escape_route: str = ""


class GroundState(StrEnum):
    """What the weather makes of the ground for a while."""

    MUD = "mud"
    SNOW = "snow"


@dataclass(frozen=True, slots=True)
class WeatherSpell:
    """Weather to plan with, for some hours or a part of a course. Ends that are None are open.

    `temperature_c` is the air's, `humidity` in % (50 where a temperature stands alone); `ground` what is
    underfoot then. `course` None: wherever the hours fit; with km it names the course they are on.
    """

    from_at: datetime | None = None
    to_at: datetime | None = None
    temperature_c: float | None = None
    humidity: float | None = None
    ground: GroundState | None = None
    from_km: float | None = None
    to_km: float | None = None
    course: str | None = None
    note: str = ""


@dataclass(frozen=True, slots=True)
class CourseDef:
    """One line on the ground: the route file's name and its points in running order.

    `stated_ascent_m` is the organiser's figure, None where none is given.
    `results` names a CSV file of others' split times on this course, '' for none.
    """

    id: str
    route: str
    points: tuple[Point, ...]
    stretches: tuple[Stretch, ...] = ()
    stated_km: float | None = None
    results: str = ""
    stated_ascent_m: float | None = None

    def point(self, point_id: str) -> Point:
        """The point of that id; KeyError if the course has none."""
        for p in self.points:
            if p.id == point_id:
                return p
        raise KeyError(point_id)
