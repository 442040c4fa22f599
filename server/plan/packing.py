"""Where each thing travels, what of the race's required kit is in which list, and what is to be done before the race."""

from __future__ import annotations

import re
from collections.abc import Iterable, Iterator, Sequence
from dataclasses import dataclass
from datetime import date, timedelta
from typing import Final
from zoneinfo import ZoneInfo

from rapidfuzz import fuzz

from server.course import Course
from server.event.model import Event, KitItem, Prepare
from server.plan.kit import (
    KitNeed,
    handed_over,
    is_for,
    is_pair,
    is_spare,
    kit_told,
    left_with,
    runs_on_batteries,
)
from server.plan.movements.trips import car_of
from server.plan.notes import PlanDoubt, note
from server.plan.timetable import Timetable

BEFORE: Final = {Prepare.BUY: 14, Prepare.TEST: 7, Prepare.CHARGE: 1}
"""How many days before the start each is to be done (own choice: what was bought can still be tried, what fails be bought
anew)."""
LIKE: Final = 85.0
"""Every word of a required thing has one at least so like it (0..100) in the listed thing (own choice)."""


@dataclass(frozen=True, slots=True)
class Packed:
    """A thing and the point it is for ('' = from the start)."""

    item: KitItem
    point: str


@dataclass(frozen=True, slots=True)
class Load:
    """What goes into one of them: on her (`bag` and `car` ''), the drop bag of a point, or a car."""

    bag: str
    car: str
    things: tuple[Packed, ...]

    @property
    def grams(self) -> float:
        """What is known to weigh something, together."""
        return sum(p.item.grams or 0.0 for p in self.things)

    @property
    def unweighed(self) -> int:
        """How many things nothing is said of."""
        return sum(p.item.grams is None for p in self.things)


@dataclass(frozen=True, slots=True)
class Required:
    """A thing the race asks for: by which of her things it is met, and from which point on ('' = the start). `thing` None:
    it is in no list."""

    name: str
    thing: str | None = None
    point: str = ""


@dataclass(frozen=True, slots=True)
class ToDo:
    """What is to be bought, charged or tested, by when."""

    what: Prepare
    by: date
    things: tuple[str, ...]


def loads(event: Event, runner_id: str) -> tuple[Load, ...]:
    """Her pack, each drop bag, each car, in this order; a load with nothing in it is left out."""
    runner = event.runner(runner_id)
    found = [Load("", "", tuple(Packed(k, "") for k in runner.carries))]
    found += [Load(b.point, "", tuple(Packed(k, b.point) for k in b.kit)) for b in runner.drop_bags]
    cars: dict[str, list[Packed]] = {}
    for m in event.meetings:
        for k in m.kit if m.runner == runner_id else ():
            if not k.take_back:
                cars.setdefault(k.car or car_of(event, m), []).append(Packed(k, m.point))
    found += [Load("", car, tuple(things)) for car, things in cars.items()]
    return tuple(x for x in found if x.things)


def required(event: Event, runner_id: str) -> tuple[Required, ...]:
    """Each thing of the race's list, met by the first of hers that is like it; two torches by the second."""
    had = [(h.point, k.name) for h in handed_over(event, runner_id) for k in h.things]
    return tuple(_met(name, had) for name in event.rules.required_kit)


def _met(name: str, had: Sequence[tuple[str, str]]) -> Required:
    wanted = _words(name)
    needs = () if is_spare(name) else tuple(n for n in KitNeed if is_for(n, name))
    lacking = 2 if KitNeed.TORCH in needs and is_pair(name) else 1
    for point, thing in had:
        if is_for(KitNeed.TORCH, name) and not is_for(KitNeed.TORCH, thing):
            continue  # a torch's battery has the same words and is none
        listed = _words(thing)
        named = all(any(fuzz.ratio(w, x) >= LIKE for x in listed) for w in wanted)
        lacking -= any(is_for(n, thing) for n in needs)
        if named or lacking == 0:
            return Required(name, thing, point)
    return Required(name)


def _words(name: str) -> list[str]:
    return re.findall(r"\w+", name.casefold())


def kit_wrong(event: Event, timetable: Timetable, course: Course) -> tuple[PlanDoubt, ...]:
    """All that is wrong with her kit: what does not reach her in time or does not last, and what of the race's list she
    has not got, or not from the start."""
    who = timetable.runner
    return (*kit_told(event, timetable, course), *_required_told(event, who), *_never_had(event, who))


def _never_had(event: Event, runner_id: str) -> Iterator[PlanDoubt]:
    """What crew are to take from her that she has not got there. Socks that she wears stand in no list, so only what some
    list names, or a torch or a layer, is missed."""
    lists = handed_over(event, runner_id)
    named = [("", k.name) for h in lists for k in h.things]
    mine: list[KitItem] = []
    for h in lists:
        given = [k for other in lists if other.point == h.point for k in other.things]
        for t in h.taken:
            had = [("", k.name) for k in (*mine, *given)]
            listed = any(is_for(n, t.name) for n in KitNeed) or runs_on_batteries(t.name)
            sought = listed or _met(t.name, named).thing is not None
            if sought and _met(t.name, had).thing is None:
                place = event.course_of(runner_id).point(h.point).name
                about = {"thing": t.name, "runner": event.runner(runner_id).name, "place": place}
                yield PlanDoubt(note("kit-taken-none", **about), note("kit-do-taken", thing=t.name))
        mine = left_with(mine, h.taken) + list(h.things)


def _required_told(event: Event, runner_id: str) -> Iterator[PlanDoubt]:
    name, course = event.runner(runner_id).name, event.course_of(runner_id)
    for r in required(event, runner_id):
        remedy = note("kit-do-required", thing=r.name)
        if r.thing is None:
            yield PlanDoubt(note("kit-required", runner=name, thing=r.name), remedy)
        elif r.point:
            yield PlanDoubt(
                note("kit-required-late", runner=name, thing=r.name, place=course.point(r.point).name), remedy
            )
        taken = _taken(event, runner_id, r.name)
        if taken:
            place = course.point(taken).name
            yield PlanDoubt(
                note("kit-required-taken", runner=name, thing=r.name, place=place),
                note("kit-do-keep", thing=r.name),
            )


def _taken(event: Event, runner_id: str, name: str) -> str:
    """The first point, before the finish, at which crew take from her what she had of a required thing; '' for none."""
    mine: list[KitItem] = []
    for h in handed_over(event, runner_id):
        left = left_with(mine, h.taken) + list(h.things)
        if (
            _meets(name, mine)
            and not _meets(name, left)
            and h.point != event.course_of(runner_id).points[-1].id
        ):
            return h.point
        mine = left
    return ""


def _meets(name: str, things: Sequence[KitItem]) -> bool:
    """Whether one of these is the required thing; a spare is it only where a spare is asked for."""
    had = [("", k.name) for k in things if is_spare(name) or not is_spare(k.name)]
    return _met(name, had).thing is not None


def to_do(event: Event, runner_id: str) -> tuple[ToDo, ...]:
    """What is to be done before the race, the earliest first. What runs on batteries is tested and charged unasked; what
    she eats is bought."""
    runner = event.runner(runner_id)
    items = [p.item for load in loads(event, runner_id) for p in load.things]
    eaten = [e.name for f in runner.fuel for e in f.eats]
    start = runner.start.astimezone(ZoneInfo(event.time_zone)).date()
    found = []
    for what, days in sorted(BEFORE.items(), key=lambda x: -x[1]):
        names = dict.fromkeys((*_asked(items, what), *(eaten if what is Prepare.BUY else ())))
        if names:
            found.append(ToDo(what, start - timedelta(days=days), tuple(names)))
    return tuple(found)


def _asked(items: Iterable[KitItem], what: Prepare) -> Iterator[str]:
    for k in items:
        if what in k.prepare or (what is not Prepare.BUY and runs_on_batteries(k.name)):
            yield k.name
