"""The map: the course from above, car parks and meetings, where she was last known, and the stretch she is likely on.

A fact is one full mark; the estimate is a stretch of the course with its odds and never a mark, for a dot would look
seen. Everything is drawn here; tiles lie under it only where a server of them is set. What the picture shows is said
below it in words, with a link a place that the phone's own map program opens (RFC 5870).
"""

from __future__ import annotations

import math
from dataclasses import dataclass, replace
from urllib.parse import quote

from server.api.replies import RunnerBoard
from server.api.snapshot import Picture
from server.api.who_may import Call, May, may
from server.conversation.telling import measures
from server.conversation.telling.answer import ForecastAnswer, MeetingAnswer
from server.conversation.telling.answers import known_fact
from server.course import Course
from server.event.model import Part, Point
from server.pages.map_paper import (
    WIDTH,
    Box,
    Frame,
    Tile,
    drawn,
    line_between,
    of_course,
    path,
    stretch,
    strip,
    tiles_under,
    xy,
)
from server.pages.view import Pen
from server.settings import Settings

STRETCH_ODDS = 0.8
"""Whereabouts are given by their 10% and 90% sides (server/forecast/in_event.py)."""
ONE_PLACE = 15.0
"""Marks nearer to each other than this are one: a place that is passed twice."""
LETTER = 5.6
"""How wide a letter of a name is taken to be, at font-size 10."""
RUNNERS_MAX = 4
"""Of a field, no maps: an organiser has the list."""


@dataclass(frozen=True, slots=True)
class MapLink:
    """The way to a place: a link for the phone's own map program, and the words on it."""

    geo: str
    label: str


@dataclass(frozen=True, slots=True)
class MapPlace:
    """Where crew may come, or start or finish: its number, names and km in words, car park, who meets her there, and the
    link to it. `mine`: the reader meets her there. `label_x` is '' where its name would run into another's."""

    number: int
    names: str
    km: str
    x: float
    y: float
    crew: bool
    mine: bool
    parking: str
    meets: str
    way: MapLink
    position: str
    label: str = ""
    label_x: str = ""
    label_y: str = ""
    anchor: str = "start"


@dataclass(frozen=True, slots=True)
class CarPark:
    """A car park whose position is given, and the line on foot from it to the course."""

    x: str
    y: str
    to_x: str
    to_y: str


@dataclass(frozen=True, slots=True)
class MapView:
    """One runner's map. Paths are of SVG; `estimate` and `fact` in words are '' where none is known or may be seen.
    `said`: all of it in a sentence or two."""

    height: str
    line: str
    stretch: str
    ticks: tuple[tuple[str, str], ...]
    places: tuple[MapPlace, ...]
    car_parks: tuple[CarPark, ...]
    tiles: tuple[Tile, ...]
    credit: str
    fact_x: str
    fact_y: str
    fact_time: str
    fact: str
    estimate: str
    said: str
    bar: str
    bar_width: str


def course_map(
    picture: Picture, r: RunnerBoard, parts: tuple[Part, ...], pen: Pen, settings: Settings
) -> MapView | None:
    """The map of that runner as far as the reader's part goes; None where it may not see her race."""
    if r.forecast is None:
        return None
    course = picture.course(r.id)
    frame, corners = drawn(course)
    crew = may(parts, Call.NEXT, r.id) is May.YES
    points = picture.event.course_of(r.id).points
    where = r.forecast.where
    likely = stretch(where, corners, course, frame) if where else []
    places = _labelled(_places(points, course, frame, r if crew else None, pen), strip(likely, frame))
    last = r.forecast.fresh.last
    fact = f"{known_fact(pen.say, last)}, {pen.when(last.at)}" if last is not None else ""
    fact_x, fact_y = _fact(r.forecast, course, frame)
    estimate = _estimate(r.forecast, points, pen)
    bar, bar_width = _bar(frame, pen)
    said = [pen.word("map-last", fact=fact)] if fact else []
    return MapView(
        height=f"{frame.height:.0f}",
        line=path(line_between(corners, course, frame.paper), frame),
        stretch=path(likely, frame) if likely else "",
        ticks=tuple(xy(frame.spot(*of_course(course, p.km or 0.0))) for p in points),
        places=places,
        car_parks=_car_parks(points, course, frame) if crew else (),
        tiles=tiles_under(frame, settings.map_tiles),
        credit=settings.map_tiles_credit if settings.map_tiles else "",
        fact_x=fact_x,
        fact_y=fact_y,
        fact_time=pen.clock(last.at).there if last is not None else "",
        fact=said[0] if said else "",
        estimate=estimate,
        said=" ".join([*said, *([estimate] if estimate else [])]),
        bar=bar,
        bar_width=bar_width,
    )


def _fact(forecast: ForecastAnswer, course: Course, frame: Frame) -> tuple[str, str]:
    last = forecast.fresh.last
    if last is None or last.km is None:
        return "", ""
    return xy(frame.spot(*of_course(course, last.km)))


def _estimate(forecast: ForecastAnswer, points: tuple[Point, ...], pen: Pen) -> str:
    """'Between A and B, 8 in 10': the points round the stretch, so that it can be found on any map."""
    where = forecast.where
    if where is None or not points:
        return ""
    behind = [p.name for p in points if (p.km or 0.0) <= where.low_km] or [points[0].name]
    ahead = [p.name for p in points if (p.km or 0.0) >= where.high_km] or [points[-1].name]
    low, high = measures.stretch(where.low_km, where.high_km, pen.reader)
    odds = measures.odds(STRETCH_ODDS, pen.reader.language)
    return pen.word(
        "map-estimate", **{"from": behind[-1], "to": ahead[0], "low": low, "high": high, "odds": odds}
    )


# -- places -------------------------------------------------------------------------------------------------


def _places(
    points: tuple[Point, ...], course: Course, frame: Frame, board: RunnerBoard | None, pen: Pen
) -> list[MapPlace]:
    """Start, finish and, for crew (`board`), where they may come; marks that lie on one another are one place."""
    last = points[-1].id if points else ""
    found: list[MapPlace] = []
    for p in points:
        if p.id not in (points[0].id, last) and not (board and p.crew_access):
            continue
        one = _place(p, course, frame, board, pen)
        near = next((f for f in found if math.dist((f.x, f.y), (one.x, one.y)) < ONE_PLACE), None)
        if near is None:
            found.append(replace(one, number=len(found) + 1))
        else:
            found[found.index(near)] = _joined(near, one)
    return found


def _place(p: Point, course: Course, frame: Frame, board: RunnerBoard | None, pen: Pen) -> MapPlace:
    access = p.access if board else None
    x, y = frame.spot(*of_course(course, p.km or 0.0))
    lat, lon = _parked(p, course) if access else of_course(course, p.km or 0.0)
    met = [m for m in board.meetings if m.values.point == p.id and not m.values.lost] if board else []
    return MapPlace(
        number=0,
        names=p.name,
        km=pen.km(p.km or 0.0),
        x=x,
        y=y,
        crew=p.crew_access and board is not None,
        mine=any(m.mine for m in met),
        parking=pen.word("map-parking", words=access.parking) if access and access.parking else "",
        meets=_meets(met, pen),
        way=_way(p, course, pen),
        position=measures.degrees(lat, lon, pen.reader.language),
        label=p.name if len(p.name) <= 18 else p.name[:17].rstrip() + "…",
    )


def _meets(meetings: list[MeetingAnswer], pen: Pen) -> str:
    if not meetings:
        return ""
    return pen.word("map-mine") if any(m.mine for m in meetings) else pen.say.all(meetings[0].crew)


def ways(picture: Picture, runner: str, pen: Pen) -> dict[str, MapLink]:
    """The way to each point where crew may come: to its car park where that has a position, else to the course."""
    course = picture.course(runner)
    return {
        p.id: _way(p, course, pen) for p in picture.event.course_of(runner).points if p.access is not None
    }


def _way(p: Point, course: Course, pen: Pen) -> MapLink:
    parked = p.access is not None and p.access.lat is not None
    return MapLink(
        geo_link(*_parked(p, course), p.name), pen.word("map-to-car-park" if parked else "map-to-point")
    )


def _parked(p: Point, course: Course) -> tuple[float, float]:
    a = p.access
    return (
        (a.lat, a.lon)
        if a is not None and a.lat is not None and a.lon is not None
        else of_course(course, p.km or 0.0)
    )


def geo_link(lat: float, lon: float, name: str) -> str:
    """A place for the phone's own map program. The query is what programs on phones set their mark by."""
    at = f"{lat:.5f},{lon:.5f}"
    return f"geo:{at}?q={at}({quote(name, safe='')})"


def _joined(a: MapPlace, b: MapPlace) -> MapPlace:
    names = a.names if a.names == b.names else f"{a.names}, {b.names}"
    chosen = a if a.crew or not b.crew else b
    return replace(
        chosen,
        number=a.number,
        x=a.x,
        y=a.y,
        names=names,
        km=f"{a.km}, {b.km}",
        crew=a.crew or b.crew,
        mine=a.mine or b.mine,
        meets=", ".join(dict.fromkeys(m for m in (a.meets, b.meets) if m)),
    )


def _labelled(places: list[MapPlace], drawn: tuple[Box, ...]) -> tuple[MapPlace, ...]:
    """Names beside their marks where they run into no mark, no other name and nothing `drawn`; whose are the reader's own
    come first, then crew points."""
    taken = [*drawn, *((p.x - 8, p.y - 8, p.x + 8, p.y + 8) for p in places)]
    done: dict[int, MapPlace] = {}
    for p in sorted(places, key=lambda p: (not p.mine, not p.crew, p.number)):
        wide = LETTER * len(p.label)
        sides = (
            ("start", p.x + 10, p.y + 3.5, p.x + 10, p.x + 10 + wide),
            ("end", p.x - 10, p.y + 3.5, p.x - 10 - wide, p.x - 10),
            ("middle", p.x, p.y - 11, p.x - wide / 2, p.x + wide / 2),
            ("middle", p.x, p.y + 19, p.x - wide / 2, p.x + wide / 2),
        )
        done[p.number] = p
        for anchor, x, y, left, right in sides:
            box = (left, y - 9, right, y + 2)
            if left >= 2 and right <= WIDTH - 2 and not any(_over(box, other) for other in taken):
                taken.append(box)
                done[p.number] = replace(p, label_x=f"{x:.1f}", label_y=f"{y:.1f}", anchor=anchor)
                break
    return tuple(done[p.number] for p in places)


def _over(a: Box, b: Box) -> bool:
    return a[0] < b[2] and b[0] < a[2] and a[1] < b[3] and b[1] < a[3]


def _car_parks(points: tuple[Point, ...], course: Course, frame: Frame) -> tuple[CarPark, ...]:
    """Those with a position of their own; others are where the course is, as far as anybody has said."""
    found = []
    for p in points:
        a = p.access
        if a is not None and a.lat is not None and a.lon is not None:
            spot = frame.spot(a.lat, a.lon)
            if 0 <= spot[0] <= WIDTH and 0 <= spot[1] <= frame.height:
                found.append(CarPark(*xy(spot), *xy(frame.spot(*of_course(course, p.km or 0.0)))))
    return tuple(dict.fromkeys(found))


def _bar(frame: Frame, pen: Pen) -> tuple[str, str]:
    """A bar of so many km or miles, about a quarter of the picture long."""
    unit = measures.KM_PER_MILE if pen.reader.miles else 1.0
    most = WIDTH * 0.3 / frame.px_per_km / unit
    length = max((n for n in (0.1, 0.2, 0.5, 1, 2, 5, 10, 20, 50, 100, 200) if n <= most), default=0.1)
    text = measures.distance(length * unit, pen.reader, decimals=0 if length >= 1 else 1)
    return text, f"{length * unit * frame.px_per_km:.1f}"
