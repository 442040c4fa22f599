"""The runner's own sheet: section by section what she carries, eats and drinks, and what is done at the stop after it."""

from __future__ import annotations

from collections.abc import Iterator
from datetime import timedelta

from server.paper.bad_moments import bad_moments
from server.paper.document import Block, Grid, Head, Lines, Look, Page, page
from server.paper.for_crew import met_block, stays
from server.paper.meeting_facts import arrives, meeting_facts
from server.paper.table import goals_line, kit_lines, to_minute
from server.paper.writing import Writing
from server.plan.fuel import Carry, fuel_of
from server.plan.movements.names import person_name

SECTIONS = ("section", "carry-eat", "at-the-stop")


def runner_pages(w: Writing) -> tuple[Page, ...]:
    """Of each race that the person runs herself the sections, which she has in her hand; then her own words and meetings."""
    mine = [r for r in w.runners if w.event.runner(r).person == w.person]
    return (
        *(page(*_sections(w, r)) for r in mine),
        page(
            *(b for r in mine for b in bad_moments(w, r)),
            *(Lines((goals_line(w.say, w.event, w.before.timetable(r)),)) for r in mine),
            *(b for r in mine for b in _meetings(w, r)),
            Lines((stays(w),), Look.SMALL),
        ),
    )


def _meetings(w: Writing, runner: str) -> Iterator[Block]:
    """When she is planned and likely there, and until when her crew wait: no way and no leave-by, which are not hers."""
    met = [met_block(w, runner, m) for m in w.before.meetings(runner)]
    yield Head(w.s("paper-head-meetings"))
    if not met:
        yield Lines((w.s("paper-no-meetings"),))
        return
    heads = (w.s("paper-point"), *(c.name for c in met[0].cells))
    rows = tuple((m.place, *("\n".join(x for x in (c.time, c.below) if x) for c in m.cells)) for m in met)
    yield Grid(heads, rows, shares=(1.6, 1.0, 0.8, 1.4, 1.0))


def _sections(w: Writing, runner: str) -> Iterator[Block]:
    table, points = w.before.timetable(runner), w.event.course_of(runner).points
    yield Lines(kit_lines(w.say, w.before, runner), Look.FRAME)
    carried = fuel_of(w.event.runner(runner), points, table).carry
    said = ["", *(c.words for c in carried)]
    rows = tuple(
        (
            _section(w, runner, c),
            _carried(w, c, c.words if c.words != before else ""),
            _stop(w, runner, c.to_point),
        )
        for c, before in zip(carried, said, strict=False)
    )
    start = w.event.runner(runner).carries
    if start:
        yield Lines((w.s("paper-from-the-start", things=w.say.things(k.name for k in start)),))
    yield Lines((" · ".join(meeting_facts(w.before, runner, table.rows[0].point, w.say, crew=False)),))
    yield Grid(w.heads(SECTIONS), rows, shares=(2.35, 2.45, 4.2))


def _section(w: Writing, runner: str, c: Carry) -> str:
    table, course = w.before.timetable(runner), w.event.course_of(runner)
    order = [r.point for r in table.rows]
    legs = table.rows[order.index(c.from_point) + 1 : order.index(c.to_point) + 1]
    ground = w.s(
        "paper-section-ground",
        km=w.say.km(sum(r.leg_km for r in legs)),
        up=f"{sum(r.leg_ascent_m for r in legs):.0f}",
        down=f"{sum(r.leg_descent_m for r in legs):.0f}",
    )
    names = (course.point(c.from_point).name, course.point(c.to_point).name)
    passed = [course.point(r.point).name for r in legs[:-1]]
    through = w.s("paper-section-through", places=w.say.all(passed)) if passed else ""
    head = f"{names[0]} – {names[1]}"
    return "\n".join(
        x
        for x in (
            head,
            w.s(
                "paper-section-in",
                when=arrives(w.before, runner, c.to_point, w.say),
                takes=to_minute(c.takes),
                most=to_minute(c.takes_at_most),
            ),
            ground,
            through,
        )
        if x
    )


def _carried(w: Writing, c: Carry, words: str) -> str:
    """What she takes along; `words`: those of her fuel plan, where it begins."""
    amounts = (
        w.s("paper-bottles-of", count=c.bottles) if c.bottles is not None else "",
        w.s("paper-bag-carbohydrate", amount=str(c.carbohydrate_g)) if c.carbohydrate_g is not None else "",
        w.s("paper-bag-kcal", amount=str(c.kcal)) if c.kcal is not None else "",
        w.s("paper-bag-sodium", amount=str(c.sodium_mg)) if c.sodium_mg is not None else "",
    )
    things = ", ".join(f"{count} {name}" for name, count in c.things)
    return "\n".join(x for x in (w.say.all(x for x in amounts if x), things, words) if x)


def _stop(w: Writing, runner: str, point: str) -> str:
    return "\n".join(x for x in _at_stop(w, runner, point) if x)


def _at_stop(w: Writing, runner: str, point: str) -> Iterator[str]:
    course = w.event.course_of(runner)
    through = w.before.timetable(runner).row(point).stop == timedelta(0) and not course.point(point).finish
    facts = meeting_facts(w.before, runner, point, w.say, crew=False)
    yield " · ".join((*((w.s("paper-go-through"),) if through else ()), *facts))
    for m in w.event.meetings:
        if m.runner == runner and m.point == point:
            given, back = ([k.name for k in m.kit if k.take_back is x] for x in (False, True))
            crew = w.say.all(person_name(w.event, p) for p in m.crew)
            yield w.s("paper-crew-there", crew=crew)
            yield w.s("paper-take", things=w.say.things(given)) if given else ""
            yield w.s("paper-give-back", things=w.say.things(back)) if back else ""
            yield w.s("paper-food", food=m.food) if m.food else ""
            yield (
                w.s("paper-pacer-joins-her", who=person_name(w.event, m.pacer_joins)) if m.pacer_joins else ""
            )
    for b in w.event.runner(runner).drop_bags:
        if b.point == point:
            yield w.s("paper-from-bag", things=w.say.things(k.name for k in b.kit))
    note = course.point(point).note
    if note:
        yield note
