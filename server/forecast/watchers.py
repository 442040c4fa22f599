"""Who would have told us, where and how surely: the event's reporters, signal and outages as the engine's silence."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from datetime import datetime

from server.event.model import CourseDef, Event, PartKind, Point, ReporterKind, ReportsThere, Signal
from server.facts.state import Interval, RaceState, RunnerState
from server.facts.trackers import LEAST_FIXES, fixes_of
from server.forecast.channel_outages import Hearing
from server.forecast.values import Silence, Watcher

# Reporters who have the race's own radio or cable; the others need the telephone network.
OWN_MEANS = frozenset({ReporterKind.TIMING_MAT, ReporterKind.VOLUNTEER})
EVER = 1e12
TRACKER_LASTS, TRACKER_GAP_S = 0.5, 600.0
"""The chance that a telephone which went quiet sends again once it has signal, and how long that takes (own choice):
batteries end and apps are put to sleep more often than anything befalls a runner."""


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
    return Silence(tuple(watchers), _tracker(runner, course, index, outages))


def _tracker(
    runner: RunnerState, course: CourseDef, index: dict[str, int], outages: Sequence[Interval]
) -> tuple[Watcher, ...]:
    """A tracker that used to send would send again at the next point ahead that has signal, unless it has died: one
    reporter in all, since a dead one is dead at every point."""
    fixes = fixes_of(runner)
    ended = runner.contact_lost is not None and bool(fixes) and runner.contact_lost.at >= fixes[-1].stamp.at
    if len(fixes) < LEAST_FIXES or ended:
        return ()
    km = max([f.km for f in fixes if f.km is not None], default=0.0)
    reached = max([index[p] for p in runner.reached if p in index], default=-1)
    for p in course.points:
        ahead = p.id in index and index[p.id] > reached and p.km is not None and p.km > km
        if ahead and has_signal(course, p):
            off = [(_since(runner.start, o.start), _until(runner.start, o.end)) for o in outages]
            covered = _covered(_merged(off))
            return (Watcher(index[p.id], TRACKER_LASTS, TRACKER_GAP_S, covered_s=covered),)
    return ()


def _can_report(
    event: Event, runner: RunnerState, course: CourseDef, point: Point, reporter: ReportsThere
) -> bool:
    if reporter.by is ReporterKind.NOBODY or reporter.chance <= 0:
        return False
    if reporter.by not in OWN_MEANS and not has_signal(course, point):
        return False
    if reporter.by is ReporterKind.CREW:
        return any(m.point == point.id for m in event.meetings_of(runner.runner))
    return True


def _deaf(
    event: Event, runner: RunnerState, point: Point, reporter: ReportsThere, hearing: Hearing
) -> tuple[Interval, ...]:
    """When those who report there could not have reached us, whoever of them it would have been."""
    match reporter.by:
        case ReporterKind.VOLUNTEER:
            posts = event.once("posts", lambda: _posts(event))
            posted = posts.get(point.id, ())
            # Volunteers whom the event file does not know report by way of the race, which calls the server.
            return hearing.deaf_to_all(posted) if posted else hearing.nobody
        case ReporterKind.CREW:
            here = [m for m in event.meetings_of(runner.runner) if m.point == point.id]
            return hearing.deaf_to_all(list(dict.fromkeys(w for m in here for w in m.crew)))
        case ReporterKind.RUNNER:
            return hearing.deaf_to(event.runner(runner.runner).person)
        case _:
            return hearing.nobody


def _posts(event: Event) -> dict[str, list[str]]:
    """The volunteers who stand at each point."""
    found: dict[str, list[str]] = {}
    for p in event.parts:
        if p.kind is PartKind.VOLUNTEER and p.point is not None:
            found.setdefault(p.point, []).append(p.person)
    return found


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
    crew = {p for m in event.meetings_of(runner.runner) if m.point == point for p in m.crew}
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
