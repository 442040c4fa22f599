"""She slows, and the dark will be there before her torch: told to those who meet her until then and to her, while it can
still be handed over earlier.

By sightings alone, like cut-off odds: silence says nothing of where her torch is. A torch that no list hands over is a
matter for the check of the event file, not for the night.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from datetime import datetime, timedelta

from server.event.model import Point
from server.forecast.outlook import View
from server.plan.kit import KitHanded, KitNeed, handed_over, is_for
from server.plan.light import HORIZON_DEG, SHADE, sun_elevation_deg
from server.watch.crew_routes import members
from server.watch.crew_whereabouts import plans_of
from server.watch.notice import BeforeDarkValues, NoticeKind
from server.watch.runner_context import Draft, Rule, Sight, Wake

__all__ = ["RULES"]

LATE_SIDE = 0.9
"""One chance in ten of the dark before her torch is enough to say so (own choice)."""
HOURS_BEFORE = timedelta(hours=4)
"""Nobody is told longer before the dark, unless the last meeting before it is sooner (own choice)."""
BEFORE_MEETING = timedelta(hours=3)
A_WHILE = timedelta(minutes=30)
"""The light is looked at so often since her start."""
ALOUD = timedelta(minutes=5)
"""Fewer minutes in the dusk are not worth a message (own choice)."""


def before_dark(sight: Sight) -> Iterator[Draft | Wake]:
    """Told once for each place at which the torch waits for her."""
    view = sight.seen_view
    source = _next_torch(sight)
    if view is None or source is None or source.point not in view.points:
        return
    dark = sight.once(("dark before", source.point), lambda: _dark_from(sight, view, source.point))
    late = view.arrival(source.point, LATE_SIDE)
    if dark is None or late <= dark + ALOUD or sight.now >= late:
        return
    chance = _last_before(sight, view, dark, source.point)
    due = dark - HOURS_BEFORE
    if chance is not None and chance in view.points:
        due = min(due, view.window(chance).likely - BEFORE_MEETING)
    elif chance is not None:
        due = sight.now
    if sight.now < due:
        yield Wake(due)
        return
    values = BeforeDarkValues(
        source.point,
        tuple(k.name for k in source.things if is_for(KitNeed.TORCH, k.name) or is_for(KitNeed.WARM, k.name)),
        dark,
        view.window(source.point),
        _crew_at(sight, source.point),
        chance,
        view.window(chance) if chance is not None and chance in view.points else None,
        _crew_at(sight, chance) if chance is not None else (),
    )
    for who in _concerned(sight, source.point):
        yield Draft(
            NoticeKind.BEFORE_DARK,
            who,
            source.point,
            "torch",
            sight.now,
            values,
            use_by=late,
            mine=True,
        )


def _next_torch(sight: Sight) -> KitHanded | None:
    """Where the torch waits that she has not got yet; None where she has one, or none is handed over."""
    has = False
    for h in handed_over(sight.event, sight.runner.id):
        if any(is_for(KitNeed.TORCH, k.name) for k in h.taken) and sight.reached(h.point):
            has = False
        if any(is_for(KitNeed.TORCH, k.name) for k in h.things):
            if not h.point or sight.reached(h.point):
                has = True
            elif not has:
                return h
    return None


def _dark_from(sight: Sight, view: View, until: str) -> datetime | None:
    """From when she is in the dark on her way there, if she is as late as one time in ten; None if she is not."""
    course = sight.situation.courses.get(sight.runner.course)
    if course is None:
        return None
    points = {p.id: p for p in sight.event.course_of(sight.runner.id).points}
    # Where she was seen last is the point before the first of the view.
    order = list(points)
    first = order.index(view.points[0])
    before: Point = points[order[max(first - 1, 0)]]
    at, km = sight.seen_at, before.km or 0.0

    def dark(when: datetime, where: float) -> bool:
        spot = course.at(where)
        shaded = any(
            s.forest_or_gorge and s.from_km <= where < s.to_km
            for s in sight.event.course_of(sight.runner.id).stretches
        )
        sun = sun_elevation_deg(spot.lat_deg, spot.lon_deg, when + (SHADE if shaded else timedelta(0)))
        return sun < HORIZON_DEG

    # The dark that she began in was known before: a start before sunrise is no torch that comes too late.
    steps = range(int((at - sight.state.start) / A_WHILE) + 1)
    began = dark(at, km) and all(dark(sight.state.start + k * A_WHILE, 0.0) for k in steps)
    if dark(at, km) and not began:
        return at
    for point in view.points[: view.points.index(until) + 1]:
        then, there = view.arrival(point, LATE_SIDE), points[point].km or 0.0
        began = began and dark(then, there)
        if dark(then, there) and not began:
            low, high = 0.0, 1.0
            for _ in range(10):
                middle = (low + high) / 2.0
                if dark(at + middle * (then - at), km + middle * (there - km)):
                    high = middle
                else:
                    low = middle
            return (at + high * (then - at)).replace(second=0, microsecond=0)
        at, km = then, there
    return None


def _last_before(sight: Sight, view: View, dark: datetime, until: str) -> str | None:
    """The last point ahead at which crew may hand it over, and she is likely there before the dark: one where she is met,
    else where she is now and is met, else one where crew only may come."""
    points: Sequence[Point] = sight.event.course_of(sight.runner.id).points
    ahead = [
        p
        for p in points
        if p.id in view.points
        and view.points.index(p.id) < view.points.index(until)
        and sight.now < view.window(p.id).late
        and view.window(p.id).likely <= dark
    ]
    met = {m.point for m in plans_of(sight)}
    found = [p.id for p in ahead if p.id in met]
    at = sight.state.times[-1] if sight.state.times else None
    if not found and at is not None and at.left is None and not at.through and at.point in met:
        return at.point
    found = found or [p.id for p in ahead if p.crew_access]
    return found[-1] if found else None


def _crew_at(sight: Sight, point: str) -> tuple[str, ...]:
    return tuple(w for m in plans_of(sight) if m.point == point for w in members(sight.event, m))


def _concerned(sight: Sight, until: str) -> tuple[str, ...]:
    """Those who meet her up to there, and she."""
    order = [p.id for p in sight.event.course_of(sight.runner.id).points]
    ahead = [
        m
        for m in plans_of(sight)
        if order.index(m.point) <= order.index(until) and not sight.reached(m.point)
    ]
    crew = [w for m in ahead for w in members(sight.event, m)]
    return tuple(dict.fromkeys((*crew, sight.runner.person)))


RULES: tuple[Rule, ...] = (before_dark,)
