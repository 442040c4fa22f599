"""Takes a person out of the text of an event file, so that a deletion leaves no name behind."""

from __future__ import annotations

from dataclasses import replace

from server.event import dump_event, parse_event


def without_person(text: str, person: str) -> str:
    """The event file with that person's name, numbers and addresses gone; their id and parts stay, as other
    lines speak of them, but no alarm climbs to somebody who can't be reached. A text that can't be read comes
    back empty: better no file than a name kept."""
    event = parse_event(text).event
    if event is None:
        return ""
    people = tuple(
        replace(p, name=p.id, phone="", email="", webhook="") if p.id == person else p for p in event.people
    )
    runners = tuple(
        replace(r, name=r.id, bib="", clothing="", torch="", medical_note="") if r.person == person else r
        for r in event.runners
    )
    parts = tuple(
        replace(p, ladder=None, can_telephone=False) if p.person == person else p for p in event.parts
    )
    return dump_event(replace(event, people=people, runners=runners, parts=parts))
