"""What the event file names of a runner's pace, read: her own runs, races she ran, others' results of this race.

The bytes are handed in; every file that is wrong is told, so that a person mends all of them at once.
"""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass, replace
from datetime import timedelta
from typing import Final

from server.course import Course
from server.event.model import Event, Runner
from server.plan.errors import PlanError
from server.plan.learn import RunSteps, learn, steps_of
from server.plan.likely import Estimate
from server.plan.notes import note, saying
from server.plan.own import SPREAD, OwnPace, Results
from server.plan.pace import Limits
from server.plan.past import from_past_race, read_results
from server.plan.recordings import Recording, read_recording
from server.sentences import say

TWICE: Final = timedelta(minutes=2)
"""Two runs of one person overlap by no more than a device's clock may be wrong (own choice)."""
RESULTS = saying("source-results-any")
"""Stands for results that have not been looked at near a target yet."""


@dataclass(frozen=True, slots=True, eq=False)
class Evidence:
    """For `make_timetable`: her own pace, estimates of her whole time; and what was wrong with the files.

    The `field` of each mistake is the event file's, as in `runners.maren.own_runs`; its `file` and `line` say where.
    """

    own: OwnPace | None
    estimates: tuple[Estimate, ...]
    wrong: tuple[PlanError, ...]


def evidence_of(event: Event, runner_id: str, course: Course, files: Mapping[str, bytes]) -> Evidence:
    """Everything the event file says of a runner's pace. `files` by the names that the event file gives them.

    Her limits come from her own runs, the shape of the race from past results; an estimate from each past race.
    """
    runner, wrong = event.runner(runner_id), []
    estimates: list[Estimate] = []
    last = event.course_of(runner_id).points[-1].km or course.length_km
    climb = course.climb(0.0, last)
    measured, stated = climb.up_m if climb else 0.0, event.course_of(runner_id).stated_ascent_m
    for race in runner.past_races:
        try:
            # A race's ascent is the one its organiser states: like is compared with like where this one's is known too.
            found = from_past_race(race, last, measured if stated is None else stated)
            if stated is None and climb and race.ascent_m > 0:
                unlike = note("past-ascent", name=race.name, had_m=race.ascent_m, ours_m=measured)
                found = replace(found, notes=(*found.notes, unlike))
            estimates.append(found)
        except PlanError as error:
            wrong.append(_in_field(error, f"runners.{runner_id}.past_race"))
    own, own_wrong = _own_runs(runner, files)
    results, results_wrong = _results(event, runner_id, files)
    wrong += own_wrong + results_wrong
    return Evidence(_joined(own, results), tuple(estimates), tuple(wrong))


def _joined(own: OwnPace | None, results: Results | None) -> OwnPace | None:
    """Her own limits and powers with the shape of the field."""
    if results is None:
        return own
    spread = SPREAD["past results"]
    if own is None:
        return OwnPace(Limits(), "past results", spread, RESULTS, results=results)
    return replace(own, quality="past results", spread=min(spread, own.spread), results=results)


def _own_runs(runner: Runner, files: Mapping[str, bytes]) -> tuple[OwnPace | None, list[PlanError]]:
    field, wrong = f"runners.{runner.id}.own_runs", []
    steps: list[RunSteps] = []
    recordings: list[Recording] = []
    for name in runner.own_runs:
        try:
            recording = read_recording(_named(files, name), name)
            _refuse_twice(recordings, recording)
            recordings.append(recording)
            steps.append(steps_of(recording))
        except PlanError as error:
            wrong.append(_in_field(error, field))
    if wrong or not runner.own_runs:
        return None, wrong
    try:
        return learn(steps).own_pace(), []
    except PlanError as error:
        return None, [_in_field(error, field)]


def _refuse_twice(before: Sequence[Recording], new: Recording) -> None:
    """Two recordings of the same hours are one run on two devices, which would count twice."""
    ends = new.started + timedelta(seconds=float(new.elapsed_s[-1]))
    for other in before:
        until = other.started + timedelta(seconds=float(other.elapsed_s[-1]))
        if min(ends, until) - max(new.started, other.started) > TWICE:
            raise PlanError(
                say("wrong-recorded-same-time-run-would", file=other.file),
                field=new.file,
                file=new.file,
                remedy=say("do-keep-better-two-correct-clock"),
            )


def _results(
    event: Event, runner_id: str, files: Mapping[str, bytes]
) -> tuple[Results | None, list[PlanError]]:
    definition = event.course_of(runner_id)
    if not definition.results:
        return None, []
    try:
        text = _text(_named(files, definition.results), definition.results)
        return Results(*read_results(text, definition.points, definition.results)), []
    except PlanError as error:
        return None, [_in_field(error, "results")]


def _named(files: Mapping[str, bytes], name: str) -> bytes:
    if name not in files:
        raise PlanError(
            say("wrong-no-file", file=name), field=name, remedy=say("do-put-beside-event-file-correct")
        )
    return files[name]


def _text(data: bytes, file: str) -> str:
    """CSV as spreadsheets save it: UTF-8, perhaps with its mark, semicolons where a comma is the decimal sign."""
    try:
        text = data.decode("utf-8-sig")
    except UnicodeDecodeError as error:
        line = data[: error.start].count(b"\n") + 1
        raise PlanError(
            say("wrong-not-utf-8-text-line", line=line),
            field=file,
            remedy=say("do-save-csv-utf-8"),
            file=file,
            line=line,
        ) from error
    head = text.split("\n", 1)[0]
    return text.replace(";", ",") if head.count(";") > head.count(",") else text


def _in_field(error: PlanError, field: str) -> PlanError:
    return PlanError(error.what, field=field, remedy=error.remedy, file=error.file, line=error.line)
