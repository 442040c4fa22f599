"""Places and the ways between them: drives given by hand, confirmed later, or estimated with every addend named.

Two points at one car park (the same place, waypoint or coordinates) are one site, and no drive lies between them.
"""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass, field
from datetime import datetime, timedelta
from functools import cached_property

from geopy.distance import geodesic

from server.course import Course
from server.event.check_moves import ONE_SITE_M
from server.event.model import Drive, Event, Point
from server.facts.entry import Entry
from server.plan.light import CIVIL_DEG, sun_elevation_deg
from server.plan.movements.values import Addend, CarWay

Spot = tuple[float, float]


def course_spots(event: Event, courses: Mapping[str, Course]) -> dict[str, Spot]:
    """(lat, lon) of every point where crew may come, taken from the line: for points whose car park has none."""
    found: dict[str, Spot] = {}
    for definition in event.courses:
        line = courses.get(definition.id)
        for p in definition.points if line is not None else ():
            if line is not None and p.km is not None:
                spot = line.at(p.km)
                found[p.id] = (spot.lat_deg, spot.lon_deg)
    return found


@dataclass(frozen=True)
class Roads:
    """What is known of the ways between an event's places.

    `said`: 'drive confirmed' entries, the last one counts; each names the place driven to as `point`, may name the
    place driven from as `about`, and the time the person stands by as `amount`. `spots`: (lat, lon) to estimate from
    where the event file gives none.
    """

    event: Event
    said: Sequence[Entry] = ()
    spots: Mapping[str, Spot] = field(default_factory=dict)

    @cached_property
    def _points(self) -> dict[str, Point]:
        return {p.id: p for c in self.event.courses for p in c.points}

    @cached_property
    def _own_spots(self) -> dict[str, Spot]:
        """Coordinates a person gave: only these say that two places are one."""
        found: dict[str, Spot] = {}
        for place in self.event.places:
            if place.lat is not None and place.lon is not None:
                found[place.id] = (place.lat, place.lon)
        for p in self._points.values():
            a = p.access
            if a is not None and a.lat is not None and a.lon is not None:
                found[p.id] = (a.lat, a.lon)
            elif a is not None and a.place in found:
                found[p.id] = found[a.place]
        return found

    @cached_property
    def _sites(self) -> dict[str, str]:
        sites: dict[str, str] = {p.id: p.id for p in self.event.places}
        waypoints: dict[str, str] = {}
        for p in self._points.values():
            if p.access is not None and p.access.place:
                sites[p.id] = p.access.place
            elif p.waypoint is not None:
                sites[p.id] = waypoints.setdefault(p.waypoint.casefold(), p.id)
            else:
                sites[p.id] = p.id
        placed: list[tuple[Spot, str]] = []
        for name, spot in self._own_spots.items():
            near = next((site for other, site in placed if geodesic(other, spot).m <= ONE_SITE_M), None)
            if near is None:
                placed.append((spot, sites[name]))
            else:
                was = sites[name]
                sites = {k: near if site == was else site for k, site in sites.items()}
        return sites

    def site(self, place: str) -> str:
        """The car park that a place is at: the same text for the same car park."""
        return self._sites.get(place, place)

    def same(self, one: str, other: str) -> bool:
        """Whether no drive lies between two places."""
        return self.site(one) == self.site(other)

    def spot(self, place: str) -> Spot | None:
        """(lat, lon) of a place, its own before one taken from the course; None where neither is known."""
        return self._own_spots.get(place) or self.spots.get(place)

    def way(self, from_place: str, to_place: str, at: datetime | None = None) -> CarWay:
        """The way from one place to another; `at`, when they drive, says whether an estimate is for the night."""
        if self.same(from_place, to_place):
            return CarWay(from_place, to_place, timedelta(0), confirmed=True)
        known = self._given(from_place, to_place)
        said = [e for e in self.said if e.point == to_place and e.about in (None, "", from_place)]
        if said and said[-1].amount is not None:
            amount = said[-1].amount
            return CarWay(from_place, to_place, amount, True, (Addend("drive", amount),), said[-1].by)
        if known is not None and known.minutes is not None:
            drive = timedelta(minutes=known.minutes)
            by = said[-1].by if said else known.confirmed_by
            return CarWay(from_place, to_place, drive, by is not None, (Addend("drive", drive),), by)
        way = self.estimate(from_place, to_place, at, known)
        if said and way.drive is not None:
            return CarWay(from_place, to_place, way.drive, True, way.addends, said[-1].by, way.km)
        return way

    def _given(self, from_place: str, to_place: str) -> Drive | None:
        """The drive as listed, else one between the same car parks."""
        exact = [d for d in self.event.drives if (d.from_place, d.to_place) == (from_place, to_place)]
        ends = (self.site(from_place), self.site(to_place))
        alike = [d for d in self.event.drives if (self.site(d.from_place), self.site(d.to_place)) == ends]
        return next(iter([*exact, *alike]), None)

    def estimate(
        self, from_place: str, to_place: str, at: datetime | None = None, known: Drive | None = None
    ) -> CarWay:
        """A way nobody stands by: the same road the other way round if its minutes are given, else by distance.

        Geodesic distance on WGS 84 (geopy) times the road factor at the stated speed; then night, traffic, a full
        car park and fuel, each in whole minutes. No coordinates: `drive` None.
        """
        back = self._given(to_place, from_place)
        extras = self._extras(known)
        if back is not None and back.minutes is not None:
            return _summed(
                from_place, to_place, [Addend("the way back", timedelta(minutes=back.minutes)), *extras]
            )
        start, end = self.spot(from_place), self.spot(to_place)
        if start is None or end is None:
            return CarWay(from_place, to_place, None, confirmed=False)
        driving = self.event.driving
        km = geodesic(start, end).km * driving.road_factor
        road = _whole(timedelta(hours=km / driving.speed_kmh))
        addends = [Addend("road", road)]
        if at is not None and _dark(start, end, at):
            addends.append(Addend("night", _whole(road * (driving.night_factor - 1.0))))
        return _summed(from_place, to_place, [*addends, *extras], km)

    def _extras(self, known: Drive | None) -> list[Addend]:
        traffic, fuel = (
            (known.traffic, known.fuel_stop) if known is not None else (timedelta(0), timedelta(0))
        )
        listed = (("traffic", traffic), ("full car park", self.event.driving.full_car_park), ("fuel", fuel))
        return [Addend(name, time) for name, time in listed if time > timedelta(0)]


def _summed(from_place: str, to_place: str, addends: list[Addend], km: float | None = None) -> CarWay:
    kept = tuple(a for a in addends if a.time > timedelta(0))
    total = sum((a.time for a in kept), timedelta(0))
    return CarWay(from_place, to_place, total, confirmed=False, addends=kept, km=km)


def _whole(time: timedelta) -> timedelta:
    """Up to the minute: an estimate errs on the long side."""
    return timedelta(minutes=-(-time // timedelta(minutes=1)))


def _dark(start: Spot, end: Spot, at: datetime) -> bool:
    """Whether the sun is under civil twilight halfway; the mean of longitudes is wrong only across the date line."""
    lat, lon = (start[0] + end[0]) / 2.0, (start[1] + end[1]) / 2.0
    return sun_elevation_deg(lat, lon, at) < CIVIL_DEG
