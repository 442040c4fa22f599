"""A race of one's own, rehearsed: she goes as planned, or slower, or is not heard of any more; all messages are printed.

The steps are made from the plan; the rest is what the demo plays with: the real server on a stepped clock, a database of
its own that is thrown away, and nobody is sent anything.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import replace
from datetime import datetime, timedelta
from zoneinfo import ZoneInfo

from demo_event.play import Script, Step, StoryError
from server.api.building import Built, build
from server.event import dump_event
from server.event.model import Goal, PartKind, Point, ReporterKind, Runner
from server.plan.timetable import Row

LEAD = timedelta(hours=24)
"""The clock begins the day before, so that the test alarm and the first leave-bys come as they would."""
SILENCE = timedelta(hours=14)
"""So long the rehearsal goes on after the last planned arrival of somebody who is not heard of any more."""


def script(text: str, files: dict[str, bytes], slower: float = 1.0, stops_after: str | None = None) -> Script:
    """The event as it would be played. slower: her times are so many times the plan's, from the start on.

    stops_after: id of the last point anything is heard from. Raises StoryError for a point that no course has.
    """
    pace = "as planned" if slower == 1.0 else f"at {100 * slower:.0f}% of the planned times"
    end = f", and is not heard of after {stops_after}" if stops_after else ""
    return Script(
        dump_event(replace(build(text, files).event, exercise=True)),
        files,
        lambda built: steps(built, slower, stops_after),
        f"a rehearsal, {pace}{end}. Nobody is sent anything. Test alarm and leave-nows are answered, all else stays open.",
        reporter="reported",
        lead=LEAD,
        answers=True,
    )


def steps(built: Built, slower: float, stops_after: str | None) -> tuple[Step, ...]:
    """In and out of every point that anybody reports from, in order of time; of every point where nobody is said to."""
    event = built.event
    found: list[Step] = []
    known = {p.id for c in event.courses for p in c.points}
    if stops_after is not None and stops_after not in known:
        raise StoryError(
            f"--stops-after: there is no point '{stops_after}'. Use one of: {', '.join(sorted(known))}."
        )
    for runner in event.runners:
        by = next(
            (p.person for p in event.parts if p.kind is PartKind.RUNNER and p.runner == runner.id),
            next((p.person for p in event.parts if p.kind is PartKind.ORGANISER), event.people[0].id),
        )
        rows = built.timetables[runner.id].rows
        points = {p.id: p for p in event.course_of(runner.id).points}
        reported = {
            i for i in points if any(r.by is not ReporterKind.NOBODY for r in points[i].reports)
        } or set(points)
        for row, comes, goes in _moments(runner, rows, points, slower):
            first, last = row is rows[0], row is rows[-1]
            if row.point in reported or first or last:
                if not first:
                    found.append(_post(comes, by, runner.id, "in", row.point))
                if not last:
                    found.append(_post(goes, by, runner.id, "out", row.point))
            if row.point == stops_after:
                break
        if stops_after is not None:
            over = runner.start + slower * rows[-1].arrive[Goal.B] + SILENCE
            found.append(Step(over, note="The rehearsal ends here."))
    found.sort(key=lambda s: s.at)
    begins = event.starts.astimezone(ZoneInfo(event.time_zone))
    return (Step(found[0].at, note=f"The start: {begins:%A %H:%M}."), *found)


def _moments(
    runner: Runner, rows: Sequence[Row], points: Mapping[str, Point], slower: float
) -> Iterator[tuple[Row, datetime, datetime]]:
    """Each row with when she comes and goes: from her own start, the pace scaled, the night between two stages not. Who
    comes in after the next stage has begun sets off at once."""
    begun, before = runner.start, timedelta(0)
    for row in rows:
        comes = begun + slower * (row.arrive[Goal.B] - before)
        stage = points[row.point].next_stage
        if stage is None:
            yield row, comes, begun + slower * (row.leave[Goal.B] - before)
            continue
        begun, before = max(stage, comes), stage - runner.start
        yield row, comes, begun


def _post(at: datetime, by: str, runner: str, kind: str, point: str) -> Step:
    return Step(at, who=by, post={"kind": kind, "point": point, "runner": runner})
