"""Whether her recordings are of the kind the course asks for, in words: what there is, what is missing, by when."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from datetime import timedelta

from babel.dates import format_date

from server.conversation.telling.say import Say
from server.course import Course
from server.event.model import Event
from server.plan.ready import Against, ReadyPart, past, ready
from server.plan.recordings import read_recording
from server.plan.timetable import Timetable
from server.sentences import locale_of


def ready_lines(
    say: Say, event: Event, table: Timetable, course: Course, files: Mapping[str, bytes]
) -> tuple[str, ...]:
    """Of one runner, from the files beside the event file; the check has read her recordings once, so that all can be."""
    names = [n for n in event.runner(table.runner).own_runs if n in files]
    recordings = [read_recording(files[n], n) for n in names]
    return say_ready(say, ready(event, table, course, recordings), len(recordings))


def say_ready(say: Say, found: Sequence[Against], recordings: int) -> tuple[str, ...]:
    """First what is missing, then what is enough, then what all this rests on."""
    if not recordings:
        return (say.s("ready-no-runs"),)
    missing = [a for a in found if a.by is not None]
    enough = [a for a in found if a.by is None]
    head = say.s("ready-missing", count=len(missing)) if missing else say.s("ready-enough")
    lines = (*(_line(say, a) for a in missing), *(_line(say, a) for a in enough))
    return (head, *lines, say.s("ready-practice"))


def _line(say: Say, a: Against) -> str:
    course, had, asked = (_figure(say, a.part, x) for x in (a.course, a.had, a.asked))
    first = say.s(f"ready-{a.part.value}", course=course, had=had, file=a.file or "none")
    if a.by is None:
        return say.s("ready-is-enough", what=first)
    day = format_date(a.by, format="EEE d MMMM", locale=locale_of(say.reader.language))
    key = "ready-too-late" if past(a.by, say.now) else "ready-by"
    return say.s(key, what=first, asked=asked, by=day)


def _figure(say: Say, part: ReadyPart, value: float) -> str:
    if part in (ReadyPart.FEET, ReadyPart.DARK):
        return say.length(timedelta(minutes=round(value * 60)))
    return f"{value:.0f}"
