"""What people want told: to whom words go, who wants no news for a while. Facts about people, none about a runner."""

from __future__ import annotations

from datetime import datetime

from server.event.model import Event, PartKind
from server.facts.entry import EVERYBODY, Entry, Kind
from server.facts.state import RaceState

__all__ = ["addressees", "help_open", "quiet_until", "reminders"]

_ALL = frozenset({PartKind.RUNNER, PartKind.CREW, PartKind.PACER, PartKind.SAFETY_CONTACT})
_HEAR = _ALL | {PartKind.ORGANISER, PartKind.VOLUNTEER}
_OF_VOLUNTEERS = frozenset({PartKind.CREW, PartKind.PACER})
"""Whoever stands at a point may tell her crew something; her own ear is not theirs."""


def addressees(entry: Entry, event: Event, race: RaceState) -> tuple[str, ...]:
    """Ids of those whom the words of a request go to, each once, in the event's order; never whoever wrote it. For all:
    those of the writer's own runners; of a meeting: those who go there, and she. A picture goes to the organisers too
    while a call for help is open. () where nobody may be told."""
    parts = {p.kind for p in event.parts_of(entry.by)}
    runners = {p.runner for p in event.parts_of(entry.by)}
    hear = _HEAR if parts - {PartKind.VOLUNTEER, PartKind.SUPPORTER} else _OF_VOLUNTEERS
    if parts <= {PartKind.SUPPORTER}:
        return ()
    if entry.kind is Kind.MEET_ELSEWHERE and entry.about is not None:
        found = [
            who
            for m in event.meetings
            if m.id == entry.about
            for who in (*m.crew, m.pacer_joins, m.pacer_leaves, event.runner(m.runner).person)
        ]
    elif entry.to in (None, EVERYBODY):
        wide = _ALL | ({PartKind.VOLUNTEER} if PartKind.ORGANISER in parts else frozenset())
        if entry.picture and help_open(entry, event, race):
            wide, hear = wide | {PartKind.ORGANISER}, hear | {PartKind.ORGANISER}
        found = [
            p.person
            for p in event.parts
            if p.kind in wide & hear
            if None in runners or p.runner is None or p.runner in runners
        ]
    else:
        found = [p.person for p in event.parts if p.person == entry.to and p.kind in hear]
    return tuple(dict.fromkeys(w for w in found if w is not None and w != entry.by))


def help_open(entry: Entry, event: Event, race: RaceState) -> bool:
    """Whether a call for help is open about a runner with whom whoever wrote it has a part."""
    runners = {p.runner for p in event.parts_of(entry.by)}
    return any(r.helps_open and (None in runners or r.runner in runners) for r in race.runners)


def quiet_until(race: RaceState, person: str, now: datetime) -> datetime | None:
    """Until when a person wants no news, by what they said last; None where they want it."""
    said = [e for e in race.requests if e.kind is Kind.QUIET and e.by == person]
    until = said[-1].until if said else None
    return until if until is not None and until > now else None


def reminders(race: RaceState, person: str, now: datetime) -> tuple[tuple[str, datetime], ...]:
    """Entry and time of each reminder a person asked for that is still to come."""
    return tuple(
        (e.id, e.until)
        for e in race.requests
        if e.kind is Kind.REMIND and e.by == person and e.until is not None and e.until > now
    )
