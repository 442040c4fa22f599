"""What the event file says besides meetings, in words: the rules as far as it has them, the start, the clock that times are
of, the points to come, what she wears."""

from __future__ import annotations

from datetime import datetime

from server.conversation.telling import measures
from server.conversation.telling.answer import EventHere, ForecastAnswer, RunnerHere
from server.conversation.telling.answers import freshness, going_words, point_in, point_line
from server.conversation.telling.say import Say, lines
from server.event.model import Rules
from server.facts.state import Going

__all__ = ["say_clock", "say_course", "say_looks", "say_next_bit", "say_rules", "say_start"]


def say_rules(say: Say, event: EventHere) -> str:
    """The rules that the file has, the note first; that it has no others, and who knows them."""
    control = {"name": event.race_control.name, "phone": event.race_control.phone}
    r: Rules = event.rules
    known = [
        say.s("rule-note", note=r.note) if r.note else "",
        say.s("rule-points") if r.outside_help_only_at_crew_points else "",
        say.s("rule-cars", count=r.vehicles_max) if r.vehicles_max is not None else "",
        say.s("rule-people", count=r.crew_people_max) if r.crew_people_max is not None else "",
        say.s("rule-pacers", count=r.pacers_at_once, km=say.km(r.pacer_from_km))
        if r.pacer_from_km is not None
        else "",
        say.s("rule-not-before", when=say.when(r.crew_not_before, day=True)) if r.crew_not_before else "",
    ]
    if not any(known[2:]) and not r.note:
        return say.s("rules-unknown", **control)
    return lines(say.s("rules-known", **control), *known)


def say_start(say: Say, her: RunnerHere, told: ForecastAnswer) -> str:
    """When she starts, or started; that a delay would be known here if the organiser had reported one."""
    fresh = told.fresh
    if fresh.going != "before the start" and fresh.started is not None:
        return lines(
            say.s("start-was", runner=her.name, when=say.when(fresh.started)),
            freshness(say, fresh, her.name, sharper=False),
        )
    held = fresh.held or fresh.held_until is not None
    first = say.s("start-at", runner=her.name, when=say.when(her.start))
    return lines(first, freshness(say, fresh, her.name, sharper=False) if held else say.s("start-no-change"))


def say_clock(say: Say, now: datetime) -> str:
    """By whose clock times are told, and what it says now."""
    return lines(say.s("clock-now", now=say.when(now)), say.s("clock-yours"))


def say_course(say: Say, told: ForecastAnswer, point: str | None, *, after: bool, hills: bool) -> str:
    """How far it is to a point, or the points still to come with where they are; `after`: those after the point;
    `hills`: say that climbs are not counted."""
    none = say.s("course-hills") if hills else ""
    if Going(told.fresh.going).race_over:
        ended = say.s("where-ended", runner=told.runner_name, going=going_words(say, told.fresh.going))
        return lines(ended, freshness(say, told.fresh, told.runner_name, sharper=False))
    ahead = [p for p in told.points if p.arrived is None and p.left is None and p.window is not None]
    p = point_in(told, point)
    if p is None or not ahead:
        return lines(none, freshness(say, told.fresh, told.runner_name))
    far = ""
    if told.where is not None and told.where.likely_km < p.km:
        left = measures.distance(p.km - told.where.likely_km, say.reader, decimals=0)
        far = say.s("how-far", place=p.name, distance=left, km=say.km(p.km))
    if point is not None and after:
        ids = [q.point for q in told.points]
        later = [q for q in ahead if ids.index(q.point) > ids.index(point)]
        ahead = later or ahead
    elif point is not None:
        return lines(far or none, point_line(say, told.runner_name, p), none if far else "")
    row = ", ".join(say.s("course-point", place=q.name, km=say.km(q.km)) for q in ahead)
    return lines(say.s("course-ahead", points=row), far, none)


def say_next_bit(say: Say, told: ForecastAnswer) -> str:
    """The next point and how far it is from the last she is known at; where none is to come, where she is."""
    ahead = [p for p in told.points if p.arrived is None and p.left is None and p.window is not None]
    if not ahead or Going(told.fresh.going).race_over:
        return say_course(say, told, None, after=False, hills=False)
    p = ahead[0]
    known = [q for q in told.points if q.arrived is not None or q.left is not None] or [*told.points[:1]]
    left = measures.distance(max(p.km - known[-1].km, 0.0), say.reader, decimals=0)
    return say.s("next-bit", place=p.name, distance=left, last=known[-1].name)


def say_looks(say: Say, her: RunnerHere) -> str:
    """What she wears and carries for light, to know her by."""
    if not her.clothing and not her.torch:
        return say.s("looks-none", runner=her.name, bib=her.bib or "none")
    return lines(
        say.s("looks", runner=her.name, bib=her.bib or "none", clothing=her.clothing or "none"),
        say.s("looks-torch", torch=her.torch) if her.torch else "",
    )
