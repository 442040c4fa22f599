"""Invented races made to measure, forecasts whose paths are given, and a hundred crews thrown together at random."""

from __future__ import annotations

import random
from collections.abc import Callable, Sequence
from dataclasses import dataclass
from datetime import UTC, datetime, timedelta
from typing import Any

import numpy as np
import numpy.typing as npt
import pytest

from server.event.model import (
    Car,
    Contact,
    CourseDef,
    CrewAccess,
    Drive,
    Event,
    KitItem,
    KitWeight,
    MeetingPlan,
    Part,
    PartKind,
    Person,
    Point,
    PointKind,
    ReporterKind,
    ReportsThere,
    Rules,
    Runner,
    Target,
)

START = datetime(2027, 6, 19, 5, 0, tzinfo=UTC)
MINUTE = timedelta(minutes=1)


@dataclass(frozen=True)
class GivenView:
    """A forecast that is nothing but its paths."""

    now: datetime
    points: tuple[str, ...]
    arrive: npt.NDArray[np.float64]
    leave: npt.NDArray[np.float64]

    def paths(self) -> tuple[npt.NDArray[np.float64], npt.NDArray[np.float64]]:
        return self.arrive, self.leave

    def leaving(self, point: str, p: float) -> datetime:
        raise KeyError(point)


def view_of(
    points: Sequence[str], minutes: Sequence[float], *, spread: float = 0.1, legs: float = 0.05, stop: float = 5,
    start: datetime = START, key: int = 1, count: int = 2000,
) -> GivenView:  # fmt: skip
    """Planned minutes from the start, times a common lognormal factor and one of each leg; sorted by the common one."""
    rng = np.random.default_rng(key)
    common = np.exp(spread * np.sort(rng.standard_normal(count)))
    at = np.zeros(count)
    columns, outs = [], []
    for before, planned in zip([0.0, *minutes], minutes, strict=False):
        at = at + (planned - before) * 60.0 * common * np.exp(legs * rng.standard_normal(count))
        columns.append(at + start.timestamp())
        at = at + stop * 60.0
        outs.append(at + start.timestamp())
    return GivenView(start, tuple(points), np.column_stack(columns), np.column_stack(outs))


def point(pid: str, km: float, access: CrewAccess | None = None, *kinds: PointKind, **more: Any) -> Point:
    """A point at which volunteers report."""
    reports = more.pop("reports", (ReportsThere(ReporterKind.VOLUNTEER, 0.9, 5 * MINUTE),))
    return Point(pid, pid.capitalize(), km, frozenset(kinds), access=access, reports=reports, **more)


def make_event(**changes: Any) -> Event:
    """Start, mill (km 20), chapel (40), moss (60), finish (80); Ana in the van, Vera in the red car, Tomas paces."""
    walk = CrewAccess(walk_in=4 * MINUTE, unloading=6 * MINUTE)
    points = (
        point("start", 0, None, PointKind.START),
        point("mill", 20, walk),
        point("chapel", 40, walk),
        point("moss", 60, walk),
        point("finish", 80, walk, PointKind.FINISH),
    )
    names = ("maren", "ana", "vera", "tomas", "jonas")
    values: dict[str, Any] = {
        "id": "stile",
        "name": "The Long Stile",
        "time_zone": "UTC",
        "starts": START,
        "rules": Rules(),
        "courses": (CourseDef("main", "route.gpx", points),),
        "runners": (
            Runner("maren", "maren", "Maren", "1", "main", START, Target(finish=timedelta(hours=12))),
        ),
        "people": tuple(Person(n, n.capitalize(), phone="+44 1632 960000") for n in names),
        "parts": (
            Part("maren", PartKind.RUNNER, "maren"),
            Part("ana", PartKind.CREW, drives=True, car="van"),
            Part("vera", PartKind.CREW, drives=True, car="red"),
            Part("jonas", PartKind.CREW),
            Part("tomas", PartKind.PACER, "maren"),
        ),
        "race_control": Contact("Race control", "+44 1632 960001"),
        "emergency_number": "112",
        "cars": (Car("van", "blue van", 4, "start"), Car("red", "red car", 4, "start")),
        "drives": tuple(
            Drive(a, b, 30, "ana")
            for a in ("start", "mill", "chapel", "moss", "finish")
            for b in ("mill", "chapel", "moss", "finish")
            if a != b
        ),
        "meetings": (
            MeetingPlan("m1", "mill", "maren", ("ana",), "van", if_missed="on to Chapel"),
            MeetingPlan("m2", "chapel", "maren", ("ana",), "van", kit=(KitItem("torch", KitWeight.SAFETY),)),
        ),
    }
    return Event(**(values | changes))


MAREN = (("mill", "chapel", "moss", "finish"), (150.0, 320.0, 480.0, 640.0))


@pytest.fixture(scope="session")
def view() -> Callable[..., GivenView]:
    """`view_of`; without arguments Maren's."""

    def make(points: Sequence[str] = MAREN[0], minutes: Sequence[float] = MAREN[1], **more: Any) -> GivenView:
        return view_of(points, minutes, **more)

    return make


@pytest.fixture(scope="session")
def event_of() -> Callable[..., Event]:
    """`make_event`."""
    return make_event


@pytest.fixture(scope="session")
def point_of() -> Callable[..., Point]:
    """`point`."""
    return point


def random_crew(rng: random.Random) -> tuple[Event, dict[str, GivenView]]:
    """An event nobody thought about: any car to any meeting with anybody, drives long, short, guessed or missing."""
    courses, runners, views = [], [], {}
    for r in range(rng.choice([1, 1, 2, 3])):
        names = [f"r{r}p{k}" for k in range(rng.randint(3, 6))]
        kms = sorted(rng.sample(range(5, 160), len(names) - 1))
        points = tuple(
            point(
                n, km, _access(rng), *((PointKind.START,) if k == 0 else (PointKind.FINISH,) if n == names[-1] else ()),
                reports=() if rng.random() < 0.3 else (ReportsThere(ReporterKind.VOLUNTEER, 0.9, MINUTE),),
            )
            for k, (n, km) in enumerate(zip(names, [0, *kms], strict=True))
        )  # fmt: skip
        courses.append(CourseDef(f"c{r}", "r.gpx", points))
        start = START + timedelta(minutes=rng.choice([0, 0, 45, 600]))
        runners.append(
            Runner(f"r{r}", f"r{r}", f"Runner {r}", str(r), f"c{r}", start, Target(finish=timedelta(20)))
        )
        minutes = [km * rng.uniform(7.0, 10.0) for km in kms]
        minutes = sorted(minutes)
        views[f"r{r}"] = view_of(
            names[1:], minutes, spread=rng.choice([0.02, 0.1, 0.2]), start=start, key=r + 1
        )
    calm = rng.random() < 0.5
    homes = ["base", "base", "inn"] if calm else ["base", None, "inn"]
    cars = tuple(
        Car(
            f"car{i}", f"Car {i}", rng.randint(1 + 2 * calm, 5), rng.choice(homes),
            ("green",) if rng.random() < 0.3 else (),
        )
        for i in range(3)
    )  # fmt: skip
    crew = [f"h{i}" for i in range(rng.randint(3 if calm else 1, 5))]
    parts = [Part(r.person, PartKind.RUNNER, r.id) for r in runners]
    for h in crew:
        own = f"car{crew.index(h) % 3}" if calm else rng.choice([None, "car0", "car1", "car2"])
        drives_too = calm or rng.random() < 0.7
        parts.append(Part(h, rng.choice([PartKind.CREW, PartKind.PACER]), drives=drives_too, car=own))
    places = ["base", "inn", *(p.id for c in courses for p in c.points)]
    drives = tuple(
        Drive(
            a, b, rng.choice([5, 20, 60, 40 if calm else None]), "h0" if calm or rng.random() < 0.7 else None
        )
        for a in places
        for b in places
        if a != b and (calm or rng.random() < 0.85)
    )
    rules = Rules(
        vehicles_max=rng.choice([None, None, 1, 2]),
        crew_people_max=rng.choice([None, None, 2, 1]),
        pacer_from_km=rng.choice([None, 60]),
        pacers_at_once=rng.choice([1, 1, 2, 0]),
        crew_not_before=rng.choice([None, None, START + timedelta(hours=4)]),
        pacer_sign_in=rng.choice([0, 10]) * MINUTE,
        outside_help_only_at_crew_points=rng.random() < 0.8,
    )
    meetings = tuple(_meetings(rng, courses, runners, crew, calm))
    people = tuple(Person(n, n.capitalize(), phone="1") for n in [*crew, *(r.person for r in runners)])
    event = Event(
        "e", "E", "UTC", START, rules, tuple(courses), tuple(runners), people, tuple(parts), Contact("rc", "1"), "112",
        cars=cars, drives=drives, meetings=meetings,
    )  # fmt: skip
    return event, views


def _access(rng: random.Random) -> CrewAccess | None:
    if rng.random() < 0.1:
        return None
    opens = rng.choice([None, None, START + timedelta(hours=rng.randint(0, 10))])
    closes = rng.choice([None, None, START + timedelta(hours=rng.randint(11, 24))])
    return CrewAccess(
        "", rng.randint(0, 10) * MINUTE, rng.randint(0, 8) * MINUTE, opens, closes, rng.choice([None, None, 2, 1]),
        permit="green" if rng.random() < 0.1 else "", cars_max=rng.choice([None, None, None, 1]),
    )  # fmt: skip


def _meetings(
    rng: random.Random,
    courses: Sequence[CourseDef],
    runners: Sequence[Runner],
    crew: Sequence[str],
    calm: bool,
) -> list[MeetingPlan]:
    found = []
    for course, runner in zip(courses, runners, strict=True):
        pacers: list[str] = []
        for p in course.points[1:]:
            if rng.random() < 0.2:
                continue
            who = tuple(rng.sample(list(crew), min(len(crew), rng.choice([1, 1, 1, 2, 3]))))
            kit = (KitItem("torch", KitWeight.SAFETY),) if rng.random() < 0.3 else ()
            joins = leaves = None
            if pacers and rng.random() < 0.5:
                leaves = pacers.pop(rng.randrange(len(pacers)))
            # A second one while the first is still with her: some races allow it, most do not.
            free = [w for w in crew if w not in pacers and w != leaves]
            if free and rng.random() < (0.15 if pacers else 0.3):
                joins = rng.choice(free)
                pacers.append(joins)
            car = rng.choice(["car0", "car0", "car1", "car2", None])
            if calm:
                car = f"car{crew.index(who[0]) % 3}"
                who = tuple(w for w in who if f"car{crew.index(w) % 3}" == car)
            found.append(
                MeetingPlan(
                    f"{p.id}-m", p.id, runner.id, who, car, None, kit, pacer_joins=joins, pacer_leaves=leaves
                )
            )
    return found


@pytest.fixture(scope="session")
def crew_at_random() -> Callable[[random.Random], tuple[Event, dict[str, GivenView]]]:
    """`random_crew`."""
    return random_crew
