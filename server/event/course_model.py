"""The tables of an event file on the ground: points, stretches, weather, courses. Frozen; ids are stable slugs."""

from __future__ import annotations

from dataclasses import dataclass
from datetime import datetime, timedelta
from enum import StrEnum
from typing import ClassVar, Final

from server.event.context import ReadSoFar
from server.event.forms import (
    WORDS_MAX,
    Choices,
    FileName,
    Id,
    Minutes,
    Number,
    OneOf,
    Ref,
    Text,
    Texts,
    Values,
    Whole,
    Yes,
    course_named,
)
from server.event.forms_of_time import Moment, span
from server.event.table import Key, One, Table, Tables, UnusableError, apart, key, read_table
from server.event.table_reader import Section
from server.sentences import say

KM_MAX: Final = 1000.0
SHORT_RACE = timedelta(days=6)
"""In a race shorter than this a weekday means one day."""
_COURSE = Key("course", Text(), "which of several [[courses]]", '"long"')
_LAT, _LON = Number(-90, 90), Number(-180, 180)


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


class GroundState(StrEnum):
    """What the weather makes of the ground for a while."""

    MUD = "mud"
    SNOW = "snow"


@dataclass(frozen=True, slots=True)
class CutOff(Table):
    """A time limit at a point, by the clock or counted from her own start.

    Exactly one of `clock`, `elapsed` is set: `clock` is an instant; `elapsed` counts from the runner's own start (her wave).
    """

    edge: Edge = key(OneOf(Edge), "whether she must be in or out by then", '"in"', name="when",
        need=say("do-say-whether-must-out-then"))  # fmt: skip
    clock: datetime | None = key(Moment("the start", example='"Sun 11:30"'),
        "the time of day, with weekday past the first day", '"Sat 13:30"')  # fmt: skip
    elapsed: timedelta | None = key(span(timedelta(minutes=1), timedelta(days=14)),
        "instead: how long after her start", '"8:30"')  # fmt: skip

    def at(self, start: datetime) -> datetime:
        """The instant for a runner who started at `start`."""
        if self.clock is not None:
            return self.clock
        assert self.elapsed is not None
        return start + self.elapsed

    @staticmethod
    def look(s: Section, v: Values, d: ReadSoFar) -> None:
        """One of the two times."""
        if s.has("clock") == s.has("elapsed"):
            what = say("wrong-cut-off-clock-elapsed") if s.has("clock") else say("wrong-cut-off-no-time")
            remedy = say("do-give-clock-sun-11-30")
            s.report.error(s.path, what, remedy)
        if (v["clock"] is None) == (v["elapsed"] is None):
            raise UnusableError


@dataclass(frozen=True, slots=True)
class ReportsThere(Table):
    """Somebody who tells that a runner is there, how surely and how late.

    `chance` (0..1]: that a runner there is reported.
    """

    by: ReporterKind = key(OneOf(ReporterKind), "who", '"volunteer"',
        need=say("do-say-reports-volunteer-crew-timing"),
        default=ReporterKind.NOBODY)  # fmt: skip
    chance: float = key(
        Number(0, 1), "how surely a runner there is told of, above 0 up to 1", "0.9", must=True
    )
    delay: timedelta = key(Minutes(), "how late it is heard", "10", name="delay_minutes", must=True)

    @staticmethod
    def look(s: Section, v: Values, d: ReadSoFar) -> None:
        """Nobody needs no chance, anybody else one above 0."""
        if v["chance"] == 0 or (not s.has("chance") and v["by"] is not ReporterKind.NOBODY):
            what = say("wrong-chance-0-nobody") if v["chance"] == 0 else say("wrong-chance-missing")
            remedy = say("do-write-how-surely-reported-above")
            s.error("chance", what, remedy)
        v["chance"] = v["chance"] or 1.0


@dataclass(frozen=True, slots=True)
class CrewAccess(Table):
    """Where crew may meet her: parking, walk, hours, how many, permit.

    `permit` names the permit that a car, or somebody of the crew, needs there ('' for none); `cars_max` is how many cars
    of one runner may come. `place` is the id of a `Place`: points that name the same one (a loop come round again) are
    one car park. `opens` without a day is on the day of the start, `closes` the first such time after it.
    """

    parking: str = key(Text(WORDS_MAX), "where to park, in words", '"field by the weir"')
    walk_in: timedelta = key(
        Minutes(), "from the car to where she comes through", "6", name="walk_in_minutes"
    )
    unloading: timedelta = key(
        Minutes(), "from there to ready", "5", name="unloading_minutes", default=timedelta(minutes=5)
    )
    opens: datetime | None = key(
        Moment("the day", example='"09:00"'), "no crew there before", '"06:00"', name="open_from"
    )
    closes: datetime | None = key(Moment("opens", "the day", example='"Sun 14:00"'), "no crew there after",
        '"Sat 18:00"', name="open_to")  # fmt: skip
    people_max: int | None = key(Whole(0, 100), "how many of the crew may be there (pacers not counted)", "2")
    lat: float | None = key(_LAT, "the car park, degrees north; drives are estimated from it", "54.21")
    lon: float | None = key(_LON, "degrees east, west is negative", "-2.3")
    permit: str = key(Text(WORDS_MAX), "the permit that a car, or somebody in it, needs there", '"green"')
    place: str = key(Ref("place"), "the [[places]] that several points share as their car park", '"field"',
        default="")  # fmt: skip
    cars_max: int | None = key(Whole(0, 50), "how many cars of one runner may come there", "1")

    @staticmethod
    def look(s: Section, v: Values, d: ReadSoFar) -> None:
        """Open before it closes, and not for a week: 'Sat 18:00' of a Saturday that opens later is found a week on."""
        week_on = d.limit is not None and d.limit < SHORT_RACE
        if v["opens"] is not None and v["closes"] is not None:
            hours = v["closes"] - v["opens"]
            if hours <= timedelta(0) or (week_on and hours >= SHORT_RACE):
                s.error("open_to", say("wrong-closes-before-opens"), say("do-check-two-times-weekday"))
        s.both("lat", "lon")


@dataclass(frozen=True, slots=True)
class Point(Table):
    """A named place on the course, in running order; a place passed twice is two points.

    `km` is None until placed when only `waypoint` (a name in the route file) is given; a loaded event has every km.
    `next_stage`: a stage ends here, and the next one starts at that moment. `transport`: how the race takes away who
    retires there.
    """

    id: str = key(Id("name"), "what other tables call it", '"mill"')
    name: str = key(Text(), "what people call it", '"Skelter Mill"',
        need=say("do-give-point-name-name-skelter"))  # fmt: skip
    km: float | None = key(Number(0, KM_MAX), "distance from the start; start and finish need none", "21.3",
        must=True)  # fmt: skip
    kinds: frozenset[PointKind] = key(Choices(PointKind),
        "what there is; crew and cut_off add theirs by themselves", '["aid station", "drop bag"]', must=True)  # fmt: skip
    also: tuple[str, ...] = key(Texts(), "other names that people may use in messages", '["the mill"]')
    waypoint: str | None = key(Text(), "instead of km: the name of a waypoint of the route file",
        '"Skelter Mill"', default=None)  # fmt: skip
    cut_offs: tuple[CutOff, ...] = key(Tables(CutOff), "cut_off where there is one for in and one for out")
    access: CrewAccess | None = key(
        One(CrewAccess), "how crew get there; without it they have no access", name="crew"
    )
    reports: tuple[ReportsThere, ...] = key(
        Tables(ReportsThere), "who tells where she is; without it her silence there means nothing"
    )
    signal: Signal = key(OneOf(Signal), "how telephones work there", '"patchy"', default=Signal.GOOD)
    planned_stop: timedelta = key(Minutes(), "how long she means to stop", "8", name="stop_minutes")
    note: str = key(Text(WORDS_MAX), "anything else", '"soup and beds"')
    next_stage: datetime | None = key(Moment("the known start", example='"Sun 07:00"'),
        "a stage ends here: when the next one starts", '"Sun 07:00"')  # fmt: skip
    transport: str = key(Text(WORDS_MAX), "how the race takes away whoever retires there",
        '"minibus to the finish at 03:00 and 06:00"')  # fmt: skip

    MORE: ClassVar = (
        _COURSE,
        Key("cut_off", Tables(CutOff), "a time by which she must be in or out", "%s"),
    )

    @property
    def crew_access(self) -> bool:
        """Whether crew may meet a runner here."""
        return self.access is not None

    @property
    def finish(self) -> bool:
        """Whether this is the end of the course."""
        return PointKind.FINISH in self.kinds

    @staticmethod
    def look(s: Section, v: Values, d: ReadSoFar) -> None:
        """Its course, where it is, what it is by what is there, and when the next stage starts."""
        d.course_of[s.path] = course_named(s, d)
        v["name"], v["kinds"] = v["name"] or v["id"], set(v["kinds"])
        _where(s, v, d)
        _crew(s, v)
        _cut_offs(s, v, d)
        v["kinds"] = frozenset(v["kinds"])
        v["next_stage"] = _next_stage(s, v, d)


def _where(s: Section, v: Values, d: ReadSoFar) -> None:
    raw = s.raw("kinds")
    if raw is not None and (not isinstance(raw, list) or any(k not in list(PointKind) for k in raw)):
        d.astray.add(s.path)
    ends = v["kinds"] & {PointKind.START, PointKind.FINISH}
    if not (s.has("km") or v["waypoint"] or ends or s.path in d.astray):
        s.missing("km", say("do-give-distance-km-21-3"))


def _crew(s: Section, v: Values) -> None:
    if v["access"] is None and PointKind.CREW_ACCESS in v["kinds"] and not s.has("crew"):
        v["access"] = CrewAccess()
        remedy = say("do-add-crew-parking-walk-minutes")
        s.report.warn(s.at("kinds"), say("wrong-crew-may-come-here-but"), remedy)
    elif v["access"] is not None:
        v["kinds"].add(PointKind.CREW_ACCESS)


def _cut_offs(s: Section, v: Values, d: ReadSoFar) -> None:
    if s.has("cut_off") and s.has("cut_offs"):
        s.error("cut_offs", say("wrong-cut-off-cut-offs"), say("do-put-them-all-into-cut"))
    one = (read_table(x, CutOff, d) for x in s.tables("cut_off"))
    v["cut_offs"] = (*(c for c in one if c is not None), *v["cut_offs"])
    if len({c.edge for c in v["cut_offs"]}) < len(v["cut_offs"]):
        s.error("cut_offs", say("wrong-two-cut-offs-same-moment"), say("do-keep-out"))
    if v["cut_offs"]:
        v["kinds"].add(PointKind.CUT_OFF)
    elif PointKind.CUT_OFF in v["kinds"] and not (s.has("cut_off") or s.has("cut_offs")):
        s.missing("cut_off", say("do-say-when-cut-off-when"))


def _next_stage(s: Section, v: Values, d: ReadSoFar) -> datetime | None:
    at: datetime | None = v["next_stage"]
    if at is None or s.wrong("next_stage"):
        return None  # The mistake is noted, and the start in its place would make others of the cut-offs.
    if d.starts_known and at < d.starts:
        what = say("wrong-next-stage-starts-before-race")
        s.error("next_stage", what, say("do-give-weekday-sun-07-00"))
        return None
    if s.has("stop_minutes"):
        what = say("wrong-stage-ends-here-stays-until")
        s.error("stop_minutes", what, say("do-leave-stop-minutes-out"))
    return at


@dataclass(frozen=True, slots=True)
class Stretch(Table):
    """A part of the course with something in common.

    Surface, shade, no signal, an escape route. `factor` multiplies her time there (1.10 = a tenth slower); `factor_for` is
    what it stands for.
    """

    from_km: float = key(
        Number(0, KM_MAX), "where it begins", "2", need=say("do-say-where-begins-from-km"), default=0.0
    )
    to_km: float = key(
        Number(0, KM_MAX), "where it ends", "12", need=say("do-say-where-ends-km-78"), default=0.0
    )
    name: str = key(Text(), "what it is called", '"Long Moss"')
    surface: str = key(
        Text(), "what is underfoot, as in road, track, path, grass, rock, scree, bog, sand, snow", '"bog"'
    )
    forest_or_gorge: bool = key(Yes(), "dark half an hour earlier", "true")
    no_signal: bool = key(Yes(), "no telephone there: silence means nothing", "true")
    factor: float = key(
        Number(0.5, 4.0), "what her time is multiplied by there (1.10 is a tenth slower)", "1.10", default=1.0
    )
    factor_for: str = key(Text(), "what that is for, as the timetable names it", '"stiles"')
    escape_route: str = key(Text(WORDS_MAX), "how to get off the hill there", '"down the beck to the road"')

    MORE: ClassVar = (_COURSE,)

    @staticmethod
    def look(s: Section, v: Values, d: ReadSoFar) -> None:
        """Its course; it ends after it begins."""
        d.course_of[s.path] = course_named(s, d)
        if s.has("from_km") and v["to_km"] and v["from_km"] >= v["to_km"]:
            what = say("wrong-stretch-ends-km-before-begins", to_km=f"{v['to_km']:g}")
            s.error("to_km", what, say("do-check-from-km-km"))


@dataclass(frozen=True, slots=True)
class WeatherSpell(Table):
    """Weather to plan with, for some hours or a part of a course. A later one goes before an earlier.

    Ends that are None are open. `temperature_c` is the air's, `humidity` in % (50 where a temperature stands alone);
    `ground` what is underfoot then. `course` None: wherever the hours fit; with km it names the course they are on.
    """

    from_at: datetime | None = key(Moment("the day", example='"Sat 12:00"'),
        "when it begins; without it from the start on", '"Sat 12:00"', name="from")  # fmt: skip
    to_at: datetime | None = key(
        Moment("from_at", "the day", example='"Sat 18:00"'), "when it ends", '"Sat 18:00"', name="to"
    )
    temperature_c: float | None = key(Number(-45, 55), "the air's, in the shade", "27")
    humidity: float | None = key(Number(0, 100), "in per cent; 50 without it", "55")
    ground: GroundState | None = key(OneOf(GroundState), "what it makes of the ground", '"mud"')
    from_km: float | None = key(Number(0, KM_MAX), "where it begins, for a part of the course", "2")
    to_km: float | None = key(Number(0, KM_MAX), "where it ends", "12")
    course: str | None = key(Text(), "which of several [[courses]]", '"long"', default=None)
    note: str = key(Text(WORDS_MAX), "where it is from", '"forecast of Thursday"')

    @staticmethod
    def look(s: Section, v: Values, d: ReadSoFar) -> None:
        """Where and when it is, and that it says something."""
        if v["course"] or v["from_km"] is not None or v["to_km"] is not None:
            course_named(s, d)
        if v["from_km"] is not None and v["to_km"] is not None and v["from_km"] >= v["to_km"]:
            what = say("wrong-weather-ends-km-before-begins", to_km=f"{v['to_km']:g}")
            s.error("to_km", what, say("do-check-from-km-km"))
        if v["from_at"] is not None and v["to_at"] is not None and v["to_at"] <= v["from_at"]:
            s.error("to", say("wrong-weather-ends-before-begins"), say("do-check-two-times-weekday"))
        if d.starts_known and v["to_at"] is not None and v["to_at"] <= d.starts - timedelta(days=1):
            s.error("to", say("wrong-weather-over-days-before-start"), say("do-check-date"))
        if not (s.has("temperature_c") or s.has("ground")):
            remedy = say("do-write-weather-from-sat-12")
            s.report.error(s.path, say("wrong-weather-says-nothing"), remedy)
        if s.has("humidity") and not s.has("temperature_c"):
            s.error("humidity", say("wrong-humidity-without-temperature-c-says"), say("do-add-temperature-c"))


@dataclass(frozen=True, slots=True)
class CourseDef(Table):
    """Only where runners are on several courses, or the race has stages: then [event] names no route.

    One line on the ground: the route file's name and its points in running order. `stated_ascent_m` is the organiser's
    figure, None where none is given. `results` names a CSV file of others' split times on this course, '' for none.
    """

    id: str = key(Id("name"), "what other tables call it", '"long"')
    route: str = key(Text(), "the GPX file of the course", '"long.gpx"',
        need=say("do-name-gpx-file-stands-beside"))  # fmt: skip
    points: tuple[Point, ...] = apart()
    stretches: tuple[Stretch, ...] = ()
    stated_km: float | None = key(
        Number(1, KM_MAX), "the organiser's length, where the measured one differs", "161"
    )
    results: str = key(
        FileName(), "a CSV of others' split times on this course, to plan from", '"results.csv"'
    )
    stated_ascent_m: float | None = key(
        Number(0, 60_000), "the organiser's ascent: what a past race's stated ascent is compared with", "5200"
    )

    MORE: ClassVar = (
        Key("name", Text(), "its name, from which the id is made where none is given", '"Long course"'),
    )

    def point(self, point_id: str) -> Point:
        """The point of that id; KeyError if the course has none."""
        for p in self.points:
            if p.id == point_id:
                return p
        raise KeyError(point_id)
