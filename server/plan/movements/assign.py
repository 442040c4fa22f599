"""The best assignment of cars and people to meetings that can't all be made by those planned for them.

A mixed-integer programme for HiGHS (scipy.optimize.milp): each car runs a chain of meetings, each person is in one
car. The worth of an assignment is the sum over meetings of weight times the odds of being there first from the meeting
before; `worth` says the same of any assignment, so that a search through all of them can be held against the solver.
"""

from __future__ import annotations

from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass, replace
from itertools import pairwise

import numpy as np
from scipy.optimize import Bounds, LinearConstraint, milp
from scipy.sparse import coo_array


class NotFoundError(Exception):
    """No assignment was found in time: the plan stands without one."""


CREW_MANY = 100
SECONDS_MOST = 10.0
"""Eight cars and twelve meetings take 0.2 to 2 s on one core; only `stilepost plan` searches (own choice)."""
MILP_GAP = 1e-5
OPTIMAL = 0
"""What milp calls an answer that it has proved to be the best; 1 is one cut short by the time."""


@dataclass(frozen=True, slots=True)
class Task:
    """A meeting to be served. `needs` must be in the car that comes; only `cars` (None = any) can; `people_max` of
    the others may be there."""

    id: str
    runner: str
    weight: float = 1.0
    needs: frozenset[str] = frozenset()
    cars: frozenset[str] | None = None
    people_max: int | None = None


@dataclass(frozen=True, slots=True)
class Vehicle:
    """A car and how many it seats."""

    id: str
    seats: int


@dataclass(frozen=True, slots=True)
class Helper:
    """Somebody of the crew; only `cars` (None = any) can be theirs. `prefers` breaks ties."""

    id: str
    drives: bool
    cars: frozenset[str] | None = None
    prefers: str | None = None


@dataclass(frozen=True, slots=True)
class ToAssign:
    """What is to be assigned. `tasks` in order of time; `odds` of being first at a task, by (car, task before or None,
    task): no entry, no way. `vehicles_max`: cars that may come to one runner's meetings."""

    tasks: tuple[Task, ...]
    vehicles: tuple[Vehicle, ...]
    helpers: tuple[Helper, ...]
    odds: Mapping[tuple[str, str | None, str], float]
    vehicles_max: int | None = None


@dataclass(frozen=True, slots=True)
class Assignment:
    """Car by car the meetings it serves, in order, and who is in it. `worth` as defined above. `proven` False: the time
    was over before the solver could say that none is better."""

    routes: tuple[tuple[str, tuple[str, ...]], ...]
    people: tuple[tuple[str, str], ...]
    worth: float
    proven: bool = True

    def car_to(self, task: str) -> str | None:
        """The car that serves a task; None if none does."""
        return next((car for car, tasks in self.routes if task in tasks), None)


KEEP = 1e-4
"""What a person in the car they prefer is worth: less than any odds that matter, so that nothing is changed idly.
In another car they count a tenth of it against, so that nobody is taken along for nothing."""


def worth(question: ToAssign, routes: Mapping[str, Sequence[str]], people: Mapping[str, str]) -> float | None:
    """The worth of an assignment, None where it is not allowed. `routes` by car, `people` person to car."""
    tasks = {t.id: t for t in question.tasks}
    if not _allowed(question, routes, people, tasks):
        return None
    total = 0.0
    for car, served in routes.items():
        for before, task in pairwise([None, *served]):
            odds = question.odds.get((car, before, task or ""))
            if odds is None:
                return None
            total += tasks[task or ""].weight * odds
    return total + sum(_liking(h, people[h.id]) for h in question.helpers if h.id in people)


def _liking(helper: Helper, car: str) -> float:
    """What it counts that somebody sits in a car, whatever the car does."""
    return KEEP if helper.prefers == car else -KEEP / 10


def _allowed(
    question: ToAssign,
    routes: Mapping[str, Sequence[str]],
    people: Mapping[str, str],
    tasks: Mapping[str, Task],
) -> bool:
    helpers = {h.id: h for h in question.helpers}
    served = [t for route in routes.values() for t in route]
    if len(set(served)) < len(served):
        return False
    if any(helpers[p].cars is not None and c not in (helpers[p].cars or ()) for p, c in people.items()):
        return False
    seats = {v.id: v.seats for v in question.vehicles}
    if any(sum(c == car for c in people.values()) > seats[car] for car in seats):
        return False
    for car, route in routes.items():
        inside = {p for p, c in people.items() if c == car}
        for task in (tasks[t] for t in route):
            drivers = {p for p in inside - task.needs if helpers[p].drives}
            crowd = task.people_max is not None and len(inside - task.needs) > task.people_max
            if (
                not drivers
                or crowd
                or not task.needs <= inside
                or (task.cars is not None and car not in task.cars)
            ):
                return False
    if question.vehicles_max is None:
        return True
    coming: dict[str, set[str]] = {}
    for car, route in routes.items():
        for t in route:
            coming.setdefault(tasks[t].runner, set()).add(car)
    return all(len(cars) <= question.vehicles_max for cars in coming.values())


class _Rows:
    """Linear constraints as they are gathered."""

    def __init__(self) -> None:
        self.cells: list[tuple[int, int, float]] = []
        self.low: list[float] = []
        self.high: list[float] = []

    def add(self, terms: Iterable[tuple[int, float]], low: float, high: float) -> None:
        row = len(self.low)
        self.cells += [(row, column, value) for column, value in terms]
        self.low.append(low)
        self.high.append(high)


def best_assignment(question: ToAssign) -> Assignment:
    """The assignment of most worth, or the best that is found in `SECONDS_MOST`. Errors: NotFoundError where none is."""
    edges = [k for k in question.odds if _usable(question, k)]
    seats = [(h, v) for h in question.helpers for v in question.vehicles if h.cars is None or v.id in h.cars]
    runners = sorted({t.runner for t in question.tasks})
    uses = [(v, r) for v in question.vehicles for r in runners] if question.vehicles_max is not None else []
    n = len(edges) + len(seats) + len(uses)
    if not edges:
        return Assignment(tuple((v.id, ()) for v in question.vehicles), (), 0.0)
    weight = {t.id: t.weight for t in question.tasks}
    gain = [weight[task] * question.odds[car, before, task] for car, before, task in edges]
    gain += [_liking(h, v.id) for h, v in seats]
    gain += [0.0] * len(uses)
    rows = _Rows()
    _chains(question, edges, rows)
    _people(question, edges, seats, rows)
    _cars_per_runner(question, edges, uses, len(edges) + len(seats), rows)
    r, c, v = zip(*rows.cells, strict=True)
    matrix = coo_array((v, (r, c)), shape=(len(rows.low), n)).tocsr()
    found = milp(
        -np.asarray(gain),
        integrality=np.ones(n),
        bounds=Bounds(0.0, 1.0),
        constraints=LinearConstraint(matrix, np.asarray(rows.low), np.asarray(rows.high)),
        options={"time_limit": SECONDS_MOST, "mip_rel_gap": MILP_GAP},
    )
    if found.x is None:
        raise NotFoundError(found.message)
    chosen = found.x > 0.5
    best = _read(
        question, [e for e, on in zip(edges, chosen, strict=False) if on], seats, chosen[len(edges) :]
    )
    return replace(best, proven=found.status == OPTIMAL)


def _usable(question: ToAssign, edge: tuple[str, str | None, str]) -> bool:
    car, _, task = edge
    found = next(t for t in question.tasks if t.id == task)
    return found.cars is None or car in found.cars


def _into(
    edges: Sequence[tuple[str, str | None, str]], car: str | None, task: str
) -> list[tuple[int, float]]:
    return [(i, 1.0) for i, (c, _, t) in enumerate(edges) if t == task and car in (None, c)]


def _chains(question: ToAssign, edges: Sequence[tuple[str, str | None, str]], rows: _Rows) -> None:
    """Each meeting once; a car goes on from a meeting at most once, and only if it came there."""
    for task in question.tasks:
        rows.add(_into(edges, None, task.id), 0.0, 1.0)
        for v in question.vehicles:
            out = [(i, -1.0) for i, (c, before, _) in enumerate(edges) if (c, before) == (v.id, task.id)]
            rows.add([*_into(edges, v.id, task.id), *out], 0.0, 1.0)
    for v in question.vehicles:
        rows.add(
            [(i, 1.0) for i, (c, before, _) in enumerate(edges) if (c, before) == (v.id, None)], 0.0, 1.0
        )


def _people(
    question: ToAssign,
    edges: Sequence[tuple[str, str | None, str]],
    seats: Sequence[tuple[Helper, Vehicle]],
    rows: _Rows,
) -> None:
    """One car a person, seats, a driver who stays with the car, who must be there, who may be there."""
    first = len(edges)
    for h in question.helpers:
        rows.add([(first + i, 1.0) for i, (other, _) in enumerate(seats) if other.id == h.id], 0.0, 1.0)
    for v in question.vehicles:
        inside = [(first + i, h) for i, (h, car) in enumerate(seats) if car.id == v.id]
        rows.add([(i, 1.0) for i, _ in inside], 0.0, float(v.seats))
        for task in question.tasks:
            comes = [(i, -w) for i, w in _into(edges, v.id, task.id)]
            able = [(i, 1.0) for i, h in inside if h.drives and h.id not in task.needs]
            rows.add([*able, *comes], 0.0, np.inf)
            for who in task.needs:
                rows.add([*((i, 1.0) for i, h in inside if h.id == who), *comes], 0.0, np.inf)
            if task.people_max is not None:
                crowd = [(i, 1.0) for i, h in inside if h.id not in task.needs]
                full = [(i, -w * CREW_MANY) for i, w in comes]
                rows.add([*crowd, *full], -np.inf, float(task.people_max + CREW_MANY))


def _cars_per_runner(
    question: ToAssign,
    edges: Sequence[tuple[str, str | None, str]],
    uses: Sequence[tuple[Vehicle, str]],
    first: int,
    rows: _Rows,
) -> None:
    if question.vehicles_max is None:
        return
    for i, (v, runner) in enumerate(uses):
        for task in question.tasks:
            if task.runner == runner:
                comes = [(k, -w) for k, w in _into(edges, v.id, task.id)]
                rows.add([(first + i, 1.0), *comes], 0.0, np.inf)
    for runner in {r for _, r in uses}:
        mine = [(first + i, 1.0) for i, (_, r) in enumerate(uses) if r == runner]
        rows.add(mine, 0.0, float(question.vehicles_max))


def _read(
    question: ToAssign,
    edges: Sequence[tuple[str, str | None, str]],
    seats: Sequence[tuple[Helper, Vehicle]],
    chosen: np.ndarray[tuple[int], np.dtype[np.bool_]],
) -> Assignment:
    order = {t.id: i for i, t in enumerate(question.tasks)}
    routes = {
        v.id: tuple(sorted((t for c, _, t in edges if c == v.id), key=lambda t: order[t]))
        for v in question.vehicles
    }
    people = {h.id: v.id for (h, v), on in zip(seats, chosen, strict=False) if on}
    value = worth(question, routes, people)
    if value is None:
        raise NotFoundError("the solver's answer breaks its own rules")
    return Assignment(tuple(routes.items()), tuple(people.items()), value)
