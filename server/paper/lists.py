"""Her lists, from the plan: fuel by section and hour, shopping, packing by bag and car, the race's required kit, what is to
be done before, who sleeps when, labels for drop bags."""

from __future__ import annotations

from collections.abc import Iterator
from datetime import timedelta
from typing import Final

from babel.dates import format_date

from server.conversation.telling import measures
from server.event.model import KitItem, Runner
from server.paper.before import BeforeStart
from server.paper.document import Block, Grid, Head, Label, Lines, Look, Page, Sheet, Ticks, page
from server.paper.meeting_facts import arrives
from server.paper.table import bag_lines, fuel_notes, to_minute
from server.paper.writing import Writing
from server.plan.fuel import EFSA, ISSN, RANGES, SODIUM_MG_PER_L, Carry, FuelTable, fuel_of
from server.plan.kit import must
from server.plan.movements.names import car_name, person_name
from server.plan.packing import Load, loads, required, to_do
from server.sentences import locale_of

FUEL = (
    "section",
    "takes-goals",
    "carbohydrate-h",
    "fluid-h",
    "sodium-h",
    "caffeine-h",
    "kcal-h",
    "bottles",
    "what",
)
FEET_FROM: Final = timedelta(minutes=10)
"""At a stop so long shoes come off (common practice, no source)."""


def lists_of(before: BeforeStart, runner: str) -> Sheet:
    """The lists of one runner, in the language she reads."""
    r = before.event.runner(runner)
    w = Writing(before, r.person, None)
    pages = (_fuel(w, r), _before_the_race(w, r), _packing(w, r), _labels(w, r))
    return Sheet(
        w.say.reader.language,
        r.name,
        before.event.name,
        w.s("paper-lists"),
        tuple(p for p in pages if p.blocks),
    )


def _table(w: Writing, r: Runner) -> FuelTable:
    return fuel_of(r, w.event.course_of(r.id).points, w.before.timetable(r.id))


def _fuel(w: Writing, r: Runner) -> Page:
    if not r.fuel:
        return page(Lines((w.s("paper-no-fuel"),)))
    carried = _table(w, r).carry
    ranges = (
        w.s(f"paper-range-{x.name.partition('_')[0]}", low=f"{x.low:g}", high=f"{x.high:g}", source=x.source)
        for x in RANGES
    )
    salt = w.s("paper-range-sodium", most=SODIUM_MG_PER_L, source=ISSN)
    awake = w.s("paper-range-caffeine", source=EFSA)
    return page(
        Head(w.s("paper-head-fuel-list")),
        Grid(
            w.heads(FUEL),
            tuple(_hourly(w, r, c) for c in carried),
            shares=(2.2, 1.1, 1.05, 1.0, 1.0, 1.0, 0.8, 1.05, 2.3),
        ),
        Lines((*fuel_notes(w.say, w.event, w.before.timetable(r.id)),), Look.FRAME),
        Head(w.s("paper-head-ranges")),
        Lines((*ranges, salt, awake), Look.SMALL),
    )


def _hourly(w: Writing, r: Runner, c: Carry) -> tuple[str, ...]:
    course = w.event.course_of(r.id)
    per_hour = ("" if a is None else f"{a:.0f}" for a in c.hourly)
    things = ", ".join(f"{count} {name}" for name, count in c.things)
    return (
        f"{course.point(c.from_point).name} – {course.point(c.to_point).name}",
        f"{to_minute(c.takes)} / {to_minute(c.takes_at_most)}",
        *per_hour,
        "" if c.bottles is None else str(c.bottles),
        "; ".join(x for x in (things, c.words) if x),
    )


def _before_the_race(w: Writing, r: Runner) -> Page:
    return page(
        Head(w.s("paper-head-to-do")),
        *(b for b in _to_do(w, r)),
        Head(w.s("paper-head-shopping")),
        Ticks((), tuple(_shopping(w, r))),
        *_required(w, r),
        Head(w.s("paper-head-sleep")),
        Lines((*sleeps(w, r), *_feet(w, r)), Look.LIST),
    )


def _to_do(w: Writing, r: Runner) -> Iterator[Block]:
    for todo in to_do(w.event, r.id):
        day = format_date(todo.by, format="EEE d MMM", locale=locale_of(w.say.reader.language))
        yield Lines((w.s(f"paper-to-{todo.what.value}", day=day),))
        yield Ticks((), todo.things)


def _shopping(w: Writing, r: Runner) -> Iterator[str]:
    """So many of each as the bags hold together, and the food of each meeting with who brings it."""
    total: dict[str, int] = {}
    for bag in _table(w, r).bags if r.fuel else ():
        for name, count in bag.things:
            total[name] = total.get(name, 0) + count
    yield from (f"{count} {name}" for name, count in total.items())
    course = w.event.course_of(r.id)
    for m in w.event.meetings:
        if m.runner == r.id and m.food:
            crew = w.say.all(person_name(w.event, p) for p in m.crew)
            yield w.s("paper-shop-food", food=m.food, place=course.point(m.point).name, crew=crew)


def _required(w: Writing, r: Runner) -> Iterator[Block]:
    found = required(w.event, r.id)
    yield Head(w.s("paper-head-required"))
    told = []
    for x in found:
        place = w.event.course_of(r.id).point(x.point).name if x.point else "none"
        thing = "same" if x.thing == x.name else x.thing or "none"
        told.append(w.s("paper-required", name=x.name, thing=thing, place=place))
    yield Ticks(tuple(told), ())


def sleeps(w: Writing, r: Runner) -> Iterator[str]:
    """Who of her people means to sleep when."""
    for p in w.event.parts:
        for s in p.sleeps if p.runner in (None, r.id) else ():
            span = {"from": w.say.when(s.start, day=True)}
            yield w.s(
                "paper-who-sleeps",
                name=person_name(w.event, p.person),
                to=w.say.when(s.end, day=True),
                **span,
            )


def _feet(w: Writing, r: Runner) -> Iterator[str]:
    table, course = w.before.timetable(r.id), w.event.course_of(r.id)
    stops = [
        w.s("paper-feet-at", place=course.point(x.point).name, when=arrives(w.before, r.id, x.point, w.say))
        for x in table.rows
        if x.stop >= FEET_FROM
    ]
    if stops:
        yield w.s("paper-feet", stops=w.say.all(stops))


def _packing(w: Writing, r: Runner) -> Page:
    eaten = bag_lines(w.say, w.event, w.before.timetable(r.id)) if r.fuel else ()
    return page(
        *(b for load in loads(w.event, r.id) for b in _load(w, r, load)),
        Head(w.s("paper-head-food-by-bag")),
        Lines(tuple(eaten), Look.LIST),
    )


def _load(w: Writing, r: Runner, load: Load) -> Iterator[Block]:
    course = w.event.course_of(r.id)
    if load.bag:
        name = w.s("paper-load-bag", place=course.point(load.bag).name)
    elif load.car:
        name = w.s("paper-load-car", car=car_name(w.event, load.car))
    else:
        name = w.s("paper-load-her", runner=r.name)
    yield Head(f"{name}{_weight(w, load)}")
    points = dict.fromkeys(p.point for p in load.things)
    for point in points:
        items = [p.item for p in load.things if p.point == point]
        if load.car and point:
            yield Lines((w.s("paper-load-for", place=course.point(point).name),))
        musts, others = (tuple(_thing(k) for k in items if must(k) is x) for x in (True, False))
        yield Ticks(musts, others)


def _thing(k: KitItem) -> str:
    more = [f"{k.hours:g} h"] if k.hours is not None else []
    more += [f"{k.grams:g} g"] if k.grams is not None else []
    return f"{k.name} ({', '.join(more)})" if more else k.name


def _weight(w: Writing, load: Load) -> str:
    if not load.grams:
        return ""
    weight = measures.weight(load.grams, w.say.reader.language)
    return w.s("paper-load-weight", weight=weight, count=load.unweighed)


def _labels(w: Writing, r: Runner) -> Page:
    """A label a drop bag, to cut out: bib and point large, as those read it who sort bags."""
    course = w.event.course_of(r.id)
    food = {b.point: b for b in _table(w, r).bags} if r.fuel else {}
    found = []
    for b in r.drop_bags:
        point = course.point(b.point)
        eaten = food.get(b.point)
        things = [k.name for k in b.kit] + [f"{n} {name}" for name, n in (eaten.things if eaten else ())]
        large = w.s("paper-label", bib=r.bib or "none", place=point.name)
        found.append(
            Label(large, (f"{r.name}, {w.event.name}", w.say.km(point.km or 0.0), "; ".join(things)))
        )
    return page(*found)
