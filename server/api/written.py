"""The free text of an event file, line by line, for one person: what each part may see of it."""

from __future__ import annotations

from collections.abc import Collection, Iterable, Iterator, Sequence

from server.api.who_may import Call, May, may
from server.conversation.telling.answer import Written
from server.event.model import Event, KitItem, MeetingPlan, Part, Runner

RUNNERS_MAX = 4
"""Of so many runners at most the lines are gathered; whoever has more asks about the race (own choice)."""


def written(event: Event, mine: Sequence[Part]) -> tuple[Written, ...]:
    """Every line that somebody with these parts may see, those of the race first; each once."""

    def allowed(call: Call, runner: str | None = None) -> bool:
        return may(mine, call, runner) is May.YES

    her = [r for r in event.runners if any(p.runner in (None, r.id) for p in mine)][:RUNNERS_MAX]
    plan = any(allowed(Call.PLAN, r.id) for r in her)
    lines = [*_of_the_race(event)]
    lines += _of_the_points(event, her) if plan else ()
    lines += _of_the_crew(event, her) if allowed(Call.BOARD) else ()
    for r in her:
        if allowed(Call.KIT, r.id) and allowed(Call.NEXT, r.id):
            lines += _of_her_meetings(event, r)
        if allowed(Call.CARDS, r.id):
            lines += _of_her(event, r)
    return tuple(dict.fromkeys(x for x in lines if x.text or x.start is not None))


def _of_the_race(event: Event) -> Iterator[Written]:
    yield Written("rule", event.rules.note)
    yield Written("must", ", ".join(event.rules.required_kit))
    yield Written("transport", event.transport)


def _of_the_points(event: Event, her: Iterable[Runner]) -> Iterator[Written]:
    for course in dict.fromkeys(event.course_of(r.id) for r in her):
        for p in course.points:
            if p.access is not None:
                yield Written("parking", p.access.parking, p.id, p.name)
                yield Written("permit", p.access.permit, p.id, p.name)
            yield Written("note", p.note, p.id, p.name)
            yield Written("transport", p.transport, p.id, p.name)
        for s in course.stretches:
            yield Written("surface", s.surface, name=s.name)
            yield Written("escape", s.escape_route, name=s.name)


def _of_the_crew(event: Event, her: Collection[Runner]) -> Iterator[Written]:
    names = {p.id: p.name for c in event.courses for p in c.points}
    ids = {r.id for r in her}
    for part in (p for p in event.parts if p.runner is None or p.runner in ids):
        who = event.person(part.person).name
        ends = [names.get(x, x) for x in (part.pace_from, part.pace_to) if x]
        yield Written("pace", " – ".join(ends), part.pace_from or "", who, part.person)
        for s in part.sleeps:
            yield Written("sleep", "", name=who, person=part.person, start=s.start, end=s.end)
    b = event.brief
    for kind, texts in (("travel", b.travel), ("beds", b.beds), ("entry", b.entry), ("also", b.also)):
        yield from (Written(kind, text) for text in texts)


def _of_her_meetings(event: Event, r: Runner) -> Iterator[Written]:
    points = {p.id: p.name for p in event.course_of(r.id).points}
    for m in event.meetings:
        if m.runner in (None, "", r.id):
            place, name = m.point, points.get(m.point, m.point)
            yield Written("missed", m.if_missed, place, name)
            yield Written("kit", _items(m.kit), place, _with_crew(event, name, m))
            yield Written("food", m.food, place, name)
    for d in event.drives:
        known = points.get(d.to_place, "")
        yield Written("way", d.note, d.to_place if known else "", known or d.to_place)
    for bag in r.drop_bags:
        yield Written("bag", _items(bag.kit), bag.point, points.get(bag.point, bag.point))


def _of_her(event: Event, r: Runner) -> Iterator[Written]:
    points = {p.id: p.name for p in event.course_of(r.id).points}
    yield Written("carries", _items(r.carries), name=r.name)
    for f in r.fuel:
        yield Written("fuel", f.words, f.from_point, points.get(f.from_point, f.from_point))
    for p in r.prompts:
        yield Written("prompt", p.words, name=p.when)
    yield Written("hear", "; ".join(r.wants_to_hear), name=r.name)
    yield Written("not_hear", "; ".join(r.not_to_hear), name=r.name)
    for c in event.cards:
        yield Written("card", "; ".join((*c.try_first, *([c.call] if c.call else []))), name=c.trouble)


def _items(kit: Collection[KitItem]) -> str:
    return ", ".join(i.name for i in kit if not i.take_back)


def _with_crew(event: Event, place: str, m: MeetingPlan) -> str:
    names = [p.name for p in event.people if p.id in m.crew]
    return f"{place} ({', '.join(names)})" if names else place
