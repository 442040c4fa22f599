"""An event back to the text of an event file: `dump_event`. What it writes is read back as the same event."""

from __future__ import annotations

from typing import Any

import tomli_w

from server.event.crew import Quiet
from server.event.model import Event, Part, PartKind, Person, Runner
from server.event.parse_state import DEFAULT_COURSE
from server.event.table import write_table

__all__ = ["dump_event"]

Written = dict[str, Any]


def dump_event(event: Event) -> str:
    """TOML text; `parse_event` of it gives an equal event, but for `version`, which is not in the file.

    Lengths must be whole seconds (paces: microseconds), as they are in every event that was read.
    """
    zone = event.time_zone
    many = [c.id for c in event.courses] != [DEFAULT_COURSE]
    courses = [write_table(c, zone) for c in event.courses]
    head = write_table(event, zone)
    if not many:
        head |= {k: x for k, x in courses[0].items() if k != "id"}
    tables = {
        "event": head,
        "race_control": write_table(event.race_control, zone) if event.race_control.phone else {},
        "rescue": write_table(event.rescue, zone) if event.rescue is not None else {},
        **{name: write_table(getattr(event, name), zone) for name in ("rules", "alarm", "driving", "brief")},
        "courses": courses if many else [],
        **{
            name: [
                ({"course": c.id} if many else {}) | write_table(x, zone)
                for c in event.courses
                for x in getattr(c, name)
            ]
            for name in ("points", "stretches")
        },
        "runners": [_runner(r, event, many) for r in event.runners],
        "people": [] if _nobody_but_runners(event) else [_person(p, event) for p in event.people],
        **{
            name: [write_table(x, zone) for x in getattr(event, name)]
            for name in ("places", "cars", "drives", "meetings", "shares", "weather")
        },
        "if_then": [write_table(c, zone) for c in event.cards],
    }
    return tomli_w.dumps({name: x for name, x in tables.items() if x})


def _nobody_but_runners(event: Event) -> bool:
    """A file without [[people]], where each runner stands for herself: it stays one. Written out, these people
    would be asked for a safety contact."""
    people = tuple(Person(r.person, r.name) for r in event.runners)
    parts = tuple(Part(r.person, PartKind.RUNNER, r.id) for r in event.runners)
    own = all(r.person == r.id for r in event.runners)
    return own and event.people == people and event.parts == parts


def _runner(r: Runner, event: Event, many: bool) -> Written:
    """Without what follows from the rest of the file. `many`: there are several courses."""
    table = write_table(r, event.time_zone)
    follows = {
        "person": r.person == r.id,
        "course": not many,
        "start": not r.wave and r.start == event.starts,
        "target": not table["target"],
    }
    return {k: x for k, x in table.items() if not follows.get(k)}


def _person(p: Person, event: Event) -> Written:
    zone = event.time_zone
    quiet = write_table(Quiet(p.quiet_from, p.quiet_to), zone)
    parts = [write_table(x, zone) for x in event.parts_of(p.id)]
    return write_table(p, zone) | ({"quiet": quiet} if quiet else {}) | ({"parts": parts} if parts else {})
