"""The names that people know for what movements are about: persons, cars, places, points."""

from __future__ import annotations

from server.event.model import Event

ON_THEIR_OWN = "~"
"""Before the id of somebody for whom no car is said: the car of their own."""
NOWHERE = "none"
"""The word in a sentence's values where a place is not known."""


def person_name(event: Event, person: str) -> str:
    """A person's name; the id of somebody unknown."""
    return next((p.name for p in event.people if p.id == person), person)


def car_name(event: Event, key: str) -> str:
    """A car's name; for a car that nobody named that of its first person."""
    if key.startswith(ON_THEIR_OWN):
        return person_name(event, key.removeprefix(ON_THEIR_OWN))
    return next((c.name for c in event.cars if c.id == key), key)


def place_name(event: Event, place: str | None) -> str:
    """A point's or place's name, a free place as it was written; `NOWHERE` where it is not known."""
    if place is None:
        return NOWHERE
    names = {p.id: p.name for p in event.places if p.name}
    names |= {p.id: p.name for c in event.courses for p in c.points}
    return names.get(place, place)
