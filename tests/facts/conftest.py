"""A small invented race and a maker of entries, for the tests of the fold and of doubts."""

from __future__ import annotations

from collections.abc import Callable
from datetime import UTC, datetime, timedelta
from typing import Any

import pytest

from server.course import Course, build_course, read_gpx
from server.event.model import (
    Contact,
    CourseDef,
    CrewAccess,
    CutOff,
    Edge,
    Event,
    Part,
    PartKind,
    Person,
    Point,
    PointKind,
    Rules,
    Runner,
    Target,
)
from server.facts.entry import Entry, Fix, Kind, Source
from server.facts.placing import KnownAt, Placed

KM_PER_DEGREE = 110.574  # a degree of latitude at the equator, WGS 84
START = datetime(2027, 6, 19, 4, 0, tzinfo=UTC)
POINTS = (("start", 0.0), ("mill", 20.0), ("chapel", 45.0), ("moss", 70.0), ("finish", 100.0))


def at(clock: str) -> datetime:
    """'6:30' on race day, '30:15' past midnight, UTC."""
    hours, minutes = clock.split(":")
    return datetime(2027, 6, 19, tzinfo=UTC) + timedelta(hours=int(hours), minutes=int(minutes))


def make_entry(kind: Kind, clock: str | datetime, **more: Any) -> Entry:
    """An entry seen at `clock`, sent and received at once unless told otherwise; a crew report of maren."""
    seen = at(clock) if isinstance(clock, str) else clock
    about = more.get("point") or more.get("about") or ""
    name = more.pop("id", f"{kind.value}-{about}-{seen:%d%H%M%S}-{more.get('source', 'crew')}")
    fields: dict[str, Any] = {
        "event": "stile",
        "runner": "maren",
        "sent_at": seen,
        "received_at": seen,
        "by": "ana",
        "source": Source.CREW,
        "sender": "ana-phone",
        "key": name,
    }
    return Entry(id=name, kind=kind, seen_at=seen, **{**fields, **more})


def line_placer(course: str, fix: Fix, at: datetime, before: KnownAt) -> Placed:
    """A course that runs due north, one km for each hundredth of a degree; metres off by longitude."""
    return Placed(km=fix.lat * 100, off_m=abs(fix.lon) * 1000)


@pytest.fixture(scope="session")
def entry() -> Callable[..., Entry]:
    """The maker of entries."""
    return make_entry


@pytest.fixture(scope="session")
def clock() -> Callable[[str], datetime]:
    """'6:30' as an instant on race day."""
    return at


@pytest.fixture(scope="session")
def placer() -> Callable[..., Placed]:
    """Positions on a straight line: lat 0.43 is km 43."""
    return line_placer


@pytest.fixture(scope="session")
def north_course() -> Course:
    """100 km due north from 0 N 0 E along the meridian, a track point each 100 m."""
    rows = "".join(f'<trkpt lat="{i / 1000 * 100 / KM_PER_DEGREE:.8f}" lon="0"/>' for i in range(1001))
    gpx = f'<gpx version="1.1" xmlns="http://www.topografix.com/GPX/1/1"><trk><trkseg>{rows}</trkseg></trk></gpx>'
    return build_course(read_gpx(gpx.encode(), "north.gpx"), stated_km=100.0)


@pytest.fixture(scope="session")
def fix_at() -> Callable[..., Fix]:
    """A fix by km along that course and km east of it."""
    return lambda km, east_km=0.0, **more: Fix(km / KM_PER_DEGREE, east_km / 111.32, **more)


@pytest.fixture(scope="session")
def event() -> Event:
    """Two runners, five points, 100 km; maren starts at 04:00 UTC, ines in wave B at 04:30."""
    kinds = {"start": PointKind.START, "finish": PointKind.FINISH}
    points = tuple(
        Point(
            id=name,
            name=name.title(),
            km=km,
            kinds=frozenset({kinds.get(name, PointKind.AID_STATION)}),
            cut_offs=(CutOff(Edge.OUT, clock=at("18:00")),) if name == "chapel" else (),
            access=CrewAccess(lat=0.18, lon=0.02) if name == "mill" else None,
        )
        for name, km in POINTS
    )
    course = CourseDef("main", "route.gpx", points)
    runner = Runner("maren", "maren", "Maren", "214", "main", START, Target(finish=timedelta(hours=20)))
    other = Runner(
        "ines", "ines", "Ines", "87", "main", START + timedelta(minutes=30), runner.target, wave="B"
    )
    people = tuple(Person(p, p.title()) for p in ("maren", "ines", "ana", "jonas"))
    parts = (
        Part("maren", PartKind.RUNNER, "maren"),
        Part("ines", PartKind.RUNNER, "ines"),
        Part("ana", PartKind.CREW, "maren"),
    )
    return Event(
        id="stile",
        name="Stile",
        time_zone="Europe/London",
        starts=START,
        rules=Rules(),
        courses=(course,),
        runners=(runner, other),
        people=people,
        parts=parts,
        race_control=Contact("Race control", "+44 1632 960001"),
        emergency_number="112",
    )
