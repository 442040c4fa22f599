"""Joins the engine, which knows seconds and numbered points, to the event: ids, aware datetimes, who reports where.

In: an event, one runner's facts, the race-level facts, her timetable and course, and when our own channels were
down. Out: an `Outlook`. Everything the engine is told passes through here, so this is where a fact could get lost.
"""

from __future__ import annotations

import math
from collections.abc import Callable, Iterable, Sequence
from dataclasses import dataclass
from datetime import UTC, datetime, timedelta

import numpy as np

from server.course import Course
from server.event.model import (
    CourseDef,
    Edge,
    Event,
    Goal,
    PartKind,
    Point,
    ReporterKind,
    ReportsThere,
    Signal,
)
from server.facts.state import Interval, PlacedFix, RaceState, RunnerState
from server.forecast.hearing import Hearing
from server.forecast.nights import Night, ends_of, nights_ahead, nights_of, nights_told
from server.forecast.outlook import Outlook, Whereabouts, Window
from server.forecast.posterior import Posterior, posterior
from server.forecast.stages import within
from server.forecast.values import (
    Condition,
    Fact,
    FloatArray,
    Held,
    KnownStop,
    NotYet,
    Position,
    Quality,
    Reference,
    Rest,
    Retired,
    Sighting,
    Silence,
    Watcher,
)
from server.forecast.view import View as EngineView
from server.plan.timetable import Timetable

# A live tracker sends a fix every few seconds; beyond one in three minutes they say nothing new about the legs ahead.
THIN = timedelta(minutes=3)
# A telephone's own idea of its accuracy is hopeful, and the line it is put on has a width of its own.
LEAST_ACCURACY_M = 30.0
UNKNOWN_ACCURACY_M = 100.0
# How sure a crew's 'she is a tenth slower from here' is taken to be, as log standard deviation.
CONDITION_SD = 0.05
# So many of them widen the windows; further ones move them only, or a chatty crew would drown the forecast (own choice).
CONDITIONS_DOUBTED = 4
# Reporters who have the race's own radio or cable; the others need the telephone network.
OWN_MEANS = frozenset({ReporterKind.TIMING_MAT, ReporterKind.VOLUNTEER})
EVER = 1e12
FAR_S = 1e8
"""Some three years: no race's time lies farther from its start."""
_Ask = Callable[[int], float]


def outlook(
    event: Event,
    runner: RunnerState,
    race: RaceState,
    timetable: Timetable,
    course: Course,
    outages: Sequence[Interval] = (),
    hearing: Hearing | None = None,
) -> Outlook:
    """A runner's forecast after the facts. Deterministic: same facts, same outlook.

    `timetable` goal B is the reference. `outages` are times when nobody could have reached us,
    `hearing` those when some could not.
    """
    rows = timetable.rows[1:]
    ids = tuple(r.point for r in rows)
    index = {p: i for i, p in enumerate(ids)}
    nights = nights_of(event, runner, race, timetable, index)
    reference = reference_of(timetable, course, nights)
    facts = (*facts_of(runner, index, timetable), *nights_told(runner, ids, nights))
    silence = silence_of(event, runner, race, index, outages, hearing)
    limit_s = limit_of(event, runner, race, ids[-1])
    # The engine's limit is of one way to the finish; with a night on it each stage has its own.
    ends = ends_of(nights_ahead(runner, ids, nights), len(ids) - 1, limit_s)
    post = posterior(reference, facts, limit_s=None if ends else limit_s)
    return _Outlook(runner.start, ids, within(post, ends), silence)


def reference_of(timetable: Timetable, course: Course, nights: Sequence[Night] = ()) -> Reference:
    """Goal B as the engine's reference; the start row is left out, the finish has no stop, the nights no length."""
    rows = timetable.rows[1:]
    stops = [r.stop.total_seconds() for r in rows]
    stops[-1] = 0.0
    slept = np.zeros(len(rows))
    for n in nights:
        stops[n.point] = 0.0
        slept[n.point + 1 :] += n.length_s
    up = sum(r.leg_ascent_m for r in rows)
    length = rows[-1].km
    return Reference(
        km=np.array([r.km for r in rows]),
        elapsed_s=np.array([r.arrive[Goal.B].total_seconds() for r in rows]) - slept,
        stop_s=np.array(stops),
        quality=_QUALITY.get(
            timetable.quality, Quality.DISTANCE if not course.has_heights else Quality.COST_MODEL
        ),
        climb_m_per_km=up / length if length else 0.0,
    )


_QUALITY = {
    "distance only": Quality.DISTANCE,
    "cost model": Quality.COST_MODEL,
    "own data": Quality.OWN_DATA,
    "past results": Quality.PAST_RESULTS,
}


def facts_of(runner: RunnerState, index: dict[str, int], timetable: Timetable) -> tuple[Fact, ...]:
    """What is known of her, in the engine's words. Facts at points her course does not have say nothing."""
    start = runner.start
    facts: list[Fact] = []
    for t in runner.times:
        i = index.get(t.point)
        if i is None:
            continue
        if t.arrived:
            facts.append(
                Sighting(i, arrived_s=_since(start, t.arrived.at), sd_s=t.arrived.spread.total_seconds())
            )
        if t.left:
            facts.append(Sighting(i, left_s=_since(start, t.left.at), sd_s=t.left.spread.total_seconds()))
    if runner.finished and not any(t.point == timetable.rows[-1].point and t.arrived for t in runner.times):
        facts.append(
            Sighting(
                len(index) - 1,
                arrived_s=_since(start, runner.finished.at),
                sd_s=runner.finished.spread.total_seconds(),
            )
        )
    facts += [_position(start, f) for f in thinned(runner.positions)]
    facts += [NotYet(index[n.point], _since(start, n.stamp.at)) for n in runner.not_yet if n.point in index]
    facts += _rests(runner, index)
    facts += [Held(_since(start, h.start), _since(start, h.end) if h.end else None) for h in runner.held]
    facts += _conditions(runner, index, timetable)
    if runner.retirement:
        at = runner.retirement
        km = _km_of(at.point, timetable) if at.point else None
        facts.append(Retired(_since(start, at.stamp.at), km))
    return tuple(f for f in facts if not (isinstance(f, Sighting) and _before_start(f)))


def _before_start(seen: Sighting) -> bool:
    """A time before her own start can't be laid on the line from the start; she may have set off early."""
    return any(t is not None and t <= 0 for t in (seen.arrived_s, seen.left_s))


def thinned(positions: Sequence[PlacedFix]) -> list[PlacedFix]:
    """The placed fixes worth telling: on the line, not ambiguous, one each `THIN`, and always the last."""
    usable = sorted(
        (p for p in positions if p.km is not None and not p.ambiguous),
        key=lambda p: (p.stamp.at, p.stamp.entry),
    )
    kept: list[PlacedFix] = []
    for fix in usable[:-1]:
        if not kept or fix.stamp.at - kept[-1].stamp.at >= THIN:
            kept.append(fix)
    return kept + usable[-1:]


def _position(start: datetime, fix: PlacedFix) -> Position:
    assert fix.km is not None
    accuracy = fix.fix.accuracy_m
    return Position(
        km=fix.km,
        at_s=_since(start, fix.stamp.at),
        accuracy_m=UNKNOWN_ACCURACY_M if accuracy is None else max(accuracy, LEAST_ACCURACY_M),
    )


def _rests(runner: RunnerState, index: dict[str, int]) -> list[Fact]:
    """Rests as told. One that is going on, with a time she means to move again, ends then."""
    out: list[Fact] = []
    here = _point_she_is_at(runner)
    for rest in runner.rests:
        end = rest.end
        if end is None and runner.rest_until is not None:
            if here in index:
                out.append(KnownStop(index[here], _since(runner.start, runner.rest_until)))
                continue
            end = max(runner.rest_until, rest.start)
        out.append(Rest(_since(runner.start, rest.start), _since(runner.start, end) if end else None))
    return out


def _point_she_is_at(runner: RunnerState) -> str:
    last = runner.times[-1] if runner.times else None
    return last.point if last and last.arrived and not last.left else ""


def _conditions(runner: RunnerState, index: dict[str, int], timetable: Timetable) -> list[Fact]:
    """'She is a tenth slower from here': from where she then was, or from the point named, to the finish."""
    out: list[Fact] = []
    finish = timetable.rows[-1].km
    for entry in runner.conditions:
        if entry.factor is None or not entry.factor > 0:
            continue
        if entry.point in index:
            begin = _km_of(entry.point, timetable) or 0.0
        else:
            begin = _known_km(runner, entry.seen_at, timetable)
        if begin < finish:
            sd = CONDITION_SD if len(out) < CONDITIONS_DOUBTED else 0.0
            out.append(Condition(begin, finish, math.log(entry.factor), sd))
    return out


def _known_km(runner: RunnerState, at: datetime, timetable: Timetable) -> float:
    """The farthest place she was known to have reached by then."""
    km = [0.0]
    seen = [t for t in runner.times if any(s is not None and s.at <= at for s in (t.arrived, t.left))]
    km += [_km_of(t.point, timetable) or 0.0 for t in seen]
    km += [p.km for p in runner.positions if p.km is not None and p.stamp.at <= at]
    return max(km)


def _km_of(point: str | None, timetable: Timetable) -> float | None:
    return next((r.km for r in timetable.rows if r.point == point), None)


def limit_of(event: Event, runner: RunnerState, race: RaceState, finish: str) -> float | None:
    """The time limit at the finish as it now stands, seconds after her start; None where the race has none.

    The event's limit counts from the event's start, whatever her wave.
    """
    limits = [] if event.limit is None else [_since(runner.start, event.starts + event.limit)]
    moved = [when for point, edge, when in race.cut_offs_moved if point == finish and edge == Edge.IN.value]
    if moved:
        return _since(runner.start, moved[-1])
    point = event.course_of(runner.runner).point(finish)
    limits += [_since(runner.start, c.at(runner.start)) for c in point.cut_offs]
    return min(limits, default=None)


def silence_of(
    event: Event,
    runner: RunnerState,
    race: RaceState,
    index: dict[str, int],
    outages: Sequence[Interval],
    hearing: Hearing | None = None,
) -> Silence:
    """Who would have told us, where and how surely.

    Reporters that need a telephone count as nobody where there is no signal; crew count only where a meeting takes
    them, and no longer than until they say they have left. While our own server was down nobody counts, and while a
    channel was, none of those who write over it.
    """
    course, hearing = event.course_of(runner.runner), hearing or Hearing()
    watchers: list[Watcher] = []
    for point in course.points:
        if point.id not in index:
            continue
        for reporter in point.reports:
            if not _can_report(event, runner, course, point, reporter):
                continue
            deaf = (*outages, *_deaf(event, runner, point, reporter, hearing))
            off = [(_since(runner.start, o.start), _until(runner.start, o.end)) for o in deaf]
            if reporter.by is ReporterKind.CREW:
                off += _after_crew_left(event, runner, race, point.id)
            watchers.append(
                Watcher(
                    index[point.id],
                    chance=reporter.chance,
                    delay_median_s=max(reporter.delay.total_seconds(), 60.0),
                    covered_s=_covered(_merged(off)),
                )
            )
    return Silence(tuple(watchers))


def _can_report(
    event: Event, runner: RunnerState, course: CourseDef, point: Point, reporter: ReportsThere
) -> bool:
    if reporter.by is ReporterKind.NOBODY or reporter.chance <= 0:
        return False
    if reporter.by not in OWN_MEANS and not has_signal(course, point):
        return False
    if reporter.by is ReporterKind.CREW:
        return any(m.point == point.id and m.runner == runner.runner for m in event.meetings)
    return True


def _deaf(
    event: Event, runner: RunnerState, point: Point, reporter: ReportsThere, hearing: Hearing
) -> tuple[Interval, ...]:
    """When those who report there could not have reached us, whoever of them it would have been."""
    match reporter.by:
        case ReporterKind.VOLUNTEER:
            posted = [p.person for p in event.parts if p.kind is PartKind.VOLUNTEER and p.point == point.id]
            # Volunteers whom the event file does not know report by way of the race, which calls the server.
            return hearing.deaf_to_all(posted) if posted else hearing.nobody
        case ReporterKind.CREW:
            here = [m for m in event.meetings if m.point == point.id and m.runner == runner.runner]
            return hearing.deaf_to_all(list(dict.fromkeys(w for m in here for w in m.crew)))
        case ReporterKind.RUNNER:
            return hearing.deaf_to(event.runner(runner.runner).person)
        case _:
            return hearing.nobody


def has_signal(course: CourseDef, point: Point) -> bool:
    """Whether a telephone works at a point, from what is said of it and of the stretch it lies in."""
    if point.signal is Signal.NONE:
        return False
    km = point.km
    return not any(s.no_signal and km is not None and s.from_km <= km <= s.to_km for s in course.stretches)


def _after_crew_left(
    event: Event, runner: RunnerState, race: RaceState, point: str
) -> list[tuple[float, float]]:
    """Once everybody who was to be at a point has left it, nobody of the crew reports from there."""
    crew = {p for m in event.meetings if m.point == point and m.runner == runner.runner for p in m.crew}
    left = {who: stamp.at for where, who, stamp in race.crew_left if where == point and who in crew}
    for where, who, stamp in race.crew_there:
        if where == point and who in left and stamp.at > left[who]:
            del left[who]
    if not crew or set(left) != crew:
        return []
    return [(_since(runner.start, max(left.values())), EVER)]


def _merged(spans: Iterable[tuple[float, float]]) -> list[tuple[float, float]]:
    out: list[tuple[float, float]] = []
    for begin, end in sorted(spans):
        if out and begin <= out[-1][1]:
            out[-1] = (out[-1][0], max(out[-1][1], end))
        elif end > begin:
            out.append((begin, end))
    return out


def _covered(off: Sequence[tuple[float, float]]) -> tuple[tuple[float, float], ...] | None:
    """The rest of time; None where nothing is missing."""
    if not off:
        return None
    edges = [-EVER, *(t for span in off for t in span), EVER]
    spans = zip(edges[::2], edges[1::2], strict=True)
    return tuple((a, b) for a, b in spans if b > a)


def _since(start: datetime, at: datetime) -> float:
    return (at - start).total_seconds()


def _until(start: datetime, end: datetime | None) -> float:
    return EVER if end is None else _since(start, end)


@dataclass(frozen=True, slots=True, eq=False)
class _Outlook:
    """An `Outlook` on the engine's posterior. `ids` are the points after the start, in running order."""

    start: datetime
    ids: tuple[str, ...]
    posterior: Posterior
    silence: Silence

    def at(self, now: datetime) -> _View:
        return _View(self, self.posterior.view(_since(self.start, now), self.silence), now)

    def _first(self) -> int:
        track = self.posterior.track
        return len(self.ids) if track.retired is not None else track.first

    def late_time(self) -> tuple[str, datetime] | None:
        watched = sorted({w.point for w in self.silence.watchers if w.point >= self._first()})
        if not watched:
            return None
        return self.ids[watched[0]], self._when(self.posterior.late_after_s(watched[0]))

    def unheard_falls_under(self, line: float, after: datetime) -> datetime | None:
        if self._first() >= len(self.ids):
            return None
        found = self.posterior.unheard_falls_under(line, _since(self.start, after), self.silence)
        return None if found is None else max(after, self._when(found))

    def _when(self, seconds: float) -> datetime:
        # No calendar holds what a slip of a date can make of a time: it stays a time, far off.
        return self.start + timedelta(seconds=round(min(max(seconds, -FAR_S), FAR_S), 3))


@dataclass(frozen=True, slots=True, eq=False)
class _View:
    """A `View` on the engine's view. Points reached, and every point once she has retired, have no window."""

    outlook: _Outlook
    engine: EngineView
    now: datetime

    @property
    def points(self) -> tuple[str, ...]:
        return self.outlook.ids[self.outlook._first() :]

    def _index(self, point: str) -> int:
        return self.outlook.ids.index(point) if point in self.outlook.ids else -1

    def _to_come(self, point: str) -> int:
        i = self._index(point)
        if i < self.outlook._first():
            raise KeyError(point)
        return i

    def window(self, point: str) -> Window:
        times = self.engine.quantiles(self._to_come(point), np.array([0.1, 0.5, 0.9]))
        early, likely, late = (self.outlook._when(float(t)) for t in times)
        return Window(point, early, likely, late)

    def arrival(self, point: str, p: float) -> datetime:
        return self.outlook._when(float(self.engine.quantiles(self._to_come(point), np.array([p]))[0]))

    def leaving(self, point: str, p: float) -> datetime:
        i = self._index(point)
        if i < 0 or (i < self.outlook._first() and i != self.engine.posterior.track.at_point):
            raise KeyError(point)
        when = float(self.engine.out_quantiles(i, np.array([p]))[0])
        if not math.isfinite(when):
            raise KeyError(point)
        return self.outlook._when(when)

    def p_gets_there(self, point: str) -> float:
        return self._odds(point, self.engine.probability_arrives)

    def p_in_by(self, point: str, when: datetime) -> float:
        return self._odds(point, lambda i: self.engine.probability_by(i, _since(self.outlook.start, when)))

    def p_out_by(self, point: str, when: datetime) -> float:
        return self._odds(
            point, lambda i: self.engine.probability_out_by(i, _since(self.outlook.start, when))
        )

    def p_makes(self, point: str, when: datetime, out: bool) -> float:
        at = _since(self.outlook.start, when)
        return self._odds(point, lambda i: self.engine.probability_cutoff(i, at, leaving=out))

    def _odds(self, point: str, ask: _Ask) -> float:
        i = self._index(point)
        if i < 0:
            return 1.0
        return min(1.0, max(0.0, float(ask(i))))

    def p_still_going(self) -> float:
        return float(self.engine.probability_going())

    def p_unheard(self) -> float:
        return float(self.engine.probability_unheard())

    def where(self) -> Whereabouts:
        low, likely, high = self.engine.whereabouts_km(np.array([0.1, 0.5, 0.9]))
        return Whereabouts(float(low), float(likely), float(high))

    def paths(self) -> tuple[FloatArray, FloatArray]:
        """Equally likely paths: the engine's weighted ones, drawn again at even steps of weight."""
        weights = np.cumsum(self.engine.weights)
        count = weights.size
        pick = np.minimum(np.searchsorted(weights, (np.arange(count) + 0.5) / count * weights[-1]), count - 1)
        begin = self.outlook.start.astimezone(UTC).timestamp()
        if not self.points:
            none = np.zeros((count, 0))
            return none, none
        return self.engine.arrivals_s[pick] + begin, self.engine.departures_s[pick] + begin
