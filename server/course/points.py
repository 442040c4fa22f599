"""Places the points of a race on the line, in running order, also where the line comes by a place more
than once.
"""

from __future__ import annotations

import math
from bisect import bisect_left
from collections.abc import Sequence
from dataclasses import dataclass, replace
from itertools import accumulate
from typing import Final, Literal

from rapidfuzz import fuzz, process, utils

from server.course.line import Course
from server.course.passes import passes
from server.course.track import Waypoint, rough_distance_m
from server.sentences import Worded, say

REACH_M: Final = 300.0
# 'Water' may stand in a file many times; each costs a look along the whole line.
NAMESAKES_MOST: Final = 100
# How far a waypoint of a point on the line usually lies from it: aid stations stand beside the path.
BESIDE_M: Final = 50.0
# Two placings whose costs differ by less than this are not told apart by the file; 1 is one standard
# deviation.
CLEARLY: Final = 1.0
# Candidates closer than this along the line are one place, whichever is taken.
SAME_PLACE_KM: Final = 0.3
# A km in the file and a waypoint's km agree within this, plus this part of the km.
KM_SLACK: Final = 0.5
KM_SLACK_PART: Final = 0.03
# Km in the file may end this part beyond the line: organisers round.
BEYOND_PART: Final = 0.01


@dataclass(frozen=True, slots=True)
class WantedPoint:
    """A point as the file gives it: km, or a waypoint's name, or both (km then says which pass is meant).

    end: this point is the start or the finish of the line, which needs neither.
    """

    name: str
    km: float | None = None
    waypoint: str | None = None
    end: Literal["start", "finish"] | None = None


@dataclass(frozen=True, slots=True)
class PlacedPoint:
    """A point on the course: km along it, degrees on WGS 84, metres between the line and its waypoint (0
    if by km).
    """

    name: str
    km: float
    lat_deg: float
    lon_deg: float
    offset_m: float


@dataclass(frozen=True, slots=True)
class PointMistake:
    """Why a point cannot be placed. index: its place in what was wanted, from 0; field: 'km' or
    'waypoint'.
    """

    index: int
    name: str
    field: Literal["km", "waypoint"]
    what: Worded
    remedy: Worded


@dataclass(frozen=True, slots=True)
class Placing:
    """Every wanted point placed, in the order given, or the mistakes that stand in the way and no points."""

    points: tuple[PlacedPoint, ...]
    mistakes: tuple[PointMistake, ...]


@dataclass(frozen=True, slots=True)
class _Choice:
    """One place on the line a point may have: km, metres off, the place itself, what choosing it costs."""

    km: float
    offset_m: float
    lat_deg: float
    lon_deg: float
    cost: float


def place_points(course: Course, wanted: Sequence[WantedPoint]) -> Placing:
    """The km of every point, points being in running order.

    Each point may be at any pass of its waypoint within REACH_M; the choice of all together is the one in
    strictly rising order that fits offsets and stated km best. A point that two placings would put
    elsewhere, both about as good, is a mistake: the file must say which. Errors: none, mistakes are
    values.
    """
    choices: list[list[_Choice]] = []
    mistakes: list[PointMistake] = []
    for index, point in enumerate(wanted):
        found = _choices(course, index, point)
        if isinstance(found, PointMistake):
            mistakes.append(found)
            choices.append([])
        else:
            choices.append(found)
    kept = [index for index, found in enumerate(choices) if found]
    chosen = _in_order([choices[index] for index in kept])
    if isinstance(chosen, int):
        mistakes.append(_out_of_order(wanted, choices, kept, chosen))
    elif not mistakes:
        # A point that could not be placed may be the one that would have settled the others.
        mistakes.extend(_doubtful(wanted, choices, kept, chosen))
    if mistakes or isinstance(chosen, int):
        return Placing((), tuple(sorted(mistakes, key=lambda mistake: mistake.index)))
    placed = (
        PlacedPoint(wanted[index].name, choice.km, choice.lat_deg, choice.lon_deg, choice.offset_m)
        for index, choice in zip(kept, chosen, strict=True)
    )
    return Placing(tuple(placed), ())


def _choices(course: Course, index: int, point: WantedPoint) -> list[_Choice] | PointMistake:
    if point.end is not None:
        return _at_end(course, index, point, point.end)
    if point.waypoint is not None:
        return _at_waypoint(course, index, point, point.waypoint)
    if point.km is None:
        return PointMistake(
            index, point.name, "km", say("wrong-neither-km-nor-waypoint-given"), say("do-give-km-21-3")
        )
    if not math.isfinite(point.km) or not 0 <= point.km <= course.length_km * (1 + BEYOND_PART):
        return PointMistake(
            index,
            point.name,
            "km",
            say("wrong-km-not-course-km-long", km=f"{point.km:g}", length_km=f"{course.length_km:.1f}"),
            say("do-correct-km-give-stated-km"),
        )
    return [_at_km(course, point.km)]


def _at_end(
    course: Course, index: int, point: WantedPoint, end: Literal["start", "finish"]
) -> list[_Choice] | PointMistake:
    """Start and finish are the ends of the line, whatever else comes by there; what is given must agree."""
    here = _at_km(course, 0.0 if end == "start" else course.length_km)
    if point.km is not None and not abs(point.km - here.km) <= course.length_km * BEYOND_PART:
        return PointMistake(
            index,
            point.name,
            "km",
            say("wrong-given-km-but-course-km", end=end, km=f"{point.km:g}", course_km=f"{here.km:.1f}"),
            say("do-correct-km-give-stated-km"),
        )
    if point.waypoint is None:
        return [here]
    named = _named(course, point.waypoint)
    if not named:
        return _unknown(course, index, point, point.waypoint)
    waypoint, off = min(
        ((one, rough_distance_m(one.lat_deg, one.lon_deg, here.lat_deg, here.lon_deg)) for one in named),
        key=lambda pair: pair[1],
    )
    if off > REACH_M:
        return PointMistake(
            index,
            point.name,
            "waypoint",
            say("wrong-waypoint-from-line", waypoint=point.waypoint, distance=_far(off), end=end),
            say("do-correct-waypoint-use-route-race", end=end),
        )
    return [_Choice(here.km, off, waypoint.lat_deg, waypoint.lon_deg, 0.0)]


def _named(course: Course, name: str) -> list[Waypoint]:
    return [waypoint for waypoint in course.track.waypoints if _same(waypoint.name, name)]


def _unknown(course: Course, index: int, point: WantedPoint, name: str) -> PointMistake:
    what = say("wrong-no-waypoint", file=course.track.file, name=name)
    return PointMistake(index, point.name, "waypoint", what, _nearest_names(course, name))


def _at_km(course: Course, km: float) -> _Choice:
    spot = course.at(km)
    return _Choice(spot.km, 0.0, spot.lat_deg, spot.lon_deg, 0.0)


def _at_waypoint(course: Course, index: int, point: WantedPoint, name: str) -> list[_Choice] | PointMistake:
    named = _named(course, name)
    if not named:
        return _unknown(course, index, point, name)
    if len(named) > NAMESAKES_MOST:
        what = say("wrong-waypoints-named", count=len(named), file=course.track.file, name=name)
        return PointMistake(index, point.name, "waypoint", what, say("do-give-points-km-instead"))
    by_all = [
        (waypoint, by) for waypoint in named for by in passes(course, waypoint.lat_deg, waypoint.lon_deg)
    ]
    near = [(waypoint, by.km, by.offset_m) for waypoint, by in by_all if by.offset_m <= REACH_M]
    if not near:
        closest = min((by for _, by in by_all), key=lambda by: by.offset_m)
        return PointMistake(
            index,
            point.name,
            "waypoint",
            say(
                "wrong-waypoint-from-course-nearest-km",
                name=name,
                distance=_far(closest.offset_m),
                km=f"{closest.km:.1f}",
                reach_m=f"{REACH_M:.0f}",
            ),
            say("do-correct-waypoint-route-give-points"),
        )
    choices = [
        _Choice(km, off, waypoint.lat_deg, waypoint.lon_deg, _cost(off, km, point.km))
        for waypoint, km, off in near
    ]
    if point.km is not None:
        fitting = [choice for choice in choices if abs(choice.km - point.km) <= 2 * _slack(point.km)]
        if not fitting:
            return PointMistake(
                index,
                point.name,
                "km",
                say("wrong-km-given-but-waypoint", km=f"{point.km:g}", name=name, places=_kms(choices)),
                say("do-correct-km-leave-out"),
            )
        choices = fitting
    return sorted(choices, key=lambda choice: choice.km)


def _cost(offset_m: float, km: float, stated_km: float | None) -> float:
    beside = (offset_m / BESIDE_M) ** 2
    return beside if stated_km is None else beside + ((km - stated_km) / _slack(stated_km)) ** 2


def _slack(km: float) -> float:
    return KM_SLACK + KM_SLACK_PART * km


def _same(one: str, other: str) -> bool:
    return " ".join(one.split()).casefold() == " ".join(other.split()).casefold()


def _nearest_names(course: Course, name: str) -> Worded:
    names = {waypoint.name: None for waypoint in course.track.waypoints}
    if not names:
        return say("do-file-no-named-waypoints-give")
    best = process.extract(name, list(names), scorer=fuzz.WRatio, processor=utils.default_process, limit=3)
    return say("do-nearest-names", names=", ".join(repr(match) for match, *_ in best))


def _far(metres: float) -> str:
    return f"{metres:.0f} m" if metres < 1000 else f"{metres / 1000:.1f} km"


def _kms(choices: Sequence[_Choice]) -> str:
    return "km " + ", ".join(f"{choice.km:.1f}" for choice in choices[:6])


def _in_order(choices: list[list[_Choice]]) -> list[_Choice] | int:
    """The cheapest choice for each point with km rising throughout, or the place of the first that cannot
    rise.
    """
    best = _forward(choices)
    for place, costs in enumerate(best):
        if not any(math.isfinite(cost) for cost in costs):
            return place
    chosen: list[_Choice] = []
    limit = math.inf
    for place in range(len(choices) - 1, -1, -1):
        # On a tie the earlier pass, so that the result is settled; _doubtful then asks.
        _, choice = min(
            _below(choices[place], best[place], limit), key=lambda priced: (priced[0], priced[1].km)
        )
        chosen.append(choice)
        limit = choice.km
    return chosen[::-1]


def _below(choices: list[_Choice], costs: list[float], limit: float) -> list[tuple[float, _Choice]]:
    return [(cost, choice) for choice, cost in zip(choices, costs, strict=True) if choice.km < limit]


def _forward(choices: list[list[_Choice]]) -> list[list[float]]:
    """For each choice of each point the least cost of all up to and with it; infinite where none is in order.

    The choices of each point rise in km. A race of hundreds of laps has as many choices a point: hence the
    running minimum.
    """
    totals: list[list[float]] = []
    for place, here in enumerate(choices):
        if place == 0:
            totals.append([choice.cost for choice in here])
            continue
        before = [choice.km for choice in choices[place - 1]]
        least = [math.inf, *accumulate(totals[-1], min)]
        totals.append([choice.cost + least[bisect_left(before, choice.km)] for choice in here])
    return totals


def _backward(choices: list[list[_Choice]]) -> list[list[float]]:
    """As _forward, from the finish: each choice with all after it."""
    mirrored = [[replace(choice, km=-choice.km) for choice in reversed(here)] for here in reversed(choices)]
    return [costs[::-1] for costs in reversed(_forward(mirrored))]


def _doubtful(
    wanted: Sequence[WantedPoint], choices: list[list[_Choice]], kept: list[int], chosen: list[_Choice]
) -> list[PointMistake]:
    """A mistake for each point that could as well be at another pass."""
    open_to = [choices[index] for index in kept]
    forward, backward = _forward(open_to), _backward(open_to)
    mistakes = []
    for place, (index, choice) in enumerate(zip(kept, chosen, strict=True)):
        through = [
            (ahead + behind - other.cost, other)
            for other, ahead, behind in zip(open_to[place], forward[place], backward[place], strict=True)
        ]
        least = min(cost for cost, _ in through)
        rivals = [
            other
            for cost, other in through
            if cost < least + CLEARLY and abs(other.km - choice.km) > SAME_PLACE_KM
        ]
        if rivals:
            names = _kms(sorted([choice, *rivals], key=lambda other: other.km))
            mistakes.append(
                PointMistake(
                    index,
                    wanted[index].name,
                    "waypoint",
                    say("wrong-course-comes-waypoint", waypoint=wanted[index].waypoint, places=names),
                    say("do-add-km-say-pass-meant"),
                )
            )
    return mistakes


def _out_of_order(
    wanted: Sequence[WantedPoint], choices: list[list[_Choice]], kept: list[int], place: int
) -> PointMistake:
    """The mistake of a point that cannot come after those before it."""
    index, before = kept[place], kept[place - 1]
    earliest = min(
        choice.km
        for choice, cost in zip(
            choices[before], _forward([choices[i] for i in kept[:place]])[-1], strict=True
        )
        if math.isfinite(cost)
    )
    point = wanted[index]
    return PointMistake(
        index,
        point.name,
        "km" if point.waypoint is None else "waypoint",
        say(
            "wrong-but-stands-before-not-before",
            name=point.name,
            places=_kms(choices[index]),
            before=wanted[before].name,
            earliest_km=f"{earliest:.1f}",
        ),
        say("do-put-points-running-order-correct"),
    )
