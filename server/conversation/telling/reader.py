"""Who reads: language, clocks and units, so that each person gets their own."""

from __future__ import annotations

from dataclasses import dataclass

from server.event.model import Event, Person
from server.sentences import language_of


@dataclass(frozen=True, slots=True)
class Reader:
    """One reader. `time_zone` is where they are, `event_time_zone` where the runner is (IANA names)."""

    language: str
    time_zone: str
    event_time_zone: str
    miles: bool = False
    clock_12h: bool = False


def reader_for(person: Person, event_time_zone: str) -> Reader:
    """The reader a person is; without a zone of their own they are taken to be at the event."""
    return Reader(
        language=language_of(person.language),
        time_zone=person.time_zone or event_time_zone,
        event_time_zone=event_time_zone,
        miles=person.miles,
        clock_12h=person.clock_12h,
    )


def reader_in(event: Event, person_id: str) -> Reader:
    """The reader a person of this event is; somebody unknown reads the fallback at the event."""
    known = next((p for p in event.people if p.id == person_id), None)
    return reader_for(known or Person(id=person_id, name=person_id), event.time_zone)
