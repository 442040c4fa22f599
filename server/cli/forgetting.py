"""Takes a person out of the text of an event file, so that a deletion leaves no name behind."""

from __future__ import annotations

from dataclasses import replace
from datetime import timedelta

from server.event import dump_event, parse_event
from server.event.model import Runner, Target


def without_person(text: str, person: str) -> str:
    """The event file with that person's name, numbers, addresses, own runs and races gone; their id and parts stay,
    as other lines speak of them, but no alarm climbs to somebody who can't be reached. A runner whose target came from
    her runs keeps the race's limit for one (a day where there is none). A text that can't be read comes back empty:
    better no file than a name kept."""
    event = parse_event(text).event
    if event is None:
        return ""
    people = tuple(
        replace(p, name=p.id, phone="", email="", webhook="") if p.id == person else p for p in event.people
    )
    runners = tuple(
        _without_herself(r, event.limit or timedelta(hours=24)) if r.person == person else r
        for r in event.runners
    )
    parts = tuple(
        replace(p, ladder=None, can_telephone=False) if p.person == person else p for p in event.parts
    )
    return dump_event(replace(event, people=people, runners=runners, parts=parts))


def _without_herself(runner: Runner, limit: timedelta) -> Runner:
    target = Target(finish=limit) if runner.target == Target() else runner.target
    plain = replace(runner, name=runner.id, bib="", clothing="", torch="", medical_note="")
    return replace(plain, target=target, own_runs=(), past_races=())
