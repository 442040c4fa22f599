"""The sheet of a volunteer at a point: where that is, whom to expect and when, what to do; nobody's private number."""

from __future__ import annotations

from collections.abc import Iterator

from server.conversation.telling.times import planned
from server.event.model import CourseDef, Edge, Goal, Point
from server.paper.document import Block, Grid, Head, Lines, Look, Page, page
from server.paper.writing import Writing, grid_ref
from server.plan.cutoffs import due_times

EXPECTED = ("bib-head", "runner-head", "expect-from", "expect-likely", "expect-until", "in-head", "out-head")


def post_page(w: Writing) -> Page:
    """What they do, and a page of their own for each point they stand at."""
    points = tuple(dict.fromkeys(p.point for p in w.event.parts_of(w.person) if p.point is not None))
    steps = tuple(w.s(f"paper-post-{n}") for n in ("note", "miss", "danger", "cut-off"))
    return page(
        Lines(w.aid(), Look.DANGER),
        Lines(steps, Look.STEPS),
        *(b for p in points for b in _post(w, p)),
        None if points else Lines((w.s("paper-post-none"),)),
    )


def _post(w: Writing, point_id: str) -> Iterator[Block]:
    course, point = next(
        ((c, p) for c in w.event.courses for p in c.points if p.id == point_id), (None, None)
    )
    if course is None or point is None:
        return
    runners = tuple(
        r.id for r in w.event.runners if r.course == course.id and r.id in w.before.situation.timetables
    )
    yield Head(point.name)
    yield Lines(tuple(_about(w, course, point, runners)))
    yield Grid(
        w.heads(EXPECTED), tuple(sorted((_row(w, r, point_id) for r in runners), key=lambda x: _number(x[0]))),
        shares=(0.6, 2.6, 1.1, 1.1, 1.1, 1.0, 1.0),
    )  # fmt: skip


def _number(bib: str) -> tuple[int, str]:
    return (int(bib) if bib.isdigit() else 10**9, bib)


def _about(w: Writing, course: CourseDef, point: Point, runners: tuple[str, ...]) -> Iterator[str]:
    where = w.say.km(point.km or 0.0)
    if runners:
        spot = w.before.course(runners[0]).at(point.km or 0.0)
        where = f"{where}, {grid_ref(spot.lat_deg, spot.lon_deg)}".replace("\n", ", ")
    yield where
    for edge, when in dict.fromkeys(
        (d.edge, d.at) for r in runners for d in due_times(w.event, r) if d.point == point.id
    ):
        edge_word = w.s(f"edge-{Edge(edge).value}")
        yield w.s("paper-fact-cut-off", edge=edge_word, when=w.say.when(when, day=True))
    last = course.points[course.points.index(point) + 1 :][:1]
    for then in last:
        yield w.s("paper-post-then", place=then.name, km=w.say.km((then.km or 0.0) - (point.km or 0.0)))
    if point.note:
        yield point.note


def _row(w: Writing, runner: str, point: str) -> tuple[str, ...]:
    r, table = w.event.runner(runner), w.before.timetable(runner)
    times = (w.say.when(planned(table.start + table.row(point).arrive[g], g), day=True) for g in Goal)
    worn = f"{r.name}\n{r.clothing}" if r.clothing else r.name
    return (r.bib, worn, *times, "", "")
